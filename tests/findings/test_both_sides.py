"""Each finding about the board, its slots, strings and wire, on both sides of its limit.

The figures are made up so that which side they lie on is plain; limits are handed in, never taken from the program.
"""

import math
from typing import Any

import numpy as np
import pytest

from gramil.description.records import Blank, Block, Cutter, Saw
from gramil.findings import on_board, on_slots, on_strings, on_wire
from gramil.findings.finding import Finding, Findings
from gramil.parts.edge_records import NO_PAIR
from gramil.parts.records import BlankChoice, BlockChoice, LedgeChoice, TemplateMatch, WireFit
from gramil.parts.saw import NO_SAW

NAN = math.nan
NONE = "not judged"
SAW = Saw("table", 0.58, "face down", False, "a saw")
RIDING = Saw("hand", 0.6, "from above", True, "a saw that rides the arch")
CUTTER = Cutter("ledge", 12.7, (9.0,))


def only(findings: Findings) -> Finding:
    (finding,) = findings
    return finding


def fit(gap: float, bite: float = 0.1) -> tuple[WireFit, ...]:
    return (WireFit("another", 9.0, 9.0, 9.0, 9.0), WireFit("table", gap, bite, 0.0, 0.04))


def ledge(proud: float) -> LedgeChoice:
    return LedgeChoice("ledge, bearing 9", 12.7, 9.0, 1.85, proud)


@pytest.mark.parametrize(
    ("left", "severity"), [([9, 2.5, 2.2], "fine"), ([9, 2.5, 1.9], "caution"), ([0.5, 0.9, 2.5], "stop")]
)
def test_wood_left_under_slots(left: list[float], severity: str) -> None:
    found = only(on_slots.finding_left_under_slot(np.array(left), 1, 2.0, 1.0))
    assert found.severity == severity
    worst = min(left[1:])
    assert (found.value, found.figure.address) == (worst, f"slot_left_least[{left.index(worst)}]")


def test_the_zero_line_counts_only_where_it_has_a_slot() -> None:
    left = np.array([0.5, 3.0, 3.0])
    assert only(on_slots.finding_left_under_slot(left, 1, 2.0, 1.0)).severity == "fine"
    assert only(on_slots.finding_left_under_slot(left, 0, 2.0, 1.0)).figure.address == "slot_left_least[0]"


@pytest.mark.parametrize(("least", "severity"), [(0.31, "fine"), (0.3, "fine"), (0.29, "caution"), (-0.01, "stop")])
def test_pilot(least: float, severity: str) -> None:
    kerf = np.array([-9.0, 0.9, least, 0.8])
    found = only(on_slots.finding_pilot(kerf, 1, "follows the arch", "before arching", 0.3))
    assert (found.severity, found.figure.address, found.value) == (severity, "slot_kerf_at_end[2]", least)


@pytest.mark.parametrize(("bottom", "cut"), [("straight", "before arching"), ("follows the arch", "after arching")])
def test_no_pilot_no_finding(bottom: str, cut: str) -> None:
    assert on_slots.finding_pilot(np.array([0.0, 0.0]), 1, bottom, cut, 0.3) == ()


@pytest.mark.parametrize(
    ("room", "severity", "limit"),
    [
        (0.09, "caution", "limit_clearance_least"),
        (0.1, "fine", None),
        (0.25, "fine", None),
        (0.26, "caution", "limit_clearance_most"),
    ],
)
def test_room_under_the_tang(room: float, severity: str, limit: str | None) -> None:
    found = only(on_slots.finding_clearance(room, 0.1, 0.25))
    assert found.severity == severity
    assert limit is None or str(found.limit or "") == limit


@pytest.mark.parametrize(
    ("loss", "severity", "limit"),
    [
        (0.05, "caution", "limit_crest_loss_least"),
        (0.2, "fine", None),
        (0.35, "caution", "limit_crest_loss_most"),
    ],
)
def test_crest_still_to_come_off(loss: float, severity: str, limit: str | None) -> None:
    found = only(on_slots.finding_crest_loss(loss, "before arching", 0.1, 0.3))
    assert found.severity == severity
    assert limit is None or str(found.limit or "") == limit
    assert on_slots.finding_crest_loss(loss, "after arching", 0.1, 0.3) == ()


