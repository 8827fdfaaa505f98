"""The points of a drawn ring that a smooth curve is to go through, and which of them are corners.

Points on drawn curves, and corners of a run of short straight lines, are points of the curve. What was drawn straight
beside a curve, or is far longer than its neighbours, is kept straight: more points are set along it.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil.shapes.chains import Trace

Array = NDArray[np.float64]
CORNER = 0.5
"""In radians: a turn between neighbouring steps that is drawn as a corner; a traced curve turns less."""
FAR_LONGER = 5.0
FINE = 0.004
"""Steps along a straight part, as a part of the ring's extent."""


@dataclass(frozen=True, eq=False)
class Pins:
    """Points once round, shape (n, 2), the first not repeated; `corners` are rows."""

    points: Array
    corners: tuple[int, ...]

    def clockwise(self) -> "Pins":
        """The same, in the other order if they run anticlockwise."""
        x, y = self.points.T
        if (x * np.roll(y, -1) - np.roll(x, -1) * y).sum() <= 0:
            return self
        last = len(self.points) - 1
        return Pins(self.points[::-1], tuple(sorted(last - row for row in self.corners)))


def pins_of(ring: Trace) -> Pins:
    """Pins for a closed trace."""
    points, straight = _without_repeats(ring)
    steps = np.roll(points, -1, axis=0) - points
    lengths = np.hypot(*steps.T)
    sharp = _turns(steps) > CORNER
    fine = FINE * float(np.ptp(points, axis=0).max())
    rows: list[Array] = []
    corners: list[int] = []
    set_so_far = 0
    for row in range(len(points)):
        if sharp[row]:
            corners.append(set_so_far)
        count = _parts(row, straight, lengths, fine)
        set_so_far += count
        rows.append(points[row] + steps[row] * np.arange(count)[:, None] / count)
    return Pins(np.vstack(rows), tuple(corners))


def _without_repeats(ring: Trace) -> tuple[Array, NDArray[np.bool_]]:
    """Points once round and whether the step from each is straight, steps of no length left out."""
    lengths = np.hypot(*np.diff(ring.points, axis=0).T)
    kept = lengths > 1e-7 * float(np.ptp(ring.points, axis=0).max())
    return ring.points[:-1][kept], ring.straight[kept]


def _turns(steps: Array) -> Array:
    """How far the ring turns at each point, in radians."""
    before = np.roll(steps, 1, axis=0)
    cross = before[:, 0] * steps[:, 1] - before[:, 1] * steps[:, 0]
    return np.abs(np.arctan2(cross, (before * steps).sum(axis=1)))


def _parts(row: int, straight: NDArray[np.bool_], lengths: Array, fine: float) -> int:
    """Into how many parts the step from a point is cut: one, unless it was meant to be straight."""
    before, after = row - 1, (row + 1) % len(lengths)
    beside_curve = not (straight[before] and straight[after])
    far_longer = lengths[row] > FAR_LONGER * min(lengths[before], lengths[after])
    meant = straight[row] and (beside_curve or far_longer)
    return max(1, int(np.ceil(lengths[row] / fine))) if meant else 1
