"""A new description of strings in pairs: as many courses as its gauges ask, and posts that the strings clear."""

import tomllib

import numpy as np
import pytest

from gramil.description.neck.usual import usual_posts
from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import new_description
from gramil.graph import Figures
from gramil.prints.whole import figures_of, findings_of

PAIRS = {"strings.plain": "twelve"}
EIGHT = {
    "strings.gauges": "0.011, 0.011, 0.015, 0.015, 0.022, 0.022, 0.030, 0.030",
    "strings.tuning": "E4, E4, B3, B3, G3, G3, D3, D3",
    "nut.spread": "27 mm",
    "nut.width": "34 mm",
    "bridge.spread": "40 mm",
    "board.width": "42 mm",
}


def figures(**answers: str) -> Figures:
    return figures_of(parse_description(new_description(PAIRS | answers)), read_shop())


@pytest.mark.parametrize("units", ["mm", "in"])
def test_twelve_strings_stand_in_six_pairs_and_nothing_stops_them(units: str) -> None:
    found = figures(**{"instrument.units": units})
    assert found["strings_course"].tolist() == [1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6]
    assert found["bridge_hold_row"].tolist() == [1, 2] * 6
    assert not {each.name for each in findings_of(found) if each.severity == "stop"}


def test_pairs_are_as_many_as_the_gauges_ask() -> None:
    text = new_description(PAIRS | EIGHT)
    assert [each["strings"] for each in tomllib.loads(text)["course"]] == [[1, 2], [3, 4], [5, 6], [7, 8]]
    assert not {each.name for each in findings_of(figures(**EIGHT)) if each.severity == "stop"}


def test_an_odd_string_stands_by_itself_on_the_bass_side() -> None:
    seven = {
        "strings.gauges": "0.010, 0.010, 0.014, 0.014, 0.022, 0.022, 0.030",
        "strings.tuning": "E4, E4, B3, B3, G3, G3, D3",
    }
    assert tomllib.loads(new_description(PAIRS | seven))["course"][-1] == {"strings": [7]}


def test_half_the_posts_of_pairs_stand_on_either_side_and_strings_clear_them() -> None:
    """By hand, the second string: 18.6 mm out at the nut, its post 25 mm out and 78 mm along. Where it passes the first
    post, 27.5 mm out and 52 along, it lies 18.6 + 6.4 x 52 / 78 = 22.867 out; square to its way, 4.633 x 78 / 78.262.
    """
    x, y = usual_posts(12, 41.0, paired=True)
    assert x[:6].tolist() == [52, 78, 104, 130, 156, 182]
    assert y[:6] == pytest.approx([27.5, 25, 22.5, 20, 17.5, 15])
    assert (x[6:].tolist(), y[6:].tolist()) == (x[5::-1].tolist(), (-y[5::-1]).tolist())
    found = figures()
    assert found["head_post_clear"][1] == pytest.approx(4.633 * 78 / np.hypot(78, 6.4), abs=2e-3)
    assert (found["head_post_clear"] > 4).all()
