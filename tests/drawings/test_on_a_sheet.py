"""Drawings as sheets show them: each word at its place where there is room for it, lines large enough to be seen."""

import re

import pytest
from tests.drawings.conftest import figures_for

from gramil.drawings.marks import Label, Polyline, Span
from gramil.drawings.picture import Picture
from gramil.formatter import Formatter
from gramil.pack import TALLEST
from gramil.sheets.page_size import page_size, room_for_drawing
from gramil.writers.beside import labels_on
from gramil.writers.legible import legible
from gramil.writers.lettering import Lettering, corners
from gramil.writers.plain import plain

EXAMPLES = ["tarn", "fell", "scree", "mere"]


def pictured(name: str, drawing: str, paper: str) -> Picture:
    figures = figures_for(name)
    drawn = figures[drawing]
    formatter = Formatter(figures, figures["instrument_units"])
    room = (room_for_drawing(paper), TALLEST * page_size(paper)["times"])
    return legible(drawn, labels_on((drawn,), formatter), room, formatter.first)


def times(picture: Picture) -> float:
    """How large its lines are on the page beside what they are on the drawing."""
    found = re.search(r'viewBox="[-\d.]+ [-\d.]+ [\d.]+ ([\d.]+)"', picture.svg)
    assert found is not None
    return picture.least / float(found[1])


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", EXAMPLES)
def test_heights_of_the_strings_stand_at_their_places(name: str, paper: str) -> None:
    """None of them as a number in a ring: in inches and on a nylon's high saddle six had been."""
    picture = pictured(name, "drawing_heights", paper)
    assert picture.key == ()
    assert picture.low is None


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("drawing", ["drawing_setup_bevels", "drawing_setup_openings"])
def test_bevels_and_openings_have_their_words_beside_them(drawing: str, paper: str) -> None:
    """The true-scale templates' long words had been rings far from what they named; bevels had no drawing."""
    assert pictured("corrie", drawing, paper).key == ()


@pytest.mark.parametrize("drawing", ["drawing_setup_blank", "drawing_setup_side", "drawing_setup_bridge"])
def test_a_lower_drawing_is_no_heap_of_words(drawing: str) -> None:
    """Its lines are half as large as the other's or more: *Fell*'s blank would have shrunk to three tenths."""
    picture = pictured("fell", drawing, "a4")
    assert picture.low is None or times(picture.low) >= 0.5 * times(picture)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_word_reaches_far_over_or_under_the_blank(name: str) -> None:
    """In an inch shop its width with 64ths had stood upright, higher over it than the blank is wide."""
    figures = figures_for(name)
    drawn = figures["drawing_setup_blank"]
    read = labels_on((drawn,), Formatter(figures, figures["instrument_units"]))
    said = [each for each in plain(drawn, read) if isinstance(each, Lettering)]
    ys = [y for each in said for _, y in corners(each)]
    (wood,) = (mark for mark in drawn.marks if isinstance(mark, Polyline) and mark.hatch)
    low, high = min(y for _, y in wood.points), max(y for _, y in wood.points)
    assert max(ys) - high < 0.5 * (high - low)
    assert low - min(ys) < 18.0
    assert {"blank_width", "blank_length", "blank_thickness"} <= {
        mark.figure.address for mark in drawn.marks if isinstance(mark, Label | Span)
    }


@pytest.mark.parametrize("name", ["tarn", "fell", "mere"])
def test_a_side_that_is_bent_has_a_drawing_that_leaves_room_for_its_words(name: str) -> None:
    """Its sheet of A4 has some 50 mm beside the words; 54 had turned a page for the drawing alone."""
    low = pictured(name, "drawing_setup_side", "a4").low
    assert low is not None
    assert low.least < 50.0
    assert low.key == ()


@pytest.mark.parametrize(("name", "drawing"), [("corrie", "drawing_head"), ("tarn", "drawing_top_inside")])
@pytest.mark.parametrize("tall", [45.0, 60.0, 80.0])
def test_no_ring_stands_for_a_number(name: str, drawing: str, tall: float) -> None:
    """Of tuners and braces that are numbered: a number in a ring in another's place would be read as one of them."""
    drawn = figures_for(name)[drawing]
    read = Formatter(figures_for(name), "mm").text
    picture = legible(drawn, read, (room_for_drawing("a4"), tall))
    wanted = {each.text for each in plain(drawn, read) if isinstance(each, Lettering) and len(each.text) <= 2}
    assert len(wanted) > 8
    for found in filter(None, (picture, picture.low)):
        assert not {said for _, said in found.key} & wanted
        assert wanted <= set(re.findall(r">([^<>]{1,2})</text>", found.svg))
