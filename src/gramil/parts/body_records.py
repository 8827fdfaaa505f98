"""Records of the body that findings, drawings and set-ups read: places, braces, crossings, stock.

Places are in body coordinates: along from the body's edge at the neck toward the tail, across from the centreline,
treble positive.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from gramil.quantities import Count, Mm, Mm2, Mm3, Radians, Ratio
from gramil.shapes.arched_bar import ArchedBar, Notch
from gramil.shapes.outline import Outline
from gramil.shapes.unrolled import UnrolledSide

Point = tuple[float, float]


@dataclass(frozen=True)
class Spot:
    """A single place on the body."""

    x: Mm
    y: Mm

    @property
    def point(self) -> Point:
        """Along and across."""
        return (self.x, self.y)


@dataclass(frozen=True)
class Bout:
    """A place where the outline is widest or narrowest. `radius` is that of its bend there; `along` the outline.

    `treble`: from the centreline to its edge on the treble side, half the width where both sides are alike.
    """

    name: str
    kind: str
    x: Mm
    width: Mm
    along: Mm
    radius: Mm
    treble: Mm

    @property
    def edges(self) -> tuple[Point, Point]:
        """Its places on the bass side and on the treble side."""
        return ((self.x, self.treble - self.width), (self.x, self.treble))


@dataclass(frozen=True)
class Bend:
    """A bend of a side, or a corner (kind "bulge", "hollow", "corner"): how far along the side, its place on the body
    (y from the centreline, whichever side it is on), its radius (0 at a corner), through what angle it turns, and at
    what angle what lies before and behind it would meet.
    """

    name: str
    kind: str
    along: Mm
    x: Mm
    y: Mm
    radius: Mm
    turn: Radians
    between: Radians


@dataclass(frozen=True)
class Stretch:
    """A stretch of a side that is cut in one direction: from where to where along it, and on which plate, top or back,
    that direction is also against a router's turn.
    """

    name: str
    start: Mm
    stop: Mm
    plate: str


@dataclass(frozen=True)
class SideStation:
    """A place along the unrolled side, from its middle at the neck: depth of the side, radius of the bend.

    Ends and corners have no radius.
    """

    name: str
    along: Mm
    depth: Mm
    radius: Mm

    @property
    def is_corner(self) -> bool:
        """Whether the side is mitred there, or ends against its block under the heel."""
        return math.isnan(self.radius) and self.name not in ("neck end", "tail end")


@dataclass(frozen=True)
class Ring:
    """A ring of the rosette, by its diameters (across, round a hole that is not round), the depth of its channel, and
    the hole that it goes round.
    """

    name: str
    inner: Mm
    outer: Mm
    depth: Mm
    round: str = "soundhole"

    @property
    def width(self) -> Mm:
        """Across the ring."""
        return (self.outer - self.inner) / 2


@dataclass(frozen=True)
class Brace:
    """A brace in its place. `length` is level, from end to end; `sagitta` is its foot's over that length.

    `height` is over the plate where the brace is highest, `end_height` over it at the very ends. `radius` is that of
    its foot, without end for a flat plate; `nearest` is how far from its first end its line passes the dome's apex.
    `start` and `stop` are its ends' middles, `footprint` its four corners on the plate once round, the ends slanted as
    what they meet.
    """

    name: str
    plate: str
    held_to: str
    wood: str
    ends: str
    start_x: Mm
    start_y: Mm
    stop_x: Mm
    stop_y: Mm
    length: Mm
    width: Mm
    height: Mm
    end_height: Mm
    end_length: Mm
    sagitta: Mm
    radius: Mm
    nearest: Mm
    angle: Radians
    footprint: tuple[Point, ...]

    @property
    def start(self) -> Point:
        """Its first end."""
        return (self.start_x, self.start_y)

    @property
    def stop(self) -> Point:
        """Its second end."""
        return (self.stop_x, self.stop_y)

    @cached_property
    def bar(self) -> ArchedBar:
        """Its shape from the side. Square ends are not worked down."""
        run = 0.0 if self.ends == "square" else self.end_length
        scalloped = self.ends == "scalloped"
        return ArchedBar(self.length, self.height, self.end_height, run, scalloped, 1 / self.radius, self.nearest)


@dataclass(frozen=True)
class Crossing:
    """Two braces notched into each other. `over` is open toward the plate, `under` away from it.

    Their floors are level and as high over the plate: `depth_over` is from the foot, `depth_under` from the upper edge,
    both in the notch's middle. Notches are as wide along a brace as the other is across it, slanted by `angle`;
    `along_*` is from the brace's first end.
    """

    name: str
    over: str
    under: str
    x: Mm
    y: Mm
    angle: Radians
    depth_over: Mm
    depth_under: Mm
    width_over: Mm
    width_under: Mm
    along_over: Mm
    along_under: Mm


def notches_in(brace: Brace, crossings: Iterable[Crossing]) -> dict[str, Notch]:
    """A brace's notches, each by the name of the brace that it takes in: open upward where this one lies under."""
    rows = [(each, each.over, each.along_under, each.width_under) for each in crossings if each.under == brace.name]
    rows += [(each, each.under, each.along_over, each.width_over) for each in crossings if each.over == brace.name]
    return {
        other: Notch(
            along - wide / 2, along + wide / 2, float(brace.bar.foot(along)) + each.depth_over, other == each.over
        )
        for each, other, along, wide in rows
    }


