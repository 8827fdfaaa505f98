"""The set-up sheets as one PDF, one operation a page, set by typst from `sheet.typ`."""

import re
from collections.abc import Mapping, Sequence
from typing import Literal

from gramil.prints.pages import FrontPage
from gramil.sheets.sheet import Sheet
from gramil.sheets.sheet_pages import book, in_order
from gramil.sheets.typeset import typeset
from gramil.show import Shower

Paper = Literal["a4", "letter", "a3", "roll"]
PAPERS: Mapping[str, str] = {"a4": "a4", "letter": "us-letter", "a3": "a3", "roll": "a4"}
"""Typst's name for each paper; sheets for a roll are still single sheets."""
WIDEST = 6.0
"""A drawing wider than this many times its height gets no less height than this."""


def bench_sheets_pdf(sheets: Sequence[Sheet], shower: Shower, title: str, paper: Paper = "a4") -> bytes:
    """All sheets of an instrument, in the units of `shower`: an order of work, then a page for each that is needed.

    A page whose picture is missing keeps room to sketch one. The same bytes for the same input. Raises KeyError for
    a figure on a set-up that leads nowhere.
    """
    return sheets_pdf(sheets, shower, title, paper, (), {})


def sheets_pdf(
    sheets: Sequence[Sheet],
    shower: Shower,
    title: str,
    paper: Paper,
    front: Sequence[FrontPage],
    drawings: Mapping[str, str],
) -> bytes:
    """The sheets, with pages ahead of them: what a build book is made of; `drawings` are theirs, SVG text by name."""
    found = book(sheets, shower, title)
    wanted = {name for page in front for name in page["drawings"]}
    kept = {
        "paper": PAPERS[paper],
        "large": paper == "a3",
        "book": found,
        "pictures": [_picture(sheet.picture) for sheet in in_order(sheets) if not sheet.setup.closed],
        "drawings": {name: _picture(drawings[name]) for name in sorted(wanted & set(drawings))},
    }
    return typeset("sheet.typ", {**kept, "front": list(front)})


def _picture(svg: str) -> dict[str, object] | None:
    return {"svg": svg, "ratio": _ratio(svg)} if svg else None


def _ratio(svg: str) -> float:
    """Width over height of a drawing, from its viewBox; 3 where it has none."""
    match = re.search(r'viewBox="([-\d.eE]+) ([-\d.eE]+) ([\d.eE]+) ([\d.eE]+)"', svg)
    if match is None or not float(match[4]):
        return 3.0
    return min(float(match[3]) / float(match[4]), WIDEST)
