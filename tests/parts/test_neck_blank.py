"""The plank: scarf and lengths worked by hand, the heel's blocks, and what the stock yields."""

import math
from collections.abc import Callable
from itertools import pairwise

import pytest

from gramil.graph import Figures

SHOP = """
gramil = 1
[shop]
name = "yard"
units = "mm"
[[wire]]
name = "medium"
crown_width = 2.4
crown_height = 1.15
tang_thickness = 0.54
bead_thickness = 0.78
tang_depth = 1.6
[[blank]]
name = "{name}"
wood = "{wood}"
length = {length}
width = {width}
thickness = {thickness}
"""
Blanked = Callable[..., Figures]


@pytest.fixture
def planked(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Blanked:
    def made(carve: str = "", head: str = "", stock: tuple[float, float, float] = (1, 1, 1)) -> Figures:
        length, width, thickness = stock
        shop = SHOP.format(name="plank", wood="maple", length=length, width=width, thickness=thickness)
        return derive_text(f"{text_of('tarn').partition('[head]')[0]}\n[carve]\n{carve}\n[head]\n{head}\n", shop)

    return made


def test_the_plank_by_hand(planked: Blanked) -> None:
    """20 mm at 14 degrees: the scarf's face 82.67, its run 80.22, a kerf of 3 takes 12.40.

    Neck from 5 behind the zero line to fret 13 at 332.68 and a tenon of 18: 355.68. Head without an outline: last post
    at 118, 25 past it, less the nut's 5: 138; past the scarf's face 55.33. With 10 over: 513.62.
    """
    figures = planked()
    assert figures["plank_scarf_run"] == pytest.approx(20 / math.tan(math.radians(14)), abs=1e-9)
    assert figures["plank_scarf_run"] == pytest.approx(80.22, abs=0.005)
    assert figures["plank_saw_run"] == pytest.approx(12.40, abs=0.005)
    assert figures["plank_shaft"] == pytest.approx(355.68, abs=0.005)
    assert figures["plank_head_rest"] == pytest.approx(55.33, abs=0.005)
    assert figures["plank_length"] == pytest.approx(513.62, abs=0.02)


def test_scarf_under_the_board_needs_the_same_plank(planked: Blanked) -> None:
    assert planked('scarf = "under the board"')["plank_length"] == pytest.approx(planked()["plank_length"])


def test_head_and_neck_from_one_piece_need_a_thick_one(planked: Blanked) -> None:
    """The head's end falls 138 sin 14 + 13 cos 14 = 33.39 + 12.61 = 46.00 below the joint."""
    figures = planked('scarf = "one piece"')
    assert figures["plank_thickness"] == pytest.approx(46.0, abs=0.005)
    assert (figures["plank_scarf_run"], figures["plank_saw_run"]) == (0.0, 0.0)
    assert figures["plank_length"] == pytest.approx(355.68 + 138 * math.cos(math.radians(14)) + 10, abs=0.01)


def test_a_head_that_does_not_lean_has_no_scarf(planked: Blanked) -> None:
    figures = planked(head="angle = 0")
    assert not figures["plank_scarfed"]
    assert figures["plank_length"] == pytest.approx(355.68 + 138 + 10, abs=0.01)


def test_a_stacked_heel(planked: Blanked) -> None:
    """95 deep out of 20: four blocks under the plank, the last 15 thick; each shorter than the one above it."""
    blocks = planked()["plank_heel_blocks"]
    assert [block.thickness for block in blocks] == pytest.approx([20, 20, 20, 15])
    assert all(one.length > other.length for one, other in pairwise(blocks))
    assert blocks[-1].length > 22 + 18 + 10
    assert blocks[0].length < 50 + 18 + 10


def test_a_solid_heel(planked: Blanked) -> None:
    figures = planked('heel = "solid"')
    assert figures["plank_heel_blocks"] == ()
    assert figures["plank_thickness"] == 95.0


def test_the_plank_is_as_wide_as_the_head_unless_it_has_ears(planked: Blanked) -> None:
    """Without an outline the head is 2 (19.25 + 3 + 12) = 68.5 wide; the neck at its tenon's end 45.5 + 350.68 / 30."""
    neck = 45.5 + 350.68 / 30
    assert planked()["plank_width"] == pytest.approx(68.5 + 6)
    eared = planked("ears = true")
    assert eared["plank_width"] == pytest.approx(neck + 6, abs=0.01)
    assert eared["plank_ear"] == pytest.approx((68.5 - neck - 6) / 2, abs=0.01)
    assert [piece.name for piece in eared["plank_pieces"][-2:]] == ["ear 1", "ear 2"]


def test_stock_in_one_line(planked: Blanked) -> None:
    """A single strip of 74.5 must hold all five pieces and four kerfs of 3."""
    pieces = planked()["plank_pieces"]
    needed = sum(piece.length for piece in pieces) + 4 * 3
    assert planked(stock=(needed + 0.01, 74.5, 20))["plank_choice"].necks == 1
    assert planked(stock=(needed - 0.01, 74.5, 20))["plank_choice"].necks == 0
    assert planked(stock=(needed + 0.01, 74.4, 20))["plank_choice"].necks == 0
    assert planked(stock=(needed + 0.01, 74.5, 19.9))["plank_choice"].necks == 0


def test_wider_or_thicker_stock_gives_more_necks(planked: Blanked) -> None:
    length = sum(piece.length for piece in planked()["plank_pieces"]) + 4 * 3 + 0.01
    assert planked(stock=(length, 2 * 74.5 + 3, 20))["plank_choice"].necks == 2
    assert planked(stock=(length, 74.5, 43))["plank_choice"].necks == 2
    assert planked(stock=(length, 2 * 74.5 + 3, 43))["plank_choice"].necks == 4


def test_the_share_that_is_used(planked: Blanked) -> None:
    length = sum(piece.length for piece in planked()["plank_pieces"]) + 4 * 3
    choice = planked(stock=(length, 74.5, 25))["plank_choice"]
    assert choice.used == pytest.approx((length - 12) / length * 20 / 25)
    assert choice.thickness_over == 5.0


def test_pieces_lie_on_the_stock_without_touching(planked: Blanked) -> None:
    laid = planked(stock=(560, 160, 20))["plank_layout"]
    assert len(laid) == 5
    for row, one in enumerate(laid):
        assert one.along + one.length <= 560
        assert one.across + one.width <= 160
        for other in laid[row + 1 :]:
            beside = one.across != other.across
            assert (
                beside
                or one.along + one.length + 3 <= other.along + 1e-9
                or other.along + other.length + 3 <= (one.along + 1e-9)
            )


def test_wood_of_another_name_is_no_stock(planked: Blanked) -> None:
    assert planked('wood = "walnut"', stock=(2000, 200, 80))["plank_choice"].necks == 0
