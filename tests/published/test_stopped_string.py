"""The stopped-string model and its set-backs against a published set.

M. B. Anderson and R. G. Beausoleil, "Classical guitar intonation and compensation: The well-tempered guitar",
J. Acoust. Soc. Am. 156(1), 683 (2024): equations and tables read in the authors' own public manuscript, which may
differ from the journal in last digits. Figures marked "worked out elsewhere" were computed from the same equations by
other code; they are a cross-check, not print.
"""

import math

import numpy as np
import pytest
from scipy.optimize import minimize
from tests.published.read_values import rows
from tests.textbooks.flat_plane import equal_steps, flat_plane
from tests.textbooks.set_back_recipes import closer_recipe, mean_stretch, simple_recipe

from gramil.physics import stiff_string
from gramil.physics.compensation import Freedom, best_set_backs, held, in_groups
from gramil.physics.pitch import read_pitch
from gramil.physics.stopped_string import (
    Deviation,
    StringPaths,
    StringStiffness,
    deviation,
    moved,
    open_stiffness,
    stretch,
    stretch_stiffness,
)

# The prototype (read): X = 650, b = 1, c = 4 mm, string radius 0.43 mm, kappa 51.
PROTOTYPE = StringStiffness(np.array([51.0]), np.array([0.43]))


def prototype(finger_offset: float = 0.0, stops: int = 12) -> StringPaths:
    return flat_plane(650.0, 1.0, 4.0, equal_steps(stops), finger_offset)


def published_cents(
    x: float, b: float, c: float, d: float, saddle: float, nut: float, kappa: float, rho: float, n: int
) -> tuple[float, float, float, float]:
    """The exact equations as printed (read), for one string and one stop, written out apart from the code."""
    gamma = 2.0 ** (n / 12.0)
    x_n = x / gamma
    l_0 = math.sqrt((x + saddle + nut) ** 2 + c**2)
    l_n = math.sqrt((x_n + saddle) ** 2 + (b + c) ** 2)
    behind = l_n * d / (x_n + saddle)
    behind += math.sqrt((x - x_n + nut - d) ** 2 + (b + (b + c) * d / (x_n + saddle)) ** 2)
    q = (l_n + behind - l_0) / l_0
    b_0 = math.sqrt(kappa) * rho / (2.0 * l_0)
    b_n = b_0 * l_0 / (l_n * math.sqrt(1.0 + kappa * q))

    def end(stiff: float) -> float:
        return 1.0 + stiff + (1.0 + math.pi**2 / 2.0) * stiff**2

    return (
        1200.0 * math.log2(l_0 / (gamma * l_n)),
        600.0 * math.log2(1.0 + q),
        600.0 * math.log2(1.0 + kappa * q),
        1200.0 * math.log2(end(b_n) / end(b_0)),
    )


@pytest.mark.parametrize(("d", "saddle", "nut"), [(0.0, 0.0, 0.0), (10.0, 0.0, 0.0), (7.0, 1.9, -0.37)])
def test_flat_plane_is_the_published_exact_form(d: float, saddle: float, nut: float) -> None:
    found = deviation(moved(prototype(d), nut, saddle), PROTOTYPE)
    for n in range(1, 13):
        terms = published_cents(650.0, 1.0, 4.0, d, saddle, nut, 51.0, 0.43, n)
        got = [float(term[0, n - 1]) for term in (found.length, found.density, found.tension, found.stiffness)]
        assert got == pytest.approx(terms, abs=1e-9)


def test_prototype_as_stated() -> None:
    """Read: B_0 = 0.00236; length error at stop 12 -0.17 cent; Q at stop 1 about 47e-6 with d = 10 mm."""
    assert float(open_stiffness(prototype(), PROTOTYPE)[0]) == pytest.approx(0.00236, abs=5e-6)
    assert float(deviation(prototype(), PROTOTYPE).length[0, 11]) == pytest.approx(-0.17, abs=0.005)
    placed = moved(prototype(10.0), -0.37, 1.9)
    assert float(stretch(placed)[0, 0]) == pytest.approx(47e-6, abs=0.5e-6)


