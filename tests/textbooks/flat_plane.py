"""The published geometry of stopped strings: equal semitones, every stop in one plane.

M. B. Anderson and R. G. Beausoleil, "Classical guitar intonation and compensation: The well-tempered guitar",
J. Acoust. Soc. Am. 156(1), 683 (2024). Real boards have stops of their own, each at its own height.
"""

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.stopped_string import StringPaths, string_paths


def equal_steps(count: int) -> FloatArray:
    """Intended frequency ratios of stops 1 to `count`, a semitone each: `2^(n/12)`."""
    return np.exp2(np.arange(1, count + 1) / 12.0)


def flat_plane(
    length: ArrayLike, nut_height: ArrayLike, saddle_excess: ArrayLike, ratio: ArrayLike, finger_offset: ArrayLike = 0.0
) -> StringPaths:
    """Stops at `length - length / ratio` from the nut.

    The string is `nut_height` over the plane at the nut and `nut_height + saddle_excess` at the saddle.
    """
    open_length, low = np.atleast_1d(floats(length)), floats(nut_height)
    stop_x = open_length[:, None] * (1.0 - 1.0 / floats(ratio))
    return string_paths((0.0, low), (open_length, low + floats(saddle_excess)), (stop_x, 0.0), ratio, finger_offset)
