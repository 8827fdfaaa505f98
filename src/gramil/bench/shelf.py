"""Instruments as the bench holds them: a revision's figures, worked out once and kept as long as they are used.

Figures hang on the description's text, the shop's text and what was measured; all three are the key.
"""

import json
from collections import OrderedDict
from collections.abc import Mapping
from dataclasses import dataclass, field
from threading import Lock

from gramil.bench.asking import Missing
from gramil.change.whole import figures_of, with_air
from gramil.description.base import base_values
from gramil.description.reading import Description, ShopDescription, parse_description, parse_shop, read_shop
from gramil.graph import Figures, Pin
from gramil.shop.instruments import Instrument, Revision, instruments, revision
from gramil.shop.items import items
from gramil.shop.on_hand import shop_text
from gramil.shop.opening import Store
from gramil.shop.operations_done import pins_for

KEPT = 32
"""So many instruments' figures are kept."""


@dataclass(frozen=True)
class Held:
    """An instrument at one revision: `seen` carries the version to save against, `description` its checked text."""

    seen: Instrument
    revision: Revision
    latest: int
    description: Description
    shop: ShopDescription
    figures: Figures


@dataclass(frozen=True)
class Shelf:
    """The figures that are kept, the least used going first."""

    kept: OrderedDict[str, tuple[Description, ShopDescription, Figures]] = field(default_factory=OrderedDict)
    lock: Lock = field(default_factory=Lock)

    def held(self, store: Store, instrument_id: int, number: int | None = None) -> Held:
        """An instrument's revision (the latest without a number). Raises Missing, and MakersFault for its faults."""
        seen = named(store, instrument_id)
        latest = revision(store, instrument_id)
        wanted = latest if number is None else revision(store, instrument_id, number)
        shop, pins = shop_of(store, instrument_id), pins_for(store, instrument_id)
        description, of_shop, figures = self._figures(wanted.text, shop, pins, seen.name)
        return Held(seen, wanted, latest.number, description, of_shop, figures)

    def _figures(
        self, text: str, shop: str, pins: Mapping[str, Pin], name: str
    ) -> tuple[Description, ShopDescription, Figures]:
        key = json.dumps([text, shop, {address: [repr(pin.value), pin.when] for address, pin in pins.items()}])
        with self.lock:
            found = self.kept.get(key)
            if found is not None:
                self.kept.move_to_end(key)
                return found
        description = parse_description(text, name)
        of_shop = parse_shop(shop, "the shop") if shop else read_shop()
        made = (description, of_shop, figures_of(description, of_shop, pins))
        with self.lock:
            self.kept[key] = made
            while len(self.kept) > KEPT:
                self.kept.popitem(last=False)
        return made


def shop_of(store: Store, instrument_id: int) -> str:
    """The shop's description as the store has it; empty where no tool is in it yet, and the usual shop stands in."""
    return shop_text(store, instrument_id) if items(store) else ""


def named(store: Store, instrument_id: int) -> Instrument:
    """The instrument of a number; raises Missing."""
    found = [each for each in instruments(store) if each.id == instrument_id]
    if not found:
        raise Missing("instrument of that number")
    return found[0]


def changed(held: Held, text: str) -> Figures:
    """The figures of another text of the same instrument; only what the change touches is worked out again.

    Raises MakersFault with every fault of the text.
    """
    description = parse_description(text, held.seen.name)
    base = with_air(base_values(description, held.shop), held.shop)
    return held.figures.with_base(base.values, base.origins, base.lengths)
