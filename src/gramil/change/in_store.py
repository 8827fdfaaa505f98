"""An instrument of the store worked out: in the shop and the air of the store, by what was measured on it.

The air is that of the last reading, as it is with files, so that the same record always gives the same verdicts.
"""

from datetime import UTC, datetime

from gramil.air.air_in_store import places_in_store
from gramil.air.places import last_read
from gramil.change.settled import settled
from gramil.description.reading import ShopDescription, parse_description, parse_shop, read_shop
from gramil.graph import Figures
from gramil.prints.air_base import AirBase, air_base
from gramil.prints.whole import figures_of
from gramil.shop.instruments import Instrument, revision
from gramil.shop.operations import Work, needed
from gramil.shop.operations_done import pins_for
from gramil.shop.own_operations import work_of
from gramil.shop.shop_in_store import shop_description, shop_text
from gramil.store.items import items
from gramil.store.opening import Store, reading


def figures_in_store(store: Store, owner: Instrument, *, measured: bool = True) -> Figures:
    """The figures of an instrument's latest revision, as made or (not `measured`) as drawn.

    Raises MakersFault for what is wrong in its text or in the shop, and if the two do not fit together.
    """
    with reading(store):
        described = parse_description(revision(store, owner.id).text, owner.name)
        pins = pins_for(store, owner.id) if measured else {}
        return settled(figures_of(described, shop_in_store(store, owner.id), pins, air_in_store(store)))


def work_in_store(store: Store, owner: Instrument) -> Work:
    """The work that an instrument's latest revision needs, by the shop's own list and by its own."""
    described = parse_description(revision(store, owner.id).text, owner.name)
    return needed(work_of(store, owner.id), described.instrument)


def shop_in_store(store: Store, instrument_id: int) -> ShopDescription:
    """The store's shop for an instrument; the usual one is used as long as no tool is in the store."""
    text = text_of_shop(store, instrument_id)
    return parse_shop(text, "the shop") if text else read_shop()


def text_of_shop(store: Store, instrument_id: int) -> str:
    """The shop's description as the store has it; empty where no tool is in it yet."""
    return shop_text(store, instrument_id) if items(store) else ""


def air_in_store(store: Store) -> AirBase | None:
    """What the store's readings say at the moment of the last one; None if no place is named."""
    described = shop_description(store)
    if not described.shop.place:
        return None
    # read from the store's own tables: its shop's description names no logs, which lie in no folder
    last = max(last_read(store).values(), default=datetime.fromtimestamp(0, UTC))
    return air_base(described, places_in_store(store, described, last))
