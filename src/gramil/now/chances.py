"""Which days are likely to be open for a band of air, by a place's own record: the last weeks, and the season of years
past.

Days soon to come are judged by the last weeks and this season in years past; later ones by their own season then, where
it is on record: what is planned in February for May goes by May's air.

A day is open if in its morning, when the air is read, it lies so far inside the band that by the record it then mostly
stays there for as long as the work needs: what `now` would begin on such a day. Where outlooks are given, they tell
beforehand whether it stays: a day is then open if the band held. Days follow one another as they did in the record: an
open day is more often followed by an open one.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from functools import cached_property
from math import ceil, inf

import numpy as np
from numpy.typing import NDArray

from gramil.air.air_bands import Limits
from gramil.air.air_of_places import HABIT_DAYS
from gramil.physics.arrays import BoolArray, FloatArray, floats
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
MORNING = 9
"""The hour at which a day's air is read."""
DAY = 24
MOSTLY = 0.9
"""In which share of the hours the air must be within the band for the band to hold: one reading beyond its edge does
not make a damp day. Common practice, from memory.
"""
EVEN = 0.5
"""Work is begun in air that is right if, by the record, it more often stays so than not."""
WIDEST_GAP = 36 * 3600.0
"""Seconds: a day with a longer gap between its readings tells nothing."""


@dataclass(frozen=True)
class Chance:
    """How often days are open: how many of those on record, and how many after an open day and after a closed one."""

    days: int
    open: int
    after_open: float
    after_closed: float

    @property
    def share(self) -> float:
        """The share of days that are open in the long run, by how they follow one another."""
        return self.after_closed / (1.0 - self.after_open + self.after_closed)


@dataclass(frozen=True)
class Stays:
    """How far inside its band, in %, the air must be in the morning to be still there, more often than not, after some
    hours; how many days on record began like that, and on how many of them it stayed.
    """

    inside: float
    days: int
    stayed: int


@dataclass(frozen=True)
class Record:
    """What a place's readings say of days like those to come."""

    history: AirHistory
    now: datetime

    _stays: dict[tuple[Limits, float, date], Stays | None] = field(default_factory=dict, compare=False, repr=False)
    _chances: dict[tuple[Limits, float, bool, date], Chance | None] = field(
        default_factory=dict, compare=False, repr=False
    )
    _ahead: dict[tuple[Limits, float, bool, date, int], tuple[Chance, ...]] = field(
        default_factory=dict, compare=False, repr=False
    )

    def stays(self, limits: Limits, hours: float) -> Stays | None:
        """How the band held through a number of hours in the last weeks; None if too few days are on record."""
        return self._stays_about(limits, hours, self.now.date())

    def chance(self, limits: Limits, hours: float, *, foretold: bool = False) -> Chance | None:
        """How often such days are open to work that needs the band for a number of hours; None if too few are on
        record. `foretold` are days whose outlook will be given.
        """
        return self._about(limits, hours, foretold, self.now.date())

    def ahead(
        self, limits: Limits, hours: float, first: date, days: int, *, foretold: bool = False
    ) -> tuple[Chance, ...]:
        """The chance of each day of a number of days, by its season; none if too few are on record."""
        key = limits, hours, foretold, first, days
        if key not in self._ahead:
            away, now = (first - self.now.date()).days, self.chance(limits, hours, foretold=foretold)
            found = (self._about(limits, hours, foretold, self._season(away + day)) or now for day in range(days))
            self._ahead[key] = tuple(each for each in found if each) if now else ()
        return self._ahead[key]

    def _season(self, away: int) -> date:
        """The day whose season judges a day that is a number of days away."""
        ahead = 0 if away <= SEASON else away // BLOCK * BLOCK + BLOCK // 2
        return self.now.date() + timedelta(days=ahead)

    def _about(self, limits: Limits, hours: float, foretold: bool, day: date) -> Chance | None:
        """The chance about a day: by years past and, of today, by the last weeks."""
        key = limits, hours, foretold, day
        if key not in self._chances:
            stays = self._stays_about(limits, hours, day)
            counted = self._in_years_past(day) | (self._recent if day == self.now.date() else False)
            known = np.flatnonzero(counted & self._is_known(hours if foretold else 0.0))
            is_open = self._inside(limits) >= (0.0 if foretold or stays is None else stays.inside)
            if foretold:
                is_open &= self._held(limits, hours)
            self._chances[key] = None if stays is None else _chance(known, is_open[known])
        return self._chances[key]

    def _stays_about(self, limits: Limits, hours: float, day: date) -> Stays | None:
        """How the band held: of today by the last weeks, of another day by its season in years past."""
        key = limits, hours, day
        if key not in self._stays:
            counted = self._recent if day == self.now.date() else self._in_years_past(day)
            known = counted & self._is_known(hours)
            inside = self._inside(limits)
            began = known & (inside >= 0.0)
            held = self._held(limits, hours)[began]
            self._stays[key] = None if known.sum() < FEWEST else _mostly_from(inside[began], held)
        return self._stays[key]

    @cached_property
    def _hourly(self) -> tuple[FloatArray, FloatArray, BoolArray]:
        """Temperature and humidity at every whole hour from the midnight before the first reading to the last one or
        now, and where the readings lie near enough to each other to tell them.
        """
        history = self.history
        midnight = datetime.combine(history.origin.date(), time())
        last = min(float(history.times[-1]), history.seconds(self.now))
        at = np.arange(history.seconds(midnight), last + 1.0, 3600.0)
        after = np.searchsorted(history.times, at).clip(min(1, len(history.times) - 1), len(history.times) - 1)
        apart = np.diff(history.times, prepend=history.times[0])[after]
        return (
            floats(np.interp(at, history.times, history.temperature)),
            floats(np.interp(at, history.times, history.humidity)),
            (apart <= WIDEST_GAP) & (at >= history.times[0]),
        )

    @cached_property
    def _mornings(self) -> NDArray[np.int64]:
        """The place of every day's morning among the hours."""
        return np.arange(MORNING, len(self._hourly[2]), DAY)

    @cached_property
    def _ago(self) -> NDArray[np.int64]:
        """How many days ago each day is."""
        return (self.now.date() - self.history.origin.date()).days - np.arange(len(self._mornings))

    @property
    def _recent(self) -> BoolArray:
        return (self._ago >= 0) & (self._ago <= RECENT)

    def _in_years_past(self, day: date) -> BoolArray:
        ago = self._ago + (day - self.now.date()).days
        found: BoolArray = np.abs(ago[:, None] - np.rint(365.25 * np.arange(1, 11))).min(axis=1) <= SEASON
        return found

    def _through(self, each: BoolArray, hours: float, share: float = 1.0) -> BoolArray:
        """For each day, whether something is so at this share of the hours from its morning on, for so long."""
        count = ceil(hours) + 1
        ends = np.minimum(self._mornings + count, len(each))
        since = np.concatenate([[0], np.cumsum(each)])
        return np.asarray(since[ends] - since[self._mornings] >= share * count)

    def _is_known(self, hours: float) -> BoolArray:
        """For each day, whether its readings tell so many hours from its morning on."""
        return self._through(self._hourly[2], hours)

    def _held(self, limits: Limits, hours: float) -> BoolArray:
        """For each day, whether the band held from its morning on for so many hours."""
        return self._through(limits.hold_all(*self._hourly[:2]), hours, MOSTLY)

    def _inside(self, limits: Limits) -> FloatArray:
        """For each day how far inside the band its morning was, in %; less than nothing where it was outside."""
        temperature, humidity = (each[self._mornings] for each in self._hourly[:2])
        inside = np.minimum(humidity - limits.humidity[0], limits.humidity[1] - humidity)
        return np.where(limits.hold_all(temperature, humidity), inside, -1.0)


