"""Layers glued on one another: how a plate of them resists being stretched, bent and sheared, and what it weighs.

Strains of a plate, in this order: stretch along x and y, shear in the plane; bending along x and y, twist; and the two
shears through the thickness. Heights are over the first wood's middle plane.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.plates.timber import SHEAR_SHARE, TONNE, Cut, Timber, in_plane, through, turned

STRAINS = 8


@dataclass(frozen=True)
class Ply:
    """A layer's wood, its grain's angle from x in radians, and how it was sawn."""

    wood: Timber
    grain: float = 0.0
    cut: Cut = "quarter"


Layer = tuple[Ply, ArrayLike, ArrayLike]
"""A ply with the heights of its lower and upper face, in mm; of any shape, one for each place."""


def stiffness(layers: Sequence[Layer]) -> FloatArray:
    """Forces and couples a mm by the strains and bends that cause them, (..., 8, 8).

    The dots are the shape of the heights of the layers' faces.
    """
    rows = [_stiffness(ply, floats(low), floats(high)) for ply, low, high in layers]
    return np.sum(rows, axis=0) if len(rows) > 1 else rows[0]


def _stiffness(ply: Ply, low: FloatArray, high: FloatArray) -> FloatArray:
    plane, shear = turned(in_plane(ply.wood, ply.cut), through(ply.wood, ply.cut), ply.grain)
    none, first, second = (_moment(low, high, power)[..., None, None] for power in (0, 1, 2))
    matrix = np.zeros((*np.broadcast(low, high).shape, STRAINS, STRAINS))
    matrix[..., :3, :3] = plane * none
    matrix[..., :3, 3:6] = matrix[..., 3:6, :3] = plane * first
    matrix[..., 3:6, 3:6] = plane * second
    matrix[..., 6:, 6:] = SHEAR_SHARE * shear * none
    return matrix


def inertia(layers: Sequence[Layer]) -> FloatArray:
    """Mass, its first and its second moment over the middle plane, (..., 3), in tonnes a mm2 and mm to the power."""
    rows = [
        TONNE * ply.wood.density * np.stack([_moment(floats(low), floats(high), power) for power in (0, 1, 2)], axis=-1)
        for ply, low, high in layers
    ]
    return floats(np.sum(rows, axis=0))


def _moment(low: FloatArray, high: FloatArray, power: int) -> FloatArray:
    """The integral of z to a power from face to face."""
    return floats((high ** (power + 1) - low ** (power + 1)) / (power + 1))
