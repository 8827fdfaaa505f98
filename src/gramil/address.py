"""Addresses: how one figure is named anywhere, in a `why`, on a drawing, in a finding or a measurement.

`slot_depth`, `slot_depth_at_edge[7]`, `string_error[6, 12]`, `braces["upper transverse"].length`. Frets count from 0
(the zero line), strings and the members of a list from 1.
"""

import re
from dataclasses import dataclass, is_dataclass, replace
from functools import lru_cache
from typing import Any

import numpy as np

from gramil.quantities import axes_of


@dataclass(frozen=True)
class Field:
    """A step of an address into a record: `.length`."""

    name: str


Step = int | str | Field
LEADS_NOWHERE = (IndexError, AttributeError, TypeError, ValueError, StopIteration)
"""What a step raises that leads to nothing."""
_STEP = re.compile(r"""\[([0-9]{1,9}(?:\s*,\s*[0-9]{1,9})*)\]|\["((?:[^"\\]|\\.)*)"\]|\['([^']*)'\]|\.([A-Za-z_]\w*)""")

_ESCAPED = re.compile(r"""\\(["\\])""")


def quoted(name: str) -> str:
    """A member's name as an address has it: between double quotes, those in it and backslashes after a backslash."""
    return '"' + name.replace("\\", "\\\\").replace('"', '\\"') + '"'


@lru_cache(maxsize=4096)
def parse_address(address: str) -> tuple[str, tuple[Step, ...]]:
    """Split an address into its name and steps; raises KeyError with the address if it cannot be read."""
    match = re.match(r"[A-Za-z_]\w*", address)
    if match is None:
        raise KeyError(address)
    steps: list[Step] = []
    position = match.end()
    while position < len(address):
        found = _STEP.match(address, position)
        if found is None:
            raise KeyError(address)
        numbers, double, single, name = found.groups()
        if numbers is not None:
            steps.extend(int(number) for number in numbers.split(","))
        elif name is not None:
            steps.append(Field(name))
        else:
            steps.append(single if double is None else _ESCAPED.sub(r"\1", double))
        position = found.end()
    return match.group(), tuple(steps)


def row_of(annotation: Any, steps: tuple[Step, ...]) -> tuple[int, ...]:
    """Row numbers of an array from the numbers in an address: strings count from 1, all else from 0."""
    rows = []
    for axis, step in zip(axes_of(annotation), steps, strict=False):
        row = int(step) - (axis == "string")  # type: ignore[arg-type]  # a word or field here is a KeyError in `at`
        if row < 0:
            raise IndexError(row)
        rows.append(row)
    if len(steps) > len(rows):
        raise IndexError(steps)
    return tuple(rows)


def step_into(value: Any, step: Step) -> Any:
    """What a step leads to: a record's field, a list's member by number from 1, or by its name.

    Raises AttributeError, IndexError, StopIteration or TypeError if it leads nowhere.
    """
    if isinstance(step, Field):
        if not is_dataclass(value) or step.name.startswith("_") or callable(getattr(value, step.name)):
            raise AttributeError(step.name)
        return getattr(value, step.name)
    if isinstance(step, int):
        return value[step - 1] if step > 0 else value[len(value)]
    return next(each for each in value if each.name == step)


def put_into(value: Any, steps: tuple[Step, ...], new: Any) -> Any:
    """The same list or record with another value where the steps lead; raises as `step_into` if they lead nowhere.

    A property that a record computes from its other fields cannot be set: the record then comes back unchanged.
    """
    if not steps:
        return new
    step, *rest = steps
    there = step_into(value, step)
    inner = put_into(there, tuple(rest), new)
    if isinstance(step, Field):
        return replace(value, **{step.name: inner}) if step.name in value.__dataclass_fields__ else value
    place = value.index(there) if isinstance(step, str) else step - 1
    if isinstance(value, np.ndarray):
        value = value.copy()
        value[place] = inner
        return value
    return (*value[:place], inner, *value[place + 1 :])
