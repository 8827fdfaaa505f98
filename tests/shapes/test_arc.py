"""Arcs: the triangle with sides 3, 4, 5 and its kin, and what holds for every arc."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.shapes import arc

RADII = st.floats(50, 1e5)
SHARES = st.floats(0.001, 0.999)


def test_sagitta_of_the_345_triangle() -> None:
    """A circle of radius 5: a chord of 8 lies 3 from the centre, so the arc stands 2 over it."""
    assert arc.sagitta_of_radius(5, 8) == pytest.approx(2, rel=1e-15)
    assert arc.radius_of_sagitta(2, 8) == pytest.approx(5, rel=1e-15)


def test_flat_is_flat() -> None:
    assert float(arc.sagitta(0, 400)) == 0
    assert arc.radius_of_sagitta(0, 400) == math.inf
    assert arc.arc_length(0, 400) == 400


def test_beyond_the_radius_is_not_a_number() -> None:
    assert math.isnan(float(arc.sagitta(1 / 100, 101)))


def test_a_quarter_circle() -> None:
    assert arc.arc_length(1 / 100, 100 * math.sqrt(2)) == pytest.approx(50 * math.pi, rel=1e-14)


@given(RADII, SHARES)
def test_radius_and_sagitta_undo_each_other(radius: float, share: float) -> None:
    chord = 2 * radius * share
    assert arc.radius_of_sagitta(arc.sagitta_of_radius(radius, chord), chord) == pytest.approx(radius, rel=1e-9)


@given(RADII, SHARES)
def test_the_plain_formula(radius: float, share: float) -> None:
    half = radius * share
    plain = radius - math.sqrt(radius**2 - half**2)
    assert float(arc.sagitta(1 / radius, half)) == pytest.approx(plain, abs=1e-10 * radius)


def test_a_whole_ball_is_a_cap() -> None:
    assert arc.cap_volume(3, 6) == pytest.approx(36 * math.pi)
