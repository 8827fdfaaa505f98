"""A maker's file written by several hands: both changes are there, or one is told; and nothing is left half made."""

import errno
import fcntl
import importlib.util
import os
import subprocess
import sys
import types
from pathlib import Path

import pytest

from gramil import written_file
from gramil.faults import MakersFault
from gramil.written_file import alone_with, imprint_in, put_text, replace_file

WRITER = """
import sys
from pathlib import Path
from gramil.written_file import alone_with, put_text
path = Path(sys.argv[1])
for number in range(25):
    with alone_with(path):
        seen = path.read_bytes() if path.exists() else None
        put_text(path, (seen or b"").decode() + f"{sys.argv[2]} {number}\\n", seen)
"""
HOLDER = """
import sys
from pathlib import Path
from gramil.written_file import alone_with
with alone_with(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


def started(program: str, *words: str) -> subprocess.Popen[str]:
    command = [sys.executable, "-c", program, *words]
    return subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)


def names_in(folder: Path) -> list[str]:
    return sorted(each.name for each in folder.iterdir())


def test_four_programs_that_write_one_file_lose_nothing(tmp_path: Path) -> None:
    path = tmp_path / "record.toml"
    writers = [started(WRITER, str(path), who) for who in ("anna", "ben", "cleo", "dora")]
    assert [writer.wait() for writer in writers] == [0, 0, 0, 0]
    lines = path.read_text().splitlines()
    assert len(lines) == 100
    for who in ("anna", "ben", "cleo", "dora"):
        assert [line for line in lines if line.startswith(who)] == [f"{who} {number}" for number in range(25)]
    assert names_in(tmp_path) == ["record.toml"]


def test_what_an_editor_saved_meanwhile_is_told_and_stays(tmp_path: Path) -> None:
    path = tmp_path / "record.toml"
    path.write_text("old\n")
    seen = imprint_in(path, 100)
    path.write_text("saved in the editor\n")
    with alone_with(path), pytest.raises(MakersFault, match="changed meanwhile"):
        put_text(path, "ours\n", seen)
    assert path.read_text() == "saved in the editor\n"
    with alone_with(path), pytest.raises(MakersFault, match="has come meanwhile"):
        put_text(path, "ours\n", None)
    path.unlink()
    with alone_with(path), pytest.raises(MakersFault, match="changed meanwhile"):
        put_text(path, "ours\n", b"saved in the editor\n")
    assert names_in(tmp_path) == []


def test_a_change_anywhere_in_a_long_file_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Looked at piece by piece: the same length with another letter, and a piece more or less, are changes."""
    monkeypatch.setattr(written_file, "PIECE", 4)
    path = tmp_path / "air.csv"
    for changed in ("Xbcdefgh", "abcdefgX", "abcd", "abcdefghi", "abcdefghijkl", ""):
        path.write_text("abcdefgh")
        seen = imprint_in(path, 100)
        path.write_text(changed)
        with pytest.raises(MakersFault, match="changed meanwhile"):
            put_text(path, "ours\n", seen)
        path.write_text("abcdefgh")
        put_text(path, "ours\n", seen)
    assert imprint_in(path, 3) is None


def test_one_that_is_not_done_in_good_time_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "record.toml"
    holder = started(HOLDER, str(path))
    assert holder.stdout is not None
    assert holder.stdout.readline() == "held\n"
    monkeypatch.setattr(written_file, "PATIENCE", 0.1)
    with pytest.raises(MakersFault, match="another program is writing it"), alone_with(path):
        pass
    holder.communicate()
    with alone_with(path):
        put_text(path, "ours\n", None)
    assert path.read_text() == "ours\n"


def test_what_a_killed_program_left_is_cleared_and_its_lock_is_nobody_s(tmp_path: Path) -> None:
    path = tmp_path / "record.toml"
    holder = started(HOLDER, str(path))
    assert holder.stdout is not None
    holder.stdout.readline()
    holder.kill()
    holder.wait()
    (tmp_path / ".record.toml.0badcafe.new").write_text("half")
    (tmp_path / ".record.toml.0badcafe.new-journal").write_text("half")
    (tmp_path / ".other.toml.0badcafe.new").write_text("somebody else's")
    with alone_with(path):
        put_text(path, "ours\n", None)
    assert names_in(tmp_path) == [".other.toml.0badcafe.new", "record.toml"]


