"""Where a run of straight pieces crosses itself, and the run with its loops cut off."""

import numpy as np
from numpy.typing import NDArray

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


def _near(run: Array, closed: bool) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Pairs of pieces, not neighbours, whose boxes overlap."""
    low, high = np.minimum(run[1:], run[:-1]), np.maximum(run[1:], run[:-1])
    boxes = (low[:, None] <= high[None]).all(axis=-1) & (high[:, None] >= low[None]).all(axis=-1)
    first, last = np.nonzero(np.triu(boxes, 2))
    if closed:
        apart = (first != 0) | (last != len(low) - 1)
        first, last = first[apart], last[apart]
    return first, last


def _cross(one: Array, other: Array) -> Array:
    return np.asarray(one[:, 0] * other[:, 1] - one[:, 1] * other[:, 0])
