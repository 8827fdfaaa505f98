"""A plane curve in cubic pieces, measured by its own length.

`Curve` is what every outline here is made of: neighbouring pieces may meet smoothly or in a corner. Places on it
are given as the distance along it (`along`, in mm from its start) or as the pieces' own parameter.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm
from gramil.shapes.piecewise import Piecewise, distinct, piece_at

Array = NDArray[np.float64]
_POINTS, _WEIGHTS = np.polynomial.legendre.leggauss(8)
_STILL = 1e-9
"""A derivative smaller than this (mm per mm) counts as none."""


@dataclass(frozen=True)
class Span:
    """A run of a curve, between two parameters, on which one coordinate only grows (`sign` 1) or only falls (-1)."""

    start: float
    end: float
    sign: int


@dataclass(frozen=True, eq=False)
class Curve:
    """`breaks`: shape (pieces + 1,), the parameter where each piece starts and the last ends.

    `coefficients`: shape (4, pieces, 2), highest power first, of x and y in mm over the parameter within the piece.
    """

    breaks: Array
    coefficients: Array

    @cached_property
    def _place(self) -> Piecewise:
        return Piecewise(self.coefficients, self.breaks)

    @property
    def _velocity(self) -> Piecewise:
        return self._place.derivative

    @property
    def _bend(self) -> Piecewise:
        return self._velocity.derivative

    @cached_property
    def along_breaks(self) -> Array:
        """Distance along the curve at each break, in mm, shape (pieces + 1,)."""
        lengths = (self.weights * self._speed(self.nodes)).sum(axis=1)
        return np.concatenate(([0.0], np.cumsum(lengths)))

    @property
    def length(self) -> Mm:
        """Length of the whole curve, in mm."""
        return float(self.along_breaks[-1])

    @cached_property
    def nodes(self) -> Array:
        """Parameters of eight Gauss points on each piece, shape (pieces, 8): with `weights`, integrals along it."""
        middle = (self.breaks[1:] + self.breaks[:-1]) / 2
        return middle[:, None] + np.diff(self.breaks)[:, None] / 2 * _POINTS

    @cached_property
    def weights(self) -> Array:
        """Weights of `nodes` in an integral over the parameter, shape (pieces, 8)."""
        return np.asarray(np.diff(self.breaks)[:, None] / 2 * _WEIGHTS)

    def place(self, parameter: ArrayLike) -> Array:
        """Points at parameters, shape (..., 2), in mm."""
        return self._place(parameter)

    def velocity(self, parameter: ArrayLike) -> Array:
        """First derivative over the parameter, shape (..., 2); at a corner, that of the piece which starts there."""
        return self._velocity(parameter)

    def turning(self, parameter: ArrayLike) -> Array:
        """Curvature in 1/mm at parameters, positive where the curve turns left."""
        first, second = self._velocity(parameter), self._bend(parameter)
        cross = first[..., 0] * second[..., 1] - first[..., 1] * second[..., 0]
        return np.asarray(cross / np.hypot(first[..., 0], first[..., 1]) ** 3)

    def point(self, along: ArrayLike) -> Array:
        """Points at distances along the curve, shape (..., 2)."""
        return self.place(self.parameter(along))

    def tangent(self, along: ArrayLike) -> Array:
        """Unit vectors along the curve, shape (..., 2)."""
        return self.frame(along)[1]

    def frame(self, along: ArrayLike) -> tuple[Array, Array]:
        """`point` and `tangent` at the same distances, which are looked up once."""
        parameter = self.parameter(along)
        velocity = self.velocity(parameter)
        return self.place(parameter), np.asarray(velocity / np.hypot(velocity[..., :1], velocity[..., 1:]))

    def curvature(self, along: ArrayLike) -> Array:
        """Curvature in 1/mm at distances along the curve, positive where it turns left."""
        return self.turning(self.parameter(along))

    def _speed(self, parameter: Array) -> Array:
        velocity = self._velocity(parameter)
        return np.asarray(np.hypot(velocity[..., 0], velocity[..., 1]))

    def along(self, parameter: ArrayLike) -> Array:
        """Distance along the curve at parameters, in mm, by Gauss points within the piece."""
        wanted = np.clip(_array(parameter), self.breaks[0], self.breaks[-1])
        piece = piece_at(self.breaks, wanted)
        start = self.breaks[piece]
        half = (wanted - start) / 2
        velocity = self._velocity.in_pieces(piece, (start + half)[..., None] + half[..., None] * _POINTS)
        inside = np.hypot(velocity[..., 0], velocity[..., 1])
        return np.asarray(self.along_breaks[piece] + half * (inside * _WEIGHTS).sum(axis=-1))

    def parameter(self, along: ArrayLike) -> Array:
        """Parameters at distances along the curve (held within its length), by Newton's rule within the piece."""
        wanted = np.clip(_array(along), 0.0, self.length)
        piece = piece_at(self.along_breaks, wanted)
        low, high = self.breaks[piece], self.breaks[piece + 1]
        found = np.interp(wanted, self.along_breaks, self.breaks)
        for _ in range(4):
            last, found = found, np.clip(found - (self.along(found) - wanted) / self._speed(found), low, high)
            if np.array_equal(last, found):
                break
        return np.asarray(found)

    def sample(self, tolerance: Mm, longest: Mm = np.inf) -> Array:
        """Parameters, ends included, between which the curve leaves its chord by no more than `tolerance` mm.

        `longest`: the longest step, in mm, also where the curve is straight.
        A chord over a step h lies within h^2/8 of the largest second derivative, and that is linear in a cubic.
        """
        counts = self._parts(tolerance, longest).astype(int)
        piece = np.repeat(np.arange(len(counts)), counts)
        within = np.arange(len(piece)) - np.repeat(np.cumsum(counts) - counts, counts)
        steps = np.diff(self.breaks)
        return np.concatenate((self.breaks[piece] + steps[piece] * within / counts[piece], self.breaks[-1:]))

    def sampled(self, tolerance: Mm, longest: Mm = np.inf) -> float:
        """How many parameters `sample` would give, without working them out."""
        return float(self._parts(tolerance, longest).sum()) + 1

    def _parts(self, tolerance: Mm, longest: Mm) -> Array:
        """Into how many parts each piece is cut, whole numbers."""
        steps = np.diff(self.breaks)
        starts = 2 * self.coefficients[1]
        ends = starts + 6 * self.coefficients[0] * steps[:, None]
        bend = np.maximum(np.hypot(*starts.T), np.hypot(*ends.T))
        fineness = np.maximum(steps * np.sqrt(bend / (8 * tolerance)), np.diff(self.along_breaks) / longest)
        return np.maximum(1, np.ceil(fineness))

    def polyline(self, tolerance: Mm) -> Array:
        """Points on the curve, shape (n, 2), whose chords lie within `tolerance` mm of it."""
        return self.place(self.sample(tolerance))

    def meets(self, point: Sequence[float], direction: Sequence[float]) -> Array:
        """Parameters where the straight line through `point` along `direction` meets the curve, ascending.

        A line along a straight piece meets it at that piece's ends.
        """
        normal = np.array([-direction[1], direction[0]]) / np.hypot(direction[0], direction[1])
        distance = self.coefficients @ normal
        distance[3] -= normal @ np.asarray(point)
        roots = Piecewise(distance, self.breaks).zeros()
        touching = np.abs((self.place(self.breaks) - np.asarray(point)) @ normal) < _STILL
        found = distinct(np.concatenate((roots, self.breaks[touching])))
        # two pieces give the joint between them twice
        return np.asarray(found[np.concatenate(([True], np.diff(found) > 1e-7))] if len(found) else found)

    def spans(self, axis: Literal[0, 1]) -> tuple[Span, ...]:
        """Runs on which x (axis 0) or y (1) only grows or only falls; runs on which it stands still are left out."""
        slope = Piecewise(self._velocity.coefficients[:, :, axis], self.breaks)
        edges = distinct(np.concatenate((slope.zeros(), self.breaks)))
        slopes = slope((edges[1:] + edges[:-1]) / 2)
        signs = np.where(np.abs(slopes) < _STILL, 0, np.sign(slopes)).astype(int)
        return _grouped(edges, signs)

    def reversed(self) -> "Curve":
        """The same curve run from its end to its start."""
        steps = np.diff(self.breaks)[::-1, None]
        a, b, c, d = self.coefficients[:, ::-1]
        slope = c + steps * (2 * b + steps * 3 * a)
        turned = (-a, b + 3 * a * steps, -slope, d + steps * (c + steps * (b + steps * a)))
        return Curve(self.breaks[-1] - self.breaks[::-1], np.stack(turned))

    def mirrored(self) -> "Curve":
        """The curve's image across the x axis."""
        return Curve(self.breaks, self.coefficients * np.array([1.0, -1.0]))


