"""Arcs of circles and caps of spheres, from their curvature (1/R), so that flat is simply 0."""

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm, Mm3, PerMm


def sagitta(curvature: ArrayLike, half_chord: ArrayLike) -> NDArray[np.float64]:
    """Fall of a circle at `half_chord` from its top, in mm; 0 where the curvature (1/mm) is 0.

    The identity R - sqrt(R^2 - y^2) = k y^2 / (1 + sqrt(1 - k^2 y^2)), k = 1/R, loses no digits on large radii.
    Not a number where the half-chord exceeds the radius. Shapes are broadcast.
    """
    k, y = np.asarray(curvature, dtype=np.float64), np.asarray(half_chord, dtype=np.float64)
    with np.errstate(invalid="ignore"):
        return np.asarray(k * y**2 / (1 + np.sqrt(1 - (k * y) ** 2)), dtype=np.float64)


def sagitta_of_radius(radius: Mm, chord: Mm) -> Mm:
    """Height in mm of an arc of `radius` over its whole `chord`; not a number where the chord exceeds the diameter."""
    return float(sagitta(1 / radius, chord / 2))


def curvature_of_sagitta(height: Mm, chord: Mm) -> PerMm:
    """Curvature in 1/mm of the arc of `height` over `chord`, no more than a half circle: 8 s / (c^2 + 4 s^2)."""
    return 8 * height / (chord**2 + 4 * height**2)


def radius_of_sagitta(height: Mm, chord: Mm) -> Mm:
    """Radius in mm of the arc of `height` over `chord`; infinite where the height is 0."""
    return math.inf if height == 0 else 1 / curvature_of_sagitta(height, chord)


def arc_length(curvature: PerMm, chord: Mm) -> Mm:
    """Length in mm of the shorter arc over `chord`: 2 R asin(c / 2R)."""
    half = curvature * chord / 2
    return chord if abs(half) < 1e-9 else chord * math.asin(half) / half


def cap_volume(radius: Mm, height: Mm) -> Mm3:
    """Volume in mm3 of the cap of `height` cut from a sphere: pi h^2 (3 R - h) / 3."""
    return math.pi * height**2 * (3 * radius - height) / 3
