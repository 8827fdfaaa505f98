"""Intonation of any instrument: the best is the best, constraints cost, causes have their signs."""

import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import minimize

from gramil.graph import Figures
from gramil.physics.compensation import set_backs

Make = Callable[..., Figures]
TUNING = 'tuning = ["E4", "B3", "G3", "D3", "A2", "E2"]'


@pytest.fixture
def tarn(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Make:
    """Tarn with more tables at its end, and changes to its text."""

    def make(more: str = "", *changes: tuple[str, str]) -> Figures:
        text = text_of("tarn")
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        return derive_text(text + more)

    return make


def left(figures: Figures, nut: Any, saddle: Any) -> float:
    """What is left with the nut set forward and the saddle set back by so much, over frets 1 to 12."""
    weights = figures["intonation_weights"][1:]
    paths, strings = figures["intonation_paths"], figures["intonation_strings"]
    return set_backs(paths, strings, -np.asarray(nut), saddle, weights).rms_of_all


def test_a_plain_search_finds_nothing_better(tarn: Make) -> None:
    figures = tarn()

    def cost(at: Any) -> float:
        return left(figures, np.full(6, at[0]), at[1:])

    found = minimize(
        cost, np.full(7, 1.0), method="Nelder-Mead", options={"maxfev": 6000, "fatol": 1e-9, "xatol": 1e-7}
    )
    assert figures["intonation_rms_best"] <= found.fun + 1e-7
    assert figures["intonation_rms_best"] == pytest.approx(found.fun, abs=2e-3)


def test_freedoms_are_kept_and_each_freedom_helps(tarn: Make) -> None:
    kinds = {}
    for nut in ("none", "straight", "per string"):
        for saddle in ("straight", "slanted", "per string"):
            figures = tarn(f'\n[intonation]\nnut = "{nut}"\nsaddle = "{saddle}"')
            kinds[nut, saddle] = figures["intonation_rms_best"]
            forward, back, across = (
                figures[name] for name in ("intonation_nut_best", "intonation_saddle_best", "string_y_bridge")
            )
            if nut != "per string":
                np.testing.assert_allclose(forward, forward[0], atol=1e-9)
            if saddle == "slanted":
                slope, middle = np.polyfit(across, back, 1)
                np.testing.assert_allclose(middle + slope * across, back, atol=1e-9)
            if saddle == "straight":
                np.testing.assert_allclose(back, back[0], atol=1e-9)
    assert kinds["none", "slanted"] > kinds["straight", "slanted"] > kinds["per string", "slanted"]
    assert kinds["none", "straight"] > kinds["none", "slanted"] > kinds["none", "per string"]


def test_a_slanted_saddle_is_one_line_as_filed(tarn: Make) -> None:
    figures = tarn('\n[intonation]\nsaddle = "slanted"')
    np.testing.assert_allclose(figures["saddle_off_line"], 0, atol=1e-9)
    per_tenth = figures["saddle_set_back"][[0, -1]] / 0.1
    np.testing.assert_allclose(per_tenth, np.round(per_tenth), atol=1e-9)


def test_the_best_is_sought_for_the_nut_that_is_set(tarn: Make) -> None:
    plain, forward = tarn(), tarn("", ("set_forward = 0", "set_forward = 0.3"))
    assert forward["intonation_rms_all_after"] < plain["intonation_rms_all_after"]
    np.testing.assert_allclose(forward["intonation_nut_best"], plain["intonation_nut_best"], atol=1e-6)
    assert (forward["saddle_set_back_best"] < plain["saddle_set_back_best"]).all()
    best = tarn('\n[intonation]\nnut_forward = "best"\nfile_to = 0.001')
    np.testing.assert_allclose(best["saddle_set_back_best"], best["intonation_saddle_best"], atol=3e-3)


def test_targets_that_are_set_do_not_follow_the_prediction(tarn: Make) -> None:
    figures = tarn("\n[saddle]\nset_back = [2, 3, 2, 2.5, 3.5, 5]")
    np.testing.assert_allclose(figures["saddle_set_back"], [2, 3, 2, 2.5, 3.5, 5])
    hangs_on = figures.graph.above("saddle_set_back_best")
    assert "saddle_set_back_given" not in hangs_on
    assert "saddle_set_back" in figures.graph.above("intonation_cents_after")


def test_higher_strings_sound_sharper(tarn: Make) -> None:
    low = tarn("\n[heights]\naction_bass = 2.0\naction_treble = 1.5")
    high = tarn("\n[heights]\naction_bass = 3.0\naction_treble = 2.5")
    assert (high["intonation_cents_before"][:, 12] > low["intonation_cents_before"][:, 12] + 0.5).all()
    taller = tarn("\n[heights]\nnut_bass = 0.9\nnut_treble = 0.8")
    assert (taller["intonation_cents_before"][:, 1] > tarn()["intonation_cents_before"][:, 1] + 1).all()


def test_pitch_and_stiffness_agree_with_their_formula(tarn: Make) -> None:
    """Strings hardly over the frets are sharp by stiffness alone: 1200 log2 of the ends' terms, stopped over open."""
    figures = tarn(
        "\n[heights]\nrelief = 0\naction_bass = 0.02\naction_treble = 0.02\nnut_over = 'the zero line'\n"
        "nut_bass = 0.01\nnut_treble = 0.01",
        ('arch = { nut = "320 mm", end = "390 mm" }', 'arch = "flat"'),
    )
    for string in range(2):
        radius = figures["strings_gauges"][string] / 2
        bending = 198500 * math.pi * radius**4 / 4
        ratio = math.sqrt(bending / figures["string_pull_on_scale"][string]) / figures["string_length"][string]
        ends = [1 + each + (1 + math.pi**2 / 2) * each**2 for each in (2 * ratio, ratio)]
        expected = 1200 * math.log2(ends[0] / ends[1])
        assert figures["intonation_cents_before"][string, 12] == pytest.approx(expected, abs=0.01)


def test_measured_stretch_overrides_the_model(tarn: Make) -> None:
    plain = tarn()
    own = [float(each) for each in plain["string_stretch"]]
    measured = tarn("", (TUNING, f"{TUNING}\nstretch = [{own[0] * 1.5}, 0, 0, 0, 0, 0]"))
    assert measured["string_stretch"][0] == pytest.approx(1.5 * own[0])
    np.testing.assert_allclose(measured["string_stretch"][1:], own[1:])
    assert measured["saddle_set_back_best"][0] > plain["saddle_set_back_best"][0]
    assert measured["intonation_rms_softest"][0] == measured["intonation_rms_stiffest"][0]
    assert plain["intonation_rms_softest"][0] != plain["intonation_rms_stiffest"][0]


def test_a_finger_behind_the_fret_sharpens_the_first_frets_most(tarn: Make) -> None:
    more = tarn("\n[intonation]\nfinger_offset = 8")["intonation_cents_before"] - tarn()["intonation_cents_before"]
    assert (more[:, 1] > 0.05).all()
    assert (more[:, 1] > more[:, 12]).all()


def test_a_zero_fret_does_not_move(tarn: Make) -> None:
    figures = tarn("", ("zero_fret = false", "zero_fret = true "))
    np.testing.assert_array_equal(figures["intonation_nut_best"], 0)
    np.testing.assert_allclose(figures["height_at_zero"], figures["crown_top"][:, 0], atol=1e-9)


@settings(max_examples=40)
@given(data=st.data())
def test_any_instrument_gets_its_figures(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    """The open string is right, no set-back beats the best by a nudge, and the saddle's line is the nearest one."""
    figures = derive_text(as_file(data.draw(boards()), "mm"))
    np.testing.assert_array_equal(figures["intonation_cents_before"][:, 0], 0)
    nut, saddle = figures["intonation_nut_forward"], figures["saddle_set_back_best"]
    assert np.isfinite(saddle).all()
    best = left(figures, nut, saddle)
    for string in range(len(saddle)):
        for nudge in (-0.05, 0.05):
            assert left(figures, nut, saddle + nudge * (np.arange(len(saddle)) == string)) > best
    off = figures["saddle_off_line"]
    assert abs(off.sum()) < 1e-9
    assert abs((off * figures["string_y_bridge"]).sum()) < 1e-6
