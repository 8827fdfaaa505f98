"""What the lines of a drawing give of a guitar, once it is said which is what; and what was taken and what was left."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from gramil.description.neck.head_outline import nut_first
from gramil.description.plan.lines import PlanLine, PlanLines, Taken
from gramil.description.plan.parts import (
    PlanBrace,
    PlanBridge,
    PlanHead,
    PlanHole,
    PlanOutline,
    PlanParts,
    Point,
)
from gramil.faults import MakersFault
from gramil.measure import LengthUnit, show
from gramil.quantities import Mm
from gramil.shapes.chains import Drawing, Trace
from gramil.shapes.few_points import few_points
from gramil.shapes.planar import polygon_figures
from gramil.shapes.straight_pieces import Straight, straight_pieces
from gramil.shapes.traced_outline import Reading, Traced, traced_outline

Array = NDArray[np.float64]
ROUND = 0.02
"""How far a hole may be from a circle, as a share of its diameter."""
OFF_MIDDLE: Mm = 1.5
"""How far a hole's centre may lie from the middle line and be taken onto it."""
AT_LININGS: Mm = 16.0
"""An end no farther from the outline runs to the linings."""
TWINS: Mm = 1.5
"""Braces whose ends lie so near to each other's mirror images are twins."""
LEAST_HOLE, MOST_HOLE = 40.0, 200.0
"""Diameters of a hole, in mm."""


@dataclass(frozen=True)
class HowToRead:
    """How a drawing is to be read: which line is taken for which part, the outline's real length (None: as the
    drawing's units say), how far its halves may differ, and whether it shows the guitar from the inside.
    """

    taken: Taken
    length: Mm | None = None
    alike: Mm = 0.5
    from_inside: bool = False
    unit: LengthUnit = "mm"


@dataclass(frozen=True)
class DrawnPlan:
    """What a drawing gives; sentences on what was taken and on what was left; where its bridge's front edge lies."""

    parts: PlanParts
    told: tuple[str, ...]
    front_at: Mm | None = None


def drawn_plan(lines: PlanLines, asked: HowToRead) -> DrawnPlan:
    """The parts that a drawing gives. Raises MakersFault: no outline among them, or one that cannot be read."""
    told, left = list[str](), list[str]()
    found = _outline(lines, asked, told)
    frame = _Frame(found, lines.downward != asked.from_inside)
    hole = _hole(_of(lines, asked, "hole"), frame, asked, told, left)
    braces = _braces(lines, asked, frame, hole, told, left)
    bridge, front_at = _bridge(_of(lines, asked, "bridge"), frame, asked, told, left)
    head = _head(_of(lines, asked, "head"), found.scale, asked, told)
    points, corners = few_points(found.outline)
    outline = PlanOutline(points, tuple(corner - 1 for corner in corners))
    return DrawnPlan(PlanParts(outline, braces, hole, bridge, head), (*told, *left, *_left(lines, asked)), front_at)


@dataclass(frozen=True)
class _Frame:
    """Where places of the drawing lie: along from the neck end, across with treble positive."""

    found: Traced
    turned: bool

    def places(self, points: Array) -> Array:
        """Places (n, 2) of the drawing in mm."""
        return np.asarray(self.found.laid(points) * (1.0, -1.0 if self.turned else 1.0))

    def trace(self, line: PlanLine) -> Trace:
        """A line in mm."""
        return replace(line.trace, points=self.places(line.trace.points))


def _of(lines: PlanLines, asked: HowToRead, part: str) -> list[PlanLine]:
    return [each for each in lines.lines if asked.taken.get(each.number) == part]


def _outline(lines: PlanLines, asked: HowToRead, told: list[str]) -> Traced:
    own = _of(lines, asked, "outline")
    if not own:
        raise MakersFault.of(
            "no line is taken for the outline",
            "it says where all else lies",
            "Point at it, or name its layer; if the drawing has none, type the plan's numbers",
            where="outline",
        )
    reading = Reading(asked.length, asymmetry=asked.alike, mirrors=True, file=lines.file)
    found = traced_outline(Drawing(tuple(each.trace for each in own), lines.unit), reading)
    size = show(found.outline.length, asked.unit)
    told.append(f"Outline: {_named(own)}, {size} long; its halves are alike within {show(found.asymmetry, asked.unit)}")
    return found


