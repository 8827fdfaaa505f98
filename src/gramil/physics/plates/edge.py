"""What a plate's edge rests on: clamped, supported, springs, or nothing; round a whole ring or along a stretch of it.

A movement that is held is taken out of the equations; a spring is added to them. Corners where two straight edges meet
are held by both.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.sparse import csr_matrix, identity

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.lines import measured_to_ring
from gramil.physics.plates.mesh import Indices, Mesh
from gramil.physics.plates.squares import Squares

EACH = 5
"""Movements of a node: along x, along y, along z, and how the normal leans along x and along y."""


@dataclass(frozen=True)
class Edge:
    """Stiffness for each mm of edge against its movements: 0 is free, infinite is held, anything between a spring.

    `deflection` up and down and both in the plane (`outward`, `along`) in N/mm for each mm; `turning` about the edge's
    line and `twisting` along it in N mm a radian for each mm.
    """

    deflection: float = 0.0
    turning: float = 0.0
    twisting: float = 0.0
    outward: float = 0.0
    along: float = 0.0


CLAMPED = Edge(*5 * [math.inf])
SUPPORTED = Edge(deflection=math.inf, outward=math.inf, along=math.inf)
HINGED = Edge(deflection=math.inf, twisting=math.inf, outward=math.inf, along=math.inf)
"""As SUPPORTED, and the edge's own line does not lean along itself: what textbooks call simply supported."""
FREE = Edge()


@dataclass(frozen=True)
class Hold:
    """An edge condition along ring `ring` (0 the outline, then the holes), from `start` to `stop` mm along it.

    Counted anticlockwise from the ring's first corner, or its first point where it has none.
    """

    edge: Edge
    ring: int = 0
    start: float = 0.0
    stop: float = math.inf


@dataclass(frozen=True, eq=False)
class HeldEdge:
    """What the holds come to: `turned` (n, n) makes movements of the nodes from movements free or held, of which the
    free ones are `free`; and the springs. `turns` is whether it changes anything."""

    turned: csr_matrix
    free: Indices
    springs: Squares
    turns: bool


def held(mesh: Mesh, holds: Sequence[Hold]) -> HeldEdge:
    """Apply the holds to a mesh's edge."""
    ways, springs = _empty_ways(), [Squares.none(EACH * len(mesh.nodes))]
    for hold in holds:
        sides = _sides(mesh, hold)
        outward = _outward(mesh, sides)
        along = np.stack([-outward[:, 1], outward[:, 0]], axis=1)
        for (first, way), stiffness in _movements(hold.edge, outward, along):
            if math.isinf(stiffness):
                _note(ways, sides, first, way)
            elif stiffness > 0:
                springs.append(_spring(mesh, sides, first, way, stiffness))
    turn, free = _turn(mesh, ways)
    return HeldEdge(csr_matrix(turn + identity(turn.shape[0])), free, Squares.joined(springs), turn.nnz > 0)


Ways = dict[int, dict[int, list[FloatArray]]]
"""For the first of a pair of movements (or of one alone): node by node, the directions that are held."""


def _empty_ways() -> Ways:
    return {0: {}, 2: {}, 3: {}}


def _movements(edge: Edge, outward: FloatArray, along: FloatArray) -> list[tuple[tuple[int, FloatArray], float]]:
    """(first movement, its direction side by side) and stiffness."""
    up = np.ones((len(outward), 1))
    return [
        ((0, outward), edge.outward),
        ((0, along), edge.along),
        ((2, up), edge.deflection),
        ((3, outward), edge.turning),
        ((3, along), edge.twisting),
    ]


def _note(ways: Ways, sides: Indices, first: int, way: FloatArray) -> None:
    for nodes, direction in zip(sides, way, strict=True):
        for node in nodes.tolist():
            ways[first].setdefault(node, []).append(direction)


def _sides(mesh: Mesh, hold: Hold) -> Indices:
    """The rim's sides that a hold covers, by the middle of each."""
    middles = mesh.nodes[mesh.rim[:, 2]]
    away, along, _ = zip(*(measured_to_ring(ring, middles) for ring in mesh.rings), strict=True)
    own = np.argmin(away, axis=0) == hold.ring
    place = along[hold.ring]
    return mesh.rim[own & (place >= hold.start) & (place < hold.stop)]


def _outward(mesh: Mesh, sides: Indices) -> FloatArray:
    way = mesh.nodes[sides[:, 1]] - mesh.nodes[sides[:, 0]]
    return np.stack([way[:, 1], -way[:, 0]], axis=1) / np.linalg.norm(way, axis=1, keepdims=True)


_PLACES, _WEIGHTS = np.polynomial.legendre.leggauss(3)


def _spring(mesh: Mesh, sides: Indices, first: int, way: FloatArray, stiffness: float) -> Squares:
    """The energy of a spring along sides, by three points on each."""
    share = 0.5 * (1.0 + _PLACES)
    counts = np.stack([(1 - share) * (1 - 2 * share), share * (2 * share - 1), 4 * share * (1 - share)], axis=1)
    length = np.linalg.norm(mesh.nodes[sides[:, 1]] - mesh.nodes[sides[:, 0]], axis=1)
    figures = counts[None, :, :, None] * way[:, None, None, :]
    columns = (EACH * sides + first)[:, None, :, None] + np.arange(way.shape[1])
    columns = np.broadcast_to(columns, figures.shape)
    weights = stiffness * 0.5 * _WEIGHTS * length[:, None]
    per_row = figures.shape[2] * figures.shape[3]
    starts = np.arange(0, figures.size + 1, per_row)
    rows = csr_matrix((figures.ravel(), columns.ravel(), starts), shape=(weights.size, EACH * len(mesh.nodes)))
    return Squares(rows, weights.ravel())


_STRAIGHT = math.cos(math.radians(20.0))


def _turn(mesh: Mesh, ways: Ways) -> tuple[csr_matrix, Indices]:
    """What turns pairs of movements where only one direction is held, beyond leaving them; and those left free."""
    size = EACH * len(mesh.nodes)
    shut = np.zeros(size, dtype=bool)
    shut[[EACH * node + 2 for node in ways[2]]] = True
    rows, columns, figures = [], [], []
    for first in (0, 3):
        for node, directions in ways[first].items():
            place = EACH * node + first
            shut[place] = True
            single = _single(directions)
            if single is None:
                shut[place + 1] = True
            else:
                c, s = single
                rows += [place, place, place + 1, place + 1]
                columns += [place, place + 1, place, place + 1]
                figures += [c - 1.0, -s, s, c - 1.0]
    return csr_matrix((figures, (rows, columns)), shape=(size, size)), np.flatnonzero(~shut)


def _single(directions: list[FloatArray]) -> tuple[float, float] | None:
    """The one direction that these come to, or None where they are two: at a corner, or where both are held."""
    first = directions[0]
    signed = [each * np.sign(each @ first) if each @ first else each for each in directions]
    if min(float(each @ first) for each in signed) < _STRAIGHT:
        return None
    mean = np.sum(signed, axis=0)
    mean = mean / np.linalg.norm(mean)
    return float(mean[0]), float(mean[1])
