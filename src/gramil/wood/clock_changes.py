"""Whether a logger's clock was put forward or back between two readings: twice a year at most, an hour each time.

A step that is an hour short or long is a change of the clock in the night to or of a Sunday, in a month in which clocks
are changed somewhere. A step back by an hour on another day counts only if the hour is then repeated.
"""

from dataclasses import dataclass
from datetime import date
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from gramil.physics.arrays import FloatArray

ClockAnswer = Literal["changed", "not changed"]
Found = Literal["", "back", "forward", "asked"]

HOUR = 3600.0
_DAY = 86400.0
_EPOCH = date(1970, 1, 1).toordinal()
_NIGHT = 4 * HOUR
"""Seconds from midnight, in which clocks are changed."""
_MONTHS = frozenset({2, 3, 4, 9, 10, 11})
_NEAR = 900.0
"""Seconds by which a step may miss."""
_LONGEST = 4 * HOUR
"""Readings further apart than this do not show an hour."""


@dataclass(frozen=True)
class ShownClock:
    """What a log's clock shows, row by row, in the order of time; `again` says where an earlier row has the same time
    and the same air. `interval` is the usual step in seconds.
    """

    seconds: FloatArray
    again: NDArray[np.bool_]
    humidity: FloatArray
    interval: float
    answer: ClockAnswer | None

    def changed(self, row: int, before: float, step: float) -> Found:
        """What happened to the clock ahead of a row: `before` is what it showed at the last reading, `step` the seconds
        since then as far as is known. The maker is asked if one lost reading would look the same.
        """
        if self.answer == "not changed" or self.interval > _LONGEST:
            return ""
        sunday = _sunday_night(*sorted((before, float(self.seconds[row]))))
        if self._misses(step, -HOUR):
            told = sunday and not self._read_out_again(row)
            return "back" if told or self._run_through_again(row, step) else ""
        if sunday and self._misses(step, HOUR):
            return "asked" if self._loses_readings() and self.answer is None else "forward"
        return ""

    def odd(self) -> NDArray[np.int_]:
        """The rows that do not simply follow the one before: only here can something have happened."""
        steps = np.diff(self.seconds)
        odd = steps <= 0
        for hour in (-HOUR, HOUR):
            odd |= np.abs(steps - self.interval - hour) <= self._near
        return np.flatnonzero(odd) + 1

    @property
    def _near(self) -> float:
        return min(0.5 * self.interval, _NEAR)

    def _misses(self, step: float, hour: float) -> bool:
        return abs(step - self.interval - hour) <= self._near

    def _loses_readings(self) -> bool:
        """Whether a lost reading looks like a clock put forward, and the log lost others, on other days."""
        if abs(self.interval - HOUR) > self._near:
            return False
        lost = np.flatnonzero(np.abs(np.diff(self.seconds) - 2 * self.interval) <= self._near)
        return bool(np.any((self.seconds[lost] // _DAY).astype(int) % 7 != _SUNDAY))

    def _hour_from(self, row: int) -> slice:
        return slice(row, row + max(1, min(12, int(HOUR / self.interval))))

    def _read_out_again(self, row: int) -> bool:
        """Whether the hour from here on was exported twice: the same rows, and not just steady air."""
        hour = self._hour_from(row)
        return bool(np.all(self.again[hour])) and bool(np.ptp(self.humidity[hour]) > 0)

    def _run_through_again(self, row: int, step: float) -> bool:
        """Whether the rows from here on are another hour of the same name, on any day."""
        if step >= 0 or np.all(self.again[self._hour_from(row)]) or row + 1 >= self.seconds.size:
            return False
        return abs(float(self.seconds[row + 1] - self.seconds[row]) - self.interval) <= self._near


_SUNDAY = 3
"""Days since 1970, modulo 7, of a Sunday: 1970 began on a Thursday."""


def _sunday_night(begin: float, end: float) -> bool:
    """Whether a night in which clocks are changed lies between two moments, less than a day apart."""
    for day in {int(begin // _DAY), int(end // _DAY)}:
        night = day * _DAY
        if day % 7 == _SUNDAY and begin <= night + _NIGHT and end >= night:
            return date.fromordinal(day + _EPOCH).month in _MONTHS
    return False
