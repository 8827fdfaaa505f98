"""The side of a box with domed faces, unrolled flat: how deep it is at each distance along half the outline.

Between the ends the depth is a straight line along the axis; each face takes off what its dome falls there below
the straight line between its own points at the two ends, so that the depths at the ends are as stated. The taper
does not tilt the domes: falls stay square to the plane of the outline.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm
from gramil.shapes.curve import Curve
from gramil.shapes.dome import Cover, Dome
from gramil.shapes.outline import Outline, Side

Array = NDArray[np.float64]
MOST_STEPS = 1024
"""A piece of an outline is cut into no more."""


@dataclass(frozen=True)
class UnrolledSide:
    """Half of the outline, from its first end (least x) to the other; lengths are those of the outline as given.

    Give the outline on which the side is measured: its outer face, or the middle of its thickness. `depth_start`
    and `depth_end` in mm at the two ends; `upper` and `lower` are the domes of the two faces. `of`: which half it is,
    where the two are not alike.
    """

    outline: Outline
    depth_start: Mm
    depth_end: Mm
    upper: Dome
    lower: Dome
    of: Side = "treble"

    @property
    def half(self) -> Curve:
        """Its half of the outline, drawn above the axis."""
        return self.outline.half_of(self.of).curve

    @property
    def other(self) -> "UnrolledSide":
        """The side of the other half."""
        return replace(self, of="bass" if self.of == "treble" else "treble")

    @property
    def length(self) -> Mm:
        """From one end to the other along the outline."""
        return self.half.length

    def upper_edge(self, along: ArrayLike) -> Array:
        """Height of the upper edge over the straight line between its ends, in mm: 0 at both ends."""
        return self.upper_at(self.half.point(along))

    def lower_edge(self, along: ArrayLike) -> Array:
        """Height of the lower edge from the same line, in mm: minus the depth at both ends."""
        return self.lower_at(self.half.point(along))

    def edges(self, along: ArrayLike) -> tuple[Array, Array, Array]:
        """How far along the axis places on the side lie, and the height of its upper and of its lower edge there."""
        places = self.half.point(along)
        return places[..., 0], self.upper_at(places), self.lower_at(places)

    def depth(self, along: ArrayLike) -> Array:
        """From edge to edge at distances along, in mm."""
        places = self.half.point(along)
        return self.upper_at(places) - self.lower_at(places)

    def slopes(self, along: ArrayLike) -> tuple[Array, Array]:
        """How steeply the upper face falls outward at its edge, square to the outline, and how steeply the lower one
        comes in toward it there: mm a mm; flat is 0.

        Toward the end at which the side is shallower its taper adds to the lower dome's own slope.
        """
        places, tangent = self.half.frame(along)
        taper = (self.depth_end - self.depth_start) / self.outline.length
        return self._outward(self.upper, places, tangent, 0.0), self._outward(self.lower, places, tangent, taper)

    def _outward(self, dome: Dome, places: Array, tangent: Array, taper: float) -> Array:
        """The slope of a face across its edge: the dome's, less its chord's rise and what the depth grows by, both
        along the axis."""
        slope = dome.slope(places[..., 0], places[..., 1])
        rise = (dome.fall(self.outline.end, 0.0) - dome.fall(self.outline.start, 0.0)) / self.outline.length
        return np.asarray(slope[..., 1] * tangent[..., 0] - (slope[..., 0] - rise - taper) * tangent[..., 1])

    def stations(self, tolerance: Mm) -> Array:
        """Distances along, both ends included, between which both edges keep within `tolerance` of straight lines.

        Corners of the outline are among them.
        """
        breaks = self.half.breaks
        pieces = zip(breaks[:-1].tolist(), breaks[1:].tolist(), self._counts(tolerance).tolist(), strict=True)
        runs = [np.linspace(start, end, count + 1)[1:] for start, end, count in pieces]
        return self.half.along(np.concatenate([breaks[:1], *runs]))

    def _counts(self, tolerance: Mm) -> NDArray[np.intp]:
        """Into how many even steps each piece of the outline is cut, so that the edges keep to their chords.

        All pieces are cut at once, and those not yet fine enough again twice as fine: the outline of a wall has
        hundreds.
        """
        starts, ends = self.half.breaks[:-1], self.half.breaks[1:]
        counts = np.ones(len(starts), dtype=np.intp)
        rough, count = np.arange(len(starts)), 1
        while count < MOST_STEPS and len(
            rough := rough[self._off_chords(starts[rough], ends[rough], count) > tolerance]
        ):
            count *= 2
            counts[rough] = count
        return counts

    def _off_chords(self, starts: Array, ends: Array, count: int) -> Array:
        """How far either edge leaves its chords at most, in mm, on each piece between two parameters.

        Three places on each chord are looked at: an edge that winds about its chord may meet it in the middle.
        """
        parameters = np.linspace(starts, ends, 4 * count + 1, axis=1)
        parameters[:, -1] = np.nextafter(ends, starts)
        places = self.half.place(parameters)
        steps = np.hypot(*np.moveaxis(np.diff(places, axis=1), -1, 0)).reshape(len(starts), count, 4)
        along = np.cumsum(steps, axis=2)
        share = along[..., :3] / np.where(along[..., 3:] > 0.0, along[..., 3:], 1.0)
        off = np.zeros(len(starts))
        for edge in (self.upper_at(places), self.lower_at(places)):
            first, last = edge[:, :-1:4, None], edge[:, 4::4, None]
            between = edge[:, :-1].reshape(len(starts), count, 4)[..., 1:]
            off = np.maximum(off, np.abs(between - (first + share * (last - first))).max(axis=(1, 2)))
        return off

    def upper_at(self, places: Array) -> Array:
        """Height of the upper face at places (x, y), y on either side, over the line between its ends."""
        return -self._fall(self.upper, places)

    def lower_at(self, places: Array) -> Array:
        """Height of the lower face at places (x, y) from the same line."""
        share = (places[..., 0] - self.outline.start) / self.outline.length
        straight = self.depth_start + share * (self.depth_end - self.depth_start)
        return np.asarray(self._fall(self.lower, places) - straight)

    def _fall(self, dome: Dome, places: Array) -> Array:
        ends = ((self.outline.start, 0.0), (self.outline.end, 0.0))
        return dome.fall_from_chord(places[..., 0], places[..., 1], *ends)


def enclosed_volume(side: UnrolledSide) -> float:
    """Volume in mm3 between the two domed faces within the side's outline."""
    outline = side.outline
    share = (outline.centroid - outline.start) / outline.length
    prism = outline.area * (side.depth_start + share * (side.depth_end - side.depth_start))
    ends = ((outline.start, 0.0), (outline.end, 0.0))
    return prism + sum(Cover(dome, outline).volume_over_chord(*ends) for dome in (side.upper, side.lower))


def end_to_end(runs: list[Array]) -> Array:
    """What is known of each side one after the other; empty without sides."""
    return np.concatenate(runs) if runs else np.array([])
