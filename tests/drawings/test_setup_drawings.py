"""The small drawings for the sheets: there is one for every sheet, its lines lie where its scale puts the figures."""

import re
from itertools import pairwise

import pytest

from gramil.drawings.marks import Circle, Label, Line, Polyline, Span, Words
from gramil.prints.whole import drawings_of, setups_of
from gramil.writers.extents import bounds
from gramil.writers.plain import plain

LARGEST = (135.0, 75.0)
"""Room for a drawing on a sheet, in mm: the usual paper's width less margins and the figures' own room."""


def shapes(drawing, hatch):
    return [m for m in drawing.marks if isinstance(m, Polyline) and m.hatch == hatch]


def width(shape):
    return max(x for x, _ in shape.points) - min(x for x, _ in shape.points)


def height(shape):
    return max(y for _, y in shape.points) - min(y for _, y in shape.points)


def test_every_sheet_has_its_drawing(any_board):
    wanted = [setup.drawing for setup in setups_of(any_board) if setup.drawing]
    assert wanted
    assert all(any_board[drawing].marks for drawing in wanted)


def test_names_are_kept_apart(any_board):
    names = [drawing.name for drawing in drawings_of(any_board)]
    assert len(names) == len(set(names))


def test_sheet_drawings_fit_a_sheet(any_board):
    for drawing in drawings_of(any_board):
        if drawing.name.startswith("setup-"):
            left, low, right, high = bounds(plain(drawing, lambda address: "62.40 mm"))
            assert right - left <= LARGEST[0], drawing.name
            assert high - low <= LARGEST[1], drawing.name


def test_what_is_not_true_says_so(any_board):
    true = {drawing.name for drawing in drawings_of(any_board) if drawing.scale == 1.0 and drawing.stretch == 1.0}
    assert {"board", "index-template", "gauges"} <= true
    assert not any(name.startswith(("setup-", "section")) for name in true)


def test_no_figure_stands_in_plain_words(any_board):
    for drawing in drawings_of(any_board):
        for mark in drawing.marks:
            if isinstance(mark, Words):
                assert not re.search(r"\d[.,]\d|\d\s*(mm|in)\b", mark.text), (drawing.name, mark.text)


def test_every_address_on_a_sheet_leads_somewhere(any_board):
    for drawing in drawings_of(any_board):
        for mark in drawing.marks:
            if isinstance(mark, Label | Span):
                any_board.at(mark.figure.address)


def test_section_is_twice_life_size(tarn):
    drawing = tarn["drawing_section"]
    (span,) = [m for m in drawing.marks if isinstance(m, Span)]
    assert drawing.scale == 2.0
    assert span.end[0] - span.start[0] == pytest.approx(2 * 56.0)
    (wood,) = shapes(drawing, "across the grain")
    assert height(wood) == pytest.approx(2 * tarn["slot_left_at_crest"][12])
    assert len(shapes(drawing, "bone")) == 2


def test_treble_edge_is_named_on_the_plucking_hands_side(tarn, left_tarn):
    def side(figures):
        return next(
            m.at[0] for m in figures["drawing_section"].marks if isinstance(m, Label) and m.before == "treble edge "
        )

    assert side(tarn) > 0 > side(left_tarn)


def test_blade_stands_as_deep_as_it_is_set(tarn):
    drawing = tarn["drawing_setup_slot"]
    blade = min(shapes(drawing, "metal"), key=width)
    assert width(blade) == pytest.approx(2.5 * 0.58)
    (board,) = shapes(drawing, "along the grain")
    face = min(y for _, y in board.points)
    assert max(y for _, y in blade.points) - face == pytest.approx(2.5 * tarn["slot_depth_setting"])


def test_face_down_the_blade_comes_from_below_and_from_above_otherwise(tarn, example):
    def blade_and_board(figures):
        drawing = figures["drawing_setup_slot"]
        blade = min(shapes(drawing, "metal"), key=width)
        (board,) = shapes(drawing, "along the grain")
        return min(y for _, y in blade.points) < min(y for _, y in board.points)

    assert blade_and_board(tarn)
    assert not blade_and_board(example("fell"))


def test_a_fanned_board_is_not_drawn_on_a_template(example):
    words = [m.text for m in example("scree")["drawing_setup_slot"].marks if isinstance(m, Words)]
    assert not any("template on" in text for text in words)


def test_a_pilot_is_deepened_at_its_ends(example):
    pilot = example("tarn", ('bottom = "straight"', 'bottom = "follows the arch"'))
    addresses = [m.figure.address for m in pilot["drawing_setup_deepen"].marks if isinstance(m, Label)]
    assert "slot_to_deepen[12]" in addresses
    assert "slot_need" in addresses
    (wood,) = shapes(pilot["drawing_setup_deepen"], "across the grain")
    assert len(wood.points) > 10


def test_ledge_is_half_of_cutter_less_bearing(example):
    drawing = example("scree")["drawing_setup_ledge"]
    (wood,) = shapes(drawing, "across the grain")
    (bearing,) = shapes(drawing, "metal")
    assert width(bearing) == pytest.approx(4 * 9.0)
    pattern_edge = min(x for x, _ in bearing.points)
    assert pattern_edge - max(x for x, _ in wood.points) == pytest.approx(4 * (12.7 - 9.0) / 2)


