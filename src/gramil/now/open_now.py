"""What is open now on each instrument, with reasons to prefer it, and what must wait, with the one reason why.

It looks nothing up: what is done, the air of the places, which pieces have settled and the time are all passed in.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from functools import cached_property
from math import inf
from typing import Literal

from gramil.air.air_bands import Limits
from gramil.change.made import Judged
from gramil.change.made_words import verdict_line
from gramil.decimals import fixed
from gramil.measure import LengthUnit, TemperatureUnit, in_degrees, show_temperature
from gramil.now.air_now import PlaceNow, by_outlook, may_begin
from gramil.now.chances import Stays
from gramil.now.lost_work import closed_by, reworked_before
from gramil.now.order import CURES, FREES, LONG_CURE, LONGEST, OPENS, WAY
from gramil.shop.operations import Operation, Work

SOON = timedelta(days=3)
"""Air that leaves its band within this time is about to turn."""
Closes = Literal["lost", "before", "cure", "jig", "wood", "stock", "air", "reading"]


@dataclass(frozen=True)
class WoodNow:
    """A piece for a part: whether it has settled for gluing, when it probably will, and the same in words."""

    name: str
    settled: bool
    likely: datetime | None = None
    told: str = ""


@dataclass(frozen=True)
class InstrumentState:
    """An instrument: the work it needs, what is done of it and when, its pieces by part, sheets that are stale.

    `judged` are the verdicts on the finished work, in words with lengths in `unit`; `stops` is what measurements make a
    stop, in words, `lacking` for each operation the wood that it wants and that is not on hand.
    """

    name: str
    work: Work
    done: Mapping[str, datetime]
    wood: Mapping[str, tuple[WoodNow, ...]] = field(default_factory=dict)
    stale: Mapping[str, str] = field(default_factory=dict)
    judged: tuple[Judged, ...] = ()
    unit: LengthUnit = "mm"
    stops: tuple[str, ...] = ()
    lacking: Mapping[str, str] = field(default_factory=dict)

    @cached_property
    def lost(self) -> Mapping[str, str]:
        """For each operation not done that depends on something lost, what that is, in words."""
        found = closed_by(self.work, self.done, self.judged)
        return {name: _lost(each, self.unit) for name, each in found.items()}

    @cached_property
    def to_do(self) -> tuple[Operation, ...]:
        """What is not done, in the order of the work."""
        return tuple(each for name, each in self.work.operations.items() if name not in self.done)

    @cached_property
    def way_to_go(self) -> Mapping[str, float]:
        """For each operation not done, the minutes of work and cure on the longest way from its start to the end."""
        longest: dict[str, float] = {}
        followers: dict[str, list[str]] = {each.name: [] for each in self.to_do}
        for each in self.to_do:
            for before in each.after:
                if before in followers:
                    followers[before].append(each.name)
        for each in reversed(self.to_do):
            longest[each.name] = each.minutes + max((longest[name] for name in followers[each.name]), default=0.0)
        return longest


def _lost(each: Judged, unit: LengthUnit) -> str:
    """What is lost, in words, with the figure that says so."""
    figure = f" [{each.address}]" if each.address else ""
    return f"{each.what}: {verdict_line(each, unit)}{figure}"


@dataclass(frozen=True)
class Conditions:
    """The shop at a moment: bands of air, the places by name, where gluing is done, and how many of each jig there
    are; temperatures are told in `degrees`, and what is planned is printed on `paper`.
    """

    now: datetime
    bands: Mapping[str, Limits]
    places: Mapping[str, PlaceNow] = field(default_factory=dict)
    gluing: str = ""
    jigs: Mapping[str, int] = field(default_factory=dict)
    degrees: TemperatureUnit = "C"
    finishing: str = ""
    paper: str = "a4"

    def air_for(self, band: str) -> PlaceNow | None:
        """The air of the place where work in a band is done: finishing where that is done, all else where gluing is."""
        return self.places.get(self.finishing) if band == "finishing" and self.finishing else self.air

    @property
    def air(self) -> PlaceNow | None:
        """The air where gluing is done."""
        return self.places.get(self.gluing)


@dataclass(frozen=True)
class Open:
    """An operation that can be done now, reasons for doing it, and what is not known about it."""

    operation: Operation
    prefer: tuple[str, ...]
    remarks: tuple[str, ...]
    weight: float


@dataclass(frozen=True)
class Closed:
    """An operation that cannot be done now: why, in words, and when it may open (None: nobody can say)."""

    operation: Operation
    by: Closes
    why: str
    when: datetime | None = None


@dataclass(frozen=True)
class InstrumentNow:
    """What is open on an instrument, best first; what is closed; how much is done of all."""

    name: str
    open: tuple[Open, ...]
    closed: tuple[Closed, ...]
    done: int
    all: int


def open_now(instruments: Sequence[InstrumentState], shop: Conditions) -> tuple[InstrumentNow, ...]:
    """What is open and what must wait on each instrument at the shop's moment."""
    held = Holds(instruments, shop)
    closed = [
        {each.name: found for each in one.to_do if (found := _closed(each, one, shop, held))} for one in instruments
    ]
    waiting = {
        kind
        for one in closed
        for found in one.values()
        if found.by == "jig"
        for kind in (*found.operation.uses, *found.operation.takes)
    }
    return tuple(_instrument(one, found, shop, waiting) for one, found in zip(instruments, closed, strict=True))


