"""Labels for wood as a PDF: two columns to a page, to be cut apart and tied or taped on."""

from collections.abc import Sequence
from dataclasses import asdict, dataclass

from gramil.prints.pages import safe
from gramil.sheets.page_size import page_size
from gramil.typeset import typeset


@dataclass(frozen=True)
class Label:
    """One piece, as text: the name written on it, its wood, its sizes, the day, lines on where it lies and so on.

    It is tied to the face with its arrow along the grain. `permit` says whether its wood is protected, or may be.
    """

    name: str
    wood: str
    sizes: str
    date: str
    lines: tuple[str, ...]
    permit: str = ""


def labels_pdf(labels: Sequence[Label], paper: str = "a4") -> bytes:
    """The labels; the same input gives the same bytes."""
    rows = [{key: _safe(value) for key, value in asdict(each).items()} for each in labels]
    return typeset("labels.typ", {"labels": rows, "page": page_size(paper)})


def _safe(value: object) -> object:
    if isinstance(value, str):
        return safe(value)
    return [safe(each) for each in value] if isinstance(value, list | tuple) else value
