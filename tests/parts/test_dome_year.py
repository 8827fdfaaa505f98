"""The top's dome through its owner's year, worked by hand from the curvature of a strip of two layers."""

import math
from collections.abc import Callable

import pytest

from gramil.findings.on_air import finding_dome
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.parts.body_records import Holder
from gramil.parts.dome_year import (
    dome_brace_height,
    dome_brace_spacing,
    dome_brace_width,
    dome_curl,
    dome_curvature_dry,
    dome_curvature_dry_least,
    dome_curvature_wet,
    dome_curvature_wet_least,
    dome_rise_dry,
    dome_rise_wet,
)
from gramil.parts.top_across import across_covered, across_height, across_lean

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
    # 0.002 for each 1 %, 2 % either way: strain 0.004, curvature 0.064 x 0.004 = 0.000256 / mm; 1.25 of it 0.00032.
    # A dome of 3000 mm: 1/3000 - 0.00032 = 0.00001333 / mm, R 75 000 mm; 1/3000 + 0.00032 = 0.00065333, R 1530.61 mm.
    # Over 400 mm: 200^2 / 150 000 = 0.2667 mm, and 1530.61 - sqrt(1530.61^2 - 200^2) = 1530.61 - 1517.49 = 13.12 mm.
    dry = dome_rise_dry(dome_curvature_dry(3000.0, curl(), 0.002, 6.0, 8.0), 400.0)
    wet = dome_rise_wet(dome_curvature_wet(3000.0, curl(), 0.002, 10.0, 8.0), 400.0)
    assert (dry, wet) == (pytest.approx(0.2667, abs=0.001), pytest.approx(13.12, abs=0.01))
    # One of 5000 mm: 0.0002 - 0.00032 = -0.00012 / mm: a hollow of 200^2 x 0.00012 / 2 = 2.4 mm.
    sunk = dome_rise_dry(dome_curvature_dry(5000.0, curl(), 0.002, 6.0, 8.0), 400.0)
    assert sunk == pytest.approx(-2.4, abs=0.001)


def test_no_curvature_is_flat() -> None:
    assert dome_rise_dry(0.0, 400.0) == 0
    assert math.isnan(dome_rise_dry(math.nan, 400.0))


# The same with figures as they stand in a description. Sitka spruce, from memory: 10 800 MPa along, 0.078 of it across,
# 842.4 MPa, 0.00148 for each 1 %. Forest Products Laboratory, Wood Handbook, table 4-2: 5.4 and 8.5 % of moisture.
TOP = '\n[top]\nradius = "15 ft"\nthickness = 2.8\n'
# n = (842.4 x 90) / (10 800 x 8) = 0.8775; m = 2.8 / 12 = 0.23333; h = 14.8 mm; (1 + m)^2 = 1.52111
#   6 x 1.52111 / (14.8 x (4.56333 + (1 + 0.20475)(0.05444 + 1 / 0.20475)))
#     = 9.12667 / (14.8 x (4.56333 + 5.94958)) = 0.05866 / mm
#   1 / 4572 - 1.25 x 0.05866 x 0.00148 x 3.1 = 0.00021872 - 0.00033641 = -0.00011769 / mm
USUAL = -0.00011769


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
    # Moistures of the table are rounded to 0.1 %, which is 1.25 x 0.05866 x 0.00148 x 0.07 = 0.0000076 / mm.
    assert figures["dome_curvature_dry"] == pytest.approx(USUAL, abs=9e-6)
    # No body is described: 380 across. 4572 - sqrt(4572^2 - 190^2) = 4572 - 4568.0503.
    assert (figures["dome_across"], figures["dome_rise_made"]) == (380, pytest.approx(3.9497, abs=1e-4))


def test_described_braces_that_hold_the_strip_are_what_holds() -> None:
    """By hand: 200 mm of a square brace 8 wide, 10 high; 400 of one 5 wide at 45 degrees, of which a quarter counts.

    Width (200 x 8 + 100 x 5) / 300 = 7; cubes by 1600 and 500: (1600 x 1000 + 500 x 4096) / 2100 = 1737.14, its cube
    root 12.0211; 30 000 mm2 over 300 mm are 100 mm. Lean 500 x 1 / 2100; the square one covers 200 across.
    """
    square = Holder("square", 1.0, 0.0, 200.0, 8.0, 10.0, -100.0, 100.0)
    slanted = Holder("slanted", 0.25, 1.0, 400.0, 5.0, 16.0, -80.0, 60.0)
    both = (square, slanted)
    assert dome_brace_width(both, "", 99.0) == pytest.approx(7.0)
    assert across_height(both) == pytest.approx(12.0211, abs=1e-4)
    assert dome_brace_height(12.0211, "", 99.0) == 12.0211
    assert dome_brace_spacing(both, "", 30_000.0, 99.0) == pytest.approx(100.0)
    assert across_lean(both) == pytest.approx(500 / 2100)
    assert across_covered(both) == 200.0
    assert (dome_brace_spacing((), "", 30_000.0, 99.0), dome_brace_height(math.nan, "", 99.0)) == (99.0, 99.0)
    assert math.isnan(dome_brace_height(12.0, "a fan", 99.0))


