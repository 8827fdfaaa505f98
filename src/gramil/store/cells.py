"""One cell of a file as a table of the store holds it, or why it cannot be stored."""

import json
from typing import Any

from gramil.description.problems import quoted
from gramil.store.moments import is_moment
from gramil.store.table_forms import Column

LARGEST = 2**63
"""Whole numbers of the database are smaller."""


def cell_value(column: Column, given: Any, is_text: bool) -> str | int | float:
    """The value of a column that refers to no other table; `is_text` means that `given` is a cell of CSV.

    Raises ValueError, in the maker's words, if `given` is not a value of the column's kind.
    """
    if column.json:
        return _json(given, is_text)
    if column.kind == "TEXT":
        return _text(column, given)
    return _number(column, given, is_text)


def _json(given: Any, is_text: bool) -> str:
    """A TOML table or list, or the JSON text in a CSV cell."""
    if is_text:
        try:
            given = json.loads(given)
        except (ValueError, RecursionError):
            raise ValueError(f"read {quoted(str(given))}, which is not JSON") from None
    try:
        return json.dumps(given, ensure_ascii=False, allow_nan=False)
    except (TypeError, ValueError, RecursionError):
        raise ValueError("holds a value that the store cannot keep: write dates in quotes") from None


def _text(column: Column, given: Any) -> str:
    if not isinstance(given, str):
        raise ValueError(f"read {quoted(given)}, and text is wanted")
    if column.moment and not is_moment(given) and (given or column.needed):
        raise ValueError(f"read {quoted(str(given))}: a moment is written 2026-11-02T09:30:00+01:00")
    return str(given)


def _number(column: Column, given: Any, is_text: bool) -> int | float:
    whole = column.kind == "INTEGER"
    try:
        if is_text and "_" not in given:
            return _held(int(given)) if whole else float(given)
    except ValueError:
        given = str(given)
    if isinstance(given, int | float) and not isinstance(given, bool) and (isinstance(given, int) or not whole):
        return _held(int(given)) if whole else _as_float(given)
    raise ValueError(f"read {quoted(given)}, and a {'whole ' if whole else ''}number is wanted")


def _held(number: int) -> int:
    if -LARGEST <= number < LARGEST:
        return number
    raise ValueError(f"read {quoted(str(number)[:40])}, and a whole number is wanted that is less than 2 to the 63rd")


def _as_float(number: int | float) -> float:
    try:
        return float(number)
    except OverflowError:
        raise ValueError(f"read {quoted(str(number)[:40])}, and no number is that large") from None
