"""The water in a kilogram of dry air, as ASHRAE tabulates it: Handbook, Fundamentals, 2017, chapter 1."""

from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray
from gramil.physics.humid_air import vapour_pressure

STANDARD_PRESSURE = 101325.0
"""Pa, at sea level."""
MASS_RATIO = 0.621945
"""Molar mass of water over that of dry air."""


def humidity_ratio(temperature: ArrayLike, humidity: ArrayLike) -> FloatArray:
    """Grams of water to a kilogram of dry air at sea level; temperature in C, relative humidity in %."""
    vapour = vapour_pressure(temperature, humidity)
    return 1000.0 * MASS_RATIO * vapour / (STANDARD_PRESSURE - vapour)
