"""The map of a drawing's pages: the drawing small and pale, the named pages over it and this page in thick lines."""

from collections.abc import Iterator, Sequence

from gramil.drawings.marks import SMALLEST, Point
from gramil.layers import HAIRLINE, THICK
from gramil.writers.ink import PALE
from gramil.writers.leaf import Ink
from gramil.writers.lettering import Lettering
from gramil.writers.pdf_ink import Placed, letter, pen, shape, straight, stroked
from gramil.writers.plain import Plain
from gramil.writers.tiles import OVERLAP, Tile, Tiling

SHOWN = ("outline", "cut")
"""Layers that are enough to know the drawing by."""
TALLEST_NAME = 4.0


def page_map(
    tiling: Tiling, marks: Sequence[Plain], here: Tile | None, at: Point, room: tuple[float, float]
) -> Iterator[Ink]:
    """The map in the rectangle of `room` mm whose lower left corner is `at` on the page; `here` is drawn thick."""
    wide, tall = tiling.size
    times = min(room[0] / wide, room[1] / tall)
    left, top = tiling.origin
    on = (at[0] + room[0] - wide * times, at[1] + room[1] - tall * times)
    place = Placed((left, top - tall), on, (1.0 / times, 1.0 / times))
    for mark in marks:
        if mark.layer in SHOWN and not isinstance(mark, Lettering):
            yield shape(mark, place, pen(HAIRLINE, shade=PALE))
    for tile in tiling.tiles:
        if tile is not here:
            yield from _page(tile, place, times, HAIRLINE)
    if here is not None:
        yield from _page(here, place, times, THICK)


def _page(tile: Tile, place: Placed, times: float, weight: float) -> Iterator[Ink]:
    """A page as the part of its window that lies inside the middle of the overlaps; its name where it can be read."""
    left, low, right, high = tile.window
    half = OVERLAP / 2
    left_low, right_high = (left + half, low + half), (right - half, high - half)
    corners = (left_low, (right_high[0], left_low[1]), right_high, (left_low[0], right_high[1]))
    wide, tall = (right - left - OVERLAP) * times, (high - low - OVERLAP) * times
    yield stroked(straight(place, corners, True), pen(weight))
    height = min(TALLEST_NAME, tall / 2, wide / 3)
    if height < SMALLEST:
        return
    down = height / 2 / times
    middle = ((left + right) / 2, (low + high) / 2 - down)
    yield letter(Lettering(middle, tile.name, height, 0.0, "middle", "text"), place)
