"""What was written wrongly: struck or put right, kept in the record, brought back by undo, not brought in again."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from gramil.air.places import Place, Reading, add_place, add_reading, air_history, import_air
from gramil.doorway.bringing_in import import_files
from gramil.doorway.export import export_files
from gramil.doorway.verify import verify_open
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.physics.arrays import floats
from gramil.shop.corrections import (
    correct_measurement,
    correct_weighing,
    latest_readings,
    measured_rows,
    not_done_after_all,
    strike_reading,
    struck_readings,
)
from gramil.shop.instruments import add_instrument
from gramil.shop.operations_done import Noted, mark_done, operations_done, pins_for, read_measurements
from gramil.store.failures import Conflict
from gramil.store.items import Item, add_item, item_named
from gramil.store.opening import Store, create_store
from gramil.store.undo import last_change, undo
from gramil.store.writing import Hand, changes
from gramil.wood.air import AirHistory


@pytest.fixture
def bench(store: Store, now: datetime) -> Place:
    return add_place(store, Place("bench", {}), Hand(now))


def humidities(store: Store, of: Place) -> list[float]:
    found = air_history(store, of.id)
    return [] if found is None else found.humidity.tolist()


def take_back(store: Store, now: datetime) -> None:
    last = last_change(store)
    assert last is not None
    undo(store, last.id, Hand(now))


def test_a_reading_is_struck_kept_and_brought_back(store: Store, bench: Place, now: datetime) -> None:
    wrong = Reading(now, 20.0, 4.5)
    add_reading(store, bench.id, Reading(now - timedelta(hours=1), 20.0, 44.0), Hand(now))
    add_reading(store, bench.id, wrong, Hand(now))
    strike_reading(store, bench, wrong, Hand(now, who="anna", why="a slip"))
    assert humidities(store, bench) == [44.0]
    (struck,) = struck_readings(store, bench.id)
    assert (struck.reading, struck.who, struck.why) == (wrong, "anna", "a slip")
    assert "4.5 %" in changes(store)[0].what
    assert verify_open(store) == ()
    take_back(store, now)
    assert humidities(store, bench) == [44.0, 4.5]
    assert struck_readings(store, bench.id) == []


def test_a_reading_is_put_right_and_back_again(store: Store, bench: Place, now: datetime) -> None:
    wrong, right = Reading(now, 20.0, 4.5), Reading(now, 20.0, 45.0)
    add_reading(store, bench.id, wrong, Hand(now))
    strike_reading(store, bench, wrong, Hand(now), right=right)
    assert humidities(store, bench) == [45.0]
    strike_reading(store, bench, right, Hand(now), right=wrong)
    assert humidities(store, bench) == [4.5]
    take_back(store, now)
    take_back(store, now)
    assert humidities(store, bench) == [4.5]
    assert struck_readings(store, bench.id) == []


def test_a_reading_that_is_not_there_as_seen_stays(store: Store, bench: Place, now: datetime) -> None:
    add_reading(store, bench.id, Reading(now, 20.0, 45.0), Hand(now))
    with pytest.raises(MakersFault, match="not there any more"):
        strike_reading(store, bench, Reading(now, 20.0, 44.0), Hand(now))
    with pytest.raises(MakersFault, match="between 0 and 100"):
        strike_reading(store, bench, Reading(now, 20.0, 45.0), Hand(now), right=Reading(now, 20.0, 450.0))
    assert humidities(store, bench) == [45.0]


def test_a_struck_reading_does_not_come_back_with_its_file(store: Store, bench: Place, now: datetime) -> None:
    logged = AirHistory(now, floats([0.0, 600.0, 1200.0]), floats([18.0] * 3), floats([41.0, 99.0, 42.0]))
    import_air(store, bench.id, logged, Hand(now), file="log.csv")
    wrong = latest_readings(store, bench.id)[1]
    assert (wrong.reading.humidity, wrong.file) == (99.0, "log.csv")
    strike_reading(store, bench, wrong.reading, Hand(now))
    found = import_air(store, bench.id, logged, Hand(now), file="log.csv")
    assert (found.added, found.there_already) == (0, 3)
    assert humidities(store, bench) == [41.0, 42.0]


def test_struck_readings_go_out_and_come_back_as_files(store: Store, bench: Place, now: datetime) -> None:
    wrong = Reading(now, 20.0, 4.5)
    add_reading(store, bench.id, wrong, Hand(now))
    strike_reading(store, bench, wrong, Hand(now, why="a slip"), right=Reading(now, 20.0, 45.0))
    files = export_files(store)
    with create_store(store.path.with_name("other.gramil")) as other:
        import_files(other, files, Hand(now))
        assert export_files(other) == files
        assert humidities(other, bench) == [45.0]
        assert [each.why for each in struck_readings(other, bench.id)] == ["a slip"]


def test_a_weighing_is_put_right_or_struck(store: Store, now: datetime) -> None:
    weighings = [{"at": "2026-11-01T09:00:00", "mass": 812.0}, {"at": "2026-11-02T09:00:00", "mass": 81.0}]
    piece = add_item(store, Item("piece", "top 1", {"wood": "spruce", "weighings": weighings}), Hand(now))
    correct_weighing(store, piece, 1, 810.0, Hand(now))
    assert item_named(store, "piece", "top 1").figures["weighings"][1] == {**weighings[1], "mass": 810.0}
    assert "81 g" in changes(store)[0].what
    with pytest.raises(Conflict):
        correct_weighing(store, piece, 0, None, Hand(now))
    correct_weighing(store, item_named(store, "piece", "top 1"), 0, None, Hand(now))
    left = item_named(store, "piece", "top 1")
    assert [each["mass"] for each in left.figures["weighings"]] == [810.0]
    correct_weighing(store, left, 0, None, Hand(now))
    assert "weighings" not in item_named(store, "piece", "top 1").figures


def test_a_measurement_is_put_right_or_struck(store: Store, now: datetime, figures: Figures) -> None:
    owner = add_instrument(store, "Moss", "", Hand(now)).id
    wrong = read_measurements(figures, {"board_thickness": "63.8"})
    mark_done(store, owner, "thicknessed", Hand(now), Noted(measured=wrong))
    (row,) = measured_rows(store, owner)
    (right,) = read_measurements(figures, {"board_thickness": "6.38"})
    correct_measurement(store, row, right, Hand(now))
    assert pins_for(store, owner)["board_thickness"].value == 6.38
    with pytest.raises(MakersFault, match="not there any more"):
        correct_measurement(store, row, None, Hand(now))
    correct_measurement(store, measured_rows(store, owner)[0], None, Hand(now))
    assert pins_for(store, owner) == {}
    assert "6.38" in changes(store)[0].what
    take_back(store, now)
    assert pins_for(store, owner)["board_thickness"].value == 6.38


def test_what_was_not_done_after_all_leaves_its_measurements(store: Store, now: datetime, figures: Figures) -> None:
    owner = add_instrument(store, "Moss", "", Hand(now)).id
    measured = read_measurements(figures, {"board_thickness": "6.38"})
    done = mark_done(store, owner, "thicknessed", Hand(now), Noted(measured=measured))
    with pytest.raises(Conflict):
        not_done_after_all(store, replace(done, version=0), Hand(now))
    not_done_after_all(store, done, Hand(now))
    assert operations_done(store, owner) == []
    assert pins_for(store, owner)["board_thickness"].value == 6.38
    take_back(store, now)
    assert [each.operation for each in operations_done(store, owner)] == ["thicknessed"]
    assert measured_rows(store, owner)[0].done == done.id
