"""A plate put together: its mesh, its matrices with the edge held, one factor, and what follows from that."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.sparse import csr_matrix

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.assembly import Sheet, rigid, rising, sheet_of
from gramil.physics.plates.edge import Held, held
from gramil.physics.plates.meshing import Region, mesh_of
from gramil.physics.plates.plate import Plate
from gramil.physics.plates.solving import Factor, factor_of, free_modes_of, modes_of


@dataclass(frozen=True, eq=False)
class Modes:
    """The lowest modes: frequencies (k,) in Hz, and movements (n, k) of unit modal mass (tonnes)."""

    frequencies: FloatArray
    movements: FloatArray

    @property
    def squares(self) -> FloatArray:
        """Squared angular frequencies, 1/s2."""
        return (2.0 * np.pi * self.frequencies) ** 2


@dataclass(frozen=True, eq=False)
class Whole:
    """A plate on a mesh with its edge held."""

    sheet: Sheet
    held: Held

    @cached_property
    def stiffness(self) -> csr_matrix:
        """Of the free movements."""
        return self._freed(self.sheet.stiffness + self.held.springs.matrix)

    @cached_property
    def mass(self) -> csr_matrix:
        """Of the free movements."""
        return self._freed(self.sheet.mass)

    def _freed(self, matrix: csr_matrix) -> csr_matrix:
        turned, free = self.held.turned, self.held.free
        return csr_matrix((turned.T @ matrix @ turned)[free][:, free])

    @cached_property
    def factor(self) -> Factor:
        """The stiffness taken apart."""
        return factor_of(self.stiffness)

    def free_load(self, load: FloatArray) -> FloatArray:
        """A load (n,) or (n, k) on the free movements."""
        return np.asarray((self.held.turned.T @ load)[self.held.free])

    def movements(self, free: FloatArray) -> FloatArray:
        """All movements, (n,) or (n, k), from the free ones."""
        every = np.zeros((self.held.turned.shape[0], *free.shape[1:]))
        every[self.held.free] = free
        return np.asarray(self.held.turned @ every)

    def under(self, load: FloatArray) -> FloatArray:
        """Movements (n,) or (n, k) under a load (n,) or (n, k)."""
        return self.movements(self.factor.solve(self.free_load(load)))

    def free_modes(self, count: int = 10) -> Modes:
        """The lowest modes of a plate that nothing holds, or not everywhere; moving as a whole is left out."""
        trials = self.free_load(rising(self.sheet))
        each = np.einsum("nk,nk->k", trials, self.stiffness @ trials) / np.einsum(
            "nk,nk->k", trials, self.mass @ trials
        )
        squares, shapes = free_modes_of(
            self.stiffness, self.mass, self.free_load(rigid(self.sheet)), float(each.min()), count
        )
        return Modes(np.sqrt(squares) / (2.0 * np.pi), self.movements(shapes))

    def modes(self, count: int = 10) -> Modes:
        """The lowest modes of a held plate."""
        squares, shapes = modes_of(self.factor, self.stiffness, self.mass, count)
        return Modes(np.sqrt(squares) / (2.0 * np.pi), self.movements(shapes))


def whole_of(plate: Plate, size: float) -> Whole:
    """A plate cut into triangles of about `size` mm, its edge held.

    Raises MakersFault where no mesh of about that size passes.
    """
    mesh = mesh_of(Region(plate.outline, plate.holes, tuple(patch.ring for patch in plate.patches)), size)
    return Whole(sheet_of(plate, mesh), held(mesh, plate.holds))
