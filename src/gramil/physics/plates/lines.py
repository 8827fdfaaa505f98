"""Lines in the plane as chains of points: spaced evenly, cut where they cross, and which points lie inside a ring."""

from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.physics.arrays import FloatArray, floats

CORNER = np.radians(25.0)
"""A ring that turns by more at a point has a corner there, which a mesh keeps."""
LEAST_SIDES = 16
"""How many sides a ring without corners has at least in a mesh."""


def spaced_ring(ring: FloatArray, size: float) -> FloatArray:
    """Points (n, 2) round a ring as `ring_run` gives it, no more than `size` apart along it, its corners among them."""
    corners = np.flatnonzero(_turns(ring) > CORNER)
    closed = np.concatenate([ring, ring[:1]])
    if not corners.size:
        return spaced(closed, min(size, length_of(closed) / LEAST_SIDES))[:-1]
    stops = [*corners.tolist(), len(ring)]
    return np.concatenate([spaced(closed[first : last + 1], size)[:-1] for first, last in pairwise(stops)])


def ring_run(ring: ArrayLike) -> FloatArray:
    """A closed ring without repeated points, anticlockwise from its first corner, or its first point without one."""
    points = floats(ring)
    apart = np.linalg.norm(points - np.roll(points, 1, axis=0), axis=1)
    points = points[apart > 1e-9 * max(1.0, float(np.ptp(points)))]
    points = left_round(points)
    corners = np.flatnonzero(_turns(points) > CORNER)
    return np.roll(points, -int(corners[0]) if corners.size else 0, axis=0)


def left_round(ring: FloatArray) -> FloatArray:
    """The ring anticlockwise, its inside on the left."""
    return ring if area_of(ring) > 0 else ring[::-1].copy()


def area_of(ring: FloatArray) -> float:
    """Area within a closed ring; negative if it runs clockwise."""
    after = np.roll(ring, -1, axis=0)
    return 0.5 * float((ring[:, 0] * after[:, 1] - ring[:, 1] * after[:, 0]).sum())


def length_of(chain: FloatArray) -> float:
    """Length along an open chain."""
    return float(np.linalg.norm(np.diff(chain, axis=0), axis=1).sum())


def spaced(chain: FloatArray, size: float) -> FloatArray:
    """Points along an open chain from end to end, evenly, no more than `size` apart."""
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(chain, axis=0), axis=1))])
    places = np.linspace(0.0, along[-1], max(1, int(np.ceil(along[-1] / size - 1e-9))) + 1)
    return np.stack([np.interp(places, along, chain[:, axis]) for axis in (0, 1)], axis=1)


def _turns(ring: FloatArray) -> FloatArray:
    """How far the ring turns at each of its points, in radians, without sign."""
    before, after = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    cross = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    return np.abs(np.arctan2(cross, (before * after).sum(axis=1)))


def inside(ring: FloatArray, points: FloatArray) -> NDArray[np.bool_]:
    """Which points (n, 2) lie inside a closed ring (even and odd crossings of a ray)."""
    x, y = points[:, 0, None], points[:, 1, None]
    start, stop = ring, np.roll(ring, -1, axis=0)
    spans = (start[:, 1] > y) != (stop[:, 1] > y)
    rise = np.where(stop[:, 1] == start[:, 1], 1.0, stop[:, 1] - start[:, 1])
    meets = start[:, 0] + (y - start[:, 1]) * (stop[:, 0] - start[:, 0]) / rise
    return np.asarray((spans & (x < meets)).sum(axis=1) % 2 == 1)


def crossings_of_chains(one: FloatArray, other: FloatArray) -> FloatArray:
    """Points (n, 2) where two open chains cross."""
    a, b = one[:-1, None], np.diff(one, axis=0)[:, None]
    c, d = other[None, :-1], np.diff(other, axis=0)[None]
    bottom = b[..., 0] * d[..., 1] - b[..., 1] * d[..., 0]
    safe = np.where(np.abs(bottom) < 1e-12, np.inf, bottom)
    gap = c - a
    first = (gap[..., 0] * d[..., 1] - gap[..., 1] * d[..., 0]) / safe
    second = (gap[..., 0] * b[..., 1] - gap[..., 1] * b[..., 0]) / safe
    meet = (first > 0) & (first < 1) & (second > 0) & (second < 1)
    return np.asarray((a + first[..., None] * b)[meet])


def with_points(chain: FloatArray, points: FloatArray) -> FloatArray:
    """An open chain with further points that lie on it put in where they belong."""
    if not len(points):
        return chain
    way = np.diff(chain, axis=0)
    size = (way**2).sum(axis=1)
    share = ((points[:, None] - chain[None, :-1]) * way).sum(axis=-1) / size
    held = np.clip(share, 0.0, 1.0)
    away = np.linalg.norm(chain[None, :-1] + held[..., None] * way - points[:, None], axis=-1)
    which = away.argmin(axis=1)
    order = np.concatenate([np.arange(len(chain)), which + held[np.arange(len(points)), which]])
    return np.concatenate([chain, points])[np.argsort(order, kind="stable")]


def shortened(chain: FloatArray, by: float) -> FloatArray:
    """An open chain without the first and last `by` mm; no points where nothing is left."""
    whole = length_of(chain)
    if whole <= 2.0 * by:
        return np.zeros((0, 2))
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(chain, axis=0), axis=1))])
    kept = (along > by) & (along < whole - by)
    ends = [np.array([np.interp(place, along, chain[:, axis]) for axis in (0, 1)]) for place in (by, whole - by)]
    return np.concatenate([ends[0][None], chain[kept], ends[1][None]])


def measured_to_ring(ring: FloatArray, points: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """How far points (p, 2) are from a closed ring, how far along it each is nearest, and that place (p, 2)."""
    way = np.roll(ring, -1, axis=0) - ring
    length = np.linalg.norm(way, axis=1)
    share = np.clip(((points[:, None] - ring) * way).sum(axis=-1) / length**2, 0.0, 1.0)
    places = ring + share[..., None] * way
    away = np.linalg.norm(places - points[:, None], axis=-1)
    rows, which = np.arange(len(points)), away.argmin(axis=1)
    starts = np.concatenate([[0.0], np.cumsum(length)[:-1]])
    return away[rows, which], starts[which] + share[rows, which] * length[which], places[rows, which]
