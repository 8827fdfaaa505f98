"""A straight even beam squeezed off its centre: the secant formulas, what they come to for a small load, and stress.

Lengths in mm, loads in N, EI in N mm2, stress in MPa. `eccentricity` is how far the load's line runs from the axis.
Source: J. M. Gere and S. P. Timoshenko, "Mechanics of Materials"; S. P. Timoshenko and J. M. Gere, "Theory of Elastic
Stability", chapter 1 (from memory; the first-order limits checked by integration).
"""

import math

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats


def critical_load_pinned(length: ArrayLike, bending_stiffness: ArrayLike) -> FloatArray:
    """Load at which a beam free to turn at both ends folds up: `pi^2 EI / L^2`."""
    return floats(math.pi**2 * floats(bending_stiffness) / floats(length) ** 2)


def critical_load_cantilever(length: ArrayLike, bending_stiffness: ArrayLike) -> FloatArray:
    """The same with one end clamped, the other free: `pi^2 EI / (4 L^2)`."""
    return critical_load_pinned(length, bending_stiffness) / 4.0


def deflection_pinned(
    load: ArrayLike, eccentricity: ArrayLike, length: ArrayLike, bending_stiffness: ArrayLike
) -> FloatArray:
    """Deflection at the middle, both ends free to turn: `e [sec(L/2 sqrt(P/EI)) - 1]`; nan if it folds up."""
    return _secant(load, eccentricity, floats(length) / 2.0, bending_stiffness)


def deflection_cantilever(
    load: ArrayLike, eccentricity: ArrayLike, length: ArrayLike, bending_stiffness: ArrayLike
) -> FloatArray:
    """Deflection of the free end, the other clamped: `e [sec(L sqrt(P/EI)) - 1]`; nan if it folds up."""
    return _secant(load, eccentricity, length, bending_stiffness)


def _secant(
    load: ArrayLike, eccentricity: ArrayLike, free_length: ArrayLike, bending_stiffness: ArrayLike
) -> FloatArray:
    angle = floats(free_length) * np.sqrt(floats(load) / floats(bending_stiffness))
    growth = 1.0 / np.cos(angle) - 1.0
    return floats(np.where(angle < math.pi / 2.0, floats(eccentricity) * growth, np.nan))


def first_order_pinned(
    load: ArrayLike, eccentricity: ArrayLike, length: ArrayLike, bending_stiffness: ArrayLike
) -> FloatArray:
    """The pinned beam's deflection for a small load, its own bending left out of the lever: `P e L^2 / (8 EI)`."""
    return floats(load) * floats(eccentricity) * floats(length) ** 2 / (8.0 * floats(bending_stiffness))


def first_order_cantilever(
    load: ArrayLike, eccentricity: ArrayLike, length: ArrayLike, bending_stiffness: ArrayLike
) -> FloatArray:
    """The cantilever's deflection for a small load: `P e L^2 / (2 EI)`."""
    return 4.0 * first_order_pinned(load, eccentricity, length, bending_stiffness)


def greatest_stress_pinned(
    load: ArrayLike,
    eccentricity: ArrayLike,
    length: ArrayLike,
    modulus: ArrayLike,
    area: ArrayLike,
    inertia: ArrayLike,
    outermost: ArrayLike,
) -> FloatArray:
    """Greatest compressive stress of a pinned beam, `outermost` its farthest fibre from the axis (mm).

    Formula: `P/A [1 + (e c / r^2) sec((L / 2 r) sqrt(P / (E A)))]`, r^2 = I / A.
    """
    stiffness = floats(modulus) * floats(inertia)
    lever = floats(eccentricity) + deflection_pinned(load, eccentricity, length, stiffness)
    return floats(load) / floats(area) + floats(load) * lever * floats(outermost) / floats(inertia)