class Holds:
    """Who holds which jig: from an operation that takes it to one that frees it, or while it is clamped."""

    def __init__(self, instruments: Sequence[InstrumentState], shop: Conditions) -> None:
        self._shop = shop
        self._held: dict[str, list[tuple[str, str, datetime | None]]] = {}
        for one in instruments:
            for kind, until, when in _held_by(one, shop.now):
                self._held.setdefault(kind, []).append((one.name, until, when))

    def against(self, operation: Operation, name: str) -> tuple[str, datetime | None] | None:
        """Why an instrument's operation has no jig, and when one may be free; None if all are free."""
        for kind in (*operation.uses, *operation.takes):
            holders = self._held.get(kind, [])
            if kind in operation.takes:
                holders = [each for each in holders if each[0] != name or each[2] is not None]
            if len(holders) >= max(1, self._shop.jigs.get(kind, 1)):
                moments = [when for _, _, when in holders if when]
                owner, until, _ = holders[0]
                return f"the {kind} holds {owner} {until}", min(moments, default=None)
        return None

    @property
    def kinds(self) -> Mapping[str, int]:
        """How many of each kind are taken."""
        return {kind: len(holders) for kind, holders in self._held.items()}


def _held_by(one: InstrumentState, now: datetime) -> Iterator[tuple[str, str, datetime | None]]:
    """What one instrument holds: the kind, until what, and until when where that is known."""
    operations = one.work.operations
    frees = {kind: each for each in operations.values() for kind in each.frees}
    for name, moment in one.done.items():
        operation = operations.get(name)
        if operation is None:
            continue
        over = moment + timedelta(hours=operation.clamp)
        for kind in operation.uses:
            if over > now:
                yield kind, "until its clamps come off", over
        for kind in operation.takes:
            last = frees.get(kind)
            if last is None or last.name not in one.done:
                yield kind, f"until this is done: {_small(last.what)}" if last else "for good", None
            elif (free := one.done[last.name] + timedelta(hours=last.clamp)) > now:
                yield kind, "until its clamps come off", free


def _last_of(waited: Sequence[str], one: InstrumentState) -> tuple[Operation, ...]:
    """Of the operations that one waits for, those that must not be done before another of them."""
    ahead: set[str] = set()
    look = [name for each in waited for name in one.work.operations[each].after] if len(waited) > 1 else []
    while look:
        name = look.pop()
        if name not in ahead and name not in one.done:
            ahead.add(name)
            look += one.work.operations[name].after
    return tuple(one.work.operations[name] for name in waited if name not in ahead)


def _closed(each: Operation, one: InstrumentState, shop: Conditions, held: Holds) -> Closed | None:
    """The one reason why an operation must wait: the first that would have to be met."""
    if each.name in one.lost:
        return Closed(each, "lost", one.lost[each.name])
    before = _last_of([name for name in each.after if name not in one.done], one)
    if before:
        last = max(before, key=lambda other: one.way_to_go[other.name])
        more = f" (and {len(before) - 1} more)" if len(before) > 1 else ""
        return Closed(each, "before", f"first: {_small(last.what)}{more}")
    cures = [found for name in one.done if (found := _cures(name, each, one)) is not None and found[0] > shop.now]
    if cures:
        over, name = max(cures)
        return Closed(each, "cure", f"{_small(one.work.operations[name].what)}: this still cures", over)
    if jig := held.against(each, one.name):
        return Closed(each, "jig", *jig)
    if each.name in one.lacking:
        return Closed(each, "stock", one.lacking[each.name])
    return _wood(each, one) or _air(each, shop)


