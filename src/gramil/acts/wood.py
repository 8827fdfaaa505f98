"""Wood: promised to instruments and let go again, written down and struck off, laid somewhere and weighed."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from gramil.air.pieces import PIECE, lay_piece, weigh_piece
from gramil.air.places import place
from gramil.faults import MakersFault
from gramil.now.match import Matching
from gramil.quantities import Gram
from gramil.shop.stock import (
    Blank,
    Promise,
    add_blank,
    blanks,
    promise_blank,
    promise_part,
    release,
    remove_blank,
    update_blank,
)
from gramil.store.items import Item, items
from gramil.store.opening import Store
from gramil.store.writing import Hand, writing


@dataclass(frozen=True)
class Promised:
    """A piece of wood or a part made ahead that was promised to an instrument, by their names."""

    name: str
    instrument: str


def reserve(store: Store, found: Matching, numbers: Mapping[str, int], hand: Hand) -> tuple[Promised, ...]:
    """Promise everything found to the instruments that it serves, by name and number; gives what was promised.

    All of it or none: raises MakersFault if somebody else promised one of them meanwhile.
    """
    promised = []
    with writing(store, "promise wood to instruments", hand):
        for each in found.served:
            owner = numbers[each.need.instrument]
            if each.fit is not None and not each.fit.part.promised:
                promise_part(store, owner, each.need.name, each.fit.part.id, hand)
                promised.append(Promised(each.fit.part.name, each.need.instrument))
            elif each.stock is not None and each.stock.id and not each.stock.owner:
                promise_blank(store, owner, each.need.name, each.stock.id, hand)
                promised.append(Promised(each.stock.name, each.need.instrument))
    return tuple(promised)


def let_go(store: Store, seen: Promise, hand: Hand) -> None:
    """Take a promise back. Raises MakersFault if it is used up, Conflict if it is no longer as it was seen."""
    release(store, seen, hand)


def keep_wood(store: Store, wood: Blank, hand: Hand) -> None:
    """Write a piece of wood down, a new one (number 0) or an existing one; the same new one sent twice is added once.

    Raises MakersFault if the name is taken, Conflict if it is no longer as it was seen.
    """
    same = next((each for each in blanks(store) if each.name == wood.name and each.id != wood.id), None)
    if same is not None and replace(same, id=0, version=0) == wood:
        return
    if same is not None:
        raise MakersFault.of("there is one of that name already", remedy="write another name on it", where="name")
    if wood.id:
        update_blank(store, wood, hand)
    else:
        add_blank(store, wood, hand)


def strike_wood(store: Store, seen: Blank, hand: Hand) -> None:
    """Remove a piece of wood from the list. Raises MakersFault if it was ever promised, Conflict if it was changed
    since.
    """
    remove_blank(store, seen, hand)


def lay(store: Store, piece: str, where: str, hand: Hand) -> None:
    """Note that a followed piece lies in a place from now on. Raises MakersFault if it does not exist."""
    lay_piece(store, _followed(store, piece), place(store, where).name, _to_the_second(hand))


def weigh(store: Store, piece: str, grams: Gram, hand: Hand) -> None:
    """Note what a followed piece weighs now. Raises MakersFault if a weight does not tell its moisture."""
    weigh_piece(store, _followed(store, piece), grams, _to_the_second(hand))


def _to_the_second(hand: Hand) -> Hand:
    return replace(hand, now=hand.now.replace(microsecond=0))


def _followed(store: Store, name: str) -> Item:
    """The piece of that name whose moisture is followed; raises MakersFault if there is none."""
    found = next((each for each in items(store, PIECE) if each.name == name), None)
    if found is None:
        raise MakersFault.of(f'there is no piece "{name}"', remedy="choose one of the list")
    return found
