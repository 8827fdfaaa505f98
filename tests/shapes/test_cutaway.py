"""A cutaway by a few measures: what was asked for is read back from the outline by a geometry library."""

import math

import numpy as np
import pytest
import shapely

from gramil.faults import MakersFault
from gramil.shapes.bends import turns_of
from gramil.shapes.cutaway import Cutaway, cut_away
from gramil.shapes.dome import Dome
from gramil.shapes.offset import moved_in
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_half_widths, through_points
from gramil.shapes.unrolled import UnrolledSide, enclosed_volume
from gramil.shapes.walled import volume_within

X = (0, 15, 50, 100, 150, 200, 240, 290, 340, 400, 450, 480, 492)
WAISTED = (0, 70, 128, 148, 140, 124, 120, 135, 170, 196, 170, 110, 0)
ROUND = Cutaway(depth=95, horn=68, radius=22, heel=28)
POINTED = Cutaway(depth=95, horn=60, radius=0, heel=28)


@pytest.fixture(scope="module")
def whole() -> Outline:
    return through_half_widths(X, WAISTED)


@pytest.fixture(scope="module", params=[ROUND, POINTED], ids=["round", "pointed"])
def cutaway(request: pytest.FixtureRequest) -> Cutaway:
    return request.param


@pytest.fixture(scope="module")
def cut(whole: Outline, cutaway: Cutaway) -> Outline:
    return cut_away(whole, cutaway)


@pytest.fixture(scope="module")
def polygon(cut: Outline) -> shapely.Polygon:
    return shapely.Polygon(cut.polyline(1e-4))


def test_the_other_half_is_as_it_was(whole: Outline, cut: Outline) -> None:
    along = np.linspace(0, 492, 50)
    assert (cut.bass_half.half_width(along) == whole.half_width(along)).all()
    assert cut.bass_half.curve.length == whole.half.length


def test_nothing_of_the_treble_half_grew(whole: Outline, polygon: shapely.Polygon) -> None:
    assert polygon.difference(shapely.Polygon(whole.polyline(1e-4)).buffer(0.002)).is_empty


def test_the_measures_are_read_back(whole: Outline, cutaway: Cutaway, polygon: shapely.Polygon) -> None:
    """Looked at from the neck between heel and horn, the body begins at the depth; beside that lies the horn.

    A hollow is so flat at its deepest that a micrometre along is half a millimetre across.
    """
    assert polygon.is_valid
    heights = np.linspace(cutaway.heel + 0.5, float(whole.half_width(cutaway.depth)) - 0.5, 2000)
    strips = [polygon.intersection(shapely.LineString([(-20, y), (300, y)])) for y in heights]
    deepest = int(np.argmax([each.bounds[0] for each in strips]))
    assert strips[deepest].bounds[0] == pytest.approx(cutaway.depth, abs=2e-3)
    at_depth = polygon.intersection(shapely.LineString([(cutaway.depth + 1e-3, 0), (cutaway.depth + 1e-3, 300)]))
    assert at_depth.bounds[3] - heights[deepest] == pytest.approx(cutaway.horn, abs=0.5)
    ahead = polygon.intersection(shapely.LineString([(20, 0), (20, 300)]))
    assert ahead.bounds[3] == pytest.approx(cutaway.heel, abs=1e-6)


def test_perimeter_and_area_as_a_library_has_them(cut: Outline, polygon: shapely.Polygon) -> None:
    assert cut.perimeter == pytest.approx(polygon.length, abs=2e-3)
    assert cut.area == pytest.approx(polygon.area, abs=0.1)
    assert cut.centroid == pytest.approx(polygon.centroid.x, abs=1e-4)


def test_inside_as_a_library_has_it(cut: Outline, polygon: shapely.Polygon) -> None:
    points = np.stack(np.meshgrid(np.linspace(-20, 510, 101), np.linspace(-210, 210, 87)), axis=-1).reshape(-1, 2)
    assert (cut.contains(points) == shapely.contains(polygon, shapely.points(points))).all()


def test_moved_in_and_out_as_a_library_does_it(cut: Outline, polygon: shapely.Polygon) -> None:
    for distance in (2.1, 8.1, -3.0):
        moved = shapely.Polygon(moved_in(cut, distance).polyline(1e-4))
        library = polygon.buffer(-distance, quad_segs=64)
        assert moved.symmetric_difference(library).area < 0.06


def test_the_horns_end_is_an_arc_of_its_radius(whole: Outline) -> None:
    hollow, horn, waist, lower = [each for each in turns_of(cut_away(whole, ROUND).half) if each.kind != "corner"]
    assert horn.radius == pytest.approx(22, rel=1e-3)
    by_hand = float(whole.half_width(95)) - 68 - 28
    assert hollow.radius == pytest.approx(by_hand, rel=1e-3)
    assert [each.kind for each in (hollow, horn, waist, lower)] == ["hollow", "bulge", "hollow", "bulge"]
    assert waist.radius == pytest.approx(1 / abs(float(whole.curvature(whole.along(waist.x)))), rel=0.01)


