"""How far marks reach, and which part of a drawing they touch."""

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import ceil, cos, pi, sin

from gramil.drawings.marks import Arc, Circle, Line, Point, Polyline
from gramil.writers.lettering import Lettering, corners

Box = tuple[float, float, float, float]
"""Left, low, right, high, in mm."""

FLAT = pi / 90
"""Arcs are walked in steps of two degrees where only a rough place is asked."""


def bounds(marks: Iterable[Line | Arc | Circle | Polyline | Lettering]) -> Box:
    """The box round every mark, without the width of the ink; a box of no size at zero if there is no mark."""
    points = [point for mark in marks for point in _outermost(mark)]
    if not points:
        return (0.0, 0.0, 0.0, 0.0)
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return (min(xs), min(ys), max(xs), max(ys))


def _outermost(mark: Line | Arc | Circle | Polyline | Lettering) -> tuple[Point, ...]:
    match mark:
        case Line():
            return (mark.start, mark.end)
        case Polyline():
            return mark.points
        case Lettering():
            return corners(mark)
        case Circle():
            (x, y), r = mark.centre, mark.radius
            return ((x - r, y - r), (x + r, y + r))
        case Arc():
            return tuple(_on(mark, angle) for angle in _turning_angles(mark))


def sweep(arc: Arc) -> float:
    """How far an arc turns, anticlockwise, in radians: more than 0, up to a whole turn."""
    turn = (arc.end_angle - arc.start_angle) % (2 * pi)
    return turn if turn > 0.0 else 2 * pi


def _on(arc: Arc, angle: float) -> Point:
    return (arc.centre[0] + arc.radius * cos(angle), arc.centre[1] + arc.radius * sin(angle))


def _turning_angles(arc: Arc) -> Iterator[float]:
    """The two ends of an arc, and each quarter turn between them, where it reaches furthest."""
    end = arc.start_angle + sweep(arc)
    yield arc.start_angle
    yield end
    quarter = ceil(arc.start_angle / (pi / 2))
    while quarter * pi / 2 < end:
        yield quarter * pi / 2
        quarter += 1


def segments(mark: Line | Arc | Circle | Polyline | Lettering) -> Iterator[tuple[Point, Point]]:
    """The mark as straight pieces, near enough to say where on the paper it lies; words as their box."""
    match mark:
        case Line():
            yield (mark.start, mark.end)
        case Polyline():
            points = (*mark.points, mark.points[0]) if mark.closed else mark.points
            yield from pairwise(points)
        case Lettering():
            box = corners(mark)
            yield from pairwise((*box, box[0]))
        case Circle():
            yield from segments(Arc(mark.centre, mark.radius, 0.0, 2 * pi, mark.layer))
        case Arc():
            steps = max(1, ceil(sweep(mark) / FLAT))
            yield from pairwise([_on(mark, mark.start_angle + sweep(mark) * i / steps) for i in range(steps + 1)])


def touches(mark: Line | Arc | Circle | Polyline | Lettering, box: Box) -> bool:
    """Whether any of the mark's line lies in the box or on its edge."""
    return any(_crosses(start, end, box) for start, end in segments(mark))


def _crosses(start: Point, end: Point, box: Box) -> bool:
    """Whether a straight piece meets a box: what is left of it after each of the four sides has cut."""
    low, high = 0.0, 1.0
    for axis in (0, 1):
        run = end[axis] - start[axis]
        to_low, to_high = box[axis] - start[axis], box[axis + 2] - start[axis]
        if run == 0.0:
            if to_low > 0.0 or to_high < 0.0:
                return False
            continue
        near, far = sorted((to_low / run, to_high / run))
        low, high = max(low, near), min(high, far)
    return low <= high
