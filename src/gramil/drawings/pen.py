"""A draughtsman's basic moves: put a point where a view has it, draw a box, an arrow, a run of the surface.

No dimension is known here; every figure comes from the graph.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import ceil, isfinite, pi
from typing import Any, Literal

import numpy as np

from gramil.drawings.marks import (
    SMALLEST,
    Anchor,
    Arc,
    Circle,
    Drawing,
    Label,
    Line,
    Mark,
    Marks,
    Point,
    Polyline,
    Span,
    Words,
    mirrored,
)
from gramil.reference import Ref
from gramil.shapes.crown import Crown

Hatch = Literal["", "along the grain", "across the grain", "metal", "bone", "void"]
Side = Literal["left", "right"]
RUN_STEPS = 24
"""Straight pieces in which a section's face is drawn."""
BARB = (1.8, 0.6)
"""Length and half-width of an arrow's head, in mm."""

FIGURE = 2.6
"""Height of a figure on a small drawing, in mm."""
LETTER = 0.66
"""Width of a letter as a share of its height, on the wide side of what words come to."""
TICK = 0.8
"""Half an oblique tick at a dimension's end, each way, in mm."""


@dataclass(frozen=True)
class View:
    """A picture's own axes on the paper: where its zero lies, and how many times as large each way is drawn."""

    origin: Point
    across: float = 1.0
    up: float = 1.0

    def at(self, y: float, z: float) -> Point:
        """The place on the paper of (y, z), in mm."""
        return (self.origin[0] + self.across * y, self.origin[1] + self.up * z)

    def path(self, points: Iterable[Point]) -> tuple[Point, ...]:
        """The places of a run of points."""
        return tuple(self.at(y, z) for y, z in points)

    def line(self, start: Point, end: Point, layer: str) -> Line:
        """A line between two points of the picture."""
        return Line(self.at(*start), self.at(*end), layer)

    def box(self, low: Point, high: Point, layer: str, hatch: Hatch = "") -> Polyline:
        """A closed box between two opposite corners of the picture."""
        return Polyline(self.path(box_points(low, high)), layer, closed=True, hatch=hatch)

    def shape(self, points: Iterable[Point], layer: str, hatch: Hatch = "") -> Polyline:
        """A closed shape through points of the picture."""
        return Polyline(self.path(points), layer, closed=True, hatch=hatch)

    def run(self, points: Iterable[Point], layer: str) -> Polyline:
        """An open run through points of the picture."""
        return Polyline(self.path(points), layer)


def box_points(low: Point, high: Point) -> tuple[Point, Point, Point, Point]:
    """Once round a box, from its low corner."""
    return (low, (high[0], low[1]), high, (low[0], high[1]))


def midway(one: Point, other: Point) -> Point:
    """The point half way between two."""
    return ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)


def face_run(surface: Crown, x: float, low: float, high: float) -> tuple[Point, ...]:
    """The board's face across at x, from y = low to high: points (y, z), z from the crest."""
    across = np.linspace(low, high, RUN_STEPS + 1)
    return tuple((float(y), -float(fall)) for y, fall in zip(across, surface.fall(x, across), strict=True))


def leaning(points: Iterable[Point], slope: float) -> tuple[Point, ...]:
    """Points of a board's face that rises by `slope` a mm across, about the middle: a board not equally thick."""
    return tuple((y, z + slope * y) for y, z in points)


def arrow(start: Point, end: Point, layer: str = "dimensions") -> Marks:
    """A line with a head at its end."""
    (x0, y0), (x1, y1) = start, end
    length = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
    along, (barb, half) = ((x1 - x0) / length, (y1 - y0) / length), BARB
    back = (x1 - barb * along[0], y1 - barb * along[1])
    sides = [(back[0] - side * half * along[1], back[1] + side * half * along[0]) for side in (1, -1)]
    return (Line(start, end, layer), *(Line(point, end, layer) for point in sides))


def pointer(words: str, at: Point, to: Point, height: float = 2.2) -> Marks:
    """Words with a thin line from beside them to what they name; the words stand on the side away from it."""
    left_of = to[0] >= at[0]
    start = (at[0] + (0.8 if left_of else -0.8), at[1] + height / 2)
    return (Words(at, words, height, anchor="right" if left_of else "left"), Line(start, to, "dimensions"))


def lines_of_words(at: Point, *lines: str, height: float = 2.2) -> Marks:
    """Lines of words below one another."""
    return tuple(Words((at[0], at[1] - 1.7 * height * row), text, height) for row, text in enumerate(lines))


def fitted(at: Point, text: str, wide: float, height: float) -> Words:
    """Words about a middle, `height` tall, but smaller if they would be wider than `wide`, and finally cut off."""
    longest = max(1, int(wide / (LETTER * SMALLEST))) if isfinite(wide) else len(text)
    text = text if len(text) <= longest else text[: longest - 1].rstrip() + "…"
    return Words(at, text, min(height, wide / (LETTER * max(1, len(text)))), anchor="middle")


