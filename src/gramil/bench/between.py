"""The distance between two places on the plan: each is caught by what is drawn nearby, and where one of them is an edge
the distance is square to it.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import acos, hypot, pi

from gramil.bench.things import Thing
from gramil.drawings.marks import Circle, Line, Mark, Point, Polyline

BEND = 0.35
"""Radians by which a line must turn for a corner: less is a curve."""
LEVEL = 1e-3
"""Sine of the angle up to which two edges are taken for parallel."""
ON_IT = 1e-6
"""In mm: nearer to what is drawn than this lies on it."""


@dataclass(frozen=True)
class Caught:
    """A place on the drawing: where, what it is on in words, and the run of the edge there (two points), if it is one.

    Points of an edge in a curve have no run: nothing is square to it for more than a point.
    """

    at: Point
    words: str
    run: tuple[Point, Point] | None = None


@dataclass(frozen=True)
class Distance:
    """Between two places, in mm: where it begins and ends, and what it is between, in words."""

    start: Point
    end: Point
    words: str

    @property
    def length(self) -> float:
        """In mm."""
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])


def caught(things: Iterable[Thing], at: Point, near: float) -> Caught:
    """What is drawn within `near` mm of a place: a corner or a centre before an edge; else the place itself."""
    shown = tuple(things)
    points = [each for each in _points(shown) if _apart(each.at, at) <= near]
    if points:
        return min(points, key=lambda each: _apart(each.at, at))
    edges = [each for each in _edges(shown, at) if _apart(each.at, at) <= max(near, ON_IT)]
    return min(edges, key=lambda each: _apart(each.at, at), default=Caught(at, "where nothing is drawn"))


def distance(one: Caught, other: Caught) -> Distance:
    """From one place to another: square to an edge where one of them is an edge, or both are and run alike."""
    start, end = one.at, other.at
    if other.run and (not one.run or _alike(one.run, other.run)):
        end = _foot(start, other.run)
    elif one.run and not other.run:
        start = _foot(end, one.run)
    return Distance(start, end, f"{one.words} to {other.words}")


def _apart(one: Point, other: Point) -> float:
    return hypot(one[0] - other[0], one[1] - other[1])


def _foot(point: Point, run: tuple[Point, Point]) -> Point:
    """The foot of the perpendicular from a point to the line along an edge."""
    (x0, y0), (x1, y1) = run
    dx, dy = x1 - x0, y1 - y0
    share = ((point[0] - x0) * dx + (point[1] - y0) * dy) / (dx * dx + dy * dy)
    return (x0 + share * dx, y0 + share * dy)


def _alike(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    (ax, ay), (bx, by) = ((end[0] - start[0], end[1] - start[1]) for start, end in (one, other))
    return abs(ax * by - ay * bx) <= LEVEL * hypot(ax, ay) * hypot(bx, by)


def _points(things: tuple[Thing, ...]) -> Iterator[Caught]:
    for thing in things:
        for mark in thing.marks:
            yield from _corners(mark, thing.words)


def _corners(mark: Mark, words: str) -> Iterator[Caught]:
    """Ends and corners of lines, centres of circles."""
    match mark:
        case Line():
            yield from (Caught(each, f"the end of {words}") for each in (mark.start, mark.end))
        case Circle():
            yield Caught(mark.centre, f"the centre of {words}")
        case Polyline():
            ends = () if mark.closed else (mark.points[0], mark.points[-1])
            yield from (Caught(each, f"the end of {words}") for each in ends)
            yield from (Caught(each, f"a corner of {words}") for each in _bends(mark))


def _bends(mark: Polyline) -> Iterator[Point]:
    points = (mark.points[-1], *mark.points, mark.points[0]) if mark.closed else mark.points
    for before, here, after in zip(points, points[1:], points[2:], strict=False):
        if _turn(before, here, after) >= BEND:
            yield here


def _turn(before: Point, here: Point, after: Point) -> float:
    """By how much a line turns at a point, in radians; 0 where two of the points coincide."""
    a, b = (here[0] - before[0], here[1] - before[1]), (after[0] - here[0], after[1] - here[1])
    long = hypot(*a) * hypot(*b)
    if long < ON_IT:
        return 0.0
    return min(pi, acos(max(-1.0, min(1.0, (a[0] * b[0] + a[1] * b[1]) / long))))


def _edges(things: tuple[Thing, ...], at: Point) -> Iterator[Caught]:
    for thing in things:
        for mark in thing.marks:
            yield from _nearest(mark, thing.words, at)


def _nearest(mark: Mark, words: str, at: Point) -> Iterator[Caught]:
    """The nearest place on each run of a line, or on a circle."""
    match mark:
        case Line():
            yield _on(mark.start, mark.end, words, at, straight=True)
        case Circle():
            far = _apart(at, mark.centre)
            if far > ON_IT:
                out = mark.radius / far
                (x, y), (px, py) = mark.centre, at
                yield Caught((x + (px - x) * out, y + (py - y) * out), f"the edge of {words}")
        case Polyline():
            ring = (*mark.points, mark.points[0]) if mark.closed else mark.points
            straight = len(ring) < 12
            yield from (_on(one, other, words, at, straight) for one, other in pairwise(ring) if one != other)


def _on(start: Point, end: Point, words: str, at: Point, straight: bool) -> Caught:
    (x0, y0), (x1, y1) = start, end
    x, y = _foot(at, (start, end))
    share = ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / ((x1 - x0) ** 2 + (y1 - y0) ** 2)
    if not 0 <= share <= 1:
        x, y = start if share < 0 else end
    said = words if words == "the centreline" or words.startswith(("fret", "string")) else f"the edge of {words}"
    return Caught((x, y), said, (start, end) if straight else None)
