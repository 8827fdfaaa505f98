"""Points, straight lines and polygons in the plane. Points are pairs in mm."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import hypot, inf, nan

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm, Mm2

Point = tuple[float, float]
Array = NDArray[np.float64]
PARALLEL = 1e-12
"""Sine of the angle below which two lines are taken for parallel."""


def lines_meet(point: Point, direction: Point, other: Point, other_direction: Point) -> Point | None:
    """Where two straight lines, each without end, meet; None where they are parallel."""
    cross = _cross(direction, other_direction)
    if abs(cross) <= PARALLEL * hypot(*direction) * hypot(*other_direction):
        return None
    share = _cross(_from(point, other), other_direction) / cross
    return _on(point, direction, share)


def segments_meet(start: Point, end: Point, other_start: Point, other_end: Point) -> Point | None:
    """Where two segments cross or touch; None where they do not, or run parallel."""
    along, other_along = _from(start, end), _from(other_start, other_end)
    place = lines_meet(start, along, other_start, other_along)
    if place is None or not (_within(place, start, along) and _within(place, other_start, other_along)):
        return None
    return place


def nearest_on_segment(point: Point, start: Point, end: Point) -> Point:
    """The point of a segment that is closest to `point`."""
    along = _from(start, end)
    square = _dot(along, along)
    share = _dot(_from(start, point), along) / square if square > 0 else 0.0
    return _on(start, along, min(1.0, max(0.0, share)))


def polygons_apart(one: Sequence[Point], other: Sequence[Point]) -> Mm:
    """Least distance between two polygons, 0 where they touch, overlap, or the one lies in the other."""
    if polygon_contains(one, other[0]) or polygon_contains(other, one[0]):
        return 0.0
    corners, others = np.array(one), np.array(other)
    if _any_edges_cross(corners, others):
        return 0.0
    return min(_corners_to_edges(corners, others), _corners_to_edges(others, corners))


def least_apart(pairs: Iterable[tuple[Sequence[Point], Sequence[Point]]]) -> Mm:
    """The least distance between the two polygons of any pair; without a pair not a number.

    Pairs whose upright boxes lie further apart than what was found are not looked at closer.
    """
    least = inf
    found = False
    for one, other in pairs:
        found = True
        if boxes_apart(one, other) < least:
            least = min(least, polygons_apart(one, other))
    return least if found else nan


def boxes_apart(one: Sequence[Point], other: Sequence[Point]) -> Mm:
    """Least distance between two polygons' upright boxes: the polygons are no nearer than that."""
    return hypot(*(_gap([each[axis] for each in one], [each[axis] for each in other]) for axis in (0, 1)))


def _gap(one: Sequence[float], other: Sequence[float]) -> float:
    return max(min(other) - max(one), min(one) - max(other), 0.0)


def _any_edges_cross(one: Array, other: Array) -> bool:
    """Whether an edge of one polygon crosses one of the other: each has the other's ends on its two sides."""
    return bool((_parts(one, other) & _parts(other, one).T).any())


def _next(corners: Array) -> Array:
    """Each row's next one, the first after the last."""
    return np.concatenate((corners[1:], corners[:1]))


def _parts(edges_of: Array, points_of: Array) -> NDArray[np.bool_]:
    """Which edges of the first polygon, as lines without end, part the ends of which edges of the second."""
    along = _next(edges_of) - edges_of
    to = points_of[np.newaxis] - edges_of[:, np.newaxis]
    side = along[:, np.newaxis, 0] * to[..., 1] - along[:, np.newaxis, 1] * to[..., 0]
    return np.asarray(side * _next(side.T).T < 0)


def _corners_to_edges(corners: Array, edges_of: Array) -> float:
    """The least distance from any corner to any edge."""
    return float(to_segments(corners, edges_of, _next(edges_of)).min())


