"""Records of the body's bound edges, and the choice of cutter and bearing that every ledge for a binding asks for."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from gramil.description.records import Cutter
from gramil.inches import in_inches
from gramil.parts.records import LedgeChoice
from gramil.quantities import Count, Mm, Radians, Ratio
from gramil.shapes.outline import Outline

NO_PAIR = LedgeChoice("none", math.nan, math.nan, math.nan, math.nan)
"""What stands for a cutter and bearing where the shop has none."""


@dataclass(frozen=True)
class Edge:
    """One edge of the body, "top" or "back": binding and purfling as they go in, and the plate that they go round.

    `thickness` of the binding is in from the side's face, `height` down from the plate's; a bare edge has none of them.
    `material` is wood, plastic, or not known.
    """

    name: str
    thickness: Mm
    height: Mm
    purfling: Mm
    purfling_depth: Mm
    wood: str
    plate: Mm
    material: str

    @property
    def reach(self) -> Mm:
        """From the side's face to the inside of binding and purfling."""
        return self.thickness + self.purfling

    @property
    def cover(self) -> Mm:
        """How far the binding goes down the side below the plate: it covers the joint of the two by so much."""
        return self.height - self.plate


def edge_of(name: str, sizes: tuple[Mm, Mm, Mm, Mm], wood: str, plate: Mm, material: str) -> Edge:
    """An edge of its sizes (thickness, height, purfling, its depth); bare where the binding has no thickness."""
    thickness, height, purfling, depth = sizes if sizes[0] > 0 else (0.0,) * 4
    return Edge(name, thickness, height, purfling, depth, wood, plate, material)


@dataclass(frozen=True)
class EdgeLines:
    """A bound edge's lines in plan: the inside of its binding, and of its purfling (the same where there is none)."""

    name: str
    bound: Outline
    purfled: Outline


@dataclass(frozen=True)
class Channel:
    """The wood that a bound edge's channels leave.

    `behind`: side and linings behind the foot of the binding's channel. `lining`: height of the linings left whole
    under it. `glued`: width of the rim that still holds the plate. `past_linings`: how far the purfling's inside lies
    past the linings, negative while it is over them. `under_purfling`: plate left there; not a number without purfling.
    `cover`: how far the binding covers the side below the plate.
    """

    name: str
    behind: Mm
    lining: Mm
    glued: Mm
    past_linings: Mm
    under_purfling: Mm
    cover: Mm


@dataclass(frozen=True)
class Tilt:
    """How a cutter leans that rides on a domed plate: at its steepest, `along` the side from the neck end.

    `lean`: how much farther in the channel goes at the binding's foot than at the plate's face; `floor`: how much
    deeper its floor is at the side's face than at the inside.
    """

    name: str
    angle: Radians
    along: Mm
    lean: Mm
    floor: Mm


@dataclass(frozen=True)
class Cut:
    """One channel to cut. `inset` and `depth` are what it is to be; `step` is cutter less bearing for that inset.

    `ledge` is what the chosen cutter and bearing leave, `proud` how far the strips then stand out of the side.
    """

    name: str
    inset: Mm
    depth: Mm
    step: Mm
    choice: str
    diameter: Mm
    bearing: Mm
    ledge: Mm
    proud: Mm


@dataclass(frozen=True)
class Strip:
    """Strips to make or buy for one edge: how many, and the size of each; purfling's thickness is its lines' together.

    `bend` is the body's tightest bend over the thickness of the binding; how many lines a purfling is laid up of is not
    described, so its own bend is not known.
    """

    name: str
    count: Count
    length: Mm
    height: Mm
    thickness: Mm
    wood: str
    bend: Ratio
    material: str

    @property
    def is_binding(self) -> bool:
        """Whether it is a binding, not a purfling."""
        return self.name.endswith("binding")

    @property
    def plastic(self) -> bool:
        """Whether it is a binding not known to be of wood: no iron comes near it, and wood's limits are not its own."""
        return self.is_binding and self.material != "wood"

    @property
    def bends_as_wood(self) -> bool:
        """Whether it is a binding of wood; a purfling does not say what its lines are made of."""
        return self.is_binding and not self.plastic


def ledges(cutters: Iterable[Cutter], inset: Mm, unit: str) -> tuple[LedgeChoice, ...]:
    """Every cutter with every bearing smaller than it, nearest to an inset (mm) first, named in the shop's unit.

    A bearing on the face leaves a ledge of (cutter - bearing) / 2; what lies in it stands proud by the rest.
    """
    found = [
        LedgeChoice(
            f"{cutter.name}, bearing {_size(bearing, unit)}",
            cutter.diameter,
            bearing,
            (cutter.diameter - bearing) / 2,
            inset - (cutter.diameter - bearing) / 2,
        )
        for cutter in cutters
        for bearing in cutter.bearings
        if bearing < cutter.diameter
    ]
    return tuple(sorted(found, key=lambda option: abs(option.proud)))


def _size(bearing: Mm, unit: str) -> str:
    """A bearing's diameter in its name: the bare number in mm, as it is engraved, or inches."""
    return f"{bearing:g}" if unit == "mm" else in_inches(bearing, 3)


def best_ledge(options: tuple[LedgeChoice, ...], proud_most: Mm) -> LedgeChoice:
    """The pair that leaves the strips proudest but no more than `proud_most`; failing that, what misses that by
    least.
    """
    tolerance = 1e-9
    able = [each for each in options if -tolerance <= each.proud <= proud_most + tolerance]
    if able:
        return max(able, key=lambda option: option.proud)
    return min(options, key=lambda option: max(-option.proud, option.proud - proud_most), default=NO_PAIR)
