"""The crosses by which pages are joined: each in a diamond, with the names of the pages that meet there.

The names stand towards the middle of the page, and where they would lie over a line or a word, at another side of the
cross.
"""

from collections.abc import Iterator, Sequence
from itertools import product
from math import hypot, pi

from gramil.drawings.marks import Line, Point, Polyline
from gramil.writers.extents import Box, box_round, touches
from gramil.writers.lettering import Lettering
from gramil.writers.plain import Plain
from gramil.writers.proof_square import meet
from gramil.writers.tiles import Cross, Tile

ARM, DIAMOND = 4.0, 1.5
"""Half a registration cross, and half the diamond on it, in mm."""
HEIGHT, ROOM, LONGEST = 2.0, 0.3, 30.0
"""Height of the names' capitals, the room round them, and more than the names of four pages come to, in mm."""
RISES = (1.6, -3.6, 4.8, -6.8, 8.0, -10.0, 11.2, -13.2)
OUT, ASIDE = tuple(4.0 * step for step in range(9)), (-2.0, 1.0, 4.0, 7.0, 10.0, -5.0, -8.0, -11.0)
"""In mm: how far over the cross, out from its end and, standing upright, aside of it the names are tried."""


def cross_lines(at: Point) -> tuple[Line | Polyline, ...]:
    """The cross, in a small diamond, not a ring, so that it is never taken for a hole to drill."""
    x, y = at
    diamond = ((x - DIAMOND, y), (x, y - DIAMOND), (x + DIAMOND, y), (x, y + DIAMOND))
    return (
        Line((x - ARM, y), (x + ARM, y), "pins"),
        Line((x, y - ARM), (x, y + ARM), "pins"),
        Polyline(diamond, "pins", closed=True),
    )


def cross_name(cross: Cross, tile: Tile, marks: Sequence[Plain]) -> Lettering:
    """The names of the pages that meet at a cross, clear of the marks if there is room near it on this page."""
    (x, y), far = cross.at, ARM + max(OUT) + LONGEST
    near = [(mark, box_round(mark)) for mark in marks if touches(mark, (x - far, y - far, x + far, y + far))]
    for name in _places(cross, tile):
        box = _grown(box_round(name))
        if _within(box, tile.window) and not any(_lies_on(mark, its, box) for mark, its in near):
            return name
    return next(_places(cross, tile))


def _places(cross: Cross, tile: Tile) -> Iterator[Lettering]:
    """The names beside the cross, level, then upright; those nearest to it first, and towards the page's middle."""
    (x, y), (left, low, right, high) = cross.at, tile.window
    inward = 1.0 if x < (left + right) / 2 else -1.0
    upward = 1.0 if y < (low + high) / 2 else -1.0
    names = " ".join(cross.joins)
    for out, rise in _level(upward):
        for side in (inward, -inward):
            at = (x + side * (ARM + 1.0 + out), y + rise)
            yield Lettering(at, names, HEIGHT, 0.0, "left" if side > 0 else "right", "text")
    for out, aside in sorted(product(OUT, ASIDE), key=lambda off: round(hypot(*off), 3)):
        for way in (upward, -upward):
            at = (x + aside, y + way * (ARM + 1.0 + out))
            yield Lettering(at, names, HEIGHT, pi / 2, "left" if way > 0 else "right", "text")


def _level(upward: float) -> list[Point]:
    """How far out from the cross's end and over it level names are tried, the nearest first."""
    return sorted(product(OUT, RISES), key=lambda off: (round(hypot(off[0], off[1] + HEIGHT / 2), 3), -upward * off[1]))


def _lies_on(mark: Plain, its: Box, box: Box) -> bool:
    """Whether a mark lies in a box: a line anywhere in it, words with their room; `its` is the box round the mark."""
    return meet(its, box) and (isinstance(mark, Lettering) or touches(mark, box))


def _within(box: Box, window: Box) -> bool:
    return window[0] <= box[0] and window[1] <= box[1] and box[2] <= window[2] and box[3] <= window[3]


def _grown(box: Box) -> Box:
    return (box[0] - ROOM, box[1] - ROOM, box[2] + ROOM, box[3] + ROOM)
