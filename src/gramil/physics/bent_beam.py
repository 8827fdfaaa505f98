"""The shape of a beam whose stiffness varies along it, bent by moments, by its own curvature, or by a pull along it.

The beam lies along x (mm, rising); deflection is upward positive, curvature positive with the ends up. It is held
either at both ends, free to turn, or clamped at its last station with the first one free.
"""

from enum import Enum

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats


class Ends(Enum):
    """How a beam is supported."""

    BOTH_ENDS = "at both ends, free to turn"
    LAST_CLAMPED = "clamped at the last station"


def shape_from_curvature(x: ArrayLike, curvature: ArrayLike, held: Ends) -> FloatArray:
    """Deflection (mm) at each station from curvature (1/mm) at each, straight between stations; small slopes.

    Moments enter as `moment / EI`, a built-in bow as its curvature; several causes as their sum.
    """
    return _shape_matrix(floats(x), held) @ floats(curvature)


def _shape_matrix(x: FloatArray, held: Ends) -> FloatArray:
    """The matrix that turns curvature into deflection: two integrals, exact for curvature straight between stations."""
    if x.size < 2 or np.any(np.diff(x) <= 0.0):
        raise ValueError("stations of a beam rise along it, two at least")
    step = np.diff(x)[:, None]
    each = np.eye(x.size)
    start, end = each[:-1], each[1:]
    slope = _sums((start + end) * step / 2.0)
    rise = _sums(slope[:-1] * step + (2.0 * start + end) * step**2 / 6.0)
    if held is Ends.LAST_CLAMPED:
        return floats(rise - rise[-1] - (x - x[-1])[:, None] * slope[-1])
    share = ((x - x[0]) / (x[-1] - x[0]))[:, None]
    return floats(rise - share * rise[-1])


def _sums(rows: FloatArray) -> FloatArray:
    return np.vstack([np.zeros_like(rows[:1]), np.cumsum(rows, axis=0)])


def shape_under_pull(
    x: ArrayLike,
    bending_stiffness: ArrayLike,
    line_height: ArrayLike,
    pull: float,
    held: Ends,
    far_end: float | None = None,
) -> FloatArray:
    """Deflection (mm) of a beam bent by a taut line above it, including what the bending adds to the lever.

    `line_height` is the line's height over the neutral axis at each station before bending, `pull` its tension in N,
    `bending_stiffness` EI in N mm2 at each. Formula: EI v'' = pull (height + line's rise - v), solved as one linear
    system. With the last station clamped the line's near end rises with the beam's free end; its far end at
    `far_end` (x in mm, past the clamp) stays or, for None, rises as much, so that the line stays parallel.
    NaN everywhere if a figure is not known. Raises ValueError for a pull at which such a beam folds up.
    """
    place, height = floats(x), np.broadcast_to(floats(line_height), np.shape(x))
    bend = _shape_matrix(place, held) * (pull / floats(bending_stiffness))
    rise = _line_rise(place, held, far_end)
    feedback = bend @ (rise - np.eye(place.size))
    if not np.isfinite(feedback).all():  # numpy's fault for it is a ValueError as well, and would pass for folding up
        return np.full(place.size, np.nan)
    if np.linalg.eigvals(feedback).real.max() >= 1.0:
        raise ValueError("the pull is more than the beam bears without folding up")
    return floats(np.linalg.solve(np.eye(place.size) - feedback, bend @ height))


def _line_rise(x: FloatArray, held: Ends, far_end: float | None) -> FloatArray:
    """The matrix that gives the line's rise at each station from the beam's deflections."""
    rise = np.zeros((x.size, x.size))
    if held is Ends.LAST_CLAMPED:
        rise[:, 0] = 1.0 if far_end is None else (far_end - x) / (far_end - x[0])
    return rise


def gap_under_straightedge(x: ArrayLike, height: ArrayLike, first: float, last: float, at: ArrayLike) -> FloatArray:
    """How far a shape lies below a straight line laid on it at x = first and x = last, read at other places (mm).

    Negative where it stands above. Heights are straight between stations.
    """
    place, level = floats(x), floats(height)
    low, high = np.interp([first, last], place, level)
    share = (floats(at) - first) / (last - first)
    return floats(low + share * (high - low) - np.interp(floats(at), place, level))
