"""What can be printed of an instrument, at true scale: each file of the pack, made when it is asked for."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import get_args

from starlette.responses import Response

from gramil import names as n
from gramil.bench.asking import Asked, Missing
from gramil.bench.instrument_page import instrument_id
from gramil.bench.sheet_page import work_for
from gramil.bench.shelf import Held, Shelf
from gramil.bench.units import shower_for
from gramil.faults import MakersFault
from gramil.pack import pack_makers, pictures_of, title_of
from gramil.prints.whole import drawings_of
from gramil.setups.setup import Setup
from gramil.sheets.bench_sheets import bench_sheets_pdf
from gramil.sheets.own_sheet import every_sheet
from gramil.shop.opening import Store
from gramil.show import Shower
from gramil.writers.paper import PaperName

KINDS: Mapping[str, str] = {
    "pdf": "application/pdf",
    "svg": "image/svg+xml",
    "dxf": "image/vnd.dxf",
    "csv": "text/csv; charset=utf-8",
    "json": "application/json",
}
"""What a file is, by how its name ends."""
PAPERS: tuple[PaperName, ...] = get_args(PaperName)
SHEET = "sheet-"
OWNERS = f"{SHEET}owner-air.pdf"
"""The page that goes with the instrument."""
WHAT = {
    "templates": "every template, to cut out and cut by",
    "bench-sheets": "one sheet an operation, in the order of the work",
    "build-book": "the whole of it: lists, figures, plans and sheets",
}
"""What the first files hold, by how their names begin."""
MOST_OFF = 0.05
"""A printer further off than this share is another fault than one of scale."""


def print_page(asked: Asked, shelf: Shelf) -> Response:
    """The list of what can be printed, for the paper and the printer chosen."""
    with asked.keeping.opened() as store:
        held = shelf.held(store, instrument_id(asked))
        needed = _sheets(store, held)
    paper, scale = _paper(asked, held), _printer(asked)
    names = list(_makers(asked, held, needed, paper, scale))
    titles = {each.name: each.title.removeprefix(f"{held.seen.name}, ") for each in drawings_of(held.figures)}
    files = [name for name in names if name.endswith(".pdf") and not name.startswith(SHEET)]
    sheets = [(f"{SHEET}{setup.name}.pdf", setup.title) for setup in needed]
    return asked.page(
        "print.html",
        title=f"{held.seen.name}, print",
        held=held,
        paper=paper,
        papers=PAPERS,
        x=asked.one("x", "100"),
        y=asked.one("y", "100"),
        first=[(name, next((what for begins, what in WHAT.items() if name.startswith(begins)), "")) for name in files],
        owner=next((sheet for sheet in sheets if sheet[0] == OWNERS), None),
        sheets=[sheet for sheet in sheets if sheet[0] != OWNERS],
        drawings=[(name, titles.get(name.rsplit(".", 1)[0], "")) for name in names if name.endswith((".dxf", ".svg"))],
        tables=[name for name in names if name.endswith((".csv", ".json"))],
    )


def printed_file(asked: Asked, shelf: Shelf) -> Response:
    """One file, to be looked at or saved."""
    name = asked.words["file"]
    with asked.keeping.opened() as store:
        held = shelf.held(store, instrument_id(asked))
        sheets = _sheets(store, held)
    makers = _makers(asked, held, sheets, _paper(asked, held), _printer(asked))
    if name not in makers:
        raise Missing(f"file {name}")
    kind = KINDS[name.rsplit(".", 1)[-1]]
    shown = "inline" if kind == "application/pdf" else "attachment"
    headers = {"content-disposition": f'{shown}; filename="{held.seen.id}-{name}"'}
    return Response(makers[name](), media_type=kind, headers=headers)


def _sheets(store: Store, held: Held) -> tuple[Setup, ...]:
    """Every sheet that this instrument needs."""
    return tuple(each for each in every_sheet(held.figures, work_for(store, held)) if not each.closed)


def _makers(
    asked: Asked, held: Held, sheets: tuple[Setup, ...], paper: PaperName, scale: tuple[float, float]
) -> Mapping[str, Callable[[], bytes]]:
    shower = shower_for(asked.session, held.figures)
    single = {f"{SHEET}{setup.name}.pdf": partial(_sheet, held, shower, setup, paper) for setup in sheets}
    return {**pack_makers(held.figures, shower, paper, scale), **single}


def _sheet(held: Held, shower: Shower, setup: Setup, paper: PaperName) -> bytes:
    pictures = pictures_of(held.figures, shower, [setup])
    return bench_sheets_pdf([setup], shower, pictures, title_of(held.figures, shower), paper)


def _paper(asked: Asked, held: Held) -> PaperName:
    wanted = asked.one("paper")
    return next((paper for paper in PAPERS if paper == wanted), held.figures[n.shop_paper])


def _printer(asked: Asked) -> tuple[float, float]:
    """What a 100 mm bar measured on the last print, each way, over 100."""
    return _share(asked.one("x", "100"), "x"), _share(asked.one("y", "100"), "y")


def _share(written: str, where: str) -> float:
    try:
        share = float(written.replace(",", ".")) / 100
    except ValueError:
        share = 0.0
    if not abs(share - 1) <= MOST_OFF:
        raise MakersFault.of(
            f'"{written}" is not what a 100 mm bar measures', "", "write mm, such as 99.8", where=where
        )
    return share
