"""Cutting a region with holes into good triangles that follow given lines: scipy's Delaunay, and a gate at the end.

A line that the triangulation leaves out is halved until it is there. What passes the gate has every line, no sharp
triangle, and the region's whole area; what does not is tried at other sizes.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import Delaunay, cKDTree

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray, floats
from gramil.physics.plates.lines import (
    area_of,
    crossings_of_chains,
    inside,
    measured_to_ring,
    ring_run,
    shortened,
    spaced,
    spaced_ring,
    with_points,
)
from gramil.physics.plates.mesh import Indices, Mesh, rim_of
from gramil.physics.plates.triangle import SIX, measured

LEAST_ANGLE = np.radians(5.0)
AREA_KEPT = 1e-4
TRIES = (1.0, 0.94, 1.06, 0.88, 0.82, 1.13, 0.76, 0.7)
"""Sizes that are tried one after another, as shares of the one asked for."""
MERGED = 0.25
"""Points nearer than this share of the size become one."""
BULGE = 0.15
"""How far a curved side may stand out of its straight one, as a share of its length."""
FOLDED = 0.2
"""A curved side is made straight again where it would press its triangle to less than this share of itself."""
PULLED_BACK = 3.0
"""How far a line's ends keep from what it ends at, in mm: a mesh corner there would be sharp, and nothing needs it."""
_CLEAR, _SMOOTHINGS, _HALVINGS = 0.66, 2, 8


@dataclass(frozen=True, eq=False)
class Region:
    """Where a plate is: its outline and holes, closed rings (n, 2) of points in mm, and lines (k, 2) a mesh follows."""

    outline: FloatArray
    holes: tuple[FloatArray, ...] = ()
    lines: tuple[FloatArray, ...] = ()


def mesh_of(region: Region, size: float) -> Mesh:
    """The region in triangles with sides of about `size` mm.

    Raises MakersFault where no size near it gives a mesh that passes the gate.
    """
    for share in TRIES:
        mesh = _tried(region, share * size)
        if mesh is not None:
            return mesh
    raise MakersFault.of(
        f"the plate could not be cut into triangles of about {size:g} mm",
        "lines lie too close together, or its outline crosses itself",
        "look for braces that nearly touch, and for a hole that reaches the edge",
    )


def _tried(region: Region, size: float) -> Mesh | None:
    """A mesh of this size, or None if it does not pass."""
    given = tuple(ring_run(ring) for ring in (region.outline, *region.holes))
    rings = tuple(spaced_ring(ring, size) for ring in given)
    points, segments = _framework(rings, region.lines, size)
    points = _filled(points, segments, rings, size)
    for _ in range(_HALVINGS):
        cut = Delaunay(points)
        missing = _missing(cut, segments)
        if not len(missing):
            return _gated(cut, rings, given)
        points, segments = _halved(points, segments, missing)
    return None


def _framework(rings: Sequence[FloatArray], lines: Sequence[FloatArray], size: float) -> tuple[FloatArray, Indices]:
    """Points that must be there and the segments between them: the rings', the crossings', then the lines'."""
    points = np.concatenate(rings)
    starts = np.cumsum([0, *(len(ring) for ring in rings)])
    loops = [np.arange(first, last) for first, last in pairwise(starts)]
    segments = [np.stack([loop, np.roll(loop, -1)], axis=1) for loop in loops]
    for chain, crossed in _chains(lines, size):
        points, indices = _merged(points, chain, crossed, rings, size)
        segments.append(np.stack([indices[:-1], indices[1:]], axis=1))
    joined = np.concatenate(segments)
    joined = joined[(joined >= 0).all(axis=1) & (joined[:, 0] != joined[:, 1])]
    return points, np.unique(np.sort(joined, axis=1), axis=0)


def _chains(lines: Sequence[FloatArray], size: float) -> list[tuple[FloatArray, FloatArray]]:
    """Each line spaced evenly, with where the others cross it put in; and those crossings."""
    plain = [line for line in map(_pulled_back, map(floats, lines)) if len(line) > 1]
    met: list[list[FloatArray]] = [[] for _ in plain]
    for (row, one), (column, other) in combinations(enumerate(plain), 2):
        places = crossings_of_chains(one, other)
        met[row].append(places)
        met[column].append(places)
    found = []
    for line, meetings in zip(plain, met, strict=True):
        crossed = np.concatenate([np.zeros((0, 2)), *meetings])
        found.append((_spaced_between(with_points(line, crossed), size), crossed))
    return found


