"""Runs of straight pieces: where one crosses itself, one with its loops cut off, one with fewer points, and the nearest
place on one."""

import numpy as np
from numpy.typing import NDArray

from gramil.shapes.nearest import nearest_rows

Array = NDArray[np.float64]


def crossings(points: Array, closed: bool = False) -> tuple[tuple[int, int, float, float], ...]:
    """Pairs of pieces that cross, with the place: (piece, later piece, x, y), by the first piece and then the second.

    `points` has shape (n, 2); piece i runs from row i to the next. Neighbouring pieces are not compared.
    """
    run = np.vstack((points, points[:1])) if closed else points
    first, last = _near(run, closed)
    start, other = run[first], run[last]
    along, across = run[first + 1] - start, run[last + 1] - other
    scale = _cross(along, across)
    with np.errstate(divide="ignore", invalid="ignore"):
        here = _cross(other - start, across) / scale
        there = _cross(other - start, along) / scale
    meets = (here >= 0) & (here <= 1) & (there >= 0) & (there <= 1)
    places = start[meets] + here[meets, None] * along[meets]
    return tuple(
        (int(i), int(j), float(x), float(y)) for i, j, (x, y) in zip(first[meets], last[meets], places, strict=True)
    )


def without_loops(points: Array) -> Array:
    """An open run with what lies between a crossing and itself cut off, from the start on; shape (m, 2)."""
    while found := crossings(points):
        first = found[0][0]
        _, last, x, y = max((each for each in found if each[0] == first), key=lambda each: each[1])
        points = np.vstack((points[: first + 1], [[x, y]], points[last + 1 :]))
        points = points[np.concatenate(([True], np.hypot(*np.diff(points, axis=0).T) > 1e-9))]
    return points


def thinned(points: Array, tolerance: float) -> Array:
    """An open run of evenly fine points, shape (n, 2), by as few of them as leave none farther than `tolerance` away.

    Every second point is kept, or every third, and so on; both ends stay. A corner between the ends stays as it is, and
    keeps the run from being thinned.
    """
    last, kept = len(points) - 1, np.arange(len(points))
    for stride in range(2, last):
        rows = np.append(np.arange(0, last, stride), last)
        piece = np.minimum(np.arange(len(points)) // stride, len(rows) - 2)
        nearest = _nearest_on_pieces(points[rows[piece]], points[rows[piece + 1]], points)
        if np.hypot(*(nearest - points).T).max() > tolerance:
            break
        kept = rows
    return points[kept]


def nearest_on_ring(ring: Array, points: Array) -> Array:
    """The nearest place on a closed run, shape (n, 2), to each of `points`, shape (m, 2).

    Looked for on the pieces next to the nearest corner: the run's pieces are short against its bends.
    """
    rows = nearest_rows(points, ring)
    places = [_nearest_on_pieces(ring[rows], ring[(rows + step) % len(ring)], points) for step in (-1, 1)]
    away = [np.hypot(*(place - points).T) for place in places]
    return np.where((away[0] <= away[1])[:, None], *places)


def _nearest_on_pieces(start: Array, end: Array, points: Array) -> Array:
    along = end - start
    share = ((points - start) * along).sum(axis=1) / (along**2).sum(axis=1)
    return np.asarray(start + np.clip(share, 0, 1)[:, None] * along)


def _near(run: Array, closed: bool) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Pairs of pieces, not neighbours, whose boxes overlap: (earlier, later), in order.

    Sorted by least x, only those between a piece's own least and greatest x can overlap it.
    """
    low, high = np.minimum(run[1:], run[:-1]), np.maximum(run[1:], run[:-1])
    order = np.argsort(low[:, 0], kind="stable")
    reach = np.searchsorted(low[order, 0], high[order, 0], side="right")
    counts = reach - np.arange(len(order)) - 1
    one = np.repeat(np.arange(len(order)), counts)
    other = one + 1 + np.arange(len(one)) - np.repeat(np.cumsum(counts) - counts, counts)
    first, last = np.minimum(order[one], order[other]), np.maximum(order[one], order[other])
    kept = (low[first, 1] <= high[last, 1]) & (low[last, 1] <= high[first, 1]) & (last - first > 1)
    if closed:
        kept &= (first != 0) | (last != len(low) - 1)
    rank = np.lexsort((last[kept], first[kept]))
    return first[kept][rank], last[kept][rank]


def _cross(one: Array, other: Array) -> Array:
    return np.asarray(one[:, 0] * other[:, 1] - one[:, 1] * other[:, 0])
