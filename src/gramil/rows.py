"""Every figure as a row with an address, for tables, listings and files of dimensions."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from typing import Any, get_type_hints

import numpy as np

from gramil.graph import Figures
from gramil.quantities import axes_of, unit_of
from gramil.reason import read_doc

Opened = tuple[str, float | int | str | bool, str | None]
"""A figure's address, its plain value and its unit's symbol."""


@dataclass(frozen=True)
class Row:
    """One figure: the part that it belongs to, its address, its plain value, and its unit's symbol (or None)."""

    part: str
    address: str
    value: float | int | str | bool
    unit: str | None


@dataclass(frozen=True)
class Heading:
    """One dimension as a whole: its part, name, a sentence on what it is, and any remark."""

    part: str
    name: str
    what: str
    remark: str = ""


def headings(figures: Figures, names: Iterable[str]) -> Iterator[Heading]:
    """The dimensions that hold figures, each with its first sentence."""
    for name in names:
        if _holds_figures(figures[name]):
            dimension = figures.graph.dimensions[name]
            yield Heading(dimension.part.replace("_", " "), name, read_doc(dimension.what).what.split("\n\n")[0])


def _holds_figures(value: Any) -> bool:
    """Whether anything of it can be listed, as `_listed` has it; no further than to the first figure."""
    if isinstance(value, np.ndarray):
        return value.size > 0
    return any(not _is_nan(each) for _, each, _ in _opened("", value, None, ()))


def rows(figures: Figures, names: Iterable[str]) -> Iterator[Row]:
    """Every single figure of the dimensions named, with arrays and records expanded, each at its own address."""
    for name in names:
        dimension = figures.graph.dimensions[name]
        unit = unit_of(dimension.annotation)
        for address, value, symbol in _listed(
            name, figures[name], unit.symbol if unit else None, axes_of(dimension.annotation)
        ):
            yield Row(dimension.part.replace("_", " "), address, value, symbol)


def _listed(name: str, value: Any, unit: str | None, axes: tuple[str, ...]) -> Iterator[Opened]:
    """What can be listed: a figure or record that is nan belongs to a part that the instrument does not have."""
    opened = list(_opened(name, value, unit, axes))
    nothing = all(_is_nan(each) for _, each, _ in opened)
    return iter(()) if nothing and not isinstance(value, np.ndarray) else iter(opened)


def _is_nan(value: float | int | str | bool) -> bool:
    return isinstance(value, float) and math.isnan(value)


def _opened(address: str, value: Any, unit: str | None, axes: tuple[str, ...]) -> Iterator[Opened]:
    if isinstance(value, np.ndarray):
        starts = [1 if axis == "string" else 0 for axis in axes] or [0] * value.ndim
        for index in np.ndindex(value.shape):
            numbers = ", ".join(str(row + start) for row, start in zip(index, starts, strict=True))
            yield f"{address}[{numbers}]", float(value[index]), unit
    elif isinstance(value, tuple):
        for number, each in enumerate(value, 1):
            yield from _opened(f"{address}[{member_label(number, each)}]", each, unit, ())
    elif is_dataclass(value) and not isinstance(value, type):
        for field, symbol in measured_fields(type(value)):
            yield from _opened(f"{address}.{field}", getattr(value, field), symbol, ())
    elif isinstance(value, np.generic):
        yield address, value.item(), unit
    elif isinstance(value, float | int | str | bool):
        yield address, value, unit


def member_label(number: int, member: Any) -> str:
    """How an address names a member of a list: by its name in quotes if it has one, else by its number."""
    return f'"{member.name}"' if hasattr(member, "name") else str(number)


@cache
def measured_fields(record: type) -> tuple[tuple[str, str], ...]:
    """A record's fields that have a unit, each with its unit's symbol. Cached."""
    hints = get_type_hints(record, include_extras=True)
    found = ((each.name, unit_of(hints[each.name])) for each in fields(record))
    return tuple((name, unit.symbol) for name, unit in found if unit is not None)
