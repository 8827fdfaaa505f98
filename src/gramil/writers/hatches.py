"""Materials by hatch: the lines inside a closed outline that say wood along or across the grain, metal, bone, void.

They are real lines, clipped here, so that every file shows the same hatch and a plotter can draw it.
"""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import cycle, pairwise
from math import cos, pi, radians, sin, tau

from gramil.drawings.marks import Circle, Line, Point, Polyline

LAYER = "hatch"
FINEST = 0.6
"""No two hatch lines closer than this in mm: they would print as a grey."""
LARGE, WIDEST = 120.0, 2.0
"""A shape wider than this in mm has its lines further apart, at most this many times as far: they stay a ground."""
ROUND = 240
"""Corners of the outline in place of a circle that is left clear."""


@dataclass(frozen=True)
class _Run:
    """Parallel lines at `angle`, `gaps` mm apart in turn, broken into `dashes` (drawn, left out) if there are any."""

    angle: float
    gaps: tuple[float, ...]
    dashes: tuple[float, float] | None = None


RUNS: Mapping[str, tuple[_Run, ...]] = {
    "along the grain": (_Run(0.0, (2.6, 1.5, 3.2, 1.9)),),
    "across the grain": (_Run(radians(60), (2.4, 0.9)),),
    "metal": (_Run(pi / 4, (1.0,)),),
    "bone": (_Run(pi / 4, (2.0,), (1.4, 1.4)), _Run(-pi / 4, (2.0,), (1.4, 1.4))),
    "void": (),
    "left clear": (),
}

Interval = tuple[float, float]
Outline = Sequence[Point]


def left_clear(mark: object) -> Outline | None:
    """The outline inside which no other shape's hatch is drawn; None for a mark that asks for none."""
    if isinstance(mark, Polyline) and mark.closed and mark.hatch == "left clear":
        return mark.points
    if isinstance(mark, Circle) and mark.hatch == "left clear":
        (x, y), r = mark.centre, mark.radius
        turns = (tau * step / ROUND for step in range(ROUND))
        return [(x + r * cos(turn), y + r * sin(turn)) for turn in turns]
    return None


def hatched(shape: Polyline, clear: Sequence[Outline] = ()) -> tuple[Line, ...]:
    """The hatch lines of a closed shape, with gaps where the `clear` outlines (words, say) lie."""
    if not shape.hatch or not shape.closed or len(shape.points) < 3:
        return ()
    if shape.hatch == "void":
        return _cross(shape.points)
    return tuple(line for run in RUNS[shape.hatch] for line in _lines(run, shape.points, clear))


def _cross(points: Outline) -> tuple[Line, ...]:
    """The two diagonals of the shape's box, where they lie inside it: the draughtsman's sign for an opening."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    low, high = (min(xs), min(ys)), (max(xs), max(ys))
    return tuple(
        line
        for start, end in ((low, high), ((low[0], high[1]), (high[0], low[1])))
        for line in _inside(start, end, points)
    )


def _inside(start: Point, end: Point, points: Outline) -> Iterator[Line]:
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = (dx * dx + dy * dy) ** 0.5
    if length == 0.0:
        return
    along = (dx / length, dy / length)
    height = _across(start, along)
    for first, last in _crossings(points, along, (height,)).get(0, ()):
        yield _line(along, height, first, last)


def _lines(run: _Run, points: Outline, clear: Sequence[Outline]) -> Iterator[Line]:
    along = (cos(run.angle), sin(run.angle))
    edge = [_across(point, along) for point in points]
    low, high = min(edge), max(edge)
    apart = _apart(run, high - low)
    heights = tuple(_rungs(low, high, [gap * apart for gap in run.gaps]))
    lines = _crossings(points, along, heights)
    for outline in clear:
        for at, holes in _crossings(outline, along, heights).items():
            lines[at] = _without(lines.get(at, ()), holes)
    for at, height in enumerate(heights):
        for first, last in _dashed(lines.get(at, ()), run.dashes):
            yield _line(along, height, first, last)


def _apart(run: _Run, across: float) -> float:
    """How many times as far apart as usual the lines stand: nearer on a small shape, further on a large one."""
    if across > LARGE:
        return min(across / LARGE, WIDEST)
    return min(1.0, max(across / (3.0 * max(run.gaps)), FINEST / min(run.gaps)))


def _rungs(low: float, high: float, gaps: Sequence[float]) -> Iterator[float]:
    steps = cycle(gaps)
    height = low + next(steps) / 2
    while height < high:
        yield height
        height += next(steps)


def _across(point: Point, along: Point) -> float:
    return point[1] * along[0] - point[0] * along[1]


def _line(along: Point, height: float, first: float, last: float) -> Line:
    (x, y), start, end = along, first, last
    return Line((start * x - height * y, start * y + height * x), (end * x - height * y, end * y + height * x), LAYER)


def _crossings(points: Outline, along: Point, heights: Sequence[float]) -> dict[int, Sequence[Interval]]:
    """Where the lines at the rising `heights` run inside the outline (even-odd), as intervals along them, by their
    places; those that miss it are left out: of a shape's lines a word meets few.
    """
    cuts = defaultdict[int, list[float]](list)
    for a, b in pairwise([*points, points[0]]):
        start, end = _across(a, along), _across(b, along)
        # Only the lines that the edge crosses are looked at: an outline has hundreds of edges, and each crosses few.
        for line in range(bisect_right(heights, min(start, end)), bisect_right(heights, max(start, end))):
            below, above = start - heights[line], end - heights[line]
            share = below / (below - above)
            cuts[line].append((a[0] + share * (b[0] - a[0])) * along[0] + (a[1] + share * (b[1] - a[1])) * along[1])
    rising = {line: sorted(found) for line, found in cuts.items()}
    return {line: list(zip(found[::2], found[1::2], strict=True)) for line, found in rising.items()}


def _without(intervals: Sequence[Interval], holes: Sequence[Interval]) -> Sequence[Interval]:
    for low, high in holes:
        intervals = [
            piece
            for first, last in intervals
            for piece in ((first, min(last, low)), (max(first, high), last))
            if piece[1] > piece[0]
        ]
    return intervals


def _dashed(intervals: Sequence[Interval], dashes: tuple[float, float] | None) -> Iterator[Interval]:
    if dashes is None:
        yield from intervals
        return
    drawn, left_out = dashes
    for first, last in intervals:
        while first < last:
            yield first, min(first + drawn, last)
            first += drawn + left_out
