"""What is made, on the command line: a reading is judged as it is noted, a change after the cut says what is lost."""

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from gramil.cli import gramil
from gramil.shop.instruments import instrument
from gramil.shop.operations_done import measurements
from gramil.store.opening import open_store

from ..conftest import EXAMPLES

RECORD = """gramil = 1

[made]
units = "mm"

[[done]]
operation = "wood_weighed"
date = 2026-01-01

[[done]]
operation = "thicknessed"
date = 2026-01-02

[[done]]
operation = "slotted"
date = 2026-01-03
"""


def run(*words: str) -> Result:
    return CliRunner().invoke(gramil, list(words))


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """*Tarn* with a scale of 650 mm, slotted by that, and the shop's files beside it."""
    for name in ("tarn.toml", "shop.toml", "shop-air-invented.csv", "house-air-invented.csv"):
        shutil.copy(str(EXAMPLES / name), tmp_path / name)
    shutil.copy(str(EXAMPLES / "cupboard-air-invented.csv"), tmp_path)
    (tmp_path / "tarn.made.toml").write_text(RECORD)
    scale(tmp_path, "630", "650")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def scale(folder: Path, old: str, new: str) -> None:
    file = folder / "tarn.toml"
    file.write_text(file.read_text().replace(f"length = {old}  ", f"length = {new}  "))


def note(folder: Path, operation: str, *readings: str) -> str:
    """Noted as done, with what was measured; its answer."""
    record = (folder / "tarn.made.toml").read_text().replace('[[done]]\noperation = "slotted"\ndate = 2026-01-03\n', "")
    (folder / "tarn.made.toml").write_text(record)
    words = [word for each in readings for word in ("--measured", each)]
    answer = run("done", operation, "tarn.toml", "--shop", "shop.toml", "--at", "2026-01-05T10:00", "--as-read", *words)
    assert answer.exit_code == 0, answer.output
    return answer.output


def test_slots_cut_too_shallow_are_to_be_deepened(shop: Path) -> None:
    """The tang alone is 1.60 deep."""
    told = note(shop, "slotted", "slot_depth_setting=1.5mm")
    assert "Rework: fret slots cut: too shallow by 1.4" in told
    assert "deepen the slots" in told
    assert "Stop: depth of the slots" in told
    check = run("check", "tarn.toml", "--shop", "shop.toml", "--made")
    assert check.exit_code == 1
    assert "REWORK     fret slots cut: too shallow by" in check.output
    assert "STOP       depth of the slots" in check.output
    sheet = run("sheet", "deepen", "tarn.toml", "--shop", "shop.toml", "--made", "--out", "deepen.pdf")
    assert sheet.exit_code == 0
    assert "does not need it" not in sheet.output
    assert (shop / "deepen.pdf").exists()


def test_slots_right_through_the_board_lose_it(shop: Path) -> None:
    assert "Lost: fret slots cut: too deep by 74" in note(shop, "slotted", "slot_depth_setting=77mm")
    check = run("check", "tarn.toml", "--shop", "shop.toml", "--made")
    assert "LOST       with the board: board planed to thickness" in check.output
    assert check.exit_code == 1


def test_a_sheets_reading_of_a_record_is_taken_and_judged(shop: Path) -> None:
    """The ledge's own box on its sheet: a field of what was chosen from the shop."""
    told = note(shop, "ledge_cut", "ledge_choice.ledge=1.2mm")
    assert "Rework: ledge for the binding cut: too narrow by 0." in told


def test_slots_as_drawn_are_still_right(shop: Path) -> None:
    assert "Still right: fret slots cut." in note(shop, "slotted", "slot_depth_setting=3.00mm")
    check = run("check", "tarn.toml", "--shop", "shop.toml", "--made")
    assert "REWORK" not in check.output
    assert "depth of the slots" not in check.output


def test_made_work_is_in_the_json_too(shop: Path) -> None:
    note(shop, "slotted", "slot_depth_setting=1.5mm")
    found = json.loads(run("check", "tarn.toml", "--shop", "shop.toml", "--made", "--json").output)
    (slots,) = [each for each in found["told"]["made"] if each["what"] == "fret slots cut"]
    assert (slots["standing"], slots["address"], slots["is_now"]) == ("rework", "slot_depth_setting", 1.5)


def test_a_revision_brought_in_after_the_cut_says_what_is_lost(shop: Path) -> None:
    store = "shop.gramil"
    assert run("store", "new", store, "--shop", "shop.toml", "tarn.toml", "--at", "2026-01-06T09:00").exit_code == 0
    fine = run("check", "Tarn", "--store", store)
    assert "LOST" not in fine.output
    scale(shop, "650", "640")
    told = run("store", "import", store, "tarn.toml", "--at", "2026-01-07T09:00")
    assert "Tarn: saved as a revision." in told.output
    # the last fret of 19 lies at (1 - 2^(-19/12)) of the scale: 6.66 mm nearer on the shorter one
    lost = "LOST     fret slots cut: too far from the nut by 6.66 mm, fret 19"
    assert lost in told.output
    assert "begin a new board" in told.output
    assert "with the board: board planed to thickness" in told.output
    check = run("check", "Tarn", "--store", store)
    assert "LOST       fret slots cut" in check.output
    assert check.exit_code == 1


