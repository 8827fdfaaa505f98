"""The triangle of six nodes: three corners, then the middles of its sides, sides straight.

Places in it are shares (l0, l1, l2) of its corners, summing to 1. Side k runs from corner k to the next.
"""

import numpy as np

from gramil.physics.arrays import FloatArray

SIDES = ((0, 1, 3), (1, 2, 4), (2, 0, 5))
"""Each side's first corner, second corner and middle."""
THREE = np.array([[2 / 3, 1 / 6, 1 / 6], [1 / 6, 2 / 3, 1 / 6], [1 / 6, 1 / 6, 2 / 3]])
"""Points that integrate squares exactly."""
THREE_WEIGHTS = np.full(3, 1.0 / 3.0)
"""The share of the area that each of `THREE` counts for."""
_A, _B = 0.445948490915965, 0.091576213509771
SIX = np.array(
    [
        [1 - 2 * _A, _A, _A], [_A, 1 - 2 * _A, _A], [_A, _A, 1 - 2 * _A],
        [1 - 2 * _B, _B, _B], [_B, 1 - 2 * _B, _B], [_B, _B, 1 - 2 * _B],
    ]
)  # fmt: skip
"""Points that integrate fourth powers exactly (D. A. Dunavant, Int. J. Numer. Meth. Eng. 21, 1985; from memory)."""
SIX_WEIGHTS = np.repeat([0.223381589678011, 0.109951743655322], 3)
"""The share of the area that each of `SIX` counts for."""


def values(shares: FloatArray) -> FloatArray:
    """What each node counts for at places in the triangle: (..., 3) shares give (..., 6)."""
    after = shares[..., [1, 2, 0]]
    return np.concatenate([shares * (2.0 * shares - 1.0), 4.0 * shares * after], axis=-1)


def slopes(shares: FloatArray) -> FloatArray:
    """How `values` change with the three shares: (..., 3) shares give (..., 6, 3)."""
    found = np.zeros((*shares.shape[:-1], 6, 3))
    for corner in range(3):
        after = (corner + 1) % 3
        found[..., corner, corner] = 4.0 * shares[..., corner] - 1.0
        found[..., 3 + corner, corner] = 4.0 * shares[..., after]
        found[..., 3 + corner, after] = 4.0 * shares[..., corner]
    return found


def measured(nodes: FloatArray, shares: FloatArray) -> tuple[FloatArray, FloatArray]:
    """How each node's count changes along x and y, (..., 6, 2), and the area (...) that stands for the whole triangle.

    `nodes` are the six nodes' places (..., 6, 2), whose middles may lie off the straight sides; areas are positive
    where the corners run anticlockwise.
    """
    change, inverse, twice = _turned(nodes, shares)
    return change @ inverse, 0.5 * twice


def bent(nodes: FloatArray, shares: FloatArray) -> FloatArray:
    """How the counts' changes along x and y change in turn, (..., 6, 2, 2), sides taken as straight."""
    _, first, _ = _turned(nodes, shares)
    way = np.concatenate([first, -first.sum(axis=-2, keepdims=True)], axis=-2)
    found = np.empty((*shares.shape[:-1], 6, 2, 2))
    for corner in range(3):
        one, after = way[..., corner, :], way[..., (corner + 1) % 3, :]
        found[..., corner, :, :] = 4.0 * one[..., :, None] * one[..., None, :]
        both = one[..., :, None] * after[..., None, :]
        found[..., 3 + corner, :, :] = 4.0 * (both + np.swapaxes(both, -1, -2))
    return found


def shares_at(nodes: FloatArray, points: FloatArray, steps: int = 4) -> FloatArray:
    """The shares (p, 3) of triangles of six nodes (p, 6, 2), sides straight or curved, at points (p, 2): Newton's."""
    shares = np.full((len(points), 3), 1.0 / 3.0)
    for _ in range(steps):
        gap = points - (values(shares)[..., None] * nodes).sum(axis=1)
        first = (_turned(nodes, shares)[1] @ gap[..., None])[..., 0]
        shares = shares + np.concatenate([first, -first.sum(axis=1, keepdims=True)], axis=1)
    return shares


def _turned(nodes: FloatArray, shares: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """How counts change with the first two shares, (..., 6, 2), and those with x and y, (..., 2, 2); twice the area."""
    every = slopes(shares)
    change = every[..., :2] - every[..., 2:]
    turn = np.swapaxes(nodes, -1, -2) @ change
    a, b, c, d = turn[..., 0, 0], turn[..., 0, 1], turn[..., 1, 0], turn[..., 1, 1]
    twice = a * d - b * c
    inverse = np.stack([d, -b, -c, a], axis=-1).reshape(turn.shape) / twice[..., None, None]
    return change, inverse, twice