def test_saw_for_the_slots() -> None:
    assert only(on_slots.finding_saw((), NO_SAW, "", 0.54)).severity == "not judged"
    none = only(on_slots.finding_saw((SAW,), NO_SAW, "", 0.54))
    assert (none.severity, str(none.figure), none.value) == ("stop", "wire_tang_thickness", 0.54)
    found = only(on_slots.finding_saw((SAW,), SAW, "", 0.54))
    assert (found.severity, str(found.figure), found.value) == ("fine", "saw_kerf", 0.58)


def test_saw_that_rides_the_arch() -> None:
    asked = ("follows the arch", "before arching")
    assert only(on_slots.finding_deepening_saw(NO_SAW, *asked, 0.54)).severity == "stop"
    assert only(on_slots.finding_deepening_saw(RIDING, *asked, 0.54)).severity == "fine"
    assert on_slots.finding_deepening_saw(NO_SAW, "straight", "before arching", 0.54) == ()


@pytest.mark.parametrize(("over", "severity"), [(0.04, "fine"), (0.06, "caution"), (-0.05, "fine")])
def test_kerf_of_the_deepening_saw(over: float, severity: str) -> None:
    """0.04 wider than the main kerf holds, 0.06 is loose, narrower is no fault."""
    assert only(on_slots.finding_kerfs_agree(over, 0.05)).severity == severity
    assert on_slots.finding_kerfs_agree(math.nan, 0.05) == ()


@pytest.mark.parametrize(
    ("gap", "severity", "limit"),
    [
        (0.06, "caution", "limit_fit_loosest"),
        (0.05, "fine", "limit_fit_loosest"),
        (-0.01, "fine", "limit_fit_loosest"),
        (-0.02, "note", "limit_fit_tightest"),
    ],
)
def test_wire_in_the_kerf(gap: float, severity: str, limit: str) -> None:
    found = only(on_wire.finding_wire_fit(fit(gap), SAW, 0.05, -0.01))
    assert (found.severity, str(found.limit or ""), found.value) == (severity, limit, gap)
    assert found.figure.address == 'wire_fits["table"].gap'


@pytest.mark.parametrize(("bite", "severity"), [(0.08, "fine"), (0.06, "caution"), (0.03, "stop")])
def test_bite_of_the_beads(bite: float, severity: str) -> None:
    assert only(on_wire.finding_bead_bite(fit(0.0, bite), SAW, 0.07, 0.04)).severity == severity


def test_without_a_saw_wire_is_not_judged() -> None:
    for found in (
        only(on_wire.finding_wire_fit(fit(0.0), NO_SAW, 0.05, -0.01)),
        only(on_wire.finding_bead_bite(fit(0.0), NO_SAW, 0.07, 0.04)),
        only(on_wire.finding_back_bow(NAN, NAN, 0.15)),
    ):
        assert found.severity == "not judged"
        assert found.says.startswith("because ")


@pytest.mark.parametrize(
    ("least", "most", "severity"), [(0.0, 0.14, "fine"), (0.1, 0.16, "caution"), (0.16, 0.9, "stop")]
)
def test_back_bow_is_a_range(least: float, most: float, severity: str) -> None:
    """Sure to be too much is a stop; perhaps too much is a caution."""
    assert only(on_wire.finding_back_bow(least, most, 0.15)).severity == severity


@pytest.mark.parametrize(("have", "severity"), [(1300.0, "fine"), (1299.0, "caution"), (0.0, "not judged")])
def test_wire_on_hand(have: float, severity: str) -> None:
    assert only(on_wire.finding_wire_on_hand(1300.0, have)).severity == severity


@pytest.mark.parametrize(
    ("spread", "inset", "severity"), [(0.2, 1.8, "fine"), (0.21, 1.8, "caution"), (0.21, 0.0, "note")]
)
def test_edge_uneven(spread: float, inset: float, severity: str) -> None:
    assert only(on_board.finding_edge_uneven(spread, inset, 0.2)).severity == severity


@pytest.mark.parametrize(
    ("proud", "severity"),
    [
        (-0.01, "stop"),
        (0.0, "note"),
        (0.09, "note"),
        (0.1, "fine"),
        (0.2, "fine"),
        (0.21, "caution"),
        (NAN, "not judged"),
    ],
)
def test_binding_ledge(proud: float, severity: str) -> None:
    assert only(on_board.finding_ledge((CUTTER,), ledge(proud), 1.8, 0.1, 0.2)).severity == severity


def test_a_cutter_as_large_as_its_bearings_leaves_no_ledge() -> None:
    found = only(on_board.finding_ledge((CUTTER,), NO_PAIR, 1.8, 0.1, 0.2))
    assert (found.severity, str(found.figure), found.value) == ("stop", "core_inset", 1.8)


