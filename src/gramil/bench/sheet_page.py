"""A sheet: one operation a page, big figures, its drawing, the proof before the cut, and what was measured, judged."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from starlette.responses import HTMLResponse, Response

from gramil.bench.ages import clock
from gramil.bench.asking import Asked, Missing
from gramil.bench.doubts import Doubt
from gramil.bench.instrument_page import instrument_id
from gramil.bench.made_here import judged_on
from gramil.bench.measuring import MEASURED, Told, told_of, verdict
from gramil.bench.shelf import Held, Shelf
from gramil.bench.svg_in_page import Sized, inlined, readable
from gramil.bench.templating import render
from gramil.bench.units import shower_for
from gramil.now.lost_work import hangs_on
from gramil.pack import picture_of
from gramil.prints.pages import named_on, near_text, words_of
from gramil.prints.whole import setups_of
from gramil.reference import Ref
from gramil.sheets.own_sheet import sheet_named, wanted_at
from gramil.sheets.sheet import Sheet, made_text
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.corrections import Measured, measured_rows
from gramil.shop.opening import Store
from gramil.shop.operations import Operation, Work, needed
from gramil.shop.operations_done import DoneOperation, measurements, operations_done
from gramil.shop.own_operations import work_of
from gramil.show import Shower


@dataclass(frozen=True)
class Box:
    """A field for a measurement: its address, its words, what is wanted and how near, what was measured last.

    `off` is how far that is off; `typed` stands in it, and `doubt` is what is asked about that.
    """

    address: str
    what: str
    wanted: str
    near: str
    last: str
    off: str = ""
    typed: str = ""
    doubt: Doubt | None = None


@dataclass(frozen=True)
class Line:
    """A line of the order of work: an operation or a sheet, its address, the day it was done, why it is not needed."""

    what: str
    address: str
    done: str
    closed: str


def sheets_page(asked: Asked, shelf: Shelf) -> Response:
    """Every operation of an instrument in order, with those that have a sheet."""
    with asked.keeping.opened() as store:
        held = shelf.held(store, instrument_id(asked))
        done = {each.operation: each.at[:10] for each in operations_done(store, held.seen.id)}
        lines = tuple(_lines(held, work_for(store, held), done))
    return asked.page("sheets.html", title=f"{held.seen.name}, sheets", held=held, lines=lines)


def _lines(held: Held, work: Work, done: dict[str, str]) -> Iterator[Line]:
    base = f"/instrument/{held.seen.id}"
    setups = {setup.name: setup for setup in setups_of(held.figures)}
    met = set()
    for each in work.operations.values():
        met.add(each.sheet)
        yield Line(each.what, f"{base}/operation/{each.name}", done.get(each.name, ""), "")
    for setup in setups.values():
        if setup.name not in met:
            shower = Shower(held.figures)
            yield Line(setup.title, f"{base}/sheet/{setup.name}", done.get(setup.name, ""), shower.filled(setup.closed))


def work_for(store: Store, held: Held) -> Work:
    """The work that the instrument needs, by the shop's own list and by its own."""
    return needed(work_of(store, held.seen.id), held.description.instrument)


def sheet_page(asked: Asked, shelf: Shelf) -> Response:
    """The sheet of a set-up: that of the operation that it goes with, where there is one."""
    with asked.keeping.opened() as store:
        held = shelf.held(store, instrument_id(asked))
        work = work_for(store, held)
        name = asked.words["setup"]
        operation = next((each for each in work.operations.values() if name in (each.sheet, each.name)), None)
        return _page(asked, store, shelf, held, work, sheet_of(held, work, name), operation, {})


def work_page(asked: Asked, shelf: Shelf) -> Response:
    """An operation, with its sheet where there is one; or a sheet that goes with no operation."""
    with asked.keeping.opened() as store:
        held = shelf.held(store, instrument_id(asked))
        work = work_for(store, held)
        return _work(asked, store, shelf, held, work, asked.words["operation"], {})


def asked_again(
    asked: Asked, store: Store, shelf: Shelf, held: Held, name: str, found: Mapping[str, Doubt]
) -> Response:
    """The page of an operation with what was typed, and under each field what is asked about it."""
    return _work(asked, store, shelf, held, work_for(store, held), name, found)


def _work(
    asked: Asked, store: Store, shelf: Shelf, held: Held, work: Work, name: str, found: Mapping[str, Doubt]
) -> Response:
    operation = work.operations.get(name)
    sheet = sheet_of(held, work, name) if operation is None else sheet_named(name, held.figures, work)
    return _page(asked, store, shelf, held, work, sheet, operation, found)


def work_named(held: Held, work: Work, name: str) -> str:
    """What work of a name is noted as: an operation by its own or its sheet's name, a sheet alone by its own.

    Raises Missing.
    """
    if name in work.operations:
        return name
    for each in work.operations.values():
        if name == each.sheet:
            return each.name
    return sheet_of(held, work, name).setup.name


