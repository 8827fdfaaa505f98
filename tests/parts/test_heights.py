"""Heights of the strings: over crowns, at nut and saddle, straight neck and with relief, strung and before."""

import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.graph import Figures

Derive = Callable[..., Figures]

HEIGHTS = """
[heights]
action_bass = 2.5
action_treble = 1.9
relief = {relief}
nut_over = "{over}"
nut_bass = 0.6
nut_treble = 0.4
dressing_loss = 0.1
body_rise = 0.75
[saddle]
set_back = [0, 0, 0, 0, 0, 0]
"""
"""No set-back: fret 12 is half way from nut to saddle, for figures worked by hand."""


@pytest.fixture
def tarn(derive_text: Derive, text_of: Callable[[str], str]) -> Callable[..., Figures]:
    """Tarn (630 mm, join 13) with heights: relief, where the nut's height is given, and other changes to its text."""

    def make(relief: float = 0.0, over: str = "the zero line", *changes: tuple[str, str]) -> Figures:
        text = text_of("tarn") + HEIGHTS.format(relief=relief, over=over)
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        return derive_text(text)

    return make


CYLINDER = ('arch = { nut = "320 mm", end = "390 mm" }', "arch = 400")
FLAT = ('arch = { nut = "320 mm", end = "390 mm" }', 'arch = "flat"')


def test_saddle_of_a_straight_neck_is_crown_twice_action_less_nut_and_the_arch(tarn: Callable[..., Figures]) -> None:
    """c + 2 a - n - 2 s12 + s0, fret 12 half way, with the arch's falls worked from the radius here."""
    figures = tarn(0.0, "the zero line", CYLINDER)
    c = figures["wire_crown_height"] - 0.1
    for string, (a, n) in ((0, (1.9, 0.4)), (5, (2.5, 0.6))):
        s0, s12 = (400 - math.sqrt(400**2 - y**2) for y in (38.5 / 2, (38.5 + 56.5) / 4))
        assert figures["height_at_saddle"][string] == pytest.approx(c + 2 * a - n - 2 * s12 + s0, abs=1e-9)
        chord = figures["height_over_chord"][string]
        assert chord == pytest.approx(2 * a - n + _crown_line_error(figures, string), abs=1e-9)


def _crown_line_error(figures: Figures, string: int) -> float:
    """How much higher the crowns at fret 12 stand over their chord from nut to join, taken on to the saddle."""
    tops, x = figures["crown_top"][string], figures["string_x"][string]
    chord = tops[0] + (tops[13] - tops[0]) * x[12] / x[13]
    return float(tops[12] - chord) * 2


def test_over_its_crowns_a_flat_straight_board_gives_twice_the_action_less_the_nut(
    tarn: Callable[..., Figures],
) -> None:
    figures = tarn(0.0, "the zero line", FLAT)
    np.testing.assert_allclose(figures["height_over_chord"][[0, 5]], [2 * 1.9 - 0.4, 2 * 2.5 - 0.6], rtol=1e-12)
    np.testing.assert_allclose(figures["height_over_crown"][[0, 5], 0], [0.4, 0.6], rtol=1e-12)


@pytest.mark.parametrize("over", ["fret 1", "the zero line"])
@pytest.mark.parametrize("relief", [0.0, 0.2])
def test_the_heights_asked_for_are_the_heights_there(tarn: Callable[..., Figures], over: str, relief: float) -> None:
    figures = tarn(relief, over)
    over_crowns = figures["height_over_crown"]
    np.testing.assert_allclose(over_crowns[[0, 5], 12], [1.9, 2.5], rtol=1e-12)
    np.testing.assert_allclose(over_crowns[[0, 5], 1 if over == "fret 1" else 0], [0.4, 0.6], rtol=1e-12)
    share = (figures["string_y"][0, 12] - figures["string_y"][2, 12]) / (2 * figures["string_y"][0, 12])
    assert over_crowns[2, 12] == pytest.approx(1.9 + 0.6 * share, abs=1e-12)