def joined(curves: Sequence[Curve]) -> Curve:
    """One curve that runs through several in turn, each starting where the one before ends."""
    breaks = [curves[0].breaks]
    for curve in curves[1:]:
        breaks.append(curve.breaks[1:] - curve.breaks[0] + breaks[-1][-1])
    return Curve(np.concatenate(breaks), np.concatenate([curve.coefficients for curve in curves], axis=1))


def part(curve: Curve, first: int, last: int) -> Curve:
    """The pieces of a curve from the break in row `first` to that in row `last`."""
    return Curve(curve.breaks[first : last + 1] - curve.breaks[first], curve.coefficients[:, first:last])


def begun_at(curve: Curve, piece: int) -> Curve:
    """A closed curve that begins a number of its pieces later; negative: earlier."""
    count = len(curve.breaks) - 1
    begin = piece % count
    return joined((part(curve, begin, count), part(curve, 0, begin))) if begin else curve


def _array(values: ArrayLike) -> Array:
    return np.asarray(values, dtype=np.float64)


def _grouped(edges: Array, signs: NDArray[np.int_]) -> tuple[Span, ...]:
    """Neighbouring runs of one sign as one span."""
    spans: list[Span] = []
    for start, end, sign in zip(edges, edges[1:], signs, strict=False):
        if sign and spans and spans[-1].sign == sign and spans[-1].end == start:
            spans[-1] = Span(spans[-1].start, float(end), int(sign))
        elif sign:
            spans.append(Span(float(start), float(end), int(sign)))
    return tuple(spans)
