"""The tags that are printed to be found in a photograph: a black frame round four by four cells that say which it is.

No two tags are alike in five cells or more, however they are turned; mirrored they differ from every tag in four, so
that a picture taken through the paper, or turned over afterwards, is recognised as such. Our own choice of patterns.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm

CELLS = 4
"""Cells of the pattern along a side."""
ACROSS = CELLS + 2
"""Cells of a tag along a side, its frame with it."""
PATTERNS = (
    0xFC62, 0x86A3, 0x48B1, 0x1DCF, 0x59D4, 0x317D, 0x082F, 0x3876, 0x14B2, 0x9A22,
    0x548B, 0x1F3E, 0xE4DC, 0x02BC, 0x25B9, 0x79C9, 0x6B78, 0x2E6E, 0xE26D, 0xC7D2,
)  # fmt: skip
"""Sixteen bits a tag, the lowest the cell at the top left, then along the row; a set bit is a black cell."""
Cells = NDArray[np.bool_]
Array = NDArray[np.float64]


@dataclass(frozen=True)
class Piece:
    """A printed piece: its tags' corners by number, each (4, 2) in mm in the piece's own coordinates, y up."""

    tags: Mapping[int, Array]


@dataclass(frozen=True)
class Known:
    """Which tag a pattern is, and by how many quarter turns (clockwise as seen) it stands turned; or mirrored."""

    number: int
    turned: int
    mirrored: bool = False


def pattern(number: int) -> Cells:
    """The cells of a tag (4, 4), True for black, the top row first. Raises IndexError for a number that no tag has."""
    bits = PATTERNS[number]
    return np.array([bits >> place & 1 for place in range(CELLS**2)], dtype=bool).reshape(CELLS, CELLS)


def known(cells: Cells) -> Known | None:
    """The tag that has exactly this pattern of cells (4, 4); None if there is none."""
    return _known().get(cells.tobytes())


@cache
def _known() -> dict[bytes, Known]:
    """Every pattern in every way it may be seen."""
    seen: dict[bytes, Known] = {}
    for number in range(len(PATTERNS)):
        for turned in range(4):
            cells = np.ascontiguousarray(np.rot90(pattern(number), -turned))
            seen[cells.tobytes()] = Known(number, turned)
            seen[np.ascontiguousarray(cells[:, ::-1]).tobytes()] = Known(number, turned, mirrored=True)
    return seen


def black_cells(number: int) -> tuple[tuple[int, int], ...]:
    """The black cells of a tag as (column, row) from its top left, its frame with them."""
    whole = np.ones((ACROSS, ACROSS), dtype=bool)
    whole[1:-1, 1:-1] = pattern(number)
    return tuple((int(column), int(row)) for row, column in np.argwhere(whole))


def corners(side: Mm) -> Array:
    """The outer corners of a tag about its middle (4, 2), y up: top left, top right, bottom right, bottom left."""
    half = side / 2
    return np.array([(-half, half), (half, half), (half, -half), (-half, -half)])
