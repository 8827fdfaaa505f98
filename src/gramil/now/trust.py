"""How far an outlook is trusted: by its age, and by what earlier outlooks of the place said and its meter then read.

The humidity that comes is taken to lie about the one that was said as the errors of earlier outlooks do: normally, with
their mean and their spread so many days ahead. A band of air is then open by its chance, and not wholly.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, time, timedelta
from math import erfc, sqrt
from statistics import fmean, stdev

import numpy as np

from gramil.air.air_bands import Limits
from gramil.air.outlooks import KeptOutlook, Spell
from gramil.now.chances import MORNING, WIDEST_GAP
from gramil.wood.air import AirHistory

COUNTS = timedelta(days=7)
"""An outlook counts for so long after it was given; what it says of later days is no better than what the place's own
record says: common practice, from memory."""
LAST_HOLDS = timedelta(days=2)
"""An outlook's last spell speaks for so long; after that the place's own record does."""
COMMON = 3.0
"""How far, in % of humidity, the air of a day ahead spreads about what was said of it, where the place has shown
nothing else; it grows as the square root of the days, as errors do that add up day by day. From memory."""
FEWEST = 5
"""With fewer days held against the meter, so many days ahead, the common spread counts."""
LEAST = 0.5
"""No spread is less, in %: a meter reads no closer."""


@dataclass(frozen=True)
class Errors:
    """How what was read lies about what was said, in % of humidity: by so much more on average, and the spread.

    `days` were held against the meter; 0 for the common spread.
    """

    bias: float
    spread: float
    days: int = 0


@dataclass(frozen=True)
class Trust:
    """The errors of a place's earlier outlooks, by whole days ahead; `seen` counts days that were too few to tell."""

    learnt: Mapping[int, Errors] = field(default_factory=dict)
    seen: int = 0

    def errors(self, ahead: int) -> Errors:
        """The errors so many days ahead: the place's own, or the common ones."""
        return self.learnt.get(ahead) or Errors(0.0, COMMON * sqrt(max(1, ahead)))

    def chance(self, limits: Limits, spell: Spell) -> float:
        """The chance that the air of a spell lies within a band; what nobody said is certain.

        Formula: the normal distribution over the band's humidity, if the temperature lies within its own.
        """
        if spell.said is None or not limits.temperature[0] <= spell.temperature <= limits.temperature[1]:
            return float(limits.holds(spell.temperature, spell.humidity))
        errors = self.errors(days_ahead(spell.said, spell.begins))
        ends = ((end - spell.humidity - errors.bias) / errors.spread for end in limits.humidity)
        below, above = (0.5 * erfc(-end / sqrt(2.0)) for end in ends)
        return above - below


COMMON_ONES = Trust()
"""Of a place whose outlooks were not held against its meter yet."""


def days_ahead(said: datetime, begins: datetime) -> int:
    """How many days after it was said a day lies; the day itself counts as one ahead."""
    return max(1, (begins.date() - said.date()).days)


def learnt(kept: Iterable[KeptOutlook], history: AirHistory, now: datetime) -> Trust:
    """What a place's outlooks were worth so far: each held, morning by morning, against what was then read."""
    found: dict[int, list[float]] = {}
    for outlook in kept:
        for morning, said in _mornings(outlook):
            read = _read(history, morning) if morning <= now else None
            if read is not None:
                found.setdefault(days_ahead(outlook.said, morning), []).append(read - said)
    enough = {ahead: each for ahead, each in found.items() if len(each) >= FEWEST}
    told = {ahead: Errors(fmean(each), max(LEAST, stdev(each)), len(each)) for ahead, each in enough.items()}
    return Trust(told, sum(map(len, found.values())))


def _mornings(outlook: KeptOutlook) -> Iterator[tuple[datetime, float]]:
    """The mornings that an outlook speaks of, and the humidity that it says."""
    last = min(outlook.said + COUNTS, outlook.spells[-1].begins + LAST_HOLDS)
    for day in range((last.date() - outlook.said.date()).days + 1):
        morning = datetime.combine(outlook.said.date(), time(MORNING)) + timedelta(days=day)
        begun = [each for each in outlook.spells if each.begins <= morning]
        if begun and outlook.said < morning < last:
            yield morning, begun[-1].humidity


