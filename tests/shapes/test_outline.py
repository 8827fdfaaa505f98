"""Outlines: shapes whose figures are known, a geometry library beside, and what holds for every outline."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from gramil.faults import MakersFault
from gramil.shapes.curve_through import closed_through
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_half_widths, through_points

X = (0, 15, 50, 100, 150, 200, 240, 290, 340, 400, 450, 480, 492)
WAISTED = (0, 70, 128, 148, 140, 124, 120, 135, 170, 196, 170, 110, 0)


def ellipse(length: float, width: float, pieces: int = 32) -> Outline:
    angles = np.linspace(math.pi, 0, pieces + 1)[1:-1]
    inner = [(length / 2 * (1 + math.cos(a)), width / 2 * math.sin(a)) for a in angles]
    return through_points([(0, 0), *inner, (length, 0)])


@pytest.fixture(scope="module")
def waisted() -> Outline:
    return through_half_widths(X, WAISTED)


@pytest.fixture(scope="module")
def polygon(waisted: Outline) -> shapely.Polygon:
    return shapely.Polygon(waisted.polyline(1e-5))


def test_it_goes_through_its_stations(waisted: Outline) -> None:
    assert waisted.half_width(X[1:-1]) == pytest.approx(WAISTED[1:-1], abs=1e-9)
    assert (waisted.start, waisted.end, waisted.length) == pytest.approx((0, 492, 492))


def test_nothing_beyond_the_ends(waisted: Outline) -> None:
    assert waisted.half_width([-1.0, 493.0]).tolist() == [0, 0]
    with pytest.raises(ValueError, match="beyond the outline's ends"):
        waisted.along(493)


def test_a_flat_end_has_its_width() -> None:
    flat = through_half_widths((0, 50, 100, 200, 250), (60, 80, 90, 70, 0))
    assert flat.points[:2] == ((0, 0), (0, 60))
    assert float(flat.half_width(0.0)) == pytest.approx(60, abs=1e-6)
    assert flat.along(0.0) == pytest.approx(60, abs=1e-6)


def test_a_rectangle_by_hand() -> None:
    """100 long and 60 wide: its four corners named."""
    box = through_points([(0, 30), (50, 30), (100, 30)], corners=[0, 2])
    assert (box.perimeter, box.area, box.centroid) == pytest.approx((320, 6000, 50), rel=1e-12)


def test_a_point_at_an_end() -> None:
    """A triangle 40 long and 60 wide at its far end: sides 50, base 60."""
    wedge = through_points([(0, 0), (20, 15), (40, 30)], corners=[0])
    assert (wedge.perimeter, wedge.area, wedge.centroid) == pytest.approx((160, 1200, 80 / 3), rel=1e-12)


def test_perimeter_and_area_as_a_library_has_them(waisted: Outline, polygon: shapely.Polygon) -> None:
    assert waisted.perimeter == pytest.approx(polygon.length, rel=1e-6)
    assert waisted.area == pytest.approx(polygon.area, rel=1e-6)
    assert waisted.centroid == pytest.approx(polygon.centroid.x, abs=1e-4)


def test_a_polyline_keeps_to_its_tolerance(waisted: Outline) -> None:
    coarse = shapely.Polygon(waisted.polyline(0.5)).exterior
    fine = shapely.points(waisted.polyline(0.001))
    assert shapely.distance(fine, coarse).max() < 0.5


def test_widest_and_narrowest_stations(waisted: Outline, polygon: shapely.Polygon) -> None:
    upper, waist, lower = waisted.stations
    assert [each.kind for each in waisted.stations] == ["widest", "narrowest", "widest"]
    assert 2 * lower.half_width == pytest.approx(waisted.width, abs=1e-9)
    assert 2 * lower.half_width == pytest.approx(polygon.bounds[3] - polygon.bounds[1], abs=1e-4)
    for station in (upper, waist, lower):
        assert waisted.point(station.along) == pytest.approx([station.x, station.half_width], abs=1e-7)
        assert waisted.tangent(station.along)[1] == pytest.approx(0, abs=1e-7)


def test_a_straight_side_has_one_widest_station_in_its_middle() -> None:
    box = through_points([(0, 30), (50, 30), (100, 30)], corners=[0, 2])
    (station,) = box.stations
    assert (station.kind, station.x, station.half_width) == ("widest", pytest.approx(50), pytest.approx(30))


@given(st.floats(0, 1))
def test_distance_along_is_the_curves_length(share: float) -> None:
    oval = ellipse(300, 200)
    along = share * oval.perimeter / 2
    run = oval.point(np.linspace(0, along, 2001))
    assert np.hypot(*np.diff(run, axis=0).T).sum() == pytest.approx(along, rel=1e-5, abs=1e-9)


@given(st.floats(1, 491))
def test_along_and_point_undo_each_other(x: float) -> None:
    outline = through_half_widths(X, WAISTED)
    assert outline.point(outline.along(x)) == pytest.approx([x, float(outline.half_width(x))], abs=1e-7)


@given(st.floats(0, 1511))
def test_the_lower_half_mirrors_the_upper(along: float) -> None:
    outline = through_half_widths(X, WAISTED)
    assert outline.point(outline.perimeter - along) == pytest.approx(outline.point(along) * [1, -1], abs=1e-7)


def test_normals_point_inwards(waisted: Outline) -> None:
    along = np.linspace(0, waisted.perimeter, 77)
    assert waisted.contains(waisted.point(along) + 0.5 * waisted.normal(along)).all()
    assert not waisted.contains(waisted.point(along) - 0.5 * waisted.normal(along)).any()


def test_a_circle_is_curved_alike_everywhere() -> None:
    circle = ellipse(200, 200, 48)
    assert circle.curvature(np.linspace(0, circle.perimeter, 50)) == pytest.approx(np.full(50, 0.01), rel=2e-3)


def test_inside_as_a_library_has_it(waisted: Outline, polygon: shapely.Polygon) -> None:
    points = np.stack(np.meshgrid(np.linspace(-20, 510, 61), np.linspace(-210, 210, 53)), axis=-1).reshape(-1, 2)
    assert (waisted.contains(points) == shapely.contains(polygon, shapely.points(points))).all()


def test_a_line_across_a_circle_by_hand() -> None:
    """Radius 100 about (100, 0): a line 60 above the axis meets it 80 either side of the centre."""
    found = ellipse(200, 200, 64).meets((0, 60), (1, 0))
    assert found == pytest.approx(np.array([[20, 60], [180, 60]]), abs=2e-5)


def test_lines_come_in_the_order_of_their_direction(waisted: Outline) -> None:
    forth, back = waisted.meets((250, 10), (1, 0.4)), waisted.meets((250, 10), (-1, -0.4))
    assert len(forth) == 2
    assert forth == pytest.approx(back[::-1], abs=1e-9)


def test_the_axis_meets_both_ends(waisted: Outline) -> None:
    assert waisted.meets((100, 0), (1, 0)) == pytest.approx(np.array([[0, 0], [492, 0]]), abs=1e-9)
    assert len(waisted.meets((0, 300), (1, 0))) == 0


@settings(max_examples=40)
@given(st.floats(20, 470), st.floats(-100, 100), st.floats(0, math.pi))
def test_lines_meet_it_where_a_library_says(x: float, y: float, angle: float) -> None:
    outline = through_half_widths(X, WAISTED)
    direction = np.array([math.cos(angle), math.sin(angle)])
    found = outline.meets((x, y), direction)
    ring = shapely.Polygon(outline.polyline(1e-4)).exterior
    assert shapely.distance(shapely.points(found), ring).max() < 1e-3
    assert np.abs((found - [x, y]) @ [-direction[1], direction[0]]).max() < 1e-7
    assert len(found) % 2 == 0


@given(st.floats(0.1, 20))
def test_all_lengths_scaled_scale_all_lengths(factor: float) -> None:
    small = through_half_widths(X, WAISTED)
    large = through_half_widths([factor * x for x in X], [factor * w for w in WAISTED])
    assert large.perimeter == pytest.approx(factor * small.perimeter, rel=1e-9)
    assert large.area == pytest.approx(factor**2 * small.area, rel=1e-9)


def test_a_closed_curve_of_no_symmetry_is_smooth_where_it_closes() -> None:
    angles = np.linspace(0, 2 * math.pi, 41)[:-1]
    curve = closed_through(np.stack((80 * np.cos(angles), 50 * np.sin(angles)), axis=-1))
    assert curve.tangent(0.0) == pytest.approx(curve.tangent(curve.length - 1e-9), abs=1e-6)
    square = closed_through([(0, 0), (10, 0), (10, 10), (0, 10)], corners=[0, 1, 2, 3])
    assert square.length == pytest.approx(40, rel=1e-12)


def test_what_crosses_its_axis_is_named_with_the_place() -> None:
    with pytest.raises(MakersFault, match=r"body: the outline crosses itself at x = 1\d\d\.\d\d mm, 0\.00 mm"):
        through_half_widths((0, 50, 100, 150, 200), (0, 80, 0.5, 0.5, 80), where="body")


def test_what_crosses_itself_is_named_with_the_place() -> None:
    """A loop whose legs are drawn to cross at about (100, 60)."""
    points = [
        (0, 0),
        (20, 40),
        (70, 50),
        (130, 75),
        (140, 110),
        (100, 130),
        (60, 110),
        (70, 75),
        (130, 45),
        (180, 30),
        (200, 0),
    ]
    with pytest.raises(MakersFault) as caught:
        through_points(points)
    (fault,) = caught.value.faults
    assert "crosses itself at x = " in fault.what
    place = float(fault.what.split("x = ")[1].split(" mm")[0])
    assert place == pytest.approx(100, abs=8)


@pytest.mark.parametrize(
    ("points", "words"),
    [
        ([(0, 0), (10, 0)], "2 points do not make an outline"),
        ([(0, 0), (10, -5), (20, 0)], "the half-width at x = 10 mm is -5 mm"),
        ([(0, 0), (10, 5), (10, 5), (20, 0)], r"the point \(10, 5\) mm comes twice running"),
        ([(20, 0), (10, 5), (0, 0)], "runs from x = 20 mm to x = 0 mm"),
        ([(0, 0), (10, math.nan), (20, 0)], "not a number"),
    ],
)
def test_what_makes_no_outline_is_said(points: list[tuple[float, float]], words: str) -> None:
    with pytest.raises(MakersFault, match=words):
        through_points(points)


def test_stations_in_disorder_are_named() -> None:
    with pytest.raises(MakersFault, match="the station at 40 mm comes after the one at 50 mm"):
        through_half_widths((0, 50, 40, 100), (0, 10, 10, 0))
    with pytest.raises(MakersFault, match="2 stations but 3 half-widths"):
        through_half_widths((0, 50), (0, 10, 0))


def test_a_few_places_asked_for_again_give_the_same_and_cannot_be_written_over() -> None:
    """A circle of 100: at 40 and 60 from its first end its half-width is sqrt(100^2 - 60^2) and sqrt(100^2 - 40^2)."""
    turns = np.linspace(0.0, np.pi, 33)
    circle = through_points([(100 - 100 * float(np.cos(a)), 100 * float(np.sin(a))) for a in turns])
    for _ in range(2):
        assert circle.half_width(np.array([40.0, 60.0])) == pytest.approx([80.0, np.sqrt(8400.0)], abs=1e-3)
    assert circle.half_width(60.0) == pytest.approx(np.sqrt(8400.0), abs=1e-3)
