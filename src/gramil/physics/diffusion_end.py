"""The state of a sheet at the end of a run of air, without the steps between; and its course in constant air.

A mode forgets: whatever entered long ago, compared with how fast the mode decays, no longer counts. So each mode looks
back only as far as it remembers, and sums what each step has left in it. The answer is that of `course`, to rounding.
"""

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.diffusion import Modes, check_rows
from gramil.physics.step_response import step_response

REMEMBERED = 40.0
"""Decay times that a mode looks back: what came before has decayed to 4e-18 of itself."""


def profile_at_end(modes: Modes, start: ArrayLike, times: ArrayLike, air: ArrayLike) -> FloatArray:
    """Contents at a sheet's points after its air; start is one figure or one a point.

    times: (readings,) in s, never falling. air: what the faces would come to, (readings,) or (readings, 2), straight
    between readings. Raises ValueError if times fall or shapes disagree.
    """
    clock, given = floats(times), floats(air)
    check_rows(clock, given)
    datum = float(given.mean())
    faces = (given if given.ndim == 2 else np.repeat(given[:, None], 2, axis=1)) - datum
    begun = modes.shapes.T @ (modes.stores * (np.broadcast_to(floats(start), modes.stores.shape) - datum))
    amplitudes = begun * np.exp(-modes.rates * (clock[-1] - clock[0])) + _left_by_air(modes, clock, faces)
    return floats(modes.shapes @ amplitudes + modes.held @ faces[-1] + datum)


def in_held_air(modes: Modes, start: ArrayLike, seconds: ArrayLike, level: float) -> FloatArray:
    """Mean, centre and both faces (times, 4) of a sheet at seconds from now, in constant air that would bring it to
    `level`.

    start is one figure or one a point. Formula: level + sum of each mode's share of (start - level) times e^(-rate t).
    """
    begun = modes.shapes.T @ (modes.stores * (np.broadcast_to(floats(start), modes.stores.shape) - level))
    shares = np.exp(-np.multiply.outer(floats(seconds), modes.rates)) * begun
    ends = modes.shapes[[0, -1]]
    readers = np.vstack([modes.stores @ modes.shapes / modes.stores.sum(), modes.middle @ modes.shapes, ends])
    return floats(shares @ readers.T + level)


def _left_by_air(modes: Modes, clock: FloatArray, faces: FloatArray) -> FloatArray:
    """What the air of all steps has left in each mode at the end."""
    steps, ago = np.diff(clock), clock[-1] - clock[1:]
    lengths, which = np.unique(steps, return_inverse=True)
    _, first, second, _ = step_response(lengths[:, None] * modes.rates)
    level, slope = lengths[:, None] * first, lengths[:, None] * second
    left = np.zeros(modes.rates.size)
    for mode, rate in enumerate(modes.rates.tolist()):
        since = int(np.searchsorted(-ago, -REMEMBERED / rate)) if rate > 0 else 0
        push = faces[since:] @ modes.drive[:, mode]
        entered = level[which[since:], mode] * push[:-1] + slope[which[since:], mode] * np.diff(push)
        left[mode] = np.exp(-rate * ago[since:]) @ entered
    return left
