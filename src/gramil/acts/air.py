"""Air: a place named, the meter written down, a logger's readings brought in, a reading put right or struck."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from gramil.air.outlooks import Spell, put_outlook
from gramil.air.places import Imported, Place, Reading, add_place, add_reading, import_air, place, places, update_place
from gramil.description.reading import parse_shop
from gramil.description.shop.bare import bare_shop
from gramil.faults import MakersFault
from gramil.shop.corrections import strike_reading
from gramil.store.opening import Store
from gramil.store.toml_text import table_text
from gramil.store.writing import Hand
from gramil.wood.air import AirHistory


def name_place(store: Store, name: str, hand: Hand) -> None:
    """A new place where things lie; naming it twice makes only one. Raises MakersFault for an empty name."""
    if not name.strip():
        raise MakersFault.of("the place has no name", remedy="write one, such as bench or drying box")
    if name not in [each.name for each in places(store)]:
        add_place(store, Place(name, {}), hand)


def change_place(store: Store, seen: Place, figures: Mapping[str, Any], hand: Hand) -> Place:
    """Write a place's figures (its room in m3, its changes of air, where they come from) in place of those seen.

    Raises MakersFault, each fault with its key, for figures that a shop's description would not accept; Conflict if
    the place was changed since it was `seen`.
    """
    new = replace(seen, figures=figures)
    rows = [("name", new.name), *new.figures.items()]
    others = (table_text("[[place]]", [("name", each.name)]) for each in places(store) if each.id != seen.id)
    parse_shop("\n".join([bare_shop(), table_text("[[place]]", rows), *others]), f"the {new.name}")
    return update_place(store, new, hand)


def read_meter(store: Store, where: str, temperature: float, humidity: float, hand: Hand) -> None:
    """Write down what the meter says now. Raises MakersFault if the place does not exist, and for air that no room
    could have.
    """
    reading = Reading(hand.now.replace(microsecond=0), temperature, humidity)
    add_reading(store, place(store, where).id, reading, hand)


def bring_in_air(store: Store, where: str, history: AirHistory, hand: Hand, *, file: str = "") -> Imported:
    """Bring a logger's readings of a place in, all or none. Raises MakersFault if the place has different ones
    already.
    """
    return import_air(store, place(store, where).id, history, hand, file=file)


def keep_outlook(store: Store, where: str, spells: Sequence[Spell], hand: Hand, *, file: str = "") -> None:
    """Keep what somebody says of a place's air to come, with its moment. Raises MakersFault if the place does not
    exist, or if nothing of it is to come.
    """
    of, now = place(store, where), hand.now.replace(tzinfo=None)
    if not any(each.begins > now for each in spells):
        remedy = "give what is to come: a day of the week is the next one of that name, +1 is tomorrow"
        raise MakersFault.of("nothing of this outlook is to come", remedy=remedy)
    put_outlook(store, of, spells, hand, file)


def correct_reading(store: Store, of: Place, seen: Reading, hand: Hand, *, right: Reading | None = None) -> None:
    """Put a reading right, or strike it (`right` None). Raises MakersFault if it is no longer as it was seen."""
    strike_reading(store, of, seen, hand, right=right)
