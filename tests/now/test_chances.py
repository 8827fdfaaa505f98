"""Chances of open days by a place's own record, against invented air whose days are known one by one."""

from dataclasses import replace
from datetime import datetime, time, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom

from gramil.air.air_bands import Band, Limits
from gramil.air.air_of_places import PlaceAir, Places, is_old
from gramil.air.air_view import HOURS_HELD
from gramil.air.outlooks import Spell
from gramil.description.shop.tables import Shop
from gramil.now.air_now import PlaceNow, may_begin
from gramil.now.air_spans import Luck, spans
from gramil.now.assumed import rests_on
from gramil.now.chances import RECENT, Record, drawn, evenly, expected
from gramil.now.conditions import conditions
from gramil.now.open_now import InstrumentState, open_now
from gramil.now.outlook import Outlook
from gramil.now.trust import Errors, Trust
from gramil.shop.operations import Operation, Work
from gramil.wood.air import AirHistory

NOW = datetime(2026, 6, 1, 8)  # a Monday
GLUING = Limits("for gluing", (40.0, 50.0), (12.0, 30.0))


def days_of_air(is_open: list[bool], until: datetime = NOW) -> AirHistory:
    """Hourly readings, one day after another up to a moment: 45 % all through an open day, 60 % on a closed one."""
    begins = datetime.combine(until.date(), datetime.min.time()) - timedelta(days=len(is_open))
    humidity = np.repeat(np.where(is_open, 45.0, 60.0), 24)
    times = np.arange(humidity.size) * 3600.0
    return AirHistory(begins, times, np.full(humidity.size, 20.0), humidity)


def invented(share: float, seed: int, days: int = RECENT) -> list[bool]:
    return [bool(each) for each in np.random.default_rng(seed).random(days) < share]


@pytest.mark.parametrize("seed", range(5))
@pytest.mark.parametrize("share", [0.1, 0.4, 0.8])
def test_the_open_days_on_record_are_those_that_were_open_within_the_binomial(share: float, seed: int) -> None:
    true = invented(share, seed)
    found = Record(days_of_air(true), NOW).chance(GLUING, 8.0)
    assert found is not None
    assert (found.days, found.open) == (RECENT, sum(true))
    low, high = binom.interval(0.9999, RECENT, share)
    assert low <= found.open <= high


def test_work_that_needs_the_band_over_night_needs_two_open_days_in_a_row() -> None:
    alternate = [day % 2 == 0 for day in range(RECENT)]
    record = Record(days_of_air(alternate), NOW)
    short, long = record.chance(GLUING, 8.0), record.chance(GLUING, 24.0)
    assert short is not None
    assert long is not None
    assert short.open == RECENT // 2
    assert long.open == 0
    assert short.after_open < 0.1 < 0.9 < short.after_closed


def test_too_short_a_record_gives_no_chance() -> None:
    assert Record(days_of_air([True] * 8), NOW).chance(GLUING, 8.0) is None


def test_the_season_of_a_year_past_counts_and_the_rest_of_that_year_does_not() -> None:
    """A year of closed days but for the weeks around this day a year ago."""
    days = [334 <= back <= 396 for back in range(400, 0, -1)]
    found = Record(days_of_air(days), NOW).chance(GLUING, 8.0)
    assert found is not None
    assert found.open == 43
    assert found.days == 43 + RECENT


def test_days_far_ahead_are_judged_by_their_own_season_of_a_year_past() -> None:
    """A year of closed days but for those 12 to 22 weeks after this day a year ago."""
    days = [365 - 154 <= back <= 365 - 84 for back in range(400, 0, -1)]
    record = Record(days_of_air(days), NOW)
    found = record.ahead(GLUING, 8.0, NOW.date() + timedelta(days=1), 300)
    assert {each.open for each in found[:20]} == {0}
    assert {each.open for each in found[112:126]} == {43}, (
        "all days of the seasons about 16 to 18 weeks ahead were open"
    )
    assert found[112].days == 43
    assert found[299].open == 0
    assert expected(found, False)[115] > 0.9
    short = Record(days_of_air(days[-60:]), NOW)
    assert set(short.ahead(GLUING, 8.0, NOW.date(), 200)) == {short.chance(GLUING, 8.0)}, "no other season is on record"