def test_a_pointed_horn_is_a_corner(whole: Outline) -> None:
    cut = cut_away(whole, POINTED)
    heel, point = [each for each in turns_of(cut.half) if each.kind == "corner"]
    assert (heel.y, heel.x) == pytest.approx((28, float(whole.meets((0, 28), (1, 0))[0, 0])))
    assert point.y == pytest.approx(float(whole.half_width(point.x)), abs=1e-3)
    middle = 95 - (float(whole.half_width(95)) - 60 - 28)
    assert math.dist((point.x, point.y), (middle, 95 - middle + 28)) == pytest.approx(95 - middle, abs=1e-3)


def test_all_lengths_doubled_double_all_lengths(whole: Outline, cutaway: Cutaway, cut: Outline) -> None:
    twice = through_half_widths([2 * each for each in X], [2 * each for each in WAISTED])
    other = cut_away(
        twice, Cutaway(*(2 * each for each in (cutaway.depth, cutaway.horn, cutaway.radius, cutaway.heel)))
    )
    assert other.treble_half.curve.length == pytest.approx(2 * cut.treble_half.curve.length, rel=1e-6)
    assert other.area == pytest.approx(4 * cut.area, rel=1e-6)


@pytest.mark.parametrize(
    ("measures", "words"),
    [
        (Cutaway(95, 125, 10, 28), "leaves no room for the hollow"),
        (Cutaway(20, 30, 10, 28), "does not fit in behind the neck's end"),
        (Cutaway(95, 40, 75, 28), "does not reach its depth"),
        (Cutaway(600, 40, 20, 28), "leaves no room for the hollow"),
        (Cutaway(95, 30, 10, 190), "leaves no room for the hollow"),
    ],
)
def test_what_cannot_be_cut_is_refused(whole: Outline, measures: Cutaway, words: str) -> None:
    with pytest.raises(MakersFault, match=words):
        cut_away(whole, measures)


def test_a_slight_corner_at_the_neck_is_kept_clear_of_on_either_side() -> None:
    """The flat neck's end goes over into the bout with a turn of some 0.2: come to from the one side or the other, the
    line inside keeps its distance."""
    neck = [(0, 38), (5.9, 60.11), (15.27, 80.98), (28.61, 99.21), (44.64, 112.41), (62.64, 120.76), (90, 125)]
    tail = [(127.14, 118.95), (180, 107.5), (246, 134.5), (340, 175), (410.3, 155.2), (470.3, 80.4), (485, 0)]
    whole = through_points([*neck, *tail])
    polygon = shapely.Polygon(cut_away(whole, Cutaway(95, 50, 22, 30)).polyline(1e-4))
    for distance in (2.1, 8.1):
        moved = shapely.Polygon(moved_in(cut_away(whole, Cutaway(95, 50, 22, 30)), distance).polyline(1e-4))
        assert moved.symmetric_difference(polygon.buffer(-distance, quad_segs=64)).area < 0.1


def test_the_room_within_walls_as_a_library_has_it(cut: Outline, polygon: shapely.Polygon) -> None:
    """Flat plates 100 mm apart: what is left inside sides 2.1 mm thick.

    What two walls share at a corner that turns by t counts twice: by plane geometry wall^2 tan(t / 2).
    """
    side = UnrolledSide(cut, 100.0, 100.0, Dome(0, 0), Dome(0, 0))
    inside = polygon.buffer(-2.1, join_style="mitre").area
    twice = sum(2.1**2 * math.tan(abs(each.turn) / 2) for each in turns_of(cut.half) if each.kind == "corner")
    assert volume_within(side, 2.1) == pytest.approx(100.0 * (inside - twice), abs=30)
    assert enclosed_volume(side) == pytest.approx(100.0 * polygon.area, rel=1e-6)
    whole = UnrolledSide(cut, 90.0, 110.0, Dome(1 / 7000, 246), Dome(1 / 4500, 246))
    assert whole.length + whole.other.length == pytest.approx(polygon.length, abs=2e-3)


@pytest.mark.parametrize("radius", [20.0, 25.0, 30.0])
def test_the_horns_radius_is_told_as_it_was_asked_for(whole: Outline, radius: float) -> None:
    """The curve winds about its arc by some micrometres, and the bend is no less than the arc's."""
    cut = cut_away(whole, Cutaway(95.0, 50.0, radius, 30.0))
    horn = next(each for each in turns_of(cut.half) if each.kind == "bulge")
    assert radius <= horn.radius < radius + 0.002
