"""The board in plan: what is drawn lies where the dimensions say, in order, inside the outline, and turns over."""

from itertools import pairwise

import numpy as np
import pytest

from gramil.drawings.marks import Circle, Label, Line, Polyline, Span, Words, mirrored


def on(drawing, layer, kind):
    return [mark for mark in drawing.marks if isinstance(mark, kind) and mark.layer == layer]


def cross(a, b, p):
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])


def inside(corners, point, slack=1e-9):
    turns = [cross(a, b, point) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    return all(t >= -slack for t in turns) or all(t <= slack for t in turns)


def test_fret_12_lies_half_way_and_the_zero_line_is_as_wide_as_the_nut(tarn):
    board = tarn["drawing_board"]
    (outline,) = on(board, "outline", Polyline)
    assert outline.points[0] == pytest.approx((0.0, -22.75))
    assert outline.points[1] == pytest.approx((0.0, 22.75))
    slots = on(board, "slots", Line)
    assert len(slots) == 19
    assert slots[11].start[0] == pytest.approx(315.0, abs=1e-9)
    assert slots[11].end[0] == pytest.approx(315.0, abs=1e-9)


def test_slots_end_on_the_binding_which_is_square_to_the_tapered_edge(tarn):
    slots = on(tarn["drawing_board"], "slots", Line)
    taper = np.arctan((56 - 45.5) / 2 / 315)
    half = 56 / 2 - 1.8 / np.cos(taper)
    assert slots[11].start[1] == pytest.approx(-half)
    assert slots[11].end[1] == pytest.approx(half)


def test_slots_in_order_on_the_dimensions(any_board):
    drawing = any_board["drawing_board"]
    left = any_board["instrument_handed"] == "left"
    slots = on(drawing, "slots", Line)
    turn = -1 if left else 1
    assert [slot.start[0] for slot in slots] == pytest.approx(list(any_board["core_x_bass"][1:]))
    assert [slot.start[1] for slot in slots] == pytest.approx(list(turn * any_board["core_y_bass"][1:]))
    assert [slot.end[0] for slot in slots] == pytest.approx(list(any_board["core_x_treble"][1:]))
    assert [slot.end[1] for slot in slots] == pytest.approx(list(turn * any_board["core_y_treble"][1:]))
    middles = [(slot.start[0] + slot.end[0]) / 2 for slot in slots]
    assert all(a < b for a, b in pairwise(middles))


def test_slots_markers_and_strings_lie_inside_the_outline(any_board):
    drawing = any_board["drawing_board"]
    corners = list(on(drawing, "outline", Polyline)[0].points)
    ends = [end for slot in on(drawing, "slots", Line) for end in (slot.start, slot.end)]
    centres = [circle.centre for circle in on(drawing, "markers", Circle)]
    assert ends
    assert all(inside(corners, point) for point in ends + centres)
    holes = [hole.centre for hole in on(drawing, "pins", Circle)]
    assert len(holes) == 2
    assert not any(inside(corners, point) for point in holes)


def test_core_lies_inside_the_outline_and_an_unbound_board_has_none(example):
    tarn = example("tarn")["drawing_board"]
    corners = list(on(tarn, "outline", Polyline)[0].points)
    (core,) = on(tarn, "core", Polyline)
    assert all(inside(corners, point) for point in core.points)
    assert not on(example("fell")["drawing_board"], "core", Polyline)


def test_a_zero_fret_has_a_slot_first(example):
    slots = on(example("tarn", ("zero_fret = false", "zero_fret = true"))["drawing_board"], "slots", Line)
    assert len(slots) == 20
    assert slots[0].start[0] == pytest.approx(0.0, abs=1e-12)


def test_nut_set_forward_moves_the_face_and_shows_the_zero_line(example):
    drawing = example("fell")["drawing_board"]
    (nut,) = on(drawing, "nut", Line)
    assert nut.start[0] == pytest.approx(0.012 * 25.4)
    assert any(line.start[0] == line.end[0] == 0.0 for line in on(drawing, "centreline", Line))


def test_markers_half_way_between_frets_two_at_the_octave(tarn):
    circles = on(tarn["drawing_board"], "markers", Circle)
    assert len(circles) == 8
    eleven, twelve = 630 * (1 - 2 ** (-11 / 12)), 315.0
    pair = [circle for circle in circles if circle.centre[1] != 0.0]
    assert [circle.centre[0] for circle in pair] == pytest.approx([(eleven + twelve) / 2] * 2)
    assert pair[0].centre[1] == pytest.approx(-56 / 4)
    assert pair[1].centre[1] == pytest.approx(56 / 4)


def test_side_dots_leave_the_bass_edge(tarn, left_tarn):
    assert len(on(tarn["drawing_board"], "markers", Line)) == 8
    assert all(line.end[1] < line.start[1] < 0 for line in on(tarn["drawing_board"], "markers", Line))
    assert all(line.end[1] > line.start[1] > 0 for line in on(left_tarn["drawing_board"], "markers", Line))


def test_strings_thinnest_first_from_the_zero_line(tarn):
    strings = on(tarn["drawing_board"], "strings", Line)
    assert len(strings) == 6
    assert strings[0].start == pytest.approx((0.0, 38.5 / 2))
    assert strings[-1].start == pytest.approx((0.0, -38.5 / 2))


def test_left_is_the_mirror_of_right(tarn, left_tarn):
    right, left = tarn["drawing_board"], left_tarn["drawing_board"]
    assert left.seen_from == right.seen_from == "the face"
    assert left == mirrored(right)
    treble = on(right, "slots", Line)[6].end
    assert on(left, "slots", Line)[6].end == (treble[0], -treble[1])
    assert treble[1] > 0


def test_turned_over_twice_is_the_same(tarn):
    right = tarn["drawing_board"]
    again = mirrored(mirrored(right))
    assert again.marks[0] == right.marks[0]
    assert [w.at for w in again.marks if isinstance(w, Words)] == [
        pytest.approx(w.at) for w in right.marks if isinstance(w, Words)
    ]


def test_words_turned_over_keep_clear_of_what_they_stood_clear_of(left_tarn):
    (outline,) = on(left_tarn["drawing_board"], "outline", Polyline)
    low = min(y for _, y in outline.points)
    numbers = [w for w in left_tarn["drawing_board"].marks if isinstance(w, Words) and w.text.isdigit()]
    assert len(numbers) == 19
    assert numbers[-1].at[1] + numbers[-1].height < low + 0.2


def test_every_drawing_reads_its_figures_from_addresses_that_exist(any_board):
    names = [name for name in any_board.graph.order if name.startswith("drawing_")]
    assert names
    for name in names:
        for mark in any_board[name].marks:
            if isinstance(mark, Label | Span):
                any_board.at(mark.figure.address)
            if isinstance(mark, Label):
                said = f"{mark.before} {mark.after}".removeprefix(f"{row_of(mark)} ")
                for brace in sorted(any_board["brace_list"], key=lambda each: -len(each.name)):
                    said = said.replace(brace.name, "")
                assert not any(c.isdigit() for c in said), mark


def row_of(label: Label) -> str:
    """The number of the string whose figure a label shows: of two lines for one, each may begin with it."""
    return label.figure.address.rpartition("[")[2].rstrip("]")
