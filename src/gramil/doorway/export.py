"""Everything in the store as files, and back, with nothing lost: one TOML file of all tables, CSV of any one of them.

They leave out only what the program alone needs: the journal that undo reads, and row numbers that nothing refers to.
"""

import csv
import io
import json
from collections.abc import Iterable, Iterator
from typing import Any

from gramil.air.places import moment_of
from gramil.doorway.file_rows import FORM
from gramil.store.opening import Store, reading
from gramil.store.table_forms import NAMED, TABLES, Column, columns_of, names_of_rows
from gramil.store.toml_text import table_text

AIR_COLUMNS = ("place", "import", "at", "temperature", "humidity")
AIR = "air_reading"
TOML_FILE, AIR_FILE = "store.toml", "air.csv"


def export_files(store: Store) -> dict[str, str]:
    """The whole store as texts by file name: `store.toml`, and `air.csv` with every reading."""
    with reading(store):
        return {TOML_FILE: export_toml(store), AIR_FILE: export_csv(store, AIR)}


def export_toml(store: Store) -> str:
    """Every table but the readings of air as one TOML text; the same store gives the same text."""
    with reading(store):
        tables = [_toml_row(table, columns, row) for table in TABLES for columns, row in _rows(store, table)]
    return "\n".join([f"gramil_store = {FORM}\n", *tables])


def export_csv(store: Store, table: str) -> str:
    """One table as CSV (RFC 4180), its columns named in the first line. Raises KeyError if there is no such table."""
    if table == AIR:
        return _csv(AIR_COLUMNS, _readings(store))
    if table not in TABLES:
        raise KeyError(table)
    with reading(store):
        names = [column.name for column in columns_of(store, table)]
        return _csv(names, (list(map(_cell, row)) for _, row in _rows(store, table)))


def _rows(store: Store, table: str) -> Iterator[tuple[tuple[Column, ...], tuple[Any, ...]]]:
    """A table's rows with names in place of row numbers."""
    columns = columns_of(store, table)
    names = {column.refers: names_of_rows(store, column.refers) for column in columns if column.refers in NAMED}
    for row in store.rows(f"SELECT {', '.join(column.name for column in columns)} FROM {table} ORDER BY id"):
        yield (
            columns,
            tuple(
                names[column.refers][value] if column.refers in NAMED and value is not None else value
                for column, value in zip(columns, row, strict=True)
            ),
        )


def _toml_row(table: str, columns: Iterable[Column], row: Iterable[Any]) -> str:
    """A row as a TOML table; empty columns are left out, JSON becomes TOML values."""
    pairs = ((column, value) for column, value in zip(columns, row, strict=True) if value is not None)
    return table_text(f"[[{table}]]", ((each.name, json.loads(value) if each.json else value) for each, value in pairs))


def _readings(store: Store) -> Iterator[list[str]]:
    names = names_of_rows(store, "place")
    sql = f"SELECT place, import, instant, offset_minutes, temperature, humidity FROM {AIR} ORDER BY place, instant"
    for place, owner, instant, offset, temperature, humidity in store.each(sql):
        yield [names[place], str(owner), moment_of(instant, offset).isoformat(), repr(temperature), repr(humidity)]


def _cell(value: Any) -> str:
    return "" if value is None else repr(value) if isinstance(value, float) else str(value)


def _csv(names: Iterable[str], rows: Iterable[list[str]]) -> str:
    stream = io.StringIO(newline="")
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow(names)
    writer.writerows(rows)
    return stream.getvalue()
