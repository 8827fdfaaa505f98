"""A maker's own lists of operations in the store: kept as written, held together, undone, and in an older store."""

import sqlite3
from contextlib import closing
from datetime import datetime
from importlib.resources import files
from pathlib import Path

import pytest

from gramil.doorway.bringing_in import import_csv, import_files
from gramil.doorway.export import export_csv, export_files
from gramil.doorway.verify import verify, verify_open
from gramil.doorway.working_files import working_files
from gramil.faults import MakersFault
from gramil.now.states import WorkedOut, bench_of_store
from gramil.shop.instruments import add_instrument, instruments
from gramil.shop.operations_done import mark_done, operations_done
from gramil.shop.operations_file import usual_work
from gramil.shop.own_operations import own_operations, remove_own_operations, save_own_operations, work_of
from gramil.store.failures import Conflict
from gramil.store.migrating import migrate, migrations
from gramil.store.opening import Store, create_store, open_store, upgrade_store
from gramil.store.undo import last_change, undo
from gramil.store.writing import Hand

TARN, FELL = (
    (files("gramil") / "data" / "examples" / f"{name}.toml").read_text(encoding="utf-8") for name in ("tarn", "fell")
)
SHOP = "# ours\r\n[operation.slotted]\nhands = 33 # two saws\n"
INLAY = '[operation.head_inlaid]\nwhat = "Let the inlay in"\npart = "neck"\nafter = ["head_veneered"]\nhands = 240\n'
DRILLED = '[operation.head_drilled]\nafter = ["head_inlaid"]\n'


def test_a_list_is_kept_as_it_was_written_and_laid_over(store: Store, now: datetime) -> None:
    tarn, fell = (add_instrument(store, name, TARN, Hand(now)) for name in ("Tarn", "Fell"))
    save_own_operations(store, SHOP, Hand(now))
    saved = save_own_operations(store, INLAY + DRILLED, Hand(now), owner=tarn)
    assert saved.text == INLAY + DRILLED
    assert own_operations(store, fell) is None
    assert work_of(store, tarn.id).operations["slotted"].hands == 33
    assert work_of(store, tarn.id).operations["head_drilled"].after == ("head_inlaid",)
    assert "head_inlaid" not in work_of(store, fell.id).operations
    assert work_of(store, fell.id).operations["slotted"].hands == 33


def test_the_bench_goes_by_them(store: Store, now: datetime) -> None:
    tarn = add_instrument(store, "Tarn", TARN, Hand(now))
    save_own_operations(store, INLAY, Hand(now), owner=tarn)
    mark_done(store, tarn.id, "head_inlaid", Hand(now))
    (state,) = bench_of_store(store, now, WorkedOut(lambda *_: {})).instruments
    assert "head_inlaid" in state.work.operations
    assert "head_inlaid" in state.done


@pytest.mark.parametrize(
    ("text", "line", "told"),
    [
        ("[operation.slotted]\nhand = 3\n", 2, "no such key"),
        ('[operation.slotted]\nhands = 4\nafter = ["fretd"]\n', 3, "fretted"),
        ('[operation.slotted]\nafter = ["fretted"]\n', 2, "circle"),
        ("[operation.slotted\n", 1, "not TOML"),
    ],
)
def test_a_wrong_list_is_told_with_file_and_line_and_not_kept(
    store: Store, now: datetime, text: str, line: int, told: str
) -> None:
    tarn = add_instrument(store, "Tarn", TARN, Hand(now))
    for owner in (None, tarn):
        with pytest.raises(MakersFault, match=told) as raised:
            save_own_operations(store, text, Hand(now), owner=owner, file="own.toml")
        assert [(fault.file, fault.line) for fault in raised.value.faults] == [("own.toml", line)]
        assert own_operations(store, owner) is None


def test_a_list_that_an_instrument_cannot_be_made_by_is_not_kept(store: Store, now: datetime) -> None:
    """*Tarn* has its slots cut before arching, *Fell* after it: the ends cannot wait for those."""
    add_instrument(store, "Tarn", TARN, Hand(now))
    ends = '[operation.nut_end_cut]\nafter = ["slots_measured"]\n'
    first = save_own_operations(store, ends, Hand(now))
    remove_own_operations(store, first, Hand(now))
    fell = add_instrument(store, "Fell", FELL, Hand(now))
    for owner in (None, fell):
        with pytest.raises(MakersFault, match="circle") as raised:
            save_own_operations(store, ends, Hand(now), owner=owner, file="own.toml")
        assert [(fault.file, fault.line) for fault in raised.value.faults] == [("own.toml", 2)]
        assert own_operations(store, owner) is None


