"""Small cards on shared pages: every card whole on one page, none over another; words are no reason for a page."""

from dataclasses import replace
from itertools import combinations

import pytest

from gramil.drawings.marks import Drawing, Line, Polyline, Words
from gramil.writers.extents import bounds
from gramil.writers.plain import plain, seen_from
from gramil.writers.shared_pages import card_of, is_small, shared
from gramil.writers.tiles import tiled

TRUE = (1.0, 1.0)


def box(name: str, wide: float, tall: float) -> Drawing:
    corners = ((0.0, 0.0), (wide, 0.0), (wide, tall), (0.0, tall))
    return Drawing(name, name, "either side", (Polyline(corners, "cut", closed=True),))


SIZES = [(60.0, 40.0), (90.0, 120.0), (180.0, 110.0), (80.0, 90.0), (40.0, 20.0), (150.0, 60.0), (70.0, 70.0)]


def test_cards_lie_whole_and_apart_on_few_pages() -> None:
    cards = [card_of(each, plain(each, str)) for each in (box(f"card {at}", *size) for at, size in enumerate(SIZES))]
    assert all(is_small(card, "a4", TRUE) for card in cards)
    pages = shared(cards, "a4", TRUE)
    assert len(pages) <= 4 < len(cards)
    found = [[mark for mark in page.marks if isinstance(mark, Polyline)] for page in pages]
    assert sum(map(len, found)) == len(SIZES)
    for page, boxes in zip(pages, found, strict=True):
        left, low, right, high = bounds(page.marks)
        assert right - left <= 210 - 16
        assert high - low <= 297 - 16 - 26
        assert len(tiled(page.marks, "a4", TRUE).tiles) == 1
        for one, other in combinations([bounds([mark]) for mark in boxes], 2):
            assert one[2] < other[0] or other[2] < one[0] or one[3] < other[1] or other[3] < one[1]


def test_a_page_of_cards_seen_from_different_places_leaves_that_to_each() -> None:
    """A card of one side says so under it; the page's foot had called it the same from either side."""
    ends = (replace(box("nut", 50.0, 20.0), seen_from="the end"), box("gauge", 60.0, 30.0))
    for drawings, foot in (
        (ends, "Each card says from where it is seen."),
        ((ends[0], ends[0]), "Seen from the end."),
        ((ends[1], ends[1]), "The same from either side."),
    ):
        (page,) = shared([card_of(each, plain(each, str)) for each in drawings], "a4", TRUE)
        assert seen_from(page.drawing) == foot


def test_a_long_template_shares_no_page() -> None:
    long = box("long", 400.0, 30.0)
    assert not is_small(card_of(long, plain(long, str)), "a4", TRUE)


@pytest.mark.parametrize("beside", [Words((300.0, 0.0), "far away"), Line((250.0, 0.0), (900.0, 0.0), "dimensions")])
def test_no_page_is_printed_for_what_stands_beside_the_shape(beside: Words | Line) -> None:
    alone = box("alone", 150.0, 100.0)
    with_words = Drawing("with", "with", "either side", (*alone.marks, beside))
    assert len(tiled(plain(with_words, str), "a4", TRUE).tiles) == 1
