"""The body's edge cut across: how plate, side, lining, binding and purfling meet there, as shapes.

An edge lies at positive y with its plate on top: z is up, and out of the body. Whoever draws it turns it over for the
other side and for the back.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from math import inf

from gramil.drawings.marks import Point
from gramil.parts.edge_records import Edge
from gramil.quantities import Mm


@dataclass(frozen=True)
class Rim:
    """One edge at a cut. `face` gives z of the plate's outer face at y.

    Places across, from the outside in: the side's face, the insides of binding and of purfling, of side and linings.
    """

    edge: Edge
    face: Callable[[Mm], Mm]
    outer: Mm
    bound: Mm
    purfled: Mm
    bare: Mm
    lined: Mm
    lining_height: Mm

    def under(self, y: Mm) -> Mm:
        """z of the plate's inner face, which is glued to the rim."""
        return self.face(y) - self.edge.plate

    @property
    def floor(self) -> Mm:
        """z of the floor of the binding's channel, square to the side; the plate's inner face where there is none."""
        return self.face(self.outer) - (self.edge.height if self.edge.thickness else self.edge.plate)

    def plate_end(self) -> tuple[Point, ...]:
        """The plate's end, from its outer face round the channels to its inner face."""
        if not self.edge.thickness:
            return ((self.outer, self.face(self.outer)), (self.outer, self.under(self.outer)))
        if self.edge.purfling and self.edge.purfling_depth >= self.edge.plate:
            return ((self.purfled, self.face(self.purfled)), (self.purfled, self.under(self.purfled)))
        step = ((self.purfled, self.face(self.purfled)), (self.purfled, self._purfling_floor(self.purfled)))
        head = (*step, (self.bound, self._purfling_floor(self.bound))) if self.edge.purfling else ()
        start = head or ((self.bound, self.face(self.bound)),)
        if self.edge.cover < 0:
            foot = ((self.bound, self.floor), (self.outer, self.floor), (self.outer, self.under(self.outer)))
            return (*start, *foot)
        return (*start, (self.bound, self.under(self.bound)))

    def _purfling_floor(self, y: Mm) -> Mm:
        return self.face(y) - self.edge.purfling_depth

    def binding(self) -> tuple[Point, ...]:
        """The binding in its channel; nothing where there is none."""
        if not self.edge.thickness:
            return ()
        high = ((self.bound, self.face(self.bound)), (self.outer, self.face(self.outer)))
        return (*high, (self.outer, self.floor), (self.bound, self.floor))

    def purfling(self) -> tuple[Point, ...]:
        """The purfling in its channel; nothing where there is none."""
        if not self.edge.purfling or not self.edge.thickness:
            return ()
        places = (self.purfled, self.bound)
        low = tuple((y, self._purfling_floor(y)) for y in reversed(places))
        return (*((y, self.face(y)) for y in places), *low)

    def side_top(self) -> tuple[Point, ...]:
        """The top of the side, from its inside to its face: under the plate, and down the binding's channel."""
        return self._top(self.bare, self.outer)

    def lining(self, low: Mm = -inf) -> tuple[Point, ...]:
        """The lining, a triangle against the side, its top under the plate or cut away by a channel; down to `low`."""
        tip = self.under(self.bare) - self.lining_height
        foot = ((self.bare, low), (self.slope(low), low)) if low > tip else ((self.bare, tip),)
        return (*self._top(self.lined, self.bare), *foot)

    def slope(self, z: Mm) -> Mm:
        """Where the lining's slope, or below it the inside of the side, lies at a height."""
        if not self.lining_height:
            return self.bare
        below = self.under(self.bare) - z
        return max(self.lined, self.bare - (self.bare - self.lined) * max(0.0, 1 - below / self.lining_height))

    def _top(self, low: Mm, high: Mm) -> tuple[Point, ...]:
        """The rim's top between two places, stepped where a channel ends."""
        steps = [low, *(y for y in (self.purfled, self.bound) if low < y < high), high]
        runs = [(start, end, self._height((start + end) / 2)) for start, end in pairwise(steps)]
        return tuple((y, height(y)) for start, end, height in runs for y in (start, end))

    def _height(self, y: Mm) -> Callable[[Mm], Mm]:
        """What bounds the rim from above about y: the plate, or a channel's floor."""
        if self.edge.thickness and y > self.bound:
            return lambda _: min(self.floor, self.under(self.outer))
        if self.edge.purfling and self.edge.thickness and y > self.purfled:
            return lambda at: min(self.under(at), self._purfling_floor(at))
        return self.under
