"""Energies as sums of squares: rows of a sparse matrix that read strains from movements, and what each weighs.

A stiffness or a mass matrix is rows' transposed times weights times rows; how it changes with a weight needs the rows
and the movements alone.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.sparse import csr_matrix, diags_array, vstack

from gramil.physics.arrays import FloatArray


@dataclass(frozen=True, eq=False)
class Squares:
    """`rows` (r, n) and their `weights` (r,): the energy of movements x is half the sum of weights (rows x)^2."""

    rows: csr_matrix
    weights: FloatArray

    @staticmethod
    def none(size: int) -> "Squares":
        """No energy at all."""
        return Squares(csr_matrix((0, size)), np.zeros(0))

    @staticmethod
    def joined(parts: Sequence["Squares"]) -> "Squares":
        """Several as one."""
        return Squares(
            csr_matrix(vstack([part.rows for part in parts])), np.concatenate([part.weights for part in parts])
        )

    @property
    def matrix(self) -> csr_matrix:
        """The symmetric matrix (n, n)."""
        return csr_matrix(self.rows.T @ (diags_array(self.weights) @ self.rows))
