"""Beams squeezed off their centre: secant formulas and their first-order limits.

J. M. Gere and S. P. Timoshenko, "Mechanics of Materials"; S. P. Timoshenko and J. M. Gere, "Theory of Elastic
Stability", chapter 1: formulas from memory. The figures were worked out elsewhere from them.
"""

import math

import numpy as np
import pytest
from tests.textbooks import beam_column

from gramil.physics.bent_beam import Ends, shape_under_pull

# E = 10 GPa, 50 x 22 mm, P = 800 N, e = 12 mm, L = 350 mm.
MODULUS, WIDTH, DEPTH, LOAD, ECCENTRICITY, LENGTH = 10000.0, 50.0, 22.0, 800.0, 12.0, 350.0
INERTIA = WIDTH * DEPTH**3 / 12.0
STIFFNESS = MODULUS * INERTIA
CASE = (LOAD, ECCENTRICITY, LENGTH, STIFFNESS)


def test_the_case() -> None:
    """EI 443.667 N m2, critical load (pinned) 35.745 kN."""
    assert pytest.approx(443.667e6, rel=1e-6) == STIFFNESS
    assert float(beam_column.critical_load_pinned(LENGTH, STIFFNESS)) == pytest.approx(35745.0, abs=0.6)


def test_first_order_and_secant() -> None:
    assert float(beam_column.first_order_pinned(*CASE)) == pytest.approx(0.33133, abs=6e-6)
    assert float(beam_column.deflection_pinned(*CASE)) == pytest.approx(0.33913, abs=6e-6)
    assert float(beam_column.first_order_cantilever(*CASE)) == pytest.approx(1.32532, abs=6e-6)
    assert float(beam_column.deflection_cantilever(*CASE)) == pytest.approx(1.45933, abs=6e-6)


def test_stations_solved_numerically_agree_with_the_secant() -> None:
    """The general solver, 200 stations: a pinned beam sags away from the line, a cantilever's end rises to it."""
    x = np.linspace(0.0, LENGTH, 201)
    pinned = shape_under_pull(x, STIFFNESS, ECCENTRICITY, LOAD, Ends.BOTH_ENDS)
    assert pinned[100] == pytest.approx(-0.33913, abs=2e-5)
    cantilever = shape_under_pull(x, STIFFNESS, ECCENTRICITY, LOAD, Ends.LAST_CLAMPED)
    assert cantilever[0] == pytest.approx(1.45933, abs=5e-5)


def test_greatest_stress_as_printed() -> None:
    """P/A [1 + (e c / r^2) sec((L / 2r) sqrt(P / EA))], from memory."""
    area, outermost = WIDTH * DEPTH, DEPTH / 2.0
    r = math.sqrt(INERTIA / area)
    secant = 1.0 / math.cos(LENGTH / (2.0 * r) * math.sqrt(LOAD / (MODULUS * area)))
    printed = LOAD / area * (1.0 + ECCENTRICITY * outermost / r**2 * secant)
    found = beam_column.greatest_stress_pinned(LOAD, ECCENTRICITY, LENGTH, MODULUS, area, INERTIA, outermost)
    assert float(found) == pytest.approx(printed, rel=1e-12)
