"""Sizes by total shrinkage: Forest Products Laboratory, Wood Handbook, FPL-GTR-190, 2010, chapter 4, equation 4-7."""

FIBRE_SATURATION = 30.0
"""Moisture content (%) above which the handbook lets no wood move."""


def size_from_shrinkage(dimension: float, shrinkage: float, moisture: float, later: float) -> float:
    """What a dimension (mm) at `moisture` becomes at `later` (both %), by total shrinkage (%, green to dry).

    Each size is the green one times 1 - S/100 (30 - M)/30.
    """
    return dimension * _share_of_green(shrinkage, later) / _share_of_green(shrinkage, moisture)


def _share_of_green(shrinkage: float, moisture: float) -> float:
    below = max(0.0, FIBRE_SATURATION - moisture)
    return 1.0 - shrinkage / 100.0 * below / FIBRE_SATURATION
