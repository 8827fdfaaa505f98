"""What a week promises is what chances make likely: air against the exact binomial, lost days against their share."""

from datetime import datetime, timedelta
from itertools import product
from math import comb

import numpy as np

from gramil.air.air_bands import Limits
from gramil.air.outlooks import Spell
from gramil.now.air_now import PlaceNow
from gramil.now.chances import Record
from gramil.now.finishing import LOST, Pace
from gramil.now.hours import read_hours
from gramil.now.open_now import Conditions, InstrumentState
from gramil.now.outlook import Outlook
from gramil.now.promised import DRAWS, SURE, promised
from gramil.shop.operations import Operation, Work
from gramil.wood.air import AirHistory

MONDAY = datetime(2026, 11, 2, 8, 30)
BAND = Limits("for gluing", (40.0, 50.0), (12.0, 30.0))
STEADY = Pace(spread=0.0)


def place(is_open: list[bool]) -> PlaceNow:
    """A place whose days on record were open or closed so, hour by hour, to this morning, which is open."""
    humidity = [45.0 if day else 60.0 for day in is_open for _ in range(24)]
    origin = datetime(2026, 11, 2) - timedelta(days=len(is_open))
    times = np.arange(len(humidity)) * 3600.0
    history = AirHistory(origin, times, np.full(len(humidity), 20.0), np.array(humidity))
    outlook = Outlook((Spell(MONDAY, 20.0, 45.0),), said=False)
    return PlaceNow("shop", MONDAY, 20.0, 45.0, (45.0, 45.0), outlook, record=Record(history, MONDAY))


def shop(air: PlaceNow | None = None) -> Conditions:
    return Conditions(MONDAY, {"gluing": BAND}, {"shop": air} if air else {}, "shop" if air else "")


def guitar(*operations: Operation) -> InstrumentState:
    return InstrumentState("Beck", Work({each.name: each for each in operations}, {}), {})


def chances(*operations: Operation, air: PlaceNow | None = None) -> dict[str, float]:
    friday = MONDAY.replace(hour=17, minute=30) + timedelta(days=4)
    found = promised([guitar(*operations)], shop(air), read_hours(), friday, pace=STEADY)
    assert set(found.work) == {work for work, chance in found.chances.items() if chance >= SURE}
    return {name: chance for (_, name), chance in found.chances.items()}


def chain(count: int, minutes: int) -> list[Operation]:
    """Operations one after another, each in one go."""
    names = [f"work {number}" for number in range(count)]
    return [
        Operation(name, name, "neck", minutes, after=tuple(names[place - 1 : place]) if place else (), one_go=True)
        for place, name in enumerate(names)
    ]


def within(chance: float, expected: float) -> bool:
    """Whether a share of the draws is one to be expected: within four standard deviations, by the binomial."""
    return abs(chance - expected) <= 4.0 * (expected * (1.0 - expected) / DRAWS) ** 0.5 + 1e-9


def test_a_week_without_room_to_spare_is_promised_less_its_lost_days() -> None:
    """Each operation takes a session of four hours, whole: those of the last days want that so many are not lost."""
    found = chances(*chain(10, 240))
    for days in range(1, 6):
        kept = sum(comb(5, worked) * (1 - LOST) ** worked * LOST ** (5 - worked) for worked in range(days, 6))
        assert within(found[f"work {2 * days - 1}"], kept), days


def test_short_work_of_the_last_day_is_done_if_that_day_is_not_lost() -> None:
    """It waits till Friday's morning for a cure; the day is lost in `LOST` of all weeks."""
    first = Operation("glue", "glue", "neck", 30, clamp=86.0, one_go=True)
    then = Operation("look", "look", "top", 30, after=("glue",), one_go=True)
    by_hand = sum(
        (LOST ** days.count(True)) * ((1 - LOST) ** days.count(False))
        for days in product((True, False), repeat=5)
        if not days[0] and not days[4]
    )
    assert within(chances(first, then)["look"], by_hand)


def test_glue_that_wants_air_is_promised_by_how_often_such_days_were_open() -> None:
    """Days of right air follow one another as in a chain of two states: by hand, the sum over its ways in a week."""
    record = [day % 5 < 2 for day in range(60)]  # two open, three closed, over and over
    glue = Operation("glue", "glue", "top", 30, after=("plane",), clamp=1.0, air="gluing", air_hours=1.0, one_go=True)
    plane = Operation("plane", "plane", "neck", 30, clamp=14.0, one_go=True)
    air = place(record)
    assert air.record is not None
    chance = air.record.chance(BAND, 1.5)
    assert chance is not None
    done = 0.0
    for days in product((True, False), repeat=5):  # lost or not
        for open_days in product((True, False), repeat=4):  # Tuesday to Friday; Monday is open
            likely = LOST ** days.count(True) * (1 - LOST) ** days.count(False)
            before = True
            for each in open_days:
                after = chance.after_open if before else chance.after_closed
                likely *= after if each else 1.0 - after
                before = each
            planed = next((day for day in range(5) if not days[day]), 9)
            done += likely * any(open_days[day - 1] and not days[day] for day in range(1, 5) if day > planed)
    assert within(chances(plane, glue, air=air)["glue"], done)


def test_the_same_record_promises_the_same() -> None:
    assert chances(*chain(10, 235)) == chances(*chain(10, 235))
