"""Copies of the store: made while it is in use, proved before they count, and put back in its place."""

import os
import shutil
import sqlite3
from contextlib import closing, suppress
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from gramil.doorway.verify import verify
from gramil.faults import Fault, MakersFault
from gramil.store.failures import in_makers_words
from gramil.store.opening import Store, open_store
from gramil.written_file import alone_with, flush_file, flush_folder, replace_file, staged_beside

_BESIDE = ("-wal", "-shm")
"""Files that the database keeps beside its own while it is in use."""


def backup(store: Store, to: Path) -> None:
    """Copy the store as it is at this moment into one file, whole or not at all; others may go on writing.

    Raises MakersFault if the file exists already, the disk refuses, or the copy is not sound.
    """
    partial = staged_beside(to)
    with alone_with(to):
        if to.exists():
            what, remedy = "there is a file of that name already", "choose another"
            raise MakersFault([Fault(what=what, remedy=remedy, file=to.name)])
        try:
            _copy(store.connection, partial)
            if faults := verify(partial):
                raise MakersFault(replace(fault, file=store.path.name) for fault in faults)
            _at_rest(partial)
            _put(partial, to)
        finally:
            _remove(partial)


def restore(copy: Path, path: Path, now: datetime) -> Path | None:
    """Put a backup in the store's place; gives the path where the old store is kept, or None if there was none.

    Raises MakersFault, with everything left as it was, if the backup is not sound, or another program
    has the store open.
    """
    partial = staged_beside(path)
    with alone_with(path):
        try:
            with open_store(copy, to_read=True) as source:
                _copy(source.connection, partial)
            if faults := verify(partial):
                raise MakersFault(replace(fault, file=copy.name) for fault in faults)
            _at_rest(partial)
            kept = _set_aside(path, now)
            try:
                _put(partial, path)
            except MakersFault:
                _back_again(kept, path)
                raise
        finally:
            _remove(partial)
    return kept


def _copy(source: sqlite3.Connection, to: Path) -> None:
    _remove(to)
    with in_makers_words(to.name), closing(sqlite3.connect(to)) as target:
        source.backup(target)


def _at_rest(path: Path) -> None:
    """A copy is one file, with nothing kept beside it."""
    with in_makers_words(path.name), closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA journal_mode = DELETE")


def _set_aside(path: Path, now: datetime) -> Path | None:
    """Move the file in the store's place to another name, sound or not."""
    if not path.exists():
        return None
    _refuse_if_open(path)
    kept = path.with_name(f"{path.name}.before-{now:%Y%m%dT%H%M%S}")
    if kept.exists():
        raise MakersFault([Fault(what="there is a file of that name already", remedy="wait a second", file=kept.name)])
    for end in _BESIDE:
        with suppress(FileNotFoundError):
            os.replace(f"{path}{end}", f"{kept}{end}")
    _keep(path, kept)
    return kept


def _keep(path: Path, kept: Path) -> None:
    """Give the old store a second name, so that it stays until the copy has taken its place; a disk may have no hard
    links.
    """
    try:
        os.link(path, kept)
    except (OSError, NotImplementedError):
        shutil.copy2(path, kept)
        flush_file(kept)


def _back_again(kept: Path | None, path: Path) -> None:
    """Move what was set aside back to its own place."""
    if kept is None:
        return
    for end in _BESIDE:
        with suppress(FileNotFoundError):
            os.replace(f"{kept}{end}", f"{path}{end}")
    kept.unlink(missing_ok=True)


def _refuse_if_open(path: Path) -> None:
    """Switching off the write-ahead log needs the file for oneself; a file too damaged to open is in use by nobody."""
    try:
        with closing(sqlite3.connect(path, timeout=0.5)) as connection:
            connection.execute("PRAGMA journal_mode = DELETE")
    except sqlite3.Error as error:
        if (error.sqlite_errorcode or 0) & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
            what, remedy = "another program has the store open", "close it, and restore again"
            raise MakersFault([Fault(what=what, why="nothing was touched", remedy=remedy, file=path.name)]) from None


def _put(partial: Path, to: Path) -> None:
    """Give the finished copy its name, and make sure that it is on the disk."""
    try:
        flush_file(partial)
        replace_file(partial, to)
    except OSError as error:
        raise MakersFault([Fault(what=f"cannot be written: {error.strerror}", file=to.name)]) from None
    flush_folder(to.parent)


def _remove(path: Path) -> None:
    for end in ("", *_BESIDE, "-journal"):
        Path(f"{path}{end}").unlink(missing_ok=True)
