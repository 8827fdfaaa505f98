"""What is wrong with a description, in the maker's words: pydantic's errors turned into problems with their place in
the file.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any, get_args

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo

from gramil.description.locate import Path
from gramil.description.marks import unit_of_key
from gramil.description.not_yet import not_yet
from gramil.faults import MakersFault
from gramil.in_shop_units import own_words_in_shop_units


@dataclass(frozen=True)
class Problem:
    """One fault: where, what is wrong and what was read, what is allowed, and what to write instead."""

    path: Path
    what: str
    allowed: str = ""
    remedy: str = ""


def shown(path: Path) -> str:
    """A path as the maker writes it: `board.arch.nut`, `saw[2].kerf` (rows count from 1)."""
    text = ""
    for step in path:
        text += f"[{step + 1}]" if isinstance(step, int) else f".{step}" if text else step
    return text


def nearest(word: str, known: Iterable[str]) -> str:
    """The known word most similar to `word`, or nothing."""
    return next(iter(get_close_matches(word, list(known), 1, 0.6)), "")


def did_you_mean(word: str) -> str:
    """The remedy for a misspelt word, or nothing."""
    return f"the nearest is {word}" if word.strip('"') else ""


def problems_of(error: ValidationError, model: type[BaseModel], data: Mapping[str, Any], unit: str) -> list[Problem]:
    """Every fault that validation found, each only once; `unit` is the unit of bare numbers in the file."""
    found: dict[tuple[Path, str], Problem] = {}
    for each in error.errors(include_url=False):
        path, value = _read(data, each["loc"])
        problem = _problem(_Refused(each["type"], path, value, each.get("ctx", {}), each["msg"]), model, unit)
        found.setdefault((problem.path, problem.what), problem)
    return list(found.values())


def _read(data: Any, location: Path) -> tuple[Path, Any]:
    """The part of a location that stands in the file, and what was read there."""
    for depth, step in enumerate(location):
        if isinstance(data, dict) and step not in data and depth == len(location) - 1:
            return location, None
        try:
            data = data[step]
        except (KeyError, IndexError, TypeError):
            return location[:depth], data
    return location, data


@dataclass(frozen=True)
class _Refused:
    """What validation refused: the kind of error, where, what was read, what belongs to the error, and its words."""

    kind: str
    path: Path
    value: Any
    context: Mapping[str, Any]
    message: str


def _problem(refused: _Refused, model: type[BaseModel], unit: str) -> Problem:
    kind, path, value = refused.kind, refused.path, refused.value
    if kind == "extra_forbidden":
        return _unknown_key(path, model)
    if kind == "missing":
        field = _field(model, path)
        needed = own_words_in_shop_units(field.description or "", unit) if field else ""
        return Problem(path, "is missing", needed or "it is needed")
    if kind == "literal_error":
        if isinstance(value, str) and (asked := not_yet(value)):
            return Problem(path, asked.what, "", f"the nearest is {asked.nearest}")
        words = [str(word) for word in get_args(_field_type(model, path))]
        close = nearest(value, words) if isinstance(value, str) else ""
        return Problem(
            path, f"read {quoted(value)}", "allowed: " + ", ".join(map(quoted, words)), did_you_mean(quoted(close))
        )
    if kind == "value_error":
        return _refused(path, value, refused.context["error"])
    allowed = _allowed(kind, refused.context, _field(model, path), unit) or refused.message
    return Problem(path, f"read {quoted(value)}", allowed)


def _refused(path: Path, value: Any, error: Exception) -> Problem:
    """What a reader or a table's own check said; a whole table is too long to quote."""
    if isinstance(error, MakersFault):
        fault = error.faults[0]
        return Problem(path, fault.what, fault.why, fault.remedy)
    said = str(error)
    return Problem(path, said) if isinstance(value, dict | tuple) else Problem(path, f"read {quoted(value)}", said)


