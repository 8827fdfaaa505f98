"""How far an outlook is trusted: against the normal distribution of the standard library, and errors told by hand."""

from dataclasses import replace
from datetime import datetime, time, timedelta
from math import sqrt
from statistics import NormalDist, mean, stdev

import numpy as np
import pytest

from gramil.air.air_bands import Limits
from gramil.air.outlooks import KeptOutlook, Spell
from gramil.now.air_now import PlaceNow, may_begin
from gramil.now.air_spans import Luck, spans
from gramil.now.chances import Record
from gramil.now.outlook import Outlook
from gramil.now.trust import COMMON, Errors, Trust, by_days, learnt, still_said
from gramil.physics.arrays import floats
from gramil.wood.air import AirHistory

MONDAY = datetime(2026, 1, 19, 9, 30)
GLUING = Limits("for gluing", (40.0, 50.0), (12.0, 30.0))


def said(days: float, humidity: float, temperature: float = 20.0) -> Spell:
    """What is said on Monday of the day so many days later, from its midnight on."""
    begins = datetime.combine(MONDAY.date(), time()) + timedelta(days=days)
    return Spell(begins, temperature, humidity, MONDAY)


@pytest.mark.parametrize("humidity", [30.0, 39.0, 45.0, 50.0, 58.0])
@pytest.mark.parametrize("errors", [None, Errors(-2.0, 2.5, 9), Errors(3.0, 6.0, 5)])
def test_a_band_is_open_by_the_normal_distribution_over_it(humidity: float, errors: Errors | None) -> None:
    for ahead in (1, 3, 7):
        trust = Trust({ahead: errors} if errors else {})
        bias, spread = (errors.bias, errors.spread) if errors else (0.0, COMMON * sqrt(ahead))
        about = NormalDist(humidity + bias, spread)
        exact = about.cdf(50.0) - about.cdf(40.0)
        assert trust.chance(GLUING, said(ahead, humidity)) == pytest.approx(exact, abs=1e-12)
    assert trust.chance(GLUING, said(3, 45.0, temperature=8.0)) == 0.0
    assert trust.chance(GLUING, Spell(MONDAY, 20.0, humidity)) == float(40.0 <= humidity <= 50.0)


def test_an_outlook_counts_the_less_the_older_it_is_and_for_a_week_at_most() -> None:
    trust = Trust()
    kept = KeptOutlook(MONDAY, "", (said(1, 45.0), said(12, 44.0)))
    chances = []
    for later in range(6):
        spells, until = still_said((kept,), MONDAY + timedelta(days=later))
        assert until == MONDAY + timedelta(days=7)
        on_last_day = spells[-1]
        chances.append(trust.chance(GLUING, on_last_day))
        assert on_last_day.begins < until
        assert all(each.humidity == 45.0 for each in spells)
    assert len(set(chances)) == 1
    fresh = still_said((KeptOutlook(MONDAY, "", (said(1, 45.0),)),), MONDAY)[0][0]
    old = replace(fresh, said=MONDAY - timedelta(days=4))
    assert trust.chance(GLUING, old) < trust.chance(GLUING, fresh)
    assert still_said((kept,), MONDAY + timedelta(days=7, hours=1)) == ((), MONDAY + timedelta(days=7, hours=1))


def test_a_later_outlook_takes_the_place_of_an_earlier_one_from_its_first_spell_on() -> None:
    tuesday = MONDAY + timedelta(days=1)
    first = KeptOutlook(MONDAY, "", (said(1, 45.0), said(2, 46.0)))
    second = KeptOutlook(tuesday, "", (replace(said(3, 38.0), said=tuesday),))
    spells, until = still_said((first, second), tuesday)
    assert [(each.begins.day, each.humidity) for each in spells] == [(20, 45.0), (21, 46.0), (22, 38.0), (23, 38.0)]
    assert until == datetime(2026, 1, 24)


@pytest.mark.parametrize("between", [(), (said(1, 46.0),)])
def test_days_of_which_nobody_speaks_are_no_surer_than_those_of_which_somebody_does(between: tuple[Spell, ...]) -> None:
    """Sunday's air alone is said, or Tuesday's too, which holds for two days: the others go by what is usual there."""
    earlier = (KeptOutlook(MONDAY, "", between),) if between else ()
    kept = (*earlier, KeptOutlook(MONDAY + timedelta(hours=1), "", (said(6, 20.0),)))
    usual = Spell(said(1, 0.0).begins, 20.0, 44.0)
    spells, _ = still_said(kept, MONDAY + timedelta(hours=2), usual)
    told = [46.0, 46.0, *(44.0,) * 3] if between else [44.0] * 5
    assert [each.humidity for each in spells] == [*told, 20.0, 20.0]
    assert [each.begins for each in spells] == [said(day, 0.0).begins for day in range(1, 8)]
    chances = [Trust().chance(GLUING, each) for each in spells]
    assert all(0 < one < 1 for one in chances)
    assert chances[4] < chances[0]


