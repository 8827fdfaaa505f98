"""Bars on a plate's mesh: where they are sampled, what reads their strains, and their stiffness and mass.

A bar has its own section rotation and its own deflection, in cubic splines along it: it does not share the plate's
normal, or it would come out 10 to 20 % too stiff. Its foot goes with the plate's face. Bars cut through triangles: they
are sampled where they are, densely, and not where the mesh has its points.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.sparse import csr_matrix

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.assembly import Sheet
from gramil.physics.plates.bar import Bar, Section, section_at
from gramil.physics.plates.block import Block, GluedBlock, nodes_under
from gramil.physics.plates.edge import EACH
from gramil.physics.plates.mesh import Indices
from gramil.physics.plates.plate import thickness_at
from gramil.physics.plates.rows import LEAN_X, LEAN_Y, X, Y, Z, sparse_rows
from gramil.physics.plates.squares import Squares

SPAN = 3.5
"""Length of a spline's span, mm, or a little less."""
DENSE, SPARSE = (5, 6), (2, 4)
"""Samples to a span and across a bar, the least of them: for its strains, and for its mass. Across they are an even
number, so that none lies on the mesh's line along its middle."""
_LEAN, _ROLL, _RISE = range(3)
"""A bar's own movements in their order: its section along it, its section across it, its deflection."""
_OWN = 3


@dataclass(frozen=True, eq=False)
class Track:
    """A bar's own movements: how many spans, and the index of the first of its 3 x (spans + 3) among all movements."""

    spans: int
    first: int

    @property
    def functions(self) -> int:
        """Splines to each of its three movements."""
        return self.spans + 3


def spans_of(bar: Bar) -> int:
    """How many spans a bar's splines have."""
    return max(2, math.ceil(bar.length / SPAN))


def tracks_of(bars: Sequence[Bar], nodes: int) -> tuple[Track, ...]:
    """Each bar's own movements, counted after those of so many nodes."""
    spans = [spans_of(bar) for bar in bars]
    starts = EACH * nodes + np.cumsum([0, *(_OWN * (count + 3) for count in spans)])
    return tuple(Track(count, int(start)) for count, start in zip(spans, starts[:-1], strict=True))


@dataclass(frozen=True, eq=False)
class Samples:
    """Places (p, 2) under a bar, how far along and across it they are, the foot's area each stands for (0 off the plate
    in `glued`), and the section there; `columns` and counts of the triangle's nodes and of the bar's splines."""

    bar: Bar
    along: FloatArray
    across: FloatArray
    areas: FloatArray
    glued: FloatArray
    thickness: FloatArray
    slope: FloatArray
    nodes: Indices
    counts: FloatArray
    ways: FloatArray
    splines: Indices
    spline: FloatArray
    spline_change: FloatArray
    functions: int

    @cached_property
    def section(self) -> Section:
        """The bar's section at each place."""
        return section_at(self.bar, self.along, self.thickness)


def samples_of(sheet: Sheet, bar: Bar, track: Track, density: tuple[int, int] = DENSE) -> Samples:
    """Places under a bar, denser than triangles.

    Raises MakersFault where less than half of the bar stands on the plate.
    """
    plate, mesh = sheet.plate, sheet.mesh
    span = bar.length / track.spans
    s, n, areas = _grid(bar, track, density)
    points = np.asarray(bar.start) + s[:, None] * bar.way + n[:, None] * bar.left
    which, shares = mesh.place(points)
    on = which >= 0
    if areas[on].sum() < 0.5 * areas.sum():
        raise MakersFault.of(
            f"{bar.name} does not stand on the plate: more than half of its foot is over a hole or beyond the edge",
            remedy="move it, or leave it out",
        )
    counts, ways = mesh.weights(which, shares)
    nodes = mesh.triangles[which]
    rises = np.zeros(len(mesh.nodes)) if plate.rise is None else plate.rise(mesh.nodes)
    slope = ((rises[nodes][:, None, :] @ ways)[:, 0] * on[:, None]) @ bar.way
    index = np.minimum((s / span).astype(np.int64), track.spans - 1)
    spline, change = _cubics(s / span - index, span)
    return Samples(
        bar, s, n, areas, on.astype(np.float64), thickness_at(plate, points), slope,
        nodes, counts * on[:, None], ways * on[:, None, None],
        track.first + index[:, None] + np.arange(4), spline, change, track.functions,
    )  # fmt: skip


def _grid(bar: Bar, track: Track, density: tuple[int, int]) -> tuple[FloatArray, FloatArray, FloatArray]:
    """How far along and across the places are, and the foot's area each stands for: Gauss's points both ways."""
    steps, weights = np.polynomial.legendre.leggauss(density[0])
    places, shares = np.polynomial.legendre.leggauss(max(density[1], 2 * math.ceil(bar.width / 8.0)))
    half_span, half = 0.5 * bar.length / track.spans, 0.5 * bar.width
    along = (half_span * (2 * np.arange(track.spans)[:, None] + 1.0 + steps)).ravel()
    s, n = np.meshgrid(along, half * places, indexing="ij")
    areas = np.outer(np.tile(half_span * weights, track.spans), half * shares)
    return s.ravel(), n.ravel(), areas.ravel()