def _read(history: AirHistory, moment: datetime) -> float | None:
    """The humidity at a moment by the readings on either side, if they lie near enough to each other."""
    at = history.seconds(moment)
    after = int(np.searchsorted(history.times, at))
    if after == len(history.times):
        return None
    before = after if history.times[after] == at else after - 1
    if before < 0 or history.times[after] - history.times[before] > WIDEST_GAP:
        return None
    return float(np.interp(at, history.times, history.humidity))


def still_said(
    kept: Sequence[KeptOutlook], now: datetime, otherwise: Spell | None = None
) -> tuple[tuple[Spell, ...], datetime]:
    """What outlooks still say of the days to come, a spell a day at most, and until when; nothing where none does.

    A later one takes the place of an earlier one from its own first spell on. Days before that of which nobody says
    anything have the air of `otherwise`, from when that begins on, and count as an outlook given then does: air that
    nobody spoke of is no surer than air that somebody did.
    """
    spells: list[Spell] = []
    until = now
    for each in kept:
        ends = min(each.said + COUNTS, each.spells[-1].begins + LAST_HOLDS)
        own = tuple(by_days(each.spells, ends))
        if own and ends > now:
            earlier = [one for one in spells if one.begins < own[0].begins]
            spells = [*earlier, *_unsaid(otherwise, until, each.said, own[0].begins), *own]
            until = ends
    coming = any(each.begins > now for each in spells)
    return (tuple(spells), until) if coming else ((), now)


def _unsaid(otherwise: Spell | None, since: datetime, said: datetime, until: datetime) -> tuple[Spell, ...]:
    """The days between two outlooks, or before the first, of which neither says anything."""
    if otherwise is None:
        return ()
    begins = max(since, otherwise.begins)
    return tuple(by_days((replace(otherwise, begins=begins, said=said),), until))


def by_days(spells: Sequence[Spell], until: datetime) -> Iterator[Spell]:
    """Spells cut at every midnight, so that each lies so many days ahead; none begins at `until` or later."""
    ends = [each.begins for each in spells[1:]]
    for spell, end in zip(spells, [*ends, until], strict=True):
        begins = spell.begins
        while begins < min(end, until):
            yield Spell(begins, spell.temperature, spell.humidity, spell.said)
            begins = datetime.combine(begins.date() + timedelta(days=1), time())


def told(trust: Trust, spells: Sequence[Spell], until: datetime) -> str:
    """In words: how far what is said is trusted, and why."""
    aheads = sorted({days_ahead(each.said, each.begins) for each in spells if each.said})
    if not aheads:
        return ""
    said = max(each.said for each in spells if each.said)
    words = [_errors_told(trust.errors(each), each) for each in dict.fromkeys((aheads[0], aheads[-1]))]
    counts = f"The outlook of {said:%A} {said.day} {said:%B} counts until {until:%A} {until.day} {until:%B}"
    return f"{counts}, {', '.join(words)}: {_why(trust, aheads)}."


def _errors_told(errors: Errors, ahead: int) -> str:
    days = "a day ahead" if ahead == 1 else f"{ahead} days ahead"
    if not errors.days:
        return f"± {errors.spread:.0f} % {days}"
    side = f"{abs(errors.bias):.1f} % too {'dry' if errors.bias > 0 else 'damp'} and "
    return f"{side if abs(errors.bias) >= 0.05 else ''}± {errors.spread:.1f} % {days}"


def _why(trust: Trust, aheads: Sequence[int]) -> str:
    own = [trust.errors(each).days for each in aheads if trust.errors(each).days]
    if own:
        return f"so the meter read on {sum(own)} days of earlier outlooks"
    few = f"only {trust.seen} days" if trust.seen else "no day"
    return f"as is common, for {few} of earlier outlooks could be held against the meter yet"
