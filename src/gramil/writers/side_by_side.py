"""Pieces of one drawing laid out anew on pages: no piece is cut unless it must be, and each keeps its words.

Long pieces run over pages side by side, one row of them; short ones fill what is left beside their tips. A drawing
states itself that it may be taken apart like this: its pieces are closed lines to cut by, each followed by its words.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import product

import numpy as np

from gramil.drawings.marks import Point, Polyline
from gramil.measure import LengthUnit
from gramil.writers.extents import Box, bounds, box_round
from gramil.writers.lettering import Lettering
from gramil.writers.paper import Sheet, card_sheets
from gramil.writers.plain import Plain
from gramil.writers.proof_square import ROOM_ROUND_SQUARE, STEP
from gramil.writers.shared_pages import APART, Card, moved
from gramil.writers.tiles import OVERLAP, ROOM, ROOM_ALONE, Tiling, columns_for, in_a_row, proof_on, round_cross

Boxes = tuple[Box, ...]


@dataclass(frozen=True)
class _Piece:
    """Marks whose upper left corner lies at zero; `boxes` are what they fill: the piece itself, the words under it,
    each other word."""

    marks: tuple[Plain, ...]
    boxes: Boxes

    @property
    def width(self) -> float:
        return self.boxes[0][2]


_Rows = list[tuple[list[Plain], Tiling]]
"""The marks on each row of pages, with the pages."""


def side_by_side(
    card: Card, paper: str, printer_scale: tuple[float, float], unit: LengthUnit
) -> list[tuple[Card, Tiling]]:
    """The pieces on as few pages as they take, each row of pages as one card; nothing if they cannot be laid so."""
    pieces = [_piece(marks) for marks in _pieces(card.marks)]
    both = card_sheets(paper, printer_scale, unit)
    found = (_rows(sorted(pieces, key=lambda piece: -piece.width), both) if pieces else None) or []
    return [(_carded(card, marks, number, len(found)), tiling) for number, (marks, tiling) in enumerate(found, 1)]


def _pieces(marks: Sequence[Plain]) -> list[list[Plain]]:
    """Each closed line to cut by, with what follows it; empty if something stands before the first.

    A line within the one that began a piece is a window in it.
    """
    pieces: list[list[Plain]] = []
    for mark in marks:
        closed = isinstance(mark, Polyline) and mark.closed and mark.layer == "cut"
        if closed and not (pieces and _within(box_round(mark), box_round(pieces[-1][0]))):
            pieces.append([])
        if not pieces:
            return []
        pieces[-1].append(mark)
    return pieces


def _within(inner: Box, outer: Box) -> bool:
    return all(inner[side] >= outer[side] and inner[side + 2] <= outer[side + 2] for side in (0, 1))


def _piece(marks: Sequence[Plain]) -> _Piece:
    low = bounds(marks[:1])[1]
    words = [mark for mark in marks if isinstance(mark, Lettering)]
    under = [mark for mark in words if box_round(mark)[3] < low]
    parts: list[list[Plain]] = [[mark for mark in marks if mark not in words], [*under]]
    parts += ([mark] for mark in words if mark not in under)
    left, _, _, high = bounds(marks)
    by = (-left, -high)
    return _Piece(tuple(moved(mark, by) for mark in marks), tuple(_at(bounds(part), by) for part in parts if part))


def _carded(card: Card, marks: Sequence[Plain], number: int, of: int) -> Card:
    title = f"{card.drawing.title}, part {number} of {of}" if of > 1 else card.drawing.title
    return Card(replace(card.drawing, title=title), tuple(marks), card.names)


def _rows(left: Sequence[_Piece], both: Sequence[Sheet]) -> _Rows | None:
    """All pieces on rows of pages, the longest first, each row on the paper upright or lying, whichever takes fewer.

    None if one of them is too tall for a page.
    """
    if not left:
        return []
    ways = list[_Rows]()
    for sheet in both:
        row = in_a_row(sheet, columns_for(left[0].width, sheet))
        laid, over = _filled(left, row)
        rest = _rows(over, both) if laid else None
        if rest is not None:
            ways.append([(laid, replace(row, proof=proof_on(laid, row))), *rest])
    return min(ways, key=_pages, default=None)


def _pages(rows: _Rows) -> tuple[int, int]:
    """How many pages rows take, and how many lines run over the edge of one."""
    cut = (_wide(mark) > row.sheet.window[0] for laid, row in rows for mark in laid if isinstance(mark, Polyline))
    return sum(row.pages for _, row in rows), sum(cut)


def _wide(mark: Plain) -> float:
    left, _, right, _ = box_round(mark)
    return right - left


def _filled(pieces: Sequence[_Piece], tiling: Tiling) -> tuple[list[Plain], list[_Piece]]:
    """The marks of those pieces for which a row of pages has room, and the pieces that are left.

    Room is kept for the smaller square that proves the print; the first piece may leave it none, or none but in its
    window.
    """
    taken = [round_cross(cross) for tile in tiling.tiles for cross in tiling.crosses(tile)]
    side = min(tiling.sheet.squares) + 2 * ROOM_ROUND_SQUARE + STEP
    square: Boxes = ((0.0, -side, side, 0.0),)
    laid: list[Plain] = []
    left: list[_Piece] = []
    for piece in pieces:
        at = _place(piece.boxes, taken, tiling)
        also = [*taken, *(_at(box, at) for box in piece.boxes)] if at is not None else taken
        if at is None or (laid and _place(square, also, tiling) is None):
            left.append(piece)
            continue
        taken = also
        laid += (moved(mark, at) for mark in piece.marks)
    return laid, left


def _place(boxes: Boxes, taken: Sequence[Box], tiling: Tiling) -> Point | None:
    """Where boxes go, clear of what is taken, as high and then as far left as possible.

    A box wider than a page lies across them all; no other box lies across two.
    """
    xs = [left for left, _ in _spans(tiling)] + [box[2] + APART for box in taken]
    ys = [-_room(tiling)] + [box[1] - APART for box in taken]
    tried = np.array([(x, y) for y, x in product(sorted(set(ys), reverse=True), sorted(set(xs)))])
    free = np.ones(len(tried), dtype=np.bool_)
    for box in boxes:
        left, low, right, high = (tried[:, side % 2] + box[side] for side in range(4))
        free &= _inside((left, low, right, high), tiling)
        for other in taken:
            apart = (left >= other[2] + APART) | (right <= other[0] - APART)
            free &= apart | (low >= other[3] + APART) | (high <= other[1] - APART)
    return (float(tried[free][0, 0]), float(tried[free][0, 1])) if free.any() else None


def _inside(edges: Sequence[np.ndarray], tiling: Tiling) -> np.ndarray:
    """Which of the boxes with these edges lie in one window, or, too wide for one, across all from the first."""
    left, low, right, high = edges
    windows, room = [tile.window for tile in tiling.tiles], _room(tiling)
    upright = (low >= windows[0][1] + room) & (high <= windows[0][3] - room)
    wide, page = float((right - left)[0]), windows[0][2] - windows[0][0]
    spans = [(windows[0][0] + room, windows[-1][2] - room)] if wide > page - 2 * room else _spans(tiling, wide)
    within = [(left >= first) & (right <= last) for first, last in spans]
    inside: np.ndarray = upright & np.any(within, axis=0)
    return inside


def _spans(tiling: Tiling, wide: float = 0.0) -> list[tuple[float, float]]:
    """From where to where each page shows what no other does, its blank margin left out; all of it, if that is too
    little for something so wide.
    """
    last, tiles, room = len(tiling.tiles) - 1, tiling.tiles, _room(tiling)
    own = [
        (tile.window[0] + (OVERLAP if at > 0 else room), tile.window[2] - (OVERLAP if at < last else room))
        for at, tile in enumerate(tiles)
    ]
    whole = [(tile.window[0] + room, tile.window[2] - room) for tile in tiles]
    return own if any(right - left >= wide for left, right in own) else whole


def _room(tiling: Tiling) -> float:
    """The blank round what is laid: small on a page by itself."""
    return ROOM_ALONE if len(tiling.tiles) == 1 else ROOM


def _at(box: Box, at: Point) -> Box:
    return (box[0] + at[0], box[1] + at[1], box[2] + at[0], box[3] + at[1])
