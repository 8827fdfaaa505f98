"""Conditions on the description, as a list of operations writes them: what is wrong with one, and what to write.

Three keys of a row have them: `skipped`, `where`, and `after`, for one that waits for
another on some instruments only. A key that no description has, or a word that a key never has, could never hold: both
are reported.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache
from itertools import product
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from gramil.description.instrument import Instrument
from gramil.description.problems import did_you_mean, nearest, quoted, table_in
from gramil.shop.operations import OTHERWISE, When, conditions_in

Mistake = tuple[str, str]
"""What is wrong, and what to write instead."""
AS_SKIPPED = 'write { "binding.thickness" = 0.0, why = "the board is not bound" }'
AS_OTHERWISE = 'write { "top.radius" = inf, what = "Sand the rim level for the top" }'
AS_AFTER = 'write names in quotes, or { operation = "arched", "slots.cut" = "after arching" }'


ASKED = (
    *("body.described", "soundhole.described", "bridge_plate.described", "repair.described"),
    *("body.open_pored", "carve.open_pored"),
)
"""What a list may ask of a description besides its keys."""


def wrong_skip(row: object) -> Mistake | None:
    """What is wrong with a row of `skipped`, or nothing."""
    if not isinstance(row, dict) or not isinstance(row.get("why"), str) or len(row) < 2:
        return "a condition is not whole", AS_SKIPPED
    return _wrong_conditions(row, AS_SKIPPED)


def wrong_wait(row: object) -> Mistake | None:
    """What is wrong with a row of `after`, or nothing."""
    if isinstance(row, str):
        return None
    if not isinstance(row, dict):
        return "not all are names", AS_AFTER
    if not isinstance(row.get("operation"), str) or not conditions_in(row):
        return "a condition is not whole", AS_AFTER
    return _wrong_conditions(row, AS_AFTER)


def wrong_otherwise(row: object) -> Mistake | None:
    """What is wrong with a row of `where`, or nothing."""
    if not isinstance(row, dict) or not conditions_in(row) or not any(key in row for key in OTHERWISE):
        return "a condition is not whole", AS_OTHERWISE
    kinds = {"what": str, "prove": str, "hands": int, "clamp": int | float}
    if not all(isinstance(row[key], kinds.get(key, list)) for key in OTHERWISE if key in row):
        return "is not as its key has it", AS_OTHERWISE
    return _wrong_conditions(row, AS_OTHERWISE)


def _wrong_conditions(row: Mapping[str, Any], example: str) -> Mistake | None:
    wrong = (_wrong_condition(key, value, example) for key, value in conditions_in(row))
    return next((each for each in wrong if each is not None), None)


def _wrong_condition(key: str, value: object, example: str) -> Mistake | None:
    keys = [key]
    if key == "differ":
        if not isinstance(value, tuple) or len(value) != 2 or not all(isinstance(each, str) for each in value):
            return "a condition is not whole", example
        keys = [*value]
    elif isinstance(value, dict):
        return f"{key} is a table", f"write its key in quotes: {example.removeprefix('write ')}"
    elif isinstance(value, tuple) and value:
        return f"read {key} = {list(value)}", "a list is asked only whether it is empty: write []"
    for each in keys:
        if _field(each) is None:
            return f"no description has a key {each}", did_you_mean(nearest(each, _keys())) or "see the list of keys"
    return None if key == "differ" else _wrong_word(key, value)


def _wrong_word(key: str, value: object) -> Mistake | None:
    """What is wrong with the value of a key that allows only certain words."""
    field = _field(key)
    if field is None or get_origin(field.annotation) is not Literal:
        return None
    words = get_args(field.annotation)
    allowed = "allowed: " + ", ".join(quoted(word) for word in words)
    return None if value in words else (f"{key} is never {quoted(value)}", allowed)


def ways_of(conditions: Iterable[When]) -> Iterator[frozenset[Any]]:
    """Every combination of conditions that some description could meet, each as the set of the conditions that hold."""
    asked: dict[Any, list[Any]] = {}
    for key, value in dict.fromkeys(each for when in conditions for each in when):
        asked.setdefault((key, value) if key == "differ" else key, []).append((key, value))
    groups = ([*ways, *([] if _are_all(ways) else [None])] for ways in asked.values())
    return (frozenset(each for each in way if each is not None) for way in product(*groups))


def _are_all(ways: Sequence[tuple[str, Any]]) -> bool:
    """Whether one of these values of a key must hold, because the key takes no others."""
    field = _field(ways[0][0])
    words = get_args(field.annotation) if field and get_origin(field.annotation) is Literal else ()
    return len(words) == len(ways)


def _field(key: str) -> FieldInfo | None:
    """The field of a key such as `board.arch.nut`; None if there is none."""
    return _keys().get(key)


@cache
def _keys() -> Mapping[str, FieldInfo]:
    """Every key of a description's tables, with a dot between table and key, and the properties that lists ask for
    besides: whether parts are described, whether woods have open pores. An array of tables is asked only whether it is
    empty.
    """
    return {**dict(_within(Instrument, "")), **{each: FieldInfo(annotation=bool) for each in ASKED}}


def _within(model: type[BaseModel], above: str) -> Iterator[tuple[str, FieldInfo]]:
    for name, field in model.model_fields.items():
        table = table_in(field.annotation)
        if table is None:
            yield above + name, field
        elif get_origin(field.annotation) is not tuple:
            yield from _within(table, f"{above}{name}.")
        else:
            yield above + name, field
