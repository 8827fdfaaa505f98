"""The air of a box with holes, as a spring and masses: a rigid Helmholtz resonator.

Walls that give make a real box sound lower; the rigid formula is an upper bound.
"""

import math
from collections.abc import Iterable

from gramil.quantities import Celsius, Hertz, Mm, Mm2, Mm3

HEAT_RATIO = 1.4
"""Heat capacities of dry air, constant pressure over constant volume, for an ideal gas of two-atom molecules."""
GAS_CONSTANT = 8.314462618
"""In J/(mol K), exact by the SI's definition."""
MOLAR_MASS = 0.028965
"""Of dry air in kg/mol."""
BOTH_ENDS_FLANGED = 1.7
"""What the air moving on both sides of a hole in a wall adds to its depth, over the hole's radius: 2 x 8 / (3 pi)."""


def speed_of_sound(temperature: Celsius) -> float:
    """Speed of sound in dry air in mm/s, of an ideal gas: sqrt(gamma R T / M)."""
    kelvin = temperature + 273.15
    return 1000.0 * math.sqrt(HEAT_RATIO * GAS_CONSTANT * kelvin / MOLAR_MASS)


def effective_depth(depth: Mm, radius: Mm) -> Mm:
    """Length of the plug of air that moves in a round hole of `radius` through a wall `depth` thick, t + 1.7 r."""
    return depth + BOTH_ENDS_FLANGED * radius


def conductance(area: Mm2, depth: Mm) -> Mm:
    """How easily air goes through a hole, in mm: its area over the effective depth of its plug."""
    return area / depth


def helmholtz_frequency(openings: Iterable[Mm], volume: Mm3, speed: float) -> Hertz:
    """Frequency of a rigid box with these openings, each by its conductance (mm); `speed` of sound in mm/s.

    Formula: c / (2 pi) sqrt(sum of conductances / volume). Air goes through several holes as current through wires side
    by side, if they lie well apart: their conductances add, and a port makes the box sound higher.
    """
    return speed / (2 * math.pi) * math.sqrt(sum(openings) / volume)
