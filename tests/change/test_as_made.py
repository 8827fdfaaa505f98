"""A measurement against what is drawn: how far off, in cents where it moves a fret, and what follows."""

import math
from dataclasses import replace
from importlib.resources import files
from math import log2
from pathlib import Path
from string import ascii_lowercase

import pytest

from gramil.change.as_made import as_made
from gramil.change.made import Judged
from gramil.graph import Figures, Pin
from gramil.prints.whole import figures_of_files, setups_of

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))


@pytest.fixture(scope="module")
def tarn() -> Figures:
    return figures_of_files(EXAMPLES / "tarn.toml", EXAMPLES / "shop.toml")


def test_a_fret_out_of_its_place_costs_cents(tarn: Figures) -> None:
    (off,) = as_made(tarn, {"fret_position[12]": Pin(315.1, "today")}).off
    assert off.wanted == pytest.approx(315.0)
    assert off.difference == pytest.approx(0.1)
    # the string that sounds is 630 - 315 long: shortening it by 0.1 raises the note by 1200 log2(315 / 314.9)
    assert off.cents == pytest.approx(1200 * log2(315 / 314.9), rel=1e-3)


def test_a_thicker_board_leaves_more_under_the_slots(tarn: Figures) -> None:
    found = as_made(tarn, {"board_thickness": Pin(tarn["board_thickness"] + 0.08, "today")})
    moves = {move.name: move for move in found.moves}
    assert moves["slot_left_at_crest"].difference == pytest.approx(0.08, abs=1e-6)
    assert moves["neck_set_board_at_join"].difference == pytest.approx(0.08, abs=1e-6)
    assert "board_thickness" not in moves


def test_what_was_drawn_stays_beside_what_is_made(tarn: Figures) -> None:
    pin = {"board_thickness": Pin(7.0, "today")}
    assert as_made(tarn, pin).off[0].wanted == pytest.approx(6.3)
    assert tarn["board_thickness"] == pytest.approx(6.3)


def test_a_measurement_as_drawn_moves_nothing(tarn: Figures) -> None:
    found = as_made(tarn, {"board_thickness": Pin(tarn["board_thickness"], "today")})
    assert (found.moves, found.folded, found.came, found.went) == ((), 0, (), ())


def test_a_thin_board_brings_a_verdict(tarn: Figures) -> None:
    found = as_made(tarn, {"board_thickness": Pin(4.6, "today")}, "thicknessed")
    assert "wood left under the slots" in {finding.name for finding in found.came}


def test_an_operation_that_fixes_figures_is_judged(tarn: Figures) -> None:
    drawn = tarn["blank_thickness"]

    def judged(off: float) -> Judged:
        (found,) = as_made(tarn, {"blank_thickness": Pin(drawn + off, "today")}, "thicknessed").judged
        return found

    assert (judged(0.5).standing, judged(0.5).too) == ("rework", "too thick")
    assert (judged(-0.5).standing, judged(-0.5).too) == ("rework", "too thin")  # a board that much thinner
    assert judged(-4.0).standing == "lost"  # thinner than the slots are deep


def test_a_reading_without_an_operation_judges_the_one_that_it_is_of(tarn: Figures) -> None:
    pin = {"slot_depth_setting": Pin(1.5, "today", "measured")}
    (found,) = as_made(tarn, pin, "measured", ("thicknessed", "slotted", "tapered")).judged
    assert (found.operation, found.standing) == ("slotted", "rework")


@pytest.mark.parametrize("name", ["tarn", "fell", "mere", "scree"])
def test_every_box_of_every_sheet_can_be_filled_in(name: str) -> None:
    """A member of a list too: its sheet asked for it, and what it was written into could not be read any more."""
    figures = figures_of_files(EXAMPLES / f"{name}.toml", EXAMPLES / "shop.toml")
    for address in dict.fromkeys(box.address for setup in setups_of(figures) for box in setup.boxes):
        value = 1.001 * float(figures.at(address))
        made = replace(figures, pins={address: Pin(value, "today")}, known={})
        assert made.at(address) == value or math.isnan(value), address
        if address.endswith(tuple(ascii_lowercase)) and "[" in address:  # a field of a member
            assert as_made(figures, {address: Pin(value, "today")}).off[0].measured == value, address
