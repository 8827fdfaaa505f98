"""Records of the body's openings: holes in the top in their places, ports on the flat side, and how near they come to
what lies round them.
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property

from gramil.quantities import Mm, Mm2, Radians
from gramil.shapes.hole import POINTS, Hole
from gramil.shapes.outline import Side
from gramil.shapes.room_between import Shape, room_between, to_edge

Point = tuple[float, float]
SAME = 1e-6
"""In mm: what lies so little farther off is as near, and rounding does not choose between a brace and its twin."""


@dataclass(frozen=True)
class Opening:
    """A hole in the top: its middle along from the body's edge and from the centreline (treble positive), its sizes,
    its diameter where it is round (else not a number), how far it is turned, and the tightest bend of its edge.
    `radius` is its hydraulic one, twice the area over the edge's length; `plug` the length of the air that moves in it.
    """

    name: str
    held_to: str
    shape: str
    x: Mm
    y: Mm
    diameter: Mm
    along: Mm
    across: Mm
    lean: Radians
    area: Mm2
    edge: Mm
    tightest: Mm
    radius: Mm
    plug: Mm
    hole: Hole

    @property
    def centre(self) -> Point:
        """Along and across."""
        return (self.x, self.y)

    @cached_property
    def outline(self) -> tuple[Point, ...]:
        """Its edge, points once round."""
        return self.parallel(0.0)

    def parallel(self, outward: Mm, count: int = POINTS) -> tuple[Point, ...]:
        """A line round it at the same distance from its edge everywhere, points once round."""
        return self.hole.placed(self.x, self.y, self.lean, outward, count)

    def room_to(self, shape: Shape) -> Mm:
        """From its edge to a shape; negative where that is cut into."""
        if self.hole.is_round:
            return float(to_edge((self.centre,), shape)[0]) - self.along / 2
        return room_between(self.outline, shape)


@dataclass(frozen=True)
class OpeningGap:
    """How near a hole in the top, or a port, comes to something, by name; negative where they run into each other."""

    name: str
    to: str
    room: Mm


@dataclass(frozen=True)
class Port:
    """A port in a side, on its outside laid flat: its middle from the neck end, below the top's edge and over the
    line between that edge's ends; its sizes, the patch that goes inside it, and the air that moves in it.
    """

    name: str
    side: Side
    shape: str
    centre: Mm
    below: Mm
    height: Mm
    diameter: Mm
    along: Mm
    across: Mm
    area: Mm2
    edge: Mm
    radius: Mm
    plug: Mm
    patch: Mm
    patch_along: Mm
    patch_across: Mm
    hole: Hole

    @cached_property
    def outline(self) -> tuple[Point, ...]:
        """Its edge on the flat side: along from the neck end, height; points once round."""
        return self.hole.placed(self.centre, self.height)

    @property
    def patch_corners(self) -> tuple[Point, ...]:
        """The patch's corners on the flat side."""
        half, high = self.patch_along / 2, self.patch_across / 2
        ends = ((-half, -high), (half, -high), (half, high), (-half, high))
        return tuple((self.centre + x, self.height + y) for x, y in ends)


def nearest_gap(name: str, rooms: Iterable[tuple[str, Mm]]) -> Iterator[OpeningGap]:
    """The nearest of the things that lie round a hole or port, given by name and distance: of several as near as each
    other the first by name; no gap if there are none.
    """
    known = [(room, to) for to, room in rooms if not math.isnan(room)]
    if known:
        least = min(room for room, _ in known)
        yield OpeningGap(name, min(to for room, to in known if room <= least + SAME), least)
