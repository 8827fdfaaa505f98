"""Room between closed shapes, against a library's distances, and by hand where they overlap."""

import numpy as np
import pytest
import shapely

from gramil.shapes.hole import Hole
from gramil.shapes.room_between import room_between, room_within

SQUARE = ((0.0, 0.0), (40.0, 0.0), (40.0, 40.0), (0.0, 40.0))


@pytest.mark.parametrize("x", [70.0, 61.0, 90.0])
@pytest.mark.parametrize("lean", [0.0, 0.4])
def test_apart_as_a_library_has_it(x: float, lean: float) -> None:
    oval = Hole("oval", 30.0, 50.0).placed(x, 25.0, lean)
    assert room_between(oval, SQUARE) == pytest.approx(
        shapely.Polygon(oval).distance(shapely.Polygon(SQUARE)), abs=1e-9
    )


def test_negative_by_how_deep_they_run_into_each_other() -> None:
    other = ((35.0, 10.0), (60.0, 10.0), (60.0, 30.0), (35.0, 30.0))
    assert room_between(SQUARE, other) == pytest.approx(-5.0)
    assert room_between(other, SQUARE) == pytest.approx(-5.0)


def test_one_that_lies_wholly_in_the_other_is_no_room() -> None:
    inner = ((15.0, 15.0), (25.0, 15.0), (25.0, 25.0), (15.0, 25.0))
    assert room_between(SQUARE, inner) == pytest.approx(-15.0)


def test_within() -> None:
    inner = np.array(((5.0, 5.0), (30.0, 5.0), (30.0, 30.0)))
    assert room_within(inner, SQUARE) == pytest.approx(5.0)
    assert room_within(inner + np.array([12.0, 0.0]), SQUARE) == pytest.approx(-2.0)


@pytest.mark.parametrize("seed", range(12))
def test_within_a_ring_of_many_corners_as_a_library_has_it(seed: int) -> None:
    """Corners unevenly apart: the edge that lies nearest need not have the nearest corner."""
    chance = np.random.default_rng(seed)
    turns = np.sort(chance.uniform(0.0, 2 * np.pi, int(chance.integers(5, 60))))
    ring = np.stack((150.0 * np.cos(turns), 100.0 * np.sin(turns)), axis=1)
    hole = Hole("oval", 60.0, 40.0).placed(*chance.uniform(-20.0, 20.0, 2), 0.3)
    round_it = shapely.Polygon(ring)
    if round_it.contains(shapely.Polygon(hole)):
        assert room_within(hole, ring) == pytest.approx(
            min(round_it.exterior.distance(shapely.Point(each)) for each in hole), abs=1e-9
        )
    else:
        worst = max(round_it.distance(shapely.Point(each)) for each in hole)
        assert room_within(hole, ring) == pytest.approx(-worst, abs=1e-9)
