"""Saddle and bridge in plan: places, walls and angles found again from points."""

import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gramil.graph import Figures


def along(figures: Figures, slope: float) -> tuple[float, float]:
    """A unit vector along a line that runs back by `slope` for each mm toward the treble."""
    length = math.hypot(1, slope)
    return slope / length, 1 / length


@settings(max_examples=40)
@given(data=st.data())
def test_bridge_in_plan(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    """The footprint is a box of its own length and width, alongside the scales' ends, its front ahead of the saddle."""
    figures = derive_text(as_file(data.draw(boards()), "mm"))
    corners = [np.array(each) for each in figures["bridge_outline"].corners]
    front, side = corners[1] - corners[0], corners[2] - corners[1]
    assert np.hypot(*front) == pytest.approx(figures["bridge_length"], abs=1e-9)
    assert front @ side == pytest.approx(0, abs=1e-9)
    slope = figures["string_saddle_slant"]
    assert np.hypot(*side) * math.hypot(1, slope) == pytest.approx(figures["bridge_width"], abs=1e-9)
    middle = (corners[0] + corners[1]) / 2
    assert middle[1] == pytest.approx(0, abs=1e-9)
    assert figures["saddle_position"] - middle[0] == pytest.approx(figures["bridge_front"], abs=1e-9)


@settings(max_examples=40)
@given(data=st.data())
def test_pins_behind_the_saddle(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(as_file(data.draw(boards()), "mm"))
    ux, uy = along(figures, figures["saddle_slant"])
    foot = np.array([figures["saddle_position"], 0.0])
    for pin in range(len(figures["bridge_hold_x"])):
        away = np.array([figures["bridge_hold_x"][pin], figures["bridge_hold_y"][pin]]) - foot
        square = away[0] * uy - away[1] * ux
        wall = square - figures["saddle_thickness"] / 2 - figures["bridge_pin_diameter"] / 2
        assert figures["bridge_hold_wall"][pin] == pytest.approx(wall, abs=1e-9)
    ends = figures["bridge_hold_y"][[0, -1]]
    assert ends[0] - ends[1] == pytest.approx(figures["bridge_hold_spread"])


def test_break_angle_by_hand(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> None:
    """4 mm of saddle and 1 mm of ramp over 13 - 5.3/2 = 10.35 mm is atan(5/10.35) = 25.8 degrees."""
    figures = derive_text(text_of("tarn") + "\n[saddle]\nset_back = 3")
    run = figures["bridge_break_run"]
    np.testing.assert_allclose(run, 10.35, atol=1e-9)
    expected = np.degrees(np.arctan((figures["neck_set_exposed"] + 1.0) / 10.35))
    np.testing.assert_allclose(np.degrees(figures["bridge_break_angle"]), expected, atol=1e-9)
    assert expected.mean() == pytest.approx(23.5, abs=0.3), "3.5 mm showing on the mean"
