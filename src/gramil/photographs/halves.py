"""A symmetric outline out of a closed line as it was traced: its axis found, the halves made alike, few points kept."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import minimize_scalar

from gramil.quantities import Mm
from gramil.shapes.chains import Drawing, Trace
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_points
from gramil.shapes.polyline import nearest_on_ring
from gramil.shapes.traced_outline import Reading, traced_outline

Array = NDArray[np.float64]
LEANS_MOST = 0.35
"""In radians: how far the axis may lie from the longest way of the line's points."""
LET_PASS: Mm = 5.0
"""What the halves may differ by and still be made alike: it is told, and the maker decides."""
TRUE_TO: Mm = 0.05
"""How near the curve through the few points that are kept comes to the whole line."""
APART: Mm = 2.0
"""Points of a half lie no nearer to each other."""
FEWEST, MOST = 9, 40
"""Points of a half."""


@dataclass(frozen=True)
class FoundOutline:
    """Points of one half (mm, from the neck end, across), by which the outline is written, and how far the two halves
    differed at most; `unsure` is two standard deviations of a place.
    """

    points: tuple[tuple[Mm, Mm], ...]
    corners: tuple[int, ...]
    length: Mm
    widest: Mm
    asymmetry: Mm
    unsure: Mm


def outline_of(ring: Array, unsure: Mm, narrow_end_first: bool = True) -> FoundOutline:
    """The symmetric outline of a closed line (n, 2), in mm, however it lies. Raises MakersFault for a line that crosses
    itself, or whose halves are not alike.
    """
    laid = _along_x(ring)
    closed = np.vstack((laid, laid[:1]))
    trace = Trace(closed, np.zeros(len(laid), dtype=bool), (), "the line that was traced")
    reading = Reading(asymmetry=LET_PASS, narrow_end_first=narrow_end_first)
    found = traced_outline(Drawing((trace,), 1.0), reading)
    points, corners = _few(found.outline)
    widest = 2 * max(across for _, across in found.outline.points)
    return FoundOutline(points, corners, found.outline.length, widest, found.asymmetry, unsure)


def _along_x(ring: Array) -> Array:
    """The line turned so that its halves, on either side of the x axis, are as much alike as they can be."""
    middle = ring.mean(axis=0)
    about = ring - middle
    way = np.linalg.svd(about, full_matrices=False)[2][0]
    first = float(np.arctan2(way[1], way[0]))
    step = max(len(ring) // 250, 1)

    def unlike(angle: float) -> float:
        turned = _turned(about, -angle)
        turned = turned - (0, (turned[:, 1].max() + turned[:, 1].min()) / 2)
        mirrored = turned[::step] * (1, -1)
        return float((np.hypot(*(nearest_on_ring(turned, mirrored, by_tree=True) - mirrored).T) ** 2).sum())

    angles = first + np.linspace(-LEANS_MOST, LEANS_MOST, 15)
    near = float(angles[int(np.argmin([unlike(each) for each in angles]))])
    half = LEANS_MOST / 7
    best = minimize_scalar(unlike, bounds=(near - half, near + half), method="bounded", options={"xatol": 1e-6})
    return _turned(about, -float(best.x))


def _turned(points: Array, angle: float) -> Array:
    """Points turned about zero, anticlockwise."""
    cosine, sine = np.cos(angle), np.sin(angle)
    return np.asarray(points @ np.array([(cosine, sine), (-sine, cosine)]))


def _few(outline: Outline) -> tuple[tuple[tuple[Mm, Mm], ...], tuple[int, ...]]:
    """As few points of the half as bring a smooth curve as near to the whole as it should be, corners among them."""
    half = outline.half
    fine = half.place(half.sample(0.01, 1.0))
    length = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(fine, axis=0).T))))
    corners_at = [_length_at(fine, length, outline.points[row]) for row in outline.corners]
    stations = np.linspace(0, length[-1], FEWEST).tolist()
    stations = sorted([each for each in stations if all(abs(each - at) > APART for at in corners_at)] + corners_at)
    while True:
        points = [_place(fine, length, each) for each in stations]
        corners = tuple(row for row, each in enumerate(stations) if each in corners_at)
        off, worst = _worst(through_points(points, corners), fine, length)
        more = _between(stations, worst)
        if off <= TRUE_TO or len(stations) >= MOST or min(abs(each - more) for each in stations) < APART:
            return tuple((round(x, 2), round(y, 2)) for x, y in points), tuple(row + 1 for row in corners)
        stations = sorted([*stations, more])


def _between(stations: list[float], at: float) -> float:
    """The middle of the two stations between which a length lies."""
    row = int(np.clip(np.searchsorted(stations, at), 1, len(stations) - 1))
    return (stations[row - 1] + stations[row]) / 2


def _length_at(fine: Array, length: Array, point: tuple[Mm, Mm]) -> float:
    """How far along a point lies."""
    return float(length[int(np.hypot(*(fine - point).T).argmin())])


def _place(fine: Array, length: Array, at: float) -> tuple[Mm, Mm]:
    """The place so far along."""
    x, y = (float(np.interp(at, length, column)) for column in fine.T)
    return (x, max(y, 0.0))


def _worst(outline: Outline, fine: Array, length: Array) -> tuple[Mm, float]:
    """How far off the curve is where it is farthest, and how far along that is."""
    half = outline.half
    close = half.place(half.sample(0.005, 1.0))
    ring = np.vstack((close, close[-2:0:-1] * (1, -1)))
    off = np.hypot(*(nearest_on_ring(ring, fine, by_tree=True) - fine).T)
    row = int(off.argmax())
    return float(off[row]), float(length[row])
