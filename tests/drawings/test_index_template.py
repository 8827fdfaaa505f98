"""The index template: notches where pin and blade want them, allowances the right way, and boards it cannot serve."""

from itertools import pairwise

import pytest
from tests.drawings.conftest import figures_cut

from gramil.drawings.marks import Circle, Line, Polyline, Words

PIN, PLAY, LASER, OFFSET, KERF = 4.0, 0.03, 0.14, 58.3, 0.58
"""The bundled shop's index pin, its play in a notch, the sheet machine's kerf, blade to pin, and the saw's kerf."""


def rail(figures):
    (cut,) = [m for m in figures["drawing_index_template"].marks if isinstance(m, Polyline) and m.layer == "cut"]
    return cut


def notches(figures):
    """Left and right side of each notch, from the rail's edge: upright pieces that start or end at the notched edge."""
    points = rail(figures).points
    foot = min(y for _, y in points)
    ends = {min(x for x, _ in points), max(x for x, _ in points)}
    sides = [a[0] for a, b in pairwise(points) if a[0] == b[0] and foot in (a[1], b[1]) and a[0] not in ends]
    return list(zip(sides[::2], sides[1::2], strict=True))


def test_a_notch_a_fret_past_the_blade_by_the_pin(tarn):
    found = [(left + right) / 2 for left, right in notches(tarn)]
    assert len(found) == 20
    wanted = [630 * (1 - 2 ** (-n / 12)) + OFFSET for n in range(1, 20)]
    assert found[1:] == pytest.approx(wanted)


def test_the_nut_end_is_made_by_the_near_side_of_the_saw(tarn):
    left, right = notches(tarn)[0]
    assert (left + right) / 2 == pytest.approx(OFFSET - KERF / 2)


def test_notches_and_holes_are_drawn_smaller_and_the_rail_larger():
    tarn = figures_cut("tarn", "the drawing")
    assert all(right - left == pytest.approx(PIN + PLAY - LASER) for left, right in notches(tarn))
    drawing = tarn["drawing_index_template"]
    holes = [m for m in drawing.marks if isinstance(m, Circle) and m.layer == "pins"]
    assert [2 * hole.radius for hole in holes] == pytest.approx([PIN - LASER] * 2)
    assert max(y for _, y in rail(tarn).points) == pytest.approx(tarn["blank_width"] / 2 + LASER / 2)


def test_the_rail_goes_round_without_turning_back(tarn):
    along = [x for x, y in rail(tarn).points if y < 0]
    assert along == sorted(along)


def test_every_hole_and_the_board_lie_on_the_rail(tarn):
    drawing, points = tarn["drawing_index_template"], rail(tarn).points
    head, tail = min(x for x, _ in points), max(x for x, _ in points)
    for hole in (m for m in drawing.marks if isinstance(m, Circle)):
        assert head < hole.centre[0] - hole.radius
        assert hole.centre[0] + hole.radius < tail
    (outline,) = [m for m in drawing.marks if isinstance(m, Polyline) and m.layer == "outline"]
    assert all(head < x < tail for x, _ in outline.points)


def test_proof_is_what_calipers_find_on_the_template(tarn):
    centres = [(left + right) / 2 for left, right in notches(tarn)]
    assert tarn["card_proof_octave"] == pytest.approx(centres[12] - centres[0])
    first_hole = min(m.centre[0] for m in tarn["drawing_index_template"].marks if isinstance(m, Circle))
    assert tarn["card_proof_pin"] == pytest.approx(centres[0] - first_hole)


def edge_at_the_notches(figures):
    words = [m.text for m in figures["drawing_index_template"].marks if isinstance(m, Words)]
    (said,) = [text for text in words if "edge at the notches" in text]
    return said.split()[-5]


def test_seen_from_the_back_when_the_saw_cuts_face_down(example):
    down, above = example("tarn"), example("fell")
    assert down["saw_main"].cuts == "face down"
    assert down["drawing_index_template"].seen_from == "the underside"
    assert edge_at_the_notches(down) == "treble"
    assert above["saw_main"].cuts == "from above"
    assert above["drawing_index_template"].seen_from == "the face"
    assert edge_at_the_notches(above) == "bass"


def test_the_machine_does_not_change_hands_but_the_edge_does(tarn, left_tarn):
    assert rail(left_tarn) == rail(tarn)
    assert edge_at_the_notches(left_tarn) == "bass"


def test_a_fanned_board_gets_lines_and_is_told_why(example):
    drawing = example("scree")["drawing_index_template"]
    assert not [m for m in drawing.marks if m.layer == "cut"]
    assert len([m for m in drawing.marks if isinstance(m, Line) and m.layer == "slots"]) == 20
    assert "square slots" in drawing.title
    assert drawing.seen_from == "the face"


def test_frets_closer_than_the_pin_get_lines_too(example):
    figures = example("tarn", ('temperament = "12-equal"', 'temperament = "53-equal"'), ("frets = 19", "frets = 53"))
    assert figures["card_notch_wall"] < 2.1
    close = example("tarn", ('temperament = "12-equal"', 'temperament = "72-equal"'), ("frets = 19", "frets = 60"))
    assert close["card_notch_wall"] < 0
    assert not [m for m in close["drawing_index_template"].marks if m.layer == "cut"]


def test_beside_a_zero_fret_the_nut_end_is_a_line(example):
    figures = example("tarn", ("zero_fret = false", "zero_fret = true"))
    found = notches(figures)
    assert len(found) == 20
    assert sum(found[0]) / 2 == pytest.approx(OFFSET)
    assert any(isinstance(m, Words) and "nut end" in m.text for m in figures["drawing_index_template"].marks)
