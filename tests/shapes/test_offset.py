"""Outlines moved in and out: by closed forms, by distances to the outline they came from, and beside a library."""

import math

import numpy as np
import pytest
import shapely

from gramil.faults import MakersFault
from gramil.shapes.offset import moved_in
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_half_widths, through_points

X = (0, 15, 50, 100, 150, 200, 240, 290, 340, 400, 450, 480, 492)
ROUND = (0, 70, 128, 148, 140, 124, 120, 135, 170, 196, 170, 110, 0)
FLAT = (50, *ROUND[1:])


def polygon(outline: Outline, tolerance: float = 1e-4) -> shapely.Polygon:
    return shapely.Polygon(outline.polyline(tolerance))


@pytest.mark.parametrize("distance", [5.0, 30.0, -5.0])
def test_a_circle_stays_a_circle(distance: float) -> None:
    angles = np.linspace(math.pi, 0, 65)[1:-1]
    circle = through_points([(-100, 0), *((100 * math.cos(a), 100 * math.sin(a)) for a in angles), (100, 0)])
    moved = moved_in(circle, distance)
    assert moved.area == pytest.approx(math.pi * (100 - distance) ** 2, rel=1e-6)
    assert moved.perimeter == pytest.approx(2 * math.pi * (100 - distance), rel=1e-6)


def test_a_rectangle_in_and_out_by_hand() -> None:
    """100 x 60: 10 inside it is 80 x 40 with sharp corners; 10 outside, its corners are quarter circles."""
    box = through_points([(0, 30), (50, 30), (100, 30)], corners=[0, 2])
    inside, outside = moved_in(box, 10), moved_in(box, -10)
    assert (inside.area, inside.perimeter) == pytest.approx((3200, 240), rel=1e-9)
    assert outside.area == pytest.approx(6000 + 2 * 10 * 160 + 100 * math.pi, rel=1e-5)
    assert outside.perimeter == pytest.approx(320 + 20 * math.pi, rel=1e-5)


@pytest.mark.parametrize("widths", [ROUND, FLAT])
@pytest.mark.parametrize("distance", [2.5, 12.0, 60.0, -4.0])
def test_every_point_lies_at_the_distance(widths: tuple[float, ...], distance: float) -> None:
    outline = through_half_widths(X, widths)
    moved = moved_in(outline, distance)
    away = shapely.distance(shapely.points(moved.polyline(1e-3)), polygon(outline).exterior)
    assert away == pytest.approx(np.full(len(away), abs(distance)), abs=5e-3)


@pytest.mark.parametrize("widths", [ROUND, FLAT])
@pytest.mark.parametrize("distance", [2.5, 12.0])
def test_inside_as_a_library_has_it(widths: tuple[float, ...], distance: float) -> None:
    outline = through_half_widths(X, widths)
    theirs = polygon(outline).buffer(-distance, join_style="mitre", quad_segs=200)
    ours = moved_in(outline, distance)
    assert ours.area == pytest.approx(theirs.area, rel=1e-5)
    assert polygon(ours).exterior.hausdorff_distance(theirs.exterior) < 5e-3


def test_nothing_is_lost_where_a_bend_is_tighter_than_the_distance() -> None:
    """Of points inside, those farther than 60 mm from the outline are those within the outline moved in by 60 mm."""
    outline = through_half_widths(X, FLAT)
    moved, edge = moved_in(outline, 60), polygon(outline)
    points = np.stack(np.meshgrid(np.arange(3, 490, 7.0), np.arange(-195, 196, 7.0)), axis=-1).reshape(-1, 2)
    spots = shapely.points(points)
    deep = shapely.contains(edge, spots) & (shapely.distance(spots, edge.exterior) > 60)
    assert (moved.contains(points) == deep).all()


def test_no_distance_is_no_change() -> None:
    outline = through_half_widths(X, ROUND)
    assert moved_in(outline, 0) is outline


@pytest.mark.parametrize("distance", [125.0, 300.0])
def test_no_room_is_said(distance: float) -> None:
    """The narrowest half-width is 119.76 mm: beyond it two parts are left, and then none."""
    with pytest.raises(
        MakersFault, match=f"lining: an outline {distance:g} mm inside this one does not stay in one piece"
    ):
        moved_in(through_half_widths(X, ROUND), distance, where="lining")
