"""A twelve-string against its strings solved by themselves, two at a time, and summed: pull, torque and set-backs.

Board and actions are alike from side to side, so that a string is the same wherever it lies across; only its way
along the board differs, by a few hundredths of a millimetre. What a pair leaves on one break point is sought by
trying places.
"""

from collections.abc import Callable
from functools import cache

import numpy as np
import pytest
from tests.twelve import GAUGES, PITCHES, in_courses

from gramil.graph import Figures

Derive = Callable[..., Figures]
ALIKE = (
    ('arch = { nut = "320 mm", end = "390 mm" }', 'arch = "flat"'),
    ("[board]\n", "[heights]\naction_bass = 2.2\naction_treble = 2.2\nnut_bass = 0.5\nnut_treble = 0.5\n\n[board]\n"),
)
PAIRS = range(0, 12, 2)


@pytest.fixture(scope="module")
def alike(text_of: Callable[[str], str]) -> str:
    """Tarn, flat, with the same action from side to side."""
    text = text_of("tarn")
    for old, new in ALIKE:
        assert old in text
        text = text.replace(old, new)
    assert "[heights]" not in text_of("tarn")
    return text


@pytest.fixture(scope="module")
def twelve(derive_text: Derive, alike: str) -> Figures:
    return derive_text(in_courses(alike))


@pytest.fixture(scope="module")
def two(derive_text: Derive, alike: str) -> Callable[..., Figures]:
    """The two strings of a pair as the only ones of an instrument, each by itself; they may be moved at the saddle."""

    @cache
    def made(first: int, moved: float | None = None) -> Figures:
        both = slice(first, first + 2)
        text = in_courses(alike, (1, 1), GAUGES[both], PITCHES[both])
        if moved is not None:
            text = text.replace("[board]\n", f"[saddle]\nset_back = {moved}\n\n[board]\n")
        return derive_text(text)

    return made


def test_the_pull_of_all_is_that_of_the_strings_summed(twelve: Figures, two: Callable[..., Figures]) -> None:
    """And so is the torque: each string's pull at its height."""
    pulls = np.concatenate([two(first)["string_pull"] for first in PAIRS])
    assert twelve["string_pull"] == pytest.approx(pulls, rel=1e-3)
    assert twelve["string_pull_total"] == pytest.approx(pulls.sum(), rel=1e-3)
    turned = sum(
        (two(first)["string_pull"] * (twelve["neck_set_over_top"][first : first + 2] + 2.8 / 2)).sum()
        for first in PAIRS
    )
    assert twelve["top_thickness"] == 2.8
    assert twelve["bridge_torque"] == pytest.approx(turned / 1000, rel=1e-3)


def test_each_string_is_set_back_as_it_would_be_alone(twelve: Figures, two: Callable[..., Figures]) -> None:
    alone = np.concatenate([two(first)["saddle_set_back_best"] for first in PAIRS])
    assert twelve["saddle_set_back_best"] == pytest.approx(alone, abs=0.01)
    left = np.concatenate([two(first)["intonation_rms_after"] for first in PAIRS])
    assert twelve["intonation_rms_after"] == pytest.approx(left, abs=0.05)


def test_on_one_break_point_a_pair_stands_where_trying_finds_it_best(
    derive_text: Derive, alike: str, twelve: Figures, two: Callable[..., Figures]
) -> None:
    """The octave pair of the last course, moved together by steps of 0.5 mm; a parabola through the three best."""
    text = in_courses(alike) + '\n[intonation]\npair = "one break point"\n'
    shared = derive_text(text)
    best, strings = shared["saddle_set_back_best"], slice(10, 12)
    assert best[::2] == pytest.approx(best[1::2])
    tried = np.arange(0.0, 5.1, 0.5)
    squares = [(two(10, float(place))["intonation_rms_after"] ** 2).sum() for place in tried]
    least = int(np.argmin(squares))
    a, b, c = np.polyfit(tried[least - 1 : least + 2], squares[least - 1 : least + 2], 2)
    assert best[10] == pytest.approx(-b / (2 * a), abs=0.01)
    there = c - b**2 / (4 * a)
    assert (shared["pair_rms_on_one"][strings] ** 2).sum() == pytest.approx(there, rel=1e-3)
    assert twelve["pair_rms_on_one"] == pytest.approx(shared["pair_rms_on_one"], abs=1e-6)
    assert twelve["pair_rms_on_two"] == pytest.approx(twelve["intonation_rms_after"], abs=0.05)


def test_two_break_points_leave_less_than_one_where_a_pair_differs(twelve: Figures) -> None:
    """Pairs in unison lose nothing by sharing; an octave of a thick wound string and a thin one does."""
    on_one, on_two = twelve["pair_rms_on_one"], twelve["pair_rms_on_two"]
    assert on_one[:4] == pytest.approx(on_two[:4], abs=0.01)
    lost = (on_one**2).reshape(6, 2).sum(axis=1) - (on_two**2).reshape(6, 2).sum(axis=1)
    assert (lost > -1e-6).all()
    assert (lost[4:] > 1.0).all()
    assert twelve["pair_rms_all_on_one"] == pytest.approx(np.sqrt((on_one**2).mean()))
