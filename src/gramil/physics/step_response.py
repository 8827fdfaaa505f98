"""The exact answer of a decaying mode to a drive that runs in a straight line over a step.

For y' = -r y + b(t), with z = r h over a step h and b from b0 to b1:
y1 = e^-z y0 + h (p1 b0 + p2 (b1 - b0)), and the time integral of y is h p1 y0 + h2 (p2 b0 + p3 (b1 - b0)).
"""

import math

import numpy as np

from gramil.physics.arrays import FloatArray

_TERMS = 20  # the series' next term is below 1e-20 at z = 1


def step_response(decay_number: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray, FloatArray]:
    """e^-z, p1, p2, p3 for z of 0 or more, any shape.

    Formulas: p1 = (1 - e^-z)/z, p2 = (z - 1 + e^-z)/z2, p3 = (z2/2 - z + 1 - e^-z)/z3; by their series below 1,
    where these cancel.
    """
    small = decay_number < 1.0
    safe = np.where(small, 1.0, decay_number)
    first = np.where(small, _series(decay_number, 1), -np.expm1(-safe) / safe)
    second = np.where(small, _series(decay_number, 2), (1.0 - first) / safe)
    third = np.where(small, _series(decay_number, 3), (0.5 - second) / safe)
    return np.exp(-decay_number), first, second, third


def _series(decay_number: FloatArray, start: int) -> FloatArray:
    """sum over j of (-z)^j / (j + start)!, for z up to 1."""
    bounded = np.minimum(decay_number, 1.0)
    total = np.zeros_like(bounded)
    for term in range(_TERMS, -1, -1):
        total = total * -bounded + 1.0 / math.factorial(term + start)
    return total
