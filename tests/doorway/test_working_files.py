"""The store as files to work with: read by those who read files, they say what the store says."""

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from gramil.air.places import Place, add_place, air_history, import_air
from gramil.description.reading import read_shop
from gramil.doorway.working_files import bring_in_made, made_of, working_files
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.physics.arrays import floats
from gramil.shop.instruments import add_instrument, save_revision
from gramil.shop.made_file import made_beside, parse_made, read_made
from gramil.shop.operations_done import Noted, add_measurements, mark_done, operations_done, pins_for, read_measurements
from gramil.shop.shop_in_store import shop_description
from gramil.store.opening import Store
from gramil.store.writing import Hand
from gramil.wood.air import AirHistory
from gramil.wood.air_log import read_air_log


def test_the_files_say_what_the_store_says(stocked: Store, figures: Figures, tmp_path: Path, now: datetime) -> None:
    bench = add_place(stocked, Place("bench", {}), Hand(now))
    import_air(stocked, bench.id, AirHistory(now, floats([0, 600]), floats([18, 18.5]), floats([41, 42])), Hand(now))
    tarn = save_revision(stocked, add_instrument(stocked, "Tarn", "old", Hand(now)), "new\n", Hand(now))
    add_instrument(stocked, "tarn!", "another\n", Hand(now))
    measured = read_measurements(figures, {"board_thickness": "6.38 mm"})
    mark_done(stocked, tarn.id, "slotted", Hand(now), Noted(measured=measured))
    later = now + timedelta(days=1)
    add_measurements(stocked, tarn.id, read_measurements(figures, {"board_thickness": 6.31}), Hand(later))
    files = working_files(stocked)
    for name, text in files.items():
        (tmp_path / name).write_text(text, encoding="utf-8", newline="")
    assert sorted(files) == [f"air-{bench.id}.csv", "shop.toml", "tarn-2.toml", "tarn.made.toml", "tarn.toml"]
    assert files["tarn.toml"] == "new\n"
    assert read_shop(tmp_path / "shop.toml").shop.model_dump() == shop_description(stocked).shop.model_dump()
    record = read_made(made_beside(tmp_path / "tarn.toml"))
    assert record.operations == ("slotted", "measured")
    assert record.pins(figures) == pins_for(stocked, tarn.id)
    back, _ = read_air_log(files[f"air-{bench.id}.csv"])
    by_clock = air_history(stocked, bench.id, by_clock=True)
    assert by_clock is not None
    assert (back.origin, list(back.humidity)) == (by_clock.origin, list(by_clock.humidity))


def test_a_record_of_what_is_made_can_be_brought_in(store: Store, figures: Figures, now: datetime) -> None:
    tarn = add_instrument(store, "Tarn", "", Hand(now))
    text = (
        'gramil = 1\n[made]\nunits = "in"\n'
        '[[done]]\noperation = "slotted"\ndate = 2026-10-30\nmeasured = { board_thickness = 0.25 }\n'
        '[[done]]\noperation = "measured"\ndate = 2026-10-31\nmeasured = { board_width = "54.8 mm" }\n'
        '[[done]]\noperation = "bound"\nnote = "left side twice"\n'
    )
    bring_in_made(store, tarn, parse_made(text), figures, Hand(now))
    done = operations_done(store, tarn.id)
    assert [(each.operation, each.at, each.note) for each in done] == [
        ("slotted", "2026-10-30T00:00:00+01:00", ""),
        ("bound", "2026-11-02T09:30:00+01:00", "left side twice"),
    ]
    assert {address: pin.value for address, pin in pins_for(store, tarn.id).items()} == {
        "board_thickness": 6.35,
        "board_width": 54.8,
    }
    assert made_of(store, tarn).pins(figures) == pins_for(store, tarn.id)
    with pytest.raises(MakersFault, match="already"):
        bring_in_made(store, tarn, parse_made(text.replace("0.25", "0.26")), figures, Hand(now))
    assert pins_for(store, tarn.id)["board_thickness"].value == 6.35


def test_a_record_with_faults_is_not_brought_in_by_half(store: Store, figures: Figures, now: datetime) -> None:
    tarn = add_instrument(store, "Tarn", "", Hand(now))
    text = 'gramil = 1\n[[done]]\noperation = "a"\n[[done]]\noperation = "b"\nmeasured = { board_widt = 54.8 }\n'
    with pytest.raises(MakersFault, match="no such figure"):
        bring_in_made(store, tarn, parse_made(text), figures, Hand(now))
    assert operations_done(store, tarn.id) == []
