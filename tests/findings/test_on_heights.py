"""Findings on heights: a hair inside each limit is fine, a hair outside is not."""

from collections.abc import Callable

import numpy as np
import pytest

from gramil.findings.on_heights import (
    finding_action_bass,
    finding_action_treble,
    finding_body_rise,
    finding_crown_left,
    finding_nut_slots,
    finding_over_top,
    finding_relief_wanted,
    finding_saddle_exposed,
    finding_saddle_high,
    finding_saddle_low,
    finding_string_on_crown,
)
from gramil.graph import Figures

HAIR = 1e-6


@pytest.mark.parametrize(
    ("judge", "low", "high", "outside"),
    [
        (finding_action_bass, 2.2, 2.6, "note"),
        (finding_action_treble, 1.6, 2.0, "note"),
        (finding_relief_wanted, 0.1, 0.25, "note"),
        (finding_body_rise, 0.5, 1.5, "note"),
        (finding_saddle_exposed, 3.0, 4.0, "caution"),
        (finding_over_top, 12.0, 14.0, "note"),
    ],
)
def test_bands(judge: Callable[..., tuple[object, ...]], low: float, high: float, outside: str) -> None:
    def severity(value: float) -> str:
        (found,) = judge(value, low, high)
        return str(getattr(found, "severity"))  # noqa: B009

    assert [severity(each) for each in (low, (low + high) / 2, high)] == ["fine"] * 3
    assert [severity(each) for each in (low - HAIR, high + HAIR)] == [outside] * 2


def test_a_band_names_the_limit_that_was_passed() -> None:
    low, high = (finding_action_bass(value, 2.2, 2.6)[0] for value in (2.0, 3.0))
    assert (str(low.limit or ""), str(high.limit or "")) == ("limit_action_bass_least", "limit_action_bass_most")
    assert low.remedy
    assert high.remedy


def test_a_string_on_a_crown_is_a_stop() -> None:
    over = np.full((6, 20), 0.5)
    over[:, 0] = 0.0
    assert finding_string_on_crown(over)[0].severity == "fine"
    over[3, 7] = HAIR
    assert finding_string_on_crown(over)[0].severity == "fine"
    over[3, 7] = 0.0
    (found,) = finding_string_on_crown(over)
    assert (found.severity, found.figure.address) == ("stop", "height_over_crown[4, 7]")


@pytest.mark.parametrize(
    ("height", "severities"),
    [
        (0.0, ("caution", "fine")),
        (-HAIR, ("stop", "fine")),
        (0.25 - HAIR, ("caution", "fine")),
        (0.25, ("fine", "fine")),
        (0.7, ("fine", "fine")),
        (0.7 + HAIR, ("fine", "caution")),
        (2.1 + HAIR, ("fine", "stop")),
    ],
)
def test_nut_slots(height: float, severities: tuple[str, str]) -> None:
    found = finding_nut_slots(np.full(6, height), 0.25, 0.7, 1, False)
    assert tuple(each.severity for each in found) == severities


def test_a_zero_fret_has_no_nut_to_judge() -> None:
    assert finding_nut_slots(np.full(6, 0.1), 0.25, 0.7, 0, True) == ()


@pytest.mark.parametrize(("crown", "severity"), [(0.7, "fine"), (0.7 - HAIR, "caution"), (-HAIR, "stop")])
def test_crowns_left(crown: float, severity: str) -> None:
    assert finding_crown_left(crown, 0.7)[0].severity == severity


def test_a_saddle_too_low_or_too_high_under_one_string() -> None:
    shown = np.array([3.0, 3.2, 3.5, 3.8, 4.0, 1.5])
    assert finding_saddle_low(shown, 1.5)[0].severity == "fine"
    shown[5] -= HAIR
    (low,) = finding_saddle_low(shown, 1.5)
    assert (low.severity, low.figure.address) == ("stop", "neck_set_exposed[6]")
    shown[1] = 6.0
    assert finding_saddle_high(shown, 6.0)[0].severity == "fine"
    shown[1] += HAIR
    (high,) = finding_saddle_high(shown, 6.0)
    assert (high.severity, high.figure.address) == ("stop", "neck_set_exposed[2]")


def test_an_action_below_the_crowns_of_a_bowed_neck_is_found(
    derive_text: Callable[..., Figures], text_of: Callable[[str], str]
) -> None:
    """Much relief and little action: the middle of the neck is clear, the frets at the body are not."""
    low = "\n[heights]\naction_bass = 0.3\naction_treble = 0.25\nrelief = 0.24\nnut_bass = 0.05\nnut_treble = 0.05"
    (found,) = derive_text(text_of("tarn") + low)["finding_string_on_crown"]
    assert found.severity == "stop"
    assert found.value < 0


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
def test_every_address_leads_to_the_value_judged(example: Callable[[str], Figures], name: str) -> None:
    figures = example(name)
    for part in ("on_heights", "on_neck"):
        for each in (key for key, dimension in figures.graph.dimensions.items() if dimension.part == part):
            for found in figures[each]:
                assert figures.at(found.figure.address) == pytest.approx(found.value, nan_ok=True)
                assert not str(found.limit or "") or str(found.limit or "") in figures.graph.inputs
                assert bool(found.remedy) == (found.severity != "fine")
