"""A braced plate under its load, solved: where the bridge turns, sinks and rises, and the modes; nothing is wired here.

Places are those of the body: x from its edge at the neck, y across, treble positive; z up out of the face.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from scipy.sparse import csr_matrix, vstack

from gramil.faults import Fault, MakersFault
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.bar import Bar
from gramil.physics.plates.block import Block
from gramil.physics.plates.edge import Edge, Hold, held
from gramil.physics.plates.loads import spread
from gramil.physics.plates.nodal_lines import rises
from gramil.physics.plates.plate import Plate
from gramil.physics.plates.rows import Z, reading
from gramil.physics.plates.strain import Strained, largest_in_bar, largest_in_plate
from gramil.physics.plates.whole import Bare, Modes, Whole, whole_of, with_bar

MODES = 10
"""How many modes are named."""
INSIDE = 0.5
"""How far in from the bridge's edges its turn is read, mm."""


@dataclass(frozen=True, eq=False)
class Pull:
    """A force (N, along x, y and z, in the plate's middle) and a couple (N mm, about x and y) on a ring (k, 2)."""

    ring: FloatArray
    force: tuple[float, float, float]
    couple: tuple[float, float]


@dataclass(frozen=True, eq=False)
class Braced:
    """A plate as described: what is glued to it, how it is pulled, and where its bridge begins, bears and ends, on
    the centreline (x in mm)."""

    name: str
    plate: Plate
    bars: tuple[Bar, ...]
    blocks: tuple[Block, ...]
    pulls: tuple[Pull, ...]
    front: float
    saddle: float
    back: float


@dataclass(frozen=True)
class Moved:
    """What the plate does under its load: the bridge's turn (radians, toward the neck positive), how far it sinks and
    rises at most (mm, with the places), and how far it lifts under the saddle (mm)."""

    turn: float
    sink: float
    sunk_at: tuple[float, float]
    rise: float
    risen_at: tuple[float, float]
    lift: float


@dataclass(frozen=True, eq=False)
class Solved:
    """A braced plate cut into triangles and factored; each answer is worked out once."""

    name: str
    braced: Braced
    whole: Whole

    @cached_property
    def load(self) -> FloatArray:
        """The load on the nodes' movements."""
        mesh = self.whole.mesh
        return np.asarray(sum(spread(mesh, each.ring, each.force, each.couple) for each in self.braced.pulls))

    @cached_property
    def moves(self) -> FloatArray:
        """All movements under the load."""
        return self.whole.under(self.load)

    @cached_property
    def modes(self) -> Modes:
        """The lowest modes, with nothing but the plate moving."""
        return self.whole.modes(MODES)

    @cached_property
    def moved(self) -> Moved:
        """What the plate does under its load; not a number where the load is not known."""
        if not np.isfinite(self.load).all():
            nowhere = (math.nan, math.nan)
            return Moved(math.nan, math.nan, nowhere, math.nan, nowhere, math.nan)
        rise, nodes = rises(self.whole.mesh, self.moves), self.whole.mesh.nodes
        turn, lift = (float(each) for each in (self.read[:2] @ self.moves[: self.whole.sheet.size]))
        low, high = int(rise.argmin()), int(rise.argmax())
        places = [(float(nodes[at, 0]), float(nodes[at, 1])) for at in (low, high)]
        return Moved(turn, max(0.0, -float(rise[low])), places[0], max(0.0, float(rise[high])), places[1], lift)

    @cached_property
    def read(self) -> csr_matrix:
        """Rows that read the bridge's turn (small, as its tangent) and its lift under the saddle."""
        braced = self.braced
        low, high = braced.front + INSIDE, braced.back - INSIDE
        rows = reading(self.whole.mesh, np.array([[low, 0.0], [high, 0.0], [braced.saddle, 0.0]]), {Z: 1.0})
        return csr_matrix(vstack([(rows[1] - rows[0]) / (high - low), rows[2]]))

    def read_at(self, places: Sequence[tuple[float, float]]) -> csr_matrix:
        """Rows that read how far the plate rises at places."""
        return csr_matrix(reading(self.whole.mesh, np.array(places), {Z: 1.0}))

    @cached_property
    def strained(self) -> tuple[tuple[str, Strained], ...]:
        """Where the plate and each bar are strained most along their grain, by name."""
        rows = [(each.bar.name, largest_in_bar(each, self.moves)) for each in self.whole.bars]
        return ((self.name, largest_in_plate(self.whole, self.moves)), *rows)

    def displaced(self) -> FloatArray:
        """What each mode (of unit modal mass) displaces of the air, (k,): the integral of its rise over the plate."""
        mesh = self.whole.mesh
        share = np.zeros(len(mesh.nodes))
        np.add.at(share, mesh.triangles, mesh.six.areas @ mesh.six.counts)
        return np.asarray(share @ rises(mesh, self.modes.movements))

    def held_by(self, edge: Edge) -> "Solved":
        """The same mesh with its whole rim held otherwise; the holes stay free."""
        whole = self.whole
        bare = Bare(whole.sheet, held(whole.mesh, (Hold(edge),)))
        return Solved(self.name, self.braced, replace(whole, bare=bare, near=None))

    def with_bars(self, bars: Sequence[Bar]) -> "Solved":
        """The same with bars of these names as they are now, on the same mesh."""
        known: Modes | None = self.__dict__.get("modes")
        whole = replace(self.whole, near=self.whole.kept_near(known))
        for bar in bars:
            whole = with_bar(whole, bar)
        changed = {each.name: each for each in bars}
        kept = tuple(changed.get(each.name, each) for each in self.braced.bars)
        return Solved(self.name, replace(self.braced, bars=kept), whole)


def solved(braced: Braced, size: float) -> Solved:
    """A braced plate cut into triangles of about `size` mm. Raises MakersFault if it cannot be solved."""
    return Solved(braced.name, braced, whole_of(braced.plate, size, braced.bars, braced.blocks))


@dataclass(frozen=True, eq=False)
class Attempt:
    """A top that was to be solved: itself, or none and why it cannot be."""

    name: str
    tops: tuple[Solved, ...]
    fault: Fault | None


def attempted(braced: Braced, size: float) -> Attempt:
    """A braced plate solved, or why it cannot be: a brace in the air, a rim that holds nothing, no mesh that passes."""
    try:
        top = solved(braced, size)
        _ = top.whole.factor
    except MakersFault as found:
        return Attempt(braced.name, (), found.faults[0])
    return Attempt(braced.name, (top,), None)
