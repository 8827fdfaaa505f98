"""Both halves of a closed curve as it is drawn about the x axis, each drawn above it."""

import numpy as np
from numpy.typing import NDArray

from gramil.shapes.curve import Curve
from gramil.shapes.symmetry import CLOSE, CORNER, Half, breaks_between, turn_at

Array = NDArray[np.float64]


def halves_as_drawn(curve: Curve) -> tuple[Half, Half] | None:
    """Upper and lower half of a curve that runs clockwise, from its end of least x on the axis to the other.

    In the drawing's units. None where it does not meet the axis in two places.
    """
    ends = curve.meets((0.0, 0.0), (1.0, 0.0))
    if len(ends) == 3:  # the curve's own start, found at its end too
        ends = ends[:-1]
    if len(ends) != 2:
        return None
    first, last = sorted(ends.tolist(), key=lambda each: float(curve.place(each)[0]))
    upper, lower = _half(curve, first, last), _half(curve, last, first)
    rows = len(lower.points) - 1
    turned = Half(tuple((x, -y) for x, y in lower.points[::-1]), tuple(sorted(rows - row for row in lower.corners)))
    return (upper, turned) if all(y >= 0 for each in (upper, turned) for _, y in each.points) else None


def _half(curve: Curve, first: float, last: float) -> Half:
    """The breaks from the one end to the other, and both ends; what is an end already is left out."""
    places = [first, *breaks_between(curve.breaks[:-1], first, last), last]
    points = curve.place(np.array(places))
    points[[0, -1], 1] = 0.0
    sharp = [turn_at(curve, each) > CORNER for each in places]
    close = CLOSE / 500.0 * float(np.ptp(points[:, 0]))
    apart = [min(float(np.hypot(*(point - points[row]))) for row in (0, -1)) > close for point in points]
    kept = [0, *(row for row in range(1, len(places) - 1) if apart[row]), len(places) - 1]
    return Half(
        tuple((float(x), float(y) + 0.0) for x, y in points[kept]),
        tuple(at for at, row in enumerate(kept) if sharp[row]),
    )
