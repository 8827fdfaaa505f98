"""The set-up sheets as one PDF, one operation a page, set by typst from `sheet.typ`."""

import re
from collections.abc import Mapping, Sequence
from typing import Literal

from gramil.prints.pages import FrontPage, book
from gramil.setups.setup import Setup
from gramil.sheets.typeset import typeset
from gramil.show import Shower

Paper = Literal["a4", "letter", "a3", "roll"]
PAPERS: Mapping[str, str] = {"a4": "a4", "letter": "us-letter", "a3": "a3", "roll": "a4"}
"""Typst's name for each paper; sheets for a roll are still single sheets."""
WIDEST = 6.0
"""A drawing wider than this many times its height gets no less height than this."""


def bench_sheets_pdf(
    setups: Sequence[Setup], shower: Shower, drawings: Mapping[str, str], title: str, paper: Paper = "a4"
) -> bytes:
    """All sheets of an instrument: an order of work, then a page for each set-up that is needed.

    `drawings` holds SVG text by drawing name; a page whose drawing is missing keeps room to sketch one. The same
    bytes for the same input. Raises KeyError for an address in a set-up that leads nowhere.
    """
    return sheets_pdf(setups, shower, drawings, title, paper, ())


def sheets_pdf(
    setups: Sequence[Setup],
    shower: Shower,
    drawings: Mapping[str, str],
    title: str,
    paper: Paper,
    front: Sequence[FrontPage],
) -> bytes:
    """The sheets, with pages ahead of them: what a build book is made of."""
    found = book(setups, shower, title)
    wanted = {page["drawing"] for page in found["pages"]} | {name for page in front for name in page["drawings"]}
    used = wanted & set(drawings)
    pictures = {name: {"svg": drawings[name], "ratio": _ratio(drawings[name])} for name in sorted(used)}
    kept = {"paper": PAPERS[paper], "large": paper == "a3", "book": found, "drawings": pictures}
    return typeset("sheet.typ", {**kept, "front": list(front)})


def _ratio(svg: str) -> float:
    """Width over height of a drawing, from its viewBox; 3 where it has none."""
    match = re.search(r'viewBox="([-\d.eE]+) ([-\d.eE]+) ([\d.eE]+) ([\d.eE]+)"', svg)
    if match is None or not float(match[4]):
        return 3.0
    return min(float(match[3]) / float(match[4]), WIDEST)