def test_second_order_of_stiffness_at_stop_12() -> None:
    """Read: about 0.2 cent, as what is left of the stiffness term beyond 1200/ln 2 (2 - 1) B_0."""
    first_order = 1200.0 / math.log(2.0) * float(open_stiffness(prototype(), PROTOTYPE)[0])
    assert float(deviation(prototype(), PROTOTYPE).stiffness[0, 11]) - first_order == pytest.approx(0.2, abs=0.06)


# Worked out elsewhere: cents over stops 1 to 12 without set-backs.
CENTS = {
    0.0: [1.727, 1.610, 1.818, 2.125, 2.485, 2.884, 3.318, 3.784, 4.282, 4.814, 5.379, 5.979],
    10.0: [2.327, 1.817, 1.953, 2.234, 2.584, 2.979, 3.412, 3.880, 4.382, 4.919, 5.491, 6.100],
}


@pytest.mark.parametrize(("finger_offset", "cents"), CENTS.items())
def test_prototype_cents(finger_offset: float, cents: list[float]) -> None:
    assert deviation(prototype(finger_offset), PROTOTYPE).total[0] == pytest.approx(cents, abs=6e-4)


def test_terms_at_stop_12() -> None:
    """Worked out elsewhere: length, density, tension, stiffness."""
    found: Deviation = deviation(prototype(), PROTOTYPE)
    terms = [float(term[0, 11]) for term in (found.length, found.density, found.tension, found.stiffness)]
    assert terms == pytest.approx([-0.1721, 0.0369, 1.8786, 4.2358], abs=6e-5)


def test_the_prototype_as_printed() -> None:
    """Stiffness ratio, the length's own error at fret 12, and the simple recipe's set-back and set-forward."""
    ((_, ratio, error, back, forward),) = rows("anderson_beausoleil", "prototype")
    assert float(open_stiffness(prototype(), PROTOTYPE)[0]) == pytest.approx(ratio, abs=6e-6)
    assert float(deviation(prototype(), PROTOTYPE).length[0, 11]) == pytest.approx(error, abs=0.005)
    nut, saddle = simple_recipe(650.0, 1.0, 4.0, PROTOTYPE)
    assert (float(saddle[0]), float(nut[0])) == pytest.approx((back, forward), abs=0.005)


def test_recipes() -> None:
    """Read: simple recipe 1.54 and -0.51 mm. Worked out elsewhere: 1.535, -0.512, and the closer one 1.888, -0.353."""
    nut, saddle = simple_recipe(650.0, 1.0, 4.0, PROTOTYPE)
    assert (float(saddle[0]), float(nut[0])) == pytest.approx((1.54, -0.51), abs=0.005)
    assert (float(saddle[0]), float(nut[0])) == pytest.approx((1.535, -0.512), abs=6e-4)
    nut, saddle = closer_recipe(650.0, 1.0, 4.0, 0.0, PROTOTYPE)
    assert (float(saddle[0]), float(nut[0])) == pytest.approx((1.888, -0.353), abs=6e-4)


def test_mean_stretch_rule() -> None:
    """The printed mean of Q over stops 1 to 12 (read), against the exact geometry: equal to second order in height."""
    assert float(mean_stretch(650.0, 1.0, 4.0)) == pytest.approx(float(stretch(prototype()).mean()), rel=2e-3)


def test_prototype_optimum() -> None:
    """Worked out elsewhere: exact RMS optimum over stops 1 to 12, d = 0."""
    best = best_set_backs(prototype(), PROTOTYPE, in_groups(range(1)), in_groups(range(1)))
    assert float(best.saddle[0]) == pytest.approx(1.8051, abs=6e-5)
    assert float(best.nut[0]) == pytest.approx(-0.3775, abs=6e-5)
    assert float(best.rms[0]) == pytest.approx(0.1576, abs=6e-5)


# Four strings of a normal-tension nylon set, 650 mm, d = 0 (read). Radius mm, weight g/m (printed as mg/mm), tension N,
# R, kappa, B_0, effective modulus GPa, saddle and nut set-back mm, RMS cents; then, worked out elsewhere, the
# uncompensated cents at stop 12 and the exact saddle and nut.
WORKED_OUT = {
    "E4": (5.03, 1.473, -0.358),
    "B3": (5.59, 1.678, -0.361),
    "G3": (7.48, 2.300, -0.431),
    "D3": (4.98, 1.475, -0.342),
}
NYLON = {
    note: (radius, weight, pull, r, kappa, b_0, modulus, back, -forward, rms, *WORKED_OUT[note])
    for note, radius, weight, r, kappa, pull, b_0, modulus, back, forward, rms in rows(
        "anderson_beausoleil", "nylon set"
    )
}


