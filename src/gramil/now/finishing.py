"""When each guitar is finished, as a range: its weeks are drawn many times, with hours, lost days and air as they may
be.

The hours of an operation vary as the shop's own notes do, if there are enough of them, else as is common; so do days
lost and parts begun anew.
"""

import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from math import exp, log
from statistics import median, pstdev

from gramil.now.air_spans import Luck
from gramil.now.habits import LOST, NOTHING, REWORK, WORKDAYS, Noted, days_lost, share_begun_anew, share_lost
from gramil.now.hours import Hours
from gramil.now.open_now import Conditions, InstrumentState
from gramil.now.plan import Plan, as_listed, greedy_by
from gramil.now.tasks import NEVER, Weeks, weeks_of

DRAWS = 60
WEEKS = 60
"""How many weeks ahead are looked at."""
SPREAD = 0.35
"""How far an operation's hours spread about the usual, as a share: common practice, from memory."""
SHARED = 0.15
"""How far all hours of a season are longer or shorter together, as a share: common practice, from memory."""
DAYS_A_WEEK, HOURS_A_DAY = 5.0, 8.0
"""How much of a part is made again in a week, where one is begun anew."""
NOTED = 12
"""From how many operations noted with their hours the shop's own spread counts."""
DRY = 0.5
"""Hands run dry in the first week in which less than this share of the hours is filled."""


@dataclass(frozen=True)
class Pace:
    """How the shop's hours compare with the usual ones: their ratio, its spread, and how many operations with hours
    noted it rests on.

    `lost` is the share of working days that are lost, of `days` on record; `rework` that of operations after which a
    part is begun anew, of `done`.
    """

    times: float = 1.0
    spread: float = SPREAD
    noted: int = 0
    lost: float = LOST
    rework: float = REWORK
    days: int = 0
    done: int = 0


def pace_of(ratios: Sequence[float], record: Noted = NOTHING, hours: Hours | None = None) -> Pace:
    """The pace from hours noted over usual hours, one for each operation noted; the common one if they are too few.

    `record` says which days were lost of those that are worked by `hours`, and how often parts were begun anew.
    """
    known = [log(each) for each in ratios if each > 0]
    days, lost = days_lost(record.days, hours.days if hours else WORKDAYS)
    shares = share_lost(days, lost), share_begun_anew(record.operations, record.begun), days, record.operations
    if len(known) < NOTED:
        return Pace(1.0, SPREAD, len(known), *shares)
    return Pace(exp(median(known)), pstdev(known), len(known), *shares)


def pace_told(pace: Pace) -> str:
    """In words: whose hours are reckoned with, how many days are taken to be lost, how often parts to be begun anew."""
    own = f"the shop's own, of {pace.noted} operations noted" if pace.noted >= NOTED else "common ones"
    lost = f"lost days are taken to be {100 * pace.lost:.0f} in 100{_of(pace.days, 'working days')}"
    anew = f"parts begun anew {100 * pace.rework:.1f} in 100 operations{_of(pace.done, 'done')}"
    return f"Hours and their spread are {own}; {lost}, {anew}."


def _of(count: int, what: str) -> str:
    """How much of the shop's own record a share goes by, beside what is common."""
    return f" (common ones, and {count} {what} on record)" if count else ""


@dataclass(frozen=True)
class Finish:
    """When an instrument is finished: between which two days in half of the draws, and in 9 of 10 (None: beyond all
    weeks).

    `longest` names what takes most time on its longest way; `waits` is why it cannot be promised, if it cannot.
    """

    instrument: str
    half: tuple[datetime | None, datetime | None]
    most: tuple[datetime | None, datetime | None]
    longest: tuple[str, ...]
    waits: str = ""


def finishing(
    instruments: Sequence[InstrumentState],
    shop: Conditions,
    hours: Hours,
    pace: Pace | None = None,
    draws: int = DRAWS,
    seed: int = 1,
) -> tuple[Finish, ...]:
    """The range of each instrument's finishing day, if what `now` lists first is done first. The same record and seed
    give the same ranges.
    """
    chance = random.Random(seed)
    found: dict[str, list[int]] = {one.name: [] for one in instruments}
    for _ in range(draws):
        luck = Luck(tuple(chance.random() for _ in range(7 * WEEKS)))
        weeks = as_it_falls(weeks_of(instruments, shop, hours, 7 * WEEKS, luck), pace or Pace(), chance)
        weeks = some_spoiled(weeks, chance, (pace or Pace()).rework)
        ends = finished(greedy_by(as_listed, weeks), weeks)
        for one in instruments:
            found[one.name].append(ends.get(one.name, 0 if not one.to_do else NEVER))
    return tuple(_finish(one, sorted(found[one.name]), shop.now) for one in instruments)


