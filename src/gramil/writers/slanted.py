"""Boxes at any angle, such as words fill, and whether two of them overlap."""

from math import hypot

from gramil.drawings.marks import Point

Corners = tuple[Point, Point, Point, Point]


def meet(one: Corners, other: Corners) -> bool:
    """Whether two boxes at any angle overlap by more than an edge: none of their sides separates them."""
    if _far(one, other):
        return False
    return not any(_parts(one, other, box[side], box[side + 1]) for box in (one, other) for side in (0, 1))


def _far(one: Corners, other: Corners) -> bool:
    """Whether the circles round two boxes lie apart, which is soon seen."""
    (a, _, b, _), (c, _, d, _) = one, other
    reach = hypot(b[0] - a[0], b[1] - a[1]) + hypot(d[0] - c[0], d[1] - c[1])
    return hypot(a[0] + b[0] - c[0] - d[0], a[1] + b[1] - c[1] - d[1]) > reach


def _parts(one: Corners, other: Corners, start: Point, end: Point) -> bool:
    """Whether the two boxes lie apart as seen along a side."""
    along = (end[0] - start[0], end[1] - start[1])
    first, second = ([x * along[0] + y * along[1] for x, y in box] for box in (one, other))
    return max(first) <= min(second) or max(second) <= min(first)
