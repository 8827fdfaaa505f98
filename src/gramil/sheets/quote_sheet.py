"""The quote sheet as a PDF: one plain page."""

from collections.abc import Sequence
from dataclasses import asdict, dataclass

from gramil.prints.pages import safe
from gramil.sheets.page_size import page_size
from gramil.typeset import typeset


@dataclass(frozen=True)
class Quote:
    """The sheet's content as text: facts are a word and a value; lines are what, hours (or nothing), and money."""

    title: str
    shop: str
    customer: str
    date: str
    facts: Sequence[tuple[str, str]]
    work: Sequence[tuple[str, str, str]]
    materials: Sequence[tuple[str, str, str]]
    total: str
    notes: Sequence[str]


def quote_pdf(quote: Quote, paper: str = "a4") -> bytes:
    """The sheet; the same bytes for the same input."""
    rows = {key: _safe(value) for key, value in asdict(quote).items()}
    return typeset("quote.typ", {**rows, "page": page_size(paper)})


def _safe(value: object) -> object:
    if isinstance(value, str):
        return safe(value)
    return [_safe(each) for each in value] if isinstance(value, list | tuple) else value
