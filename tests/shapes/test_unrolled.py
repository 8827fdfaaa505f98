"""The unrolled side: exact over a circle, and what holds over any outline."""

import math

import numpy as np
import pytest
from tests.textbooks.spheres import cap_volume

from gramil.shapes.dome import Dome
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_half_widths, through_points
from gramil.shapes.unrolled import UnrolledSide, enclosed_volume

RADIUS = 150.0
FLAT = Dome(0, 0)
SHARES = np.linspace(0, 1, 41)


@pytest.fixture(scope="module")
def circle() -> Outline:
    angles = np.linspace(math.pi, 0, 65)[1:-1]
    inner = [(RADIUS * (1 + math.cos(a)), RADIUS * math.sin(a)) for a in angles]
    return through_points([(0, 0), *inner, (2 * RADIUS, 0)])


@pytest.fixture(scope="module")
def waisted() -> Outline:
    x = (0, 15, 50, 100, 150, 200, 240, 290, 340, 400, 450, 480, 492)
    return through_half_widths(x, (50, 70, 128, 148, 140, 124, 120, 135, 170, 196, 170, 110, 0))


def test_a_dome_over_the_middle_of_a_circle_leaves_a_straight_edge(circle: Outline) -> None:
    """The rim of the cap lies in one plane, however strong the dome: the side is a plain strip."""
    side = UnrolledSide(circle, 100, 100, Dome(1 / 500, RADIUS), Dome(1 / 300, RADIUS))
    along = SHARES * side.length
    assert side.length == pytest.approx(math.pi * RADIUS, rel=1e-6)
    assert side.upper_edge(along) == pytest.approx(np.zeros(41), abs=1e-4)
    assert side.depth(along) == pytest.approx(np.full(41, 100.0), abs=1e-4)


def test_faces_slope_outward_as_the_depth_shrinks(waisted: Outline) -> None:
    """What both faces come together by, going out square to the edge, is what the depth between them shrinks by there:
    by differences of 0.01 mm of the domes, off their middle, and of the straight taper, worked here."""
    depth, domes = (90.0, 110.0), (Dome(1 / 7000, 200, 0), Dome(1 / 4000, 260, 0))
    side = UnrolledSide(waisted, *depth, *domes)
    along, step = SHARES[1:-1] * side.length, 0.01
    outward = -waisted.normal(along)

    def between(places: np.ndarray) -> np.ndarray:
        ends = ((waisted.start, 0.0), (waisted.end, 0.0))
        fall = sum(dome.fall_from_chord(places[:, 0], places[:, 1], *ends) for dome in domes)
        straight = depth[0] + (places[:, 0] - waisted.start) / waisted.length * (depth[1] - depth[0])
        return np.asarray(straight - fall)

    place = waisted.point(along)
    shrinks = (between(place - step * outward) - between(place + step * outward)) / (2 * step)
    assert sum(side.slopes(along)) == pytest.approx(shrinks, abs=1e-6)


def test_a_taper_round_a_circle_is_a_cosine(circle: Outline) -> None:
    """Between flat faces: depth = 110 - 20 x / 300, and x = R (1 - cos(s / R))."""
    side = UnrolledSide(circle, 110, 90, FLAT, FLAT)
    along = SHARES * side.length
    assert side.depth(along) == pytest.approx(100 + 10 * np.cos(along / RADIUS), abs=1e-4)


def test_a_dome_off_the_middle_of_a_circle(circle: Outline) -> None:
    """Apex e past the centre: r^2 = R^2 + e^2 + 2 R e cos(s/R), fall S - sqrt(S^2 - r^2), less the chord's."""
    sphere, aside = 2000.0, 40.0
    side = UnrolledSide(circle, 100, 100, FLAT, Dome(1 / sphere, RADIUS + aside))
    along = SHARES * side.length
    cosine = np.cos(along / RADIUS)
    fall = sphere - np.sqrt(sphere**2 - RADIUS**2 - aside**2 - 2 * RADIUS * aside * cosine)
    chord = fall[0] + (fall[-1] - fall[0]) * (1 - cosine) / 2
    assert side.depth(along) == pytest.approx(100 - (fall - chord), abs=1e-4)


def test_the_depths_at_the_ends_are_as_stated(waisted: Outline) -> None:
    side = UnrolledSide(waisted, 95, 108, Dome(1 / 7500, 300), Dome(1 / 4500, 260))
    assert float(side.depth(0)) == pytest.approx(95, abs=1e-9)
    assert float(side.depth(side.length)) == pytest.approx(108, abs=1e-9)


def test_a_wide_place_is_shallower_than_the_taper(waisted: Outline) -> None:
    """At the widest place, off the axis, the dome has fallen below its chord between the ends."""
    back = Dome(1 / 4500, 260)
    side = UnrolledSide(waisted, 95, 108, FLAT, back)
    station = waisted.stations[-1]
    fall, first, last = (
        4500 - math.sqrt(4500**2 - (x - 260) ** 2 - y**2)
        for x, y in ((station.x, station.half_width), (0, 0), (492, 0))
    )
    share = station.x / 492
    expected = 95 + 13 * share - (fall - (first + share * (last - first)))
    assert float(side.depth(station.along)) == pytest.approx(expected, abs=1e-9)


def test_stations_keep_their_tolerance(waisted: Outline) -> None:
    side = UnrolledSide(waisted, 95, 108, Dome(1 / 7500, 300), Dome(1 / 4500, 260))
    stations = side.stations(0.05)
    fine = np.linspace(0, side.length, 5003)
    for edge in (side.upper_edge, side.lower_edge):
        assert np.abs(np.interp(fine, stations, edge(stations)) - edge(fine)).max() < 0.06
    assert np.abs(stations - 50).min() == pytest.approx(0, abs=1e-6)  # the corner of the flat end


def test_a_drum_with_two_caps(circle: Outline) -> None:
    side = UnrolledSide(circle, 100, 100, Dome(1 / 500, RADIUS), Dome(1 / 300, RADIUS))
    heights = [sphere - math.sqrt(sphere**2 - RADIUS**2) for sphere in (500, 300)]
    caps = cap_volume(500, heights[0]) + cap_volume(300, heights[1])
    assert enclosed_volume(side) == pytest.approx(math.pi * RADIUS**2 * 100 + caps, rel=1e-6)