@given(st.lists(st.floats(0, 1), max_size=60))
def test_days_in_a_plan_are_as_many_as_are_to_be_expected_at_every_time(chances: list[float]) -> None:
    planned = np.cumsum(evenly(chances))
    assert np.all(np.abs(planned - np.cumsum(chances)) <= 0.5 + 1e-9)


def test_drawn_days_follow_one_another_as_on_record() -> None:
    true = invented(0.5, 3)
    chance = Record(days_of_air(true), NOW).chance(GLUING, 8.0)
    assert chance is not None
    luck = np.random.default_rng(7).random(20_000)
    found = np.array(drawn([chance] * len(luck), True, list(luck)))
    assert abs(found[1:][found[:-1]].mean() - chance.after_open) < 0.02
    assert abs(found[1:][~found[:-1]].mean() - chance.after_closed) < 0.02
    assert abs(found.mean() - chance.share) < 0.02


def place_now(history: AirHistory, humidity: float, outlook: Outlook) -> PlaceNow:
    return PlaceNow("shop", NOW, 20.0, humidity, (40.0, 60.0), outlook, record=Record(history, NOW))


def test_without_an_outlook_the_plan_has_as_many_open_days_as_the_record() -> None:
    true = [day % 3 == 0 for day in range(RECENT)]
    unsaid = Outlook((Spell(NOW, 20.0, 60.0),), said=False)
    found = spans(place_now(days_of_air(true), 60.0, unsaid), GLUING, NOW, 480, 30 * 1440)
    assert 8 <= len(found) <= 12
    lucky = spans(place_now(days_of_air(true), 60.0, unsaid), GLUING, NOW, 480, 30 * 1440, Luck((0.0,) * 30))
    assert len(lucky) == 30


def test_an_outlook_counts_until_two_days_after_its_last_word() -> None:
    said = Outlook((Spell(NOW, 20.0, 60.0), Spell(NOW + timedelta(days=1), 20.0, 45.0)))
    closed = place_now(days_of_air([False] * RECENT), 60.0, said)
    found = spans(closed, GLUING, NOW, 480, 60 * 1440)
    assert found[0] == (1440, 3 * 1440 - 1)
    # of days by the record: one in two after an open one, of which none is known, and one in 44 after a closed one
    assert len(found) <= 1 + 1 + 57 / 44 + 1, "a record of closed days does not go on as the outlook ended"


def place(humidity: np.ndarray, hours_ago: float) -> PlaceAir:
    times = np.arange(humidity.size) * 3600.0
    begins = NOW - timedelta(hours=humidity.size - 1 + hours_ago)
    return PlaceAir("shop", AirHistory(begins, times, np.full(humidity.size, 20.0), humidity), None, None, None, None)


def test_a_place_is_trusted_as_far_as_its_own_habit_shows() -> None:
    hours = np.arange(40 * 24)
    steady, restless = 45.0 + np.sin(hours / 24.0), 45.0 + 15.0 * np.sin(hours / 60.0)
    assert not is_old(place(steady, 5 * 24), NOW)
    assert is_old(place(restless, 5 * 24), NOW)
    assert not is_old(place(restless, 11), NOW)
    assert is_old(place(steady, 11 * 24), NOW), "after ten days even a steady place is read again"
    assert is_old(place(steady[:48], 5 * 24), NOW), "two days of record show no habit"


def test_finishing_goes_by_the_air_of_its_own_place() -> None:
    dry, right = place(np.full(480, 30.0), 1), place(np.full(480, 45.0), 1)
    places = Places({"shop": dry, "booth": right}, (), "shop", 7.0, "booth")
    bands = {name: Band(name, f"for {name}", (40.0, 50.0), (12.0, 30.0)) for name in ("gluing", "finishing")}
    shop = conditions(Shop.model_validate({"shop": {"name": "x", "units": "mm"}, "gramil": 1}), places, NOW, bands)
    coat, glue = (Operation(name, name, name, 60, air=name) for name in ("finishing", "gluing"))
    found = open_now([InstrumentState("A", Work({"coat": coat, "glue": glue}, {}), {})], shop)[0]
    assert [each.operation.name for each in found.open] == ["finishing"]
    assert [each.operation.name for each in found.closed] == ["gluing"]


