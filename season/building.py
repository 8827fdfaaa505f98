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
from gramil.acts.air import bring_in_air, keep_outlook, read_meter
from gramil.acts.descriptions import keep
from gramil.acts.plans import keep_week
from gramil.acts.record import put_back
from gramil.acts.tools import check_jig
from gramil.acts.work import begin_anew, note_done
from gramil.air.outlooks import Spell
from gramil.change.as_made import refuse_impossible
from gramil.change.in_store import figures_in_store, work_in_store
from gramil.change.made import Judged
from gramil.change.made_in_store import standing_in_store
from gramil.change.made_words import lost_pieces
from gramil.change.questioned import Reading, questions
from gramil.change.sheet_figures import figures_for_operation
from gramil.description.shop.tolerances import tolerance_of
from gramil.description.writing import set_key
from gramil.doorway.backup import backup
from gramil.faults import MakersFault
from gramil.graph import Figures, Pin
from gramil.now.finishing import Finish, Pace, finishing, pace_of
from gramil.now.hours import hours_in, read_hours
from gramil.now.open_now import Conditions, InstrumentState, open_now
from gramil.now.plan import broken, greedy_plan
from gramil.now.promised import promised
from gramil.now.states import Bench, WorkedOut, bench_of_store
from gramil.now.tasks import in_one_go, weeks_of
from gramil.shop.instruments import Instrument, instrument, revision
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
RIGHT, RUN_UP = (42.0, 48.0), 4
"""Outside of which humidity a shop with machines lets them run, and how many hours they take."""
IDLE = timedelta(minutes=30)
"""Where nothing is open, it is looked again after so long."""


@dataclass(frozen=True)
class Begun:
    """Work begun on an instrument: how many minutes it takes in all, and how many of them are left."""

    name: str
    operation: Operation
    taken: float
    left: float


@dataclass
class Counted:
    """What came of a season that begins at a moment."""

    begins: datetime
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
    nights_run: int = 0
    worked: list[tuple[datetime, float]] = field(default_factory=list)