def _pulled_back(line: FloatArray) -> FloatArray:
    """An open line shortened at both ends; one that closes on itself as it is."""
    return line if (line[0] == line[-1]).all() else shortened(line, PULLED_BACK)


def _spaced_between(chain: FloatArray, size: float) -> FloatArray:
    runs = [spaced(chain[row : row + 2], size)[:-1] for row in range(len(chain) - 1)]
    return np.concatenate([*runs, chain[-1:]])


def _merged(
    points: FloatArray, chain: FloatArray, crossed: FloatArray, rings: Sequence[FloatArray], size: float
) -> tuple[FloatArray, Indices]:
    """The points with a chain's added where none is near, and the chain's indices among them; -1 off the plate."""
    good = inside(rings[0], chain) & ~np.any([inside(hole, chain) for hole in rings[1:]], axis=0)
    gaps, near = cKDTree(points).query(chain)
    first = _crossed(chain, crossed)
    indices = np.where(gaps < MERGED * size, near, -1)
    added: list[FloatArray] = []
    for row in sorted(np.flatnonzero(good & (indices < 0)), key=lambda place: not first[place]):
        close = [number for number, point in enumerate(added) if np.hypot(*(point - chain[row])) < MERGED * size]
        indices[row] = len(points) + (close[0] if close else len(added))
        if not close:
            added.append(chain[row])
    return np.concatenate([points, *(point[None] for point in added)]), indices


def _crossed(chain: FloatArray, crossed: FloatArray) -> NDArray[np.bool_]:
    """Which of a chain's points are crossings: they are kept before others."""
    if not len(crossed):
        return np.zeros(len(chain), dtype=np.bool_)
    return np.asarray(cKDTree(crossed).query(chain)[0]) < 1e-9


def _filled(points: FloatArray, segments: Indices, rings: Sequence[FloatArray], size: float) -> FloatArray:
    """The points, and between them others in a pattern of even triangles, moved to the middle of their neighbours."""
    low, high = rings[0].min(axis=0), rings[0].max(axis=0)
    rows = np.arange(low[1], high[1], size * np.sqrt(0.75))
    across = np.arange(low[0], high[0] + size, size)
    shift = np.where(np.arange(rows.size) % 2 == 0, 0.0, 0.5 * size)
    pattern = np.stack([across[None, :] + shift[:, None], np.broadcast_to(rows[:, None], (rows.size, across.size))], -1)
    pattern = pattern.reshape(-1, 2)
    pattern = pattern[inside(rings[0], pattern)]
    for hole in rings[1:]:
        pattern = pattern[~inside(hole, pattern)]
    middles = points[segments].mean(axis=1)
    pattern = pattern[cKDTree(np.concatenate([points, middles])).query(pattern)[0] > _CLEAR * size]
    whole = np.concatenate([points, pattern])
    for _ in range(_SMOOTHINGS if len(pattern) else 0):
        starts, ends = Delaunay(whole).vertex_neighbor_vertices
        sums = np.add.reduceat(whole[ends], starts[:-1], axis=0) / np.maximum(np.diff(starts), 1)[:, None]
        whole[len(points) :] = sums[len(points) :]
    return whole


def _missing(cut: Delaunay, segments: Indices) -> Indices:
    """Segments that are no side of any triangle."""
    sides = np.sort(np.concatenate([cut.simplices[:, [0, 1]], cut.simplices[:, [1, 2]], cut.simplices[:, [2, 0]]]), 1)
    count = len(cut.points)
    known = np.unique(sides[:, 0].astype(np.int64) * count + sides[:, 1])
    wanted = np.sort(segments, axis=1)
    return np.flatnonzero(~np.isin(wanted[:, 0].astype(np.int64) * count + wanted[:, 1], known))


