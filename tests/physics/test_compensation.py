"""Placing both ends: each freedom against a general minimiser, and what must hold between freedoms."""

import math

import numpy as np
import pytest
from scipy.optimize import minimize
from tests.textbooks.flat_plane import equal_steps, flat_plane

from gramil.physics.compensation import (
    Freedom,
    as_one,
    best_set_backs,
    cents_per_mm,
    held,
    in_groups,
    set_backs,
    straight,
    weighted_rms,
)
from gramil.physics.stopped_string import StringPaths, StringStiffness, deviation, moved

# Six made-up steel strings: kappa falls and rises as plain strings thicken and windings begin.
STRINGS = StringStiffness(np.array([143.0, 255.0, 180.0, 190.0, 205.0, 230.0]), np.full(6, 0.17))
ACROSS = np.array([-26.0, -15.6, -5.2, 5.2, 15.6, 26.0])


def six() -> StringPaths:
    return flat_plane(np.linspace(645.0, 650.0, 6), 0.5, np.linspace(3.5, 4.5, 6), equal_steps(20), 6.0)


FREEDOMS = {
    "each end free": (in_groups(range(6)), in_groups(range(6))),
    "nut held": (held(6), in_groups(range(6))),
    "nut straight": (as_one(6), in_groups(range(6))),
    "saddle straight": (in_groups(range(6)), straight(ACROSS)),
    "both straight": (as_one(6), straight(ACROSS)),
    "only a straight saddle": (held(6), straight(ACROSS)),
    "saddle held": (in_groups(range(6)), held(6)),
}


def _mean_square(amounts: np.ndarray, nut: Freedom, saddle: Freedom) -> float:
    columns = nut.shape.shape[1]
    placed = moved(six(), nut.shape @ amounts[:columns], saddle.shape @ amounts[columns:])
    return float(np.mean(deviation(placed, STRINGS).total ** 2))


@pytest.mark.parametrize("freedom", FREEDOMS)
def test_against_numerical_minimiser(freedom: str) -> None:
    """scipy's BFGS knows only the cents; it ends where ours does, and no lower."""
    nut, saddle = FREEDOMS[freedom]
    best = best_set_backs(six(), STRINGS, nut, saddle)
    start = np.zeros(nut.shape.shape[1] + saddle.shape.shape[1])
    found = minimize(_mean_square, start, (nut, saddle), method="BFGS", options={"gtol": 1e-7})
    columns = nut.shape.shape[1]
    assert best.nut == pytest.approx(nut.shape @ found.x[:columns], abs=2e-4)
    assert best.saddle == pytest.approx(saddle.shape @ found.x[columns:], abs=2e-4)
    assert best.rms_of_all == pytest.approx(math.sqrt(found.fun), abs=1e-6)


@pytest.mark.parametrize("freedom", FREEDOMS)
def test_a_nudge_either_way_is_no_better(freedom: str) -> None:
    nut, saddle = FREEDOMS[freedom]
    best = best_set_backs(six(), STRINGS, nut, saddle)
    for column in nut.shape.T:
        for nudge in (-0.01, 0.01):
            assert set_backs(six(), STRINGS, best.nut + nudge * column, best.saddle).rms_of_all > best.rms_of_all
    for column in saddle.shape.T:
        for nudge in (-0.01, 0.01):
            assert set_backs(six(), STRINGS, best.nut, best.saddle + nudge * column).rms_of_all > best.rms_of_all


def test_each_binding_costs_something() -> None:
    rms = {name: best_set_backs(six(), STRINGS, *pair).rms_of_all for name, pair in FREEDOMS.items()}
    assert rms["each end free"] < rms["nut straight"] < rms["nut held"]
    assert rms["each end free"] < rms["saddle straight"] < rms["both straight"] < rms["only a straight saddle"]


