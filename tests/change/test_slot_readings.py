"""Readback of slots: invented errors are found again and named; bad readings are told, all at once."""

from importlib.resources import as_file, files

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize

from gramil.change.slot_causes import likely_cause
from gramil.change.slot_readings import SlotsReadback, parse_slot_readings, read_back
from gramil.change.slot_report import report
from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import figures_of_files

FRETS = np.arange(1.0, 20.0)
WANTED = 630 * (1 - 2 ** (-FRETS / 12))
WOBBLE = 0.008 * np.sin(FRETS * 2.3)
"""Small errors of cutting and reading, without any trend."""


@pytest.fixture(scope="module")
def tarn() -> Figures:
    with as_file(files("gramil") / "data" / "examples") as examples:
        return figures_of_files(examples / "tarn.toml", examples / "shop.toml")


def test_small_errors_have_no_systematic_cause() -> None:
    assert likely_cause(FRETS, WANTED, WOBBLE).name == "nothing systematic"


def test_a_zero_off_the_nut_line() -> None:
    cause = likely_cause(FRETS, WANTED, 0.12 + WOBBLE)
    assert cause.name == "the zero is off the nut line"
    assert cause.offset == pytest.approx(0.12, abs=0.01)


def test_a_template_that_shrank() -> None:
    cause = likely_cause(FRETS, WANTED, -0.0006 * WANTED + WOBBLE)
    assert cause.name == "the scale is stretched or shrunk"
    assert cause.stretch == pytest.approx(-0.0006, abs=5e-5)


def test_one_slip_of_the_index() -> None:
    cause = likely_cause(FRETS, WANTED, 0.2 * (FRETS >= 8) + WOBBLE)
    assert (cause.name, cause.slip_fret) == ("the index slipped once", 8)
    assert cause.slip == pytest.approx(0.2, abs=0.01)


def test_offset_and_stretch_together() -> None:
    cause = likely_cause(FRETS, WANTED, 0.15 + 0.0005 * WANTED + WOBBLE)
    assert cause.offset == pytest.approx(0.15, abs=0.01)
    assert cause.stretch == pytest.approx(0.0005, abs=5e-5)


def test_cents_of_a_slot_too_near_the_bridge(tarn: Figures) -> None:
    """Common practice, by hand: 0.05 mm on 630 mm is 0.27 cent at fret 12, where 315 mm is left to sound.

    1200 / ln 2 x 0.05 / 315 = 0.2748.
    """
    found = read_back(tarn, np.array([0.0, 12.0]), np.array([0.0, 315.05]))
    assert found.slots[1].cents == pytest.approx(0.2748, abs=1e-3)
    assert found.slots[1].against_before == pytest.approx(0.2748, abs=1e-3)
    assert [each.verdict for each in found.slots] == ["good", "good"]


def said(figures: Figures, found: SlotsReadback) -> str:
    return "\n".join(report(found, Formatter(figures)))


@pytest.mark.parametrize("off", [0.12, 0.4, -0.4])
def test_the_nuts_own_place_is_settled_first(tarn: Figures, off: float) -> None:
    """A nut end planed by 0.40 mm puts all slots out alike: with the nut moved as much they are good, none is recut."""
    found = read_back(tarn, FRETS, WANTED + off + WOBBLE)
    assert found.nut_move == pytest.approx(off, abs=0.005)
    assert found.before > abs(off) / 630 * 1200 / np.log(2)
    assert found.after < 0.1
    assert {each.verdict for each in found.slots} == {"good"}
    text = said(tarn, found)
    assert "First the nut" in text
    assert ("plane" in text) is (off > 0)
    assert "recut" not in text


def test_the_zero_line_read_with_the_slots_is_where_the_caliper_was_set(tarn: Figures) -> None:
    """Nothing read at the nut line, and all slots 0.4 mm too near: a nut, and no slip before fret 1."""
    found = read_back(tarn, np.append(0.0, FRETS), np.append(0.0, WANTED - 0.4 + WOBBLE))
    assert found.nut_move == pytest.approx(-0.4, abs=0.01)
    assert found.cause.slip_fret == 0
    assert {each.verdict for each in found.slots} == {"good"}


def test_a_slip_asks_nothing_of_the_nut(tarn: Figures) -> None:
    found = read_back(tarn, FRETS, WANTED + 12.3 * (FRETS >= 5) + WOBBLE)
    assert (found.cause.slip_fret, found.nut_move) == (5, 0.0)
    assert [each.verdict for each in found.slots] == ["good"] * 4 + ["recut"] * 15
    text = said(tarn, found)
    assert "nut" not in text
    assert "every slot from fret 5 on out by +12.30 mm" in text


def test_one_slot_by_itself(tarn: Figures) -> None:
    found = read_back(tarn, FRETS, WANTED + 0.5 * (FRETS == 7) + WOBBLE)
    assert (found.cause.name, found.cause.slip_fret) == ("one slot is out of its place", 7)
    assert [each.fret for each in found.slots if each.verdict != "good"] == [7]


