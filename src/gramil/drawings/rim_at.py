"""The body's edges and plates where a cut goes through them: sides, linings, the bindings in their channels."""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.drawings.hull import Hull
from gramil.drawings.marks import Marks, Point, Polyline
from gramil.drawings.pen import Hatch
from gramil.drawings.rim import Rim
from gramil.graph import Figures
from gramil.parts.edge_records import Edge
from gramil.quantities import Mm

Array = NDArray[np.float64]
Surface = Callable[[Array], Array]
STEPS = 48
"""Pieces of a run across the body."""


def rims_at(figures: Figures, hull: Hull) -> tuple[Rim, Rim]:
    """The treble edges of top and back, each with its plate on top: the back's turned over."""

    def outside(y: float) -> float:
        return float(hull.over(np.array([y]))[0])

    def inside_out(y: float) -> float:
        return float(figures[n.body_back_thickness]) - float(hull.back(np.array([y]))[0])

    edges = (figures[n.channel_edge_top], figures[n.channel_edge_back])
    return _rim(figures, hull, edges[0], outside), _rim(figures, hull, edges[1], inside_out)


def _rim(figures: Figures, hull: Hull, edge: Edge, face: Callable[[Mm], Mm]) -> Rim:
    lines = next((each for each in figures[n.channel_lines] if each.name == edge.name), None)
    shell, along = hull.shell, hull.along
    bound, purfled = (
        (hull.half, hull.half)
        if lines is None
        else (float(each.half_width(along)) for each in (lines.bound, lines.purfled))
    )
    bare, lined = (min(hull.half, float(each.half_width(along))) for each in (shell.bare, shell.lined))
    return Rim(edge, face, hull.half, bound, purfled, bare, lined, float(figures[n.body_linings_height]))


def back_at(figures: Figures, hull: Hull) -> Marks:
    """The back, its inner face toward the top."""
    end = turned_under(rims_at(figures, hull)[1].plate_end())
    thick = float(figures[n.body_back_thickness])
    return (plate_between(lambda y: hull.back(y) - thick, hull.back, end),)


def turned_under(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """A run that was drawn with the back up, as the back lies."""
    return tuple((y, -z) for y, z in points)


def edges_at(figures: Figures, hull: Hull) -> Marks:
    """On both sides: the side from plate to plate, linings against it, bindings and purflings in their channels."""
    top, back = rims_at(figures, hull)
    shapes: list[tuple[tuple[Point, ...], Hatch]] = [((*top.side_top(), *turned_under(back.side_top()[::-1])), "")]
    for rim, lie in ((top, _as_it_is), (back, turned_under)):
        if 0 < rim.lined < rim.bare and rim.lining_height:
            shapes.append((lie(rim.lining()), ""))
        shapes += [(lie(rim.binding()), "bone"), (lie(rim.purfling()), "along the grain")]
    return tuple(
        Polyline(side, "outline", closed=True, hatch=hatch)
        for points, hatch in shapes
        if points
        for side in (over_the_middle(points), points)
    )


def _as_it_is(points: tuple[Point, ...]) -> tuple[Point, ...]:
    return points


def over_the_middle(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """A run on the one side of the centreline as it is on the other."""
    return tuple((-y, z) for y, z in points)


def plate_between(upper: Surface, lower: Surface, end: tuple[Point, ...]) -> Polyline:
    """A whole plate between its faces; `end` is the shape of its treble end from upper to lower face."""
    high, low = run(-end[0][0], end[0][0]), run(end[-1][0], -end[-1][0])
    other = over_the_middle(end[::-1])
    return Polyline((*points_of(high, upper(high)), *end, *points_of(low, lower(low)), *other), "outline", closed=True)


def run(low: float, high: float) -> Array:
    """Places across, from the one to the other."""
    return np.linspace(low, high, STEPS + 1)


def points_of(y: Array, z: Array) -> tuple[Point, ...]:
    """Points of a run."""
    return tuple(zip(y.tolist(), z.tolist(), strict=True))
