"""A wood's nine elastic constants and its density, and what a board sawn of it has in its own plane."""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from gramil.physics.arrays import FloatArray

Cut = Literal["quarter", "slab"]
"""How a board is sawn: growth rings upright in it (radial across), or flat in it (tangential across)."""
SHEAR_SHARE = 5.0 / 6.0
"""What counts of a rectangle's area against shear, for it is not even over the height: Reissner's 5/6."""
TONNE = 1e-12
"""A density in kg/m3, times this, is in tonnes a mm3: with N and mm the unit of mass that gives seconds."""


@dataclass(frozen=True)
class Timber:
    """Moduli along the grain, radial and tangential (MPa), the three shear moduli (MPa), two Poisson's ratios, density.

    `poisson_lr` is what a pull along the grain takes off radially; `density` is in kg/m3.
    Raises ValueError for figures that no solid has: moduli or density not above 0, or ratios that would let it give
    work back when it is strained.
    """

    longitudinal: float
    radial: float
    tangential: float
    shear_lr: float
    shear_lt: float
    shear_rt: float
    poisson_lr: float
    poisson_lt: float
    density: float

    def __post_init__(self) -> None:
        stiff = (self.longitudinal, self.radial, self.tangential, self.shear_lr, self.shear_lt, self.shear_rt)
        if not all(figure > 0 for figure in (*stiff, self.density)):
            raise ValueError("a wood's moduli and density are above 0")
        for ratio, across in ((self.poisson_lr, self.radial), (self.poisson_lt, self.tangential)):
            if not ratio**2 * across < self.longitudinal:
                raise ValueError(f"a Poisson's ratio of {ratio:g} is more than the moduli allow")


def isotropic(modulus: float, poisson: float, density: float) -> Timber:
    """A material that is the same in every direction, like metal."""
    shear = modulus / (2.0 * (1.0 + poisson))
    return Timber(modulus, modulus, modulus, shear, shear, shear, poisson, poisson, density)


def in_plane(wood: Timber, cut: Cut = "quarter") -> FloatArray:
    """Stresses from strains of a board in its own plane, (3, 3): along the grain, across it, shear; MPa."""
    quarter = cut == "quarter"
    along, across = wood.longitudinal, wood.radial if quarter else wood.tangential
    ratio, shear = (wood.poisson_lr, wood.shear_lr) if quarter else (wood.poisson_lt, wood.shear_lt)
    held = 1.0 - ratio**2 * across / along
    both = ratio * across / held
    return np.array([[along / held, both, 0.0], [both, across / held, 0.0], [0.0, 0.0, shear]])


def through(wood: Timber, cut: Cut = "quarter") -> FloatArray:
    """Shear moduli of a board through its thickness, (2, 2), MPa: bent along the grain, bent across it (rolling)."""
    along = wood.shear_lt if cut == "quarter" else wood.shear_lr
    return np.diag([along, wood.shear_rt])


def turned(in_plane: FloatArray, through: FloatArray, angle: float) -> tuple[FloatArray, FloatArray]:
    """The same board's two matrices seen from x and y, its grain at `angle` (radians) from x."""
    c, s = np.cos(angle), np.sin(angle)
    strains = np.array([[c * c, s * s, c * s], [s * s, c * c, -c * s], [-2 * c * s, 2 * c * s, c * c - s * s]])
    slopes = np.array([[c, s], [-s, c]])
    return strains.T @ in_plane @ strains, slopes.T @ through @ slopes
