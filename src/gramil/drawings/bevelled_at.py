"""The body cut across at a bevel: its edge planed off from line to line, the block behind in the lining's place."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.drawings.hull import Hull
from gramil.drawings.marks import Marks, Point, Polyline
from gramil.drawings.rim import Rim
from gramil.graph import Figures
from gramil.parts.bevel_records import BevelBlock, BevelLaid
from gramil.quantities import Mm

Array = NDArray[np.float64]


@dataclass(frozen=True)
class BevelCut:
    """A bevel where the cut goes through it: its outer end on the side, and its inner one on the plate, as (y, z).

    `block` is the block behind it, in the section, before the bevel is cut.
    """

    laid: BevelLaid
    outer: Point
    inner: Point
    block: tuple[Point, ...]

    @property
    def keeps(self) -> float:
        """1 where what is left lies under the line from the outer end to the inner one, -1 where over it."""
        return 1.0 if self.laid.shape.upper else -1.0


def bevels_at(figures: Figures, hull: Hull) -> tuple[BevelCut, ...]:
    """The bevels that the cut goes through, drawn straight between their ends: they are so to a fraction of a mm."""
    rows = zip(figures[n.bevel_laid], figures[n.bevelled_blocks], strict=True)
    return tuple(cut for laid, block in rows for cut in _cut(figures, hull, laid, block))


def _cut(figures: Figures, hull: Hull, laid: BevelLaid, block: BevelBlock) -> Iterator[BevelCut]:
    shape = laid.shape
    low, high = _met(shape.wall_line, hull.along), _met(shape.face_line, hull.along)
    if low is None or high is None:
        return
    outer, inner = ((-y, _height(hull, laid, z)) for y, z in (low, high))
    lined = float(figures[n.body_wall] + figures[n.body_linings])
    more = max(0.0, block.width - float(figures[n.body_linings]))
    inset = _met(shape.inset(shape.along, lined + more * shape.share(shape.along)), hull.along)
    bare = float(hull.shell.bare.bass_half.half_width(hull.along))
    far = bare if inset is None else min(inset[0], bare)
    yield BevelCut(laid, outer, inner, _block(hull, laid, (-bare, -far), block.height))


def _met(line: Array, along: Mm) -> tuple[Mm, Mm] | None:
    """Where a line comes to a distance along the body: its distance across and its last coordinate, at the outermost
    such place.
    """
    x = line[:, 0]
    rows = np.nonzero((x[:-1] <= along) != (x[1:] <= along))[0]
    if not len(rows):
        return None
    row = max(rows.tolist(), key=lambda each: float(line[each, 1]))
    share = (along - x[row]) / (x[row + 1] - x[row])
    found = line[row] + share * (line[row + 1] - line[row])
    return float(found[1]), float(found[-1])


def _height(hull: Hull, laid: BevelLaid, outward: Mm) -> Mm:
    """z of a place whose height outward over the outline's plane is known."""
    return hull.rim + outward - laid.shape.over if laid.shape.upper else hull.rim - hull.top - outward


def _block(hull: Hull, laid: BevelLaid, ends: tuple[Mm, Mm], high: Mm) -> tuple[Point, ...]:
    if ends[1] - ends[0] < 0.1:
        return ()
    y = np.linspace(*ends, 5)
    inside = hull.under(y) if laid.shape.upper else hull.back(y)
    way = -1.0 if laid.shape.upper else 1.0
    upper = list(zip(y.tolist(), inside.tolist(), strict=True))
    return (*upper, *((at, z + way * high) for at, z in (upper[-1], upper[0])))


def without_edge(rims: tuple[Rim, Rim], cuts: tuple[BevelCut, ...]) -> tuple[Rim, Rim]:
    """The bass rims of top and back: at a bevel there is neither binding at the edge nor lining behind it."""
    top, back = ((_bared(rim) if any(_is_of(cut, rim) for cut in cuts) else rim) for rim in rims)
    return top, back


def _is_of(cut: BevelCut, rim: Rim) -> bool:
    return cut.laid.asked.plate == rim.edge.name


def _bared(rim: Rim) -> Rim:
    edge = replace(rim.edge, thickness=0.0, height=0.0, purfling=0.0, purfling_depth=0.0)
    return replace(rim, edge=edge, bound=rim.outer, purfled=rim.outer, lining_height=0.0)


def behind(cuts: tuple[BevelCut, ...]) -> Marks:
    """The blocks behind the bevels, whole."""
    return tuple(Polyline(each.block, "outline", closed=True, hatch="across the grain") for each in cuts if each.block)


def planed(marks: Marks, cuts: tuple[BevelCut, ...]) -> Marks:
    """Closed shapes of a section with every bevel cut off them."""
    found = marks
    for cut in cuts:
        found = tuple(_planed(mark, cut) if isinstance(mark, Polyline) and mark.closed else mark for mark in found)
    return tuple(mark for mark in found if not isinstance(mark, Polyline) or mark.points)


def _planed(mark: Polyline, cut: BevelCut) -> Polyline:
    """A shape on the bass side with what lies past the bevel's line taken off; any other shape as it is."""
    outer, inner = (cut.outer, cut.inner) if cut.keeps > 0 else (cut.inner, cut.outer)
    kept = kept_of(mark.points, outer, inner)
    return mark if kept == mark.points else replace(mark, points=kept)


def kept_of(ring: tuple[Point, ...], outer: Point, inner: Point) -> tuple[Point, ...]:
    """What is left of a ring right of the line from `outer` to `inner`: all of it, a part, or nothing."""
    (y0, z0), (y1, z1) = outer, inner
    inside = [(y1 - y0) * (z0 - z) + (y - y0) * (z1 - z0) for y, z in ring]
    if all(each >= -1e-9 for each in inside):
        return ring
    kept: list[Point] = []
    rows = list(zip(ring, inside, strict=True))
    for (start, before), (end, after) in pairwise((*rows, rows[0])):
        if before >= 0:
            kept.append(start)
        if (before >= 0) != (after >= 0):
            share = before / (before - after)
            kept.append((start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])))
    return tuple(kept) if len(kept) > 2 else ()
