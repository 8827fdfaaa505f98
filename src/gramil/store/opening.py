"""The store: one SQLite file, made, opened, and upgraded; a file with another schema is reported and left untouched.

A store is used by one thread; each thread and each program opens its own. Readers never wait. Writers wait for one
another, a few seconds at most. When a function has returned, its work is on the disk.
"""

import os
import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

from gramil.faults import Fault, MakersFault
from gramil.plain_file import refuse_unless_plain
from gramil.store.failures import MARRED, in_makers_words
from gramil.store.migrating import APPLICATION, Migration, migrate, migrations
from gramil.written_file import alone_with, flush_file, flush_folder, staged_beside

_THERE_ALREADY = ("there is a file of that name already", "", "open it, or choose another name")
BUSY_SECONDS = 5.0
"""How long a writer waits for another."""
Value = str | int | float | None
Row = tuple[Any, ...]


@dataclass(frozen=True)
class Store:
    """An open store. Its methods raise MakersFault if the database refuses."""

    connection: sqlite3.Connection
    path: Path

    def rows(self, sql: str, values: Sequence[Value] = ()) -> list[Row]:
        """Every row that a statement gives."""
        with in_makers_words(self.path.name):
            return self.connection.execute(sql, values).fetchall()

    def each(self, sql: str, values: Sequence[Value] = ()) -> Iterator[Row]:
        """The rows one by one, when there are too many to hold in memory at once."""
        with in_makers_words(self.path.name):
            yield from self.connection.execute(sql, values)

    def row(self, sql: str, values: Sequence[Value] = ()) -> Row | None:
        """The first row that a statement gives, or None."""
        return next(iter(self.rows(sql, values)), None)

    def close(self) -> None:
        """Closes the file; what was saved is saved."""
        self.connection.close()

    def __enter__(self) -> "Store":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


def create_store(path: Path) -> Store:
    """Make a new, empty store and open it. Raises MakersFault if the file exists already or cannot be made."""
    with new_store(path):
        pass
    return open_store(path)


@contextmanager
def new_store(path: Path) -> Iterator[Store]:
    """A new store to be filled, moved to its place once it is full. Raises MakersFault as `create_store` does.

    It is made under another name and put in its place whole: if it is interrupted, or filling it fails, no half-made
    store is left; the next creation clears the remains.
    """
    if path.exists() and path.stat().st_size > 0:
        raise _fault(path, *_THERE_ALREADY)
    with alone_with(path):
        partial = staged_beside(path)
        try:
            with closing(_connected(partial, "rwc", BUSY_SECONDS)) as connection:
                with in_makers_words(path.name):
                    _migrate_whole(connection, migrations(), new=True)
                    _settle(connection)
                yield Store(connection, path)
            _put_new(partial, path)
        finally:
            for end in ("", "-wal", "-shm", "-journal"):
                Path(f"{partial}{end}").unlink(missing_ok=True)


def _put_new(partial: Path, path: Path) -> None:
    """Give a new store its name, unless a file that is not empty has it; of two programs only one can succeed."""
    try:
        if path.exists() and path.stat().st_size == 0:
            path.unlink()
        flush_file(partial)
        os.link(partial, path)
    except FileExistsError:
        raise _fault(path, *_THERE_ALREADY) from None
    except OSError:
        _rename_new(partial, path)
    flush_folder(path.parent)


def _rename_new(partial: Path, path: Path) -> None:
    """The same on a file system without hard links."""
    if path.exists():
        raise _fault(path, *_THERE_ALREADY)
    try:
        partial.rename(path)
    except OSError as error:
        raise _fault(path, f"the store cannot be made: {error.strerror}") from None


def open_store(path: Path, busy_seconds: float = BUSY_SECONDS, *, to_read: bool = False) -> Store:
    """An open store, `to_read` one that nothing can be written to.

    Raises MakersFault, and touches nothing, if the file is another program's or has another schema.
    """
    form, newest = _form(path), migrations()[-1].form
    _refuse_newer(path, form, newest)
    if form < newest:
        what = f"the store is of form {form}, and this program's is {newest}"
        raise _fault(
            path,
            what,
            "an older Gramil wrote it; nothing was touched",
            f"bring it up: gramil store upgrade {path.name}; a copy is kept",
        )
    with in_makers_words(path.name):
        try:
            return Store(_opened(path, "rw", busy_seconds, to_read), path)
        except sqlite3.OperationalError as error:
            code = (error.sqlite_errorcode or 0) & 0xFF
            if code not in (sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_READONLY) or not _is_at_rest(path):
                raise
        # on a read-only disk nobody else can be writing either, so the file is read as it stands
        return Store(_opened(path, "ro&immutable=1", busy_seconds, to_read=True), path)


