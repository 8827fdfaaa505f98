"""How much wood swells and shrinks: across the grain by its coefficients, and what is known of it along the grain.

Source: Forest Products Laboratory, Wood Handbook, FPL-GTR-190, 2010, chapter 13, equation 13-2 and table 13-5 (movement
coefficients, from 6 to 14 % moisture). Along the grain: 0.1 to 0.2 % from green to dry, American Wood Council.
"""

from dataclasses import dataclass

from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats

COEFFICIENT_RANGE = (6.0, 14.0)
"""Moisture contents (%) between which the coefficients of table 13-5 hold."""
CARRIED_ON = (
    f"Carried on: moisture comes outside {COEFFICIENT_RANGE[0]:g} to {COEFFICIENT_RANGE[1]:g} %, between which wood's "
    "movement is published."
)
"""What is said of a figure for which moisture left that range."""
FIBRE_SATURATION = 30.0
"""Moisture content (%) above which wood is taken not to move."""
SHRINKAGE_ALONG = (0.1, 0.2)
"""Percent, green to dry, along straight grain; more in juvenile or reaction wood."""


@dataclass(frozen=True)
class Movement:
    """Change of a dimension (mm, growth positive); extrapolated is true if the moisture is outside the coefficients'
    range.
    """

    change: float
    extrapolated: bool


def outside(*moistures: float) -> bool:
    """Whether any of these moistures (%) lies outside the coefficients' range; an unknown one counts as inside."""
    low, high = COEFFICIENT_RANGE
    return any(each < low or each > high for each in moistures)


def movement(dimension: float, coefficient: float, moisture: float, later: float) -> Movement:
    """Change of a dimension (mm) that is measured at `moisture` when it comes to `later` (both %).

    coefficient is the share for each 1 % of moisture, radial or tangential. Formula: D C (M_later - M).
    """
    return Movement(dimension * coefficient * (later - moisture), outside(moisture, later))


def free_strain(coefficient: ArrayLike, moisture: ArrayLike, later: ArrayLike) -> FloatArray:
    """Strain (growth positive) of unrestrained wood, for a change of moisture content (%)."""
    return floats(coefficient) * (floats(later) - floats(moisture))


def coefficient_from_shrinkage(shrinkage: float) -> float:
    """Movement coefficient for each 1 % from total shrinkage (%), with the size at 10 % moisture for reference.

    Formula: (S/30)/(1 - 20 S/30), S as a share. It gives back table 13-5 for cherry, walnut, maples and spruces; for
    western redcedar, mahogany, khaya and old-growth redwood it does not, and must not stand in for the table.
    """
    share = shrinkage / 100.0
    return (share / FIBRE_SATURATION) / (1.0 - 20.0 * share / FIBRE_SATURATION)
