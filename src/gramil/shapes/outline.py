"""A closed outline, symmetric about the x axis: its widths, its length round, its area, and where lines meet it.

The upper half runs from the end of least x to the other, clockwise seen from above; the lower half is its mirror
image. Distances along it start at the first end: from 0 to half the perimeter above, and on to the whole below.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm, Mm2
from gramil.shapes.curve import Curve, Span, joined
from gramil.shapes.curve_through import End, through

Array = NDArray[np.float64]
Point = tuple[float, float]
FEW, MOST_KNOWN = 8, 512
"""Places asked for at once that are kept, and so many times."""
LEAST_SWELL = 0.01
"""In mm: a widest and a narrowest station that differ by less are a ripple, and neither is named."""


@dataclass(frozen=True)
class Station:
    """Where the outline is widest or narrowest for its surroundings; `along` in mm from the first end."""

    kind: Literal["widest", "narrowest"]
    x: Mm
    half_width: Mm
    along: Mm


@dataclass(frozen=True)
class Outline:
    """The upper half goes through `points`, in mm, from axis to axis (y = 0 at both), broken at `corners`.

    An end that is not among the corners leaves the axis square. Made by `gramil.shapes.outline_through`, which
    checks what it is given.
    """

    points: tuple[Point, ...]
    corners: tuple[int, ...] = ()

    @cached_property
    def half(self) -> Curve:
        """The upper half as a curve, from the first end to the other."""
        start: End = "free" if 0 in self.corners else "square"
        end: End = "free" if len(self.points) - 1 in self.corners else "square"
        return through(self.points, self.corners, start, end)

    @cached_property
    def whole(self) -> Curve:
        """Both halves as one closed curve, clockwise."""
        return joined((self.half, self.half.reversed().mirrored()))

    @cached_property
    def _lengthwise(self) -> tuple[Span, ...]:
        return self.half.spans(0)

    @cached_property
    def start(self) -> Mm:
        """Least x."""
        return float(self.half.place(_ends(self._lengthwise))[:, 0].min())

    @cached_property
    def end(self) -> Mm:
        """Greatest x."""
        return float(self.half.place(_ends(self._lengthwise))[:, 0].max())

    @property
    def length(self) -> Mm:
        """From least to greatest x."""
        return self.end - self.start

    @property
    def width(self) -> Mm:
        """The whole width at the widest station."""
        return 2 * float(self.half.place(_ends(self.half.spans(1)))[:, 1].max())

    @property
    def perimeter(self) -> Mm:
        """Length once round."""
        return 2 * self.half.length

    @cached_property
    def area(self) -> Mm2:
        """Area enclosed."""
        return 2 * self._over_half(0)

    @cached_property
    def centroid(self) -> Mm:
        """x of the area's centroid, which lies on the axis."""
        return 2 * self._over_half(1) / self.area

    def _over_half(self, power: int) -> float:
        """The integral of x^power over the upper half's area: exact, for it is a polynomial on each piece."""
        place, velocity = self.half.place(self.half.nodes), self.half.velocity(self.half.nodes)
        return float((self.half.weights * place[..., 1] * place[..., 0] ** power * velocity[..., 0]).sum())

    def half_width(self, x: ArrayLike) -> Array:
        """Distance in mm from the axis to the outermost point at x, of x's shape; 0 beyond the ends."""
        return np.nanmax(self._heights(np.asarray(x, dtype=np.float64)), axis=0, initial=0.0)

    def along(self, x: float) -> Mm:
        """Distance along the outline from the first end to the outermost point of the upper half at x.

        Raises ValueError when x is beyond the ends.
        """
        parameters = [_reached(self.half, span, np.asarray(x)) for span in self._lengthwise]
        heights = [float(self.half.place(each)[1]) for each in parameters]
        if np.isnan(heights).all():
            raise ValueError(f"x = {x} is beyond the outline's ends")
        return float(self.half.along(parameters[int(np.nanargmax(heights))]))

    def _heights(self, x: Array) -> Array:
        """y of the upper half at x, one row a lengthwise span, not a number where the span does not reach x."""
        if x.size > FEW:
            return self._found(x)
        key = (x.shape, x.tobytes())
        if key not in self._known:
            if len(self._known) >= MOST_KNOWN:
                self._known.clear()
            found = self._found(x)
            found.setflags(write=False)
            self._known[key] = found
        return self._known[key]

    @cached_property
    def _known(self) -> dict[tuple[tuple[int, ...], bytes], Array]:
        """A cache of results for small sets of places: the same ones are asked for again after every change
        elsewhere.
        """
        return {}

    def _found(self, x: Array) -> Array:
        return np.stack([self.half.place(_reached(self.half, span, x))[..., 1] for span in self._lengthwise])

    @cached_property
    def stations(self) -> tuple[Station, ...]:
        """The widest and narrowest stations in turn, from the first end; the ends themselves are not among them."""
        turns = [(one, other) for one, other in pairwise(self.half.spans(1)) if one.sign != other.sign]
        return tuple(_without_ripples([self._station(one, other) for one, other in turns]))

    def _station(self, before: Span, after: Span) -> Station:
        parameter = (before.end + after.start) / 2
        x, y = self.half.place(parameter)
        return Station(
            "widest" if before.sign > 0 else "narrowest", float(x), float(y), float(self.half.along(parameter))
        )

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
        heights = self._heights(places[..., 0])
        return np.asarray((heights > np.abs(places[..., 1])).sum(axis=0) % 2 == 1)

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


def _ends(spans: Sequence[Span]) -> Array:
    return np.array([parameter for span in spans for parameter in (span.start, span.end)])


def _reached(curve: Curve, span: Span, x: Array) -> Array:
    """Parameters at which a lengthwise span comes to x; not a number where it does not.

    Newton's steps, halved where one would leave what is still between, until none moves by more than rounding does.
    """
    low, high = np.full(x.shape, span.start), np.full(x.shape, span.end)
    first, last = curve.place(np.array([span.start, np.nextafter(span.end, span.start)]))[:, 0]
    at = (low + high) / 2
    for _ in range(60):
        off, speed = curve.place(at)[..., 0] - x, curve.velocity(at)[..., 0]
        short = off * span.sign < 0
        low, high = np.where(short, at, low), np.where(short, high, at)
        with np.errstate(divide="ignore", invalid="ignore"):
            step = at - off / speed
        to = np.where((step > low) & (step < high), step, (low + high) / 2)
        moved, at = float(np.abs(to - at).max(initial=0.0)), to
        if moved <= 1e-14 * span.end:
            break
    slack = 1e-9
    outside = (x < min(first, last) - slack) | (x > max(first, last) + slack)
    return np.where(outside, np.nan, at)


def _without_ripples(stations: list[Station]) -> list[Station]:
    """Neighbours that differ by less than LEAST_SWELL taken out in pairs, the closest first."""
    while len(stations) > 2:
        swells = [abs(a.half_width - b.half_width) for a, b in pairwise(stations)]
        least = int(np.argmin(swells))
        if swells[least] >= LEAST_SWELL:
            break
        stations = stations[:least] + stations[least + 2 :]
    return stations
