"""A plate's stiffness and mass on its mesh: bending, stretch and shear through the thickness (Reissner, Mindlin).

Each node moves along x, y and z, and its normal leans along x and along y. Three points to a triangle for strains: that
is exact for bending on an even plate, and few enough in shear that a thin plate does not lock. The slope of a shallow
arch makes stretch of a deflection (Marguerre).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import coo_matrix, csr_matrix

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.edge import EACH
from gramil.physics.plates.lines import inside
from gramil.physics.plates.mesh import Indices, Mesh
from gramil.physics.plates.plate import Plate, layers_at
from gramil.physics.plates.plies import STRAINS, inertia, stiffness
from gramil.physics.plates.timber import SHEAR_SHARE

_NODES = 6


@dataclass(frozen=True, eq=False)
class Sheet:
    """A plate on a mesh: what reads its strains, (m, 3, 8, 30), and which movements each triangle's are, (m, 30).

    `covered` (m,) are triangles under a piece glued flat on: there shear does not fall to nothing at the face.
    """

    plate: Plate
    mesh: Mesh
    strains: FloatArray
    columns: Indices
    covered: NDArray[np.bool_]

    @property
    def size(self) -> int:
        """Movements of all nodes."""
        return EACH * len(self.mesh.nodes)

    @cached_property
    def stiffness(self) -> csr_matrix:
        """The plate's stiffness, (n, n)."""
        three = self.mesh.three
        calls = stiffness(layers_at(self.plate, three.points)) * three.areas[..., None, None]
        calls[self.covered, :, 6:, 6:] /= SHEAR_SHARE  # the share is for shear that falls to nothing at a free face
        return summed(self.columns, stiffness_blocks(self.strains, calls), self.size)

    @cached_property
    def mass(self) -> csr_matrix:
        """The plate's mass, (n, n), with what its leaning normals add."""
        six = self.mesh.six
        heavy = inertia(layers_at(self.plate, six.points)) * six.areas[..., None]
        return summed(self.columns, mass_blocks(six.counts, heavy), self.size)


def stiffness_blocks(read: FloatArray, calls: FloatArray) -> FloatArray:
    """Each triangle's stiffness (m, k, k) from what reads strains (m, g, s, k) and what they call up (m, g, s, s)."""
    flat = read.reshape(len(read), -1, read.shape[-1])
    return np.asarray(flat.transpose(0, 2, 1) @ (calls @ read).reshape(flat.shape))


def mass_blocks(counts: FloatArray, heavy: FloatArray) -> FloatArray:
    """Each triangle's mass (m, 30, 30) from nodes' counts (g, 6) and mass with its first two moments (m, g, 3)."""
    plain, first, second = np.einsum("mgk,gi,gj->kmij", heavy, counts, counts, optimize=True)
    blocks = np.zeros((len(heavy), _NODES, EACH, _NODES, EACH))
    for moved, leaned in ((0, 3), (1, 4)):
        blocks[:, :, moved, :, moved] = plain
        blocks[:, :, moved, :, leaned] = blocks[:, :, leaned, :, moved] = first
        blocks[:, :, leaned, :, leaned] = second
    blocks[:, :, 2, :, 2] = plain
    return blocks.reshape(len(heavy), EACH * _NODES, -1)


def sheet_of(plate: Plate, mesh: Mesh, covering: Sequence[FloatArray] = ()) -> Sheet:
    """A plate on a mesh, ready to read its strains; `covering` are rings of pieces glued flat to it."""
    three = mesh.three
    rises = np.zeros(len(mesh.nodes)) if plate.rise is None else plate.rise(mesh.nodes)
    slope = np.einsum("mi,mgik->mgk", rises[mesh.triangles], three.ways)
    columns = EACH * mesh.triangles[:, :, None] + np.arange(EACH)
    strains = _strains(three.counts, three.ways, slope)
    covered = np.zeros(len(columns), dtype=np.bool_)
    for ring in covering:
        covered |= inside(ring, mesh.middles)
    return Sheet(plate, mesh, strains.reshape(*strains.shape[:3], -1), columns.reshape(len(columns), -1), covered)


def _strains(counts: FloatArray, ways: FloatArray, slope: FloatArray) -> FloatArray:
    """The eight strains from the thirty movements, (m, g, 8, 6, 5)."""
    read = np.zeros((*ways.shape[:2], STRAINS, _NODES, EACH))
    x, y = ways[..., 0], ways[..., 1]
    sx, sy = slope[..., :1], slope[..., 1:]
    for first, (along, across) in ((0, (0, 1)), (3, (3, 4))):
        read[:, :, first, :, along] = read[:, :, first + 2, :, across] = x
        read[:, :, first + 1, :, across] = read[:, :, first + 2, :, along] = y
    read[:, :, 0, :, 2], read[:, :, 1, :, 2], read[:, :, 2, :, 2] = sx * x, sy * y, sx * y + sy * x
    read[:, :, 6, :, 2], read[:, :, 6, :, 3] = x, counts
    read[:, :, 7, :, 2], read[:, :, 7, :, 4] = y, counts
    return read


def rigid(sheet: Sheet) -> FloatArray:
    """The six movements (n, 6) of the plate as a whole, which strain nothing."""
    x, y = (sheet.mesh.nodes - sheet.mesh.nodes.mean(axis=0)).T
    rise = np.zeros(len(x)) if sheet.plate.rise is None else sheet.plate.rise(sheet.mesh.nodes)
    one, none = np.ones_like(x), np.zeros_like(x)
    moves = [
        (one, none, none, none, none),
        (none, one, none, none, none),
        (none, none, one, none, none),
        (-y, x, none, none, none),
        (-rise, none, x, -one, none),
        (none, -rise, y, none, -one),
    ]
    return np.stack([np.stack(each, axis=1).ravel() for each in moves], axis=1)


def rising(sheet: Sheet) -> FloatArray:
    """Three plain bent shapes (n, 3) of the plate, sheared by nothing: along x, along y, twisted."""
    x, y = (sheet.mesh.nodes - sheet.mesh.nodes.mean(axis=0)).T
    none = np.zeros_like(x)
    shapes = [(x * x, -2 * x, none), (y * y, none, -2 * y), (x * y, -y, -x)]
    return np.stack([np.stack((none, none, *each), axis=1).ravel() for each in shapes], axis=1)


def summed(columns: Indices, blocks: FloatArray, size: int) -> csr_matrix:
    """Blocks (m, k, k) added up in a sparse matrix (size, size), each at its own columns (m, k)."""
    small = columns.astype(np.int32)
    rows = np.broadcast_to(small[:, :, None], blocks.shape).ravel()
    across = np.broadcast_to(small[:, None, :], blocks.shape).ravel()
    return coo_matrix((blocks.ravel(), (rows, across)), shape=(size, size)).tocsr()


def grown(matrix: csr_matrix, size: int) -> csr_matrix:
    """The matrix padded with rows and columns of zeros, (size, size)."""
    more = np.full(size - matrix.shape[0], matrix.indptr[-1], dtype=matrix.indptr.dtype)
    return csr_matrix((matrix.data, matrix.indices, np.concatenate([matrix.indptr, more])), shape=(size, size))
