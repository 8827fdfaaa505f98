"""Braces made once more as solids, in an independent geometry kernel, from their cards alone, and stood on the plate.

The kernel is Open CASCADE Technology (through `cadquery-ocp-novtk`), which knows nothing of this program. The plate is
a block hollowed by a ball, as a dish is. Each brace is its card as it is read back from the DXF, as thick as the brace
is wide, its foot's ends set down on the plate where the plan says. A notch is sawn where the card has it, along the
brace that it takes in. Then: does the foot touch, how high does the brace stand, does the joint close, is the section
through the body the solid's?
"""

import io
import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import combinations, pairwise
from typing import Any

import ezdxf
import pytest
import shapely
from ezdxf.entities import LWPolyline
from ezdxf.path import make_path
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common, BRepAlgoAPI_Cut
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakePolygon
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakePrism, BRepPrimAPI_MakeSphere
from OCP.gp import gp_Dir, gp_Lin, gp_Pnt, gp_Vec
from OCP.GProp import GProp_GProps
from OCP.IntCurvesFace import IntCurvesFace_ShapeIntersector
from tests.walks import WHOLE, these

from gramil.drawings.body_at import body_marks, braces_at
from gramil.drawings.section_at import cut_at
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.parts.body_records import Brace
from gramil.writers.dxf import dxf_bytes

Point = tuple[float, float]
Place = tuple[float, float, float]
FOOT = 0.003
"""What the straight pieces that a card is drawn in may leave of the plate, in mm."""
CLOSED = 0.02
"""Volume that may be left between two braces, or be in both, in mm3: a notch takes some 300."""

X_OFF_THE_MIDDLE = """
[[brace]]
name = "long"
plate = "{plate}"
line = [[150, -90], [330, 95]]
width = 7
height = {height}
ends = "scalloped"
crosses = ["short"]
[[brace]]
name = "short"
plate = "{plate}"
line = [[180, 80], [420, -20]]
start = "point"
stop = "point"
width = 9
height = 11
end_length = 60
crosses = ["long"]
"""


def cards_of(figures: Figures) -> dict[str, tuple[Point, ...]]:
    """Each brace's card as a machine reads it, its foot's first end at nothing."""
    text = dxf_bytes(figures["drawing_braces"], Formatter(figures).text).decode("utf-8")
    runs = ezdxf.read(io.StringIO(text)).modelspace().query("LWPOLYLINE")
    outlines = [outline_of(run) for run in runs if run.dxf.layer == "cut" and run.closed]
    names = [each.name for each in figures["brace_list"]]
    return {
        name: tuple((x, y - outline[0][1]) for x, y in outline) for name, outline in zip(names, outlines, strict=True)
    }


def outline_of(run: LWPolyline) -> list[Point]:
    """The corners of an outline whose arcs are true arcs, these in chords within 0.2 um."""
    points = [(point.x, point.y) for point in make_path(run).flattening(2e-4)]
    return points[:-1] if math.dist(points[0], points[-1]) < 1e-9 else points


@dataclass(frozen=True)
class Plate:
    """A plate, its glued face up: the inside of a ball of `radius`, or flat; it is lowest over (apex, 0)."""

    radius: float
    apex: float

    def height(self, x: float, y: float) -> float:
        out = math.hypot(x - self.apex, y)
        return 0.0 if math.isinf(self.radius) else self.radius - math.sqrt(self.radius**2 - out**2)

    def solid(self) -> Any:
        block = BRepPrimAPI_MakeBox(gp_Pnt(-60, -300, -20), gp_Pnt(600, 300, 40)).Shape()
        if math.isinf(self.radius):
            return BRepPrimAPI_MakeBox(gp_Pnt(-60, -300, -20), gp_Pnt(600, 300, 0)).Shape()
        ball = BRepPrimAPI_MakeSphere(gp_Pnt(self.apex, 0, self.radius), self.radius).Shape()
        return BRepAlgoAPI_Cut(block, ball).Shape()


def plate_of(figures: Figures, plate: str) -> Plate:
    radius = figures["top_radius" if plate == "top" else "body_back_radius"]
    return Plate(float(radius), float(figures["body_length"]) / 2)


@dataclass(frozen=True)
class Stood:
    """How a card stands: its zero on the plate, its way along and up (both in an upright plane), its way across."""

    zero: Place
    along: Place
    up: Place
    across: Place

    def at(self, point: Point, aside: float = 0.0) -> Place:
        x, y, z = (
            o + point[0] * a + point[1] * u + aside * c
            for o, a, u, c in zip(self.zero, self.along, self.up, self.across, strict=True)
        )
        return x, y, z


