"""Plans: rules that none may break, small ones worked out by hand."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import datetime, time, timedelta
from importlib.resources import files
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gramil.air.air_bands import Limits
from gramil.air.outlooks import Spell
from gramil.faults import MakersFault
from gramil.now.air_now import PlaceNow
from gramil.now.blocks import blocks
from gramil.now.hours import Hours, hours_in, read_hours, sessions
from gramil.now.open_now import Conditions, InstrumentState, WoodNow, open_now
from gramil.now.outlook import Outlook
from gramil.now.plan import RULES, Plan, broken, greedy_by, greedy_plan, waiting
from gramil.now.states import bench_of_files
from gramil.now.tasks import Weeks, weeks_of
from gramil.shop.operations import Operation, Work

START = datetime(2026, 1, 19, 8)  # a Monday
GLUING = Limits("for gluing", (40.0, 50.0), (12.0, 30.0))
MORNINGS = Hours(((time(8), time(12)),), frozenset(range(5)))


def operation(name: str, *after: str, **more: object) -> Operation:
    values: dict[str, object] = {"hands": 60, "part": name, **more}
    return Operation(name=name, what=name.capitalize(), after=after, **values)  # type: ignore[arg-type]


def state(name: str, *operations: Operation, **more: object) -> InstrumentState:
    values: dict[str, object] = {"done": {}, **more}
    return InstrumentState(name, Work({each.name: each for each in operations}, {}), **values)  # type: ignore[arg-type]


def conditions(*spells: tuple[float, float], **jigs: int) -> Conditions:
    """Conditions with spells as hours from the start and humidity."""
    said = Outlook(tuple(Spell(START + timedelta(hours=hours), 20.0, percent) for hours, percent in spells))
    place = PlaceNow("shop", START, 20.0, 30.0, (20.0, 40.0), said)
    return Conditions(START, {"gluing": GLUING}, {"shop": place} if spells else {}, "shop", jigs)


def by_name(weeks: Weeks, plan: Plan) -> dict[str, list[int]]:
    """The starts of each operation's pieces."""
    found: dict[str, list[int]] = {}
    for place, start in sorted(plan.starts.items()):
        task = weeks.tasks[place]
        found.setdefault(f"{task.instrument} {task.operation.name}", []).append(start)
    return found


def test_one_chain_runs_through_the_sessions_and_cures() -> None:
    one = state("A", operation("glue", clamp=2.0), operation("plane", "glue"), operation("saw", "plane", hands=90))
    weeks = weeks_of([one], conditions(), MORNINGS, 7)
    starts = by_name(weeks, greedy_plan(weeks))
    # glue 8 to 9, cured at 11; plane 11 to 12; 90 minutes of sawing do not fit today any more: Tuesday at 8
    assert starts == {"A glue": [0], "A plane": [180], "A saw": [1440]}


def test_hands_do_something_else_while_glue_cures() -> None:
    one = state("A", operation("glue", clamp=2.0), operation("plane", "glue"))
    other = state("B", operation("saw"), operation("sand", "saw"))
    weeks = weeks_of([one, other], conditions(), MORNINGS, 7)
    starts = by_name(weeks, greedy_plan(weeks))
    assert starts == {"A glue": [0], "B saw": [60], "B sand": [120], "A plane": [180]}


def test_glue_waits_for_the_air_and_needs_it_long_enough() -> None:
    one = state("A", operation("glue", air="gluing", air_hours=12.0, one_go=True))
    weeks = weeks_of([one], conditions((0, 26), (24, 45), (36, 30), (48, 45)), MORNINGS, 7)
    # Tuesday 8:00 to 20:00 is an hour short of 13; from Wednesday 8:00 on it is kept
    assert by_name(weeks, greedy_plan(weeks)) == {"A glue": [2880]}


def test_air_that_never_comes_leaves_glue_undone() -> None:
    one = state("A", operation("glue", air="gluing"), operation("saw"))
    weeks = weeks_of([one], conditions((0, 26)), MORNINGS, 7)
    assert list(by_name(weeks, greedy_plan(weeks))) == ["A saw"]


def test_unsettled_wood_is_waited_for() -> None:
    piece = WoodNow("top 1", False, START + timedelta(hours=25), "")
    one = state("A", operation("glue", wood=("top",)), wood={"top": (piece,)})
    weeks = weeks_of([one], conditions(), MORNINGS, 7)
    assert by_name(weeks, greedy_plan(weeks)) == {"A glue": [25 * 60]}


def mould(name: str) -> InstrumentState:
    fit, close = operation("fit", takes=("mould",)), operation("close", "fit", frees=("mould",), clamp=24.0)
    return state(name, fit, close)


