"""The body cut across where the section line crosses it: top and back on their domes, what is glued under them, the
soundhole, the bridge.

The cut is square to the body's centreline, through the place where the section line crosses the top; y is across,
treble positive, z is over the crest of the board as in the neck's section (past its end, over its crest drawn on).
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from math import cos, hypot, sin

import numpy as np
from numpy.typing import NDArray

from gramil.drawings.marks import Drawing, Marks, Point, Polyline, Span
from gramil.drawings.pen import Hatch
from gramil.drawings.section_at import Cut, measured_up, section_marks, string_places, turned_over, value_at
from gramil.graph import Figures
from gramil.parts.body_records import Brace, Shell
from gramil.quantities import Mm

Array = NDArray[np.float64]
Interval = tuple[float, float]

STEPS = 48
"""Pieces of a run across the body."""
FIGURE = 9.0
"""Height of a figure on this drawing, in mm: it is seven times as wide as a neck's."""
WIDTH_UNDER = 14.0
"""How far under the back the width stands, in mm."""
WIDTH, DEPTH = "width here", "depth inside"
"""What is read at the cut and has no address of its own."""


@dataclass(frozen=True)
class Hull:
    """The body at a cut: `along` from its edge at the neck, `rim` the height (z) of its rim plane there."""

    shell: Shell
    along: Mm
    rim: Mm
    top: Mm

    @cached_property
    def half(self) -> Mm:
        """Half its width."""
        return float(self.shell.side.outline.half_width(self.along))

    @cached_property
    def ends(self) -> tuple[Point, Point]:
        """The ends of its centreline."""
        outline = self.shell.side.outline
        return (outline.start, 0.0), (outline.end, 0.0)

    def over(self, y: Array) -> Array:
        """z of the top's face at y."""
        return np.asarray(self.rim - self.shell.side.upper.fall_from_chord(np.full_like(y, self.along), y, *self.ends))

    def under(self, y: Array) -> Array:
        """z of the top's underside at y."""
        return self.over(y) - self.top

    def back(self, y: Array) -> Array:
        """z of the back's inside at y."""
        side, (start, end) = self.shell.side, self.ends
        depth = np.interp(self.along, (start[0], end[0]), (side.depth_start, side.depth_end))
        fall = side.lower.fall_from_chord(np.full_like(y, self.along), y, start, end)
        return np.asarray(self.rim - self.top - depth + fall)


def hull_at(figures: Figures, cut: Cut) -> Hull | None:
    """The body at a cut, or None where there is none, or none is described."""
    start, angle = figures["piece_plan_turned"]
    along = (cut.x - float(start)) / cos(angle)
    rim = -along * sin(angle) - value_at(figures, cut.address("thickness_at_crest"), cut)
    for shell in figures["body_shells"]:
        hull = Hull(shell, along, float(rim), float(figures["top_thickness"]))
        if hull.half > 1.0:
            return hull
    return None


def braces_at(figures: Figures, cut: Cut) -> tuple[Brace, ...]:
    """The braces that the cut goes through."""
    hull = hull_at(figures, cut)
    if hull is None:
        return ()
    return tuple(each for each in figures["brace_list"] if across(each.footprint, hull.along))


def across(corners: Iterable[Point], along: Mm) -> Interval | None:
    """From where to where a polygon without hollows lies across the cut; None where it lies elsewhere."""
    ring = list(corners)
    met = [
        y0 + (y1 - y0) * (along - x0) / (x1 - x0)
        for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True)
        if (x0 <= along) != (x1 <= along)
    ]
    return (float(min(met)), float(max(met))) if met else None


def read_at(figures: Figures, address: str, cut: Cut) -> float:
    """The figure at an address, one of this drawing's own among them; raises KeyError where there is none."""
    if address not in (WIDTH, DEPTH):
        return value_at(figures, address, cut)
    hull = hull_at(figures, cut)
    if hull is None:
        raise KeyError(address)
    middle = np.zeros(1)
    return 2 * hull.half if address == WIDTH else float((hull.under(middle) - hull.back(middle))[0])


