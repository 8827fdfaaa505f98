"""Weight, tension and stiffness of one string: identities, and the exact stiff string solved numerically."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq

from gramil.faults import MakersFault
from gramil.physics import stiff_string as string


def test_tension_in_plain_units() -> None:
    """1 g/m, 500 mm, 100 Hz: 0.001 kg/m times (2 x 0.5 m x 100 Hz) squared is 10 N."""
    assert string.tension(1.0, 500.0, 100.0) == pytest.approx(10.0, rel=1e-14)


def test_wound_string_of_one_stuff_packed_full_is_a_plain_string() -> None:
    solid = string.plain_density(1.2, 7850.0)
    assert string.wound_density(0.4, 1.2, 7850.0, 7850.0, packing=1.0) == pytest.approx(float(solid), rel=1e-14)


def test_packing_is_that_of_a_close_helix() -> None:
    """Weight of the wrap as a helix of round wire w at pitch w round the core: length per turn by Pythagoras."""
    core, wire, density = 0.45, 0.35, 8800.0
    per_turn = math.hypot(math.pi * (core + wire), wire)
    wrap = density * math.pi * wire**2 / 4.0 * per_turn / wire * 1e-3
    whole = string.wound_density(core, core + 2.0 * wire, 7800.0, density)
    assert float(whole - string.plain_density(core, 7800.0)) == pytest.approx(wrap, rel=0.011)


def test_outside_must_be_larger_than_core() -> None:
    with pytest.raises(MakersFault, match="larger outside"):
        string.wound_density(0.5, 0.5, 7800.0, 8800.0)


def test_free_string_has_no_stiffness() -> None:
    assert float(string.one_end_clamped_factor(0.0, 3)) == 1.0


def _exact_factor(epsilon: float) -> float:
    """First partial of T y'' - EI y'''' = mu y_tt on 0..1 with T = mu = 1, over that of the limp string.

    y = cos and cosh terms with wave numbers k and q, q^2 - k^2 = 1/epsilon^2, omega = epsilon k q. One end clamped, the
    other pinned: tan(k)/k = tanh(q)/q.
    """

    def far(k: float) -> float:
        return math.sqrt(k * k + epsilon**-2)

    def one(k: float) -> float:
        return math.sin(k) * far(k) - k * math.tanh(far(k)) * math.cos(k)

    k = brentq(one, math.pi * 0.9, math.pi * 1.2, xtol=1e-15)
    return epsilon * k * far(k) / math.pi


@pytest.mark.parametrize("epsilon", [0.0005, 0.001, 0.0025, 0.005])
def test_series_against_exact_stiff_string(epsilon: float) -> None:
    """The series leaves out the third power of epsilon, whose factor is 8 + 4 pi^2 at most: with both ends clamped."""
    left_out = 60.0 * epsilon**3
    assert float(string.one_end_clamped_factor(epsilon)) == pytest.approx(_exact_factor(epsilon), abs=left_out)


def test_works_on_many_strings_and_partials_at_once() -> None:
    factors = string.one_end_clamped_factor(np.array([[0.001], [0.002]]), np.arange(1, 6))
    assert factors.shape == (2, 5)
    assert np.all(np.diff(factors, axis=0) > 0.0)
    assert np.all(np.diff(factors, axis=1) > 0.0)
