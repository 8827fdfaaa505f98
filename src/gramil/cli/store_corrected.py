"""`gramil store not-done`, `measured`, `reading`, `mark`: wrong entries put right or struck, and standing."""

from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, get_args

import click

from gramil.answers.record import AirAnswer, Marked, MeasuredAnew, OpenAgain, ReadAnew, UsedAnswer
from gramil.cli.as_read import as_read_option, ask, ask_together
from gramil.cli.kinds import HUMIDITY
from gramil.cli.left_unsaid import InTheStore, the_store
from gramil.cli.store_options import ask_order, hand_asked_for, moment, moment_of
from gramil.faults import MakersFault
from gramil.measure import TemperatureUnit, in_degrees, read_temperature
from gramil.shop.instruments import Standing
from gramil.store.items import shop_degrees
from gramil.store.opening import open_store
from gramil.store.writing import Hand

if TYPE_CHECKING:
    from gramil.air.places import Reading
    from gramil.store.opening import Store

WHY = click.option("--why", default="", help="Why, in a line; it stays in the record.")


@click.command("not-done", cls=InTheStore)
@the_store
@click.argument("name")
@click.argument("operation")
@as_read_option
@moment
def not_done(store: Path, name: str, operation: str, as_read: bool, at: str | None) -> OpenAgain:
    """Take back that OPERATION was done on the instrument NAME, however long ago, and say what hangs on it.

    What was measured at it stays; wood that it used up is put back, promised as before. A part that was spoiled is
    begun anew instead: `gramil store anew`. `gramil store undo` takes this back.

    \b
    gramil store not-done shop.gramil Tarn slotted
    """
    from gramil.acts.left_over import left_of
    from gramil.acts.work import hanging, not_done_after_all
    from gramil.change.days_in_order import before_it
    from gramil.shop.instruments import instrument
    from gramil.shop.operations_done import operations_done

    with open_store(store) as opened:
        owner = instrument(opened, name)
        done = {each.operation: each for each in operations_done(opened, owner.id)}
        if operation not in done:
            remedy = f"done are: {', '.join(done)}" if done else "nothing is noted as done on it"
            raise MakersFault.of(f"{operation} is not noted as done on {owner.name}", remedy=remedy)
        hand = hand_asked_for(opened, at, as_read)
        ask_order(before_it([done[operation].at], hand.now), as_read)
        after = hanging(opened, owner, operation)
        back = not_done_after_all(opened, done[operation], hand)
        left = left_of(opened, {each.name for each in back})
    click.echo(f"{owner.name}: {operation} is open again.")
    for each in back:
        click.echo(f"Put back: {each.name}, for the {each.need}.")
    for rest in left:
        click.echo(f'Still in stock: {rest}. If it was never cut off, strike it too: gramil store strike "{rest}".')
    if after:
        click.echo(f"Done after it, and hanging on it: {', '.join(after)}.")
    return OpenAgain(operation, tuple(after), tuple(UsedAnswer(each.name, each.need) for each in back), left)


@click.command(cls=InTheStore)
@the_store
@click.argument("name")
@click.argument("address")
@click.argument("value", required=False)
@click.option("--strike", is_flag=True, help="Strike it: it no longer counts.")
@WHY
@as_read_option
@moment
def measured(
    store: Path, name: str, address: str, value: str | None, strike: bool, why: str, as_read: bool, at: str | None
) -> MeasuredAnew:
    """Put right the last measurement of ADDRESS on the instrument NAME, with VALUE, or strike it.

    \b
    gramil store measured shop.gramil Tarn blank_thickness 6.35mm --why "misread"
    gramil store measured shop.gramil Tarn blank_thickness --strike
    """
    from gramil import names as n
    from gramil.acts.corrections import correct_measurement
    from gramil.change.days_in_order import before_it
    from gramil.change.in_store import figures_in_store
    from gramil.shop.corrections import measured_rows
    from gramil.shop.instruments import instrument
    from gramil.shop.operations_done import Measurement, read_measurements

    if strike == (value is not None):
        raise click.UsageError("give the right VALUE, or --strike")
    with open_store(store) as opened:
        owner = instrument(opened, name)
        rows = [each for each in measured_rows(opened, owner.id) if each.measurement.address == address]
        if not rows:
            raise MakersFault.of(f"{address} was not measured on {owner.name}", remedy=_measured_on(opened, owner.id))
        figures, right = figures_in_store(opened, owner), None
        hand = replace(hand_asked_for(opened, at, as_read), why=why)
        against, read = before_it([rows[0].at], hand.now), list[Measurement]()
        if value is not None:
            read = [*read_measurements(figures, {address: value}, figures[n.instrument_units])]
            (right,) = read
        ask_together(lambda: ask_order(against, as_read), lambda: ask(figures, read, "", as_read))
        correct_measurement(opened, rows[0], right, hand, figures=figures)
    old, moment = rows[0].measurement, rows[0].at
    was = f"{address}, {old.written} of {moment[:10]}"
    click.echo(f"{was}: struck." if right is None else f"{was}: {right.written} now.")
    now = (None, "") if right is None else (right.value, right.written)
    return MeasuredAnew(address, old.value, old.written, moment, now[0], now[1], old.unit)


