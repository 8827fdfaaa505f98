"""Many small fits by least squares at once: one call for a stack of them costs little more than one for one."""

import numpy as np

from gramil.physics.arrays import FloatArray

_APART = 1e-12
"""How much less than the rest two columns may differ by, as a share of the squares, and still be told apart."""


def fitted(columns: FloatArray, wanted: FloatArray) -> FloatArray:
    """The amounts (..., k) of the columns (..., m, k) that leave the least of what is wanted (..., m).

    By the normal equations. Columns that cannot be told apart share the amount, and a column of zeros has none: the
    least amounts that do it.
    """
    across = np.swapaxes(columns, -1, -2)
    inverse = np.linalg.pinv(across @ columns, rcond=_APART, hermitian=True)
    amounts: FloatArray = (inverse @ (across @ wanted[..., None]))[..., 0]
    return amounts
