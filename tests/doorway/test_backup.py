"""Backups: a copy made while others write, proved sound, and put back without losing what it takes the place of."""

import errno
import os
import subprocess
import sys
from datetime import datetime
from pathlib import Path

import pytest

from gramil.doorway.backup import backup, restore
from gramil.doorway.export import export_files
from gramil.doorway.verify import verify
from gramil.faults import MakersFault
from gramil.shop.stock import Blank, add_blank, blanks
from gramil.store.opening import Store, open_store
from gramil.store.writing import Hand, writing


def add(store: Store, name: str, now: datetime) -> None:
    add_blank(store, Blank(name, "spruce", 560.0, 220.0, 4.2), Hand(now))


def test_a_backup_is_one_sound_file_with_everything_in_it(stocked: Store, tmp_path: Path) -> None:
    copy = tmp_path / "kept" / "monday.gramil"
    copy.parent.mkdir()
    backup(stocked, copy)
    assert [each.name for each in copy.parent.iterdir()] == ["monday.gramil"]
    before = copy.read_bytes()
    assert verify(copy) == ()
    assert copy.read_bytes() == before
    with open_store(copy, to_read=True) as kept:
        assert export_files(kept) == export_files(stocked)


def test_a_backup_holds_what_is_saved_and_not_what_is_under_way(store: Store, tmp_path: Path, now: datetime) -> None:
    add(store, "top", now)
    with open_store(store.path) as other, writing(other, "slow", Hand(now)):
        other.rows("INSERT INTO place (version, name) VALUES (1, 'shelf')")
        backup(store, tmp_path / "copy.gramil")
    with open_store(tmp_path / "copy.gramil", to_read=True) as kept:
        assert [each.name for each in blanks(kept)] == ["top"]
        assert kept.rows("SELECT 1 FROM place") == []


def test_a_backup_is_not_written_over_a_file(store: Store, tmp_path: Path) -> None:
    (tmp_path / "copy.gramil").write_text("somebody's")
    with pytest.raises(MakersFault, match="already"):
        backup(store, tmp_path / "copy.gramil")
    assert (tmp_path / "copy.gramil").read_text() == "somebody's"
    with pytest.raises(MakersFault):
        backup(store, tmp_path / "no folder" / "copy.gramil")


def test_restoring_keeps_what_was_there(store: Store, path: Path, tmp_path: Path, now: datetime) -> None:
    add(store, "top", now)
    backup(store, tmp_path / "copy.gramil")
    add(store, "later", now)
    store.close()
    kept = restore(tmp_path / "copy.gramil", path, now)
    with open_store(path) as again:
        assert [each.name for each in blanks(again)] == ["top"]
    assert kept is not None
    with open_store(kept) as before:
        assert [each.name for each in blanks(before)] == ["top", "later"]


def test_restoring_over_a_damaged_store_keeps_the_damaged_one_aside(
    store: Store, path: Path, tmp_path: Path, now: datetime
) -> None:
    add(store, "top", now)
    backup(store, tmp_path / "copy.gramil")
    store.close()
    path.write_bytes(path.read_bytes()[:5000])
    kept = restore(tmp_path / "copy.gramil", path, now)
    assert verify(path) == ()
    assert kept is not None
    assert kept.stat().st_size == 5000


def test_a_store_that_is_open_elsewhere_is_not_replaced(
    store: Store, path: Path, tmp_path: Path, now: datetime
) -> None:
    add(store, "top", now)
    backup(store, tmp_path / "copy.gramil")
    add(store, "later", now)
    with pytest.raises(MakersFault, match="open"):
        restore(tmp_path / "copy.gramil", path, now)
    assert [each.name for each in blanks(store)] == ["top", "later"]
    add(store, "last", now)
    assert verify(path) == ()


def test_a_damaged_backup_is_not_restored(store: Store, path: Path, tmp_path: Path, now: datetime) -> None:
    copy = tmp_path / "copy.gramil"
    backup(store, copy)
    copy.write_bytes(copy.read_bytes()[:50_000])
    store.close()
    before = path.read_bytes()
    with pytest.raises(MakersFault, match=r"copy\.gramil"):
        restore(copy, path, now)
    assert path.read_bytes() == before
    assert sorted(each.name for each in tmp_path.iterdir()) == ["copy.gramil", "shop.gramil"]


def test_a_backup_to_where_no_store_is_makes_one(store: Store, tmp_path: Path, now: datetime) -> None:
    add(store, "top", now)
    backup(store, tmp_path / "copy.gramil")
    assert restore(tmp_path / "copy.gramil", tmp_path / "new.gramil", now) is None
    assert verify(tmp_path / "new.gramil") == ()


def copying(store: Path, copy: Path) -> subprocess.Popen[str]:
    words = [sys.executable, "-m", "gramil.cli", "store", "backup", str(store), str(copy)]
    return subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)


def test_two_copies_to_one_name_at_once_are_one_sound_copy(store: Store, path: Path, tmp_path: Path) -> None:
    """Both had been made under one hidden name: what one took for its own, the other was still writing."""
    copy = tmp_path / "kept" / "copy.gramil"
    copy.parent.mkdir()
    hands = [copying(path, copy) for _ in range(3)]
    said = [hand.communicate() for hand in hands]
    assert sorted(hand.returncode for hand in hands) == [0, 2, 2], said
    assert sum("already" in error for _, error in said) == 2
    assert verify(copy) == ()
    assert [each.name for each in copy.parent.iterdir()] == ["copy.gramil"]


def test_a_half_made_copy_of_a_killed_program_is_cleared_by_the_next(store: Store, tmp_path: Path) -> None:
    for left in (".copy.gramil.0badcafe.new", ".copy.gramil.0badcafe.new-journal", ".copy.gramil.lock"):
        (tmp_path / left).write_text("half")
    backup(store, tmp_path / "copy.gramil")
    assert sorted(each.name for each in tmp_path.iterdir() if "copy" in each.name) == ["copy.gramil"]


def test_a_folder_that_cannot_be_opened_spoils_no_copy(
    store: Store, path: Path, tmp_path: Path, now: datetime, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As on Windows: the copy is good, and so is what is put back."""
    real = os.open

    def files_only(name: str, flags: int, *rest: int) -> int:
        if os.path.isdir(name):
            raise PermissionError(errno.EACCES, "Permission denied", str(name))
        return real(name, flags, *rest)

    monkeypatch.setattr(os, "open", files_only)
    add(store, "top", now)
    backup(store, tmp_path / "copy.gramil")
    store.close()
    assert restore(tmp_path / "copy.gramil", path, now) is not None
    assert verify(path) == ()


def test_a_store_that_cannot_be_put_back_stays_what_it_was(
    store: Store, path: Path, tmp_path: Path, now: datetime, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The place of the store is not left empty."""
    backup(store, tmp_path / "copy.gramil")
    add(store, "later", now)
    store.close()
    real = os.replace

    def refused(source: Path | str, place: Path | str) -> None:
        if str(source).endswith(".new"):
            raise PermissionError(errno.EACCES, "used by another process")
        real(source, place)

    monkeypatch.setattr(os, "replace", refused)
    with pytest.raises(MakersFault, match="used by another process"):
        restore(tmp_path / "copy.gramil", path, now)
    with open_store(path) as again:
        assert [each.name for each in blanks(again)] == ["later"]
    assert sorted(each.name for each in tmp_path.iterdir() if each.is_file()) == ["copy.gramil", "shop.gramil"]
