"""Several files of a folder replaced in one step: all of them or none, whenever the program or the power stops.

Everything is first staged in a hidden folder and flushed to the disk, the existing files are kept beside it, and a plan
is written: from then on the step counts as taken. If it was interrupted, whoever uses the folder next ends it: with a
plan it is finished, without one cleared away. If the disk refuses half-way, the plan is first reversed.
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
        """Where the previous file is kept."""
        return staging / f"{row}.before"


def take_step(folder: Path, files: Mapping[str, bytes], gone: Sequence[str]) -> None:
    """Put the files into the existing folder, and remove those that are `gone`, by names within it.

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
    """End an interrupted step: finish it if all of it had been staged, else clear it away. Raises OSError."""
    staging = folder / STAGING
    if not staging.is_dir():
        return
    if (back := _read_plan(staging / _BACK)) is not None:
        _put_back(folder, staging, back)
    elif (moves := _read_plan(staging / _PLAN)) is not None:
        for row, move in enumerate(moves):
            if _digest(folder / move.name) == move.before:  # otherwise it has been moved already, or is the maker's own
                # by now
                _carry_out(folder, staging, row, move)
        _close(folder, staging, moves)
    if staging.is_dir():
        shutil.rmtree(staging)


def _staged(folder: Path, staging: Path, files: Mapping[str, bytes], gone: Sequence[str]) -> list[_Move]:
    """Write every file to the disk in staging, and keep what is in its place now."""
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
    """Give the existing file a second name; copy it on a disk without hard links."""
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
    """The plan, or None if there is none."""
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
    """Put the folder back as it was. The plan is reversed first, so that whoever ends this step goes back, not on."""
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
    """Everything is in place: make sure that it is on the disk before the plan is removed."""
    for each in {(folder / move.name).parent for move in moves}:
        flush_folder(each)
    with suppress(OSError):
        (staging / _PLAN).unlink()
    shutil.rmtree(staging, ignore_errors=True)


def _digest(path: Path) -> str | None:
    return sha256(path.read_bytes()).hexdigest() if path.is_file() else None


@contextmanager
def _undisturbed() -> Iterator[None]:
    """A signal to stop waits until the end, a few milliseconds, if the program handles it.

    A signal that simply ends the program is not put off: it could be lost while its handling is restored.
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
