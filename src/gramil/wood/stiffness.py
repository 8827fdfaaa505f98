"""How a wood's stiffness depends on its moisture: stiffer when dry, weaker when damp.

The Wood Handbook's relation P = P12 (P12 / Pg)^((12 - M) / (Mp - 12)), chapter 5, for moistures from oven-dry to Mp;
its ratios of the modulus at 12 % to the green one are from memory.
"""

import math

from gramil.quantities import Percent, Ratio

MEETS_GREEN = 25.0
"""Mp: the moisture (%) from which on most woods are as weak as green."""
OVER_GREEN = {"softwood": 1.25, "hardwood": 1.20}
"""The modulus along the grain at 12 % over that of green wood: table 5-3, clear pieces, rounded, from memory."""
OVER_GREEN_SPREAD = 0.05
"""How far woods of one group differ in that, a share: rounded from the same table, from memory."""


def stiffness_share(moisture: Percent, like: Percent, group: str = "softwood") -> Ratio:
    """The modulus at `moisture` over that at moisture `like`; beyond Mp wood counts as green. nan if it is not known.

    Group "dense hardwood" goes as hardwood.
    """
    if math.isnan(moisture) or math.isnan(like):
        return math.nan
    ratio = OVER_GREEN["softwood" if group == "softwood" else "hardwood"]
    wet, usual = (min(max(each, 0.0), MEETS_GREEN) for each in (moisture, like))
    return float(ratio ** ((usual - wet) / (MEETS_GREEN - 12.0)))


def carried_within(moisture: Percent, like: Percent) -> Ratio:
    """How far off that share may be, as a fraction of it, because woods differ."""
    return abs(like - moisture) / (MEETS_GREEN - 12.0) * OVER_GREEN_SPREAD
