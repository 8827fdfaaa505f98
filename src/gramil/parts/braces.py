"""The braces: each placed by what it is held to, cut to the linings, its foot arched to the dome.

Places are in body coordinates: along from the body's edge at the neck, across from the centreline, treble positive.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from gramil.description.body.records import BraceAsked
from gramil.parts.body_records import Brace, Crossing, PlateShape, Shell, Spot, Zeros
from gramil.quantities import Mm, PerString, Series
from gramil.shapes.dome import arched_foot
from gramil.shapes.planar import Point, segments_meet
from gramil.shapes.quadrilateral import Quadrilateral
from gramil.shapes.within import distance_to_line, reach_within

OWNS = ("brace_",)


def brace_zeros(body_zeros: Zeros, soundhole_centre: Mm) -> Zeros:
    """Where braces' distances are counted from, the soundhole among them.

    Method: those of the body, and the soundhole's centre.
    Source: the maker's own choice, brace by brace.
    """
    return Zeros(body_zeros.join, body_zeros.tail, body_zeros.saddle, soundhole_centre)


def brace_list(
    braces_asked: tuple[BraceAsked, ...], brace_zeros: Zeros, body_shells: tuple[Shell, ...], body_clearance: Mm
) -> tuple[Brace, ...]:
    """Every brace in its place, with its length and its arched foot; none without a body.

    Method: the line is carried along with what it is held to, and out to where it meets the linings' inside (the
    sides' for tucked ends), less clearance; the foot is the circle in which an upright plane cuts the dome.
    Source: common practice; foot: a plane section of a sphere.
    """
    lines = {each.name: _laid(*_line(each, brace_zeros)) for each in braces_asked}
    halves = {each.name: each.width / 2 for each in braces_asked}
    found = []
    for shell in body_shells:
        lined, bare = shell.lined.ring, shell.bare.ring
        for each in braces_asked:
            ring, half = bare if each.ends == "tucked" else lined, each.width / 2
            middle, left, right = (
                _reach(each, aside, lines, halves, ring, body_clearance) for aside in (0.0, half, -half)
            )
            found.append(_brace(each, lines[each.name], (middle, left, right), shell))
    return tuple(found)


def _line(asked: BraceAsked, zeros: Zeros) -> tuple[Point, Point]:
    along = zeros.of(asked.held_to)
    return (asked.start[0] + along, asked.start[1]), (asked.stop[0] + along, asked.stop[1])


@dataclass(frozen=True)
class _Laid:
    """A brace's middle line as laid: a point on it, its direction (of length 1), and half its given length."""

    middle: Point
    way: Point
    half: Mm

    def at(self, along: float, aside: float = 0.0) -> Point:
        """The place `along` the line from its middle, `aside` to the left of it."""
        (x, y), (dx, dy) = self.middle, self.way
        return (x + along * dx - aside * dy, y + along * dy + aside * dx)


def _laid(start: Point, stop: Point) -> _Laid:
    length = math.dist(start, stop)
    way = ((stop[0] - start[0]) / length, (stop[1] - start[1]) / length)
    return _Laid(((start[0] + stop[0]) / 2, (start[1] + stop[1]) / 2), way, length / 2)


def _reach(
    asked: BraceAsked, aside: Mm, lines: Mapping[str, _Laid], halves: Mapping[str, Mm], ring: np.ndarray, clearance: Mm
) -> tuple[Mm, Mm]:
    """Where a line alongside the brace's middle ends, from its middle: as given, at the linings, at another brace."""
    own = lines[asked.name]
    point = own.at(0.0, aside)
    back, on = reach_within(ring, point, own.way)

    def reached(end: str, at_point: float, at_linings: float) -> float:
        if end in lines:
            return distance_to_line(point, own.way, lines[end].middle, lines[end].way, halves[end])
        return at_point if end == "point" else at_linings

    return reached(asked.start_at, -own.half, back + clearance), reached(asked.stop_at, own.half, on - clearance)


def _brace(
    asked: BraceAsked, laid: _Laid, reaches: tuple[tuple[Mm, Mm], tuple[Mm, Mm], tuple[Mm, Mm]], shell: Shell
) -> Brace:
    """`reaches` are those of the middle line, of the left edge and of the right one."""
    (low, high), left, right = reaches
    start, stop = laid.at(low), laid.at(high)
    dome = shell.side.upper if asked.plate == "top" else shell.side.lower
    foot, half = arched_foot(dome, start, stop), asked.width / 2
    corners = (laid.at(right[0], -half), laid.at(right[1], -half), laid.at(left[1], half), laid.at(left[0], half))
    return Brace(
        asked.name,
        asked.plate,
        asked.held_to,
        asked.wood,
        asked.ends,
        *start,
        *stop,
        math.dist(start, stop),
        asked.width,
        asked.height,
        asked.end_height,
        asked.end_length,
        foot.sagitta,
        float(1 / foot.curvature) if foot.curvature else math.inf,
        float(np.dot(np.subtract((dome.apex_x, dome.apex_y), start), laid.way)),
        math.atan2(abs(stop[1] - start[1]), abs(stop[0] - start[0])),
        corners,
    )


def brace_crossings(brace_list: tuple[Brace, ...], braces_asked: tuple[BraceAsked, ...]) -> tuple[Crossing, ...]:
    """Where braces are notched into each other: twins that cross, and those that say so.

    Their heights are those over the plate where they cross. The second named is notched from its foot by half the lower
    one's, the first from its upper edge down to as much; so both feet lie on the plate.
    Method: where the middle lines meet; the notch in one is as wide as the other, over the sine of the angle.
    Source: common practice, a halved joint.
    """
    joined = {frozenset((each.name, other)) for each in braces_asked for other in (*each.crosses, each.twin)}
    pairs = [
        (one, other)
        for one, other in combinations(brace_list, 2)
        if one.plate == other.plate and frozenset((one.name, other.name)) in joined
    ]
    return tuple(crossing for one, other in pairs for crossing in _crossing(one, other))


