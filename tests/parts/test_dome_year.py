"""The top's dome through its owner's year, worked by hand from the curvature of a strip of two layers."""

import math
from collections.abc import Callable

import pytest

from gramil.findings.on_air import finding_dome
from gramil.graph import Figures
from gramil.parts.dome_year import (
    dome_curl,
    dome_curvature_dry,
    dome_curvature_dry_least,
    dome_curvature_wet,
    dome_rise_dry,
    dome_rise_wet,
)
from gramil.show import Shower

# S. Timoshenko, Analysis of bi-metal thermostats, 1925, equation (4), from memory. Both layers weigh alike here:
# stiffness times width is 10 000 MPa x 10 mm in the brace and 1000 MPa x 100 mm in the top, so n = 1; m = 3 / 12 = 1/4.
#   curvature for unit strain = 6 (1 + m)^2 / (h (3 (1 + m)^2 + (1 + m n)(m^2 + 1 / (m n)))),  h = 12 + 3 = 15 mm
#     (1 + m)^2 = 1.5625;  (1 + 1/4)(1/16 + 4) = 5.078125
#     6 x 1.5625 / (15 x (4.6875 + 5.078125)) = 9.375 / 146.484375 = 0.064 / mm
CURL = 0.064


def curl() -> float:
    return dome_curl(10.0, 12.0, 100.0, 3.0, 1000.0, 10_000.0)


def test_the_strip_curls_as_two_layers_do() -> None:
    assert curl() == pytest.approx(CURL, rel=1e-9)


def test_a_dome_sinks_in_dry_air_and_rises_in_damp_air() -> None:
    # 0.002 for each 1 %, 2 % either way: strain 0.004, curvature 0.064 x 0.004 = 0.000256 / mm.
    # A dome of 3000 mm: 1/3000 - 0.000256 = 0.00007733 / mm, R 12 931 mm; 1/3000 + 0.000256 = 0.00058933, R 1696.8 mm.
    # Over 400 mm: R - sqrt(R^2 - 200^2) is 12 931 - 12 929.453 = 1.547 mm, and 1696.8 - sqrt(2 839 130) = 11.828 mm.
    dry = dome_rise_dry(dome_curvature_dry(3000.0, curl(), 0.002, 6.0, 8.0), 400.0)
    wet = dome_rise_wet(dome_curvature_wet(3000.0, curl(), 0.002, 10.0, 8.0), 400.0)
    assert (dry, wet) == (pytest.approx(1.547, abs=0.001), pytest.approx(11.828, abs=0.002))
    # One of 5000 mm: 0.0002 - 0.000256 = -0.000056 / mm: a hollow of 200^2 x 0.000056 / 2 = 1.12 mm.
    sunk = dome_rise_dry(dome_curvature_dry(5000.0, curl(), 0.002, 6.0, 8.0), 400.0)
    assert sunk == pytest.approx(-1.12, abs=0.001)


def test_no_curvature_is_flat() -> None:
    assert dome_rise_dry(0.0, 400.0) == 0
    assert math.isnan(dome_rise_dry(math.nan, 400.0))


# The same with figures as they stand in a description. Sitka spruce, from memory: 10 800 MPa along, 0.078 of it across,
# 842.4 MPa, 0.00148 for each 1 %. Forest Products Laboratory, Wood Handbook, table 4-2: 5.4 and 8.5 % of moisture.
TOP = '\n[top]\nradius = "15 ft"\nthickness = 2.8\n'
# n = (842.4 x 90) / (10 800 x 8) = 0.8775; m = 2.8 / 12 = 0.23333; h = 14.8 mm; (1 + m)^2 = 1.52111
#   6 x 1.52111 / (14.8 x (4.56333 + (1 + 0.20475)(0.05444 + 1 / 0.20475)))
#     = 9.12667 / (14.8 x (4.56333 + 5.94958)) = 0.05866 / mm
#   1 / 4572 - 0.05866 x 0.00148 x 3.1 = 0.00021872 - 0.00026912 = -0.00005040 / mm
USUAL = -0.00005040


def without_top(text: str) -> str:
    head, found, rest = text.partition("\n[top]\n")
    return head + ("\n[" + rest.partition("\n[")[2] if found and "\n[" in rest else "")


