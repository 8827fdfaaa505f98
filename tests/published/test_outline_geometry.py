"""Outlines against published formulas of circles, ellipses and spheres."""

import math

import numpy as np
import pytest
from scipy.special import ellipe

from gramil.shapes.arc import cap_volume
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_points


def ellipse(a: float, b: float, pieces: int) -> Outline:
    angles = np.linspace(math.pi, 0, pieces + 1)[1:-1]
    return through_points([(-a, 0), *((a * math.cos(t), b * math.sin(t)) for t in angles), (a, 0)])


# Perimeter of an ellipse: 4 a E(m), m = 1 - b^2/a^2. Abramowitz and Stegun, Handbook of Mathematical Functions, 1964,
# section 17.3 (complete elliptic integral of the second kind, E(m)); the formula from memory, E(m) from scipy.
@pytest.mark.parametrize(("a", "b"), [(100, 100), (250, 150), (250, 200)])
def test_ellipses_through_31_points_a_half(a: float, b: float) -> None:
    outline = ellipse(a, b, 32)
    assert outline.perimeter == pytest.approx(4 * a * float(ellipe(1 - b**2 / a**2)), rel=1e-6)
    assert outline.area == pytest.approx(math.pi * a * b, rel=1e-6)
    assert outline.centroid == pytest.approx(0, abs=1e-9)


def test_the_error_falls_with_the_fourth_power_of_the_spacing() -> None:
    """Cubic splines over the chords: order h^4. Floater, "Chordal cubic spline interpolation is fourth-order
    accurate", IMA J. Numer. Anal. 26, 25 (2006), title from memory. Half the spacing: 16 times the accuracy."""
    errors = [abs(ellipse(250, 150, pieces).area / (math.pi * 250 * 150) - 1) for pieces in (16, 32, 64)]
    assert errors[0] / errors[1] == pytest.approx(16, rel=0.15)
    assert errors[1] / errors[2] == pytest.approx(16, rel=0.15)


def test_the_half_ball_of_archimedes() -> None:
    """A ball is two thirds of the cylinder about it. Archimedes, On the Sphere and Cylinder, book I."""
    assert cap_volume(10, 10) == pytest.approx(2 / 3 * math.pi * 10**2 * 10, rel=1e-15)