def _cubics(part: FloatArray, span: float) -> tuple[FloatArray, FloatArray]:
    """The four cubic splines at a part (0 to 1) of a span, (p, 4), and how they change along it."""
    t, u = part, 1.0 - part
    values = [u**3, 3 * t**3 - 6 * t**2 + 4, 3 * u**3 - 6 * u**2 + 4, t**3]
    changes = [-(u**2), 3 * t**2 - 4 * t, -(3 * u**2 - 4 * u), t**2]
    return np.stack(values, axis=1) / 6.0, np.stack(changes, axis=1) / (2.0 * span)


def strains_of(samples: Samples, size: int) -> Squares:
    """What a bar's energy consists of, as squares of `size` movements.

    Its stretch at mid-height; bending of its section over its height; shear up along it; its own twist; sway of it
    against the plate; squeeze between the two; twist of the plate's normal where they meet.
    """
    bar, section, areas = samples.bar, samples.section, samples.areas
    way, left = bar.way, bar.left
    onward, sideways = samples.ways @ way, samples.ways @ left
    foot = 0.5 * bar.side * samples.thickness[:, None]
    plain, change, across = samples.spline, samples.spline_change, samples.across[:, None]
    stretch = [(X, onward * way[0]), (Y, onward * way[1]), (Z, onward * samples.slope[:, None])]
    stretch += [(LEAN_X, onward * foot * way[0]), (LEAN_Y, onward * foot * way[1])]
    on = samples.glued * areas
    middle = section.stretch_bend / section.stretch
    parts = [
        (stretch, [(_LEAN, change * middle[:, None])], section.stretch * on),
        ([], [(_LEAN, change)], section.bend * areas - section.stretch_bend * middle * on),
        ([], [(_LEAN, plain), (_RISE, change)], section.shear * areas),
        ([], [(_ROLL, change)], section.twist * areas),
        ([(Z, sideways)], [(_ROLL, plain)], section.sway * on),
        ([(Z, -samples.counts)], [(_RISE, plain), (_ROLL, -across * plain)], section.squeeze * on),
        ([(LEAN_X, onward * left[0]), (LEAN_Y, onward * left[1])], [], section.junction * on),
    ]
    return Squares.joined([Squares(_rows(samples, plate, own, size), weight) for plate, own, weight in parts])


def moves_of(samples: Samples, size: int) -> Squares:
    """What a bar's mass goes with, as squares of `size` movements: of its mid-height along and across, with what its
    section's leaning adds, and its rise."""
    bar, section, areas = samples.bar, samples.section, samples.areas
    counts, plain, across = samples.counts, samples.spline, samples.across[:, None]
    foot = 0.5 * bar.side * samples.thickness[:, None]
    middle = section.weight_lean / section.weight
    about = section.lean - section.weight_lean * middle
    parts: list[tuple[Parts, Parts, FloatArray]] = [
        ([], [(_LEAN, plain)], about * areas),
        ([], [(_ROLL, plain)], about * areas),
        ([], [(_RISE, plain), (_ROLL, -across * plain)], section.weight * areas),
    ]
    for way, kind in ((bar.way, _LEAN), (bar.left, _ROLL)):
        moved = [(X, counts * way[0]), (Y, counts * way[1])]
        moved += [(LEAN_X, counts * foot * way[0]), (LEAN_Y, counts * foot * way[1])]
        parts.append((moved, [(kind, plain * middle[:, None])], section.weight * areas))
    return Squares.joined([Squares(_rows(samples, plate, own, size), weight) for plate, own, weight in parts])


Parts = list[tuple[int, FloatArray]]
"""Kinds of movement, with what each of a triangle's nodes, or of a bar's splines, counts for."""


def _rows(samples: Samples, of_plate: Parts, of_bar: Parts, size: int) -> csr_matrix:
    columns = [EACH * samples.nodes + kind for kind, _ in of_plate]
    columns += [samples.splines + kind * samples.functions for kind, _ in of_bar]
    figures = [figure for _, figure in (*of_plate, *of_bar)]
    return sparse_rows(np.concatenate(columns, axis=1), np.concatenate(figures, axis=1), size)


@dataclass(frozen=True, eq=False)
class GluedBar:
    """A bar on a sheet, its movements among `size`."""

    bar: Bar
    sheet: Sheet
    track: Track
    samples: Samples
    size: int

    @cached_property
    def stiffness(self) -> csr_matrix:
        """What it adds, (size, size)."""
        return strains_of(self.samples, self.size).matrix

    @cached_property
    def mass(self) -> csr_matrix:
        """What it adds, (size, size)."""
        return moves_of(samples_of(self.sheet, self.bar, self.track, SPARSE), self.size).matrix


def glued_to(sheet: Sheet, bars: Sequence[Bar], blocks: Sequence[Block] = ()) -> tuple[GluedBar | GluedBlock, ...]:
    """Bars, then blocks, glued to a sheet.

    Raises MakersFault for a bar or block that does not stand on the plate.
    """
    tracks = tracks_of(bars, len(sheet.mesh.nodes))
    under = [nodes_under(sheet, block) for block in blocks]
    after_bars = sheet.size + sum(_OWN * track.functions for track in tracks)
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
    if spans_of(bar) == old.track.spans:
        fresh = GluedBar(bar, old.sheet, old.track, samples_of(old.sheet, bar, old.track), old.size)
        return (*glued[:row], fresh, *glued[row + 1 :])
    bars = [each.bar for each in glued if isinstance(each, GluedBar)]
    blocks = [each.block for each in glued if isinstance(each, GluedBlock)]
    return glued_to(old.sheet, [bar if each.name == bar.name else each for each in bars], blocks)
