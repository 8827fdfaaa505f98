"""What is listed: nothing of a thing that the instrument does not have, and what stands on figures carried on."""

from collections.abc import Callable

import pytest

from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.prints.extrapolated import extrapolation_remark
from gramil.prints.listed import headings_of
from gramil.prints.whole import dimensions_of, findings_of
from gramil.wood.movement import CARRIED_ON

NOT_THERE = {
    "tarn": (
        "head_roller_depth",
        "head_hole_to_face",
        "head_slot_room",
        "head_slot_ramp",
        "head_entry",
        "head_slots",
        "saw_deepening",
    ),
    "fell": ("head_roller_depth", "head_hole_to_face", "ledge_", "saw_deepening", "swell_step", "core_inset"),
    "scree": (
        *("head_roller_depth", "head_hole_to_face", "strip_", "channel_side_left", "body_air", "side_", "room_"),
        "channel_edge",
    ),
    "mere": (
        *("rod_", "relief_rod_moment", "neck_section_under_channel", "ledge_", "strip_", "channel_side_left"),
        *("channel_list", "room_pins", "plate_", "channel_edge", "swell_step", "core_inset", "plank_ear"),
        "neck_section_channel_depth",
    ),
}
"""By example, how the names begin of what it has not: upright posts, no binding, no body described, no rod, no pins."""
THERE = {"tarn": "rod_corner", "fell": "rod_asked", "scree": "ledge_choice", "mere": "head_roller_depth"}


@pytest.fixture(scope="module")
def four(example: Callable[[str], Figures]) -> dict[str, Figures]:
    return {name: example(name) for name in NOT_THERE}


@pytest.mark.parametrize("name", NOT_THERE)
def test_figures_of_what_is_not_there_are_not_listed(four: dict[str, Figures], name: str) -> None:
    figures = four[name]
    listed = {each.name for each in headings_of(figures, dimensions_of(figures))}
    assert not [each for each in listed if each.startswith(NOT_THERE[name])]
    assert THERE[name] in listed


def test_what_stands_on_movement_carried_on_says_so_in_lists_and_verdicts_alike(four: dict[str, Figures]) -> None:
    """At 25 % of humidity and 20 degrees wood settles at some 5.4 %, under the 6 where the table begins; 70 % does not
    pass 14."""
    figures = four["tarn"]
    remarks = {each.name: each.remark for each in headings_of(figures, dimensions_of(figures))}
    told = (
        "sprout_least",
        "sprout_most",
        "swell_width_dry_most",
        "swell_step_dry",
        "dome_rise_dry",
        "dome_curvature_dry",
    )
    assert {remarks[each] for each in told} == {CARRIED_ON}
    assert not any(
        remarks[each] for each in ("swell_width_wet_most", "dome_rise_wet", "dome_rise_made", "fret_position")
    )
    assert figures["swell_moisture_dry"] < 6 < 14 > figures["swell_moisture_wet"]
    for finding in findings_of(figures):
        carried = bool(extrapolation_remark(figures, finding.figure.address)) and finding.severity != "not judged"
        assert ("Carried on: moisture of" in str(finding.says)) == carried
    on_the_sheet = [formatter_of(figures).filled(each) for each in figures["setup_owner_air"].notes]
    assert any("Moisture of 5.4 % lies outside" in each and "carried on" in each for each in on_the_sheet)


def test_within_the_range_nothing_is_carried_on(four: dict[str, Figures]) -> None:
    figures = four["tarn"]
    mild = figures.with_base({**figures.base, "limit_owner_humidity_least": 35.0})
    assert not any(each.remark for each in headings_of(mild, dimensions_of(mild)))
