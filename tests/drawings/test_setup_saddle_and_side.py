"""The saddle and the side on their sheets: lines where the scale puts the figures, and no figure on another."""

from itertools import combinations

import numpy as np
import pytest

from gramil.drawings.marks import Label, Line, Polyline, Words
from gramil.prints.whole import Figures
from gramil.writers.extents import bounds
from gramil.writers.plain import plain

from .conftest import figures_for
from .test_setup_drawings import shapes, width

NAMES = ("drawing_setup_saddle", "drawing_setup_side")


def runs_into(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


@pytest.mark.parametrize("name", NAMES)
def test_no_words_or_figures_run_together(any_board: Figures, name: str) -> None:
    drawing = any_board[name]
    said = [mark for mark in plain(drawing, lambda address: "100.00 mm") if hasattr(mark, "text")]
    boxes = [bounds([mark]) for mark in said]
    clashes = [
        (said[one].text, said[other].text)
        for one, other in combinations(range(len(said)), 2)
        if runs_into(boxes[one], boxes[other])
    ]
    assert clashes == []


def test_the_saddle_stands_as_tall_as_its_figures(any_board: Figures) -> None:
    """Its width on paper over its real width is the scale; its top lies that much higher than its foot at a string."""
    drawing = any_board["drawing_setup_saddle"]
    (saddle,) = shapes(drawing, "bone")
    share = width(saddle) / any_board["saddle_length"]
    assert drawing.scale == pytest.approx(share)
    side = -1.0 if any_board["instrument_handed"] == "left" else 1.0
    tops = {round(x, 6): y for x, y in saddle.points if y > 0}
    for y, tall in zip(any_board["string_along_saddle"], any_board["saddle_tall"], strict=True):
        assert tops[round(side * share * float(y), 6)] == pytest.approx(share * float(tall))


def test_strings_break_as_far_behind_the_middle_as_is_said(any_board: Figures) -> None:
    """Down the page is toward the tail."""
    drawing = any_board["drawing_setup_saddle"]
    (middle,) = [m for m in drawing.marks if isinstance(m, Line) and m.layer == "centreline"]
    breaks = sorted(
        ((m.start[0] + m.end[0]) / 2, middle.start[1] - m.start[1])
        for m in drawing.marks
        if isinstance(m, Line) and m.layer == "cut"
    )
    side = -1.0 if any_board["instrument_handed"] == "left" else 1.0
    wanted = sorted(
        (side * float(y) * drawing.scale, float(off) * drawing.scale)
        for y, off in zip(any_board["string_along_saddle"], any_board["saddle_off_line"], strict=True)
    )
    assert np.allclose(breaks, wanted)


def test_treble_is_at_the_plucking_hands_end(tarn: Figures, left_tarn: Figures) -> None:
    def end(figures: Figures) -> float:
        return next(
            m.at[0] for m in figures["drawing_setup_saddle"].marks if isinstance(m, Words) and m.text == "treble"
        )

    assert end(tarn) > 0 > end(left_tarn)


def test_stations_cross_the_side_where_they_lie(tarn: Figures) -> None:
    drawing = tarn["drawing_setup_side"]
    (side,) = [m for m in drawing.marks if isinstance(m, Polyline)]
    assert width(side) == pytest.approx(drawing.scale * tarn["side_length"])
    lines = [m for m in drawing.marks if isinstance(m, Line) and m.layer == "dimensions"]
    assert len(lines) == len(tarn["side_stations"]) == 5
    for line, station in zip(lines, tarn["side_stations"], strict=True):
        assert line.start[0] == line.end[0] == pytest.approx(drawing.scale * station.along)
        assert line.end[1] - line.start[1] == pytest.approx(drawing.scale * station.depth, abs=0.01)
    said = {m.figure.address for m in drawing.marks if isinstance(m, Label)}
    assert {'side_stations["waist"].along', 'side_stations["waist"].depth', 'side_stations["waist"].radius'} <= said
    assert 'side_stations["tail end"].radius' not in said


def test_without_a_body_there_is_no_side_to_draw(example) -> None:
    assert example("scree")["drawing_setup_side"].marks == ()


@pytest.mark.parametrize(("hand", "outer"), [("left", "treble"), ("right", "bass")])
def test_sides_of_their_own_say_from_where_they_are_seen(hand: str, outer: str) -> None:
    """Head to the left, face toward you: nearest to you is a left-handed guitar's treble side, and its outside."""
    figures = figures_for("corrie", ('handed = "left"', f'handed = "{hand}"'))
    said = {mark.text for mark in figures["drawing_setup_side"].marks if isinstance(mark, Words)}
    inner = "bass" if outer == "treble" else "treble"
    assert f"the {outer} side from outside, neck to the left" in said
    assert f"the {inner} side from inside, neck to the left" in said
