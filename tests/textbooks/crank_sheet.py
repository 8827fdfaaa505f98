"""Crank's plane sheet: the closed form of diffusion into a sheet whose faces change at one moment.

Source: J. Crank, The Mathematics of Diffusion, 2nd edition, Oxford University Press, 1975, pages 47 and 48.
Times are given as the pure number D t / L2 of a sheet L thick with both faces open; with one face sealed, L is twice
the thickness.
"""

import math

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats

_TERMS = 200


def uptake(number: ArrayLike) -> FloatArray:
    """Share of the final change that has happened at D t / L2 (0 to 1), both faces open.

    Formula: 1 - 8/pi2 sum (2n+1)^-2 exp(-(2n+1)2 pi2 D t / L2). 200 terms: good to rounding for D t / L2 over 1e-5.
    """
    odd = _odd_numbers()
    return floats(1.0 - 8.0 / math.pi**2 * (_decay(number, odd) / odd**2).sum(axis=-1))


def centre(number: ArrayLike) -> FloatArray:
    """Share of the final change reached in the middle of the sheet at D t / L2.

    Formula: 1 - 4/pi sum (-1)^n/(2n+1) exp(-(2n+1)2 pi2 D t / L2).
    """
    odd = _odd_numbers()
    signs = np.where(np.arange(_TERMS) % 2, -1.0, 1.0)
    return floats(1.0 - 4.0 / math.pi * (signs * _decay(number, odd) / odd).sum(axis=-1))


def short_time_uptake(number: ArrayLike) -> FloatArray:
    """Share of the final change early on, while the middle has not felt it. Formula: 4/sqrt(pi) sqrt(D t / L2)."""
    return 4.0 / math.sqrt(math.pi) * np.sqrt(floats(number))


def _odd_numbers() -> FloatArray:
    return floats(2 * np.arange(_TERMS) + 1)


def _decay(number: ArrayLike, odd: FloatArray) -> FloatArray:
    return np.exp(-floats(number)[..., None] * (math.pi * odd) ** 2)
