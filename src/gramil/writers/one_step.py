"""Several files of a folder replaced in one step: all of them or none, whenever the program or the power stops.

Everything is first staged in a hidden folder and flushed to the disk, what is there is kept beside it, and a plan
written: from then on the step counts as taken. Whoever comes next to a folder whose step was cut short ends it: with a
plan it is finished, without one cleared away. A step that the disk refuses half-way turns its plan round first.
"""

import json
import os
import shutil
import signal
import threading
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from types import FrameType
from typing import Any

from gramil.written_file import flush_folder

STAGING = ".gramil-step"
_PLAN, _BACK = "plan.json", "back.json"
_PUT_OFF = tuple(getattr(signal, name) for name in ("SIGTERM", "SIGHUP", "SIGINT") if hasattr(signal, name))


@dataclass(frozen=True)
class _Move:
    """One file of the step: its name, its number in staging (None: it goes away), the digest of what was there."""

    name: str
    staged: int | None
    before: str | None

    def kept(self, staging: Path, row: int) -> Path:
        """Where what was there is kept."""
        return staging / f"{row}.before"


def take_step(folder: Path, files: Mapping[str, bytes], gone: Sequence[str]) -> None:
    """Put the files into the folder, which is there, and take away those that are `gone`, by names within it.

    Raises OSError, the folder as it was.
    """
    staging = folder / STAGING
    staging.mkdir()
    try:
        moves = _staged(folder, staging, files, gone)
    except BaseException:
        shutil.rmtree(staging, ignore_errors=True)
        raise
    with _undisturbed():
        try:
            _write_plan(staging, moves)
            for row, move in enumerate(moves):
                _carry_out(folder, staging, row, move)
        except BaseException:
            _turn_back(folder, staging, moves)
            raise
        _close(folder, staging, moves)


def end_step(folder: Path) -> None:
    """End a step that was cut short: finished where all of it had been staged, else cleared away. Raises OSError."""
    staging = folder / STAGING
    if not staging.is_dir():
        return
    if (back := _read_plan(staging / _BACK)) is not None:
        _put_back(folder, staging, back)
    elif (moves := _read_plan(staging / _PLAN)) is not None:
        for row, move in enumerate(moves):
            if _digest(folder / move.name) == move.before:  # else it is moved already, or the maker's own by now
                _carry_out(folder, staging, row, move)
        _close(folder, staging, moves)
    if staging.is_dir():
        shutil.rmtree(staging)


def _staged(folder: Path, staging: Path, files: Mapping[str, bytes], gone: Sequence[str]) -> list[_Move]:
    """Every file on the disk in staging, with what stands in its place."""
    moves = [_Move(name, row, _digest(folder / name)) for row, name in enumerate(files)]
    moves += [_Move(name, None, _digest(folder / name)) for name in gone]
    for row, content in enumerate(files.values()):
        _write(staging / str(row), content)
    for row, move in enumerate(moves):
        if (folder / move.name).exists():
            _keep(folder / move.name, move.kept(staging, row))
    flush_folder(staging)
    return moves


def _keep(place: Path, kept: Path) -> None:
    """What stands at a place under a second name; copied on a disk that knows no links."""
    try:
        os.link(place, kept)
    except (OSError, NotImplementedError):
        shutil.copy2(place, kept)


def _write(path: Path, content: bytes) -> None:
    with path.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _write_plan(staging: Path, moves: Sequence[_Move]) -> None:
    _write(staging / "plan", json.dumps([[move.name, move.staged, move.before] for move in moves]).encode())
    os.rename(staging / "plan", staging / _PLAN)
    flush_folder(staging)
    flush_folder(staging.parent)


def _read_plan(path: Path) -> list[_Move] | None:
    """The plan, or None where there is none."""
    try:
        rows: list[Any] = json.loads(path.read_bytes())
    except FileNotFoundError:
        return None
    return [_Move(*row) for row in rows]


def _carry_out(folder: Path, staging: Path, row: int, move: _Move) -> None:
    if move.staged is None:
        (folder / move.name).unlink(missing_ok=True)
    elif (staging / str(move.staged)).exists():
        os.replace(staging / str(move.staged), folder / move.name)


def _turn_back(folder: Path, staging: Path, moves: Sequence[_Move]) -> None:
    """The folder as it was. The plan is turned round first: whoever ends this step goes back, not on."""
    with suppress(OSError):
        os.rename(staging / _PLAN, staging / _BACK)
        flush_folder(staging)
    _put_back(folder, staging, moves)
    shutil.rmtree(staging)


def _put_back(folder: Path, staging: Path, moves: Sequence[_Move]) -> None:
    for row, move in enumerate(moves):
        place, kept = folder / move.name, move.kept(staging, row)
        if move.before is None and move.staged is not None and not (staging / str(move.staged)).exists():
            place.unlink(missing_ok=True)
        elif kept.exists() and _digest(place) != move.before:
            place.unlink(missing_ok=True)
            os.rename(kept, place)


def _close(folder: Path, staging: Path, moves: Sequence[_Move]) -> None:
    """All is in its place: on the disk for good before the plan goes."""
    for each in {(folder / move.name).parent for move in moves}:
        flush_folder(each)
    with suppress(OSError):
        (staging / _PLAN).unlink()
    shutil.rmtree(staging, ignore_errors=True)


def _digest(path: Path) -> str | None:
    return sha256(path.read_bytes()).hexdigest() if path.is_file() else None


@contextmanager
def _undisturbed() -> Iterator[None]:
    """Being told to stop waits for the end, a few thousandths of a second, where there is a handler to wait.

    A signal that ends the program by itself is left to do so: put off, it could be lost as it is put back.
    """
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    told: list[int] = []

    def note(number: int, _: FrameType | None) -> None:
        told.append(number)

    before = {number: signal.signal(number, note) for number in _PUT_OFF if callable(signal.getsignal(number))}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
        for number in told:
            signal.raise_signal(number)
