"""Domes: caps of spheres in closed form, and the sphere itself in space."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.textbooks.spheres import cap_volume

from gramil.shapes.dome import Cover, Dome, arched_foot
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_half_widths, through_points

RADIUS = 4500.0
DOME = Dome(1 / RADIUS, 300, 20)
PLACES = st.tuples(st.floats(0, 500), st.floats(-200, 200))


def circle(radius: float, pieces: int = 64) -> Outline:
    angles = np.linspace(math.pi, 0, pieces + 1)[1:-1]
    return through_points([(-radius, 0), *((radius * math.cos(a), radius * math.sin(a)) for a in angles), (radius, 0)])


def test_fall_by_hand() -> None:
    """3-4-5: a dome of radius 500 has fallen 100 at 300 from its apex."""
    assert float(Dome(1 / 500, 10, 20).fall(10 + 180, 20 + 240)) == pytest.approx(100)


def test_slope_by_hand() -> None:
    """3-4-5 again: at 300 out on a radius of 500 the tangent falls 3 in 4; along the way out, (180, 240)/300 of it."""
    slope = Dome(1 / 500, 10, 20).slope(10 + 180, 20 + 240)
    assert slope.tolist() == pytest.approx([0.75 * 0.6, 0.75 * 0.8])
    assert Dome(0, 0).slope(300, 100).tolist() == [0, 0]


@given(PLACES)
def test_slope_is_how_the_fall_grows(place: tuple[float, float]) -> None:
    """By differences of the fall over a thousandth of a millimetre."""
    (x, y), step = place, 1e-3
    grown = [
        float(DOME.fall(x + dx, y + dy) - DOME.fall(x - dx, y - dy)) / (2 * step) for dx, dy in ((step, 0), (0, step))
    ]
    assert DOME.slope(x, y).tolist() == pytest.approx(grown, abs=1e-6)


def test_flat_does_not_fall() -> None:
    flat = Dome(0, 0)
    assert float(flat.fall(300, 100)) == 0
    assert Cover(flat, circle(100)).fall_volume == 0
    assert arched_foot(flat, (0, 0), (30, 40)).height([0, 25, 50]).tolist() == [0, 0, 0]


@given(PLACES, PLACES)
def test_nothing_from_the_chord_at_its_ends(start: tuple[float, float], end: tuple[float, float]) -> None:
    if math.dist(start, end) > 1:
        for place in (start, end):
            assert float(DOME.fall_from_chord(*place, start, end)) == pytest.approx(0, abs=1e-9)


def test_from_the_chord_in_the_middle_is_the_sagitta() -> None:
    """Over the apex itself the dome stands the sagitta of 400 over the chord: R - sqrt(R^2 - 200^2)."""
    stands = -float(DOME.fall_from_chord(300, 20, (100, 20), (500, 20)))
    assert stands == pytest.approx(RADIUS - math.sqrt(RADIUS**2 - 200**2), abs=1e-9)


@given(PLACES, PLACES, st.floats(0, 1))
def test_the_foot_lies_on_the_sphere(start: tuple[float, float], end: tuple[float, float], share: float) -> None:
    """Each point of the foot, put in space by its chord and tilt, is one radius from the sphere's centre."""
    if math.dist(start, end) < 1:
        return
    foot = arched_foot(DOME, start, end)
    along = share * foot.chord
    height = float(foot.height(along))
    forward = along * math.cos(foot.tilt) + height * math.sin(foot.tilt)
    down = along * math.sin(foot.tilt) - height * math.cos(foot.tilt)
    direction = np.subtract(end, start) / math.dist(start, end)
    x, y = np.asarray(start) + forward * direction
    z = -(float(DOME.fall(*start)) + down)
    assert math.dist((x, y, z), (300, 20, -RADIUS)) == pytest.approx(RADIUS, abs=1e-7)


def test_a_foot_over_the_apex_by_hand() -> None:
    foot = arched_foot(Dome(1 / 500, 0), (-300, 0), (300, 0))
    assert (foot.chord, foot.sagitta, foot.tilt) == pytest.approx((600, 100, 0))
    assert foot.arc == pytest.approx(2 * 500 * math.asin(0.6))


def test_the_volume_of_a_cap() -> None:
    """Over a circle about the apex the dome stands a cap over the plane of its rim."""
    cover = Cover(Dome(1 / 500, 0), circle(300))
    assert cover.volume_over_chord((-300, 0), (300, 0)) == pytest.approx(cap_volume(500, 100), rel=2e-7)
    assert cover.fall_volume == pytest.approx(math.pi * 300**2 * 100 - cap_volume(500, 100), rel=2e-7)


def test_a_volume_by_counting() -> None:
    """Off-centre over a waisted outline, against the mean of the fall at the nodes of a fine net."""
    outline = through_half_widths((0, 50, 150, 240, 340, 450, 492), (0, 128, 140, 120, 170, 170, 0))
    x, y = np.meshgrid(np.arange(0.25, 492, 0.5), np.arange(-199.75, 200, 0.5), indexing="ij")
    inside = np.abs(y) < outline.half_width(x[:, 0])[:, None]
    counted = DOME.fall(x, y)[inside].sum() * 0.25
    assert Cover(DOME, outline).fall_volume == pytest.approx(counted, rel=1e-4)
