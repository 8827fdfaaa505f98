"""The pack: every file that goes to the bench for one instrument, by name, as bytes.

The files lie in folders by what is done with them: `cut` by, `print`, `read`; a page of contents stands beside these.
Each page stands once: sheets are not repeated in the pack's build book. Nothing is calculated here: drawings, set-ups
and findings come from the graph, files from the writers.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from functools import cached_property, partial
from typing import TYPE_CHECKING

from gramil import names as n
from gramil.drawings.marks import Drawing
from gramil.drawings.picture import Picture
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.paper_sizes import for_sheets
from gramil.prints.papers import ON_SHEETS, is_template
from gramil.prints.whole import dimensions_of, drawings_of, findings_of
from gramil.shop.operations import Work
from gramil.writers.beside import labels_on
from gramil.writers.cents_map import cents_map_bytes
from gramil.writers.cut_list import cut_list_csv
from gramil.writers.pdf import Template, laid_out, pages_of, templates_pdf, whole_pdf
from gramil.writers.photo_strips import hold_strips, strips_pdf
from gramil.writers.spans import Resolve
from gramil.writers.svg import svg_bytes, svg_text
from gramil.writers.tables import dimensions_csv

if TYPE_CHECKING:
    from gramil.sheets.sheet import Sheet

Maker = Callable[[], bytes]
PLANS = ("plan-face", "plan-side", "face-plan", "neck")
"""Drawings at true scale to look at and to hang up, not to cut by: each is printed on one page as large as itself."""
TALLEST = 120.0
"""How tall a drawing on a sheet may be so that its letters are large enough, in mm; past this it has a table."""
CONTENTS = "contents.html"
BOOK, SHEETS = "read/build-book.pdf", "print/bench-sheets.pdf"
TYPESET = (SHEETS, BOOK)
"""The files that the typesetter is longest at, longest first."""


def pack_makers(
    figures: Figures,
    formatter: Formatter,
    work: Work,
    paper: str,
    printer_scale: tuple[float, float] = (1.0, 1.0),
    sheets_on: str = "",
) -> Mapping[str, Maker]:
    """Each file of the pack, by its place in it, with the function that makes it; nothing is made until it is called.

    `paper` is that of the templates, `sheets_on` that of sheets and book; left out, it is the shop's own.
    `work` is what the instrument needs: it decides which measurements count for a sheet. Plans and templates show what
    is drawn.
    """
    pack = _Pack(figures, formatter, work, paper, printer_scale, sheets_on or sheet_paper(figures, paper))
    made = {**dict(pack.to_cut_by()), **dict(pack.to_print()), **dict(pack.to_read())}
    return {CONTENTS: partial(pack.contents, tuple(made)), **made}


def sheet_paper(figures: Figures, templates: str = "") -> str:
    """The paper on which the shop's sheets are printed, whether or not its templates use another."""
    own: str = figures[n.shop_sheet_paper]
    return own or for_sheets(templates or figures[n.shop_paper], figures[n.shop_units])


def whole_pack(makers: Mapping[str, Maker]) -> Iterator[tuple[str, bytes]]:
    """Each file with its bytes, in the makers' order.

    Typesetting starts first and runs beside the rest, one document at a time: two at once would take half as much
    memory again. Left off before its end, nothing more is begun. Raises whatever a maker function raises.
    """
    with ThreadPoolExecutor(max_workers=1) as beside:
        begun = {name: beside.submit(makers[name]) for name in TYPESET if name in makers}
        try:
            for name, maker in makers.items():
                yield name, begun[name].result() if name in begun else maker()
        finally:
            for each in begun.values():
                each.cancel()


