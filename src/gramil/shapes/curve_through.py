"""Smooth curves through given points: the line that a thin batten takes, bent round pins.

Cubic splines with continuous curvature between corners, over a parameter that is the curve's own length: the chords
first, then twice the lengths of the spline just found.
"""

from collections.abc import Iterable
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.interpolate import CubicSpline

from gramil.shapes.curve import Curve, joined

Array = NDArray[np.float64]
End = Literal["free", "square"]
"""`free`: nothing is known beyond; `square`: the point lies on the x axis, and beyond is the curve's mirror image."""
_Bound = Literal["not-a-knot"] | tuple[Literal[1, 2], Array]
_Bounds = Literal["periodic"] | tuple[_Bound, _Bound]
_ROUNDS = 2


def through(points: ArrayLike, corners: Iterable[int] = (), start: End = "free", end: End = "free") -> Curve:
    """The curve from the first of `points` (shape (n, 2), n > 1, in mm) to the last, broken at the `corners`' rows.

    Neighbouring points must differ. Two points between corners are joined by a straight line.
    """
    pins = np.asarray(points, dtype=np.float64)
    ends = [0, *sorted(set(corners) - {0, len(pins) - 1}), len(pins) - 1]
    runs = []
    for first, last in pairwise(ends):
        run_start: End = start if first == 0 else "free"
        run_end: End = end if last == len(pins) - 1 else "free"
        runs.append(_run(pins[first : last + 1], run_start, run_end))
    return joined(runs)


def closed_through(points: ArrayLike, corners: Iterable[int] = ()) -> Curve:
    """The closed curve through `points` (shape (n, 2), n > 2, the first not repeated at the end), broken at `corners`.

    With corners, it starts at the first of them.
    """
    pins = np.asarray(points, dtype=np.float64)
    rows = sorted(set(corners))
    if not rows:
        return _fitted(np.vstack((pins, pins[:1])), "periodic", "periodic")
    turned = np.roll(pins, -rows[0], axis=0)
    return through(np.vstack((turned, turned[:1])), [row - rows[0] for row in rows])


def _run(pins: Array, start: End, end: End) -> Curve:
    if len(pins) == 2:
        return _straight(pins)
    return _fitted(pins, (_bound(start, 1), _bound(end, 1)), (_bound(start, 2), _bound(end, 2)))


def _bound(end: End, still: Literal[1, 2]) -> _Bound:
    """`still`: the derivative that is nothing where a curve crosses its axis of symmetry: x' along it, y'' across."""
    return (still, np.array(0.0)) if end == "square" else "not-a-knot"


def _straight(pins: Array) -> Curve:
    length = float(np.hypot(*(pins[1] - pins[0])))
    still = np.zeros(2)
    return Curve(np.array([0.0, length]), np.stack((still, still, (pins[1] - pins[0]) / length, pins[0]))[:, None, :])


def _fitted(pins: Array, x_ends: _Bounds, y_ends: _Bounds) -> Curve:
    lengths = np.hypot(*np.diff(pins, axis=0).T)
    curve = _spline(pins, lengths, x_ends, y_ends)
    for _ in range(_ROUNDS):
        curve = _spline(pins, np.diff(curve.along_breaks), x_ends, y_ends)
    return curve


def _spline(pins: Array, lengths: Array, x_ends: _Bounds, y_ends: _Bounds) -> Curve:
    breaks = np.concatenate(([0.0], np.cumsum(lengths)))
    each = [CubicSpline(breaks, pins[:, axis], bc_type=ends).c for axis, ends in enumerate((x_ends, y_ends))]
    return Curve(breaks, np.stack(each, axis=-1))
