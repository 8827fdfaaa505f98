"""What a draughtsman's hand does: put a point where a view has it, draw a box, an arrow, a run of the surface.

Nothing here knows a dimension; every figure comes from the graph.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

import numpy as np

from gramil.drawings.marks import Drawing, Line, Mark, Marks, Point, Polyline, Words, mirrored
from gramil.shapes.crown import Crown

Hatch = Literal["", "along the grain", "across the grain", "metal", "bone", "void"]
RUN_STEPS = 24
"""Straight pieces in which a section's face is drawn."""
BARB = (1.8, 0.6)
"""Length and half-width of an arrow's head, in mm."""


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


def said(at: Point, lines: Sequence[str], height: float = 2.2, layer: str = "text") -> tuple[Mark, ...]:
    """Lines of words below one another."""
    return tuple(
        Words((at[0], at[1] - 1.7 * height * row), text, height, layer=layer) for row, text in enumerate(lines)
    )


def ticks(points: Iterable[Point], reach: float, layer: str) -> Marks:
    """A short upright line at each point, `reach` long (downward if negative)."""
    return tuple(Line((x, y), (x, y + reach), layer) for x, y in points)


def polyline_lines(points: Sequence[Point], layer: str) -> Marks:
    """Each straight piece of a run as a line of its own."""
    return tuple(Line(start, end, layer) for start, end in pairwise(points))


def handed(drawing: Drawing, hand: str) -> Drawing:
    """The drawing for the hand that plucks: as it is for the right, turned over once for the left."""
    return mirrored(drawing) if hand == "left" else drawing
