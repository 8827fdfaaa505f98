"""`gramil done`: an operation done, with what was measured: how far it is off, what that costs, and what follows."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from functools import partial
from pathlib import Path

import click

from gramil import names as n
from gramil.acts.work import UsedUp, refuse_work
from gramil.answers.noted import AlsoDone, WorkNoted
from gramil.answers.record import UsedAnswer
from gramil.change.as_made import with_readings
from gramil.change.days_in_order import days_of_operations, days_of_record, out_of_order
from gramil.change.settled import settled
from gramil.change.sheet_figures import addresses_to_measure
from gramil.cli.as_read import as_read_option, ask, ask_together
from gramil.cli.done_words import DoneWords, meaning_of_readings
from gramil.cli.json_option import answers_in_lines
from gramil.cli.kinds import Number
from gramil.cli.left_unsaid import WithValues
from gramil.cli.options import shop_file
from gramil.cli.settling import settled_in, write_into_file
from gramil.cli.short_values import MEASURED_SO, hours_in, with_values
from gramil.cli.store_options import ask_moment, ask_order, moment, moment_of, refuse_two_shops, store_file
from gramil.cli.which_shop import store_by_itself
from gramil.description.reading import parse_description, read_description, read_shop
from gramil.faults import MakersFault
from gramil.formatter import formatter_of
from gramil.graph import Figures, Pin
from gramil.prints.own_addresses import checked_work
from gramil.prints.whole import figures_of
from gramil.sheets.handed_out import names_given
from gramil.shop.made_file import (
    NO_OPERATION,
    Done,
    Made,
    Measured,
    content_of_made,
    made_as_text,
    made_beside,
    made_text,
    parse_made,
)
from gramil.shop.operations import Work, needed
from gramil.shop.operations_done import MOST_HOURS, Measurement, Noted, read_measurements
from gramil.shop.operations_file import list_beside, lists_beside
from gramil.store.opening import Store, open_store
from gramil.store.writing import Hand
from gramil.written_file import alone_with, put_text


@dataclass(frozen=True)
class ToNote:
    """What is to be noted as done: what was written of each figure, by its address, and what is noted beside it.

    `values` are those of the figures that the operation asks for, in their order. With `as_read` nothing is asked
    again; with `write` what the measurements settle goes into the description.
    """

    operation: str
    written: Mapping[str, str]
    noted: Noted
    now: datetime
    as_read: bool
    write: bool
    values: tuple[str, ...] = ()
    left: tuple[str, ...] = ()


@dataclass(frozen=True)
class NotedWork:
    """What was noted: line by line, and as a record."""

    lines: tuple[str, ...]
    noted: WorkNoted


@click.command(cls=WithValues)
@click.argument("operation")
@click.argument("file", nargs=-1, metavar="FILE [VALUES]")
@shop_file
@store_file
@click.option("--measured", multiple=True, metavar="ADDRESS=VALUE", help="What was measured: board_thickness=6.38mm.")
@as_read_option
@click.option("--write", is_flag=True, help="Put what the measurements settle into the description, its comments kept.")
@click.option("--note", default="", help="A note.")
@click.option("--hours", type=Number(0, MOST_HOURS), help="Hours that it took; kept in a store only.")
@click.option("--photo", "photos", multiple=True, help="Name of a photograph's file; kept in a store only.")
@click.option("--left", multiple=True, metavar="SIZES", help="What is left of the wood: 410 x 30 x 8; in a store only.")
@moment
def command(
    operation: str,
    file: tuple[str, ...],
    shop: Path | None,
    store: Path | None,
    measured: tuple[str, ...],
    as_read: bool,
    write: bool,
    note: str,
    hours: float | None,
    photos: tuple[str, ...],
    left: tuple[str, ...],
    at: str | None,
) -> WorkNoted:
    """Note that OPERATION is done on the instrument in FILE (with a store: of that name), and what was measured.

    OPERATION may be the number of a line that `gramil now` showed last, or several (3,8,14); then no FILE is named.
    VALUES are hours (1.5h, of each) and what was measured of the figures that the operation asks for, in their order.

    A bare length is in the instrument's unit. A likely slip is questioned before anything is written.

    \b
    gramil done thicknessed tarn.toml --shop shop.toml --measured blank_thickness=6.6mm
    gramil done slotted Tarn --store shop.gramil --measured slot_depth_setting=3.02mm --hours 1.5
    gramil done 3 1.5h 3.02
    gramil done 1,7,12 45min
    """
    by_number = all(each.isdecimal() for each in operation.split(","))
    if by_number:
        store, shop = store_by_itself(store), None
    elif not file:
        raise click.UsageError("name the instrument, or the number of a line that gramil now showed")
    said, values = hours_in(file if by_number else file[1:])
    hours = said if hours is None else hours
    if store is None and (hours is not None or photos or left):
        raise click.UsageError("hours, photographs and what is left of wood are kept in a --store")
    refuse_two_shops(shop, store)
    asked = ToNote(
        operation, _measured(measured), Noted(note, hours, photos), moment_of(at), as_read, write, values, left
    )
    if store is not None:
        with open_store(store) as opened:
            told = _by_number(opened, asked) if by_number else _in_store(opened, file[0], asked)
    else:
        told = _in_file(Path(file[0]), shop, asked)
    for line in told.lines:
        click.echo(line)
    return told.noted


def _by_number(store: Store, asked: ToNote) -> NotedWork:
    """The operations of lines that were shown last, noted as done on their instruments: all of them or none."""
    from gramil.acts.work import together
    from gramil.cli.last_list import lines_meant
    from gramil.cli.opened import opened_since

    lines = lines_meant(store, tuple(dict.fromkeys(asked.operation.split(","))))
    if len(lines) > 1 and (asked.values or asked.written or asked.left):
        raise MakersFault.of("values are of one operation", "several are noted here", "note that one by itself")
    acts = [partial(_in_store, store, each.instrument, replace(asked, operation=each.operation)) for each in lines]
    first, *rest = (
        together(store, f"done: {len(acts)} operations", Hand(asked.now), acts) if len(acts) > 1 else (acts[0](),)
    )
    opened = opened_since(store, asked.now)
    also = [
        AlsoDone(line.instrument, each.noted.operation, each.noted.what, each.noted.used_up)
        for line, each in zip(lines[1:], rest, strict=True)
    ]
    said = [text for each in (first, *rest) for text in each.lines]
    once = reversed(dict.fromkeys(reversed(said)))  # where it is noted is said at the end
    return NotedWork((*once, *opened), replace(first.noted, also=tuple(also)))


def _all_written(asked: ToNote, whole: Work, figures: Figures) -> dict[str, str]:
    """What was written of each figure, that of bare values too. Raises MakersFault for a note of nothing at all."""
    asks = addresses_to_measure(asked.operation, figures, whole) if asked.values else ()
    found = with_values(asked.written, asked.values, asks, asked.operation)
    if asked.operation == NO_OPERATION and not found:
        remedy = f"write --measured {MEASURED_SO}, or the name of an operation"
        raise MakersFault.of("nothing was measured", "nothing was written", remedy)
    return found


def _measured(texts: Iterable[str]) -> dict[str, str]:
    """What was written of each figure, by its address. Raises MakersFault for any other form, or if a figure is given
    twice.
    """
    written: dict[str, str] = {}
    for text in texts:
        address, equals, value = (part.strip() for part in text.rpartition("="))
        if not equals or not address or not value:
            remedy = f"write it like {MEASURED_SO}"
            raise MakersFault.of(f'"{text}" is not an address and a value', remedy=remedy, where="--measured")
        if address in written:
            raise MakersFault.of(f"{address} is measured twice", remedy="write what is to count", where="--measured")
        written[address] = value
    return written


def _in_file(file: Path, shop: Path | None, asked: ToNote) -> NotedWork:
    """Noted in the record beside the description, all of it or nothing; another `done` on it waits meanwhile.

    With `write` what the measurements settle goes into the description after it.
    """
    described, record = read_description(file), made_beside(file)
    drawn, units = figures_of(described, read_shop(shop)), described.instrument.instrument.units
    whole = needed(checked_work(lists_beside(shop, file), drawn, list_beside(file).name), described.instrument)
    operation, now = asked.operation, asked.now
    with alone_with(record):
        ask_moment(now, "", asked.as_read)
        seen = content_of_made(record) if record.exists() else None
        made = Made((), units) if seen is None else parse_made(made_as_text(seen, record.name), record.name)
        refuse_work(operation, whole, set(made.operations) - {NO_OPERATION})
        figures = settled(made.pinned(drawn))
        found = read_measurements(figures, _all_written(asked, whole, figures), units)
        against = out_of_order(whole, days_of_record(made, now), operation, now)
        ask_together(lambda: ask_order(against, asked.as_read), lambda: ask(figures, found, operation, asked.as_read))
        pins = _pins(found, now, operation)
        meaning = meaning_of_readings(operation, whole, made.operations, figures, pins)
        words = DoneWords(operation, whole, described.instrument.instrument.name, tuple(made.operations), meaning)
        told = list(words.lines())
        put = write_into_file(file, with_readings(figures, pins), pins) if asked.write else None
        day = now.replace(tzinfo=None, microsecond=0).isoformat()
        rows = tuple(Measured(each.address, each.written) for each in found)
        _append(record, seen, made, Done(operation, day, asked.noted.note, rows))
    changed, *written = put() if put else (False,)
    return NotedWork((*told, f"Noted in {record.name}.", *written), words.noted(record.name, changed))


def _append(record: Path, seen: bytes | None, made: Made, done: Done) -> None:
    """The record as it was seen, with one more operation; what the maker wrote in it stays as it is."""
    tail = made_text(Made((done,))).partition("[[done]]")
    text = "" if seen is None else made_as_text(seen, record.name)
    ends = "\r\n" if "\r\n" in text else "\n"
    more = f"\n\n{tail[1]}{tail[2]}".replace("\n", ends)
    new = f"{text.rstrip()}{more}" if text else made_text(Made((done,), made.units))
    try:
        whole = parse_made(new, record.name)
    except MakersFault:  # the operations are an inline array: no table can be appended to it
        whole = Made((*made.done, done), made.units)
        new = made_text(whole)
    assert len(whole.done) == len(made.done) + 1
    put_text(record, new, seen)


def _in_store(store: Store, name: str, asked: ToNote) -> NotedWork:
    from gramil.acts.work import note_and_settle, note_done
    from gramil.change.in_store import figures_in_store
    from gramil.change.made_in_store import standing_in_store
    from gramil.now.lost_work import hangs_on
    from gramil.shop.instruments import instrument, revision
    from gramil.shop.operations_done import operations_done
    from gramil.shop.own_operations import work_of
    from gramil.store.writing import changes

    operation, now, owner = asked.operation, asked.now, instrument(store, name)
    ask_moment(now, next((each.at for each in changes(store, 1)), ""), asked.as_read)
    text = revision(store, owner.id).text
    described = parse_description(text, name)
    done = operations_done(store, owner.id)
    before = tuple(each.operation for each in done)
    work = work_of(store, owner.id)
    whole = needed(work, described.instrument)
    refuse_work(operation, whole, set(before))
    figures = figures_in_store(store, owner)
    first = formatter_of(figures).first
    lost = hangs_on(operation, work, dict.fromkeys(before), standing_in_store(store, owner), first)
    found = read_measurements(figures, _all_written(asked, whole, figures), figures[n.instrument_units])
    against = out_of_order(whole, days_of_operations(done, now), operation, now)
    ask_together(lambda: ask_order(against, asked.as_read), lambda: ask(figures, found, operation, asked.as_read))
    pins = _pins(found, now, operation)
    meaning = meaning_of_readings(operation, whole, before, figures, pins, names_given(store, owner, whole))
    # worked out before anything is written: a reading that no instrument can have had stood in the record, and each
    # command on the instrument then failed on it
    words = DoneWords(operation, whole, described.instrument.instrument.name, before, meaning, lost)
    told = list(words.lines())
    new = settled_in(text, with_readings(figures, pins), pins) if asked.write else text
    noted = replace(asked.noted, measured=found)

    def note() -> tuple[UsedUp, ...]:
        if asked.write:
            return note_and_settle(store, owner, operation, Hand(now), noted, new)
        return note_done(store, owner, operation, Hand(now), noted, figures)

    used, kept = _with_left_over(store, f"done: {operation}, {owner.name}", asked, note)
    told += [f"Used up: {each.name}, for the {each.need}." for each in used]
    told += [f"Kept in stock: {name}." for name in kept]
    told.append(f"Noted in {store.path.name}.")
    if new != text:
        told.append(f"The description of {name} is saved anew.")
    wood = [UsedAnswer(each.name, each.need) for each in used]
    return NotedWork(tuple(told), words.noted(store.path.name, new != text, wood, kept))


def _with_left_over(
    store: Store, what: str, asked: ToNote, note: Callable[[], tuple[UsedUp, ...]]
) -> tuple[tuple[UsedUp, ...], list[str]]:
    """The work noted, and what is left of its wood kept, with what each is called."""
    if not asked.left:
        return note(), []
    from gramil.acts.left_over import note_and_keep
    from gramil.shop.written_sizes import read_sizes
    from gramil.store.items import shop_unit

    left = [read_sizes(text, shop_unit(store), "--left") for text in asked.left]
    used, kept = note_and_keep(store, what, Hand(asked.now), note, left)
    return used, [each.name for each in kept]


def _pins(found: Iterable[Measurement], now: datetime, operation: str) -> dict[str, Pin]:
    return {each.address: Pin(each.value, f"{now:%Y-%m-%d}", operation) for each in found}


answers_in_lines(command, "done")
