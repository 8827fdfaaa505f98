"""A rounded section below a flat: half a superellipse, or two of them mixed; and the flats that touch it all round.

y runs across, from -half_width to half_width; depth is measured down from the flat. |y/a|^n + (z/d)^n = 1: n = 2 is
a half ellipse, less is sharper in the middle, more is squarer.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import cos, pi, sin

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm, Mm2, Radians, Ratio

Array = NDArray[np.float64]
Point = tuple[float, float]

_STEPS = np.linspace(-3.6, 3.6, 241)
_TURNS = pi / 2 * np.sinh(_STEPS)
_BEYOND = 1 / (1 + np.exp(2 * _TURNS))
"""1 - y/half_width at the places of the double exponential rule, kept exact where it is tiny."""
_WEIGHTS = (_STEPS[1] - _STEPS[0]) * pi * np.cosh(_STEPS) * _BEYOND * (1 - _BEYOND)


def depth_integrals(exponent: ArrayLike, other_exponent: ArrayLike, mix: ArrayLike) -> Array:
    """Integrals of the first three powers of the depth from edge to edge, for one wide to either side and one deep.

    Each figure is a number or an array, all of one shape; the answer has that shape with 3 in front. By the double
    exponential rule, because the edges stand upright.
    """
    with np.errstate(divide="ignore"):  # the middle itself: nothing is taken off the depth there
        rest = [-np.expm1(np.asarray(n)[..., None] * np.log1p(-_BEYOND)) for n in (exponent, other_exponent)]
    shares = (1 - np.asarray(mix), np.asarray(mix))
    heights = sum(
        share[..., None] * each ** (1 / np.asarray(n)[..., None])
        for n, share, each in zip((exponent, other_exponent), shares, rest, strict=True)
    )
    return np.stack([(2 * _WEIGHTS * np.asarray(heights) ** power).sum(axis=-1) for power in (1, 2, 3)])


@dataclass(frozen=True)
class Profile:
    """Exponents above 1; `mix` from 0 (all `exponent`) to 1 (all `other_exponent`) weighs the two depths at each y."""

    half_width: Mm
    depth: Mm
    exponent: Ratio
    other_exponent: Ratio = 2.0
    mix: Ratio = 0.0

    def depth_at(self, y: ArrayLike) -> Array:
        """Depth at y, of y's shape; not a number beyond the edges."""
        across = np.abs(np.asarray(y, dtype=np.float64)) / self.half_width
        with np.errstate(invalid="ignore"):
            shares = [weight * (1 - across**n) ** (1 / n) for n, weight in self._parts]
        return np.asarray(self.depth * sum(shares))

    def steepness(self, y: ArrayLike) -> Array:
        """How fast the depth falls towards either edge, d(depth)/d|y|, negative or 0; infinite at the edges."""
        across = np.abs(np.asarray(y, dtype=np.float64)) / self.half_width
        with np.errstate(divide="ignore"):
            shares = [w * across ** (n - 1) * (1 - across**n) ** (1 / n - 1) for n, w in self._parts]
        return np.asarray(-self.depth / self.half_width * sum(shares))

    @property
    def _parts(self) -> tuple[tuple[float, float], ...]:
        parts = ((self.exponent, 1 - self.mix), (self.other_exponent, self.mix))
        return tuple((n, weight) for n, weight in parts if weight != 0)

    def points(self, count: int, from_the_middle: bool = False) -> Array:
        """`count` points from edge to edge, shape (count, 2) of y and depth, closer together where it is steep.

        `from_the_middle` gives the middle one and those after it alone.
        """
        y = self.half_width * _spread(count)[count // 2 if from_the_middle else 0 :]
        return np.stack((y, self.depth_at(np.clip(y, -self.half_width, self.half_width))), axis=-1)

    @property
    def area(self) -> Mm2:
        """Area between the flat and the curve."""
        return float(self.half_width * self.depth * depth_integrals(self.exponent, self.other_exponent, self.mix)[0])

    def touch(self, angle: Radians) -> Point:
        """Where a straight flat touches the curve, its outward normal at `angle` from +y towards the depth, 0 to pi."""
        if min(angle, pi - angle) < 1e-12:
            return (self.half_width if angle < 1 else -self.half_width, 0.0)
        y = self._where_steep(abs(cos(angle)) / sin(angle))
        return (y if angle <= pi / 2 else -y, float(self.depth_at(y)))

    def _where_steep(self, steepness: float) -> Mm:
        """How far from the middle the depth falls by so much a mm outward: in closed form, by halving where mixed."""
        if len(self._parts) == 1:
            ((exponent, _),) = self._parts
            with np.errstate(divide="ignore"):
                power = exponent / (exponent - 1) * np.log(steepness * self.half_width / self.depth)
            return float(self.half_width * np.exp(-np.logaddexp(0.0, -power) / exponent))
        low, high = 0.0, self.half_width
        for _ in range(80):  # more halvings than a number has places
            middle = (low + high) / 2
            low, high = (middle, high) if -float(self.steepness(middle)) < steepness else (low, middle)
        return (low + high) / 2


@lru_cache(maxsize=16)
def _spread(count: int) -> Array:
    """Shares of the half-width from edge to edge, closer together there; the same few are asked for at every fret."""
    found = np.asarray(np.cos(np.linspace(pi, 0, count)))
    found.setflags(write=False)
    return found


def between(start: Profile, end: Profile, share: Ratio) -> Profile:
    """The profile a share of the way from one to the other, every figure in a straight line.

    Raises ValueError where both are mixed of different exponents, which no one profile lies between.
    """
    if start.mix and end.mix and start.other_exponent != end.other_exponent:
        raise ValueError("two mixed profiles need the same other exponent")
    other = start.other_exponent if start.mix else end.other_exponent
    return Profile(
        half_width=_part(start.half_width, end.half_width, share),
        depth=_part(start.depth, end.depth, share),
        exponent=_part(start.exponent, end.exponent, share),
        other_exponent=other,
        mix=_part(start.mix, end.mix, share),
    )


def _part(start: float, end: float, share: float) -> float:
    return start + share * (end - start)
