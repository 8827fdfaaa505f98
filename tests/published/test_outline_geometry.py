"""Outlines against published formulas of circles, ellipses and spheres."""

import math

import numpy as np
import pytest
from scipy.special import ellipe
from tests.textbooks.spheres import cap_volume

from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_points
from gramil.shapes.profile import Profile, depth_integrals


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


# Area of a superellipse: 4 a b G(1 + 1/n)^2 / G(1 + 2/n), after Gridgeman, "Lame ovals", Math. Gazette 54, 31 (1970);
# moments by the beta integral, int_0^1 (1 - y^n)^(m/n) dy = G(1 + 1/n) G(1 + m/n) / G(1 + (m + 1)/n),
# Gradshteyn and Ryzhik, 3.251. Both from memory.
@pytest.mark.parametrize("n", [1.25, 1.7, 2.0, 2.5, 4.0])
def test_half_superellipses(n: float) -> None:
    a, d = 26.0, 21.0
    profile = Profile(a, d, n)

    def beta(power: int) -> float:
        return math.gamma(1 + 1 / n) * math.gamma(1 + power / n) / math.gamma(1 + (power + 1) / n)

    assert profile.area == pytest.approx(2 * a * d * math.gamma(1 + 1 / n) ** 2 / math.gamma(1 + 2 / n), rel=1e-9)
    _, squares, cubes = depth_integrals(n, 2.0, 0.0)
    assert a * d**2 * squares / 2 == pytest.approx(2 * a * d**2 / 2 * beta(2), rel=1e-9)
    assert a * d**3 * cubes / 3 == pytest.approx(2 * a * d**3 / 3 * beta(3), rel=1e-9)


def test_a_half_ellipse() -> None:
    """Area pi a d/2, first moment 2 a d^2/3, second pi a d^3/8 about its base. Gere and Goodno, Mechanics of Materials,
    8th ed., appendix on plane areas (from memory)."""
    profile = Profile(26, 21, 2)
    assert profile.area == pytest.approx(math.pi / 2 * 26 * 21, rel=1e-10)
    _, squares, cubes = depth_integrals(2.0, 2.0, 0.0)
    assert 26 * 21**2 * squares / 2 == pytest.approx(2 / 3 * 26 * 21**2, rel=1e-10)
    assert 26 * 21**3 * cubes / 3 == pytest.approx(math.pi / 8 * 26 * 21**3, rel=1e-10)


@pytest.mark.parametrize("n", [1.4, 2.0, 3.0])
@pytest.mark.parametrize("angle", [0.2, 0.9, 1.4])
def test_flats_by_hoelders_inequality(n: float, angle: float) -> None:
    """A tangent of |y/a|^n + |z/d|^n = 1 lies ((a cos)^q + (d sin)^q)^(1/q) from the middle, 1/n + 1/q = 1: the case of
    equality. Hardy, Littlewood and Polya, Inequalities, 1934, section 2.8 (from memory)."""
    a, d, q = 26.0, 21.0, n / (n - 1)
    y, z = Profile(a, d, n).touch(angle)
    reach = ((a * math.cos(angle)) ** q + (d * math.sin(angle)) ** q) ** (1 / q)
    assert y * math.cos(angle) + z * math.sin(angle) == pytest.approx(reach, rel=1e-10)
