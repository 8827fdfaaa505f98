"""The build book: the whole instrument on paper, from its title page to every sheet in order, the owner's air last."""

from collections.abc import Mapping, Sequence

from gramil.drawings.picture import Picture
from gramil.formatter import Formatter
from gramil.prints.book_pages import front_pages
from gramil.sheets.bench_sheets import Around, sheets_pdf
from gramil.sheets.sheet import Sheet


def build_book_pdf(
    sheets: Sequence[Sheet],
    formatter: Formatter,
    drawings: Mapping[str, Picture],
    title: str,
    paper: str = "a4",
    with_sheets: bool = True,
) -> bytes:
    """The whole book, or only the pages ahead of its sheets; `drawings` are those of these pages, by name.

    The same input gives the same bytes.
    """
    return sheets_pdf(sheets, formatter, title, paper, Around(tuple(front_pages(formatter)), drawings), with_sheets)
