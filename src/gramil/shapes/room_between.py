"""Room between closed shapes in the plane, with a sign: how far apart they lie, or how deep they run into each other.

Shapes are points once round, the first not repeated, in mm; they are reckoned as polygons.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm

Array = NDArray[np.float64]
Shape = Sequence[tuple[float, float]] | Array
ROUNDING = 1e-6
"""In mm: far more than rounding makes of a distance."""


def to_edge(points: Shape, ring: Shape) -> Array:
    """Distance from each point to the ring's edge, positive outside it and negative inside."""
    places, corners, following = _edges(points, ring)
    away = _away(places, corners, following - corners)
    return np.asarray(np.where(_inside(places, corners, following), -away, away))


def _edges(points: Shape, ring: Shape) -> tuple[Array, Array, Array]:
    """The points, and where each edge of the ring begins and ends."""
    corners = np.asarray(ring, dtype=np.float64)
    return np.asarray(points, dtype=np.float64), corners, np.roll(corners, -1, axis=0)


def _away(places: Array, corners: Array, along: Array) -> Array:
    """Distance from each place to the nearest of some edges."""
    to = places[:, np.newaxis] - corners[np.newaxis]
    squares = (along**2).sum(axis=1)
    share = np.clip((to * along).sum(axis=2) / np.where(squares > 0, squares, 1.0), 0.0, 1.0)
    left = to - share[..., np.newaxis] * along
    return np.asarray(np.sqrt((left**2).sum(axis=2)).min(axis=1))


def _inside(places: Array, corners: Array, following: Array) -> NDArray[np.bool_]:
    """Whether each place has an odd number of edges to its right; an edge over or under them all is to no one's."""
    least, most = places[:, 1].min(), places[:, 1].max()
    low, high = np.minimum(corners[:, 1], following[:, 1]), np.maximum(corners[:, 1], following[:, 1])
    level = (low <= most) & (high >= least)
    corners, following = corners[level], following[level]
    y = places[:, 1:]
    beside = (corners[:, 1] > y) != (following[:, 1] > y)
    rise = following[:, 1] - corners[:, 1]
    share = (y - corners[:, 1]) / np.where(rise == 0, 1.0, rise)
    right = places[:, :1] < corners[:, 0] + share * (following[:, 0] - corners[:, 0])
    return np.asarray((beside & right).sum(axis=1) % 2 == 1)


def room_between(one: Shape, other: Shape) -> Mm:
    """Least distance between two shapes; negative where they overlap: how deep a point of either lies in the other."""
    return float(min(to_edge(one, other).min(), to_edge(other, one).min()))


def room_within(inner: Shape, ring: Shape) -> Mm:
    """Least distance from a shape to the ring round it; negative where it runs out of it, and by how much at most."""
    places, corners, following = _edges(inner, ring)
    if not _inside(places, corners, following).all():
        return float(-to_edge(inner, ring).max())
    near = _may_be_nearest(places, corners, following)
    return float(_away(places, corners[near], following[near] - corners[near]).min())


def _may_be_nearest(places: Array, corners: Array, following: Array) -> NDArray[np.bool_]:
    """Which edges may have the point that lies nearest to any of the places: a ring has hundreds, and most lie far off.

    Every place lies within `reach` of their middle, and an edge no nearer to that than its corner less its length.
    """
    middle = places.mean(axis=0)
    reach = np.hypot(*(places - middle).T).max()
    from_middle, lengths = np.hypot(*(corners - middle).T), np.hypot(*(following - corners).T)
    to_one_corner = np.hypot(*(places - corners[from_middle.argmin()]).T).min()
    return np.asarray(from_middle - lengths - reach <= to_one_corner + ROUNDING)
