"""Arcs of circles, from their curvature (1/R), so that flat is simply 0."""

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm, PerMm


def sagitta(curvature: ArrayLike, half_chord: ArrayLike) -> NDArray[np.float64]:
    """Fall of a circle at `half_chord` from its top, in mm; 0 where the curvature (1/mm) is 0.

    The identity R - sqrt(R^2 - y^2) = k y^2 / (1 + sqrt(1 - k^2 y^2)), k = 1/R, loses no digits on large radii.
    Not a number where the half-chord exceeds the radius. Shapes are broadcast.
    """
    k, y = np.asarray(curvature, dtype=np.float64), np.asarray(half_chord, dtype=np.float64)
    with np.errstate(invalid="ignore"):
        return np.asarray(k * y**2 / (1 + np.sqrt(1 - (k * y) ** 2)), dtype=np.float64)


def arc_length(curvature: PerMm, chord: Mm) -> Mm:
    """Length in mm of the shorter arc over `chord`: 2 R asin(c / 2R)."""
    half = curvature * chord / 2
    return chord if abs(half) < 1e-9 else chord * math.asin(half) / half
