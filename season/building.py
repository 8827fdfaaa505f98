"""Guitars built day by day: what `now` opens is done in the hours there are, measured, spoiled and begun anew.

Everything is noted by the same acts as a maker's. Counted is what must never happen, and how far plans held.
"""

import random
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from math import exp
from pathlib import Path

from gramil import names as n
from gramil.acts.air import bring_in_air, read_meter
from gramil.acts.descriptions import keep
from gramil.acts.plans import keep_week
from gramil.acts.record import put_back
from gramil.acts.tools import check_jig
from gramil.acts.work import begin_anew, note_done
from gramil.change.as_made import refuse_impossible
from gramil.change.in_store import figures_in_store, work_in_store
from gramil.change.made_words import lost_pieces
from gramil.change.questioned import Reading, questions
from gramil.change.sheet_figures import wanted_for
from gramil.description.shop.tolerances import tolerance_of
from gramil.description.writing import set_key
from gramil.doorway.backup import backup
from gramil.faults import MakersFault
from gramil.graph import Figures, Pin
from gramil.now.finishing import Finish, finishing, pace_of
from gramil.now.hours import hours_in, read_hours
from gramil.now.open_now import InstrumentState, open_now
from gramil.now.outlook import Spell
from gramil.now.plan import broken, greedy_plan
from gramil.now.promised import promised
from gramil.now.states import Bench, WorkedOut, bench_of_store
from gramil.now.tasks import weeks_of
from gramil.shop.instruments import instrument, revision
from gramil.shop.kept_plans import kept_weeks
from gramil.shop.operations import Operation
from gramil.shop.operations_done import Measurement, Noted, operations_done
from gramil.store.items import items
from gramil.store.opening import Store, open_store
from gramil.store.writing import Hand
from season.air import invented_air, part_of
from season.shop import buy, fill, promised_twice

NAMES = ("tarn", "fell", "scree", "mere")
SPREAD, LOST_DAYS, OUT, MISTYPED = 0.3, 0.08, 0.1, 1 / 40
"""How hours spread; the shares of days lost, of measurements out of tolerance, and of those mistyped."""
READ, METER = 0.85, 1.0
"""On which share of mornings the meter on the wall is read and written down, and how far it is off, in %."""
SCALE_CHANGED, JIG_CHANGED, RESTORED = 9, 5, 7
"""In which weeks a slotted board's scale is changed, a jig is measured anew, and a copy is put back."""
HOURS = read_hours()


@dataclass
class Counted:
    """What came of a season."""

    weeks: int = 0
    done: int = 0
    bought: int = 0
    finished: dict[str, datetime] = field(default_factory=dict)
    promised_twice: int = 0
    broken: list[str] = field(default_factory=list)
    spoiled: int = 0
    begun_anew: int = 0
    asked: int = 0
    not_asked: int = 0
    shares: list[float] = field(default_factory=list)
    fortnights: list[tuple[float, float]] = field(default_factory=list)
    ranges: tuple[Finish, ...] = ()


