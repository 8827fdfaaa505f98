"""Reading a plate's movements at chosen places, and pushing on them there: one sparse row for each place."""

from collections.abc import Mapping

import numpy as np
from scipy.sparse import csr_matrix

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.edge import EACH
from gramil.physics.plates.mesh import Mesh

X, Y, Z, LEAN_X, LEAN_Y = range(EACH)
"""A node's movements in their order."""


def sparse_rows(columns: np.ndarray, figures: FloatArray, size: int) -> csr_matrix:
    """Rows (p, size) with `figures` (p, k) at `columns` (p, k)."""
    count, each = figures.shape
    starts = np.arange(0, count * each + 1, each)
    return csr_matrix((figures.ravel(), columns.astype(np.int32).ravel(), starts), shape=(count, size))


def reading(mesh: Mesh, points: FloatArray, what: Mapping[int, FloatArray | float]) -> csr_matrix:
    """Rows (p, n) that read a sum of movements at each point (p, 2): each kind times its figure, one or one a point.

    A point off the plate reads nothing: its row is empty of figures.
    """
    which, shares = mesh.place(points)
    counts = mesh.weights(which, shares)[0] * (which >= 0)[:, None]
    columns = [EACH * mesh.triangles[which] + kind for kind in what]
    figures = [counts * np.reshape(np.asarray(share, dtype=np.float64), (-1, 1)) for share in what.values()]
    return sparse_rows(np.concatenate(columns, 1), np.concatenate(figures, 1), EACH * len(mesh.nodes))


def summed_rows(rows: csr_matrix) -> FloatArray:
    """All rows added up, (n,)."""
    return np.asarray(rows.T @ np.ones(rows.shape[0]))