def shop_of(room: float | None) -> Places:
    """One place at 30 % and 20 C, with a room or without."""
    history = AirHistory(NOW - timedelta(days=20), np.arange(480) * 3600.0, np.full(480, 20.0), np.full(480, 30.0))
    changes = None if room is None else (0.0, 0.0)
    return Places({"shop": PlaceAir("shop", history, room, changes, None, None)}, (), "shop", 7.0)


def test_what_would_open_the_air_is_said_with_its_water() -> None:
    """50 m3 at 20 C, nothing leaking: 15 % of the 17.3 g/m3 that saturated air holds there, read in tables: 130 g."""
    bands = {"gluing": Band("gluing", "for gluing", (40.0, 50.0), (12.0, 30.0))}
    work = Work({"glue": Operation("glue", "Glue", "top", 60, air="gluing")}, {})
    for room, words in ((50.0, "g of water put into its air"), (None, "by its own record")):
        shop = conditions(
            Shop.model_validate({"shop": {"name": "x", "units": "mm"}, "gramil": 1}), shop_of(room), NOW, bands
        )
        (closed,) = open_now([InstrumentState("A", work, {})], shop)[0].closed
        assert words in closed.why
        assert shop.air is not None
        if room:
            assert float(shop.air.opening["gluing"].split()[0]) == pytest.approx(130.0, abs=2.0)


@pytest.mark.parametrize(
    ("humidity", "machines", "told"),
    [
        (30.0, (65.0, 0.0), "2 to 2 h of its humidifier"),
        (60.0, (0.0, 43.3), "3 to 3 h of its dryer"),
        (30.0, (2.0, 0.0), "more than its humidifier moves in that time"),
        (60.0, (65.0, 0.0), ""),
    ],
)
def test_what_would_open_the_air_is_said_in_hours_of_a_machine(
    humidity: float, machines: tuple[float, float], told: str
) -> None:
    """The same 130 g, at 65 g an hour; and as much too much at 60 %, at a third of it an hour."""
    places = shop_of(50.0)
    place = places.known["shop"]
    air = replace(place.history, humidity=np.full(480, humidity))
    places = replace(places, known={"shop": replace(place, history=air, machines=machines)})
    bands = {"gluing": Band("gluing", "for gluing", (40.0, 50.0), (12.0, 30.0))}
    shop = conditions(Shop.model_validate({"shop": {"name": "x", "units": "mm"}, "gramil": 1}), places, NOW, bands)
    assert shop.air is not None
    assert shop.air.opening["gluing"].endswith(told or f"for {HOURS_HELD:.0f} h")


