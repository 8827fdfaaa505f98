"""Files put into a folder: whole or not at all, and nobody's work lost."""

import json
import os
from hashlib import sha256

import pytest

from gramil.faults import MakersFault
from gramil.writers.files import LIST, write_files

FIRST = {"board.dxf": b"one", "board.svg": b"two", "sheets/taper.pdf": b"three"}
SECOND = {"board.dxf": b"ONE", "board.svg": b"TWO", "sheets/slot.pdf": b"FOUR"}


def contents(folder):
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name != LIST
    }


def test_all_files_and_a_list_of_them(tmp_path):
    done = write_files(tmp_path / "out" / "tarn", FIRST)
    assert contents(tmp_path / "out" / "tarn") == FIRST
    assert done.written == ("board.dxf", "board.svg", "sheets/taper.pdf")
    listed = json.loads((tmp_path / "out" / "tarn" / LIST).read_text())["files"]
    assert listed == {name: sha256(content).hexdigest() for name, content in FIRST.items()}


def test_its_own_files_are_replaced_and_the_old_ones_removed(tmp_path):
    write_files(tmp_path, FIRST)
    done = write_files(tmp_path, SECOND)
    assert contents(tmp_path) == SECOND
    assert done.removed == ("sheets/taper.pdf",)


def test_the_same_files_give_the_same_list(tmp_path):
    write_files(tmp_path / "a", FIRST)
    write_files(tmp_path / "b", dict(reversed(FIRST.items())))
    assert (tmp_path / "a" / LIST).read_bytes() == (tmp_path / "b" / LIST).read_bytes()


def test_a_file_of_somebody_else_is_not_overwritten(tmp_path):
    (tmp_path / "board.dxf").write_bytes(b"mine")
    (tmp_path / "board.svg").write_bytes(b"mine too")
    with pytest.raises(MakersFault) as caught:
        write_files(tmp_path, FIRST)
    assert [name for name in FIRST if name in str(caught.value)] == ["board.dxf", "board.svg"]
    assert len(caught.value.faults) == 2
    assert contents(tmp_path) == {"board.dxf": b"mine", "board.svg": b"mine too"}
    assert not (tmp_path / LIST).exists()


def test_a_file_changed_by_hand_is_not_overwritten(tmp_path):
    write_files(tmp_path, FIRST)
    (tmp_path / "board.svg").write_bytes(b"two, and my own note")
    with pytest.raises(MakersFault, match=r"board\.svg has been changed"):
        write_files(tmp_path, SECOND)
    assert contents(tmp_path) == {**FIRST, "board.svg": b"two, and my own note"}


def test_told_so_it_overwrites(tmp_path):
    (tmp_path / "board.dxf").write_bytes(b"mine")
    write_files(tmp_path, FIRST, overwrite=True)
    assert contents(tmp_path) == FIRST
    write_files(tmp_path, SECOND)
    assert contents(tmp_path) == SECOND


def test_a_stranger_with_the_same_content_is_no_loss(tmp_path):
    (tmp_path / "board.dxf").write_bytes(FIRST["board.dxf"])
    write_files(tmp_path, FIRST)
    assert contents(tmp_path) == FIRST


def test_an_old_file_changed_by_hand_is_left(tmp_path):
    write_files(tmp_path, FIRST)
    (tmp_path / "sheets" / "taper.pdf").write_bytes(b"my notes")
    done = write_files(tmp_path, SECOND)
    assert done.left == ("sheets/taper.pdf",)
    assert contents(tmp_path) == {**SECOND, "sheets/taper.pdf": b"my notes"}


def test_files_beside_those_of_an_earlier_time_leave_them(tmp_path):
    """What was there stays Gramil's own: it is replaced without a word, and goes once it is no longer made."""
    write_files(tmp_path, FIRST)
    done = write_files(tmp_path, {"board.svg": b"again", "today.pdf": b"day"}, beside=True)
    assert (done.written, done.removed, done.left) == (("board.svg", "today.pdf"), (), ())
    assert contents(tmp_path) == {**FIRST, "board.svg": b"again", "today.pdf": b"day"}
    done = write_files(tmp_path, SECOND)
    assert done.removed == ("sheets/taper.pdf", "today.pdf")
    assert contents(tmp_path) == SECOND


