"""A plate's region cut into triangles of six nodes: what it consists of, and which triangle a place lies in."""

from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.triangle import (
    SIDES,
    SIX,
    SIX_WEIGHTS,
    THREE,
    THREE_WEIGHTS,
    bent,
    measured,
    shares_at,
    values,
)

Indices = NDArray[np.int64]
_FLAT = 1e-9


@dataclass(frozen=True, eq=False)
class Places:
    """Places in every triangle, (m, g, 2): what nodes count for there, (g, 6), how that changes along x and y,
    (m, g, 6, 2), and the area that each stands for, (m, g)."""

    counts: FloatArray
    ways: FloatArray
    areas: FloatArray
    points: FloatArray


@dataclass(frozen=True, eq=False)
class Mesh:
    """Nodes (n, 2) in mm; triangles (m, 6) of their indices, anticlockwise; the triangulation they are chosen from.

    Sides along a curved edge are curved: their middle node lies on it. `chosen` says for each triangle of
    `triangulation` which of ours it is, or -1. `rings` are the region's own rings, outline first, anticlockwise.
    """

    nodes: FloatArray
    triangles: Indices
    triangulation: Any
    chosen: Indices
    rings: tuple[FloatArray, ...]

    @cached_property
    def three(self) -> Places:
        """Three places a triangle, for strains."""
        return self._places(THREE, THREE_WEIGHTS)

    @cached_property
    def six(self) -> Places:
        """Six places a triangle, for masses."""
        return self._places(SIX, SIX_WEIGHTS)

    def _places(self, shares: FloatArray, weights: FloatArray) -> Places:
        own = self.nodes[self.triangles]
        ways, areas = measured(own[:, None], shares)
        return Places(values(shares), ways, areas * weights, values(shares) @ own)

    @cached_property
    def middles(self) -> FloatArray:
        """The middle of each triangle's corners, (m, 2)."""
        return np.asarray(self.nodes[self.triangles[:, :3]].mean(axis=1))

    @cached_property
    def rim(self) -> Indices:
        """Sides that belong to one triangle only, (k, 3): corner, corner, middle; the plate on their left."""
        return rim_of(self.triangles)

    @cached_property
    def curved(self) -> NDArray[np.bool_]:
        """Which triangles have a side that is not straight."""
        own = self.nodes[self.triangles]
        return np.asarray(np.abs(own[:, 3:] - 0.5 * (own[:, :3] + own[:, [1, 2, 0]])).max(axis=(1, 2)) > _FLAT)

    def place(self, points: FloatArray) -> tuple[Indices, FloatArray]:
        """Which triangle each point (p, 2) lies in, -1 off the plate, and its shares (p, 3) of the corners."""
        found = self.triangulation.find_simplex(points, tol=1e-9)
        which = np.where(found < 0, -1, self.chosen[found])
        own = self.nodes[self.triangles[which]]
        shares = np.empty((len(points), 3))
        bent = self.curved[which]
        shares[~bent] = shares_at(own[~bent], points[~bent], steps=1)
        shares[bent] = shares_at(own[bent], points[bent])
        return which, shares

    def weights(self, which: Indices, shares: FloatArray) -> tuple[FloatArray, FloatArray]:
        """What the six nodes count for at places in triangles, (p, 6), and how that changes, (p, 6, 2)."""
        return values(shares), measured(self.nodes[self.triangles[which]], shares)[0]

    def second_ways(self, which: Indices, shares: FloatArray) -> FloatArray:
        """How the ways of `weights` change along x and y, (p, 6, 2, 2); as if the triangles' sides were straight."""
        return bent(self.nodes[self.triangles[which]], shares)


def rim_of(triangles: Indices) -> Indices:
    """Sides (k, 3) of triangles (m, 6) that belong to one only."""
    sides = np.concatenate([triangles[:, list(side)] for side in SIDES])
    order = np.argsort(sides[:, 2], kind="stable")
    _, starts, counts = np.unique(sides[order, 2], return_index=True, return_counts=True)
    return np.asarray(sides[order[starts[counts == 1]]])
