"""The pack: every file that goes to the bench for one instrument, by name, as bytes.

Nothing is calculated here: drawings, set-ups and findings come from the graph, files from the writers.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from gramil import names as n
from gramil.description.problems import meant, nearest
from gramil.drawings.marks import Drawing
from gramil.drawings.picture import Picture
from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.paper_sizes import for_sheets
from gramil.prints.papers import ON_SHEETS, is_template
from gramil.prints.whole import dimensions_of, drawings_of, findings_of
from gramil.shop.operations import Work
from gramil.writers.cents_map import cents_map_bytes
from gramil.writers.dxf import dxf_bytes
from gramil.writers.pdf import tiled_pdf, whole_pdf
from gramil.writers.svg import svg_bytes, svg_text
from gramil.writers.tables import dimensions_csv, dimensions_json, findings_json

if TYPE_CHECKING:
    from gramil.sheets.sheet import Sheet

Maker = Callable[[], bytes]
PLANS = ("plan-face", "plan-side", "face-plan", "neck")
"""Drawings at true scale to look at and to hang up, not to cut by: each is printed on one page as large as itself."""
TALLEST = 120.0
"""How tall a drawing on a sheet may be so that its letters are large enough, in mm; past this it has a table."""
TYPESET = ("build-book.pdf", "bench-sheets.pdf")
"""The files that the typesetter is longest at, longest first."""


def pack_makers(
    figures: Figures,
    formatter: Formatter,
    work: Work,
    paper: str,
    printer_scale: tuple[float, float] = (1.0, 1.0),
    sheets_on: str = "",
) -> Mapping[str, Maker]:
    """Each file of the pack with the function that makes it, in order; nothing is made until it is called.

    `paper` is that of the templates, `sheets_on` that of sheets and book; left out, it is the shop's own.
    `work` is what the instrument needs: it decides which measurements count for a sheet. Plans and templates show what
    is
    drawn.
    """
    return dict(_makers(figures, formatter, work, paper, printer_scale, sheets_on or sheet_paper(figures, paper)))


def sheet_paper(figures: Figures, templates: str = "") -> str:
    """The paper on which the shop's sheets are printed, whether or not its templates use another."""
    own: str = figures[n.shop_sheet_paper]
    return own or for_sheets(templates or figures[n.shop_paper], figures[n.shop_units])


def chosen_makers(
    figures: Figures,
    formatter: Formatter,
    work: Work,
    names: Sequence[str],
    paper: str,
    printer_scale: tuple[float, float] = (1.0, 1.0),
    sheets_on: str = "",
) -> Mapping[str, Maker]:
    """The templates and sheets of these names, each kind as one file, with the function that makes it.

    A name is a drawing's, a sheet's, or both. Raises MakersFault if this instrument has neither.
    """
    from gramil.sheets.own_sheet import every_sheet

    drawn = replace(formatter, figures=figures.with_pins({}))
    drawings = [each for each in drawings_of(drawn.figures) if is_template(each)]
    sheets = [each for each in every_sheet(figures, work) if not each.setup.closed]
    known = {*(each.name for each in drawings), *(each.setup.name for each in sheets)}
    for name in names:
        if name not in known:
            remedy = meant(nearest(name, sorted(known))) or f"there are {', '.join(sorted(known))}"
            raise MakersFault.of(f"there is no template and no sheet {name}", remedy=remedy)
    cut = [each for each in drawings if each.name in names]
    wanted = [each for each in sheets if each.setup.name in names]
    title, made = title_of(figures, formatter), dict[str, Maker]()
    if cut:
        made["templates.pdf"] = partial(tiled_pdf, cut, drawn.text, paper, printer_scale, heading=title)
    if wanted:
        made["sheets.pdf"] = partial(several_sheets, wanted, formatter, title, sheets_on or sheet_paper(figures, paper))
    return made


def several_sheets(sheets: Sequence["Sheet"], formatter: Formatter, title: str, paper: str) -> bytes:
    """Some sheets as one PDF, in the order given."""
    from gramil.sheets.bench_sheets import bench_sheets_pdf

    return bench_sheets_pdf([printed(sheet, formatter, paper) for sheet in sheets], formatter, title, paper)


def whole_pack(makers: Mapping[str, Maker]) -> Iterator[tuple[str, bytes]]:
    """Each file with its bytes, in the makers' order.

    Typesetting starts first and runs beside the rest, one document at a time: two at once would take half as much
    memory
    again. Raises whatever a maker function raises.
    """
    with ThreadPoolExecutor(max_workers=1) as beside:
        begun = {name: beside.submit(makers[name]) for name in TYPESET if name in makers}
        for name, maker in makers.items():
            yield name, begun[name].result() if name in begun else maker()


