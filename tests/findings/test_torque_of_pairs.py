"""The torque on the bridge of strings in pairs, judged by as much more as such sets pull."""

from collections.abc import Callable

import pytest
from tests.twelve import GAUGES, PITCHES, in_courses

from gramil.graph import Figures
from gramil.prints.whole import findings_of


def verdict(figures: Figures):
    return next(each for each in findings_of(figures) if each.name == "torque on the bridge")


def test_a_twelve_string_is_judged_as_one(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> None:
    """From memory: such sets pull 1.4 to 1.5 times a six-string's; the range is 1.45 of the six-string's 7 to 11.5."""
    figures = derive_text(in_courses(text_of("tarn")))
    assert (figures["bridge_torque_least"], figures["bridge_torque_most"]) == pytest.approx((10.15, 16.675))
    assert verdict(figures).severity == "fine"
    single = derive_text(text_of("tarn"))
    assert (single["bridge_torque_least"], single["bridge_torque_most"]) == (7.0, 11.5)


def test_one_doubled_treble_counts_a_sixth(text_of, derive_text) -> None:
    strings = (2, 1, 1, 1, 1, 1)
    kept = (0, 1, 2, 4, 6, 8, 10)
    gauges, pitches = ([each[row] for row in kept] for each in (GAUGES, PITCHES))
    figures = derive_text(in_courses(text_of("tarn"), strings, gauges, pitches))
    assert figures["bridge_torque_most"] == pytest.approx(11.5 * (1 + 0.45 / 6))
