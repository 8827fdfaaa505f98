"""Findings on the neck: limits on both sides, and ranges judged as ranges."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.findings.on_neck import (
    finding_break_at_nut,
    finding_neck_angle,
    finding_neck_reset,
    finding_relief_too_little,
    finding_relief_too_much,
    finding_sideways_at_nut,
    finding_tongue,
    finding_under_channel,
)
from gramil.graph import Figures

HAIR = 1e-6


@pytest.mark.parametrize(
    ("angle", "severity"),
    [(-0.01, "fine"), (0.05, "fine"), (-0.01 - HAIR, "stop"), (0.05 + HAIR, "stop"), (math.nan, "not judged")],
)
def test_neck_angle(angle: float, severity: str) -> None:
    assert finding_neck_angle(angle, -0.01, 0.05)[0].severity == severity


def test_a_neck_not_set_yet_is_not_judged_as_set() -> None:
    assert finding_neck_reset(math.nan, 2.0, 0.0, 0.3) == ()


@pytest.mark.parametrize(
    ("take", "severity"), [(0.3, "fine"), (-0.3, "fine"), (0.3 + HAIR, "caution"), (-0.3 - HAIR, "caution")]
)
def test_neck_reset(take: float, severity: str) -> None:
    (found,) = finding_neck_reset(2.0 - take, 2.0, take, 0.3)
    assert found.severity == severity
    assert ("cap" in str(found.remedy)) == (take > 0.3)


@pytest.mark.parametrize(("gap", "remedy"), [(0.5, ""), (-0.5, ""), (0.6, "wedge"), (-0.6, "Plane")])
def test_tongue(gap: float, remedy: str) -> None:
    (found,) = finding_tongue(gap, 0.5)
    assert found.severity == ("note" if remedy else "fine")
    assert remedy in found.remedy


def test_wood_under_a_channel_is_judged_on_the_neck_alone() -> None:
    under = np.array([5.0, 4.0, 3.0, 1.0])
    (found,) = finding_under_channel(under, 2.0, 9.5, 3.0, "one way")
    assert (found.severity, found.figure.address) == ("fine", "neck_section_under_channel[2]")
    assert finding_under_channel(under, 3.0, 9.5, 3.0, "one way")[0].severity == "caution"
    assert finding_under_channel(under - 1 - HAIR, 3.0, 9.5, 3.0, "one way")[0].severity == "stop"
    assert finding_under_channel(under, 3.0, 0.0, 3.0, "none") == ()


@pytest.mark.parametrize(
    ("least", "most", "rod", "severity"),
    [
        (0.2, 1.0, "two way", "fine"),
        (0.2, 1.0 + HAIR, "one way", "caution"),
        (1.0 + HAIR, 1.5, "two way", "stop"),
        (-0.1, 0.25, "none", "fine"),
        (-0.1, 0.3, "none", "caution"),
        (0.3, 0.4, "none", "stop"),
        (math.nan, math.nan, "none", "not judged"),
        (0.2, math.inf, "two way", "caution"),
        (1.1, math.inf, "two way", "stop"),
        (math.inf, math.inf, "two way", "stop"),
    ],
)
def test_too_much_relief(least: float, most: float, rod: str, severity: str) -> None:
    assert finding_relief_too_much(least, most, rod, 1.0, 0.25, 700.0)[0].severity == severity


@pytest.mark.parametrize(
    ("least", "most", "rod", "severity"),
    [
        (0.1, 0.5, "none", "fine"),
        (0.1 - HAIR, 0.5, "one way", "caution"),
        (0.0, 0.1 - HAIR, "one way", "stop"),
        (-0.9 + HAIR, 0.5, "two way", "fine"),
        (-0.9 - HAIR, 0.5, "two way", "caution"),
        (-2.0, -0.9 - HAIR, "two way", "stop"),
        (math.nan, 0.1, "two way", "not judged"),
    ],
)
def test_too_little_relief(least: float, most: float, rod: str, severity: str) -> None:
    assert finding_relief_too_little(least, most, rod, 1.0, 0.1, 700.0)[0].severity == severity


def test_break_over_the_nut() -> None:
    angles = np.radians([5.0, 10.0, 18.0])
    assert [each.severity for each in finding_break_at_nut(angles, angles[0], angles[2])] == ["fine", "fine"]
    bent = angles + np.array([-HAIR, 0.0, HAIR])
    least, most = finding_break_at_nut(bent, angles[0], angles[2])
    assert (least.severity, least.figure.address) == ("caution", "head_break_angle[1]")
    assert (most.severity, most.figure.address) == ("caution", "head_break_angle[3]")
    assert finding_break_at_nut(np.array([-HAIR]), 0.1, 0.3)[0].severity == "stop"


def test_sideways_bend_either_way() -> None:
    assert finding_sideways_at_nut(np.array([0.1, -0.15]), 0.15)[0].severity == "fine"
    (found,) = finding_sideways_at_nut(np.array([0.1, -0.15 - HAIR]), 0.15)
    assert (found.severity, found.figure.address) == ("caution", "head_sideways_bend[2]")


def test_a_bridge_of_another_unit_is_an_impossible_neck(
    derive_text: Callable[..., Figures], text_of: Callable[[str], str]
) -> None:
    text = text_of("tarn").replace("[bridge]", "[bridge]\nthickness = 25")
    (found,) = derive_text(text)["finding_neck_angle"]
    assert (found.severity, str(found.limit or "")) == ("stop", "limit_neck_angle_most")
