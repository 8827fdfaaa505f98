"""A plan drawn as far as it is known: its curve and points, braces, hole and head, in mm, the neck at the left."""

from collections.abc import Iterable
from dataclasses import dataclass

from gramil.bench.plan_typed import TypedPlan
from gramil.description.plan.parts import PlanBrace, Point
from gramil.faults import MakersFault
from gramil.quantities import Mm
from gramil.shapes.curve_through import through_apart
from gramil.shapes.outline_through import through_points

TRUE_TO: Mm = 0.2
MARGIN: Mm = 14.0
HEAD_GAP: Mm = 40.0
"""Between the head and the body, which a plan shows apart."""
USUAL_WIDTH: Mm = 8.0


@dataclass(frozen=True)
class Spot:
    """A typed point; `odd` is one that stands out, and `others` where the curve through the others has it."""

    x: float
    y: float
    odd: bool = False
    others: float = 0.0


@dataclass(frozen=True)
class Stick:
    """A brace as a stroke."""

    name: str
    x1: float
    y1: float
    x2: float
    y2: float
    width: float
    back: bool


@dataclass(frozen=True)
class PlanPicture:
    """What is drawn: a box (left, top, width, height), lines as SVG points, spots, strokes and the hole."""

    box: tuple[float, float, float, float]
    outline: str
    head: str
    spots: tuple[Spot, ...]
    sticks: tuple[Stick, ...]
    hole: tuple[float, float] | None
    says: str


def plan_picture(plan: TypedPlan) -> PlanPicture | None:
    """The plan as it stands, None while nothing of it can be drawn. SVG's y runs down, so treble is up."""
    half, head = _half(plan), _head(plan)
    sticks = tuple(each for brace in plan.parts.braces for each in _sticks(brace))
    hole = plan.parts.hole
    if not half and not head and not sticks and hole is None:
        return None
    places = [*half, *head, *((s.x1, s.y1) for s in sticks), *((s.x2, s.y2) for s in sticks)]
    if hole is not None:
        places += [(hole.centre - hole.diameter / 2, hole.diameter / 2), (hole.centre + hole.diameter / 2, 0.0)]
    outline = plan.parts.outline
    odd = {each.row: each.others for each in plan.doubts}
    spots = (
        ()
        if outline is None
        else tuple(Spot(x, -y, row in odd, -odd.get(row, y)) for row, (x, y) in enumerate(outline.points))
    )
    return PlanPicture(
        _box(places),
        _ring(half),
        _ring(head),
        spots,
        sticks,
        None if hole is None else (hole.centre, hole.diameter / 2),
        _says(plan),
    )


def _half(plan: TypedPlan) -> tuple[Point, ...]:
    """Points close together on the smooth curve of one half; what stands out does not bend it."""
    outline = plan.parts.outline
    if outline is None or len(plan.rough) < 3:
        return ()
    try:
        half = through_points(plan.rough, outline.corners if not plan.doubts else ()).half
    except MakersFault:
        return plan.rough
    return tuple((float(x), float(y)) for x, y in half.place(half.sample(TRUE_TO)))


def _head(plan: TypedPlan) -> tuple[Point, ...]:
    """Half of the head, off to the left of the body."""
    head = plan.parts.head
    if head is None:
        return ()
    curve = through_apart(head.points, head.corners)
    return tuple((-HEAD_GAP - float(x), float(y)) for x, y in curve.place(curve.sample(TRUE_TO)))


def _sticks(brace: PlanBrace) -> Iterable[Stick]:
    (x, y), (u, v) = brace.line
    width, back = brace.width or USUAL_WIDTH, brace.plate == "back"
    yield Stick(brace.name, x, -y, u, -v, width, back)
    if brace.twin:
        yield Stick(brace.name, x, y, u, v, width, back)


def _ring(half: Iterable[Point]) -> str:
    """A half with its mirror image, as SVG points."""
    there = list(half)
    return " ".join(f"{x:.2f},{y:.2f}" for x, y in [*((x, -y) for x, y in there), *reversed(there)])


def _box(places: list[Point]) -> tuple[float, float, float, float]:
    left, right = min(x for x, _ in places) - MARGIN, max(x for x, _ in places) + MARGIN
    tall = max(abs(y) for _, y in places) + MARGIN
    return left, -tall, right - left, 2 * tall


def _says(plan: TypedPlan) -> str:
    parts = plan.parts
    known = {
        "outline": parts.outline is not None,
        f"{len(parts.braces)} braces": bool(parts.braces),
        "hole": parts.hole is not None,
        "head": parts.head is not None,
    }
    return f"The plan as typed: {', '.join(what for what, there in known.items() if there)}"
