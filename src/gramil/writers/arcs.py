"""Chords to arcs, so that a machine runs a curve and not four hundred corners.

Successive points of a curve that lie near one circle and turn the same way in small steps become one arc: its
ends are two of the points, and those between lie on it within a few thousandths. A corner and a straight run stay.
"""

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import atan, atan2, cos, dist, hypot, pi, sin, tan

from gramil.drawings.marks import Arc, Line, Point, Polyline

ON_IT = 0.003
"""How far a point of the curve may lie from its arc, in mm; what lies between two points then lies within 0.01."""
STEP = pi / 10
"""The most that two neighbouring chords of one arc turn: a polygon's corners turn more."""
FEWEST, ALIKE = 3, 2.5
"""How many chords make an arc at the least; two do if the curve before and after turns no more, and no less, than this
many times as much.
"""
MOST = 0.9 * pi
"""The most that one arc turns; a longer one is written as several."""
BETWEEN = 0.05
"""In mm: how far a curve may leave the chords that it is drawn in."""
STRAIGHT = 50_000.0
"""A radius in mm from which on a curve is taken as straight."""


@dataclass(frozen=True)
class Run:
    """A polyline's corners, and the bulge of the piece after each: tan of a quarter of its turn, 0 if straight.

    A closed run has as many bulges as points, an open one one less.
    """

    points: tuple[Point, ...]
    bulges: tuple[float, ...]
    closed: bool


@lru_cache(maxsize=4096)
def run_of(mark: Polyline) -> Run:
    """The polyline with true arcs in place of chords that follow one; repeated points are left out.

    Cached: every file of a drawing, and every map of its pages, asks for it.
    """
    signed = ((x + 0.0, y + 0.0) for x, y in mark.points)  # zero and minus zero are one place, and one file
    points = [point for at, point in enumerate(signed) if at == 0 or point != mark.points[at - 1]]
    if mark.closed and points:
        while len(points) > 1 and points[0] == points[-1]:
            points.pop()
        start = _corner(points)
        points = [*points[start:], *points[:start], points[start]]
    if not points:
        return Run((), (), mark.closed)
    kept, bulges, at = [points[0]], list[float](), 0
    while at < len(points) - 1:
        end, turn = _arc_from(points, at)
        kept.append(points[end])
        bulges.append(tan(turn / 4))
        at = end
    return Run(tuple(kept[:-1] if mark.closed else kept), tuple(bulges), mark.closed)


def pieces_of(run: Run, layer: str) -> tuple[Line | Arc, ...]:
    """The run as lines and arcs, one after another."""
    points = (*run.points, *run.points[: run.closed])
    return tuple(
        _piece(start, end, bulge, layer) for (start, end), bulge in zip(pairwise(points), run.bulges, strict=True)
    )


def _piece(start: Point, end: Point, bulge: float, layer: str) -> Line | Arc:
    if bulge == 0.0:
        return Line(start, end, layer)
    half = 2 * atan(bulge)
    (x0, y0), (x1, y1) = start, end
    up = hypot(x1 - x0, y1 - y0) / 2 / tan(half)
    along = atan2(y1 - y0, x1 - x0)
    centre = ((x0 + x1) / 2 - up * sin(along), (y0 + y1) / 2 + up * cos(along))
    first, last = (atan2(y - centre[1], x - centre[0]) for x, y in (start, end))
    angles = (first, last) if bulge > 0 else (last, first)
    return Arc(centre, hypot(x0 - centre[0], y0 - centre[1]), *angles, layer)


def _corner(points: list[Point]) -> int:
    """Where a closed run best starts: at a corner, or where one arc passes into another."""
    count = len(points)
    turns = [abs(_turn(points[at - 1], points[at], points[(at + 1) % count])) for at in range(count)]
    best = max(range(count), key=turns.__getitem__, default=0)
    if count < FEWEST + 2 or turns[0] > STEP:
        return 0
    if turns[best] > STEP:
        return best
    fours = ([points[(at + step) % count] for step in (-2, -1, 0, 1)] for at in range(count))
    return next((at for at, near in enumerate(fours) if not _smooth(near)), best)


