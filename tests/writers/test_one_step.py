"""A pack cut short at every step that it takes: after the next command it is the old one or the new one, whole."""

import json
import os
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping
from hashlib import sha256
from pathlib import Path

import pytest
from tests.walks import these

from gramil.faults import MakersFault
from gramil.writers.files import LIST, write_files
from gramil.writers.one_step import STAGING

from .ended_program import ENDED

if sys.platform == "win32":
    pytest.skip("this system knows no forks", allow_module_level=True)

FIRST = {"board.dxf": b"one", "board.svg": b"two", "sheets/taper.pdf": b"three"}
SECOND = {"board.dxf": b"ONE", "board.svg": b"two", "neck.svg": b"neck", "sheets/slot.pdf": b"FOUR"}
THIRD = {"board.dxf": b"3", "neck.svg": b"3"}

TWICE = [(first, second) for first in range(1, 40, 3) for second in range(1, 12)]
"""At which step of its own each of two commands is ended."""


def contents(folder: Path) -> dict[str, bytes]:
    found = {each.relative_to(folder).as_posix(): each for each in folder.rglob("*") if each.is_file()}
    return {name: path.read_bytes() for name, path in found.items() if name != LIST}


def is_whole(folder: Path, files: Mapping[str, bytes]) -> bool:
    """Whether just these files are there, as the list has them."""
    listed = json.loads((folder / LIST).read_bytes())["files"]
    return contents(folder) == files and listed == {name: sha256(each).hexdigest() for name, each in files.items()}


Ended = Callable[..., int]


@pytest.fixture(scope="module")
def ended() -> Iterator[Ended]:
    """How a program ends that writes files into a folder and is gone at its nth step (`ended_program.py`)."""
    program = Path(__file__).with_name("ended_program.py")
    with subprocess.Popen(
        [sys.executable, str(program)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as small:
        asking, answers = small.stdin, small.stdout
        assert asking is not None
        assert answers is not None

        def ask(folder: Path, files: Mapping[str, bytes], at: int, refused_from: int = 0) -> int:
            texts = {name: each.decode() for name, each in files.items()}
            asked = {"folder": str(folder), "files": texts, "at": at, "refused_from": refused_from}
            print(json.dumps(asked), file=asking, flush=True)
            return int(answers.readline())

        yield ask
        asking.close()


@pytest.mark.parametrize("next_one", [FIRST, SECOND, THIRD], ids=["the old", "the new", "another"])
def test_ended_anywhere_the_next_pack_goes_through(tmp_path: Path, ended: Ended, next_one: dict[str, bytes]) -> None:
    count = 1
    while True:
        folder = tmp_path / str(count)
        write_files(folder, FIRST)
        if ended(folder, SECOND, count) != ENDED:
            break
        write_files(folder, next_one)
        assert is_whole(folder, next_one)
        count += 1
    assert count > 25


def test_ended_anywhere_it_is_the_old_or_the_new(tmp_path: Path, ended: Ended) -> None:
    """The next command is one that is refused: what was cut short is ended all the same, and nothing is left of it."""
    count, outcomes = 1, set()
    while True:
        folder = tmp_path / str(count)
        write_files(folder, FIRST)
        (folder / "mine.txt").write_bytes(b"mine")
        if ended(folder, SECOND, count) != ENDED:
            break
        with pytest.raises(MakersFault, match="is not a file that Gramil wrote"):
            write_files(folder, {"mine.txt": b"other"})
        (folder / "mine.txt").unlink()
        assert not (folder / STAGING).exists()
        outcomes.add((is_whole(folder, FIRST), is_whole(folder, SECOND)))
        count += 1
    assert outcomes == {(True, False), (False, True)}


@pytest.mark.slow
def test_ended_twice_over(tmp_path: Path, ended: Ended) -> None:
    """The command that ends it is ended too, at each of its steps: at the gate a third of the pairs, all steps."""
    for first, second in these(TWICE, TWICE[::3]):
        folder = tmp_path / f"{first}-{second}"
        write_files(folder, FIRST)
        ended(folder, SECOND, first)
        ended(folder, SECOND, second)
        write_files(folder, SECOND)
        assert is_whole(folder, SECOND)


@pytest.mark.parametrize("failing", [1, 2, 3, 4, 5])
@pytest.mark.parametrize("at", [1, 2, 3, 4, 5, 6])
def test_a_disk_that_refuses_and_a_program_ended_on_its_way_back(
    tmp_path: Path, ended: Ended, failing: int, at: int
) -> None:
    write_files(tmp_path, FIRST)
    ended(tmp_path, SECOND, at, refused_from=failing)
    with pytest.raises(ValueError, match="not a name"):
        write_files(tmp_path, {"../out": b""})
    (tmp_path / "mine.txt").write_bytes(b"mine")
    with pytest.raises(MakersFault):
        write_files(tmp_path, {"mine.txt": b""})
    (tmp_path / "mine.txt").unlink()
    assert is_whole(tmp_path, FIRST) or is_whole(tmp_path, SECOND)
    assert not (tmp_path / STAGING).exists()


@pytest.mark.parametrize("told", [signal.SIGTERM, signal.SIGHUP, signal.SIGINT])
def test_told_to_stop_while_files_are_moved_it_ends_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, told: signal.Signals
) -> None:
    write_files(tmp_path, FIRST)
    heard: list[int] = []
    before = signal.signal(told, lambda number, _: heard.append(number))
    real = os.replace

    def replace(source: Path, place: Path) -> None:
        real(source, place)
        signal.raise_signal(told)

    monkeypatch.setattr(os, "replace", replace)
    try:
        write_files(tmp_path, SECOND)
    finally:
        signal.signal(told, before)
    assert is_whole(tmp_path, SECOND)
    assert set(heard) == {told}


def test_two_programs_at_one_folder_one_after_the_other(tmp_path: Path) -> None:
    children = []
    for files in (FIRST, SECOND, THIRD):
        child = os.fork()
        if not child:
            try:
                for _ in range(20):
                    write_files(tmp_path, files)
                os._exit(0)
            finally:
                os._exit(1)
        children.append(child)
    assert [os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) for child in children] == [0, 0, 0]
    assert any(is_whole(tmp_path, files) for files in (FIRST, SECOND, THIRD))


def test_what_the_maker_changed_after_the_power_failed_stays(tmp_path: Path, ended: Ended) -> None:
    """A file not moved yet, and changed by hand before the next command: the change is not written over."""
    count = 1
    while True:
        folder = tmp_path / str(count)
        write_files(folder, FIRST)
        assert ended(folder, SECOND, count) == ENDED
        if (folder / STAGING / "plan.json").exists():
            break
        count += 1
    (folder / "board.dxf").write_bytes(b"my own")
    with pytest.raises(MakersFault, match=r"board\.dxf has been changed"):
        write_files(folder, SECOND)
    assert (folder / "board.dxf").read_bytes() == b"my own"