def _mostly_from(inside: FloatArray, held: BoolArray) -> Stays:
    """The longest run of days, from those that began furthest inside on, in which the band held on at least half."""
    order = np.argsort(-inside, kind="stable")
    days, stayed = np.arange(1, len(order) + 1), np.cumsum(held[order])
    whole = np.diff(inside[order], append=-1.0) != 0.0
    good = np.flatnonzero(whole & (stayed >= EVEN * days))
    if not good.size:
        return Stays(inf if order.size else 0.0, len(order), int(held.sum()))
    if good[-1] == len(order) - 1:
        return Stays(0.0, len(order), int(held.sum()))
    return Stays(float(inside[order][good[-1]]), int(days[good[-1]]), int(stayed[good[-1]]))


def _chance(days: NDArray[np.int64], is_open: BoolArray) -> Chance | None:
    if len(days) < FEWEST:
        return None
    follows = np.diff(days) == 1
    before, after = is_open[:-1][follows], is_open[1:][follows]
    return Chance(len(days), int(is_open.sum()), _share(after[before]), _share(after[~before]))


def _share(found: BoolArray) -> float:
    """The share of open days, as if one more of each kind had been seen."""
    return (float(found.sum()) + 1.0) / (len(found) + 2.0)


def evenly(chances: Sequence[float]) -> tuple[bool, ...]:
    """Days that a plan takes to be open: as many as are to be expected, spread as their chances are.

    So a plan has neither all days nor none, and is the same next Monday if the chances are the same.
    """
    totals = np.floor(0.5 + np.cumsum([0.0, *chances]))
    return tuple(bool(step) for step in np.diff(totals) > 0)


def expected(chances: Sequence[Chance], before: float) -> tuple[float, ...]:
    """How likely each of the days to come is open, as they follow one another on record; `before` is how likely the
    day before the first of them is.
    """
    found, chance = [], before
    for each in chances:
        chance = chance * each.after_open + (1.0 - chance) * each.after_closed
        found.append(chance)
    return tuple(found)


def drawn(chances: Sequence[Chance], before: float, luck: Sequence[float]) -> tuple[bool, ...]:
    """Days drawn as they follow one another on record; `luck` are numbers from 0 to 1, one for each day."""
    found, chance = [], before
    for number, each in zip(luck, chances, strict=False):
        is_open = number < chance * each.after_open + (1.0 - chance) * each.after_closed
        chance = float(is_open)
        found.append(is_open)
    return tuple(found)
