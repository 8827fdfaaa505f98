"""What is glued to a plate's mesh, bars and blocks: their movements beside the plate's, their stiffness and mass."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.sparse import csr_matrix

from gramil.physics.plates.assembly import Sheet
from gramil.physics.plates.bar import Bar
from gramil.physics.plates.bar_energy import move_squares, strain_squares
from gramil.physics.plates.block import Block, GluedBlock, nodes_under
from gramil.physics.plates.edge import EACH
from gramil.physics.plates.samples import OWN, SPARSE, Samples, Track, samples_of, spans_of, tracks_of


@dataclass(frozen=True, eq=False)
class GluedBar:
    """A bar on a sheet, its movements among `size`; sampled for its strains and, more sparsely, for its mass."""

    bar: Bar
    sheet: Sheet
    track: Track
    samples: Samples
    size: int

    @cached_property
    def sparse(self) -> Samples:
        """The samples for its mass."""
        return samples_of(self.sheet, self.bar, self.track, SPARSE)

    @cached_property
    def stiffness(self) -> csr_matrix:
        """What it adds, (size, size)."""
        return strain_squares(self.samples, self.size).matrix

    @cached_property
    def mass(self) -> csr_matrix:
        """What it adds, (size, size)."""
        return move_squares(self.sparse, self.size).matrix


def glued_to(sheet: Sheet, bars: Sequence[Bar], blocks: Sequence[Block] = ()) -> tuple[GluedBar | GluedBlock, ...]:
    """Bars, then blocks, glued to a sheet.

    Raises MakersFault for a bar or block that does not stand on the plate.
    """
    tracks = tracks_of(bars, len(sheet.mesh.nodes))
    under = [nodes_under(sheet, block) for block in blocks]
    after_bars = sheet.size + sum(OWN * track.functions for track in tracks)
    starts = after_bars + np.cumsum([0, *(EACH * len(nodes) for _, nodes in under)])
    size = int(starts[-1])
    stuck = [
        GluedBar(bar, sheet, track, samples_of(sheet, bar, track), size)
        for bar, track in zip(bars, tracks, strict=True)
    ]
    pieces = [
        GluedBlock(block, sheet, triangles, nodes, int(first), size)
        for block, (triangles, nodes), first in zip(blocks, under, starts[:-1], strict=True)
    ]
    return (*stuck, *pieces)


def with_bar_glued(glued: Sequence[GluedBar | GluedBlock], bar: Bar) -> tuple[GluedBar | GluedBlock, ...]:
    """The same pieces with the bar of that name as it is now.

    Raises MakersFault for a bar that does not stand on the plate.
    """
    row = next(row for row, each in enumerate(glued) if isinstance(each, GluedBar) and each.bar.name == bar.name)
    old = glued[row]
    assert isinstance(old, GluedBar)
    if spans_of(bar) == old.track.spans:  # as many movements as before: the other pieces keep their places among all
        fresh = GluedBar(bar, old.sheet, old.track, samples_of(old.sheet, bar, old.track), old.size)
        return (*glued[:row], fresh, *glued[row + 1 :])
    bars = [each.bar for each in glued if isinstance(each, GluedBar)]
    blocks = [each.block for each in glued if isinstance(each, GluedBlock)]
    return glued_to(old.sheet, [bar if each.name == bar.name else each for each in bars], blocks)