@pytest.mark.parametrize(("note", "row"), NYLON.items())
def test_nylon_tension_stiffness_and_modulus(note: str, row: tuple[float, ...]) -> None:
    radius, weight, pull, r, kappa, b_0, modulus = row[:7]
    strings = StringStiffness(np.array([kappa]), np.array([radius]))
    assert float(stiff_string.tension(weight, 650.0, read_pitch(note))) == pytest.approx(pull, rel=2e-3)
    assert float(open_stiffness(prototype(), strings)[0]) == pytest.approx(b_0, rel=4e-3)
    assert float(stretch_stiffness(modulus * 1000.0, radius, pull)) == pytest.approx(kappa, rel=5e-3)
    assert kappa == pytest.approx(2.0 * r + 1.0, abs=0.11)


@pytest.mark.parametrize("row", NYLON.values(), ids=NYLON)
def test_nylon_set_backs(row: tuple[float, ...]) -> None:
    radius, kappa, saddle, nut, rms = row[0], row[4], row[7], row[8], row[9]
    strings = StringStiffness(np.array([kappa]), np.array([radius]))
    best = best_set_backs(prototype(), strings, in_groups(range(1)), in_groups(range(1)))
    assert float(best.saddle[0]) == pytest.approx(saddle, abs=0.04)
    assert float(best.nut[0]) == pytest.approx(nut, abs=0.01)
    assert float(best.rms[0]) == pytest.approx(rms, abs=0.01)
    assert float(deviation(prototype(), strings).total[0, 11]) == pytest.approx(row[10], abs=6e-3)
    assert (float(best.saddle[0]), float(best.nut[0])) == pytest.approx(row[11:], abs=6e-4)


def test_whole_set_at_once_is_the_same_as_string_by_string() -> None:
    radius = np.array([row[0] for row in NYLON.values()])
    kappa = np.array([row[4] for row in NYLON.values()])
    paths = flat_plane(np.full(4, 650.0), 1.0, 4.0, equal_steps(12))
    best = best_set_backs(paths, StringStiffness(kappa, radius), in_groups(range(4)), in_groups(range(4)))
    assert best.saddle == pytest.approx([row[11] for row in NYLON.values()], abs=6e-4)
    assert best.nut == pytest.approx([row[12] for row in NYLON.values()], abs=6e-4)


def _numerical(
    paths: StringPaths, strings: StringStiffness, nut: Freedom, saddle: Freedom
) -> tuple[list[float], float]:
    """The same least mean square by scipy's general minimiser, which knows nothing of the model."""
    columns = nut.shape.shape[1]

    def mean_square(amounts: np.ndarray) -> float:
        placed = moved(paths, nut.shape @ amounts[:columns], saddle.shape @ amounts[columns:])
        return float(np.mean(deviation(placed, strings).total ** 2))

    start = np.zeros(columns + saddle.shape.shape[1])
    found = minimize(mean_square, start, method="Nelder-Mead", options={"xatol": 1e-7, "fatol": 1e-12, "maxiter": 9000})
    return list(found.x), math.sqrt(found.fun)


@pytest.mark.parametrize("finger_offset", [0.0, 10.0])
@pytest.mark.parametrize("nut", [in_groups(range(1)), held(1)], ids=["nut free", "nut held"])
def test_against_numerical_minimiser(finger_offset: float, nut: Freedom) -> None:
    paths = prototype(finger_offset, 20)
    best = best_set_backs(paths, PROTOTYPE, nut, in_groups(range(1)))
    amounts, rms = _numerical(paths, PROTOTYPE, nut, in_groups(range(1)))
    assert float(best.saddle[0]) == pytest.approx(amounts[-1], abs=2e-5)
    assert float(best.rms[0]) == pytest.approx(rms, abs=1e-8)
