"""The air of a place over time: readings, what they mean for wood that lies there, and a summary."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cached_property
from itertools import pairwise

import numpy as np

from gramil.faults import Fault, MakersFault
from gramil.physics.arrays import FloatArray, floats
from gramil.physics.humid_air import dew_point
from gramil.wood.equilibrium import equilibrium_moisture

LONGEST_SPELL = 7200.0
"""Seconds that one reading is taken to speak for at most, on either side, in a summary."""


@dataclass(frozen=True)
class Air:
    """One reading, or constant air: temperature C, relative humidity %."""

    temperature: float
    humidity: float

    @property
    def moisture(self) -> float:
        """Moisture content (%) that wood comes to in it."""
        return float(equilibrium_moisture(self.temperature, self.humidity))


@dataclass(frozen=True)
class AirHistory:
    """Readings of one place: seconds since `origin`, rising; temperature C; relative humidity %."""

    origin: datetime
    times: FloatArray
    temperature: FloatArray
    humidity: FloatArray

    @cached_property
    def moisture(self) -> FloatArray:
        """Equilibrium moisture content (%) at each reading; cached, since many pieces share a place."""
        return equilibrium_moisture(self.temperature, self.humidity)

    def seconds(self, moment: datetime) -> float:
        """A moment as seconds since the origin."""
        return (moment - self.origin).total_seconds()

    def moment(self, seconds: float) -> datetime:
        """Seconds since the origin as a moment."""
        return self.origin + timedelta(seconds=float(seconds))


@dataclass(frozen=True)
class Spread:
    """Least, mean over time, and most."""

    least: float
    mean: float
    most: float


@dataclass(frozen=True)
class AirSummary:
    """Readings in short: temperature and dew point C, humidity %, equilibrium moisture %, and the share of the time
    (0 to 1) and the longest run (hours) that humidity kept within the band asked for.
    """

    readings: int
    days: float
    temperature: Spread
    humidity: Spread
    dew_point: Spread
    moisture: Spread
    share_in_band: float
    longest_in_band: float


def typed_in(readings: Iterable[tuple[datetime, float, float]]) -> AirHistory:
    """Readings written by hand: moment, temperature C, relative humidity %, in any order.

    Raises MakersFault if there are none, for two of the same moment, or for air that no room could have.
    """
    rows = sorted(readings)
    faults = [fault for row in rows if (fault := _impossible(*row))]
    twice = [first[0] for first, second in pairwise(rows) if first[0] == second[0]]
    faults += [Fault(where=f"{moment:%Y-%m-%d %H:%M}", what="two readings of one moment") for moment in twice]
    if faults or not rows:
        raise MakersFault(faults or [Fault(what="no readings of air")])
    times = [(moment - rows[0][0]).total_seconds() for moment, _, _ in rows]
    return AirHistory(rows[0][0], floats(times), floats([row[1] for row in rows]), floats([row[2] for row in rows]))


def summarise(history: AirHistory, band: tuple[float, float]) -> AirSummary:
    """Spread of every figure over the time, and how long humidity kept within `band` (%, both ends in)."""
    stands, weights = _stands(history), _weights(history)
    inside = (history.humidity >= band[0]) & (history.humidity <= band[1])

    def spread(figures: FloatArray) -> Spread:
        return Spread(float(figures.min()), float(np.average(figures, weights=weights)), float(figures.max()))

    return AirSummary(
        readings=history.times.size,
        days=float(history.times[-1] - history.times[0]) / 86400.0,
        temperature=spread(history.temperature),
        humidity=spread(history.humidity),
        # air without any water has no dew point
        dew_point=spread(dew_point(history.temperature, np.maximum(history.humidity, 0.1))),
        moisture=spread(history.moisture),
        share_in_band=float(np.average(inside, weights=weights)),
        longest_in_band=_longest_run(stands, inside) / 3600.0,
    )


def mean_air(history: AirHistory) -> Air:
    """The mean of temperature and humidity over the time, without the rest of a summary: dew points take long."""
    weights = _weights(history)
    means = (np.average(figures, weights=weights) for figures in (history.temperature, history.humidity))
    return Air(*map(float, means))


def _stands(history: AirHistory) -> FloatArray:
    """For how long each reading stands (s): half the time to its neighbours, two hours at most, so that gaps do not
    count."""
    halves = 0.5 * np.minimum(np.diff(history.times), LONGEST_SPELL)
    return np.concatenate([[0.0], halves]) + np.concatenate([halves, [0.0]])


def _weights(history: AirHistory) -> FloatArray:
    """The same, or all alike where there is a single reading."""
    stands = _stands(history)
    return stands if stands.sum() > 0 else np.ones_like(stands)


def _longest_run(stands: FloatArray, inside: np.ndarray) -> float:
    """Seconds of the longest run of readings that are all inside, each for as long as it stands."""
    padded = np.concatenate([[False], inside, [False]])
    starts, ends = (
        np.flatnonzero(np.diff(padded.astype(np.int8)) == 1),
        np.flatnonzero(np.diff(padded.astype(np.int8)) == -1),
    )
    until = np.concatenate([[0.0], np.cumsum(stands)])
    return float(np.max(until[ends] - until[starts], initial=0.0))


def _impossible(moment: datetime, temperature: float, humidity: float) -> Fault | None:
    where = f"{moment:%Y-%m-%d %H:%M}"
    if not 0.0 <= humidity <= 100.0:
        return Fault(where=where, what=f"relative humidity {humidity:g} %", remedy="it runs from 0 to 100 %")
    if not -40.0 <= temperature <= 60.0:
        return Fault(where=where, what=f"temperature {temperature:g} C", remedy="write it in C: (F - 32) / 1.8")
    return None
