"""Readback of slots: invented errors are found again and named; bad readings are told, all at once."""

from importlib.resources import as_file, files

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.change.slot_readings import likely_cause, parse_slot_readings, read_back
from gramil.faults import MakersFault
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


def test_moving_the_nut_end_takes_out_an_even_offset(tarn: Figures) -> None:
    found = read_back(tarn, FRETS, WANTED + 0.12)
    assert found.nut_move == pytest.approx(0.12)
    assert found.after == pytest.approx(0, abs=1e-9)
    assert {each.verdict for each in found.slots} == {"look again"}
    assert read_back(tarn, FRETS, WANTED + 0.3).slots[-1].verdict == "recut"


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
