"""Tools and what else the shop has by name: written down, changed, struck off; jigs checked and saws tried."""

import re
from collections.abc import Iterator, Sequence

from gramil.air.pieces import PIECE
from gramil.air.places import places
from gramil.description.reading import parse_shop
from gramil.description.shop.bare import bare_shop
from gramil.faults import Fault, MakersFault
from gramil.quantities import Mm
from gramil.shop.shop_in_store import bring_in_shop
from gramil.shop.tools import add_cuts, set_constant
from gramil.store.items import Item, add_item, items, remove_item, update_item
from gramil.store.opening import Store
from gramil.store.toml_text import table_text
from gramil.store.writing import Hand

_ROW = re.compile(r"^\w+\[\d+\]\.?")
"""The start of a fault's place in a description: the table and its row."""


def keep_tool(store: Store, tool: Item, hand: Hand) -> None:
    """Write a tool, a wood or a piece down, a new one (number 0) or an existing one; sent twice, it is added once.

    Raises MakersFault, each fault with its key, for figures that a shop's description would not accept and for a name
    that is taken; Conflict if it is no longer as it was seen.
    """
    _refuse_row(store, tool)
    same = next((each for each in items(store, tool.kind) if each.name == tool.name and each.id != tool.id), None)
    if same is not None and not tool.id and dict(same.figures) == dict(tool.figures):
        return
    if same is not None:
        raise MakersFault.of("there is one of that name already", remedy="give one of the two another", where="name")
    if tool.id:
        update_item(store, tool, hand)
    else:
        add_item(store, tool, hand)


def strike_tool(store: Store, seen: Item, hand: Hand) -> None:
    """Remove a tool from the list.

    Raises MakersFault if test cuts or sheets refer to it, Conflict if it is no longer as it was seen.
    """
    remove_item(store, seen, hand)


def check_jig(store: Store, seen: Item, constant: Mm, hand: Hand) -> None:
    """Note a jig's constant as just measured, with the day.

    Raises MakersFault for zero or less, Conflict if the jig is no longer as it was seen.
    """
    if not constant > 0:
        raise MakersFault.of(f"the constant of {seen.name} is more than 0", remedy="measure it again")
    set_constant(store, seen, constant, hand.now.date(), hand)


def try_saw(store: Store, saw: Item, widths: Sequence[Mm], hand: Hand) -> None:
    """Note the widths of test cuts made together: they are used instead of the label. Raises MakersFault if there are
    none.
    """
    if not widths:
        raise MakersFault.of("no width was given", remedy="write the widths of the cuts, with commas between them")
    add_cuts(store, saw.id, widths, hand)


def bring_in_description(store: Store, text: str, file: str, hand: Hand) -> None:
    """Bring all of a shop's description into the store. Raises MakersFault with every fault, nothing brought in."""
    bring_in_shop(store, text, file, hand)


def _refuse_row(store: Store, tool: Item) -> None:
    """Raises MakersFault, each fault with its key, for a row that a shop's description would not accept."""
    row = table_text(f"[[{tool.kind}]]", [("name", tool.name), *tool.figures.items()])
    try:
        parse_shop("\n".join([bare_shop(), row, *_around(store, tool)]), "the form")
    except MakersFault as found:
        faults = found.faults
        raise MakersFault(
            Fault(None, _ROW.sub("", each.where), each.what, each.why, each.remedy) for each in faults
        ) from None


def _around(store: Store, tool: Item) -> Iterator[str]:
    """The tables that a row may refer to: places and own woods."""
    if tool.kind != PIECE:
        return
    for place in places(store):
        yield table_text("[[place]]", [("name", place.name)])
    for wood in items(store, "wood"):
        yield table_text("[[wood]]", [("name", wood.name), *wood.figures.items()])
