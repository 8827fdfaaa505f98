"""The square that proves a print: where on a page there is blank room for it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from gramil.drawings.marks import Point
from gramil.writers.extents import Box, Vectors, bounds, points_on, touches
from gramil.writers.plain import Plain

ROOM_ROUND_SQUARE = 4.0
STEP, CELL = 8.0, 2.0
"""In mm: how far apart places for it are tried, and the cells in which the page is first seen to be blank or not."""


@dataclass(frozen=True)
class Proof:
    """The square for checking the print: its lower left corner on the drawing, and its side, in mm."""

    at: Point
    side: float


def proof_square(marks: Sequence[Plain], window: Box, crosses: Sequence[Box], sides: Sequence[float]) -> Proof | None:
    """The largest square for which a page has blank room, as high and as far left as possible; None if there is none.

    `window` is what the page shows of the drawing; `crosses` are the places of its crosses, `sides`
    the squares to try in mm, the largest first.
    """
    near = [(mark, bounds([mark])) for mark in marks if touches(mark, window)]
    inked = np.concatenate([np.empty((0, 2)), *(points_on(mark, CELL / 2) for mark, _ in near)])
    for side in sides:
        for at in _blank_places(inked, window, side):
            taken = _round((at[0] + side / 2, at[1] + side / 2), side / 2 + ROOM_ROUND_SQUARE)
            in_the_way = (mark for mark, box in near if meet(taken, box))
            if not any(meet(taken, cross) for cross in crosses) and not any(touches(m, taken) for m in in_the_way):
                return Proof(at, side)
    return None


def _blank_places(inked: Vectors, window: Box, side: float) -> Iterator[Point]:
    """Corners for a square on which none of these points lies, from the top down and from the left."""
    taken = side + 2 * ROOM_ROUND_SQUARE
    across, down = (int((window[axis + 2] - window[axis] - taken) // STEP) + 1 for axis in (0, 1))
    if across < 1 or down < 1:
        return
    cells, step = int(taken / CELL), int(STEP / CELL)
    size = (step * (across - 1) + cells, step * (down - 1) + cells)
    places = np.floor((inked - (window[0], window[3])) / (CELL, -CELL)).astype(int)
    inside = places[((places >= 0) & (places < size)).all(axis=1)]
    counted = np.zeros((size[0] + 1, size[1] + 1), dtype=int)
    np.add.at(counted, (inside[:, 0] + 1, inside[:, 1] + 1), 1)
    summed = counted.cumsum(axis=0).cumsum(axis=1)
    near, far = slice(0, size[0] - cells + 1, step), slice(cells, None, step)
    high, low = slice(0, size[1] - cells + 1, step), slice(cells, None, step)
    found = summed[far, low] - summed[near, low] - summed[far, high] + summed[near, high]
    for j, i in np.argwhere(found.T == 0):
        yield (window[0] + ROOM_ROUND_SQUARE + STEP * i, window[3] - ROOM_ROUND_SQUARE - side - STEP * j)


def _round(at: Point, reach: float) -> Box:
    return (at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach)


def meet(a: Box, b: Box) -> bool:
    """Whether two boxes overlap or touch."""
    return a[0] <= b[2] and b[0] <= a[2] and a[1] <= b[3] and b[1] <= a[3]
