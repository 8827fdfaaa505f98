"""The body cut across where the section line crosses it: top and back on their domes, sides and linings, the bindings
in their channels, what is glued under the plates, the soundhole, the bridge.

The cut is square to the body's centreline, through the place where the section line crosses the top; y is across,
treble positive, z is over the crest of the board as in the neck's section (past its end, over its crest drawn on).
"""

from collections.abc import Iterable
from itertools import pairwise
from math import hypot
from typing import Any

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.drawings.bevelled_at import behind, bevels_at, planed
from gramil.drawings.hull import Hull, hull_at
from gramil.drawings.marks import Drawing, Marks, Point, Polyline, Span
from gramil.drawings.pen import Hatch
from gramil.drawings.rim_at import STEPS, back_at, edges_at, over_the_middle, pieces_at, plate_between, points_of, run
from gramil.drawings.section_at import Cut, measured_up, section_marks, string_places, turned_over, value_at
from gramil.graph import Figures
from gramil.parts.body_records import Brace, notches_in
from gramil.parts.opening_records import Opening
from gramil.quantities import Mm
from gramil.reference import Ref
from gramil.shapes.arched_bar import Notch
from gramil.shapes.piecewise import distinct

Array = NDArray[np.float64]
Interval = tuple[float, float]

FIGURE = 9.0
"""Height of a figure on this drawing, in mm: it is seven times as wide as a neck's."""
WIDTH_UNDER = 14.0
"""How far under the back the width stands, in mm."""
WIDTH, DEPTH = Ref[Any]("width here"), Ref[Any]("depth inside")
"""What is read at the cut and has no address of its own."""


def braces_at(figures: Figures, cut: Cut) -> tuple[Brace, ...]:
    """The braces that the cut goes through."""
    hull = hull_at(figures, cut)
    if hull is None:
        return ()
    return tuple(each for each in figures[n.brace_list] if across(each.footprint, hull.along))


def across(corners: Iterable[Point], along: Mm) -> Interval | None:
    """From where to where a convex polygon lies across the cut; None if it lies elsewhere."""
    ring = list(corners)
    met = [
        y0 + (y1 - y0) * (along - x0) / (x1 - x0)
        for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True)
        if (x0 <= along) != (x1 <= along)
    ]
    return (float(min(met)), float(max(met))) if met else None


def read_at(figures: Figures, address: Ref[Any] | str, cut: Cut) -> float:
    """The figure at an address, including this drawing's own; raises KeyError if there is none."""
    if str(address) not in (str(WIDTH), str(DEPTH)):
        return value_at(figures, address, cut)
    hull = hull_at(figures, cut)
    if hull is None:
        raise KeyError(address)
    middle = np.zeros(1)
    return hull.bass + hull.half if str(address) == str(WIDTH) else float((hull.under(middle) - hull.back(middle))[0])


def body_marks(figures: Figures, cut: Cut) -> Marks:
    """What is cut through of the body; nothing if there is none."""
    hull = hull_at(figures, cut)
    if hull is None:
        return ()
    cuts = bevels_at(figures, hull)
    return (
        *planed((*back_at(figures, hull), *edges_at(figures, hull), *behind(cuts)), cuts),
        *_blocks(figures, hull),
        *_braces(figures, hull),
        *_bridgeplate_between(figures, hull),
        *planed(_top(figures, hull), cuts),
        *_rings(figures, hull),
        *_bridge(figures, hull),
        *_saddle(figures, hull, cut),
    )


def _band(y: Array, high: Array, low: Array, hatch: Hatch = "", layer: str = "outline") -> Polyline:
    """A closed shape between two runs over the same places across."""
    return Polyline((*points_of(y, high), *points_of(y[::-1], low[::-1])), layer, closed=True, hatch=hatch)


