"""The records that a body's base values are made of: braces, openings, rings as asked for, before they are placed."""

from dataclasses import dataclass

from gramil.quantities import Mm, Radians
from gramil.shapes.hole import Hole, Shape, hole_of
from gramil.shapes.outline import Side

Point = tuple[float, float]


@dataclass(frozen=True)
class BraceAsked:
    """A brace as described. `start` and `stop` are [along from what it is held to, across, treble positive], in mm.

    `start_at` and `stop_at`: "linings" runs on along the line, "point" ends there, the
    name of a brace is what the line ends against. `twin` names its mirror image, or
    is empty. `ends` is "tapered", "scalloped", "square" or "tucked"; `crosses` names braces it is notched into.
    """

    name: str
    plate: str
    held_to: str
    start: Point
    stop: Point
    start_at: str
    stop_at: str
    width: Mm
    height: Mm
    ends: str
    end_height: Mm
    end_length: Mm
    wood: str
    crosses: tuple[str, ...]
    twin: str


@dataclass(frozen=True)
class OpeningAsked:
    """A hole in the top as described: its centre along from what it is held to and from the centreline, its sizes.

    A round one has a diameter, any other is so long and so wide (what it has not is not a number). The soundhole's own
    place and sizes are base values besides, where measurements take their place.
    """

    name: str
    held_to: str
    centre: Mm
    aside: Mm
    lean: Radians
    shape: Shape
    diameter: Mm
    along: Mm
    across: Mm
    corner: Mm

    @property
    def hole(self) -> Hole:
        """Its curve."""
        return hole_of(self.shape, self.diameter, self.along, self.across, self.corner)


@dataclass(frozen=True)
class PortAsked:
    """A port in a side as described: its centre along the outside of the flat side and below the top's edge (not a
    number: half way down), its sizes as those of a hole in the top, and how thick and how much larger the patch inside
    it is.
    """

    name: str
    side: Side
    centre: Mm
    below: Mm
    shape: Shape
    diameter: Mm
    along: Mm
    across: Mm
    patch: Mm
    patch_reach: Mm

    @property
    def hole(self) -> Hole:
        """Its curve on the flat side."""
        return hole_of(self.shape, self.diameter, self.along, self.across)


@dataclass(frozen=True)
class RingAsked:
    """A ring round a hole: its inner diameter or its distance from the hole's edge (the other is not a number), its
    width, and the depth of its channel.
    """

    name: str
    round: str
    inner: Mm
    gap: Mm
    width: Mm
    depth: Mm
