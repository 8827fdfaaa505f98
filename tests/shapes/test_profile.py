"""Rounded sections: closed forms of the superellipse, and mixtures of two."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.shapes.profile import Profile, between, depth_integrals
from gramil.shapes.strip_section import hanging

EXPONENTS = st.floats(1.2, 5)
PROFILES = st.builds(Profile, st.floats(15, 35), st.floats(15, 35), EXPONENTS, EXPONENTS, st.floats(0, 1))


def test_a_half_circle_by_hand() -> None:
    """Radius 25: depth 20 at 15 and 24 at 7, steepness 3/4 and 7/24."""
    half = Profile(25, 25, 2)
    assert half.depth_at([0, 15, -7, 25]) == pytest.approx([25, 20, 24, 0])
    assert half.steepness([15, -7]) == pytest.approx([-3 / 4, -7 / 24])


@given(PROFILES)
def test_points_lie_on_it_from_edge_to_edge(profile: Profile) -> None:
    points = profile.points(33)
    assert points[0] == pytest.approx([-profile.half_width, 0], abs=1e-6)
    assert points[16] == pytest.approx([0, profile.depth], abs=1e-6)
    assert points[:, 1] == pytest.approx(points[::-1, 1], abs=1e-6)


@given(PROFILES)
def test_area_by_the_shoelace(profile: Profile) -> None:
    """Chords lie inside: a little less than the area, and less and less."""
    y, z = profile.points(4001).T
    chords = float(((z[1:] + z[:-1]) / 2 * np.diff(y)).sum())
    assert chords <= profile.area * (1 + 1e-12)
    assert chords == pytest.approx(profile.area, rel=2e-3)


@given(PROFILES)
def test_a_mixture_has_the_mixed_area(profile: Profile) -> None:
    one = Profile(profile.half_width, profile.depth, profile.exponent).area
    other = Profile(profile.half_width, profile.depth, profile.other_exponent).area
    assert profile.area == pytest.approx((1 - profile.mix) * one + profile.mix * other, rel=1e-9)


@given(PROFILES, st.floats(-0.98, 0.98))
def test_steepness_is_the_slope(profile: Profile, share: float) -> None:
    y, step = share * profile.half_width, 1e-5 * profile.half_width
    if abs(y) > 0.05 * profile.half_width:
        slope = float(profile.depth_at(abs(y) + step) - profile.depth_at(abs(y) - step)) / (2 * step)
        assert float(profile.steepness(y)) == pytest.approx(slope, rel=1e-4, abs=1e-6)


def test_between_two_profiles() -> None:
    start, end = Profile(22, 20, 2.0), Profile(28, 24, 2.4, 1.6, 0.5)
    assert between(start, end, 0) == Profile(22, 20, 2.0, 1.6, 0)
    assert between(start, end, 1) == end
    assert between(start, end, 0.5) == Profile(25, 22, 2.2, 1.6, 0.25)
    with pytest.raises(ValueError, match="same other exponent"):
        between(Profile(22, 20, 2, 3, 0.5), end, 0.5)


def test_touching_a_half_circle() -> None:
    """The normal of a circle points from its centre."""
    half = Profile(25, 25, 2)
    for angle in (0.0, 0.4, math.pi / 2, 2.0, math.pi):
        assert half.touch(angle) == pytest.approx((25 * math.cos(angle), 25 * math.sin(angle)), abs=1e-9)


@given(EXPONENTS)
def test_moments_of_a_superellipse_in_closed_form(exponent: float) -> None:
    """Of depth^p across: 2 / n B(1/n, 1 + p/n), by Euler's integral, for one wide to either side and one deep."""
    for power, found in zip((1, 2, 3), depth_integrals(exponent, 2.0, 0.0), strict=True):
        p, q = 1 / exponent, 1 + power / exponent
        beta = math.exp(math.lgamma(p) + math.lgamma(q) - math.lgamma(p + q))
        assert float(found) == pytest.approx(2 / exponent * beta, rel=1e-9)


def test_moments_of_half_an_ellipse() -> None:
    """Half an ellipse of half-axes a and b about its flat: pi a b / 2, 2 a b^2 / 3, pi a b^3 / 8."""
    found = hanging([Profile(27.0, 16.0, 2.0), Profile(22.0, 14.0, 2.0)])
    for row, (a, b) in enumerate(((27.0, 16.0), (22.0, 14.0))):
        assert found.area[row] == pytest.approx(math.pi * a * b / 2, rel=1e-12)
        assert found.first[row] == pytest.approx(-2 * a * b**2 / 3, rel=1e-12)
        assert found.second[row] == pytest.approx(math.pi * a * b**3 / 8, rel=1e-12)


@given(PROFILES)
def test_moments_of_a_mixture_by_strips(profile: Profile) -> None:
    """Ten thousand strips across, as wide as cosine steps leave them."""
    y, z = profile.points(10_001).T
    deep, wide = (z[1:] + z[:-1]) / 2, np.diff(y)
    found = hanging([profile])
    assert found.area[0] == pytest.approx(float((deep * wide).sum()), rel=2e-3)
    assert found.first[0] == pytest.approx(-float((deep**2 * wide).sum()) / 2, rel=2e-3)
    assert found.second[0] == pytest.approx(float((deep**3 * wide).sum()) / 3, rel=2e-3)