def test_what_hangs_on_a_lost_board_is_closed(shop: Path) -> None:
    store = "shop.gramil"
    run("store", "new", store, "--shop", "shop.toml", "tarn.toml", "--at", "2026-01-06T09:00")
    open_before = run("now", "--store", store, "--at", "2026-01-06T10:00", "--every").output
    assert "[slots_measured]" in open_before
    scale(shop, "650", "640")
    run("store", "import", store, "tarn.toml", "--at", "2026-01-07T09:00")
    now = run("now", "--store", store, "--at", "2026-01-07T10:00", "--every").output
    assert "LOST    fret slots cut" in now
    open_now = [line for line in now.splitlines() if "OPEN" in line]
    assert open_now
    assert not any("[slots_measured]" in line for line in open_now)
    assert "lost: fret slots cut: too far from the nut by 6.66 mm" in now
    assert "[sides_thicknessed]" in now, "the sides do not hang on the board"
    scale(shop, "640", "650")
    run("store", "import", store, "tarn.toml", "--at", "2026-01-08T09:00")
    assert "[slots_measured]" in run("now", "--store", store, "--at", "2026-01-08T10:00", "--every").output


def test_a_lost_board_is_begun_anew_in_one_change(shop: Path) -> None:
    """Its work is open again, its readings are gone, and the neck's stay; one undo brings all of it back."""
    store = "shop.gramil"
    record = (shop / "tarn.made.toml").read_text()
    measured = 'date = 2026-01-03\nmeasured = { slot_depth_setting = "3.05 mm" }\n'
    own = '\n[[done]]\noperation = "measured"\n'
    own += 'measured = { "fret_position[12]" = "325.01 mm", neck_depth_first = "21 mm" }\n'
    (shop / "tarn.made.toml").write_text(record.replace("date = 2026-01-03\n", measured) + own)
    assert run("store", "new", store, "--shop", "shop.toml", "tarn.toml", "--at", "2026-01-06T09:00").exit_code == 0
    scale(shop, "650", "640")
    told = run("store", "import", store, "tarn.toml", "--at", "2026-01-07T09:00").output
    assert "When the board is begun anew: gramil store anew shop.gramil Tarn board" in told
    anew = run("store", "anew", store, "Tarn", "board", "--at", "2026-01-08T09:00")
    assert anew.output == (
        "Tarn: the board is begun anew. Open again: board planed to thickness, fret slots cut.\n"
        "Written off: persimmon 2.\nThe old piece is written off.\n"
    )
    assert "LOST" not in run("check", "Tarn", "--store", store).output
    assert "[thicknessed]" in run("now", "--store", store, "--at", "2026-01-08T10:00", "--every").output
    assert measured_in(shop / store) == {"neck_depth_first"}
    again = run("store", "anew", store, "Tarn", "board")
    assert "nothing is noted as done on the board" in str(again.exception)
    assert run("store", "undo", store, "--yes").exit_code == 0
    assert "LOST       fret slots cut" in run("check", "Tarn", "--store", store).output
    assert measured_in(shop / store) == {"neck_depth_first", "fret_position[12]", "slot_depth_setting"}


def measured_in(store: Path) -> set[str]:
    with open_store(store, to_read=True) as opened:
        return {each.address for each in measurements(opened, instrument(opened, "Tarn").id)}


def test_a_piece_that_there_is_not_is_told(shop: Path) -> None:
    run("store", "new", "shop.gramil", "--shop", "shop.toml", "tarn.toml", "--at", "2026-01-06T09:00")
    answer = run("store", "anew", "shop.gramil", "Tarn", "lid")
    assert 'no piece called "lid"' in str(answer.exception)
    assert "board" in str(answer.exception)


def test_work_that_hangs_on_a_lost_board_is_told_so_when_it_is_done_all_the_same(shop: Path) -> None:
    store = "shop.gramil"
    run("store", "new", store, "--shop", "shop.toml", "tarn.toml", "--at", "2026-01-06T09:00")
    scale(shop, "650", "640")
    run("store", "import", store, "tarn.toml", "--at", "2026-01-07T09:00")
    told = run("done", "nut_end_cut", "Tarn", "--store", store, "--at", "2026-01-08T09:00").output
    assert told.startswith("Lost, and this hangs on it: fret slots cut: too far from the nut by 6.66 mm")
    sheet = run("sheet", "bridge_placed", "Tarn", "--store", store, "--out", "bridge.pdf", "--at", "2026-01-08T09:00")
    assert "Lost, and this hangs on it: fret slots cut" in sheet.output
    told = run("done", "sides_thicknessed", "Tarn", "--store", store, "--at", "2026-01-08T09:00").output
    assert "hangs on it" not in told


def test_work_done_by_the_new_revision_is_judged_by_that(shop: Path) -> None:
    """A board that is slotted after the change is slotted by it."""
    store = "shop.gramil"
    (shop / "tarn.made.toml").unlink()
    run("store", "new", store, "--shop", "shop.toml", "tarn.toml", "--at", "2026-01-06T09:00")
    run("done", "thicknessed", "Tarn", "--store", store, "--at", "2026-01-06T10:00")
    scale(shop, "650", "640")
    run("store", "import", store, "tarn.toml", "--at", "2026-01-07T09:00")
    run("done", "slotted", "Tarn", "--store", store, "--at", "2026-01-08T09:00")
    assert "LOST" not in run("check", "Tarn", "--store", store).output


def test_shift_tells_how_everything_made_stands(shop: Path) -> None:
    change = ("shift", "tarn.toml", "--shop", "shop.toml", "--set")
    note = run(*change, "board.wood=ebony").output
    assert "Lost: board planed to thickness: another wood (persimmon, wanted ebony): begin a new board." in note
    assert "Lost: with the board: fret slots cut." in note
    told = run(*change, "board.wood=ebony", "--every").output
    assert "LOST         board planed to thickness: another wood (persimmon, wanted ebony): begin a new board" in told
    assert "LOST         with the board: fret slots cut" in told
    moved = run(*change, "scale.length=650.02", "--every").output
    assert "STILL RIGHT  board planed to thickness, fret slots cut" in moved