def test_one_mould_serves_one_after_another_and_two_serve_both() -> None:
    both = [mould("A"), mould("B")]
    for count, expected in ((1, 1440 + 120), (2, 120)):
        weeks = weeks_of(both, conditions(mould=count), MORNINGS, 7)
        plan = greedy_plan(weeks)
        starts = by_name(weeks, plan)
        later = max(starts["A fit"][0], starts["B fit"][0])
        assert not broken(plan, weeks)
        assert later <= expected, "the second is fitted when the first is closed and cured, or at once with two moulds"
        assert (later >= 1440) == (count == 1)


def test_a_mould_that_is_held_now_is_waited_for() -> None:
    holder = replace(mould("A"), done={"fit": START - timedelta(days=2)})
    weeks = weeks_of([holder, mould("B")], conditions(), MORNINGS, 7)
    starts = by_name(weeks, greedy_plan(weeks))
    assert starts["A close"] == [0]
    assert starts["B fit"] == [1500]  # 9:00 and 24 h, in Tuesday's session


def test_what_is_clamped_is_not_worked_on() -> None:
    one = state("A", operation("veneer", part="neck", clamp=2.0), operation("rout", part="neck"))
    weeks = weeks_of([one], conditions(), MORNINGS, 7)
    starts = by_name(weeks, greedy_plan(weeks))
    assert starts["A rout"][0] >= starts["A veneer"][0] + 180 or starts["A veneer"][0] == 60


def test_long_work_goes_in_pieces_and_a_glue_up_does_not() -> None:
    one = state("A", operation("carve", hands=150), operation("glue", hands=150, one_go=True))
    weeks = weeks_of([one], conditions(), MORNINGS, 7)
    assert [(task.operation.name, task.minutes) for task in weeks.tasks] == [
        ("carve", 50), ("carve", 50), ("carve", 50), ("glue", 150),
    ]  # fmt: skip


def test_pieces_that_touch_are_one_block() -> None:
    weeks = weeks_of([state("A", operation("carve", hands=300))], conditions(), MORNINGS, 7)
    found = blocks(greedy_plan(weeks), weeks)
    assert [(each.begins.hour, each.ends.hour, each.part) for each in found] == [(8, 12, (1, 2)), (8, 9, (2, 2))]


def test_the_measure_of_a_plan_by_hand() -> None:
    one = state("A", operation("a"), operation("b", hands=30))
    weeks = weeks_of([one], conditions(), MORNINGS, 7)
    # weights 1 h and 0.5 h; finished after 60 and 90 minutes: (1 * 60 + 0.5 * 90) / 1.5 minutes
    assert waiting(Plan({0: 0, 1: 60}), weeks) == pytest.approx(70 / 1440)
    assert waiting(Plan({0: 0}), weeks) == pytest.approx((60 + 0.5 * 7 * 1440) / 1.5 / 1440)


def test_what_a_bad_plan_breaks_is_told() -> None:
    weeks = weeks_of([state("A", operation("a"), operation("b", "a"))], conditions(), MORNINGS, 7)
    assert "twice at once" in broken(Plan({0: 0, 1: 30}), weeks)[0]
    assert any("before what it needs" in each for each in broken(Plan({1: 0}), weeks))
    assert any("outside the hours" in each for each in broken(Plan({0: 300}), weeks))


benches = st.lists(
    st.lists(
        st.tuples(
            st.integers(15, 200),  # hands
            st.sampled_from([0.0, 1.0, 12.0, 24.0]),  # clamp
            st.sampled_from(["", "gluing"]),
            st.sampled_from([(), ("dish",), ("press",)]),
            st.booleans(),  # after the one before, or free
            st.sampled_from(["top", "rim"]),
        ),
        min_size=1,
        max_size=8,
    ),
    min_size=1,
    max_size=4,
)


def drawn(bench: list[list[tuple[int, float, str, tuple[str, ...], bool, str]]]) -> Weeks:
    states = []
    for number, rows in enumerate(bench):
        operations = [
            operation(
                f"o{place}", *([f"o{place - 1}"] if chained and place else []),
                hands=hands, clamp=clamp, air=air, air_hours=clamp, uses=uses, part=part, one_go=bool(air),
                takes=("mould",) if place == 0 else (), frees=("mould",) if place == len(rows) - 1 else (),
            )
            for place, (hands, clamp, air, uses, chained, part) in enumerate(rows)
        ]  # fmt: skip
        chained = [replace(each, after=tuple({*each.after, "o0"} - {each.name})) for each in operations]
        states.append(state(f"I{number}", *chained))
    return weeks_of(states, conditions((0, 30), (30, 45), (90, 60), (120, 42)), read_hours(), 14)