def _cures(name: str, each: Operation, one: InstrumentState) -> tuple[datetime, str] | None:
    """What is still curing, and until when, if an operation comes after it or works on the same part."""
    other = one.work.operations.get(name)
    if other is None or (name not in each.after and other.part != each.part):
        return None
    return one.done[name] + timedelta(hours=other.clamp), name


def _wood(each: Operation, one: InstrumentState) -> Closed | None:
    waiting = [piece for part in each.wood for piece in one.wood.get(part, ()) if not piece.settled]
    if not waiting:
        return None
    last = max(waiting, key=lambda piece: piece.likely or datetime.max)
    return Closed(each, "wood", f"{last.name} has not settled. {last.told}".strip(), last.likely)


def _air(each: Operation, shop: Conditions) -> Closed | None:
    if not each.air:
        return None
    limits, air = shop.bands[each.air], shop.air_for(each.air)
    if air is None:
        where = "finishing" if each.air == "finishing" and shop.finishing else "gluing"
        return Closed(each, "reading", f"there are no readings of the air where {where} is done")
    if air.old:
        return Closed(
            each, "reading", f"the {air.name}'s air was last read {hours_ago(shop.now, air.read_at)}: read it again"
        )
    hours = each.hands / 60 + each.air_hours
    if may_begin(air, limits, shop.now, hours):
        return None
    against = _against(each, limits, air, shop)
    stays = air.by_record(limits, hours)
    if stays is None:
        told = "; ".join((against, *by_outlook(air, limits, shop.now, hours)))
        return Closed(each, "air", told, air.outlook.first(limits, shop.now, hours))
    return Closed(each, "air", "; ".join((against, *_likely(air, limits, hours, stays))))


def _likely(air: PlaceNow, limits: Limits, hours: float, stays: Stays) -> Iterator[str]:
    """By the place's record: from where in the band the air mostly stays there, and how often days are open."""
    if limits.holds(air.temperature, air.humidity) and stays.inside < inf:
        reached = air.reached(limits).humidity
        least = max(limits.humidity[0], reached[0] + stays.inside)
        most = min(limits.humidity[1], reached[1] - stays.inside)
        yield f"by its own record it mostly stays so long from {least:.0f} to {most:.0f} %"
    chance = air.record.chance(limits, hours) if air.record else None
    if chance is not None:
        yield f"by its own record it is open on {10 * chance.share:.0f} of 10 days like these"


def _against(each: Operation, limits: Limits, air: PlaceNow, shop: Conditions) -> str:
    """Why the air does not allow an operation, and where in the shop it would."""
    hours = each.hands / 60 + each.air_hours
    wanted = f"{limits.what} it must be {limits.humidity[0]:.0f} to {limits.humidity[1]:.0f} %"
    if limits.holds(air.temperature, air.humidity):
        return f"the air leaves its band before {hours:.0f} h are over; {wanted}"
    if not limits.temperature[0] <= air.temperature <= limits.temperature[1]:
        least, most = (fixed(in_degrees(each, shop.degrees), 0) for each in limits.temperature)
        wanted += f" and {least} to {most} °{shop.degrees}"
    told = f"the {air.name} has {air.humidity:.0f} % at {show_temperature(air.temperature, shop.degrees, 0)}; {wanted}"
    others = [
        place.name
        for place in shop.places.values()
        if place.name != air.name and not place.old and limits.holds(place.temperature, place.humidity)
    ]
    opens = [f"the {others[0]} has it"] if others else []
    if opening := air.opening.get(each.air):
        opens.append(opening)
    return "; ".join((told, *opens))


