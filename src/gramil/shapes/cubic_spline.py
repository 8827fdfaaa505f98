"""The cubic spline through given values: two derivatives in common at every inner break.

The slopes at the breaks solve a system with three entries a row (C. de Boor, "A Practical Guide to Splines", 1978,
chapter IV): our own, because a general library takes long to load; the tests compare it with one.
"""

from typing import Literal

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Bound = Literal["not-a-knot", "level", "straight"]
"""At an end: the first two pieces are one cubic; the slope is zero; the second derivative is zero."""
Bounds = Literal["periodic"] | tuple[Bound, Bound]


def cubic_spline(breaks: Array, values: Array, bounds: Bounds) -> Array:
    """Coefficients, shape (4, pieces), highest power first, of the spline through `values` (n,) at `breaks` (n,).

    `breaks` rise; n is 3 at least. The first and last value of a periodic one are the same.
    """
    steps = np.diff(breaks)
    rises = np.diff(values) / steps
    slopes = _periodic_slopes(steps, rises) if bounds == "periodic" else _slopes(steps, rises, *bounds)
    bend = (slopes[:-1] + slopes[1:] - 2 * rises) / steps
    return np.stack((bend / steps, (rises - slopes[:-1]) / steps - bend, slopes[:-1], values[:-1]))


def _slopes(steps: Array, rises: Array, start: Bound, end: Bound) -> Array:
    if len(steps) == 2 and start == end == "not-a-knot":
        return _slopes_of_parabola(steps, rises)
    below, middle, above, right = (np.zeros(len(steps) + 1) for _ in range(4))
    middle[1:-1] = 2 * (steps[:-1] + steps[1:])
    below[1:-1], above[1:-1] = steps[1:], steps[:-1]
    right[1:-1] = 3 * (steps[1:] * rises[:-1] + steps[:-1] * rises[1:])
    middle[0], above[0], right[0] = _at_end(start, steps, rises)
    middle[-1], below[-1], right[-1] = _at_end(end, steps[::-1], rises[::-1])
    return _solved(below, middle, above, right)


def _slopes_of_parabola(steps: Array, rises: Array) -> Array:
    """Through three values with neither end given: a parabola."""
    bend = (rises[1] - rises[0]) / steps.sum()
    return np.array([rises[0] - bend * steps[0], rises[0] + bend * steps[0], rises[1] + bend * steps[1]])


def _at_end(bound: Bound, steps: Array, rises: Array) -> tuple[float, float, float]:
    """The end's own entry, its neighbour's and the right side; `steps` and `rises` counted from that end."""
    if bound == "level":
        return 1.0, 0.0, 0.0
    if bound == "straight":
        return 2 * steps[0], steps[0], 3 * steps[0] * rises[0]
    both = steps[0] + steps[1]
    right = ((steps[0] + 2 * both) * steps[1] * rises[0] + steps[0] ** 2 * rises[1]) / both
    return steps[1], both, right


def _periodic_slopes(steps: Array, rises: Array) -> Array:
    """Slopes of a closed run, by the rank-one rule (Sherman and Morrison): the two corner entries are one product."""
    before, rises_before = np.roll(steps, 1), np.roll(rises, 1)
    middle, below, above = 2 * (before + steps), steps.copy(), before.copy()
    right = 3 * (steps * rises_before + before * rises)
    if len(steps) == 2:
        return _slopes_of_two(middle, below + above, right)
    corner = -middle[0]
    middle[0] -= corner
    middle[-1] -= above[-1] * below[0] / corner
    column = np.zeros(len(steps))
    column[0], column[-1] = corner, above[-1]
    plain, turned = _solved(below, middle, above, right), _solved(below, middle, above, column)
    share = below[0] / corner
    factor = (plain[0] + share * plain[-1]) / (1 + turned[0] + share * turned[-1])
    slopes = plain - factor * turned
    return np.append(slopes, slopes[0])


def _slopes_of_two(middle: Array, beside: Array, right: Array) -> Array:
    slopes = np.linalg.solve(np.array([[middle[0], beside[0]], [beside[1], middle[1]]]), right)
    return np.append(slopes, slopes[0])


def _solved(below: Array, middle: Array, above: Array, right: Array) -> Array:
    """The unknowns of a system with three entries a row, by elimination: its middle ones outweigh the others."""
    low, centre, high, known = below.tolist(), middle.tolist(), above.tolist(), right.tolist()
    for row in range(1, len(centre)):
        share = low[row] / centre[row - 1]
        centre[row] -= share * high[row - 1]
        known[row] -= share * known[row - 1]
    known[-1] /= centre[-1]
    for row in range(len(centre) - 2, -1, -1):
        known[row] = (known[row] - high[row] * known[row + 1]) / centre[row]
    return np.array(known)