@dataclass
class Season:
    """A season under way: the record, the true air, luck, and what is counted."""

    path: Path
    store: Store
    begins: datetime
    seed: int
    names: tuple[str, ...] = NAMES
    outlook: bool = False
    machines: bool = False
    counted: Counted = field(init=False)

    def __post_init__(self) -> None:
        self.counted = Counted(self.begins.replace(hour=0, minute=0))
        self.chance = random.Random(self.seed)
        self.plan: set[tuple[str, str]] = set()
        self.begun: Begun | None = None
        self.judged: dict[int, tuple[Judged, ...]] = {}
        self.figured: dict[int, Figures] = {}
        self.air = invented_air(self.begins - timedelta(days=400), 400 + 7 * 60, self.seed)
        fill(self.store, self.names, self.begins, machines=self.machines)
        self._bring_air(self.begins - timedelta(days=400), self.begins)

    def run(self, weeks: int) -> Counted:
        """So many weeks, or until every guitar is finished."""
        for week in range(weeks):
            monday = self.begins + timedelta(days=7 * week)
            self._monday(monday, week)
            for day in range(5):
                if self.chance.random() >= LOST_DAYS:
                    self._day(monday + timedelta(days=day))
                self._evening(monday + timedelta(days=day, hours=9))
            self._evening(monday + timedelta(days=6, hours=9))
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

    def _evening(self, now: datetime) -> None:
        """In a shop with machines they run for a day, to the middle of the band, if the air is near its edges."""
        if self.machines and not RIGHT[0] <= self._humidity(now.replace(tzinfo=None)) <= RIGHT[1]:
            first = round(self.air.seconds(now) / 3600.0) + RUN_UP
            self.air.humidity[first : first + 24] = sum(RIGHT) / 2.0 + self.chance.gauss(0.0, METER)
            self.counted.nights_run += 1

    def _bench(self, now: datetime) -> Bench:
        by = WorkedOut(lambda *_: {}, self._judged, self._figured)
        return bench_of_store(self.store, now, by, record_days=400.0)

    def _judged(self, store: Store, owner: Instrument) -> tuple[Judged, ...]:
        """How it stands, worked out once until something is measured on it, begun anew, or changed."""
        if owner.id not in self.judged:
            self.judged[owner.id] = standing_in_store(store, owner)
        return self.judged[owner.id]

    def _figured(self, store: Store, owner: Instrument) -> Figures:
        """Its figures, worked out once as well."""
        if owner.id not in self.figured:
            self.figured[owner.id] = figures_in_store(store, owner)
        return self.figured[owner.id]

    def _forget(self, *owners: Instrument) -> None:
        """What was worked out of instruments, or of all, holds no more."""
        for known in (self.judged, self.figured):
            for number in [each.id for each in owners] or list(known):
                known.pop(number, None)

    def _keep_outlook(self, morning: datetime) -> None:
        """An outlook of the next four days is kept, a little wrong."""
        days = (morning.replace(tzinfo=None) + timedelta(days=day) for day in range(1, 5))
        spells = [Spell(day, 20.0, round(self._humidity(day) + self.chance.gauss(0.0, 1.5), 1)) for day in days]
        keep_outlook(self.store, "shop", spells, Hand(morning))

    def _humidity(self, clock: datetime) -> float:
        """The true humidity at a moment by the clock."""
        at = clock.replace(tzinfo=self.begins.tzinfo)
        return float(self.air.humidity[round(self.air.seconds(at) / 3600.0)])

    def _monday(self, now: datetime, week: int) -> None:
        if week:
            self._bring_air(now - timedelta(days=7), now)
        self._forget()
        self._anew(self._bench(now), now)
        if self.outlook:
            self._keep_outlook(now)
        self.counted.bought += buy(self.store, now)
        self.counted.promised_twice += len(promised_twice(self.store))
        bench = self._bench(now)
        weeks = weeks_of(bench.instruments, bench.shop, HOURS, 14)
        plan = greedy_plan(weeks)
        self.counted.broken += broken(plan, weeks)
        ends = now.replace(tzinfo=None) + timedelta(days=7)
        promise = promised(bench.instruments, bench.shop, HOURS, ends, pace=self._pace(bench))
        self.plan = set(promise.work)
        keep_week(self.store, sorted(self.plan), Hand(now))
        used = promise.hours
        left = sum(each.hands for one in bench.instruments for each in one.to_do) / 60.0
        self.counted.fortnights.append((used, left / hours_in(weeks.sessions)))
        if week == 1:
            self.counted.ranges = finishing(bench.instruments, bench.shop, HOURS, self._pace(bench))

    def _pace(self, bench: Bench) -> Pace:
        """Hours, lost days and spoiled parts by the shop's own record, as `gramil weeks` takes them."""
        return pace_of(bench.ratios, bench.noted, HOURS)

    def _anew(self, bench: Bench, now: datetime) -> None:
        """Every lost piece is begun anew."""
        for one in bench.instruments:
            for piece in lost_pieces(one.judged):
                self.counted.spoiled += 1
                before = len(operations_done(self.store, instrument(self.store, one.name).id))
                taken = begin_anew(self.store, instrument(self.store, one.name), piece.name, Hand(now))
                self._forget(instrument(self.store, one.name))
                after = len(operations_done(self.store, instrument(self.store, one.name).id))
                self.counted.begun_anew += bool(taken) and before - after == len(taken)

    def _day(self, morning: datetime) -> None:
        """The day's hours: of what is open what was planned first, then the best, each in the time that it takes."""
        self._read_meter(morning)
        if self.outlook:
            self._keep_outlook(morning)
        bench = self._bench(morning)
        if any(lost_pieces(one.judged) for one in bench.instruments):
            self._anew(bench, morning)
            buy(self.store, morning)
            bench = self._bench(morning)
        states, now = {one.name: one for one in bench.instruments}, morning
        self.begun = self.begun if self.begun and _still(self.begun, states) else None
        for begins, ends in HOURS.sessions:
            now, over = (max(now, morning.replace(hour=begins.hour, minute=begins.minute)),
                         morning.replace(hour=ends.hour, minute=ends.minute))  # fmt: skip
            while now < over:
                begun = self.begun or self._chosen(
                    states, replace(bench.shop, now=now.replace(tzinfo=None)), over - now
                )
                now = now + IDLE if begun is None else self._work(states, begun, now, over)

    def _chosen(self, states: Mapping[str, InstrumentState], shop: Conditions, room: timedelta) -> Begun | None:
        """The work to begin now: in what is left of the session, unless it may be left and taken up again."""
        ready = [
            ((one.name, each.operation.name) in self.plan, each.weight, one.name, each.operation)
            for one in open_now(tuple(states.values()), shop)
            for each in one.open
            if not in_one_go(each.operation) or timedelta(minutes=each.operation.hands) <= room
        ]
        if not ready:
            return None
        _, _, name, best = max(ready, key=lambda each: each[:2])
        taken = max(5.0, best.hands * exp(self.chance.gauss(0.0, SPREAD)))
        return Begun(name, best, taken, taken)

    def _work(self, states: dict[str, InstrumentState], begun: Begun, now: datetime, over: datetime) -> datetime:
        """Work until it is done or, where it may be left, until the session is over; gives when that is."""
        left, self.begun = timedelta(minutes=begun.left), None
        if not in_one_go(begun.operation) and now + left > over:
            self.begun = replace(begun, left=(now + left - over) / timedelta(minutes=1))
            return over
        one = states[begun.name]
        self._do(one, begun.operation, now + left, begun.taken)
        done = {**one.done, begun.operation.name: (now + left).replace(tzinfo=None)}
        states[begun.name] = replace(one, done=done)
        return now + left

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
        if measured:
            self._forget(owner)
        self.counted.done += 1
        self.counted.worked.append((now, minutes / 60.0))
        if len(one.to_do) == 1:
            self.counted.finished[one.name] = now + timedelta(hours=operation.clamp)

    def _measured(self, name: str, operation: Operation, now: datetime) -> tuple[Measurement, ...]:
        owner = instrument(self.store, name)
        figures = self._figured(self.store, owner)
        wanted = figures_for_operation(operation.name, figures, work_in_store(self.store, owner))
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
        self._forget()
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


