"""A board that is not equally thick leans where it is cut across: on the drawings as in the figures."""

from collections.abc import Callable

import pytest

from gramil.drawings.marks import Circle, Polyline
from gramil.drawings.section_at import cut_at, section_marks, string_places
from gramil.graph import Figures

EDGES = "thickness = 6.5\nedge_tail_treble = 5.5\nedge_nut_treble = 6.0\nedge_nut_bass = 6.6\n"


@pytest.fixture(scope="module", params=["right", "left"])
def leaning(
    request: pytest.FixtureRequest, text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> Figures:
    text = text_of("mere").replace("thickness = 6.5\n", EDGES, 1)
    return derive_text(text.replace('handed = "right"', f'handed = "{request.param}"'))


def board_in(marks: tuple[object, ...], scale: float) -> dict[float, float]:
    """The height of the crown's outline over the board's underside at both ends across, in mm."""
    (crown,) = [each for each in marks if isinstance(each, Polyline) and each.layer == "hidden" and each.closed]
    (wood, *_) = [each for each in marks if isinstance(each, Polyline) and each.hatch == "across the grain"]
    low = min(z for _, z in wood.points)
    ends = {round(y / scale, 3) for y, _ in crown.points}
    return {
        y: min(z - low for other, z in crown.points if other / scale == pytest.approx(y, abs=2e-3)) / scale
        for y in (min(ends), max(ends))
    }


def test_the_section_s_edges_are_as_thick_as_it_says(leaning: Figures) -> None:
    """Thicker at the bass by so much as the figures have it; the treble to the right, or to the left if left-handed."""
    fret = leaning["station_middle_fret"]
    ends = board_in(leaning["drawing_section"].marks, 2.0)
    treble, bass = leaning["thickness_at_edge_treble"][fret], leaning["thickness_at_edge_bass"][fret]
    assert bass - treble > 0.5
    wanted = (treble, bass) if leaning["instrument_handed"] == "left" else (bass, treble)
    assert (ends[min(ends)], ends[max(ends)]) == pytest.approx(wanted, abs=0.01)


def test_the_section_line_s_cut_leans_and_its_strings_with_it(leaning: Figures) -> None:
    """By fret 7: the board's edges, and each string over the crown that is drawn under it."""
    cut = cut_at(leaning, float(leaning["fret_position"][7]))
    marks = section_marks(leaning, cut)
    ends = board_in(marks, 1.0)
    wanted = (leaning["thickness_at_edge_bass"][7], leaning["thickness_at_edge_treble"][7])
    assert (ends[min(ends)], ends[max(ends)]) == pytest.approx(wanted, abs=0.01)
    half = leaning["board_width_at_fret"][7] / 2
    rise = (wanted[1] - wanted[0]) / (2 * half)
    for row, (y, z) in enumerate(string_places(leaning, cut), 1):
        crown = rise * y + leaning["crown_height"]
        assert z - crown == pytest.approx(leaning["height_over_crown"][row - 1, 7], abs=0.005)


def test_the_nut_is_drawn_on_the_face_that_it_stands_on(leaning: Figures) -> None:
    """Its strings' circles lie over a face that falls by 0.6 mm from the bass edge to the treble edge."""
    face = leaning["piece_nut_face"]
    ends = (face[0][1], face[-1][1])
    treble, bass = reversed(ends) if leaning["instrument_handed"] == "right" else ends
    assert bass - treble == pytest.approx(0.6, abs=0.005)
    circles = [each for each in leaning["piece_nut_front"] if isinstance(each, Circle)]
    assert len(circles) == 6


def test_an_even_board_lies_level(example: Callable[[str], Figures]) -> None:
    ends = board_in(example("mere")["drawing_section"].marks, 2.0)
    assert ends[min(ends)] == pytest.approx(ends[max(ends)])
