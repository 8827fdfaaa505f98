"""A box within its walls: the volume inside sides of even thickness."""

import numpy as np

from gramil.quantities import Mm, Mm3
from gramil.shapes.unrolled import UnrolledSide, enclosed_volume


def volume_within(side: UnrolledSide, wall: Mm) -> Mm3:
    """Volume in mm3 inside walls that stand `wall` mm in from the side's outline.

    A strip along a curve that bends by k (1/mm) is (wall - k wall^2 / 2) wide for each mm of its outer edge, k positive
    where it bulges out; it is taken as deep as at that edge. What two strips share at a corner is counted twice: both
    together are a few hundred mm3 on a box of litres.
    """
    return enclosed_volume(side) - sum(_behind(each, wall) for each in (side, side.other))


def _behind(side: UnrolledSide, wall: Mm) -> Mm3:
    """Volume of one half's wall."""
    half = side.half
    places = half.place(half.nodes)
    velocity = half.velocity(half.nodes)
    strips = wall + half.turning(half.nodes) * wall**2 / 2
    speed = np.hypot(velocity[..., 0], velocity[..., 1])
    deep = side.upper_at(places) - side.lower_at(places)
    return float((half.weights * speed * strips * deep).sum())


def inner_length(side: UnrolledSide, inset: Mm) -> Mm:
    """Length of the side's half of the outline, end to end, moved in by `inset` mm, corners left as they are."""
    half = side.half
    velocity = half.velocity(half.nodes)
    speed = np.hypot(velocity[..., 0], velocity[..., 1])
    return float((half.weights * speed * (1 + half.turning(half.nodes) * inset)).sum())
