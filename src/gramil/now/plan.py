"""A plan over weeks: which task when, for one pair of hands. Plans are made greedily under several rules; the best is
kept.

A plan's measure is how long work waits: the mean number of days until a task is finished, weighted by its hours of
work and cure; a task that the plan does not reach counts as finished at its end.
"""

from bisect import bisect_left
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from gramil.now.hours import hours_in
from gramil.now.order import preferred
from gramil.now.tasks import NEVER, Hold, Task, Weeks


@dataclass(frozen=True)
class Standing:
    """How a task stands in a plan being made: whether the longest way to its instrument's end begins with it, and how
    many operations wait for it alone.
    """

    longest: bool
    opens: int


Rule = Callable[[Task, Standing], float]
"""How much a task is preferred to others that can start at the same time."""


@dataclass(frozen=True)
class Plan:
    """Starts of tasks, in minutes from the plan's start, by the task's index."""

    starts: Mapping[int, int]


def as_listed(task: Task, standing: Standing) -> float:
    """The order in which `now` lists what is open."""
    return preferred(task.operation, task.way, standing.longest, standing.opens)


RULES: Mapping[str, Rule] = {
    "as it is listed": as_listed,
    "the longest way first": lambda task, _: task.way,
    "cures first": lambda task, _: task.weight / max(15, task.minutes),
    "what is nearly done first": lambda task, _: -task.way,
    "what frees a jig, then the longest way": lambda task, _: task.way + 1e6 * bool(task.frees),
}
"""The rules tried, by name."""


def greedy_plan(weeks: Weeks) -> Plan:
    """The best of the greedy plans."""
    plans = (greedy_by(rule, weeks) for rule in RULES.values())
    return min(plans, key=lambda plan: waiting(plan, weeks))


def waiting(plan: Plan, weeks: Weeks) -> float:
    """The plan's measure: the mean time until work is finished, in days."""
    total = sum(task.weight for task in weeks.tasks)
    waits = sum(task.weight * _finish(place, task, plan, weeks) for place, task in enumerate(weeks.tasks))
    return waits / total / 1440.0 if total else 0.0


def hours_filled_in_words(plan: Plan, weeks: Weeks) -> str:
    """How many of the working hours a plan fills."""
    used = sum(weeks.tasks[place].minutes for place in plan.starts) / 60.0
    return f"Hands: {used:.0f} of {hours_in(weeks.sessions):.0f} hours."


def _finish(place: int, task: Task, plan: Plan, weeks: Weeks) -> int:
    return plan.starts[place] + task.minutes if place in plan.starts else weeks.end


