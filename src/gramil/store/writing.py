"""One change to the store: all of it or nothing, with who made it, when, and what is needed to undo it."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import datetime

from gramil.store.failures import in_makers_words
from gramil.store.moments import moment_text
from gramil.store.opening import Store

KEPT_CHANGES = 200
"""For how many changes back the rows as they were are kept."""


_FORGET_EMPTY = "DELETE FROM change WHERE id = ? AND NOT EXISTS (SELECT 1 FROM journal WHERE change = change.id)"


@dataclass(frozen=True)
class Change:
    """A change on record: when (ISO 8601), by whom, and what, in words; `undoes` is the change that it took back."""

    id: int
    at: str
    who: str
    what: str
    undoes: int | None


@dataclass(frozen=True)
class Hand:
    """In whose hand something is written down: when (with an offset), by whom, and why, as far as that was said.

    Made once, where the maker acts (a command, a page), and handed down to the row that is written.
    """

    now: datetime
    who: str = ""
    why: str = ""


@contextmanager
def writing(store: Store, what: str, hand: Hand) -> Iterator[int]:
    """A change under way; gives its number. If the block ends without an error it is on the disk; else nothing
    happened.

    Inside another change it becomes part of that one: an act of several steps is one change, and one undo takes it
    back.
    Raises MakersFault if the database refuses, ValueError if the hand's time has no offset.
    """
    if (whole := _under_way(store)) is not None:
        yield whole
        return
    with transaction(store):
        change = note(store, what, hand)
        store.connection.execute("INSERT INTO under_way VALUES (1, ?)", (change,))
        yield change
        store.connection.execute("DELETE FROM under_way")
        store.connection.execute("DELETE FROM journal WHERE change <= ?", (change - KEPT_CHANGES,))
        store.connection.execute(_FORGET_EMPTY, (change,))


def _under_way(store: Store) -> int | None:
    """The change that this connection has under way, if any."""
    if not store.connection.in_transaction:
        return None
    row = store.row("SELECT change FROM under_way")
    return int(row[0]) if row else None


@contextmanager
def transaction(store: Store) -> Iterator[None]:
    """Everything within is saved together at the end, or not at all; no other program writes in between."""
    with in_makers_words(store.path.name):
        store.connection.execute("BEGIN IMMEDIATE")
        try:
            yield
            store.connection.execute("COMMIT")
        except BaseException:
            with suppress(sqlite3.Error):
                store.connection.rollback()
            raise


def note(store: Store, what: str, hand: Hand, undoes: int | None = None) -> int:
    """Notes a change within the open transaction and gives its number."""
    values = (moment_text(hand.now), hand.who, what, undoes)
    cursor = store.connection.execute("INSERT INTO change (at, who, what, undoes) VALUES (?, ?, ?, ?)", values)
    assert cursor.lastrowid is not None
    return cursor.lastrowid


def changes(store: Store, latest: int = 50) -> tuple[Change, ...]:
    """The latest changes, newest first."""
    sql = "SELECT id, at, who, what, undoes FROM change ORDER BY id DESC LIMIT ?"
    return tuple(Change(*row) for row in store.rows(sql, (latest,)))
