"""Polynomials in pieces: their values, slopes and zeros.

Our own, because every command draws an outline, and the general library for this takes a third of a second
to load; the tests compare the two.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

Array = NDArray[np.float64]
_NOTHING, _SLACK = 1e-15, 1e-12
"""Shares of a piece's largest term, and of its length, that are rounding."""


def piece_at(breaks: Array, wanted: Array) -> NDArray[np.intp]:
    """The piece in which each parameter lies, the first or the last for one outside; a break belongs to the piece that
    starts there, the last one to the last piece.
    """
    return np.asarray(np.searchsorted(breaks[1:-1], wanted, side="right"))


def distinct(values: ArrayLike) -> Array:
    """The values in rising order, each once; numpy's own loads its masked arrays to tell them apart."""
    rising = np.sort(np.asarray(values, dtype=np.float64), axis=None)
    return rising[np.diff(rising, prepend=np.nan) != 0]


@dataclass(frozen=True, eq=False)
class Piecewise:
    """`breaks`: shape (pieces + 1,), rising. `coefficients`: shape (order, pieces, ...), highest power first.

    Powers are of the parameter less the break at which the piece starts.
    """

    coefficients: Array
    breaks: Array

    def __call__(self, parameter: ArrayLike) -> Array:
        """Values at parameters, shape parameter + (...,); not a number outside the breaks.

        A break belongs to the piece that starts there, the last one to the last piece.
        """
        wanted = np.asarray(parameter, dtype=np.float64)
        inside = (wanted >= self.breaks[0]) & (wanted <= self.breaks[-1])
        axes = (1,) * (self.coefficients.ndim - 2)
        value = self.in_pieces(piece_at(self.breaks, wanted), wanted)
        return np.asarray(np.where(inside.reshape(wanted.shape + axes), value, np.nan))

    def in_pieces(self, piece: NDArray[np.intp], parameter: Array) -> Array:
        """Values at parameters whose pieces are known: each of that piece's own polynomial, wherever it ends.

        `piece` has the parameters' shape, or that without some of their last axes.
        """
        spare = (1,) * (parameter.ndim - piece.ndim)
        within = parameter - self.breaks[piece].reshape(piece.shape + spare)
        within = within.reshape(parameter.shape + (1,) * (self.coefficients.ndim - 2))
        order, _, *of = self.coefficients.shape
        value, *others = self.coefficients[:, piece].reshape(order, *piece.shape, *spare, *of)
        for coefficients in others:
            value = value * within + coefficients
        return np.asarray(value)

    @cached_property
    def derivative(self) -> "Piecewise":
        """The slope over the parameter."""
        powers = np.arange(len(self.coefficients) - 1, 0, -1, dtype=np.float64)
        return Piecewise(np.einsum("i,i...->i...", powers, self.coefficients[:-1]), self.breaks)

    def zeros(self) -> Array:
        """Parameters at which a single value, shape (order, pieces), is zero within its piece, ascending.

        A piece that is zero throughout has none.
        """
        found = [start + self._zeros_in(piece, step) for piece, start, step in self._pieces_that_may_cross()]
        return np.concatenate(found) if found else np.zeros(0)

    def _pieces_that_may_cross(self) -> list[tuple[int, float, float]]:
        """Piece, its start and its length, of those whose value may be zero: the rest stay on one side.

        Within a step h a piece leaves its first value by no more than the sum of its other terms at h.
        """
        steps = np.diff(self.breaks)
        powers = np.arange(len(self.coefficients) - 1, 0, -1)[:, None]
        reach = (abs(self.coefficients[:-1]) * steps**powers).sum(axis=0)
        rows = np.flatnonzero(abs(self.coefficients[-1]) <= reach * (1 + 1e-9))
        return [(int(row), float(self.breaks[row]), float(steps[row])) for row in rows]

    def _zeros_in(self, piece: int, step: float) -> Array:
        """Zeros of one piece, from its start; those just beyond its ends by rounding are put on the end."""
        terms = self.coefficients[:, piece] * step ** np.arange(len(self.coefficients) - 1, -1, -1.0)
        large = np.flatnonzero(abs(terms) > _NOTHING * abs(terms).max())
        if not len(large):
            return np.zeros(0)
        roots = np.roots(terms[large[0] :])
        real = np.sort(roots.real[abs(roots.imag) <= 1e-9])
        return np.asarray(np.clip(real[(real >= -_SLACK) & (real <= 1 + _SLACK)], 0.0, 1.0) * step)
