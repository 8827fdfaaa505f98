"""A thick piece glued flat to a plate: too wide for a bar, too thick to bend with the plate's normals.

It is a plate of its own, with its own movements node by node, and holds to the other's face by what wood near the glue
gives: shear in the plane, and squeeze square to it. So its edges take up load over a length, not at once.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.sparse import csr_matrix

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.assembly import Sheet, mass_blocks, stiffness_blocks, summed
from gramil.physics.plates.edge import EACH
from gramil.physics.plates.lines import inside
from gramil.physics.plates.mesh import Indices
from gramil.physics.plates.plate import thickness_at
from gramil.physics.plates.plies import Ply, inertia, stiffness
from gramil.physics.plates.timber import in_plane, through, turned


@dataclass(frozen=True, eq=False)
class Block:
    """A piece within a closed ring (n, 2), glued to the plate's first face (`side` 1) or its second (-1)."""

    name: str
    ring: FloatArray
    ply: Ply
    thickness: float
    side: int = 1

    @property
    def faces(self) -> tuple[float, float]:
        """Heights over its foot, counted out of the plate's first face."""
        return (0.0, self.thickness) if self.side > 0 else (-self.thickness, 0.0)


@dataclass(frozen=True, eq=False)
class GluedBlock:
    """A block on a sheet's mesh: its triangles and nodes, and the first of its movements among `size`."""

    block: Block
    sheet: Sheet
    triangles: Indices
    nodes: Indices
    first: int
    size: int

    @cached_property
    def columns(self) -> Indices:
        """Each triangle's movements in the block, (m, 30)."""
        places = np.searchsorted(self.nodes, self.sheet.mesh.triangles[self.triangles])
        own = self.first + EACH * places[:, :, None] + np.arange(EACH)
        return np.asarray(own.reshape(len(own), -1))

    @cached_property
    def stiffness(self) -> csr_matrix:
        """What it adds, (size, size): its own, and that of its hold."""
        areas = self.sheet.mesh.three.areas[self.triangles]
        calls = stiffness([(self.block.ply, *self.block.faces)]) * areas[..., None, None]
        own = stiffness_blocks(self.sheet.strains[self.triangles], calls)
        read = self._apart()
        both = np.concatenate([self.sheet.columns[self.triangles], self.columns], axis=1)
        hold = stiffness_blocks(read, self._hold() * areas[..., None, None])
        return csr_matrix(summed(self.columns, own, self.size) + summed(both, hold, self.size))

    def _apart(self) -> FloatArray:
        """What reads how far the block's foot is from the plate's face along x, y and z, (m, 3, 3, 60)."""
        three = self.sheet.mesh.three
        foot = 0.5 * self.block.side * thickness_at(self.sheet.plate, three.points[self.triangles])
        read = np.zeros((*foot.shape, 3, 2, 6, EACH))
        for way in range(3):
            read[:, :, way, 1, :, way] = three.counts
            read[:, :, way, 0, :, way] = -three.counts
        for way in range(2):
            read[:, :, way, 0, :, 3 + way] = -foot[..., None] * three.counts
        return read.reshape(*foot.shape, 3, -1)

    def _hold(self) -> FloatArray:
        """What parting calls up for each mm2, (3, 3), N/mm, from the block's own wood.

        A face's shear dies out in the wood behind it: in a thickness t, beyond what its normals' lean takes up, that
        gives as a layer of t / 12 would; squeeze, which has no lean to go with it, as one of t / 3.
        """
        ply, thick = self.block.ply, self.block.thickness
        hold = np.zeros((3, 3))
        hold[:2, :2] = 12.0 / thick * turned(in_plane(ply.wood, ply.cut), through(ply.wood, ply.cut), ply.grain)[1]
        hold[2, 2] = 3.0 / thick * (ply.wood.tangential if ply.cut == "quarter" else ply.wood.radial)
        return hold

    @cached_property
    def mass(self) -> csr_matrix:
        """What it adds, (size, size)."""
        six = self.sheet.mesh.six
        heavy = inertia([(self.block.ply, *self.block.faces)]) * six.areas[self.triangles, :, None]
        return summed(self.columns, mass_blocks(six.counts, heavy), self.size)


def nodes_under(sheet: Sheet, block: Block) -> tuple[Indices, Indices]:
    """The triangles under a block, by their middles, and their nodes.

    Raises MakersFault where there are none.
    """
    mesh = sheet.mesh
    triangles = np.flatnonzero(inside(block.ring, mesh.middles))
    if not len(triangles):
        raise MakersFault.of(f"{block.name} does not lie on the plate", remedy="move it, or leave it out")
    return triangles, np.unique(mesh.triangles[triangles])
