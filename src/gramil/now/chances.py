"""Which days are likely open for a band of air, by a place's own record: the last weeks, and the season of years past.

Days soon to come are judged by the last weeks and this season in years past; later ones by their own season then, where
it is on record: what is planned in February for May goes by May's air.

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
BLOCK = 14
"""Days that are judged by one season, once they lie more than `SEASON` ahead."""
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


@dataclass(frozen=True)
class Record:
    """What a place's readings say of days like those to come."""

    history: AirHistory
    now: datetime

    _held_on: dict[tuple[Limits, float], tuple[tuple[date, bool], ...]] = field(
        default_factory=dict, compare=False, repr=False
    )
    _known: dict[tuple[Limits, float, date], Chance | None] = field(default_factory=dict, compare=False, repr=False)

    def chance(self, limits: Limits, hours: float) -> Chance | None:
        """How often the band held for so many hours from the morning; None if too few days are on record."""
        return self._about(limits, hours, self.now.date())

    def ahead(self, limits: Limits, hours: float, first: date, days: int) -> tuple[Chance, ...]:
        """The chance of each of so many days from a first one on, by its season; none if too few are on record."""
        now = self.chance(limits, hours)
        if now is None:
            return ()
        found = []
        for day in range(days):
            away = (first - self.now.date()).days + day
            middle = self.now.date() + timedelta(days=away // BLOCK * BLOCK + BLOCK // 2)
            found.append(now if away <= SEASON else self._about(limits, hours, middle) or now)
        return tuple(found)

    def _about(self, limits: Limits, hours: float, day: date) -> Chance | None:
        """The chance about a day: by years past and, of today, by the last weeks."""
        key = limits, hours, day
        if key not in self._known:
            self._known[key] = _chance([each for each in self._on_record(limits, hours) if self._counts(each[0], day)])
        return self._known[key]

    def _counts(self, on_record: date, day: date) -> bool:
        ago = (day - on_record).days
        recent = day == self.now.date() and 0 <= ago <= RECENT
        return recent or any(abs(ago - round(365.25 * years)) <= SEASON for years in range(1, 11))

    def _on_record(self, limits: Limits, hours: float) -> tuple[tuple[date, bool], ...]:
        """Every day that is on record, and whether it was open."""
        if (limits, hours) not in self._held_on:
            self._held_on[limits, hours] = tuple(self._days(limits, hours))
        return self._held_on[limits, hours]

    def _days(self, limits: Limits, hours: float) -> Iterator[tuple[date, bool]]:
        """Every day that can count and is on record, and whether it was open."""
        first, last = self.history.moment(self.history.times[0]), self.history.moment(self.history.times[-1])
        day = first.date()
        while day <= min(last, self.now).date():
            begins = datetime.combine(day, MORNING)
            ends = begins + timedelta(hours=hours)
            if first <= begins and ends <= min(last, self.now):
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


def _chance(known: Sequence[tuple[date, bool]]) -> Chance | None:
    if len(known) < FEWEST:
        return None
    pairs = [(before, after) for (day, before), (then, after) in pairwise(known) if (then - day).days == 1]
    return Chance(
        len(known),
        sum(is_open for _, is_open in known),
        _share([after for before, after in pairs if before]),
        _share([after for before, after in pairs if not before]),
    )


def _share(found: Sequence[bool]) -> float:
    """The share of open ones, as if one more of each had been seen."""
    return (sum(found) + 1.0) / (len(found) + 2.0)


def evenly(chances: Sequence[float]) -> tuple[bool, ...]:
    """Days that are taken to be open in a plan: as many as are to be expected, spread as their chances are.

    So a plan has neither all days nor none, and is the same next Monday if the chances are.
    """
    totals = np.floor(0.5 + np.cumsum([0.0, *chances]))
    return tuple(bool(step) for step in np.diff(totals) > 0)


def expected(chances: Sequence[Chance], today: bool) -> tuple[float, ...]:
    """How likely each of the days to come is open, the first of them tomorrow, as they follow one another on record."""
    found, chance = [], float(today)
    for each in chances:
        chance = chance * each.after_open + (1.0 - chance) * each.after_closed
        found.append(chance)
    return tuple(found)


def drawn(chances: Sequence[Chance], today: bool, luck: Sequence[float]) -> tuple[bool, ...]:
    """Days drawn as they follow one another on record; `luck` are numbers from 0 to 1, one for each day."""
    found, before = [], today
    for chance, each in zip(chances, luck, strict=False):
        before = each < (chance.after_open if before else chance.after_closed)
        found.append(before)
    return tuple(found)
