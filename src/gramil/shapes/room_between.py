"""Room between closed shapes in the plane, with a sign: how far apart they lie, or how deep they run into each other.

Shapes are points once round, the first not repeated, in mm; they are reckoned as polygons.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm

Array = NDArray[np.float64]
Shape = Sequence[tuple[float, float]] | Array


def to_edge(points: Shape, ring: Shape) -> Array:
    """Distance from each point to the ring's edge, positive outside it and negative inside."""
    places, corners = np.asarray(points, dtype=np.float64), np.asarray(ring, dtype=np.float64)
    following = np.roll(corners, -1, axis=0)
    along = following - corners
    to = places[:, np.newaxis] - corners[np.newaxis]
    squares = (along**2).sum(axis=1)
    share = np.clip((to * along).sum(axis=2) / np.where(squares > 0, squares, 1.0), 0.0, 1.0)
    left = to - share[..., np.newaxis] * along
    away = np.sqrt((left**2).sum(axis=2)).min(axis=1)
    return np.asarray(np.where(_inside(places, corners, following), -away, away))


def _inside(places: Array, corners: Array, following: Array) -> NDArray[np.bool_]:
    """Whether each place has an odd number of edges to its right."""
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
    return float(-to_edge(inner, ring).max())
