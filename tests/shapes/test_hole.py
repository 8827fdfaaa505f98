"""Curves to cut a hole by: lengths against a library's elliptic integral, areas and parallels against geometry's."""

import math

import numpy as np
import pytest
import shapely
from scipy.special import ellipe

from gramil.shapes.hole import Hole

SIZES = [(76.0, 96.0), (120.0, 40.0), (30.0, 30.0), (10.0, 60.0)]


@pytest.mark.parametrize(("along", "across"), SIZES)
def test_an_oval_by_the_exact_integral(along: float, across: float) -> None:
    """An ellipse of half axes a >= b is 4 a E(1 - b²/a²) round and pi a b in area; twice the one over the other."""
    long, short = max(along, across) / 2, min(along, across) / 2
    exact = 4 * long * float(ellipe(1 - (short / long) ** 2))
    oval = Hole("oval", along, across)
    assert oval.edge == pytest.approx(exact, rel=1e-12)
    assert oval.area == pytest.approx(math.pi * long * short, rel=1e-14)
    assert oval.hydraulic_radius == pytest.approx(2 * math.pi * long * short / exact, rel=1e-12)
    assert oval.tightest == pytest.approx(short**2 / long)


def test_a_circle_is_an_oval_with_both_sizes_alike() -> None:
    circle, oval = Hole("round", 92.0, 92.0), Hole("oval", 92.0, 92.0)
    assert circle.hydraulic_radius == pytest.approx(46.0)
    assert (circle.area, circle.edge) == pytest.approx((oval.area, oval.edge))
    assert circle.tightest == 46.0


@pytest.mark.parametrize(
    ("along", "across", "corner"), [(60.0, 100.0, 8.0), (30.0, 36.0, 6.0), (50.0, 60.0, 0.0), (80.0, 60.0, 20.0)]
)
def test_a_d_by_a_library_of_geometry(along: float, across: float, corner: float) -> None:
    """As long and as wide as it says, and its area and length are those of its own points."""
    d = Hole("D", along, across, corner)
    shape = shapely.Polygon(d.ring(count=8000))
    assert shape.is_valid
    assert shape.bounds == pytest.approx((-along / 2, -across / 2, along / 2, across / 2), abs=1e-4)
    assert d.area == pytest.approx(shape.area, rel=1e-6)
    assert d.edge == pytest.approx(shape.exterior.length, rel=1e-6)


@pytest.mark.parametrize(
    "hole",
    [Hole("round", 50.0, 50.0), Hole("oval", 76.0, 96.0), Hole("D", 60.0, 90.0, 8.0)],
    ids=lambda each: each.shape,
)
@pytest.mark.parametrize("outward", [3.0, 12.0])
def test_a_ring_lies_as_far_outside_everywhere(hole: Hole, outward: float) -> None:
    """Not a larger oval: a library's buffer of the edge is the same line."""
    edge, ring = shapely.Polygon(hole.ring(count=4000)), hole.ring(outward, count=4000)
    apart = shapely.distance(shapely.points(ring), edge)
    assert apart == pytest.approx(np.full(len(ring), outward), abs=1e-4)
    wider = edge.buffer(outward, quad_segs=200)
    assert shapely.Polygon(ring).area == pytest.approx(wider.area, rel=1e-5)


def test_turned_its_end_on_the_treble_side_goes_toward_the_tail() -> None:
    oval = Hole("oval", 20.0, 60.0)
    points = np.array(oval.placed(100.0, 10.0, math.radians(30)))
    farthest = points[np.hypot(*(points - (100.0, 10.0)).T).argmax()]
    if farthest[1] < 10.0:
        farthest = 2 * np.array([100.0, 10.0]) - farthest
    assert farthest == pytest.approx(
        (100 + 30 * math.sin(math.radians(30)), 10 + 30 * math.cos(math.radians(30))), abs=0.01
    )
