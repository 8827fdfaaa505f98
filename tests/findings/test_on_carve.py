"""Findings on the carved neck: limits on both sides."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.findings.on_carve import (
    finding_carve_gauged,
    finding_heel_carved,
    finding_neck_plank,
    finding_neck_stock,
    finding_rod_blind_end,
    finding_rod_corner,
    finding_rod_over,
    finding_rod_reach,
    finding_rod_under_head,
    finding_scarf,
    finding_tuner_edge,
    finding_tuners_apart,
)
from gramil.graph import Figures
from gramil.parts.records import NeckYield
from gramil.prints.whole import findings_of

HAIR = 1e-6
SIDES = [(3.0, "fine"), (3.0 - HAIR, "caution"), (0.0, "caution"), (-HAIR, "stop")]


@pytest.mark.parametrize(("wood", "severity"), SIDES)
def test_wood_about_the_rod(wood: float, severity: str) -> None:
    assert finding_rod_over(np.array([math.nan, 9.0, wood]), 3.0)[0].severity == severity
    assert finding_rod_corner(np.array([9.0, wood, 9.0]), 2.0, 3.0)[0].severity == severity
    assert finding_rod_under_head(wood, 3.0)[0].severity == severity
    assert finding_rod_blind_end(wood, 3.0, "head", False)[0].severity == severity
    assert finding_neck_plank(wood, 3.0)[0].severity == severity
    assert finding_tuners_apart(wood, 3.0)[0].severity == severity
    assert finding_tuner_edge(np.array([9.0, wood]), 3.0)[0].severity == severity


def test_the_worst_place_is_named() -> None:
    assert finding_rod_over(np.array([math.nan, 9.0, 2.0, 5.0]), 3.0)[0].figure.address == "rod_over[2]"
    assert finding_rod_corner(np.array([9.0, 4.0, 1.0]), 1.0, 3.0)[0].figure.address == "rod_corner[1]"
    assert finding_tuner_edge(np.array([9.0, 1.0]), 3.0)[0].figure.address == "head_hole_to_edge[2]"


def test_what_mends_is_said_only_where_something_is_wrong() -> None:
    assert finding_rod_under_head(2.0, 3.0)[0].remedy
    assert not finding_rod_under_head(3.0, 3.0)[0].remedy


@pytest.mark.parametrize(
    ("access", "foot", "end"), [("head", False, "tenon"), ("head", True, "foot"), ("soundhole", False, "")]
)
def test_the_wood_past_the_blind_end_is_the_tenons_or_the_foots_or_the_nuts(access: str, foot: bool, end: str) -> None:
    remedy = finding_rod_blind_end(1.0, 3.0, access, foot)[0].remedy
    assert [each for each in ("tenon", "foot") if each in str(remedy)] == [each for each in (end,) if each]


def test_without_a_rod_nothing_is_said_of_it() -> None:
    nothing = np.full(4, math.nan)
    assert finding_rod_over(nothing, 3.0) == finding_rod_corner(nothing, 3.0, 3.0) == ()
    assert finding_rod_under_head(math.nan, 3.0) == finding_rod_blind_end(math.nan, 3.0, "head", False) == ()
    assert finding_rod_reach(math.nan, 30.0) == ()


@pytest.mark.parametrize(("past", "severity"), [(-5.0, "fine"), (30.0, "fine"), (30.0 + HAIR, "caution")])
def test_reach(past: float, severity: str) -> None:
    assert finding_rod_reach(past, 30.0)[0].severity == severity


@pytest.mark.parametrize(("length", "severity"), [(138.0, "fine"), (138.0 + HAIR, "caution")])
def test_a_scarf_that_is_longer_than_the_head(length: float, severity: str) -> None:
    assert finding_scarf(True, length, 138.0, "on the head")[0].severity == severity
    assert finding_scarf(True, length, 138.0, "under the board") == ()
    assert finding_scarf(False, math.inf, 138.0, "on the head") == ()


def test_stock_found_or_not() -> None:
    assert finding_neck_stock(NeckYield("none", 0, 0, 0, 0, 0, 0), "cherry", ())[0].severity == "note"
    (found,) = finding_neck_stock(NeckYield("plank 3", 2, 900, 90, 25, 5, 0.6), "cherry", ())
    assert found.severity == "fine"
    assert "plank 3" in found.says


@pytest.mark.parametrize(("count", "severity"), [(2, "note"), (3, "fine")])
def test_places_gauged(count: int, severity: str) -> None:
    assert finding_carve_gauged(count, 3.0)[0].severity == severity


def test_a_heel_is_deeper_than_the_neck() -> None:
    assert finding_heel_carved(17.0, 16.7)[0].severity == "fine"
    assert finding_heel_carved(16.7, 16.7)[0].severity == "stop"


def test_without_an_outline_the_holes_are_not_judged() -> None:
    (found,) = finding_tuner_edge(np.full(6, math.nan), 5.0)
    assert found.severity == "not judged"
    assert found.says.startswith("because")


def test_a_string_that_cuts_into_the_middle_wood_is_told(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures], example: Callable[[str], Figures]
) -> None:
    """Its rollers' places 17 to 21.5 mm from the middle, *Mere*'s third string ran into the wood between the slots.

    It stands 4.3 mm from the middle at the nut and 17 at its roller; three tenths of the way on it is 8.1 mm out, and
    the slot, 16 wide about 19.2, begins at 11.2 mm.
    """
    where = "posts_y = [15.5, 14, 12.5, -12.5, -14, -15.5]"
    wide = derive_text(text_of("mere").replace(where, "posts_y = [21.5, 19, 17, -17, -19, -21.5]"))
    (found,) = [each for each in findings_of(wide) if each.name == "strings in the head's slots"]
    assert (found.severity, found.figure.address) == ("caution", "head_slot_room[3]")
    assert found.value == pytest.approx(-3.5, abs=0.1)
    (kept,) = [each for each in findings_of(example("mere")) if each.name == "strings in the head's slots"]
    assert kept.severity == "fine"
    assert not [each for each in findings_of(example("tarn")) if each.name == "strings in the head's slots"]
