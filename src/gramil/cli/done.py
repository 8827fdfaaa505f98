"""`gramil done`: an operation done, with what was measured: how far it is off, what that costs, and what follows."""

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from difflib import get_close_matches
from pathlib import Path

import click

from gramil import names as n
from gramil.acts.work import Noted
from gramil.change.as_made import AsMade, Off, as_made, with_readings
from gramil.change.made_words import said
from gramil.change.settled import settled
from gramil.cli.as_read import as_read_option, ask
from gramil.cli.kinds import Number
from gramil.cli.options import shop_file
from gramil.cli.settling import settled_in, write_into_file
from gramil.cli.settling import told as settling
from gramil.cli.store_options import moment, moment_of, refuse_two_shops, store_file
from gramil.decimals import signed
from gramil.description.reading import Description, parse_description, read_description, read_shop
from gramil.faults import MakersFault
from gramil.graph import Figures, Pin
from gramil.prints.own_addresses import checked_work
from gramil.prints.whole import figures_of
from gramil.sheets.own_sheet import wanted_at
from gramil.shop.made_file import (
    Done,
    Made,
    Measured,
    content_of_made,
    made_as_text,
    made_beside,
    made_text,
    parse_made,
)
from gramil.shop.opening import Store, open_store
from gramil.shop.operations import Work, needed
from gramil.shop.operations_done import Measurement, read_measurements
from gramil.shop.operations_file import list_beside, lists_beside
from gramil.show import Shower, shower_of, shown
from gramil.written_file import alone_with, put_text

MOST_MOVES = 12
"""So many figures that follow are told; the rest are counted."""


@click.command()
@click.argument("operation")
@click.argument("file")
@shop_file
@store_file
@click.option("--measured", multiple=True, metavar="ADDRESS=VALUE", help="What was measured: board_thickness=6.38mm.")
@as_read_option
@click.option("--write", is_flag=True, help="Put what the measurements settle into the description, its comments kept.")
@click.option("--note", default="", help="A note.")
@click.option("--hours", type=Number(0, 10_000), help="Hours that it took; kept in a store only.")
@click.option("--photo", "photos", multiple=True, help="Name of a photograph's file; kept in a store only.")
@moment
def command(
    operation: str,
    file: str,
    shop: Path | None,
    store: Path | None,
    measured: tuple[str, ...],
    as_read: bool,
    write: bool,
    note: str,
    hours: float | None,
    photos: tuple[str, ...],
    at: str | None,
) -> None:
    """Note that OPERATION is done on the instrument in FILE (with a store: of that name), and what was measured.

    A bare length is in the instrument's unit. What cannot be meant is asked about before anything is written.

    \b
    gramil done thicknessed tarn.toml --shop shop.toml --measured blank_thickness=6.6mm
    gramil done slotted Tarn --store shop.gramil --measured slot_depth_setting=3.02mm --hours 1.5
    """
    if store is None and (hours is not None or photos):
        raise click.UsageError("hours and photographs are kept in a --store")
    refuse_two_shops(shop, store)
    written = _measured(measured)
    now = moment_of(at)
    if store is not None:
        with open_store(store) as opened:
            lines = list(_in_store(opened, operation, file, written, Noted(note, hours, photos), now, as_read, write))
    else:
        lines = list(_in_file(Path(file), shop, operation, written, note, now, as_read, write))
    for line in lines:
        click.echo(line)


def _measured(texts: Iterable[str]) -> dict[str, str]:
    """What was written of each figure, by its address. Raises MakersFault for another form, or a figure twice."""
    written: dict[str, str] = {}
    for text in texts:
        address, equals, value = (part.strip() for part in text.rpartition("="))
        if not equals or not address or not value:
            remedy = "write it like board_thickness=6.38mm"
            raise MakersFault.of(f'"{text}" is not an address and a value', remedy=remedy, where="--measured")
        if address in written:
            raise MakersFault.of(f"{address} is measured twice", remedy="write what is to count", where="--measured")
        written[address] = value
    return written


