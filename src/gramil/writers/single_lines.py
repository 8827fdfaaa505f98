"""Every line only once: a machine that follows a line twice burns it, and a line of no length stops it."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from gramil.drawings.marks import Arc, Circle, Line, Point, Polyline
from gramil.writers.lettering import Lettering
from gramil.writers.plain import Plain

FIRST = ("cut", "outline", "pins", "slots")
"""Layers that keep a line which another layer has too, the first of them before the rest."""
MILLIONTH = 6
"""Decimals of a millimetre to which two places are one."""
Edge = tuple[object, ...]


def single(marks: Sequence[Plain]) -> tuple[Plain, ...]:
    """The marks in order, each line on one layer only, lines of no length left out.

    A line that lies exactly on an edge of another mark is left out; a polyline that shares some of its edges with
    another is left as the runs that are its own.
    """
    seen: set[Edge] = set()
    kept: dict[int, tuple[Plain, ...]] = {}
    for at in sorted(range(len(marks)), key=lambda at: _rank(marks[at])):
        kept[at] = tuple(_own(marks[at], seen))
    return tuple(piece for at in range(len(marks)) for piece in kept[at])


def _rank(mark: Plain) -> int:
    return FIRST.index(mark.layer) if mark.layer in FIRST else len(FIRST)


def _own(mark: Plain, seen: set[Edge]) -> Iterator[Plain]:
    match mark:
        case Lettering():
            yield mark
        case Polyline():
            yield from _runs(mark, seen)
        case Line():
            if mark.start != mark.end and _new(_between(mark.start, mark.end), seen):
                yield mark
        case Circle():
            if mark.radius > 0 and _new((_near(mark.centre), round(mark.radius, MILLIONTH)), seen):
                yield mark
        case Arc():
            place = (_near(mark.centre), round(mark.radius, MILLIONTH))
            angles = (round(mark.start_angle, MILLIONTH), round(mark.end_angle, MILLIONTH))
            if mark.radius > 0 and _new((*place, *angles), seen):
                yield mark


def _runs(mark: Polyline, seen: set[Edge]) -> Iterator[Polyline]:
    """The polyline as it is if none of its edges was drawn before, else the open runs that are its own."""
    points = [point for at, point in enumerate(mark.points) if at == 0 or _near(point) != _near(mark.points[at - 1])]
    if mark.closed and len(points) > 1 and _near(points[0]) == _near(points[-1]):
        points.pop()
    edges = list(pairwise([*points, points[0]] if mark.closed else points))
    fresh = [_new(_between(*edge), seen) for edge in edges]
    if all(fresh):
        yield replace(mark, points=tuple(points)) if edges else mark
        return
    run: list[Point] = []
    for (start, end), new in zip(edges, fresh, strict=True):
        if new:
            run = [*(run or [start]), end]
        elif run:
            yield replace(mark, points=tuple(run), closed=False)
            run = []
    if run:
        yield replace(mark, points=tuple(run), closed=False)


def _new(edge: Edge, seen: set[Edge]) -> bool:
    if edge in seen:
        return False
    seen.add(edge)
    return True


def _between(start: Point, end: Point) -> Edge:
    one, other = sorted((_near(start), _near(end)))
    return (one, other)


def _near(point: Point) -> Point:
    return (round(point[0], MILLIONTH) + 0.0, round(point[1], MILLIONTH) + 0.0)
