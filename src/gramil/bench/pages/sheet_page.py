"""A sheet: one operation to a page, with big figures, its drawing, the proof before the cut, and a verdict on what was
measured.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from starlette.responses import HTMLResponse, Response

from gramil.acts.left_over import wood_for
from gramil.bench.ages import clock
from gramil.bench.doubts import Doubt
from gramil.bench.made_here import judged_on
from gramil.bench.measuring import MEASURED, MeasuredAs, measured_as, verdict
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import Missing, PageRequest
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.svg_in_page import Sized, inlined, readable
from gramil.bench.templating import render
from gramil.bench.units import formatter_for
from gramil.formatter import Formatter
from gramil.now.lost_work import hangs_on
from gramil.pack import picture_of
from gramil.prints.pages import named_on, near_text, words_of
from gramil.prints.whole import setups_of
from gramil.reference import Ref
from gramil.sheets.own_sheet import figures_for_sheet, sheet_named
from gramil.sheets.sheet import Sheet, made_text, read_on
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.corrections import Measured, measured_rows
from gramil.shop.operations import Operation, Work, needed
from gramil.shop.operations_done import DoneOperation, measurements, operations_done
from gramil.shop.own_operations import work_of
from gramil.store.opening import Store


@dataclass(frozen=True)
class Box:
    """A field for a measurement: its address, its words, what is wanted and how near, what was measured last.

    `off` is how far that is off; `unit` is that of a bare number; `typed` is what the field holds, `doubt` the question
    about that and `fault` what is wrong with it.
    """

    address: str
    what: str
    wanted: str
    near: str
    last: str
    off: str = ""
    unit: str = ""
    typed: str = ""
    doubt: Doubt | None = None
    fault: str = ""


@dataclass(frozen=True)
class Again:
    """Why a form comes back with what was typed: the questions about its fields and what is wrong with them, each by
    the figure's address.
    """

    doubts: Mapping[str, Doubt] = field(default_factory=dict)
    faults: Mapping[str, str] = field(default_factory=dict)

    def __bool__(self) -> bool:
        return bool(self.doubts or self.faults)


@dataclass(frozen=True)
class Line:
    """A line of the order of work: an operation or a sheet, its address, the day it was done, why it is not needed."""

    what: str
    address: str
    done: str
    closed: str


def sheets_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Every operation of an instrument in order, with those that have a sheet."""
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
        done = {each.operation: each.at[:10] for each in operations_done(store, held.seen.id)}
        work = work_for(store, held)
        lines = tuple(_lines(held, work, done))
        opened = tuple(each.what for each in work.operations.values() if _can_begin(each, done))
    return request.page(
        "sheets.html",
        title=f"{held.seen.name}, sheets",
        held=held,
        groups=_grouped(lines, opened),
        all=bool(request.one("all")),
    )


def _can_begin(operation: Operation, done: Mapping[str, str]) -> bool:
    """Whether nothing before an operation is still to be done."""
    return operation.name not in done and all(each in done for each in operation.after)


def _grouped(lines: tuple[Line, ...], opened: tuple[str, ...]) -> tuple[tuple[str, tuple[Line, ...]], ...]:
    """The work in groups: what can be begun, what waits, what is done, what is not needed."""
    groups: dict[str, list[Line]] = {"Can be begun": [], "Waits for work before it": [], "Done": [], "Not needed": []}
    for each in lines:
        kind = "Not needed" if each.closed else "Done" if each.done else ""
        groups[kind or ("Can be begun" if each.what in opened else "Waits for work before it")].append(each)
    return tuple((name, tuple(found)) for name, found in groups.items() if found)


def _lines(held: OpenInstrument, work: Work, done: dict[str, str]) -> Iterator[Line]:
    base = f"/instrument/{held.seen.id}"
    setups = {setup.name: setup for setup in setups_of(held.figures)}
    met = set()
    for each in work.operations.values():
        met.add(each.sheet)
        yield Line(each.what, f"{base}/operation/{each.name}", done.get(each.name, ""), "")
    for setup in setups.values():
        if setup.name not in met:
            formatter = Formatter(held.figures)
            yield Line(
                setup.title, f"{base}/sheet/{setup.name}", done.get(setup.name, ""), formatter.filled(setup.closed)
            )


