"""Fret wire by the metre: what is pressed into a board is taken off what is on hand.

How much each instrument got is kept, so that a board that has its frets is not told to buy wire for them.
"""

import json
from dataclasses import replace
from typing import Any

from gramil.quantities import Mm
from gramil.shop.tools import length_figure
from gramil.store.items import Item, items, length_text, update_item
from gramil.store.opening import Store
from gramil.store.rows import insert
from gramil.store.writing import Hand, writing

FRETTED = "fretted"
"""The operation that presses the wire."""
LEAST = 1.0
"""In mm: a wire that is used up has this left, as none at all would read as if nobody had said how much there is."""
_KEY = "pressed."


def press(store: Store, instrument: int, wire: str, length: Mm, hand: Hand) -> bool:
    """Take what an instrument's frets need off the wire of that name; gives whether the length on hand was known."""
    found = _known(store, wire)
    if found is None:
        return False
    there = length_figure(store, found, "on_hand")
    left = round(max(LEAST, there - length), 1)
    key, row = f"{_KEY}{instrument}", {"wire": wire, "length": float(length), "taken": there - left}
    with writing(store, f"press {wire}", hand):
        _write(store, found, left, hand)
        store.rows("DELETE FROM setting WHERE key = ?", (key,))
        insert(store, "setting", {"version": None, "key": key, "value": json.dumps(row, ensure_ascii=False)})
    return True


def taken(store: Store, instrument: int) -> tuple[str, Mm]:
    """The wire that an instrument's frets took off what is on hand, and how much of it; nothing where none was."""
    row = _row(store, instrument)
    return (row["wire"], float(row["length"])) if row else ("", 0.0)


def draw(store: Store, instrument: int, hand: Hand) -> None:
    """Put the wire that an instrument's frets took back to what is on hand: they were not pressed after all."""
    row = _row(store, instrument)
    if not row:
        return
    found = _known(store, row["wire"])
    with writing(store, f"put {row['wire']} wire back", hand):
        store.rows("DELETE FROM setting WHERE key = ?", (f"{_KEY}{instrument}",))
        if found is not None:
            there = length_figure(store, found, "on_hand")
            _write(store, found, round(there + row.get("taken", row["length"]), 1), hand)


def _row(store: Store, instrument: int) -> dict[str, Any]:
    found = store.row("SELECT value FROM setting WHERE key = ?", (f"{_KEY}{instrument}",))
    return {} if found is None else dict(json.loads(found[0]))


def _write(store: Store, wire: Item, on_hand: Mm, hand: Hand) -> None:
    update_item(store, replace(wire, figures={**wire.figures, "on_hand": length_text(on_hand)}), hand)


def _known(store: Store, wire: str) -> Item | None:
    """The wire of that name, if its length on hand is noted."""
    return next((each for each in items(store, "wire") if each.name == wire and each.figures.get("on_hand")), None)


def pressed(store: Store, instrument: int, wire: str) -> Mm:
    """How much of a wire an instrument's frets took; 0 if none."""
    of, length = taken(store, instrument)
    return length if of == wire else 0.0


def lost_with_its_board(store: Store, instrument: int) -> None:
    """Forget within the change under way what an instrument's frets took: their board is no longer its own, and a new
    one takes wire of its own.
    """
    store.rows("DELETE FROM setting WHERE key = ?", (f"{_KEY}{instrument}",))
