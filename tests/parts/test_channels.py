"""The body's bindings on a round body, worked by hand: strips, the wood that channels leave, a cutter on a dome."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.description.records import Cutter
from gramil.graph import Figures
from gramil.parts.channels import channel_cuts, channel_flush_cutter, channel_list
from gramil.parts.edge_records import Edge

R, DOME = 200.0, 4000.0
WALL, LININGS, HIGH = 2.0, 8.0, 14.0
TOP = Edge("top", 2.5, 6.5, 1.5, 1.6, "maple", 3.0, "wood")


def body(depth_tail: float = 100.0, more: str = "", dome: str = f"{DOME:g}") -> str:
    """A round body of 200 mm with domed plates, bound at the top: 2.5 thick, 6.5 high, purfling 1.5."""
    turns = (math.pi * step / 48 for step in range(49))
    points = ", ".join(f"[{R - R * math.cos(turn):.9f}, {max(0.0, R * math.sin(turn)):.9f}]" for turn in turns)
    return f"""
[body]
points = [{points}]
depth_neck = 100
depth_tail = {depth_tail:g}
back_radius = {dome if dome != "flat" else '"flat"'}
back_thickness = 2.5
wall = {WALL:g}
linings = {LININGS:g}
linings_height = {HIGH:g}
[top]
radius = {dome if dome != "flat" else '"flat"'}
thickness = 3
[top_binding]
thickness = 2.5
height = 6.5
purfling = 1.5
purfling_depth = 1.6
{more}
"""


BACK = "[back_binding]\nthickness = 2\nheight = 6\n"


@pytest.fixture(scope="module")
def derived(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Callable[..., Figures]:
    board = text_of("tarn").partition("# The body")[0]
    return lambda *args, **more: derive_text(board + body(*args, **more))


def test_strips_are_half_a_circle_long_and_what_is_left_over(derived: Callable[..., Figures]) -> None:
    """pi R outside, pi (R - 2.5) along the purfling's outside, 20 over at both ends of each."""
    figures = derived()
    binding, purfling = figures["strip_list"]
    assert binding.length == pytest.approx(math.pi * R + 40, abs=0.01)
    assert figures["strip_length"] == pytest.approx(math.pi * R + 40, abs=0.01)
    assert purfling.length == pytest.approx(math.pi * (R - 2.5) + 40, abs=0.01)
    assert (binding.count, binding.height, binding.thickness) == (2, 6.5, 2.5)
    assert (purfling.count, purfling.height, purfling.thickness) == (2, 1.6, 1.5)


def test_the_strip_bends_to_the_radius(derived: Callable[..., Figures]) -> None:
    binding, purfling = derived()["strip_list"]
    assert binding.bend == pytest.approx(R / 2.5, rel=1e-3)
    assert math.isnan(purfling.bend), "of how many lines it is laid up is not described"


def test_what_the_channels_leave(derived: Callable[..., Figures]) -> None:
    """The binding goes 6.5 - 3 = 3.5 below the top. The lining, 8 wide there where it begins, tapers to nothing over
    14: at 3.5 it is 8 (1 - 3.5/14) = 6 wide. Behind the foot stand 2 + 6 - 2.5 = 5.5, under it 14 - 3.5 = 10.5 of it;
    the top holds on 2 + 8 - 2.5 = 7.5; the purfling ends 4 in, 6 short of the linings' inside; 3 - 1.6 = 1.4 are under
    it."""
    (top,) = derived()["channel_list"]
    assert (top.behind, top.lining, top.glued) == pytest.approx((5.5, 10.5, 7.5))
    assert (top.past_linings, top.under_purfling, top.cover) == pytest.approx((-6.0, 1.4, 3.5))


def test_within_the_side_the_lining_stays_whole() -> None:
    """1.8 into a side of 2; no purfling, so that nothing is known of what is left under one."""
    (left,) = channel_list((Edge("back", 1.8, 6.0, 0.0, 1.6, "maple", 2.5, "wood"),), WALL, LININGS, HIGH)
    assert left.lining == HIGH
    assert left.glued == pytest.approx(2 + 8 - 1.8)
    assert math.isnan(left.under_purfling)


def test_purfling_through_the_plate_takes_glue_room() -> None:
    """Cut 3 deep into a top of 3 it leaves nothing under it, and only 2 + 8 - 4 = 6 of the rim."""
    (left,) = channel_list((Edge("top", 2.5, 6.5, 1.5, 3.0, "maple", 3.0, "wood"),), WALL, LININGS, HIGH)
    assert (left.under_purfling, left.glued) == pytest.approx((0.0, 6.0))


