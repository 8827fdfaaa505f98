"""The day of noted work is held against the days of what comes before it and of what waits for it.

The order and the hours in clamps are those of the list: the ledge before the binding (twelve hours in clamps), the
binding before the markers, the markers before the arch.
"""

from datetime import datetime, timedelta, timezone
from importlib.resources import files
from pathlib import Path

import pytest

from gramil.change.days_in_order import before_it, days_of_record, out_of_order
from gramil.description.reading import read_description
from gramil.shop.made_file import Done, Made
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import usual_work

HERE = timezone(timedelta(hours=1))


@pytest.fixture(scope="module")
def work() -> Work:
    tarn = Path(str(files("gramil") / "data" / "examples" / "tarn.toml"))
    return needed(usual_work(), read_description(tarn).instrument)


def at(day: int, hour: int = 9) -> datetime:
    return datetime(2026, 11, day, hour, tzinfo=HERE)


def test_the_list_is_as_these_tests_take_it(work: Work) -> None:
    assert "ledge_cut" in work.operations["bound"].after
    assert work.operations["bound"].clamp == 12
    assert "bound" in work.operations["markers_set"].after
    assert "arched" in work.later["ledge_cut"]


def test_a_day_before_what_comes_before_it_is_asked_about(work: Work) -> None:
    done = {"ledge_cut": at(20)}
    said = out_of_order(work, done, "bound", at(19))
    assert said.startswith('2026-11-19 is before the day when "Cut the ledge for the binding" was done, 2026-11-20')
    assert out_of_order(work, done, "arched", at(19)), "through any chain"
    assert not out_of_order(work, done, "bound", at(20, 7)), "the same day: the hour may be that of the note"
    assert not out_of_order(work, done, "bound", at(21))


def test_a_day_before_the_clamps_come_off_is_asked_about(work: Work) -> None:
    """Glued at five in the afternoon it is held until five in the morning; glued at nine, until nine in the evening."""
    late, early = {"bound": at(20, 17)}, {"bound": at(20, 9)}
    assert 'Glue the binding to the board" was over, 2026-11-21' in out_of_order(work, late, "markers_set", at(20, 18))
    assert not out_of_order(work, late, "markers_set", at(21, 8))
    assert not out_of_order(work, early, "markers_set", at(20, 18))


def test_a_day_after_what_waits_for_it_is_asked_about(work: Work) -> None:
    """Noted late, with the day of the note: the record would say that it was done after all."""
    done = {"bound": at(10), "arched": at(12)}
    said = out_of_order(work, done, "ledge_cut", at(15))
    assert said.startswith('2026-11-15 is after the day when "Glue the binding to the board" was done, 2026-11-10')
    assert not out_of_order(work, done, "ledge_cut", at(10))


def test_what_has_no_place_in_the_order_is_not_asked_about(work: Work) -> None:
    done = {"bound": at(10)}
    for name in ("measured", "neck_sawn", "slot"):
        assert not out_of_order(work, done, name, at(1))
        assert not out_of_order(work, done, name, at(30))


def test_days_of_a_record_are_read_by_the_clock_here() -> None:
    made = Made((Done("bound", "2026-11-20"), Done("arched", ""), Done("tapered", "2026-11-20T23:30:00+00:00")))
    assert days_of_record(made, at(1)) == {"bound": at(20, 0), "tapered": at(21, 0).replace(minute=30)}


def test_what_is_taken_back_was_noted_by_then() -> None:
    moments = ["2026-11-20T10:00:00+01:00", "2026-11-18T10:00:00+01:00"]
    assert before_it(moments, at(19)) == "2026-11-19 is before this was noted, 2026-11-20"
    assert not before_it(moments, at(20))
    assert not before_it([], at(1))
