"""The neck's drawings, measured on their marks: cards hold the back, flats lie outside it, the scarf has its length."""

import math
from itertools import pairwise

import numpy as np
import pytest

from gramil.drawings.marks import Circle, Label, Line, Polyline, Span, Words
from gramil.writers.extents import bounds
from gramil.writers.plain import plain


def shapes(drawing, layer):
    return [mark for mark in drawing.marks if isinstance(mark, Polyline) and mark.layer == layer]


def test_a_card_is_hollow_to_the_neck_at_its_station(any_board):
    cards = shapes(any_board["drawing_neck_gauges"], "cut")
    assert len(cards) == 3
    for card, station in zip(cards, any_board["carve_stations"], strict=True):
        points = np.array(card.points)
        top = points[0, 1]
        hollow = points[1:-3]
        a, d = station.width / 2, station.depth
        np.testing.assert_allclose((hollow[:, 0] / a) ** 2 + ((top - hollow[:, 1]) / d) ** 2, 1.0, atol=1e-9)
        assert hollow[:, 1].min() == pytest.approx(top - d, abs=0.02)
        assert np.ptp(hollow[:, 0]) == pytest.approx(station.width)


def test_cards_lie_apart(any_board):
    cards = [np.array(card.points) for card in shapes(any_board["drawing_neck_gauges"], "cut")]
    assert all(one[:, 1].min() > other[:, 1].max() for one, other in pairwise(cards))


def test_flats_are_drawn_twice_life_size_outside_the_curve(any_board):
    drawing = any_board["drawing_neck_facets"]
    assert drawing.scale == 2.0
    flats, curves = shapes(drawing, "outline"), shapes(drawing, "cut")
    for flat, curve, station in zip(flats, curves, any_board["carve_stations"], strict=True):
        corners, inside = np.array(flat.points), np.array(curve.points)
        assert np.ptp(corners[:, 0]) == pytest.approx(2 * station.width)
        assert np.ptp(corners[:, 1]) == pytest.approx(2 * station.depth)
        edges = np.roll(corners, -1, axis=0) - corners
        turn = np.sign(edges[0, 0] * edges[1, 1] - edges[0, 1] * edges[1, 0])
        for corner, edge in zip(corners, edges, strict=True):
            away = edge[0] * (inside[:, 1] - corner[1]) - edge[1] * (inside[:, 0] - corner[0])
            assert (turn * away >= -1e-6).all()


def test_the_scarf_is_as_long_as_its_figure(any_board):
    (cut,) = [mark for mark in any_board["drawing_neck_plank"].marks if isinstance(mark, Line) and mark.layer == "cut"]
    length = math.dist(cut.start, cut.end)
    assert length == pytest.approx(any_board["head_scarf_length"])


@pytest.mark.parametrize("scarf", ["on the head", "under the board"])
def test_both_pieces_of_the_scarf_are_as_thick_as_the_plank(example, scarf):
    figures = example("tarn", ("[scale]", f'[carve]\nscarf = "{scarf}"\n[scale]'))
    _, head = shapes(figures["drawing_neck_plank"], "hidden")[:2]
    start, top, low, _ = (np.array(point) for point in head.points)
    along, across = top - start, low - top
    assert along @ across == pytest.approx(0.0, abs=1e-9)
    assert np.hypot(*across) == pytest.approx(20.0)
    assert math.atan2(-along[1], -along[0]) == pytest.approx(math.radians(14))


def test_the_carved_neck_lies_in_its_wood(any_board):
    drawing = any_board["drawing_neck_plank"]
    (carved,) = shapes(drawing, "outline")
    wood = np.concatenate([np.array(mark.points) for mark in shapes(drawing, "hidden")])
    neck = np.array(carved.points)
    assert wood[:, 0].min() - 1e-6 <= neck[:, 0].min()
    assert neck[:, 0].max() <= wood[:, 0].max() + 1e-6
    assert wood[:, 1].min() - 1e-6 <= neck[:, 1].min()


def test_the_head_is_mirrored_for_the_left_hand(tarn, left_tarn):
    def holes(figures):
        return [mark.centre for mark in figures["drawing_head"].marks if isinstance(mark, Circle)]

    assert [(x, -y) for x, y in holes(tarn)] == holes(left_tarn)
    assert holes(tarn)[0] == pytest.approx((-42.0, 22.25))


def test_a_head_without_an_outline_says_so(example, tarn):
    def words(figures):
        return " ".join(mark.text for mark in figures["drawing_head"].marks if isinstance(mark, Words))

    assert "no outline described" in words(example("scree"))
    assert "no outline described" not in words(tarn)
    (edge,) = shapes(tarn["drawing_head"], "cut")
    assert min(x for x, _ in edge.points) == pytest.approx(-165, abs=1e-6)


def test_pieces_on_the_cutting_plan_are_in_proportion(example):
    figures = example("tarn")
    boxes = shapes(figures["drawing_setup_neck_blank"], "cut")
    scale = {
        round(np.ptp(np.array(box.points)[:, 0]) / piece.length, 9)
        for box, piece in zip(boxes, figures["plank_layout"], strict=True)
    }
    assert len(scale) == 1


@pytest.mark.parametrize("name", ["gauges", "facets", "plank"])
def test_figures_do_not_lie_on_one_another(any_board, name):
    drawing = any_board[f"drawing_neck_{name}"]
    for mark in drawing.marks:
        if isinstance(mark, Label | Span):
            any_board.at(mark.figure.address)
    left, low, right, high = bounds(plain(drawing, lambda address: "62.40 mm"))
    assert right - left < 700
    assert high - low < 300


def test_no_rod_no_scarf(example):
    figures = example(
        "tarn", ("[scale]", '[neck]\nrod = "none"\n[carve]\nscarf = "one piece"\nheel = "solid"\n[scale]')
    )
    assert not shapes(figures["drawing_neck_plank"], "slots")
    assert len(shapes(figures["drawing_neck_plank"], "hidden")) == 1
    assert figures["setup_neck_rod"].closed
    assert figures["setup_neck_scarf"].closed
