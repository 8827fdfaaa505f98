"""Where a bar is sampled on a plate's mesh: denser than triangles, and where the bar is, not where the mesh has points.

A bar cuts through triangles. Along it run its own movements, in cubic splines: its section's lean along it and across
it, and its deflection.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.assembly import Sheet
from gramil.physics.plates.bar import Bar, Section, section_at
from gramil.physics.plates.edge import EACH
from gramil.physics.plates.mesh import Indices
from gramil.physics.plates.plate import thickness_at

SPAN = 3.5
"""Length of a spline's span, mm, or a little less."""
DENSE, SPARSE = (5, 6), (2, 4)
"""Samples to a span and across a bar, the least of them: for its strains, and for its mass. Across they are an even
number, so that none lies on the mesh's line along its middle."""
LEAN, ROLL, RISE = range(3)
"""A bar's own movements in their order: its section's lean along it, its section's lean across it, its deflection."""
OWN = 3


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
    """Each bar's own movements, counted after those of the nodes."""
    spans = [spans_of(bar) for bar in bars]
    starts = EACH * nodes + np.cumsum([0, *(OWN * (count + 3) for count in spans)])
    return tuple(Track(count, int(start)) for count, start in zip(spans, starts[:-1], strict=True))


@dataclass(frozen=True, eq=False)
class Read:
    """What a triangle's six nodes count for, (p, 6): themselves, along the bar, across it, along it over an arch."""

    counts: FloatArray
    onward: FloatArray
    sideways: FloatArray
    arched: FloatArray


@dataclass(frozen=True, eq=False)
class Samples:
    """Places (p,) under a bar: how far along and across it, the foot's area (mm2) each stands for, whether the plate is
    there (1 or 0), and how thick; the nodes (p, 6) of each one's triangle and the bar's splines (p, 4), which movement
    is the first spline's, what they count for and how that changes along."""

    bar: Bar
    sheet: Sheet
    track: Track
    along: FloatArray
    across: FloatArray
    areas: FloatArray
    on: FloatArray
    thickness: FloatArray
    triangles: Indices
    shares: FloatArray
    splines: Indices
    spline: FloatArray
    spline_change: FloatArray

    @cached_property
    def section(self) -> Section:
        """The bar's section at each place."""
        return section_at(self.bar, self.along, self.thickness)

    @property
    def nodes(self) -> Indices:
        """Each place's triangle's nodes, (p, 6)."""
        return self.sheet.mesh.triangles[self.triangles]

    @cached_property
    def read(self) -> Read:
        """What the plate's nodes count for there; nothing off the plate."""
        counts, ways = self.sheet.mesh.weights(self.triangles, self.shares)
        onward, sideways = ways @ self.bar.way, ways @ self.bar.left
        slope = (self._rises * onward).sum(axis=1, keepdims=True)
        return self._on(Read(counts, onward, sideways, onward * slope))

    @cached_property
    def aside(self) -> Read:
        """How `read` changes for each mm that a place lies farther to the bar's left, within its triangle."""
        _, ways = self.sheet.mesh.weights(self.triangles, self.shares)
        left = self.sheet.mesh.second_ways(self.triangles, self.shares) @ self.bar.left
        onward, turned = ways @ self.bar.way, left @ self.bar.way
        slope, bent = ((self._rises * each).sum(axis=1, keepdims=True) for each in (onward, turned))
        return self._on(Read(ways @ self.bar.left, turned, left @ self.bar.left, turned * slope + onward * bent))

    @cached_property
    def _rises(self) -> FloatArray:
        rise = self.sheet.plate.rise
        return np.zeros(self.nodes.shape) if rise is None else rise(self.sheet.mesh.nodes[self.nodes])

    def _on(self, read: Read) -> Read:
        on = self.on[:, None]
        return Read(read.counts * on, read.onward * on, read.sideways * on, read.arched * on)


def samples_of(sheet: Sheet, bar: Bar, track: Track, density: tuple[int, int] = DENSE) -> Samples:
    """Places under a bar.

    Raises MakersFault where less than half of the bar stands on the plate.
    """
    span = bar.length / track.spans
    s, n, areas = _grid(bar, track, density)
    points = np.asarray(bar.start) + s[:, None] * bar.way + n[:, None] * bar.left
    which, shares = sheet.mesh.place(points)
    on = (which >= 0).astype(np.float64)
    if not on @ areas > 0.5 * areas.sum():
        raise MakersFault.of(
            f"{bar.name} does not stand on the plate: half of its foot or more is over a hole or beyond the edge",
            remedy="move it, or leave it out",
        )
    index = np.minimum((s / span).astype(np.int64), track.spans - 1)
    spline, change = _cubics(s / span - index, span)
    splines = track.first + index[:, None] + np.arange(4)
    thickness = thickness_at(sheet.plate, points)
    return Samples(bar, sheet, track, s, n, areas, on, thickness, which, shares, splines, spline, change)


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
