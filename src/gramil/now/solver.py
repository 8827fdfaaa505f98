"""A better plan from a constraint solver, week by week, starting from the greedy plan and never worse than it.

Needs the optional extra `plan`. The same work and limit give the same plan: the limit is on the solver's own count of
effort, a unit of which takes some seconds; the clock stops it only on a machine so slow that a unit takes a minute.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from gramil.faults import MakersFault
from gramil.now.plan import Plan, broken, greedy_plan, waiting
from gramil.now.tasks import NEVER, Task, Weeks

WEEK = 7 * 1440
"""Minutes that are solved at once."""
SCALE = 60
"""Weights in the solver are whole sixtieths of an hour."""
MOST = 160
"""Tasks that are looked at in one week."""


@dataclass(frozen=True)
class Solved:
    """The plan kept, the greedy plan's measure and its own (days), and for each week how near it is to the optimum.

    `bounds` are shares: 0.03 says that no plan of that week's work can be better by more than 3 %.
    """

    plan: Plan
    greedy: float
    measure: float
    bounds: tuple[float, ...]


def solve(weeks: Weeks, effort: float = 2.0) -> Solved:
    """The best plan found. `effort` is shared among the weeks: a unit takes some seconds.

    Raises MakersFault if the solver is not installed.
    """
    model = _solver()
    best = greedy_plan(weeks)
    greedy = measure = waiting(best, weeks)
    count = -(-weeks.end // WEEK)
    bounds = []
    for number in range(count):
        window = number * WEEK, min((number + 1) * WEEK, weeks.end)
        fixed = {place: start for place, start in best.starts.items() if start < window[0]}
        starts, gap = _week(model, weeks, best, fixed, window, effort / count)
        bounds.append(gap)
        offered = greedy_plan(weeks, {**fixed, **starts}, window[1])
        if waiting(offered, weeks) < measure and not broken(offered, weeks):
            best, measure = offered, waiting(offered, weeks)
    return Solved(best, greedy, measure, tuple(bounds))


def _solver() -> Any:
    try:
        from ortools.sat.python import cp_model
    except ImportError:
        remedy = "install it beside gramil: pip install ortools; the greedy plan needs nothing"
        raise MakersFault.of("the solver is not installed", remedy=remedy) from None
    return cp_model


def _week(
    cp: Any, weeks: Weeks, hint: Plan, fixed: Mapping[int, int], window: tuple[int, int], effort: float
) -> tuple[dict[int, int], float]:
    """Starts of the tasks of one week, and how far from the optimum they may be."""
    places = _looked_at(weeks, hint, fixed, window)
    model = cp.CpModel()
    start, done, hands = {}, {}, []
    for place in places:
        task = weeks.tasks[place]
        spans = _allowed(task, weeks, fixed, window)
        if not spans or any(before not in done and before not in fixed for before in task.before):
            continue
        start[place] = model.new_int_var_from_domain(cp.Domain.from_intervals(spans), f"s{place}")
        done[place] = model.new_bool_var(f"d{place}")
        hands.append(model.new_optional_fixed_size_interval_var(start[place], task.minutes, done[place], f"i{place}"))
    model.add_no_overlap(hands)
    _order(model, weeks, start, done)
    _jigs(model, weeks, start, done, fixed, window)
    _aim(model, weeks, start, done, window)
    for place in start:
        inside = place in hint.starts and hint.starts[place] < window[1]
        model.add_hint(done[place], inside)
        if inside:
            model.add_hint(start[place], hint.starts[place])
    solver = cp.CpSolver()
    solver.parameters.max_deterministic_time = effort
    solver.parameters.max_time_in_seconds = 60 * effort
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    status = solver.solve(model)
    if status not in (cp.OPTIMAL, cp.FEASIBLE):
        return {place: at for place, at in hint.starts.items() if window[0] <= at < window[1]}, 1.0
    gap = (solver.objective_value - solver.best_objective_bound) / max(1.0, abs(solver.objective_value))
    return {place: solver.value(start[place]) for place in start if solver.value(done[place])}, gap


def _looked_at(weeks: Weeks, hint: Plan, fixed: Mapping[int, int], window: tuple[int, int]) -> list[int]:
    """The tasks that the greedy plan does in this week and next, each after those before it."""
    later = sorted((at, place) for place, at in hint.starts.items() if place not in fixed)
    chosen = {place for at, place in later if at < window[1]}
    chosen |= {place for _, place in later[: max(len(chosen) + 40, 40)][:MOST]}
    for place, task in enumerate(weeks.tasks):
        if place not in fixed and len(chosen) < MOST and all(each in fixed or each in chosen for each in task.before):
            chosen.add(place)
    return sorted(chosen)


def _allowed(task: Task, weeks: Weeks, fixed: Mapping[int, int], window: tuple[int, int]) -> list[list[int]]:
    """The spans of starts within the hours, the week, the air, and the cures of what is fixed."""
    earliest = window[0]
    for before in task.before:
        if before in fixed:
            other = weeks.tasks[before]
            earliest = max(earliest, fixed[before] + other.minutes + other.cure)
    found = []
    for begin, end in weeks.sessions:
        for first, last in task.starts:
            low = max(begin, first, earliest)
            high = min(end - task.minutes, last, window[1] - 1)
            if low <= high:
                found.append([low, high])
    return found


def _order(model: Any, weeks: Weeks, start: Mapping[int, Any], done: Mapping[int, Any]) -> None:
    for place in start:
        for before in weeks.tasks[place].before:
            if before in start:
                other = weeks.tasks[before]
                model.add_implication(done[place], done[before])
                gap = other.minutes + other.cure
                model.add(start[place] >= start[before] + gap).only_enforce_if(done[place])


def _jigs(
    model: Any, weeks: Weeks, start: Mapping[int, Any], done: Mapping[int, Any], fixed: Mapping[int, int],
    window: tuple[int, int],
) -> None:  # fmt: skip
    """No more jigs of a kind in use than exist: while clamped, and from the task that takes one to the task that frees
    it.
    """
    kinds = {kind for task in weeks.tasks for kind in (*task.uses, *task.takes)}
    for kind in sorted(kinds):
        spans = [_clamped(model, weeks, place, start, done) for place in start if kind in weeks.tasks[place].uses]
        spans += [_fixed(model, *span) for span in _held_before(kind, weeks, fixed, window)]
        owners = _owners(kind, weeks, fixed)
        for owner in owners:
            size, end = _held_by(model, weeks, kind, owner, start, done)
            spans.append(model.new_interval_var(0, size, end, f"h{kind}{owner}"))
        for place in start:
            if kind in weeks.tasks[place].takes:
                size, end = _held_by(model, weeks, kind, weeks.tasks[place].instrument, start, done)
                spans.append(model.new_optional_interval_var(start[place], size, end, done[place], f"h{kind}{place}"))
        if spans:
            model.add_cumulative(spans, [1] * len(spans), max(1, weeks.jigs.get(kind, 1)))


def _clamped(model: Any, weeks: Weeks, place: int, start: Mapping[int, Any], done: Mapping[int, Any]) -> Any:
    task = weeks.tasks[place]
    return model.new_optional_fixed_size_interval_var(start[place], task.minutes + task.cure, done[place], f"c{place}")


def _fixed(model: Any, begin: int, end: int) -> Any:
    return model.new_fixed_size_interval_var(begin, end - begin, f"f{begin}")


def _held_before(kind: str, weeks: Weeks, fixed: Mapping[int, int], window: tuple[int, int]) -> list[tuple[int, int]]:
    """Spans that reach into the week from earlier work that is clamped, or freed but not yet cured."""
    ends = [hold.until for hold in weeks.holds if hold.kind == kind and hold.until is not None]
    for place, at in fixed.items():
        task = weeks.tasks[place]
        if kind in task.uses or kind in task.frees:
            ends.append(at + task.minutes + task.cure)
    return [(window[0], end) for end in ends if end > window[0]]


def _owners(kind: str, weeks: Weeks, fixed: Mapping[int, int]) -> list[str]:
    """Instruments that have held one since before the week."""
    held = {hold.instrument for hold in weeks.holds if hold.kind == kind and hold.until is None}
    held |= {weeks.tasks[place].instrument for place in fixed if kind in weeks.tasks[place].takes}
    freed = {weeks.tasks[place].instrument for place in fixed if kind in weeks.tasks[place].frees}
    return sorted(held - freed)


def _held_by(
    model: Any, weeks: Weeks, kind: str, owner: str, start: Mapping[int, Any], done: Mapping[int, Any]
) -> tuple[Any, Any]:
    """How long an instrument holds a jig that it takes, and until when: the cure of the task that frees it, or without
    end.
    """
    frees = next(
        (each for each in start if weeks.tasks[each].instrument == owner and kind in weeks.tasks[each].frees), None
    )
    end = model.new_int_var(0, NEVER, f"e{kind}{owner}")
    if frees is None:
        model.add(end == NEVER)
    else:
        task = weeks.tasks[frees]
        model.add(end == start[frees] + task.minutes + task.cure).only_enforce_if(done[frees])
        model.add(end == NEVER).only_enforce_if(done[frees].negated())
    return model.new_int_var(0, NEVER, f"z{kind}{owner}"), end


def _aim(model: Any, weeks: Weeks, start: Mapping[int, Any], done: Mapping[int, Any], window: tuple[int, int]) -> None:
    """The objective: work finished early; what the week does not do counts as finished a day after it."""
    terms = []
    for place, at in start.items():
        task = weeks.tasks[place]
        finish = model.new_int_var(0, window[1] + 1440, f"w{place}")
        model.add(finish >= at + task.minutes).only_enforce_if(done[place])
        model.add(finish >= window[1] + 1440).only_enforce_if(done[place].negated())
        terms.append(round(task.weight * SCALE) * finish)
    model.minimize(sum(terms))
