"""Going on anyway, worked by hand from the handbook's coefficients; what cannot be judged is not."""

import pytest

from gramil.air.if_glued import Sized, answer, bound_board, braced_plate, bridge, neck_and_board
from gramil.wood.air import Air
from gramil.wood.restraint import Plate
from gramil.wood.species import find_species

SITKA, PERSIMMON, KHAYA = (find_species(name) for name in ("sitka", "persimmon", "African mahogany"))
BAND = (7.7, 9.2)
# Wood Handbook, FPL-GTR-282, 2021, table 4-2 at 21.1 C: 5.4 % at 25 %, 8.5 % at 45 %, 12.0 % at 65 % humidity.
AIRS = [Air(21.1, humidity) for humidity in (25.0, 45.0, 65.0)]
TOP = Plate(SITKA, "radial", 2.8, SITKA, 8.0, 14.0, 90.0, 7620.0)


def figure(case: object, row: int, words: str) -> tuple[float, float]:
    """Least and most of a figure in one air, by a part of what it is."""
    found = next(each for each in case.laters[row].figures if words in each.what)  # type: ignore[attr-defined]
    return found.least, found.most


def test_a_top_glued_damp() -> None:
    """Radial 0.00148 for each 1 % (table 13-5, transcribed); modulus across 0.078 of 10.8 GPa (table 5-1, from memory);
    0.5 to 0.85 held, 0.3 to 0.6 left (assumed): from 11.0 to 5.4 % it is -0.83 % and 1.05 to 3.56 MPa."""
    case = braced_plate(TOP, 11.0, AIRS)
    strain = 0.00148 * (5.4 - 11.0)
    assert figure(case, 0, "wants to move")[0] == pytest.approx(100 * strain, rel=0.02)
    pull = -strain * 0.078 * 10800.0
    assert figure(case, 0, "stress") == pytest.approx((0.5 * 0.3 * pull, 0.85 * 0.6 * pull), rel=0.02)
    assert case.laters[0].judgement == "may crack"
    assert case.laters[2].judgement == "pressed"
    assert answer(case, BAND)[0] == "do this first"


def test_a_settled_top_may_go_and_keeps_its_dome() -> None:
    case = braced_plate(TOP, AIRS[1].moisture, AIRS)
    assert answer(case, BAND)[0] == "go"
    assert figure(case, 1, "dome") == pytest.approx((7620.0, 7620.0))
    assert figure(case, 2, "dome")[1] < 7620.0  # damp: rounder
    low, high = figure(case, 0, "dome")
    assert low > 7620.0
    assert high > 7620.0 or high < 0.0  # dry: flatter, or sunk


def test_of_a_fan_braced_top_no_dome_is_told_and_why_is_said() -> None:
    fan = braced_plate(TOP, AIRS[1].moisture, AIRS, across=False)
    assert not any("dome" in each.what for later in fan.laters for each in later.figures)
    assert any(words.startswith("dome: not judged, because") for words in fan.assumptions)
    ladder = braced_plate(TOP, AIRS[1].moisture, AIRS)
    assert any("upper bound" in words for words in ladder.assumptions)
    assert fan.laters[0].judgement == ladder.laters[0].judgement


def test_a_board_that_shrinks_shows_its_fret_ends() -> None:
    """Persimmon, flatsawn 0.00403 (table 13-5, from memory): 52.4 mm between bindings, 8.5 to 5.4 %."""
    board = Sized(PERSIMMON, "tangential", 8.5, 430.0, 56.0, 6.0)
    case = bound_board(board, 1.8, AIRS)
    change = 52.4 * 0.00403 * (5.4 - 8.5)
    assert figure(case, 0, "change of width")[0] == pytest.approx(change, rel=0.02)
    assert figure(case, 0, "fret ends")[0] == pytest.approx(-change / 2, rel=0.02)
    assert figure(case, 2, "fret ends") == (0.0, 0.0)
    assert figure(case, 0, "binding, under")[0] == pytest.approx(6.0 * 0.00278 * (5.4 - 8.5), rel=0.02)


def test_a_bridge_holds_what_the_top_wants() -> None:
    top = Sized(SITKA, "radial", 8.5, 500.0, 400.0, 2.8)
    foot = Sized(PERSIMMON, "radial", 8.5, 150.0, 30.0, 9.0)
    case = bridge(top, foot, AIRS)
    assert figure(case, 0, "under the bridge")[0] == pytest.approx(150.0 * 0.00148 * (5.4 - 8.5), rel=0.02)
    assert figure(case, 0, "bow")[0] < 0 < figure(case, 2, "bow")[1]  # dry: the top below shrinks, the ends go down


def test_a_damp_board_on_a_dry_neck_lifts_its_ends() -> None:
    """Two alike layers of equal thickness h, one 1 % damper: strain e = 0.1 to 0.2 % / 30, curvature 3 e/(4 h)
    (Timoshenko 1925: 3 (1+m)2 e / (h_total (3 (1+m)2 + (1+mn)(m2 + 1/(mn)))) with m = n = 1, h_total = 2 h)."""
    board = Sized(KHAYA, "radial", 9.5, 400.0, 50.0, 10.0)
    neck = Sized(KHAYA, "radial", 8.5, 400.0, 50.0, 10.0)
    case = neck_and_board(board, neck, [Air(21.1, 45.0)])
    bow = 0.002 / 30.0 * 3.0 / (4.0 * 10.0) * 400.0**2 / 8.0
    low, high = figure(case, 0, "bow")
    assert low < bow
    assert high == pytest.approx(bow, rel=0.05)
    assert answer(case, BAND)[0] == "wait"


def test_what_no_source_gives_is_not_judged() -> None:
    plate = Plate(find_species("cocobolo"), "radial", 2.8, SITKA, 8.0, 14.0, 90.0)
    case = braced_plate(plate, 8.5, AIRS)
    assert case.worst == "not judged"
    assert "not judged" in answer(case, BAND)[1]
    assert case.laters[0].figures == ()
