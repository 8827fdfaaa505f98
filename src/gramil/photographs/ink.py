"""A drawn line followed through a picture from a few points that were laid near it.

Profiles across a smooth curve through the points are sampled in the original picture, never in a copy that was
warped. One way through all of them at once, dark throughout and without jumps, is taken (dynamic programming); at each
station the middle of the ink, or the place of the steepest edge, is then found within it. Where there is no ink, or
where another line runs beside the chosen one, that is said: nothing is taken silently.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray
from scipy import ndimage
from scipy.interpolate import BSpline, CubicSpline, splprep

from gramil.quantities import Mm

Array = NDArray[np.float64]
Light = Callable[[Array], Array]
"""The picture's light at places (n, 2) of the plane, in mm."""
What = Literal["line", "edge"]
STATION: Mm = 4.0
"""From one profile to the next."""
CELL: Mm = 0.2
STEP = 4
"""By how many cells the way may move from one profile to the next."""
REACH: Mm = 6.0
"""How far to either side of the points' curve the line is sought."""
CLOSE: Mm = 5.0
"""How far once a first way along the ink is known: lines beside it are still seen."""
CLOSEST = 0.4
"""Points nearer than this share of the usual distance from one to the next are one point."""
NEAR: Mm = 1.2
"""How far to either side of the way its middle is reckoned."""
WIDEST: Mm = 2.5
"""Ink wider than this is not a line but a filled shape or a shadow."""
GAP: Mm = 15.0
"""A stretch without ink longer than this is pointed out."""
BESIDE = 5
"""At how many profiles one after another a second line must run beside the first to be told."""
FAINTEST = 0.06
"""Share of the paper's light that ink takes at least."""
LEANING = 0.8
"""What lying at the end of its reach costs the way, as a share of the usual ink: of two lines alike it takes that which
lies nearer to the points.
"""


@dataclass(frozen=True)
class Stretch:
    """Part of the line: where it begins and ends along it (mm), and the place of its middle (x, y)."""

    start: Mm
    end: Mm
    middle: tuple[Mm, Mm]


@dataclass(frozen=True)
class Beside:
    """Another line beside the one that was taken: where, and how far off (mm, positive to the left of the way)."""

    stretch: Stretch
    off: Mm


@dataclass(frozen=True)
class Followed:
    """The line: its points (n, 2) in mm, how far the ink's middle scatters about it, where there is no ink, and lines
    beside it.
    """

    points: Array
    scatter: Mm
    gaps: tuple[Stretch, ...]
    beside: tuple[Beside, ...]


def followed(light: Light, points: Array, *, closed: bool = True, what: What = "line") -> Followed:
    """The line near points (n, 2), mm, in the order in which it runs; the middle of its ink, or an edge's place.

    Raises ValueError with fewer than four points of a closed line, or two of an open one.
    """
    if len(points) < (4 if closed else 2):
        raise ValueError("four points make a closed line, two an open one")
    near = _pass(light, _apart(points, closed), REACH, closed, what)
    # From a curve that runs along the ink itself profiles stand square to it, where the points' own wavers.
    return _pass(light, near.points, CLOSE, closed, what) if np.isfinite(near.scatter) else near


def _apart(points: Array, closed: bool) -> Array:
    """The points, with any that lie much closer together than the rest merged: a curve between them would loop."""
    ring = np.vstack((points, points[:1])) if closed else points
    usual = float(np.median(np.hypot(*np.diff(ring, axis=0).T)))
    groups: list[list[Array]] = [[points[0]]]
    for point in points[1:]:
        if np.hypot(*(point - groups[-1][-1])) < CLOSEST * usual:
            groups[-1].append(point)
        else:
            groups.append([point])
    if closed and len(groups) > 4 and np.hypot(*(groups[-1][-1] - points[0])) < CLOSEST * usual:
        groups[0] += groups.pop()
    return np.array([np.mean(group, axis=0) for group in groups])