def _hole(
    own: Sequence[PlanLine], frame: _Frame, asked: HowToRead, told: list[str], left: list[str]
) -> PlanHole | None:
    """The smallest circle on the middle line; larger ones round it are rings."""
    circles = []
    for each in own:
        found = _circle(frame.places(each.trace.points)) if each.trace.is_closed(0.1) else None
        if found is None:
            left.append(f"Left: {each.trace.name}, which is not a circle")
        elif abs(found[1]) > OFF_MIDDLE:
            left.append(f"Left: {each.trace.name}, whose centre lies {show(abs(found[1]), asked.unit)} from the middle")
        else:
            circles.append((found[2], found[0]))
    if not circles:
        return None
    diameter, centre = min(circles)
    rings = len(circles) - 1
    told.append(f"Hole: {show(diameter, asked.unit)} wide, its centre {show(centre, asked.unit)} from the neck end")
    if rings:
        several = "" if rings == 1 else "s"
        left.append(f"Left: {rings} larger circle{several} round the hole; rings are written in the file")
    return PlanHole(centre, diameter)


def _circle(ring: Array) -> tuple[Mm, Mm, Mm] | None:
    """Centre along and across, and diameter, of a ring that is round enough."""
    middle = np.array(polygon_figures(ring[:-1]).centroid)
    reach = np.hypot(*(ring[:-1] - middle).T)
    diameter = 2 * float(reach.mean())
    if not np.isfinite(diameter) or np.ptp(reach) > ROUND * diameter or not LEAST_HOLE <= diameter <= MOST_HOLE:
        return None
    return float(middle[0]), float(middle[1]), diameter


def _braces(
    lines: PlanLines, asked: HowToRead, frame: _Frame, hole: PlanHole | None, told: list[str], left: list[str]
) -> tuple[PlanBrace, ...]:
    found = list[PlanBrace]()
    for plate in ("top", "back"):
        own = _of(lines, asked, f"{plate} braces")
        pieces, odd = straight_pieces([frame.trace(each) for each in own])
        left += [f"Left: {own[row].trace.name} among braces of the {plate}: {why}" for row, why in odd]
        braces = _twinned([_brace(each, plate, frame, hole, own) for each in sorted(pieces, key=_along)])
        found += _numbered(braces, plate)
        if braces:
            told.append(f"Braces of the {plate}: {len(braces)}, twins as one, out of {_named(own)}")
        told += _edges(pieces, own, asked.unit)
    return tuple(found)


def _edges(pieces: Sequence[Straight], own: Sequence[PlanLine], unit: LengthUnit) -> Iterator[str]:
    pairs = [each for each in pieces if len(each.rows) == 2]
    if pairs:
        widths = sorted({show(each.width or 0.0, unit) for each in pairs})
        yield f"{len(pairs)} times two lines side by side are taken as the edges of a brace ({', '.join(widths)} wide)"


def _along(piece: Straight) -> tuple[Mm, Mm]:
    return (piece.start[0] + piece.stop[0]) / 2, (piece.start[1] + piece.stop[1]) / 2


def _brace(piece: Straight, plate: str, frame: _Frame, hole: PlanHole | None, own: Sequence[PlanLine]) -> PlanBrace:
    """A brace, held to what it lies by, as is common practice; its first end is the one nearer to the neck."""
    line = tuple(sorted((piece.start, piece.stop)))
    start, stop = ("linings" if _from_edge(frame.found, place) < AT_LININGS else "point" for place in line)
    return PlanBrace(
        _own_name(own[piece.rows[0]]),
        plate,
        _held_to(plate, _along(piece)[0], hole),
        (line[0], line[1]),
        start,
        stop,
        width=None if piece.width is None else round(piece.width, 2),
    )


