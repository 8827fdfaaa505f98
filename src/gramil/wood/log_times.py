"""Dates and times of day as loggers write them.

A date like 03/04/2025 is ambiguous. A day over 12 settles it, or dates that follow one another day by day in only one
of the two readings; otherwise the maker is asked. The whole file is considered, whichever way it runs.
"""

import re
from array import array
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from gramil.faults import Fault, MakersFault
from gramil.physics.arrays import FloatArray, floats

DateOrder = Literal["year first", "day first", "month first"]

FIRST_YEAR, LAST_YEAR = 1980, 2099
"""A time outside these years is not one at which a logger read anything."""
_EITHER: Final[tuple[DateOrder, DateOrder]] = ("day first", "month first")
_DAY = 86400.0
_HOUR = 3600.0
_EPOCH = date(1970, 1, 1).toordinal()
_EARLIEST = (date(FIRST_YEAR, 1, 1).toordinal() - _EPOCH) * _DAY
_LATEST = (date(LAST_YEAR, 12, 31).toordinal() - _EPOCH + 1) * _DAY
_STEADY = 3 * _DAY
_MOST_DATES = 50_000
"""A log has no more different dates than a century has days."""
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_FORM = re.compile(
    r"(?P<date>\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|\d{1,2}[- ]+[A-Za-z]{3,9}[-, ]+\d{2,4}|[A-Za-z]{3,9} +\d{1,2},? +\d{4})"
    r"[T, ]+(?P<hour>\d{1,2})[:.h](?P<minute>\d\d)(?:[:.](?P<second>\d\d)(?:[.,]\d+)?)?\s*(?P<half>[AaPp])?\.?[Mm]?\.?",
    re.ASCII,
)
_ZONED = re.compile(r".*\d(Z|[+-]\d\d:?\d\d)", re.ASCII)
_COUNTED = re.compile(r"(\d{10})(\d{3})?(\.\d+)?", re.ASCII)
_UNREAD, _CLOCK, _SINCE_1970, _IN_A_ZONE = range(4)


@dataclass(frozen=True)
class ReadTimes:
    """Seconds since 1970 by the clock on the wall, or in UTC if zoned; nan if unreadable."""

    seconds: FloatArray
    zoned: bool
    order: DateOrder


class TimeCells:
    """Times as they come, in compact form: for each its format, its seconds (for a clock time, of the day), and its
    date's number.
    """

    def __init__(self) -> None:
        self._forms, self._seconds, self._dates = array("b"), array("d"), array("i")
        self._known: dict[str, int] = {}

    def add(self, cell: str) -> None:
        """Takes the next row's time: ISO, with or without a zone; day, month, year in any order; seconds since 1970."""
        form, seconds, day = _UNREAD, np.nan, 0
        if match := _FORM.fullmatch(cell):
            form, seconds, day = _CLOCK, _of_day(match), self._known.setdefault(match["date"], len(self._known))
        elif match := _COUNTED.fullmatch(cell):
            form, seconds = _SINCE_1970, float(match[1] + (f".{match[2]}" if match[2] else match[3] or ""))
        elif _ZONED.fullmatch(cell):
            form, seconds = _IN_A_ZONE, _zoned(cell)
        self._forms.append(form)
        self._seconds.append(seconds)
        self._dates.append(day)

    def read(self, order: DateOrder | None, file: str | None) -> ReadTimes:
        """All of them, in the form that most have; the others are not a number.

        Raises MakersFault if day and month cannot be told apart and `order` is not given.
        """
        forms, seconds = np.asarray(self._forms), np.asarray(self._seconds)
        form = int(np.argmax(np.bincount(forms, minlength=4)[1:])) + 1
        seconds[forms != form] = np.nan
        if form != _CLOCK or not self._known:
            return ReadTimes(_believed(seconds), form != _CLOCK, "year first")
        of_row = np.asarray(self._dates)
        turns = of_row[forms == form]
        turns = turns[np.flatnonzero(np.diff(turns, prepend=-1))]
        found = order or _order(_plain(self._known, file), turns, file)
        seconds += floats([_days(text, found) for text in self._known])[of_row]
        return ReadTimes(_believed(seconds), False, found)


