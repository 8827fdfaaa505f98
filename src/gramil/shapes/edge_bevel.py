"""A bevel along the edge of a walled box: between a line on its face and a line on its wall, ruled by straight lines.

Both lines leave the edge where the bevel begins, swell to their greatest distance from it in the middle, and run back.
They swell as (1 + cos) / 2 does over one whole turn, which leaves and meets the edge without a kink. Heights are those
over the plane of the outline, outward from the box: of the upper face as they are, of the lower one turned over.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm, Mm2
from gramil.shapes.strip_unrolled import unrolled_strip
from gramil.shapes.unrolled import UnrolledSide

Array = NDArray[np.float64]
STEPS = 256
"""Into how many steps the bevel's length is cut, an even number: its middle is one of the places between them."""


@dataclass(frozen=True)
class EdgeBevel:
    """A bevel of the `side`'s upper or lower edge, `over` being the thickness of the face's plate on that edge.

    `width`: on the face at the middle, square to the outline; `drop`: down the wall there, from the face. `length` is
    along the outline, `middle` the distance along at its middle. All in mm.
    """

    side: UnrolledSide
    upper: bool
    over: Mm
    width: Mm
    drop: Mm
    length: Mm
    middle: Mm

    @property
    def start(self) -> Mm:
        """Where it begins, along."""
        return self.middle - self.length / 2

    @property
    def stop(self) -> Mm:
        """Where it ends, along."""
        return self.middle + self.length / 2

    @cached_property
    def along(self) -> Array:
        """Distances along at even steps, both ends and the middle among them."""
        return np.linspace(self.start, self.stop, STEPS + 1)

    def share(self, along: Array) -> Array:
        """How far it has swollen at distances along: 0 at its ends and beyond, 1 in its middle."""
        turned = np.clip((along - self.middle) / self.length, -0.5, 0.5)
        return np.asarray((1 + np.cos(2 * np.pi * turned)) / 2)

    def inset(self, along: Array, distances: Array) -> Array:
        """Places at a distance inside the outline, square to it: shape (n, 2), drawn above the axis."""
        half = self.side.half
        tangent = half.tangent(along)
        inward = np.stack((tangent[:, 1], -tangent[:, 0]), axis=-1)
        return np.asarray(half.point(along) + distances[:, None] * inward)

    def face_at(self, places: Array) -> Array:
        """Height of the plate's outer face over places, outward."""
        heights = self.side.upper_at(places) if self.upper else -self.side.lower_at(places)
        return heights + self.over

    @cached_property
    def face_line(self) -> Array:
        """The line on the face, shape (n, 3): x, y above the axis, and height outward."""
        places = self.inset(self.along, self.width * self.share(self.along))
        return np.column_stack((places, self.face_at(places)))

    @cached_property
    def wall_line(self) -> Array:
        """The line on the wall, shape (n, 3)."""
        places = self.side.half.point(self.along)
        return np.column_stack((places, self.face_at(places) - self.drop * self.share(self.along)))

    @cached_property
    def edge_line(self) -> Array:
        """The edge as it was, shape (n, 3)."""
        places = self.side.half.point(self.along)
        return np.column_stack((places, self.face_at(places)))

    @property
    def face_length(self) -> Mm:
        """Length of the line on the face."""
        return _length(self.face_line)

    @property
    def wall_length(self) -> Mm:
        """Length of the line on the wall."""
        return _length(self.wall_line)

    @cached_property
    def area(self) -> Mm2:
        """Area of the bevel's surface, in triangles between its straight lines."""
        high, low = self.face_line, self.wall_line
        first = np.cross(low[1:] - low[:-1], high[1:] - low[:-1])
        second = np.cross(high[1:] - low[:-1], high[:-1] - low[:-1])
        return float((np.linalg.norm(first, axis=1) + np.linalg.norm(second, axis=1)).sum() / 2)

    @cached_property
    def pattern(self) -> tuple[Array, Array]:
        """The surface laid flat: the face's line above and the wall's below, shape (n, 2) each, its ends level."""
        return unrolled_strip(self.face_line, self.wall_line)

    @property
    def tightest(self) -> float:
        """The most that the outline bends over the line on the face, as a share: at 1 that line turns back on
        itself."""
        along = self.along
        return float((-self.side.half.curvature(along) * self.width * self.share(along)).max())

    def reach(self) -> tuple[Mm, Mm] | None:
        """From where to where along it comes down past the plate onto the wall; None where it lies in the plate
        alone."""
        if self.drop <= self.over:
            return None
        aside = self.length * float(np.arccos(2 * self.over / self.drop - 1)) / (2 * np.pi)
        return self.middle - aside, self.middle + aside


def _length(line: Array) -> Mm:
    return float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())
