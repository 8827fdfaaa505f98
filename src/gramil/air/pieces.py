"""Pieces whose moisture matters: a stay or a weighing added to a piece of the shop's description.

Moments here are by the shop's own clock, as in a description.
"""

from dataclasses import replace
from datetime import datetime
from typing import Any

from gramil.faults import MakersFault
from gramil.quantities import Gram
from gramil.store.items import Item, update_item
from gramil.store.opening import Store
from gramil.store.writing import Hand

PIECE = "piece"
"""The table of the description that holds them."""


def lay_piece(store: Store, piece: Item, place: str, hand: Hand) -> Item:
    """Note that a piece lies in a place from now on, which ends its stay before. Raises Conflict as any update does."""
    stays = [dict(stay) for stay in piece.figures.get("lay", ())]
    if stays and "until" not in stays[-1]:
        stays[-1]["until"] = _clock(hand.now)
    return _with(store, piece, "lay", [*stays, {"place": place, "from": _clock(hand.now)}], hand)


def weigh_piece(store: Store, piece: Item, grams: Gram, hand: Hand) -> Item:
    """Note what a piece weighs now.

    Raises MakersFault if neither its dry mass nor its moisture at the beginning is known: a weight then says nothing,
    and the shop's description could no longer be read. Raises Conflict as any update does.
    """
    if not weight_tells(piece):
        raise MakersFault.of(
            f"a weight of {piece.name} says nothing of its moisture yet",
            remedy="give its dry_mass, or its moisture at the beginning, in the shop's description",
        )
    weighings = [*piece.figures.get("weighings", ()), {"at": _clock(hand.now), "mass": float(grams)}]
    return _with(store, piece, "weighings", weighings, hand)


def weight_tells(piece: Item) -> bool:
    """Whether a weight of this piece tells its moisture: its dry mass or its moisture at the beginning must be
    known.
    """
    return any(piece.figures.get(key) is not None for key in ("dry_mass", "moisture"))


def _with(store: Store, piece: Item, key: str, value: Any, hand: Hand) -> Item:
    return update_item(store, replace(piece, figures={**piece.figures, key: value}), hand)


def _clock(now: datetime) -> str:
    return now.replace(tzinfo=None).isoformat()