def _top(figures: Figures, hull: Hull) -> Marks:
    """The top, in pieces where holes are cut through."""
    cuts = sorted(place for each in figures[n.opening_list] if (place := chord(each, hull.along)) is not None)
    marks: Marks = ()
    for piece in pieces_at(figures, hull):
        bass, treble = piece.bass[0].plate_end(), piece.treble[0].plate_end()
        own = [place for place in cuts if -bass[0][0] < place[0] and place[1] < treble[0][0]]
        if not own:
            marks += (plate_between(hull.over, hull.under, treble, bass),)
            continue
        halves = (over_the_middle(_beside_hole(hull, -own[0][0], bass)), _beside_hole(hull, own[-1][1], treble))
        marks += tuple(Polyline(half, "outline", closed=True) for half in halves)
        for (_, low), (high, _) in pairwise(own):
            y = run(low, high)
            marks += (_band(y, hull.over(y), hull.under(y)),)
    return marks


def _beside_hole(hull: Hull, hole: Mm, end: tuple[Point, ...]) -> tuple[Point, ...]:
    """The top from a hole's edge out to its end, drawn on the treble side: its faces are alike on either."""
    y = run(hole, end[0][0])
    return (*points_of(y, hull.over(y)), *end, *points_of(y[::-1], hull.under(y[::-1])))


def chord(hole: Opening, along: Mm, outward: Mm = 0.0) -> Interval | None:
    """From where to where a hole, or a line round it at a distance outward, lies across the cut; None if the cut misses
    it.
    """
    if not hole.hole.is_round:
        return across(hole.parallel(outward), along)
    square = (hole.along / 2 + outward) ** 2 - (along - hole.x) ** 2
    return (hole.y - float(np.sqrt(square)), hole.y + float(np.sqrt(square))) if square > 0 else None


def _rings(figures: Figures, hull: Hull) -> Marks:
    """The rosette's rings, let into the top as deep as their channels."""
    holes = {each.name: each for each in figures[n.opening_list]}
    marks: Marks = ()
    for ring in figures[n.rosette_rings]:
        hole = holes[ring.round]
        outer, inner = (chord(hole, hull.along, (size - hole.across) / 2) for size in (ring.outer, ring.inner))
        middle = (hole.y, hole.y) if inner is None else inner
        for low, high in () if outer is None else ((outer[0], middle[0]), (middle[1], outer[1])):
            y = np.linspace(low, high, 5)
            marks += (_band(y, hull.over(y), hull.over(y) - ring.depth, "bone", "slots"),)
    return marks


def _blocks(figures: Figures, hull: Hull) -> Marks:
    """The neck's block, or the tail's, within the sides."""
    treble, bass = (float(each.half_width(hull.along)) for each in hull.shell.bare.halves)
    marks: Marks = ()
    for block in figures[n.body_blocks] if bass > 0 else ():
        if block.start_x <= hull.along <= block.end_x:
            y = run(-min(block.half_width, bass), min(block.treble, treble))
            marks += (_band(y, hull.under(y), hull.back(y), "across the grain"),)
    return marks


def _braces(figures: Figures, hull: Hull) -> Marks:
    """Each brace as high as it is where it is cut, on the plate that it is glued to, notched where it is halved."""
    marks: Marks = ()
    for brace in figures[n.brace_list]:
        place = across(brace.footprint, hull.along)
        if place is not None:
            y, low, high = _notched(brace, place, hull.along, _notches(figures, brace, hull.along))
            plate, way = (hull.under(y), -1.0) if brace.plate == "top" else (hull.back(y), 1.0)
            marks += (_band(y, plate + way * high, plate + way * low, "across the grain"),)
    return marks


def _notches(figures: Figures, brace: Brace, along: Mm) -> list[tuple[Interval, Notch]]:
    """Where the braces that a brace is halved with pass through it at the cut, and the notch for each."""
    notches = notches_in(brace, figures[n.brace_crossings])
    others = [each for each in figures[n.brace_list] if each.name in notches]
    met = [(across(each.footprint, along), notches[each.name]) for each in others]
    return sorted(((place, notch) for place, notch in met if place is not None), key=lambda each: each[0])


def _notched(
    brace: Brace, place: Interval, along: Mm, notches: list[tuple[Interval, Notch]]
) -> tuple[Array, Array, Array]:
    """Places across a brace that is cut, and its lower and upper height over the plate at each."""
    left, end = place
    runs = []
    for (low, high), notch in notches:
        low, high = max(low, left), min(high, end)
        if low < high:
            runs += [_heights(brace, along, (left, low)), _heights(brace, along, (low, high), notch)]
            left = high
    runs.append(_heights(brace, along, (left, end)))
    y, lower, upper = (np.concatenate(each) for each in zip(*runs, strict=True))
    return y, lower, upper