def _instrument(
    one: InstrumentState, closed: Mapping[str, Closed], shop: Conditions, waiting: Iterable[str]
) -> InstrumentNow:
    found = [_open(each, one, shop, frozenset(waiting)) for each in one.to_do if each.name not in closed]
    ordered = sorted(found, key=lambda each: -each.weight)
    done = len(one.work.operations) - len(one.to_do)
    return InstrumentNow(one.name, tuple(ordered), tuple(closed.values()), done, len(one.work.operations))


def _open(each: Operation, one: InstrumentState, shop: Conditions, waiting: frozenset[str]) -> Open:
    reasons = list(_reasons(each, one, shop, waiting))
    weight = sum(weight for weight, _ in reasons) + WAY * one.way_to_go[each.name]
    return Open(each, tuple(words for _, words in reasons), tuple(_remarks(each, one, shop)), weight)


def _reasons(
    each: Operation, one: InstrumentState, shop: Conditions, waiting: frozenset[str]
) -> Iterator[tuple[float, str]]:
    """Reasons for doing it now, each with its weight."""
    for kind in each.frees:
        yield (1000.0, f"frees the {kind}, which is waited for") if kind in waiting else (FREES, f"frees the {kind}")
    air = shop.air_for(each.air)
    turns = air.outlook.leaves(shop.bands[each.air], shop.now) if each.air and air else None
    if turns is not None and turns - shop.now <= SOON:
        yield 200.0, f"the air turns {day_of(turns, shop.now)}"
    if each.clamp >= LONG_CURE:
        yield CURES, f"cures {hours_text(each.clamp)} by itself: start it before you leave the bench"
    if one.way_to_go[each.name] == max(one.way_to_go.values()):
        yield LONGEST, "the longest way to the end begins here"
    opened = [name for name in one.work.followers(each.name) if _only(one, name, each.name)]
    if opened:
        yield OPENS * len(opened), "then: " + "; ".join(_small(one.work.operations[name].what) for name in opened[:2])


def _only(one: InstrumentState, name: str, before: str) -> bool:
    """Whether an operation waits for this other one only."""
    missing = [other for other in one.work.operations[name].after if other not in one.done]
    return name not in one.done and missing == [before]


def _remarks(each: Operation, one: InstrumentState, shop: Conditions) -> Iterator[str]:
    for part in each.wood:
        if part not in one.wood:
            yield f"no piece for the {part} is listed, so whether it has settled is not judged"
    for other in reworked_before(each, one.judged):
        yield f"first: {other.what}: {verdict_line(other, one.unit)}"
    if each.sheet in one.stale:
        yield f"its sheet is stale: {one.stale[each.sheet]}"
    air = shop.air_for(each.air)
    if each.air and air:
        yield from by_outlook(air, shop.bands[each.air], shop.now, each.hands / 60 + each.air_hours)
    if each.air and air and not air.outlook.said:
        stays = air.by_record(shop.bands[each.air], each.hands / 60 + each.air_hours)
        how = (
            f", and by its record it stays so on {10 * stays.stayed / stays.days:.0f} of 10 such days"
            if stays and stays.days
            else ""
        )
        yield f"keep the air as it is for {hours_text(each.air_hours)}: nobody gave an outlook{how}"


def day_of(moment: datetime, now: datetime) -> str:
    """A moment in words: `today 17:00`, `tomorrow 08:00`, `Thursday 08:00`, `Thursday 10 December`."""
    days = (moment.date() - now.date()).days
    if days <= 1:
        return f"{('today', 'tomorrow')[max(0, days)]} {moment:%H:%M}"
    return f"{moment:%A %H:%M}" if days < 7 else f"{moment:%A} {moment.day} {moment:%B}"


def hours_ago(now: datetime, then: datetime) -> str:
    """How long ago: `3 hours ago`, `4 days ago`."""
    hours = (now - then).total_seconds() / 3600
    return f"{hours / 24:.0f} days ago" if hours >= 48 else f"{hours:.0f} hours ago"


def hours_text(hours: float) -> str:
    """Hours in words: `12 h`, `2 days`, `3 weeks`."""
    if hours < 48:
        return f"{hours:g} h"
    days = hours / 24
    return f"{days:g} days" if days < 14 or days % 7 else f"{days / 7:g} weeks"


def _small(what: str) -> str:
    """An operation's words as they read inside a sentence."""
    return what[:1].lower() + what[1:]
