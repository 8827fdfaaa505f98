"""Room between closed shapes in the plane, with a sign: how far apart they lie, or how deep they run into each other.

Shapes are points once round, the first not repeated, in mm; they are reckoned as polygons.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm
from gramil.shapes.planar import points_inside, to_segments

Array = NDArray[np.float64]
Shape = Sequence[tuple[float, float]] | Array
ROUNDING = 1e-6
"""In mm: far more than rounding makes of a distance."""


def to_edge(points: Shape, ring: Shape) -> Array:
    """Distance from each point to the ring's edge, positive outside it and negative inside."""
    places, corners, following = _edges(points, ring)
    away = to_segments(places, corners, following)
    return np.asarray(np.where(points_inside(places, corners), -away, away))


def _edges(points: Shape, ring: Shape) -> tuple[Array, Array, Array]:
    """The points, and where each edge of the ring begins and ends."""
    corners = np.asarray(ring, dtype=np.float64)
    return np.asarray(points, dtype=np.float64), corners, np.roll(corners, -1, axis=0)


def room_between(one: Shape, other: Shape) -> Mm:
    """Least distance between two shapes; negative where they overlap: how deep a point of either lies in the other."""
    return float(min(to_edge(one, other).min(), to_edge(other, one).min()))


def room_within(inner: Shape, ring: Shape) -> Mm:
    """Least distance from a shape to the ring round it; negative where it runs out of it, and by how much at most."""
    places, corners, following = _edges(inner, ring)
    if not points_inside(places, corners).all():
        return float(-to_edge(inner, ring).max())
    near = _may_be_nearest(places, corners, following)
    return float(to_segments(places, corners[near], following[near]).min())


def _may_be_nearest(places: Array, corners: Array, following: Array) -> NDArray[np.bool_]:
    """Which edges may have the point that lies nearest to any of the places: a ring has hundreds, and most lie far off.

    Every place lies within `reach` of their middle, and an edge no nearer to that than its corner less its length.
    """
    middle = places.mean(axis=0)
    reach = np.hypot(*(places - middle).T).max()
    from_middle, lengths = np.hypot(*(corners - middle).T), np.hypot(*(following - corners).T)
    to_one_corner = np.hypot(*(places - corners[from_middle.argmin()]).T).min()
    return np.asarray(from_middle - lengths - reach <= to_one_corner + ROUNDING)
