"""The other of two lines is chosen: points that lay along the first are moved onto the line that runs beside it."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from gramil.photographs.ink import Beside, Followed
from gramil.photographs.plan import Grounds, Laid
from gramil.quantities import Mm

Array = NDArray[np.float64]
PAST_ITS_ENDS: Mm = 6.0
"""So far past the ends of the other line points are still moved onto it."""


def moved_beside(ground: Grounds, line: Followed, laid: Sequence[Laid], beside: Beside) -> list[Laid]:
    """The points, with those along the stretch moved onto the line beside it; if there are none, one is added in its
    middle.
    """
    near = np.hypot(*(line.points - np.array(beside.stretch.middle)).T)
    amid = int(near.argmin())
    ring = np.vstack((line.points, line.points[:1]))
    length = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(ring, axis=0).T))))
    reach = (beside.stretch.end - beside.stretch.start) / 2 + PAST_ITS_ENDS
    places = ground.places(laid)
    rows = [int(np.hypot(*(line.points - place).T).argmin()) for place in places]
    moved = [
        _on(ground, _off(line.points, row, beside.off), each) if _round(length, row, amid) <= reach else each
        for each, row in zip(laid, rows, strict=True)
    ]
    if any(_round(length, row, amid) <= reach for row in rows):
        return moved
    after = min(range(len(rows)), key=lambda each: (rows[each] - amid) % len(line.points))
    return [*moved[:after], _on(ground, _off(line.points, amid, beside.off), laid[after]), *moved[after:]]


def _round(length: Array, one: int, other: int) -> Mm:
    """How far it is from one point of the ring to another, the shorter way."""
    apart = abs(float(length[one] - length[other]))
    return min(apart, float(length[-1]) - apart)


def _off(points: Array, row: int, by: Mm) -> Array:
    """The place beside a point of the ring, to the left of its way."""
    run = points[(row + 1) % len(points)] - points[row - 1]
    return np.asarray(points[row] + by * np.array([-run[1], run[0]]) / np.hypot(*run))


def _on(ground: Grounds, place: Array, like: Laid) -> Laid:
    """A place as a point on the picture that another point lies on."""
    x, y = ground.in_file(like.picture, place[None])[0].tolist()
    return Laid(x, y, like.picture)
