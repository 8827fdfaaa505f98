"""A drawing of two pieces, one over the other, as two cards: each is then laid on pages of its own.

The two halves of a mould need fewer pages this way than with the gap between them, and are taped together as two.
"""

from collections.abc import Sequence
from dataclasses import replace

from gramil.writers.extents import Box, box_round
from gramil.writers.lettering import Lettering
from gramil.writers.plain import Plain
from gramil.writers.shared_pages import Card

BESIDE = ("text", "dimensions", "list")
"""Layers of what is said of a piece."""
CUT = ("cut", "outline")
"""Layers of what a piece is cut by."""


def set_apart(card: Card) -> tuple[Card, ...]:
    """The card in two at the widest gap across it; the card alone if nothing parts what is cut.

    Words and dimensions go with the piece that they are nearer to; other marks within the gap are left out.
    """
    boxes = sorted((box_round(mark) for mark in card.marks if mark.layer in CUT), key=lambda box: box[1])
    gaps = [(high[1] - max(low[3] for low in boxes[:at]), at) for at, high in enumerate(boxes) if at > 0]
    widest, at = max(gaps, default=(0.0, 0))
    if widest <= 0.0:
        return (card,)
    pieces = _round(boxes[at:]), _round(boxes[:at])
    return tuple(
        Card(
            replace(card.drawing, title=f"{card.drawing.title}, piece {number} of 2"),
            tuple(mark for mark in card.marks if _goes_with(mark, pieces[number - 1], pieces[2 - number])),
            card.names,
        )
        for number in (1, 2)
    )


def _goes_with(mark: Plain, piece: Box, other: Box) -> bool:
    box = box_round(mark)
    own, its = _away(box, piece), _away(box, other)
    beside = isinstance(mark, Lettering) or mark.layer in BESIDE
    return own == 0.0 or (beside and its > own)


def _away(box: Box, piece: Box) -> float:
    """How far a mark lies from a piece, upward or downward; 0 if they lie side by side."""
    return max(box[1] - piece[3], piece[1] - box[3], 0.0)


def _round(boxes: Sequence[Box]) -> Box:
    lefts, lows, rights, highs = zip(*boxes, strict=True)
    return (min(lefts), min(lows), max(rights), max(highs))
