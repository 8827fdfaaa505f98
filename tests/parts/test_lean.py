"""A board that is not equally thick, against its face and strings laid out in space over the neck's own face."""

from collections.abc import Callable

import numpy as np
import pytest

from gramil.description.reading import parse_description
from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.graph import Figures

STRAIGHT = "body_rise = 0\nrelief = 0"
THINNER = "thickness = 6.0\nedge_nut_treble = 6.5\nedge_nut_bass = 6.5\nedge_tail_treble = 5.5"
"""6.5 mm at the nut's edges and at the tail's bass edge, 5.5 at its treble edge: 6.0 in the middle there."""


@pytest.fixture(scope="module")
def mere(text_of: Callable[[str], str]) -> Callable[[str], str]:
    text = text_of("mere").replace("relief = 0.1", STRAIGHT)
    return lambda edges: text.replace("thickness = 6.5\n", f"{edges}\n", 1)


@pytest.fixture(scope="module")
def thinner(mere: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(mere(THINNER))


@pytest.fixture(scope="module")
def even(mere: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(mere("thickness = 6.5"))


def test_saddle_under_each_string_by_points_in_space(thinner: Figures) -> None:
    """The neck's face is level across and the bridge with it; the board's face is ruled between its two edges.

    Each string lies 0.55 to 0.7 mm over the crown of fret 1 and 3 to 4 mm over that of fret 12, and runs on straight to
    where it breaks. How far the neck leans is what lets the saddle show 3 mm in the mean, as *Mere* has it.
    """
    frets = 650 * (1 - 2.0 ** (-np.arange(20) / 12))
    tail = frets[-1] + 8
    crown = thinner["wire_crown_height"] - thinner["heights_dressing_loss"]
    heights, along = [], []
    for string in range(6):
        ends = (21.5 - 43 * string / 5, 29 - 58 * string / 5)
        tops = []
        for fret, over in ((1, 0.55 + 0.15 * string / 5), (12, 3.0 + string / 5)):
            x = frets[fret]
            y, half = ends[0] + (ends[1] - ends[0]) * x / 650, (52 + 10 * x / 325) / 2
            share = (half + y) / (2 * half)
            face = 6.5 + share * (5.5 - 6.5) * x / tail
            tops.append((x, face + crown + over))
        (x1, z1), (x2, z2) = tops
        saddle = float(thinner["saddle_break_x"][string])
        heights.append(z2 + (z2 - z1) / (x2 - x1) * (saddle - x2))
        along.append(saddle - frets[12])
    showing = np.array(heights) - np.mean(heights) + 3.0
    leaning = float(thinner["neck_angle_face"])
    showing += (np.array(along) - np.mean(along)) * leaning
    assert thinner["neck_set_exposed"] == pytest.approx(showing, abs=0.01)
    turned = float(np.mean(heights) + np.mean(along) * np.tan(leaning) - thinner["neck_set_bridge_top"])
    assert turned == pytest.approx(3.0, abs=0.02), "and the neck's face leans as those heights ask"


def test_the_thin_side_of_the_saddle_is_lower_by_half_again(thinner: Figures, even: Figures) -> None:
    """1 mm less at the treble edge 441 mm from the nut is 1.47 mm at 650; between strings 58 apart on 72, 1.19."""

    def across(figures: Figures) -> float:
        return float(figures["neck_set_exposed"][-1] - figures["neck_set_exposed"][0])

    assert across(thinner) - across(even) == pytest.approx(1.19, abs=0.03)


def test_edges_and_what_is_left_under_the_slots_follow(thinner: Figures, even: Figures) -> None:
    """The edge runs straight from 6.5 at the nut to 5.5 at the tail, 441.1 mm on: at fret 12, 6.5 - 325 / 441.1."""
    assert thinner["thickness_at_edge_bass"] == pytest.approx([6.5] * 20)
    assert thinner["thickness_at_edge_treble"][12] == pytest.approx(6.5 - 325 / 441.1, abs=0.001)
    assert [thinner[f"lean_corner_{each}"] for each in ("nut_treble", "nut_bass", "tail_treble", "tail_bass")] == [
        *(6.5, 6.5, 5.5, 6.5)
    ]
    less = even["slot_left_least"] - thinner["slot_left_least"]
    assert less == pytest.approx(6.5 - thinner["thickness_at_edge_treble"], abs=1e-9)
    assert thinner["blank_thickness"] == even["blank_thickness"]
    assert thinner["height_over_crown"][:, 12] == pytest.approx(even["height_over_crown"][:, 12]), "action as wanted"


def test_three_corners_make_the_fourth(mere: Callable[[str], str], derive_text: Callable[..., Figures]) -> None:
    """A face that is one plane: 5.5 and 6.5 at the tail lean as 5.5 + 1 (52 / 65.57) at the nut."""
    wide = 52 + 10 * 441.08 / 325
    figures = derive_text(mere("thickness = 6.0\nedge_nut_treble = 5.5\nedge_tail_treble = 5.5"))
    assert figures["lean_corner_tail_bass"] == pytest.approx(6.5)
    assert figures["lean_corner_nut_bass"] == pytest.approx(5.5 + 52 / wide, abs=0.001)
    turned = derive_text(mere("thickness = 6.0\nedge_nut_bass = 5.5\nedge_tail_bass = 5.5"))
    assert turned["lean_corner_nut_treble"] == pytest.approx(figures["lean_corner_nut_bass"])
    nut = derive_text(mere("thickness = 6.0\nedge_nut_treble = 5.5\nedge_nut_bass = 6.5"))
    assert nut["lean_corner_tail_bass"] - nut["lean_corner_tail_treble"] == pytest.approx(wide / 52, abs=0.001)


def test_a_thicker_corner_asks_for_a_thicker_blank(
    mere: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """6 in the middle and 5 at one edge of the tail are 7 at the other; 0.1 goes in levelling."""
    figures = derive_text(mere("thickness = 6.0\nedge_tail_treble = 5.0"))
    assert figures["blank_thickness"] == pytest.approx(7.1)


def test_an_even_board_has_no_lean(even: Figures) -> None:
    assert not even["lean_under_string"].any()
    assert np.isnan(even["lean_corner_tail_treble"])


@pytest.mark.parametrize(
    ("edges", "said"),
    [
        ("thickness = 6.0\nedge_tail_treble = 5.5\nedge_tail_bass = 6.5", "One of them"),
        ("thickness = 6.0\nedge_tail_treble = -1", "edge_tail_treble"),
    ],
)
def test_edges_that_cannot_be_are_refused(mere: Callable[[str], str], edges: str, said: str) -> None:
    with pytest.raises(MakersFault, match=said):
        parse_description(mere(edges))


def test_a_levelled_board_has_equal_edges(mere: Callable[[str], str]) -> None:
    text = mere("thickness = 6.0\nedge_tail_treble = 5.5").replace("level_underside = false", "level_underside = true")
    with pytest.raises(MakersFault, match="equally thick"):
        parse_description(text)


def test_the_blanks_sheet_says_what_the_corners_are_planed_to(thinner: Figures, even: Figures) -> None:
    def steps(figures: Figures) -> str:
        return " ".join(Formatter(figures).filled(each) for each in figures["setup_blank"].steps)

    assert "to 6.50 mm at the nut's treble edge" in steps(thinner)
    assert "5.50 mm at the tail's treble edge and 6.50 mm at its bass edge" in steps(thinner)
    assert "equally thick" not in steps(even)
