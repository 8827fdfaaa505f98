"""Braces at random on random domes: the card stood on a ball touches it, is as high as described, and its joint closes.

Everything expected is worked here from the ball itself, in space: the plate's face is z = R - sqrt(R^2 - d^2), d from
the apex, seen from the inside, and a card is stood on it by the two ends of its foot.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from gramil import names as n
from gramil.description.body.records import BraceAsked
from gramil.drawings.bracing import drawing_braces
from gramil.drawings.kerf import Machine
from gramil.drawings.marks import Polyline
from gramil.graph import Figures
from gramil.parts.body_records import Brace, Crossing, Shell, Zeros
from gramil.parts.brace_stock import stick_list
from gramil.parts.braces import brace_crossings, brace_list
from gramil.shapes.dome import Dome

Point = tuple[float, float]
Place = tuple[float, float, float]
NEAR = 1e-6
ZEROS = Zeros(0.0, 490.0, 300.0)
BY_HAND = Machine(0.0, "the machine", n.shop_laser_kerf)
"""Nothing is allowed for a cut: the card is the brace's finished edge."""


@dataclass(frozen=True)
class Ball:
    """The plate: the inside of a ball, lowest over (x, 0), or flat where `curvature` is 0."""

    curvature: float
    x: float

    def height(self, x: float, y: float) -> float:
        if not self.curvature:
            return 0.0
        radius = 1 / self.curvature
        return radius - math.sqrt(radius**2 - (x - self.x) ** 2 - y**2)


def in_space(brace: Brace, ball: Ball, card: tuple[Point, ...]) -> list[Place]:
    """A card's points, the card upright over the brace's line, its foot's two ends on the plate."""
    (x0, y0), (x1, y1) = brace.start, brace.stop
    low, high = ball.height(x0, y0), ball.height(x1, y1)
    level = math.dist(brace.start, brace.stop)
    angle = math.atan2(high - low, level)
    placed = []
    for along, up in card:
        on, z = along * math.cos(angle) - up * math.sin(angle), along * math.sin(angle) + up * math.cos(angle)
        placed.append((x0 + on * (x1 - x0) / level, y0 + on * (y1 - y0) / level, low + z))
    return placed


@st.composite
def asked(draw: Callable[..., float], name: str, plate: str = "top", crosses: tuple[str, ...] = ()) -> BraceAsked:
    """A brace between two points of the body, of any height, width and ends."""
    across = 1 if name == "one" else -1
    height = draw(st.floats(3.0, 25.0))
    return BraceAsked(
        name,
        plate,
        "body",
        (draw(st.floats(60.0, 220.0)), -across * draw(st.floats(5.0, 90.0))),
        (draw(st.floats(240.0, 420.0)), across * draw(st.floats(5.0, 90.0))),
        "point",
        "point",
        draw(st.floats(4.0, 14.0)),
        height,
        draw(st.sampled_from(["tapered", "scalloped", "square", "tucked"])),
        draw(st.floats(0.0, 1.0)) * min(height, 6.0),
        draw(st.one_of(st.just(0.0), st.floats(1.0, 120.0))),
        "spruce",
        crosses,
        "",
    )


CURVATURES = st.one_of(st.just(0.0), st.floats(1 / 20000.0, 1 / 1200.0))
PLATES = st.sampled_from(["top", "back"])


@pytest.fixture(scope="module")
def shell(example: Callable[[str], Figures]) -> Shell:
    (found,) = example("tarn")["body_shells"]
    return found


def placed(shell: Shell, ball: Ball, *wanted: BraceAsked) -> tuple[Brace, ...]:
    dome = Dome(ball.curvature, ball.x)
    domed = replace(shell, side=replace(shell.side, upper=dome, lower=dome))
    return brace_list(wanted, ZEROS, (domed,), 0.5)


def cards(braces: tuple[Brace, ...], crossings: tuple[Crossing, ...] = ()) -> list[tuple[Point, ...]]:
    """Each card as drawn, its foot's first end at nothing."""
    marks = drawing_braces("", BY_HAND, braces, crossings).marks
    drawn = [each.points for each in marks if isinstance(each, Polyline)]
    return [tuple((x, y - points[0][1]) for x, y in points) for points in drawn]


def foot_and_edge(brace: Brace, card: tuple[Point, ...]) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """A card without notches in two runs: its foot ends where the card has come its whole length."""
    turn = next(row for row, (x, _) in enumerate(card) if x > math.hypot(brace.length) - 1e-9)
    return card[: turn + 1], card[turn + 1 :]


