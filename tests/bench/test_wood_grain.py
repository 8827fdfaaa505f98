"""The grain on the bench's drawing: along the wood, clear of what lies on it, never crowded."""

from itertools import pairwise
from math import hypot

import pytest

from gramil import names as n
from gramil.bench.plan_view import side_down
from gramil.bench.things import things_on
from gramil.bench.wood_grain import grain, grain_svg
from gramil.drawings.marks import Circle


@pytest.fixture(scope="module", params=["tarn", "fell"])
def drawn(request, example):
    """*Fell* is an inch instrument, its body another."""
    figures = example(request.param)
    return figures, things_on(figures, side_down(figures))


@pytest.mark.parametrize("kind", ["coarse", "fine"])
def test_no_line_runs_through_the_hole_and_all_lie_level_or_on_the_bridge(drawn, kind: str) -> None:
    figures, things = drawn
    hole = next(each.shape for each in things if each.name == "soundhole")
    assert isinstance(hole, Circle)
    lines = [line for of, line in grain(things) if of == kind]
    assert lines
    for line in lines:
        for share in (0.0, 0.25, 0.5, 0.75, 1.0):
            x, y = (a + share * (b - a) for a, b in zip(line.start, line.end, strict=True))
            assert hypot(x - hole.centre[0], y - hole.centre[1]) > hole.radius - 0.1
        level, upright = line.start[1] == line.end[1], line.start[0] == line.end[0]
        assert level or upright
        assert level or abs(line.start[0] - float(figures[n.saddle_position])) < float(figures[n.bridge_width])


def test_lines_of_the_whole_drawing_stand_seven_apart_and_the_others_three_from_any(drawn) -> None:
    """On the top, above and below everything else that is hatched: 7 mm is 6 px at 1.1 mm to a px."""
    figures, things = drawn
    half = float(figures[n.body_width]) / 2
    found = {
        kind: sorted({line.start[1] for of, line in grain(things) if of == kind and 100 < line.start[1] < half})
        for kind in ("coarse", "fine")
    }
    assert all(b - a >= 7.0 for a, b in pairwise(found["coarse"]))
    assert len(found["coarse"]) >= 5
    assert all(b - a >= 3.0 for a, b in pairwise(sorted((*found["coarse"], *found["fine"]))))


def test_the_grain_of_a_top_weighs_little(drawn) -> None:
    _, things = drawn
    assert len(grain_svg(things)) < 9000