def braceless(text_of: Callable[[str], str]) -> str:
    return without_top(text_of("scree"))


def test_the_usual_top_of_a_described_guitar(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(braceless(text_of) + TOP)
    assert figures["brace_list"] == ()
    assert figures["dome_curl"] == pytest.approx(0.05866, rel=1e-3)
    # Moistures of the table are rounded to 0.1 %, which is 0.05866 x 0.00148 x 0.07 = 0.000006 / mm.
    assert figures["dome_curvature_dry"] == pytest.approx(USUAL, abs=7e-6)
    # No body is described: 380 across. 4572 - sqrt(4572^2 - 190^2) = 4572 - 4568.0503.
    assert (figures["dome_across"], figures["dome_rise_made"]) == (380, pytest.approx(3.9497, abs=1e-4))


def test_described_braces_that_run_across_are_what_holds(example: Callable[[str], Figures]) -> None:
    fell = example("fell")
    across = [each for each in fell["brace_list"] if each.plate == "top" and each.angle >= math.radians(45)]
    assert across
    assert fell["dome_across"] == fell["body_width"]
    assert fell["dome_brace_width"] * len(across) == pytest.approx(sum(each.width for each in across))
    assert fell["dome_brace_height"] * len(across) == pytest.approx(sum(each.height for each in across))
    assert fell["dome_brace_spacing"] * sum(each.length for each in across) == pytest.approx(fell["body_area"])


def test_a_dome_that_stays_is_fine_one_that_may_sink_is_noted_and_one_that_must_is_a_caution() -> None:
    def severity(most: float, least: float) -> str:
        woods = (0.002, 1000.0, 10_000.0, "spruce", "spruce")
        (found,) = finding_dome(-0.5, most, least, *woods)
        return found.severity

    both = ((0.0001, 0.00012), (0.0, 0.0001), (-0.0001, 0.0001), (-0.0001, 0.0), (-0.0002, -0.0001))
    assert [severity(*each) for each in both] == ["fine", "note", "note", "caution", "caution"]


def test_creep_leaves_a_part_of_the_change() -> None:
    """By hand: from 1/8000 to -1/8000 is a change of -0.00025; three tenths of it is -0.000075; 0.000125 - 0.000075."""
    assert dome_curvature_dry_least(-1 / 8000, 8000.0, 0.3) == pytest.approx(0.00005)


def test_a_top_of_wood_that_is_not_known_is_not_judged(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(braceless(text_of) + TOP + 'wood = "moonwood"\n')
    assert math.isnan(figures["dome_rise_dry"])
    assert not math.isnan(figures["dome_rise_made"])
    (found,) = figures["finding_dome"]
    assert found.severity == "not judged"
    assert found.says.startswith("because no source gives how moonwood moves")
    assert "moonwood is no wood that is known" in str(figures.origins["top_movement_radial"])


def test_the_owners_page_says_sunk_in_words_and_what_is_not_known(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    def shown(rows: str) -> list[str]:
        """What stands beside the air that it was made for, the driest and the dampest."""
        figures = derive_text(braceless(text_of) + TOP + rows)
        return [Shower(figures).filled(each.tolerance) for each in figures["setup_owner_air"].figures[:3]]

    made, dry, wet = shown("")
    assert made == "top's dome 3.95 mm over 380.00 mm"
    assert dry.endswith("mm: sunk, a hollow")
    assert "sunk" not in wet
    assert "sunk" not in shown("brace_height = 40\nbrace_width = 20\n")[1]
    moonwood = (
        braceless(text_of).replace('wood = "black locust"', 'wood = "bog oak"') + TOP + 'brace_wood = "moonwood"\n'
    )
    assert derive_text(moonwood)["setup_owner_air"].closed  # nor does any source give how its board moves
    known = derive_text(moonwood.replace('wood = "bog oak"', 'wood = "persimmon"'))
    assert Shower(known).filled(known["setup_owner_air"].figures[1].tolerance) == "top's dome not known"
    flat = TOP.replace('"15 ft"', '"flat"')
    figures = derive_text(braceless(text_of) + flat)
    assert (
        Shower(figures).filled(figures["setup_owner_air"].figures[0].tolerance) == "top's dome 0.00 mm over 380.00 mm"
    )