@dataclass
class _Bench:
    """The state of a plan being made: when each task is cured, and who holds which jig until when."""

    weeks: Weeks
    cured: dict[int, int] = field(default_factory=dict)
    held: dict[str, list[tuple[str, int]]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.ends = [end for _, end in self.weeks.sessions]

    def place(self, place: int, start: int) -> None:
        """Place a task, and take and free its jigs."""
        task = self.weeks.tasks[place]
        over = start + task.minutes + task.cure
        self.cured[place] = over
        for kind in task.uses:
            self.held.setdefault(kind, []).append((task.instrument, over))
        for kind in task.takes:
            self.held.setdefault(kind, []).append((task.instrument, NEVER))
        for kind in task.frees:
            self.held[kind] = [
                (owner, over if owner == task.instrument and until == NEVER else until)
                for owner, until in self.held.get(kind, ())
            ]

    def hold(self, hold: Hold) -> None:
        """A jig that is held at the start."""
        until = NEVER if hold.until is None else hold.until
        self.held.setdefault(hold.kind, []).append((hold.instrument, until))

    def jigs_free(self, task: Task, start: int) -> int:
        """The first minute from `start` on at which every jig that a task needs is free."""
        for kind in (*task.uses, *task.takes):
            until = sorted(over for _, over in self.held.get(kind, ()) if over > start)
            spare = max(1, self.weeks.jigs.get(kind, 1)) - len(until)
            if spare < 1:
                start = max(start, until[-spare])
        return start

    def earliest(self, place: int, start: int) -> int:
        """The first minute from `start` on at which a task can start; NEVER where it cannot."""
        task = self.weeks.tasks[place]
        start = max([start, *(self.cured[before] for before in task.before)])
        for _ in range(60):
            after = self._in_session(task, _in_spans(task.starts, self.jigs_free(task, start)))
            if after == start or after >= NEVER:
                return after
            start = after
        return NEVER

    def _in_session(self, task: Task, start: int) -> int:
        first = bisect_left(self.ends, start)
        for begin, end in self.weeks.sessions[first:]:
            if max(begin, start) + task.minutes <= end:
                return max(begin, start)
        return NEVER


def _in_spans(spans: Iterable[tuple[int, int]], start: int) -> int:
    return next((max(begin, start) for begin, last in spans if max(begin, start) <= last), NEVER)


def greedy_by(rule: Rule, weeks: Weeks) -> Plan:
    """The plan that at each moment takes, of the tasks that can start soonest, the one that a rule prefers."""
    bench = _Bench(weeks)
    for hold in weeks.holds:
        bench.hold(hold)
    starts: dict[int, int] = {}
    ready = _Ready(weeks.tasks)
    clock = 0
    earliest: dict[int, int] = {}
    while ready.now:
        for place in ready.now:
            if earliest.get(place, -1) < clock:
                earliest[place] = bench.earliest(place, clock)
        soonest = min(earliest[place] for place in ready.now)
        if soonest >= weeks.end:
            break
        best = [place for place in ready.now if earliest[place] == soonest]
        chosen = max(best, key=lambda each: (rule(weeks.tasks[each], ready.standing(each)), -each))
        bench.place(chosen, soonest)
        starts[chosen] = soonest
        clock = soonest + weeks.tasks[chosen].minutes
        ready.place(chosen)
        for place in _touched(chosen, ready.now, weeks.tasks):
            earliest.pop(place, None)
    return Plan(starts)


class _Ready:
    """The tasks that wait for nothing more in a plan being made, and how each of them stands."""

    def __init__(self, tasks: Sequence[Task]) -> None:
        self._tasks = tasks
        self._waits = _followers(tasks)
        self._left = [len(task.before) for task in tasks]
        self._placed: set[int] = set()
        self._ways: dict[str, list[int]] = {}
        for place in sorted(range(len(tasks)), key=lambda each: tasks[each].way):
            self._ways.setdefault(tasks[place].instrument, []).append(place)
        self.now = {place for place, missing in enumerate(self._left) if not missing}

    def place(self, chosen: int) -> None:
        """A task is placed: what waited for it alone is ready."""
        self.now.discard(chosen)
        self._placed.add(chosen)
        for place in self._waits[chosen]:
            self._left[place] -= 1
            if not self._left[place]:
                self.now.add(place)

    def standing(self, place: int) -> Standing:
        """How a task that is ready stands."""
        own, opens = self._tasks[place], sum(self._left[each] == 1 for each in self._waits[place])
        ways = self._ways[own.instrument]
        while ways[-1] in self._placed:
            ways.pop()
        return Standing(own.way >= self._tasks[ways[-1]].way, opens)


def _touched(chosen: int, ready: Iterable[int], tasks: Sequence[Task]) -> list[int]:
    """Tasks whose earliest start may have changed: they need a jig or a part that the chosen one took or freed."""
    changed = {*tasks[chosen].uses, *tasks[chosen].takes, *tasks[chosen].frees}
    return [place for place in ready if not changed.isdisjoint((*tasks[place].uses, *tasks[place].takes))]


def _followers(tasks: Sequence[Task]) -> list[list[int]]:
    found: list[list[int]] = [[] for _ in tasks]
    for place, task in enumerate(tasks):
        for before in task.before:
            found[before].append(place)
    return found


def broken(plan: Plan, weeks: Weeks) -> list[str]:
    """Which rules a plan breaks, in words: hands in two places, work outside hours, too early, in the wrong air, a jig
    twice.
    """
    placed = sorted(plan.starts.items(), key=lambda each: each[1])
    found = [f"{weeks.tasks[place].operation.name} twice at once" for place in _overlaps(placed, weeks)]
    for place, start in placed:
        task = weeks.tasks[place]
        name = f"{task.instrument} {task.operation.name}"
        if not any(begin <= start and start + task.minutes <= end for begin, end in weeks.sessions):
            found.append(f"{name} outside the hours")
        if not any(begin <= start <= last for begin, last in task.starts):
            found.append(f"{name} outside its time")
        found += [f"{name} before what it needs" for before in task.before if not _cured(before, start, plan, weeks)]
    return found + [f"{kind} more often than there is" for kind in _jigs_over(plan, weeks)]


def _overlaps(placed: Sequence[tuple[int, int]], weeks: Weeks) -> list[int]:
    return [later for (first, start), (later, then) in pairwise(placed) if start + weeks.tasks[first].minutes > then]


def _cured(before: int, start: int, plan: Plan, weeks: Weeks) -> bool:
    if before not in plan.starts:
        return False
    task = weeks.tasks[before]
    return plan.starts[before] + task.minutes + task.cure <= start


def _jigs_over(plan: Plan, weeks: Weeks) -> set[str]:
    """Kinds of jig of which more are in use at some moment than exist."""
    spans = jig_spans(plan, weeks)
    over = set()
    for kind, held in spans.items():
        room = max(1, weeks.jigs.get(kind, 1))
        for begin, _ in held:
            if sum(first <= begin < last for first, last in held) > room and begin >= 0:
                over.add(kind)
    return over


def jig_spans(plan: Plan, weeks: Weeks) -> dict[str, list[tuple[int, int]]]:
    """For each kind of jig, the spans in which one of it is held."""
    frees = {
        (weeks.tasks[place].instrument, kind): start + weeks.tasks[place].minutes + weeks.tasks[place].cure
        for place, start in plan.starts.items()
        for kind in weeks.tasks[place].frees
    }
    spans: dict[str, list[tuple[int, int]]] = {}
    for hold in weeks.holds:
        until = frees.get((hold.instrument, hold.kind), NEVER) if hold.until is None else hold.until
        spans.setdefault(hold.kind, []).append((-1, until))
    for place, start in plan.starts.items():
        task = weeks.tasks[place]
        for kind in task.uses:
            spans.setdefault(kind, []).append((start, start + task.minutes + task.cure))
        for kind in task.takes:
            spans.setdefault(kind, []).append((start, frees.get((task.instrument, kind), NEVER)))
    return spans
