"""Which days are likely open for a band of air, by a place's own record: the last weeks, and the season of years past.

A day counts as open if the band held from nine in the morning for as long as the work needs it. Days follow one
another as they did in the record: an open day is more often followed by an open one.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from itertools import pairwise

import numpy as np

from gramil.air.air_bands import Limits
from gramil.air.air_of_places import HABIT_DAYS
from gramil.wood.air import AirHistory

RECENT = 42
"""Days before now that count."""
ON_RECORD = HABIT_DAYS + 2
"""Days of readings that tell the last weeks and a place's habit."""
SEASON = 21
"""Days before and after the same day of a year past that count."""
FEWEST = 10
"""With fewer days on record no chance is given."""
MORNING = time(9)
WIDEST_GAP = 36 * 3600.0
"""Seconds: a day with a longer gap between its readings tells nothing."""


@dataclass(frozen=True)
class Chance:
    """How often days are open: of so many on record, how many; and after an open day, and after a closed one."""

    days: int
    open: int
    after_open: float
    after_closed: float

    @property
    def share(self) -> float:
        """The share of days that are open in the long run, by how they follow one another."""
        return self.after_closed / (1.0 - self.after_open + self.after_closed)

    def ahead(self, today: bool, days: int) -> tuple[float, ...]:
        """The chance of each of so many days to come, the first of them tomorrow."""
        found, chance = [], float(today)
        for _ in range(days):
            chance = chance * self.after_open + (1.0 - chance) * self.after_closed
            found.append(chance)
        return tuple(found)


@dataclass(frozen=True)
class Record:
    """What a place's readings say of days like those to come."""

    history: AirHistory
    now: datetime

    _known: dict[tuple[Limits, float], Chance | None] = field(default_factory=dict, compare=False, repr=False)

    def chance(self, limits: Limits, hours: float) -> Chance | None:
        """How often the band held for so many hours from the morning; None if too few days are on record."""
        if (limits, hours) not in self._known:
            self._known[limits, hours] = self._chance(limits, hours)
        return self._known[limits, hours]

    def _chance(self, limits: Limits, hours: float) -> Chance | None:
        known = list(self._days(limits, hours))
        if len(known) < FEWEST:
            return None
        pairs = [(before, after) for (day, before), (then, after) in pairwise(known) if (then - day).days == 1]
        return Chance(
            len(known),
            sum(is_open for _, is_open in known),
            _share([after for before, after in pairs if before]),
            _share([after for before, after in pairs if not before]),
        )

    def _days(self, limits: Limits, hours: float) -> Iterator[tuple[date, bool]]:
        """Every day that counts and is on record, and whether it was open."""
        first, last = self.history.moment(self.history.times[0]), self.history.moment(self.history.times[-1])
        day = first.date()
        while day <= min(last, self.now).date():
            begins = datetime.combine(day, MORNING)
            ends = begins + timedelta(hours=hours)
            if first <= begins and ends <= min(last, self.now) and _counts(day, self.now.date()):
                found = self._held(limits, begins, ends)
                if found is not None:
                    yield day, found
            day += timedelta(days=1)

    def _held(self, limits: Limits, begins: datetime, ends: datetime) -> bool | None:
        """Whether the band held from one moment to another; None where the readings lie too far apart to tell."""
        history = self.history
        start, stop = history.seconds(begins), history.seconds(ends)
        low = int(np.searchsorted(history.times, start, "right")) - 1
        high = int(np.searchsorted(history.times, stop, "left")) + 1
        if np.diff(history.times[low:high]).max(initial=0.0) > WIDEST_GAP:
            return None
        at = np.linspace(start, stop, max(2, round((stop - start) / 3600.0) + 1))
        temperature = np.interp(at, history.times, history.temperature)
        humidity = np.interp(at, history.times, history.humidity)
        return all(limits.holds(*each) for each in zip(temperature.tolist(), humidity.tolist(), strict=True))


def _counts(day: date, now: date) -> bool:
    """Whether a day is one of the last weeks, or of this season in a year past."""
    ago = (now - day).days
    return ago <= RECENT or any(abs(ago - round(365.25 * years)) <= SEASON for years in range(1, 11))


def _share(found: Sequence[bool]) -> float:
    """The share of open ones, as if one more of each had been seen."""
    return (sum(found) + 1.0) / (len(found) + 2.0)


def evenly(chances: Sequence[float]) -> tuple[bool, ...]:
    """Days that are taken to be open in a plan: as many as are to be expected, spread as their chances are.

    So a plan has neither all days nor none, and is the same next Monday if the chances are.
    """
    totals = np.floor(0.5 + np.cumsum([0.0, *chances]))
    return tuple(bool(step) for step in np.diff(totals) > 0)


def drawn(chance: Chance, today: bool, luck: Sequence[float]) -> tuple[bool, ...]:
    """Days drawn as they follow one another on record; `luck` are numbers from 0 to 1, one for each day."""
    found, before = [], today
    for each in luck:
        before = each < (chance.after_open if before else chance.after_closed)
        found.append(before)
    return tuple(found)
