"""How certain an answer of the solved plate is: because of its mesh, of the model, and of both together."""

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats

QUICK, FINAL = 14.0, 10.0
"""Sizes of triangles, mm, for a first answer and for the one that is kept. Below 7 mm nothing is gained."""
BY_MESH = 1.5
"""What a finer mesh may yet change, over what the finer of two has changed."""
BY_MODEL = 0.03
"""What the model itself may be off, a share: it was measured against solid elements, which all but a few agree with
closer (the published tests have them). What the wood is off comes on top, and is more."""


def within(quick: ArrayLike, final: ArrayLike) -> FloatArray:
    """How far off the final answer may be, in its own unit, because of mesh and model."""
    one, other = floats(quick), floats(final)
    return floats(BY_MESH * np.abs(other - one) + BY_MODEL * np.abs(other))
