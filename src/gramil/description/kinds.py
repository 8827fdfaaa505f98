"""The kinds of instrument that a description belongs to, as far as they change usual values and limits.

A kind follows from the description: what the strings are made of, how they are held at the bridge, how the tuners lie.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from gramil.description.table import Table
from gramil.package_data import data_tables

Tables = Mapping[str, Any]


@dataclass(frozen=True)
class Usual:
    """What is usual for a kind: a key's value (lengths in mm, a list as a tuple), and where it comes from."""

    kind: str
    key: str
    value: float | str | bool | tuple[int, ...]
    origin: str


_FACTS: Mapping[str, tuple[str, str, str]] = {
    "nylon strings": ("strings", "plain", "nylon"),
    "tied strings": ("bridge", "hold", "tie block"),
    "slotted head": ("head", "tuners", "across"),
}
"""Each kind by the table, the key and the word that make it."""
KINDS = tuple(_FACTS)
"""The kinds, by their names."""


def kinds_of(tables: Tables) -> frozenset[str]:
    """The kinds that follow from these tables, by name; a table that could not be read gives none."""
    return frozenset(
        kind for kind, (table, key, word) in _FACTS.items() if getattr(tables.get(table), key, None) == word
    )


def _rows() -> tuple[Usual, ...]:
    return tuple(_row(**row) for row in data_tables("usual-by-kind")["usual"])


def _row(kind: str, key: str, value: float | str | bool | list[int], origin: str) -> Usual:
    return Usual(kind, key, tuple(value) if isinstance(value, list) else value, origin)


USUAL: tuple[Usual, ...] = _rows()
"""What is usual for each kind, as the package ships it."""
_BY_KEY = {(row.key, row.kind): row for row in USUAL}


def usual_for(key: str, kinds: frozenset[str]) -> Usual | None:
    """The usual value of a dotted key for these kinds; none if they are like any other."""
    return next((_BY_KEY[key, kind] for kind in kinds if (key, kind) in _BY_KEY), None)


def with_usual(tables: Tables) -> dict[str, Any]:
    """The tables, with what they leave out filled in from the usual values of their kinds."""
    filled = dict(tables)
    for row in USUAL:
        name, key = row.key.split(".")
        table = filled.get(name)
        if isinstance(table, Table) and key not in table.model_fields_set and row.kind in kinds_of(filled):
            filled[name] = table.model_copy(update={key: row.value})
    return filled
