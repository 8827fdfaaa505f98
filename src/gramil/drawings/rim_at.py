"""The body's edges and plates where a cut goes through them: sides, linings, the bindings in their channels."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.drawings.bevelled_at import bevels_at, without_edge
from gramil.drawings.hull import Hull
from gramil.drawings.marks import Marks, Point, Polyline
from gramil.drawings.pen import Hatch
from gramil.drawings.rim import Rim
from gramil.graph import Figures
from gramil.parts.edge_records import Edge
from gramil.quantities import Mm
from gramil.shapes.outline import Outline

Array = NDArray[np.float64]
Surface = Callable[[Array], Array]
Interval = tuple[Mm, Mm]
"""From where to where across, the lower first."""
STEPS = 48
"""Pieces of a run across the body."""


@dataclass(frozen=True)
class Piece:
    """A piece of the body at a cut, from edge to edge: the rims of top and back at its treble end and at its bass end.

    Each rim has its plate on top and lies outward to positive y: the back's is turned over, the bass end's mirrored.
    """

    treble: tuple[Rim, Rim]
    bass: tuple[Rim, Rim]


def pieces_at(figures: Figures, hull: Hull) -> tuple[Piece, ...]:
    """What is cut through, from the bass side on: one piece, or two where the horn of a cutaway stands apart."""
    cuts = bevels_at(figures, hull)
    if hull.shell.side.outline.alike:
        rims = rims_at(figures, hull)
        return (Piece(rims, without_edge(rims, cuts)),)
    ends = hull.across(hull.shell.side.outline)
    bass = [without_edge(_rims(figures, hull, each, -1.0), () if row else cuts) for row, each in enumerate(ends)]
    return tuple(Piece(_rims(figures, hull, each, 1.0), low) for each, low in zip(ends, bass, strict=True))


def rims_at(figures: Figures, hull: Hull) -> tuple[Rim, Rim]:
    """The treble edges of top and back, each with its plate on top: the back's turned over."""
    return _rims(figures, hull, (-hull.bass, hull.half), 1.0)


def _rims(figures: Figures, hull: Hull, ends: Interval, way: float) -> tuple[Rim, Rim]:
    """Both rims at the treble end of a piece (`way` 1), or mirrored at its bass end (-1)."""

    def outside(y: float) -> float:
        return float(hull.over(np.array([way * y]))[0])

    def inside_out(y: float) -> float:
        return float(figures[n.body_back_thickness]) - float(hull.back(np.array([way * y]))[0])

    edges = (figures[n.channel_edge_top], figures[n.channel_edge_back])
    return _rim(figures, hull, edges[0], outside, (ends, way)), _rim(figures, hull, edges[1], inside_out, (ends, way))


def _rim(figures: Figures, hull: Hull, edge: Edge, face: Callable[[Mm], Mm], at: tuple[Interval, float]) -> Rim:
    lines = next((each for each in figures[n.channel_lines] if each.name == edge.name), None)
    outer = _end_of(at[0], at[1])
    bound, purfled = (
        (outer, outer) if lines is None else (_end(hull, each, at) for each in (lines.bound, lines.purfled))
    )
    bare, lined = (min(outer, _end(hull, each, at)) for each in (hull.shell.bare, hull.shell.lined))
    return Rim(edge, face, outer, bound, purfled, bare, lined, float(figures[n.body_linings_height]))


def _end(hull: Hull, inner: Outline, at: tuple[Interval, float]) -> Mm:
    """Where an outline within the body's ends at that end of the piece; at the piece's middle if it does not reach that
    far.
    """
    (low, high), way = at
    middle = (low + high) / 2
    within = [each for each in hull.across(inner) if low <= each[0] and each[1] <= high]
    if not within:
        return way * middle
    return _end_of((within[0][0], within[-1][1]), way)


def _end_of(ends: Interval, way: float) -> Mm:
    return ends[1] if way > 0 else -ends[0]


def back_at(figures: Figures, hull: Hull) -> Marks:
    """The back, its inner face toward the top."""
    thick = float(figures[n.body_back_thickness])
    return tuple(
        plate_between(
            lambda y: hull.back(y) - thick,
            hull.back,
            turned_under(piece.treble[1].plate_end()),
            turned_under(piece.bass[1].plate_end()),
        )
        for piece in pieces_at(figures, hull)
    )


def turned_under(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """A run that was drawn with the back up, as the back lies."""
    return tuple((y, -z) for y, z in points)


def edges_at(figures: Figures, hull: Hull) -> Marks:
    """On both sides: the side from plate to plate, linings against it, bindings and purflings in their channels."""
    return tuple(
        Polyline(points, "outline", closed=True, hatch=hatch)
        for piece in pieces_at(figures, hull)
        for (bass, hatch), (treble, _) in zip(_shapes(*piece.bass), _shapes(*piece.treble), strict=True)
        for points in (over_the_middle(bass), treble)
        if points
    )


def _shapes(top: Rim, back: Rim) -> list[tuple[tuple[Point, ...], Hatch]]:
    """The shapes of one end, each there or empty."""
    shapes: list[tuple[tuple[Point, ...], Hatch]] = [((*top.side_top(), *turned_under(back.side_top()[::-1])), "")]
    for rim, lie in ((top, _as_it_is), (back, turned_under)):
        lined = rim.lined < rim.bare and rim.lining_height and rim.lined != 0.0
        shapes.append((lie(rim.lining()) if lined else (), ""))
        shapes += [(lie(rim.binding()), "bone"), (lie(rim.purfling()), "along the grain")]
    return shapes


def _as_it_is(points: tuple[Point, ...]) -> tuple[Point, ...]:
    return points


def over_the_middle(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """A run on the one side of the centreline as it is on the other."""
    return tuple((-y, z) for y, z in points)


def plate_between(upper: Surface, lower: Surface, treble: tuple[Point, ...], bass: tuple[Point, ...]) -> Polyline:
    """A whole plate between its faces; `treble` is the shape of its treble end from upper to lower face, `bass` that of
    its bass end, mirrored.
    """
    high, low = run(-bass[0][0], treble[0][0]), run(treble[-1][0], -bass[-1][0])
    other = over_the_middle(bass[::-1])
    return Polyline(
        (*points_of(high, upper(high)), *treble, *points_of(low, lower(low)), *other), "outline", closed=True
    )


def run(low: float, high: float) -> Array:
    """Places across, from the one to the other."""
    return np.linspace(low, high, STEPS + 1)


def points_of(y: Array, z: Array) -> tuple[Point, ...]:
    """Points of a run."""
    return tuple(zip(y.tolist(), z.tolist(), strict=True))
