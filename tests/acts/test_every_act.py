"""Every act: one change of the record, taken back by one undo; cut short anywhere, all of it or nothing is there."""

import inspect
import pkgutil
import shutil
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import datetime
from importlib import import_module
from pathlib import Path

import pytest

import gramil.acts
from gramil.acts import (
    air,
    bringing_in,
    corrections,
    descriptions,
    left_over,
    own_operations,
    plans,
    record,
    sheets,
    standing,
    tools,
    wood,
    work,
)
from gramil.air.air_of_places import load_air
from gramil.air.outlooks import Spell
from gramil.air.places import place, places
from gramil.change.in_store import figures_in_store, work_in_store
from gramil.change.made_in_store import work_on
from gramil.faults import MakersFault
from gramil.sheets.own_sheet import setup_sheets
from gramil.shop.corrections import latest_readings, measured_rows
from gramil.shop.instruments import Instrument, instrument, revision, revisions
from gramil.shop.operations_done import Measurement, Noted, measurements, operations_done
from gramil.shop.own_operations import own_operations as kept_list
from gramil.shop.stock import Blank, Part, blank_named, part_named, promises
from gramil.store.items import Item, items
from gramil.store.opening import Store, open_store
from gramil.store.undo import last_change, undo
from gramil.store.writing import Hand, changes, writing

from .laid import LIST, NOW, THICK, Killed, Watched, lay_out, matching, state, state_in, states_in

BY_THEMSELVES = {
    "record.take_back": "the undo itself: tests/store/test_undo.py",
    "record.put_back": "another file in the record's place: tests/doorway/test_backup.py",
}
"""Acts that no undo takes back, and where they are tried."""
LOFT = 'gramil = 1\n[shop]\nname = "loft"\nunits = "mm"\n[[saw]]\nname = "fine saw"\nkerf = 0.5\ncuts = "face down"\n'


def tarn(store: Store) -> Instrument:
    return instrument(store, "Tarn")


def note_done(store: Store, _: Path) -> None:
    noted = Noted("a little thin", 1.5, ("board.jpg",), (THICK,))
    assert work.note_done(store, tarn(store), "thicknessed", Hand(NOW), noted)


def note_and_settle(store: Store, folder: Path) -> None:
    noted, text = Noted(measured=(THICK,)), (folder / "mere.toml").read_text(encoding="utf-8")
    assert work.note_and_settle(store, tarn(store), "thicknessed", Hand(NOW), noted, text)
    assert revisions(store, tarn(store).id)[-1].why == "as made: thicknessed"


def note_and_keep(store: Store, _: Path) -> None:
    def note() -> tuple[work.UsedUp, ...]:
        return work.note_done(store, tarn(store), "thicknessed", Hand(NOW))

    _, (kept,) = left_over.note_and_keep(store, "done: thicknessed, Tarn", Hand(NOW), note, [(90.0, 60.0, 7.0)])
    assert kept.name.endswith(", left over")


def together(store: Store, _: Path) -> None:
    acts = [lambda name=name: work.note_done(store, tarn(store), name, Hand(NOW)) for name in ("slotted", "arched")]
    assert len(work.together(store, "done: 2 operations", Hand(NOW), acts)) == 2


def measure(store: Store, _: Path) -> None:
    work.measure(store, tarn(store), [replace(THICK, value=6.4)], Hand(NOW))


def not_done(store: Store, _: Path) -> None:
    work.not_done_after_all(store, operations_done(store, tarn(store).id)[0], Hand(NOW))


def begin_anew(store: Store, _: Path) -> None:
    work.begin_anew(store, instrument(store, "Fell"), "board", Hand(NOW))


def reserve(store: Store, _: Path) -> None:
    fell = instrument(store, "Fell")
    assert wood.reserve(store, matching(store, fell), {"Fell": fell.id}, Hand(NOW))


def let_go(store: Store, _: Path) -> None:
    wood.let_go(store, promises(store)[0], Hand(NOW))


def keep_wood(store: Store, _: Path) -> None:
    wood.keep_wood(store, replace(blank_named(store, "plank"), name="short plank", length=700.0), Hand(NOW))


def strike_wood(store: Store, _: Path) -> None:
    wood.strike_wood(store, blank_named(store, "offcut"), Hand(NOW))


