"""Runs of straight pieces: where one crosses itself, one with its loops cut off or a stretch taken out, one with fewer
points, and the nearest place on one."""

from collections.abc import Iterator, Sequence
from itertools import groupby

import numpy as np
from numpy.typing import NDArray

from gramil.faults import MakersFault
from gramil.shapes.nearest import nearest_rows

Array = NDArray[np.float64]
Rows = NDArray[np.intp]
PORTION = 200_000
"""Pairs of pieces compared at a time."""
MOST_PAIRS = 10_000_000
"""Pairs compared at the most: a second or two of work, where an outline of 20,000 points has 60,000."""


def crossings(
    points: Array, closed: bool = False, most: int | None = None
) -> tuple[tuple[int, int, float, float], ...]:
    """Pairs of pieces that cross, with the place: (piece, later piece, x, y), by the first piece and then the second.

    `points` has shape (n, 2); piece i runs from row i to the next. Neighbouring pieces are not compared. Where `most`
    are found, no more are looked for. Raises MakersFault for a run too tangled to be searched.
    """
    run = np.vstack((points, points[:1])) if closed else points
    found: list[tuple[int, int, float, float]] = []
    for first, last in _near(run, closed):
        found += _met(run, first, last)
        if most is not None and len(found) >= most:
            break
    return tuple(sorted(found)[:most])


def _met(run: Array, first: Rows, last: Rows) -> list[tuple[int, int, float, float]]:
    """Which of these pairs of pieces cross, and where."""
    start, other = run[first], run[last]
    along, across = run[first + 1] - start, run[last + 1] - other
    scale = _cross(along, across)
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        here = _cross(other - start, across) / scale
        there = _cross(other - start, along) / scale
    meets = (here >= 0) & (here <= 1) & (there >= 0) & (there <= 1)
    places = start[meets] + here[meets, None] * along[meets]
    return list(zip(first[meets].tolist(), last[meets].tolist(), *places.T.tolist(), strict=True))


def without_loops(points: Array) -> Array:
    """An open run with what lies between a crossing and itself cut off, from the start on; shape (m, 2).

    Several loops are cut off in one pass, as long as none begins on the piece where the one before ends.
    """
    while found := crossings(points):
        points = _cut(points, _loops(found))
        points = points[np.concatenate(([True], np.hypot(*np.diff(points, axis=0).T) > 1e-9))]
    return points


def _loops(found: Sequence[tuple[int, int, float, float]]) -> list[tuple[int, int, float, float]]:
    """The widest loop from each first piece on, one after the other, that can be cut off at once."""
    loops: list[tuple[int, int, float, float]] = []
    for first, of_first in groupby(found, key=lambda each: each[0]):
        if loops and first == loops[-1][1]:
            break
        if not loops or first > loops[-1][1]:
            loops.append(max(of_first, key=lambda each: each[1]))
    return loops


def _cut(points: Array, loops: Sequence[tuple[int, int, float, float]]) -> Array:
    kept, begin = [], 0
    for first, last, x, y in loops:
        kept += [points[begin : first + 1], np.array([[x, y]])]
        begin = last + 1
    return np.vstack((*kept, points[begin:]))


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


def cut_between(points: Array, first: Array, last: Array) -> tuple[Array, Array]:
    """An open run, shape (n, 2), up to where it comes nearest to one place, and from where nearest to another further
    on, shape (2,) each.
    """
    (before, row), (after, later) = (_nearest_piece(points, place) for place in (first, last))
    return np.vstack((points[: row + 1], before)), np.vstack((after, points[later + 1 :]))


def _nearest_piece(points: Array, place: Array) -> tuple[Array, int]:
    """The nearest place of an open run, and on which of its pieces that is."""
    nearest = _nearest_on_pieces(points[:-1], points[1:], place)
    row = int(np.hypot(*(nearest - place).T).argmin())
    return nearest[row], row


def nearest_on_ring(ring: Array, points: Array, *, by_tree: bool = False) -> Array:
    """The nearest place on a closed run, shape (n, 2), to each of `points`, shape (m, 2).

    Looked for on the pieces next to the nearest corner: the run's pieces are short against its bends. `by_tree` is as
    for `nearest_rows`.
    """
    rows = nearest_rows(points, ring, by_tree=by_tree)
    places = [_nearest_on_pieces(ring[rows], ring[(rows + step) % len(ring)], points) for step in (-1, 1)]
    away = [np.hypot(*(place - points).T) for place in places]
    return np.where((away[0] <= away[1])[:, None], *places)


def _nearest_on_pieces(start: Array, end: Array, points: Array) -> Array:
    along = end - start
    share = ((points - start) * along).sum(axis=1) / (along**2).sum(axis=1)
    return np.asarray(start + np.clip(share, 0, 1)[:, None] * along)


def _near(run: Array, closed: bool) -> Iterator[tuple[Rows, Rows]]:
    """Pairs of pieces, not neighbours, whose boxes overlap, (earlier, later), in portions.

    Sorted by their least x or y, whichever tells more of them apart, only those between a piece's own least and
    greatest can overlap it: along it they do, and the other way is looked at.
    """
    low, high = np.minimum(run[1:], run[:-1]), np.maximum(run[1:], run[:-1])
    reached = [_reached(low[:, axis], high[:, axis]) for axis in (0, 1)]
    across = int(reached[0][1].sum() <= reached[1][1].sum())
    order, counts = reached[1 - across]
    low, high = low[:, across], high[:, across]
    for begin, end in _portions(counts):
        if counts[:end].sum() > MOST_PAIRS:
            raise MakersFault.of(
                "the outline runs to and fro so often that its crossings cannot be looked for",
                remedy="Draw it with fewer points",
            )
        one = np.repeat(np.arange(begin, end), counts[begin:end])
        other = one + 1 + _counted(counts[begin:end])
        first, last = np.minimum(order[one], order[other]), np.maximum(order[one], order[other])
        kept = (low[first] <= high[last]) & (low[last] <= high[first]) & (last - first > 1)
        if closed:
            kept &= (first != 0) | (last != len(low) - 1)
        yield first[kept], last[kept]


def _counted(counts: Rows) -> Rows:
    """0, 1, 2, ... up to each count in turn."""
    return np.asarray(np.arange(counts.sum()) - np.repeat(np.cumsum(counts) - counts, counts))


def _reached(low: Array, high: Array) -> tuple[Rows, Rows]:
    """Pieces by their least coordinate, and how many of those that follow begin before each ends."""
    order = np.argsort(low, kind="stable")
    reach = np.searchsorted(low[order], high[order], side="right")
    return order, np.asarray(reach - np.arange(len(order)) - 1)


def _portions(counts: Rows) -> Iterator[tuple[int, int]]:
    """Runs of rows whose counts come to PORTION or little more."""
    total = np.cumsum(counts)
    begin = 0
    while begin < len(counts):
        before = int(total[begin - 1]) if begin else 0
        end = max(begin + 1, int(np.searchsorted(total, before + PORTION, side="right")))
        yield begin, end
        begin = end


def _cross(one: Array, other: Array) -> Array:
    return np.asarray(one[:, 0] * other[:, 1] - one[:, 1] * other[:, 0])
