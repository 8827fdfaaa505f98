"""How much a traced drawing may hold: far more than a plan of an instrument needs, and less than would stop a machine.

What is drawn once and shown many times (a block, an SVG `use`) is counted as often as it shows, before it is opened.
"""

import re

import numpy as np
from numpy.typing import NDArray

from gramil.faults import Fault, MakersFault

MOST_SHAPES = 25_000
"""Lines, curves, polylines and words, those of blocks as often as they show."""
MOST_POINTS = 400_000
"""Points on all lines and curves together."""
MOST_ON_A_LINE = 20_000
"""Points on one line or outline."""
MOST_DXF_LINES = 1_200_000
"""Lines of the text of a DXF file."""
MOST_LETTERS = 1_500_000
"""Letters in what is read of an SVG file: embedded pictures are not."""
MOST_ELEMENTS = 250_000
MOST_DEEP = 60
"""Blocks in blocks, groups in groups."""
MOST_DIGITS = 40
FARTHEST = 1e9
"""In the drawing's units: a place farther from its origin is a slip."""
_BYTES = frozenset({*(f"{code}" for code in range(310, 320)), "1004"})
"""Group codes of DXF whose value is bytes, written as hexadecimal digits."""
_LONG_NUMBER = re.compile(rf"[0-9]{{{MOST_DIGITS + 1}}}")


def too_much(what: str, file: str | None) -> MakersFault:
    """The refusal of a drawing that holds more than is read, `what` saying of what."""
    remedy = "Save the outline alone, as a drawing of its own"
    return MakersFault([Fault(what=what, why="A plan of an instrument has far less", remedy=remedy, file=file)])


def hold_number(found: float, most: int, of: str, file: str | None) -> None:
    """Raises MakersFault if there are more than `most` of something."""
    if found > most:
        raise too_much(f"the drawing has more than {most} {of}", file)


def hold_digits(text: str, file: str | None) -> None:
    """Raises MakersFault if a number in the text is longer than any that a drawing needs."""
    if _LONG_NUMBER.search(text):
        raise too_much(f"a number in the drawing has more than {MOST_DIGITS} digits", file)


def hold_digits_dxf(text: str, file: str | None) -> None:
    """The same for the text of a DXF file, whose pictures and other programs' data are written as digits too."""
    at = 0
    while found := _LONG_NUMBER.search(text, at):
        begins = text.rfind("\n", 0, found.start())
        if text[text.rfind("\n", 0, max(begins, 0)) + 1 : max(begins, 0)].strip() not in _BYTES:
            raise too_much(f"a number in the drawing has more than {MOST_DIGITS} digits", file)
        at = text.find("\n", found.end())
        at = len(text) if at < 0 else at


def hold_places(places: NDArray[np.float64], name: str, file: str | None) -> None:
    """Raises MakersFault if a place, of shape (n, 2), is not a number or implausibly far away."""
    if not np.isfinite(places).all():
        what = f"a place on {name} is not a number"
        raise MakersFault([Fault(what=what, remedy="Draw it anew, and save the drawing", file=file)])
    if places.size and np.abs(places).max() > FARTHEST:
        what = f"a place on {name} is {np.abs(places).max():.3g} units from the drawing's origin"
        raise MakersFault([Fault(what=what, remedy="Move it back, or take it away, and save the drawing", file=file)])
