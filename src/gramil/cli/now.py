"""`gramil now`: what is open on each instrument, what is closed and why, by the air and the pieces of this moment."""

import itertools
import textwrap
from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from pathlib import Path
from typing import Any

import click

from gramil.air.air_of_places import STALE
from gramil.change.made_words import lines as made_lines
from gramil.cli.bench_options import BenchOptions, bench_by_options, bench_options
from gramil.cli.json_option import json_option, whose_by_name, write_answer
from gramil.measure import in_degrees
from gramil.now.air_now import PlaceNow
from gramil.now.conditions import curve
from gramil.now.open_now import Closed, InstrumentNow, Open, day_of, hours_ago, open_now
from gramil.now.states import Bench

OPEN_SHOWN = 5
"""How many open operations are described in full; the rest are one line."""
LOST_SHOWN = 3
"""How many operations that depend on something lost are named; the rest are counted."""
READ_AGAIN = "Read the meter again: gramil air PLACE TEMPERATURE HUMIDITY writes it down, and opens it if it is right."
WIDEST = 110
"""Characters of a line."""
Numbers = Mapping[tuple[str, str], int]
"""The number of each open operation in the list, by instrument and name."""
CLOSES = {
    "lost": "lost",
    "cure": "cures",
    "jig": "jig",
    "wood": "wood",
    "stock": "wood",
    "air": "air",
    "reading": "air",
}


@click.command()
@bench_options
@json_option
@click.option("--every", is_flag=True, help="List what waits for other work as well, and every open operation.")
@click.option("--cautions", is_flag=True, help="Print each open operation's cautions.")
def command(every: bool, cautions: bool, as_json: bool, **wanted: Any) -> None:
    """What can be done now on the instruments in FILES, or on the open ones of a store.

    What is made of each is read from NAME.made.toml beside NAME.toml; the air and the pieces from the shop.

    \b
    gramil now tarn.toml fell.toml --shop shop.toml
    gramil now --store shop.gramil
    gramil now tarn.toml --shop shop.toml --at 2026-12-01T09:00
    """
    bench = bench_by_options(BenchOptions(**wanted))
    found = open_now(bench.instruments, bench.shop)
    if as_json:
        from gramil.answers.work import now_answer

        write_answer("now", whose_by_name([one.name for one in found], wanted["store"]), now_answer(bench, found))
        return
    for line in page(bench, found, every, cautions, _numbered(found, wanted["store"])):
        click.echo(wrapped(line))


def _numbered(found: Sequence[InstrumentNow], store: Path | None) -> Numbers:
    """A number for each open operation, kept beside the store; none for files, which have no record to keep it by."""
    if store is None:
        return {}
    from gramil.cli.last_list import keep_list, lines_of
    from gramil.store.opening import open_store

    lines = lines_of(found)
    with open_store(store, to_read=True) as opened:
        keep_list(opened, lines)
    return {(each.instrument, each.operation): number for number, each in enumerate(lines, 1)}


def wrapped(line: str, room: int = 10) -> str:
    """A line wrapped to a terminal's width, with the rest indented by `room` letters, under its words."""
    if len(click.unstyle(line)) <= WIDEST:
        return line
    return "\n".join(textwrap.wrap(line, WIDEST, subsequent_indent=" " * room, break_on_hyphens=False))


def page(
    bench: Bench,
    found: Sequence[InstrumentNow],
    every: bool = False,
    cautions: bool = False,
    numbers: Numbers | None = None,
) -> Iterator[str]:
    """The lines of the page: the air of each place, then one instrument after another, open work with its number."""
    now = bench.shop.now
    yield click.style(f"{now:%A} {now.day} {now:%B %Y, %H:%M}", bold=True)
    yield from _air(bench)
    yield from (f"  not read: {fault}" for fault in bench.faults)
    for one, state in zip(found, bench.instruments, strict=True):
        yield ""
        yield f"{click.style(one.name.upper(), bold=True)}   {one.done} of {one.all} done"
        yield from (f"  STOP    {line}" for line in state.stops)
        for each, line in made_lines(state.judged, state.unit):
            yield f"  {each.standing.upper():<7} {line}."
        for sheet, why in state.stale.items():
            yield f"  stale sheet {sheet}: {why}"
        yield from _open(one, every, cautions, numbers or {})
        yield from _closed(one, now, every)