def work_for(store: Store, held: OpenInstrument) -> Work:
    """The work that the instrument needs, by the shop's own list and by its own."""
    return needed(work_of(store, held.seen.id), held.description.instrument)


@dataclass(frozen=True)
class AtWork:
    """What a page of work is drawn from: who asks, the record, the instrument, and the work that it needs."""

    request: PageRequest
    store: Store
    open_instruments: OpenInstruments
    held: OpenInstrument
    work: Work


def _at_work(request: PageRequest, store: Store, open_instruments: OpenInstruments) -> AtWork:
    held = open_instruments.held(store, instrument_id(request))
    return AtWork(request, store, open_instruments, held, work_for(store, held))


def sheet_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The sheet of a set-up: that of the operation that it belongs to, if there is one."""
    with request.record.opened() as store:
        at = _at_work(request, store, open_instruments)
        name = request.words["setup"]
        operation = next((each for each in at.work.operations.values() if name in (each.sheet, each.name)), None)
        return _page(at, sheet_of(at.held, at.work, name), operation, Again())


def work_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """An operation, with its sheet if there is one; or a sheet that belongs to no operation."""
    with request.record.opened() as store:
        return _work(_at_work(request, store, open_instruments), request.words["operation"], Again())


def sheet_page_again(
    request: PageRequest, store: Store, open_instruments: OpenInstruments, name: str, again: Again
) -> Response:
    """The page of an operation with what was typed, and under each field the question about it or what is wrong."""
    return _work(_at_work(request, store, open_instruments), name, again)


def _work(at: AtWork, name: str, again: Again) -> Response:
    operation = at.work.operations.get(name)
    sheet = sheet_of(at.held, at.work, name) if operation is None else sheet_named(name, at.held.figures, at.work)
    return _page(at, sheet, operation, again)


def work_named(held: OpenInstrument, work: Work, name: str) -> str:
    """The name under which work is noted: an operation's, given its own or its sheet's name; a sheet's own if it has no
    operation.

    Raises Missing.
    """
    if name in work.operations:
        return name
    for each in work.operations.values():
        if name == each.sheet:
            return each.name
    return sheet_of(held, work, name).setup.name


def address_of_work(number: int, name: str) -> str:
    """The address of an instrument's operation, or of its sheet if the work is a sheet alone."""
    return f"/instrument/{number}/operation/{name}"


def sheet_of(held: OpenInstrument, work: Work, name: str) -> Sheet:
    """The sheet of an operation, or the set-up of that name; raises Missing."""
    found = sheet_named(name, held.figures, work)
    if found is None:
        raise Missing(f"sheet {name}")
    return found


def _page(at: AtWork, sheet: Sheet | None, operation: Operation | None, again: Again) -> Response:
    request, store, held, work = at.request, at.store, at.held, at.work
    formatter = formatter_for(request.session, sheet.figures if sheet else held.figures)
    setup = sheet.setup if sheet else None
    name = operation.name if operation else setup.name if setup else ""
    title = operation.what if operation else setup.title if setup else ""
    done = {each.operation: each for each in operations_done(store, held.seen.id)}
    lost = hangs_on(name, work, done, judged_on(store, at.open_instruments, held), formatter.first)
    boxes = tuple(
        replace(
            each,
            typed=request.one(MEASURED + each.address),
            doubt=again.doubts.get(each.address),
            fault=again.faults.get(each.address, ""),
        )
        for each in _boxes(store, held, sheet, operation, formatter)
    )
    return request.page(
        "sheet.html",
        422 if again else 200,
        doubts=again.doubts,
        wrong=again.faults,
        elsewhere=[again.doubts[each] for each in again.doubts if all(box.address != each for box in boxes)],
        typed={key: request.one(key) for key in ("note", "hours", "left")},
        left_of="" if name in done else wood_for(store, held.seen, name),
        title=f"{held.seen.name}: {title}",
        heading=title,
        held=held,
        name=name,
        setup=setup,
        operation=operation,
        sheet=sheet_text(sheet, formatter) if sheet and not sheet.setup.closed else None,
        closed=formatter.filled(setup.closed) if setup else "",
        drawing=_drawing(sheet, formatter),
        boxes=boxes,
        measured=_measured(request, store, held, done.get(name), boxes),
        done=done.get(name),
        before=_missing(operation, work, done),
        lost=lost,
        told=_measured_as(request, held, work, name, tuple(done)),
        unit=formatter.first,
    )


