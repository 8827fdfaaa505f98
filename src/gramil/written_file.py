"""A file of the maker's own, rewritten whole or not at all, by one program at a time, without losing anybody's change.

Code that reads such a file to write it back does both within `alone_with`, and hands `put_text` what was read: another
program of ours waits its turn, and what an editor or a synchronised folder saved meanwhile is reported, not
overwritten.
"""

import errno
import os
import re
import shutil
import sys
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from glob import escape
from hashlib import sha256
from pathlib import Path
from secrets import token_hex

from gramil.faults import Fault, MakersFault
from gramil.plain_file import opened

PATIENCE = 30.0
"""Seconds that one program waits for another to be done with a file."""
PAUSE = 0.02
PIECE = 1_000_000
"""Bytes that are looked at at a time."""
STAGED = ".new"
HELD_OPEN = (0.05, 0.1, 0.2, 0.4)
"""Pauses between tries to put a file in the place of one that another program holds open: some systems refuse."""

HELD = frozenset({errno.EACCES, errno.EAGAIN, errno.EWOULDBLOCK, errno.EDEADLK})
"""What a system says of a lock that another program holds; anything else, that this disk knows no locks."""

_FOR_A_WHILE = re.compile(r"^(?P<folder>.*[/\\\\])?\.(?P<name>[^/\\\\]+)\.(?:[0-9a-f]{8}\.new.*|lock)$")

if sys.platform == "win32":
    import msvcrt

    def _take(lock: int) -> None:
        os.lseek(lock, 0, os.SEEK_SET)
        msvcrt.locking(lock, msvcrt.LK_NBLCK, 1)

    def _leave(lock: int, path: Path) -> None:
        os.lseek(lock, 0, os.SEEK_SET)
        msvcrt.locking(lock, msvcrt.LK_UNLCK, 1)
        os.close(lock)
        with suppress(OSError):  # the next one has it open already
            path.unlink()
else:
    import fcntl

    def _take(lock: int) -> None:
        fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)

    def _leave(lock: int, path: Path) -> None:
        with suppress(OSError):
            path.unlink()
        os.close(lock)


@dataclass(frozen=True)
class Imprint:
    """What tells one content of a file from another, without holding it: its length in bytes and its SHA-256."""

    size: int
    digest: bytes


@contextmanager
def alone_with(path: Path) -> Iterator[None]:
    """Keep other programs of ours from writing the file meanwhile. Raises MakersFault if one does not finish in good
    time.

    A small file beside it is the lock; it is released with the program that holds it, even if that is killed.
    """
    place = path.resolve()
    beside = place.with_name(f".{place.name}.lock")
    lock = _locked(beside, path)
    try:
        _clear(place)
        yield
    finally:
        with suppress(OSError):
            _leave(lock, beside)


def _locked(beside: Path, path: Path) -> int:
    until = time.monotonic() + PATIENCE
    while (lock := _try(beside, path)) is None:
        if time.monotonic() > until:
            what, remedy = "another program is writing it", "try again when that is done"
            raise MakersFault([Fault(what=what, why="nothing was written", remedy=remedy, file=path.name)])
        time.sleep(PAUSE)
    return lock


def _try(beside: Path, path: Path) -> int | None:
    """The lock, or None while another program holds it."""
    try:
        lock = os.open(beside, os.O_RDWR | os.O_CREAT, 0o666)
    except OSError as error:
        if isinstance(error, PermissionError) and os.access(beside.parent, os.W_OK):
            return None  # it is just being removed
        raise _unwritten(path, error) from None
    if _taken(lock) and _still(lock, beside):
        return lock
    os.close(lock)
    return None


def _taken(lock: int) -> bool:
    try:
        _take(lock)
    except OSError as error:
        return error.errno not in HELD  # on a disk without locks, the comparison with what was read still protects the
        # file
    return True


def _still(lock: int, beside: Path) -> bool:
    """Whether the lock is the file that is there now, and not one that its last holder has removed."""
    try:
        return os.path.samestat(os.fstat(lock), os.stat(beside))
    except OSError:
        return False


