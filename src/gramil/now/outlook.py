"""The air ahead of a place: spells that hold one after another, and when a band of air is kept long enough.

Outlooks are typed in or read from a table of times; without one, the air is taken to stay at its recent average.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from gramil.air.air_bands import Limits
from gramil.csv_text import rows_of
from gramil.faults import Fault, MakersFault


@dataclass(frozen=True)
class Spell:
    """Air that holds from a moment until the next spell begins: temperature C, relative humidity %."""

    begins: datetime
    temperature: float
    humidity: float


@dataclass(frozen=True)
class Outlook:
    """Spells one after another; the last one never ends. `said` tells whether somebody gave the outlook."""

    spells: tuple[Spell, ...]
    said: bool = True

    def windows(self, limits: Limits) -> tuple[tuple[datetime, datetime | None], ...]:
        """The times within a band, joined up; the last may have no end."""
        found: list[tuple[datetime, datetime | None]] = []
        ends = [spell.begins for spell in self.spells[1:]]
        for spell, end in zip(self.spells, [*ends, None], strict=True):
            if not limits.holds(spell.temperature, spell.humidity):
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
    """Spells written as `thu 42 %`, `2026-12-03 20 C 42 %` or `+2 44`; temperature 20 C where none is given.

    A day of the week is the next one of that name; `+2` means in two days. Raises MakersFault for what cannot be read.
    """
    return tuple(sorted((_typed(text, now) for text in written), key=lambda spell: spell.begins))


FORECAST_HOLDS = timedelta(days=7)
"""A forecast's spells count for so long after its first one; what it says of later days is no better than the place's
own record: common practice, from memory."""


def forecast(spells: Sequence[Spell], now: datetime, file: str) -> tuple[Spell, ...]:
    """What still counts of a forecast, by its age: it is as old as its first spell.

    Raises MakersFault if nothing of it counts any more.
    """
    first = min(spell.begins for spell in spells)
    if now - first > FORECAST_HOLDS:
        days = (now - first).days
        why = f"its first line is of {first:%Y-%m-%d}, and it counts for {FORECAST_HOLDS.days} days"
        raise MakersFault([Fault(what=f"is a forecast {days} days old", why=why, remedy="fetch a new one", file=file)])
    return tuple(spell for spell in spells if spell.begins - first <= FORECAST_HOLDS)


_DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


def _typed(text: str, now: datetime) -> Spell:
    words = text.replace("%", " ").replace("C", " ").replace(",", " ").split()
    try:
        moment = _moment(words[0], now)
        figures = [float(word) for word in words[1:]]
        temperature, humidity = figures if len(figures) == 2 else (20.0, *figures)
    except (ValueError, IndexError, OverflowError):
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
