"""The file itself: made, opened, refused untouched when it is of another form or program, damaged, full or in use."""

import os
import sqlite3
import subprocess
import sys
from contextlib import closing
from datetime import datetime
from pathlib import Path

import pytest

from gramil.doorway.verify import verify, verify_open
from gramil.faults import MakersFault
from gramil.shop.instruments import add_instrument, instruments
from gramil.shop.made_file import read_made
from gramil.shop.stock import Blank, add_blank, blanks
from gramil.store.migrating import APPLICATION, Migration, migrate, migrations, statements
from gramil.store.opening import Store, create_store, open_store, upgrade_store
from gramil.store.writing import Hand, changes, writing


def blank(name: str) -> Blank:
    return Blank(name, "spruce", 560.0, 220.0, 4.2)


def test_a_store_is_strict_in_write_ahead_mode_and_on_the_disk_at_every_commit(store: Store) -> None:
    assert store.row("PRAGMA journal_mode") == ("wal",)
    assert store.row("PRAGMA synchronous") == (2,)
    assert store.row("PRAGMA foreign_keys") == (1,)
    loose = store.rows(
        "SELECT name FROM pragma_table_list WHERE schema = 'main' AND strict = 0 AND name NOT LIKE 'sqlite%'"
    )
    assert loose == []
    assert store.row("PRAGMA application_id") == (APPLICATION,)


def test_what_was_saved_is_there_when_opened_again(store: Store, path: Path, now: datetime) -> None:
    add_blank(store, blank("top"), Hand(now))
    store.close()
    with open_store(path) as again:
        assert [each.name for each in blanks(again)] == ["top"]
    assert verify(path) == ()


def test_a_store_is_not_made_over_another(store: Store, path: Path) -> None:
    with pytest.raises(MakersFault, match="already"):
        create_store(path)


def test_of_several_programs_one_makes_the_store(path: Path) -> None:
    program = (
        "import sys; from pathlib import Path; from gramil.faults import MakersFault\n"
        "from gramil.store.opening import create_store\n"
        "try: create_store(Path(sys.argv[1])).close()\n"
        "except MakersFault as fault: sys.exit(3 if 'already' in str(fault) else 4)\n"
    )
    makers = [subprocess.Popen([sys.executable, "-c", program, str(path)]) for _ in range(4)]
    assert sorted(maker.wait() for maker in makers) == [0, 3, 3, 3]
    assert verify(path) == ()
    assert [each.name for each in path.parent.iterdir()] == [path.name]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_named_pipe_is_no_store_and_no_record(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "shop.gramil")
    with pytest.raises(MakersFault, match="pipe"):
        open_store(tmp_path / "shop.gramil")
    with pytest.raises(MakersFault, match="pipe"):
        read_made(tmp_path / "shop.gramil")


def test_a_store_in_no_folder_is_told(tmp_path: Path) -> None:
    with pytest.raises(MakersFault, match="There is no folder"):
        create_store(tmp_path / "nowhere" / "shop.gramil")


def test_a_creation_cut_short_can_be_done_again(path: Path) -> None:
    path.touch()
    with pytest.raises(MakersFault, match="empty"):
        open_store(path)
    create_store(path).close()
    assert verify(path) == ()


@pytest.mark.parametrize("mode", ["DELETE", "WAL"])
@pytest.mark.parametrize(("form", "words"), [(99, "newer"), (0, "older")])
def test_another_form_is_told_and_nothing_touched(store: Store, path: Path, form: int, words: str, mode: str) -> None:
    store.close()
    with closing(sqlite3.connect(path)) as connection:
        connection.execute(f"PRAGMA journal_mode = {mode}")
        connection.execute(f"PRAGMA user_version = {form}")
    before = path.read_bytes()
    with pytest.raises(MakersFault, match=words):
        open_store(path)
    assert path.read_bytes() == before
    assert sorted(each.name for each in path.parent.iterdir()) == [path.name]


def test_another_program_s_database_and_other_files_are_refused(tmp_path: Path) -> None:
    with closing(sqlite3.connect(tmp_path / "other.db")) as connection:
        connection.execute("CREATE TABLE note (text)")
    (tmp_path / "words.txt").write_text("thickness 6.4 mm\n" * 100)
    for name, words in (("other.db", "another program"), ("words.txt", "not a store"), ("none", "cannot be opened")):
        with pytest.raises(MakersFault, match=words):
            open_store(tmp_path / name)
    assert not (tmp_path / "none").exists()