def test_files_beside_others_replace_nothing_that_was_changed_by_hand(tmp_path):
    write_files(tmp_path, FIRST)
    (tmp_path / "board.svg").write_bytes(b"my notes")
    write_files(tmp_path, {"today.pdf": b"day"}, beside=True)
    for name in ("board.svg", "mine.txt"):
        (tmp_path / name).write_bytes(b"my notes")
        with pytest.raises(MakersFault, match=name):
            write_files(tmp_path, {name: b"other"}, beside=True)
    assert contents(tmp_path) == {**FIRST, "board.svg": b"my notes", "mine.txt": b"my notes", "today.pdf": b"day"}


@pytest.mark.parametrize("failing", [1, 2, 3, 4])
def test_a_failure_midway_leaves_the_old_files_whole(tmp_path, monkeypatch, failing):
    write_files(tmp_path, FIRST)
    (tmp_path / "mine.txt").write_bytes(b"mine")
    before = contents(tmp_path), (tmp_path / LIST).read_bytes()
    real, calls = os.replace, []

    def replace(source, place):
        calls.append(place)
        if len(calls) >= failing:
            raise OSError(28, "No space left on device")
        real(source, place)

    monkeypatch.setattr(os, "replace", replace)
    with pytest.raises(MakersFault, match="No space left on device"):
        write_files(tmp_path, SECOND)
    assert len(calls) == failing
    assert (contents(tmp_path), (tmp_path / LIST).read_bytes()) == before
    assert [path.name for path in tmp_path.iterdir() if path.name.startswith(".gramil-")] == [LIST]


def test_a_failure_the_first_time_leaves_nothing(tmp_path, monkeypatch):
    def replace(source, place):
        raise OSError(13, "Permission denied")

    monkeypatch.setattr(os, "replace", replace)
    with pytest.raises(MakersFault, match="Permission denied"):
        write_files(tmp_path / "new" / "out", FIRST)
    assert list(tmp_path.iterdir()) == []


def test_a_break_by_the_maker_leaves_the_old_files_whole(tmp_path, monkeypatch):
    write_files(tmp_path, FIRST)
    real = os.replace

    def replace(source, place):
        if str(place).endswith(".svg"):
            raise KeyboardInterrupt
        real(source, place)

    monkeypatch.setattr(os, "replace", replace)
    with pytest.raises(KeyboardInterrupt):
        write_files(tmp_path, SECOND)
    assert contents(tmp_path) == FIRST


def test_a_file_where_the_folder_should_be(tmp_path):
    (tmp_path / "out").write_bytes(b"mine")
    with pytest.raises(MakersFault, match="could not be written"):
        write_files(tmp_path / "out", FIRST)
    assert (tmp_path / "out").read_bytes() == b"mine"


def test_a_folder_where_a_file_should_be(tmp_path):
    (tmp_path / "board.dxf").mkdir()
    with pytest.raises(MakersFault, match=r"board\.dxf"):
        write_files(tmp_path, FIRST)
    with pytest.raises(MakersFault, match="could not be written"):
        write_files(tmp_path, FIRST, overwrite=True)
    assert (tmp_path / "board.dxf").is_dir()
    assert contents(tmp_path) == {}


@pytest.mark.parametrize("text", ["", "[]", '{"files": 3}', '{"files": {"../mine.txt": "0"}}', '{"files": {"a": 1}}'])
def test_a_spoilt_list_lists_nothing(tmp_path, text):
    write_files(tmp_path, FIRST)
    (tmp_path / LIST).write_text(text)
    with pytest.raises(MakersFault, match="not a file that Gramil wrote"):
        write_files(tmp_path, SECOND)
    assert contents(tmp_path) == FIRST


@pytest.mark.parametrize("name", ["../a", "/a", "", ".", "a/../../b", "a\\b", LIST])
def test_a_name_that_leads_out_is_our_own_fault(tmp_path, name):
    with pytest.raises(ValueError, match="not a name inside"):
        write_files(tmp_path, {name: b""})
    assert list(tmp_path.iterdir()) == []
