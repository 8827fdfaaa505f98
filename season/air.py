"""Invented air: a season's swing, damp and dry spells of some days, and a day's ripple; hourly, known hour by hour."""

from datetime import datetime, timedelta
from math import cos, pi, sin

import numpy as np

from gramil.physics.arrays import FloatArray, floats
from gramil.wood.air import AirHistory

HOURS = 24


def invented_air(begins: datetime, days: int, seed: int) -> AirHistory:
    """Hourly readings from a moment on: about 45 % in spring and autumn, drier in winter, damper in summer."""
    chance = np.random.default_rng(seed)
    spells = _spells(days, chance)
    humidity = [
        46.0 + 4.0 * _season(begins + timedelta(hours=hour)) + spells[hour // HOURS] + 2.0 * sin(2 * pi * hour / HOURS)
        for hour in range(days * HOURS)
    ]
    noise = chance.normal(0.0, 0.7, len(humidity))
    times = floats([3600.0 * hour for hour in range(len(humidity))])
    return AirHistory(begins, times, np.full(len(humidity), 20.0), np.clip(floats(humidity) + noise, 15.0, 85.0))


def _season(moment: datetime) -> float:
    """From -1 in the middle of January to 1 in the middle of July."""
    return -cos(2 * pi * (moment.timetuple().tm_yday - 15) / 365.25)


def _spells(days: int, chance: np.random.Generator) -> FloatArray:
    """How much damper or drier each day is: spells of three to nine days, drawn about nothing."""
    found: list[float] = []
    while len(found) < days:
        found += [float(chance.normal(0.0, 5.0))] * int(chance.integers(3, 10))
    return floats(found[:days])


def part_of(history: AirHistory, begins: datetime, ends: datetime) -> AirHistory:
    """The readings from one moment up to another."""
    inside = (history.times >= history.seconds(begins)) & (history.times < history.seconds(ends))
    return AirHistory(history.origin, history.times[inside], history.temperature[inside], history.humidity[inside])
