"""Instruments as the bench holds them: a revision's figures, worked out once and kept as long as they are used.

Figures depend on the description's text, the shop's text, what was measured and what the readings of air say; these
four are the cache's key.
"""

import json
from collections import OrderedDict
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from threading import Lock

from gramil.bench.page_request import Missing
from gramil.change.in_store import air_in_store, text_of_shop
from gramil.change.settled import settled
from gramil.description.base import base_values
from gramil.description.reading import Description, ShopDescription, parse_description, parse_shop, read_shop
from gramil.findings.finding import Finding
from gramil.graph import Figures, Pin
from gramil.prints.air_base import AirBase
from gramil.prints.whole import figures_of, findings_of, with_air
from gramil.sheets.handed_out import Stale
from gramil.shop.instruments import Instrument, Revision, instruments, revision
from gramil.shop.operations_done import pins_for
from gramil.store.opening import Store
from gramil.store.writing import Change, changes

KEPT = 32
"""How many instruments' figures are kept."""
SOLVED = 4
"""How many instruments' solved tops are kept: each takes tens of megabytes."""


@dataclass(frozen=True)
class OpenInstrument:
    """An instrument at one revision: `seen` carries the version to save against, `description` its checked text."""

    seen: Instrument
    revision: Revision
    latest: int
    description: Description
    shop: ShopDescription
    figures: Figures
    air: AirBase | None

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """Every finding of it."""
        return findings_of(self.figures)


Opened = tuple[Change | None, int, int | None]
"""What an open instrument is held by: the record's last change, the instrument's number and the revision asked for."""


@dataclass(frozen=True)
class OpenInstruments:
    """A cache of figures that drops the least recently used first.

    `airs` and `stale` are what the air says and which sheets are stale, by the number of the record's last change;
    `opened` are the instruments themselves as they were read after it.
    """

    kept: OrderedDict[str, tuple[Description, ShopDescription, Figures]] = field(default_factory=OrderedDict)
    airs: dict[int, AirBase | None] = field(default_factory=dict)
    stale: dict[int, tuple[int, tuple[Stale, ...]]] = field(default_factory=dict)
    opened: OrderedDict[Opened, OpenInstrument] = field(default_factory=OrderedDict)
    lock: Lock = field(default_factory=Lock)
    solved: list[tuple[Figures, Figures]] = field(default_factory=list)

    def top_of(self, figures: Figures) -> Figures | None:
        """An instrument's figures with those of its solved top; None as long as it is not solved."""
        with self.lock:
            return next((top for own, top in self.solved if own is figures), None)

    def keep_top(self, figures: Figures, solved: Figures) -> None:
        """An instrument's top is solved: it is known as long as the instrument's own figures are the same."""
        with self.lock:
            self.solved[:] = [*self.solved[-SOLVED + 1 :], (figures, solved)]

    def held(self, store: Store, instrument_id: int, number: int | None = None) -> OpenInstrument:
        """An instrument's revision (the latest without a number). Raises Missing, and MakersFault for its faults.

        It is read from the record once after each change to that. Within a change nothing is kept: more may follow.
        """
        if store.connection.in_transaction:
            return self._read(store, instrument_id, number)
        key = (next(iter(changes(store, 1)), None), instrument_id, number)
        with self.lock:
            found = self.opened.get(key)
        if found is None:
            found = self._read(store, instrument_id, number)
            with self.lock:
                self.opened[key] = found
                while len(self.opened) > KEPT:
                    self.opened.popitem(last=False)
        return found

    def forget(self) -> None:
        """The record is another one: what was read of it does not hold any more."""
        with self.lock:
            self.airs.clear()
            self.stale.clear()
            self.opened.clear()

    def _read(self, store: Store, instrument_id: int, number: int | None) -> OpenInstrument:
        seen = named(store, instrument_id)
        latest = revision(store, instrument_id)
        wanted = latest if number is None else revision(store, instrument_id, number)
        shop, pins, air = text_of_shop(store, instrument_id), pins_for(store, instrument_id), self._air(store)
        description, of_shop, figures = self._figures(wanted.text, shop, pins, air, seen.name)
        return OpenInstrument(seen, wanted, latest.number, description, of_shop, figures, air)

    def _air(self, store: Store) -> AirBase | None:
        """What the readings say, worked out once after each change to the store."""
        (last,) = store.row("SELECT coalesce(max(id), 0) FROM change") or (0,)
        with self.lock:
            if last in self.airs:
                return self.airs[last]
        found = air_in_store(store)
        with self.lock:
            self.airs.clear()
            self.airs[last] = found
        return found

    def _figures(
        self, text: str, shop: str, pins: Mapping[str, Pin], air: AirBase | None, name: str
    ) -> tuple[Description, ShopDescription, Figures]:
        measured = {address: repr(pin) for address, pin in pins.items()}
        key = json.dumps([text, shop, measured, repr(air and air.values)])
        with self.lock:
            found = self.kept.get(key)
            if found is not None:
                self.kept.move_to_end(key)
                return found
        description = parse_description(text, name)
        of_shop = parse_shop(shop, "the shop") if shop else read_shop()
        made = (description, of_shop, settled(figures_of(description, of_shop, pins, air)))
        with self.lock:
            self.kept[key] = made
            while len(self.kept) > KEPT:
                self.kept.popitem(last=False)
        return made


def named(store: Store, instrument_id: int) -> Instrument:
    """The instrument of a number; raises Missing."""
    found = [each for each in instruments(store) if each.id == instrument_id]
    if not found:
        raise Missing("instrument of that number")
    return found[0]


def changed(held: OpenInstrument, text: str) -> Figures:
    """The figures of another text of the same instrument; only what the change touches is worked out again.

    Raises MakersFault with every fault of the text.
    """
    description = parse_description(text, held.seen.name)
    base = with_air(base_values(description, held.shop), held.air)
    return settled(held.figures.with_base(base.values, base.origins, base.lengths))