def test_relief_is_the_gap_that_a_straightedge_shows(tarn: Callable[..., Figures]) -> None:
    """The crowns' line drawn here from three of the board's own rises, half way between fret 1 and fret 13."""
    figures = tarn(0.2, "fret 1", FLAT)
    x, rise = figures["string_x"][0], figures["relief_rise"][0]
    middle = (x[1] + x[13]) / 2
    three = [4, 6, 8]
    at_middle = np.polyval(np.polyfit(x[three], rise[three], 2), middle)
    assert (rise[1] + rise[13]) / 2 - at_middle == pytest.approx(0.2, abs=1e-9)
    assert rise[13] == pytest.approx(0.0, abs=1e-12)
    assert (rise[13:] == 0).all()


def test_relief_lowers_the_saddle_on_the_body(tarn: Callable[..., Figures]) -> None:
    """Body at fret 12, flat: action and nut kept, relief lifts the nut by k L^2 / 8, and the saddle sinks as much."""
    join = ("join = 13", "join = 12")
    straight, bowed = tarn(0.0, "the zero line", FLAT, join), tarn(0.2, "the zero line", FLAT, join)
    span = 315 - 630 * (1 - 2 ** (-1 / 12))
    lift = 8 * 0.2 / span**2 * 315**2 / 2
    np.testing.assert_allclose(straight["height_at_saddle"] - bowed["height_at_saddle"], lift, rtol=1e-9)


def test_before_stringing_the_saddle_is_set_lower_by_what_the_body_gives(tarn: Callable[..., Figures]) -> None:
    figures = tarn(0.2, "fret 1")
    given_way = figures["height_at_saddle"] - figures["height_at_saddle_unloaded"]
    np.testing.assert_allclose(given_way, 2 * 0.75, rtol=1e-12)


def test_with_a_zero_fret_the_strings_lie_on_its_crown(tarn: Callable[..., Figures]) -> None:
    figures = tarn(0.2, "fret 1", ("zero_fret = false", "zero_fret = true "))
    np.testing.assert_allclose(figures["height_over_crown"][:, 0], 0.0, atol=1e-12)
    drop = figures["limit_zero_fret_drop"]
    np.testing.assert_allclose(figures["nut_slot_over_board"], figures["crown_height"] - drop, rtol=1e-12)


def test_nut_slots_follow_the_arch(tarn: Callable[..., Figures]) -> None:
    figures = tarn(0.0, "the zero line", CYLINDER)
    falls = 400 - np.sqrt(400**2 - figures["string_y_nut"] ** 2)
    c = figures["wire_crown_height"] - 0.1
    assert figures["nut_slot_over_crest"][0] == pytest.approx(c + 0.4 - falls[0], abs=1e-9)
    assert figures["nut_slot_over_crest"][5] == pytest.approx(c + 0.6 - falls[5], abs=1e-9)
    tallest = (figures["nut_slot_over_crest"] + figures["strings_gauges"] / 2).max()
    assert figures["nut_slot_blank"] == pytest.approx(tallest + 6.3, abs=1e-9)


def test_a_nut_set_forward_has_its_slots_on_the_same_string(tarn: Callable[..., Figures]) -> None:
    forward, back = (tarn(0.0, "fret 1", ("set_forward = 0 ", f"set_forward = {each} ")) for each in (0.5, 0))
    risen = forward["nut_slot_over_board"] - back["nut_slot_over_board"]
    np.testing.assert_allclose(risen, 0.5 * back["height_slope"], rtol=1e-9)


@given(data=st.data())
def test_strings_are_straight_and_meet_what_was_asked(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Derive
) -> None:
    figures = derive_text(as_file(data.draw(boards()), "mm"))
    z = figures["crown_top"] + figures["height_over_crown"]
    x = figures["string_x"]
    for string in range(figures["strings_count"]):
        ends = [*x[string, [1, 12]], figures["height_saddle_x"][string]]
        heights = [*z[string, [1, 12]], figures["height_at_saddle"][string]]
        slope, level = np.polyfit(ends, heights, 1)
        np.testing.assert_allclose(z[string], level + slope * x[string], atol=1e-9)
    np.testing.assert_allclose(figures["height_over_crown"][[0, -1], 12], [1.8, 2.4], atol=1e-9)