def strike_part(store: Store, _: Path) -> None:
    with writing(store, "a part, and struck", Hand(NOW)):
        wood.make_ahead(store, Part("sides of June", "bent sides", {"length": "760 mm"}, "walnut"), Hand(NOW))
        wood.make_ahead(store, Part("sides of July", "bent sides", {"length": "760 mm"}, "walnut"), Hand(NOW))
        wood.strike_part(store, part_named(store, "sides of June"), Hand(NOW))


def lay(store: Store, _: Path) -> None:
    wood.lay(store, "bridge blank", "attic", Hand(NOW))


def weigh(store: Store, _: Path) -> None:
    wood.weigh(store, "bridge blank", 48.1, Hand(NOW))


def move(store: Store, _: Path) -> None:
    wood.move(store, blank_named(store, "plank"), "attic", Hand(NOW))


def split(store: Store, _: Path) -> None:
    parts = [Blank("short", "", 400.0, 90.0, 30.0), Blank("rest", "", 490.0, 90.0, 30.0)]
    wood.split(store, blank_named(store, "plank"), parts, Hand(NOW))


def join(store: Store, _: Path) -> None:
    with writing(store, "one more plank", Hand(NOW)):
        wood.keep_wood(store, Blank("other plank", "walnut", 900.0, 90.0, 30.0), Hand(NOW))
        wood.join(store, blank_named(store, "plank"), blank_named(store, "other plank"), Hand(NOW))


def make_ahead(store: Store, _: Path) -> None:
    wood.make_ahead(store, Part("sides of May", "bent sides", {"length": "760 mm"}, "walnut"), Hand(NOW))


def keep_week(store: Store, _: Path) -> None:
    plans.keep_week(store, [("Tarn", "thicknessed")], Hand(NOW))


def mark(store: Store, _: Path) -> None:
    standing.mark(store, tarn(store), "done", Hand(NOW))


def change_place(store: Store, _: Path) -> None:
    air.change_place(store, place(store, "attic"), {"room": 12.0}, Hand(NOW))


def keep_tool(store: Store, _: Path) -> None:
    tools.keep_tool(store, Item("saw", "fine saw", {"kerf": 0.5, "cuts": "face down"}), Hand(NOW))


def strike_tool(store: Store, _: Path) -> None:
    tools.strike_tool(store, items(store, "block")[-1], Hand(NOW))


def check_jig(store: Store, _: Path) -> None:
    tools.check_jig(store, items(store, "jig")[0], 62.5, Hand(NOW))


def try_saw(store: Store, _: Path) -> None:
    tools.try_saw(store, items(store, "saw")[0], [0.55, 0.56, 0.55], Hand(NOW))


def bring_in_description(store: Store, _: Path) -> None:
    tools.bring_in_description(store, LOFT, "loft.toml", Hand(NOW))


def name_place(store: Store, _: Path) -> None:
    air.name_place(store, "drying box", Hand(NOW))


def read_meter(store: Store, _: Path) -> None:
    air.read_meter(store, "attic", 19.5, 44.0, Hand(NOW))


def keep_outlook(store: Store, _: Path) -> None:
    air.keep_outlook(store, "attic", [Spell(datetime(2026, 1, 20), 20.0, 44.0)], Hand(NOW))


def bring_in_air(store: Store, folder: Path) -> None:
    history, _ = load_air(folder / "shop-air-invented.csv")
    assert air.bring_in_air(store, "attic", history, Hand(NOW)).added > 100


def correct_reading(store: Store, _: Path) -> None:
    of = place(store, "shop")
    seen = latest_readings(store, of.id, 1)[0].reading
    air.correct_reading(store, of, seen, Hand(NOW), right=replace(seen, humidity=44.0))


def correct_weighing(store: Store, _: Path) -> None:
    piece = next(each for each in items(store, "piece") if each.name == "bridge blank")
    corrections.correct_weighing(store, piece, 0, None, Hand(NOW, why="misread"))


def correct_measurement(store: Store, _: Path) -> None:
    seen = measured_rows(store, tarn(store).id)[0]
    corrections.correct_measurement(store, seen, replace(THICK, written="6.53 mm", value=6.53), Hand(NOW))


def begin(store: Store, folder: Path) -> None:
    descriptions.begin(store, "Mere", (folder / "mere.toml").read_text(encoding="utf-8"), Hand(NOW))


def keep(store: Store, folder: Path) -> None:
    descriptions.keep(store, tarn(store), (folder / "mere.toml").read_text(encoding="utf-8"), Hand(NOW, why="tried"))


