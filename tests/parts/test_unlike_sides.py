"""A body that is not alike left and right: each side's own length, bends and stations, and what follows the outline.

Lengths and areas are a geometry library's, of the outline as the face's drawing has it in close chords.
"""

import math
import re
from collections.abc import Callable

import numpy as np
import pytest
import shapely

from gramil.graph import Figures
from gramil.prints.whole import findings_of

ROUND = "\n[cutaway]\ndepth = 95\nhorn = 55\nradius = 22\n"
POINTED = "\n[cutaway]\ndepth = 95\nhorn = 55\n"


@pytest.fixture(scope="module")
def cut(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(text_of("tarn") + ROUND)


@pytest.fixture(scope="module")
def pointed(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(text_of("tarn") + POINTED)


@pytest.fixture(scope="module")
def alike(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(text_of("tarn"))


def ring_of(figures: Figures) -> np.ndarray:
    (outline,) = figures["body_outlines"]
    return np.vstack((outline.polyline(1e-4), outline.polyline(1e-4)[:1]))


def side_of(figures: Figures, way: int) -> shapely.LineString:
    ring = ring_of(figures)
    tail = int(np.argmax(ring[:, 0] - 1e3 * (abs(ring[:, 1]) > 1e-6)))
    return shapely.LineString(ring[: tail + 1] if way > 0 else ring[tail:])


@pytest.mark.parametrize("name", ["cut", "pointed"])
def test_each_side_has_its_own_length(name: str, request: pytest.FixtureRequest, alike: Figures) -> None:
    figures = request.getfixturevalue(name)
    assert figures["treble_side_length"] == pytest.approx(side_of(figures, 1).length, abs=2e-3)
    assert figures["side_length"] == pytest.approx(side_of(figures, -1).length, abs=2e-3)
    assert figures["side_length"] == alike["side_length"]
    assert figures["treble_side_along"][-1] == pytest.approx(figures["treble_side_length"])


def test_along_the_middle_of_its_thickness(cut: Figures) -> None:
    """Of the line half the wall inside, as the library moves it in, and a half wall each way at the corner
    under the heel, which it cuts short."""
    inside = shapely.Polygon(ring_of(cut)).buffer(-1.05, join_style="mitre", quad_segs=64).exterior
    upper = shapely.intersection(inside, shapely.box(0.0, 0.0, 600.0, 400.0))
    run = shapely.line_merge(upper)
    assert cut["treble_side_length_middle"] == pytest.approx(run.length + 2 * 1.05, abs=0.05)


def test_blanks_and_strips_serve_the_longer_side(cut: Figures, alike: Figures) -> None:
    assert cut["side_longer"] == cut["treble_side_length"] > cut["side_length"]
    assert cut["side_blank_length"] == pytest.approx(cut["treble_side_length"] + 30)
    assert cut["strip_length"] == pytest.approx(cut["treble_side_length"] + 2 * cut["limit_strip_over"])
    assert alike["side_longer"] == alike["side_length"]
    assert math.isnan(alike["treble_side_length"])


def test_the_bends_are_named_and_as_tight_as_asked(cut: Figures, pointed: Figures) -> None:
    by_name = {each.name: each for each in cut["bend_treble"]}
    assert list(by_name) == ["heel corner", "hollow", "horn", "waist", "lower bout"]
    assert by_name["horn"].radius == pytest.approx(22, rel=1e-3)
    assert cut["body_tightest_bend"] == by_name["horn"].radius
    assert cut["body_bend_ratio"] == pytest.approx(22 / 2.1, rel=1e-3)
    assert cut["bend_thin_to"] == pytest.approx(22 / 12, rel=1e-3)
    assert [each.name for each in pointed["bend_treble"]] == [
        "heel corner", "hollow", "point", "upper bout", "waist", "lower bout",
    ]  # fmt: skip
    assert [each.name for each in cut["bend_bass"]] == ["upper bout", "waist", "lower bout"]


def test_area_widths_and_plates(cut: Figures, alike: Figures) -> None:
    polygon = shapely.Polygon(ring_of(cut))
    (outline,) = cut["body_outlines"]
    assert outline.area == pytest.approx(polygon.area, abs=0.2)
    low, high = polygon.bounds[1], polygon.bounds[3]
    assert (cut["body_reach_bass"], cut["body_reach_treble"]) == pytest.approx((-low, high), abs=1e-4)
    for bout in cut["body_bouts"]:
        across = polygon.intersection(shapely.LineString([(bout.x, -400), (bout.x, 400)])).bounds
        assert bout.width == pytest.approx(across[3] - across[1], abs=1e-3)
        assert bout.treble == pytest.approx(across[3], abs=1e-3)
    assert cut["body_plate_half_width"] == pytest.approx(alike["body_plate_half_width"], abs=1e-9)


def test_the_air_is_less_by_what_the_cutaway_takes(cut: Figures, alike: Figures) -> None:
    """Between the bare plans' difference at the side's least and greatest depth, less what of block and lining goes."""
    gone = alike["body_outlines"][0].area - cut["body_outlines"][0].area
    less = alike["body_air_volume"] - cut["body_air_volume"]
    assert 0.85 * gone * 94 < less < 1.05 * gone * 110


def test_linings_blocks_and_braces_keep_to_the_outline(cut: Figures) -> None:
    polygon = shapely.Polygon(ring_of(cut))
    bare = polygon.buffer(-2.1 + 1e-3, quad_segs=64)
    neck = shapely.Polygon(cut["body_blocks"][0].corners)
    assert neck.intersection(shapely.box(15.0, 0.0, 60.0, 200.0)).difference(bare).is_empty
    assert cut["body_blocks"][0].treble == pytest.approx(30 - 2.1, abs=1e-3)
    lined = polygon.buffer(-8.1, quad_segs=64)
    for brace in cut["brace_list"]:
        if brace.ends != "tucked":
            assert lined.buffer(0.01).contains(shapely.LineString([brace.start, brace.stop])), brace.name
    upper = next(each for each in cut["brace_list"] if each.name == "upper transverse")
    assert upper.stop[1] < 50 < -upper.start[1]


def test_room_beside_the_board_by_hand(cut: Figures) -> None:
    """The board is 45.5 mm at the nut and 56 at fret 12, so wide as that goes on where the level line ends."""
    assert cut["access_depth"] == pytest.approx(95, abs=1e-3)
    half = 133 - 55 - 30
    level_end = 95 - half
    x = float(cut["body_edge"]) + level_end
    at_end = 30 - (45.5 + (56 - 45.5) * x / float(cut["fret_position"][12])) / 2
    assert cut["access_beside_board"] == pytest.approx(at_end, abs=0.15)
    places = cut["edge_x_treble"][1:]
    assert cut["access_fret"] == sum(each <= cut["body_edge"] + 95 for each in places)


def test_which_way_is_downhill(cut: Figures) -> None:
    """Worked by looking, fibres along x: from the hollow out to the horn's tip, from the bouts to waist, tip, tail."""
    runs = {each.name: each for each in cut["downhill_treble"]}
    assert list(runs) == [
        "hollow to heel", "hollow to horn's tip", "upper bout to horn's tip", "upper bout to waist",
        "lower bout to waist", "lower bout to tail",
    ]  # fmt: skip
    assert runs["hollow to horn's tip"].stop == runs["upper bout to horn's tip"].stop
    assert [each.plate for each in runs.values()] == ["top", "back", "top", "back", "top", "back"]


def test_a_left_handed_one_is_its_mirror_image(text_of, derive_text, cut: Figures) -> None:
    left = derive_text(text_of("tarn").replace('handed = "right"', 'handed = "left"') + ROUND)
    for name in ("treble_side_length", "side_length", "body_air_volume", "access_beside_board", "access_fret"):
        assert left[name] == cut[name]
    for name in ("drawing_face_plan", "drawing_mould", "drawing_top_inside", "drawing_back_inside"):
        ours, theirs = (
            [mark.points for mark in each[name].marks if getattr(mark, "layer", "") in ("outline", "cut")
             and hasattr(mark, "points")]
            for each in (cut, left)
        )  # fmt: skip
        assert [tuple((x, -y) for x, y in each) for each in ours] == theirs, name
    for name in ("drawing_side", "drawing_treble_side"):
        (ours,), (theirs,) = (
            [mark.points for mark in each[name].marks if getattr(mark, "layer", "") == "cut"] for each in (cut, left)
        )
        end = max(x for x, _ in ours)
        assert np.array([(end - x, y) for x, y in ours]) == pytest.approx(np.array(theirs), abs=1e-9)
    plates = {each.name: each.plate for each in left["downhill_treble"]}
    assert plates["hollow to heel"] == "back"


def test_both_halves_of_the_mould_follow_the_outline(cut: Figures) -> None:
    upper, lower = (
        shapely.Polygon(mark.points) for mark in cut["drawing_mould"].marks if getattr(mark, "layer", "") == "cut"
    )
    body = shapely.Polygon(ring_of(cut))
    for half, way in ((upper, 1), (lower, -1)):
        moved = shapely.affinity.translate(half, 0.0, -8.0 * way)
        assert moved.intersection(body).area < 8.0
    boards = 2 * float(cut["body_mould_length"]) * float(cut["body_mould_half_width"])
    assert upper.area + lower.area == pytest.approx(boards - body.area, abs=8.0)


def test_nothing_of_it_stands_on_a_body_that_is_alike(alike: Figures) -> None:
    assert not alike["drawing_treble_side"].marks
    assert (alike["bend_treble"], alike["downhill_treble"], alike["treble_side_stations"]) == ((), (), ())
    names = {each.name for each in findings_of(alike)}
    assert not {each for each in names if "cutaway" in each or "treble side" in each}


def test_verdicts_of_a_cutaway(cut: Figures, pointed: Figures) -> None:
    found = {each.name: each.severity for each in findings_of(cut)}
    assert found["tightest bend of the treble side"] == "caution"
    assert found["bending the sides"] == "stop"
    assert found["neck block beside the cutaway"] == "note"
    assert found["board beside the cutaway"] == "fine"
    assert found["frets that the hand reaches"] == "fine"
    assert {each.name: each.severity for each in findings_of(pointed)}["tightest bend of the treble side"] == "fine"


def test_the_board_over_a_narrow_heel_is_told(text_of, derive_text) -> None:
    figures = derive_text(text_of("tarn") + ROUND + "heel = 26\n")
    assert {each.name: each.severity for each in findings_of(figures)}["board beside the cutaway"] == "caution"


def test_all_lengths_doubled_double_all_lengths(text_of, derive_text, cut: Figures) -> None:
    """Of the body alone: its outline, its depths and its cutaway, in a description whose other lengths stay."""
    tarn = text_of("tarn")
    rows = re.search(r"\[body\]\noutline = \[.*?\n\]", tarn, re.DOTALL)
    assert rows is not None
    doubled = re.sub(r"\[(\d+), (\d+)\]", lambda pair: f"[{2 * int(pair[1])}, {2 * int(pair[2])}]", rows[0])
    twice = derive_text(
        tarn.replace(rows[0], doubled).replace("depth_neck = 94", "depth_neck = 188").replace(
            "depth_tail = 104", "depth_tail = 208"
        )
        + ROUND.replace("95", "190").replace("55", "110").replace("22", "44")
        + "heel = 60\n"
    )  # fmt: skip
    assert twice["bend_tightest_treble"] == pytest.approx(2 * cut["bend_tightest_treble"], rel=2e-4)
    for name in ("treble_side_length", "side_length", "access_depth", "body_reach_treble"):
        assert twice[name] == pytest.approx(2 * cut[name], rel=2e-5), name
    for ours, theirs in zip(cut["downhill_treble"], twice["downhill_treble"], strict=True):
        assert (theirs.start, theirs.stop) == pytest.approx((2 * ours.start, 2 * ours.stop), abs=0.02)


def test_the_two_pieces_at_a_point_meet_as_a_library_has_them(pointed: Figures) -> None:
    """The angle between chords 0.4 mm long on either side of the point."""
    point = next(each for each in pointed["bend_treble"] if each.name == "point")
    side = side_of(pointed, 1)
    here, before, behind = (np.array(side.interpolate(point.along + step).coords[0]) for step in (0.0, -0.4, 0.4))
    one, other = before - here, behind - here
    between = math.acos(one @ other / math.hypot(*one) / math.hypot(*other))
    assert point.between == pytest.approx(between, abs=0.02)