def wandering(seed: int, days: int = 60) -> AirHistory:
    """Hourly readings from nine in the morning on, about the middle of the band: spells of two days, a day's swing."""
    chance = np.random.default_rng(seed)
    spells = np.repeat(chance.normal(45.0, 4.0, days // 2), 48)
    humidity = spells + 2.0 * np.sin(np.arange(spells.size) * 2.0 * np.pi / 24.0) + chance.normal(0.0, 0.5, spells.size)
    begins = datetime.combine(NOW.date() - timedelta(days=days), time(9))
    return AirHistory(begins, np.arange(spells.size) * 3600.0, np.full(spells.size, 20.0), humidity)


@pytest.mark.parametrize("seed", range(4))
@pytest.mark.parametrize("hours", [1.5, 12.0, 25.0])
def test_the_days_that_a_plan_counts_as_open_are_those_on_which_work_would_be_begun(seed: int, hours: float) -> None:
    """Each day of the last weeks again, with its reading of nine in the morning: would `now` have begun?"""
    history = wandering(seed)
    unsaid, record = Outlook((Spell(NOW, 20.0, 45.0),), said=False), Record(history, NOW)
    begun = 0
    for back in range(1, RECENT + 1):
        at = history.seconds(datetime.combine(NOW.date() - timedelta(days=back), time(9)))
        reading = float(history.humidity[round(at / 3600.0)])
        begun += may_begin(
            PlaceNow("shop", NOW, 20.0, reading, (40.0, 50.0), unsaid, record=record), GLUING, NOW, hours
        )
    chance = record.chance(GLUING, hours)
    assert chance is not None
    assert 0 < begun < RECENT
    assert (chance.days, chance.open) == (RECENT, begun)


def test_where_outlooks_are_given_the_days_to_come_are_those_that_a_true_outlook_would_open() -> None:
    """Every day begins in the middle of the band, and of every five three are dry from noon on: without an outlook
    nothing tells them apart, and none is begun, for most do not stay; with one, those that stay are.
    """
    dry = [day % 5 in (1, 2, 4) for day in range(60)]
    humidity = np.concatenate([[45.0] * 12 + [35.0 if each else 45.0] * 12 for each in dry])
    begins = datetime.combine(NOW.date() - timedelta(days=60), time())
    record = Record(AirHistory(begins, np.arange(humidity.size) * 3600.0, np.full(humidity.size, 20.0), humidity), NOW)
    begun = 0
    for each in dry[-RECENT:]:
        noon = Spell(datetime.combine(NOW.date(), time(12)), 20.0, 35.0 if each else 45.0, NOW - timedelta(days=1))
        told = Outlook((Spell(NOW, 20.0, 45.0), noon), trust=Trust({1: Errors(0.0, 0.5, 9)}))
        begun += may_begin(PlaceNow("shop", NOW, 20.0, 45.0, (40.0, 50.0), told, record=record), GLUING, NOW, 12.0)
    foretold, unsaid = record.chance(GLUING, 12.0, foretold=True), record.chance(GLUING, 12.0)
    assert foretold is not None
    assert unsaid is not None
    assert (foretold.days, foretold.open) == (RECENT, begun)
    assert 0 < begun < RECENT
    assert unsaid.open == 0


def test_beyond_an_outlook_a_plan_counts_the_days_that_the_next_outlooks_would_open() -> None:
    """Every other day that begins in the band leaves it: all may be begun on the record alone, half by outlooks."""
    humidity = np.array(([45.0] * 24 + [45.0] * 12 + [35.0] * 12) * 30)
    begins = datetime.combine(NOW.date() - timedelta(days=60), time())
    history = AirHistory(begins, np.arange(humidity.size) * 3600.0, np.full(humidity.size, 20.0), humidity)
    first = Spell(NOW, 20.0, 45.0)
    plans = [
        spans(place_now(history, 45.0, each), GLUING, NOW, 720, 30 * 1440)
        for each in (Outlook((first,), said=False), Outlook((first, replace(first, begins=NOW + timedelta(days=1)))))
    ]
    assert [sum(last - begin + 1 for begin, last in each) // 1440 for each in plans] == [29, 16]


def edges() -> AirHistory:
    """Of every five days two at 42 % throughout, and three that begin at 40.5 % and are dry from noon on."""
    steady, leaving = [42.0] * 24, [40.5] * 12 + [35.0] * 12
    humidity = np.array(([*steady, *steady] + 3 * leaving) * 12)
    begins = datetime.combine(NOW.date() - timedelta(days=60), time())
    return AirHistory(begins, np.arange(humidity.size) * 3600.0, np.full(humidity.size, 20.0), humidity)


@pytest.mark.parametrize("humidity", [38.0, 40.5, 43.0, 46.0, 49.5, 52.0])
@pytest.mark.parametrize("hours", [1.5, 20.0])
def test_work_may_start_today_in_a_plan_if_it_is_open_now(humidity: float, hours: float) -> None:
    """Not only where the band would hold as long as an outlook of the mean of the last days says. Long work is begun
    from 42 to 48 %, from where it stayed; short work in all of the band.
    """
    unsaid = Outlook((Spell(NOW, 20.0, humidity), Spell(NOW + timedelta(hours=16), 20.0, 55.0)), said=False)
    shop = place_now(edges(), humidity, unsaid)
    found = spans(shop, GLUING, NOW, round(60 * hours), 30 * 1440)
    inside = 42.0 <= humidity <= 48.0 if hours > 2.0 else 40.0 <= humidity <= 50.0
    assert may_begin(shop, GLUING, NOW, hours) == inside
    assert (found[0][0] == 0) == inside


def test_a_place_that_was_not_read_waits_today_and_goes_by_its_record_after() -> None:
    unsaid = Outlook((Spell(NOW, 20.0, 45.0),), said=False)
    unread = replace(place_now(days_of_air([True] * RECENT), 45.0, unsaid), old=True)
    found = spans(unread, GLUING, NOW, 480, 10 * 1440)
    assert found[0][0] == 16 * 60
    assert len(found) == 10


def test_days_that_a_machine_opens_overnight_count_in_a_plan_and_today_does_not() -> None:
    """At 56 % all along: a dryer that takes 8 % out of the air in a night opens every day from tomorrow on, one of 5 %
    none; whether somebody said that it stays so or not.
    """
    damp = AirHistory(NOW - timedelta(days=60), np.arange(1440) * 3600.0, np.full(1440, 20.0), np.full(1440, 56.0))
    for said in (False, True):
        outlook = Outlook((Spell(NOW, 20.0, 56.0),), said=said)
        for drier, is_open in ((8.0, True), (5.0, False)):
            shop = replace(place_now(damp, 56.0, outlook), machines=(0.0, drier))
            assert not may_begin(shop, GLUING, NOW, 8.0)
            found = spans(shop, GLUING, NOW, 480, 10 * 1440)
            assert bool(found) == is_open
            if is_open:
                assert found[0][0] == 16 * 60, "midnight, from eight in the morning"


def test_air_in_its_band_is_held_there_by_a_machine() -> None:
    """45 % now, and 52 % from tomorrow on: long work waits, unless the place's dryer takes out those 2 %."""
    outlook = Outlook((Spell(NOW, 20.0, 45.0), Spell(NOW + timedelta(hours=16), 20.0, 52.0)))
    shop = place_now(days_of_air([True] * RECENT), 45.0, outlook)
    assert not may_begin(shop, GLUING, NOW, 24.0)
    assert may_begin(replace(shop, machines=(0.0, 3.0)), GLUING, NOW, 24.0)
    assert not may_begin(replace(shop, machines=(3.0, 0.0)), GLUING, NOW, 24.0), "a humidifier dries nothing"


@pytest.mark.parametrize("machines", [(300.0, 0.0), (0.0, 250.0), (300.0, 250.0)])
def test_a_plan_says_that_it_counts_on_the_machines(machines: tuple[float, float]) -> None:
    """What they move is the room's water balance in steps of a second, at the tables' 17.3 g/m3 of saturated air."""
    moved = [0.0, 0.0]
    for side, rate in enumerate(machines):
        water = 0.0
        for _ in range(12 * 3600):
            water += (rate - 1.0 * water) / 3600.0
        moved[side] = 100.0 * water / (50.0 * 17.3)
    places = shop_of(50.0)
    place = replace(places.known["shop"], machines=machines, air_changes=(0.2, 1.0))
    places = replace(places, known={"shop": place})
    bands = {"gluing": Band("gluing", "for gluing", (40.0, 50.0), (12.0, 30.0))}
    shop = conditions(Shop.model_validate({"shop": {"name": "x", "units": "mm"}, "gramil": 1}), places, NOW, bands)
    assert shop.air is not None
    assert shop.air.machines == pytest.approx(moved, rel=2e-3)
    told = rests_on(shop)
    assert f"air of {40 - moved[0]:.0f} to {50 + moved[1]:.0f} % into the band" in told
    names = " or ".join(name for name, rate in zip(("humidifier", "dryer"), machines, strict=True) if rate)
    assert f"The shop's {names} counts" in told
