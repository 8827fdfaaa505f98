"""Whether a store is sound: the file itself, its references, its tables as Gramil made them, and the rules for them.

Every fault is gathered; none is mended here.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from functools import cache, partial
from pathlib import Path

from gramil.faults import Fault, MakersFault
from gramil.shop.own_operations import check_operations
from gramil.shop.shop_in_store import shop_description
from gramil.store.failures import fault_of
from gramil.store.migrating import migrate, migrations, schema
from gramil.store.moments import is_moment
from gramil.store.opening import Store, open_store

_NO_DESCRIPTION = "an instrument has no description"
_RULES = (
    ("SELECT one FROM under_way", "a change is under way that no program is writing"),
    (
        "SELECT name FROM blank WHERE count < (SELECT coalesce(sum(count), 0) FROM promise WHERE blank = blank.id)",
        "more of a blank are promised than there are",
    ),
    (
        "SELECT name FROM instrument WHERE NOT EXISTS (SELECT 1 FROM revision WHERE instrument = instrument.id)",
        _NO_DESCRIPTION,
    ),
    (
        "SELECT instrument.name FROM instrument JOIN revision ON revision.instrument = instrument.id "
        "GROUP BY instrument.id HAVING max(number) <> count(*)",
        "revisions of an instrument are missing",
    ),
    (
        "SELECT air_reading.place FROM air_reading JOIN air_import ON air_import.id = import "
        "WHERE air_import.place <> air_reading.place LIMIT 1",
        "readings belong to another place than their import",
    ),
)
"""What must give no row, and what it means if it does; the first holds between changes only."""
_MOMENTS = {
    "change": "at",
    "air_import": "at",
    "air_struck": "at",
    "outlook": "at",
    "revision": "at",
    "test_cut": "at",
    "promise": "at",
    "sheet": "at",
    "done": "at",
    "measurement": "at",
    "begun_anew": "at",
    "weight": "at",
}
_RESTORE = "restore a backup that verify finds sound; what was noted since then can be exported from here first"


def verify(path: Path) -> tuple[Fault, ...]:
    """Everything that is wrong with a store; empty when it is sound."""
    try:
        store = open_store(path, to_read=True)
    except MakersFault as fault:
        return fault.faults
    with closing(store.connection):
        return verify_open(store)


def verify_open(store: Store) -> tuple[Fault, ...]:
    """The same for a store that is open."""
    found: list[Fault] = []
    for part in (_file, _references, _tables, _rules, _moments, _description):
        try:
            found += part(store)
        except sqlite3.Error as error:
            found.append(fault_of(error, store.path.name))
        except MakersFault as fault:
            found += fault.faults
    return tuple(dict.fromkeys(found))


def prove_change(store: Store, file: str, table: str = "") -> None:
    """Check the store as a change under way leaves it, and report what is not sound as a fault of the imported `file`.

    `table` is the file's table: instruments may lack their descriptions, which come in the next file.
    Raises MakersFault, so that the change is rolled back whole and the store stays one that passes `verify`.
    """
    found: list[Fault] = []
    for part in (_references, partial(_rules, under_way=True), _moments, _description):
        try:
            found += part(store)
        except MakersFault as fault:
            found += fault.faults
    if table == "instrument":
        found = [each for each in found if each.what != _NO_DESCRIPTION]
    if found:
        raise MakersFault(replace(each, file=file, remedy="") for each in dict.fromkeys(found))


def _file(store: Store) -> Iterator[Fault]:
    for (said,) in store.rows("PRAGMA integrity_check(20)"):
        if said != "ok":
            yield Fault(what=f"the file is damaged: {said}", remedy=_RESTORE, file=store.path.name)


def _references(store: Store) -> Iterator[Fault]:
    for table, row, to, _ in store.rows("PRAGMA foreign_key_check"):
        what = f"row {row} of {table} belongs to a {to} that is not there"
        yield Fault(
            what=what, why="it was changed by hand or by another program", remedy=_RESTORE, file=store.path.name
        )


def _tables(store: Store) -> Iterator[Fault]:
    there, expected = schema(store.connection), _expected()
    for name in sorted({name for name, _ in there ^ expected}):
        word = "is not as Gramil made it" if any(each == name for each, _ in there) else "is missing"
        remedy = _RESTORE if any(each == name for each, _ in expected) else "it is not Gramil's: remove it"
        yield Fault(what=f"{name} {word}", remedy=remedy, file=store.path.name)


@cache
def _expected() -> frozenset[tuple[str, str]]:
    """The tables, indexes and triggers of a fresh store."""
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as fresh:
        migrate(fresh, migrations())
        return schema(fresh)


def _rules(store: Store, under_way: bool = False) -> Iterator[Fault]:
    for sql, what in _RULES[int(under_way) :]:
        for (which,) in store.rows(sql):
            yield Fault(where=str(which), what=what, remedy=_RESTORE, file=store.path.name)


def _moments(store: Store) -> Iterator[Fault]:
    for table, column in _MOMENTS.items():
        for number, text in store.rows(f"SELECT id, {column} FROM {table}"):
            if not is_moment(text):
                what = f"read {text[:40]!r}, which is not a moment with its offset"
                yield Fault(where=f"{table} {number}", what=what, remedy=_RESTORE, file=store.path.name)


def _description(store: Store) -> Iterator[Fault]:
    """That the shop in the store passes the checks of a description, and the lists of operations pass theirs."""
    if store.row("SELECT 1 FROM setting") or store.row("SELECT 1 FROM item"):
        shop_description(store)
    check_operations(store)
    return iter(())
