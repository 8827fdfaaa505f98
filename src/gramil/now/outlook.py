"""The air ahead of a place: spells that hold one after another, and when a band of air is kept long enough.

Outlooks are typed in or read from a table of times; without one, the air is taken to stay at its recent average. What
is said counts as far as it is trusted.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from gramil.air.air_bands import Limits
from gramil.air.outlooks import Spell
from gramil.csv_text import rows_of
from gramil.faults import Fault, MakersFault
from gramil.measure import read_temperature
from gramil.now.chances import EVEN
from gramil.now.trust import COMMON_ONES, COUNTS, LAST_HOLDS, Trust, told


@dataclass(frozen=True)
class Outlook:
    """Spells one after another; the last one never ends. `said` tells whether somebody gave the outlook.

    What somebody said counts by its chance, as far as it is trusted, and `until` a moment (None: two days after the
    last spell begins).
    """

    spells: tuple[Spell, ...]
    said: bool = True
    trust: Trust = COMMON_ONES
    until: datetime | None = None

    @property
    def reach(self) -> datetime:
        """Until when it speaks."""
        return self.until or self.spells[-1].begins + LAST_HOLDS

    @property
    def told(self) -> str:
        """In words, how far it is trusted and why; empty where nobody gave it, or nothing of it is doubted."""
        return told(self.trust, self.spells, self.reach) if self.said else ""

    def chance(self, limits: Limits, start: datetime, hours: float) -> float:
        """The chance that a band holds from a moment on for so many hours: that of its worst spell."""
        end = start + timedelta(hours=hours)
        ends = [*(spell.begins for spell in self.spells[1:]), datetime.max]
        on = [each for each, over in zip(self.spells, ends, strict=True) if each.begins < end and over > start]
        return min((self.trust.chance(limits, each) for each in on), default=0.0)

    def windows(
        self, limits: Limits, luck: Sequence[float] | None = None
    ) -> tuple[tuple[datetime, datetime | None], ...]:
        """The times that are more likely within a band than not, joined up; the last may have no end.

        With `luck`, a number from 0 to 1 for each day from the first spell's on, those that by it are within.
        """
        found: list[tuple[datetime, datetime | None]] = []
        ends = [spell.begins for spell in self.spells[1:]]
        for spell, end in zip(self.spells, [*ends, None], strict=True):
            day = (spell.begins.date() - self.spells[0].begins.date()).days
            chance = self.trust.chance(limits, spell)
            if not (chance >= EVEN if luck is None or day >= len(luck) else luck[day] < chance):
                continue
            if found and found[-1][1] == spell.begins:
                found[-1] = (found[-1][0], end)
            else:
                found.append((spell.begins, end))
        return tuple(found)

    def first(self, limits: Limits, start: datetime, hours: float) -> datetime | None:
        """The first moment from `start` on after which the band holds for this many hours; None for never."""
        for begins, ends in self.windows(limits):
            moment = max(begins, start)
            if ends is None or ends - moment >= timedelta(hours=hours):
                return moment
        return None

    def leaves(self, limits: Limits, start: datetime) -> datetime | None:
        """When the air, in the band at `start`, leaves it; None if it never does, or is not in the band at all."""
        return next((ends for begins, ends in self.windows(limits) if begins <= start and (not ends or start < ends)),
                    None)  # fmt: skip


def read_outlook(text: str, file: str) -> tuple[Spell, ...]:
    """Spells from a table `time,temperature,humidity` (ISO 8601, C, %). Raises MakersFault with every fault."""
    spells: list[Spell] = []
    faults: list[Fault] = []
    for line, row in rows_of(text, file):
        if line == 1 and not row[0][:1].isdigit():
            continue
        try:
            moment = datetime.fromisoformat(row[0].strip()).replace(tzinfo=None)
            spells.append(Spell(moment, float(row[1]), float(row[2])))
        except (ValueError, IndexError):
            remedy = "write a row like 2026-12-03T08:00,20,42"
            faults.append(Fault(line, "", "is not a time, a temperature and a humidity", "", remedy, file))
            continue
        if not (0 <= spells[-1].humidity <= 100 and -40 <= spells[-1].temperature <= 60):
            faults.append(Fault(line, "", "is air that no room has", file=file))
    if not spells and not faults:
        faults = [Fault(what="holds no outlook", remedy="write rows like 2026-12-03T08:00,20,42", file=file)]
    if faults:
        raise MakersFault(faults)
    return tuple(sorted(spells, key=lambda spell: spell.begins))


def typed_outlook(written: Iterable[str], now: datetime) -> tuple[Spell, ...]:
    """Spells written as `thu 42 %`, `2026-12-03 20 C 42 %`, `+1 66 F 44 %` or `+2 44`; 20 C where none is given.

    A day of the week is the next one of that name; `+2` means in two days. Raises MakersFault for what cannot be read.
    """
    return tuple(sorted((_typed(text, now) for text in written), key=lambda spell: spell.begins))


def forecast(spells: Sequence[Spell], now: datetime, file: str) -> tuple[Spell, ...]:
    """What still counts of a forecast, by its age: it is as old as its first spell.

    Raises MakersFault if nothing of it counts any more.
    """
    first = min(spell.begins for spell in spells)
    if now - first > COUNTS:
        days = (now - first).days
        why = f"its first line is of {first:%Y-%m-%d}, and it counts for {COUNTS.days} days"
        raise MakersFault([Fault(what=f"is a forecast {days} days old", why=why, remedy="fetch a new one", file=file)])
    return tuple(spell for spell in spells if spell.begins - first <= COUNTS)


_OUTLOOK = re.compile(r"\s*(\S+)(?:\s+(-?[\d.]+)\s*([CF]?))?\s+([\d.]+)\s*%?\s*")
_DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


def _typed(text: str, now: datetime) -> Spell:
    found = _OUTLOOK.fullmatch(text.replace(",", " "))
    try:
        if found is None:
            raise ValueError
        moment, humidity = _moment(found[1], now), float(found[4])
        temperature = 20.0 if found[2] is None else read_temperature(f"{found[2]} {found[3] or 'C'}")
    except (ValueError, OverflowError):
        remedy = 'write it like "thu 42 %" or "2026-12-03 20 C 42 %"'
        raise MakersFault.of(f'"{text}" is not an outlook', remedy=remedy) from None
    if not (0 <= humidity <= 100 and -40 <= temperature <= 60):
        raise MakersFault.of(f'"{text}" is air that no room has', remedy="write C and per cent")
    return Spell(moment, temperature, humidity)


def _moment(word: str, now: datetime) -> datetime:
    midnight = now.replace(hour=0, minute=0, second=0, microsecond=0)
    if word.lower()[:3] in _DAYS:
        ahead = (_DAYS.index(word.lower()[:3]) - now.weekday()) % 7
        return midnight + timedelta(days=ahead or 7)
    if word.startswith("+"):
        return midnight + timedelta(days=int(word[1:]))
    return datetime.fromisoformat(word).replace(tzinfo=None)


def joined(now: Spell, later: Iterable[Spell]) -> Iterator[Spell]:
    """The air now, and what is expected later; spells that began before now count from now."""
    yield now
    yield from (spell for spell in later if spell.begins > now.begins)