def _pass(light: Light, points: Array, reach: Mm, closed: bool, what: What) -> Followed:
    """The line within reach of a smooth curve through points."""
    base, normal, along = _stations(points, closed)
    offsets = np.arange(-reach, reach + CELL / 2, CELL)
    places = base[:, None] + offsets[None, :, None] * normal[:, None]
    signal = _signal(light(places.reshape(-1, 2)).reshape(places.shape[:2]), what)
    way = _way(signal, offsets, closed)
    middle, sure = _refined(signal, way, offsets)
    if sure.sum() < max(4, len(base) // 5):
        return Followed(base, float("nan"), (_stretch(along, base, 0, len(base) - 1),), ())
    smooth, scatter = _smoothed(base + middle[:, None] * normal, sure, closed)
    gaps = tuple(
        _stretch(along, base, first, last) for first, last in _runs(~sure) if along[last] - along[first] + STATION > GAP
    )
    return Followed(smooth, scatter, gaps, _others(signal, way, offsets, along, base))


def _stations(points: Array, closed: bool) -> tuple[Array, Array, Array]:
    """Places along a smooth curve through points, directions to its left, and lengths along it, evenly apart."""
    ring = np.vstack((points, points[:1])) if closed else points
    at = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(ring, axis=0).T))))
    if len(ring) == 2:
        fine = np.linspace(0, 1, 200)[:, None] * (ring[1] - ring[0]) + ring[0]
    else:
        curve = CubicSpline(at, ring, bc_type="periodic" if closed else "natural")
        fine = curve(np.linspace(0, at[-1], max(3 * len(ring), 600)))
    length = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(fine, axis=0).T))))
    count = max(round(length[-1] / STATION), 8)
    along = np.linspace(0, length[-1], count, endpoint=not closed)
    base = np.column_stack([np.interp(along, length, column) for column in fine.T])
    ahead = np.column_stack([np.interp(along + 1.0, length, column, period=None) for column in fine.T])
    behind = np.column_stack([np.interp(along - 1.0, length, column, period=None) for column in fine.T])
    run = ahead - behind
    run /= np.maximum(np.hypot(*run.T), 1e-9)[:, None]
    return base, np.column_stack((-run[:, 1], run[:, 0])), along


def _signal(light: Array, what: What) -> Array:
    """How much each cell is ink, as a share of the paper's light; or how steeply light changes there."""
    paper = np.percentile(light, 70, axis=1)[:, None]
    if what == "edge":
        return np.abs(np.gradient(ndimage.gaussian_filter1d(light, 1.0, axis=1), axis=1)) / np.maximum(paper, 1.0)
    return np.clip((paper - light) / np.maximum(paper, 1.0), 0, None)


def _way(signal: Array, offsets: Array, closed: bool) -> NDArray[np.intp]:
    """The cell of each profile on the darkest way; a closed one is gone round three times, so that it closes."""
    laps = np.concatenate((signal, signal, signal)) if closed else signal
    blurred = ndimage.gaussian_filter1d(laps, 1.0, axis=1)
    scale = max(float(np.percentile(blurred.max(axis=1), 50)), FAINTEST)
    gain = np.minimum(blurred / scale, 1.2) - LEANING * (offsets / REACH) ** 2
    moved = np.zeros(laps.shape, dtype=np.intp)
    moves = np.arange(-STEP, STEP + 1)
    width = laps.shape[1]
    padded = np.full(width + 2 * STEP, -np.inf)
    best, choices = padded[STEP:-STEP], sliding_window_view(padded, width)
    best[:] = gain[0]
    for row in range(1, len(laps)):
        weighed = choices - 0.02 * moves[:, None] ** 2
        moved[row] = moves[weighed.argmax(axis=0)]
        best[:] = weighed.max(axis=0) + gain[row]
    came = np.clip(np.arange(width) + moved, 0, width - 1)
    way = np.empty(len(laps), dtype=np.intp)
    way[-1] = int(best.argmax())
    for row in range(len(laps) - 1, 0, -1):
        way[row - 1] = came[row, way[row]]
    return way[len(signal) : 2 * len(signal)] if closed else way