def to_segments(points: Array, starts: Array, ends: Array) -> Array:
    """Distance from each point to the nearest of some segments; shape (n,), of points (n, 2) and ends (m, 2) each."""
    along = ends - starts
    to = points[:, np.newaxis] - starts[np.newaxis]
    squares = (along**2).sum(axis=1)
    share = np.clip((to * along).sum(axis=2) / np.where(squares > 0, squares, 1.0), 0.0, 1.0)
    left = to - share[..., np.newaxis] * along
    return np.asarray(np.sqrt((left**2).sum(axis=2).min(axis=1)))


def points_inside(points: Array, corners: Array) -> NDArray[np.bool_]:
    """Whether each point, shape (n, 2), lies in a polygon, shape (m, 2): an odd number of edges lie to its right.

    Edges that lie over or under all of the points lie to the right of none, and are left out first.
    """
    following, y = _next(corners), points[:, 1:]
    low, high = np.minimum(corners[:, 1], following[:, 1]), np.maximum(corners[:, 1], following[:, 1])
    level = (low <= np.fmax.reduce(y, axis=None)) & (high >= np.fmin.reduce(y, axis=None))  # a place not known is none
    corners, following = corners[level], following[level]
    beside = (corners[:, 1] > y) != (following[:, 1] > y)
    rise = following[:, 1] - corners[:, 1]
    share = (y - corners[:, 1]) / np.where(rise == 0, 1.0, rise)
    right = points[:, :1] < corners[:, 0] + share * (following[:, 0] - corners[:, 0])
    return np.asarray((beside & right).sum(axis=1) % 2 == 1)


def polygon_contains(corners: Sequence[Point], point: Point) -> bool:
    """Whether a point lies in a polygon or within 1e-9 mm of its edge."""
    if boxes_apart(corners, [point]) > 1e-9:
        return False
    if any(hypot(*_from(point, nearest_on_segment(point, *edge))) <= 1e-9 for edge in _edges(corners)):
        return True
    beside = [edge for edge in _edges(corners) if (edge[0][1] > point[1]) != (edge[1][1] > point[1])]
    return sum(_right_of(point, *edge) for edge in beside) % 2 == 1


@dataclass(frozen=True)
class PolygonFigures:
    """Area and centroid."""

    area: Mm2
    centroid: Point


def polygon_figures(corners: ArrayLike) -> PolygonFigures:
    """Figures of a polygon that does not cross itself, `corners` of shape (n, 2), either way round.

    Green's theorem, edge by edge, about the first corner so that far-off polygons lose no digits.
    Raises ValueError when the polygon encloses nothing.
    """
    points = np.asarray(corners, dtype=np.float64)
    x, y = (points - points[0]).T
    u, v = np.roll(x, -1), np.roll(y, -1)
    cross = x * v - u * y
    signed = cross.sum() / 2
    if signed == 0:
        raise ValueError("the polygon encloses nothing")
    middle_x, middle_y = (cross * (x + u)).sum() / (6 * signed), (cross * (y + v)).sum() / (6 * signed)
    return PolygonFigures(float(abs(signed)), (float(points[0, 0] + middle_x), float(points[0, 1] + middle_y)))


def _from(start: Point, end: Point) -> Point:
    return (end[0] - start[0], end[1] - start[1])


def _on(start: Point, direction: Point, share: float = 1.0) -> Point:
    return (start[0] + share * direction[0], start[1] + share * direction[1])


def _cross(one: Point, other: Point) -> float:
    return one[0] * other[1] - one[1] * other[0]


def _dot(one: Point, other: Point) -> float:
    return one[0] * other[0] + one[1] * other[1]


def _within(place: Point, start: Point, along: Point) -> bool:
    """Whether a place on a segment's line lies on the segment, to 1e-9 mm."""
    reach = hypot(*along)
    return -1e-9 <= _dot(_from(start, place), along) / reach <= reach + 1e-9


def _edges(corners: Sequence[Point]) -> Iterable[tuple[Point, Point]]:
    return zip(corners, (*corners[1:], corners[0]), strict=True)


def _right_of(point: Point, start: Point, end: Point) -> bool:
    """Whether the edge passes to the right of a point at the point's own height."""
    share = (point[1] - start[1]) / (end[1] - start[1])
    return point[0] < start[0] + share * (end[0] - start[0])
