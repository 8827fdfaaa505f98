"""Files into the store: every row is checked, every fault is reported with its row, and nothing comes in unless all is
right.

What is brought in is added: a name that the store has already is a fault.
"""

import sqlite3
from collections.abc import Callable, Mapping

from gramil.description.problems import did_you_mean, nearest, quoted
from gramil.doorway.bringing_in_air import put_air_rows
from gramil.doorway.export import AIR, AIR_FILE, TOML_FILE
from gramil.doorway.file_rows import FORM, FileRow, csv_rows, toml_tables
from gramil.doorway.importing import Import
from gramil.doorway.verify import prove_change
from gramil.faults import MakersFault
from gramil.shop.own_operations import TABLE, check_operations
from gramil.store.cells import cell_value
from gramil.store.failures import fault_of
from gramil.store.opening import Store, Value
from gramil.store.rows import insert
from gramil.store.table_forms import NAMED, NUMBERED, TABLES, Column, columns_of
from gramil.store.writing import Hand, writing


def import_files(store: Store, files: Mapping[str, str], hand: Hand) -> None:
    """Bring in files that `export_files` made, as one change. Raises MakersFault with every fault of the first bad
    file.
    """
    with writing(store, "bring in " + " and ".join(sorted(files)), hand):
        work = Import(store, TOML_FILE)
        _put_tables(work, toml_tables(files.get(TOML_FILE, f"gramil_store = {FORM}"), TOML_FILE, TABLES))
        if AIR_FILE in files:
            work.file = AIR_FILE
            put_air_rows(work, csv_rows(files[AIR_FILE], AIR_FILE), hand.now)
        prove_change(store, TOML_FILE)


def import_csv(
    store: Store,
    table: str,
    text: str,
    file: str,
    hand: Hand,
    look: Callable[[Store], None] | None = None,
) -> int:
    """Bring in rows of one table from CSV, as one change; gives how many. `look` may refuse them at the end of it.

    Raises MakersFault with every fault, nothing brought in; KeyError for a table that does not exist.
    """
    if table not in (*TABLES, AIR):
        raise KeyError(table)
    rows = list(csv_rows(text, file))
    with writing(store, f"bring in {file}", hand):
        work = Import(store, file)
        if table == AIR:
            put_air_rows(work, rows, hand.now)
        else:
            _put_tables(work, {table: rows})
        prove_change(store, file, table)
        if look is not None:
            look(store)
    return len(rows)


def _put_tables(work: Import, tables: Mapping[str, list[FileRow]]) -> None:
    for table in TABLES:
        columns = columns_of(work.store, table)
        for row in tables.get(table, ()):
            _put_row(work, table, columns, row)
    work.settle()
    if TABLE in tables:
        check_operations(work.store)


def _put_row(work: Import, table: str, columns: tuple[Column, ...], row: FileRow) -> None:
    """Add one row, or note what is wrong with it."""
    before = len(work.faults)
    names = [column.name for column in columns]
    for key in row.cells:
        if key not in names:
            work.fault(
                row,
                table,
                f"no such column: {key}",
                did_you_mean(nearest(key, names)) or "allowed: " + ", ".join(names),
            )
    values: dict[str, Value] = {}
    for column in columns:
        given = row.cells.get(column.name)
        if given is None or (given == "" and (column.kind != "TEXT" or column.json)):
            if column.needed:
                work.fault(row, table, f"{column.name} is missing")
            continue
        try:
            values[column.name] = _value(work, column, row)
        except ValueError as error:
            work.fault(row, table, f"{column.name}: {error}")
    if len(work.faults) == before:
        _insert(work, table, row, values)


def _insert(work: Import, table: str, row: FileRow, values: dict[str, Value]) -> None:
    called = str(values.pop("id", ""))
    if called and not work.store.row(f"SELECT 1 FROM {table} WHERE id = ?", (int(called),)):
        values = {"id": int(called), **values}
    if "version" in (each[1] for each in work.store.rows(f"PRAGMA table_info({table})")):
        values = {"version": None, **values}
    try:
        number = insert(work.store, table, values)
    except sqlite3.IntegrityError as error:
        work.fault(row, table, fault_of(error, work.file).what)
        return
    except MakersFault as found:
        for each in found.faults:
            work.fault(row, table, f"{each.where} {each.what}")
        return
    if table in NUMBERED:
        work.call(table, called, number)
    elif table in NAMED:
        work.call(table, f"{values['kind']}: {values['name']}" if table == "item" else str(values["name"]), number)


def _value(work: Import, column: Column, row: FileRow) -> Value:
    """One cell as the table holds it; raises ValueError, in the maker's words, if it cannot be one."""
    given = row.cells[column.name]
    if not column.refers:
        return cell_value(column, given, row.texts)
    number = work.number(column.refers, str(given))
    if number is None:
        raise ValueError(f"there is no {column.refers.replace('_', ' ')} called {quoted(given)}")
    return number
