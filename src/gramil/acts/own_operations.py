"""A maker's own list of operations: kept in place of the one that was seen, or taken away."""

from gramil.change.in_store import figures_in_store
from gramil.faults import Fault, MakersFault
from gramil.prints.own_addresses import refuse, wrong_addresses
from gramil.shop.instruments import Instrument
from gramil.shop.own_operations import OwnOperations, remove_own_operations, save_own_operations
from gramil.store.opening import Store
from gramil.store.writing import Hand

LARGEST = 200_000
"""Letters of a list."""


def keep_list(
    store: Store,
    text: str,
    hand: Hand,
    *,
    owner: Instrument | None = None,
    seen: OwnOperations | None = None,
    file: str = "",
) -> OwnOperations:
    """Keep a list as the shop's, or as its `owner`'s, in place of the one that was seen (None: there was none).

    Raises MakersFault, with the lines of `file`, if the list is empty or too long, does not fit the others, or names
    something that does not exist; Conflict, with both texts, if somebody kept another since.
    """
    if not text.strip():
        remedy = "write [operation.NAME], or take the list away"
        raise MakersFault([Fault(what="is empty", remedy=remedy, file=file or None)])
    if len(text) > LARGEST:
        raise MakersFault.of("that is not a list of operations", f"it is longer than {LARGEST} letters")
    refuse(wrong_addresses((file, text), None if owner is None else figures_in_store(store, owner)))
    return save_own_operations(store, text, hand, owner=owner, seen=seen, file=file)


def take_list_away(store: Store, seen: OwnOperations, hand: Hand) -> None:
    """Take a list away. Raises MakersFault if another list needs it, Conflict if it is no longer as it was seen."""
    remove_own_operations(store, seen, hand)
