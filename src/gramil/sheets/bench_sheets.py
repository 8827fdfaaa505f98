"""The set-up sheets as one PDF, one operation to a page, set by typst from `sheet.typ`."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from gramil.drawings.picture import Picture
from gramil.formatter import Formatter
from gramil.prints.pages import FrontPage
from gramil.sheets.page_size import page_size
from gramil.sheets.sheet import Sheet
from gramil.sheets.sheet_pages import book
from gramil.typeset import typeset

WIDEST = 6.0
"""A drawing wider than this many times its height gets no less height than this."""


@dataclass(frozen=True)
class Around:
    """Pages ahead of the sheets, and the drawings on these pages by name; `leaves` of templates come after them."""

    pages: Sequence[FrontPage] = ()
    drawings: Mapping[str, Picture] = field(default_factory=dict)
    leaves: Sequence[Mapping[str, Any]] = ()


NOTHING_AROUND = Around()
"""Sheets alone."""


def bench_sheets_pdf(
    sheets: Sequence[Sheet],
    formatter: Formatter,
    title: str,
    paper: str = "a4",
    leaves: Sequence[Mapping[str, Any]] = (),
) -> bytes:
    """All sheets of an instrument, in the units of `formatter`: an order of work, then a page for each that is needed.

    A page without a picture has room to sketch one. `leaves` are pages of templates that come after them. The same
    input gives the same bytes. Raises KeyError for a figure on a set-up that leads nowhere.
    """
    return sheets_pdf(sheets, formatter, title, paper, Around(leaves=leaves))


def sheets_pdf(
    sheets: Sequence[Sheet],
    formatter: Formatter,
    title: str,
    paper: str,
    around: Around = NOTHING_AROUND,
    with_sheets: bool = True,
) -> bytes:
    """The sheets, with pages ahead of them and after them: what a build book is made of.

    Without the sheets these pages stand alone, with the revision of the sheets that they belong to.
    """
    found = book(sheets, formatter, title)
    wanted = {name for page in around.pages for name in page["drawings"]}
    kept = {
        "page": page_size(paper),
        "book": found,
        "sheets": with_sheets,
        "pictures": [_picture(sheet.picture) for sheet in sheets if not sheet.setup.closed] if with_sheets else [],
        "drawings": {name: _picture(around.drawings[name]) for name in sorted(wanted & set(around.drawings))},
    }
    front = [{**page, "tables": list(page["tables"])} for page in around.pages]
    return typeset("sheet.typ", {**kept, "front": front, "leaves": list(around.leaves)})


def _picture(picture: Picture | None) -> dict[str, object] | None:
    if picture is None:
        return None
    own = {"svg": picture.svg, "ratio": _ratio(picture.svg), "least": picture.least, "key": picture.key}
    return {**own, "low": _picture(picture.low)}


def _ratio(svg: str) -> float:
    """Width over height of a drawing, from its viewBox; 3 if it has none."""
    match = re.search(r'viewBox="([-\d.eE]+) ([-\d.eE]+) ([\d.eE]+) ([\d.eE]+)"', svg)
    if match is None or not float(match[4]):
        return 3.0
    return min(float(match[3]) / float(match[4]), WIDEST)
