"""What places laid on a picture give beside the outline: braces, hole, bridge and head."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from gramil.description.plan.parts import PlanBrace, PlanBridge, PlanHead, PlanHole, PlanOutline, PlanParts, Point
from gramil.faults import MakersFault
from gramil.measure import LengthUnit, show
from gramil.quantities import Mm

if TYPE_CHECKING:
    from gramil.photographs.halves import FoundOutline
    from gramil.photographs.plan import Grounds

Array = NDArray[np.float64]
LAID = ("braces", "hole", "bridge", "head")
FOLLOWED = ("braces", "hole", "head")
"""What a drawn line may be followed for."""
BY_HAND: Mm = 0.4
"""One standard deviation of a place that was laid by hand on an enlarged picture and follows no line: from memory."""
FEWEST_ROUND, FEWEST_OF_BRIDGE, FEWEST_OF_HEAD = 4, 3, 5
ROUND: Mm = 1.5
"""A hole's points that lie farther from a circle than this are none of one."""
NUT_AT: Mm = 3.0
"""How much of a head's points may lie on the other side of the middle line."""


@dataclass(frozen=True)
class LaidPlaces:
    """Places in mm on the picture's plane, (n, 2) each: braces two by two; what a line is followed for; whether the
    plan shows the guitar from the inside.
    """

    places: dict[str, Array]
    followed: frozenset[str] = frozenset()
    from_inside: bool = False
    unit: LengthUnit = "mm"


@dataclass(frozen=True)
class LaidPlan:
    """The parts, sentences on each with how sure it is, and where the bridge's front edge lies."""

    parts: PlanParts
    told: tuple[str, ...]
    front_at: Mm | None = None


def laid_plan(ground: "Grounds", outline: "FoundOutline", laid: LaidPlaces) -> LaidPlan:
    """All that was laid. Raises MakersFault for places that make no part."""
    told = list[str]()
    frame = _Frame(ground, outline, laid)
    hole = _hole(frame, told)
    braces = _braces(frame, hole, told)
    bridge, front_at = _bridge(frame, told)
    head = _head(frame, told)
    own = PlanOutline(outline.points, tuple(corner - 1 for corner in outline.corners), outline.unsure)
    return LaidPlan(PlanParts(own, braces, hole, bridge, head), tuple(told), front_at)


@dataclass(frozen=True)
class _Frame:
    ground: "Grounds"
    outline: "FoundOutline"
    laid: LaidPlaces

    def of(self, part: str) -> Array:
        """What was laid for a part, on the plane."""
        return self.laid.places.get(part, np.empty((0, 2)))

    def on_body(self, places: Array) -> Array:
        """Along from the neck end, across with treble positive."""
        return self.outline.laying.laid(places) * (1.0, -1.0 if self.laid.from_inside else 1.0)

    def follows(self, part: str) -> bool:
        return part in self.laid.followed

    def unsure(self, places: Array, more: Mm) -> str:
        """Two standard deviations of places on the plane, with what comes to it, in words."""
        known = self.ground.unsure(places if len(places) > 1 else np.repeat(places, 2, axis=0))
        return show(2 * float(np.sqrt((known**2).mean() + more**2)), self.laid.unit)

    def show(self, value: Mm) -> str:
        return show(value, self.laid.unit)


def _line(frame: _Frame, part: str, places: Array, closed: bool) -> tuple[Array, Mm]:
    """The drawn line by places where it is to be followed, and how it scatters; else the places, as laid by hand."""
    if not frame.follows(part):
        return places, BY_HAND
    from gramil.photographs.ink import followed

    found = followed(frame.ground.light, places, closed=closed)
    if not np.isfinite(found.scatter):
        raise MakersFault.of(
            f"no line is found near the points of the {part}",
            "within 6 mm of them nothing is dark",
            "Lay them on it",
            where=part,
        )
    return found.points, found.scatter / 3


def _hole(frame: _Frame, told: list[str]) -> PlanHole | None:
    """The circle nearest to the places on its rim, its centre on the middle line."""
    laid = frame.of("hole")
    if not len(laid):
        return None
    if len(laid) < FEWEST_ROUND:
        raise MakersFault.of(
            f"{len(laid)} points on the hole", remedy=f"Lay {FEWEST_ROUND} or more round its rim", where="hole"
        )
    rim, more = _line(frame, "hole", laid, closed=True)
    places = frame.on_body(rim)
    (along, across), radius = _circle(places)
    off = float(np.abs(np.hypot(*(places - (along, across)).T) - radius).max())
    if off > ROUND or abs(across) > 2 * ROUND:
        what = f"its points lie up to {frame.show(off)} off a circle"
        why = f"its centre is {frame.show(abs(across))} off the middle"
        raise MakersFault.of(what, why, remedy="Lay them on the rim of the hole", where="hole")
    told.append(
        f"Hole: {frame.show(2 * radius)} wide, its centre {frame.show(along)} from the neck end, within "
        f"{frame.unsure(rim, more)}"
    )
    return PlanHole(along, 2 * radius)


