"""Boxes at any angle, such as words fill, and whether two of them overlap."""

from collections.abc import Iterable
from math import hypot

from gramil.drawings.marks import Point

Corners = tuple[Point, Point, Point, Point]
Upright = tuple[float, float, float, float]
"""Left, low, right and high of the upright box round one at an angle."""


def upright(one: Corners) -> Upright:
    """The upright box round one at any angle."""
    (a, b), (c, d), (e, f), (g, h) = one
    return (min(a, c, e, g), min(b, d, f, h), max(a, c, e, g), max(b, d, f, h))


def hits(one: Corners, others: Iterable[tuple[Upright, Corners]]) -> bool:
    """Whether a box meets one of others, each with the upright box round it, by which most are seen to lie apart."""
    left, low, right, high = upright(one)
    return any(
        meet(one, other)
        for its, other in others
        if its[0] <= right and its[2] >= left and its[1] <= high and its[3] >= low
    )


def meet(one: Corners, other: Corners) -> bool:
    """Whether two boxes at any angle overlap by more than an edge: none of their sides separates them."""
    if _far(one, other):
        return False
    return not any(_parts(one, other, box[side], box[side + 1]) for box in (one, other) for side in (0, 1))


def _far(one: Corners, other: Corners) -> bool:
    """Whether the circles round two boxes lie apart, which is quick to check."""
    (a, _, b, _), (c, _, d, _) = one, other
    reach = hypot(b[0] - a[0], b[1] - a[1]) + hypot(d[0] - c[0], d[1] - c[1])
    return hypot(a[0] + b[0] - c[0] - d[0], a[1] + b[1] - c[1] - d[1]) > reach


def _parts(one: Corners, other: Corners, start: Point, end: Point) -> bool:
    """Whether the two boxes lie apart as seen along a side."""
    along = (end[0] - start[0], end[1] - start[1])
    first, second = ([x * along[0] + y * along[1] for x, y in box] for box in (one, other))
    return max(first) <= min(second) or max(second) <= min(first)
