"""The treble side unrolled, of a body whose sides are not alike; the figures of `sides` are then the bass side's.

Distances along are on the outside of the side, from its middle at the neck. Heights are from the straight line between
the upper edge's two ends. Where the sides are alike these figures are not known: one template serves both.
"""

import math
from collections.abc import Iterator

from gramil.parts.body_records import Bend, SideStation
from gramil.quantities import Mm, Series
from gramil.shapes.unrolled import UnrolledSide, end_to_end
from gramil.shapes.walled import inner_length

OWNS = ("treble_side_",)

BESIDE = 15.0
"""In mm along: a bend so near a corner begins there."""
FINENESS = 0.05
"""In mm: the template's straight runs keep this close to its edges."""


def treble_side_walls(body_sides: tuple[UnrolledSide, ...]) -> tuple[UnrolledSide, ...]:
    """The treble side, with the domes of top and back; none where the sides are alike.

    Method: as the bass side's, round the other half of the outline.
    Source: common practice.
    """
    return tuple(each.other for each in body_sides if not each.outline.alike)


def treble_side_length(treble_side_walls: tuple[UnrolledSide, ...]) -> Mm:
    """Length of the treble side's outside, from the middle of the neck's end to the middle of the tail's.

    Method: the curve's own length, by Gauss points on each of its pieces.
    Source: common practice.
    """
    return next((each.length for each in treble_side_walls), math.nan)


def treble_side_length_middle(treble_side_walls: tuple[UnrolledSide, ...], body_wall: Mm) -> Mm:
    """Length of the treble side along the middle of its thickness, which bending neither stretches nor shortens.

    Method: the outside, less half the thickness times the angle that it turns through, hollows counted against bulges.
    Source: steiner_inset
    """
    return next((inner_length(each, body_wall / 2) for each in treble_side_walls), math.nan)


def treble_side_along(treble_side_walls: tuple[UnrolledSide, ...]) -> Series[Mm]:
    """Stations of the treble side's template, so close that straight runs between them keep to both edges.

    Method: each piece of the curve halved until chords keep within 0.05 mm; pieces that are finer already are joined.
    Source: common practice.
    """
    return end_to_end([each.stations(FINENESS) for each in treble_side_walls])


def treble_side_upper(treble_side_walls: tuple[UnrolledSide, ...], treble_side_along: Series[Mm]) -> Series[Mm]:
    """Height of the top's edge at each station of the treble side.

    Method: minus what the top's dome falls there, below the line between its points at neck and tail.
    Source: sagitta
    """
    return end_to_end([each.upper_edge(treble_side_along) for each in treble_side_walls])


def treble_side_lower(treble_side_walls: tuple[UnrolledSide, ...], treble_side_along: Series[Mm]) -> Series[Mm]:
    """Height of the back's edge at each station of the treble side, negative.

    Method: minus the straight depth from neck to tail, plus what the back's dome falls there below its own line.
    Source: sagitta
    """
    return end_to_end([each.lower_edge(treble_side_along) for each in treble_side_walls])


def treble_side_stations(
    treble_side_walls: tuple[UnrolledSide, ...], bend_treble: tuple[Bend, ...]
) -> tuple[SideStation, ...]:
    """Where the treble side bends, laid flat, with its depth there: neck end, hollow, horn, waist and so on, tail end.

    Method: the depth between both edges at each bend; a corner has no radius, and a bend beside it is struck with it.
    Source: common practice.
    """
    return tuple(station for each in treble_side_walls for station in _stations(each, bend_treble))


def _stations(side: UnrolledSide, bends: tuple[Bend, ...]) -> Iterator[SideStation]:
    yield SideStation("neck end", 0.0, side.depth_start, math.nan)
    corners = [each.along for each in bends if each.kind == "corner"]
    for each in bends:
        if each.kind != "corner" and any(abs(each.along - corner) < BESIDE for corner in corners):
            continue
        radius = math.nan if each.kind == "corner" else each.radius
        yield SideStation(each.name, each.along, float(side.depth(each.along)), radius)
    yield SideStation("tail end", side.length, side.depth_end, math.nan)


def treble_side_depths(treble_side_upper: Series[Mm], treble_side_lower: Series[Mm]) -> Series[Mm]:
    """Depth of the treble side at each station, edge to edge.

    Source: common practice.
    """
    return treble_side_upper - treble_side_lower


def treble_side_extent(treble_side_upper: Series[Mm], treble_side_lower: Series[Mm]) -> Mm:
    """From the treble side's highest place to its lowest: the least width to cut it from.

    Method: greatest less least height.
    Source: common practice.
    """
    return float(treble_side_upper.max() - treble_side_lower.min()) if treble_side_upper.size else math.nan