@click.command(cls=InTheStore)
@the_store
@click.argument("place")
@click.argument("when")
@click.option(
    "--right",
    type=(HUMIDITY, str),
    metavar="RH T",
    help="What it should say: humidity %, temperature in the shop's unit.",
)
@WHY
@as_read_option
@moment
def reading(
    store: Path, place: str, when: str, right: tuple[float, str] | None, why: str, as_read: bool, at: str | None
) -> ReadAnew:
    """Strike the reading of PLACE that was taken at WHEN, or put it right.

    \b
    gramil store reading shop.gramil shop 2026-01-19T08:00 --right 44 18
    gramil store reading shop.gramil shop 2026-01-19T08:00 --why "the meter lay in the sun"
    """
    from gramil.acts.air import correct_reading
    from gramil.air.places import instant_of
    from gramil.air.places import place as place_named
    from gramil.change.days_in_order import before_it
    from gramil.shop.corrections import reading_at

    with open_store(store) as opened:
        of = place_named(opened, place)
        seen = reading_at(opened, of.id, instant_of(moment_of(when)))
        hand, unit = replace(hand_asked_for(opened, at, as_read), why=why), shop_degrees(opened)
        ask_order(before_it([seen.at.isoformat()], hand.now), as_read)
        new = None if right is None else replace(seen, humidity=right[0], temperature=read_temperature(right[1], unit))
        correct_reading(opened, of, seen, hand, right=new)
    was = f"{of.name}, {_clock(seen.at)}, {_air(seen, unit)}"
    click.echo(f"{was}: struck." if new is None else f"{was}: {_air(new, unit)} now.")
    return ReadAnew(of.name, seen.at.isoformat(), _air_read(seen), None if new is None else _air_read(new))


def _measured_on(store: "Store", owner: int) -> str:
    from gramil.shop.corrections import measured_rows

    addresses = dict.fromkeys(each.measurement.address for each in measured_rows(store, owner))
    return f"measured are: {', '.join(addresses)}" if addresses else "nothing was measured on it"


def _air_read(reading: "Reading") -> AirAnswer:
    return AirAnswer(reading.humidity, reading.temperature)


def _air(reading: "Reading", unit: TemperatureUnit) -> str:
    return f"{reading.humidity:g} % {in_degrees(reading.temperature, unit):g} {unit}"


def _clock(moment: datetime) -> str:
    return f"{moment:%Y-%m-%d %H:%M}"


@click.command(cls=InTheStore)
@the_store
@click.argument("name")
@click.argument("standing", type=click.Choice(get_args(Standing)))
@moment
def mark(store: Path, name: str, standing: str, at: str | None) -> Marked:
    """Mark the instrument NAME as open, waiting or done. Only open ones ask for work and wood.

    \b
    gramil store mark shop.gramil Fell done
    """
    from gramil.acts import standing as acts
    from gramil.shop.instruments import instrument

    with open_store(store) as opened:
        marked = acts.mark(opened, instrument(opened, name), standing, Hand(moment_of(at)))
    click.echo(f"{marked.name} is {marked.standing}.")
    return Marked(marked.name, marked.standing)
