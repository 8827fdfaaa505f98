"""A body's measures against closed forms: circle and spherical caps (any table of mensuration), the box that they make.

A circular outline stands for the body: its perimeter is 2 pi R, its area pi R^2, a spherical cap of height h holds
pi h^2 (3 R - h) / 3, and the side of a round box with a spherical back is exactly as deep all round.
Formulas: CRC Standard Mathematical Tables, mensuration (from memory); worked here with math alone.
"""

import math

import pytest

from gramil.shapes.dome import Dome
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_points
from gramil.shapes.unrolled import UnrolledSide
from gramil.shapes.walled import inner_length, volume_within

R, WALL, DEPTH = 200.0, 2.5, 100.0


@pytest.fixture(scope="module")
def circle() -> Outline:
    turns = [math.pi * (1 - step / 48) for step in range(1, 48)]
    arc = [(R + R * math.cos(turn), R * math.sin(turn)) for turn in turns]
    return through_points([(0.0, 0.0), *arc, (2 * R, 0.0)])


def box(outline: Outline, back: float = 0.0, tail: float = DEPTH) -> UnrolledSide:
    return UnrolledSide(outline, DEPTH, tail, Dome(0.0, R), Dome(back, R))


def test_volume_within_a_round_wall_is_a_cylinder(circle: Outline) -> None:
    assert volume_within(box(circle), WALL) == pytest.approx(math.pi * (R - WALL) ** 2 * DEPTH, rel=1e-6)


def test_a_taper_changes_nothing_about_the_middle(circle: Outline) -> None:
    """A cylinder cut off by a slanted plane holds its area times its depth on the axis."""
    assert volume_within(box(circle, tail=120.0), WALL) == pytest.approx(math.pi * (R - WALL) ** 2 * 110.0, rel=1e-5)


def test_a_spherical_back_adds_its_cap(circle: Outline) -> None:
    """The cap over the inner circle, on a prism as deep as the rim plus what the dome rises between wall and rim."""
    radius, inner = 3000.0, R - WALL
    height = radius - math.sqrt(radius**2 - inner**2)
    ring = math.sqrt(radius**2 - inner**2) - math.sqrt(radius**2 - R**2)
    cap = math.pi * height**2 * (3 * radius - height) / 3
    expected = math.pi * inner**2 * (DEPTH + ring) + cap
    assert volume_within(box(circle, 1 / radius), WALL) == pytest.approx(expected, rel=5e-5)


def test_the_unrolled_side_of_a_round_box_with_a_spherical_back_is_a_straight_strip(circle: Outline) -> None:
    side = box(circle, 1 / 3000.0)
    assert side.length == pytest.approx(math.pi * R, rel=1e-7)
    along = [side.length * share for share in (0.0, 0.1, 0.37, 0.5, 0.9, 1.0)]
    assert list(side.depth(along)) == pytest.approx([DEPTH] * 6, abs=1e-4)


def test_the_middle_of_a_round_wall_is_a_half_circle_of_its_own_radius(circle: Outline) -> None:
    assert inner_length(box(circle), WALL / 2) == pytest.approx(math.pi * (R - WALL / 2), rel=1e-6)