def _unknown_key(path: Path, model: type[BaseModel]) -> Problem:
    key = str(path[-1])
    if asked := not_yet(key):
        return Problem(path, asked.what, "", f"the nearest is {asked.nearest}")
    table = _table(model, path[:-1])
    keys = names_in(table) if table else []
    close = nearest(key, keys) or _elsewhere(key, model)
    what = "no such key" if len(path) > 1 else "no such table"
    return Problem(path, what, "allowed: " + ", ".join(keys), did_you_mean(close))


def _elsewhere(key: str, model: type[BaseModel]) -> str:
    """The same key in another table, such as `board.thickness`."""
    for name, field in model.model_fields.items():
        table = table_in(field.annotation)
        if table and key in names_in(table):
            return f"{name}.{key}"
    return ""


def names_in(table: type[BaseModel]) -> list[str]:
    """The keys of a table as they are written."""
    return [field.alias or name for name, field in table.model_fields.items()]


def table_in(annotation: Any) -> type[BaseModel] | None:
    """The table's class in a field's annotation, for one table or an array of them."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    return next((each for each in map(table_in, get_args(annotation)) if each), None)


def _table(model: type[BaseModel], path: Path) -> type[BaseModel] | None:
    table: type[BaseModel] | None = model
    for step in path:
        if isinstance(step, str):
            field = _own_field(table, step) if table else None
            table = table_in(field.annotation) if field else None
    return table


def _own_field(table: type[BaseModel], key: str) -> FieldInfo | None:
    return next((field for name, field in table.model_fields.items() if key == (field.alias or name)), None)


def _field(model: type[BaseModel], path: Path) -> FieldInfo | None:
    keys = [step for step in path if isinstance(step, str)]
    table = _table(model, tuple(keys[:-1]))
    return _own_field(table, keys[-1]) if table and keys else None


def _field_type(model: type[BaseModel], path: Path) -> Any:
    field = _field(model, path)
    return field.annotation if field else None


def quoted(value: Any) -> str:
    """A value as it would be written in the file, cut short."""
    text = f'"{value}"' if isinstance(value, str) else str(value).lower() if isinstance(value, bool) else str(value)
    if isinstance(value, dict):
        text = "a table"
    if isinstance(value, tuple):
        text = "a list" if value else "an empty list"
    text = " ".join(text.split())
    return text if len(text) <= 60 else text[:57] + "..."


_BOUNDS = {
    "greater_than": ("gt", "more than"),
    "greater_than_equal": ("ge", "at least"),
    "less_than": ("lt", "less than"),
    "less_than_equal": ("le", "at most"),
}
_KINDS = {
    "string_type": "text in quotes",
    "bool_type": "true or false",
    "int_type": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "finite_number": "a finite number",
    "tuple_type": "a list",
    "model_type": "a table",
    "model_attributes_type": "a table",
    "date_type": "a date such as 2026-11-02",
    "date_from_datetime_inexact": "a date such as 2026-11-02",
}


def _allowed(kind: str, context: Mapping[str, Any], field: FieldInfo | None, unit: str) -> str:
    words = _allowed_words(kind, context, field, unit)
    return f"allowed: {words}" if words else ""


def _allowed_words(kind: str, context: Mapping[str, Any], field: FieldInfo | None, unit: str) -> str:
    if kind in _BOUNDS:
        key, words = _BOUNDS[kind]
        return f"{words} {_size(context[key], unit_of_key(field) if field else '', unit)}"
    if kind == "too_short":
        return f"at least {context['min_length']} of them"
    if kind == "too_long":
        return f"at most {context['max_length']} of them"
    if kind in ("string_too_short", "string_too_long"):
        return "1 to 200 letters"
    return _KINDS.get(kind, "")


def _size(value: float, symbol: str, unit: str) -> str:
    if symbol == "mm" and unit == "in":
        return f"{value / 25.4:.4g} in"
    return f"{value:g} {symbol}".rstrip()