def return_to(store: Store, _: Path) -> None:
    descriptions.return_to(store, tarn(store), 1, Hand(NOW))


def keep_list(store: Store, _: Path) -> None:
    own_operations.keep_list(store, LIST.replace("50", "55"), Hand(NOW), seen=kept_list(store))


def take_list_away(store: Store, _: Path) -> None:
    kept = kept_list(store)
    assert kept is not None
    own_operations.take_list_away(store, kept, Hand(NOW))


def hand_out(store: Store, _: Path) -> None:
    figures, needed = figures_in_store(store, tarn(store)), work_in_store(store, tarn(store))
    given = [sheet for sheet in setup_sheets(figures, needed) if not sheet.setup.closed][:3]
    assert len(sheets.hand_out(store, tarn(store), given, Hand(NOW))) == 3


def bring_in(store: Store, folder: Path) -> None:
    bringing_in.bring_in(store, [folder / "scree.toml", folder / "mere.toml"], Hand(NOW))


def bring_in_list(store: Store, folder: Path) -> None:
    bringing_in.bring_in_list(store, folder / "own.toml", "Tarn", Hand(NOW))


ACTS: Mapping[str, Callable[[Store, Path], None]] = {
    "work.note_done": note_done,
    "work.note_and_settle": note_and_settle,
    "left_over.note_and_keep": note_and_keep,
    "work.measure": measure,
    "work.together": together,
    "work.not_done_after_all": not_done,
    "work.begin_anew": begin_anew,
    "wood.reserve": reserve,
    "wood.let_go": let_go,
    "wood.keep_wood": keep_wood,
    "wood.strike_wood": strike_wood,
    "wood.strike_part": strike_part,
    "wood.lay": lay,
    "wood.weigh": weigh,
    "wood.move": move,
    "wood.split": split,
    "wood.join": join,
    "wood.make_ahead": make_ahead,
    "standing.mark": mark,
    "plans.keep_week": keep_week,
    "air.change_place": change_place,
    "tools.keep_tool": keep_tool,
    "tools.strike_tool": strike_tool,
    "tools.check_jig": check_jig,
    "tools.try_saw": try_saw,
    "tools.bring_in_description": bring_in_description,
    "air.name_place": name_place,
    "air.read_meter": read_meter,
    "air.bring_in_air": bring_in_air,
    "air.keep_outlook": keep_outlook,
    "air.correct_reading": correct_reading,
    "corrections.correct_weighing": correct_weighing,
    "corrections.correct_measurement": correct_measurement,
    "descriptions.begin": begin,
    "descriptions.keep": keep,
    "descriptions.return_to": return_to,
    "own_operations.keep_list": keep_list,
    "own_operations.take_list_away": take_list_away,
    "sheets.hand_out": hand_out,
    "bringing_in.bring_in": bring_in,
    "bringing_in.bring_in_list": bring_in_list,
}


