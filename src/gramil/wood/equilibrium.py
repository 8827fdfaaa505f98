"""The moisture that wood comes to in air of a temperature and humidity, and back.

Source: Forest Products Laboratory, Wood Handbook, FPL-GTR-282, 2021, equation 4-5 and its coefficients for C (the form
of Hailwood and Horrobin, 1946, fitted by Simpson, 1973). Woods differ little at the humidities of a shop; the figures
lie between those of wood that is taking up and wood that is giving off water.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.physics.arrays import FloatArray, floats

# Constant, C, C squared
_W = (349.0, 1.29, 0.0135)
_K = (0.805, 0.000736, -0.00000273)
_K1 = (6.27, -0.00938, -0.000303)
_K2 = (1.91, 0.0407, -0.000293)

TABLE_TEMPERATURES = (-1.1, 132.2)
TABLE_HUMIDITIES = (5.0, 95.0)


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


def humidity_for(temperature: ArrayLike, moisture: ArrayLike) -> FloatArray:
    """The relative humidity (%) that holds wood at a moisture content (%) at a temperature (C).

    Halving: the moisture rises all the way with humidity. Raises ValueError for more moisture than saturated air gives.
    """
    celsius, wanted = np.broadcast_arrays(floats(temperature), floats(moisture))
    if ((wanted < 0) | (wanted > equilibrium_moisture(celsius, 100.0))).any():
        raise ValueError("no air holds wood at that moisture content")
    low, high = np.zeros(wanted.shape), np.full(wanted.shape, 100.0)
    for _ in range(60):
        middle = 0.5 * (low + high)
        wetter = equilibrium_moisture(celsius, middle) < wanted
        low, high = np.where(wetter, middle, low), np.where(wetter, high, middle)
    return floats(0.5 * (low + high))


def within_table(temperature: ArrayLike, humidity: ArrayLike) -> NDArray[np.bool_]:
    """Whether the air is one that the handbook tabulates; outside, the formula is carried on."""
    celsius, percent = floats(temperature), floats(humidity)
    warm = (celsius >= TABLE_TEMPERATURES[0]) & (celsius <= TABLE_TEMPERATURES[1])
    return np.asarray(warm & (percent >= TABLE_HUMIDITIES[0]) & (percent <= TABLE_HUMIDITIES[1]), dtype=np.bool_)
