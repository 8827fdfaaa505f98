"""A plate over a box with a hole: the plate and the plug of air as two masses on the springs of plate and air.

What the walls radiate and lose is left out, and so are the plate's higher modes: it gives the two lowest resonances of
such a box, and no more. O. Christensen and B. B. Vistisen, "Simple model for low-frequency guitar function", J. Acoust.
Soc. Am. 68 (1980), from memory.
"""

import math
from dataclasses import dataclass

from gramil.physics.air_resonance import conductance, helmholtz_frequency
from gramil.quantities import Hertz, Mm, Mm2, Mm3


@dataclass(frozen=True)
class Piston:
    """A plate's mode as a piston: its frequency with nothing behind it, the area (mm2) and the mass (kg) that move.

    Both are reckoned to the same place of the plate: only area squared over mass counts.
    """

    frequency: Hertz
    area: Mm2
    mass: float


@dataclass(frozen=True)
class Box:
    """The air behind it: volume, the hole's area, its plug's length with the ends, density (kg/m3), speed (mm/s)."""

    volume: Mm3
    hole: Mm2
    plug: Mm
    density: float
    speed: float


@dataclass(frozen=True)
class TwoMass:
    """Frequencies in Hz: the rigid box's, the plate's on the closed box, and the two that the open box has."""

    box: Hertz
    closed: Hertz
    lower: Hertz
    upper: Hertz


def two_mass(piston: Piston, box: Box) -> TwoMass:
    """Where the two lowest resonances lie.

    They satisfy lower x upper = box x plate's own, and lower^2 + upper^2 = box^2 + closed^2.
    """
    spring = 1e-12 * box.density * box.speed**2 * piston.area**2 / box.volume  # N/mm, for density is in kg/m3
    pushed = spring / (1e-3 * piston.mass) / (2 * math.pi) ** 2
    closed = math.sqrt(piston.frequency**2 + pushed)
    rigid = helmholtz_frequency([conductance(box.hole, box.plug)], box.volume, box.speed)
    middle = 0.5 * (rigid**2 + closed**2)
    apart = math.sqrt(middle**2 - (rigid * piston.frequency) ** 2)
    return TwoMass(rigid, closed, math.sqrt(middle - apart), math.sqrt(middle + apart))