def test_what_an_instruments_list_needs_stays_in_the_shops(store: Store, now: datetime) -> None:
    tarn = add_instrument(store, "Tarn", TARN, Hand(now))
    shops = save_own_operations(store, INLAY, Hand(now))
    save_own_operations(store, DRILLED, Hand(now), owner=tarn)
    with pytest.raises(MakersFault, match="no operation head_inlaid") as raised:
        save_own_operations(store, SHOP, Hand(now), seen=shops, file="own.toml")
    assert (raised.value.faults[0].file, raised.value.faults[0].line) == ("Tarn's operations", 2)
    with pytest.raises(MakersFault, match="no operation head_inlaid"):
        remove_own_operations(store, shops, Hand(now))
    assert own_operations(store) == shops


def test_two_that_save_are_told(store: Store, now: datetime) -> None:
    first = save_own_operations(store, SHOP, Hand(now))
    save_own_operations(store, INLAY, Hand(now), seen=first)
    for seen in (first, None):
        with pytest.raises(Conflict) as raised:
            save_own_operations(store, SHOP, Hand(now), seen=seen)
        assert (raised.value.mine, raised.value.theirs) == (SHOP, INLAY)


def test_saving_and_removing_are_undone(store: Store, now: datetime) -> None:
    first = save_own_operations(store, SHOP, Hand(now))
    second = save_own_operations(store, INLAY, Hand(now), seen=first)
    remove_own_operations(store, second, Hand(now))
    for text in (INLAY, SHOP, None):
        last = last_change(store)
        assert last is not None
        undo(store, last.id, Hand(now))
        found = own_operations(store)
        assert (found and found.text) == text
    assert work_of(store) is usual_work()


def test_files_out_and_in_are_exact(store: Store, now: datetime, tmp_path: Path) -> None:
    tarn = add_instrument(store, "Tarn", TARN, Hand(now))
    save_own_operations(store, SHOP, Hand(now))
    save_own_operations(store, INLAY, Hand(now), owner=tarn)
    whole = export_files(store)
    with create_store(tmp_path / "other.gramil") as other:
        import_files(other, whole, Hand(now))
        assert export_files(other) == whole
        assert {
            each and each.text for each in (own_operations(other), own_operations(other, instruments(other)[0]))
        } == {
            SHOP,
            INLAY,
        }
    work = working_files(store)
    assert (work["shop.operations.toml"], work["tarn.operations.toml"]) == (SHOP, INLAY)
    with create_store(tmp_path / "third.gramil") as third:
        add_instrument(third, "Tarn", TARN, Hand(now))
        import_csv(third, "list_of_operations", export_csv(store, "list_of_operations"), "lists.csv", Hand(now))
        assert export_csv(third, "list_of_operations") == export_csv(store, "list_of_operations")


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        (["", ""], "of the shop already"),
        (["Tarn", "Tarn"], "instrument already"),
        (["Fell"], "no instrument called"),
    ],
)
def test_an_import_brings_one_list_each(store: Store, now: datetime, rows: list[str], told: str) -> None:
    add_instrument(store, "Tarn", TARN, Hand(now))
    text = "instrument,text\r\n" + "".join(f'{name},"[operation.slotted]\nhands = 5"\r\n' for name in rows)
    with pytest.raises(MakersFault, match=told):
        import_csv(store, "list_of_operations", text, "lists.csv", Hand(now))
    assert own_operations(store) is None


def test_an_import_with_a_circle_brings_nothing(store: Store, now: datetime) -> None:
    circle = "[operation.slotted]\\nafter = ['fretted']"
    text = f'gramil_store = 1\n[[list_of_operations]]\ntext = "{circle}"\n'
    with pytest.raises(MakersFault, match="circle"):
        import_files(store, {"store.toml": text}, Hand(now))
    assert own_operations(store) is None


def test_verify_finds_a_list_that_another_program_spoilt(store: Store, now: datetime) -> None:
    save_own_operations(store, SHOP, Hand(now))
    assert verify_open(store) == ()
    store.connection.execute("UPDATE list_of_operations SET text = '[operation.slotted]\nhand = 3'")
    assert [fault.what for fault in verify_open(store)] == ["no such key"]


def test_a_store_of_the_first_form_is_told_and_upgraded(tmp_path: Path, now: datetime) -> None:
    path = tmp_path / "old.gramil"
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        migrate(connection, migrations()[:1])
    with pytest.raises(MakersFault, match=r"gramil store upgrade old\.gramil"):
        open_store(path)
    upgrade_store(path, now)
    assert verify(path) == ()
    with open_store(path) as store:
        tarn = add_instrument(store, "Tarn", TARN, Hand(now))
        save_own_operations(store, INLAY, Hand(now), owner=tarn)
        last = last_change(store)
        assert last is not None
        undo(store, last.id, Hand(now))
        assert own_operations(store, tarn) is None
        assert operations_done(store, tarn.id) == []
