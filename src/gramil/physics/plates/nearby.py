"""A plate a little changed, solved by the factor of the plate before: exact, for what comes out is held to a residual.

The old factor is taken as a guess of the new one, and corrected step by step: for a load by conjugate gradients, for
modes by their locally optimal block form (Knyazev 2001). Where that does not settle in a few steps, nothing is given,
and the changed plate is factored by itself.
"""

import warnings
from dataclasses import dataclass

import numpy as np
from scipy.sparse import csr_matrix
from scipy.sparse.linalg import LinearOperator, cg, lobpcg

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.solving import Factor

SETTLED = 1e-10
"""What is left of a load, a share of it."""
STEPS, ROUNDS = 25, 3
"""Steps for a load, and rounds for modes, beyond which a factor of its own would cost no more."""
NEAR_ENOUGH = 3e-3
"""What is left of a mode, a share, by the work it does: its frequency is off by the square of that."""


@dataclass(frozen=True, eq=False)
class Near:
    """The factor of the plate before, and its modes' free movements (n, k), none if they were not asked for."""

    factor: Factor
    shapes: FloatArray | None

    def fits(self, size: int) -> bool:
        """Whether it is of a plate with as many free movements."""
        return bool(self.factor.scale.size == size)

    def guess(self) -> LinearOperator:
        """What a load is guessed to do."""
        size, solve = self.factor.scale.size, self.factor.solve
        return LinearOperator((size, size), matvec=lambda load: solve(np.ravel(load)), matmat=solve, dtype=np.float64)


def moved_near(near: Near, stiffness: csr_matrix, load: FloatArray) -> FloatArray | None:
    """What a load (n,) or (n, k) moves; none if it does not settle."""
    columns = load.reshape(len(load), -1)
    found = np.zeros_like(columns)
    for row, each in enumerate(columns.T):
        start = near.factor.solve(each)
        found[:, row], left = cg(stiffness, each, x0=start, rtol=SETTLED, maxiter=STEPS, M=near.guess())
        if left:
            return None
    return found.reshape(load.shape)


def modes_near(near: Near, stiffness: csr_matrix, mass: csr_matrix, count: int) -> tuple[FloatArray, FloatArray] | None:
    """The lowest modes: squared angular frequencies and shapes (n, count) of unit modal mass; none if unsettled."""
    if near.shapes is None or near.shapes.shape[1] != count:
        return None
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it warns where it stops before its own bound: ours is asked below
        squares, shapes = lobpcg(
            stiffness, near.shapes.copy(), B=mass, M=near.guess(), largest=False, maxiter=ROUNDS, tol=1e-9
        )
    left = np.asarray(stiffness @ shapes) - np.asarray(mass @ shapes) * squares
    share = np.sqrt(np.abs((left * near.factor.solve(left)).sum(axis=0)) / np.abs(squares))
    if not share.max() < NEAR_ENOUGH:
        return None
    order = np.argsort(squares)
    return np.asarray(squares[order]), np.asarray(shapes[:, order])
