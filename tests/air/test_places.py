"""Readings of air: exact to the microsecond and its offset, overlaps harmless, contradictions and odd air refused."""

from datetime import UTC, datetime, timedelta, timezone

import pytest

from gramil.air.places import (
    Imported,
    Place,
    Reading,
    add_place,
    add_reading,
    air_csv,
    air_history,
    import_air,
    latest_reading,
    place,
)
from gramil.faults import MakersFault
from gramil.physics.arrays import floats
from gramil.shop.shop_in_store import bring_in_shop, shop_description
from gramil.store.opening import Store
from gramil.store.writing import Hand
from gramil.wood.air import AirHistory
from gramil.wood.air_log import read_air_log

from ..in_a_store import SHOP


def air(start: datetime, humidities: list[float], step: float = 600.0) -> AirHistory:
    times = floats([step * row for row in range(len(humidities))])
    return AirHistory(start, times, floats([18.5] * len(humidities)), floats(humidities))


@pytest.fixture
def bench(store: Store, now: datetime) -> int:
    return add_place(store, Place("bench", {}), Hand(now)).id


def test_readings_come_back_as_they_went_in(store: Store, bench: int, now: datetime) -> None:
    start = datetime(2026, 1, 5, 7, 0, 0, 123456, tzinfo=timezone(timedelta(hours=-7)))
    assert import_air(store, bench, air(start, [41.0, 41.5, 42.0]), Hand(now)) == Imported(3, 0)
    found = air_history(store, bench)
    assert found is not None
    assert found.origin == start
    assert found.origin.utcoffset() == timedelta(hours=-7)
    assert list(found.times) == [0.0, 600.0, 1200.0]
    assert list(found.humidity) == [41.0, 41.5, 42.0]


def test_a_clock_without_a_zone_is_in_the_zone_of_now(store: Store, bench: int, now: datetime) -> None:
    import_air(store, bench, air(datetime(2026, 11, 2, 9, 0), [41.0]), Hand(now))
    latest = latest_reading(store, bench)
    assert latest is not None
    assert latest.at == datetime(2026, 11, 2, 8, 0, tzinfo=UTC)
    by_clock = air_history(store, bench, by_clock=True)
    assert by_clock is not None
    assert by_clock.origin == datetime(2026, 11, 2, 9, 0)


def test_the_same_readings_again_do_no_harm(store: Store, bench: int, now: datetime) -> None:
    import_air(store, bench, air(now, [41.0, 41.5]), Hand(now))
    assert import_air(store, bench, air(now, [41.0, 41.5, 42.0]), Hand(now)) == Imported(1, 2)
    in_another_zone = air(now.astimezone(UTC), [41.0])
    assert import_air(store, bench, in_another_zone, Hand(now)) == Imported(0, 1)


def test_another_reading_of_the_same_moment_is_refused_and_nothing_brought_in(
    store: Store, bench: int, now: datetime
) -> None:
    import_air(store, bench, air(now, [41.0, 41.5]), Hand(now))
    with pytest.raises(MakersFault, match="1 readings differ"):
        import_air(store, bench, air(now, [41.0, 55.0, 42.0, 43.0]), Hand(now))
    found = air_history(store, bench)
    assert found is not None
    assert found.times.size == 2


@pytest.mark.parametrize(("celsius", "percent", "words"), [(68.0, 40.0, "-40 and 60 C"), (18.0, 140.0, "0 and 100 %")])
def test_air_that_no_room_has_is_refused(
    store: Store, bench: int, now: datetime, celsius: float, percent: float, words: str
) -> None:
    with pytest.raises(MakersFault, match=words):
        add_reading(store, bench, Reading(now, celsius, percent), Hand(now))


def test_readings_since_a_moment(store: Store, bench: int, now: datetime) -> None:
    import_air(store, bench, air(now, [41.0, 41.5, 42.0]), Hand(now))
    since = air_history(store, bench, now + timedelta(minutes=10))
    assert since is not None
    assert (since.origin, list(since.humidity)) == (now + timedelta(minutes=10), [41.5, 42.0])
    assert air_history(store, bench, now + timedelta(days=1)) is None


def test_what_a_logger_s_file_says_comes_back_from_the_file_written(store: Store, bench: int, now: datetime) -> None:
    add_reading(store, bench, Reading(now, 18.25, 1 / 3 + 40), Hand(now))
    add_reading(store, bench, Reading(now + timedelta(minutes=10), 18.0, 41.0), Hand(now))
    back, report = read_air_log(air_csv(store, bench), "air-1.csv")
    assert (report.temperature_unit, report.humidity_unit) == ("C", "percent")
    assert back.origin == now.replace(tzinfo=None)
    assert list(back.humidity) == [1 / 3 + 40, 41.0]


def test_readings_typed_into_a_description_become_the_place_s(store: Store, now: datetime) -> None:
    typed = (
        '\n[[place]]\nname = "bench"\nroom = 40\nreadings = [\n'
        '{ at = 2026-11-01T08:00:00, temperature = "65 F", humidity = "41 %" },\n'
        "{ at = 2026-11-01, temperature = 17, humidity = 42 } ]\n"
    )
    bring_in_shop(store, SHOP + typed, "shop.toml", Hand(now))
    found = air_history(store, place(store, "bench").id, by_clock=True)
    assert found is not None
    assert found.origin == datetime(2026, 11, 1)
    assert found.temperature[1] == pytest.approx((65 - 32) / 1.8)
    described = shop_description(store).shop.place[0]
    assert (described.room, described.log, described.readings) == (40.0, f"air-{place(store, 'bench').id}.csv", ())
