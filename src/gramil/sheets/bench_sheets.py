"""The set-up sheets as one PDF, one operation to a page, set by typst from `sheet.typ`."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from gramil.drawings.picture import Picture
from gramil.formatter import Formatter
from gramil.prints.pages import FrontPage
from gramil.sheets.page_size import page_size
from gramil.sheets.sheet import Sheet
from gramil.sheets.sheet_pages import book
from gramil.sheets.typeset import typeset

WIDEST = 6.0
"""A drawing wider than this many times its height gets no less height than this."""


@dataclass(frozen=True)
class Ahead:
    """Pages ahead of the sheets, and the drawings on these pages by name."""

    pages: Sequence[FrontPage] = ()
    drawings: Mapping[str, Picture] = field(default_factory=dict)


NOTHING_AHEAD = Ahead()
"""Sheets alone."""


def bench_sheets_pdf(sheets: Sequence[Sheet], formatter: Formatter, title: str, paper: str = "a4") -> bytes:
    """All sheets of an instrument, in the units of `formatter`: an order of work, then a page for each that is needed.

    A page without a picture has room to sketch one. The same input gives the same bytes. Raises KeyError for
    a figure on a set-up that leads nowhere.
    """
    return sheets_pdf(sheets, formatter, title, paper)


def sheets_pdf(
    sheets: Sequence[Sheet],
    formatter: Formatter,
    title: str,
    paper: str,
    ahead: Ahead = NOTHING_AHEAD,
    with_sheets: bool = True,
) -> bytes:
    """The sheets, with pages ahead of them: what a build book is made of.

    Without the sheets these pages stand alone, with the revision of the sheets that they belong to.
    """
    found = book(sheets, formatter, title)
    wanted = {name for page in ahead.pages for name in page["drawings"]}
    kept = {
        "page": page_size(paper),
        "book": found,
        "sheets": with_sheets,
        "pictures": [_picture(sheet.picture) for sheet in sheets if not sheet.setup.closed] if with_sheets else [],
        "drawings": {name: _picture(ahead.drawings[name]) for name in sorted(wanted & set(ahead.drawings))},
    }
    return typeset("sheet.typ", {**kept, "front": list(ahead.pages)})


def _picture(picture: Picture | None) -> dict[str, object] | None:
    if picture is None:
        return None
    return {"svg": picture.svg, "ratio": _ratio(picture.svg), "least": picture.least, "key": picture.key}


def _ratio(svg: str) -> float:
    """Width over height of a drawing, from its viewBox; 3 if it has none."""
    match = re.search(r'viewBox="([-\d.eE]+) ([-\d.eE]+) ([\d.eE]+) ([\d.eE]+)"', svg)
    if match is None or not float(match[4]):
        return 3.0
    return min(float(match[3]) / float(match[4]), WIDEST)