def test_an_older_store_is_brought_to_the_newer_form_and_a_copy_kept(store: Store, path: Path, now: datetime) -> None:
    add_blank(store, blank("top"), Hand(now))
    store.close()
    form = migrations()[-1].form + 1
    newer = (*migrations(), Migration(form, "ALTER TABLE blank ADD COLUMN shelf TEXT NOT NULL DEFAULT '';\n"))
    kept = upgrade_store(path, now, newer)
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA user_version").fetchone() == (form,)
        assert connection.execute("SELECT name, shelf FROM blank").fetchall() == [("top", "")]
        assert "shelf" in str(
            connection.execute("SELECT sql FROM sqlite_schema WHERE name = 'before_blank'").fetchone()
        )
    assert verify(kept) == ()


def test_a_failing_upgrade_leaves_the_store_as_it_was(store: Store, path: Path, now: datetime) -> None:
    add_blank(store, blank("top"), Hand(now))
    store.close()
    bad = (*migrations(), Migration(99, "ALTER TABLE blank ADD COLUMN shelf TEXT;\nSELECT 1 FROM nowhere;\n"))
    with pytest.raises(MakersFault):
        upgrade_store(path, now, bad)
    assert verify(path) == ()


@pytest.mark.parametrize(
    ("form", "words"),
    [
        (-5, "no Gramil ever wrote"),
        (0, "no Gramil ever wrote"),
        (1, "not as Gramil made it: table .* already exists"),
        (99, "newer Gramil"),
    ],
)
def test_a_store_that_says_a_wrong_form_is_not_upgraded(
    store: Store, path: Path, now: datetime, form: int, words: str
) -> None:
    add_blank(store, blank("top"), Hand(now))
    store.close()
    with closing(sqlite3.connect(path)) as connection:
        connection.execute(f"PRAGMA user_version = {form}")
    with pytest.raises(MakersFault, match=words):
        upgrade_store(path, now)
    with closing(sqlite3.connect(path)) as connection:
        connection.execute(f"PRAGMA user_version = {migrations()[-1].form}")
    assert verify(path) == ()


def test_statements_are_told_apart_by_sqlite_itself() -> None:
    script = (
        "-- a; b\nCREATE TABLE a (b TEXT DEFAULT ';');\nCREATE TRIGGER t AFTER INSERT ON a BEGIN\n SELECT 1;\nEND;\n"
    )
    assert len(list(statements(script))) == 2
    with pytest.raises(ValueError, match="within a statement"):
        list(statements("CREATE TABLE a (b"))


@pytest.mark.parametrize("kept", [10, 100, 4096, 20_000])
def test_a_truncated_store_is_told(store: Store, path: Path, now: datetime, kept: int) -> None:
    add_blank(store, blank("top"), Hand(now))
    store.close()
    path.write_bytes(path.read_bytes()[:kept])
    faults = verify(path)
    assert faults
    assert any("restore" in str(fault) for fault in faults)


def test_an_overwritten_page_is_told(store: Store, path: Path, now: datetime) -> None:
    for number in range(200):
        add_blank(store, blank(f"top {number}"), Hand(now))
    store.close()
    content = bytearray(path.read_bytes())
    start = content.index(b"top 77spruce")
    page = start - start % 4096
    content[page : page + 4096] = b"\xff" * 4096
    path.write_bytes(bytes(content))
    assert verify(path)
    with pytest.raises(MakersFault, match="damaged"), open_store(path) as again:
        blanks(again)


def test_verifying_leaves_nothing_behind(store: Store, path: Path) -> None:
    store.close()
    before = path.read_bytes()
    assert verify(path) == ()
    assert path.read_bytes() == before
    assert [each.name for each in path.parent.iterdir()] == [path.name]


HAND_EDITS = {
    "DROP TABLE weight": "weight is missing",
    "CREATE TABLE notes (text)": "notes is not as Gramil made it",
    "DROP TRIGGER promise_made_once": "promise_made_once is missing",
    "INSERT INTO revision (instrument, number, text, at) VALUES (7, 1, '', '2026-11-02T09:00:00+01:00')": "not there",
    "UPDATE change SET at = 'yesterday'": "not a moment",
    "DELETE FROM revision": "no description",
    "UPDATE item SET figures = '{\"kerf\": \"wide\"}' WHERE kind = 'saw'": "kerf",
}


