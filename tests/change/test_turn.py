"""Turning an input: one answer, several, none, and places where no instrument can be."""

import math

import pytest

from gramil.change.turn import turn
from gramil.faults import MakersFault


def test_one_answer() -> None:
    assert turn(lambda x: x**3, 8.0, 0.0, 5.0).answers == pytest.approx((2.0,))


def test_several_answers() -> None:
    assert turn(math.sin, 0.5, 0.0, 7.0).answers == pytest.approx(
        (math.pi / 6, 5 * math.pi / 6, 2 * math.pi + math.pi / 6)
    )


def test_no_answer_says_what_is_within_reach() -> None:
    found = turn(lambda x: x * x, 100.0, 0.0, 5.0)
    assert found.answers == ()
    assert (found.lowest, found.highest) == (0.0, 25.0)


def test_a_jump_over_the_target_is_no_answer() -> None:
    assert turn(lambda x: 1.0 if x > 2.03 else 0.0, 0.5, 0.0, 5.0).answers == ()


def test_places_where_no_instrument_can_be() -> None:
    def figure(x: float) -> float:
        if x < 1:
            raise MakersFault.of("too short")
        return x

    found = turn(figure, 3.3, 0.0, 5.0)
    assert found.answers == pytest.approx((3.3,))
    assert found.refused > 0
