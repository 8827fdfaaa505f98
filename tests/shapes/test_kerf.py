"""The way of a cut beside an edge, held against a library's offsets and against shapes worked out by hand."""

from math import cos, pi, sin

import pytest
from shapely import LinearRing, Point, Polygon, hausdorff_distance

from gramil.shapes.kerf import moved_out

SQUARE = ((0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0))
NOTCHED = ((0.0, 0.0), (10.0, 0.0), (10.0, 5.0), (14.0, 5.0), (14.0, 0.0), (40.0, 0.0), (40.0, 20.0), (0.0, 20.0))


def test_a_box_grows_by_the_distance_on_every_side() -> None:
    assert moved_out(SQUARE, 0.5) == ((-0.5, -0.5), (40.5, -0.5), (40.5, 30.5), (-0.5, 30.5))
    assert moved_out(SQUARE[::-1], -0.5) == ((0.5, 29.5), (39.5, 29.5), (39.5, 0.5), (0.5, 0.5))


def test_a_notch_narrows_as_the_outline_grows() -> None:
    moved = moved_out(NOTCHED, 0.1)
    assert moved is not None
    xs = [x for x, y in moved if 0 < y < 10]
    assert max(xs) - min(xs) == pytest.approx(4.0 - 0.2)


@pytest.mark.parametrize("distance", [0.07, 0.5, -0.5, 1.5])
@pytest.mark.parametrize(
    "ring", [SQUARE, NOTCHED, NOTCHED[::-1], ((0.0, 0.0), (60.0, 5.0), (50.0, 30.0), (20.0, 14.0))]
)
def test_it_lies_where_a_library_has_it(ring, distance) -> None:
    moved = moved_out(ring, distance)
    wanted = Polygon(ring).buffer(distance, join_style="mitre", mitre_limit=10).exterior
    assert moved is not None
    assert hausdorff_distance(LinearRing(moved), wanted) < 1e-9


def test_a_ring_of_chords_stays_round() -> None:
    ring = [(20 * cos(2 * pi * step / 200), 20 * sin(2 * pi * step / 200)) for step in range(200)]
    for distance in (0.2, -0.2):
        moved = moved_out(ring, distance)
        assert moved is not None
        assert all((x * x + y * y) ** 0.5 == pytest.approx(20 + distance, abs=1e-4) for x, y in moved)


def test_a_sharp_point_is_cut_across_and_never_nearer_than_the_distance() -> None:
    needle = ((0.0, 0.0), (50.0, 1.0), (50.0, -1.0))
    moved = moved_out(needle[::-1], 0.5)
    assert moved is not None
    assert len(moved) == 4
    assert LinearRing(moved).distance(Polygon(needle)) == pytest.approx(0.5)
    assert min(x for x, _ in moved) > -2.0
    assert Polygon(moved).contains(Point(0.0, 0.0))


@pytest.mark.parametrize("distance", [2.0, 2.1, 30.0])
def test_a_notch_too_narrow_for_the_cut_is_told(distance) -> None:
    assert moved_out(NOTCHED, distance) is None


def test_a_waist_too_narrow_for_a_cut_inside_it_is_told() -> None:
    waisted = ((0.0, 0.0), (20.0, 9.0), (40.0, 0.0), (40.0, 20.0), (20.0, 11.0), (0.0, 20.0))
    assert moved_out(waisted, -0.5) is not None
    assert moved_out(waisted, -1.5) is None


def test_points_that_repeat_count_once() -> None:
    assert moved_out((*SQUARE, SQUARE[0]), 1.0) == moved_out(SQUARE, 1.0)
