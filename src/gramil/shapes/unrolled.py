"""The side of a box with domed faces, unrolled flat: how deep it is at each distance along half the outline.

Between the ends the depth is a straight line along the axis; each face takes off what its dome falls there below
the straight line between its own points at the two ends, so that the depths at the ends are as stated. The taper
does not tilt the domes: falls stay square to the plane of the outline.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm
from gramil.shapes.dome import Cover, Dome
from gramil.shapes.outline import Outline

Array = NDArray[np.float64]


@dataclass(frozen=True)
class UnrolledSide:
    """Half of the outline, from its first end (least x) to the other; lengths are those of the outline as given.

    Give the outline on which the side is measured: its outer face, or the middle of its thickness. `depth_start`
    and `depth_end` in mm at the two ends; `upper` and `lower` are the domes of the two faces.
    """

    outline: Outline
    depth_start: Mm
    depth_end: Mm
    upper: Dome
    lower: Dome

    @property
    def length(self) -> Mm:
        """From one end to the other along the outline."""
        return self.outline.perimeter / 2

    def upper_edge(self, along: ArrayLike) -> Array:
        """Height of the upper edge over the straight line between its ends, in mm: 0 at both ends."""
        return -self._fall(self.upper, along)

    def lower_edge(self, along: ArrayLike) -> Array:
        """Height of the lower edge from the same line, in mm: minus the depth at both ends."""
        share = (self._places(along)[..., 0] - self.outline.start) / self.outline.length
        straight = self.depth_start + share * (self.depth_end - self.depth_start)
        return np.asarray(self._fall(self.lower, along) - straight)

    def depth(self, along: ArrayLike) -> Array:
        """From edge to edge at distances along, in mm."""
        return self.upper_edge(along) - self.lower_edge(along)

    def stations(self, tolerance: Mm) -> Array:
        """Distances along, both ends included, between which both edges keep within `tolerance` of straight lines.

        Corners of the outline are among them.
        """
        breaks = self.outline.half.along_breaks
        kept = [breaks[:1]]
        for start, end in pairwise(breaks.tolist()):
            kept.append(self._between(start, end, tolerance))
        return np.concatenate(kept)

    def _between(self, start: float, end: float, tolerance: Mm) -> Array:
        """Even steps over one piece of the outline, doubled in number until the edges keep near their chords.

        Three places on each chord are looked at: an edge that winds about its chord may meet it in the middle.
        """
        count = 1
        while count < 1024 and max(self._off_chord(edge, start, end, count) for edge in self._edges) > tolerance:
            count *= 2
        return np.linspace(start, end, count + 1)[1:]

    @property
    def _edges(self) -> tuple[Callable[[Array], Array], ...]:
        return (self.upper_edge, self.lower_edge)

    def _off_chord(self, edge: Callable[[Array], Array], start: float, end: float, count: int) -> Mm:
        heights = edge(np.linspace(start, end, 4 * count + 1))
        chords = np.interp(np.arange(4 * count + 1), np.arange(0, 4 * count + 1, 4), heights[::4])
        return float(np.abs(heights - chords).max())

    def _places(self, along: ArrayLike) -> Array:
        return self.outline.half.point(along)

    def _fall(self, dome: Dome, along: ArrayLike) -> Array:
        places = self._places(along)
        ends = ((self.outline.start, 0.0), (self.outline.end, 0.0))
        return dome.fall_from_chord(places[..., 0], places[..., 1], *ends)


def enclosed_volume(side: UnrolledSide) -> float:
    """Volume in mm3 between the two domed faces within the side's outline."""
    outline = side.outline
    share = (outline.centroid - outline.start) / outline.length
    prism = outline.area * (side.depth_start + share * (side.depth_end - side.depth_start))
    ends = ((outline.start, 0.0), (outline.end, 0.0))
    return prism + sum(Cover(dome, outline).volume_over_chord(*ends) for dome in (side.upper, side.lower))
