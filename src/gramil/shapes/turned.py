"""A line turned about a point until a place on it, or over it, comes to stand at a height."""

import numpy as np

from gramil.quantities import Mm, Radians


def turned_to(rise: Mm, run: Mm, height: Mm) -> Radians:
    """The angle at which a point `run` along and `height` over a turned line comes to stand at `rise`; nan for none.

    It solves run sin(angle) + height cos(angle) = rise.
    """
    reach = np.hypot(run, height)
    with np.errstate(invalid="ignore"):
        return float(np.arcsin(rise / reach) - np.arctan2(height, run))
