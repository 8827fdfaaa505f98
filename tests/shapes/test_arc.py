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
    assert float(arc.sagitta(1 / 5, 4)) == pytest.approx(2, rel=1e-15)


def test_flat_is_flat() -> None:
    assert float(arc.sagitta(0, 400)) == 0
    assert arc.arc_length(0, 400) == 400


def test_beyond_the_radius_is_not_a_number() -> None:
    assert math.isnan(float(arc.sagitta(1 / 100, 101)))


def test_a_quarter_circle() -> None:
    assert arc.arc_length(1 / 100, 100 * math.sqrt(2)) == pytest.approx(50 * math.pi, rel=1e-14)


@given(RADII, SHARES)
def test_the_plain_formula(radius: float, share: float) -> None:
    half = radius * share
    plain = radius - math.sqrt(radius**2 - half**2)
    assert float(arc.sagitta(1 / radius, half)) == pytest.approx(plain, abs=1e-10 * radius)