def _circle(places: Array) -> tuple[Point, Mm]:
    """Centre and radius by least squares of `x^2 + y^2 = 2 a x + 2 b y + c`."""
    rows = np.column_stack((2 * places, np.ones(len(places))))
    (a, b, c), *_ = np.linalg.lstsq(rows, (places**2).sum(axis=1), rcond=None)
    return (float(a), float(b)), float(np.sqrt(max(c + a**2 + b**2, 0.0)))


def _braces(frame: _Frame, hole: PlanHole | None, told: list[str]) -> tuple[PlanBrace, ...]:
    laid = frame.of("braces")
    if len(laid) % 2:
        raise MakersFault.of(
            "a brace has one point alone", remedy="Lay two on each, one after the other", where="braces"
        )
    found, unsure = list[PlanBrace](), list[str]()
    for number, pair in enumerate(laid.reshape(-1, 2, 2), start=1):
        line, more = _line(frame, "braces", pair, closed=False)
        ends = _ends(line, pair)
        (x, y), (u, v) = sorted(frame.on_body(ends).tolist())
        middle = (x + u) / 2
        held_to = "body" if hole is None or middle < hole.centre - hole.diameter / 2 else _by_hole(middle, hole)
        found.append(PlanBrace(f"brace {number}", "top", held_to, ((x, y), (u, v))))
        unsure.append(frame.unsure(ends, more))
    if found:
        told.append(f"Braces: {len(found)}, within {max(unsure)}; give them their names, plates and sizes in the table")
    return tuple(found)


def _by_hole(middle: Mm, hole: PlanHole) -> str:
    return "saddle" if middle > hole.centre + hole.diameter / 2 else "soundhole"


def _ends(line: Array, pair: Array) -> Array:
    """The ends of a straight line through the line that was followed, beside the places that were laid."""
    middle = line.mean(axis=0)
    way = np.linalg.svd(line - middle, full_matrices=False)[2][0] if len(line) > 2 else pair[1] - pair[0]
    way = way / np.hypot(*way)
    return np.asarray(middle + ((pair - middle) @ way)[:, None] * way)


def _bridge(frame: _Frame, told: list[str]) -> tuple[PlanBridge | None, Mm | None]:
    laid = frame.of("bridge")
    if not len(laid):
        return None, None
    if len(laid) < FEWEST_OF_BRIDGE:
        raise MakersFault.of(
            f"{len(laid)} points on the bridge", remedy="Lay one on each of its corners", where="bridge"
        )
    places = frame.on_body(laid)
    width, length = np.ptp(places, axis=0).tolist()
    told.append(f"Bridge: {frame.show(length)} by {frame.show(width)}, within {frame.unsure(laid, BY_HAND)}")
    return PlanBridge(length, width), float(places[:, 0].min())


def _head(frame: _Frame, told: list[str]) -> PlanHead | None:
    """Half of the head, from the nut on; its points are laid on one half, or on the other."""
    laid = frame.of("head")
    if not len(laid):
        return None
    if len(laid) < FEWEST_OF_HEAD:
        remedy = f"Lay {FEWEST_OF_HEAD} or more along one half, from the nut to the tip"
        raise MakersFault.of(f"{len(laid)} points on the head", remedy=remedy, where="head")
    line, more = _line(frame, "head", laid, closed=False)
    places = frame.on_body(line)
    side = 1.0 if places[:, 1].mean() > 0 else -1.0
    across = side * places[:, 1]
    if across.min() < -NUT_AT:
        raise MakersFault.of(
            "the head's points lie on both halves", remedy="Lay them along one, from the nut to the tip", where="head"
        )
    nearest = int(places[:, 0].argmax())
    rows = np.arange(len(places)) if nearest < len(places) / 2 else np.arange(len(places))[::-1]
    points = [(float(places[nearest, 0] - places[row, 0]), max(float(across[row]), 0.0)) for row in rows]
    kept = _thinned(points)
    told.append(f"Head: {frame.show(max(x for x, _ in kept))} long, within {frame.unsure(line, more)}")
    return PlanHead(tuple(kept))


def _thinned(points: Sequence[Point]) -> list[Point]:
    """A followed line by few of its points; those that were laid as they are."""
    step = max(len(points) // 24, 1)
    return [*points[:-1:step], points[-1]]