def test_nothing_is_planned_for_a_day_whose_air_was_not_read() -> None:
    shop = place(said(1, 45.0), trust=Trust({ahead: Errors(0.0, 3.0, 9) for ahead in range(8)}))
    tonight = 1440 - MONDAY.hour * 60 - MONDAY.minute
    for old in (False, True):
        found = spans(replace(shop, old=old, record=Record(wavering(), MONDAY)), GLUING, MONDAY, 60, 3 * 1440)
        assert min(first for first, _ in found) == (tonight if old else 0)
        assert any(first <= 1440 <= last for first, last in found)


def wavering() -> AirHistory:
    """Every morning and evening of a month, in the band and out of it in turn."""
    times = np.arange(60) * 43200.0
    return AirHistory(
        MONDAY - timedelta(days=30), times, np.full(60, 20.0), np.where(np.arange(60) // 2 % 2, 45.0, 60.0)
    )


def air(*mornings: float) -> AirHistory:
    """A place read every morning at nine from the day after Monday on."""
    times = [86400.0 * day for day in range(len(mornings))]
    return AirHistory(datetime(2026, 1, 20, 9), floats(times), floats([20.0] * len(mornings)), floats(mornings))


def test_errors_are_learnt_by_days_ahead_and_too_few_leave_the_common_spread() -> None:
    """On each of six days one says of the next two that they will have 45 %: a day ahead the errors are those of the
    first six mornings, two days ahead those of the last six."""
    read = (46.0, 44.0, 47.0, 49.0, 45.0, 48.0, 50.0)
    days = [MONDAY + timedelta(days=day) for day in range(6)]
    kept = [
        KeptOutlook(day, "", (Spell(datetime.combine(day.date(), time()) + timedelta(days=1), 20.0, 45.0, day),))
        for day in days
    ]
    now = MONDAY + timedelta(days=8)
    trust = learnt(kept, air(*read), now)
    one, two = ([value - 45.0 for value in read[skip : skip + 6]] for skip in (0, 1))
    assert trust.errors(1).days == 6
    assert trust.errors(1).bias == pytest.approx(mean(one))
    assert trust.errors(1).spread == pytest.approx(stdev(one))
    assert trust.errors(2).bias == pytest.approx(mean(two))
    assert trust.errors(3) == Errors(0.0, COMMON * sqrt(3))
    early = learnt(kept, air(*read), MONDAY + timedelta(days=3))
    assert early.errors(1).days == 0
    assert early.seen == 3 + 2


def place(*spells: Spell, trust: Trust) -> PlaceNow:
    until = MONDAY + timedelta(days=7)
    outlook = Outlook((Spell(MONDAY, 20.0, 45.0), *by_days(spells, until)), True, trust, until)
    return PlaceNow("shop", MONDAY, 20.0, 45.0, (40.0, 50.0), outlook)


def test_days_of_a_plan_are_drawn_by_the_chance_of_what_is_said() -> None:
    """45 % with a spread of 5 is within 40 to 50 at about 0.68: by luck below that a day is open, above it is not."""
    shop = place(said(1, 45.0), trust=Trust({ahead: Errors(0.0, 5.0, 9) for ahead in range(8)}))
    within = NormalDist(45.0, 5.0)
    chance = within.cdf(50.0) - within.cdf(40.0)
    for number, opens in ((chance - 0.01, True), (chance + 0.01, False)):
        found = spans(shop, GLUING, MONDAY, 480, 3 * 1440, Luck((number,) * 9))
        assert any(first <= 2 * 1440 <= last for first, last in found) == opens
    assert may_begin(shop, GLUING, MONDAY, 48.0)
    assert "± 5.0 % a day ahead" in shop.outlook.told
    doubted = place(said(1, 45.0), trust=Trust({ahead: Errors(0.0, 12.0, 9) for ahead in range(8)}))
    assert not may_begin(doubted, GLUING, MONDAY, 48.0)
    assert may_begin(doubted, GLUING, MONDAY, 8.0)
