"""Which pieces on hand serve which needs, over all open instruments at once: with the least waste, parts made ahead
first.

The assignment is the cheapest possible (Hungarian method); what no piece serves is to be bought.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from gramil.description.records import PieceOfWood
from gramil.now.needs import Fit, MadePart, Need
from gramil.physics.arrays import FloatArray
from gramil.shapes.cutting import Box, sets_out_of
from gramil.wood.wood_words import serves_as

MADE, BOUGHT, NEVER = -3.0, 100.0, 1e6
"""Costs in the measure of waste (volumes of the need): a made part that fits, buying, and not at all."""
GRAIN_UNKNOWN, GRAIN_WRONG, UNSETTLED = 0.02, 1.0, 0.3
KEPT_FOR_IT = -20.0
"""A piece that was promised to the instrument, or is kept for it, goes to it."""


@dataclass(frozen=True)
class Stock(PieceOfWood):
    """One piece on hand: `part` what it is kept to become, `owner` whom it is promised to; empty: anything, nobody.

    A size that is not noted is not a number; such a piece serves only what it is kept for. `settled` is None where
    its moisture is not known. `id` is the blank's number in the store, 0 in files.
    """

    grain: str = ""
    part: str = ""
    owner: str = ""
    settled: bool | None = None
    id: int = 0


@dataclass(frozen=True)
class Served:
    """A need with what serves it: a piece, or a part made ahead with how it fits; `waste` in mm3 of the piece."""

    need: Need
    stock: Stock | None
    fit: Fit | None
    waste: float
    remarks: tuple[str, ...]


@dataclass(frozen=True)
class Matching:
    """What serves what, what must be bought, and made parts that nearly fit but were not taken."""

    served: tuple[Served, ...]
    bought: tuple[Need, ...]
    near: tuple[tuple[str, Fit], ...]


def match(needs: Sequence[Need], stock: Sequence[Stock], fits: Mapping[str, Sequence[Fit]]) -> Matching:
    """The cheapest assignment. `fits` says how the parts made ahead fit each instrument, by its name.

    A made part serves all the pieces of one need: both halves of a top, both sides.
    """
    heads = [need for need in needs if need.number == 1]
    parts = list({fit.part.name: fit.part for each in fits.values() for fit in each}.values())
    made = _made(heads, parts, fits)
    covered = {(served.need.instrument, served.need.name) for served in made}
    left = [need for need in needs if (need.instrument, need.name) not in covered]
    costs = np.full((len(left), len(stock) + len(left)), NEVER)
    for row, need in enumerate(left):
        costs[row, : len(stock)] = [_cost(need, piece) for piece in stock]
        costs[row, len(stock) + row] = BOUGHT
    taken = _assigned(costs)
    pairs = [(need, stock[taken[row]] if taken[row] < len(stock) else None) for row, need in enumerate(left)]
    served = [_served(need, piece) for need, piece in pairs if piece is not None]
    return Matching(
        (*made, *served),
        tuple(need for need, piece in pairs if piece is None),
        tuple(_near(fits, {each.fit.part.name for each in made if each.fit}, {need.name for need in heads})),
    )


def _assigned(costs: FloatArray) -> list[int]:
    """The column of each row, no column twice, at least cost; there are no fewer columns than rows."""
    from scipy.optimize import linear_sum_assignment  # scipy is loaded only when it is needed

    columns: list[int] = linear_sum_assignment(costs)[1].tolist() if costs.size else []
    return columns


def _made(heads: Sequence[Need], parts: Sequence[MadePart], fits: Mapping[str, Sequence[Fit]]) -> list[Served]:
    """Needs that a made part serves as it is, each part once."""
    if not heads or not parts:
        return []
    costs = np.zeros((len(heads), len(parts) + len(heads)))
    found = {(need.instrument, fit.part.name, fit.need): fit for need in heads for fit in fits.get(need.instrument, ())}
    for row, need in enumerate(heads):
        for column, part in enumerate(parts):
            costs[row, column] = _part_cost(need, found.get((need.instrument, part.name, need.name)))
    served = []
    for row, column in enumerate(_assigned(costs)):
        if column < len(parts) and costs[row, column] < 0:
            fit = found[heads[row].instrument, parts[column].name, heads[row].name]
            served.append(Served(heads[row], None, fit, 0.0, fit.off))
    return served


def _part_cost(need: Need, fit: Fit | None) -> float:
    """What taking a made part costs; only what fits as it is, or was promised, is taken without asking."""
    if fit is None or (fit.part.promised and fit.part.promised != need.instrument):
        return NEVER
    if fit.part.promised == need.instrument:
        return KEPT_FOR_IT
    return MADE if fit.standing == "still right" else NEVER


def _near(fits: Mapping[str, Sequence[Fit]], taken: set[str], wanted: set[str]) -> list[tuple[str, Fit]]:
    """Parts that fit nobody as they are but could be reworked, with the instrument they nearly fit."""
    return [
        (name, fit)
        for name, each in fits.items()
        for fit in each
        if fit.standing == "rework" and fit.part.name not in taken and fit.need in wanted and not fit.part.promised
    ]


def _cost(need: Need, piece: Stock) -> float:
    """Waste in volumes of the need, plus what counts against the piece; NEVER if it does not serve."""
    if not serves(need, piece):
        return NEVER
    cost = _waste(need, piece) / need.volume
    if piece.owner == need.instrument:
        cost += KEPT_FOR_IT
    if need.grain and not piece.grain:
        cost += GRAIN_UNKNOWN
    elif need.grain and need.grain not in piece.grain:
        cost += GRAIN_WRONG
    return cost + (UNSETTLED if piece.settled is False else 0.0)


def serves(need: Need, piece: Stock) -> bool:
    """Whether a piece is of the wood and the sizes, and not kept for another instrument or another part."""
    kept = (piece.owner and piece.owner != need.instrument) or (piece.part not in ("", "other", need.part))
    return not kept and any(serves_as(piece.wood, wood) for wood in need.woods) and _large(need, piece)


def _large(need: Need, piece: Stock) -> bool:
    """Whether it is large enough; a size not noted of a piece kept for this need is taken to be."""
    kept_for_it = piece.owner == need.instrument and piece.part == need.part
    pairs = zip((piece.length, piece.width, piece.thickness), (need.length, need.width, need.thickness), strict=True)
    has = [(ask if math.isnan(size) and kept_for_it else size, ask) for size, ask in pairs]
    if not need.cut or any(math.isnan(size) for size, _ in has):
        return all(size >= ask for size, ask in has)
    stock = Box(*(size for size, _ in has))
    return sets_out_of(stock, need.cut, (need.width, need.thickness), need.kerf) > 0


def _waste(need: Need, piece: Stock) -> float:
    """What is left over, in mm3; zero if a size is not noted."""
    volume = piece.length * piece.width * piece.thickness
    return 0.0 if math.isnan(volume) else volume - need.volume


def _served(need: Need, piece: Stock) -> Served:
    return Served(need, piece, None, _waste(need, piece), tuple(_remarks(need, piece)))


def _remarks(need: Need, piece: Stock) -> list[str]:
    found = []
    if math.isnan(piece.length * piece.width):
        found.append("not all of its sizes are noted")
    if piece.settled is False:
        found.append("it has not settled for gluing")
    if need.grain and not piece.grain:
        found.append("how it is sawn is not noted")
    elif need.grain and need.grain not in piece.grain:
        found.append(f"it is sawn {piece.grain}, and {need.grain} is wanted")
    return found
