"""A row of the shop's description, or a table of an instrument's, as a form: made from the description's own table and
checked by it, faults by field.

What is typed becomes the row as a maker would write it; a bare number is in the unit that the page shows.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from gramil.bare_numbers import with_unit
from gramil.description.fields import Length, Radius
from gramil.description.instrument import Instrument
from gramil.description.marks import marks_of
from gramil.description.problems import table_in
from gramil.description.shop.tables import Shop
from gramil.faults import Fault
from gramil.in_shop_units import in_shop_units, own_words_in_shop_units
from gramil.measure import LengthUnit

LENGTH_READERS = frozenset(get_args(kind)[1].func for kind in (Length, Radius))
"""What reads a length: a bare number there has a unit."""


OF_FILES = re.compile(r"; the same as a \[\[blank\]\].*|, or one of \[\[wood\]\]")
"""What the description says of a row for those who write its file: a form has no rows of other kinds beside it."""


@dataclass(frozen=True)
class Entry:
    """A field of the form: key, words, value, choices (empty if anything may be typed), hint, fault."""

    key: str
    words: str
    value: str
    choices: tuple[tuple[str, str], ...]
    needed: bool
    hint: str
    fault: str = ""


def table_of(kind: str) -> type[BaseModel]:
    """The description's table of a kind of row of the shop ("saw"), or of an instrument's table ("cutaway")."""
    table = table_in((Shop.model_fields.get(kind) or Instrument.model_fields[kind]).annotation)
    assert table is not None
    return table


def entries(kind: str, figures: Mapping[str, Any], unit: LengthUnit, faults: Mapping[str, str]) -> tuple[Entry, ...]:
    """The fields of a kind of row, filled with what is known; `faults` by key."""
    return tuple(
        Entry(
            key,
            _words(field, unit),
            _shown(figures.get(key)),
            _choices(field),
            field.is_required(),
            _hint(field, unit),
            faults.get(key, ""),
        )
        for key, field in _typed(kind)
    )


def lengths_of(kind: str) -> frozenset[str]:
    """The keys of a kind of row that hold lengths."""
    return frozenset(key for key, field in _typed(kind) if _is_length(field))


def _typed(kind: str) -> Iterator[tuple[str, FieldInfo]]:
    """The keys that have a field each: those that hold no rows of their own."""
    for name, field in table_of(kind).model_fields.items():
        if table_in(field.annotation) is None:
            yield field.alias or name, field


def _words(field: FieldInfo, unit: LengthUnit) -> str:
    what = OF_FILES.sub("", field.description or "")
    said = f"{what[:1].upper()}{what[1:]}"
    return f"{said}, {unit}" if _is_length(field) else said


def _is_length(field: FieldInfo) -> bool:
    return any(getattr(mark, "func", None) in LENGTH_READERS for mark in marks_of(field))


def _hint(field: FieldInfo, unit: LengthUnit) -> str:
    if field.is_required():
        return ""
    reason = str(field.json_schema_extra.get("reason", "")) if isinstance(field.json_schema_extra, dict) else ""
    usual = _shown(field.default if isinstance(field.default, str | int | float) else None)
    said = reason if reason.startswith(f"{usual}:") else ", ".join(filter(None, (_usual_shown(field, unit), reason)))
    return f"May stay empty: {own_words_in_shop_units(said, unit)}." if said else "May stay empty."


def _usual_shown(field: FieldInfo, unit: LengthUnit) -> str:
    """What an empty field stands for; a length, which is kept in millimetres, in the page's unit."""
    if _is_length(field) and isinstance(field.default, float) and unit == "in":
        return in_shop_units(f"{field.default:g} mm", unit)
    return _shown(field.default if isinstance(field.default, str | int | float) else None)


def _choices(field: FieldInfo) -> tuple[tuple[str, str], ...]:
    usual = () if field.is_required() else (("", "as usual"),)
    if field.annotation is bool:
        return (*usual, ("yes", "yes"), ("no", "no"))
    if get_origin(field.annotation) is Literal:
        return (*usual, *((word, word) for word in get_args(field.annotation)))
    return ()


def _shown(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}"
    return ", ".join(map(_shown, value)) if isinstance(value, list | tuple) else str(value)


def row_typed(kind: str, typed: Mapping[str, str], unit: LengthUnit) -> dict[str, Any]:
    """The row as a maker writes it; what was left empty is left out. Nothing is checked here."""
    fields = dict(_typed(kind))
    return {
        key: _value(fields[key], text.strip(), unit) for key, text in typed.items() if key in fields and text.strip()
    }


def _value(field: FieldInfo, text: str, unit: LengthUnit) -> Any:
    if field.annotation is bool:
        return {"yes": True, "no": False}.get(text, text)
    if get_origin(field.annotation) is Literal or field.annotation is str:
        return text
    if get_origin(field.annotation) is tuple:
        parts = re.split(r";" if ";" in text else r",", text)
        return [_number(field, each.strip(), unit) for each in parts if each.strip()]
    return _number(field, text, unit)


def _number(field: FieldInfo, text: str, unit: LengthUnit) -> Any:
    """A number as a number; a bare length gets the unit that the page shows, since the shop's own may differ.

    So does a bare fraction on a page in inches; on one in mm it stays as typed, and is asked about if it is doubted.
    """
    if int in (field.annotation, *get_args(field.annotation)) and text.isdecimal():
        return int(text)
    try:
        number = float(text.replace(",", "."))
    except ValueError:
        return with_unit(text, "mm", unit) if unit == "in" and "/" in text and _is_length(field) else text
    if _is_length(field):
        return with_unit(text.replace(",", "."), "mm", unit)
    return text if str in get_args(field.annotation) else number


def by_key(kind: str, faults: Sequence[Fault]) -> tuple[dict[str, str], list[Fault]]:
    """Faults in words, by their field; and those that belong to no field."""
    keys = {key for key, _ in _typed(kind)}
    found: dict[str, str] = {}
    rest = []
    for each in faults:
        key = re.split(r"[.\[]", each.where)[0]
        if key in keys:
            found.setdefault(key, str(Fault(None, "", each.what, each.why, each.remedy)))
        else:
            rest.append(each)
    return found, rest
