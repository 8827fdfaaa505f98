"""Which of many points lies nearest, and whether any lies too near."""

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
_AT_ONCE = 500_000
"""Distances held at one time: 4 MB of them."""
_BY_TREE = 4_000_000
"""From how many distances a tree is quicker, though the library that has one takes a third of a second to load."""


def nearest_rows(points: Array, others: Array, *, by_tree: bool = False) -> NDArray[np.intp]:
    """For each point, shape (n, 2), the row of the nearest of `others`, shape (m, 2).

    `by_tree` is for those who have the tree's library loaded anyway: it is quicker, but for its loading.
    """
    if by_tree or len(points) * len(others) > _BY_TREE:
        from scipy.spatial import cKDTree  # only for a traced plan's many points

        return np.asarray(cKDTree(others).query(points)[1], dtype=np.intp)
    portion = max(1, _AT_ONCE // len(others))
    x, y = others.T  # each way for itself: numpy's sum along a short axis takes many times as long
    found = [
        ((some[:, :1] - x) ** 2 + (some[:, 1:] - y) ** 2).argmin(axis=1)
        for some in (points[row : row + portion] for row in range(0, len(points), portion))
    ]
    return np.concatenate(found)


def any_within(distance: float, points: Array, others: Array) -> bool:
    """Whether any of `points` (n, 2) lies nearer than `distance` to any of `others` (m, 2), all in one unit.

    Sorted by x, only those within the distance along x need be measured.
    """
    if distance <= 0:
        return False
    ranked = others[np.argsort(others[:, 0])]
    first = np.searchsorted(ranked[:, 0], points[:, 0] - distance)
    counts = np.searchsorted(ranked[:, 0], points[:, 0] + distance) - first
    ends = np.cumsum(counts)
    portions = np.searchsorted(ends, np.arange(_AT_ONCE, ends[-1], _AT_ONCE)) if len(ends) else ends
    return any(
        _any_pair_within(distance, points[rows], first[rows], counts[rows], ranked)
        for rows in np.split(np.arange(len(points)), portions)
    )


def _any_pair_within(
    distance: float, points: Array, first: NDArray[np.intp], counts: NDArray[np.intp], ranked: Array
) -> bool:
    rows = np.repeat(np.arange(len(points)), counts)
    others = np.arange(len(rows)) - np.repeat(np.cumsum(counts) - counts, counts) + first[rows]
    away = points[rows] - ranked[others]
    return bool((np.hypot(*away.T) < distance).any())
