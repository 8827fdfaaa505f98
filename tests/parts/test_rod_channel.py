"""The rod's channel: both ends by hand for either access, and the wood about it."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures

JOIN = 630 * (1 - 2 ** (-13 / 12))
Rodded = Callable[..., Figures]


@pytest.fixture
def rodded(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Rodded:
    return lambda carve="", neck="": derive_text(f"{text_of('tarn')}\n[carve]\n{carve}\n[neck]\n{neck}\n")


def test_turned_at_the_head(rodded: Rodded) -> None:
    """The nut's back is 5 behind the zero line, the pocket 20 behind that; it ends 10 before the body."""
    figures = rodded()
    assert figures["rod_start"] == pytest.approx(-25.0)
    assert figures["rod_end"] == pytest.approx(JOIN - 10)
    assert figures["rod_blind_left"] == pytest.approx(18 + 10)
    assert figures["rod_unreached"] == pytest.approx(10)


def test_turned_at_the_soundhole(rodded: Rodded) -> None:
    figures = rodded('rod_access = "soundhole"\nrod_clear = 12')
    assert (figures["rod_start"], figures["rod_end"]) == pytest.approx((12.0, JOIN + 18))
    assert (figures["rod_blind_left"], figures["rod_unreached"]) == pytest.approx((12.0, 12.0))
    assert math.isnan(figures["rod_under_head"])


def test_a_rod_of_a_given_length(rodded: Rodded) -> None:
    assert rodded("rod_length = 300")["rod_end"] == pytest.approx(275.0)
    assert rodded('rod_length = 300\nrod_access = "soundhole"')["rod_start"] == pytest.approx(JOIN + 18 - 300)


def test_board_over_the_rod_is_what_slots_leave_there(rodded: Rodded) -> None:
    figures = rodded("rod_length = 200")
    over, left = figures["rod_over"], figures["slot_left_at_crest"]
    inside = figures["fret_position"] <= 175.0
    inside[0] = False
    np.testing.assert_allclose(over[inside], left[inside])
    assert np.isnan(over[~inside]).all()
    assert np.isnan(over[0])


def test_wood_about_the_corners_of_a_half_circle(rodded: Rodded) -> None:
    """A neck as deep as half its width at fret 1 is a half circle there; the rod 6 wide and 9.5 deep."""
    half = (45.5 + 10.5 / 315 * 630 * (1 - 2 ** (-1 / 12))) / 2
    board = rodded()["thickness_at_crest"][1]
    figures = rodded(neck=f"depth_at_1 = {float(half + board)!r}\ndepth_at_10 = 40")
    assert figures["rod_corner"][1] == pytest.approx(half - math.hypot(3, 9.5), abs=1e-4)


def test_wood_under_the_pocket(rodded: Rodded) -> None:
    """A head of 15 with its veneer of 2 is 13 / cos 14 = 13.398 thick, upright; less 9.5."""
    assert rodded()["rod_under_head"] == pytest.approx(3.898, abs=0.001)


def test_no_rod(rodded: Rodded) -> None:
    figures = rodded(neck='rod = "none"')
    for name in ("rod_start", "rod_end", "rod_blind_left", "rod_unreached", "rod_under_head"):
        assert math.isnan(figures[name]), name
    assert np.isnan(figures["rod_over"]).all()
    assert np.isnan(figures["rod_corner"]).all()
    names = {each.name for name in figures if name.startswith("finding_rod") for each in figures[name]}
    assert names == set()
