"""The neck's set: target, what is made and what is predicted agree, whatever the instrument."""

import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.graph import Figures, Pin, derive

Derive = Callable[..., Figures]


@pytest.fixture
def tarn(derive_text: Derive, text_of: Callable[[str], str]) -> Callable[..., Figures]:
    """Tarn with more tables at its end, and changes to its text."""

    def make(more: str = "", *changes: tuple[str, str]) -> Figures:
        text = text_of("tarn")
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        return derive_text(text + more)

    return make


@given(data=st.data())
def test_the_target_makes_bridge_and_saddle_agree(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Derive
) -> None:
    """Turn the board by the angle here, point by point, and see where the saddle's top comes to stand."""
    figures = derive_text(as_file(data.draw(boards()), "mm"))
    angle = figures["neck_angle_target"]
    run, height = figures["neck_set_run"].mean(), figures["height_at_saddle_unloaded"].mean()
    turned = complex(run, height) * complex(math.cos(angle), math.sin(angle))
    over_rim = figures["neck_set_board_at_join"] + turned.imag
    wanted = figures["neck_set_dome_rise"] + figures["bridge_thickness"] + figures["saddle_exposed"]
    assert over_rim == pytest.approx(wanted, abs=1e-9)
    assert figures["neck_set_exposed"].mean() == pytest.approx(figures["saddle_exposed"], abs=1e-9)
    np.testing.assert_allclose(figures["neck_set_action"], figures["action_wanted"], atol=1e-9)


def test_a_neck_set_as_it_should_be_needs_nothing(tarn: Callable[..., Figures]) -> None:
    over = float(tarn()["neck_set_straightedge"])
    figures = tarn(f"\n[neck]\nstraightedge = {over!r}")
    assert figures["neck_angle_made"] == pytest.approx(figures["neck_angle_target"], abs=1e-12)
    assert figures["heel_wedge_to_take"] == pytest.approx(0.0, abs=1e-9)


def test_what_the_heel_gives_is_what_the_straightedge_lacked(tarn: Callable[..., Figures]) -> None:
    """The wedge, carried out over the body, lifts the straightedge at the saddle by what was missing there."""
    figures = tarn("\n[neck]\nstraightedge = 0")
    lacking = figures["neck_set_straightedge"]
    lifted = figures["heel_wedge_to_take"] / figures["neck_heel_depth"] * figures["neck_set_run_mean"]
    assert lifted == pytest.approx(lacking, rel=2e-3)
    assert figures["neck_set_exposed"].mean() == pytest.approx(figures["saddle_exposed"] - lacking, rel=2e-3)


def test_a_measured_angle_takes_the_place_of_the_targets(tarn: Callable[..., Figures]) -> None:
    plain = tarn()
    pins = {"neck_angle_made": Pin(plain["neck_angle_target"] - 0.002, "as measured")}
    pinned = derive(plain.graph, plain.base, plain.origins, pins, plain.lengths)
    moved = plain["neck_set_exposed"] - pinned["neck_set_exposed"]
    np.testing.assert_allclose(moved, 0.002 * plain["neck_set_run_mean"], rtol=1e-2)
    assert pinned["heel_wedge_to_take"] > 0
    assert pinned["neck_angle_target"] == plain["neck_angle_target"]


def test_levelling_the_underside_turns_the_face_and_not_the_neck(tarn: Callable[..., Figures]) -> None:
    """The crest plane's angle moves only as the board's thickness at the join does; the face takes up the wedge."""
    figures = tarn("", ("level_underside = false", "level_underside = true "))
    falls = [figures["arch_fall_at_tail_end"], figures["arch_fall_at_nut_end"]]
    wedge = math.atan((falls[0] - falls[1]) / figures["board_length"])
    assert figures["neck_angle_target"] - figures["neck_angle_face"] == pytest.approx(wedge, abs=1e-12)
    assert abs(wedge) > 1e-4
    thinner = 6.3 - figures["neck_set_board_at_join"]
    moved = figures["neck_angle_target"] - tarn()["neck_angle_target"]
    assert moved == pytest.approx(thinner / figures["neck_set_run_mean"], rel=1e-2)


def test_a_domes_rise_is_its_arc_over_the_chord(tarn: Callable[..., Figures]) -> None:
    """Radius 6000, body 480, saddle 297.32 from the joint: both sagittas worked from the circle."""
    figures = tarn("\n[top]\nradius = 6000\nlength = 480")
    along = figures["neck_set_run_mean"] - 240
    rise = math.sqrt(6000**2 - along**2) - math.sqrt(6000**2 - 240**2)
    assert figures["neck_set_dome_rise"] == pytest.approx(rise, abs=1e-8)
    assert tarn('\n[top]\nradius = "flat"')["neck_set_dome_rise"] == 0
    assert tarn("\n[top]\nrise = 2.2")["neck_set_dome_rise"] == 2.2


def test_on_a_flat_top_the_tongue_stands_off_by_the_angle(tarn: Callable[..., Figures]) -> None:
    figures = tarn('\n[top]\nradius = "flat"')
    along = figures["board_tail_position"] - figures["back_bow_length"]
    assert figures["neck_set_tongue_gap"] == pytest.approx(along * math.sin(figures["neck_angle_face"]), abs=1e-9)


@pytest.mark.parametrize(
    ("table", "key", "low", "high"),
    [("bridge", "thickness", 8.0, 10.0), ("saddle", "exposed", 3.0, 4.0), ("top", "rise", 2.0, 4.0)],
)
def test_more_under_the_strings_wants_more_angle(
    tarn: Callable[..., Figures], table: str, key: str, low: float, high: float
) -> None:
    def angle(value: float) -> float:
        if table == "bridge":
            return tarn("", ("[bridge]", f"[bridge]\n{key} = {value}"))["neck_angle_target"]
        return tarn(f"\n[{table}]\n{key} = {value}")["neck_angle_target"]

    assert angle(high) - angle(low) == pytest.approx((high - low) / tarn()["neck_set_run_mean"], rel=1e-2)
