"""The pack: every file that goes to the bench for one instrument, by name, as bytes.

Nothing here works a figure out; it asks the graph for drawings, set-ups and findings, and the writers for files.
"""

from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from gramil import names as n
from gramil.drawings.marks import Drawing
from gramil.graph import Figures
from gramil.prints.papers import ON_SHEETS, is_template
from gramil.prints.whole import dimensions_of, drawings_of, findings_of
from gramil.shop.operations import Work
from gramil.show import Shower
from gramil.writers.cents_map import cents_map_bytes
from gramil.writers.dxf import dxf_bytes
from gramil.writers.paper import PaperName
from gramil.writers.pdf import tiled_pdf
from gramil.writers.svg import svg_bytes, svg_text
from gramil.writers.tables import dimensions_csv, dimensions_json, findings_json

if TYPE_CHECKING:
    from gramil.sheets.sheet import Sheet

Maker = Callable[[], bytes]
TYPESET = ("build-book.pdf", "bench-sheets.pdf")
"""The files that the typesetter is longest at, longest first."""


def pack_makers(
    figures: Figures, shower: Shower, work: Work, paper: PaperName, printer_scale: tuple[float, float] = (1.0, 1.0)
) -> Mapping[str, Maker]:
    """Each file of the pack with the function that makes it, in order; nothing is made until it is called.

    `work` is what the instrument needs: it says which measurements a sheet goes by. Plans and templates go by what is
    drawn.
    """
    return dict(_makers(figures, shower, work, paper, printer_scale))


def whole_pack(makers: Mapping[str, Maker]) -> Iterator[tuple[str, bytes]]:
    """Each file with its bytes, in the makers' order.

    What is typeset is begun first and set beside the rest, one at a time: two at once would take half as much memory
    again. Raises what a maker raises.
    """
    with ThreadPoolExecutor(max_workers=1) as beside:
        begun = {name: beside.submit(makers[name]) for name in TYPESET if name in makers}
        for name, maker in makers.items():
            yield name, begun[name].result() if name in begun else maker()


def _makers(
    figures: Figures, shower: Shower, work: Work, paper: PaperName, printer_scale: tuple[float, float]
) -> Iterator[tuple[str, Maker]]:
    drawn = replace(shower, figures=figures.with_pins({}))  # the next board is cut by the same template
    drawings = tuple(drawing for drawing in drawings_of(drawn.figures) if not drawing.name.startswith(ON_SHEETS))
    templates = tuple(drawing for drawing in drawings if is_template(drawing))
    for drawing in drawings:
        if drawing in templates:
            yield f"{drawing.name}.dxf", partial(dxf_bytes, drawing, drawn.text)
        yield f"{drawing.name}.svg", partial(svg_bytes, drawing, drawn.text)
    templates_pdf = partial(tiled_pdf, templates, drawn.text, paper, printer_scale, heading=title_of(figures, shower))
    yield f"templates-{paper}.pdf", templates_pdf
    yield "bench-sheets.pdf", partial(bench_sheets, figures, shower, work, paper)
    yield "cents-map.svg", partial(cents_map_bytes, figures)
    names = dimensions_of(figures)
    yield "build-book.pdf", partial(build_book, figures, shower, work, paper)
    yield "dimensions.csv", lambda: dimensions_csv(figures, shower, names).encode()
    yield "dimensions.json", lambda: dimensions_json(figures, shower, names).encode()
    yield "findings.json", lambda: findings_json(findings_of(figures), shower).encode()


def title_of(figures: Figures, shower: Shower) -> str:
    """The instrument's name and scale, as they stand on every template."""
    scales = {shower.text(n.scale_bass): None, shower.text(n.scale_treble): None}
    return f"{figures[n.instrument_name]}, scale {' to '.join(scales)}"


def bench_sheets(figures: Figures, shower: Shower, work: Work, paper: PaperName) -> bytes:
    """The set-up sheets as one PDF, one operation a page."""
    from gramil.sheets.bench_sheets import bench_sheets_pdf
    from gramil.sheets.own_sheet import setup_sheets

    sheets = [pictured(sheet, shower) for sheet in setup_sheets(figures, work)]
    return bench_sheets_pdf(sheets, shower, title_of(figures, shower), paper)


def single_sheet(sheet: "Sheet", shower: Shower, paper: PaperName) -> bytes:
    """One sheet by itself as a PDF."""
    from gramil.sheets.bench_sheets import bench_sheets_pdf

    return bench_sheets_pdf([pictured(sheet, shower)], shower, title_of(sheet.made, shower), paper)


def build_book(figures: Figures, shower: Shower, work: Work, paper: PaperName) -> bytes:
    """The whole instrument as one PDF: title page, findings, lists, dimensions by part, and every sheet in order."""
    from gramil.prints.book_lists import SHOWN
    from gramil.sheets.build_book import LETTERED, build_book_pdf
    from gramil.sheets.lettering import lettered
    from gramil.sheets.own_sheet import setup_sheets

    larger = {figures[each].name: by for each, by in LETTERED.items()}

    def large(drawing: Drawing) -> Drawing:
        return lettered(drawing, larger[drawing.name]) if drawing.name in larger else drawing

    wanted = (figures[each] for each in (*SHOWN, *LETTERED))
    pictures = {each.name: svg_text(large(each), shower.text, captioned=False) for each in wanted if each.marks}
    sheets = [pictured(sheet, shower, large) for sheet in setup_sheets(figures, work)]
    return build_book_pdf(sheets, shower, pictures, title_of(figures, shower), paper)


def pictured(sheet: "Sheet", shower: Shower, drawn: Callable[[Drawing], Drawing] = lambda each: each) -> "Sheet":
    """A sheet with its drawing as it is `drawn`, by the figures that it goes by, in the units of `shower`."""
    if sheet.drawing is None:
        return sheet
    return replace(sheet, picture=svg_text(drawn(sheet.drawing), sheet.shower(shower).text, captioned=False))
