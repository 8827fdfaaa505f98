"""How far marks reach, and which part of a drawing they touch."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import pairwise
from math import ceil, cos, inf, pi, sin

import numpy as np
from numpy.typing import NDArray

from gramil.drawings.marks import Arc, Circle, Line, Point, Polyline
from gramil.writers.lettering import Lettering, corners

Box = tuple[float, float, float, float]
"""Left, low, right, high, in mm."""

Vectors = NDArray[np.float64]
"""A row a straight piece: along and across, in mm."""

FLAT = pi / 90
"""Arcs are walked in steps of two degrees where only a rough place is asked."""


def bounds(marks: Iterable[Line | Arc | Circle | Polyline | Lettering]) -> Box:
    """The box round every mark, without the width of the ink; a box of no size at zero if there is no mark."""
    boxes = [box_round(mark) for mark in marks if not (isinstance(mark, Polyline) and not mark.points)]
    if not boxes:
        return (0.0, 0.0, 0.0, 0.0)
    lefts, lows, rights, highs = zip(*boxes, strict=True)
    return (min(lefts), min(lows), max(rights), max(highs))


def box_round(mark: Line | Arc | Circle | Polyline | Lettering) -> Box:
    """The box round one mark; a polyline has a point at least."""
    match mark:
        case Line():
            (x0, y0), (x1, y1) = mark.start, mark.end
            return (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
        case Polyline():
            return mark.box
        case Lettering():
            points: Iterable[Point] = corners(mark)
        case Circle():
            (x, y), r = mark.centre, mark.radius
            return (x - r, y - r, x + r, y + r)
        case Arc():
            points = (_on(mark, angle) for angle in _turning_angles(mark))
    xs, ys = zip(*points, strict=True)
    return (min(xs), min(ys), max(xs), max(ys))


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
    """The mark as straight pieces, close enough to tell where on the paper it lies; words as their box."""
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
    if isinstance(mark, Line):  # most marks are: not worth looking up
        return _reaches(mark.start, mark.end, box)
    walked = _walked(mark)
    left, low, right, high = walked.box
    if left > box[2] or right < box[0] or low > box[3] or high < box[1]:
        return False
    if left >= box[0] and right <= box[2] and low >= box[1] and high <= box[3]:
        return True
    return any(_reaches(start, end, box) for start, end in walked.pieces)


def _reaches(start: Point, end: Point, box: Box) -> bool:
    """Whether a straight piece meets a box: something of it is left after clipping at each of the four sides.

    Written out, not by arrays: most marks have few pieces, and most pieces lie off the box, which is soon seen.
    """
    (x0, y0), (x1, y1), (left, low, right, high) = start, end, box
    if (x0 < left and x1 < left) or (x0 > right and x1 > right) or (y0 < low and y1 < low) or (y0 > high and y1 > high):
        return False
    near, far = 0.0, 1.0
    for at, run, least, most in ((x0, x1 - x0, left, right), (y0, y1 - y0, low, high)):
        if run != 0.0:  # one that does not run this way lies within, as was just seen
            one, other = (least - at) / run, (most - at) / run
            near, far = max(near, min(one, other)), min(far, max(one, other))
    return near <= far


@dataclass(frozen=True)
class _Walked:
    """The straight pieces of a mark, and the box round them."""

    pieces: tuple[tuple[Point, Point], ...]
    box: Box

    @cached_property
    def ends(self) -> tuple[Vectors, Vectors]:
        """Where each piece starts, and how far it runs."""
        ends = np.array(self.pieces, dtype=np.float64).reshape(-1, 2, 2)
        return ends[:, 0], ends[:, 1] - ends[:, 0]


@lru_cache(maxsize=4096)
def _walked(mark: Line | Arc | Circle | Polyline | Lettering) -> _Walked:
    """A mark in straight pieces. Cached: every sheet asks for it."""
    pieces = tuple(segments(mark))
    xs, ys = ([point[axis] for piece in pieces for point in piece] for axis in (0, 1))
    ends = inf, -inf  # of a mark with no pieces, which touches nothing
    return _Walked(
        pieces,
        (min(xs, default=ends[0]), min(ys, default=ends[0]), max(xs, default=ends[1]), max(ys, default=ends[1])),
    )


def points_on(marks: Iterable[Line | Arc | Circle | Polyline | Lettering], apart: float) -> Vectors:
    """Points on some marks, a row each, no further apart along a mark than `apart` mm."""
    ends = [_walked(mark).ends for mark in marks]
    if not ends:
        return np.empty((0, 2))
    starts, runs = (np.concatenate(each) for each in zip(*ends, strict=True))
    counts = np.ceil(np.hypot(runs[:, 0], runs[:, 1]) / apart).astype(int) + 1
    firsts = np.repeat(np.cumsum(counts) - counts, counts)
    along = (np.arange(counts.sum()) - firsts) / np.repeat(np.maximum(counts - 1, 1), counts)
    return np.repeat(starts, counts, axis=0) + along[:, None] * np.repeat(runs, counts, axis=0)
