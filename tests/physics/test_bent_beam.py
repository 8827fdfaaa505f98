"""Shapes of bent beams: known curves, and limits that hold whatever the figures."""

import numpy as np
import pytest
from scipy.integrate import solve_bvp

from gramil.physics.bent_beam import Ends, gap_under_straightedge, shape_from_curvature, shape_under_pull

X = np.linspace(0.0, 400.0, 41)


def test_even_curvature_is_a_parabola() -> None:
    """v = k x (x - L) / 2 between ends; k (L - x)^2 / 2 from a clamp."""
    even = np.full_like(X, 1e-5)
    both = shape_from_curvature(X, even, Ends.BOTH_ENDS)
    clamped = shape_from_curvature(X, even, Ends.LAST_CLAMPED)
    assert both == pytest.approx(1e-5 * X * (X - 400.0) / 2.0, abs=1e-12)
    assert clamped == pytest.approx(1e-5 * (400.0 - X) ** 2 / 2.0, abs=1e-12)


def test_rising_curvature_is_exact_on_uneven_stations() -> None:
    """k = a x has the shape a (x^3 - L^2 x) / 6 between ends, on any stations."""
    x = np.array([0.0, 13.0, 90.0, 91.0, 250.0, 400.0])
    found = shape_from_curvature(x, 1e-8 * x, Ends.BOTH_ENDS)
    assert found == pytest.approx(1e-8 * (x**3 - 400.0**2 * x) / 6.0, abs=1e-12)


def test_gentle_pull_is_moment_over_stiffness() -> None:
    stiffness = np.linspace(2e8, 6e8, X.size)
    height = np.linspace(10.0, 16.0, X.size)
    pulled = shape_under_pull(X, stiffness, height, 1e-3, Ends.LAST_CLAMPED, far_end=600.0)
    assert pulled == pytest.approx(shape_from_curvature(X, 1e-3 * height / stiffness, Ends.LAST_CLAMPED), rel=1e-6)


@pytest.mark.parametrize("far_end", [None, 640.0])
def test_varying_beam_against_a_boundary_value_solver(far_end: float | None) -> None:
    """EI v'' = P (h + rise - v), v = v' = 0 at the clamp, the line's near end riding on the beam: scipy.solve_bvp."""
    pull = 700.0

    def stiffness(x: np.ndarray) -> np.ndarray:
        return 1.5e8 + 8e5 * x

    def height(x: np.ndarray) -> np.ndarray:
        return 9.0 + 0.012 * x

    def slopes(x: np.ndarray, y: np.ndarray, tip: np.ndarray) -> np.ndarray:
        rise = tip[0] * (np.ones_like(x) if far_end is None else (far_end - x) / far_end)
        return np.vstack([y[1], pull * (height(x) + rise - y[0]) / stiffness(x)])

    def ends(first: np.ndarray, last: np.ndarray, tip: np.ndarray) -> np.ndarray:
        return np.array([first[0] - tip[0], last[0], last[1]])

    mesh = np.linspace(0.0, 400.0, 401)
    solved = solve_bvp(slopes, ends, mesh, np.zeros((2, 401)), p=[0.0], tol=1e-10)
    found = shape_under_pull(mesh, stiffness(mesh), height(mesh), pull, Ends.LAST_CLAMPED, far_end)
    assert found == pytest.approx(solved.sol(mesh)[0], abs=2e-5)


def test_a_line_fixed_at_its_far_end_bends_less_than_one_that_rides_along() -> None:
    riding = shape_under_pull(X, 3e8, 12.0, 800.0, Ends.LAST_CLAMPED)
    fixed = shape_under_pull(X, 3e8, 12.0, 800.0, Ends.LAST_CLAMPED, far_end=600.0)
    assert 0.0 < fixed[0] < riding[0]


def test_too_great_a_pull_is_refused() -> None:
    """Critical load pi^2 EI / L^2 = 6169 N for EI = 1e8 and 400 mm between ends."""
    shape_under_pull(X, 1e8, 10.0, 6000.0, Ends.BOTH_ENDS)
    for pull in (6300.0, 30000.0):  # past the first, and past the second way of folding
        with pytest.raises(ValueError, match="folding"):
            shape_under_pull(X, 1e8, 10.0, pull, Ends.BOTH_ENDS)


@pytest.mark.parametrize("unknown", ["pull", "stiffness", "line"])
def test_what_is_not_known_is_not_taken_for_folding_up(unknown: str) -> None:
    given = {"pull": 600.0, "stiffness": 3.0e8, "line": 12.0} | {unknown: np.nan}
    x = np.linspace(0.0, 330.0, 7)
    stiffness, line = np.full(7, given["stiffness"]), np.full(7, given["line"])
    assert np.isnan(shape_under_pull(x, stiffness, line, given["pull"], Ends.LAST_CLAMPED, 640.0)).all()


def test_straightedge_reads_the_gap_of_an_arc() -> None:
    """Even curvature between 0 and 400: gap in the middle k L^2 / 8 = 0.2 mm; a tilt changes nothing."""
    shape = shape_from_curvature(X, np.full_like(X, 1e-5), Ends.BOTH_ENDS)
    assert float(gap_under_straightedge(X, shape, 0.0, 400.0, 200.0)) == pytest.approx(0.2, rel=1e-12)
    assert float(gap_under_straightedge(X, shape + 0.01 * X, 0.0, 400.0, 200.0)) == pytest.approx(0.2, rel=1e-12)


def test_stations_must_rise() -> None:
    with pytest.raises(ValueError, match="rise along"):
        shape_from_curvature([0.0, 2.0, 1.0], [0.0, 0.0, 0.0], Ends.BOTH_ENDS)