def test_the_bound_saddle_is_at_least_as_good_as_the_line_through_the_free_one() -> None:
    free = best_set_backs(six(), STRINGS, in_groups(range(6)), in_groups(range(6)))
    bound = best_set_backs(six(), STRINGS, in_groups(range(6)), straight(ACROSS))
    line = np.polyval(np.polyfit(ACROSS, free.saddle, 1), ACROSS)
    assert np.ptp(np.diff(bound.saddle) / np.diff(ACROSS)) == pytest.approx(0.0, abs=1e-12)
    assert bound.rms_of_all <= set_backs(six(), STRINGS, free.nut, line).rms_of_all


def test_stops_of_no_weight_do_not_count() -> None:
    weight = np.where(np.arange(1, 21) <= 12, 1.0, 0.0)
    ratio = equal_steps(12)
    short = flat_plane(np.linspace(645.0, 650.0, 6), 0.5, np.linspace(3.5, 4.5, 6), ratio, 6.0)
    weighed = best_set_backs(six(), STRINGS, in_groups(range(6)), in_groups(range(6)), weight)
    cut = best_set_backs(short, STRINGS, in_groups(range(6)), in_groups(range(6)))
    assert weighed.saddle == pytest.approx(cut.saddle, abs=1e-8)
    assert weighed.rms == pytest.approx(cut.rms, abs=1e-10)


def test_two_stops_are_met_exactly() -> None:
    weight = np.zeros(20)
    weight[[4, 11]] = 1.0
    best = best_set_backs(six(), STRINGS, in_groups(range(6)), in_groups(range(6)), weight)
    assert best.cents[:, [4, 11]] == pytest.approx(np.zeros((6, 2)), abs=1e-7)


def test_starting_elsewhere_ends_in_the_same_place() -> None:
    there = best_set_backs(moved(six(), -1.0, 4.0), STRINGS, in_groups(range(6)), in_groups(range(6)))
    here = best_set_backs(six(), STRINGS, in_groups(range(6)), in_groups(range(6)))
    assert there.saddle + 4.0 == pytest.approx(here.saddle, abs=1e-8)
    assert there.nut - 1.0 == pytest.approx(here.nut, abs=1e-8)


def test_too_few_stops_and_bad_weights_are_refused() -> None:
    one = np.zeros(20)
    one[11] = 1.0
    with pytest.raises(ValueError, match="too few stops"):
        best_set_backs(six(), STRINGS, in_groups(range(6)), in_groups(range(6)), one)
    for weights in (0.0, -1.0):
        with pytest.raises(ValueError, match="weights"):
            best_set_backs(six(), STRINGS, in_groups(range(6)), in_groups(range(6)), weights)


def test_slopes_are_those_of_the_linear_model() -> None:
    """cents = (1200/ln 2) [nut - (ratio - 1) saddle] / X for a limp string, all but exactly.

    A stiff one is up to 6 % steeper: its stiffness counts for more as the speaking length changes.
    """
    unit = 1200.0 / math.log(2.0) / np.linspace(645.0, 650.0, 6)[:, None]
    by_nut, by_saddle = cents_per_mm(six(), StringStiffness(np.zeros(6), np.zeros(6)))
    assert by_nut == pytest.approx(np.broadcast_to(unit, by_nut.shape), rel=1e-3)
    assert by_saddle == pytest.approx(-unit * (equal_steps(20) - 1.0), rel=1e-3)
    steeper = cents_per_mm(six(), STRINGS)[1] / by_saddle
    assert np.all((steeper > 1.0) & (steeper < 1.06))


def test_weighted_rms_by_hand() -> None:
    """sqrt((1 x 3^2 + 3 x 1^2) / 4) = sqrt 3; no weight, no figure."""
    assert float(weighted_rms([3.0, -1.0], [1.0, 3.0])) == pytest.approx(math.sqrt(3.0), rel=1e-15)
    assert np.isnan(weighted_rms([3.0, -1.0], 0.0))
