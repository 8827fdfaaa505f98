"""The path of a cut beside an edge: every side of a ring moved square to itself, with the corners kept sharp.

A cut of the width k whose middle runs k / 2 outside an edge leaves that edge where it was to be: sharp outside corners
stay sharp, and inside ones are left as round as the cut is wide.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm
from gramil.shapes.polyline import crossings

Array = NDArray[np.float64]
Point = tuple[float, float]
SHORTEST = 1e-6
"""In mm: two corners nearer than this are one."""
SHARPEST = -0.875
"""Cosine of the turn at which a moved corner would stand four times the distance off: a sharper one is cut across."""
STOP_SHORT = 2.0
"""How far past such a corner its sides run on, as a share of the distance: nowhere nearer to it than the distance."""


def moved_out(ring: Sequence[Point], distance: Mm) -> tuple[Point, ...] | None:
    """The closed ring `distance` mm outside itself (inside where negative), whichever way round it is drawn.

    None where that is not one ring with all its sides: a gap narrower than twice the distance, a bend tighter than it.
    """
    corners = _distinct(np.asarray(ring, dtype=np.float64))
    if distance == 0 or len(corners) < 3:
        return tuple(ring)
    along = np.roll(corners, -1, axis=0) - corners
    along /= np.hypot(*along.T)[:, None]
    out = np.stack((along[:, 1], -along[:, 0]), axis=-1) * np.sign(_twice_area(corners))
    moved, side = _moved(corners, along, out, distance)
    if _has_lost_a_side(moved, side, along) or crossings(moved, closed=True, most=1):
        return None
    return tuple(map(tuple, moved.tolist()))


def _distinct(corners: Array) -> Array:
    """The corners without those that the next repeats."""
    kept = np.hypot(*(corners - np.roll(corners, -1, axis=0)).T) > SHORTEST
    return corners[kept]


def _twice_area(corners: Array) -> float:
    (x, y), (u, v) = corners.T, np.roll(corners, -1, axis=0).T
    return float((x * v - u * y).sum())


def _moved(corners: Array, along: Array, out: Array, distance: Mm) -> tuple[Array, NDArray[np.intp]]:
    """Where the moved sides meet, and which side begins there; a corner that is cut off has two places, the first of
    them without a side.
    """
    before, came = np.roll(out, 1, axis=0), np.roll(along, 1, axis=0)
    cosine = (before * out).sum(axis=1)
    turns_away = (came * out).sum(axis=1) * distance > 0
    points: list[Array] = []
    sides: list[int] = []
    for row, corner in enumerate(corners):
        if cosine[row] < SHARPEST and turns_away[row]:
            run_on = STOP_SHORT * abs(distance)
            points += [
                corner + distance * before[row] + run_on * came[row],
                corner + distance * out[row] - run_on * along[row],
            ]
            sides += [-1, row]
        else:
            share = max(1 + float(cosine[row]), SHORTEST)
            points.append(corner + distance * (before[row] + out[row]) / share)
            sides.append(row)
    return np.array(points), np.array(sides)


def _has_lost_a_side(moved: Array, side: NDArray[np.intp], along: Array) -> bool:
    """Whether a side runs the other way than it did, or has no length left."""
    steps = np.roll(moved, -1, axis=0) - moved
    own = side >= 0
    return bool(((steps[own] * along[side[own]]).sum(axis=1) <= 0).any())