@pytest.mark.parametrize("edit", HAND_EDITS)
def test_a_hand_edited_store_is_told(stocked: Store, path: Path, now: datetime, edit: str) -> None:
    add_instrument(stocked, "Tarn", "gramil = 1", Hand(now))
    stocked.close()
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(edit)
    assert HAND_EDITS[edit] in "\n".join(map(str, verify(path)))


def test_work_on_a_store_whose_tables_were_changed_is_told(store: Store, now: datetime) -> None:
    store.connection.execute("DROP TABLE blank")
    with pytest.raises(MakersFault, match="not as Gramil made it"):
        add_blank(store, blank("top"), Hand(now))


def test_a_full_disk_loses_nothing_that_was_saved(store: Store, now: datetime) -> None:
    add_blank(store, blank("first"), Hand(now))
    (pages,) = store.row("PRAGMA page_count") or (0,)
    store.rows(f"PRAGMA max_page_count = {pages + 2}")
    saved: list[str] = []

    def fill() -> None:
        for number in range(1000):
            add_instrument(store, f"guitar {number}", "x" * 3000, Hand(now))
            saved.append(f"guitar {number}")

    with pytest.raises(MakersFault, match="disk is full"):
        fill()
    assert [each.name for each in instruments(store)] == sorted(saved)
    assert verify_open(store) == ()
    store.rows("PRAGMA max_page_count = 100000")
    add_blank(store, blank("after"), Hand(now))
    assert [each.name for each in blanks(store)] == ["first", "after"]


def test_two_programs_on_one_file_wait_for_one_another_or_are_told(store: Store, path: Path, now: datetime) -> None:
    with open_store(path, busy_seconds=0.05) as other:
        with writing(store, "slow", Hand(now)):
            add = Blank("slow", "cedar", 1.0, 1.0, 1.0)
            store.rows("INSERT INTO place (version, name) VALUES (1, 'shelf')")
            assert blanks(other) == []
            with pytest.raises(MakersFault, match="another program is writing"):
                add_blank(other, add, Hand(now))
        add_blank(other, add, Hand(now))
        assert blanks(store) == blanks(other)


def test_an_error_within_a_change_leaves_no_trace(store: Store, now: datetime) -> None:
    def broken_off() -> None:
        with writing(store, "broken off", Hand(now)):
            store.rows("INSERT INTO place (version, name) VALUES (1, 'shelf')")
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        broken_off()
    assert store.rows("SELECT 1 FROM place") == []
    assert changes(store) == ()


def test_a_store_to_read_cannot_be_written_to(store: Store, path: Path, now: datetime) -> None:
    with open_store(path, to_read=True) as reader, pytest.raises(MakersFault, match="cannot be written"):
        add_blank(reader, blank("top"), Hand(now))


def test_a_moment_without_an_offset_is_the_program_s_fault(store: Store) -> None:
    with pytest.raises(ValueError, match="offset"):
        add_blank(store, blank("top"), Hand(datetime(2026, 11, 2)))


def test_a_store_of_the_first_form_is_brought_up_with_all_that_is_in_it(tmp_path: Path, now: datetime) -> None:
    path = tmp_path / "old.gramil"
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("BEGIN")
        migrate(connection, migrations()[:1])
        connection.execute("COMMIT")
        connection.execute("INSERT INTO place (version, name) VALUES (1, 'bench')")
    with pytest.raises(MakersFault, match="older Gramil"):
        open_store(path)
    upgrade_store(path, now)
    assert verify(path) == ()
    with open_store(path) as store:
        assert store.row("SELECT name FROM place") == ("bench",)


def test_a_body_bound_before_its_edges_were_two_operations_has_both_bound(tmp_path: Path, now: datetime) -> None:
    path = tmp_path / "old.gramil"
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("BEGIN")
        migrate(connection, migrations()[:4])
        connection.execute("COMMIT")
        connection.execute("INSERT INTO instrument (version, name) VALUES (1, 'Tarn')")
        connection.execute(
            "INSERT INTO done (version, instrument, operation, at, hours) VALUES (1, 1, 'body_bound', '2026-03-01', 6)"
        )
    upgrade_store(path, now)
    with open_store(path) as store:
        rows = store.rows("SELECT operation, hours FROM done ORDER BY operation")
    assert [tuple(each) for each in rows] == [("back_bound", 6.0), ("top_bound", None)]


def test_forms_count_on_from_one() -> None:
    """Two steps to the same form would leave stores that say the same of themselves and are not alike."""
    assert [step.form for step in migrations()] == list(range(1, len(migrations()) + 1))
