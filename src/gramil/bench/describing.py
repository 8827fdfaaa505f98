"""What a maker adds to an instrument by a form: a hole, a cutaway, a bevel, a port; as the keys that a draft sets."""

from collections.abc import Iterator, Mapping
from typing import Any

from gramil.bench.chosen import Written
from gramil.bench.row_form import entries, lengths_of, row_typed, table_of
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit

TABLES: Mapping[str, str] = {
    "soundhole": "Soundhole",
    "cutaway": "Cutaway",
    "arm_bevel": "Bevel for the arm",
    "rib_bevel": "Bevel for the ribs",
}
"""Tables that an instrument has once or not at all, as they are called on pages."""
ROWS: Mapping[str, str] = {"opening": "Hole in the top", "rosette": "Ring", "port": "Port in a side"}
"""Tables of which it may have any number, as one of them is called."""


def forms_of(data: Written) -> tuple[tuple[str, str], ...]:
    """Every form: what it describes, in words, and the part of its address that names it.

    A kind with several rows has a form for each row, and one for a new row.
    """
    once = [(words, f"table={table}") for table, words in TABLES.items()]
    return (*once, *(form for table in ROWS for form in _forms_of_rows(table, data)))


def _forms_of_rows(table: str, data: Written) -> Iterator[tuple[str, str]]:
    rows = data.get(table, ())
    for number, row in enumerate(rows, 1):
        yield f"{ROWS[table]}: {row.get('name', number)}", f"table={table}&row={number}"
    yield f"{ROWS[table]}: {'one more' if rows else 'a first'}", f"table={table}&row={len(rows) + 1}"


def place_of_form(table: str, row: int, data: Written) -> str | None:
    """The key under which a form's keys stand: "cutaway", "port[2]"; None where there is no such form."""
    if table in TABLES:
        return table
    return f"{table}[{row}]" if table in ROWS and 0 < row <= len(data.get(table, ())) + 1 else None


def written_in(table: str, row: int, data: Written) -> Mapping[str, Any]:
    """What is written of it now; empty where it is not described yet."""
    if table in TABLES:
        found: Mapping[str, Any] = data.get(table, {})
        return found
    rows = data.get(table, ())
    return rows[row - 1] if row <= len(rows) else {}


def sets_of(
    table: str, place: str, typed: Mapping[str, str], written: Mapping[str, Any], unit: LengthUnit
) -> tuple[tuple[str, str], ...]:
    """The keys that a form sets: those whose field differs from what is written.

    An emptied field takes its usual value. Raises MakersFault, at its key, for an emptied field that has no usual
    value.
    """
    shown = {entry.key: entry.value for entry in entries(table, written, unit, {})}
    changed = {key: text for key, text in typed.items() if key in shown and text != shown[key]}
    values = {**row_typed(table, changed, unit), **_usual(table, [key for key, text in changed.items() if not text])}
    return tuple((f"{place}.{key}", _as_text(value)) for key, value in values.items())


def _usual(table: str, keys: list[str]) -> dict[str, Any]:
    fields = table_of(table).model_fields
    usual = {key: fields[key].default for key in keys}
    if none := [key for key, value in usual.items() if not isinstance(value, str | int | float)]:
        remedy = "give another, or strike its line out on the page of files"
        raise MakersFault(Fault(where=key, what="it was given, and nothing is usual", remedy=remedy) for key in none)
    lengths = lengths_of(table)  # usual ones are kept in millimetres, whatever the description is written in
    return {
        key: f"{value:g} mm" if key in lengths and isinstance(value, float) else value for key, value in usual.items()
    }


def _as_text(value: Any) -> str:
    return str(value).lower() if isinstance(value, bool) else f"{value:g}" if isinstance(value, float) else str(value)
