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
    """What is usual for a kind: a key's value (lengths in mm, a list as a tuple), and where it comes from.

    Where the key `unless` is written, that settles it, and the row does not hold.
    """

    kind: str
    key: str
    value: float | str | bool | tuple[int, ...]
    origin: str
    unless: str = ""


PAIRED = "pairs on pins"
"""Strings in pairs that pins hold: these may stand in two rows."""
_FACTS: Mapping[str, tuple[tuple[str, str, str], ...]] = {
    "nylon strings": (("strings", "plain", "nylon"),),
    "body built on the neck": (
        ("instrument", "build", "on the neck"),
        ("carve", "heel", "built on"),
        ("work", "neck_joint", "built on"),
    ),
    "tied strings": (("bridge", "hold", "tie block"),),
    "slotted head": (("head", "tuners", "across"),),
}
"""Each kind by the tables, keys and words of which each alone makes it; but pairs."""
KINDS = (*_FACTS, PAIRED)
"""The kinds, by their names."""


def kinds_of(tables: Tables) -> frozenset[str]:
    """The kinds that follow from these tables, by name; a table that could not be read gives none."""
    found = {
        kind
        for kind, facts in _FACTS.items()
        if any(getattr(tables.get(table), key, None) == word for table, key, word in facts)
    }
    pinned = getattr(tables.get("bridge"), "hold", None) == "pins"
    pairs = any(len(each.strings) > 1 for each in tables.get("course") or ())
    return frozenset(found | {PAIRED}) if pinned and pairs else frozenset(found)


def _rows() -> tuple[Usual, ...]:
    return tuple(_row(**row) for row in data_tables("usual-by-kind")["usual"])


def _row(kind: str, key: str, value: float | str | bool | list[int], origin: str, unless: str = "") -> Usual:
    return Usual(kind, key, tuple(value) if isinstance(value, list) else value, origin, unless)


USUAL: tuple[Usual, ...] = _rows()
"""What is usual for each kind, as the package ships it."""


def usual_for(key: str, kinds: frozenset[str]) -> Usual | None:
    """The usual value of a dotted key for these kinds; none if they are like any other."""
    # an instrument may be of two kinds with a row each: the first gives the value and its reason alike
    return next((row for row in USUAL if row.key == key and row.kind in kinds), None)


def with_usual(tables: Tables) -> dict[str, Any]:
    """The tables, with what they leave out filled in from the usual values of their kinds."""
    filled = dict(tables)
    for row in USUAL:
        name, key = row.key.split(".")
        table = filled.get(name)
        if not isinstance(table, Table) or key in table.model_fields_set or row.kind not in kinds_of(filled):
            continue
        if not (row.unless and _is_written(tables, row.unless)):
            filled[name] = table.model_copy(update={key: row.value})
    return filled


def _is_written(tables: Tables, dotted: str) -> bool:
    name, key = dotted.split(".")
    table = tables.get(name)
    return isinstance(table, Table) and key in table.model_fields_set
