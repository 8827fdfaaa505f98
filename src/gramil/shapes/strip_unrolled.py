"""A strip between two lines in space, ruled by straight lines from one to the other, laid flat triangle by triangle.

A strip that is a little twisted does not lie flat whole: its straight lines, both its edges and one diagonal of each
step keep their lengths, and the twist goes unseen.
"""

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]


def unrolled_strip(high: Array, low: Array) -> tuple[Array, Array]:
    """Both lines laid flat, shape (n, 2) each, `high` above `low`, the ends of `low` level and its start at (0, 0).

    Both have n points, n odd, in step with each other; the strip may run out to nothing at its ends, and not in its
    middle, from which it is laid out either way.
    """
    middle = len(high) // 2
    wide = float(np.linalg.norm(high[middle] - low[middle]))
    first = (np.array([0.0, wide]), np.array([0.0, 0.0]))
    onward = _laid(high[middle:], low[middle:], first, 1.0)
    back = _laid(high[middle::-1], low[middle::-1], first, -1.0)
    flat_high, flat_low = (np.vstack((before[:0:-1], after)) for before, after in zip(back, onward, strict=True))
    return _level(flat_high, flat_low)


def _laid(high: Array, low: Array, first: tuple[Array, Array], way: float) -> tuple[Array, Array]:
    """The triangles one after another from the first straight line on, toward +x (`way` 1) or -x."""
    above, below = [first[0]], [first[1]]
    for row in range(1, len(high)):
        across, on = _apart(high[row - 1], low[row]), _apart(low[row - 1], low[row])
        below.append(_third(above[-1], below[-1], across, on, way))
        step, rung = _apart(high[row - 1], high[row]), _apart(low[row], high[row])
        above.append(_third(above[-1], below[-1], step, rung, way))
    return np.array(above), np.array(below)


def _apart(one: Array, other: Array) -> float:
    return float(np.linalg.norm(one - other))


def _third(high: Array, low: Array, from_high: float, from_low: float, way: float) -> Array:
    """The third corner of a triangle, by its distances from the other two, on the side to which the strip runs."""
    base = high - low
    length = float(np.hypot(*base))
    if length < 1e-12:
        return low + np.array([way * from_low, 0.0])
    up = (from_low**2 - from_high**2 + length**2) / (2 * length)
    out = np.sqrt(max(0.0, from_low**2 - up**2))
    unit = base / length
    return np.asarray(low + up * unit + way * out * np.array([unit[1], -unit[0]]))


def _level(high: Array, low: Array) -> tuple[Array, Array]:
    """Both turned so that the lower line's ends are level."""
    x, y = (low[-1] - low[0]) / np.hypot(*(low[-1] - low[0]))
    turn = np.array([[x, -y], [y, x]])
    return (high - low[0]) @ turn, (low - low[0]) @ turn
