"""The head: scarf, and the strings' way over the nut to their posts, against points set out in space."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures

HEAD = """
[head]
angle = {angle}
blank = 20
veneer = 2
nut_thickness = 5
post_height = 7
"""


@pytest.fixture
def headed(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Callable[..., Figures]:
    return lambda angle, more="": derive_text(text_of("tarn").partition("[head]")[0] + HEAD.format(angle=angle) + more)


def test_scarf_on_a_blank(headed: Callable[..., Figures]) -> None:
    """20 mm at 14 degrees: 20 / 0.241922 = 82.67; at 12 degrees: 20 / 0.207912 = 96.19."""
    assert headed(14)["head_scarf_length"] == pytest.approx(82.67, abs=0.005)
    assert headed('"12 deg"')["head_scarf_length"] == pytest.approx(96.19, abs=0.005)
    assert headed(0)["head_scarf_length"] == math.inf


def test_break_over_the_nut_is_the_turn_between_two_lines(headed: Callable[..., Figures]) -> None:
    figures = headed(14)
    a = math.radians(14)
    face, up = np.array([-math.cos(a), 0, -math.sin(a)]), np.array([-math.sin(a), 0, math.cos(a)])
    for string in range(6):
        y = float(figures["string_y_nut"][string])
        slot = np.array([0.0, y, figures["nut_slot_over_crest"][string] + figures["thickness_at_crest"][0]])
        start = np.array([-5.0, figures["head_posts_y"][string], 2.0])
        post = start + (figures["head_posts_x"][string] - 5) * face + 7 * up
        onward = post - slot
        plan = math.hypot(onward[0], onward[1])
        down = math.atan2(-onward[2], plan) - math.atan(figures["height_slope"][string])
        assert figures["head_break_angle"][string] == pytest.approx(down, abs=1e-12)
        over_board = (y - figures["string_y_bridge"][string]) / 630
        turn = math.atan2(onward[1], -onward[0]) - math.atan(over_board)
        assert figures["head_sideways_bend"][string] == pytest.approx(turn, abs=1e-12)


def test_posts_on_the_strings_own_lines_do_not_bend_them(headed: Callable[..., Figures]) -> None:
    usual = headed(14)
    places = [f"{float(x)!r}" for x in usual["head_posts_x"]]
    straight = [f"{float(y)!r}" for y in usual["head_straight_y"]]
    figures = headed(14, f"posts_x = [{', '.join(places)}]\nposts_y = [{', '.join(straight)}]")
    np.testing.assert_allclose(figures["head_sideways_bend"], 0.0, atol=1e-12)


def test_usual_posts_mirror_each_other(headed: Callable[..., Figures]) -> None:
    figures = headed(14)
    np.testing.assert_array_equal(figures["head_posts_x"], figures["head_posts_x"][::-1])
    np.testing.assert_array_equal(figures["head_posts_y"], -figures["head_posts_y"][::-1])
    assert (np.diff(figures["head_posts_x"][:3]) > 0).all()


SLOTTED = """thickness = 20
hole = 10
tuners = "across"
slot_width = 15
posts_x = [40, 75, 110, 110, 75, 40]
posts_y = [13, 13, 13, -13, -13, -13]
"""


def slotted(headed: Callable[..., Figures], below: float) -> Figures:
    figures = headed(14, SLOTTED)
    return figures.with_base({**figures.base, "head_post_height": -below})


def test_a_slotted_head_by_hand(headed: Callable[..., Figures]) -> None:
    """Rollers 9 mm under the face of a head 20 thick: 9 - 5 = 4 mm of wood over the holes, 11 - 5 under them.

    Slots 15 wide about 13 mm from the middle leave 2 (13 - 7.5) = 11 mm between them, and reach a hole past the
    outer rollers: from 30 to 120 mm. Holes on one side stand 35 mm apart, less 10.
    """
    figures = slotted(headed, 9.0)
    assert figures["head_hole_to_edge"] == pytest.approx([4.0] * 6)
    assert figures["head_slots_apart"] == pytest.approx(11.0)
    assert figures["head_holes_apart"] == pytest.approx(25.0)
    slots = figures["head_slots"]
    assert [slot.corners[0] for slot in slots] == [pytest.approx((30, 5.5)), pytest.approx((30, -20.5))]
    assert [slot.corners[2] for slot in slots] == [pytest.approx((120, 20.5)), pytest.approx((120, -5.5))]


def test_a_string_to_a_roller_bends_more(headed: Callable[..., Figures]) -> None:
    """Each mm that the string meets its post lower is a mm times the cosine of the head's angle of fall."""
    high, low = slotted(headed, 0.0), slotted(headed, 9.0)
    assert low["head_drop"] - high["head_drop"] == pytest.approx([9 * math.cos(math.radians(14))] * 6)
    assert (low["head_break_angle"] > high["head_break_angle"]).all()


def test_posts_need_no_slots(headed: Callable[..., Figures]) -> None:
    assert headed(14)["head_slots"] == ()
    assert math.isnan(headed(14)["head_slots_apart"])


def test_strings_in_a_slotted_head_against_points_in_space(headed: Callable[..., Figures]) -> None:
    """Each string laid out in space, and walked in small steps from nut to roller.

    Below the face of the head its edge is never nearer to a wall of its slot than is told; and at the slot's end toward
    the nut it lies as deep as is told.
    """
    figures = slotted(headed, 9.0)
    lean = math.radians(14)
    along, up = np.array([math.cos(lean), -math.sin(lean)]), np.array([math.sin(lean), math.cos(lean)])
    for string in range(6):
        start = np.array([0.0, figures["nut_slot_over_crest"][string] + figures["thickness_at_crest"][0]])
        face = np.array([5.0, 2.0])
        end = face + ([40, 75, 110, 110, 75, 40][string] - 5.0) * along - 9.0 * up
        share = np.linspace(0, 1, 200_001)
        way = start + share[:, None] * (end - start) - face
        below, reach = -(way @ up), 5.0 + way @ along
        nut, roller = abs(float(figures["string_y_nut"][string])), 13.0
        across = (nut + (roller - nut) * share)[below >= 0]
        room = min(float((across - 5.5).min()), float((20.5 - across).min())) - figures["strings_gauges"][string] / 2
        assert figures["head_slot_room"][string] == pytest.approx(room, abs=1e-3)
        ramp = max(0.0, float(np.interp(30.0, reach, below)))
        assert figures["head_slot_ramp"][string] == pytest.approx(ramp, abs=1e-3)


def test_posts_have_no_walls_beside_their_strings(headed: Callable[..., Figures]) -> None:
    assert np.isnan(headed(14)["head_slot_room"]).all()
    assert np.isnan(headed(14)["head_slot_ramp"]).all()
