"""Set-backs by rule, for one plane of twelve semitone stops: a first guess that a pocket calculator gives.

Both return (nut, saddle) in mm, outward positive. `length` is the open string's, `nut_height` its height over the
plane at the nut and `saddle_excess` how much higher it is at the saddle, all in mm; `strings` as in `stopped_string`.
Source: M. B. Anderson and R. G. Beausoleil, J. Acoust. Soc. Am. 156(1), 683 (2024).
"""

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.stopped_string import StringStiffness


def mean_stretch(length: ArrayLike, nut_height: ArrayLike, saddle_excess: ArrayLike) -> FloatArray:
    """Mean strain over stops 1 to 12, the finger at the stop: `(77.9 b^2 + 35.6 b c + 5.82 c^2) / (24 X^2)`."""
    b, c = floats(nut_height), floats(saddle_excess)
    return (77.9 * b**2 + 35.6 * b * c + 5.82 * c**2) / (24.0 * floats(length) ** 2)


def simple_recipe(
    length: ArrayLike, nut_height: ArrayLike, saddle_excess: ArrayLike, strings: StringStiffness
) -> tuple[FloatArray, FloatArray]:
    """The saddle undoes bending, the nut the mean of stretching: `-kappa X Q / 2` and `B_0 X = sqrt(kappa) r / 2`."""
    strain = mean_stretch(length, nut_height, saddle_excess)
    return -strings.stretch * floats(length) * strain / 2.0, _bending(strings)


def closer_recipe(
    length: ArrayLike,
    nut_height: ArrayLike,
    saddle_excess: ArrayLike,
    finger_offset: ArrayLike,
    strings: StringStiffness,
) -> tuple[FloatArray, FloatArray]:
    """Both ends share the stretching, and the finger's place counts.

    Formula: nut `-(kappa/2X)(5b+c)b - F`, saddle `B_0 X + (kappa/4X)[(b+c)^2 - 7b^2] - F`,
    with `F = (2 kappa/X^2)(2b+c)^2 d`.
    """
    whole, b, c, kappa = floats(length), floats(nut_height), floats(saddle_excess), strings.stretch
    finger = 2.0 * kappa / whole**2 * (2.0 * b + c) ** 2 * floats(finger_offset)
    nut = -kappa / (2.0 * whole) * (5.0 * b + c) * b - finger
    saddle = _bending(strings) + kappa / (4.0 * whole) * ((b + c) ** 2 - 7.0 * b**2) - finger
    return nut, saddle


def _bending(strings: StringStiffness) -> FloatArray:
    return np.sqrt(strings.stretch) * strings.bending_radius / 2.0
