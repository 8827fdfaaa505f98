"""Records of the body's bevels: as they are asked for, their lines, the blocks behind them, their veneers."""

from dataclasses import dataclass

from gramil.quantities import Count, Mm, Mm2, Radians
from gramil.shapes.edge_bevel import EdgeBevel
from gramil.shapes.planar import Point


@dataclass(frozen=True)
class BevelAsked:
    """A bevel as described, "arm" at the top's edge or "rib" at the back's; 0 wide where there is none.

    `block_width` and `block_height` are 0 where they follow from the linings. `binding` is what becomes of that edge's
    binding: it "stops", or is led along the line on the "plate", on the "side", or "both".
    """

    name: str
    width: Mm
    drop: Mm
    length: Mm
    place: Mm
    block: str
    block_width: Mm
    block_height: Mm
    layer: Mm
    veneer: Mm
    binding: str

    @property
    def plate(self) -> str:
        """The plate at whose edge it lies."""
        return "top" if self.name == "arm" else "back"

    @property
    def on_plate(self) -> bool:
        """Whether a binding is led along its line on the plate."""
        return self.binding in ("plate", "both")

    @property
    def on_side(self) -> bool:
        """Whether a binding is led along its line on the side."""
        return self.binding in ("side", "both")


def no_bevel(name: str) -> BevelAsked:
    """No bevel at this edge, whatever is written of its block, veneer and binding."""
    return BevelAsked(name, 0.0, 0.0, 0.0, 0.0, "solid", 0.0, 0.0, 0.0, 0.0, "stops")


@dataclass(frozen=True)
class BevelLaid:
    """A bevel as it is asked for, on the body's edge."""

    asked: BevelAsked
    shape: EdgeBevel


@dataclass(frozen=True)
class Bevel:
    """A bevel's lines. `start`, `middle`, `stop` are along the bass side's outside from the neck's middle; `width` in
    on the plate and `drop` down from its face are those in the middle.

    `below`: down the side from the plate's joint there. `slope`: the bevel's angle from the plate. `across`: its face
    in the middle, from line to line. `on_plate`, `on_side`: length of either line from end to end. `left`: the least
    of the side left beneath it, to a binding or a bevel at the other edge.
    """

    name: str
    plate: str
    width: Mm
    drop: Mm
    below: Mm
    length: Mm
    start: Mm
    middle: Mm
    stop: Mm
    slope: Radians
    across: Mm
    on_plate: Mm
    on_side: Mm
    area: Mm2
    left: Mm


@dataclass(frozen=True)
class BevelMark:
    """A station of a bevel: along the bass side from the neck, how far in on the plate, and how far down from its
    face."""

    name: str
    along: Mm
    width: Mm
    drop: Mm


@dataclass(frozen=True)
class BevelBlock:
    """The block behind a bevel, in the lining's place: `width` against the side at its middle, running out into the
    lining at both ends; `height` under the plate.

    `layers` is how many it is bent of, 1 where it is sawn from one piece; `length` is along its outside, with something
    over. `glued`: the rim that still holds the plate inside the bevel, and inside a binding led round it there.
    `under`: height of the block that the bevel leaves against the side.
    """

    name: str
    kind: str
    width: Mm
    height: Mm
    length: Mm
    layers: Count
    layer: Mm
    glued: Mm
    under: Mm


@dataclass(frozen=True)
class BevelVeneer:
    """The veneer for a bevel: the blank of its flat pattern with something over all round, its thickness, its area."""

    name: str
    length: Mm
    width: Mm
    thickness: Mm
    area: Mm2


@dataclass(frozen=True)
class BevelPattern:
    """A bevel laid flat: both edges from its neck end to its tail end, the plate's above."""

    name: str
    upper: tuple[Point, ...]
    lower: tuple[Point, ...]


@dataclass(frozen=True)
class BevelBinding:
    """What becomes of a bound edge's binding at its bevel: the bass side's strip from the neck to it, and from it to
    the tail; the strips led along its two lines, 0 where there is none.
    """

    name: str
    before: Mm
    after: Mm
    on_plate: Mm
    on_side: Mm


@dataclass(frozen=True)
class BevelBrace:
    """A brace that ends in a bevel's block: how much of it lies there."""

    name: str
    bevel: str
    inside: Mm