def body_marks(figures: Figures, cut: Cut) -> Marks:
    """What is cut through of the body; nothing where there is none."""
    hull = hull_at(figures, cut)
    if hull is None:
        return ()
    return (
        *_back_and_sides(figures, hull),
        *_blocks(figures, hull),
        *_linings(figures, hull),
        *_braces(figures, hull),
        *_bridge_plate(figures, hull),
        *_top(figures, hull),
        *_rings(figures, hull),
        *_bridge(figures, hull),
        *_saddle(figures, hull, cut),
    )


def _run(low: float, high: float) -> Array:
    return np.linspace(low, high, STEPS + 1)


def _points(y: Array, z: Array) -> tuple[Point, ...]:
    return tuple(zip(y.tolist(), z.tolist(), strict=True))


def _band(y: Array, high: Array, low: Array, hatch: Hatch = "", layer: str = "outline") -> Polyline:
    """A closed shape between two runs over the same places across."""
    return Polyline((*_points(y, high), *_points(y[::-1], low[::-1])), layer, closed=True, hatch=hatch)


def _top(figures: Figures, hull: Hull) -> Marks:
    """The top, in two where the soundhole is cut through."""
    hole = _within(float(figures["soundhole_diameter"]), hull.along - float(figures["soundhole_centre"]))
    parts = [(-hull.half, hull.half)] if hole is None else [(-hull.half, -hole), (hole, hull.half)]
    runs = [_run(*part) for part in parts]
    return tuple(_band(y, hull.over(y), hull.under(y)) for y in runs)


def _within(diameter: float, aside: float) -> float | None:
    """Half the chord of a circle `aside` of its middle; None where it is missed, or there is no circle."""
    square = (diameter / 2) ** 2 - aside**2
    return float(np.sqrt(square)) if square > 0 else None


def _rings(figures: Figures, hull: Hull) -> Marks:
    """The rosette's rings, let into the top as deep as their channels."""
    aside = hull.along - float(figures["soundhole_centre"])
    marks: Marks = ()
    for ring in figures["rosette_rings"]:
        outer = _within(ring.outer, aside)
        inner = _within(ring.inner, aside) or 0.0
        for low, high in () if outer is None else ((-outer, -inner), (inner, outer)):
            y = np.linspace(low, high, 5)
            marks += (_band(y, hull.over(y), hull.over(y) - ring.depth, "bone", "slots"),)
    return marks


def _back_and_sides(figures: Figures, hull: Hull) -> Marks:
    """The back's inside, whose thickness is not described, and the sides between it and the top."""
    whole = _run(-hull.half, hull.half)
    bare = min(hull.half, float(hull.shell.bare.half_width(hull.along)))
    marks: Marks = (Polyline(_points(whole, hull.back(whole)), "outline"),)
    for low, high in ((-hull.half, -bare), (bare, hull.half)):
        y = np.array([low, high])
        marks += (_band(y, hull.under(y), hull.back(y)),)
    return marks


def _linings(figures: Figures, hull: Hull) -> Marks:
    """Four, against the sides under the top and over the back."""
    bare, lined = (float(each.half_width(hull.along)) for each in (hull.shell.bare, hull.shell.lined))
    if not 0 < lined < bare:
        return ()
    height = float(figures["body_linings_height"])
    found: list[Polyline] = []
    for low, high in ((-bare, -lined), (lined, bare)):
        y = np.array([low, high])
        found += [_band(y, hull.under(y), hull.under(y) - height), _band(y, hull.back(y) + height, hull.back(y))]
    return tuple(found)


def _blocks(figures: Figures, hull: Hull) -> Marks:
    """The neck's block, or the tail's."""
    marks: Marks = ()
    for block in figures["body_blocks"]:
        if block.start_x <= hull.along <= block.end_x:
            y = _run(-min(block.half_width, hull.half), min(block.half_width, hull.half))
            marks += (_band(y, hull.under(y), hull.back(y), "across the grain"),)
    return marks


