"""A closed outline about the x axis: its widths, its length round, its area, and where lines meet it.

The upper half runs from the end on the axis of less x to the other, clockwise seen from above; the lower half is its
mirror image unless it has points of its own. Distances along it start at the first end: from 0 to the upper half's
length above, and on to the whole below.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm, Mm2
from gramil.shapes.curve import Curve, begun_at, joined, part
from gramil.shapes.curve_through import End, closed_through, through
from gramil.shapes.half_outline import HalfOutline, Station

Array = NDArray[np.float64]
Point = tuple[float, float]
Side = Literal["treble", "bass"]
"""The upper half, y above 0, and the lower one."""


@dataclass(frozen=True)
class Outline:
    """The upper half goes through `points`, in mm, from axis to axis (y = 0 at both), broken at `corners`.

    `bass` and `bass_corners` are those of the lower half, y downward, where the two are not alike. An end that is not
    among the corners leaves the axis square; with `smooth` the line runs on through it into the other half, at
    whatever angle. Made by `gramil.shapes.outline_through`, which checks what it is given.
    """

    points: tuple[Point, ...]
    corners: tuple[int, ...] = ()
    bass: tuple[Point, ...] = ()
    bass_corners: tuple[int, ...] = ()
    smooth: bool = False

    @property
    def alike(self) -> bool:
        """Whether the lower half is the upper one's mirror image."""
        return not self.bass

    @cached_property
    def treble_half(self) -> HalfOutline:
        """The upper half."""
        if self.smooth and not self.alike:
            return HalfOutline(self._round[0])
        return HalfOutline(_half(self.points, self.corners))

    @cached_property
    def bass_half(self) -> HalfOutline:
        """The lower half, drawn above the axis; the same thing as the upper one where they are alike."""
        if self.alike:
            return self.treble_half
        return HalfOutline(self._round[1] if self.smooth else _half(self.bass, self.bass_corners))

    @cached_property
    def halves(self) -> tuple[HalfOutline, HalfOutline]:
        """Upper and lower half."""
        return (self.treble_half, self.bass_half)

    @cached_property
    def _round(self) -> tuple[Curve, Curve]:
        """Both halves of the closed curve through all the points, cut where it meets the axis."""
        below = [(x, -y) for x, y in self.bass[-2:0:-1]]
        last = len(self.points) + len(self.bass) - 2
        rows = {*self.corners, *((last - row) % last for row in self.bass_corners)}
        first = min(rows, default=0)
        curve = closed_through((*self.points, *below), sorted(rows))
        upper, tail = begun_at(curve, -first), len(self.points) - 1
        return part(upper, 0, tail), part(upper, tail, last).reversed().mirrored()

    @property
    def half(self) -> Curve:
        """The upper half as a curve, from the first end to the other."""
        return self.treble_half.curve

    def half_of(self, side: Side) -> HalfOutline:
        """The upper half, treble, or the lower one, bass."""
        return self.treble_half if side == "treble" else self.bass_half

    @cached_property
    def whole(self) -> Curve:
        """Both halves as one closed curve, clockwise."""
        return joined((self.half, self.bass_half.curve.reversed().mirrored()))

    @cached_property
    def ring(self) -> Array:
        """The points of an outline that is made of close ones, once round, shape (n, 2), the first repeated at the
        end; not to be written to.
        """
        upper, below = np.array(self.points), np.array(self.bass or self.points)
        found = np.vstack((upper, below[::-1] * (1.0, -1.0)))
        found.setflags(write=False)
        return found

    @cached_property
    def start(self) -> Mm:
        """Least x."""
        return min(each.start for each in self.halves)

    @cached_property
    def end(self) -> Mm:
        """Greatest x."""
        return max(each.end for each in self.halves)

    @property
    def length(self) -> Mm:
        """From least to greatest x."""
        return self.end - self.start

    @property
    def width(self) -> Mm:
        """From the outermost point on the one side to the outermost on the other, across."""
        return sum(each.widest for each in self.halves)

    @property
    def perimeter(self) -> Mm:
        """Length once round."""
        return sum(each.curve.length for each in self.halves)

    @cached_property
    def area(self) -> Mm2:
        """Area enclosed."""
        return self._moment(0)

    @cached_property
    def centroid(self) -> Mm:
        """x of the area's centroid."""
        return self._moment(1) / self.area

    def _moment(self, power: int) -> float:
        return sum(each.moment(power) for each in self.halves)

    def half_width(self, x: ArrayLike) -> Array:
        """Distance in mm from the axis to the upper half's outermost point at x, of x's shape; 0 beyond the ends."""
        return self.treble_half.half_width(x)

    def width_at(self, x: ArrayLike) -> Array:
        """From the outermost point at x on the one side to that on the other, of x's shape; 0 beyond the ends."""
        return self.treble_half.half_width(x) + self.bass_half.half_width(x)

    def along(self, x: float) -> Mm:
        """Distance along the outline from the first end to the outermost point of the upper half at x.

        Raises ValueError when x is beyond the ends.
        """
        return self.treble_half.along(x)

    @property
    def stations(self) -> tuple[Station, ...]:
        """The upper half's widest and narrowest stations in turn, from the first end; the ends are not among them."""
        return self.treble_half.stations

    def point(self, along: ArrayLike) -> Array:
        """Points at distances along the outline, shape (..., 2); distances count on beyond once round."""
        return self.whole.point(np.mod(along, self.perimeter))

    def tangent(self, along: ArrayLike) -> Array:
        """Unit vectors along the outline, clockwise, shape (..., 2)."""
        return self.whole.tangent(np.mod(along, self.perimeter))

    def normal(self, along: ArrayLike) -> Array:
        """Unit vectors square to the outline, inwards, shape (..., 2)."""
        tangent = self.tangent(along)
        return np.stack((tangent[..., 1], -tangent[..., 0]), axis=-1)

    def curvature(self, along: ArrayLike) -> Array:
        """1/radius in 1/mm at distances along: positive where the outline bulges out, negative at a hollow."""
        return -self.whole.curvature(np.mod(along, self.perimeter))

    def contains(self, points: ArrayLike) -> NDArray[np.bool_]:
        """Whether points (shape (..., 2)) lie inside: the edge is met an odd number of times, going out across."""
        places = np.asarray(points, dtype=np.float64)
        upper = _odd(self.treble_half, places)
        return upper if self.alike else np.where(places[..., 1] >= 0, upper, _odd(self.bass_half, places))

    def meets(self, point: Sequence[float], direction: Sequence[float]) -> Array:
        """Where the straight line through `point` along `direction` meets the outline: shape (n, 2), in its order."""
        found = self.whole.place(self.whole.meets(point, direction))
        order = np.argsort(found @ np.asarray(direction, dtype=np.float64), kind="stable")
        found = found[order]
        apart = np.hypot(*np.diff(found, axis=0).T) > 1e-6 if len(found) else np.array([], dtype=bool)
        return np.asarray(found[np.concatenate(([True], apart))] if len(found) else found)

    def polyline(self, tolerance: Mm) -> Array:
        """Points once round, clockwise, the first not repeated, shape (n, 2), whose chords lie within `tolerance`."""
        return self.whole.polyline(tolerance)[:-1]


def _half(points: tuple[Point, ...], corners: tuple[int, ...]) -> Curve:
    start: End = "free" if 0 in corners else "square"
    end: End = "free" if len(points) - 1 in corners else "square"
    return through(points, corners, start, end)


def _odd(half: HalfOutline, places: Array) -> NDArray[np.bool_]:
    heights = half.heights(places[..., 0])
    return np.asarray((heights > np.abs(places[..., 1])).sum(axis=0) % 2 == 1)
