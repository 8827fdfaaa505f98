"""What the shop's description lists by name: tools, wires, jigs, own woods, pieces whose moisture matters.

An item is a row of the description: its kind is the table ("saw", "jig", "piece"), its figures are the other keys as
the maker wrote them. A bare length is in the shop's unit.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from gramil.bare_numbers import length_unit
from gramil.faults import MakersFault
from gramil.measure import LengthUnit, TemperatureUnit
from gramil.quantities import Mm
from gramil.store.opening import Store
from gramil.store.rows import delete, insert, update
from gramil.store.writing import Hand, writing


@dataclass(frozen=True)
class Item:
    """A tool, a wire, a piece or the like; `figures` are words, numbers, flags, lists and tables of them."""

    kind: str
    name: str
    figures: Mapping[str, Any]
    id: int = 0
    version: int = 0


def add_item(store: Store, item: Item, hand: Hand) -> Item:
    """Add an item; raises MakersFault if that kind already has one of that name."""
    with writing(store, f"add {item.kind} {item.name}", hand):
        put_item(store, item)
    return item_named(store, item.kind, item.name)


def put_item(store: Store, item: Item) -> None:
    """Add an item within the change under way."""
    row = {"version": None, "kind": item.kind, "name": item.name, "figures": figures_text(item.figures)}
    insert(store, "item", row)


def items(store: Store, kind: str | None = None) -> list[Item]:
    """Every item, or those of one kind, in the order in which they were added."""
    if kind is None:
        return _items(store, "ORDER BY id")
    return _items(store, "WHERE kind = ? ORDER BY id", kind)


def item_named(store: Store, kind: str, name: str) -> Item:
    """The item of a kind with a given name; raises MakersFault if there is none."""
    found = _items(store, "WHERE kind = ? AND name = ?", kind, name)
    if not found:
        names = ", ".join(each.name for each in items(store, kind))
        raise MakersFault.of(f"there is no {kind} called {name}", remedy=f"the store has {names}" if names else "")
    return found[0]


def update_item(store: Store, changed: Item, hand: Hand) -> Item:
    """Write an item's name and figures; raises Conflict if the store holds another version."""
    with writing(store, f"change {changed.kind} {changed.name}", hand):
        row = {"name": changed.name, "figures": figures_text(changed.figures)}
        update(store, "item", changed.id, changed.version, row)
    return item_named(store, changed.kind, changed.name)


def remove_item(store: Store, gone: Item, hand: Hand) -> None:
    """Remove an item that no test cut and no sheet refers to; raises MakersFault otherwise."""
    with writing(store, f"remove {gone.kind} {gone.name}", hand):
        delete(store, "item", gone.id, gone.version)


def shop_unit(store: Store) -> LengthUnit:
    """The unit of lengths that are written without one."""
    row = store.row("SELECT value FROM setting WHERE key = 'shop.units'")
    return length_unit(json.loads(row[0]) if row else None)


def shop_degrees(store: Store) -> TemperatureUnit:
    """The unit in which the shop reads temperatures."""
    row = store.row("SELECT value FROM setting WHERE key = 'shop.temperature'")
    return "F" if row and json.loads(row[0]) == "F" else "C"


def length_text(length: Mm) -> str:
    """A length as a maker would write it, exact: `62.4 mm`."""
    return f"{Decimal(repr(float(length))):f} mm"


def figures_text(figures: Mapping[str, Any]) -> str:
    """Figures as they are kept: JSON. Raises MakersFault for a number that is not finite."""
    try:
        return json.dumps(dict(figures), ensure_ascii=False, allow_nan=False)
    except ValueError:
        raise MakersFault.of("a figure is not a finite number") from None


def _items(store: Store, rest: str, *values: str) -> list[Item]:
    rows = store.rows(f"SELECT kind, name, figures, id, version FROM item {rest}", values)
    return [Item(kind, name, json.loads(figures), number, version) for kind, name, figures, number, version in rows]