def _in_file(
    file: Path,
    shop: Path | None,
    operation: str,
    written: Mapping[str, str],
    note: str,
    now: datetime,
    as_read: bool,
    write: bool,
) -> Iterator[str]:
    """Noted in the record beside the description, all of it or nothing; another `done` on it waits meanwhile.

    With `write` what the measurements settle goes into the description after it.
    """
    described, record = read_description(file), made_beside(file)
    drawn, units = figures_of(described, read_shop(shop)), described.instrument.instrument.units
    work = checked_work(lists_beside(shop, file), drawn, list_beside(file).name)
    with alone_with(record):
        seen = content_of_made(record) if record.exists() else None
        made = Made((), units) if seen is None else parse_made(made_as_text(seen, record.name), record.name)
        _refuse(operation, described, work, set(made.operations))
        figures = settled(made.pinned(drawn))
        found = read_measurements(figures, written, units)
        ask(figures, found, operation, as_read)
        pins = _pins(found, now, operation)
        told = list(_told(operation, work, described, made.operations, figures, pins))
        put = write_into_file(file, with_readings(figures, pins), pins) if write else None
        day = now.replace(tzinfo=None, microsecond=0).isoformat()
        rows = tuple(Measured(each.address, each.written) for each in found)
        _append(record, seen, made, Done(operation, day, note, rows))
    yield from told
    yield f"Noted in {record.name}."
    yield from put() if put else ()


def _append(record: Path, seen: bytes | None, made: Made, done: Done) -> None:
    """The record as it was seen with one operation more; what the maker wrote in it stays as it is."""
    tail = made_text(Made((done,))).partition("[[done]]")
    text = "" if seen is None else made_as_text(seen, record.name)
    ends = "\r\n" if "\r\n" in text else "\n"
    more = f"\n\n{tail[1]}{tail[2]}".replace("\n", ends)
    new = f"{text.rstrip()}{more}" if text else made_text(Made((done,), made.units))
    try:
        whole = parse_made(new, record.name)
    except MakersFault:  # the operations stand in one line: no table can be added after them
        whole = Made((*made.done, done), made.units)
        new = made_text(whole)
    assert len(whole.done) == len(made.done) + 1
    put_text(record, new, seen)


def _in_store(
    store: Store,
    operation: str,
    name: str,
    written: Mapping[str, str],
    noted: Noted,
    now: datetime,
    as_read: bool,
    write: bool,
) -> Iterator[str]:
    from gramil.acts.work import note_done
    from gramil.change.in_store import figures_in_store
    from gramil.change.made_in_store import standing_in_store
    from gramil.now.lost_work import hangs_on
    from gramil.shop.instruments import instrument, revision, save_revision
    from gramil.shop.operations_done import operations_done
    from gramil.shop.own_operations import work_of

    owner = instrument(store, name)
    text = revision(store, owner.id).text
    described = parse_description(text, name)
    before = tuple(each.operation for each in operations_done(store, owner.id))
    work = work_of(store, owner.id)
    _refuse(operation, described, work, set(before))
    figures = figures_in_store(store, owner)
    first = shower_of(figures).first
    lost = hangs_on(operation, work, dict.fromkeys(before), standing_in_store(store, owner), first)
    found = read_measurements(figures, written, figures[n.instrument_units])
    ask(figures, found, operation, as_read)
    pins = _pins(found, now, operation)
    told = list(_told(operation, work, described, before, figures, pins))  # before anything is written
    new = settled_in(text, with_readings(figures, pins), pins) if write else text
    used = note_done(store, owner.id, operation, now, measured=found, noted=noted)
    yield from [lost] if lost else []
    yield from told
    yield from (f"Used up: {each.name}, for the {each.need}." for each in used)
    yield f"Noted in {store.path.name}."
    if new != text:
        save_revision(store, instrument(store, name), new, now, why=f"as made: {operation}")
        yield f"The description of {name} is saved anew."


