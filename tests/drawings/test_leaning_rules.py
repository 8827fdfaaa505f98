"""Rules and cards of a fanned board lie along its nut and saddle, which lean: held against plane geometry."""

import math

import numpy as np
import pytest

from gramil.drawings.marks import Drawing, Line, Polyline
from gramil.graph import Figures

FANS = ((), (("bass = 710", "bass = 725"), ("treble = 680", "treble = 640"), ("square_at = 7", "square_at = 9")))
"""The example as it is, and one that leans a good deal more."""


@pytest.fixture(params=FANS, ids=["as it is", "leaning more"])
def fanned(request: pytest.FixtureRequest, example) -> Figures:
    return example("scree", *request.param)


def zero_line(figures: Figures) -> tuple[float, float]:
    """How far the treble's outer string starts ahead of the bass's, and how far it lies across, from the description:
    each string's scale lies along itself, and one fret, at an equal share of both, is square to the centreline."""
    across = figures["nut_spread"]
    sideways = (figures["bridge_spread"] - across) / 2
    bass, treble = (math.sqrt(figures[f"scale_{side}"] ** 2 - sideways**2) for side in ("bass", "treble"))
    share = 1 - 0.5 ** (figures["scale_square_at"] / 12)
    return share * (bass - treble), across


def lines(drawing: Drawing, layer: str) -> list[float]:
    """Where the marks across a strip stand, in order."""
    return sorted(mark.start[0] for mark in drawing.marks if isinstance(mark, Line) and mark.layer == layer)


def test_the_nuts_rule_spans_the_strings_along_the_nut(fanned: Figures) -> None:
    ahead, across = zero_line(fanned)
    ticks = lines(fanned["drawing_nut"], "slots")
    assert ticks[-1] - ticks[0] == pytest.approx(math.hypot(ahead, across), abs=1e-6)
    assert ticks[-1] - ticks[0] > across + 0.2


def test_the_nuts_own_length_runs_from_edge_to_edge_of_the_board(fanned: Figures) -> None:
    """The zero line meets the straight edges that run from the width at the nut to that at the tail."""
    ahead, across = zero_line(fanned)
    lean, half = ahead / across, fanned["nut_width"] / 2
    grows = (fanned["board_width_at_tail"] / 2 - half) / fanned["board_tail_position"]
    ends = [half / (1 - grows * lean), -half / (1 + grows * lean)]
    length = math.hypot(lean * (ends[0] - ends[1]), ends[0] - ends[1])
    assert fanned["board_nut_length"] == pytest.approx(length, abs=1e-6)
    (rule,) = (mark for mark in fanned["drawing_nut"].marks if isinstance(mark, Polyline))
    places = [x for x, _ in rule.points]
    assert max(places) - min(places) == pytest.approx(length, abs=1e-6)


def test_the_saddles_card_and_strip_run_along_the_saddle(fanned: Figures) -> None:
    """The line nearest the break points, fitted here anew; distances on it are the square ones over its cosine."""
    lean, _ = np.polyfit(fanned["string_y_bridge"], fanned["saddle_break_x"], 1)
    longer = 1 / math.cos(math.atan(lean))
    wanted = fanned["bridge_spread"] * longer
    card = fanned["drawing_string_gauges"]
    strings = len(fanned["strings_gauges"])
    marks = lines(Drawing("", "", "the end", card.marks[-strings * 2 :]), "slots")
    assert marks[-1] - marks[0] == pytest.approx(wanted, abs=1e-6)
    tops = next(mark for mark in card.marks if isinstance(mark, Polyline)).points[1:-3]
    assert abs(tops[0][0] - tops[-1][0]) == pytest.approx(wanted, abs=1e-6)
    assert longer > 1.01


def test_a_square_boards_rules_are_as_wide_as_the_board(tarn: Figures) -> None:
    assert tarn["board_nut_length"] == pytest.approx(tarn["nut_width"], abs=1e-12)
    assert tarn["string_spread_along_nut"] == pytest.approx(tarn["nut_spread"], abs=1e-12)
