"""Falls of arcs and cones against worked sagittas: s = R - sqrt(R^2 - c^2 / 4), Euclid; exact geometry.

The values were worked out elsewhere from that formula to five decimals, c the chord.
"""

import math
from collections.abc import Callable

import mpmath
import numpy as np
import pytest

from gramil.graph import Figures
from gramil.shapes.arc import sagitta
from gramil.shapes.crown import Crown

# Radius, chord, sagitta in mm.
SAGITTAS = [
    (304.8, 50.0, 1.02699),
    (254.0, 42.0, 0.86960),
    (406.4, 56.0, 0.96571),
    (508.0, 56.0, 0.77224),
    (7620.0, 400.0, 2.62512),
    (4572.0, 300.0, 2.46129),
    (184.15, 42.0, 1.20131),
]


@pytest.mark.parametrize(("radius", "chord", "fall"), SAGITTAS)
def test_of_an_arc(radius: float, chord: float, fall: float) -> None:
    assert float(sagitta(1 / radius, chord / 2)) == pytest.approx(fall, abs=6e-6)


@pytest.mark.parametrize(("radius", "chord", "fall"), SAGITTAS[:4])
def test_of_a_board(
    radius: float, chord: float, fall: float, text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """An unbound cylinder as wide as the chord at fret 12."""
    text = text_of("tarn").replace('{ nut = "320 mm", end = "390 mm" }', f"{radius}")
    text = text.replace("width = 56 ", f"width = {chord} ").replace("spread = 56.5", "spread = 40")
    text = text.replace("width = 45.5", "width = 41").replace("spread = 38.5", "spread = 34")
    figures = derive_text(text.replace("thickness = 1.8 ", "thickness = 0 "))
    for side in ("treble", "bass"):
        assert figures[f"arch_fall_at_edge_{side}"][12] == pytest.approx(fall, abs=6e-6)
        assert figures[f"arch_fall_at_core_{side}"][12] == pytest.approx(fall, abs=6e-6)


@pytest.mark.parametrize("radius", [1e3, 1e5, 1e8, 1e12])
def test_keeps_its_digits_on_large_radii(radius: float) -> None:
    """R - sqrt(R^2 - y^2) written out loses all digits by R = 1e9; 50 digits show what it is."""
    with mpmath.workdps(50):
        wanted = mpmath.mpf(radius) - mpmath.sqrt(mpmath.mpf(radius) ** 2 - 27**2)
    assert float(sagitta(1 / radius, 27.0)) == pytest.approx(float(wanted), rel=1e-14)


def test_a_cone_is_straight_along_its_rulings() -> None:
    """Where R and y grow in one proportion the fall does too: a line from the apex's side lies in the surface."""
    cone = Crown(1 / 250, 1 / 375, 400.0)
    x = np.linspace(0, 400, 9)
    radius = 250 + 125 * x / 400
    np.testing.assert_allclose(cone.fall(x, radius * math.sin(0.08)), radius * (1 - math.cos(0.08)), rtol=1e-13)
    np.testing.assert_allclose(1 / cone.curvature(x), radius, rtol=1e-14)


def test_wider_than_the_circle_has_no_fall() -> None:
    assert np.isnan(sagitta(1 / 20, 21.0))
    assert sagitta(1 / 20, 20.0) == pytest.approx(20.0)


def test_flat_has_none() -> None:
    assert (Crown(0.0, 0.0, 400.0).fall([0, 200, 400], [25, 26, 27]) == 0).all()
