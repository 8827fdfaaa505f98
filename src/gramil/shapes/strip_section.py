"""Cross-sections that stand on a flat base or hang below it: area and moments, and their combination."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil.shapes.profile import Profile, depth_integrals

Array = NDArray[np.float64]
POINTS, WEIGHTS = np.polynomial.legendre.leggauss(24)


@dataclass(frozen=True)
class Moments:
    """Area, first and second moment of area about the base z = 0 (mm2, mm3, mm4), each possibly an array."""

    area: Array
    first: Array
    second: Array

    def times(self, factor: float) -> "Moments":
        """The same section weighted, say by a modulus."""
        return Moments(self.area * factor, self.first * factor, self.second * factor)

    def plus(self, other: "Moments") -> "Moments":
        """Two sections side by side or one on the other, both about the same base."""
        return Moments(self.area + other.area, self.first + other.first, self.second + other.second)

    @property
    def about_centroid(self) -> Array:
        """Second moment about the section's own centroid."""
        return self.second - self.first**2 / self.area


def across(half_width: Array) -> Array:
    """Where the heights of a section are wanted: 24 Gauss points from edge to edge, shape (..., 24), in mm."""
    return np.asarray(half_width)[..., None] * POINTS


def standing(half_width: Array, heights: Array) -> Moments:
    """Moments of a section whose height over its base is `heights` at the points of `across`."""
    weights = np.asarray(half_width)[..., None] * WEIGHTS
    area = (weights * heights).sum(-1)
    return Moments(area, (weights * heights**2).sum(-1) / 2, (weights * heights**3).sum(-1) / 3)


def hanging(profiles: Sequence[Profile]) -> Moments:
    """Moments of rounded sections that hang below the base, one a profile: the first moment is negative."""
    figures = np.array([(p.half_width, p.depth, p.exponent, p.other_exponent, p.mix) for p in profiles]).T
    half_width, depth, exponent, other, mix = figures
    first, second, third = depth_integrals(exponent, other, mix)
    area = half_width * depth * first
    return Moments(area, -half_width * depth**2 * second / 2, half_width * depth**3 * third / 3)