def _heights(brace: Brace, along: Mm, place: Interval, notch: Notch | None = None) -> tuple[Array, Array, Array]:
    """Places across, and from where to where over its plate a brace stands there, or what a notch has left of it."""
    (x0, y0), (x1, y1) = brace.start, brace.stop
    before, rate = (along - x0) * (x1 - x0) / brace.length, (y1 - y0) / brace.length
    bends = y0 + (brace.bar.edge_places() - before) / rate if rate else np.array([])
    y = distinct([*run(*place), *bends[(place[0] < bends) & (bends < place[1])]])
    on = np.clip(before + (y - y0) * rate, 0.0, brace.length)
    lower, upper = np.zeros_like(y), brace.bar.over_plate(on)
    if notch is not None:
        floor = notch.floor - brace.bar.foot(on)
        lower, upper = (lower, floor) if notch.open_upward else (floor, upper)
    return y, lower, upper


def _bridgeplate_between(figures: Figures, hull: Hull) -> Marks:
    marks: Marks = ()
    for plate in figures[n.plate_shapes]:
        place = across(plate.corners, hull.along)
        if place is not None:
            y = run(*place)
            marks += (_band(y, hull.under(y), hull.under(y) - plate.thickness, "along the grain"),)
    return marks


def _bridge_top(figures: Figures, hull: Hull) -> float:
    """z of the bridge's upper face, level from wing to wing."""
    return float(hull.over(np.zeros(1))[0]) + float(figures[n.bridge_thickness])


def _bridge(figures: Figures, hull: Hull) -> Marks:
    marks: Marks = ()
    for outline in figures[n.brace_bridge]:
        place = across(outline.corners, hull.along)
        if place is not None:
            y = run(*place)
            level = np.full_like(y, _bridge_top(figures, hull))
            marks += (_band(y, level, hull.over(y), "along the grain"),)
    return marks


def _saddle(figures: Figures, hull: Hull, cut: Cut) -> Marks:
    """The saddle where its slot is cut through: from the slot's bottom up to the strings."""
    reach, slant = float(figures[n.saddle_reach]), float(figures[n.saddle_slant])
    half = float(figures[n.saddle_thickness]) / 2 * hypot(1.0, slant)
    y = np.linspace(-reach, reach, 4 * STEPS + 1)
    y = y[np.abs(cut.x - float(figures[n.saddle_position]) - slant * y) <= half]
    if len(y) < 2:
        return ()
    places = sorted(string_places(figures, cut))
    high = np.interp(y, [place[0] for place in places], [place[1] for place in places])
    low = np.full_like(y, _bridge_top(figures, hull) - float(figures[n.saddle_slot_depth]))
    return (_band(y, high, low, "bone"),)


def body_drawing(figures: Figures, cut: Cut) -> Drawing | None:
    """The body's section with board and strings over it, seen from the tail; None where there is no body."""
    hull = hull_at(figures, cut)
    if hull is None:
        return None
    marks = (*body_marks(figures, cut), *section_marks(figures, cut))
    left = figures[n.instrument_handed] == "left"
    title = f"{figures[n.instrument_name]}, the body cut across"
    return Drawing("body-at", title, "the end", (*(turned_over(marks) if left else marks), *_sizes(figures, hull)))


def _sizes(figures: Figures, hull: Hull) -> Marks:
    """Its width, and how deep it is inside on the centreline."""
    middle = np.zeros(1)
    high, low = float(hull.under(middle)[0]), float(hull.back(middle)[0])
    edge = float(hull.back(np.array([max(hull.half, hull.bass)]))[0])
    foot = min(low, edge) - float(figures[n.body_back_thickness]) - WIDTH_UNDER
    return (
        Span((-hull.bass, foot), (hull.half, foot), 0.0, WIDTH, FIGURE),
        *measured_up((0.0, low), (0.0, high), DEPTH, "right", FIGURE),
    )
