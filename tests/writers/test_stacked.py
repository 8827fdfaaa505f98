"""Words made large enough to read: lines of one list stay lines, and neighbours on a line keep a space between them."""

from itertools import pairwise

from gramil.drawings.marks import Drawing, Line, Words
from gramil.writers.legible import legible
from gramil.writers.stacked import grown


def test_lines_of_one_list_part_as_their_letters_grow_and_keep_their_order() -> None:
    """6 mm apart with capitals of 3 mm; of 9 mm they would lie over one another. The lowest is nearest the rest."""
    listed = tuple(Words((0.0, 30.0 - 6.0 * row), f"line {row}") for row in range(4))
    beside = Words((200.0, 30.0), "somewhere else")
    larger = grown((*listed, beside, Words((0.0, -40.0), "far below")), 9.0)
    heights = [mark.at[1] for mark in larger[:4]]
    assert heights[3] == 12.0
    assert all(upper - lower >= 9.0 * 1.3 for upper, lower in pairwise(heights))
    assert (larger[4].at, larger[5].at) == (beside.at, (0.0, -40.0))


def test_what_is_large_enough_stays_where_it_is() -> None:
    listed = tuple(Words((0.0, -6.0 * row), "a line") for row in range(3))
    assert grown(listed, 2.0) == list(listed)


def test_neighbours_on_a_line_do_not_run_together() -> None:
    """At this size they would stand less than a letter apart: one of them goes to the table instead."""
    marks = (Words((0.0, 5.0), "frets 20"), Words((39.5, 5.0), "pin 4 mm"), Line((0.0, 0.0), (600.0, 0.0), "outline"))
    picture = legible(Drawing("rail", "a rail", "the face", marks), str, (180.0, 60.0))
    assert len(picture.key) == 1


def test_a_sentence_on_the_whole_drawing_gets_no_number() -> None:
    """Too long for the page at its size, it stands under the drawing; the other sentence goes with it."""
    long, short = "Heights are drawn forty times too tall, from the zero line to the saddle.", "Dashed: hidden."
    line = Line((0.0, 0.0), (600.0, 0.0), "outline")
    marks = (Words((0.0, 5.0), long), Words((0.0, 11.0), short), Words((300.0, 40.0), "saddle"), line)
    picture = legible(Drawing("heights", "heights", "the side", marks), str, (180.0, 60.0))
    assert picture.key == (("", long), ("", short))
    assert long not in picture.svg.partition("</desc>")[2]
    assert short not in picture.svg.partition("</desc>")[2]


def test_a_page_with_less_room_is_offered_a_lower_drawing() -> None:
    marks = (Line((0.0, 0.0), (100.0, 100.0), "outline"), Words((20.0, 5.0), "corner", 2.0))
    picture = legible(Drawing("one", "one", "the face", marks), str, (180.0, 120.0))
    assert picture.low is not None
    assert picture.low.least < picture.least
    assert picture.low.key == picture.key == ()
