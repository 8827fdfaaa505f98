"""The page of keys, made from the models themselves so that the two always agree."""

import math
from collections.abc import Iterator
from typing import Any, Literal, get_args, get_origin

from annotated_types import Ge, Gt, Le
from pydantic import BaseModel, BeforeValidator
from pydantic.fields import FieldInfo

from gramil.description.fields import READERS
from gramil.description.instrument import Instrument
from gramil.description.kinds import USUAL
from gramil.description.marks import marks_of, unit_of_key
from gramil.description.not_yet import NOT_YET
from gramil.description.problems import names_in, table_in
from gramil.description.shop.limits import LIMITS
from gramil.description.shop.tables import Shop
from gramil.description.wood.air_fields import AIR_READERS

_HEAD = """# Keys of the two descriptions

This page is made from the program's own models by `gramil.description.keys`; a test fails when it is out of date.

Both files are TOML and begin with `gramil = 1`. A length is text with a unit (`"25 1/2 in"`, `"655.3 mm"`,
`"12 thou"`) or a bare number in the file's own unit. A key without a default must be given. Some defaults and limits
follow the instrument's kind: nylon strings, strings tied to the bridge, pairs on pins, a slotted head
(`head.tuners = "across"`).
"""


_TAKES = {**READERS, **AIR_READERS}


def describe_keys() -> str:
    """The whole page, in Markdown."""
    parts = [_HEAD, "## The instrument\n", *_tables(Instrument), "## The shop\n", *_tables(Shop), _limits(), _not_yet()]
    return "\n".join(parts).rstrip() + "\n"


def _not_yet() -> str:
    """What is refused by its name, and what is nearest to it."""
    rows = [f"| {each.name} | {each.nearest} |" for each in NOT_YET]
    head = ["## What cannot be described yet\n", "It is refused by its name, whatever key is tried for it.\n"]
    return "\n".join([*head, "| what | what is nearest |", "| --- | --- |", *rows]) + "\n"


def _tables(model: type[BaseModel]) -> Iterator[str]:
    for name, field in model.model_fields.items():
        table = table_in(field.annotation)
        if table is not None and name != "limits":
            many = get_origin(field.annotation) is tuple
            yield _table(name, table, field.is_required(), many)


def _table(name: str, table: type[BaseModel], needed: bool, many: bool) -> str:
    title = f"[[{name}]]" if many else f"[{name}]"
    words = " ".join((table.__doc__ or "").split())
    lines = [f"### `{title}`\n", words + ("" if needed else " May be left out.") + "\n"]
    lines += ["| key | what it is | allowed | when left out |", "| --- | --- | --- | --- |"]
    fields = table.model_fields.items()
    lines += [_row(field.alias or key, field, usual_by_kind(f"{name}.{key}", field)) for key, field in fields]
    return "\n".join(lines) + "\n"


def _row(key: str, field: FieldInfo, also: str) -> str:
    cells = (f"`{key}`", field.description or "", allowed(field), default(field) + also)
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"


def default(field: FieldInfo) -> str:
    """What a key is if it is left out, or that it must be given."""
    if field.is_required():
        return "must be given"
    reason = field.json_schema_extra.get("reason", "") if isinstance(field.json_schema_extra, dict) else ""
    if field.default in (None, "", ()):
        return str(reason)
    return f"`{_shown(field.default, unit_of_key(field))}`" + (f" ({reason})" if reason else "")


def usual_by_kind(key: str, field: FieldInfo) -> str:
    """The usual value of a dotted key for each kind of instrument that has one of its own."""
    rows = (row for row in USUAL if row.key == key)
    return "".join(f"; {row.kind}: `{_shown(row.value, unit_of_key(field))}`" for row in rows)


def _shown(value: object, unit: str) -> str:
    if unit == "rad" and isinstance(value, float | int):
        return f"{math.degrees(value):.10g} degrees"
    if isinstance(value, bool | tuple):  # as the file has it
        return str(list(value)) if isinstance(value, tuple) else str(value).lower()
    return f"{value:.10g} {unit}".rstrip() if isinstance(value, float | int) else str(value)


def allowed(field: FieldInfo) -> str:
    """What a key takes, in words."""
    marks = marks_of(field)
    words = [_kind(field, marks), *(_bound(mark, unit_of_key(field)) for mark in marks)]
    return ", ".join(word for word in words if word)


def _kind(field: FieldInfo, marks: list[Any]) -> str:
    many = get_origin(field.annotation) is tuple
    if (table := table_in(field.annotation)) and not any(isinstance(mark, BeforeValidator) for mark in field.metadata):
        return ("list, each " if many else "") + f"`{{ {', '.join(names_in(table))} }}`"
    readers = [_TAKES[mark.func] for mark in marks if isinstance(mark, BeforeValidator) and mark.func in _TAKES]
    if readers:
        return ("list, each a " if many else "") + readers[0]
    choices = next((each for each in _inner(field.annotation) if get_origin(each) is Literal), None)
    if choices is not None and not many:
        return ", ".join(f'`"{word}"`' for word in get_args(choices))
    names = {str: "text", bool: "`true` or `false`", int: "whole number"}
    if isinstance(field.annotation, type) and field.annotation in names:
        return names[field.annotation]
    return "list of whole numbers" if int in _inner(field.annotation) else "text"


def _inner(annotation: Any) -> Iterator[Any]:
    yield annotation
    for each in get_args(annotation):
        yield from _inner(each)


def _bound(mark: Any, unit: str) -> str:
    if isinstance(mark, Gt):
        return f"more than {_shown(mark.gt, unit)}"
    if isinstance(mark, Ge):
        return f"at least {_shown(mark.ge, unit)}"
    if isinstance(mark, Le):
        return f"at most {_shown(mark.le, unit)}"
    return ""


def _limits() -> str:
    lines = ["### `[limits]`\n", "Practice limits; a shop that gives one overrides it. May be left out.\n"]
    lines += ["| key | what it limits | as shipped | where that comes from |", "| --- | --- | --- | --- |"]
    lines += [
        f"| `{name}` | {limit.what} | {_shown(limit.value, limit.unit)}" + f" | {limit.origin} |"
        for name, limit in LIMITS.items()
    ]
    return "\n".join(lines) + "\n"
