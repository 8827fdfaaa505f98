"""The store's schema: numbered steps from `data/migrations`, and the journal that undo reads.

The journal is made from the tables themselves after every migration: for each table that makers write to, a table
`before_...` of the same columns, and triggers that keep each row there as it was before a change.
"""

import sqlite3
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

APPLICATION = 0x4772616D
"""Marks the file as a store of Gramil's ("Gram")."""
NOT_JOURNALED = frozenset({"change", "under_way", "journal", "air_reading", "sqlite_sequence"})
"""Tables that undo does not follow row by row; readings go with the import that brought them."""


@dataclass(frozen=True)
class Migration:
    """One step: the number of the schema that it leads to, and its statements."""

    form: int
    sql: str


@cache
def migrations() -> tuple[Migration, ...]:
    """Every step that this program knows, in order."""
    folder = files("gramil") / "data" / "migrations"
    found = sorted((each.name, each.read_text(encoding="utf-8")) for each in folder.iterdir())
    return tuple(Migration(int(name.split("_")[0]), text) for name, text in found if name.endswith(".sql"))


def migrate(connection: sqlite3.Connection, steps: Sequence[Migration]) -> None:
    """Bring a store to the newest schema, within the open transaction."""
    (form,) = connection.execute("PRAGMA user_version").fetchone()
    _drop_journal(connection)
    for step in steps:
        if step.form > form:
            for statement in statements(step.sql):
                connection.execute(statement)
    _make_journal(connection)
    connection.execute(f"PRAGMA application_id = {APPLICATION}")
    connection.execute(f"PRAGMA user_version = {steps[-1].form}")


def statements(sql: str) -> Iterator[str]:
    """The statements of a script one by one: running a script whole would end the transaction."""
    waiting = ""
    for line in sql.splitlines(keepends=True):
        waiting += line
        if sqlite3.complete_statement(waiting):
            yield waiting
            waiting = ""
    if waiting.strip() and not all(line.startswith("--") for line in waiting.split("\n") if line.strip()):
        raise ValueError("a migration ends within a statement")


def journaled(connection: sqlite3.Connection) -> tuple[str, ...]:
    """The tables that undo follows, in the order in which they were made."""
    rows = connection.execute("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY rowid")
    return tuple(name for (name,) in rows if name not in NOT_JOURNALED and not name.startswith("before_"))


def columns(connection: sqlite3.Connection, table: str) -> tuple[tuple[str, str], ...]:
    """A table's columns, name and type, in order."""
    return tuple((row[1], row[2]) for row in connection.execute(f"PRAGMA table_info({table})"))


def schema(connection: sqlite3.Connection) -> frozenset[tuple[str, str]]:
    """Every table, index and trigger: its name, and the statement that made it."""
    rows = connection.execute("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL")
    return frozenset((name, sql) for name, sql in rows if name != "sqlite_sequence")


def _drop_journal(connection: sqlite3.Connection) -> None:
    """Undo does not reach back past a migration: the rows kept have the old columns."""
    rows = [
        (kind, name)
        for kind, name in connection.execute("SELECT type, name FROM sqlite_schema")
        if name.startswith(("before_", "keep_"))
    ]
    for kind, name in sorted(rows, reverse=True):
        connection.execute(f"DROP {kind} {name}")
    if any(name == "journal" for name, _ in schema(connection)):
        connection.execute("DELETE FROM journal")


def _make_journal(connection: sqlite3.Connection) -> None:
    for table in journaled(connection):
        names = columns(connection, table)
        kept = ", ".join(f"{name} {kind}" for name, kind in names)
        connection.execute(
            f"CREATE TABLE before_{table} (step INTEGER PRIMARY KEY REFERENCES journal ON DELETE CASCADE, "
            f"{kept.replace('id INTEGER', 'id INTEGER NOT NULL', 1)}) STRICT"
        )
        for did in ("insert", "update", "delete"):
            connection.execute(_trigger(table, did, [name for name, _ in names]))


def _trigger(table: str, did: str, names: Sequence[str]) -> str:
    """A trigger that notes which row the change under way touches, and keeps that row as it was."""
    row = "NEW" if did == "insert" else "OLD"
    kept = ", ".join(f"OLD.{name}" for name in names)
    keep = "" if did == "insert" else f"INSERT INTO before_{table} VALUES (last_insert_rowid(), {kept}); "
    return (
        f"CREATE TRIGGER keep_{table}_{did} AFTER {did.upper()} ON {table} "
        f"WHEN EXISTS (SELECT 1 FROM under_way) BEGIN "
        f"INSERT INTO journal (change, of_table, did, row) "
        f"VALUES ((SELECT change FROM under_way), '{table}', '{did}', {row}.id); {keep}END"
    )