def _refuse(operation: str, described: Description, work: Work, done: set[str]) -> None:
    """Raises MakersFault for an operation that there is not, or that is done already."""
    whole = needed(work, described.instrument)
    if operation in done:
        raise MakersFault.of(
            f"{operation} is done already", remedy="further measurements go in by gramil done measured FILE"
        )
    if operation not in whole.operations and operation not in whole.left_out and operation != "measured":
        near = get_close_matches(operation, whole.operations, 1)
        remedy = f"nearest: {near[0]}" if near else "see the work that gramil now --every lists"
        raise MakersFault.of(f"there is no operation {operation}", remedy=remedy)


def _pins(found: Iterable[Measurement], now: datetime, operation: str) -> dict[str, Pin]:
    return {each.address: Pin(each.value, f"{now:%Y-%m-%d}", operation) for each in found}


def _told(
    operation: str, work: Work, described: Description, before: Sequence[str], figures: Figures, pins: Mapping[str, Pin]
) -> Iterator[str]:
    whole = needed(work, described.instrument)
    if operation in whole.operations:
        each = whole.operations[operation]
        yield f"{described.instrument.instrument.name}: {each.what}: done."
        missing = [name for name in each.after if name not in before]
        if missing:
            yield f"Not noted as done before it: {', '.join(missing)}."
        if not pins and each.measure:
            yield f"Worth measuring: {', '.join(f'--measured {address}=...' for address in each.measure)}"
    elif operation in whole.left_out:
        yield f"This instrument did not need it: {whole.left_out[operation]}."
    if pins:
        still = {each.sheet for name, each in whole.operations.items() if name not in {*before, operation}}
        wanted = wanted_at(operation, with_readings(figures, pins), whole)
        yield from report(as_made(figures, pins, operation, before, wanted), shower_of(figures), still)
        yield from settling(with_readings(figures, pins), pins)


def report(found: AsMade, shower: Shower, still: Container[str]) -> Iterator[str]:
    """How far each measurement is off and what it costs, what follows it, and which sheets `still` to use change."""
    for off in found.off:
        yield "  " + _off(off, shower)
    for judged in found.judged:
        words = "" if judged.standing == "still right" else f": {said(judged, shower.first)}"
        yield f"  {judged.what}: {judged.standing}{words}."
    if not found.moves:
        yield "Nothing else follows from it." if not found.folded else "What follows moves too little to tell."
    else:
        yield "What follows, as made beside as drawn:"
    for move in sorted(found.moves, key=lambda each: _UNITS.get(each.unit or "", 3))[:MOST_MOVES]:
        one, other = (shown(value, move.unit, shower.first) for value in (move.new, move.old))
        yield f"  {move.address:<38} {one:<14} as drawn {other}"
    if len(found.moves) > MOST_MOVES:
        yield f"  and {len(found.moves) - MOST_MOVES} more; gramil dims --made shows them."
    for finding in found.came:
        yield f"  {finding.severity.upper()} came: {finding.name}: {shower.filled(finding.says)}"
    yield from (f"  went: {finding.severity} {finding.name}" for finding in found.went)
    again = [paper.title for paper in found.sheets if paper.name in still]
    if again:
        yield f"Sheets to print again with --made: {', '.join(again)}."


_UNITS = {"cent": 0, "g": 1, "mm": 2}
"""What a maker wants to hear first."""


def _off(off: Off, shower: Shower) -> str:
    wanted, measured = (shown(value, off.unit, shower.first) for value in (off.wanted, off.measured))
    if off.difference != off.difference:
        return f"{off.address}: {measured}; nothing was known of it."
    sign = "+" if off.difference > 0 else ""
    cost = "" if off.cents is None else f", {signed(off.cents, 2)} cent"
    same = "" if abs(off.difference) >= 0.005 else ", as it should be"
    difference = shown(off.difference, off.unit, shower.first)
    return f"{off.address}: {measured}, wanted {wanted}" + (same or f": {sign}{difference}{cost}")
