"""Half of an outline, drawn to its middle line and no farther: found, and mirrored.

The middle line runs along x or along y. It may be drawn, so that the half is closed by it, or left out, so that both
the half's ends lie on it. A whole outline with a gap is no half: its ends lie near each other.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from gramil.shapes.chains import Trace

WHOLE_WAY = 0.9
"""A half's ends lie at least so far apart, as a share of how far it reaches along its middle line."""


def mirrored(chains: Sequence[Trace], slack: float) -> Trace | None:
    """The closed line that the one open half among the chains makes with its mirror image; None if there is no such
    half, or more than one. `slack`: how far its ends may lie off one middle line, in the drawing's units.
    """
    halves = [found for each in chains if (found := _with_image(each, slack)) is not None]
    return halves[0] if len(halves) == 1 else None


def opened(ring: Trace, slack: float) -> Trace | None:
    """A closed half without its drawn middle line, open; None if no straight side runs its whole length."""
    for axis in (0, 1):
        for outermost in (ring.points[:, 1 - axis].min(), ring.points[:, 1 - axis].max()):
            on_it = np.abs(ring.points[:, 1 - axis] - outermost) <= slack
            middle = ring.straight & on_it[:-1] & on_it[1:]
            lengths = np.abs(np.diff(ring.points[:, axis]))
            if lengths[middle].sum() >= WHOLE_WAY * np.ptp(ring.points[:, axis]):
                return _without(ring, middle)
    return None


def _without(ring: Trace, middle: NDArray[np.bool_]) -> Trace | None:
    """What is left of a ring without the steps of one run; None where they are several runs."""
    starts = np.flatnonzero(~middle & np.roll(middle, 1))
    if len(starts) != 1:
        return None
    first, left = int(starts[0]), int((~middle).sum())
    steps = (first + np.arange(left)) % len(middle)
    points = np.vstack((ring.points[steps], ring.points[(steps[-1] + 1) % len(middle)]))
    return replace(ring, points=points, straight=ring.straight[steps])


def _with_image(half: Trace, slack: float) -> Trace | None:
    points = half.points
    for axis in (0, 1):
        across = points[:, 1 - axis] - (points[0, 1 - axis] + points[-1, 1 - axis]) / 2
        apart = abs(points[-1, axis] - points[0, axis])
        level = abs(across[0]) <= slack / 2
        one_side = across.min() >= -slack or across.max() <= slack
        if level and one_side and apart >= WHOLE_WAY * np.ptp(points[:, axis]) > 0:
            return _closed(half, axis)
    return None


def _closed(half: Trace, axis: int) -> Trace:
    """The half and its image, one after the other, its ends moved onto the middle line."""
    middle = (half.points[0, 1 - axis] + half.points[-1, 1 - axis]) / 2
    points = half.points.copy()
    points[[0, -1], 1 - axis] = middle
    image = points[::-1].copy()
    image[:, 1 - axis] = 2 * middle - image[:, 1 - axis]
    return replace(
        half, points=np.vstack((points, image[1:])), straight=np.concatenate((half.straight, half.straight[::-1]))
    )
