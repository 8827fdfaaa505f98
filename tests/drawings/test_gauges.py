"""Gauge cards: true arcs, tongues and gaps, read back from the marks."""

from math import asin, cos, pi, sqrt

import pytest

from gramil.drawings.marks import Arc, Line, Polyline


def test_arcs_have_the_radius_of_their_station(tarn):
    arcs = [m for m in tarn["drawing_gauges"].marks if isinstance(m, Arc)]
    twelve = 320 + (390 - 320) * 315.0 / tarn["board_tail_position"]
    assert [arc.radius for arc in arcs] == pytest.approx([320.0, twelve, 390.0])
    half = asin((45.5 / 2 + 4) / 320)
    assert (arcs[0].start_angle, arcs[0].end_angle) == pytest.approx((pi / 2 - half, pi / 2 + half))


def test_an_arc_ends_on_its_cards_sides(tarn):
    marks = tarn["drawing_gauges"].marks
    boxes = [m for m in marks if isinstance(m, Polyline) and m.closed][:3]
    for arc, box in zip((m for m in marks if isinstance(m, Arc)), boxes, strict=True):
        right = arc.centre[0] + arc.radius * cos(arc.start_angle)
        left = arc.centre[0] + arc.radius * cos(arc.end_angle)
        assert (left, right) == pytest.approx((box.points[0][0], box.points[1][0]))


def test_fall_at_the_boards_edge(tarn):
    assert tarn["card_arches"][0].fall == pytest.approx(320 - sqrt(320**2 - 22.75**2))


def test_tongues_stand_out_by_tang_and_clearance(tarn):
    shapes = [m.points for m in tarn["drawing_gauges"].marks if isinstance(m, Polyline) and len(m.points) == 8]
    tongues = [points for points in shapes if points[2][0] - points[1][0] == pytest.approx(19.0)]
    assert [points[2][1] - points[3][1] for points in tongues] == pytest.approx(
        [tarn["slot_depth_setting"], tarn["slot_depth_at_crest"], 1.6 + 0.15]
    )


def test_gaps_are_less_by_the_machines_kerf(tarn):
    for card in tarn["card_gaps"]:
        assert card.drawn == pytest.approx(card.thickness - 0.14)
    assert tarn["card_gaps"][1].thickness == pytest.approx(6.3)
    shapes = [m.points for m in tarn["drawing_gauges"].marks if isinstance(m, Polyline) and len(m.points) == 8]
    gaps = [points for points in shapes if points[4][0] == points[5][0]]
    drawn = [points[5][1] - points[4][1] for points in gaps]
    assert drawn[-len(tarn["card_gaps"]) :] == pytest.approx([card.drawn for card in tarn["card_gaps"]])


def test_a_levelled_board_has_one_edge_card_because_its_edges_agree(example):
    names = [card.name for card in example("fell")["card_gaps"]]
    assert names == ["blank", "crest, end", "treble edge, nut"]


def test_a_flat_board_has_straight_cards(example):
    flat = example("tarn", ('arch = { nut = "320 mm", end = "390 mm" }', 'arch = "flat"'))
    marks = flat["drawing_gauges"].marks
    assert not [m for m in marks if isinstance(m, Arc)]
    assert len([m for m in marks if isinstance(m, Line) and m.layer == "cut"]) == 3
    assert [card.name for card in flat["card_gaps"]] == ["blank", "crest, end"]