def test_which_scale_the_slots_are_cut_to(tarn: Figures) -> None:
    """A board of 640 mm read against 630: x = 640 (1 - 2^(-n/12)); the saddle goes 10 mm back, and all are right."""
    found = read_back(tarn, FRETS, 640 * (1 - 2 ** (-FRETS / 12)) + WOBBLE)
    assert found.scale_cut == pytest.approx(640, abs=0.05)
    assert found.after < 0.1
    assert {each.verdict for each in found.slots} == {"good"}
    text = said(tarn, found)
    assert "cut to a scale of 640.0" in text
    assert "10.0" in text
    assert "toward the head" not in text


@pytest.mark.parametrize("length", [630.0, 640.0])
@pytest.mark.parametrize("off", [0.0, 0.5])
def test_the_rule_of_18_is_named(tarn: Figures, length: float, off: float) -> None:
    """Each fret an eighteenth of what is left: x = L (1 - (17/18)^n), by hand 312.70 mm at fret 12 of 630."""
    rule = length * (1 - (17 / 18) ** FRETS)
    if length == 630:
        assert rule[11] == pytest.approx(312.70, abs=0.01)
    found = read_back(tarn, FRETS, rule + off + WOBBLE)
    assert found.cause.by_rule_of_18
    assert found.cause.offset == pytest.approx(off, abs=0.02)
    assert found.scale_cut == pytest.approx(length, abs=0.1)
    assert "rule of 18" in said(tarn, found)


def test_nut_and_saddle_for_the_rule_of_18(tarn: Figures) -> None:
    """Against a plain search over the nut's place and the saddle's: cents of each fret by its sounding length."""
    rule = 630 * (1 - (17 / 18) ** FRETS)

    def cost(at: np.ndarray) -> float:
        cents = 1200 * np.log2((630 + at[1] - at[0]) / (630 + at[1] - rule)) - 100 * FRETS
        return float((cents**2).mean())

    best = minimize(cost, np.zeros(2), method="Nelder-Mead", options={"xatol": 1e-6, "fatol": 1e-10})
    found = read_back(tarn, FRETS, rule)
    assert found.after == pytest.approx(np.sqrt(best.fun), abs=0.1)
    assert (found.nut_move, found.saddle_move) == pytest.approx(tuple(best.x), abs=0.1)
    assert found.before > 10


@pytest.mark.parametrize("scatter", [0.01, 0.04, 0.1])
@pytest.mark.parametrize("count", [5, 12, 19])
def test_boards_that_only_scatter_get_no_cause(scatter: float, count: int) -> None:
    """300 boards each, of which at most 2 in 100 may be told a cause that is not there."""
    chance = np.random.default_rng([count, int(1000 * scatter)])
    frets = FRETS[np.round(np.linspace(0, 18, count)).astype(int)]
    wanted = 630 * (1 - 2 ** (-frets / 12))
    errors = chance.normal(0.0, scatter, (300, count))
    told = sum(likely_cause(frets, wanted, error, 630.0).name != "nothing systematic" for error in errors)
    assert told <= 6


def test_where_nothing_shows_nothing_is_said_of_the_nut(tarn: Figures) -> None:
    text = said(tarn, read_back(tarn, FRETS, WANTED + 5 * WOBBLE))
    assert "No cause common to the slots" in text
    assert "nut" not in text


def test_planted_causes_come_back_through_scatter() -> None:
    """Each 40 times, through 0.03 mm of scatter: the right one 95 times in 100."""
    chance = np.random.default_rng(5)
    planted = {
        "the zero is off the nut line": 0.2 + 0 * WANTED,
        "the scale is stretched or shrunk": 0.0008 * WANTED,
        "the index slipped once": 0.3 * (FRETS >= 9),
        "one slot is out of its place": 0.4 * (FRETS == 4),
        "cut by the rule of 18": 630 * (1 - (17 / 18) ** FRETS) - WANTED,
        "the zero is off, and the index slipped once": 0.3 - 0.4 * (FRETS >= 12),
    }
    for name, error in planted.items():
        scattered = error + chance.normal(0.0, 0.03, (40, len(FRETS)))
        assert sum(likely_cause(FRETS, WANTED, each, 630.0).name == name for each in scattered) >= 38


def test_readings_in_any_unit_and_order() -> None:
    frets, measured = parse_slot_readings("position,fret\n12.4 in,12\n35.4,1\n", "r.csv", "mm", 19)
    assert list(frets) == [1, 12]
    assert measured == pytest.approx([35.4, 12.4 * 25.4])


def test_every_bad_reading_is_told_at_once() -> None:
    with pytest.raises(MakersFault) as raised:
        parse_slot_readings("fret,position\n1,18,3\n99,4\n2,abc\n2,68.7\n2,68.8\n", "r.csv", "mm", 19)
    assert [fault.line for fault in raised.value.faults] == [3, 4, 6]


def test_no_heading() -> None:
    with pytest.raises(MakersFault, match="fret,position"):
        parse_slot_readings("1,35.4\n", "r.csv", "mm", 19)


@given(st.text())
def test_any_text_at_all(text: str) -> None:
    try:
        frets, measured = parse_slot_readings(text, "r.csv", "mm", 19)
    except MakersFault:
        return
    assert len(frets) == len(measured) >= 2
