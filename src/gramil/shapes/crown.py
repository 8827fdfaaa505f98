"""A crowned strip: flat, cylindrical or conical, with its crest along the x axis.

Sections square to the crest are circles whose radius runs straight from one end to the other; the surface is
measured by its fall below the crest. Curvature (1/R) is used throughout, so that flat is simply 0.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm, PerMm
from gramil.shapes.arc import sagitta


@dataclass(frozen=True)
class Crown:
    """The surface from x = 0, where it has `curvature_start`, to x = `length`, where it has `curvature_end`.

    Either both curvatures are 0 (flat) or neither is.
    """

    curvature_start: PerMm
    curvature_end: PerMm
    length: Mm

    def curvature(self, x: ArrayLike) -> NDArray[np.float64]:
        """Curvature at x in 1/mm, such that R = 1/curvature is linear in x."""
        along = np.asarray(x, dtype=np.float64) / self.length
        if self.curvature_start == 0:
            return np.zeros_like(along)
        slope = self.curvature_start / self.curvature_end - 1
        return self.curvature_start / (1 + slope * along)

    def fall(self, x: ArrayLike, y: ArrayLike) -> NDArray[np.float64]:
        """How far the surface at (x, y) lies below the crest, in mm: R - sqrt(R^2 - y^2), written flat-safe."""
        return sagitta(self.curvature(x), y)
