"""A beam glued up of layers: its stiffness, and how it curves when its layers want different lengths.

Every array's last axis is the layers; axes before it (stations along a beam, cases of a range) are carried along.
Lengths in mm, moduli in MPa, so EA is in N and EI in N mm2. Heights are over any one line, upward positive; a
positive curvature has its ends upward, as a beam bent towards what lies above it.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats


@dataclass(frozen=True)
class Layers:
    """Layers' moduli (MPa), areas (mm2), heights of their centroids (mm), and inertias about those (mm4)."""

    modulus: FloatArray
    area: FloatArray
    centroid: FloatArray
    inertia: FloatArray


@dataclass(frozen=True)
class Section:
    """The layers acting as one: EI (N mm2) about the neutral axis, and that axis's height (mm)."""

    bending_stiffness: FloatArray
    neutral_axis: FloatArray


def rectangles(modulus: ArrayLike, width: ArrayLike, thickness: ArrayLike, centroid: ArrayLike) -> Layers:
    """Layers of rectangular section; shapes that numpy broadcasts, the last axis the layers."""
    stiff, wide, thick, middle = np.broadcast_arrays(*map(floats, (modulus, width, thickness, centroid)))
    return Layers(stiff, wide * thick, middle, wide * thick**3 / 12.0)


def stacked(modulus: ArrayLike, width: ArrayLike, thickness: ArrayLike) -> Layers:
    """Rectangular layers lying on one another, the first at the bottom, heights over its underside."""
    thick = floats(thickness)
    return rectangles(modulus, width, thick, np.cumsum(thick, axis=-1) - thick / 2.0)


def section(layers: Layers) -> Section:
    """Transformed section: the EA-weighted centroid, and EI about it by the parallel-axis rule."""
    axial = layers.modulus * layers.area
    neutral = (axial * layers.centroid).sum(axis=-1) / axial.sum(axis=-1)
    lever = layers.centroid - neutral[..., None]
    bending = (layers.modulus * layers.inertia + axial * lever**2).sum(axis=-1)
    return Section(bending, neutral)


def free_strain_curvature(layers: Layers, free_strain: ArrayLike) -> FloatArray:
    """Curvature (1/mm) that layers take, glued and left alone, when each wants to be longer by its free strain.

    Equilibrium without outside force: `sum(E A e (y - y0)) / EI`, so a layer above that grows bows the ends down,
    and the sign is turned. Of one cause only: strain is even through a layer. For two layers it is S. Timoshenko,
    "Analysis of bi-metal thermostats", J. Opt. Soc. Am. & Rev. Sci. Instr. 11, 233 (1925).
    """
    whole = section(layers)
    lever = layers.centroid - whole.neutral_axis[..., None]
    moment = (layers.modulus * layers.area * floats(free_strain) * lever).sum(axis=-1)
    return floats(-moment / whole.bending_stiffness)


def sagitta(curvature: ArrayLike, span: ArrayLike) -> FloatArray:
    """Depth of an arc of constant curvature (1/mm) under its chord `span` (mm); exact, and signed as the curvature.

    Raises ValueError for a chord longer than the circle is wide.
    """
    bend, half = floats(curvature), floats(span) / 2.0
    inside = 1.0 - (bend * half) ** 2
    if np.any(inside < 0.0):
        raise ValueError("a chord is no longer than the circle is wide")
    return floats(bend * half**2 / (1.0 + np.sqrt(inside)))
