"""A plate put together: its mesh, its matrices with the edge held, one factor, and what follows from that."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, reduce
from operator import add

import numpy as np
from scipy.sparse import csr_matrix

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.assembly import Sheet, grown, rigid, rising, sheet_of
from gramil.physics.plates.bar import Bar
from gramil.physics.plates.block import Block, GluedBlock
from gramil.physics.plates.edge import HeldEdge, held
from gramil.physics.plates.glued import GluedBar, glued_to, with_bar_glued
from gramil.physics.plates.mesh import Mesh
from gramil.physics.plates.meshing import Region, mesh_of
from gramil.physics.plates.nearby import Near, modes_near, moved_near
from gramil.physics.plates.plate import Plate
from gramil.physics.plates.solving import Factor, factor_of, free_modes_of, modes_of, signed

WIDE = 1.5
"""Of a bar wider than this many sides of a triangle the mesh follows the edges, of a narrower one the middle."""


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
class Bare:
    """The plate alone with its edge held; changes to bars and blocks leave it as it is."""

    sheet: Sheet
    held: HeldEdge

    @cached_property
    def stiffness(self) -> csr_matrix:
        """Of the free movements."""
        return self.freed(csr_matrix(self.sheet.stiffness + self.held.springs.matrix))

    @cached_property
    def mass(self) -> csr_matrix:
        """Of the free movements."""
        return self.freed(self.sheet.mass)

    def freed(self, matrix: csr_matrix) -> csr_matrix:
        """A matrix of the plate's movements, of its free ones."""
        if self.held.turns:
            matrix = self.held.turned.T @ matrix @ self.held.turned
        return csr_matrix(csr_matrix(matrix)[self.held.free][:, self.held.free])


