"""The pack: every file that goes to the bench for one instrument, by name, as bytes.

Nothing here works a figure out; it asks the graph for drawings, set-ups and findings, and the writers for files.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from functools import partial

from gramil import names as n
from gramil.drawings.marks import Drawing
from gramil.graph import Figures
from gramil.prints.papers import ON_SHEETS, is_template
from gramil.prints.whole import dimensions_of, drawings_of, findings_of, setups_of
from gramil.reference import Ref
from gramil.setups.setup import Setup
from gramil.show import Shower
from gramil.writers.cents_map import cents_map_bytes
from gramil.writers.dxf import dxf_bytes
from gramil.writers.paper import PaperName
from gramil.writers.pdf import tiled_pdf
from gramil.writers.svg import svg_bytes, svg_text
from gramil.writers.tables import dimensions_csv, dimensions_json, findings_json

Maker = Callable[[], bytes]
TYPESET = ("build-book.pdf", "bench-sheets.pdf")
"""The files that the typesetter is longest at, longest first."""


def pack_makers(
    figures: Figures, shower: Shower, paper: PaperName, printer_scale: tuple[float, float] = (1.0, 1.0)
) -> Mapping[str, Maker]:
    """Each file of the pack with the function that makes it, in order; nothing is made until it is called."""
    return dict(_makers(figures, shower, paper, printer_scale))


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
    figures: Figures, shower: Shower, paper: PaperName, printer_scale: tuple[float, float]
) -> Iterator[tuple[str, Maker]]:
    drawings = tuple(drawing for drawing in drawings_of(figures) if not drawing.name.startswith(ON_SHEETS))
    templates = tuple(drawing for drawing in drawings if is_template(drawing))
    for drawing in drawings:
        if drawing in templates:
            yield f"{drawing.name}.dxf", partial(dxf_bytes, drawing, shower.text)
        yield f"{drawing.name}.svg", partial(svg_bytes, drawing, shower.text)
    templates_pdf = partial(tiled_pdf, templates, shower.text, paper, printer_scale, heading=title_of(figures, shower))
    yield f"templates-{paper}.pdf", templates_pdf
    yield "bench-sheets.pdf", partial(bench_sheets, figures, shower, paper)
    yield "cents-map.svg", partial(cents_map_bytes, figures)
    names = dimensions_of(figures)
    yield "build-book.pdf", partial(build_book, figures, shower, paper)
    yield "dimensions.csv", lambda: dimensions_csv(figures, shower, names).encode()
    yield "dimensions.json", lambda: dimensions_json(figures, shower, names).encode()
    yield "findings.json", lambda: findings_json(findings_of(figures), shower).encode()


def title_of(figures: Figures, shower: Shower) -> str:
    """The instrument's name and scale, as they stand on every template."""
    scales = {shower.text(n.scale_bass): None, shower.text(n.scale_treble): None}
    return f"{figures[n.instrument_name]}, scale {' to '.join(scales)}"


def bench_sheets(figures: Figures, shower: Shower, paper: PaperName) -> bytes:
    """The set-up sheets as one PDF, one operation a page."""
    from gramil.sheets.bench_sheets import bench_sheets_pdf

    setups = setups_of(figures)
    pictures = pictures_of(figures, shower, setups)
    return bench_sheets_pdf(setups, shower, pictures, title_of(figures, shower), paper)


def build_book(figures: Figures, shower: Shower, paper: PaperName) -> bytes:
    """The whole instrument as one PDF: title page, findings, lists, dimensions by part, and every sheet in order."""
    from gramil.prints.book_lists import SHOWN
    from gramil.sheets.build_book import LETTERED, build_book_pdf
    from gramil.sheets.lettering import lettered

    large = (lettered(figures[each], by) for each, by in LETTERED.items())
    pictures = {
        **pictures_of(figures, shower, setups_of(figures)),
        **_pictures(figures, shower, SHOWN),
        **{each.name: svg_text(each, shower.text, captioned=False) for each in large if each.marks},
    }
    return build_book_pdf(shower, pictures, title_of(figures, shower), paper)


def pictures_of(figures: Figures, shower: Shower, setups: Iterable[Setup]) -> dict[str, str]:
    """The drawings of set-up sheets, as SVG text by name."""
    return _pictures(figures, shower, (setup.drawing for setup in setups if setup.drawing is not None))


def _pictures(figures: Figures, shower: Shower, wanted: Iterable[Ref[Drawing]]) -> dict[str, str]:
    """The drawings wanted that have anything on them, as SVG text by name."""
    drawings = (figures[each] for each in wanted)
    return {each.name: svg_text(each, shower.text, captioned=False) for each in drawings if each.marks}
