"""Records in and out of tables: a record's fields are the table's columns.

Writing needs a change under way (`writing`). A row that makers edit has a `version`, the number of the change that
wrote it last; whoever writes it must say which version they saw.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import Field, fields
from typing import Any, ClassVar, Protocol, TypeVar

from gramil.faults import Fault, MakersFault
from gramil.store.failures import Conflict
from gramil.store.opening import Store, Value
from gramil.store.toml_text import value_text

LONGEST_TEXT = 1_000_000
LARGEST_WHOLE = 2**53


class Record(Protocol):
    """A frozen dataclass whose fields are the columns of a table."""

    __dataclass_fields__: ClassVar[dict[str, Field[Any]]]


R = TypeVar("R", bound=Record)


def records(
    store: Store, kind: type[R], table: str, rest: str = "ORDER BY id", values: Sequence[Value] = ()
) -> list[R]:
    """Rows of a table as records of one class; `rest` is the SQL after FROM."""
    names = ", ".join(f"{table}.{field.name}" for field in fields(kind))
    return [kind(*row) for row in store.rows(f"SELECT {names} FROM {table} {rest}", values)]


def record(store: Store, kind: type[R], table: str, rest: str, values: Sequence[Value]) -> R:
    """The single record that matches; raises MakersFault if there is none."""
    found = records(store, kind, table, rest, values)
    if not found:
        words = " ".join(str(value) for value in values)
        raise MakersFault.of(f"there is no such {table.replace('_', ' ')}: {words}")
    return found[0]


def insert(store: Store, table: str, row: Mapping[str, Value]) -> int:
    """Add a row and give its number; `version`, if it is among the keys, is set to the change under way."""
    check(row)
    places = ", ".join(_VERSION if name == "version" else "?" for name in row)
    values = [value for name, value in row.items() if name != "version"]
    sql = f"INSERT INTO {table} ({', '.join(row)}) VALUES ({places})"
    number = store.connection.execute(sql, values).lastrowid
    assert number is not None
    return number


def update(store: Store, table: str, number: int, version: int, row: Mapping[str, Value], name: str = "name") -> None:
    """Write columns of a row that still has this `version`; raises Conflict, with both texts, if it does not."""
    check(row)
    sets = ", ".join(f"{column} = ?" for column in row)
    sql = f"UPDATE {table} SET {sets}, version = {_VERSION} WHERE id = ? AND version = ?"
    if store.connection.execute(sql, (*row.values(), number, version)).rowcount == 0:
        theirs = _now_there(store, table, number, row)
        raise Conflict(f"{table} {row.get(name, number)}", row_text(row), theirs)


def delete(store: Store, table: str, number: int, version: int) -> None:
    """Remove a row that still has this `version`; raises Conflict if it does not."""
    sql = f"DELETE FROM {table} WHERE id = ? AND version = ?"
    if store.connection.execute(sql, (number, version)).rowcount == 0:
        names = [row[1] for row in store.rows(f"PRAGMA table_info({table})")]
        theirs = _now_there(store, table, number, dict.fromkeys(names))
        raise Conflict(f"{table} {number}", "", theirs)


def row_text(row: Mapping[str, Value]) -> str:
    """A row in words, one line for each column; empty columns are left out."""
    return "\n".join(f"{name} = {value_text(value)}" for name, value in row.items() if value is not None)


def check(row: Mapping[str, Value]) -> None:
    """Raises MakersFault, with every fault, if values would not come back unchanged from a file."""
    found = [(name, _wrong(value)) for name, value in row.items()]
    faults = [Fault(where=name, what=wrong) for name, wrong in found if wrong]
    if faults:
        raise MakersFault(faults)


def _wrong(value: Value) -> str:
    if isinstance(value, str):
        return _wrong_text(value)
    if isinstance(value, float) and not math.isfinite(value):
        return "is not a finite number"
    if isinstance(value, int) and abs(value) > LARGEST_WHOLE:
        return "is too large a number"
    return ""


def _wrong_text(text: str) -> str:
    if len(text) > LONGEST_TEXT:
        return f"is longer than {LONGEST_TEXT} letters"
    if "\0" in text or any("\ud800" <= letter <= "\udfff" for letter in text):
        return "holds a character that no file can keep"
    return ""


def _now_there(store: Store, table: str, number: int, row: Mapping[str, Value]) -> str:
    """What the row holds now, in words; empty if it is gone."""
    found = store.row(f"SELECT {', '.join(row)} FROM {table} WHERE id = ?", (number,))
    return row_text(dict(zip(row, found, strict=True))) if found else ""


_VERSION = "(SELECT change FROM under_way)"