def address_of_work(number: int, name: str) -> str:
    """Where an instrument's operation stands, or its sheet where the work is a sheet alone."""
    return f"/instrument/{number}/operation/{name}"


def sheet_of(held: Held, work: Work, name: str) -> Sheet:
    """The sheet of an operation, or the set-up of that name; raises Missing."""
    found = sheet_named(name, held.figures, work)
    if found is None:
        raise Missing(f"sheet {name}")
    return found


def _page(
    asked: Asked,
    store: Store,
    shelf: Shelf,
    held: Held,
    work: Work,
    sheet: Sheet | None,
    operation: Operation | None,
    found: Mapping[str, Doubt],
) -> Response:
    shower = shower_for(asked.session, sheet.figures if sheet else held.figures)
    setup = sheet.setup if sheet else None
    name = operation.name if operation else setup.name if setup else ""
    title = operation.what if operation else setup.title if setup else ""
    done = {each.operation: each for each in operations_done(store, held.seen.id)}
    lost = hangs_on(name, work, done, judged_on(store, shelf, held), shower.first)
    boxes = tuple(
        replace(each, typed=asked.one(MEASURED + each.address), doubt=found.get(each.address))
        for each in _boxes(store, held, sheet, operation, shower)
    )
    return asked.page(
        "sheet.html",
        422 if found else 200,
        doubts=found,
        elsewhere=[found[address] for address in found if all(box.address != address for box in boxes)],
        typed={key: asked.one(key) for key in ("note", "hours")},
        title=f"{held.seen.name}: {title}",
        heading=title,
        held=held,
        name=name,
        setup=setup,
        operation=operation,
        sheet=sheet_text(sheet, shower) if sheet and not sheet.setup.closed else None,
        closed=shower.filled(setup.closed) if setup else "",
        drawing=_drawing(sheet, shower),
        boxes=boxes,
        measured=_measured(asked, store, held, done.get(name), boxes),
        done=done.get(name),
        before=_missing(operation, work, done),
        lost=lost,
        told=_told(asked, held, work, name, tuple(done)),
        unit=shower.first,
    )


def _missing(operation: Operation | None, work: Work, done: dict[str, DoneOperation]) -> list[str]:
    """What comes before an operation and is not noted as done, in words."""
    return [work.operations[each].what for each in (operation.after if operation else ()) if each not in done]


def _told(asked: Asked, held: Held, work: Work, name: str, done: tuple[str, ...]) -> Told | None:
    """What was just noted means, against what the sheet of its work says."""
    wanted = wanted_at(name, held.figures, work)
    return told_of(held, wanted, asked.many("told"), name, done, shower_for(asked.session, held.figures))


def _drawing(sheet: Sheet | None, shower: Shower) -> Sized | None:
    picture = picture_of(sheet, shower) if sheet else ""
    return readable(inlined(picture)) if picture else None


def _boxes(store: Store, held: Held, sheet: Sheet | None, operation: Operation | None, shower: Shower) -> Iterator[Box]:
    """The fields for what is asked, each with what is wanted by the figures that the sheet goes by."""
    last = {each.address: each.written for each in measurements(store, held.seen.id)}
    asked = (*sheet.setup.boxes, *sheet.measure) if sheet else map(Ref[Any], operation.measure if operation else ())
    for figure in dict.fromkeys(asked):
        address = figure.address
        if wanted := _wanted(figure, shower):
            what = named_on(sheet.setup, figure, shower) if sheet else words_of(figure, shower)
            off = made_text(sheet.off(figure), shower) if sheet else ""
            yield Box(address, what, wanted, near_text(address, shower), last.get(address, ""), off)


def _measured(
    asked: Asked, store: Store, held: Held, done: DoneOperation | None, boxes: tuple[Box, ...]
) -> list[tuple[Measured, str]]:
    """What was measured at this work or of its figures, the last first, each with its moment by the clock."""
    asks = {box.address for box in boxes}
    found = [
        each
        for each in measured_rows(store, held.seen.id)
        if each.measurement.address in asks or (done is not None and each.done == done.id)
    ]
    return [(each, clock(each.at, asked.now)) for each in found]


def _wanted(figure: Ref[Any], shower: Shower) -> str:
    """What a figure should be; empty for one that this instrument does not have."""
    try:
        return shower.text(figure)
    except KeyError:
        return ""


def verdict_part(asked: Asked, shelf: Shelf) -> Response:
    """The verdict on a measurement as it is typed, by the figures that the sheet of its work goes by."""
    with asked.keeping.opened() as store:
        held = shelf.held(store, instrument_id(asked))
        work = work_for(store, held)
    address, written = asked.one("at"), asked.one(MEASURED + asked.one("at"))
    wanted = wanted_at(asked.one("work"), held.figures, work)
    found = verdict(held, wanted, address, written, shower_for(asked.session, wanted)) if written else None
    return HTMLResponse(render("verdict.html", verdict=found))