def held(counted: Counted) -> tuple[int, int]:
    """Of the finished guitars whose range was given, how many finished within it, and of how many."""
    within = 0
    known = [each for each in counted.ranges if each.instrument in counted.finished]
    for each in known:
        first, last = each.most
        end = counted.finished[each.instrument].replace(tzinfo=None)
        within += (first is None or first <= end) and (last is None or end <= last)
    return within, len(known)


def _still(begun: Begun, states: Mapping[str, InstrumentState]) -> bool:
    """Whether work begun on another day is still to be done: nothing before it was taken back meanwhile."""
    one = states[begun.name]
    own = one.work.operations.get(begun.operation.name)
    return own is not None and own.name not in one.done and all(name in one.done for name in own.after)


def moved(counted: Counted) -> float:
    """How far the hours planned for a fortnight differ from one Monday to the next at most, as a share of the greater,
    while that much work is left.
    """
    return _moved([used for used, _ in counted.fortnights], counted)


def moved_of_itself(counted: Counted) -> float:
    """The same of the hours that were worked in each of these fortnights: what a plan would have moved by that knew
    the air, the days lost and every mishap beforehand.
    """
    begins = counted.begins
    hours = [
        sum(spent for at, spent in counted.worked if 7 * week <= (at - begins).days < 7 * week + 14)
        for week in range(len(counted.fortnights))
    ]
    return _moved(hours, counted)


def _moved(hours: Sequence[float], counted: Counted) -> float:
    left = [of for _, of in counted.fortnights]
    return max(
        (
            abs(one - two) / max(one, two)
            for one, two, *both in zip(hours, hours[1:], left, left[1:], strict=False)
            if max(one, two) and min(both) >= 1
        ),
        default=0.0,
    )


def _play(address: str, wanted: Figures) -> float:
    """How far a figure may be off: by practice, or 0.05 where practice has no tolerance."""
    limit = f"limit_{tolerance_of(address).within}"
    return float(wanted[limit]) if limit in wanted else 0.05
