"""Side views of neck and heights, and the nut's rule: their coordinates say what the figures say."""

import math

import numpy as np
import pytest

from gramil.drawings.marks import Circle, Line, Polyline


def on(drawing, layer, kind):
    return [mark for mark in drawing.marks if mark.layer == layer and isinstance(mark, kind)]


def along(line, x):
    """Height of a line at x."""
    (x0, y0), (x1, y1) = line.start, line.end
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def test_the_neck_set_is_drawn_to_its_scale_and_stretch(any_board):
    drawing = any_board["drawing_neck_set"]
    across, up = drawing.scale, drawing.scale * drawing.stretch
    (string,), (edge,) = on(drawing, "strings", Line), on(drawing, "hidden", Line)
    bridge, saddle = (mark for mark in on(drawing, "outline", Polyline) if mark.hatch in ("across the grain", "bone"))
    top = max(y for _, y in bridge.points)
    wanted = any_board["neck_set_dome_rise"] + any_board["bridge_thickness"]
    assert top == pytest.approx(up * wanted, abs=1e-9)
    assert max(y for _, y in saddle.points) - top == pytest.approx(up * any_board["saddle_exposed"], abs=1e-6)
    assert string.end[1] == pytest.approx(max(y for _, y in saddle.points), abs=1e-9)
    over = along(edge, string.end[0]) - top
    assert over == pytest.approx(up * any_board["neck_set_straightedge"], abs=0.02)
    angle = math.atan2((edge.end[1] - edge.start[1]) / up, (edge.end[0] - edge.start[0]) / across)
    assert angle == pytest.approx(any_board["neck_angle_target"], abs=1e-9)


def test_the_board_rests_on_the_rim_at_the_join(any_board):
    drawing = any_board["drawing_neck_set"]
    (board,) = (mark for mark in on(drawing, "outline", Polyline) if mark.hatch == "along the grain")
    _, _, tail, nut = board.points
    join = drawing.scale * any_board["back_bow_length"]
    height = nut[1] + (tail[1] - nut[1]) * (join - nut[0]) / (tail[0] - nut[0])
    assert height == pytest.approx(0.0, abs=0.05)


def test_strings_over_their_frets(any_board):
    drawing = any_board["drawing_heights"]
    up, frets = drawing.scale * drawing.stretch, any_board["scale_frets"]
    crowns = on(drawing, "slots", Line)
    for row, string in enumerate(on(drawing, "strings", Line)):
        own = crowns[row * len(crowns) // 2 : (row + 1) * len(crowns) // 2][-frets:]
        number = (0, -1)[row]
        gaps = [along(string, crown.end[0]) - crown.end[1] for crown in own]
        np.testing.assert_allclose(gaps, up * any_board["height_over_crown"][number, 1:], atol=1e-9)


def test_the_neck_from_the_side_is_true(any_board):
    drawing = any_board["drawing_neck"]
    assert (drawing.scale, drawing.stretch) == (1.0, 1.0)
    board, shaft, curve, head = on(drawing, "outline", Polyline)
    assert curve.points[0] == shaft.points[-1]
    assert curve.points[0][0] == pytest.approx(any_board["carve_heel_start"], abs=1e-9)
    assert curve.points[-1][0] == pytest.approx(any_board["carve_heel_cap_start"], abs=1e-9)
    assert max(y for _, y in board.points) == 0
    first = float(any_board["fret_position"][1])
    assert (first, -any_board["neck_depth_first"]) in [pytest.approx(point, abs=1e-9) for point in shaft.points]
    (x0, y0), (x1, y1) = head.points[:2]
    assert math.atan2(y0 - y1, x0 - x1) == pytest.approx(any_board["head_angle"], abs=1e-12)
    heel = on(drawing, "outline", Line)[0]
    assert heel.start[0] - heel.end[0] == pytest.approx(any_board["heel_wedge"], abs=1e-12)
    assert heel.start[1] - heel.end[1] == pytest.approx(any_board["neck_heel_depth"], abs=1e-12)


def test_the_head_runs_into_the_shaft(any_board):
    _, shaft, _, head = on(any_board["drawing_neck"], "outline", Polyline)
    assert head.points[-1] == shaft.points[0]
    (x, y), (root, level) = head.points[-2], shaft.points[0]
    lean = any_board["head_angle"]
    start = (-any_board["head_nut_thickness"], any_board["head_veneer"] - any_board["thickness_at_crest"][0])
    back = start[1] + (root - start[0]) * math.tan(lean) - any_board["head_thickness"] / math.cos(lean)
    if back < level:
        assert (x, y) == pytest.approx((root, back), abs=1e-9), "a thick head ends in a step at the zero line"
    else:
        assert y == pytest.approx(level, abs=1e-9)
        assert x < root


def test_a_thick_head_ends_in_a_step(example):
    """20 mm of head at 15 degrees under a neck that is 15 mm deep without its board."""
    _, shaft, _, head = on(example("mere")["drawing_neck"], "outline", Polyline)
    assert head.points[-2][0] == pytest.approx(shaft.points[0][0], abs=1e-9)
    assert head.points[-2][1] < shaft.points[0][1] - 1


def test_the_nut_s_rule_marks_every_string(tarn, left_tarn):
    for figures, side in ((tarn, 1), (left_tarn, -1)):
        box, *_ = on(figures["drawing_nut"], "cut", Polyline)
        ticks = [line.start[0] for line in on(figures["drawing_nut"], "slots", Line)]
        np.testing.assert_allclose(ticks, side * figures["string_y_nut"], atol=1e-12)
        assert max(x for x, _ in box.points) - min(x for x, _ in box.points) == figures["nut_width"]


def test_strings_lie_in_their_slots_over_the_board(any_board):
    drawing = any_board["drawing_setup_nut"]
    circles = on(drawing, "strings", Circle)
    bottoms = [circle.centre[1] - circle.radius for circle in circles]
    np.testing.assert_allclose(bottoms, drawing.scale * any_board["nut_slot_over_crest"], atol=1e-9)
    np.testing.assert_allclose([2 * each.radius for each in circles], drawing.scale * any_board["strings_gauges"])


def test_a_neck_that_joins_near_the_nut_is_still_drawn(example):
    figures = example("tarn", ("join = 13 ", "join = 3 "))
    for name in ("drawing_neck", "drawing_neck_set", "drawing_heights"):
        assert figures[name].marks
