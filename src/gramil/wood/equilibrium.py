"""The moisture that wood comes to in air of a temperature and humidity.

Source: Forest Products Laboratory, Wood Handbook, FPL-GTR-282, 2021, equation 4-5 and its coefficients for C (the form
of Hailwood and Horrobin, 1946, fitted by Simpson, 1973). Woods differ little at the humidities of a shop; the figures
lie between those of wood that is taking up and wood that is giving off water.
"""

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats

# Constant, C, C squared
_W = (349.0, 1.29, 0.0135)
_K = (0.805, 0.000736, -0.00000273)
_K1 = (6.27, -0.00938, -0.000303)
_K2 = (1.91, 0.0407, -0.000293)


def equilibrium_moisture(temperature: ArrayLike, humidity: ArrayLike) -> FloatArray:
    """Equilibrium moisture content (% of dry mass) in air of a temperature (C) and relative humidity (%, 0 to 100).

    Formula: 1800/W [Kh/(1-Kh) + (K1 K h + 2 K1 K2 K2 h2)/(1 + K1 K h + K1 K2 K2 h2)], h = humidity/100.
    Raises ValueError for a humidity outside 0 to 100.
    """
    share = floats(humidity) / 100.0
    if ((share < 0) | (share > 1)).any():
        raise ValueError("relative humidity runs from 0 to 100 %")
    celsius = floats(temperature)
    weight, k, k1, k2 = (np.polynomial.polynomial.polyval(celsius, law) for law in (_W, _K, _K1, _K2))
    kh = k * share
    dissolved = kh / (1.0 - kh)
    bound = (k1 * kh + 2.0 * k1 * k2 * kh**2) / (1.0 + k1 * kh + k1 * k2 * kh**2)
    return floats(1800.0 / weight * (dissolved + bound))