@dataclass(frozen=True)
class _Pack:
    """What a pack is made of, and its files by what is done with them."""

    figures: Figures
    formatter: Formatter
    work: Work
    paper: str
    printer_scale: tuple[float, float]
    sheets_on: str

    @cached_property
    def drawn(self) -> Formatter:
        """The figures as drawn: the next board is cut by the same template, whatever was measured on this one."""
        return as_drawn(self.formatter, self.figures)

    @cached_property
    def drawings(self) -> tuple[Drawing, ...]:
        return tuple(each for each in drawings_of(self.drawn.figures) if not each.name.startswith(ON_SHEETS))

    @cached_property
    def labels(self) -> Resolve:
        """What the figures on the drawings say."""
        return labels_on(self.drawings, self.drawn)

    @cached_property
    def templates(self) -> tuple[Drawing, ...]:
        return tuple(drawing for drawing in self.drawings if is_template(drawing))

    @cached_property
    def laid_out(self) -> tuple[Template, ...]:
        """The templates on their pages; the plans have pages of their own."""
        to_cut = [drawing for drawing in self.templates if drawing.name not in PLANS]
        return laid_out(to_cut, self.labels, self.paper, self.printer_scale, self.formatter.first)

    @cached_property
    def title(self) -> str:
        return title_of(self.figures, self.formatter)

    def with_hand(self, drawing: Drawing) -> Drawing:
        """A drawing that is a file of its own: its title says the hand, as the pages' heads do."""
        return replace(drawing, title=f"{drawing.title}, {self.figures[n.instrument_handed]} hand")

    def to_cut_by(self) -> Iterator[tuple[str, Maker]]:
        from gramil.writers.dxf import dxf_bytes  # its library is large, and a bench that is opened needs none of it

        own = self.figures[n.shop_layers]
        for drawing in map(self.with_hand, self.templates):
            yield f"cut/{drawing.name}.dxf", partial(dxf_bytes, drawing, self.labels, own)
            yield f"cut/{drawing.name}.svg", partial(svg_bytes, drawing, self.labels, self.formatter.first, own)

    def to_print(self) -> Iterator[tuple[str, Maker]]:
        if self.templates:
            yield f"print/templates-{slug(self.paper)}.pdf", lambda: templates_pdf(self.laid_out, self.title)
        for drawing in self.templates:
            if drawing.name in PLANS:
                whole = partial(whole_pdf, drawing, self.labels, heading=self.title, unit=self.formatter.first)
                yield f"print/{drawing.name}.pdf", whole
        if hold_strips(self.paper):
            strips = partial(strips_pdf, self.paper, self.printer_scale, self.formatter.first)
            yield f"print/photograph-strips-{slug(self.paper)}.pdf", strips
        yield SHEETS, partial(bench_sheets, self.figures, self.formatter, self.work, self.sheets_on)

    def to_read(self) -> Iterator[tuple[str, Maker]]:
        figures, formatter, names = self.figures, self.formatter, dimensions_of(self.figures)
        yield BOOK, partial(build_book, figures, formatter, self.work, self.sheets_on, with_sheets=False)
        for drawing in self.drawings:
            if drawing not in self.templates:
                yield (
                    f"read/{drawing.name}.svg",
                    partial(svg_bytes, self.with_hand(drawing), self.labels, self.formatter.first),
                )
        yield "read/cents-map.svg", partial(cents_map_bytes, figures)
        yield "read/cut-list.csv", partial(cut_list_csv, formatter)
        yield "read/dimensions.csv", lambda: dimensions_csv(figures, formatter, names).encode()
        yield "read/dimensions.json", partial(_dimensions_json, figures, formatter, names)
        yield "read/findings.json", partial(_findings_json, figures, formatter)

    def contents(self, files: Sequence[str]) -> bytes:
        """The page of contents of these files."""
        from gramil.contents import Packed, contents
        from gramil.sheets.own_sheet import sheets_of_a_set

        needed = [each.setup.title for each in sheets_of_a_set(self.figures, self.work) if not each.setup.closed]
        pages = pages_of(self.laid_out)
        return contents(self.figures, self.work, self.title, self.drawings, Packed(files, needed, pages, self.paper))


