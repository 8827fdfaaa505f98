"""Heights that cannot be had: a neck without a rod keeps its relief, and no saddle goes under its bridge."""

from collections.abc import Callable, Iterator

import pytest

from gramil.change.set_up_file import SetUpReadings
from gramil.change.set_up_readings import SetUpReadback, read_back_set_up
from gramil.change.set_up_report import report
from gramil.formatter import Formatter
from gramil.graph import Figures


@pytest.fixture(scope="module")
def mere(example: Callable[[str], Figures]) -> Figures:
    return example("mere")


def said(figures: Figures, readings: SetUpReadings) -> str:
    return "\n".join(report(read_back_set_up(figures, readings), Formatter(figures)))


def every(value: float) -> dict[int, float]:
    return dict.fromkeys(range(1, 7), value)


def test_without_a_rod_the_relief_stays_and_the_saddle_comes_down(mere: Figures) -> None:
    """Read 0.2 mm over what is wanted at fret 12, half way: twice that comes off at the saddle, whatever the relief.

    By similar triangles: the string turns about the nut, 650 mm to the saddle and 325 to fret 12.
    """
    readings = SetUpReadings(relief=0.4, action={1: 3.2, 6: 4.2}, saddle_height=every(3.0))
    found = read_back_set_up(mere, readings)
    for each in found.strings:
        if each.string in (1, 6):
            assert each.heights.off_saddle == pytest.approx(0.4, abs=0.01)
            assert each.heights.action_with_relief == each.heights.action
    text = said(mere, readings)
    assert "tighten" not in text
    assert "no truss rod" in text
    assert "take 0.40 mm off the saddle" in text
    assert "build" not in text


def test_with_a_rod_the_relief_is_set_first(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    assert tarn["neck_rod"] != "none"
    assert "tighten the truss rod first" in said(tarn, SetUpReadings(relief=0.4, action={1: 2.0}))


LOW = SetUpReadings(relief=0.1, action={1: 3.8, 6: 5.4}, saddle_height={1: 1.2, 6: 1.5})
"""1.6 and 2.8 mm too high at the saddle, of which 1.2 and 1.5 show: it would stand 0.4 and 1.3 under the bridge."""


def test_a_saddle_is_never_taken_under_its_bridge(mere: Figures) -> None:
    """Under `limit_exposed_stop_least`, by which `check` stops, no stroke of the file is asked for."""
    found = read_back_set_up(mere, LOW)
    assert [each.heights.saddle_left for each in found.strings] == pytest.approx([-0.4, -1.3], abs=0.01)
    text = said(mere, LOW)
    assert "off the saddle" not in text
    assert "cannot be had at the saddle" in text
    assert "neck's angle" in text


def test_a_neck_brought_back_so_far_shows_the_saddle_again(mere: Figures) -> None:
    """A right triangle: the mean of the saddle is to show as drawn, so much over the run from join to saddle."""
    found = read_back_set_up(mere, LOW)
    assert found.neck is not None
    short = mere["saddle_exposed"] - (-0.4 - 1.3) / 2
    run = 650 - mere["back_bow_length"]
    assert found.neck.rise == pytest.approx(short, abs=0.01)
    assert found.neck.wedge == pytest.approx(short / run * mere["neck_heel_depth"], rel=0.02)


@pytest.mark.parametrize(("shows", "stops"), [(8.0, True), (4.0, False)])
def test_a_saddle_is_not_built_up_until_it_tips(mere: Figures, shows: float, stops: bool) -> None:
    """1.0 mm more than 6.0 is over the most, 1.0 more than 4.0 is not."""
    text = said(mere, SetUpReadings(action={1: 2.5}, saddle_height={1: shows - 1.0}))
    assert ("cannot be had at the saddle" in text) is stops


def test_how_much_shows_decides_and_unread_it_is_not_judged(mere: Figures) -> None:
    text = said(mere, SetUpReadings(action={1: 3.8}))
    assert "take 1.60 mm off the saddle" in text
    assert "not judged" in text


def stops(found: SetUpReadback) -> Iterator[int]:
    return (each.string for each in found.strings if each.heights.saddle_stops)


def test_the_limit_is_that_of_check(mere: Figures) -> None:
    """Just over and just under the least that `check` lets any string show."""
    least = mere["limit_exposed_stop_least"]
    for over, expected in ((0.05, []), (-0.05, [1])):
        height = 0.4 + least + over
        found = read_back_set_up(mere, SetUpReadings(action={1: 3.2}, saddle_height={1: height}))
        assert list(stops(found)) == expected
