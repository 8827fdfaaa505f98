"""What kinds of instrument a description makes itself, where that changes what is usual and what it is judged by.

A kind is a fact of the description: what the strings are made of, how they are held at the bridge, how the tuners lie.
"""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.resources import files
from typing import Any

from gramil.description.table import Table

Tables = Mapping[str, Any]


@dataclass(frozen=True)
class Usual:
    """What is usual for a kind: a key's value (lengths in mm), and where it comes from."""

    kind: str
    key: str
    value: float | str
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
    """The kinds that these tables make, by name; a table that could not be read makes none."""
    return frozenset(
        kind for kind, (table, key, word) in _FACTS.items() if getattr(tables.get(table), key, None) == word
    )


def _rows() -> tuple[Usual, ...]:
    text = (files("gramil") / "data" / "usual-by-kind.toml").read_text(encoding="utf-8")
    return tuple(Usual(**row) for row in tomllib.loads(text)["usual"])


USUAL: tuple[Usual, ...] = _rows()
"""What is usual for each kind, as the package ships it."""
_BY_KEY = {(row.key, row.kind): row for row in USUAL}


def usual_for(key: str, kinds: frozenset[str]) -> Usual | None:
    """What is usual for these kinds under a dotted key; none where they are as any other."""
    return next((_BY_KEY[key, kind] for kind in kinds if (key, kind) in _BY_KEY), None)


def with_usual(tables: Tables) -> dict[str, Any]:
    """The tables, what they leave out filled in with what is usual for their kinds."""
    filled = dict(tables)
    for row in USUAL:
        name, key = row.key.split(".")
        table = filled.get(name)
        if isinstance(table, Table) and key not in table.model_fields_set and row.kind in kinds_of(filled):
            filled[name] = table.model_copy(update={key: row.value})
    return filled
