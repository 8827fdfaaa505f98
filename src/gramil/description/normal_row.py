"""A base value that is not simply one key's value: the rows of the tables of such values."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from gramil.reference import Ref

T = TypeVar("T")
Values = dict[Ref[Any], Any]
"""Base values by what refers to them: the references are those of `names.py`, as on any page."""


@dataclass(frozen=True)
class Normal:
    """A base value: its reference, its annotation, what it is, the keys that set it, and the reason for its default."""

    figure: Ref[Any]
    annotation: Any
    what: str
    keys: tuple[str, ...]
    reason: str = ""

    @property
    def name(self) -> str:
        """Its name on the graph."""
        return self.figure.address


def known(value: float | None) -> float:
    """The value, or nan if there is none."""
    return math.nan if value is None else value


def by_name(values: Mapping[Ref[Any], T]) -> dict[str, T]:
    """The rows by their names on the graph."""
    return {figure.address: value for figure, value in values.items()}
