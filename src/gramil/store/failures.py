"""What can go wrong with the store, in the maker's words: what happened, whether work was lost, what to do."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from gramil.faults import Fault, MakersFault


class Conflict(MakersFault):
    """Somebody else changed the same thing meanwhile; carries both texts, so that the maker can choose or merge them.

    `theirs` is empty if the other person removed it.
    """

    def __init__(self, where: str, mine: str, theirs: str) -> None:
        what = "changed by somebody else since it was opened here" if theirs else "removed by somebody else meanwhile"
        remedy = "look at both texts, settle on one, and save again"
        super().__init__([Fault(where=where, what=what, why="nothing was saved", remedy=remedy)])
        self.mine = mine
        self.theirs = theirs


@contextmanager
def in_makers_words(file: str) -> Iterator[None]:
    """Turns the database's errors into MakersFault; `file` is the store's name without folders."""
    try:
        yield
    except sqlite3.Error as error:
        raise MakersFault([fault_of(error, file)]) from error


def fault_of(error: sqlite3.Error, file: str) -> Fault:
    """One error of the database as a fault. An error that is a bug of the program is raised again."""
    code = getattr(error, "sqlite_errorcode", 0) or 0
    said = str(error)
    if code & 0xFF == sqlite3.SQLITE_CONSTRAINT:
        return Fault(what=_broken_rule(code, said), why="nothing was saved", file=file)
    if code & 0xFF in _WORDS:
        what, why, remedy = _WORDS[code & 0xFF]
        return Fault(what=what, why=why, remedy=remedy, file=file)
    if said.startswith(_NOT_AS_MADE) or "has no column named" in said or said.endswith("already exists"):
        why, remedy = MARRED
        return Fault(what=f"the store is not as Gramil made it: {said}", why=why, remedy=remedy, file=file)
    raise error


_NOT_AS_MADE = ("no such table", "no such column", "duplicate column name")
_RESTORE = "put this file aside and restore the latest backup; verify says what is still sound in it"
MARRED = ("it was changed by hand or by another program", _RESTORE)
"""Why a store is not as it was made, and what then."""
_NOTHING_LOST = "nothing of this change was saved, and all that was saved before is as it was"
_WORDS = {
    sqlite3.SQLITE_FULL: ("the disk is full", _NOTHING_LOST, "free some room and do it again"),
    sqlite3.SQLITE_BUSY: (
        "another program is writing into the store",
        _NOTHING_LOST,
        "wait until it is done, or close it, and do it again",
    ),
    sqlite3.SQLITE_LOCKED: ("another part of the program is writing into the store", _NOTHING_LOST, "do it again"),
    sqlite3.SQLITE_READONLY: (
        "the store cannot be written to",
        _NOTHING_LOST,
        "check that the file and its folder are yours to write to",
    ),
    sqlite3.SQLITE_CANTOPEN: (
        "the store cannot be opened",
        "the file or its folder is not there, or not yours to write to",
        "check where it lies and who may write there",
    ),
    sqlite3.SQLITE_IOERR: (
        "the disk failed while the store was read or written",
        _NOTHING_LOST,
        "check the disk, then run verify",
    ),
    sqlite3.SQLITE_CORRUPT: ("the store is damaged", "a part of the file is missing or overwritten", _RESTORE),
    sqlite3.SQLITE_NOTADB: ("is not a store", "it is another kind of file, or its beginning is overwritten", _RESTORE),
}


def _broken_rule(code: int, said: str) -> str:
    """The broken rule in words: a named check, a trigger's own message, or what must be unique."""
    _, _, rest = said.partition(" constraint failed: ")
    if code == sqlite3.SQLITE_CONSTRAINT_TRIGGER:
        return said
    if code == sqlite3.SQLITE_CONSTRAINT_CHECK:
        return rest
    if code == sqlite3.SQLITE_CONSTRAINT_UNIQUE:
        columns = " and ".join(column.split(".")[-1] for column in rest.split(", "))
        return f"there is a {rest.split('.')[0].replace('_', ' ')} of that {columns} already"
    if code == sqlite3.SQLITE_CONSTRAINT_FOREIGNKEY:
        return "it is still needed by something else, or what it belongs to is not there"
    return f"a value is missing or of the wrong kind: {rest or said}"