def _halved(points: FloatArray, segments: Indices, missing: Indices) -> tuple[FloatArray, Indices]:
    middles = points[segments[missing]].mean(axis=1)
    fresh = len(points) + np.arange(len(missing))
    first = np.stack([segments[missing, 0], fresh], axis=1)
    second = np.stack([fresh, segments[missing, 1]], axis=1)
    return np.concatenate([points, middles]), np.concatenate([np.delete(segments, missing, axis=0), first, second])


def _gated(cut: Delaunay, rings: tuple[FloatArray, ...], given: tuple[FloatArray, ...]) -> Mesh | None:
    """The mesh of the triangles within the rings; None if one is sharp, or if area is lost."""
    corners = cut.points[cut.simplices]
    middles = corners.mean(axis=1)
    good = inside(rings[0], middles)
    for hole in rings[1:]:
        good &= ~inside(hole, middles)
    first, second = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    signed = 0.5 * (first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0])
    wanted = area_of(rings[0]) - sum(area_of(hole) for hole in rings[1:])
    good &= np.abs(signed) > 1e-9 * wanted
    chosen = np.where(good, np.cumsum(good) - 1, -1)
    kept = np.where(signed[good, None] > 0, cut.simplices[good], cut.simplices[good][:, [0, 2, 1]]).astype(np.int64)
    whole = float(np.abs(signed[good]).sum())
    if abs(whole / wanted - 1.0) > AREA_KEPT or _least_angle(cut.points[kept]) < LEAST_ANGLE:
        return None
    return _with_middles(cut, kept, chosen, given)


def _least_angle(corners: FloatArray) -> float:
    """The sharpest angle of triangles, radians: its cosine is the largest of those between two sides."""
    ahead = np.roll(corners, -1, axis=1) - corners
    back = np.roll(corners, 1, axis=1) - corners
    lengths = np.linalg.norm(ahead, axis=-1) * np.linalg.norm(back, axis=-1)
    return float(np.arccos(np.clip((ahead * back).sum(axis=-1) / lengths, -1.0, 1.0)).min())


def _with_middles(cut: Delaunay, kept: Indices, chosen: Indices, given: tuple[FloatArray, ...]) -> Mesh:
    """Six nodes to a triangle, those of the rim on the rings as given; corners that no triangle uses are left out."""
    used, corners = np.unique(kept, return_inverse=True)
    corners = corners.reshape(kept.shape).astype(np.int64)
    sides = np.sort(np.stack([corners[:, [0, 1]], corners[:, [1, 2]], corners[:, [2, 0]]], axis=1), axis=-1)
    pairs, middles = np.unique(sides.reshape(-1, 2), axis=0, return_inverse=True)
    places = cut.points[used]
    nodes = np.concatenate([places, places[pairs].mean(axis=1)])
    triangles = np.concatenate([corners, len(places) + middles.reshape(-1, 3)], axis=1)
    rim = rim_of(triangles)
    straight = nodes[rim[:, 2]]
    nodes[rim[:, 2]] = _onto_rings(nodes, rim, given)
    folded = triangles[_folded(nodes[triangles])]
    flat = np.isin(rim[:, 2], folded)
    nodes[rim[flat, 2]] = straight[flat]
    return Mesh(nodes, triangles, cut, chosen, given)


def _folded(nodes: FloatArray) -> NDArray[np.bool_]:
    """Triangles of six nodes (m, 6, 2) that a curved side folds, or nearly: their area vanishes at a place in them."""
    areas = measured(nodes[:, None], np.concatenate([SIX, np.eye(3)]))[1]
    return np.asarray(areas.min(axis=1) < FOLDED * areas.max(axis=1))


def _onto_rings(nodes: FloatArray, rim: Indices, given: tuple[FloatArray, ...]) -> FloatArray:
    """Where the rim's middles belong: the nearest places on the rings, unless those are not nearly beside them."""
    middles = nodes[rim[:, 2]]
    found = [measured_to_ring(ring, middles) for ring in given]
    best = np.argmin([away for away, _, _ in found], axis=0)
    near = np.array([place for _, _, place in found])[best, np.arange(len(middles))]
    side = np.linalg.norm(nodes[rim[:, 1]] - nodes[rim[:, 0]], axis=1)
    beside = np.linalg.norm(near - middles, axis=1) < BULGE * side
    return np.where(beside[:, None], near, middles)
