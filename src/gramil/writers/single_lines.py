"""Every line only once: a machine that follows a line twice burns it, and a line of no length stops it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise, product
from math import atan2, dist, hypot, pi

from gramil.drawings.marks import Arc, Circle, Line, Point, Polyline
from gramil.writers.lettering import Lettering
from gramil.writers.plain import Plain

FIRST = ("cut", "outline", "pins", "slots")
"""Layers that keep a line which another layer has too, the first of them before the rest."""
MILLIONTH = 6
"""Decimals of a millimetre to which two places are one."""
SAME = 1e-6
"""The same in mm."""
CELL = (1e-4, 1e-2)
"""Straight lines are looked up by their direction in radians and how far aside of nothing they run in mm, in steps."""
ROUND_A_CELL = tuple(product((-1, 0, 1), repeat=2))
"""Steps from a cell to itself and to its neighbours."""
Edge = tuple[Point, Point]
Key = tuple[object, ...]


@dataclass(frozen=True)
class _Drawn:
    """What was drawn before: straight pieces by where their line runs, and circles and arcs."""

    straight: dict[tuple[int, int], list[Edge]] = field(default_factory=dict)
    round: set[Key] = field(default_factory=set)


def single(marks: Sequence[Plain]) -> tuple[Plain, ...]:
    """The marks in order, each line on one layer only, lines of no length left out.

    The part of a straight line that lies on an edge of another mark is left out; a polyline that shares some of its
    edges with another is cut down to the runs that are its own.
    """
    drawn = _Drawn()
    kept: dict[int, tuple[Plain, ...]] = {}
    for at in sorted(range(len(marks)), key=lambda at: _rank(marks[at])):
        kept[at] = tuple(_own(marks[at], drawn))
    return tuple(piece for at in range(len(marks)) for piece in kept[at])


def _rank(mark: Plain) -> int:
    return FIRST.index(mark.layer) if mark.layer in FIRST else len(FIRST)


def _own(mark: Plain, drawn: _Drawn) -> Iterator[Plain]:
    match mark:
        case Lettering():
            yield mark
        case Polyline():
            yield from _runs(mark, drawn)
        case Line():
            yield from (Line(*part, mark.layer) for part in _fresh((mark.start, mark.end), drawn))
        case Circle():
            if mark.radius > 0 and _new((_near(mark.centre), round(mark.radius, MILLIONTH)), drawn):
                yield mark
        case Arc():
            place = (_near(mark.centre), round(mark.radius, MILLIONTH))
            angles = (round(mark.start_angle, MILLIONTH), round(mark.end_angle, MILLIONTH))
            if mark.radius > 0 and _new((*place, *angles), drawn):
                yield mark


def _runs(mark: Polyline, drawn: _Drawn) -> Iterator[Polyline]:
    """The polyline as it is if nothing of it was drawn before, else the open runs that are its own."""
    near = [_near(point) for point in mark.points]
    points = [point for at, point in enumerate(mark.points) if at == 0 or near[at] != near[at - 1]]
    if mark.closed and len(points) > 1 and _near(points[0]) == _near(points[-1]):
        points.pop()
    edges = list(pairwise([*points, points[0]] if mark.closed else points))
    parts = [_fresh(edge, drawn) for edge in edges]
    if all(own == [edge] for own, edge in zip(parts, edges, strict=True)):
        yield replace(mark, points=tuple(points)) if edges else mark
        return
    run: list[Point] = []
    for start, end in (part for own in parts for part in own):
        if run and run[-1] != start:
            yield replace(mark, points=tuple(run), closed=False)
            run = []
        run = [*(run or [start]), end]
    if run:
        yield replace(mark, points=tuple(run), closed=False)


def _new(key: Key, drawn: _Drawn) -> bool:
    if key in drawn.round:
        return False
    drawn.round.add(key)
    return True


def _fresh(edge: Edge, drawn: _Drawn) -> list[Edge]:
    """The parts of a straight piece, from its start to its end, where no other lies; it is drawn from now on."""
    start, end = edge
    long = dist(start, end)
    if long <= SAME:
        return []
    home, cells = _cells(edge)
    others = [other for cell in cells for other in drawn.straight.get(cell, ())]
    drawn.straight.setdefault(home, []).append(edge)
    if not others:  # as with nearly every edge
        return [edge]
    taken = sorted(span for other in others if (span := _shared(edge, long, other)) is not None)
    gaps, reached = list[tuple[float, float]](), 0.0
    for low, high in [*taken, (long, long)]:
        if low - reached > SAME:
            gaps.append((reached, low))
        reached = max(reached, high)
    return [(_on(edge, low / long), _on(edge, high / long)) for low, high in gaps]


def _cells(edge: Edge) -> tuple[tuple[int, int], list[tuple[int, int]]]:
    """Where a straight piece's line is looked up, and that place with its neighbours."""
    (x0, y0), (x1, y1) = edge
    way = atan2(y1 - y0, x1 - x0)
    off = (x0 * (y1 - y0) - y0 * (x1 - x0)) / hypot(x1 - x0, y1 - y0)
    off = off if 0 <= way < pi else -off
    turn, aside, whole = round(way % pi / CELL[0]), round(off / CELL[1]), round(pi / CELL[0])
    near = [(turn + one, aside + other) for one, other in ROUND_A_CELL]
    if 1 < turn < whole - 1:
        return (turn, aside), near
    return (turn, aside), [*near, *((at % whole, -by) for at, by in near if at <= 0 or at >= whole)]


def _shared(edge: Edge, long: float, other: Edge) -> tuple[float, float] | None:
    """From where to where along a straight piece another lies on it; None where it does not."""
    (x0, y0), (x1, y1) = edge
    ux, uy = (x1 - x0) / long, (y1 - y0) / long
    if any(abs((x - x0) * uy - (y - y0) * ux) > SAME for x, y in other):
        return None
    low, high = sorted((x - x0) * ux + (y - y0) * uy for x, y in other)
    low, high = max(low, 0.0), min(high, long)
    return (low, high) if high - low > SAME else None


def _on(edge: Edge, share: float) -> Point:
    if share in (0.0, 1.0):
        return edge[int(share)]
    (x0, y0), (x1, y1) = edge
    return (x0 + share * (x1 - x0), y0 + share * (y1 - y0))


def _near(point: Point) -> Point:
    return (round(point[0], MILLIONTH) + 0.0, round(point[1], MILLIONTH) + 0.0)