def test_a_fan_braced_top_is_not_judged_nor_told(
    example: Callable[[str], Figures], text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """Mere's bars across lie 150 and 266 from where the body is widest, and a fan holds that."""
    mere = example("mere")
    (found,) = mere["finding_dome"]
    assert found.severity == "not judged"
    assert "a fan does not" in found.says
    assert math.isnan(mere["dome_rise_dry"])
    told = [Formatter(mere).filled(each) for each in mere["setup_owner_air"].notes]
    assert any("not predicted" in words for words in told)
    bar = '[[brace]]\nname = "bar"\nplate = "top"\nstation = 364\nwidth = 8\nheight = 12\ncrosses = ["fan middle"]\n'
    barred = derive_text(text_of("mere") + bar, text_of("shop"))
    (found,) = barred["finding_dome"]
    assert found.severity != "not judged"


def test_a_dome_that_stays_is_fine_one_that_may_sink_is_noted_and_one_that_must_is_a_caution() -> None:
    def severity(most: float, least: float) -> str:
        woods = (0.002, 1000.0, 10_000.0, "spruce", "spruce", "")
        (found,) = finding_dome(-0.5, most, least, *woods)
        return found.severity

    both = ((0.0001, 0.00012), (0.0, 0.0001), (-0.0001, 0.0001), (-0.0001, 0.0), (-0.0002, -0.0001))
    assert [severity(*each) for each in both] == ["fine", "note", "note", "caution", "caution"]


def test_creep_leaves_a_part_of_the_change() -> None:
    """By hand: from 1/8000 to -1/8000 is -0.00025, at most 1.25 of the strip's, which is -0.0002; 0.65 of that and
    three tenths by creep are -0.000039; 0.000125 - 0.000039 = 0.000086. Damp air turns the sign."""
    assert dome_curvature_dry_least(-1 / 8000, 8000.0, 0.3) == pytest.approx(0.000086)
    assert dome_curvature_wet_least(3 / 8000, 8000.0, 0.3) == pytest.approx(0.000164)


def test_a_top_of_wood_that_is_not_known_is_not_judged(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(braceless(text_of) + TOP + 'wood = "moonwood"\n')
    assert math.isnan(figures["dome_rise_dry"])
    assert not math.isnan(figures["dome_rise_made"])
    (found,) = figures["finding_dome"]
    assert found.severity == "not judged"
    assert found.says.startswith("because no source gives how moonwood moves")
    assert "moonwood is not a known wood" in str(figures.origins["top_movement_radial"])


def test_the_owners_page_says_sunk_in_words_and_what_is_not_known(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    def shown(rows: str) -> list[str]:
        """What stands beside the air that it was made for, the driest and the dampest."""
        figures = derive_text(braceless(text_of) + TOP + rows)
        return [Formatter(figures).filled(each.tolerance) for each in figures["setup_owner_air"].figures[:3]]

    made, dry, wet = shown("")
    assert made == "top's dome 3.95 mm over 380.00 mm"
    assert "at most -" in dry
    assert dry.endswith("mm, a hollow")
    assert ", at most " in wet
    assert "hollow" not in wet
    assert "hollow" not in shown("brace_height = 40\nbrace_width = 20\n")[1]
    moonwood = (
        braceless(text_of).replace('wood = "black locust"', 'wood = "bog oak"') + TOP + 'brace_wood = "moonwood"\n'
    )
    unknown = derive_text(moonwood)  # nor does any source give how its board moves
    assert not unknown["setup_owner_air"].closed, "its care, and who may be sensitive to it, are told all the same"
    told = [Formatter(unknown).filled(each) for each in unknown["setup_owner_air"].notes]
    assert any(each.startswith("No source gives how bog oak moves") for each in told)
    assert any(each.startswith("Who is sensitive to wood") and "bog oak" in each for each in told)
    known = derive_text(moonwood.replace('wood = "bog oak"', 'wood = "persimmon"'))
    assert Formatter(known).filled(known["setup_owner_air"].figures[1].tolerance) == "top's dome not known"
    flat = TOP.replace('"15 ft"', '"flat"')
    figures = derive_text(braceless(text_of) + flat)
    assert (
        Formatter(figures).filled(figures["setup_owner_air"].figures[0].tolerance)
        == "top's rise 0.00 mm over 380.00 mm"
    )
