"""Every key of a description changed, one at a time: numbers by a hundredth or a step, choices to each other one.

Lists lose a row, flags turn, and keys that are left out are given a value. What cannot be is refused by the reader, and
counts as told.
"""

import copy
import math
import re
from collections.abc import Container, Iterator
from dataclasses import dataclass
from typing import Any, Literal, get_args, get_origin

import tomlkit
from pydantic import BaseModel, BeforeValidator
from pydantic.fields import FieldInfo

from gramil.description.fields import STRING_MATERIALS, Paper, StringMaterial
from gramil.description.instrument import Instrument
from gramil.description.marks import marks_of
from gramil.description.problems import table_in
from gramil.description.shop.tables import Shop
from gramil.paper_sizes import SIZES
from gramil.quantities import Unit

INSTRUMENT, SHOP = Instrument, Shop
MEASURE = re.compile(r"(-?\d+(?:\.\d+)?)(.*)", re.DOTALL)
LEFT_OUT, LEFT_OUT_LIST = 10.5, [0.31] * 6
"""Given to a number, and to a list of them, that is left out and has no default."""
WRITTEN = {"mm": "{:.6g} mm", "MPa": "{:.6g} MPa"}
"""How a number that stands in no file is written, by its unit, whatever the unit of the file's bare lengths."""
CHOSEN = ((Paper, tuple(SIZES)), (StringMaterial, STRING_MATERIALS))
"""Choices that are a reader's own and no list of words in the model: the type that reads them, and all of them."""
Path = tuple[str | int, ...]


@dataclass(frozen=True)
class Change:
    """A key without the numbers of its rows, what was changed in words, and the text of the description then."""

    key: str
    what: str
    text: str


def changes(tables: dict[str, Any], model: type[BaseModel], only: Container[str] | None = None) -> Iterator[Change]:
    """A change of each key, or of `only` some; keys with several other values have a change for each."""
    written = {table: tomlkit.dumps({table: value}) for table, value in tables.items()}
    for path, value in _every(tables, model, ()):
        key = ".".join(step for step in path if isinstance(step, str))
        if only is None or key in only:
            table = _changed({path[0]: tables.get(str(path[0]), {})}, path, value)
            what = f"{'.'.join(map(str, path))} = {value!r}"[:80]
            texts = {**written, str(path[0]): tomlkit.dumps(table)}.values()
            # A key without a table, as a list that lost its only row, stands before the first table.
            yield Change(key, what, "\n".join(sorted(texts, key=lambda text: text.startswith("["))))


def _changed(tables: dict[Any, Any], path: Path, value: Any) -> dict[Any, Any]:
    found = copy.deepcopy(tables)
    place: Any = found
    for step in path[:-1]:
        place = place[step] if isinstance(step, int) else place.setdefault(step, {})
    place[path[-1]] = value
    return found


def _every(given: dict[str, Any], model: type[BaseModel], at: Path) -> Iterator[tuple[Path, Any]]:
    for key, field in model.model_fields.items():
        table, here = table_in(field.annotation), (*at, key)
        if table is not None and isinstance(given.get(key), list):
            yield here, given[key][:-1]
            for row, inner in enumerate(given[key]):
                if isinstance(inner, dict):
                    yield from _every(inner, table, (*here, row))
        elif table is not None and get_origin(field.annotation) is not tuple:
            inner = given.get(key, {})
            if isinstance(inner, dict) and (inner or at == ()):
                yield from _every(inner, table, here)
        elif at and key in given:
            others = _choices(given[key], field) or _others(given[key], field.annotation)
            yield from ((here, value) for value in others)
        elif at:
            found = _choices(field.get_default(), field) or _others(field.get_default(), field.annotation)
            yield from ((here, _written(value, field)) for value in found)


def _choices(value: Any, field: FieldInfo) -> list[Any]:
    """The other values of a key that is a choice by its reader; empty for any other key, and for lists of them."""
    readers = {mark.func for mark in marks_of(field) if isinstance(mark, BeforeValidator)}
    for kind, words in CHOSEN:
        own = {mark.func for mark in kind.__metadata__ if isinstance(mark, BeforeValidator)}
        if own & readers and isinstance(value, str):
            return [word for word in words if word != value]
    return []


def _others(value: Any, annotation: Any) -> Iterator[Any]:
    """Other values of one key."""
    words = [
        word for each in (annotation, *get_args(annotation)) if get_origin(each) is Literal for word in get_args(each)
    ]
    if words:
        yield from (word for word in words if word != value and word is not None)
    elif isinstance(value, bool):
        yield not value
    elif isinstance(value, int):
        yield value + 1
    elif isinstance(value, float):
        yield value * 1.01 if value else 0.5
    elif isinstance(value, str) and (found := MEASURE.fullmatch(value)):
        yield f"{float(found[1]) * 1.01 or 0.5:.6g}{found[2]}"
    elif isinstance(value, list | tuple) and value:
        yield list(value[:-1])
        yield [*list(value[:-1]), *_others(value[-1], Any)][: len(value)]
    elif value is None and float in _inner(annotation):
        many = any(get_origin(each) is tuple for each in _inner(annotation))
        yield LEFT_OUT_LIST if many else LEFT_OUT


def _written(value: Any, field: FieldInfo) -> Any:
    """A value that no file gives, as it would be written there: with its unit, an angle in degrees."""
    if isinstance(value, list):
        return [_written(each, field) for each in value]
    units = [mark.symbol for mark in marks_of(field) if isinstance(mark, Unit)]
    if not isinstance(value, float) or not units:
        return value
    if units[0] == "rad":
        return value if value == LEFT_OUT else math.degrees(value)
    if units[0] == "MPa" and value == LEFT_OUT:
        value *= 1000  # woods are some thousands of them
    return WRITTEN[units[0]].format(value) if units[0] in WRITTEN else value


def _inner(annotation: Any) -> Iterator[Any]:
    yield annotation
    for each in get_args(annotation):
        yield from _inner(each)
