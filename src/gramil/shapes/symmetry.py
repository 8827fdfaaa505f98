"""The axis of a drawn outline, how far its halves differ, and the one half that lies between them."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm
from gramil.shapes.curve import Curve
from gramil.shapes.planar import polygon_figures
from gramil.shapes.polyline import nearest_on_ring

Array = NDArray[np.float64]
CORNER = 0.2
"""In radians: a turn at one place that is a corner; an end that leaves the axis this far from square is one too."""
CLOSE = 0.05
"""In mm: a point this near to an end is that end."""
QUARTER = np.array([[0.0, -1.0], [1.0, 0.0]])
"""Rows (x, y) times this are (y, -x): what ran along y runs along x."""


@dataclass(frozen=True, eq=False)
class Halved:
    """How a closed outline is laid with its axis on the x axis, and how far it is from its own mirror image.

    `centre` is taken off rows (x, y) of the drawing, and they are multiplied by `turn`. `asymmetry` is in the
    drawing's units, greatest at `place`, in its own coordinates.
    """

    turn: Array
    centre: Array
    asymmetry: float
    place: tuple[float, float]

    def laid(self, points: Array) -> Array:
        """Points of the drawing in the new position, in the drawing's units."""
        return np.asarray((points - self.centre) @ self.turn)


def halved(ring: Array, narrow_end_first: bool) -> Halved:
    """Find the axis of a closed run of close points, shape (n, 2): along x or along y, through the area's centroid.

    Where both would do, the longer way. The narrow end is the one farther from the centroid.
    """
    centre = np.array(polygon_figures(ring).centroid)
    ways = [_compared(ring, centre, turn) for turn in (np.eye(2), QUARTER)]
    width, height = np.ptp(ring, axis=0)
    longer, shorter = ways if width >= height else ways[::-1]
    # a body nearly as wide as long is nearly alike both ways: the longer is meant
    clearly = 0.5 * longer.asymmetry - 1e-3 * max(width, height)
    best = shorter if shorter.asymmetry < clearly else longer
    along = best.laid(ring)[:, 0]
    if bool(-along.min() >= along.max()) == narrow_end_first:
        return best
    return Halved(-best.turn, centre, best.asymmetry, best.place)


def _compared(ring: Array, centre: Array, turn: Array) -> Halved:
    laid = (ring - centre) @ turn
    mirrored = laid * [1.0, -1.0]
    away = np.hypot(*(nearest_on_ring(laid, mirrored) - mirrored).T)
    worst = int(np.argmax(away))
    return Halved(turn, centre, float(away[worst]), (float(ring[worst, 0]), float(ring[worst, 1])))


@dataclass(frozen=True)
class Half:
    """One half of an outline, from axis to axis, y not below 0, x from 0; `corners` are rows of `points`, `start` is
    where it begins along the curve's own axis.
    """

    points: tuple[tuple[Mm, Mm], ...]
    corners: tuple[int, ...]
    start: Mm = 0.0


def half_between(curve: Curve, ring: Array) -> Half | None:
    """The half half-way between the upper half of a closed curve and the mirror image of its lower half, in mm.

    `curve` runs clockwise about the x axis, `ring` is a close run of points on it. None where it meets the axis
    in more places than two.
    """
    ends = curve.meets((0.0, 0.0), (1.0, 0.0))
    if len(ends) == 3:  # the curve's own start, found at its end too
        ends = ends[:-1]
    if len(ends) != 2:
        return None
    first, last = sorted(ends.tolist(), key=lambda each: float(curve.place(each)[0]))
    breaks = breaks_between(curve.breaks[:-1], first, last)
    upper = curve.place(np.array([first, *breaks, last]))
    between = (upper + nearest_on_ring(ring * [1.0, -1.0], upper)) / 2
    between[[0, -1], 1] = 0.0
    near_ends = [np.hypot(*(between - end).T) < CLOSE for end in (between[0], between[-1])]
    kept = ~(near_ends[0] | near_ends[1])
    sharp = np.array([turn_at(curve, each) > CORNER for each in (first, *breaks, last)])
    starts_sharp = bool((sharp & near_ends[0]).any()) or _leaning(curve, first)
    ends_sharp = bool((sharp & near_ends[1]).any()) or _leaning(curve, last)
    flags = [starts_sharp, *sharp[kept].tolist(), ends_sharp]
    points = np.vstack((between[:1], between[kept], between[-1:]))
    start = float(points[0, 0])
    pins = tuple((float(x) - start, max(float(y), 0.0)) for x, y in points)
    return Half(pins, tuple(row for row, flag in enumerate(flags) if flag), start)


def breaks_between(breaks: Array, first: float, last: float) -> list[float]:
    """The breaks met going on from one parameter to another, over the curve's start if need be."""
    if first < last:
        return [each for each in breaks.tolist() if first < each < last]
    return [each for each in breaks.tolist() if each > first] + [each for each in breaks.tolist() if each < last]


def turn_at(curve: Curve, parameter: float) -> float:
    """How far the curve turns at one parameter, in radians: 0 where it is smooth."""
    start, end = float(curve.breaks[0]), float(curve.breaks[-1])
    at_seam = parameter in (start, end)
    before = curve.velocity(np.nextafter(end if at_seam else parameter, start))
    after = curve.velocity(start if at_seam else parameter)
    return float(abs(np.arctan2(before[0] * after[1] - before[1] * after[0], before @ after)))


def _leaning(curve: Curve, parameter: float) -> bool:
    """Whether the curve crosses the axis well off square."""
    velocity = curve.velocity(min(parameter, float(np.nextafter(curve.breaks[-1], 0.0))))
    return bool(abs(np.arctan2(velocity[0], abs(velocity[1]))) > CORNER)
