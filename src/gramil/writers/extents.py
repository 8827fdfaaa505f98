"""How far marks reach, and which part of a drawing they touch."""

from collections.abc import Iterable, Iterator
from functools import lru_cache
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
    starts, runs, (left, low, right, high) = _walked(mark)
    if left > box[2] or right < box[0] or low > box[3] or high < box[1]:
        return False
    if left >= box[0] and right <= box[2] and low >= box[1] and high <= box[3]:
        return True
    return bool(_crosses(starts, runs, box).any())


@lru_cache(maxsize=4096)
def _walked(mark: Line | Arc | Circle | Polyline | Lettering) -> tuple[Vectors, Vectors, Box]:
    """Where each straight piece of a mark starts, how far it runs, and the box round all. Cached: every sheet asks for
    it.
    """
    pieces = np.array(list(segments(mark)), dtype=np.float64).reshape(-1, 2, 2)
    low, high = pieces.min(axis=(0, 1), initial=inf), pieces.max(axis=(0, 1), initial=-inf)
    return pieces[:, 0], pieces[:, 1] - pieces[:, 0], (float(low[0]), float(low[1]), float(high[0]), float(high[1]))


def points_on(mark: Line | Arc | Circle | Polyline | Lettering, apart: float) -> Vectors:
    """Points on a mark, a row each, no further apart than `apart` mm."""
    starts, runs, _ = _walked(mark)
    counts = np.ceil(np.hypot(runs[:, 0], runs[:, 1]) / apart).astype(int) + 1
    firsts = np.repeat(np.cumsum(counts) - counts, counts)
    along = (np.arange(counts.sum()) - firsts) / np.repeat(np.maximum(counts - 1, 1), counts)
    return np.repeat(starts, counts, axis=0) + along[:, None] * np.repeat(runs, counts, axis=0)


def _crosses(starts: Vectors, runs: Vectors, box: Box) -> NDArray[np.bool_]:
    """Which straight pieces meet a box: those of which something is left after clipping at each of its four sides."""
    to_low, to_high = np.array(box[:2]) - starts, np.array(box[2:]) - starts
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        cuts = np.sort(np.stack((to_low / runs, to_high / runs)), axis=0)
    still = runs == 0.0
    between = (to_low <= 0.0) & (to_high >= 0.0)
    near = np.where(still, np.where(between, 0.0, 2.0), cuts[0])
    far = np.where(still, np.where(between, 1.0, -1.0), cuts[1])
    return np.maximum(near.max(axis=1), 0.0) <= np.minimum(far.min(axis=1), 1.0)