def _dimensions_json(figures: Figures, formatter: Formatter, names: Sequence[str]) -> bytes:
    from gramil.answers.answer import as_json, whose  # what is told to programs, no single template needs
    from gramil.answers.figures import dims_answer

    return as_json("dims", [whose(figures)], dims_answer(figures, formatter, names)).encode()


def _findings_json(figures: Figures, formatter: Formatter) -> bytes:
    from gramil.answers.answer import as_json, whose
    from gramil.answers.verdicts import check_answer

    return as_json("check", [whose(figures)], check_answer(findings_of(figures), formatter)).encode()


def as_drawn(formatter: Formatter, figures: Figures) -> Formatter:
    """How to show the figures as drawn, without what was measured."""
    return replace(formatter, figures=figures.with_pins({}))


def slug(paper: str) -> str:
    """A paper as it stands in a file's name."""
    return paper.replace(" ", "-")


def title_of(figures: Figures, formatter: Formatter) -> str:
    """The instrument's name, scale and hand, as printed on every template and sheet."""
    scales = {formatter.text(n.scale_bass): None, formatter.text(n.scale_treble): None}
    return f"{figures[n.instrument_name]}, scale {' to '.join(scales)}, {figures[n.instrument_handed]} hand"


def bench_sheets(figures: Figures, formatter: Formatter, work: Work, paper: str) -> bytes:
    """The set-up sheets as one PDF, one operation to a page."""
    from gramil.sheets.bench_sheets import bench_sheets_pdf
    from gramil.sheets.own_sheet import sheets_of_a_set

    sheets = [printed(sheet, formatter, paper) for sheet in sheets_of_a_set(figures, work)]
    return bench_sheets_pdf(sheets, formatter, title_of(figures, formatter), paper)


def single_sheet(sheet: "Sheet", formatter: Formatter, paper: str) -> bytes:
    """One sheet by itself as a PDF."""
    from gramil.sheets.bench_sheets import bench_sheets_pdf

    return bench_sheets_pdf([printed(sheet, formatter, paper)], formatter, title_of(sheet.made, formatter), paper)


def build_book(figures: Figures, formatter: Formatter, work: Work, paper: str, with_sheets: bool = True) -> bytes:
    """The instrument as one PDF: title page, findings, lists, dimensions by part, and every sheet in order.

    Without the sheets it is the book that lies in a pack beside them.
    """
    from gramil.prints.book_lists import SHOWN
    from gramil.sheets.build_book import build_book_pdf
    from gramil.sheets.own_sheet import setup_sheets

    shown = ((figures[each], tall) for each, tall in SHOWN)
    pictures = {each.name: _picture(each, formatter, paper, tall, lower=False) for each, tall in shown if each.marks}
    sheets = setup_sheets(figures, work)
    printed_ones = [printed(sheet, formatter, paper) for sheet in sheets] if with_sheets else sheets
    return build_book_pdf(printed_ones, formatter, pictures, title_of(figures, formatter), paper, with_sheets)


def printed(sheet: "Sheet", formatter: Formatter, paper: str) -> "Sheet":
    """A sheet with its drawing fitted to this paper, from the figures behind it, in the units of `formatter`."""
    if sheet.drawing is None:
        return sheet
    return replace(sheet, picture=_picture(sheet.drawing, sheet.formatter(formatter), paper, TALLEST))


def _picture(drawing: Drawing, formatter: Formatter, paper: str, tallest: float, lower: bool = True) -> Picture:
    from gramil.sheets.page_size import page_size, room_for_drawing
    from gramil.writers.legible import legible

    return legible(
        drawing,
        labels_on((drawing,), formatter),
        (room_for_drawing(paper), tallest * page_size(paper)["times"]),
        formatter.first,
        lower,
    )


def picture_of(sheet: "Sheet", formatter: Formatter) -> str:
    """A sheet's drawing for the screen, as SVG text; empty if it has none."""
    if sheet.drawing is None:
        return ""
    labels = labels_on((sheet.drawing,), sheet.formatter(formatter))
    return svg_text(sheet.drawing, labels, captioned=False, unit=formatter.first)