def test_without_linings_the_side_is_all_there_is() -> None:
    (left,) = channel_list((TOP,), WALL, 0.0, 0.0)
    assert left.behind == pytest.approx(2.0 - 2.5)


def test_a_cutter_on_a_sphere_leans_by_its_slope(derived: Callable[..., Figures]) -> None:
    """At 200 from its apex a sphere of 4000 slopes by asin(200/4000); over 6.5 and 2.5 that is 6.5 and 2.5 times its
    tangent, 200 / sqrt(4000^2 - 200^2)."""
    (tilt,) = derived()["channel_tilts"]
    tangent = R / math.sqrt(DOME**2 - R**2)
    assert tilt.angle == pytest.approx(math.asin(R / DOME), rel=1e-6)
    assert tilt.lean == pytest.approx(6.5 * tangent, rel=1e-6)
    assert tilt.floor == pytest.approx(2.5 * tangent, rel=1e-6)


def test_the_taper_of_the_sides_tilts_the_back_toward_the_shallow_end(derived: Callable[..., Figures]) -> None:
    """100 deep at the neck, 120 at the tail of 400: 1 in 20 more at the neck's end, where the sides are shallower."""
    top, back = derived(120.0, BACK)["channel_tilts"]
    own = R / math.sqrt(DOME**2 - R**2)
    assert math.tan(top.angle) == pytest.approx(own, rel=1e-6), "the top's rim is the plane that the sides stand on"
    assert math.tan(back.angle) == pytest.approx(own + 20 / 400, rel=1e-5)
    assert back.along == pytest.approx(0.0, abs=1.0)


def test_on_flat_plates_no_cutter_leans(derived: Callable[..., Figures]) -> None:
    tilts = derived(100.0, BACK, dome="flat")["channel_tilts"]
    assert [each.lean for each in tilts] == pytest.approx([0.0, 0.0])


def test_the_side_left_between_the_bindings(derived: Callable[..., Figures]) -> None:
    """On flat plates 100 deep: 3.5 under the top, 6 - 2.5 = 3.5 over the back."""
    assert derived(100.0, BACK, dome="flat")["channel_side_left"] == pytest.approx(93.0)
    assert derived(100.0, dome="flat")["channel_side_left"] == pytest.approx(96.5)


def test_lines_on_the_plate_lie_square_in_from_the_outline(derived: Callable[..., Figures]) -> None:
    (lines,) = derived()["channel_lines"]
    assert lines.bound.width == pytest.approx(2 * (R - 2.5), abs=0.01)
    assert lines.purfled.width == pytest.approx(2 * (R - 4.0), abs=0.01)


def test_an_unbound_body_has_none_of_it(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> None:
    board = text_of("tarn").partition("# The body")[0]
    bare = derive_text(board + body().partition("[top_binding]")[0])
    names = ("channel_edges", "channel_list", "channel_tilts", "channel_cuts", "channel_lines", "strip_list")
    assert all(bare[name] == () for name in names)
    assert math.isnan(bare["channel_side_left"])


def test_cutter_and_bearing_step_the_channel_in() -> None:
    """19 and 14.4 leave 2.3, so that 2.5 stands 0.2 proud; 19 and 11.4 leave 3.8 of the 4.0 to the purfling's inside.
    Both cutters want bearings 5 and 8 mm smaller. Strips stand 0.1 out of the plate."""
    cutter = Cutter("rabbet", 19.0, (11.4, 14.4, 19.0))
    purfling, binding = channel_cuts((TOP,), (cutter,), 0.1, 0.2, "mm")
    assert (purfling.name, binding.name) == ("top purfling", "top binding"), (
        "the wider first: its bearing needs the side"
    )
    assert (binding.bearing, binding.ledge, binding.proud) == pytest.approx((14.4, 2.3, 0.2))
    assert (purfling.bearing, purfling.ledge, purfling.proud) == pytest.approx((11.4, 3.8, 0.2))
    assert (binding.step, purfling.step) == (5.0, 8.0)
    assert (binding.depth, purfling.depth) == pytest.approx((6.4, 1.5))
    assert channel_flush_cutter((cutter,)) == 19.0


def test_without_a_cutter_what_it_would_have_to_be_is_still_known() -> None:
    (cut,) = channel_cuts((Edge("back", 2.0, 6.0, 0.0, 1.6, "maple", 2.5, "wood"),), (), 0.1, 0.2, "mm")
    assert np.isnan([cut.ledge, cut.proud, cut.diameter]).all()
    assert (cut.inset, cut.depth, cut.step) == pytest.approx((2.0, 5.9, 4.0))
    assert math.isnan(channel_flush_cutter((Cutter("rabbet", 12.7, (9.0,)),)))