def _makers(
    figures: Figures, formatter: Formatter, work: Work, paper: str, printer_scale: tuple[float, float], sheets_on: str
) -> Iterator[tuple[str, Maker]]:
    drawn = replace(formatter, figures=figures.with_pins({}))  # the next board is cut by the same template
    drawings = tuple(drawing for drawing in drawings_of(drawn.figures) if not drawing.name.startswith(ON_SHEETS))
    templates = tuple(drawing for drawing in drawings if is_template(drawing))
    for drawing in drawings:
        if drawing in templates:
            yield f"{drawing.name}.dxf", partial(dxf_bytes, drawing, drawn.text)
        yield f"{drawing.name}.svg", partial(svg_bytes, drawing, drawn.text)
    for drawing in templates:
        if drawing.name in PLANS:
            yield f"{drawing.name}.pdf", partial(whole_pdf, drawing, drawn.text, heading=title_of(figures, formatter))
    to_cut = [drawing for drawing in templates if drawing.name not in PLANS]
    templates_pdf = partial(tiled_pdf, to_cut, drawn.text, paper, printer_scale, heading=title_of(figures, formatter))
    yield f"templates-{paper.replace(' ', '-')}.pdf", templates_pdf
    yield "bench-sheets.pdf", partial(bench_sheets, figures, formatter, work, sheets_on)
    yield "cents-map.svg", partial(cents_map_bytes, figures)
    names = dimensions_of(figures)
    yield "build-book.pdf", partial(build_book, figures, formatter, work, sheets_on)
    yield "dimensions.csv", lambda: dimensions_csv(figures, formatter, names).encode()
    yield "dimensions.json", lambda: dimensions_json(figures, formatter, names).encode()
    yield "findings.json", lambda: findings_json(findings_of(figures), formatter).encode()


def title_of(figures: Figures, formatter: Formatter) -> str:
    """The instrument's name, scale and hand, as printed on every template and sheet."""
    scales = {formatter.text(n.scale_bass): None, formatter.text(n.scale_treble): None}
    return f"{figures[n.instrument_name]}, scale {' to '.join(scales)}, {figures[n.instrument_handed]} hand"


def bench_sheets(figures: Figures, formatter: Formatter, work: Work, paper: str) -> bytes:
    """The set-up sheets as one PDF, one operation to a page."""
    from gramil.sheets.bench_sheets import bench_sheets_pdf
    from gramil.sheets.own_sheet import setup_sheets

    sheets = [printed(sheet, formatter, paper) for sheet in setup_sheets(figures, work)]
    return bench_sheets_pdf(sheets, formatter, title_of(figures, formatter), paper)


def single_sheet(sheet: "Sheet", formatter: Formatter, paper: str) -> bytes:
    """One sheet by itself as a PDF."""
    from gramil.sheets.bench_sheets import bench_sheets_pdf

    return bench_sheets_pdf([printed(sheet, formatter, paper)], formatter, title_of(sheet.made, formatter), paper)


def build_book(figures: Figures, formatter: Formatter, work: Work, paper: str) -> bytes:
    """The whole instrument as one PDF: title page, findings, lists, dimensions by part, and every sheet in order."""
    from gramil.prints.book_lists import SHOWN
    from gramil.sheets.build_book import build_book_pdf
    from gramil.sheets.own_sheet import setup_sheets

    shown = ((figures[each], tall) for each, tall in SHOWN)
    pictures = {each.name: _picture(each, formatter, paper, tall) for each, tall in shown if each.marks}
    sheets = [printed(sheet, formatter, paper) for sheet in setup_sheets(figures, work)]
    return build_book_pdf(sheets, formatter, pictures, title_of(figures, formatter), paper)


def printed(sheet: "Sheet", formatter: Formatter, paper: str) -> "Sheet":
    """A sheet with its drawing fitted to this paper, from the figures behind it, in the units of `formatter`."""
    if sheet.drawing is None:
        return sheet
    return replace(sheet, picture=_picture(sheet.drawing, sheet.formatter(formatter), paper, TALLEST))


def _picture(drawing: Drawing, formatter: Formatter, paper: str, tallest: float) -> Picture:
    from gramil.sheets.page_size import page_size, room_for_drawing
    from gramil.writers.legible import legible

    return legible(drawing, formatter.text, (room_for_drawing(paper), tallest * page_size(paper)["times"]))


def picture_of(sheet: "Sheet", formatter: Formatter) -> str:
    """A sheet's drawing for the screen, as SVG text; empty if it has none."""
    return "" if sheet.drawing is None else svg_text(sheet.drawing, sheet.formatter(formatter).text, captioned=False)
