"""Fanned frets from first principles: each outer string carries its own scale, measured along the string."""

import math
from collections.abc import Callable
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.graph import Figures

Point = tuple[float, float]
Line = tuple[Point, Point]


def share(fret: float) -> float:
    """The part of a string that lies before a fret: halves make an octave of twelve equal steps."""
    return 1 - 0.5 ** (fret / 12)


def along(line: Line, part: float) -> Point:
    """The point that divides a line in a given part."""
    (x0, y0), (x1, y1) = line
    return x0 + part * (x1 - x0), y0 + part * (y1 - y0)


def outer(scale: float, nut_y: float, bridge_y: float, start: float) -> Line:
    """An outer string: it starts at `start` on the zero line and is `scale` long, along itself."""
    return (start, nut_y), (start + math.sqrt(scale**2 - (bridge_y - nut_y) ** 2), bridge_y)


def outer_strings(figures: Figures) -> tuple[Line, Line]:
    """Bass and treble string: the chosen fret square, the zero line crossing the centreline at x = 0."""
    nut, bridge = figures["nut_spread"] / 2, figures["bridge_spread"] / 2
    bass = outer(figures["scale_bass"], -nut, -bridge, 0.0)
    treble = outer(figures["scale_treble"], nut, bridge, 0.0)
    square = share(figures["scale_square_at"])
    apart = along(bass, square)[0] - along(treble, square)[0]
    return outer(figures["scale_bass"], -nut, -bridge, -apart / 2), outer(
        figures["scale_treble"], nut, bridge, apart / 2
    )


def crossing(one: Line, other: Line) -> Point:
    """Where two lines cross, by Cramer's rule."""
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = other
    below = (ax - bx) * (cy - dy) - (ay - by) * (cx - dx)
    first, second = ax * by - ay * bx, cx * dy - cy * dx
    return (first * (cx - dx) - (ax - bx) * second) / below, (first * (cy - dy) - (ay - by) * second) / below


@pytest.fixture(params=[0, 1, 2, 3], ids=["as it is", "square at 0", "square at 12.5", "longer treble"])
def fan(request: pytest.FixtureRequest, text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    text = text_of("scree")
    changes = {
        1: [("square_at = 7 ", "square_at = 0 ")],
        2: [("square_at = 7 ", "square_at = 12.5 ")],
        3: [("bass = 710", "bass = 676")],
    }
    for old, new in changes.get(request.param, []):
        assert old in text
        text = text.replace(old, new)
    return derive_text(text, text_of("shop"))


def test_each_fret_goes_through_both_outer_strings_own_places(fan: Figures) -> None:
    bass, treble = outer_strings(fan)
    for fret in range(fan["scale_frets"] + 1):
        for (x, y), name in ((along(bass, share(fret)), "bass"), (along(treble, share(fret)), "treble")):
            assert fan[f"fret_x_{name}"][fret] == pytest.approx(x, abs=1e-9)
            assert fan["fret_position"][fret] + fan["fret_slant"][fret] * y == pytest.approx(x, abs=1e-9)


def test_places_are_measured_along_each_string(fan: Figures) -> None:
    """From the string's own start the fret lies at its scale times one minus half to the power of an octave's part."""
    half = fan["nut_spread"] / 2
    for name, sign in (("bass", -1), ("treble", 1)):
        scale, x0 = fan[f"scale_{name}"], fan[f"fret_x_{name}"][0]
        for fret in range(1, fan["scale_frets"] + 1):
            x, y = fan[f"fret_x_{name}"][fret], sign * fan["fret_half_spread"][fret]
            assert math.dist((x0, sign * half), (x, y)) == pytest.approx(scale * share(fret), abs=1e-9)


def test_zero_line_crosses_the_centreline_at_nought(fan: Figures) -> None:
    bass, treble = outer_strings(fan)
    assert fan["fret_position"][0] == pytest.approx(0, abs=1e-12)
    assert crossing((bass[0], treble[0]), ((0, 0), (1, 0)))[0] == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("square", [0, 3, 7, 12, 20])
def test_the_chosen_fret_is_square(
    square: int, text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(text_of("scree").replace("square_at = 7 ", f"square_at = {square} "), text_of("shop"))
    angles = figures["fret_angle"]
    assert angles[square] == pytest.approx(0, abs=1e-12)
    assert all(one > other for one, other in pairwise(angles)), "each fret leans further the same way"


def test_a_fractional_square_fret_lies_between_its_neighbours(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """The place of half a fret divides the octave in cents: strings stopped there would meet a square line."""
    figures = derive_text(text_of("scree").replace("square_at = 7 ", "square_at = 6.5 "), text_of("shop"))
    bass, treble = outer_strings(figures)
    assert along(bass, share(6.5))[0] == pytest.approx(along(treble, share(6.5))[0], abs=1e-9)
    assert figures["fret_slant"][6] > 0 > figures["fret_slant"][7]


def test_strings_cross_frets_where_two_lines_cross(fan: Figures) -> None:
    for string, line in enumerate(_strings(fan)):
        for fret, fret_line in enumerate(_frets(fan)):
            x, y = crossing(line, fret_line)
            assert fan["string_x"][string, fret] == pytest.approx(x, abs=1e-8)
            assert fan["string_y"][string, fret] == pytest.approx(y, abs=1e-8)


def test_error_of_each_string_against_its_own_layout(fan: Figures) -> None:
    for string, line in enumerate(_strings(fan)):
        start, end = line
        for fret, fret_line in enumerate(_frets(fan)):
            at = crossing(line, fret_line)
            sounding, wanted = math.dist(at, end), math.dist(start, end) * (1 - share(fret))
            cents = 1200 * math.log2(wanted / sounding)
            assert fan["string_error"][string, fret] == pytest.approx(cents, abs=1e-8)
    assert abs(fan["string_error"][[0, -1]]).max() < 1e-8, "the outer strings are what the frets are laid out by"
    assert abs(fan["string_error"]).max() > 1e-3, "equal gaps do not divide nut and saddle alike"


@given(data=st.data())
def test_strings_that_divide_nut_and_saddle_alike_are_all_in_tune(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    board = data.draw(boards(fanned=True))
    board["nut"]["spacing"] = "equal centres"
    figures = derive_text(as_file(board, "mm"))
    assert abs(figures["string_error"]).max() < 1e-8
    np.testing.assert_allclose(figures["string_fraction"] - figures["fret_fraction"], 0, atol=1e-12)


def _frets(figures: Figures) -> list[Line]:
    bass, treble = outer_strings(figures)
    return [(along(bass, share(fret)), along(treble, share(fret))) for fret in range(figures["scale_frets"] + 1)]


def _strings(figures: Figures) -> list[Line]:
    """Each string from the zero line to the saddle's line, at the spacing that the maker asked for."""
    bass, treble = outer_strings(figures)
    zero, saddle = (treble[0], bass[0]), (treble[1], bass[1])
    gauges, spread = figures["strings_gauges"], figures["nut_spread"]
    gap = (spread - (gauges.sum() - (gauges[0] + gauges[-1]) / 2)) / (len(gauges) - 1)
    across = [0.0]
    for thin, thick in pairwise(gauges):
        across.append(across[-1] + thin / 2 + gap + thick / 2)
    return [(along(zero, place / spread), along(saddle, row / (len(gauges) - 1))) for row, place in enumerate(across)]
