"""One stretched string: its weight and tension, and how its stiffness raises its pitch.

A string of bending stiffness EI under tension T, L long, has `epsilon = sqrt(EI / (T L^2))`. Everything that
stiffness does to the pitch follows from epsilon and from how the two ends are held. The series holds for a small
epsilon (the third power is left out): under 0.01 for any string that is played.
Source: H. Fletcher, "Normal vibration frequencies of a stiff piano string", J. Acoust. Soc. Am. 36, 203 (1964);
N. H. Fletcher and T. D. Rossing, "The Physics of Musical Instruments", 2nd ed., section 2.18.
"""

import math

import numpy as np
from numpy.typing import ArrayLike

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray, floats

ROUND_WIRE_PACKING = math.pi / 4.0
"""Share of the ring round the core that a close winding of undeformed round wire fills."""


def plain_density(diameter: ArrayLike, material_density: ArrayLike) -> FloatArray:
    """Weight of a solid round string, g/m: `rho pi d^2 / 4`, diameter in mm, rho in kg/m3."""
    return floats(material_density) * disc_area(diameter) * 1e-3


def wound_density(
    core: ArrayLike,
    outside: ArrayLike,
    core_density: ArrayLike,
    wrap_density: ArrayLike,
    packing: ArrayLike = ROUND_WIRE_PACKING,
) -> FloatArray:
    """Weight of a wound string, g/m, from its core and outside diameters in mm and densities in kg/m3.

    Formula: `rho_core pi c^2/4 + packing rho_wrap pi (D^2 - c^2)/4`. An estimate: it takes a round core and turns
    that touch each other and do not bite into the core, where round wire fills pi/4 of the ring. Flattened or
    polished wraps fill more, open windings and hexagonal cores less; a weight off the packet is better.
    Raises MakersFault unless the outside is larger than the core.
    """
    if np.any(floats(outside) <= floats(core)):
        raise MakersFault.of("a wound string no larger outside than its core", remedy="check the two diameters")
    ring = disc_area(outside) - disc_area(core)
    return (floats(core_density) * disc_area(core) + floats(packing) * floats(wrap_density) * ring) * 1e-3


def disc_area(diameter: ArrayLike) -> FloatArray:
    """Area of a round section, mm2."""
    return math.pi * floats(diameter) ** 2 / 4.0


def tension(density: ArrayLike, length: ArrayLike, frequency: ArrayLike) -> FloatArray:
    """Pull of a string tuned to a frequency, N: `mu (2 L f)^2`, mu in g/m, L in mm, f in Hz."""
    return floats(density) * (2.0 * floats(length) * floats(frequency)) ** 2 * 1e-9


def one_end_clamped_factor(epsilon: ArrayLike, partial: ArrayLike = 1) -> FloatArray:
    """By how much stiffness raises a partial when one end is held in direction and the saddle's is free to turn.

    Formula: `1 + epsilon + (1 + pi^2 n^2 / 2) epsilon^2`. Source: M. B. Anderson and R. G. Beausoleil, J. Acoust. Soc.
    Am. 156(1), 683 (2024).
    """
    stiffness, number = floats(epsilon), floats(partial)
    return 1.0 + stiffness + (1.0 + (math.pi * number) ** 2 / 2.0) * stiffness**2
