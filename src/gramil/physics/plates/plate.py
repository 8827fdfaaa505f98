"""A plate as described: where it is, what it is made of, how thick, how arched, and what holds its edge."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.edge import CLAMPED, Hold
from gramil.physics.plates.plies import Layer, Ply

Field = Callable[[FloatArray], FloatArray]
"""A figure for each place: points (..., 2) in mm give (...)."""


@dataclass(frozen=True, eq=False)
class Plate:
    """A plate within `outline`, less `holes`: closed rings (n, 2) of points in mm, in any direction.

    `thickness` is in mm, one figure or one for each place; `rise` the height of its unloaded middle over the plane,
    for a shallow arch. `holds` say what the edge rests on, ring by ring; what none of them names is free.
    """

    outline: FloatArray
    ply: Ply
    thickness: float | Field
    holes: tuple[FloatArray, ...] = ()
    rise: Field | None = None
    holds: tuple[Hold, ...] = (Hold(CLAMPED),)


def thickness_at(plate: Plate, points: FloatArray) -> FloatArray:
    """The plate's thickness at points (..., 2)."""
    if callable(plate.thickness):
        return plate.thickness(points)
    return np.full(points.shape[:-1], float(plate.thickness))


def layers_at(plate: Plate, points: FloatArray) -> list[Layer]:
    """The plate as plies at points (..., 2), with the heights of their faces."""
    half = 0.5 * thickness_at(plate, points)
    return [(plate.ply, -half, half)]


def spherical(radius: float, apex: tuple[float, float]) -> Field:
    """The rise of a shallow sphere of `radius` mm, highest over `apex`: -r^2 / (2 radius)."""

    def rise(points: FloatArray) -> FloatArray:
        return -((points - np.asarray(apex)) ** 2).sum(axis=-1) / (2.0 * radius)

    return rise
