"""Curves through given points: true to a circle, and no bulge between points that are far apart.

An arc of radius r between points a degrees apart leaves its chord by r (1 - cos(a / 2)): the sagitta, by hand.
"""

import math
from itertools import pairwise

import numpy as np
import pytest

from gramil.shapes.curve_through import through, through_apart

HEADS = {
    "square": [(0, 22), (12, 23), (25, 34), (160, 36), (168, 30), (170, 0)],
    "stepped": [(0, 22), (15, 22.5), (22, 34), (165, 36), (170, 31), (171, 0)],
    "four points": [(0, 22), (30, 36), (160, 36), (170, 0)],
}
"""Halves of heads with no corner marked, their sides one long span."""


def round_about(half: list[tuple[float, float]]) -> list[tuple[float, float]]:
    return [*half, *((along, -across) for along, across in reversed(half[:-1]))]


def widest(curve) -> float:
    return float(curve.polyline(0.02)[:, 1].max())


def circle(degrees: list[float]) -> np.ndarray:
    angles = np.radians(degrees)
    return 90 * np.stack((1 - np.cos(angles), np.sin(angles)), axis=-1)


@pytest.mark.parametrize("step", [5, 10, 20, 30])
def test_a_circle_coarsely_sampled_stays_a_circle(step: int) -> None:
    """Out by a fifteenth of the sagitta at most, at its free ends: chords alone would be out by all of it."""
    points = circle(list(range(step, 361 - step, step)))
    line = through_apart(points).polyline(0.001)
    sagitta = 90 * (1 - math.cos(math.radians(step / 2)))
    assert abs(np.hypot(line[:, 0] - 90, line[:, 1]) - 90).max() < max(sagitta / 15, 0.002)


def test_a_circle_unevenly_sampled_is_left_to_the_batten() -> None:
    """Spans up to two and a half times their neighbours: within a tenth of a millimetre on 90 mm."""
    points = circle([4, 16, 46, 64, 90, 120, 132, 160, 180, 205, 235, 250, 280, 310, 330, 350])
    line = through_apart(points).polyline(0.001)
    assert abs(np.hypot(line[:, 0] - 90, line[:, 1]) - 90).max() < 0.1
    assert (line == through(points).polyline(0.001)).all()


@pytest.mark.parametrize("name", HEADS)
def test_a_long_side_does_not_bulge(name: str) -> None:
    """Out of its points as far as an arc of some 30 degrees on the side at most; a batten goes twice as far."""
    half = HEADS[name]
    side = max(math.dist(one, other) for one, other in pairwise(half))
    points = round_about(half)
    out = widest(through_apart(points)) - 36
    assert 0 <= out < side * math.tan(math.radians(30 / 4)) / 2 * 1.1
    assert widest(through(points)) - 36 > 2 * out


@pytest.mark.parametrize("name", HEADS)
def test_it_goes_through_its_points_and_has_no_kink(name: str) -> None:
    points = np.array(round_about(HEADS[name]))
    curve = through_apart(points)
    np.testing.assert_allclose(curve.place(curve.breaks), points, atol=1e-9)
    inner = curve.breaks[1:-1]
    before, after = (
        np.gradient(curve.place(inner[:, None] + np.array([0, 1e-5]) * sign), axis=1)[:, 0] * sign for sign in (-1, 1)
    )
    turn = np.arctan2(before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0], (before * after).sum(axis=1))
    assert abs(turn).max() < 1e-3


def test_a_marked_corner_stays_sharp_and_a_straight_side_straight() -> None:
    """With its corners marked, a square head's side is the line between them."""
    half = [(0.0, 22.0), (25.0, 34.0), (160.0, 36.0), (170.0, 0.0)]
    line = through_apart(round_about(half), [1, 2, 4, 5]).polyline(0.02)
    assert line[:, 1].max() == 36.0