@dataclass(frozen=True, eq=False)
class Whole:
    """A plate with its bars and blocks on a mesh, its edge held. Movements are the nodes', then piece by piece.

    `near` is what is known of the same plate a little otherwise, which spares a factor of its own where it helps.
    """

    bare: Bare
    glued: tuple[GluedBar | GluedBlock, ...]
    near: Near | None = None

    @property
    def sheet(self) -> Sheet:
        """The plate on its mesh."""
        return self.bare.sheet

    @property
    def mesh(self) -> Mesh:
        """What it is cut into."""
        return self.bare.sheet.mesh

    @property
    def bars(self) -> tuple[GluedBar, ...]:
        """Its bars."""
        return tuple(each for each in self.glued if isinstance(each, GluedBar))

    @property
    def blocks(self) -> tuple[GluedBlock, ...]:
        """Its blocks."""
        return tuple(each for each in self.glued if isinstance(each, GluedBlock))

    @property
    def size(self) -> int:
        """How many movements there are."""
        return self.glued[0].size if self.glued else self.sheet.size

    @cached_property
    def stiffness(self) -> csr_matrix:
        """Of the free movements."""
        return self._joined(self.bare.stiffness, [piece.stiffness for piece in self.glued])

    @cached_property
    def mass(self) -> csr_matrix:
        """Of the free movements."""
        return self._joined(self.bare.mass, [piece.mass for piece in self.glued])

    def _joined(self, plate: csr_matrix, pieces: Sequence[csr_matrix]) -> csr_matrix:
        if not pieces:
            return plate
        stuck = csr_matrix(reduce(add, pieces))
        if self.bare.held.turns:
            stuck = csr_matrix(self._turned.T @ stuck @ self._turned)
        stuck = csr_matrix(stuck[self._free][:, self._free])
        return csr_matrix(grown(plate, stuck.shape[0]) + stuck)

    @cached_property
    def _turned(self) -> csr_matrix:
        turned, own = self.bare.held.turned, self.size - self.sheet.size
        if not own:
            return turned
        figures = np.concatenate([turned.data, np.ones(own)])
        columns = np.concatenate([turned.indices, np.arange(self.sheet.size, self.size)])
        starts = np.concatenate([turned.indptr, turned.indptr[-1] + np.arange(1, own + 1)])
        return csr_matrix((figures, columns, starts), shape=(self.size, self.size))

    @cached_property
    def _free(self) -> np.ndarray:
        return np.concatenate([self.bare.held.free, np.arange(self.sheet.size, self.size)])

    @cached_property
    def factor(self) -> Factor:
        """The factored stiffness."""
        return factor_of(self.stiffness)

    def free_load(self, load: FloatArray) -> FloatArray:
        """A load (n,) or (n, k) on the free movements; one on the nodes alone loads no bar."""
        filled = np.zeros((self.size, *load.shape[1:]))
        filled[: len(load)] = load
        return np.asarray((self._turned.T @ filled)[self._free])

    def movements(self, free: FloatArray) -> FloatArray:
        """All movements, (n,) or (n, k), from the free ones."""
        every = np.zeros((self.size, *free.shape[1:]))
        every[self._free] = free
        return np.asarray(self._turned @ every)

    def under(self, load: FloatArray) -> FloatArray:
        """Movements (n,) or (n, k) under a load (n,) or (n, k).

        Raises MakersFault for a plate that is not held.
        """
        free = self.free_load(load)
        near = self._near()
        found = moved_near(near, self.stiffness, free) if near and free.ndim == 1 else None
        return self.movements(self.factor.solve(free) if found is None else found)

    def _near(self) -> Near | None:
        """What spares a factor; none where there is one already."""
        known = "factor" in self.__dict__ or self.near is None or not self.near.fits(self.stiffness.shape[0])
        return None if known else self.near

    def kept_near(self, modes: Modes | None) -> Near | None:
        """What this plate is for one a little otherwise; `modes` are its own, if they are known."""
        if "factor" not in self.__dict__:
            return self.near
        shapes = None if modes is None else np.asarray((self._turned.T @ modes.movements)[self._free])
        return Near(self.factor, shapes)

    def modes(self, count: int = 10) -> Modes:
        """The lowest modes of a held plate.

        Raises MakersFault for a plate that is not held.
        """
        near = self._near()
        found = modes_near(near, self.stiffness, self.mass, count) if near else None
        squares, shapes = found or modes_of(self.factor, self.stiffness, self.mass, count)
        shapes = signed(shapes)
        return Modes(np.sqrt(squares) / (2.0 * np.pi), self.movements(shapes))

    def free_modes(self, count: int = 10) -> Modes:
        """The lowest modes of a plate that nothing holds, or not everywhere; moving as a whole is left out."""
        trials = self.free_load(rising(self.sheet))
        called, heavy = self.stiffness @ trials, self.mass @ trials
        typical = float(((trials * called).sum(axis=0) / (trials * heavy).sum(axis=0)).min())
        whole = self.free_load(rigid(self.sheet))
        squares, shapes = free_modes_of(self.stiffness, self.mass, whole, typical, count)
        return Modes(np.sqrt(squares) / (2.0 * np.pi), self.movements(shapes))


def whole_of(plate: Plate, size: float, bars: Sequence[Bar] = (), blocks: Sequence[Block] = ()) -> Whole:
    """A plate with its bars and blocks, cut into triangles of about `size` mm, its edge held.

    Raises MakersFault where no mesh of about that size passes, and for a piece that does not stand on the plate.
    """
    rings = [block.ring for block in blocks] + [bar.footprint for bar in bars if bar.width > WIDE * size]
    lines = [np.concatenate([ring, ring[:1]]) for ring in rings]
    lines += [np.array([bar.start, bar.stop]) for bar in bars if bar.width <= WIDE * size]
    mesh = mesh_of(Region(plate.outline, plate.holes, tuple(lines)), size)
    sheet = sheet_of(plate, mesh, [block.ring for block in blocks])
    return Whole(Bare(sheet, held(mesh, plate.holds)), glued_to(sheet, bars, blocks))


def with_bar(whole: Whole, bar: Bar) -> Whole:
    """The same with the bar of that name as it is now, on the same mesh; what is not touched is not worked out again.

    Raises MakersFault for a bar that does not stand on the plate.
    """
    return replace(whole, glued=with_bar_glued(whole.glued, bar))