@given(brace=asked("one"), curvature=CURVATURES, apex=st.floats(150.0, 350.0))
def test_a_card_stood_on_the_plate_touches_it_and_is_as_high_as_described(
    shell: Shell, brace: BraceAsked, curvature: float, apex: float
) -> None:
    ball = Ball(curvature, apex)
    (made,) = placed(shell, ball, brace)
    (card,) = cards((made,))
    foot, edge = foot_and_edge(made, card)
    for x, y, z in in_space(made, ball, foot):
        assert z == pytest.approx(ball.height(x, y), abs=NEAR)
    over = [z - ball.height(x, y) for x, y, z in in_space(made, ball, dense(edge))]
    low = curvature and brace.height - made.sagitta < brace.end_height
    assert max(over) <= brace.height + 0.002
    assert max(over) == pytest.approx(brace.height, abs=0.02 if low or brace.end_length > 100 else 0.004)
    assert min(over) >= min(brace.end_height, brace.height - made.sagitta) - 0.004
    if brace.ends != "square" and brace.end_length > 0:
        assert (over[0], over[-1]) == (pytest.approx(brace.end_height, abs=1e-3),) * 2


def dense(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """A run with twenty places on each of its pieces."""
    return tuple(
        (x0 + (x1 - x0) * step / 20, z0 + (z1 - z0) * step / 20)
        for (x0, z0), (x1, z1) in pairwise(points)
        for step in range(21)
    )


@given(
    plate=PLATES,
    one=asked("one", crosses=("other",)),
    other=asked("other"),
    curvature=CURVATURES,
    apex=st.floats(150.0, 350.0),
)
def test_a_joint_closes(
    shell: Shell, plate: str, one: BraceAsked, other: BraceAsked, curvature: float, apex: float
) -> None:
    """Both floors in one level plane, and every wall in the upright plane of the other brace's side."""
    ball = Ball(curvature, apex)
    one, other = replace(one, plate=plate), replace(other, plate=plate)
    braces = placed(shell, ball, one, other)
    crossings = brace_crossings(braces, (one, other))
    assume(crossings)
    (crossing,) = crossings
    whole = cards(braces)
    notched = cards(braces, crossings)
    over_plate, floors = {}, {}
    for brace, before, after, partner in zip(braces, whole, notched, reversed(braces), strict=True):
        own = [in_space(brace, ball, (point,))[0] for point in after if not any(same(point, each) for each in before)]
        assume(len(own) == 4)
        sides = sorted(round(from_line(place, partner) / partner.width, 6) for place in own)
        assert sides == [-0.5, -0.5, 0.5, 0.5]
        floors[brace.name] = own[1:3]
        over_plate[brace.name] = upright_at(brace, ball, before, (crossing.x, crossing.y))
    heights = [place[2] for floor in floors.values() for place in floor]
    assert max(heights) - min(heights) < NEAR
    least = min(over_plate.values())
    floor = heights[0] - ball.height(crossing.x, crossing.y)
    assert floor == pytest.approx(least / 2, abs=0.004)
    assert crossing.depth_over == pytest.approx(floor, abs=NEAR)
    assert crossing.depth_under + floor == pytest.approx(over_plate[crossing.under], abs=0.004)


def same(one: Point, other: Point) -> bool:
    return math.dist(one, other) < 1e-9


def from_line(place: Place, brace: Brace) -> float:
    """How far a place lies from an upright plane through a brace's middle line."""
    (x0, y0), (x1, y1) = brace.start, brace.stop
    return ((x1 - x0) * (place[1] - y0) - (y1 - y0) * (place[0] - x0)) / math.dist(brace.start, brace.stop)


def upright_at(brace: Brace, ball: Ball, card: tuple[Point, ...], where: Point) -> float:
    """How high the card stands over the plate at a place on its line."""
    _, edge = foot_and_edge(brace, card)
    run = [(math.dist(brace.start, place[:2]), place[2]) for place in in_space(brace, ball, edge)]
    along = math.dist(brace.start, where)
    high = next(z0 + (z1 - z0) * (along - s0) / (s1 - s0) for (s1, z1), (s0, z0) in pairwise(run) if s0 <= along <= s1)
    return high - ball.height(*where)


@given(brace=asked("one"), curvature=CURVATURES)
def test_a_stick_is_as_tall_as_its_card_and_2_mm(shell: Shell, brace: BraceAsked, curvature: float) -> None:
    braces = placed(shell, Ball(curvature, 245.0), brace)
    (card,), (stick,) = cards(braces), stick_list(braces)
    heights = [z for _, z in card]
    spare = stick.height - 2.0 - (max(heights) - min(heights))
    assert -0.004 <= spare <= 0.01 * brace.height, "heights are upright, and a card tilted by 8 degrees is 1 % lower"