def test_wire_is_drawn_as_measured(tarn):
    drawing = tarn["drawing_setup_wire"]
    profile = max(shapes(drawing, "metal"), key=lambda shape: len(shape.points))
    assert width(profile) == pytest.approx(8 * 2.4)
    assert height(profile) == pytest.approx(8 * (1.15 + 1.6))
    addresses = {m.figure.address for m in drawing.marks if isinstance(m, Label)}
    assert {"wire_crown_width", "wire_tang_depth", "wire_nip_back", "saw_kerf"} <= addresses


def test_levelling_takes_the_wedge_off_the_nut_end(example):
    fell = example("fell")
    drawing = fell["drawing_setup_level"]
    (thick,) = [m for m in drawing.marks if isinstance(m, Polyline) and m.layer == "nut"]
    assert drawing.stretch > 10
    rise = thick.points[-1][1] - thick.points[0][1]
    nut, end = fell["thickness_at_crest"][0], fell["board_thickness"]
    assert rise == pytest.approx(2.5 * (end - nut))
    assert all(b[1] >= a[1] for a, b in pairwise(thick.points))


def test_taper_face_runs_alongside_the_cut_at_the_constant(tarn):
    drawing, view = tarn["drawing_setup_taper"], tarn["piece_squeezed"]
    (face,) = [m for m in drawing.marks if isinstance(m, Line) and m.layer == "nut"]
    outline = next(m for m in drawing.marks if isinstance(m, Polyline) and m.layer == "outline")
    head, tail = outline.points[1], outline.points[2]
    assert face.start[1] - head[1] == pytest.approx(view.up * 62.4)
    assert face.end[1] - tail[1] == pytest.approx(view.up * 62.4)


@pytest.mark.parametrize(("hand", "first"), [("right", "bass"), ("left", "treble")])
def test_the_edge_cut_first_lies_lowest_whatever_the_hand(example, hand, first):
    """Tail ahead and face up, a cutter that turns anticlockwise works against the feed on the right: the lower edge."""
    board = example("scree", ('handed = "left"', f'handed = "{hand}"'))
    drawing, view = board["drawing_setup_taper"], board["piece_squeezed"]
    outline = next(m for m in drawing.marks if isinstance(m, Polyline) and m.layer == "outline")
    lowest = sorted(outline.points, key=lambda point: point[1])[:2]
    ends = board["board_outline"]
    wanted = (ends.start_lower_x, ends.end_lower_x) if first == "bass" else (ends.start_upper_x, ends.end_upper_x)
    assert sorted(x for x, _ in lowest) == pytest.approx([view.at(x, 0.0)[0] for x in wanted])
    across = board["nut_width"] + board["board_growth"] * wanted[0]
    cosine = 1 / (1 + (board["board_growth"] / 2) ** 2) ** 0.5
    assert board["taper_edge_nut"] == pytest.approx(62.4 - across * cosine)


def test_the_taper_s_steps_name_the_edge_that_the_drawing_shows(tarn, left_tarn):
    from gramil.formatter import Formatter

    for figures, first in ((tarn, "bass"), (left_tarn, "treble")):
        steps = [Formatter(figures).filled(step) for step in figures["setup_taper"].steps]
        assert steps[0].startswith(f"The {first} edge first, face up")


def test_layout_turns_over_for_the_left_hand_and_an_edge_seen_from_its_side_does_not(tarn, left_tarn):
    def dots(figures):
        return [m.centre for m in figures["drawing_setup_markers"].marks if isinstance(m, Circle)]

    right, left = dots(tarn), dots(left_tarn)
    assert left[-1] == right[-1]
    assert [(x, -y) for x, y in right[:-1]] == left[:-1]


def test_a_board_without_markers_says_so(example):
    bare = example("tarn", ("frets = [3, 5, 7, 9, 12, 15, 17]", "frets = []"), ("double = [12]", "double = []"))
    (words,) = bare["drawing_setup_markers"].marks
    assert words.text == "No markers on this board."


def test_widths_near_each_other_stand_at_two_heights(example, tarn):
    near = example("tarn", ('width_at = "fret 12"', 'width_at = "fret 19"'))

    def height_of(figures, address):
        (label,) = [
            m for m in figures["drawing_setup_layout"].marks if isinstance(m, Label) and m.figure.address == address
        ]
        return label.at[1]

    assert height_of(near, "board_width") >= height_of(near, "board_width_at_tail") + 3
    assert height_of(tarn, "board_width") == height_of(tarn, "board_width_at_tail")


def test_a_tang_that_is_not_nipped_has_no_figure_for_it(example):
    """An unbound board's tangs run right through: no 0.00 mm is drawn."""
    marks = example("mere")["drawing_setup_wire"].marks
    assert "wire_nip_back" not in {m.figure.address for m in marks if isinstance(m, Label | Span)}
    assert any("runs to the finished edge" in m.text for m in marks if isinstance(m, Words))
