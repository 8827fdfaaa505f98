"""Flats about a profile: they touch it, hold it inside, and meet their neighbours."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.shapes.facets import even_angles, facets, vertices
from gramil.shapes.profile import Profile

EXPONENTS = st.floats(1.3, 4)
PROFILES = st.builds(Profile, st.floats(15, 35), st.floats(15, 35), EXPONENTS, EXPONENTS, st.floats(0, 1))
COUNTS = st.integers(3, 12)


def test_five_flats_about_a_half_circle_by_hand() -> None:
    """Half of a regular octagon about a circle of radius r: its sides are 2 r tan(22.5 deg), the outer two half."""
    flats = facets(Profile(20, 20, 2), even_angles(5))
    side = 2 * 20 * math.tan(math.radians(22.5))
    assert [flat.width for flat in flats] == pytest.approx([side / 2, side, side, side, side / 2])
    assert vertices(flats)[1] == pytest.approx((20, side / 2))


@given(PROFILES, COUNTS)
def test_no_point_lies_outside_and_one_lies_on_each(profile: Profile, count: int) -> None:
    points = profile.points(801)
    for flat in facets(profile, even_angles(count)):
        normal = np.array([math.cos(flat.angle), math.sin(flat.angle)])
        reach = float(normal @ flat.touch)
        assert (points @ normal).max() <= reach + 1e-7
        assert float(profile.depth_at(flat.touch[0])) == pytest.approx(flat.touch[1], abs=1e-7)
        for end in (flat.start, flat.end):
            assert float(normal @ end) == pytest.approx(reach, abs=1e-7)


@given(PROFILES, COUNTS)
def test_each_touches_between_its_ends(profile: Profile, count: int) -> None:
    for flat in facets(profile, even_angles(count)):
        along = np.array([-math.sin(flat.angle), math.cos(flat.angle)])
        assert along @ flat.start - 1e-7 <= along @ flat.touch <= along @ flat.end + 1e-7


@given(PROFILES, COUNTS)
def test_flats_run_from_side_to_side_and_mirror(profile: Profile, count: int) -> None:
    corners = np.array(vertices(facets(profile, even_angles(count))))
    assert corners[0] == pytest.approx([profile.half_width, 0], abs=1e-9)
    assert corners == pytest.approx(corners[::-1] * [-1, 1], abs=1e-6)


def test_flats_that_start_short_of_upright_end_at_the_face() -> None:
    flats = facets(Profile(20, 20, 2), [math.pi / 4, 3 * math.pi / 4])
    reach = 20 * math.sqrt(2)
    assert np.array(vertices(flats)) == pytest.approx(np.array([[reach, 0], [0, reach], [-reach, 0]]), abs=1e-9)


@pytest.mark.parametrize("angles", [[], [-0.1, 1], [1, 0.5], [1, 3.3], [1, 1]])
def test_angles_that_do_not_grow_are_refused(angles: list[float]) -> None:
    with pytest.raises(ValueError, match="angles grow"):
        facets(Profile(20, 20, 2), angles)


def test_one_flat_parallel_to_the_face_is_refused() -> None:
    with pytest.raises(ValueError, match="parallel"):
        facets(Profile(20, 20, 2), [math.pi / 2])