def _of_day(match: re.Match[str]) -> float:
    """Seconds of the day; not a number for a time that no clock shows."""
    hour, minute, second = int(match["hour"]), int(match["minute"]), int(match["second"] or 0)
    afternoon = (match["half"] or "") in ("P", "p")
    if match["half"] and hour <= 12:
        hour = hour % 12 + (12 if afternoon else 0)
    elif match["half"] and not afternoon:
        return np.nan
    if minute > 59 or second > 59 or hour * 60 + minute > 24 * 60:
        return np.nan
    return hour * _HOUR + minute * 60.0 + second


def _believed(seconds: FloatArray) -> FloatArray:
    seconds[~((seconds >= _EARLIEST) & (seconds < _LATEST))] = np.nan
    return seconds


def _zoned(cell: str) -> float:
    try:
        return datetime.fromisoformat(cell).astimezone(UTC).timestamp()
    except (ValueError, OverflowError):
        return np.nan


def _days(text: str, order: DateOrder) -> float:
    """Seconds from 1970 to the day, or not a number where there is no such day."""
    day, month, year = _fields(text, order)
    try:
        return (date(year, month, day).toordinal() - _EPOCH) * _DAY
    except ValueError:
        return np.nan


def _fields(text: str, order: DateOrder) -> tuple[int, int, int]:
    """Day, month, year; the month is 0 if its name is not one."""
    parts = re.split(r"[-/., ]+", text.strip())
    if worded := next((part for part in parts if part.isalpha()), None):
        month = _MONTHS.index(worded[:3].lower()) + 1 if worded[:3].lower() in _MONTHS else 0
        day, year = (part for part in parts if part != worded)
        return int(day), month, _year(year)
    first, second, third = parts
    if order == "year first":
        return int(third), int(second), _year(first)
    day, middle = (first, second) if order == "day first" else (second, first)
    return int(day), int(middle), _year(third)


def _year(text: str) -> int:
    return int(text) + (2000 if len(text) <= 2 else 0)


def _plain(known: Mapping[str, int], file: str | None) -> list[str]:
    """The dates in figures, in the order in which they were numbered; empty texts for those with a month's name."""
    if len(known) > _MOST_DATES:
        what = f"{len(known)} different dates"
        raise MakersFault([Fault(None, "time", what, "a century has fewer days", "see what is in the file", file)])
    return ["" if any(map(str.isalpha, text)) else text for text in known]


def _order(dates: Sequence[str], turns: NDArray[np.intc], file: str | None) -> DateOrder:
    """What the dates themselves settle; `turns` are their numbers as they follow one another in the file."""
    plain = [text for text in dates if text]
    year_first = sum(len(re.split(r"[-/.]", text)[0]) == 4 for text in plain)
    if 2 * year_first >= len(plain):
        return "year first" if plain else "day first"
    no_day = {order: sum(bool(np.isnan(_days(text, order))) for text in plain) for order in _EITHER}
    possible = [order for order in _EITHER if no_day[order] == min(no_day.values())]
    steady = [order for order in possible if _day_by_day(dates, turns, order)]
    settled = possible if len(possible) == 1 else steady
    if len(turns) > 1 and not steady and _day_by_day(dates, turns, "year first"):
        return "year first"
    if len(settled) == 1:
        return settled[0]
    what = f'"{plain[0]}" may be day and month or month and day'
    raise MakersFault([Fault(None, "time", what, "no date in the file settles it", "say which comes first", file)])


def _day_by_day(dates: Sequence[str], turns: NDArray[np.intc], order: DateOrder) -> bool:
    days = floats([_days(text, order) if text else np.nan for text in dates])[turns]
    steps = np.diff(days[np.isfinite(days)])
    return steps.size > 0 and bool(np.median(np.abs(steps)) <= _STEADY)
