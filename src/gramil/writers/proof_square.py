"""The square that proves a print: where on a page there is blank room for it."""

from collections.abc import Sequence
from dataclasses import dataclass

from gramil.drawings.marks import Point
from gramil.writers.blank_room import CELL, blank_rooms
from gramil.writers.extents import Box, box_round, points_on, touches
from gramil.writers.plain import Plain

ROOM_ROUND_SQUARE = 4.0
STEP = 8.0
"""How far apart places for it are tried, in mm."""


@dataclass(frozen=True)
class Proof:
    """The square for checking the print: its lower left corner on the drawing and its side, in mm, and its page.

    `page` counts the drawing's pages from 0.
    """

    at: Point
    side: float
    page: int = 0


def proof_square(marks: Sequence[Plain], window: Box, crosses: Sequence[Box], sides: Sequence[float]) -> Proof | None:
    """The largest square for which a page has blank room, as high and as far left as possible; None if there is none.

    `window` is what the page shows of the drawing; `crosses` are the places of its crosses, `sides`
    the squares to try in mm, the largest first.
    """
    near = [(mark, box_round(mark)) for mark in marks if touches(mark, window)]
    inked = points_on((mark for mark, _ in near), CELL / 2)
    for side in sides:
        whole = side + 2 * ROOM_ROUND_SQUARE
        for left, top in blank_rooms(inked, window, (whole, whole), STEP):
            at = (float(left) + ROOM_ROUND_SQUARE, float(top) - ROOM_ROUND_SQUARE - side)
            taken = _round((at[0] + side / 2, at[1] + side / 2), side / 2 + ROOM_ROUND_SQUARE)
            in_the_way = (mark for mark, box in near if meet(taken, box))
            if not any(meet(taken, cross) for cross in crosses) and not any(touches(m, taken) for m in in_the_way):
                return Proof(at, side)
    return None


def _round(at: Point, reach: float) -> Box:
    return (at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach)


def meet(a: Box, b: Box) -> bool:
    """Whether two boxes overlap or touch."""
    return a[0] <= b[2] and b[0] <= a[2] and a[1] <= b[3] and b[1] <= a[3]
