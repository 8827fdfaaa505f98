"""What a table says of a key beside its type: readers, the least and the most it takes, its unit."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any, get_args

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from gramil.quantities import Unit


@dataclass(frozen=True)
class Bounds:
    """The least and the most that a key takes, in its own unit (mm, radians ...); infinite where nothing is said.

    Where `above` is true the least itself is not taken.
    """

    least: float
    most: float
    above: bool

    def holds(self, value: float) -> bool:
        """Whether a value is within them; what is not a number never is."""
        return (value > self.least if self.above else value >= self.least) and value <= self.most


def bounds_of(table: type[BaseModel], key: str) -> Bounds:
    """The least and the most that a table takes under the name of a field. Raises KeyError for an unknown name."""
    marks = marks_of(table.model_fields[key])
    above, least = _said(marks, "gt"), _said(marks, "ge")
    highest = max((*above, *least), default=-math.inf)
    return Bounds(highest, min(_said(marks, "le"), default=math.inf), highest in above)


def _said(marks: Iterable[Any], bound: str) -> list[float]:
    """What marks say of a bound under the name that pydantic has for it ("gt")."""
    return [float(getattr(mark, bound)) for mark in marks if hasattr(mark, bound)]


def marks_of(field: FieldInfo) -> list[Any]:
    """Whatever is said about a key beside its type: readers, bounds, units."""
    marks = [*field.metadata, *_marks(field.annotation)]
    return [each for mark in marks for each in (mark.metadata if isinstance(mark, FieldInfo) else [mark])]


def _marks(annotation: Any) -> Iterator[Any]:
    """Whatever is said about a type beside the type itself, however deep."""
    yield from getattr(annotation, "__metadata__", ())
    for inner in get_args(annotation):
        yield from _marks(inner)


def unit_of_key(field: FieldInfo) -> str:
    """The symbol of a key's unit; empty for a plain number and for a count."""
    units = (mark.symbol for mark in marks_of(field) if isinstance(mark, Unit))
    return next(units, "").replace("count", "")