def brace_unmet(
    braces_asked: tuple[BraceAsked, ...], brace_crossings: tuple[Crossing, ...], plate_shapes: tuple[PlateShape, ...]
) -> tuple[str, ...]:
    """Braces that are to be notched into each other, and do not meet: each pair by both names.

    Method: pairs named under `crosses` that are not among the crossings; the bridge plate is none of them.
    Source: the maker's own description.
    """
    met = {frozenset((each.over, each.under)) for each in brace_crossings}
    plates = {each.name for each in plate_shapes}
    wanted = [(each.name, other) for each in braces_asked for other in each.crosses if other not in plates]
    unmet = {frozenset(pair): " and ".join(pair) for pair in wanted if frozenset(pair) not in met}
    return tuple(unmet.values())


def _crossing(under: Brace, over: Brace) -> Iterator[Crossing]:
    place = segments_meet(under.start, under.stop, over.start, over.stop)
    if place is None:
        return
    sine = _sine(under, over)
    along_over, along_under = math.dist(over.start, place), math.dist(under.start, place)
    high_over, high_under = float(over.bar.over_plate(along_over)), float(under.bar.over_plate(along_under))
    deep = min(high_over, high_under) / 2
    yield Crossing(
        f"{under.name} and {over.name}",
        over.name,
        under.name,
        *place,
        math.asin(min(1.0, sine)) if _acute(under, over) else math.pi - math.asin(min(1.0, sine)),
        deep,
        high_under - deep,
        under.width / sine,
        over.width / sine,
        along_over,
        along_under,
    )


def _way(brace: Brace) -> Point:
    return (brace.stop_x - brace.start_x, brace.stop_y - brace.start_y)


def _sine(one: Brace, other: Brace) -> float:
    (a, b), (c, d) = _way(one), _way(other)
    return abs(a * d - b * c) / (one.length * other.length)


def _acute(one: Brace, other: Brace) -> bool:
    """Whether the angle that opens toward the tail is less than square: both run on toward the tail."""
    (a, b), (c, d) = _way(one), _way(other)
    return (a * c + b * d) * (1 if a * c >= 0 else -1) >= 0


def brace_low(brace_list: tuple[Brace, ...]) -> tuple[str, ...]:
    """Braces too low for a straight upper edge on their dome: it would leave less over the plate than at their ends.

    Method: height less what the foot hangs below its chord, against the height at the ends.
    Source: plane geometry.
    """
    return tuple(each.name for each in brace_list if each.bar.follows_plate)


def brace_tallest_top(brace_list: tuple[Brace, ...]) -> Mm:
    """Height over the plate of the top's highest brace; not a number without one.

    Method: the greatest of the heights of the braces on the top.
    Source: the definition of the name.
    """
    return _tallest(brace_list, "top")


def brace_tallest_back(brace_list: tuple[Brace, ...]) -> Mm:
    """Height over the plate of the back's highest brace; not a number without one.

    Method: the greatest of the heights of the braces on the back.
    Source: the definition of the name.
    """
    return _tallest(brace_list, "back")


def _tallest(braces: tuple[Brace, ...], plate: str) -> float:
    return max((each.height for each in braces if each.plate == plate), default=math.nan)


def brace_places_top(brace_list: tuple[Brace, ...]) -> Series[Mm]:
    """Ends of the top's braces in turn: first end along and across, second end along and across.

    Method: each brace's four figures one after another.
    Source: common practice.
    """
    return _places(brace_list, "top")


def brace_places_back(brace_list: tuple[Brace, ...]) -> Series[Mm]:
    """Ends of the back's braces in turn: first end along and across, second end along and across.

    Method: each brace's four figures one after another.
    Source: common practice.
    """
    return _places(brace_list, "back")


def _places(braces: tuple[Brace, ...], plate: str) -> np.ndarray:
    chosen = [each for each in braces if each.plate == plate]
    return np.array([figure for each in chosen for figure in (*each.start, *each.stop)], dtype=np.float64)


def brace_legs(brace_list: tuple[Brace, ...], brace_crossings: tuple[Crossing, ...]) -> tuple[str, ...]:
    """Names of the legs of the top's X: braces of the top that cross another one.

    Method: those named at a crossing.
    Source: common practice.
    """
    named = {name for each in brace_crossings for name in (each.under, each.over)}
    return tuple(each.name for each in brace_list if each.plate == "top" and each.name in named)


def brace_bridge(
    body_shells: tuple[Shell, ...], bridge_outline: Quadrilateral, body_edge: Mm
) -> tuple[Quadrilateral, ...]:
    """The bridge's footprint in body coordinates; none without a body.

    Method: the bridge's own corners, less the body's edge.
    Source: common practice.
    """
    corners = [(x - body_edge, y) for x, y in bridge_outline.corners]
    return tuple(Quadrilateral(*(figure for corner in corners for figure in corner)) for _ in body_shells)


def brace_pins(
    body_shells: tuple[Shell, ...],
    bridge_hold_x: PerString[Mm],
    bridge_hold_y: PerString[Mm],
    bridge_hold: str,
    body_edge: Mm,
) -> tuple[Spot, ...]:
    """Centres of the pins' holes in body coordinates; none for a tie block, or without a body.

    Method: the holes' own places, less the body's edge.
    Source: common practice.
    """
    holes = list(zip(bridge_hold_x, bridge_hold_y, strict=True)) if bridge_hold == "pins" else []
    return tuple(Spot(float(x) - body_edge, float(y)) for _ in body_shells for x, y in holes)
