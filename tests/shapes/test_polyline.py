"""Runs of straight pieces: crossings by hand and beside a geometry library, loops cut off, nearest places."""

from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from gramil.shapes.polyline import crossings, cut_between, nearest_on_ring, thinned, without_loops

RUNS = st.lists(st.tuples(st.integers(-50, 50), st.integers(-50, 50)), min_size=4, max_size=14, unique=True)


def test_a_crossing_by_hand() -> None:
    run = np.array([(0, 0), (10, 10), (10, 0), (0, 10)], dtype=float)
    assert crossings(run) == ((0, 2, 5, 5),)


def test_a_ring_that_closes_does_not_cross_itself_there() -> None:
    box = np.array([(0, 0), (10, 0), (10, 10), (0, 10)], dtype=float)
    assert crossings(box, closed=True) == ()


@given(RUNS)
def test_pairs_that_cross_as_a_library_has_them(points: list[tuple[int, int]]) -> None:
    """Each pair of pieces, neighbours and parallel pairs left out."""
    run = np.array(points, dtype=float)
    pieces = [shapely.LineString(pair) for pair in pairwise(points)]
    steps = np.diff(run, axis=0)
    expected = {
        (i, j)
        for i in range(len(pieces))
        for j in range(i + 2, len(pieces))
        if steps[i, 0] * steps[j, 1] != steps[i, 1] * steps[j, 0] and pieces[i].distance(pieces[j]) < 1e-12
    }
    found = crossings(run)
    assert [pair[:2] for pair in found] == sorted(pair[:2] for pair in found)
    touching = {(i, j) for i, j in expected if _touch(points, i, j)}  # an end on a piece: rounding decides
    assert expected - touching <= {pair[:2] for pair in found} <= expected
    for i, j, x, y in found:
        assert pieces[i].distance(shapely.Point(x, y)) < 1e-9
        assert pieces[j].distance(shapely.Point(x, y)) < 1e-9


def _touch(points: list[tuple[int, int]], i: int, j: int) -> bool:
    one, other = shapely.LineString(points[i : i + 2]), shapely.LineString(points[j : j + 2])
    ends = [(other, points[i]), (other, points[i + 1]), (one, points[j]), (one, points[j + 1])]
    return any(line.distance(shapely.Point(end)) < 1e-9 for line, end in ends)


def test_a_loop_is_cut_off() -> None:
    run = np.array([(0, 0), (10, 0), (10, 10), (5, 10), (5, -10)], dtype=float)
    assert without_loops(run) == pytest.approx(np.array([[0, 0], [5, 0], [5, -10]]))


@given(RUNS)
def test_no_crossing_is_left(points: list[tuple[int, int]]) -> None:
    left = without_loops(np.array(points, dtype=float))
    assert crossings(left) == ()
    assert (left[0] == points[0]).all()


def test_the_nearest_place_as_a_library_has_it() -> None:
    angles = np.linspace(0, 2 * np.pi, 721)[:-1]
    ring = np.stack((80 * np.cos(angles), 50 * np.sin(angles)), axis=-1)
    places = np.array([[80.0, 60.0], [-3.0, 34.0], [79.0, 1.0], [-81.0, -0.3]])
    line = shapely.LinearRing(ring)
    theirs = [line.interpolate(line.project(shapely.Point(place))).coords[0] for place in places]
    assert nearest_on_ring(ring, places) == pytest.approx(np.array(theirs), abs=1e-9)


@given(st.integers(3, 200), st.floats(0.01, 5.0), st.integers(0, 2**32 - 1))
def test_a_thinned_run_lies_within_the_tolerance(count: int, tolerance: float, seed: int) -> None:
    """By Shapely's own distance of every point from the line that is left."""
    points = np.cumsum(np.random.default_rng(seed).normal(size=(count, 2)), axis=0)
    left = thinned(points, tolerance)
    line = shapely.LineString(left)
    assert max(line.distance(shapely.Point(point)) for point in points) <= tolerance + 1e-12
    assert left[[0, -1]].tolist() == points[[0, -1]].tolist()


def test_a_quarter_circle_is_thinned_to_the_chords_that_it_needs() -> None:
    """A chord over an angle a lies 1 - cos(a / 2) from a circle of radius 1: 0.001 allows 5.126 degrees.

    Of steps of 90 / 1024 degrees that is 58, and 1024 / 58 is 17.7: 18 chords.
    """
    turns = np.radians(np.linspace(0, 90, 1025))
    run = thinned(np.stack((np.cos(turns), np.sin(turns)), axis=-1), 0.001)
    assert len(run) - 1 == 18


def test_a_corner_is_not_cut_off() -> None:
    """Both legs straight, 1 mm a step: a chord that leaves out the corner passes it by more than half a step."""
    legs = np.array([[x, 0.0] for x in range(11)] + [[10.0, y] for y in range(1, 11)])
    assert [10.0, 0.0] in thinned(legs, 0.3).tolist()


def test_a_stretch_taken_out_by_hand() -> None:
    """Between the places next to (2, 1) and (10, 7): the corner at (10, 0) goes."""
    run = np.array([(0, 0), (10, 0), (10, 10)], dtype=float)
    before, after = cut_between(run, np.array((2.0, 1.0)), np.array((12.0, 7.0)))
    assert before.tolist() == [[0, 0], [2, 0]]
    assert after.tolist() == [[10, 7], [10, 10]]
