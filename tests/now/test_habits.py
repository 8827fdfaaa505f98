"""Days lost and parts begun anew, counted by hand on a calendar of two months."""

from datetime import date, timedelta
from fractions import Fraction

import pytest

from gramil.now.finishing import Pace, pace_of, pace_told
from gramil.now.habits import Noted, days_lost
from gramil.now.hours import read_hours

FIRST = date(2026, 1, 5)  # a Monday


def days(*ahead: int) -> frozenset[date]:
    return frozenset(FIRST + timedelta(days=each) for each in ahead)


def test_working_days_without_a_note_are_lost_and_weeks_without_any_are_not() -> None:
    """Monday to Thursday, nothing on Friday, a Saturday, the next Monday: six working days, one lost. Then six weeks of
    nothing: the shop was closed."""
    first_week = days(0, 1, 2, 3, 5, 7)
    assert days_lost(first_week) == (6, 1)
    assert days_lost(first_week | days(7 + 42)) == (7, 1)
    assert days_lost(days(0, 14)) == (11, 9)
    assert days_lost(first_week, read_hours(days="mon-sat").days) == (7, 1)
    assert days_lost(frozenset()) == (0, 0)


def test_the_common_shares_weigh_the_less_the_more_is_noted() -> None:
    """8 in 100 as if of 25 working days, 1 in 100 as if of 100 operations, put together with the shop's own."""
    assert (Pace().lost, Pace().rework) == (pace_of([]).lost, pace_of([]).rework) == (0.08, 0.01)
    worked = frozenset(each for each in (FIRST + timedelta(days=ahead) for ahead in range(140)) if each.weekday() < 5)
    own = pace_of([], Noted(worked - days(2, 9, 16, 23), 300, 7))
    assert own.days == 100
    assert own.lost == pytest.approx(float(Fraction(4 + 2, 100 + 25)))
    assert own.rework == pytest.approx(float(Fraction(7 + 1, 300 + 100)))
    assert "5 in 100 (common ones, and 100 working days on record)" in pace_told(own)
    assert "2.0 in 100 operations (common ones, and 300 done on record)" in pace_told(own)
    assert "on record" not in pace_told(Pace())
