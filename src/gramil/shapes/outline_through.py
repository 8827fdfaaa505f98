"""Outlines from what a maker gives: half-widths at stations, or points of one half; faults named with the place."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import hypot

import numpy as np

from gramil.decimals import fixed
from gramil.faults import Fault, MakersFault
from gramil.quantities import Mm
from gramil.shapes.outline import Outline, Point
from gramil.shapes.polyline import crossings

CHECKED_TO = 0.05
"""In mm: crossings are looked for on chords that lie this close to the curve."""


def through_half_widths(
    x: Sequence[float], half_widths: Sequence[float], corners: Iterable[int] = (), where: str = "outline"
) -> Outline:
    """The smooth outline with these half-widths (mm) at stations x (mm, growing); a width at an end makes it flat.

    `where` names the outline in faults. Raises MakersFault.
    """
    if len(x) != len(half_widths):
        raise MakersFault.of(f"{len(x)} stations but {len(half_widths)} half-widths", where=where)
    back = [(one, other) for one, other in pairwise(x) if not one < other]
    if back:
        raise MakersFault.of(
            f"the station at {back[0][1]:g} mm comes after the one at {back[0][0]:g} mm",
            remedy="Give the stations in order along the axis",
            where=where,
        )
    return through_points(list(zip(x, half_widths, strict=True)), corners, where)


def through_points(points: Sequence[Point], corners: Iterable[int] = (), where: str = "outline") -> Outline:
    """The smooth outline whose upper half goes through `points` (mm), in order from the end of least x to the other.

    An end off the axis is closed by a flat, square to the axis. A point whose row (from 0) is in `corners` is a
    corner. Three points or more. Raises MakersFault, naming the place.
    """
    _check_points(points, where)
    pins, rows = [(float(x), float(y)) for x, y in points], set(corners)
    if pins[0][1] > 0:
        pins, rows = [(pins[0][0], 0.0), *pins], {row + 1 for row in rows} | {1}
    if pins[-1][1] > 0:
        rows.add(len(pins) - 1)
        pins.append((pins[-1][0], 0.0))
    outline = Outline(tuple(pins), tuple(sorted(rows)))
    faults = crossing_faults(outline, where)
    if faults:
        raise MakersFault(faults)
    return outline


def crossing_faults(outline: Outline, where: str = "outline") -> tuple[Fault, ...]:
    """A fault for each place where the outline crosses itself or its axis."""
    places = [*_axis_crossings(outline), *_half_crossings(outline)]
    return tuple(
        Fault(
            where=where,
            what=f"the outline crosses itself at x = {fixed(x, 2)} mm, {fixed(y, 2)} mm from the axis",
            why="an outline encloses one area",
            remedy="Look at the points on either side of that place, and at their order",
        )
        for x, y in places
    )


def _axis_crossings(outline: Outline) -> list[Point]:
    half = outline.half
    met = half.meets((0.0, 0.0), (1.0, 0.0))
    inside = met[(met > half.breaks[0] + 1e-6) & (met < half.breaks[-1] - 1e-6)]
    return [(float(x), 0.0) for x, _ in half.place(inside)]


def _half_crossings(outline: Outline) -> list[Point]:
    """A half that never turns back along the axis cannot cross itself; only one that does is searched."""
    if len(outline.half.spans(0)) == 1:
        return []
    return [(x, y) for _, _, x, y in crossings(outline.half.polyline(CHECKED_TO))]


def _check_points(points: Sequence[Point], where: str) -> None:
    faults = [_negative(x, y, where) for x, y in points if y < 0]
    faults += [_repeated(one, where) for one, other in pairwise(points) if _gap(one, other) < 1e-6]
    if len(points) < 3:
        faults.append(
            Fault(where=where, what=f"{len(points)} points do not make an outline", remedy="Give three or more")
        )
    elif not np.isfinite(np.asarray(points, dtype=np.float64)).all():
        faults.append(Fault(where=where, what="a point is not a number"))
    elif points[0][0] >= points[-1][0]:
        faults.append(_reversed(points[0][0], points[-1][0], where))
    if faults:
        raise MakersFault(faults)


def _gap(one: Point, other: Point) -> Mm:
    return hypot(other[0] - one[0], other[1] - one[1])


def _negative(x: Mm, y: Mm, where: str) -> Fault:
    return Fault(
        where=where,
        what=f"the half-width at x = {x:g} mm is {y:g} mm",
        why="the points are those of one half, and the other is its mirror image",
        remedy="Give distances from the axis, none below 0",
    )


def _repeated(point: Point, where: str) -> Fault:
    return Fault(where=where, what=f"the point ({point[0]:g}, {point[1]:g}) mm comes twice running", remedy="Keep one")


def _reversed(first: Mm, last: Mm, where: str) -> Fault:
    return Fault(
        where=where,
        what=f"the outline runs from x = {first:g} mm to x = {last:g} mm",
        why="it is given from the end of least x to the other",
        remedy="Turn the order of the points round",
    )
