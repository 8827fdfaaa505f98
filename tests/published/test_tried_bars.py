"""Bars tapped and pushed, against ASTM E1876 and the textbook beam.

ASTM E1876, "Standard test method for dynamic Young's modulus, shear modulus, and Poisson's ratio by impulse excitation
of vibration", equations 1 and 2, from memory, confirmed elsewhere: E = 0.9465 (m f^2 / b) (L^3 / t^3) T1. It is for
isotropic bars, and its T1 an approximation; a bar of Timoshenko's differs from it by less than 0.1 % here.
"""

import math

import pytest

from gramil.physics.tried_bar import (
    FREE_BAR,
    Rod,
    deflection,
    modulus_pushed,
    modulus_tapped,
    shear_over_bending,
    wave_number_squared,
)

MU = 0.3
RATIO = 2.0 * (1.0 + MU)
# t/L and T1 at mu = 0.3, from the standard's equation.
ASTM = [(0.02, 1.002884), (0.1, 1.071080)]


@pytest.mark.parametrize(("slenderness", "t1"), ASTM)
def test_the_standards_correction(slenderness: float, t1: float) -> None:
    assert (FREE_BAR[0] ** 2 / wave_number_squared(slenderness, RATIO)) ** 2 == pytest.approx(t1, rel=1e-3)


@pytest.mark.parametrize(("slenderness", "t1"), ASTM)
def test_the_standards_modulus(slenderness: float, t1: float) -> None:
    length, width, mass, frequency = 0.2, 0.02, 0.05, 900.0  # in m, kg and Hz, as the standard has them
    expected = 0.9465 * (mass * frequency**2 / width) / slenderness**3 * t1 * 1e-6
    rod = Rod(1000 * length, 1000 * width, 1000 * length * slenderness)
    assert modulus_tapped(rod, mass, frequency, RATIO) == pytest.approx(expected, rel=1e-3)


def test_a_slender_bar() -> None:
    """22.3733, from the root 4.7300407 of cos x cosh x = 1."""
    assert wave_number_squared(1e-4, 16.0) == pytest.approx(22.3733, abs=5e-5)


# Span over height and what shear adds for wood along the grain, E/G = 16: 1.2 (E/G) (h/L)^2, worked by hand.
SHEARED = [(32.0, 0.01875), (64.0, 0.0046875)]


@pytest.mark.parametrize(("slender", "share"), SHEARED)
def test_what_shear_adds(slender: float, share: float) -> None:
    rod, span = Rod(400.0, 7.0, 320.0 / slender), 320.0
    assert shear_over_bending(rod, span, 16.0) == pytest.approx(share, rel=1e-12)
    bent = 20.0 * span**3 / (4.0 * 11000.0 * rod.width * rod.height**3)
    assert deflection(rod, span, 11000.0, 11000.0 / 16.0, 20.0) == pytest.approx(bent * (1 + share), rel=1e-12)


def test_a_push_gives_back_the_modulus() -> None:
    rod = Rod(500.0, 7.5, 13.0)
    given = deflection(rod, 400.0, 12345.0, 12345.0 / 15.0, 15.0)
    assert math.isclose(modulus_pushed(rod, 400.0, 15.0, given, 15.0), 12345.0, rel_tol=1e-12)