def stood(brace: Brace, plate: Plate) -> Stood:
    (x0, y0), (x1, y1) = brace.start, brace.stop
    z0, z1 = plate.height(x0, y0), plate.height(x1, y1)
    level = math.hypot(x1 - x0, y1 - y0)
    chord = math.hypot(level, z1 - z0)
    dx, dy, rise, run = (x1 - x0) / level, (y1 - y0) / level, (z1 - z0) / chord, level / chord
    return Stood((x0, y0, z0), (dx * run, dy * run, rise), (-dx * rise, -dy * rise, run), (-dy, dx, 0.0))


def prism(corners: list[Place], way: Place) -> Any:
    polygon = BRepBuilderAPI_MakePolygon()
    for corner in corners:
        polygon.Add(gp_Pnt(*corner))
    polygon.Close()
    return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(polygon.Wire()).Face(), gp_Vec(*way)).Shape()


def notches_on(card: tuple[Point, ...]) -> list[int]:
    """Where a notch begins on a card: its first wall's outer corner. Both walls are steep, the floor short."""

    def wall(one: Point, other: Point) -> bool:
        return abs(other[1] - one[1]) > 1.0 and abs(other[0] - one[0]) < 0.02 * abs(other[1] - one[1])

    def notch(one: Point, low: Point, end: Point, other: Point) -> bool:
        return wall(one, low) and wall(end, other) and math.dist(low, end) < 30

    return [row for row in range(len(card) - 3) if notch(*card[row : row + 4])]


@dataclass(frozen=True)
class Sawn:
    """A brace before its notch, what the notch takes (drawn past its mouth), and the brace with it."""

    whole: Any
    taken: Any
    left: Any


UPRIGHT = (0.0, 0.0, 1.0)


def sawn(brace: Brace, card: tuple[Point, ...], plate: Plate, along: Place = UPRIGHT) -> Sawn:
    """The brace made from its card; its notch is sawn along the level way that is given."""
    frame = stood(brace, plate)
    way = moved((0.0, 0.0, 0.0), frame.across, brace.width)
    found = notches_on(card)
    inner = {row for start in found for row in (start + 1, start + 2)}
    plain = [frame.at(point, -brace.width / 2) for row, point in enumerate(card) if row not in inner]
    whole = prism(plain, way)
    if not found:
        return Sawn(whole, None, whole)
    (start,) = found
    one, low, end, other = card[start : start + 4]
    beyond = [(one[0] + 2 * (one[0] - low[0]), one[1] + 2 * (one[1] - low[1]))]
    beyond += [low, end, (other[0] + 2 * (other[0] - end[0]), other[1] + 2 * (other[1] - end[1]))]
    back = [moved(frame.at(point), along, -40) for point in beyond]
    taken = prism(back, moved((0.0, 0.0, 0.0), along, 80))
    return Sawn(whole, taken, BRepAlgoAPI_Cut(whole, taken).Shape())


def moved(place: Place, way: Place, times: float) -> Place:
    x, y, z = (p + times * w for p, w in zip(place, way, strict=True))
    return x, y, z


def common(one: Any, other: Any) -> Any:
    return BRepAlgoAPI_Common(one, other).Shape()


def without(one: Any, other: Any) -> Any:
    return BRepAlgoAPI_Cut(one, other).Shape()


def volume(shape: Any) -> float:
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, properties)
    return properties.Mass()


def finder_of(shape: Any) -> Any:
    """What finds where lines meet a solid's faces: the faces are prepared for it once, however many lines are asked."""
    finder = IntCurvesFace_ShapeIntersector()
    finder.Load(shape, 1e-9)
    return finder


def faces_met(finder: Any, x: float, y: float) -> list[float]:
    """Heights at which an upright line meets a solid's faces."""
    finder.Perform(gp_Lin(gp_Pnt(x, y, -100), gp_Dir(0, 0, 1)), 0, 500)
    return sorted(finder.WParameter(each) - 100 for each in range(1, finder.NbPnt() + 1))


@dataclass(frozen=True)
class Reading:
    """At a share of a brace's length: the plate's face, the brace's foot and its upper edge."""

    share: float
    plate: float
    foot: float
    top: float


def readings(brace: Brace, solid: Any, plate: Any, shares: list[float]) -> Iterator[Reading]:
    """`plate` is its finder already."""
    (x0, y0), (x1, y1), own = brace.start, brace.stop, finder_of(solid)
    for share in shares:
        x, y = x0 + share * (x1 - x0), y0 + share * (y1 - y0)
        met = faces_met(own, x, y)
        yield Reading(share, faces_met(plate, x, y)[-1], met[0], met[-1])


