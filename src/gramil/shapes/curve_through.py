"""Smooth curves through given points: the line that a thin batten takes, bent round pins.

Cubic splines with continuous curvature between corners, over a parameter that is the curve's own length: the chords
first, then twice the lengths of the spline just found.

A batten carries its bend at close pins over a long span beside them, and bulges there. Where that is not wanted,
`through_apart` draws such a run over the roots of the chords: E. T. Y. Lee, "Choosing nodes in parametric curve
interpolation", Computer-Aided Design 21 (1989), the centripetal parameter.
"""

from collections.abc import Iterable
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.shapes.cubic_spline import Bound, Bounds, cubic_spline
from gramil.shapes.curve import Curve, joined

Array = NDArray[np.float64]
End = Literal["free", "square"]
"""`free`: nothing is known beyond; `square`: the point lies on the x axis, and beyond is the curve's mirror image."""
_ROUNDS = 2
FAR_APART = 3.0
"""A span this many times as long as its shorter neighbour may bulge."""
BULGE = 0.05
"""A span bulges that leaves its chord by more than this share of it: as an arc of 23 degrees does."""


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


def through_apart(points: ArrayLike, corners: Iterable[int] = ()) -> Curve:
    """As `through`, but a run that bulges on a span far longer than its neighbours is drawn closer to its chords."""
    pins = np.asarray(points, dtype=np.float64)
    ends = [0, *sorted(set(corners) - {0, len(pins) - 1}), len(pins) - 1]
    return joined([_unbulged(pins[first : last + 1]) for first, last in pairwise(ends)])


def _unbulged(pins: Array) -> Curve:
    curve = _run(pins, "free", "free")
    if len(pins) < 4 or not _bulges(curve, pins):
        return curve
    roots = np.sqrt(np.hypot(*np.diff(pins, axis=0).T))
    free: Bounds = ("not-a-knot", "not-a-knot")
    return _spline(pins, roots, free, free)


def _bulges(curve: Curve, pins: Array) -> bool:
    """Whether the curve leaves the chord of some long span, between shorter ones, by too much."""
    chords = np.diff(pins, axis=0)
    lengths = np.hypot(*chords.T)
    beside = np.minimum(np.append(lengths[1:], np.inf), np.insert(lengths[:-1], 0, np.inf))
    across = np.stack((-chords[:, 1], chords[:, 0]), axis=-1) / lengths[:, None]
    away = (curve.place(curve.nodes) - pins[:-1, None]) * across[:, None]
    return bool(((lengths > FAR_APART * beside) & (abs(away.sum(axis=2)).max(axis=1) > BULGE * lengths)).any())


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
    return _fitted(
        pins, (_bound(start, "level"), _bound(end, "level")), (_bound(start, "straight"), _bound(end, "straight"))
    )


def _bound(end: End, square: Bound) -> Bound:
    """`square`: what holds where a curve crosses its axis of symmetry: x' is zero along it, y'' across."""
    return square if end == "square" else "not-a-knot"


def _straight(pins: Array) -> Curve:
    length = float(np.hypot(*(pins[1] - pins[0])))
    still = np.zeros(2)
    return Curve(np.array([0.0, length]), np.stack((still, still, (pins[1] - pins[0]) / length, pins[0]))[:, None, :])


def _fitted(pins: Array, x_ends: Bounds, y_ends: Bounds) -> Curve:
    lengths = np.hypot(*np.diff(pins, axis=0).T)
    curve = _spline(pins, lengths, x_ends, y_ends)
    for _ in range(_ROUNDS):
        curve = _spline(pins, np.diff(curve.along_breaks), x_ends, y_ends)
    return curve


def _spline(pins: Array, lengths: Array, x_ends: Bounds, y_ends: Bounds) -> Curve:
    breaks = np.concatenate(([0.0], np.cumsum(lengths)))
    each = [cubic_spline(breaks, pins[:, axis], ends) for axis, ends in enumerate((x_ends, y_ends))]
    return Curve(breaks, np.stack(each, axis=-1))
