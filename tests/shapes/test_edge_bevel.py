"""A bevel along an edge: its lines and its surface against geometry done otherwise, and the strip laid flat."""

import math

import numpy as np
import pytest
import shapely
from scipy.integrate import dblquad

from gramil.shapes.dome import Dome
from gramil.shapes.edge_bevel import EdgeBevel
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_half_widths
from gramil.shapes.strip_unrolled import unrolled_strip
from gramil.shapes.unrolled import UnrolledSide

X = (0, 15, 50, 100, 150, 200, 240, 290, 340, 400, 450, 480, 492)
WAISTED = (0, 70, 128, 148, 140, 124, 120, 135, 170, 196, 170, 110, 0)
FLAT = Dome(0.0, 246.0)


def round_box(radius: float) -> UnrolledSide:
    """Half of a circle with flat faces, as deep all along: what is known of it is known in closed form."""
    x = radius * (1 - np.cos(np.linspace(0, math.pi, 61)))
    y = radius * np.sin(np.linspace(0, math.pi, 61))
    outline = through_half_widths(x.tolist(), np.maximum(y, 0.0).tolist())
    return UnrolledSide(outline, 100.0, 100.0, Dome(0.0, radius), Dome(0.0, radius), "bass")


def waisted() -> Outline:
    return through_half_widths(X, WAISTED)


def test_its_surface_on_a_round_box_is_the_double_integral() -> None:
    """A bevel on a circle of radius R, flat faces: the surface is z(s, y) over the plane, y from the edge inward, as an
    area integral of sqrt(1 + z_y^2 + (z_s / (1 - y / R))^2) (1 - y / R).
    """
    radius, width, drop, length = 200.0, 24.0, 15.0, 300.0
    bevel = EdgeBevel(round_box(radius), True, 2.5, width, drop, length, math.pi * radius / 2)

    def patch(y: float, s: float) -> float:
        rate = drop * math.pi / length * math.sin(2 * math.pi * s / length)
        shrunk = 1 - y / radius
        return math.sqrt(1 + (drop / width) ** 2 + (rate / shrunk) ** 2) * shrunk

    def edge(s: float) -> float:
        return width * (1 + math.cos(2 * math.pi * s / length)) / 2

    wanted = dblquad(patch, -length / 2, length / 2, 0.0, edge, epsabs=1e-6)[0]
    assert bevel.area == pytest.approx(wanted, rel=2e-5)


def test_its_lines_lie_as_far_from_the_edge_as_it_has_swollen() -> None:
    """Distances to the outline by an independent library; at a quarter and three quarters half of the middle's."""
    outline = waisted()
    side = UnrolledSide(outline, 90.0, 105.0, Dome(1 / 7600, 246.0), Dome(1 / 4500, 246.0), "bass")
    bevel = EdgeBevel(side, True, 2.7, 25.0, 15.0, 280.0, 520.0)
    edge = shapely.LineString(outline.half.polyline(1e-4))
    away = np.array([edge.distance(shapely.Point(x, y)) for x, y in bevel.face_line[:, :2]])
    assert away[[0, 64, 128, 192, 256]] == pytest.approx([0.0, 12.5, 25.0, 12.5, 0.0], abs=2e-3)
    assert away == pytest.approx(25.0 * np.sin(math.pi * np.linspace(0, 1, 257)) ** 2, abs=2e-3)
    down = bevel.edge_line[:, 2] - bevel.wall_line[:, 2]
    assert down == pytest.approx(15.0 * np.sin(math.pi * np.linspace(0, 1, 257)) ** 2, abs=1e-9)
    assert np.allclose(bevel.wall_line[:, :2], bevel.edge_line[:, :2])


def test_where_it_comes_onto_the_wall() -> None:
    """Where drop x (1 + cos) / 2 is the plate's thickness: found by trying, a hundredth of a millimetre at a time."""
    bevel = EdgeBevel(round_box(200.0), True, 2.5, 24.0, 15.0, 300.0, 300.0)
    along = np.arange(150.0, 450.0, 0.01)
    over = along[15.0 * (1 + np.cos(2 * math.pi * (along - 300.0) / 300.0)) / 2 > 2.5]
    assert bevel.reach() == pytest.approx((over[0], over[-1]), abs=0.02)
    assert EdgeBevel(round_box(200.0), True, 2.5, 24.0, 2.5, 300.0, 300.0).reach() is None


@pytest.mark.parametrize("upper", [True, False])
def test_laid_flat_it_is_as_large_and_its_edges_as_long(upper: bool) -> None:
    side = UnrolledSide(waisted(), 90.0, 105.0, Dome(1 / 7600, 246.0), Dome(1 / 4500, 246.0), "bass")
    bevel = EdgeBevel(side, upper, 2.7, 25.0, 15.0, 300.0, 540.0)
    high, low = bevel.pattern
    assert shapely.LineString(high).length == pytest.approx(bevel.face_length, abs=1e-6)
    assert shapely.LineString(low).length == pytest.approx(bevel.wall_length, abs=1e-6)
    ring = shapely.Polygon(np.vstack((low, high[::-1])))
    assert ring.is_valid
    assert ring.area == pytest.approx(bevel.area, rel=1e-6)
    assert low[0] == pytest.approx((0.0, 0.0))
    assert low[-1][1] == pytest.approx(0.0, abs=1e-9)


def test_a_strip_of_a_cone_laid_flat_is_part_of_a_ring() -> None:
    """A cone's strip between two level circles, of slant lengths 300 and 340 mm: laid flat, arcs of those radii."""
    half = math.radians(40.0)
    turn = np.linspace(0.0, 1.2, 201)

    def circle(slant: float) -> np.ndarray:
        radius, height = slant * math.sin(half), slant * math.cos(half)
        return np.column_stack((radius * np.sin(turn), radius * np.cos(turn), np.full_like(turn, height)))

    high, low = unrolled_strip(circle(340.0), circle(300.0))
    chord = 2 * 300.0 * math.sin(1.2 * math.sin(half) / 2)
    assert math.dist(low[0], low[-1]) == pytest.approx(chord, abs=2e-3)
    sagitta = 300.0 * (1 - math.cos(1.2 * math.sin(half) / 2))
    assert np.abs(low[100, 1]) == pytest.approx(sagitta, abs=2e-3)
    assert math.dist(high[0], low[0]) == pytest.approx(40.0, abs=1e-9)


def test_all_lengths_doubled_double_its_lines_and_its_area_four_times() -> None:
    side = UnrolledSide(waisted(), 90.0, 105.0, FLAT, FLAT, "bass")
    twice = through_half_widths([2 * x for x in X], [2 * y for y in WAISTED])
    doubled = UnrolledSide(twice, 180.0, 210.0, FLAT, FLAT, "bass")
    one = EdgeBevel(side, True, 2.7, 25.0, 15.0, 280.0, 520.0)
    other = EdgeBevel(doubled, True, 5.4, 50.0, 30.0, 560.0, 1040.0)
    assert other.face_line == pytest.approx(2 * one.face_line, abs=1e-6)
    assert other.area == pytest.approx(4 * one.area, rel=1e-9)
    assert other.pattern[0] == pytest.approx(2 * one.pattern[0], abs=1e-6)