def _refined(signal: Array, way: NDArray[np.intp], offsets: Array) -> tuple[Array, NDArray[np.bool_]]:
    """The middle of the ink at each profile, and whether there is ink that is no wider than a line."""
    near = np.abs(offsets[None, :] - offsets[way][:, None]) <= NEAR
    ink = np.where(near, signal, 0.0)
    most = ink.max(axis=1)
    ink = np.where(ink > 0.25 * most[:, None], ink, 0.0)
    total = ink.sum(axis=1)
    middle = (ink * offsets).sum(axis=1) / np.where(total > 0, total, 1)
    wide = (signal > 0.5 * most[:, None]).sum(axis=1) * CELL
    usual = float(np.median(most))
    edge = np.abs(offsets[way]) >= offsets[-1] - CELL / 2
    return middle, (most > max(0.35 * usual, FAINTEST / 2)) & (wide < 2 * WIDEST) & ~edge


def _smoothed(points: Array, sure: NDArray[np.bool_], closed: bool) -> tuple[Array, Mm]:
    """A smooth line through the sure points, evenly apart, and how far these scatter about it."""
    kept = points[sure]
    if closed:
        kept = np.vstack((kept, kept[:1]))
    second = np.diff(kept, 2, axis=0)
    scatter = float(np.clip(np.median(np.hypot(*(second - ndimage.median_filter(second, (7, 1))).T)) / 2.4, 0.005, 0.3))
    order = min(3, len(kept) - 1)
    found: Any = splprep(kept.T, s=len(kept) * 2 * scatter**2, per=closed, k=order)  # its stubs know no plane curve
    (knots, weights, degree), at = found
    curve = BSpline(knots, np.stack(weights, axis=-1), degree)
    off = np.hypot(*(curve(at) - kept).T)
    fine = curve(np.linspace(0, 1, max(4 * len(points), 50)))
    return fine[:-1] if closed else fine, float(np.sqrt((off**2).mean()))


def _runs(flags: NDArray[np.bool_]) -> list[tuple[int, int]]:
    """First and last index of each run of True."""
    edges = np.flatnonzero(np.diff(np.concatenate(([False], flags, [False])).astype(int)))
    return [(int(first), int(last) - 1) for first, last in edges.reshape(-1, 2)]


def _stretch(along: Array, base: Array, first: int, last: int) -> Stretch:
    """The stretch between two profiles."""
    x, y = base[(first + last) // 2].tolist()
    return Stretch(float(along[first]), float(along[last]), (x, y))


def _others(signal: Array, way: NDArray[np.intp], offsets: Array, along: Array, base: Array) -> tuple[Beside, ...]:
    """Lines that run beside the way within reach at several profiles one after another."""
    blurred = ndimage.gaussian_filter1d(signal, 1.0, axis=1)
    chosen = np.take_along_axis(blurred, way[:, None], axis=1)
    peak = (blurred == ndimage.maximum_filter1d(blurred, 5, axis=1)) & (blurred > 0.5 * np.median(chosen))
    far = np.abs(np.arange(len(offsets))[None, :] - way[:, None]) * CELL
    peak &= far > NEAR * 0.75
    off = np.where(peak, offsets[None, :] - offsets[way][:, None], np.nan)
    found = []
    for side in (1, -1):
        beside = np.where(side * off > 0, off, np.nan)
        nearest = np.where(np.isfinite(beside), np.abs(beside), np.inf).min(axis=1)
        for first, last in _runs(np.isfinite(nearest)):
            run = nearest[first : last + 1]
            if len(run) >= BESIDE and np.ptp(run) < 0.35 * CELL * STEP * len(run):
                found.append(Beside(_stretch(along, base, first, last), side * float(np.median(run))))
    return tuple(found)
