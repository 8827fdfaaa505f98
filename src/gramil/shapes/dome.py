"""A spherical dome over the plane: its fall below the apex, the foot of a bar bent to it, the volume beneath it.

Falls are measured square to the plane, from the apex down. Curvature is 1/radius, so that flat is simply 0.
"""

from dataclasses import dataclass
from functools import cached_property
from math import asin, hypot

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm, Mm3, PerMm, Radians
from gramil.shapes.arc import arc_length, sagitta
from gramil.shapes.curve import Curve
from gramil.shapes.outline import Outline

Array = NDArray[np.float64]
Point = tuple[float, float]
_POINTS, _WEIGHTS = np.polynomial.legendre.leggauss(16)


@dataclass(frozen=True)
class Dome:
    """A sphere of `curvature` in 1/mm, highest over (`apex_x`, `apex_y`) in mm."""

    curvature: PerMm
    apex_x: Mm
    apex_y: Mm = 0.0

    def fall(self, x: ArrayLike, y: ArrayLike) -> Array:
        """How far the dome at (x, y) lies below its apex, in mm; not a number beyond the sphere's edge."""
        return sagitta(self.curvature, np.hypot(np.asarray(x) - self.apex_x, np.asarray(y) - self.apex_y))

    def slope(self, x: ArrayLike, y: ArrayLike) -> Array:
        """How steeply the dome falls at (x, y), along x and along y: mm a mm, shape (..., 2)."""
        out = np.stack((np.asarray(x) - self.apex_x, np.asarray(y) - self.apex_y), axis=-1)
        upright = np.sqrt(1 - self.curvature**2 * (out**2).sum(axis=-1, keepdims=True))
        return np.asarray(self.curvature * out / upright)

    def fall_from_chord(self, x: ArrayLike, y: ArrayLike, start: Point, end: Point) -> Array:
        """How far the dome at (x, y) lies below the straight line between its points over `start` and `end`.

        The line is carried out level on either side, square to its own direction seen from above. Negative where
        the dome stands over it; 0 at both points.
        """
        across, up = np.asarray(x, dtype=np.float64) - start[0], np.asarray(y, dtype=np.float64) - start[1]
        dx, dy = end[0] - start[0], end[1] - start[1]
        share = (across * dx + up * dy) / (dx**2 + dy**2)
        first, last = self.fall(*start), self.fall(*end)
        return np.asarray(self.fall(x, y) - (first + share * (last - first)))


@dataclass(frozen=True)
class ArchedFoot:
    """The foot of a straight bar on a dome: an arc of a circle of `curvature` (1/mm) over a straight `chord` (mm).

    `tilt`: the chord's slope against the plane in radians, positive where the bar's end is lower than its start.
    """

    chord: Mm
    curvature: PerMm
    tilt: Radians

    @property
    def sagitta(self) -> Mm:
        """How high the arc stands over its chord in the middle."""
        return float(sagitta(self.curvature, self.chord / 2))

    @property
    def arc(self) -> Mm:
        """Length of the arc."""
        return arc_length(self.curvature, self.chord)

    def height(self, along: ArrayLike) -> Array:
        """How high the arc stands over its chord at distances along the chord from its start, in mm."""
        return self.sagitta - sagitta(self.curvature, np.asarray(along, dtype=np.float64) - self.chord / 2)


def arched_foot(dome: Dome, start: Point, end: Point) -> ArchedFoot:
    """The foot of a bar that stands upright on the dome along the straight line from `start` to `end`, seen from above.

    An upright plane at a distance d from the apex cuts a sphere of radius R in a circle of radius sqrt(R^2 - d^2).
    """
    length = hypot(end[0] - start[0], end[1] - start[1])
    drop = float(dome.fall(*end) - dome.fall(*start))
    chord = hypot(length, drop)
    cross = (end[0] - start[0]) * (dome.apex_y - start[1]) - (end[1] - start[1]) * (dome.apex_x - start[0])
    aside = dome.curvature * cross / length
    return ArchedFoot(chord, dome.curvature / np.sqrt(1 - aside**2), asin(drop / chord))


@dataclass(frozen=True)
class Cover:
    """A dome over an outline."""

    dome: Dome
    outline: Outline

    @cached_property
    def fall_volume(self) -> Mm3:
        """Volume between the dome and the level plane that touches its apex, over the outline's area."""
        return sum(self._under(each.curve) for each in self.outline.halves) / 2

    def _under(self, half: Curve) -> Mm3:
        """The same volume over one half and its mirror image."""
        place, velocity = half.place(half.nodes), half.velocity(half.nodes)
        x, y = place[..., 0, None], place[..., 1, None]
        across = (self.dome.fall(x, y * _POINTS) * _WEIGHTS).sum(axis=-1) * place[..., 1]
        return float((half.weights * across * velocity[..., 0]).sum())

    def volume_over_chord(self, start: Point, end: Point) -> Mm3:
        """Volume, over the outline's area, between the dome and the level-sided plane through its points at two places.

        Places on the axis, as the outline's ends are. Negative where more of the dome lies below the plane.
        """
        first, last = self.dome.fall(*start), self.dome.fall(*end)
        share = (self.outline.centroid - start[0]) / (end[0] - start[0])
        return float(self.outline.area * (first + share * (last - first))) - self.fall_volume
