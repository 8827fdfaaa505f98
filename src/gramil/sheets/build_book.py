"""The build book: the whole instrument on paper, from its title page to every sheet in order, the owner's air last."""

from collections.abc import Mapping, Sequence

from gramil.drawings.picture import Picture
from gramil.prints.book_pages import front_pages
from gramil.sheets.bench_sheets import sheets_pdf
from gramil.sheets.sheet import Sheet
from gramil.show import Shower


def build_book_pdf(
    sheets: Sequence[Sheet], shower: Shower, drawings: Mapping[str, Picture], title: str, paper: str = "a4"
) -> bytes:
    """The whole book; `drawings` of its front pages are by name. The same bytes for the same input."""
    return sheets_pdf(sheets, shower, title, paper, tuple(front_pages(shower)), drawings)
