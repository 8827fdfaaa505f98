"""Each finding about the body's bindings, on both sides of its limit; limits are handed in."""

import math

import pytest

from gramil.description.records import Cutter
from gramil.findings import on_edges
from gramil.findings.finding import Finding, Findings
from gramil.parts.edge_records import Channel, Cut, Strip, Tilt

NAN = math.nan
CUTTER = Cutter("rabbet", 19.0, (14.4,))


def only(findings: Findings) -> Finding:
    (finding,) = findings
    return finding


def channel(
    behind: float = 5.0,
    lining: float = 10.0,
    glued: float = 7.0,
    past: float = -6.0,
    under: float = 1.4,
    cover: float = 3.5,
) -> tuple[Channel, ...]:
    return (Channel("top", behind, lining, glued, past, under, cover),)


@pytest.mark.parametrize(("value", "severity"), [(1.5, "fine"), (1.49, "caution"), (0.0, "caution"), (-0.01, "stop")])
def test_wood_behind_the_channel(value: float, severity: str) -> None:
    found = only(on_edges.finding_behind_channel(channel(behind=value), 1.5))
    assert (found.severity, found.value, found.figure.address) == (severity, value, 'channel_list["top"].behind')
    assert ("opens the body" in str(found.says)) == (severity == "stop")


@pytest.mark.parametrize(("value", "severity"), [(4.0, "fine"), (3.9, "caution"), (0.0, "caution"), (-0.1, "stop")])
def test_lining_under_the_channel(value: float, severity: str) -> None:
    assert only(on_edges.finding_lining_under(channel(lining=value), 4.0)).severity == severity


@pytest.mark.parametrize(("value", "severity"), [(4.0, "fine"), (3.9, "caution"), (2.0, "caution"), (1.9, "stop")])
def test_rim_left_to_hold_the_plate(value: float, severity: str) -> None:
    assert only(on_edges.finding_plate_glued(channel(glued=value), 4.0, 2.0)).severity == severity


@pytest.mark.parametrize(
    ("under", "past", "severity", "words"),
    [
        (0.5, -1.0, "fine", "over the linings"),
        (0.4, -1.0, "caution", "over the linings"),
        (0.0, -1.0, "caution", "onto the linings"),
        (0.9, 0.1, "caution", "past the linings"),
        (0.0, 0.1, "stop", "opens the body"),
    ],
)
def test_plate_left_under_the_purfling(under: float, past: float, severity: str, words: str) -> None:
    found = only(on_edges.finding_under_purfling(channel(under=under, past=past), 0.5))
    assert found.severity == severity
    assert words in str(found.says)


def test_without_purfling_nothing_is_said_of_it() -> None:
    assert on_edges.finding_under_purfling(channel(under=NAN), 0.5) == ()


@pytest.mark.parametrize(("value", "severity"), [(1.0, "fine"), (0.9, "caution"), (-0.1, "stop")])
def test_binding_covers_the_joint(value: float, severity: str) -> None:
    assert only(on_edges.finding_binding_cover(channel(cover=value), 1.0)).severity == severity


@pytest.mark.parametrize(("value", "severity"), [(20.0, "fine"), (19.0, "caution"), (-1.0, "stop")])
def test_side_between_bindings(value: float, severity: str) -> None:
    assert only(on_edges.finding_side_between(channel(), value, 20.0)).severity == severity
    assert on_edges.finding_side_between((), value, 20.0) == ()


def strip(bend: float, wood: str = "maple", material: str = "wood") -> tuple[Strip, ...]:
    return (
        Strip("top binding", 2, 760.0, 6.0, 2.0, wood, bend, material),
        Strip("top purfling", 2, 755.0, 1.6, 1.5, "purfling", NAN, "not said"),
    )


@pytest.mark.parametrize(("bend", "severity"), [(22.0, "fine"), (21.0, "caution"), (11.0, "stop")])
def test_binding_round_the_tightest_bend(bend: float, severity: str) -> None:
    found = only(on_edges.finding_binding_bend(strip(bend), 22.0, 12.0))
    assert (found.severity, str(found.limit or "")) == (severity, "limit_bend_ratio")


def test_plastic_is_not_judged_by_woods_limit() -> None:
    for wood, material in (("celluloid, black", "plastic"), ("celtis", "not known")):
        found = only(on_edges.finding_binding_bend(strip(11.0, wood, material), 22.0, 12.0))
        assert (found.severity, str(found.limit or "")) == ("not judged", "")
        assert found.says.startswith("because")
        assert ("not a known wood" in found.says) == (material == "not known")
    assert only(on_edges.finding_binding_bend(strip(11.0, "celtis", "wood"), 22.0, 12.0)).severity == "stop"


def test_only_a_wooden_binding_names_a_wood() -> None:
    wood, plastic = strip(40.0), strip(40.0, "black ABS", "not known")
    assert [each.bends_as_wood for each in (*wood, *plastic)] == [True, False, False, False]


@pytest.mark.parametrize(("lean", "severity"), [(0.1, "fine"), (0.11, "note")])
def test_cutter_that_rides_on_a_dome(lean: float, severity: str) -> None:
    found = only(on_edges.finding_channel_lean((Tilt("back", 0.02, 0.0, lean, 0.05),), 0.1))
    assert (found.severity, bool(found.remedy)) == (severity, severity != "fine")


def cut(proud: float) -> tuple[Cut, ...]:
    return (Cut("top binding", 2.5, 6.4, 5.0, "rabbet, bearing 14.4", 19.0, 14.4, 2.3, proud),)


@pytest.mark.parametrize(
    ("proud", "severity"), [(0.15, "fine"), (0.2, "fine"), (0.21, "caution"), (0.05, "note"), (-0.05, "stop")]
)
def test_cutter_and_bearing_on_hand(proud: float, severity: str) -> None:
    found = only(on_edges.finding_channel_cutters(cut(proud), (CUTTER,), 0.1, 0.2))
    assert (found.severity, found.figure.address) == (severity, 'channel_cuts["top binding"].proud')


def test_cutters_are_not_judged_where_none_is_listed() -> None:
    assert only(on_edges.finding_channel_cutters(cut(NAN), (), 0.1, 0.2)).severity == "not judged"
    assert on_edges.finding_channel_cutters((), (), 0.1, 0.2) == ()
