"""A sheet: one operation a page, big figures, its drawing, the proof before the cut, and what was measured, judged."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from starlette.responses import HTMLResponse, Response

from gramil.bench.ages import clock
from gramil.bench.asking import Asked, Missing
from gramil.bench.doubts import Doubt
from gramil.bench.instrument_page import instrument_id
from gramil.bench.made_here import judged_on
from gramil.bench.measuring import MEASURED, told_of, verdict
from gramil.bench.shelf import Held, Shelf
from gramil.bench.svg_in_page import Sized, inlined, readable
from gramil.bench.templating import render
from gramil.bench.units import shower_for
from gramil.now.lost_work import hangs_on
from gramil.pack import title_of
from gramil.prints.pages import PageText, book, near_text, words_of
from gramil.prints.whole import setups_of
from gramil.setups.setup import Setup
from gramil.sheets.own_sheet import every_sheet, own_sheet
from gramil.shop.corrections import Measured, measured_rows
from gramil.shop.opening import Store
from gramil.shop.operations import Operation, Work, needed
from gramil.shop.operations_done import DoneOperation, measurements, operations_done
from gramil.shop.own_operations import work_of
from gramil.show import Shower, shown
from gramil.writers.svg import svg_text


@dataclass(frozen=True)
class Box:
    """A field for a measurement: its address, its words, what is wanted and how near, and what was measured last.

    `typed` stands in it, and `doubt` is what is asked about that.
    """

    address: str
    what: str
    wanted: str
    near: str
    last: str
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
        return _page(asked, store, shelf, held, work, setup_of(held, work, name), operation, {})


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
    if operation is None:
        return _page(asked, store, shelf, held, work, setup_of(held, work, name), None, found)
    setup = setup_of(held, work, operation.sheet) if operation.sheet else own_sheet(operation, held.figures)
    return _page(asked, store, shelf, held, work, setup, operation, found)


def work_named(held: Held, work: Work, name: str) -> str:
    """What work of a name is noted as: an operation by its own or its sheet's name, a sheet alone by its own.

    Raises Missing.
    """
    if name in work.operations:
        return name
    for each in work.operations.values():
        if name == each.sheet:
            return each.name
    return setup_of(held, work, name).name


def address_of_work(number: int, name: str) -> str:
    """Where an instrument's operation stands, or its sheet where the work is a sheet alone."""
    return f"/instrument/{number}/operation/{name}"


def setup_of(held: Held, work: Work, name: str) -> Setup:
    """The sheet of a name; raises Missing."""
    found = next((setup for setup in every_sheet(held.figures, work) if setup.name == name), None)
    if found is None:
        raise Missing(f"sheet {name}")
    return found


def _page(
    asked: Asked,
    store: Store,
    shelf: Shelf,
    held: Held,
    work: Work,
    setup: Setup | None,
    operation: Operation | None,
    found: Mapping[str, Doubt],
) -> Response:
    shower = shower_for(asked.session, held.figures)
    open_setup = setup if setup is not None and not setup.closed else None
    name = operation.name if operation else setup.name if setup else ""
    title = operation.what if operation else setup.title if setup else ""
    done = {each.operation: each for each in operations_done(store, held.seen.id)}
    lost = hangs_on(name, work, done, judged_on(store, shelf, held), shower.first)
    boxes = tuple(
        replace(each, typed=asked.one(MEASURED + each.address), doubt=found.get(each.address))
        for each in _boxes(store, held, setup, operation, shower)
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
        sheet=_text(held, open_setup, shower),
        closed=shower.filled(setup.closed) if setup else "",
        drawing=_drawing(held, setup, shower),
        boxes=boxes,
        measured=_measured(asked, store, held, done.get(name), boxes),
        done=done.get(name),
        before=_missing(operation, work, done),
        lost=lost,
        told=told_of(held, asked.many("told"), name, tuple(done), shower),
        unit=shower.first,
    )


def _missing(operation: Operation | None, work: Work, done: dict[str, DoneOperation]) -> list[str]:
    """What comes before an operation and is not noted as done, in words."""
    return [work.operations[each].what for each in (operation.after if operation else ()) if each not in done]


def _text(held: Held, setup: Setup | None, shower: Shower) -> PageText | None:
    if setup is None:
        return None
    return book([setup], shower, title_of(held.figures, shower))["pages"][0]


def _drawing(held: Held, setup: Setup | None, shower: Shower) -> Sized | None:
    if setup is None or not setup.drawing:
        return None
    drawing = held.figures[setup.drawing]
    return readable(inlined(svg_text(drawing, shower.text, captioned=False))) if drawing.marks else None


def _boxes(store: Store, held: Held, setup: Setup | None, operation: Operation | None, shower: Shower) -> Iterator[Box]:
    last = {each.address: each.written for each in measurements(store, held.seen.id)}
    boxes = (box.address for box in setup.boxes) if setup else ()
    addresses = dict.fromkeys((*boxes, *(operation.measure if operation else ())))
    named = {figure.figure.address: shower.filled(figure.what) for figure in (setup.figures if setup else ())}
    for address in addresses:
        try:
            wanted = shown(held.figures.drawn(address), held.figures.unit_at(address), shower.first)
        except KeyError:
            wanted = _wanted(held, address, shower)
        if wanted:
            what = named.get(address) or words_of(address, shower)
            yield Box(address, what, wanted, near_text(address, shower), last.get(address, ""))


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


def _wanted(held: Held, address: str, shower: Shower) -> str:
    try:
        return shower.text(address)
    except KeyError:
        return ""


def verdict_part(asked: Asked, shelf: Shelf) -> Response:
    """The verdict on a measurement as it is typed."""
    with asked.keeping.opened() as store:
        held = shelf.held(store, instrument_id(asked))
    address = asked.one("at")
    written = asked.one(MEASURED + address)
    found = verdict(held, address, written, shower_for(asked.session, held.figures)) if written else None
    return HTMLResponse(render("verdict.html", verdict=found))