@pytest.fixture(scope="module")
def laid(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return lay_out(tmp_path_factory.mktemp("laid"))


@pytest.fixture
def path(laid: Path, tmp_path: Path) -> Path:
    """A record of the test's own, as it is laid out."""
    return Path(shutil.copyfile(laid, tmp_path / laid.name))


def test_every_act_of_the_room_is_walked() -> None:
    rooms = (import_module(found.name) for found in pkgutil.iter_modules(gramil.acts.__path__, "gramil.acts."))
    found = {
        f"{module.__name__.rpartition('.')[2]}.{name}"
        for module in rooms
        for name, value in vars(module).items()
        if inspect.isfunction(value) and value.__module__ == module.__name__ and not name.startswith("_")
        if {"hand", "now"} & set(inspect.signature(value).parameters)
    }
    assert found == {*ACTS, *BY_THEMSELVES}


@pytest.mark.parametrize("act", ACTS)
def test_one_undo_takes_back_one_act(act: str, path: Path, laid: Path) -> None:
    with open_store(path) as store:
        before, noted = state(store), len(changes(store, 1000))
        ACTS[act](store, laid.parent)
        assert state(store) != before, "it changed nothing"
        assert len(changes(store, 1000)) == noted + 1
        last = last_change(store)
        assert last is not None
        undo(store, last.id, Hand(NOW))
        assert state(store) == before


@pytest.mark.parametrize("act", ACTS)
def test_killed_within_an_act_all_or_nothing_of_it_is_there(act: str, path: Path, laid: Path, tmp_path: Path) -> None:
    """The record's files as they are on the disk before each statement that writes are opened as after a kill."""
    before = state_in(path)
    looked = tmp_path / "looked"
    looked.mkdir()
    with open_store(path) as store:
        watched = Watched(store.connection, path, looked)
        ACTS[act](Store(watched, path), laid.parent)  # type: ignore[arg-type]  # it stands in for a connection
        watched.look()
        after = state(store)
    assert after != before
    found = states_in(watched.seen)
    assert len(found) > 3
    assert all(each == before for each in found[:-1])
    assert found[-1] == after


@pytest.mark.parametrize("act", ACTS)
def test_an_act_that_fails_at_its_end_leaves_nothing(act: str, path: Path, laid: Path, tmp_path: Path) -> None:
    with open_store(path) as store:
        before, noted = state(store), changes(store, 1000)
        watched = Watched(store.connection, path, tmp_path, refused="COMMIT")
        with pytest.raises(Killed):
            ACTS[act](Store(watched, path), laid.parent)  # type: ignore[arg-type]  # it stands in for a connection
        assert state(store) == before
        assert changes(store, 1000) == noted


def test_a_new_piece_sent_twice_is_there_once_and_another_of_its_name_is_refused(path: Path) -> None:
    new = Blank("billet", "spruce", 600.0, 60.0, 60.0)
    with open_store(path) as store:
        wood.keep_wood(store, new, Hand(NOW))
        noted = len(changes(store, 1000))
        wood.keep_wood(store, new, Hand(NOW))
        assert len(changes(store, 1000)) == noted
        with pytest.raises(MakersFault, match="one of that name already"):
            wood.keep_wood(store, replace(new, length=500.0), Hand(NOW))


def test_what_was_seen_and_is_no_more_is_refused(path: Path, laid: Path) -> None:
    with open_store(path) as store:
        works = work_on(store, instrument(store, "Fell").id, "board")
        with pytest.raises(MakersFault, match="somebody else"):
            work.begin_anew(store, instrument(store, "Fell"), "board", Hand(NOW), seen=works[:-1])
        noted = changes(store, 1)[0].id
    with pytest.raises(MakersFault, match="noted meanwhile"):
        record.put_back(laid, path, NOW, seen=noted - 1)
    assert record.put_back(laid, path, NOW, seen=noted) is not None


def test_an_undo_sent_twice_takes_back_one_change(path: Path) -> None:
    with open_store(path) as store:
        air.name_place(store, "loft", Hand(NOW))
        last = last_change(store)
        assert last is not None
        assert record.take_back(store, last.id, Hand(NOW)) == record.take_back(store, last.id, Hand(NOW)) == last
        assert "loft" not in [each.name for each in places(store)]
        assert "attic" in [each.name for each in places(store)]


def test_a_revision_that_it_is_in_already_is_not_returned_to(path: Path) -> None:
    with open_store(path) as store:
        again = descriptions.return_to(store, tarn(store), 1, Hand(NOW))
        assert [each.number for each in revisions(store, again.id)] == [1, 2, 3]
        assert revision(store, again.id).text == revision(store, again.id, 1).text
        with pytest.raises(MakersFault, match="as in revision 1 already"):
            descriptions.return_to(store, again, 1, Hand(NOW))


def test_readings_with_which_nothing_can_be_worked_out_are_refused_by_every_act_that_takes_them(path: Path) -> None:
    none = Measurement("body_wall", "0 mm", 0.0, "mm")
    with open_store(path) as store:
        before = state(store)
        for act in (
            lambda: work.note_done(store, tarn(store), "thicknessed", Hand(NOW), Noted(measured=(none,))),
            lambda: work.measure(store, tarn(store), [none], Hand(NOW)),
        ):
            with pytest.raises(MakersFault, match="cannot be worked out"):
                act()
        assert state(store) == before


def test_what_is_measured_at_no_operation_is_no_operation_done(path: Path) -> None:
    with open_store(path) as store:
        done = operations_done(store, tarn(store).id)
        for value in (6.31, 6.32):
            work.note_done(store, tarn(store), "measured", Hand(NOW), Noted(measured=(replace(THICK, value=value),)))
        assert operations_done(store, tarn(store).id) == done
        assert [each.value for each in measurements(store, tarn(store).id)][-2:] == [6.31, 6.32]
