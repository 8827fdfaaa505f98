"""Plans of several layers: all parts come back where they were drawn, and what was left is told."""

import numpy as np
import pytest

from gramil.description.plan.drawn import DrawnPlan, HowToRead, drawn_plan
from gramil.description.plan.lines import by_layers, guessed, listed, plan_lines
from gramil.description.plan.parts import PlanBrace
from gramil.faults import MakersFault
from gramil.shapes.outline_through import through_points

from . import plans


def read(text: str, name: str, **how: object) -> DrawnPlan:
    lines = plan_lines(text, name)
    return drawn_plan(lines, HowToRead(guessed(lines), **how))  # type: ignore[arg-type]


def off_line(brace: PlanBrace, line: tuple[plans.Place, plans.Place]) -> float:
    """How far a brace's ends lie from those that were drawn, in either order."""
    ends = np.array(brace.line)
    return min(float(np.hypot(*(ends - np.array(way)).T).max()) for way in (line, line[::-1]))


PLANS = {
    "dxf": lambda: read(plans.dxf(), "plan.dxf"),
    "inches, neck up": lambda: read(plans.dxf(unit=25.4, upright=True), "plan.dxf"),
    "half an outline": lambda: read(plans.dxf(half=True), "plan.dxf"),
    "svg": lambda: read(plans.svg(), "plan.svg"),
}


@pytest.fixture(scope="module", params=PLANS)
def plan(request: pytest.FixtureRequest) -> DrawnPlan:
    return PLANS[request.param]()


def test_outline_hole_and_bridge_come_back(plan: DrawnPlan) -> None:
    outline = plan.parts.outline
    assert outline is not None
    half = through_points(outline.points, outline.corners).half
    close = half.place(half.sample(0.001, 0.05))
    for place in plans.HALF[1:-1]:
        assert np.hypot(*(close - place).T).min() < 0.15
    assert plan.parts.hole is not None
    assert (plan.parts.hole.centre, plan.parts.hole.diameter) == pytest.approx(plans.HOLE, abs=0.1)
    bridge = plan.parts.bridge
    assert bridge is not None
    assert (bridge.length, bridge.width) == pytest.approx((152, 32), abs=0.1)
    assert plan.front_at == pytest.approx(plans.BRIDGE[0], abs=0.1)


def test_braces_come_back_on_their_own_side(plan: DrawnPlan) -> None:
    top = [each for each in plan.parts.braces if each.plate == "top"]
    (back,) = [each for each in plan.parts.braces if each.plate == "back"]
    (x,), (bar,) = [each for each in top if each.twin], [each for each in top if not each.twin]
    assert min(off_line(x, plans.X), off_line(x, plans.mirrored(plans.X))) < 0.2
    assert x.width == pytest.approx(7, abs=0.1)
    assert off_line(bar, plans.BAR) < 0.2
    assert off_line(back, plans.BACK) < 0.2
    assert (x.held_to, bar.held_to, back.held_to) == ("saddle", "saddle", "body")
    assert {bar.start, bar.stop} == {"point", "linings"} or {bar.start, bar.stop} == {"point"}


def test_what_was_taken_and_what_was_left_is_told() -> None:
    told = "\n".join(PLANS["dxf"]().told)
    for said in (
        "Braces of the top: 2, twins as one",
        "1 times two lines side by side",
        "6.00 mm wide",
        "Left: LWPOLYLINE on layer TOP_BRACES among braces of the top: it is bent",
        "Left: 1 larger circle round the hole",
        "Left: 2 lines on DIMS",
        "Head: 1 line on HEAD, 163.00 mm long",
    ):
        assert said.replace("LWPOLYLINE", "POLYLINE") in told, told
    assert "Left: 1 line on notes" in PLANS["svg"]().told


def test_a_head_begins_at_the_nut() -> None:
    head = PLANS["dxf"]().parts.head
    assert head is not None
    assert head.points[0] == pytest.approx(plans.HEAD[0], abs=0.1)
    assert head.points[-1][0] == pytest.approx(163, abs=0.1)


def test_a_plan_drawn_from_the_inside_is_turned() -> None:
    seen, inside = (read(plans.dxf(), "plan.dxf", from_inside=way) for way in (False, True))
    one, other = (next(b for b in each.parts.braces if b.name == "top 1") for each in (seen, inside))
    bars = [next(b for b in each.parts.braces if b.plate == "top" and not b.twin) for each in (seen, inside)]
    assert (one.twin, other.twin) == (True, True)
    assert np.array(bars[0].line) == pytest.approx(np.array(bars[1].line) * (1, -1), abs=0.01)


def test_layers_are_named_and_what_is_not_there_is_told() -> None:
    lines = plan_lines(plans.dxf(), "plan.dxf")
    taken = by_layers(lines, [("outline", "OUTLINE"), ("top braces", "BACK_BRACES")])
    found = drawn_plan(lines, HowToRead(taken))
    assert [each.plate for each in found.parts.braces] == ["top"]
    assert found.parts.hole is None
    assert "Left: 2 lines on HOLE" in found.told
    assert "DIMS: 2 lines, 0 of them closed" in list(listed(lines))
    for asked, said in (([("rosette", "HOLE")], "gives no 'rosette'"), ([("hole", "HOLES")], "nothing is drawn on")):
        with pytest.raises(MakersFault, match=said):
            by_layers(lines, asked)
    with pytest.raises(MakersFault, match="no line is taken for the outline"):
        drawn_plan(lines, HowToRead({}))


def test_a_hole_off_the_middle_is_left() -> None:
    lines = plan_lines(plans.svg().replace('cy="300"', 'cy="304"'), "plan.svg")
    found = drawn_plan(lines, HowToRead(guessed(lines)))
    assert found.parts.hole is None
    assert any("4.00 mm from the middle" in each for each in found.told)