@dataclass(frozen=True)
class Holder:
    """What a brace of the top does in a strip across it: `length` of it lies there, from `low` to `high` across.

    `share` is how much of it counts, `lean` its slope from square (treble end toward the tail positive), `height` over
    the plate by the cubic mean.
    """

    name: str
    share: Ratio
    lean: Ratio
    length: Mm
    width: Mm
    height: Mm
    low: Mm
    high: Mm

    @property
    def counts(self) -> Mm2:
        """How much it counts beside others: its width times its length, as much of it as counts."""
        return self.share * self.length * self.width


@dataclass(frozen=True)
class Stick:
    """What to saw for a brace: the grain along its length, the growth rings upright, square to the plate."""

    name: str
    wood: str
    length: Mm
    width: Mm
    height: Mm


@dataclass(frozen=True)
class Billet:
    """A piece of stock with what it yields: how many sticks, and the length of stick left over."""

    name: str
    wood: str
    sticks: Count
    left: Mm


@dataclass(frozen=True)
class Shell:
    """The body's walls: its unrolled side with both domes, and the outlines inside the linings and inside the sides."""

    side: UnrolledSide
    lined: Outline
    bare: Outline


@dataclass(frozen=True)
class Zeros:
    """Where distances along are counted from, in body coordinates, by what a feature is held to."""

    join: float
    tail: float
    saddle: float
    soundhole: float = math.nan
    body: float = 0.0

    def of(self, held_to: str) -> float:
        """The zero of "body", "join", "tail", "saddle" or "soundhole"."""
        return float(getattr(self, held_to))


@dataclass(frozen=True)
class Feature:
    """A feature on the body, what it is held to, and where that lies along the body from its edge at the neck."""

    name: str
    held_to: str
    along: Mm


@dataclass(frozen=True)
class PlateShape:
    """The bridge plate: its front and back edges along on the centreline, half their lengths across.

    `slant` is how far toward the tail its edges run for each mm toward the treble.
    """

    name: str
    front_x: Mm
    back_x: Mm
    front_half: Mm
    back_half: Mm
    thickness: Mm
    slant: Ratio = 0.0

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Once round, from the front's bass end."""
        front, back = self.front_half, self.back_half
        ends = ((self.front_x, -front), (self.back_x, -back), (self.back_x, back), (self.front_x, front))
        bass_front, bass_back, treble_back, treble_front = ((x + self.slant * y, y) for x, y in ends)
        return (bass_front, bass_back, treble_back, treble_front)


@dataclass(frozen=True)
class BodyBlock:
    """A block at an end of the body, from `start_x` to `end_x` along, `depth` deep.

    `half_width` to the bass side and, but where a cutaway leaves less, to the treble side: `treble`.
    """

    name: str
    start_x: Mm
    end_x: Mm
    half_width: Mm
    depth: Mm
    treble: Mm

    @property
    def volume(self) -> Mm3:
        """Its volume."""
        return (self.end_x - self.start_x) * (self.treble + self.half_width) * self.depth

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Once round, from the neck's bass corner."""
        low, high, half = self.start_x, self.end_x, self.half_width
        return ((low, -half), (high, -half), (high, self.treble), (low, self.treble))
