"""Findings on strings, intonation, saddle and bridge: each grave case is said, and the examples are sensible."""

from collections.abc import Callable

import pytest

from gramil.findings.finding import Finding
from gramil.graph import Figures
from gramil.prints.whole import findings_of

Make = Callable[..., Figures]
TUNING = 'tuning = ["E4", "B3", "G3", "D3", "A2", "E2"]'
NYLON = f"""{TUNING}
plain = "nylon"
wound = [4, 5, 6]
cores = [0, 0, 0, "0.48 mm", "0.5 mm", "0.55 mm"]
"""
NYLON_GAUGES = 'gauges = ["0.71 mm", "0.82 mm", "1.02 mm", "0.74 mm", "0.89 mm", "1.09 mm"]'
STEEL_GAUGES = "gauges = [0.012, 0.016, 0.024, 0.032, 0.042, 0.053]"


@pytest.fixture
def tarn(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Make:
    """Tarn with more tables at its end, and changes to its text."""

    def make(more: str = "", *changes: tuple[str, str]) -> Figures:
        text = text_of("tarn")
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        return derive_text(text + more)

    return make


def found(figures: Figures, name: str) -> Finding:
    return next(each for each in findings_of(figures) if each.name == name)


def tuned(*pitches: str) -> tuple[str, str]:
    return (TUNING, "tuning = [" + ", ".join(f'"{each}"' for each in pitches) + "]")


def test_a_first_string_tuned_a_fifth_too_high_breaks(tarn: Make) -> None:
    """B4 is 2^(7/12) times E4: stress grows 2.245 times, to 3021 MPa over the bare 630.06 mm and over what the set-back
    adds to that to 3031; the wire's strength is 2627 (from memory)."""
    figures = tarn("", tuned("B4", "B3", "G3", "D3", "A2", "E2"))
    breaking = found(figures, "strings near breaking")
    assert (breaking.severity, breaking.figure.address) == ("stop", "string_reserve[1]")
    longer = 1 + figures["saddle_set_back"][0] / 630.06
    assert breaking.value == pytest.approx(1 - 3021 * longer**2 / 2627, abs=2e-3)
    assert found(figures, "uneven set").severity == "caution"


def test_slack_strings_are_said(tarn: Make) -> None:
    """An octave lower pulls a quarter: the first string 98.19 / 4 = 24.55 N over 630.06 mm, and its set-back adds."""
    figures = tarn("", tuned("E3", "B2", "G2", "D2", "A1", "E1"))
    slack = found(figures, "slack strings")
    longer = 1 + figures["saddle_set_back"][0] / 630.06
    assert (slack.severity, slack.figure.address) == ("caution", "string_pull[1]")
    assert slack.value == pytest.approx(24.55 * longer**2, abs=0.01)


def test_strings_too_slack_for_any_figure_are_not_a_silent_number(tarn: Make) -> None:
    figures = tarn("", tuned("16 Hz", "16 Hz", "16 Hz", "16 Hz", "16 Hz", "16 Hz"))
    assert found(figures, "slack strings").severity == "stop"
    names = {each.name: each.severity for each in findings_of(figures)}
    assert names["intonation, string by string"] in ("stop", "not judged", "caution")


def test_nylon_is_not_judged_for_breaking_and_its_frets_are(tarn: Make) -> None:
    figures = tarn("", (TUNING, NYLON), (STEEL_GAUGES, NYLON_GAUGES))
    assert found(figures, "strings near breaking, other materials").severity == "not judged"
    assert found(figures, "slack strings").severity == "fine"
    assert 300 < figures["string_pull_total"] < 450, "normal-tension nylon sets (common practice)"
    assert figures["bridge_torque"] < 7, "less than a top for steel strings is built for"
    assert found(figures, "torque on the bridge").severity == "fine", "a top for nylon strings is built for it"
    assert found(figures, "intonation, string by string").severity in ("fine", "caution")


def test_estimates_are_said_until_they_are_given(tarn: Make) -> None:
    assert found(tarn(), "wound strings are estimates").says.startswith("Weight or core")
    given = tarn(
        "",
        (
            TUNING,
            f'{TUNING}\nweights = [0, 0, "2.1 g/m", "3.7 g/m", "6.3 g/m", "10 g/m"]\n'
            'cores = [0, 0, "0.33 mm", "0.36 mm", "0.41 mm", "0.47 mm"]',
        ),
    )
    assert "wound strings are estimates" not in [each.name for each in findings_of(given)]


def test_a_straight_saddle_leaves_the_second_string_out(tarn: Make) -> None:
    assert found(tarn(), "intonation, string by string").severity == "fine"
    figures = tarn('\n[intonation]\nsaddle = "straight"')
    assert found(figures, "intonation, string by string").severity == "caution"


def test_a_nut_far_from_its_place_is_said(tarn: Make) -> None:
    high = "\n[heights]\nnut_over = 'the zero line'\nnut_bass = 1.2\nnut_treble = 1.2"
    nut = found(tarn(high), "place of the nut")
    assert (nut.severity, str(nut.limit or "")) == ("note", "limit_nut_gain")


@pytest.mark.parametrize(
    ("tables", "name", "severity"),
    [
        ("[saddle]\nthickness = 2.6", "break points on the saddle", "caution"),
        ("[saddle]\nthickness = 2.2", "break points on the saddle", "stop"),
        ("[saddle]\nslot_depth = 8.5", "bridge under the saddle's slot", "stop"),
        ("[saddle]\nslot_depth = 3", "saddle in its slot", "caution"),
    ],
)
def test_saddle_and_bridge(tarn: Make, tables: str, name: str, severity: str) -> None:
    assert found(tarn("\n" + tables), name).severity == severity


@pytest.mark.parametrize(
    ("key", "name", "severity"),
    [
        ("pin_diameter = 8", "pins apart", "stop"),
        ("hold_behind = 10", "pins behind the saddle", "caution"),
        ("length = 70", "length of the bridge", "stop"),
        ("hold_behind = 20", "angle behind the saddle", "caution"),
        ("hold_spread = 40", "pins apart", "caution"),
    ],
)
def test_the_strings_hold(tarn: Make, key: str, name: str, severity: str) -> None:
    assert found(tarn("", ("[bridge]\n", f"[bridge]\n{key}\n")), name).severity == severity


@pytest.mark.parametrize(
    ("diameter", "severity"), [(6.64, "fine"), (6.65, "caution"), (7.53, "caution"), (7.54, "stop"), (11.26, "stop")]
)
def test_pins_keep_half_a_hole_of_wood_and_should_keep_more(tarn: Make, diameter: float, severity: str) -> None:
    """Six strings over 56.5 mm stand 11.3 apart: 1.7 holes of 6.647, and a hole and a half of 7.533.

    A hole of 11.26 leaves 0.04 mm of wood, which had been a caution.
    """
    figures = tarn("", ("[bridge]\n", f"[bridge]\npin_diameter = {diameter}\nwidth = 40\n"))
    pins = found(figures, "pins apart")
    assert pins.severity == severity
    assert pins.value == pytest.approx(11.3 / diameter, rel=1e-6)
    assert figures["bridge_hold_wood"] == pytest.approx(11.3 - diameter, abs=1e-6)


def strung(count: int, more: str = "") -> tuple[tuple[str, str], ...]:
    """Changes to *Tarn* for so many strings, thin enough to stand beside each other at its nut."""
    pitches = ", ".join(f'"{each}"' for each in ("E4", "B3", "G3", "D3", "A2", "E2", "B3", "G3", "D3", "A2")[:count])
    gauges = ", ".join(["0.012"] * count)
    return (STEEL_GAUGES, f"gauges = [{gauges}]"), (TUNING, f"tuning = [{pitches}]\n{more}")


def test_ten_strings_are_no_single_strings_unless_they_are_said_to_be(tarn: Make) -> None:
    ten = found(tarn("", *strung(10)), "strings in courses")
    assert (ten.severity, str(ten.figure), ten.value) == ("stop", "strings_count", 10)
    assert "single = true" in str(ten.remedy)
    for changes in (strung(10, "single = true"), strung(9)):
        assert "strings in courses" not in {each.name for each in findings_of(tarn("", *changes))}


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
def test_examples_stop_at_nothing_here(example: Callable[[str], Figures], name: str) -> None:
    named = ("string", "intonation", "saddle", "bridge", "pins", "torque", "nut")
    for each in findings_of(example(name)):
        if any(word in each.name for word in named):
            assert each.severity != "stop", each
