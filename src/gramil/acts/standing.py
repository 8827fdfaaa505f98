"""Where an instrument stands in the shop: open, waiting, or done."""

from dataclasses import replace
from typing import get_args

from gramil.faults import MakersFault
from gramil.shop.instruments import Instrument, Standing, update_instrument
from gramil.store.opening import Store
from gramil.store.writing import Hand


def mark(store: Store, seen: Instrument, standing: str, hand: Hand) -> Instrument:
    """Mark an instrument as open, waiting or done; only open ones ask for work and wood.

    Raises MakersFault for another word, Conflict if the instrument was changed since it was `seen`.
    """
    if standing not in get_args(Standing):
        raise MakersFault.of(f'"{standing}" is no standing', remedy=f"it is {', '.join(get_args(Standing))}")
    if seen.standing == standing:
        return seen
    return update_instrument(store, replace(seen, standing=standing), hand)
