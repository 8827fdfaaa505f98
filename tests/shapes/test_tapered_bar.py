"""A bar between profiles, and the room that a channel leaves in it, against circles."""

import math

import pytest

from gramil.shapes.profile import Profile
from gramil.shapes.tapered_bar import TaperedBar, room_under

BAR = TaperedBar((0.0, 100.0, 300.0), (Profile(20, 14, 2.0), Profile(22, 15, 2.0), Profile(26, 15, 3.0)))


def test_straight_between_its_places() -> None:
    half_way = BAR.at(200.0)
    assert (half_way.half_width, half_way.depth, half_way.exponent) == pytest.approx((24.0, 15.0, 2.5))
    assert BAR.at(25.0).depth == pytest.approx(14.25)


def test_it_goes_on_beyond_its_ends() -> None:
    assert BAR.at(-40.0) == BAR.at(0.0) == BAR.profiles[0]
    assert BAR.at(999.0) == BAR.profiles[-1]


def test_room_in_a_half_circle() -> None:
    """A corner 3 across and 9 down in a circle of 15: 15 less its distance from the middle, the square root of 90."""
    assert room_under(Profile(15.0, 15.0, 2.0), 3.0, 9.0) == pytest.approx(15 - math.sqrt(90), abs=1e-4)


def test_a_corner_outside_has_less_than_no_room() -> None:
    """5 across and 16 down from the middle of a circle of 15: the square root of 281, less 15, beyond it."""
    assert room_under(Profile(15.0, 15.0, 2.0), 5.0, 16.0) == pytest.approx(15 - math.sqrt(281), abs=1e-4)
    assert room_under(Profile(15.0, 15.0, 2.0), 16.0, 2.0) < 0