def tiers(places: Sequence[float], wide: float) -> int:
    """On how many heights figures `wide` wide must stand over neighbouring places so as not to run together."""
    nearest = min((abs(other - one) for one, other in pairwise(places)), default=wide)
    return max(1, ceil(wide / nearest)) if nearest > 0 else len(places)


@dataclass(frozen=True)
class FigureLines:
    """The line that each figure of a row of strings stands on, from 0; `numbered` if each has its string's number."""

    rows: tuple[int, ...]
    numbered: bool

    @property
    def count(self) -> int:
        """How many lines there are."""
        return max(self.rows) + 1

    def before(self, string: int) -> str:
        """What stands before a string's figure: its number, where the figures stand on many lines."""
        return f"{string}: " if self.numbered else ""


NUMBER_WIDE = 0.6
"""What a string's number before its figure takes, as a share of the figure."""
MANY_LINES = 4
"""On this many lines nobody can see which string a figure is of."""


def figure_lines(places: Sequence[float], wide: float) -> FigureLines:
    """On which lines figures `wide` wide stand over their strings' places, in order, so that none runs into another.

    Strings that stand evenly take the lines in turn; of pairs each takes the first line where there is room.
    """
    many = tiers(places, wide)
    turn = tuple(row % many for row in range(1, len(places) + 1))
    if many < MANY_LINES:
        return FigureLines(turn, False)
    fitted = _fitted(places, wide * (1 + NUMBER_WIDE))
    return FigureLines(fitted, True)


def _fitted(places: Sequence[float], wide: float) -> tuple[int, ...]:
    last: list[float] = []
    rows: list[int] = []
    for place in places:
        row = next((line for line, other in enumerate(last) if abs(other - place) >= wide), len(last))
        last[row : row + 1] = [place]
        rows.append(row)
    return tuple(rows)


def upright(
    low: Point, high: Point, address: Ref[Any], before: str = "", side: Side = "right", middle: float | None = None
) -> Marks:
    """A dimension up and down, too short for its figure to stand along it: the figure stands level beside it.

    `side` is where the figure stands; its middle is level with the dimension's, or at the height `middle`.
    """
    out = 1.0 if side == "right" else -1.0
    at = (low[0] + 1.8 * out, ((low[1] + high[1]) / 2 if middle is None else middle) - FIGURE / 2)
    return (Line(low, high, "dimensions"), *_ends(low, high), _figure(at, address, before, side))


def level(left: Point, right: Point, address: Ref[Any], before: str = "", side: Side = "right") -> Marks:
    """A dimension along, too short for its figure: the figure stands level beside its end."""
    out, end = (1.0, right) if side == "right" else (-1.0, left)
    at = (end[0] + 3.0 * out, end[1] - FIGURE / 2)
    tail = Line(end, (end[0] + 2.4 * out, end[1]), "dimensions")
    return (Line(left, right, "dimensions"), tail, *_ends(left, right), _figure(at, address, before, side))


def _ends(one: Point, other: Point) -> Marks:
    return tuple(Line((x - TICK, y - TICK), (x + TICK, y + TICK), "dimensions") for x, y in (one, other))


def _figure(at: Point, address: Ref[Any], before: str, side: Side) -> Label:
    return Label(at, address, before, height=FIGURE, anchor="left" if side == "right" else "right")


def sides_changed(marks: Marks) -> Marks:
    """Marks with left and right exchanged about a picture's middle at x = 0; up and down stay.

    Words stay readable, and run the other way from where they stand.
    """
    return tuple(_side_changed(mark) for mark in marks)


def _side_changed(mark: Mark) -> Mark:
    match mark:
        case Line():
            return replace(mark, start=_across(mark.start), end=_across(mark.end))
        case Span():
            return replace(mark, start=_across(mark.start), end=_across(mark.end), offset=-mark.offset)
        case Polyline():
            return replace(mark, points=tuple(_across(point) for point in mark.points))
        case Circle():
            return replace(mark, centre=_across(mark.centre))
        case Arc():
            return replace(
                mark, centre=_across(mark.centre), start_angle=pi - mark.end_angle, end_angle=pi - mark.start_angle
            )
        case Words() | Label():
            return replace(mark, at=_across(mark.at), anchor=_OTHER_SIDE[mark.anchor])


_OTHER_SIDE: Mapping[Anchor, Anchor] = {"left": "right", "middle": "middle", "right": "left"}


def _across(point: Point) -> Point:
    return (-point[0], point[1])


def handed(drawing: Drawing, hand: str) -> Drawing:
    """The drawing for the hand that plucks: as it is for the right, turned over once for the left."""
    return mirrored(drawing) if hand == "left" else drawing