def _opened(path: Path, mode: str, busy_seconds: float, to_read: bool) -> sqlite3.Connection:
    connection = _connected(path, mode, busy_seconds)
    try:
        _settle(connection, to_read)
    except BaseException:
        connection.close()
        raise
    return connection


def _is_at_rest(path: Path) -> bool:
    """Whether everything saved is in the store's own file, with nothing left in a file beside it."""
    beside = Path(f"{path}-wal")
    return not beside.exists() or beside.stat().st_size == 0


def upgrade_store(path: Path, now: datetime, steps: Sequence[Migration] | None = None) -> Path:
    """Upgrade an older store to this program's schema, all of it or nothing; gives the path of the copy kept of the
    old.

    Raises MakersFault if the store is not older, or cannot be written.
    """
    steps = steps or migrations()
    form = _form(path)
    _refuse_newer(path, form, steps[-1].form)
    if form == steps[-1].form:
        raise _fault(path, f"the store is of form {form}: there is nothing to upgrade")
    if form < 1:
        raise _fault(path, f"the store says that it is of form {form}, which no Gramil ever wrote", *MARRED)
    kept = path.with_name(f"{path.name}.form-{form}-{now:%Y%m%dT%H%M%S}")
    with closing(_connected(path, "rw", BUSY_SECONDS)) as connection, in_makers_words(path.name):
        with closing(sqlite3.connect(kept)) as copy:
            connection.backup(copy)
        _migrate_whole(connection, steps, new=False)
    return kept


@contextmanager
def reading(store: Store) -> Iterator[None]:
    """Several reads that all see the same state, whatever others write meanwhile."""
    if store.connection.in_transaction:
        yield
        return
    store.rows("BEGIN")
    try:
        yield
    finally:
        store.connection.rollback()


def _refuse_newer(path: Path, form: int, newest: int) -> None:
    if form > newest:
        what = f"the store is of form {form}, and this program knows forms up to {newest}"
        raise _fault(path, what, "a newer Gramil wrote it; nothing was touched", "use that one, or upgrade this one")


def _form(path: Path) -> int:
    """The schema number that a file carries, read without touching the file; 0 for an empty file.

    Raises MakersFault if the file does not exist, is not a database, or belongs to another program.
    """
    try:
        refuse_unless_plain(path)
        with path.open("rb") as stream:
            head = stream.read(16)
    except OSError as error:
        remedy = "make a new store, or restore a backup" if isinstance(error, FileNotFoundError) else ""
        raise _fault(path, f"the store cannot be opened: {error.strerror}", remedy=remedy) from None
    if not head:
        raise _fault(path, "the file is empty", "making it was cut short, or it was emptied", "restore a backup")
    mode = "ro&immutable=1" if _is_at_rest(path) else "ro"
    with closing(_connected(path, mode, BUSY_SECONDS)) as connection, in_makers_words(path.name):
        (application,) = connection.execute("PRAGMA application_id").fetchone()
        (form,) = connection.execute("PRAGMA user_version").fetchone()
    if application != APPLICATION:
        raise _fault(path, "is a database of another program", "nothing was touched", "choose another file")
    return int(form)


def _connected(path: Path, mode: str, busy_seconds: float) -> sqlite3.Connection:
    """A connection that opens no transaction by itself."""
    with in_makers_words(path.name):
        address = f"{path.absolute().as_uri()}?mode={mode}"
        return sqlite3.connect(address, uri=True, timeout=busy_seconds, isolation_level=None)


def _settle(connection: sqlite3.Connection, to_read: bool = False) -> None:
    """Set the connection up: every commit goes to the disk, and references are checked."""
    connection.execute("PRAGMA query_only = ON" if to_read else "PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()


def _migrate_whole(connection: sqlite3.Connection, steps: Sequence[Migration], new: bool) -> None:
    """All steps in one transaction; another program may have made the same store a moment earlier."""
    connection.execute("BEGIN IMMEDIATE")
    try:
        (form,) = connection.execute("PRAGMA user_version").fetchone()
        if form < steps[-1].form and (form == 0) == new:
            migrate(connection, steps)
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise


def _fault(path: Path, what: str, why: str = "", remedy: str = "") -> MakersFault:
    return MakersFault([Fault(what=what, why=why, remedy=remedy, file=path.name)])
