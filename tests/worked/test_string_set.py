"""The strings of one small guitar by hand: weights, pulls, reserves, and the pull on the bridge.

630 mm, gauges 0.012, 0.016, 0.024, 0.032, 0.042, 0.053 in; steel 7800 kg/m3 and phosphor bronze 8800 kg/m3, modulus
190 to 207 GPa, strength 2211 / d^0.145 MPa (d in mm; from memory). The strings spread 9 mm to either side on their way
to the saddle, so that the outer ones are sqrt(630^2 + 9^2) = 630.064 mm long, and sound over their set-back more.
"""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures


@pytest.fixture(scope="module")
def tarn(example: Callable[[str], Figures]) -> Figures:
    return example("tarn")


def test_the_first_string(tarn: Figures) -> None:
    """0.012 in is 0.3048 mm: section 0.072966 mm2, weight 7800 x 0.072966e-6 = 0.56913 g/m.

    E4 is 329.628 Hz: T = 0.56913e-3 (2 x 0.630064 x 329.628)^2 = 98.19 N over the bare scale. The string breaks 1.8 mm
    behind it, so that 631.864 mm sound: 0.56913e-3 (2 x 0.631864 x 329.628)^2 = 98.76 N. Stress 98.757 / 0.072966 =
    1353.5 MPa, strength 2211 / 0.3048^0.145 = 2626.7 MPa: 0.485 is left. It is drawn by 1353.5 x 631.864 / 198500 =
    4.308 mm.
    """
    assert tarn["string_length"][0] == pytest.approx(630.064, abs=1e-3)
    assert tarn["string_weight"][0] == pytest.approx(0.56913, abs=1e-5)
    assert tarn["string_pull_on_scale"][0] == pytest.approx(98.19, abs=0.02)
    assert tarn["saddle_set_back"][0] == pytest.approx(1.8, abs=1e-9)
    assert tarn["string_pull"][0] == pytest.approx(98.76, abs=0.02)
    assert tarn["string_stress"][0] == pytest.approx(1353.5, abs=0.5)
    assert tarn["string_reserve"][0] == pytest.approx(1 - 1353.5 / 2626.7, abs=1e-3)
    assert tarn["string_elongation"][0] == pytest.approx(4.308, abs=2e-3)


def test_the_third_string_is_wound_over_an_estimated_core(tarn: Figures) -> None:
    """0.024 in is 0.6096 mm; core 0.2 + 0.2 x 0.6096 = 0.3219 mm. Core 0.08139 mm2, ring 0.21047 mm2, filled to pi/4.

    7.8 x 0.08139 + 8.8 x 0.21047 x 0.7854 = 0.6349 + 1.4547 = 2.0895 g/m.
    """
    assert tarn["string_core"][2] == pytest.approx(0.3219, abs=1e-4)
    assert tarn["string_weight"][2] == pytest.approx(2.0895, abs=5e-4)


def test_the_pull_on_the_bridge(tarn: Figures) -> None:
    """Each pull at its height over the middle of the top, 9 mm of bridge and half of 2.8 mm below what shows."""
    levers = tarn["neck_set_exposed"] + 9.0 + 1.4
    assert tarn["bridge_torque"] == pytest.approx(math.fsum(tarn["string_pull"] * levers) / 1000, rel=1e-9)
    assert tarn["string_pull_total"] == pytest.approx(math.fsum(tarn["string_pull"]), rel=1e-12)


def test_one_cent_at_the_octave(tarn: Figures) -> None:
    """630 mm x ln 2 / 1200 = 0.364 mm for a cent at fret 12."""
    np.testing.assert_allclose(tarn["intonation_octave_move"], 0.364, atol=5e-4)


def test_where_the_bridge_goes(tarn: Figures) -> None:
    """The bridge's front edge from fret 13: 630 x 2^(-13/12) mm to the scale's end, and the mean set-back less 9 mm."""
    to_end = 630 * 2 ** (-13 / 12)
    expected = to_end + tarn["saddle_set_back"].mean() - 9.0
    assert tarn["bridge_front_from_join"] == pytest.approx(expected, abs=1e-6)