def variants(text: str) -> dict[str, str]:
    """Tarn with an X that crosses far off the dome's apex, of unlike heights, ends and widths, on either plate."""
    board, rest = text.split("[[brace]]", 1)
    tail = "[bridge_plate]" + rest.split("[bridge_plate]", 1)[1]
    assert "\n[top]\n" not in text
    assert 'back_radius = "15 ft"' in board

    def described(plate: str, radius: str, height: int) -> str:
        head = board.replace('back_radius = "15 ft"', f'back_radius = "{radius}"') if plate == "back" else board
        top = f'[top]\nradius = "{radius}"\n' if plate == "top" else ""
        return "\n".join([head, X_OFF_THE_MIDDLE.format(plate=plate, height=height), top, tail])

    return {f"{plate} {radius}": described(plate, radius, height) for plate, radius, height in VARIED}


EXAMPLES = ("tarn", "fell", "mere")
VARIED = (
    ("top", "25 ft", 13),
    ("top", "3 m", 11),
    ("top", "flat", 13),
    ("back", "15 ft", 12),
    ("back", "2.5 m", 14),
    ("back", "flat", 9),
)
VARIANTS = tuple(f"{plate} {radius}" for plate, radius, _ in VARIED)
TRIED = these((*EXAMPLES, *VARIANTS), (*EXAMPLES, "top 3 m", "back 2.5 m"))
"""At the gate the roundest top and back among those that are varied."""
STEP = 29 if WHOLE else 58
"""From one section through the body to the next, in mm."""