def _missing(operation: Operation | None, work: Work, done: dict[str, DoneOperation]) -> list[str]:
    """What should come before an operation and is not noted as done, in words."""
    return [work.operations[each].what for each in (operation.after if operation else ()) if each not in done]


def _measured_as(
    request: PageRequest, held: OpenInstrument, work: Work, name: str, done: tuple[str, ...]
) -> MeasuredAs | None:
    """What the latest measurement means, compared with what the sheet of its work says."""
    wanted = figures_for_sheet(name, held.figures, work)
    return measured_as(held, wanted, request.many("told"), name, done, formatter_for(request.session, held.figures))


def _drawing(sheet: Sheet | None, formatter: Formatter) -> Sized | None:
    picture = picture_of(sheet, formatter) if sheet else ""
    return readable(inlined(picture)) if picture else None


def _boxes(
    store: Store, held: OpenInstrument, sheet: Sheet | None, operation: Operation | None, formatter: Formatter
) -> Iterator[Box]:
    """The fields for what is to be measured, each with what is wanted by the figures on which the sheet is based."""
    last = {each.address: each.written for each in measurements(store, held.seen.id)}
    request = (*sheet.setup.boxes, *sheet.measure) if sheet else map(Ref[Any], operation.measure if operation else ())
    for figure in dict.fromkeys(request):
        address = figure.address
        if wanted := _wanted(figure, formatter):
            what = named_on(sheet.setup, figure, formatter) if sheet else words_of(figure, formatter)
            off = made_text(sheet.off(figure), formatter, read_on(sheet, figure)) if sheet else ""
            unit = bare_unit(figure, formatter)
            yield Box(address, what, wanted, near_text(address, formatter), last.get(address, ""), off, unit)


def bare_unit(figure: Ref[Any], formatter: Formatter) -> str:
    """The unit in which a bare number is read for a figure: the one shown first for a length, else its own."""
    unit = formatter.figures.unit_at(figure)
    return formatter.first if unit == "mm" else {"rad": "°", "cent": "cent", None: ""}.get(unit, unit or "")


def _measured(
    request: PageRequest, store: Store, held: OpenInstrument, done: DoneOperation | None, boxes: tuple[Box, ...]
) -> list[tuple[Measured, str]]:
    """What was measured at this work or of its figures, the newest first, each with its moment by the clock."""
    asks = {box.address for box in boxes}
    found = [
        each
        for each in measured_rows(store, held.seen.id)
        if each.measurement.address in asks or (done is not None and each.done == done.id)
    ]
    return [(each, clock(each.at, request.now)) for each in found]


def _wanted(figure: Ref[Any], formatter: Formatter) -> str:
    """What a figure should be; empty for one that this instrument does not have."""
    try:
        return formatter.text(figure)
    except KeyError:
        return ""


def verdict_part(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The verdict on a measurement as it is typed, by the figures that the sheet of its work goes by."""
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
        work = work_for(store, held)
    address, written = request.one("at"), request.one(MEASURED + request.one("at"))
    at = request.one("work")
    wanted = figures_for_sheet(at, held.figures, work)
    found = verdict(held, wanted, address, written, formatter_for(request.session, wanted), at) if written else None
    return HTMLResponse(render("verdict.html", verdict=found))