def _air(bench: Bench) -> Iterator[str]:
    shop = bench.shop
    if not shop.places:
        yield "  No readings of air: whether gluing is open is not judged. Type some in under [[place]]."
        return
    for place in shop.places.values():
        drawn = curve(bench.places.known[place.name], shop.now)
        air = f"{place.humidity:>3.0f} % {in_degrees(place.temperature, shop.degrees):>3.0f} °{shop.degrees}"
        yield f"  {place.name:<18} {air}  {drawn}  {_place_line(place, shop.now)}"
        if place.outlook.told:
            yield f"    {place.outlook.told}"
    band = shop.bands["gluing"]
    if shop.air is not None:
        is_open = band.holds(shop.air.temperature, shop.air.humidity) and not shop.air.old
        humidity = f"{band.humidity[0]:.0f} to {band.humidity[1]:.0f} %"
        yield f"  Gluing is done in the {shop.gluing}, at {humidity}: {'open' if is_open else 'closed'} now."


def _place_line(place: PlaceNow, now: datetime) -> str:
    least, most = place.day
    ago = f"read {hours_ago(now, place.read_at)}"
    if place.old:
        age = f"{ago}, too long ago to go by"
    elif now - place.read_at > STALE:
        age = f"{ago}, which still holds by its own habit"
    else:
        age = f"read {place.read_at:%H:%M}"
    return f"day {least:.0f} to {most:.0f} %, {age}"


def _open(one: InstrumentNow, every: bool, cautions: bool, numbers: Numbers) -> Iterator[str]:
    if not one.open:
        yield "  Nothing is open." if one.done < one.all else "  All of it is done."
    for each in one.open[: None if every else OPEN_SHOWN]:
        yield from _told_open(each, cautions, numbers.get((one.name, each.operation.name)))
    rest = [] if every else one.open[OPEN_SHOWN:]
    if rest:
        yield "  open as well: " + ", ".join(_named(one, each, numbers) for each in rest)


def _named(one: InstrumentNow, each: Open, numbers: Numbers) -> str:
    number = numbers.get((one.name, each.operation.name))
    return f"{number} {each.operation.name}" if number else each.operation.name


def _told_open(each: Open, cautions: bool, number: int | None) -> Iterator[str]:
    operation = each.operation
    sheet = f"   sheet {operation.sheet}" if operation.sheet else ""
    head = f"OPEN {number}" if number else "OPEN"
    yield f"  {head:<7} {operation.what}   [{operation.name}] {minutes_text(operation.hands)}{sheet}"
    if each.prefer:
        yield "          " + "; ".join(each.prefer)
    yield from (f"          {remark}" for remark in each.remarks)
    if cautions:
        yield from (f"          CAUTION {caution}" for caution in operation.caution)


def _closed(one: InstrumentNow, now: datetime, every: bool) -> Iterator[str]:
    waiting = [each for each in one.closed if each.by == "before"]
    here = [each for each in one.closed if each.by != "before"]
    for (_, why, _), group in itertools.groupby(sorted(here, key=_alike), key=_alike):
        together = list(group)
        told = together[:LOST_SHOWN] if together[0].by == "lost" else together
        more = f"; and {len(together) - len(told)} more" if len(told) < len(together) else ""
        yield f"  closed  {'; '.join(_with_name(each) for each in told)}{more}"
        yield f"          {CLOSES[together[0].by]}: {why}. {_when(together[0], now)}"
    if every:
        for each in waiting:
            yield f"  later   {_with_name(each)}: {each.why}"
    elif waiting:
        yield f"  {len(waiting)} more wait for work before them (--every lists them)."


def _with_name(each: Closed) -> str:
    return f"{each.operation.what} [{each.operation.name}]"


def _alike(each: Closed) -> tuple[str, str, str]:
    return each.by, each.why.rstrip("."), str(each.when)


def _when(each: Closed, now: datetime) -> str:
    if each.when is not None:
        return f"Opens {day_of(each.when, now)}."
    return {
        "reading": READ_AGAIN,
        "air": "No outlook brings it back: change the air, or give an outlook.",
        "jig": "",
        "wood": "",
    }.get(each.by, "")


def minutes_text(minutes: float) -> str:
    """Minutes of work in words: `45 min`, `2 h`, `2 h 30`."""
    hours, rest = divmod(round(minutes), 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest:02d}" if rest else f"{hours} h"
