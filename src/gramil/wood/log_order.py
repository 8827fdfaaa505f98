"""Rows of a logger's file in the order of time: which way the file runs, repeated rows, and clocks that were
changed.
"""

from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from gramil.faults import Fault, MakersFault
from gramil.physics.arrays import FloatArray
from gramil.wood.clock_changes import HOUR, ClockAnswer, ShownClock

WORDS = ("", "the same reading again", "another reading of the same time", "the time runs backward")
"""Why a row was skipped, by its number; the first was not."""
AGAIN, ANOTHER, BACKWARD = 1, 2, 3
_CHANGES = {"back": "the clock was put back an hour", "forward": "the clock was put forward an hour"}
_ASTRAY = 0.25
"""Share of the steps that may go against the others, before a file is taken to run neither way."""
_YEAR = 350 * 86400.0
"""Seconds within which a clock is put back once, and put forward once: the Sundays of a year and the next."""


@dataclass(frozen=True)
class LogRows:
    """Readings that can be used, in the order of a file: their lines; seconds by the clock; C and %."""

    lines: NDArray[np.integer]
    seconds: FloatArray
    celsius: FloatArray
    percent: FloatArray

    def picked(self, rows: NDArray[np.integer] | NDArray[np.bool_] | slice) -> "LogRows":
        """Some of the rows; if it is all of them, nothing is copied."""
        if not isinstance(rows, slice) and rows.dtype == bool and rows.all():
            return self
        return LogRows(self.lines[rows], self.seconds[rows], self.celsius[rows], self.percent[rows])


@dataclass(frozen=True)
class Ordered:
    """Rows in forward order, their seconds corrected for changes of the clock; the lines that were skipped, each with
    its reason's index in `WORDS`; and changes of the clock, each with its line.
    """

    rows: LogRows
    skipped: NDArray[np.integer]
    why: NDArray[np.int8]
    changes: tuple[tuple[int, str], ...]


def newest_first(seconds: FloatArray, file: str | None) -> bool:
    """Whether times in the order of a file's rows run backward as a whole.

    A clock that is put back, or rows that were exported twice, make a few steps go against the others. Raises
    MakersFault if so many do that the rows run neither way; the same rows in reverse order raise it as well.
    """
    steps = np.diff(seconds)
    on, back = int(np.count_nonzero(steps > 0)), int(np.count_nonzero(steps < 0))
    if min(on, back) > _ASTRAY * (on + back):
        what = f"the times run to and fro: {on} steps go on, and {back} go back"
        raise MakersFault([Fault(None, "time", what, "", "put the rows in the order in which they were read", file)])
    return back > on


def usual_interval(seconds: FloatArray) -> float:
    """The usual step of a log in seconds, an hour if it has none."""
    steps = np.diff(seconds)
    forward = steps[steps > 0]
    return float(np.median(forward)) if forward.size else HOUR


def put_in_order(rows: LogRows, zoned: bool, answer: ClockAnswer | None, file: str | None) -> Ordered:
    """Rows in order of time, oldest first, without repeated rows and rows that run backward, corrected for clock
    changes.

    Raises MakersFault for a clock that changes more often than clocks do, and for a change that may be a lost reading.
    """
    again, seen = _seen_before(rows)
    interval = usual_interval(rows.seconds)
    clock = ShownClock(rows.seconds, again, rows.percent, interval, "not changed" if zoned else answer)
    walk = _Walk(rows, clock, file)
    size = rows.seconds.size
    for begin, end in pairwise([0, *clock.odd().tolist(), size] if size else []):
        walk.take(begin, end)
    taken = walk.taken
    why = np.where(again, AGAIN, np.where(seen, ANOTHER, BACKWARD))[~taken].astype(np.int8)
    kept = replace(rows.picked(taken), seconds=(rows.seconds + walk.shifts)[taken])
    return Ordered(kept, rows.lines[~taken], why, tuple(walk.changes))


def _seen_before(rows: LogRows) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """For each row: whether the last row before it with the same time has the same air, and whether there is one."""
    order = np.argsort(rows.seconds, kind="stable")
    seen, again = np.zeros(order.size, bool), np.zeros(order.size, bool)
    same = np.diff(rows.seconds[order]) == 0
    alike = same & (np.diff(rows.celsius[order]) == 0) & (np.diff(rows.percent[order]) == 0)
    seen[order[1:]], again[order[1:]] = same, alike
    return again, seen


class _Walk:
    """The state of one pass through stretches of rows, each of which runs on by itself."""

    def __init__(self, rows: LogRows, clock: ShownClock, file: str | None) -> None:
        self.rows, self.clock, self.file = rows, clock, file
        self.taken = np.zeros(rows.seconds.size, bool)
        self.shifts = np.zeros(rows.seconds.size)
        self.changes: list[tuple[int, str]] = []
        self._shift, self._last = 0.0, -np.inf
        self._changed = {"back": -np.inf, "forward": -np.inf}

    def take(self, begin: int, end: int) -> None:
        """Keep the rows of a stretch that continue what was kept before, by the clock as it is then."""
        if np.isfinite(self._last):
            self._see_to_the_clock(begin)
        seconds = self.rows.seconds[begin:end] + self._shift
        first = int(np.searchsorted(seconds, self._last, side="right"))
        self.shifts[begin:end] = self._shift
        self.taken[begin + first : end] = True
        if first < seconds.size:
            self._last = float(seconds[-1])

    def _see_to_the_clock(self, row: int) -> None:
        shown = float(self.rows.seconds[row])
        found = self.clock.changed(row, self._last - self._shift, shown + self._shift - self._last)
        if found == "asked":
            raise MakersFault([self._asked(row)])
        if not found:
            return
        if shown - self._changed[found] < _YEAR:
            raise MakersFault([self._restless(row, found)])
        self._changed[found] = shown
        self._shift += HOUR if found == "back" else -HOUR
        self.changes.append((int(self.rows.lines[row]), _CHANGES[found]))

    def _asked(self, row: int) -> Fault:
        what = "two hours from one reading to the next, in the night of a Sunday"
        why = "either the clock was put forward, or a reading was lost, as on other days of this file"
        return Fault(int(self.rows.lines[row]), "clock", what, why, "say whether this clock was changed", self.file)

    def _restless(self, row: int, found: str) -> Fault:
        what = f"{_CHANGES[found]} for the second time within a year"
        why = "a clock is put back once a year, and put forward once"
        remedy = "see how the rows follow one another, or say that this clock was not changed"
        return Fault(int(self.rows.lines[row]), "clock", what, why, remedy, self.file)
