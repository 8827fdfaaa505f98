"""Finishing days as ranges, and the weeks in which the hands run dry."""

import math
import random
from datetime import datetime, timedelta

import pytest

from gramil.now import finishing as module
from gramil.now.finishing import NOTED, Pace, finished, finishing, pace_of, runs_dry, some_spoiled
from gramil.now.hours import read_hours
from gramil.now.open_now import Conditions, InstrumentState
from gramil.now.plan import greedy_plan
from gramil.now.tasks import weeks_of
from gramil.shop.operations import Operation, Work

START = datetime(2026, 1, 19, 8, 30)  # a Monday
HOURS = read_hours()
SHOP = Conditions(START, {})


def operation(name: str, *after: str, **more: object) -> Operation:
    values: dict[str, object] = {"hands": 60, "part": name, **more}
    return Operation(name=name, what=name.capitalize(), after=after, **values)  # type: ignore[arg-type]


def state(name: str, *operations: Operation, **more: object) -> InstrumentState:
    values: dict[str, object] = {"done": {}, **more}
    return InstrumentState(name, Work({each.name: each for each in operations}, {}), **values)  # type: ignore[arg-type]


CHAIN = [operation("saw"), operation("glue", "saw", clamp=24.0), operation("play", "glue", clamp=336.0)]


def test_without_spread_the_range_is_the_plan(monkeypatch: pytest.MonkeyPatch) -> None:
    """An hour of sawing, an hour of gluing, a day of cure; Tuesday at 10:30 an hour of playing, and two weeks."""
    monkeypatch.setattr(module, "SHARED", 0.0)
    (found,) = finishing([state("A", *CHAIN)], SHOP, HOURS, Pace(1.0, 0.0, lost=0.0, rework=0.0), draws=5)
    day = datetime(2026, 1, 20, 11, 30) + timedelta(days=14)
    assert found.half == found.most == (day, day)
    assert found.longest == ("Play", "Glue", "Saw")


def test_hours_twice_as_long_and_no_more(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "SHARED", 0.0)
    pace = Pace(2.0, 0.0, lost=0.0, rework=0.0)
    (found,) = finishing([state("A", operation("saw"))], SHOP, HOURS, pace, draws=3)
    assert found.half == (START + timedelta(hours=2),) * 2


def test_half_lies_within_9_in_10_and_the_same_seed_gives_the_same_range() -> None:
    work = [operation("step 0", hands=200)]
    work += [operation(f"step {number}", f"step {number - 1}", hands=200) for number in range(1, 30)]
    one, two = finishing([state("A", *work)], SHOP, HOURS), finishing([state("A", *work)], SHOP, HOURS)
    assert one == two
    (most_first, most_last), (first, last) = one[0].most, one[0].half
    assert most_first is not None
    assert most_last is not None
    assert first is not None
    assert last is not None
    assert most_first <= first < last <= most_last


def test_a_part_begun_anew_takes_its_time_again() -> None:
    """Sawing and gluing of one part, an eighth of a day each; the glue holds a day. Begun anew after either, always:
    7 / 5 x 1440 / 8 = 252 min for an hour of hands, and what hangs on it waits for it.
    """
    work = [operation("saw", part="neck"), operation("glue", "saw", part="neck", clamp=24.0), operation("play", "glue")]
    weeks = weeks_of([state("A", *work)], SHOP, HOURS, 35)
    spoiled = some_spoiled(weeks, random.Random(1), 1.0)
    saw, glue, play = (each.cure for each in spoiled.tasks)
    assert saw == 252
    assert glue == 1440 + 2 * 252 + 1440
    assert play == 252
    assert some_spoiled(weeks, random.Random(1), 0.0) == weeks


def test_what_cannot_be_promised_says_why_and_what_is_done_is_done() -> None:
    lacking = state("A", *CHAIN, lacking={"glue": "no wood is on hand"})
    over = state("B", operation("saw"), done={"saw": START - timedelta(days=2)})
    found = finishing([lacking, over], SHOP, HOURS, draws=3)
    assert (found[0].waits, found[0].most) == ("no wood is on hand", (None, None))
    assert found[1].most == (START, START)


def test_the_shop_s_own_pace_counts_once_enough_is_noted() -> None:
    assert pace_of([2.0] * (NOTED - 1)).times == 1.0
    own = pace_of([1.0, 2.0, 4.0] * NOTED)
    assert own.times == pytest.approx(2.0)
    assert own.spread == pytest.approx(math.log(2.0) * math.sqrt(2.0 / 3.0))


def test_the_hands_run_dry_when_less_than_half_of_a_week_is_filled() -> None:
    """Ten sessions of four hours a week, of which the first week is filled and the second has one."""
    work = [operation("step 0", hands=240, one_go=True)]
    work += [operation(f"step {number}", f"step {number - 1}", hands=240, one_go=True) for number in range(1, 11)]
    weeks = weeks_of([state("A", *work)], SHOP, HOURS, 35)
    plan = greedy_plan(weeks)
    assert runs_dry(plan, weeks) == 2
    assert finished(plan, weeks) == {"A": 7 * 1440 + 240}