def _own_name(line: PlanLine) -> str:
    """The name of the shape itself, where it has one beside its layer's."""
    return " ".join(line.trace.layers[-1].replace("_", " ").split())[:40] if len(line.trace.layers) > 1 else ""


def _held_to(plate: str, along: Mm, hole: PlanHole | None) -> str:
    """By the hole to the hole, behind it to the saddle, all else to the body."""
    if plate == "back" or hole is None:
        return "body"
    if abs(along - hole.centre) <= hole.diameter / 2:
        return "soundhole"
    return "saddle" if along > hole.centre else "body"


def _from_edge(found: Traced, place: Point) -> Mm:
    """How far a place lies from the outline."""
    half = found.outline.half
    edge = half.place(half.sample(0.1, 3.0))
    return float(np.hypot(*(edge - (place[0], abs(place[1]))).T).min())


def _twinned(braces: Sequence[PlanBrace]) -> list[PlanBrace]:
    """Braces with those that are mirror images of each other made one with a twin, half-way between them."""
    left, found = list(braces), list[PlanBrace]()
    while left:
        each = left.pop(0)
        image = next((other for other in left if _mirrors(each, other)), None)
        if image is not None:
            left.remove(image)
            own, its = np.array(each.line), np.array(image.line) * (1.0, -1.0)
            (x, y), (u, v) = ((own + its) / 2).tolist()
            each = replace(each, line=((x, y), (u, v)), twin=True)
            each = each if v >= 0 else replace(each, line=((x, -y), (u, -v)))
        found.append(each)
    return found


def _mirrors(one: PlanBrace, other: PlanBrace) -> bool:
    apart = np.array(one.line) - np.array(other.line) * (1.0, -1.0)
    return bool(np.hypot(*apart.T).max() < TWINS)


def _numbered(braces: Sequence[PlanBrace], plate: str) -> Iterator[PlanBrace]:
    """Each brace with a name: its own in the drawing if no other has it, else its plate and a number, counted from the
    neck.
    """
    names = [each.name for each in braces]
    for number, each in enumerate(braces, start=1):
        own = each.name if names.count(each.name) == 1 else ""
        yield replace(each, name=own or f"{plate} {number}")


def _bridge(
    own: Sequence[PlanLine], frame: _Frame, asked: HowToRead, told: list[str], left: list[str]
) -> tuple[PlanBridge | None, Mm | None]:
    """The largest closed shape: how long and wide it is, and where its middle lies along."""
    closed = [each for each in own if each.trace.is_closed(0.1)]
    if not closed:
        left += [f"Left: {_named(own)} as a bridge: it is not closed"] if own else []
        return None, None
    best = max(closed, key=lambda each: float(np.ptp(each.trace.points, axis=0).prod()))
    places = frame.places(best.trace.points)
    width, length = np.ptp(places, axis=0).tolist()
    told.append(
        f"Bridge: {show(length, asked.unit)} by {show(width, asked.unit)}; its saddle is not read off a drawing"
    )
    return PlanBridge(length, width), float(places[:, 0].min())


def _head(own: Sequence[PlanLine], scale: float, asked: HowToRead, told: list[str]) -> PlanHead | None:
    if not own:
        return None
    reading = Reading(asymmetry=asked.alike, mirrors=True, where="head")
    found = traced_outline(Drawing(tuple(each.trace for each in own), scale), reading)
    told.append(f"Head: {_named(own)}, {show(found.outline.length, asked.unit)} long; its narrow end is at the nut")
    return PlanHead(*nut_first(found.outline))


def _left(lines: PlanLines, asked: HowToRead) -> Iterator[str]:
    """The lines that were taken for nothing, layer by layer."""
    for layer, held in lines.layers.items():
        rest = [each for each in held if each.number not in asked.taken]
        if rest:
            yield f"Left: {len(rest)} line{'' if len(rest) == 1 else 's'} on {layer}"


def _named(lines: Sequence[PlanLine]) -> str:
    layers = list(dict.fromkeys(each.layer for each in lines))
    return f"{len(lines)} line{'' if len(lines) == 1 else 's'} on {', '.join(layers)}"
