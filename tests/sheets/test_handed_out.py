"""Sheets handed out: stale from when something else would be printed until it is printed again or its work is done."""

import json
import re
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime
from importlib.resources import files
from pathlib import Path

import pytest
from tests.in_a_store import sheets_given

from gramil.acts.descriptions import keep, return_to
from gramil.acts.sheets import hand_out
from gramil.acts.tools import check_jig
from gramil.acts.work import measure, note_done
from gramil.change.as_made import with_readings
from gramil.change.in_store import figures_in_store, work_in_store
from gramil.description.writing import set_key
from gramil.doorway.verify import verify
from gramil.faults import MakersFault
from gramil.formatter import formatter_of
from gramil.graph import Pin
from gramil.sheets.handed_out import kept, sheets_that_differ, stale_in_store
from gramil.sheets.own_sheet import every_sheet, sheet_named
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.instruments import Instrument, add_instrument, instrument
from gramil.shop.operations_done import Measurement, Noted
from gramil.shop.own_operations import save_own_operations
from gramil.shop.sheets_given import give_sheet
from gramil.shop.shop_in_store import bring_in_shop
from gramil.store.items import item_named
from gramil.store.migrating import migrate, migrations
from gramil.store.opening import Store, create_store, open_store, upgrade_store
from gramil.store.writing import Hand

EXAMPLES = files("gramil") / "data" / "examples"
NOW = datetime(2026, 1, 19, 9, 0, tzinfo=UTC)
TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
OWN = """\
[operation.crown_filed]
what = "File the crown"
part = "board"
after = ["arched"]
hands = 20
figures = ["board_thickness"]
"""


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    with create_store(tmp_path / "shop.gramil") as opened:
        bring_in_shop(opened, (EXAMPLES / "shop.toml").read_text(encoding="utf-8"), "shop.toml", Hand(NOW))
        add_instrument(opened, "Tarn", TARN, Hand(NOW))
        yield opened


def tarn(store: Store) -> Instrument:
    return instrument(store, "Tarn")


def give(store: Store, *names: str) -> None:
    figures, work = figures_in_store(store, tarn(store)), work_in_store(store, tarn(store))
    found = [sheet_named(name, figures, work) for name in names]
    hand_out(store, tarn(store), [each for each in found if each is not None], Hand(NOW))
    assert None not in found


def stale(store: Store) -> dict[str, str]:
    return {each.given.title: each.why for each in stale_in_store(store, tarn(store))}


def read(store: Store, address: str, value: float) -> None:
    measure(store, tarn(store), [Measurement(address, f"{value} mm", value, "mm")], Hand(NOW))


def test_a_jig_that_changed_is_told_by_the_figure_that_it_changed(store: Store) -> None:
    """The reference face lies the sled's constant from the cut: 0.15 mm more of it is 0.15 mm more to set."""
    give(store, "taper", "slot")
    assert stale(store) == {}
    check_jig(store, item_named(store, "jig", "taper sled"), 62.55, Hand(NOW))
    found = stale(store)
    assert list(found) == ["taper"]
    was, now = (float(figure) for figure in re.findall(r"(\d+\.\d\d) mm", found["taper"]))
    assert now - was == pytest.approx(62.55 - 62.4)
    give(store, "taper")
    assert stale(store) == {}
    assert len(sheets_given(store)) == 3


def test_a_changed_description_makes_those_sheets_stale_that_show_it_and_its_return_makes_them_true(
    store: Store,
) -> None:
    give(store, "slot", "relief")
    keep(store, tarn(store), set_key(TARN, "board.thickness", "7 mm"), Hand(NOW))
    found = stale(store)
    assert "slot" in found
    return_to(store, tarn(store), 1, Hand(NOW))
    assert stale(store) == {}


def test_another_name_or_a_new_note_makes_no_sheet_stale(store: Store) -> None:
    give(store, "slot")
    keep(store, tarn(store), TARN + "\n# a note\n", Hand(NOW))
    assert stale(store) == {}


def test_a_sheet_whose_work_is_done_is_stale_no_more(store: Store) -> None:
    give(store, "taper")
    check_jig(store, item_named(store, "jig", "taper sled"), 62.55, Hand(NOW))
    assert list(stale(store)) == ["taper"]
    note_done(store, tarn(store), "tapered", Hand(NOW))
    assert stale(store) == {}


def test_its_own_reading_makes_no_sheet_stale_and_one_before_it_does(store: Store) -> None:
    """What is left under the slots follows the board's thickness, which is measured before them."""
    give(store, "blank", "slot")
    read(store, "slot_depth_setting", 3.4)
    assert stale(store) == {}
    thin = (Measurement("board_thickness", "6.1 mm", 6.1, "mm"),)
    note_done(store, tarn(store), "thicknessed", Hand(NOW), Noted(measured=thin))
    assert list(stale(store)) == ["slot"]


