"""Pieces of polynomials and the spline through points, against a general library that has both."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.interpolate import CubicSpline, PPoly
from scipy.spatial import cKDTree

from gramil.shapes.cubic_spline import Bound, Bounds, cubic_spline
from gramil.shapes.nearest import any_within, nearest_rows
from gramil.shapes.piecewise import Piecewise

SCIPY = {"not-a-knot": "not-a-knot", "level": (1, 0.0), "straight": (2, 0.0)}
values = st.floats(-500, 500)
steps = st.lists(st.floats(0.5, 80), min_size=2, max_size=12)


@given(steps, st.data(), st.sampled_from(sorted(SCIPY)), st.sampled_from(sorted(SCIPY)))
@settings(max_examples=150, deadline=None)
def test_a_spline_is_the_librarys(each: list[float], data: st.DataObject, start: Bound, end: Bound) -> None:
    breaks = np.concatenate(([0.0], np.cumsum(each)))
    through = np.array(data.draw(st.lists(values, min_size=len(breaks), max_size=len(breaks))))
    theirs = CubicSpline(breaks, through, bc_type=(SCIPY[start], SCIPY[end]))
    places = np.linspace(breaks[0], breaks[-1], 101)
    ours = Piecewise(cubic_spline(breaks, through, (start, end)), breaks)
    scale = max(1.0, abs(theirs(places)).max())
    assert ours(places) == pytest.approx(theirs(places), abs=1e-9 * scale)


@given(steps, st.data())
@settings(max_examples=100, deadline=None)
def test_a_closed_spline_is_the_librarys(each: list[float], data: st.DataObject) -> None:
    breaks = np.concatenate(([0.0], np.cumsum(each)))
    through = np.array(data.draw(st.lists(values, min_size=len(breaks), max_size=len(breaks))))
    through[-1] = through[0]
    bounds: Bounds = "periodic"
    theirs = CubicSpline(breaks, through, bc_type=bounds)
    places = np.linspace(breaks[0], breaks[-1], 101)
    ours = Piecewise(cubic_spline(breaks, through, bounds), breaks)
    assert ours(places) == pytest.approx(theirs(places), abs=1e-9 * max(1.0, abs(theirs(places)).max()))


@given(st.integers(1, 4), st.integers(1, 6), st.data())
@settings(max_examples=150, deadline=None)
def test_values_slopes_and_zeros_are_the_librarys(order: int, pieces: int, data: st.DataObject) -> None:
    numbers = data.draw(st.lists(values, min_size=order * pieces, max_size=order * pieces))
    coefficients = np.array(numbers).reshape(order, pieces)
    breaks = np.arange(pieces + 1) * 1.5
    ours, theirs = Piecewise(coefficients, breaks), PPoly(coefficients, breaks, extrapolate=False)
    places = np.linspace(-0.3, breaks[-1] + 0.3, 57)
    np.testing.assert_allclose(ours(places), theirs(places), rtol=1e-12, atol=1e-9)
    if order > 1:
        np.testing.assert_allclose(ours.derivative(places), theirs.derivative()(places), rtol=1e-12, atol=1e-9)
    for zero in ours.zeros():
        assert _least_beside(ours, zero) < 1e-6
    inside = [root for root in theirs.roots(discontinuity=False) if abs(breaks - root).min() > 1e-3]
    for root in inside:
        crossed = ours(root - 1e-4) * ours(root + 1e-4) < 0
        assert not crossed or abs(ours.zeros() - root).min() < 1e-6


def _least_beside(curve: Piecewise, place: float) -> float:
    """The least of the value at a place and just before it, where a piece before may end: in units of its terms."""
    scale = max(1.0, abs(curve.coefficients).max())
    return min(abs(float(curve(place))), abs(float(curve(max(0.0, place - 1e-9))))) / scale


def test_outside_its_breaks_it_is_not_a_number() -> None:
    curve = Piecewise(np.ones((2, 1)), np.array([0.0, 1.0]))
    assert np.isnan(curve([-1e-9, 1.0 + 1e-9])).all()
    assert curve([0.0, 1.0]) == pytest.approx([1.0, 2.0])


@pytest.mark.parametrize("many", [40, 3000])
def test_the_nearest_are_the_librarys(many: int) -> None:
    random = np.random.default_rng(7)
    points, others = random.uniform(0, 100, (many, 2)), random.uniform(0, 100, (2 * many, 2))
    away, rows = cKDTree(others).query(points)
    assert (nearest_rows(points, others) == rows).all()
    assert not any_within(away.min() * (1 - 1e-9), points, others)
    assert any_within(away.min() * (1 + 1e-9), points, others)
    assert any_within(60.0, points, others)