@pytest.fixture(scope="module")
def described(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Callable[[str], Figures]:
    kept: dict[str, Figures] = {}

    def figures_of(name: str) -> Figures:
        if name not in kept:
            text = text_of(name) if name in EXAMPLES else variants(text_of("tarn"))[name]
            shop = text_of("shop").replace("laser_kerf =", 'laser_kerf_in = "the machine"\nlaser_kerf =')
            kept[name] = derive_text(text, shop)
        return kept[name]

    return figures_of


@pytest.mark.parametrize("name", TRIED)
def test_feet_touch_and_tops_stand_as_high_as_described(name: str, described: Callable[[str], Figures]) -> None:
    figures = described(name)
    cards, plates = cards_of(figures), {each: plate_of(figures, each) for each in ("top", "back")}
    solids = {each: finder_of(plate.solid()) for each, plate in plates.items()}
    for brace in figures["brace_list"]:
        whole = sawn(brace, cards[brace.name], plates[brace.plate]).whole
        assert BRepCheck_Analyzer(whole).IsValid()
        shares = [1e-4, *(step / 40 for step in range(1, 40)), 1 - 1e-4]
        read = list(readings(brace, whole, solids[brace.plate], shares))
        for each in read:
            assert each.foot == pytest.approx(each.plate, abs=FOOT), (brace.name, each.share)
        over = [each.top - each.plate for each in read]
        assert max(over) == pytest.approx(brace.height, abs=FOOT), brace.name
        ends = brace.height - brace.sagitta if brace.ends == "square" else brace.end_height
        assert (over[0], over[-1]) == pytest.approx((ends, ends), abs=0.02), brace.name


@pytest.mark.parametrize("name", TRIED)
def test_every_joint_closes(name: str, described: Callable[[str], Figures]) -> None:
    """Wherever two braces cross, and wherever their plans say that they do: a joint for each, and each shut."""
    figures = described(name)
    braces = {each.name: each for each in figures["brace_list"]}
    for crossing in figures["brace_crossings"]:
        joint_closes(figures, braces[crossing.under], braces[crossing.over])
    joined = {frozenset((each.under, each.over)) for each in figures["brace_crossings"]}
    assert joined == {frozenset(pair) for pair in crossing_in_plan(list(braces.values()))}


def crossing_in_plan(braces: list[Brace]) -> Iterator[tuple[str, str]]:
    """Names of two braces on one plate whose middle lines cross."""
    for one, other in combinations(braces, 2):
        if one.plate == other.plate and min(one.length, other.length) > 0:
            lines = shapely.LineString([one.start, one.stop]), shapely.LineString([other.start, other.stop])
            if lines[0].crosses(lines[1]):
                yield one.name, other.name


def joint_closes(figures: Figures, under: Brace, over: Brace) -> None:
    cards, plate = cards_of(figures), plate_of(figures, under.plate)
    level = {each.name: level_way(each) for each in (under, over)}
    low = sawn(under, cards[under.name], plate, level[over.name])
    high = sawn(over, cards[over.name], plate, level[under.name])
    shared = common(low.whole, high.whole)
    assert volume(shared) > 200
    assert volume(common(low.left, high.left)) <= CLOSED, "wood in the way: the joint stands open"
    assert volume(without(without(shared, low.left), high.left)) <= CLOSED, "a gap between the two floors"
    for one, other in ((low, over), (high, under)):
        lane = upright_strip(other)
        assert volume(without(common(one.whole, one.taken), lane)) <= CLOSED, "a notch wider than the brace in it"
        assert volume(without(common(one.whole, lane), one.whole)) <= CLOSED


def level_way(brace: Brace) -> Place:
    (x0, y0), (x1, y1) = brace.start, brace.stop
    return ((x1 - x0) / brace.length, (y1 - y0) / brace.length, 0.0)


def upright_strip(brace: Brace) -> Any:
    """All that lies between a brace's two sides, over its plan."""
    (dx, dy, _), (x, y) = level_way(brace), brace.start
    half, on = brace.width / 2, brace.length
    corners = [(0.0, -half), (on, -half), (on, half), (0.0, half)]
    return prism([(x + s * dx - n * dy, y + s * dy + n * dx, -60.0) for s, n in corners], (0.0, 0.0, 160.0))


@pytest.mark.parametrize("name", TRIED)
def test_the_section_through_the_body_is_the_solids(name: str, described: Callable[[str], Figures]) -> None:
    """Across every brace that a cut goes through, its notches among it: as high from foot to edge as the solid."""
    figures = described(name)
    solids = made_solids(figures)
    compared = 0
    for along in sections(figures):
        cut = cut_at(figures, float(figures["body_edge"]) + along * math.cos(float(figures["neck_angle_face"])))
        drawn = [each for each in body_marks(figures, cut) if getattr(each, "hatch", "") == "across the grain"]
        for brace, shape in zip(braces_at(figures, cut), drawn, strict=True):
            for y in across_the_notches(shape.points):
                if not 0 < share_of(brace, along, y) < 1:
                    continue
                met = faces_met(solids[brace.name], along, y)
                low, high = heights_at(shape.points, y)
                assert high - low == pytest.approx(met[-1] - met[0], abs=0.01), (brace.name, along, y)
                compared += 1
    assert compared > 30


def sections(figures: Figures) -> tuple[float, ...]:
    """Places along the body, mm from the neck end: step by step, where braces cross, and through each brace that lies
    square to the centreline, which no step need meet.
    """
    square = {brace.start[0] for brace in figures["brace_list"] if abs(brace.stop[0] - brace.start[0]) < brace.width}
    crossings = (each.x for each in figures["brace_crossings"])
    return (*range(60, int(figures["body_length"]) - 40, STEP), *crossings, *sorted(square))


def made_solids(figures: Figures) -> dict[str, Any]:
    """What finds the faces of every brace with its notch, by name."""
    cards, braces = cards_of(figures), {each.name: each for each in figures["brace_list"]}
    partners = {each.under: each.over for each in figures["brace_crossings"]}
    partners |= {over: under for under, over in partners.items()}
    return {
        name: finder_of(
            sawn(
                brace,
                cards[name],
                plate_of(figures, brace.plate),
                level_way(braces[partners[name]]) if name in partners else UPRIGHT,
            ).left
        )
        for name, brace in braces.items()
    }


def across_the_notches(points: tuple[Point, ...]) -> list[float]:
    """Places across a shape that is cut, none within 0.05 mm of its ends or of an upright wall in it."""
    low, high = min(y for y, _ in points), max(y for y, _ in points)
    walls = [one[0] for one, other in pairwise(points) if abs(one[0] - other[0]) < 1e-9]
    places = [low + (high - low) * step / 14 for step in range(1, 14)]
    return [y for y in places if all(abs(y - wall) > 0.05 for wall in walls)]


def share_of(brace: Brace, x: float, y: float) -> float:
    (dx, dy, _), (x0, y0) = level_way(brace), brace.start
    return ((x - x0) * dx + (y - y0) * dy) / brace.length


def heights_at(points: tuple[Point, ...], y: float) -> tuple[float, float]:
    """Lowest and highest place of a closed shape over y."""
    met = [
        z0 + (z1 - z0) * (y - y0) / (y1 - y0)
        for (y0, z0), (y1, z1) in pairwise((*points, points[0]))
        if (y0 <= y) != (y1 <= y)
    ]
    return min(met), max(met)
