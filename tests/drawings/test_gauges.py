"""Gauge cards: true arcs, tongues and gaps, read back from the marks."""

from math import cos, sqrt

import pytest
from tests.drawings.conftest import LASER, figures_cut

from gramil.drawings.marks import Arc, Label, Polyline
from gramil.formatter import Formatter
from gramil.writers.arcs import pieces_of, run_of


def arch_cards(figures):
    """Each station's hollow card and its full twin, as the edges that machines follow."""
    rings = [m for m in figures["drawing_gauges"].marks if isinstance(m, Polyline) and m.layer == "cut"][:6]
    return list(zip(rings[::2], rings[1::2], strict=True))


def arc_of(card):
    """Radius and reach of the one arc that a card's edge is written with."""
    arcs = [piece for piece in pieces_of(run_of(card), "cut") if isinstance(piece, Arc)]
    (radius,) = {round(arc.radius, 3) for arc in arcs}
    ends = [arc.centre[0] + arc.radius * cos(angle) for arc in arcs for angle in (arc.start_angle, arc.end_angle)]
    return radius, max(ends)


def test_arcs_have_the_radius_of_their_station(tarn):
    """Drawn outside the cards, a line lies half a kerf inside the hollow card's arc, and outside the full one's.

    A radius out by 0.04 mm is an arch out by 0.0001 mm.
    """
    twelve = 320 + (390 - 320) * 315.0 / tarn["board_tail_position"]
    for kerf, figures in ((0.0, tarn), (LASER, figures_cut("tarn", "the drawing"))):
        for (hollow, full), radius in zip(arch_cards(figures), (320.0, twelve, 390.0), strict=True):
            assert arc_of(hollow)[0] == pytest.approx(radius - kerf / 2, abs=0.04)
            assert arc_of(full)[0] == pytest.approx(radius + kerf / 2, abs=0.04)


def test_an_arch_runs_to_its_cards_sides(tarn):
    for pair in arch_cards(tarn):
        for card in pair:
            sides = max(x for x, _ in card.points)
            assert arc_of(card)[1] == pytest.approx(sides, abs=0.02)
    assert max(x for x, _ in arch_cards(tarn)[0][0].points) == pytest.approx(45.5 / 2 + 4)


def test_fall_at_the_boards_edge(tarn):
    assert tarn["card_arches"][0].fall == pytest.approx(320 - sqrt(320**2 - 22.75**2))


def test_tongues_stand_out_by_tang_and_clearance(tarn):
    shapes = [m.points for m in tarn["drawing_gauges"].marks if isinstance(m, Polyline) and len(m.points) == 8]
    tongues = [points for points in shapes if points[2][0] - points[1][0] == pytest.approx(19.0)]
    assert [points[2][1] - points[3][1] for points in tongues] == pytest.approx(
        [tarn["slot_depth_setting"], tarn["slot_depth_at_crest"], 1.6 + 0.15]
    )


@pytest.mark.parametrize(("allowed_in", "kerf"), [("the machine", 0.0), ("the drawing", LASER)])
def test_gaps_are_less_by_the_kerf_that_is_in_the_drawing(tarn, allowed_in, kerf):
    assert tarn["card_gaps"][1].thickness == pytest.approx(6.3)
    shapes = [
        m.points
        for m in figures_cut("tarn", allowed_in)["drawing_gauges"].marks
        if isinstance(m, Polyline) and len(m.points) == 8
    ]
    gaps = [points for points in shapes if points[4][0] == pytest.approx(points[5][0])]
    drawn = [points[5][1] - points[4][1] for points in gaps]
    assert drawn[-len(tarn["card_gaps"]) :] == pytest.approx([card.thickness - kerf for card in tarn["card_gaps"]])


def test_a_levelled_board_has_one_edge_card_because_its_edges_agree(example):
    names = [card.name for card in example("fell")["card_gaps"]]
    assert names == ["blank", "crest, end", "treble edge, nut"]


def test_a_flat_board_has_straight_cards(example):
    flat = example("tarn", ('arch = { nut = "320 mm", end = "390 mm" }', 'arch = "flat"'))
    assert all(len(card.points) == 4 for pair in arch_cards(flat) for card in pair)
    assert [card.name for card in flat["card_gaps"]] == ["blank", "crest, end"]


def test_a_flat_boards_cards_say_flat_and_an_arched_ones_its_radius(tarn):
    """The radius of a block is no rule's work: an inch shop reads it without 64ths."""
    for figures, read, wanted in ((figures_cut("mere", "the drawing"), "mm", "flat"), (tarn, "in", "R 12.598 in")):
        labels = [mark for mark in figures["drawing_gauges"].marks if isinstance(mark, Label)]
        said = [f"{mark.before}{Formatter(figures, read).said(mark.figure)}" for mark in labels]
        assert wanted in said
        assert "R flat" not in said