def _braces(figures: Figures, hull: Hull) -> Marks:
    """Each brace as high as it is where it is cut, on the plate that it is glued to."""
    marks: Marks = ()
    for brace in figures["brace_list"]:
        place = across(brace.footprint, hull.along)
        if place is not None:
            y = _run(*place)
            plate, way = (hull.under(y), -1.0) if brace.plate == "top" else (hull.back(y), 1.0)
            marks += (_band(y, plate, plate + way * _heights(brace, hull.along, y), "across the grain"),)
    return marks


def _heights(brace: Brace, along: Mm, y: Array) -> Array:
    """How high a brace is where the cut meets it, from its own upper edge."""
    (x0, y0), (x1, y1) = brace.start, brace.stop
    long = hypot(x1 - x0, y1 - y0)
    share = ((along - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / long**2
    edge = np.array(brace.upper_edge)
    return np.asarray(np.interp(share * brace.length, edge[:, 0], edge[:, 1]))


def _bridge_plate(figures: Figures, hull: Hull) -> Marks:
    marks: Marks = ()
    for plate in figures["plate_shapes"]:
        place = across(plate.corners, hull.along)
        if place is not None:
            y = _run(*place)
            marks += (_band(y, hull.under(y), hull.under(y) - plate.thickness, "along the grain"),)
    return marks


def _bridge_top(figures: Figures, hull: Hull) -> float:
    """z of the bridge's upper face, level from wing to wing."""
    return float(hull.over(np.zeros(1))[0]) + float(figures["bridge_thickness"])


def _bridge(figures: Figures, hull: Hull) -> Marks:
    marks: Marks = ()
    for outline in figures["brace_bridge"]:
        place = across(outline.corners, hull.along)
        if place is not None:
            y = _run(*place)
            level = np.full_like(y, _bridge_top(figures, hull))
            marks += (_band(y, level, hull.over(y), "along the grain"),)
    return marks


def _saddle(figures: Figures, hull: Hull, cut: Cut) -> Marks:
    """The saddle where its slot is cut through: from the slot's bottom up to the strings."""
    reach, slant = float(figures["saddle_reach"]), float(figures["saddle_slant"])
    half = float(figures["saddle_thickness"]) / 2 * hypot(1.0, slant)
    y = np.linspace(-reach, reach, 4 * STEPS + 1)
    y = y[np.abs(cut.x - float(figures["saddle_position"]) - slant * y) <= half]
    if len(y) < 2:
        return ()
    places = sorted(string_places(figures, cut))
    high = np.interp(y, [place[0] for place in places], [place[1] for place in places])
    low = np.full_like(y, _bridge_top(figures, hull) - float(figures["saddle_slot_depth"]))
    return (_band(y, high, low, "bone"),)


def body_drawing(figures: Figures, cut: Cut) -> Drawing | None:
    """The body's section with board and strings over it, seen from the tail; None where there is no body."""
    hull = hull_at(figures, cut)
    if hull is None:
        return None
    marks = (*body_marks(figures, cut), *section_marks(figures, cut))
    left = figures["instrument_handed"] == "left"
    title = f"{figures['instrument_name']}, the body cut across"
    return Drawing("body-at", title, "the end", (*(turned_over(marks) if left else marks), *_sizes(hull)))


def _sizes(hull: Hull) -> Marks:
    """Its width, and how deep it is inside on the centreline."""
    middle = np.zeros(1)
    high, low = float(hull.under(middle)[0]), float(hull.back(middle)[0])
    edge = float(hull.back(np.array([hull.half]))[0])
    foot = min(low, edge) - WIDTH_UNDER
    return (
        Span((-hull.half, foot), (hull.half, foot), 0.0, WIDTH, FIGURE),
        *measured_up((0.0, low), (0.0, high), DEPTH, "right", FIGURE),
    )
