"""Hours and money, by hand."""

import pytest

from gramil.now.costs import Material, cost_of
from gramil.shop.operations import Operation, Work

WORK = Work(
    {
        "saw": Operation("saw", "Saw", "top", 60),
        "plane": Operation("plane", "Plane", "top", 30, clamp=24.0),
        "glue": Operation("glue", "Glue", "rim", 90),
    },
    {},
)


def test_noted_hours_count_and_usual_ones_stand_in() -> None:
    cost = cost_of(WORK, ["saw", "plane"], {"saw": 3.0}, [Material("top", 120.0), Material("tuners", None)], 40.0)
    assert [(each.part, each.done, each.left) for each in cost.hours] == [("top", 3.5, 0.0), ("rim", 0.0, 1.5)]
    assert (cost.noted, cost.done) == (1, 2)
    assert cost.work == pytest.approx(5.0 * 40)
    assert cost.total == pytest.approx(320.0)
    assert cost.without == ("tuners",)


def test_what_is_done_without_being_in_the_work_costs_nothing() -> None:
    assert cost_of(WORK, ["varnish"], {}, [], 40.0).hours_done == 0.0
