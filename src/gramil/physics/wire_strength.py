"""What a wire bears: its strength by diameter, its stress at a tension, and how far it stretches."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.stiff_string import disc_area


@dataclass(frozen=True)
class StrengthLaw:
    """Least tensile strength of drawn wire, `A / d^m` in MPa with d in mm, between two diameters.

    Thin wire is the stronger, having been drawn further. `source` says where A and m come from, `flag` how surely.
    """

    coefficient: float
    exponent: float
    smallest: float
    largest: float
    source: str
    flag: str

    def strength(self, diameter: ArrayLike) -> FloatArray:
        """MPa at a diameter in mm; nan outside the diameters that the law was fitted to: not known is not safe."""
        across = floats(diameter)
        inside = (across >= self.smallest) & (across <= self.largest)
        return np.where(inside, self.coefficient / across**self.exponent, np.nan)


def breaking_load(diameter: ArrayLike, law: StrengthLaw) -> FloatArray:
    """The pull in N at which a round wire (of a wound string, the core) breaks: strength times section."""
    return law.strength(diameter) * disc_area(diameter)


def stress(pull: ArrayLike, diameter: ArrayLike) -> FloatArray:
    """Stress of a round wire, MPa; of a wound string, of its core, which bears the pull alone."""
    return floats(pull) / disc_area(diameter)


def elongation(pull: ArrayLike, length: ArrayLike, diameter: ArrayLike, modulus: ArrayLike) -> FloatArray:
    """How much longer a wire becomes between two points `length` mm apart, mm: `T L / (E A)`, E in MPa.

    The diameter is the core's for a wound string. Linear: good for metal; nylon creeps, and stretches more.
    """
    return stress(pull, diameter) * floats(length) / floats(modulus)
