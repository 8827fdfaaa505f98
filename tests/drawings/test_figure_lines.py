"""A figure a string over its place: on lines in turn where strings stand evenly, fitted and numbered where in pairs."""

from itertools import combinations

from gramil.drawings.pen import figure_lines

PAIRS = (20.5, 18.6, 12.9, 11.0, 5.2, 3.3, -2.6, -4.5, -10.5, -12.4, -18.6, -20.5)
"""Six pairs at a nut, in mm from the middle."""


def test_strings_that_stand_evenly_take_the_lines_in_turn() -> None:
    """7.7 mm apart, figures of 13 mm: on two lines."""
    found = figure_lines([19.25 - 7.7 * row for row in range(6)], 13.0)
    assert (found.rows, found.count, found.before(3)) == ((1, 0, 1, 0, 1, 0), 2, "")


def test_figures_of_pairs_on_one_line_leave_room_for_a_number() -> None:
    found = figure_lines(PAIRS, 13.0)
    for one, other in combinations(range(12), 2):
        if found.rows[one] == found.rows[other]:
            assert abs(PAIRS[one] - PAIRS[other]) > 1.5 * 13.0
    assert [found.before(string) for string in (1, 12)] == ["1: ", "12: "]
