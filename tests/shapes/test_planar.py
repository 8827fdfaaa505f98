"""Lines, strips and polygons by hand and beside a geometry library."""

import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from gramil.shapes import planar
from gramil.shapes.planar import Point, boxes_apart, least_apart, polygon_contains, polygon_figures, polygons_apart

EIGHTHS = st.integers(-4000, 4000).map(lambda eighths: eighths / 8)
PLACES = st.tuples(EIGHTHS, EIGHTHS)
Corners = tuple[Point, ...]


def strip(start: Point, end: Point, width: float) -> Corners:
    """A straight strip about its middle line, cut off square: once round, anticlockwise."""
    (x, y), (u, v) = start, end
    half = width / (2 * math.hypot(u - x, v - y))
    dx, dy = (u - x) * half, (v - y) * half
    return ((x + dy, y - dx), (u + dy, v - dx), (u - dy, v + dx), (x - dy, y + dx))


STRIPS = st.builds(
    lambda start, angle, length, width: strip(
        start, (start[0] + length * math.cos(angle), start[1] + length * math.sin(angle)), width
    ),
    PLACES,
    st.floats(0, 6.28),
    st.floats(1, 400),
    st.floats(0.5, 40),
)


def test_two_lines_by_hand() -> None:
    """y = x and y = 10 - x meet at (5, 5)."""
    assert planar.lines_meet((0, 0), (2, 2), (0, 10), (1, -1)) == pytest.approx((5, 5))
    assert planar.lines_meet((0, 0), (1, 0), (0, 1), (-2, 0)) is None


def test_segments_that_stop_short_do_not_meet() -> None:
    assert planar.segments_meet((0, 0), (4, 4), (0, 10), (10, 0)) is None
    assert planar.segments_meet((0, 0), (5, 5), (0, 10), (10, 0)) == pytest.approx((5, 5))


def test_distances_by_hand() -> None:
    assert planar.nearest_on_segment((3, 4), (0, 0), (10, 0)) == (3, 0)
    assert planar.nearest_on_segment((-3, 4), (0, 0), (10, 0)) == (0, 0)


def test_a_strip_by_hand() -> None:
    """30 long and 4 wide along the x axis: its edge is its own, what lies 0.1 beyond is not."""
    found = strip((10, 5), (40, 5), 4)
    assert found == ((10, 3), (40, 3), (40, 7), (10, 7))
    assert polygon_contains(found, (10, 3))
    assert not polygon_contains(found, (9.9, 5))


@given(STRIPS, STRIPS)
def test_strips_apart_as_a_library_has_it(one: Corners, other: Corners) -> None:
    theirs = shapely.Polygon(one).distance(shapely.Polygon(other))
    assert polygons_apart(one, other) == pytest.approx(theirs, abs=1e-7)


def test_two_strips_across_each_other_are_not_apart() -> None:
    """A cross: no corner of the one lies in the other, yet they overlap."""
    assert polygons_apart(strip((0, 0), (100, 0), 4), strip((50, -50), (50, 50), 4)) == 0


def test_a_strip_within_another_is_not_apart() -> None:
    assert polygons_apart(strip((0, 0), (100, 0), 40), strip((40, 0), (50, 0), 2)) == 0


@given(STRIPS)
def test_a_strips_polygon_is_a_rectangle(corners: Corners) -> None:
    """Area b h, whatever its direction."""
    length, width = math.dist(*corners[:2]), math.dist(*corners[1:3])
    figures = polygon_figures(corners)
    assert figures.area == pytest.approx(length * width, rel=1e-9)


def test_a_right_triangle_by_hand() -> None:
    """Base 6, height 3, its right angle at the origin: b h/2, and a third of each from there."""
    for corners in ([(0, 0), (6, 0), (0, 3)], [(0, 3), (6, 0), (0, 0)]):
        figures = polygon_figures(corners)
        assert figures.area == pytest.approx(9)
        assert figures.centroid == pytest.approx((2, 1))


def test_far_off_polygons_lose_no_digits() -> None:
    far = polygon_figures([(1e7, 1e7), (1e7 + 6, 1e7), (1e7, 1e7 + 3)])
    assert far.area == pytest.approx(9, rel=1e-12)
    assert far.centroid == pytest.approx((1e7 + 2, 1e7 + 1), rel=1e-15)


def test_a_polygon_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="encloses nothing"):
        polygon_figures([(0, 0), (1, 1), (2, 2)])


@given(PLACES)
def test_inside_a_hollow_polygon_as_a_library_has_it(place: planar.Point) -> None:
    corners = [(-400, -300), (350, -420), (100, 20), (420, 380), (-60, 250), (-300, 400)]
    assert planar.polygon_contains(corners, place) == shapely.Polygon(corners).covers(shapely.Point(place))


def test_the_least_of_many_pairs_is_that_of_all_looked_at() -> None:
    """Three squares of side 1 in a row, 2 and 5 apart: the least is 2; without a pair there is none."""

    def square(x: float) -> tuple[tuple[float, float], ...]:
        return ((x, 0.0), (x + 1, 0.0), (x + 1, 1.0), (x, 1.0))

    pairs = [(square(0), square(6)), (square(0), square(3)), (square(3), square(40))]
    assert least_apart(pairs) == pytest.approx(2.0)
    assert least_apart([(square(0), square(0.5)), *pairs]) == 0.0
    assert math.isnan(least_apart([]))
    assert boxes_apart(square(0), ((4.0, 5.0), (5.0, 5.0), (5.0, 6.0))) == pytest.approx(5.0)  # 3 across, 4 up
