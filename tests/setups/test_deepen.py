"""The sheet for deepening: for pilots, and wherever the slots were cut too shallow."""

import pytest

from gramil.graph import Pin
from gramil.setups.setup import Setup

from .conftest import Trial


def sheet(trial: Trial, *edits: str, setting_less: float) -> Setup:
    figures = trial(*edits)
    cut = float(figures["slot_depth_setting"]) - setting_less
    found = figures.with_pins({"slot_depth_setting": Pin(cut, "today", "slotted")})["setup_deepen"]
    assert isinstance(found, Setup)
    return found


@pytest.mark.parametrize("edits", [(), ("after",), ("following", "after"), ("flat", "unmarked"), ("fanned",)])
def test_it_is_wanted_where_the_kerf_came_out_too_shallow(trial: Trial, edits: tuple[str, ...]) -> None:
    assert sheet(trial, *edits, setting_less=0.0).closed
    assert sheet(trial, *edits, setting_less=0.05).closed, "within a tenth"
    wanted = sheet(trial, *edits, setting_less=1.0)
    assert not wanted.closed
    assert wanted.figures[0].figure.address.startswith("slot_to_deepen[")


def test_it_says_how_much_is_still_to_be_taken(trial: Trial) -> None:
    """One millimetre too little set is one millimetre to go, where the arch falls most."""
    figures = trial()
    made = figures.with_pins({"slot_depth_setting": Pin(float(figures["slot_depth_setting"]) - 1.0, "today")})
    assert made.at(made["setup_deepen"].figures[0].figure) == pytest.approx(1.0, abs=1e-6)
    words = [mark.text for mark in made["drawing_setup_deepen"].marks if hasattr(mark, "text")]
    assert any("too shallow" in text for text in words)
    assert not any("too shallow" in getattr(mark, "text", "") for mark in figures["drawing_setup_deepen"].marks)
