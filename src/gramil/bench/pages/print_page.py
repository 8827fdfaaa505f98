"""What can be printed of an instrument, at true scale: each file of the pack, made when it is asked for."""

from collections.abc import Callable, Mapping
from functools import partial

from starlette.responses import Response

from gramil import names as n
from gramil.bench.field_words import all_read
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import Missing, PageRequest
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.pages.sheet_page import work_for
from gramil.bench.units import formatter_for
from gramil.contents import what_is_in
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, MeasureError, read_length
from gramil.pack import PLANS, pack_makers, sheet_paper, single_sheet
from gramil.paper_sizes import ROLL, SIZES, read_paper
from gramil.print_choice import choices
from gramil.prints.whole import drawings_of
from gramil.sheets.own_sheet import every_sheet, sheet_named
from gramil.shop.operations import Work

KINDS: Mapping[str, str] = {
    "pdf": "application/pdf",
    "svg": "image/svg+xml",
    "dxf": "image/vnd.dxf",
    "csv": "text/csv; charset=utf-8",
    "json": "application/json",
    "html": "text/html; charset=utf-8",
}
"""What a file is, by how its name ends."""
PAPERS = (*SIZES, ROLL)
"""What is offered; any other size can be asked for by its two lengths."""
SHEET = "sheet-"
OWNERS = f"{SHEET}owner-air.pdf"
"""The page that goes with the instrument."""
BARS: Mapping[LengthUnit, tuple[str, str]] = {"mm": ("100 mm", "100"), "in": ("4 in", "4")}
"""The bar that proves a print in either unit: what it is called, and its length as a bare number."""
MOST_OFF = 0.05
"""A printer further off than this share is another fault than one of scale."""


def print_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The list of what can be printed, for the paper and the printer chosen."""
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
        work = work_for(store, held)
    formatter = formatter_for(request.session, held.figures)
    faults: tuple[Fault, ...] = ()
    try:
        paper, scale = paper_wanted(request, held), printer_of(request, formatter.first)
    except MakersFault as fault:
        faults, paper, scale = fault.faults, str(held.figures[n.shop_paper]), (1.0, 1.0)
    bar, length = BARS[formatter.first]
    names = [each.rpartition("/")[2] for each in pack_makers(held.figures, formatter, work, paper, scale)]
    titles = {each.name: each.title.removeprefix(f"{held.seen.name}, ") for each in drawings_of(held.figures)}
    plans = [f"{name}.pdf" for name in PLANS]
    files = [name for name in names if name.endswith(".pdf") and name not in plans]
    drawn = [name for name in names if name.endswith((".dxf", ".svg")) or name in plans]
    needed = [each.setup for each in every_sheet(held.figures, work) if not each.setup.closed]
    sheets = [(f"{SHEET}{setup.name}.pdf", setup.title) for setup in needed]
    return request.page(
        "print.html",
        422 if faults else 200,
        faults=faults,
        title=f"{held.seen.name}, print",
        held=held,
        paper=paper,
        papers=tuple(dict.fromkeys((*PAPERS, paper))),
        bar=bar,
        x=request.one("x", length),
        y=request.one("y", length),
        first=[(name, what_is_in(name)) for name in files],
        choices=choices(held.figures, formatter, work),
        owner=next((sheet for sheet in sheets if sheet[0] == OWNERS), None),
        sheets=[sheet for sheet in sheets if sheet[0] != OWNERS],
        drawings=[(name, titles.get(name.rsplit(".", 1)[0], "")) for name in drawn],
        tables=[name for name in names if name.endswith((".csv", ".json"))],
    )


def printed_file(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """One file, to be looked at or saved: of the pack, or the sheet of an operation or of a set-up."""
    name = request.words["file"]
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
        work = work_for(store, held)
    make = _maker(request, held, work, name)
    if make is None:
        raise Missing(f"file {name}")
    kind = KINDS[name.rsplit(".", 1)[-1]]
    shown = "inline" if kind == "application/pdf" else "attachment"
    headers = {"content-disposition": f'{shown}; filename="{held.seen.id}-{name}"'}
    return Response(make(), media_type=kind, headers=headers)


def _maker(request: PageRequest, held: OpenInstrument, work: Work, name: str) -> Callable[[], bytes] | None:
    """The function that makes a file of this name; None if there is none."""
    formatter, paper = formatter_for(request.session, held.figures), paper_wanted(request, held)
    if not (name.startswith(SHEET) and name.endswith(".pdf")):
        makers = pack_makers(held.figures, formatter, work, paper, printer_of(request, formatter.first))
        return next((make for place, make in makers.items() if place.rpartition("/")[2] == name), None)
    sheet = sheet_named(name.removeprefix(SHEET).removesuffix(".pdf"), held.figures, work)
    return (
        partial(single_sheet, sheet, formatter, sheet_paper(held.figures, paper))
        if sheet is not None and not sheet.setup.closed
        else None
    )


def paper_wanted(request: PageRequest, held: OpenInstrument) -> str:
    """The paper chosen for templates; the shop's own if none was."""
    wanted = request.one("paper")
    return read_paper(wanted) if wanted else str(held.figures[n.shop_paper])


def printer_of(request: PageRequest, unit: LengthUnit) -> tuple[float, float]:
    """What the bar measured on the last print, in each direction, over what it should."""
    length = BARS[unit][1]
    across, along = all_read(
        x=lambda: _share(request.one("x", length), "x", unit), y=lambda: _share(request.one("y", length), "y", unit)
    )
    return across, along


def _share(written: str, where: str, unit: LengthUnit) -> float:
    """A bare number in the unit that the page shows, or a length with its own."""
    bar, length = BARS[unit]
    try:
        share = read_length(written.replace(",", "."), unit) / read_length(length, unit)
    except MeasureError:
        share = 0.0
    if not abs(share - 1) <= MOST_OFF:
        such = "write mm, such as 99.8" if unit == "mm" else "write inches, such as 3.992"
        raise MakersFault.of(f'"{written}" is not what a {bar} bar measures', "", such, where=where)
    return share