def test_a_sheet_that_is_not_needed_is_not_handed_out_and_one_that_is_needed_no_more_is_stale(store: Store) -> None:
    with pytest.raises(MakersFault, match="does not need it"):
        give(store, "slot", "level")
    assert sheets_given(store) == []
    give(store, "board-binding")
    keep(store, tarn(store), re.sub(r"\[binding\]\n.*?\n\n", "", TARN, flags=re.DOTALL), Hand(NOW))
    assert stale(store) == {"board-binding": "this instrument does not need it any more"}


def test_a_sheet_of_a_maker_s_own_operation_is_kept_as_printed_too(store: Store) -> None:
    save_own_operations(store, OWN, Hand(NOW))
    give(store, "crown_filed")
    assert stale(store) == {}
    keep(store, tarn(store), set_key(TARN, "board.thickness", "7 mm"), Hand(NOW))
    found = stale(store)
    assert found == {"crown_filed": "Finished thickness at the crest at the tail end: 6.30 mm on it, now 7.00 mm"}


def test_what_an_older_program_noted_is_judged_by_its_settings(store: Store) -> None:
    sled = item_named(store, "jig", "taper sled")
    given = give_sheet(store, tarn(store).id, 1, "taper", "", Hand(NOW))
    store.rows(
        "INSERT INTO sheet_setting (sheet, tool, name, value) VALUES (?, ?, 'constant', 62.4)", (given.id, sled.id)
    )
    assert stale(store) == {}
    keep(store, tarn(store), set_key(TARN, "board.thickness", "7 mm"), Hand(NOW))
    assert stale(store) == {}
    check_jig(store, sled, 62.55, Hand(NOW))
    assert stale(store) == {"taper": "taper sled has changed: constant was 62.4 mm, now 62.55 mm"}


def test_a_store_of_the_form_before_is_brought_up_with_its_sheets(tmp_path: Path) -> None:
    path = tmp_path / "old.gramil"
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("BEGIN")
        migrate(connection, migrations()[:3])
        connection.execute("INSERT INTO instrument (id, version, name) VALUES (1, 1, 'Tarn')")
        connection.execute(
            "INSERT INTO revision (instrument, number, text, at) VALUES (1, 1, '', '2026-01-19T09:00:00+00:00')"
        )
        connection.execute(
            "INSERT INTO sheet (instrument, revision, title, at) VALUES (1, 1, 'slot', '2026-01-19T09:00:00+00:00')"
        )
        connection.execute("COMMIT")
    upgrade_store(path, NOW)
    assert verify(path) == ()
    with open_store(path) as store:
        assert [(each.title, each.printed) for each in sheets_given(store)] == [("slot", "")]


def test_only_sheets_on_which_something_else_would_be_printed_are_to_be_printed_again(store: Store) -> None:
    """A reading at the slots changes no sheet of work before it, nor its own; each by the figures that it goes by."""
    figures, work = figures_in_store(store, tarn(store)), work_in_store(store, tarn(store))
    for address, value in (("board_thickness", 6.1), ("slot_depth_setting", 3.4), ("nut_width", 43.5)):
        made = with_readings(figures, {address: Pin(value, "")})
        old, new = (
            {each.setup.name: kept(each) for each in every_sheet(state, work) if not each.setup.closed}
            for state in (figures, made)
        )
        differ = {name for name in new if old.get(name) != new[name]}
        assert {paper.name for paper in sheets_that_differ(figures, made, work)} == differ, address
        asked = {each.setup.name for each in every_sheet(figures, work) if address in map(str, each.setup.boxes)}
        assert not asked & differ
    assert sheets_that_differ(figures, made, work, {each.name for each in work.operations.values()}) == ()


def test_what_is_kept_is_what_is_printed_its_cautions_and_all_but_what_was_made(store: Store) -> None:
    """Another wood has other dust: that stands among the cautions of what is sawn of it."""
    give(store, "slot")
    keep(store, tarn(store), set_key(TARN, "board.wood", "ebony"), Hand(NOW))
    assert list(stale(store)) == ["slot"]
    figures, work = figures_in_store(store, tarn(store)), work_in_store(store, tarn(store))
    sheet = sheet_named("slot", figures, work)
    assert sheet is not None
    page = json.loads(kept(sheet))[0]
    assert page == {**sheet_text(sheet, formatter_of(figures))}
    assert any(line.startswith("Dust.") for line in page["caution"])


@pytest.mark.parametrize("operation", ["bridge_placed", "bridge_glued", "neck_joint_cut"])
def test_a_page_that_operations_share_is_true_for_whichever_it_was_printed(store: Store, operation: str) -> None:
    """Each cautions of its own tools on it."""
    give(store, operation)
    assert stale(store) == {}