def test_a_name_that_is_a_pattern_is_only_a_name(tmp_path: Path) -> None:
    (tmp_path / ".tarn.0badcafe.new").write_text("somebody else's")
    for name in ("tarn[1]", "t*n", "?"):
        with alone_with(tmp_path / name):
            put_text(tmp_path / name, "ours", None)
    assert names_in(tmp_path) == [".tarn.0badcafe.new", "?", "t*n", "tarn[1]"]


def test_on_a_disk_without_locks_what_was_read_is_compared(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(_: int) -> None:
        raise OSError(errno.ENOTSUP, "no locks here")

    monkeypatch.setattr(written_file, "_take", refused)
    path = tmp_path / "record.toml"
    with alone_with(path), alone_with(path):
        put_text(path, "one\n", None)
        with pytest.raises(MakersFault, match="meanwhile"):
            put_text(path, "two\n", None)
    assert path.read_text() == "one\n"


def test_rights_and_links_stay_and_a_file_kept_from_writing_is_told(tmp_path: Path) -> None:
    path, link = tmp_path / "record.toml", tmp_path / "link.toml"
    path.write_text("old")
    path.chmod(0o640)
    link.symlink_to(path)
    with alone_with(link):
        put_text(link, "new", b"old")
    assert link.is_symlink()
    assert path.read_text() == "new"
    assert path.stat().st_mode & 0o777 == 0o640
    with pytest.raises(MakersFault, match="no folder"), alone_with(tmp_path / "no" / "record.toml"):
        pass


def test_a_file_that_somebody_holds_open_is_replaced_once_it_is_free(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As on Windows, where an open file refuses to be replaced."""
    refusals, real = [1, 2], os.replace

    def held_open(source: Path, place: Path) -> None:
        if refusals:
            refusals.pop()
            raise PermissionError(errno.EACCES, "used by another process")
        real(source, place)

    monkeypatch.setattr(os, "replace", held_open)
    path = tmp_path / "record.toml"
    with alone_with(path):
        put_text(path, "new", None)
    assert path.read_text() == "new"
    refusals += [1] * 9
    with alone_with(path), pytest.raises(MakersFault, match="sed by another process"):
        put_text(path, "newer", b"new")
    assert path.read_text() == "new"
    assert names_in(tmp_path) == ["record.toml"]
    refusals.clear()
    (tmp_path / "staged").write_text("staged")
    replace_file(tmp_path / "staged", path)
    assert path.read_text() == "staged"


@pytest.fixture
def on_windows(monkeypatch: pytest.MonkeyPatch) -> types.ModuleType:
    """The module as Windows loads it: locks by `msvcrt`, folders that cannot be opened, open files that stay."""
    windows = types.ModuleType("msvcrt")
    kinds = {1: fcntl.LOCK_EX | fcntl.LOCK_NB, 0: fcntl.LOCK_UN}

    def locking(lock: int, kind: int, count: int) -> None:
        assert count == 1
        fcntl.flock(lock, kinds[kind])

    vars(windows).update(LK_NBLCK=1, LK_UNLCK=0, locking=locking)
    monkeypatch.setitem(sys.modules, "msvcrt", windows)
    monkeypatch.setattr(sys, "platform", "win32")
    spec = importlib.util.spec_from_file_location("written_on_windows", written_file.__file__)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    monkeypatch.setattr(sys, "platform", "linux")
    real = os.open

    def no_folders(path: str, flags: int, *rest: int) -> int:
        if os.path.isdir(path):
            raise PermissionError(errno.EACCES, "Permission denied", str(path))
        return real(path, flags, *rest)

    monkeypatch.setattr(os, "open", no_folders)
    return module


def test_on_windows_files_are_written_and_locked_alike(on_windows: types.ModuleType, tmp_path: Path) -> None:
    path = tmp_path / "record.toml"
    with on_windows.alone_with(path):
        on_windows.put_text(path, "one\n", None)
    assert path.read_text() == "one\n"
    on_windows.PATIENCE = 0.1
    with (
        on_windows.alone_with(path),
        pytest.raises(MakersFault, match="another program"),
        on_windows.alone_with(path),
    ):
        pass
    assert names_in(tmp_path) == ["record.toml"]
