"""A base value that is not simply one key: what the tables of such values are made of."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from gramil.reference import Ref

T = TypeVar("T")
Values = dict[Ref[Any], Any]
"""Base values by what refers to them: the references are those of `names.py`, as on any page."""


@dataclass(frozen=True)
class Normal:
    """A base value: what refers to it, its annotation, what it is, the keys that settle it, why its default is so."""

    figure: Ref[Any]
    annotation: Any
    what: str
    keys: tuple[str, ...]
    reason: str = ""

    @property
    def name(self) -> str:
        """Its name on the graph."""
        return self.figure.address


def by_name(values: Mapping[Ref[Any], T]) -> dict[str, T]:
    """The same by the graph's names."""
    return {figure.address: value for figure, value in values.items()}
