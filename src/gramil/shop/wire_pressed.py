"""Fret wire by the metre: what is pressed into a board is taken off what is on hand.

How much each instrument got is kept, so that a board that has its frets is not told to buy wire for them.
"""

import json
from dataclasses import replace

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
    left = max(LEAST, length_figure(store, found, "on_hand") - length)
    key, text = f"{_KEY}{instrument}", json.dumps({"wire": wire, "length": float(length)}, ensure_ascii=False)
    with writing(store, f"press {wire}", hand):
        update_item(store, replace(found, figures={**found.figures, "on_hand": length_text(round(left, 1))}), hand)
        store.rows("DELETE FROM setting WHERE key = ?", (key,))
        insert(store, "setting", {"version": None, "key": key, "value": text})
    return True


def _known(store: Store, wire: str) -> Item | None:
    """The wire of that name, if its length on hand is noted."""
    return next((each for each in items(store, "wire") if each.name == wire and each.figures.get("on_hand")), None)


def pressed(store: Store, instrument: int, wire: str) -> Mm:
    """How much of a wire an instrument's frets took; 0 if none."""
    for (text,) in store.rows("SELECT value FROM setting WHERE key = ?", (f"{_KEY}{instrument}",)):
        row = json.loads(text)
        if row["wire"] == wire:
            return float(row["length"])
    return 0.0


def lost_with_its_board(store: Store, instrument: int) -> None:
    """Forget within the change under way what an instrument's frets took: the board that they are in is not its own
    any more, and a new one takes wire of its own.
    """
    store.rows("DELETE FROM setting WHERE key = ?", (f"{_KEY}{instrument}",))
