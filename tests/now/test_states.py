"""The bench from the store: a description with faults closes nothing else; readings that are too old are said so."""

from datetime import UTC, datetime, timedelta
from importlib.resources import files
from pathlib import Path

import pytest

from gramil.faults import MakersFault
from gramil.now.open_now import Conditions, InstrumentState, open_now
from gramil.now.states import WorkedOut, bench_of_files, bench_of_store, done_in
from gramil.shop.instruments import Instrument, add_instrument, instrument, save_revision
from gramil.shop.made_file import parse_made
from gramil.store.opening import Store, create_store
from gramil.store.writing import Hand

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))
NOW = datetime(2026, 1, 19, 9, tzinfo=UTC)
TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")


def nothing_stale(_: Store, __: Instrument) -> dict[str, str]:
    return {}


def test_an_instrument_with_faults_is_told_and_the_others_stand(tmp_path: Path) -> None:
    with create_store(tmp_path / "s.gramil") as store:
        add_instrument(store, "Tarn", TARN, Hand(NOW))
        add_instrument(store, "Broken", TARN.replace("length = 630", "length = true"), Hand(NOW))
        bench = bench_of_store(store, NOW, WorkedOut(nothing_stale))
    assert [one.name for one in bench.instruments] == ["Tarn"]
    assert bench.faults[0].startswith("Broken: ")


def test_the_latest_revision_counts(tmp_path: Path) -> None:
    with create_store(tmp_path / "s.gramil") as store:
        add_instrument(store, "Tarn", TARN, Hand(NOW))
        assert "bound" in bench_of_store(store, NOW, WorkedOut(nothing_stale)).instruments[0].work.operations
        unbound = TARN.replace("[binding]\nthickness = 1.8", "[binding]\nthickness = 0")
        save_revision(store, instrument(store, "Tarn"), unbound, Hand(NOW))
        assert "bound" not in bench_of_store(store, NOW, WorkedOut(nothing_stale)).instruments[0].work.operations


def test_an_instrument_that_is_not_there_is_told(tmp_path: Path) -> None:
    with create_store(tmp_path / "s.gramil") as store, pytest.raises(MakersFault, match="no such instrument: Fell"):
        bench_of_store(store, NOW, WorkedOut(nothing_stale), ["Fell"])


def test_readings_of_days_ago_close_gluing_and_say_why() -> None:
    late = NOW.replace(tzinfo=None) + timedelta(days=3)
    bench = bench_of_files([EXAMPLES / "tarn.toml"], EXAMPLES / "shop.toml", late)
    closed = [each for each in open_now(bench.instruments, bench.shop)[0].closed if each.by == "reading"]
    assert closed
    assert "read it again" in closed[0].why


def test_what_is_noted_later_is_not_done_yet() -> None:
    early = datetime(2025, 12, 9, 9)
    bench = bench_of_files([EXAMPLES / "tarn.toml"], EXAMPLES / "shop.toml", early)
    assert "slotted" not in bench.instruments[0].done
    assert "wood_chosen" in bench.instruments[0].done


def test_a_day_without_an_hour_counts_from_its_evening() -> None:
    text = 'gramil = 1\n[[done]]\noperation = "a"\ndate = 2026-01-02\n[[done]]\noperation = "b"\n'
    text += '[[done]]\noperation = "c"\ndate = 2026-01-02T09:30:00\n'
    done = done_in(parse_made(text))
    assert done["a"] == datetime(2026, 1, 2, 18)
    assert done["b"] < datetime(2000, 1, 1)
    assert done["c"] == datetime(2026, 1, 2, 9, 30)


def test_slots_to_be_cut_after_arching_are_not_opened_before_the_arch() -> None:
    """*Fell* with its board laid out: the next cuts are its ends; its slots would be cut too shallow for the arch."""
    (fell,) = open_now(*opened("fell", datetime(2025, 10, 26, 9)))
    found = {each.operation.name for each in fell.open}
    assert "slotted" not in found
    assert {"nut_end_cut", "tail_end_cut"} <= found
    why = next(each.why for each in fell.closed if each.operation.name == "slotted")
    assert "arch the playing surface" in why
    (later,) = open_now(*opened("fell", datetime(2025, 12, 14, 9)))
    assert "slotted" in {each.operation.name for each in later.open}


def opened(name: str, now: datetime) -> tuple[tuple[InstrumentState, ...], Conditions]:
    bench = bench_of_files([EXAMPLES / f"{name}.toml"], None, now)
    return bench.instruments, bench.shop
