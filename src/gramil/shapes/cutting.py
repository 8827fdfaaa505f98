"""Boxes cut out of a board in strips along it: what fits, and where each piece lies."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import isnan

from gramil.quantities import Count, Mm


@dataclass(frozen=True)
class Cut:
    """A piece by its row in the list, and where it lies: its strip (from 0), and its near end along that strip."""

    row: Count
    strip: Count
    start: Mm


@dataclass(frozen=True)
class Box:
    """A piece of stock: along the grain, across it, and its thickness."""

    length: Mm
    width: Mm
    thickness: Mm


def sets_out_of(stock: Box, lengths: Sequence[Mm], strip: tuple[Mm, Mm], kerf: Mm) -> Count:
    """How many whole sets of pieces, all of a strip's width and thickness, a piece of stock gives, resawn if thick."""
    width, thickness = strip
    strips = strips_across(stock.thickness, thickness, kerf) * strips_across(stock.width, width, kerf)
    return sets_in(lengths, stock.length, strips, kerf)


def strips_across(width: Mm, strip: Mm, kerf: Mm) -> Count:
    """How many strips a width gives, with a kerf between each two; a tiny rounding error is tolerated.

    None of a width that is not known.
    """
    strips = (width + kerf + 1e-9) // (strip + kerf)
    return 0 if isnan(strips) else max(0, int(strips))


def packed(lengths: Sequence[Mm], board: Mm, strips: Count, kerf: Mm) -> tuple[Cut, ...] | None:
    """Pieces of these lengths in strips of length `board`, the longest first, each where it first fits; None: no room.

    First fit by falling length: near enough to the best for the few pieces that a maker cuts.
    """
    return _fitted(sorted(range(len(lengths)), key=lambda row: -lengths[row]), lengths, board, strips, kerf)


def _fitted(order: Sequence[int], lengths: Sequence[Mm], board: Mm, strips: Count, kerf: Mm) -> tuple[Cut, ...] | None:
    """Each piece, in this order, in the first strip that still has room for it."""
    used, found = [0.0] * strips, []
    for row in order:
        strip = next((each for each in range(strips) if used[each] + lengths[row] <= board + 1e-9), None)
        if strip is None:
            return None
        found.append(Cut(row, strip, used[strip]))
        used[strip] += lengths[row] + kerf
    return tuple(sorted(found, key=lambda cut: cut.row))


def sets_in(lengths: Sequence[Mm], board: Mm, strips: Count, kerf: Mm) -> Count:
    """How many whole sets of these pieces the strips give: all pieces by falling length, or set after set."""
    falling = sorted(lengths, reverse=True)
    orders = (lambda count: sorted(falling * count, reverse=True), lambda count: falling * count)
    return max(_count(order, board, strips, kerf) for order in orders)


def _count(order: Callable[[int], list[Mm]], board: Mm, strips: Count, kerf: Mm) -> Count:
    count = 0
    while _fitted(range(len(order(count + 1))), order(count + 1), board, strips, kerf) is not None:
        count += 1
    return count