@given(benches)
@settings(max_examples=60)
def test_no_greedy_plan_breaks_a_rule(bench: list[list[tuple[int, float, str, tuple[str, ...], bool, str]]]) -> None:
    weeks = drawn(bench)
    for rule in RULES.values():
        assert broken(greedy_by(rule, weeks), weeks) == []


def test_sessions_begin_where_the_day_has_come_to() -> None:
    spans = sessions(MORNINGS, START + timedelta(hours=1, minutes=30), 1)
    assert spans == ((0, 150), (1350, 1440))
    assert hours_in(spans) == pytest.approx(4.0)


def test_weekends_are_free() -> None:
    assert len(sessions(MORNINGS, START, 14)) == 10


@pytest.mark.parametrize("text", ["8-12", "12:00-8:00", "08:00-12:00 11:00-13:00", "", "morning"])
def test_hours_that_cannot_be_are_refused(text: str) -> None:
    with pytest.raises(MakersFault):
        read_hours(text)


def test_days_as_written() -> None:
    assert read_hours(days="tue thu-sat").days == {1, 3, 4, 5}
    with pytest.raises(MakersFault, match="no day"):
        read_hours(days="someday")


SAID: dict[str, Callable[[datetime], Mapping[str, Sequence[Spell]]]] = {
    "by an outlook": lambda day: {"shop": (Spell(day, 20.0, 30.0), Spell(day + timedelta(hours=40), 20.0, 44.0))},
    "by the record": lambda _: {},
}


@pytest.mark.parametrize("outlook", SAID.values(), ids=SAID)
def test_what_is_open_now_is_what_a_plan_can_start_with(
    outlook: Callable[[datetime], Mapping[str, Sequence[Spell]]],
) -> None:
    """The page of now and the plan judge by the same rules: over a winter's days, on the bundled bench."""
    examples = Path(str(files("gramil") / "data" / "examples"))
    names = [examples / f"{name}.toml" for name in ("tarn", "fell", "scree")]
    for day in (datetime(2025, 12, 20, 9), datetime(2026, 1, 10, 9), datetime(2026, 1, 19, 9)):
        bench = bench_of_files(names, examples / "shop.toml", day, outlook(day))
        found = {
            (one.name, each.operation.name) for one in open_now(bench.instruments, bench.shop) for each in one.open
        }
        weeks = weeks_of(bench.instruments, bench.shop, Hours(((time(0), time(23)),), frozenset(range(7))), 14)
        firsts = [place for place, task in enumerate(weeks.tasks) if not task.before and task.piece[0] == 1]
        alone = {
            (task.instrument, task.operation.name)
            for place in firsts
            for task in [weeks.tasks[place]]
            if greedy_by(lambda other, _, wanted=task: other is wanted, weeks).starts.get(place) == 0  # type: ignore[misc]
        }
        assert found == alone


def test_a_plan_as_it_is_listed_takes_what_now_lists_first() -> None:
    """What is open is done from the top of the list, moment by moment, day and night; the plan has the same order."""
    around = Hours(((time(0), time(23, 59)),), frozenset(range(7)))
    one = state(
        "A",
        operation("saw", hands=30),
        operation("plane", "saw", hands=30),
        operation("clear", "plane", hands=30, part="mould", frees=("mould",)),
        operation("glue", hands=20, clamp=12.0),
        operation("trim", "glue", hands=20),
        operation("fit", "trim", "plane", hands=20),
        operation("write", hands=30),
    )
    two = replace(one, name="B")
    weeks = weeks_of([one, two], Conditions(START, {}), around, 5)
    plan = greedy_by(RULES["as it is listed"], weeks)
    planned = [
        (weeks.tasks[place].instrument, weeks.tasks[place].operation.name)
        for place in sorted(plan.starts, key=plan.starts.__getitem__)
    ]
    states, now, done = {"A": one, "B": two}, START, []
    while any(each.to_do for each in states.values()):
        found = open_now(tuple(states.values()), Conditions(now, {}))
        ready = [(each, state_.name) for state_ in found for each in state_.open]
        if not ready:
            now += timedelta(minutes=10)
            continue
        best, name = max(ready, key=lambda each: each[0].weight)
        now += timedelta(minutes=best.operation.hands)
        done.append((name, best.operation.name))
        states[name] = replace(states[name], done={**states[name].done, best.operation.name: now})
    assert planned == done
