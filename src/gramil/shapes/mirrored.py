"""Whether points lie alike on both sides of the centreline."""

import numpy as np
from numpy.typing import NDArray

ALIKE = 0.5
"""In mm: points no farther apart than this count as one. Half of what passes for a brace or a post in its place."""

Points = NDArray[np.float64]
"""Points as rows: along and across, in mm."""


def turned_over(points: Points) -> Points:
    """Points as they lie on an instrument for the other hand."""
    return points * np.array([1.0, -1.0])


def alike(ones: Points, others: Points) -> bool:
    """Whether each point of one set lies on a point of the other, in whatever order."""
    apart = ones[:, None, :] - others[None, :, :]
    return bool(np.hypot(apart[..., 0], apart[..., 1]).min(axis=1).max() <= ALIKE)
