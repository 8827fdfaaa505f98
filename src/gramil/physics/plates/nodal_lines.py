"""Pictures of a mode as lines and words: where the plate stays at rest, and where it moves most."""

from collections import defaultdict
from dataclasses import dataclass

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.edge import EACH
from gramil.physics.plates.mesh import Indices, Mesh
from gramil.physics.plates.rows import Z

_PARTS = ((0, 3, 5), (3, 1, 4), (5, 4, 2), (3, 4, 5))
"""A triangle of six nodes as four plain ones."""
_CORNERS = 3  # a corner may be held at rest so many nodes deep
LEAST_BELLY = 0.1
"""A belly that moves less than this share of the largest is not told."""


@dataclass(frozen=True)
class Belly:
    """A part of the plate that moves as one: where most, in mm, and how far as a signed share of the largest."""

    x: float
    y: float
    share: float


def rises(mesh: Mesh, movements: FloatArray) -> FloatArray:
    """The nodes' movements along z, (n,), from all movements (k,)."""
    return np.asarray(movements[Z : EACH * len(mesh.nodes) : EACH])


def nodal_lines(mesh: Mesh, rise: FloatArray) -> tuple[FloatArray, ...]:
    """Lines (k, 2) along which nodes' rises (n,) are nothing; one that closes on itself ends where it begins."""
    parts = _parts(mesh)
    signed = _off_rest(parts, rise)[parts]
    up = signed > 0
    mixed = np.flatnonzero(up.any(axis=1) & ~up.all(axis=1))
    ends: dict[tuple[int, int], FloatArray] = {}
    joins: dict[tuple[int, int], list[tuple[int, int]]] = defaultdict(list)
    for row in mixed.tolist():
        met = [
            _met(mesh, parts[row], signed[row], side)
            for side in ((0, 1), (1, 2), (2, 0))
            if up[row, side[0]] != up[row, side[1]]
        ]
        ends.update(met)
        (one, _), (other, _) = met
        joins[one].append(other)
        joins[other].append(one)
    return tuple(np.array([ends[key] for key in chain]) for chain in _chains(joins))


def _parts(mesh: Mesh) -> Indices:
    return np.concatenate([mesh.triangles[:, list(part)] for part in _PARTS])


def _off_rest(parts: Indices, rise: FloatArray) -> FloatArray:
    """Rises in which a node held at rest leans a little to its neighbours' side: else held edges would be lines."""
    leaning = np.where(np.abs(rise) < 1e-12 * np.abs(rise).max(), 0.0, rise)
    for _ in range(_CORNERS):
        sums = np.zeros_like(rise)
        np.add.at(sums, parts, leaning[parts].sum(axis=1, keepdims=True))
        leaning = np.where(leaning == 0.0, 1e-9 * sums, leaning)
    return leaning


def _met(mesh: Mesh, nodes: Indices, signed: FloatArray, side: tuple[int, int]) -> tuple[tuple[int, int], FloatArray]:
    """Where a line crosses a side, by the side's two nodes."""
    first, second = side
    share = signed[first] / (signed[first] - signed[second])
    one, other = int(nodes[first]), int(nodes[second])
    place = (1.0 - share) * mesh.nodes[one] + share * mesh.nodes[other]
    return (min(one, other), max(one, other)), place


def _chains(joins: dict[tuple[int, int], list[tuple[int, int]]]) -> list[list[tuple[int, int]]]:
    """Links joined end to end: open chains first, then those that close."""
    left = {key: list(others) for key, others in joins.items()}
    chains = []
    for start in [key for key, others in joins.items() if len(others) == 1] + list(joins):
        chain = [start]
        while left[chain[-1]]:
            following = left[chain[-1]].pop(0)
            left[following].remove(chain[-1])
            chain.append(following)
        if len(chain) > 1:
            chains.append(chain)
    return chains


def bellies(mesh: Mesh, rise: FloatArray) -> tuple[Belly, ...]:
    """The parts that move as one, largest first."""
    parts = _parts(mesh)
    up = rise > 0
    sides = np.concatenate([parts[:, [0, 1]], parts[:, [1, 2]], parts[:, [2, 0]]])
    sides = sides[up[sides[:, 0]] == up[sides[:, 1]]]
    count = len(rise)
    _, own = connected_components(coo_matrix((np.ones(len(sides)), (sides[:, 0], sides[:, 1])), shape=(count, count)))
    order = np.argsort(-np.abs(rise), kind="stable")
    _, firsts = np.unique(own[order], return_index=True)
    most = float(np.abs(rise).max())
    tops = order[np.sort(firsts)]
    return tuple(
        Belly(float(mesh.nodes[node, 0]), float(mesh.nodes[node, 1]), float(rise[node] / most))
        for node in tops.tolist()
        if abs(rise[node]) > LEAST_BELLY * most
    )