def test_ledge_without_binding_or_cutters() -> None:
    assert on_board.finding_ledge((CUTTER,), ledge(0.1), 0.0, 0.1, 0.2) == ()
    assert only(on_board.finding_ledge((), ledge(NAN), 1.8, 0.1, 0.2)).severity == "not judged"


def test_blank() -> None:
    piece = Blank("one", "persimmon", 500, 70, 8, 1)
    yes, no = BlankChoice("one", "persimmon", 1, 1, 1, 900.0), BlankChoice("none", "", NAN, NAN, NAN, NAN)
    assert only(on_board.finding_blank((piece,), (), "persimmon", yes, 62.0)).severity == "fine"
    assert only(on_board.finding_blank((piece,), (), "persimmon", no, 62.0)).severity == "stop"
    assert only(on_board.finding_blank((), (), "persimmon", no, 62.0)).severity == "not judged"


def test_sanding_blocks() -> None:
    blocks = (Block("sixteen", 1 / 406.4),)
    near, hollow, proud = (BlockChoice("sixteen", 406.4, misfit) for misfit in (0.05, 0.06, -0.06))
    found = on_board.finding_blocks(blocks, near, hollow, proud, 0.05)
    assert [each.severity for each in found] == ["fine", "note", "note"]
    assert [each.figure.address for each in found] == [f"block_at_{each}.misfit" for each in ("nut", "middle", "end")]
    assert only(on_board.finding_blocks((), near, near, near, 0.05)).severity == "not judged"


def test_index_template() -> None:
    square, fanned = np.zeros(20), np.linspace(0.02, -0.03, 20)
    serves, not_this = TemplateMatch("630", 19, 0.0, True), TemplateMatch("648", 20, 9.0, False)
    assert only(on_board.finding_index_template((not_this, serves), square)).severity == "fine"
    assert only(on_board.finding_index_template((not_this,), square)).severity == "note"
    found = only(on_board.finding_index_template((serves,), fanned))
    assert (found.severity, found.figure.address, found.value) == ("note", "fret_angle[19]", 0.03)


def test_shop() -> None:
    assert only(on_board.finding_shop(True, "usual")).severity == "note"
    assert on_board.finding_shop(False, "mine") == ()


@pytest.mark.parametrize(("least", "severity"), [(2.8, "fine"), (2.7, "caution"), (-0.1, "stop")])
def test_edge_margin(least: float, severity: str) -> None:
    room, tight = np.array([3.0, 3.4, 3.6]), np.array([3.0, least, 3.6])
    treble, bass = on_strings.finding_edge_margin(room, tight, 2.75)
    assert treble.severity == "fine"
    assert (bass.severity, bass.figure.address, bass.value) == (severity, "string_margin_bass[1]", least)
    treble, bass = on_strings.finding_edge_margin(tight, room, 2.75)
    assert (treble.severity, treble.figure.address, bass.severity) == (severity, "string_margin_treble[1]", "fine")


@pytest.mark.parametrize(("least", "severity"), [(0.1, "fine"), (0.0, "stop"), (-0.1, "stop")])
def test_air_between_strings(least: float, severity: str) -> None:
    found = only(on_strings.finding_string_gap(np.array([6.0, least, 6.0, 0.0])))
    assert (found.severity, found.figure.address) == (severity, "string_gap_nut[2]")


@pytest.mark.parametrize(("hump", "severity"), [(0.05, "fine"), (0.06, "caution"), (0.6, "stop")])
def test_hump(hump: float, severity: str) -> None:
    found = only(on_strings.finding_hump(np.array([0.01, 0.0, hump]), 0.05))
    assert (found.severity, found.figure.address) == (severity, "arch_hump[3]")


@pytest.mark.parametrize(("error", "severity"), [(1.0, "fine"), (-1.1, "caution"), (11.0, "stop"), (-11.0, "stop")])
def test_inner_strings(error: float, severity: str) -> None:
    """Flat is as bad as sharp."""
    errors = np.zeros((3, 5))
    errors[1, 4] = error
    found = only(on_strings.finding_inner_strings(errors, 1.0))
    assert (found.severity, found.figure.address, found.value) == (severity, "string_error[2, 4]", error)


@pytest.mark.parametrize("levelled", [True, False])
def test_levelling(levelled: bool) -> None:
    found: Any = on_board.finding_levelling(0.0005, levelled)
    assert [each.severity for each in found] == (["note"] if levelled else [])