def _clear(place: Path) -> None:
    """Remove what a killed program left half made, now that nobody else is writing the file."""
    for left in place.parent.glob(f".{escape(place.name)}.*{STAGED}*"):
        with suppress(OSError):
            left.unlink()


def imprint_in(path: Path, largest: int) -> Imprint | None:
    """What stands in the file now; None where nothing is there, or nothing that can be read."""
    try:
        with opened(path, largest) as file:
            return _imprint(iter(lambda: file.read(PIECE), b""))
    except (OSError, ValueError):
        return None


def _imprint(pieces: Iterable[bytes]) -> Imprint:
    size, digest = 0, sha256()
    for piece in pieces:
        size += len(piece)
        digest.update(piece)
    return Imprint(size, digest.digest())


def staged_beside(place: Path) -> Path:
    """A name beside a file for its replacement, a different one each time; what is left under it is cleared."""
    return place.with_name(f".{place.name}.{token_hex(4)}{STAGED}")


def place_of(name: str) -> str:
    """The name that the maker knows, given the temporary one of a file being written."""
    return _FOR_A_WHILE.sub(r"\g<folder>\g<name>", name)


def put_text(path: Path, text: str | Iterable[str], seen: Imprint | bytes | None) -> None:
    """The text in the place of a file's own, whole or not at all; `seen` is what was read there (None: no file).

    A long text may come in pieces, which are never held in memory together.
    Raises MakersFault, with the file unchanged, if the file has changed since or cannot be written.
    """
    place = path.resolve()
    staged = staged_beside(place)
    try:
        if place.exists():
            place.open("a").close()  # a read-only file stays as it is
        _stage(staged, text, place)
        if not _holds(place, seen):
            raise _changed(path, seen)
        replace_file(staged, place)
        flush_folder(place.parent)
    except OSError as error:
        raise _unwritten(path, error) from None
    finally:
        staged.unlink(missing_ok=True)


def _holds(place: Path, seen: Imprint | bytes | None) -> bool:
    """Whether a file holds what was read there, looked at piece by piece."""
    if seen is None or not place.exists():
        return seen is None and not place.exists()
    was = _imprint([seen]) if isinstance(seen, bytes) else seen
    with place.open("rb") as file:
        return _imprint(iter(lambda: file.read(PIECE), b"")) == was


def _stage(staged: Path, text: str | Iterable[str], place: Path) -> None:
    with staged.open("x", encoding="utf-8", newline="") as file:
        file.writelines([text] if isinstance(text, str) else text)
        file.flush()
        os.fsync(file.fileno())
    if place.exists():
        shutil.copymode(place, staged)


def replace_file(staged: Path, place: Path) -> None:
    """Move the staged file over another; some systems refuse while somebody has that open, so it is tried again.

    Raises OSError.
    """
    for pause in HELD_OPEN:
        try:
            os.replace(staged, place)
        except PermissionError:
            time.sleep(pause)
        else:
            return
    os.replace(staged, place)


def flush_file(path: Path) -> None:
    """Flush a file's content to the disk. Raises OSError."""
    with path.open("rb+") as stream:
        os.fsync(stream.fileno())


def flush_folder(folder: Path) -> None:
    """Flush a folder's names to the disk, if a folder can be opened for that: on some systems it cannot."""
    with suppress(OSError):
        opened = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(opened)
        finally:
            os.close(opened)


def _changed(path: Path, seen: Imprint | bytes | None) -> MakersFault:
    what = "has come meanwhile" if seen is None else "was changed meanwhile"
    return MakersFault([Fault(what=what, why="nothing was written", remedy="try again", file=path.name)])


def _unwritten(path: Path, error: OSError) -> MakersFault:
    why = error.strerror or "" if path.parent.is_dir() else f"there is no folder {path.parent}"
    return MakersFault([Fault(what="cannot be written", why=why, file=path.name)])
