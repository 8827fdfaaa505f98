"""The build book: the whole instrument on paper, from its title page to every sheet in order, the owner's air last."""

from collections.abc import Mapping, Sequence

from gramil import names as n
from gramil.drawings.marks import Drawing
from gramil.prints.book_pages import front_pages
from gramil.reference import Ref
from gramil.sheets.bench_sheets import Paper, sheets_pdf
from gramil.sheets.sheet import Sheet
from gramil.show import Shower

LETTERED: Mapping[Ref[Drawing], float] = {
    n.drawing_plan_face: 3.0,
    n.drawing_plan_side: 3.0,
    n.drawing_neck_plank: 1.4,
    n.drawing_top_inside: 1.5,
    n.drawing_back_inside: 1.5,
}
"""How much larger figures are written on drawings that a page shows much smaller than they are."""


def build_book_pdf(
    sheets: Sequence[Sheet], shower: Shower, drawings: Mapping[str, str], title: str, paper: Paper = "a4"
) -> bytes:
    """The whole book; `drawings` of its front pages are SVG text by name. The same bytes for the same input."""
    return sheets_pdf(sheets, shower, title, paper, tuple(front_pages(shower)), drawings)
