"""Slots far from where they are drawn are one question if one cause puts them there, and it says what they mean."""

from collections.abc import Callable

import numpy as np
import pytest

from gramil.change.questioned import faults
from gramil.change.slot_questions import slot_questions
from gramil.change.slot_readings import read_back
from gramil.formatter import Formatter
from gramil.graph import Figures

FRETS = np.arange(1.0, 20.0)
WANTED = 630 * (1 - 2 ** (-FRETS / 12))


@pytest.fixture(scope="module")
def tarn(example: Callable[[str], Figures]) -> Figures:
    return example("tarn")


def told(tarn: Figures, measured: np.ndarray) -> list[str]:
    asked = slot_questions(read_back(tarn, FRETS, measured), Formatter(tarn))
    return [str(fault) for fault in faults(asked, "mm", "").faults] if asked else []


@pytest.mark.parametrize(
    ("measured", "mends"),
    [
        (640 * (1 - 2 ** (-FRETS / 12)), "cut to a scale of 640.00 mm, not 630.00 mm"),
        (630 * (1 - (17 / 18) ** FRETS), "The rule of 18"),
        (WANTED + 12.3 * (FRETS >= 5), "The slots from fret 5 on are to be filled"),
        (WANTED - 2.0, "First the nut"),
    ],
    ids=["another scale", "rule of 18", "slip", "zero"],
)
def test_one_cause_of_all_is_one_question_that_says_what_mends_it(
    tarn: Figures, measured: np.ndarray, mends: str
) -> None:
    (question,) = told(tarn, measured)
    assert question.count("was read where") == 1
    assert "If they stand: Likely cause: " in question
    assert mends in question
    assert "Pull that fret" not in question


@pytest.mark.parametrize("off", [2.0 * (FRETS == 7), np.where(FRETS == 3, 9.0, -9.0) * ((FRETS == 3) | (FRETS == 16))])
def test_readings_that_no_cause_is_common_to_are_asked_about_one_by_one(tarn: Figures, off: np.ndarray) -> None:
    questions = told(tarn, WANTED + off)
    assert len(questions) == np.count_nonzero(off)
    assert not any("If they stand" in each for each in questions)


def test_inches_are_a_slip_of_the_unit_though_another_scale_would_explain_them(tarn: Figures) -> None:
    (question,) = told(tarn, WANTED / 25.4)
    assert "were inches meant?" in question
    assert "cut to a scale" not in question


def test_slots_near_their_places_raise_none(tarn: Figures) -> None:
    assert not told(tarn, WANTED - 0.3)
