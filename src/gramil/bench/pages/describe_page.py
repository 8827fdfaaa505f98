"""A part described or changed by a form: what is typed becomes a draft of the instrument, faults stand at fields."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from starlette.responses import Response

from gramil import names as n
from gramil.bare_numbers import with_unit
from gramil.bench.describing import ROWS, TABLES, place_of_form, sets_of, written_in
from gramil.bench.draft import Draft, drafted
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, go
from gramil.bench.pages.instrument_page import Desk, address_part, desk_of
from gramil.bench.row_form import by_key, entries, lengths_of
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit

TRY = "try"


def describe_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The form of a table (`table`, and `row` where there may be several); typed and tried, the draft of it."""
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
    table, data, unit = request.one("table"), desk.draft.data, desk.reading.now.first
    place = place_of_form(table, request.number("row", 1), data)
    if place is None:
        raise Missing("form for that")
    own: LengthUnit = desk.held.figures[n.instrument_units]
    written = _in_unit(table, written_in(table, request.number("row", 1), data), own, unit)
    typed = {each.key: request.one(each.key) for each in entries(table, {}, unit, {}) if each.key in request.query}
    if request.one("do") != TRY:
        return _form(request, desk, table, {**written, **typed})
    try:
        sets = dict(desk.draft.sets) | dict(sets_of(table, place, typed, written, unit))
        tried = _tried(desk.held, tuple(sets.items()))
    except MakersFault as fault:
        faults = [replace(each, where=each.where.removeprefix(place).lstrip(".")) for each in fault.faults]
        return _form(request, desk, table, {**written, **typed}, faults)
    return go(f"/instrument/{desk.held.seen.id}?{address_part(desk)}{tried.query}")


def _form(
    request: PageRequest, desk: Desk, table: str, filled: Mapping[str, Any], faults: Sequence[Fault] = ()
) -> Response:
    found, rest = by_key(table, faults)
    return request.page(
        "describe.html",
        422 if faults else 200,
        title=TABLES.get(table) or ROWS[table],
        held=desk.held,
        draft=desk.draft,
        at=address_part(desk),
        x_text=f"{desk.cut.x:.4f}",
        table=table,
        row=request.number("row", 1) if table in ROWS else None,
        entries=entries(table, filled, desk.reading.now.first, found),
        faults=[replace(each, file=None, line=None) for each in rest],
    )


def _tried(held: OpenInstrument, sets: tuple[tuple[str, str], ...]) -> Draft:
    """The draft with these keys set. Raises MakersFault for impossible values."""
    draft = drafted(held, sets)
    if draft.faults:
        raise MakersFault(draft.faults)
    return draft


def _in_unit(table: str, written: Mapping[str, Any], own: LengthUnit, unit: LengthUnit) -> Mapping[str, Any]:
    """What is written; where the page shows another unit, bare lengths get their own."""
    if own == unit:
        return written
    lengths = lengths_of(table)
    return {key: with_unit(value, "mm", own) if key in lengths else value for key, value in written.items()}