@dataclass
class Season:
    """A season under way: the record, the true air, luck, and what is counted."""

    path: Path
    store: Store
    begins: datetime
    seed: int
    names: tuple[str, ...] = NAMES
    outlook: bool = False
    counted: Counted = field(default_factory=Counted)

    def __post_init__(self) -> None:
        self.chance = random.Random(self.seed)
        self.plan: set[tuple[str, str]] = set()
        self.air = invented_air(self.begins - timedelta(days=400), 400 + 7 * 60, self.seed)
        fill(self.store, self.names, self.begins)
        self._bring_air(self.begins - timedelta(days=400), self.begins)

    def run(self, weeks: int) -> Counted:
        """So many weeks, or until every guitar is finished."""
        for week in range(weeks):
            monday = self.begins + timedelta(days=7 * week)
            self._monday(monday, week)
            for day in range(5):
                if self.chance.random() >= LOST_DAYS:
                    self._day(monday + timedelta(days=day))
            self._mishaps(monday + timedelta(days=4, hours=9), week)
            self.counted.weeks = week + 1
            if len(self.counted.finished) == len(self.names):
                break
        self.counted.shares = [each.share for each in kept_weeks(self.store) if each.planned]
        return self.counted

    def _bring_air(self, begins: datetime, ends: datetime) -> None:
        found = part_of(self.air, begins, ends)
        if found.times.size:
            bring_in_air(self.store, "shop", found, Hand(ends), file="the logger")

    def _read_meter(self, morning: datetime) -> None:
        """Most mornings: the logger is read on Mondays alone, and what waits for air is told to wait for a reading."""
        if self.chance.random() < READ:
            humidity = self._humidity(morning.replace(tzinfo=None)) + self.chance.gauss(0.0, METER)
            read_meter(self.store, "shop", 20.0, round(humidity, 1), Hand(morning + timedelta(minutes=7)))

    def _bench(self, now: datetime) -> Bench:
        said: Mapping[str, Sequence[Spell]] = {"shop": self._said(now)} if self.outlook else {}
        return bench_of_store(self.store, now, WorkedOut(lambda *_: {}), said=said, record_days=400.0)

    def _said(self, now: datetime) -> tuple[Spell, ...]:
        """An outlook of five days, a little wrong."""
        days = (now.replace(tzinfo=None) + timedelta(days=day) for day in range(5))
        return tuple(Spell(day, 20.0, self._humidity(day) + self.chance.gauss(0.0, 1.5)) for day in days)

    def _humidity(self, clock: datetime) -> float:
        """The true humidity at a moment by the clock."""
        at = clock.replace(tzinfo=self.begins.tzinfo)
        return float(self.air.humidity[round(self.air.seconds(at) / 3600.0)])

    def _monday(self, now: datetime, week: int) -> None:
        if week:
            self._bring_air(now - timedelta(days=7), now)
        self._anew(self._bench(now), now)
        self.counted.bought += buy(self.store, now)
        self.counted.promised_twice += len(promised_twice(self.store))
        bench = self._bench(now)
        weeks = weeks_of(bench.instruments, bench.shop, HOURS, 14)
        plan = greedy_plan(weeks)
        self.counted.broken += broken(plan, weeks)
        ends = now.replace(tzinfo=None) + timedelta(days=7)
        promise = promised(bench.instruments, bench.shop, HOURS, ends, pace=pace_of(bench.ratios))
        self.plan = set(promise.work)
        keep_week(self.store, sorted(self.plan), Hand(now))
        used = promise.hours
        left = sum(each.hands for one in bench.instruments for each in one.to_do) / 60.0
        self.counted.fortnights.append((used, left / hours_in(weeks.sessions)))
        if week == 1:
            self.counted.ranges = finishing(bench.instruments, bench.shop, HOURS, pace_of(bench.ratios))

    def _anew(self, bench: Bench, now: datetime) -> None:
        """Every lost piece is begun anew."""
        for one in bench.instruments:
            for piece in lost_pieces(one.judged):
                self.counted.spoiled += 1
                before = len(operations_done(self.store, instrument(self.store, one.name).id))
                taken = begin_anew(self.store, instrument(self.store, one.name), piece.name, Hand(now))
                after = len(operations_done(self.store, instrument(self.store, one.name).id))
                self.counted.begun_anew += bool(taken) and before - after == len(taken)

    def _day(self, morning: datetime) -> None:
        """Eight hours: of what is open what was planned first, then the best, each in the time that it takes."""
        self._read_meter(morning)
        bench = self._bench(morning)
        if any(lost_pieces(one.judged) for one in bench.instruments):
            self._anew(bench, morning)
            buy(self.store, morning)
            bench = self._bench(morning)
        states, now = list(bench.instruments), morning
        over = morning + timedelta(hours=8)
        while now < over:
            shop = replace(bench.shop, now=now.replace(tzinfo=None))
            ready = [(each, one.name) for one in open_now(states, shop) for each in one.open]
            if not ready:
                now += timedelta(minutes=60)
                continue
            best, name = max(ready, key=lambda each: ((each[1], each[0].operation.name) in self.plan, each[0].weight))
            taken = best.operation.hands * exp(self.chance.gauss(0.0, SPREAD))
            index = next(place for place, one in enumerate(states) if one.name == name)
            now += timedelta(minutes=max(5.0, taken))
            self._do(states[index], best.operation, now, taken)
            done = {**states[index].done, best.operation.name: now.replace(tzinfo=None)}
            states[index] = _with_done(states[index], done)

    def _do(self, one: InstrumentState, operation: Operation, now: datetime, minutes: float) -> None:
        for name in operation.after:
            ready = one.done.get(name)
            cured = ready is not None and ready + timedelta(hours=one.work.operations[name].clamp) <= now.replace(
                tzinfo=None
            )
            if not cured:
                self.counted.broken.append(f"{one.name} {operation.name} before {name}")
        owner = instrument(self.store, one.name)
        measured = self._measured(one.name, operation, now) if operation.measure else ()
        noted = Noted(hours=round(minutes / 60.0, 2), measured=measured)
        note_done(self.store, owner, operation.name, Hand(now), noted)
        self.counted.done += 1
        if len(one.to_do) == 1:
            self.counted.finished[one.name] = now + timedelta(hours=operation.clamp)

    def _measured(self, name: str, operation: Operation, now: datetime) -> tuple[Measurement, ...]:
        owner = instrument(self.store, name)
        figures = figures_in_store(self.store, owner)
        wanted = wanted_for(operation.name, figures, work_in_store(self.store, owner))
        found = []
        for address in operation.measure:
            reading = self._reading(address, wanted, figures, operation.name)
            if reading is not None:
                found.append(reading)
        return tuple(found)

    def _reading(self, address: str, wanted: Figures, figures: Figures, operation: str) -> Measurement | None:
        """What the calipers say; what is mistyped is typed again if it is asked about."""
        try:
            value, unit = float(wanted.at(address)), wanted.unit_at(address) or ""
        except (KeyError, TypeError, ValueError):
            return None
        if not -1e9 < value < 1e9:
            return None
        play = _play(address, wanted)
        out = self.chance.random() < OUT
        true = value + play * (self.chance.choice((-1, 1)) * self.chance.uniform(1.2, 2.5) if out else
                               self.chance.uniform(-0.8, 0.8))  # fmt: skip
        if self.chance.random() < MISTYPED:
            asked = questions(figures, [Reading(address, true * 10.0, "")], operation)
            self.counted.asked += bool(asked)
            self.counted.not_asked += not asked
        try:
            refuse_impossible(figures, {address: Pin(true, "")})
        except MakersFault:
            return None
        return Measurement(address, f"{true:.3f} {unit}".strip(), true, unit)

    def _mishaps(self, now: datetime, week: int) -> None:
        if week == JIG_CHANGED:
            jig = items(self.store, "jig")[0]
            check_jig(self.store, jig, 62.9, Hand(now))
        if week == SCALE_CHANGED:
            owner = instrument(self.store, self.names[0].capitalize())
            scale = float(figures_in_store(self.store, owner)[n.scale_bass])
            text = set_key(revision(self.store, owner.id).text, "scale.length", f"{scale + 4:g} mm")
            keep(self.store, owner, text, Hand(now, why="a longer scale"))
        if week == RESTORED:
            copy = self.path.with_name("copy.gramil")
            backup(self.store, copy)
            before = Counter(each.operation for each in operations_done(self.store, 1))
            self.store.connection.close()
            put_back(copy, self.path, now)
            self.store = open_store(self.path)
            assert Counter(each.operation for each in operations_done(self.store, 1)) == before


def _with_done(one: InstrumentState, done: Mapping[str, datetime]) -> InstrumentState:
    return replace(one, done=done)


def held(counted: Counted) -> tuple[int, int]:
    """Of the finished guitars whose range was given, how many finished within it, and of how many."""
    within = 0
    known = [each for each in counted.ranges if each.instrument in counted.finished]
    for each in known:
        first, last = each.most
        end = counted.finished[each.instrument].replace(tzinfo=None)
        within += (first is None or first <= end) and (last is None or end <= last)
    return within, len(known)


def moved(counted: Counted) -> list[float]:
    """How far the hours planned for a fortnight differ from one Monday to the next, as a share of the greater, while
    that much work is left.
    """
    pairs = zip(counted.fortnights, counted.fortnights[1:], strict=False)
    return [
        abs(one - two) / max(one, two) for (one, left), (two, later) in pairs if max(one, two) and min(left, later) >= 1
    ]


def _play(address: str, wanted: Figures) -> float:
    """How far a figure may be off: by practice, or 0.05 where practice has no tolerance."""
    limit = f"limit_{tolerance_of(address).within}"
    return float(wanted[limit]) if limit in wanted else 0.05
