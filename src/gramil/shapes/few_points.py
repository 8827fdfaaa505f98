"""A few points of a half, enough for a smooth curve through them to come as near to it as it should."""

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_points
from gramil.shapes.polyline import nearest_on_ring

Array = NDArray[np.float64]
TRUE_TO: Mm = 0.05
"""How near the curve through the few points that are kept comes to the whole line."""
APART: Mm = 2.0
"""Points of a half lie no nearer to each other."""
FEWEST, MOST = 9, 40
"""Points of a half."""


def few_points(outline: Outline) -> tuple[tuple[tuple[Mm, Mm], ...], tuple[int, ...]]:
    """Points of a half (mm), corners among them, and which of them, counted from 1, are corners."""
    half = outline.half
    fine = half.place(half.sample(0.01, 1.0))
    length = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(fine, axis=0).T))))
    corners_at = [_length_at(fine, length, outline.points[row]) for row in outline.corners]
    stations = np.linspace(0, length[-1], FEWEST).tolist()
    stations = sorted([each for each in stations if all(abs(each - at) > APART for at in corners_at)] + corners_at)
    while True:
        points = [_place(fine, length, each) for each in stations]
        corners = tuple(row for row, each in enumerate(stations) if each in corners_at)
        off, worst = _worst(through_points(points, corners), fine, length, stations)
        if off <= TRUE_TO or len(stations) >= MOST:
            return tuple((round(x, 2), round(y, 2)) for x, y in points), tuple(row + 1 for row in corners)
        stations = sorted([*stations, _between(stations, worst)])


def _between(stations: list[float], at: float) -> float:
    """The middle of the two stations between which a length lies."""
    row = int(np.clip(np.searchsorted(stations, at), 1, len(stations) - 1))
    return (stations[row - 1] + stations[row]) / 2


def _length_at(fine: Array, length: Array, point: tuple[Mm, Mm]) -> float:
    """How far along a point lies."""
    return float(length[int(np.hypot(*(fine - point).T).argmin())])


def _place(fine: Array, length: Array, at: float) -> tuple[Mm, Mm]:
    """The place at a distance along."""
    x, y = (float(np.interp(at, length, column)) for column in fine.T)
    return (x, max(y, 0.0))


def _worst(outline: Outline, fine: Array, length: Array, stations: list[float]) -> tuple[Mm, float]:
    """How far off the curve is at the farthest place where another point has room, and how far along that is."""
    half = outline.half
    close = half.place(half.sample(0.005, 1.0))
    ring = np.vstack((close, close[-2:0:-1] * (1, -1)))
    off = np.hypot(*(nearest_on_ring(ring, fine, by_tree=True) - fine).T)
    rows = np.clip(np.searchsorted(stations, length), 1, len(stations) - 1)
    off[np.diff(stations)[rows - 1] < 2 * APART] = 0.0
    row = int(off.argmax())
    return float(off[row]), float(length[row])