def as_it_falls(weeks: Weeks, pace: Pace, chance: random.Random) -> Weeks:
    """The weeks with hours and lost days as they may turn out. No piece of work is longer than a session."""
    longest = max((end - begin for begin, end in weeks.sessions), default=0)
    shared = pace.times * exp(chance.gauss(0.0, SHARED))
    factors: dict[tuple[str, str], float] = {}
    tasks = []
    for task in weeks.tasks:
        own = factors.setdefault((task.instrument, task.operation.name), exp(chance.gauss(0.0, pace.spread)))
        tasks.append(replace(task, minutes=max(5, min(longest, round(task.minutes * shared * own)))))
    lost = {day for day in range(7 * WEEKS + 1) if chance.random() < pace.lost}
    midnight = weeks.start.replace(hour=0, minute=0, second=0, microsecond=0)
    before = round((weeks.start - midnight).total_seconds() / 60)
    kept = tuple(each for each in weeks.sessions if (each[0] + before) // 1440 not in lost)
    return replace(weeks, tasks=tuple(tasks), sessions=kept)


def some_spoiled(weeks: Weeks, chance: random.Random, share: float = REWORK) -> Weeks:
    """The weeks with a few operations, by their share, that spoil their part: it is begun anew, and what hangs on it
    waits until it is there again.
    """
    spent: dict[tuple[str, str], int] = {}
    tasks = []
    for task in weeks.tasks:
        part = task.instrument, task.operation.part
        hands = task.minutes / (60.0 * HOURS_A_DAY) * 7.0 / DAYS_A_WEEK * 1440.0
        spent[part] = spent.get(part, 0) + round(hands) + task.cure
        whole = task.piece[0] == task.piece[1]
        anew = spent[part] if whole and chance.random() < share else 0
        tasks.append(replace(task, cure=task.cure + anew))
    return replace(weeks, tasks=tuple(tasks))


def finished(plan: Plan, weeks: Weeks) -> Mapping[str, int]:
    """The minute at which each instrument is done and cured; instruments that the plan does not finish are left out."""
    ends: dict[str, int] = {}
    for place, task in enumerate(weeks.tasks):
        over = plan.starts[place] + task.minutes + task.cure if place in plan.starts else NEVER
        ends[task.instrument] = max(ends.get(task.instrument, 0), over)
    return {name: end for name, end in ends.items() if end < NEVER}


def _finish(one: InstrumentState, ends: Sequence[int], now: datetime) -> Finish:
    def day(share: float) -> datetime | None:
        end = ends[min(len(ends) - 1, int(share * len(ends)))]
        return None if end >= NEVER else now + timedelta(minutes=end)

    waits = next(iter((*one.lost.values(), *one.lacking.values())), "")
    return Finish(one.name, (day(0.25), day(0.75)), (day(0.05), day(0.95)), tuple(_longest(one)), waits)


def _longest(one: InstrumentState, most: int = 3) -> list[str]:
    """The operations that take most time on the longest way, the longest first."""
    way, names = one.way_to_go, [each.name for each in one.to_do]
    here = max(names, key=lambda name: way[name], default="")
    on_way = []
    while here:
        on_way.append(one.work.operations[here])
        after = [name for name in one.work.followers(here) if name in way]
        here = max(after, key=lambda name: way[name], default="")
    return [each.what for each in sorted(on_way, key=lambda each: -each.minutes)[:most]]


def runs_dry(plan: Plan, weeks: Weeks) -> int | None:
    """The week, counted from 1, from which on less than half of the hours are filled; None if all weeks are."""
    count = -(-weeks.end // 10080)
    used, room = [0.0] * count, [0.0] * count
    for begin, end in weeks.sessions:
        room[min(count - 1, begin // 10080)] += end - begin
    for place, start in plan.starts.items():
        used[min(count - 1, start // 10080)] += weeks.tasks[place].minutes
    full = [week for week in range(count) if used[week] >= DRY * room[week] and room[week]]
    last = full[-1] + 1 if full else 0
    return None if last >= count else last + 1
