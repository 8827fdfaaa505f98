"""Plans of the whole guitar: its parts lie where the figures have them, and meet."""

import math

import numpy as np
import pytest

from gramil.drawings.marks import Circle, Line, Polyline


def shapes(drawing, layer):
    return [mark for mark in drawing.marks if isinstance(mark, Polyline) and mark.layer == layer]


def test_the_body_begins_where_the_neck_meets_it(tarn):
    """Tarn's scale is 630 and its body at fret 13, so its edge is at 630 (1 - 2^(-13/12)) = 332.68."""
    edge = 630 * (1 - 2 ** (-13 / 12))
    body = max(shapes(tarn["drawing_plan_face"], "outline"), key=lambda shape: np.ptp([x for x, _ in shape.points]))
    xs = [x for x, _ in body.points]
    assert min(xs) == pytest.approx(edge, abs=1e-6)
    assert max(xs) - min(xs) == pytest.approx(490.0, abs=0.01)


def test_the_bridge_stands_on_the_body_where_the_strings_end(tarn):
    (bridge,) = shapes(tarn["drawing_plan_face"], "nut")
    xs = [x for x, _ in bridge.points]
    assert min(xs) == pytest.approx(tarn["bridge_front_edge"])
    pins = [
        mark.centre for mark in tarn["drawing_plan_face"].marks if isinstance(mark, Circle) and mark.layer == "pins"
    ]
    on_bridge = [pin for pin in pins if min(xs) < pin[0] < max(xs)]
    np.testing.assert_allclose([x for x, _ in on_bridge], tarn["bridge_hold_x"], atol=1e-9)


def test_the_face_is_mirrored_for_the_left_hand(tarn, left_tarn):
    def strings(figures):
        return [mark.points for mark in shapes(figures["drawing_plan_face"], "strings")]

    assert [tuple((x, -y) for x, y in run) for run in strings(tarn)] == strings(left_tarn)


def test_a_guitar_without_a_body_is_drawn_as_far_as_it_is_known(example):
    scree = example("scree")
    assert scree["drawing_plan_face"].marks
    assert not shapes(scree["drawing_plan_face"], "cut")
    assert len(shapes(scree["drawing_plan_side"], "nut")) == 2


def test_the_body_is_turned_by_the_necks_set(tarn):
    ring = np.array(shapes(tarn["drawing_plan_side"], "outline")[0].points)
    start, far = ring[0], ring[len(ring) // 2 - 1]
    assert start == pytest.approx((tarn["back_bow_length"], 0.0), abs=1e-9)
    assert math.atan2(start[1] - far[1], far[0] - start[0]) == pytest.approx(tarn["neck_angle_face"], abs=1e-9)


def test_the_heels_face_lies_along_the_body(tarn):
    neck = np.array(shapes(tarn["drawing_plan_side"], "outline")[1].points)
    cap, top = neck[-2], neck[-1]
    assert math.atan2(top[0] - cap[0], top[1] - cap[1]) == pytest.approx(tarn["neck_angle_face"], abs=1e-9)


def test_cuts_are_as_wide_and_as_deep_as_the_stations(any_board):
    cuts = shapes(any_board["drawing_plan_sections"], "outline")
    assert len(cuts) == 2 * len(any_board["carve_stations"])
    for board, neck, station in zip(cuts[::2], cuts[1::2], any_board["carve_stations"], strict=True):
        points = np.array([*board.points, *neck.points])
        assert np.ptp(points[:, 0]) == pytest.approx(2 * station.width)
        assert np.ptp(points[:, 1]) == pytest.approx(2 * station.whole, abs=0.05)


def test_strings_stand_over_the_cut_by_their_height(tarn):
    """Over the first station, fret 1: the string's underside over the crest, and its centre half a gauge higher."""
    circles = [mark for mark in tarn["drawing_plan_sections"].marks if isinstance(mark, Circle)][:6]
    station = tarn["carve_stations"][0]
    board = station.whole - station.depth
    for row, circle in enumerate(circles):
        over = tarn["height_at_zero"][row] + tarn["height_slope"][row] * station.position
        assert circle.centre[1] / 2 - circle.radius / 2 - board == pytest.approx(over)
        assert circle.centre[0] / 2 == pytest.approx(tarn["string_y"][row, 1])


def test_every_line_has_a_length(any_board):
    for name in ("face", "side", "sections"):
        for mark in any_board[f"drawing_plan_{name}"].marks:
            assert not isinstance(mark, Line) or mark.start != mark.end


def test_strings_cross_a_fanned_nut_on_its_zero_line(text_of, derive_text):
    """Plan and head alike: the nut's face and each string's bend lie on the slanted zero line, through the middle."""
    fanned = text_of("tarn").replace("length = 630 ", "bass = 650\ntreble = 630\nsquare_at = 7 ")
    figures = derive_text(fanned, text_of("shop"))
    slant = float(figures["fret_slant"][0])
    assert abs(slant) > 0.05
    bends = [mark.points[1] for mark in shapes(figures["drawing_plan_face"], "strings")]
    assert len(bends) == 6
    assert all(x == pytest.approx(slant * y, abs=1e-9) for x, y in bends)
    (nut,) = shapes(figures["drawing_head"], "nut")
    (x0, y0), (x1, y1) = nut.points[:2]
    assert (x1 - x0) / (y1 - y0) == pytest.approx(slant)
