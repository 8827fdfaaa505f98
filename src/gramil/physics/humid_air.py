"""Humid air: how much water a reading of temperature and relative humidity means, and what becomes of that air
elsewhere.

Temperatures in C, relative humidity in percent, vapour pressure in Pa, vapour density ("absolute humidity") in g/m3.
Saturation: ASHRAE Handbook, Fundamentals, 2017, chapter 1, equations 5 (over ice) and 6 (over water).
Air is taken at one pressure and as an ideal gas; the enhancement factor of real air (about 0.4 %) is left out.
"""

from dataclasses import dataclass
from math import expm1

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats

KELVIN = 273.15
TRIPLE_POINT = 0.01
"""C; below it the ice formula is used."""
VAPOUR_GAS_CONSTANT = 461.524
"""J/(kg K): 8.314472 J/(mol K) over 18.015268 g/mol."""

# 1/T, then powers of T upward from 0, then ln T; T in kelvin.
_OVER_ICE = (
    -5.6745359e3,
    (6.3925247, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13),
    4.1635019,
)
_OVER_WATER = (-5.8002206e3, (1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8), 6.5459673)


def saturation_pressure(temperature: ArrayLike) -> FloatArray:
    """Vapour pressure of saturated air, Pa, over ice below 0.01 C and over water above.

    Formula (T in K): ln p = c_1/T + sum of c_i T^i + c_n ln T. Holds from -100 to 200 C.
    Source: ASHRAE Fundamentals 2017, chapter 1, equations 5 and 6.
    """
    celsius = floats(temperature)
    kelvin = celsius + KELVIN
    return np.exp(
        np.where(celsius < TRIPLE_POINT, _log_pressure(kelvin, _OVER_ICE), _log_pressure(kelvin, _OVER_WATER))
    )


def vapour_pressure(temperature: ArrayLike, humidity: ArrayLike) -> FloatArray:
    """Pressure of the vapour in air of a temperature (C) and relative humidity (%), in Pa."""
    return saturation_pressure(temperature) * floats(humidity) / 100.0


def humidity_at(temperature: ArrayLike, pressure: ArrayLike) -> FloatArray:
    """Relative humidity (%) of air at a temperature (C) with a vapour pressure (Pa); over 100, it condenses."""
    return 100.0 * floats(pressure) / saturation_pressure(temperature)


def humidity_brought_to(temperature: ArrayLike, humidity: ArrayLike, elsewhere: ArrayLike) -> FloatArray:
    """Relative humidity (%) of air that is warmed or cooled to `elsewhere` (C), no water added or taken.

    The vapour pressure stays. Over 100 means that it condenses on the way.
    """
    return humidity_at(elsewhere, vapour_pressure(temperature, humidity))


def vapour_density(temperature: ArrayLike, humidity: ArrayLike) -> FloatArray:
    """Water in the air, g/m3, at a temperature (C) and relative humidity (%). Formula: p / (R_v T)."""
    return 1000.0 * vapour_pressure(temperature, humidity) / (VAPOUR_GAS_CONSTANT * (floats(temperature) + KELVIN))


def dew_point(temperature: ArrayLike, humidity: ArrayLike) -> FloatArray:
    """The temperature (C) at which air of a temperature (C) and relative humidity (%, above 0) begins to condense.

    Newton's rule on the logarithm of the pressure, which is nearly straight, so that six steps reach rounding.
    """
    target = np.log(vapour_pressure(temperature, humidity))
    kelvin = np.minimum(floats(temperature), 60.0) + KELVIN
    for _ in range(8):
        icy = kelvin < TRIPLE_POINT + KELVIN
        excess = np.where(icy, _log_pressure(kelvin, _OVER_ICE), _log_pressure(kelvin, _OVER_WATER)) - target
        slope = np.where(icy, _log_slope(kelvin, _OVER_ICE), _log_slope(kelvin, _OVER_WATER))
        kelvin = np.maximum(kelvin - excess / slope, 0.5 * kelvin)
    return kelvin - KELVIN


@dataclass(frozen=True)
class WaterRange:
    """Grams of water to put into a room (positive) or take out of it (negative): least and most."""

    least: float
    most: float


@dataclass(frozen=True)
class Room:
    """A room with air in it: its volume (m3), and how often an hour its air changes, least and most."""

    volume: float
    air_changes: tuple[float, float]


def water_to_hold(
    temperature: float,
    humidity: float,
    wanted: float,
    room: Room,
    hours: float,
    incoming: float | None = None,
) -> WaterRange:
    """Water to bring a room from a relative humidity to the wanted one (both %) and to hold it there.

    Formula: V (d_wanted - d_now) + n V (d_wanted - d_in) t, with d the vapour density at the room's temperature (C),
    V the room's volume, n its air changes an hour, t the hours; d_in is that of the air that leaks in
    (`incoming`, g/m3, at the room's temperature; the room's own present air unless given).
    Walls, floor and wood take up and give off water too: that is not counted, so the first day asks for more.
    Raises ValueError for a room, hours or air changes below zero.
    """
    if room.volume <= 0 or hours < 0 or min(room.air_changes) < 0:
        raise ValueError("room, hours and air changes must not be negative, and a room has some volume")
    now, goal = (float(vapour_density(temperature, rh)) for rh in (humidity, wanted))
    entering = now if incoming is None else incoming
    volume = room.volume
    totals = [volume * (goal - now) + changes * volume * (goal - entering) * hours for changes in room.air_changes]
    return WaterRange(min(totals), max(totals))


def humidity_moved(rate: float, temperature: float, room: Room, hours: float) -> float:
    """How far (%) a machine that puts in or takes out `rate` g of water an hour moves a room's relative humidity, once
    it has run for some hours at the room's temperature (C), where the air changes most often.

    Formula: 100 rate (1 - exp(-n t)) / (n V d_saturated), with V, n and t as in `water_to_hold`: the room as one
    well-mixed volume. Walls, floor and wood are not counted, so the first day moves less.
    Raises ValueError for a room, hours or air changes below zero.
    """
    if room.volume <= 0 or hours < 0 or min(room.air_changes) < 0:
        raise ValueError("room, hours and air changes must not be negative, and a room has some volume")
    changes = max(room.air_changes)
    lasting = -expm1(-changes * hours) / changes if changes else hours
    return 100.0 * rate * lasting / (room.volume * float(vapour_density(temperature, 100.0)))


def _log_pressure(kelvin: FloatArray, law: tuple[float, tuple[float, ...], float]) -> FloatArray:
    inverse, powers, logarithm = law
    return inverse / kelvin + np.polynomial.polynomial.polyval(kelvin, powers) + logarithm * np.log(kelvin)


def _log_slope(kelvin: FloatArray, law: tuple[float, tuple[float, ...], float]) -> FloatArray:
    inverse, powers, logarithm = law
    slopes = np.polynomial.polynomial.polyder(powers)
    return -inverse / kelvin**2 + np.polynomial.polynomial.polyval(kelvin, slopes) + logarithm / kelvin
