"""How far a straight line stays within a ring, either way from a point on it; rings are closed runs of close points."""

import math

import numpy as np
from numpy.typing import NDArray

from gramil.shapes.planar import Point, lines_meet

Array = NDArray[np.float64]


def inside_ring(ring: Array, point: Point) -> bool:
    """Whether a point lies within a ring: a line from it meets the ring an odd number of times."""
    return bool((_met(ring, point, (1.0, 0.0)) > 0).sum() % 2)


def reach_within(ring: Array, point: Point, direction: Point) -> tuple[float, float]:
    """Distances along a line from `point` to where it leaves the ring, back (negative) and on; nan from outside.

    `direction` has length 1.
    """
    along = _met(ring, point, direction)
    if not (along > 0).sum() % 2:
        return math.nan, math.nan
    return float(along[along < 0].max()), float(along[along > 0].min())


def first_met(ring: Array, point: Point, direction: Point) -> float:
    """Distance along a line from `point` to where it first meets the ring, ahead of it; infinite where it does not."""
    along = _met(ring, point, direction)
    return float(along[along > 0].min(initial=math.inf))


def _met(ring: Array, point: Point, direction: Point) -> Array:
    """Distances along a line at which it meets the ring."""
    from_point = ring - np.asarray(point)
    aside = from_point @ np.array([-direction[1], direction[0]])
    along = from_point @ np.asarray(direction)
    crossing = np.nonzero((aside[1:] > 0) != (aside[:-1] > 0))[0]
    share = aside[crossing] / (aside[crossing] - aside[crossing + 1])
    return np.asarray(along[crossing] + share * (along[crossing + 1] - along[crossing]))


def distance_to_line(point: Point, direction: Point, other: Point, other_direction: Point, half: float) -> float:
    """Distance along a line from `point` to the near side of a strip of half-width `half`; nan where parallel.

    `direction` has length 1; the distance is negative where the strip lies behind the point.
    """
    place = lines_meet(point, direction, other, other_direction)
    if place is None:
        return math.nan
    along = (place[0] - point[0]) * direction[0] + (place[1] - point[1]) * direction[1]
    cross = direction[0] * other_direction[1] - direction[1] * other_direction[0]
    slant = half * math.hypot(*other_direction) / abs(cross)
    return along - math.copysign(slant, along)
