"""What is in a pack, as rows for its page of contents: each drawing with its files, its pages, and where it is used."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gramil.drawings.marks import Drawing
from gramil.graph import Figures
from gramil.prints.papers import headed, is_template
from gramil.prints.used_at import told_of, used_at
from gramil.shop.operations import Work
from gramil.writers.contents_page import DrawingRow, FileRow, contents_html
from gramil.writers.plain import true_or_stretched

PLACES = {
    "print": "To print",
    "cut": "To cut by: drawings for a machine or another program",
    "read": "To read",
}
"""The folders of a pack, in their order, and what is done with what lies in them."""
WHAT: Mapping[str, str] = {
    "templates": "every template at true scale, to cut out and cut by; print at 100 %, no fit to page",
    "photograph-strips": "four strips to lay round a plan or a template before it is photographed; print at 100 %",
    "bench-sheets": "one sheet an operation, in the order of the work, with a list of them ahead",
    "build-book": "the instrument in figures: lists, verdicts, strings, woods, every dimension by part",
    "cents-map": "how far each string is off at each fret, in cents",
    "cut-list": "every piece to be sawn, with its wood and its sizes, as a table for a spreadsheet or for labels",
    "dimensions": "every dimension, as a table for another program",
    "findings": "every verdict, for another program",
}
"""What the files other than drawings hold, by how their names begin."""


@dataclass(frozen=True)
class Packed:
    """What lies in a pack: its files by their places, and the titles of its sheets in order.

    `pages` are the first and the last page of each template in the PDF of all of them, on `paper`.
    """

    files: Sequence[str]
    sheets: Sequence[str]
    pages: Mapping[str, tuple[int, int]]
    paper: str


def contents(
    figures: Figures,
    work: Work,
    title: str,
    drawings: Sequence[Drawing],
    packed: Packed,
) -> bytes:
    """The page of contents of a pack, with a picture of each drawing."""
    files, pages = packed.files, packed.pages
    rows = {each.name: _row(each, figures, work, files, pages.get(each.name), packed.paper) for each in drawings}
    kinds = (
        ("Templates: to cut by, at true scale", [each for each in drawings if each.name in pages]),
        ("Plans: to hang up, at true scale", [e for e in drawings if is_template(e) and e.name not in pages]),
        ("Drawings: to look at", [each for each in drawings if not is_template(each)]),
    )
    folders = [(words, list(_files(folder, files, drawings))) for folder, words in PLACES.items()]
    pictures = [(words, [rows[each.name] for each in kind]) for words, kind in kinds]
    notes = ("Every file lies beside this page, in a folder by what is done with it: print, cut, read.",)
    return contents_html(title, notes, folders, pictures, packed.sheets)


def what_is_in(name: str) -> str:
    """What a file holds that is no drawing, by its name; empty for a drawing."""
    return next((what for begins, what in WHAT.items() if name.startswith(begins)), "")


def _files(folder: str, files: Sequence[str], drawings: Sequence[Drawing]) -> Iterator[FileRow]:
    """The files of a folder that are not among the pictures, then how many drawings lie there."""
    own = [each for each in files if each.startswith(f"{folder}/")]
    drawn = {each.name for each in drawings}
    pictured = [each for each in own if each.partition("/")[2].rsplit(".", 1)[0] in drawn]
    yield from (FileRow(each, what_is_in(each.partition("/")[2])) for each in own if each not in pictured)
    if pictured:
        kinds = " and ".join(dict.fromkeys(each.rsplit(".", 1)[1].upper() for each in pictured))
        yield FileRow(f"{folder}/", f"{len(pictured)} files of drawings ({kinds}), pictured below")


def _row(
    drawing: Drawing, figures: Figures, work: Work, files: Sequence[str], pages: tuple[int, int] | None, paper: str
) -> DrawingRow:
    own = [each for each in files if each.partition("/")[2].rsplit(".", 1)[0] == drawing.name]
    links = [(_named(each), each) for each in own]
    if pages is not None:
        whole = next(each for each in files if each.startswith("print/templates-"))
        links.insert(0, (_on_pages(pages, paper), f"{whole}#page={pages[0]}"))
    return DrawingRow(
        title=headed(figures, drawing),
        what=told_of(drawing, figures).what,
        picture=next(each for each in own if each.endswith(".svg")),
        scale=true_or_stretched(drawing),
        used=tuple(each.what for each in used_at(drawing, figures, work)),
        files=tuple(links),
    )


def _named(place: str) -> str:
    kind = place.rsplit(".", 1)[1].upper()
    return f"{kind}, on one page as large as itself" if kind == "PDF" else kind


def _on_pages(pages: tuple[int, int], paper: str) -> str:
    first, last = pages
    where = f"page {first}" if first == last else f"pages {first} to {last}"
    return f"{where} of the templates on {paper.upper() if len(paper) == 2 else paper}"
