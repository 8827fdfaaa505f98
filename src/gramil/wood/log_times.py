"""Dates and times of day as loggers write them, and clocks that were put forward and back.

A date like 03/04/2025 has two readings. What settles it is a day over 12, or dates that follow one another day by day
in one reading only; where neither does, the maker is asked.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Final, Literal

import numpy as np

from gramil.faults import Fault, MakersFault
from gramil.physics.arrays import FloatArray, floats

DateOrder = Literal["year first", "day first", "month first"]

_EITHER: Final[tuple[DateOrder, DateOrder]] = ("day first", "month first")
_DAY = 86400.0
_HOUR = 3600.0
_EPOCH = date(1970, 1, 1).toordinal()
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_FORM = re.compile(
    r"(?P<date>\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|\d{1,2}[- ]+[A-Za-z]{3,9}[-, ]+\d{2,4}|[A-Za-z]{3,9} +\d{1,2},? +\d{4})"
    r"[T, ]+(?P<hour>\d{1,2})[:.h](?P<minute>\d\d)(?:[:.](?P<second>\d\d)(?:[.,]\d+)?)?\s*(?P<half>[AaPp])?\.?[Mm]?\.?"
)
_ZONED = re.compile(r".*\d(Z|[+-]\d\d:?\d\d)")
_COUNTED = re.compile(r"(\d{10})(\d{3})?(\.\d+)?")


@dataclass(frozen=True)
class ReadTimes:
    """Seconds since 1970 by the clock on the wall, or in universal time if zoned; not a number where unreadable."""

    seconds: FloatArray
    zoned: bool
    order: DateOrder


@dataclass(frozen=True)
class Ordered:
    """Rows that go forward: which they are, their seconds with changes of the clock taken out, and what was found."""

    rows: tuple[int, ...]
    seconds: FloatArray
    skipped: tuple[tuple[int, str], ...]
    changes: tuple[tuple[int, str], ...]


def read_times(cells: Sequence[str], order: DateOrder | None, file: str | None) -> ReadTimes:
    """Times from text: ISO, with or without a zone; day, month, year in any order; names of months; seconds since 1970.

    Raises MakersFault where day and month cannot be told apart and `order` is not given.
    """
    first = next((cell for cell in cells if cell), "")
    if _COUNTED.fullmatch(first):
        return ReadTimes(floats([_counted(cell) for cell in cells]), True, "year first")
    if _ZONED.fullmatch(first):
        return ReadTimes(floats([_zoned(cell) for cell in cells]), True, "year first")
    matches = [_FORM.fullmatch(cell) for cell in cells]
    dates = list(dict.fromkeys(match["date"] for match in matches if match))
    found = order or _order(dates, file)
    days = {text: _days(text, found) for text in dates}
    seconds = [np.nan if match is None else days[match["date"]] + _of_day(match) for match in matches]
    return ReadTimes(floats(seconds), False, found)


def put_in_order(times: ReadTimes, values: Sequence[tuple[float, float]], interval: float) -> Ordered:
    """Rows in time: repeated ones and such that run backward left out, an hour's change of the clock taken out.

    A step back by an hour is a change of the clock unless the rows are those of that hour again; a step forward by an
    hour is one only in the night to or of a Sunday, when clocks are changed. interval: usual seconds between readings.
    """
    walk = _Walk(times, values, interval)
    for row in range(times.seconds.size):
        walk.take(row)
    return Ordered(tuple(walk.rows), floats(walk.seconds), tuple(walk.skipped), tuple(walk.changes))


class _Walk:
    """The state of one pass through the rows."""

    def __init__(self, times: ReadTimes, values: Sequence[tuple[float, float]], interval: float) -> None:
        self.clock, self.zoned, self.values, self.interval = times.seconds.tolist(), times.zoned, values, interval
        self.rows: list[int] = []
        self.seconds: list[float] = []
        self.skipped: list[tuple[int, str]] = []
        self.changes: list[tuple[int, str]] = []
        self.shift = 0.0
        self.seen: dict[float, int] = {}

    def take(self, row: int) -> None:
        """Keep the row, or note why not."""
        read = self.clock[row] + self.shift
        step = read - self.seconds[-1] if self.seconds else self.interval
        if not self.zoned and self._put_back(row, step):
            self.shift += _HOUR
            self.changes.append((row, "the clock was put back an hour"))
        elif not self.zoned and self._put_forward(row, step):
            self.shift -= _HOUR
            self.changes.append((row, "the clock was put forward an hour"))
        elif step <= 0:
            self.skipped.append((row, self._why(row)))
            return
        self.rows.append(row)
        self.seconds.append(self.clock[row] + self.shift)
        self.seen[self.clock[row]] = row

    def _put_back(self, row: int, step: float) -> bool:
        near = abs(step - (self.interval - _HOUR)) <= 0.5 * self.interval
        if not near or step > 0:
            return False
        return _sunday_night(self.clock[row]) or (step < 0 and not self._same_again(row))

    def _put_forward(self, row: int, step: float) -> bool:
        near = abs(step - (self.interval + _HOUR)) <= 0.5 * self.interval
        return near and self.interval < _HOUR and _sunday_night(self.clock[row])

    def _same_again(self, row: int) -> bool:
        """Whether the next rows of up to an hour are rows already read, values and all."""
        count = max(1, min(12, int(_HOUR / self.interval)))
        ahead = range(row, min(row + count, len(self.clock)))
        return all(self._repeats(other) for other in ahead)

    def _repeats(self, row: int) -> bool:
        before = self.seen.get(self.clock[row])
        return before is not None and self.values[before] == self.values[row]

    def _why(self, row: int) -> str:
        if self._repeats(row):
            return "the same reading again"
        return "another reading of the same time" if self.clock[row] in self.seen else "the time runs backward"


def _sunday_night(clock: float) -> bool:
    """Whether it is between midnight and four on a Sunday; 1970 began on a Thursday."""
    return (int(clock // _DAY) + 3) % 7 == 6 and clock % _DAY <= 4 * _HOUR


def _of_day(match: re.Match[str]) -> float:
    hour = int(match["hour"])
    if match["half"]:
        hour = hour % 12 + (12 if match["half"] in "Pp" else 0)
    return hour * _HOUR + int(match["minute"]) * 60.0 + int(match["second"] or 0)


def _counted(cell: str) -> float:
    match = _COUNTED.fullmatch(cell)
    return float(match[1] + (f".{match[2]}" if match[2] else match[3] or "")) if match else np.nan


def _zoned(cell: str) -> float:
    try:
        return datetime.fromisoformat(cell).astimezone(UTC).timestamp()
    except ValueError:
        return np.nan


def _days(text: str, order: DateOrder) -> float:
    """Seconds from 1970 to the day, or not a number where there is no such day."""
    day, month, year = _fields(text, order)
    try:
        return (date(year + 2000 if year < 100 else year, month, day).toordinal() - _EPOCH) * _DAY
    except ValueError:
        return np.nan


def _fields(text: str, order: DateOrder) -> tuple[int, int, int]:
    """Day, month, year; a month of 0 where its name is none."""
    parts = re.split(r"[-/., ]+", text.strip())
    if worded := next((part for part in parts if part.isalpha()), None):
        month = _MONTHS.index(worded[:3].lower()) + 1 if worded[:3].lower() in _MONTHS else 0
        day, year = (int(part) for part in parts if part != worded)
        return day, month, year
    first, second, third = map(int, parts)
    if order == "year first":
        return third, second, first
    return (first, second, third) if order == "day first" else (second, first, third)


def _order(dates: Sequence[str], file: str | None) -> DateOrder:
    """What the dates themselves settle."""
    plain = [text for text in dates if text.replace("-", "/").replace(".", "/").replace("/", "").isdigit()]
    if not plain or all(len(re.split(r"[-/.]", text)[0]) == 4 for text in plain):
        return "year first" if plain else "day first"
    no_day = {order: sum(bool(np.isnan(_days(text, order))) for text in plain) for order in _EITHER}
    possible = [order for order in _EITHER if no_day[order] == min(no_day.values())]
    steady = [order for order in possible if _day_by_day(plain, order)]
    settled = possible if len(possible) == 1 else steady
    if len(settled) == 1:
        return settled[0]
    what = f'"{plain[0]}" may be day and month or month and day'
    raise MakersFault([Fault(None, "time", what, "no date in the file settles it", "say which comes first", file)])


def _day_by_day(dates: Sequence[str], order: DateOrder) -> bool:
    days = floats([_days(text, order) for text in dates])
    steps = np.diff(days[np.isfinite(days)])
    return steps.size > 0 and bool(np.median(np.abs(steps)) <= 3 * _DAY)
