"""Today on one page: the work that is open, its sheets and drawings, whole in one file, readable out of reach of the
bench.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.resources import files

from starlette.responses import Response

from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.sheet_page import work_for
from gramil.bench.stale_here import worked_out
from gramil.bench.svg_in_page import inlined
from gramil.bench.templating import render
from gramil.bench.units import formatter_for
from gramil.now.open_now import InstrumentNow, open_now
from gramil.now.states import bench_of_store
from gramil.pack import picture_of
from gramil.prints.pages import PageText
from gramil.sheets.own_sheet import sheet_named
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.instruments import instruments
from gramil.shop.operations import Operation, Work


@dataclass(frozen=True)
class TodaySheet:
    """An operation's sheet for today: its mark in the page, its words, what the sheet says, and its drawing."""

    mark: str
    what: str
    sheet: PageText | None
    drawing: str


@dataclass(frozen=True)
class TodayRow:
    """An instrument's day: what can be done, each with its sheet, and what is closed and why."""

    name: str
    sheets: tuple[TodaySheet, ...]
    closed: tuple[str, ...]


def today_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The day as one file that needs nothing else: no script, no font, no picture from elsewhere."""
    with request.record.opened() as store:
        bench = bench_of_store(store, request.now, worked_out(open_instruments))
        known = {each.name: each.id for each in instruments(store)}
        rows = []
        for each in open_now(bench.instruments, bench.shop):
            held = open_instruments.held(store, known[each.name])
            rows.append(_row(request, held, work_for(store, held), each))
    now = bench.shop.now
    day = f"{now:%A} {now.day} {now:%B} {now.year}, {now:%H:%M}"
    page = render("today.html", rows=rows, day=day, style=_style())
    headers = {"content-disposition": f'attachment; filename="today-{now:%Y-%m-%d}.html"'}
    return Response(page, media_type="text/html; charset=utf-8", headers=headers)


def _style() -> str:
    """The bench's own style without its fonts, which would have to be loaded."""
    css = (files("gramil") / "bench" / "static" / "bench.css").read_text(encoding="utf-8")
    return re.sub(r"@font-face \{[^}]*\}\n?", "", css)


def _row(request: PageRequest, held: OpenInstrument, work: Work, now: InstrumentNow) -> TodayRow:
    sheets = tuple(_sheet(request, held, work, each.operation) for each in now.open)
    return TodayRow(held.seen.name, sheets, tuple(_closed(now)))


def _closed(now: InstrumentNow) -> Iterator[str]:
    """What is closed, once for each reason."""
    for each in now.closed:
        yield f"{each.operation.what}: {each.why}"


def _sheet(request: PageRequest, held: OpenInstrument, work: Work, operation: Operation) -> TodaySheet:
    sheet = sheet_named(operation.name, held.figures, work)
    formatter = formatter_for(request.session, sheet.figures if sheet else held.figures)
    mark = f"{held.seen.id}-{operation.name}"
    shown = sheet is not None and not sheet.setup.closed
    picture = picture_of(sheet, formatter) if sheet and shown else ""
    return TodaySheet(mark, operation.what, sheet_text(sheet, formatter) if sheet and shown else None, inlined(picture))