def _smooth(near: list[Point]) -> bool:
    """Whether the third of four points lies within an arc."""
    circle = _circle(near[0], near[1], near[2])
    return circle is not None and abs(hypot(near[3][0] - circle[0][0], near[3][1] - circle[0][1]) - circle[1]) <= ON_IT


def _turn(before: Point, at: Point, after: Point) -> float:
    """How far the line turns to the left at a point, in radians."""
    ahead = atan2(after[1] - at[1], after[0] - at[0]) - atan2(at[1] - before[1], at[0] - before[0])
    return (ahead + pi) % (2 * pi) - pi


def _circle(a: Point, b: Point, c: Point) -> tuple[Point, float] | None:
    """The circle through three points; None if they lie on a straight line."""
    bx, by, cx, cy = b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]
    twice = 2 * (bx * cy - by * cx)
    if abs(twice) < 1e-12:
        return None
    bb, cc = bx * bx + by * by, cx * cx + cy * cy
    x, y = (cy * bb - by * cc) / twice, (bx * cc - cx * bb) / twice
    radius = hypot(x, y)
    return ((a[0] + x, a[1] + y), radius) if radius < STRAIGHT else None


def _arc_from(points: list[Point], at: int) -> tuple[int, float]:
    """The last point of the arc that begins at a point, and how far it turns; the next point and 0 if none does."""
    far = at + 2
    if far >= len(points):
        return at + 1, 0.0
    first = _turn(*points[at : at + 3])
    whole = first
    while far + 1 < len(points):
        turn = _turn(*points[far - 1 : far + 2])
        if turn * first <= 0 or abs(turn) > STEP or abs(whole + turn) + abs(first) > MOST:
            break
        if not _on_one(points, at, far + 1):
            break
        far, whole = far + 1, whole + turn
    enough = far - at >= FEWEST or _amid_a_curve(points, at)
    if not enough or abs(first) > STEP or not _on_one(points, at, far):
        return at + 1, 0.0
    return far, _swept(points, at, far, 1.0 if first > 0 else -1.0)


def _amid_a_curve(points: list[Point], at: int) -> bool:
    """Whether two chords from a point lie within a curve: the line turns about equally before, between and after
    them.
    """
    if at == 0 or at + 3 >= len(points):
        return False
    turns = [_turn(*points[at + step - 1 : at + step + 2]) for step in (0, 1, 2)]
    return all(turns[1] * each > 0 and ALIKE > each / turns[1] > 1 / ALIKE for each in turns)


def _on_one(points: list[Point], at: int, far: int) -> bool:
    """Whether all points from one to another lie on the circle through the two and the one half way, near together.

    A chord that the circle would leave by more than curves are drawn to is no part of one: it is a straight run.
    """
    circle = _circle(points[at], points[(at + far) // 2], points[far])
    if circle is None:
        return False
    (x, y), radius = circle
    longest = max(dist(one, other) for one, other in pairwise(points[at : far + 1]))
    near = all(abs(hypot(px - x, py - y) - radius) <= ON_IT for px, py in points[at + 1 : far])
    return near and longest**2 / (8 * radius) <= BETWEEN


def _swept(points: list[Point], at: int, far: int, side: float) -> float:
    circle = _circle(points[at], points[(at + far) // 2], points[far])
    if circle is None:
        return 0.0
    chord = hypot(points[far][0] - points[at][0], points[far][1] - points[at][1])
    (x, y), radius = circle
    from_, to = (atan2(py - y, px - x) for px, py in (points[at], points[far]))
    turn = side * ((side * (to - from_)) % (2 * pi))
    # half a circle's chord comes out a rounding longer than its diameter
    return turn if chord <= 2 * radius * 1.0000001 else 0.0
