"""Pins of a twelve-string: two rows, where they lie and the wood between them, by hand and by shapely."""

from collections.abc import Callable

import numpy as np
import pytest
from shapely import LineString, Point
from tests.twelve import GAUGES, PITCHES, in_courses

from gramil.findings.finding import Finding
from gramil.graph import Figures
from gramil.prints.whole import findings_of

Make = Callable[..., Figures]
STEP = 56.5 / 11
"""Twelve pins by equal steps over the spread of the strings."""


@pytest.fixture(scope="module")
def made(derive_text: Make, text_of: Callable[[str], str]) -> Make:
    """Tarn in six pairs, with keys of its bridge; each derived once."""
    kept: dict[str, Figures] = {}

    def make(keys: str = "") -> Figures:
        if keys not in kept:
            kept[keys] = derive_text(in_courses(text_of("tarn")).replace("[bridge]\n", f"[bridge]\n{keys}"))
        return kept[keys]

    return make


def found(figures: Figures, name: str) -> Finding:
    return next(each for each in findings_of(figures) if each.name == name)


def test_pairs_on_pins_are_usually_staggered_in_two_rows(made: Make) -> None:
    """Steps of 5.136 mm across, 7 mm from row to row: 8.682 mm from hole to hole, 10.273 along a row."""
    figures = made()
    assert figures["bridge_hold_row"].tolist() == [1, 2] * 6
    assert -np.diff(figures["bridge_hold_y"]) == pytest.approx([STEP] * 11)
    assert np.diff(figures["bridge_hold_x"])[::2] == pytest.approx([7.0] * 6)
    assert figures["bridge_hold_step"] == pytest.approx(2 * STEP)
    assert figures["bridge_hold_across"] == pytest.approx(np.hypot(STEP, 7.0))
    assert figures["bridge_hold_wood_across"] == pytest.approx(np.hypot(STEP, 7.0) - 5.3)
    assert figures["bridge_hold_second"] == pytest.approx(12.0 + 7.0)
    for name in ("pins apart", "rows of pins apart", "strings past other pins", "pins behind the saddle"):
        assert found(figures, name).severity == "fine", name


def test_the_other_string_of_each_pair_may_stand_in_front(made: Make) -> None:
    assert made('front_row = "bass string"\n')["bridge_hold_row"].tolist() == [2, 1] * 6


def test_rows_in_line_with_the_strings_lie_behind_one_another(made: Make) -> None:
    """Pins of a pair 2.2 mm aside and 7 mm behind: hypot = 7.338 mm, 1.38 diameters of 5.3, too little wood.

    The second string of a pair passes 2.2 mm from the first one's pin, whose hole alone has a radius of 2.65.
    """
    figures = made('rows = "two"\n')
    assert figures["bridge_hold_y"] == pytest.approx(figures["string_y_bridge"])
    assert figures["bridge_hold_across"] == pytest.approx(np.hypot(2.2, 7.0))
    apart, past = found(figures, "rows of pins apart"), found(figures, "strings past other pins")
    assert (apart.severity, apart.value) == ("stop", pytest.approx(np.hypot(2.2, 7.0) / 5.3))
    assert past.severity == "caution"
    assert figures["bridge_hold_clear"][1] == pytest.approx(2.2 - 2.65 - GAUGES[1] * 25.4 / 2)


def test_twelve_pins_in_one_row_run_into_each_other(made: Make) -> None:
    """2.2 mm from hole to hole of 5.3 mm."""
    figures = made('rows = "one"\n')
    assert figures["bridge_hold_row"].tolist() == [1] * 12
    assert figures["bridge_hold_wood"] == pytest.approx(2.2 - 5.3)
    assert found(figures, "pins apart").severity == "stop"
    assert np.isnan(figures["bridge_hold_across"])
    assert not [each for each in findings_of(figures) if each.name == "rows of pins apart"]


def test_room_beside_other_pins_is_what_shapely_measures(made: Make) -> None:
    figures = made()
    starts = zip(figures["saddle_break_x"], figures["string_y_bridge"], strict=True)
    holes = list(zip(figures["bridge_hold_x"], figures["bridge_hold_y"], strict=True))
    for row, start in enumerate(starts):
        way = LineString([start, holes[row]])
        away = min(way.distance(Point(hole)) for other, hole in enumerate(holes) if other != row)
        assert figures["bridge_hold_clear"][row] == pytest.approx(away - 2.65 - GAUGES[row] * 25.4 / 2)


def test_a_tie_block_has_one_row(made: Make) -> None:
    figures = made('hold = "tie block"\npin_diameter = 1.2\n')
    assert figures["bridge_hold_row"].tolist() == [1] * 12
    assert figures["bridge_hold_y"] == pytest.approx(figures["string_y_bridge"])


def test_a_pair_at_the_treble_alone_keeps_the_others_in_front(derive_text: Make, text_of: Callable[[str], str]) -> None:
    pitches = ("E4", "E4", "B3", "G3", "D3", "A2", "E2")
    gauges = (0.01, 0.01, 0.014, 0.024, 0.03, 0.04, 0.05)
    figures = derive_text(in_courses(text_of("tarn"), (2, 1, 1, 1, 1, 1), gauges, pitches))
    assert figures["bridge_hold_row"].tolist() == [1, 2, 1, 1, 1, 1, 1]


@pytest.mark.parametrize(("width", "severity"), [(39, "fine"), (31, "caution"), (29, "stop")])
def test_wood_behind_the_second_row_is_judged(width: float, severity: str, made: Make) -> None:
    """On the centreline the second row stands 9 + 12 + 7 = 28 mm behind the front edge, its holes 2.65 mm round it."""
    figures = made(f"width = {width}\n")
    back = found(figures, "pins from the bridge's back")
    assert back.severity == severity
    assert figures["bridge_hold_back"][1] == pytest.approx(width - 28 - 2.65)


def test_a_mixture_stands_by_courses(text_of, derive_text) -> None:
    """Two single trebles and four pairs over 56.5 mm: courses 56.5 / 5.25 apart, a pair's pins a quarter of that aside.

    In the front row the nearest are a single's and the next pair's treble string's: three quarters of a step.
    """
    kept = (0, 2, 4, 5, 6, 7, 8, 9, 10, 11)
    gauges, pitches = ([each[row] for row in kept] for each in (GAUGES, PITCHES))
    figures = derive_text(in_courses(text_of("tarn"), (1, 1, 2, 2, 2, 2), gauges, pitches))
    step = 56.5 / 5.25
    across = [0, 1, 1.75, 2.25, 2.75, 3.25, 3.75, 4.25, 4.75, 5.25]
    assert figures["bridge_hold_y"] == pytest.approx([28.25 - step * each for each in across])
    assert figures["bridge_hold_spacing"] * figures["bridge_pin_diameter"] == pytest.approx(0.75 * step)
    assert {each.name: each.severity for each in findings_of(figures)}["pins apart"] == "caution"
