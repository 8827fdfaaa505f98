"""One half of an outline, from its first end on the axis to the other: its widths, its stations, what it encloses.

A half is drawn above the axis, whichever side it is: y is the distance from the axis, x runs along it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm
from gramil.shapes.curve import Curve, Span

Array = NDArray[np.float64]
FEW, MOST_KNOWN = 8, 512
"""How many places may be asked for at once for the answer to be kept, and how many answers are kept."""
LEAST_SWELL = 0.01
"""In mm: a widest and a narrowest station that differ by less are a ripple, and neither is named."""


@dataclass(frozen=True)
class Station:
    """Where the outline is widest or narrowest for its surroundings; `along` in mm from the first end."""

    kind: Literal["widest", "narrowest"]
    x: Mm
    half_width: Mm
    along: Mm


@dataclass(frozen=True, eq=False)
class HalfOutline:
    """The `curve` of one half, in mm, from axis to axis, its y nowhere below 0."""

    curve: Curve

    @cached_property
    def _lengthwise(self) -> tuple[Span, ...]:
        return self.curve.spans(0)

    @cached_property
    def start(self) -> Mm:
        """Least x."""
        return float(self.curve.place(_ends(self._lengthwise))[:, 0].min())

    @cached_property
    def end(self) -> Mm:
        """Greatest x."""
        return float(self.curve.place(_ends(self._lengthwise))[:, 0].max())

    @cached_property
    def _crosswise(self) -> tuple[Span, ...]:
        return self.curve.spans(1)

    @cached_property
    def widest(self) -> Mm:
        """Distance from the axis to the outermost point of all."""
        return float(self.curve.place(_ends(self._crosswise))[:, 1].max())

    @property
    def widest_along(self) -> Mm:
        """Distance along the half to that point."""
        ends = _ends(self._crosswise)
        return float(self.curve.along(ends[int(self.curve.place(ends)[:, 1].argmax())]))

    def moment(self, power: int) -> float:
        """The integral of x^power over the half's area: exact, for it is a polynomial on each piece."""
        place, velocity = self.curve.place(self.curve.nodes), self.curve.velocity(self.curve.nodes)
        return float((self.curve.weights * place[..., 1] * place[..., 0] ** power * velocity[..., 0]).sum())

    def half_width(self, x: ArrayLike) -> Array:
        """Distance in mm from the axis to the outermost point at x, of x's shape; 0 beyond the ends."""
        return np.nanmax(self.heights(np.asarray(x, dtype=np.float64)), axis=0, initial=0.0)

    def along(self, x: float) -> Mm:
        """Distance along the half from its first end to its outermost point at x.

        Raises ValueError when x is beyond the ends.
        """
        parameters = [_reached(self.curve, span, np.asarray(x)) for span in self._lengthwise]
        heights = [float(self.curve.place(each)[1]) for each in parameters]
        if np.isnan(heights).all():
            raise ValueError(f"x = {x} is beyond the outline's ends")
        return float(self.curve.along(parameters[int(np.nanargmax(heights))]))

    def heights(self, x: Array) -> Array:
        """y at x, one row a run that goes one way along, not a number where the run does not reach x."""
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
        """A cache of results for small sets of places: the same ones are asked for after every change elsewhere."""
        return {}

    def _found(self, x: Array) -> Array:
        return np.stack([self.curve.place(_reached(self.curve, span, x))[..., 1] for span in self._lengthwise])

    @cached_property
    def stations(self) -> tuple[Station, ...]:
        """The widest and narrowest stations in turn, from the first end; the ends themselves are not among them."""
        turns = [(one, other) for one, other in pairwise(self._crosswise) if one.sign != other.sign]
        return tuple(_without_ripples([self._station(one, other) for one, other in turns]))

    def _station(self, before: Span, after: Span) -> Station:
        parameter = (before.end + after.start) / 2
        x, y = self.curve.place(parameter)
        return Station(
            "widest" if before.sign > 0 else "narrowest", float(x), float(y), float(self.curve.along(parameter))
        )


def _ends(spans: Sequence[Span]) -> Array:
    return np.array([parameter for span in spans for parameter in (span.start, span.end)])


def _reached(curve: Curve, span: Span, x: Array) -> Array:
    """Parameters at which a lengthwise span comes to x; not a number where it does not."""
    first, last = curve.place(np.array([span.start, np.nextafter(span.end, span.start)]))[:, 0]
    slack = 1e-9
    reached = (x >= min(first, last) - slack) & (x <= max(first, last) + slack)
    found = np.full(x.shape, np.nan)
    found[reached] = _met(curve, span, x[reached])
    return found


def _met(curve: Curve, span: Span, x: Array) -> Array:
    """Parameters at which a lengthwise span comes to each x, which it does.

    Newton's steps, halved where one would leave what is still between, until none moves by more than rounding does.
    """
    low, high = np.full(x.shape, span.start), np.full(x.shape, span.end)
    at = (low + high) / 2
    for _ in range(60):  # so many halvings reach rounding from any span, should no step of Newton's ever serve
        off, speed = curve.place(at)[..., 0] - x, curve.velocity(at)[..., 0]
        short = off * span.sign < 0
        low, high = np.where(short, at, low), np.where(short, high, at)
        with np.errstate(divide="ignore", invalid="ignore"):
            step = at - off / speed
        # A step of nothing, which ends on the one side or the other of what is between, has arrived.
        to = np.where((step >= low) & (step <= high), step, (low + high) / 2)
        moved, at = float(np.abs(to - at).max(initial=0.0)), to
        if moved <= 1e-14 * span.end:
            break
    return at


def _without_ripples(stations: list[Station]) -> list[Station]:
    """Neighbours that differ by less than LEAST_SWELL taken out in pairs, the closest first."""
    while len(stations) > 2:
        swells = [abs(a.half_width - b.half_width) for a, b in pairwise(stations)]
        least = int(np.argmin(swells))
        if swells[least] >= LEAST_SWELL:
            break
        stations = stations[:least] + stations[least + 2 :]
    return stations
