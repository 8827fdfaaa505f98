"""Numbers in, float64 arrays out: what every function of this room accepts and returns."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]


def floats(value: ArrayLike) -> FloatArray:
    """The value as float64, whatever its shape; a single number becomes an array of no axes."""
    return np.asarray(value, dtype=np.float64)
