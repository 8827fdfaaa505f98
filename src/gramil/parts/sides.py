"""The sides unrolled: a full-size template of one side, neck to tail, with its stations for bending, and the blanks.

Where the sides are not alike it is the bass side's; the treble side's is in `treble_side`.

Distances along are on the outside of the side, from its middle at the neck. Heights are from the straight line between
the upper edge's two ends.
"""

import math
from collections.abc import Iterator

import numpy as np

from gramil.parts.body_records import Bout, SideStation
from gramil.quantities import Mm, Series
from gramil.shapes.unrolled import UnrolledSide, end_to_end
from gramil.shapes.walled import inner_length

OWNS = ("side_",)

FINENESS = 0.05
"""In mm: the template's straight runs keep this close to its edges."""


def side_length(body_sides: tuple[UnrolledSide, ...]) -> Mm:
    """Length of one side's outside, from the middle of the neck's end to the middle of the tail's.

    Of the bass side, where the two are not alike.
    Method: the curve's own length on that side.
    Source: common practice.
    """
    return next((each.length for each in body_sides), math.nan)


def side_length_middle(body_sides: tuple[UnrolledSide, ...], body_wall: Mm) -> Mm:
    """Length of one side along the middle of its thickness, which bending neither stretches nor shortens.

    Method: the outside, less half the thickness times the angle that it turns through.
    Source: steiner_inset
    """
    return next((inner_length(each, body_wall / 2) for each in body_sides), math.nan)


def side_along(body_sides: tuple[UnrolledSide, ...]) -> Series[Mm]:
    """Stations of the template along the side, so close that straight runs between them keep to both edges.

    Method: each piece of the curve halved until chords keep within 0.05 mm.
    Source: common practice.
    """
    return end_to_end([each.stations(FINENESS) for each in body_sides])


def side_upper(body_sides: tuple[UnrolledSide, ...], side_along: Series[Mm]) -> Series[Mm]:
    """Height of the top's edge at each station.

    Method: minus what the top's dome falls there, below the line between its points at neck and tail.
    Source: sagitta
    """
    return end_to_end([each.upper_edge(side_along) for each in body_sides])


def side_lower(body_sides: tuple[UnrolledSide, ...], side_along: Series[Mm]) -> Series[Mm]:
    """Height of the back's edge at each station, negative.

    Method: minus the straight depth from neck to tail, plus what the back's dome falls there below its own line.
    Source: sagitta
    """
    return end_to_end([each.lower_edge(side_along) for each in body_sides])


def side_depth(side_upper: Series[Mm], side_lower: Series[Mm]) -> Series[Mm]:
    """Depth of the side at each station, edge to edge.

    Source: common practice.
    """
    return side_upper - side_lower


def side_stations(body_sides: tuple[UnrolledSide, ...], body_bouts: tuple[Bout, ...]) -> tuple[SideStation, ...]:
    """Where the bends lie on the flat side, with its depth there: neck end, bouts and waist, tail end.

    Method: the depth between both edges at each place; the radius of the outline's outside.
    Source: common practice.
    """
    return tuple(station for each in body_sides for station in _stations(each, body_bouts))


def _stations(side: UnrolledSide, bouts: tuple[Bout, ...]) -> Iterator[SideStation]:
    yield SideStation("neck end", 0.0, side.depth_start, math.nan)
    for bout in bouts:
        yield SideStation(bout.name, bout.along, float(side.depth(bout.along)), bout.radius)
    yield SideStation("tail end", side.length, side.depth_end, math.nan)


def side_deepest(side_depth: Series[Mm], treble_side_depths: Series[Mm]) -> Mm:
    """Depth of the sides where they are deepest.

    Method: the greatest over their stations.
    Source: common practice.
    """
    depths = np.concatenate((side_depth, treble_side_depths))
    return float(depths.max(initial=-math.inf)) if depths.size else math.nan


def side_shallowest(side_depth: Series[Mm], treble_side_depths: Series[Mm]) -> Mm:
    """Depth of the sides where they are shallowest.

    Method: the least over their stations.
    Source: common practice.
    """
    depths = np.concatenate((side_depth, treble_side_depths))
    return float(depths.min(initial=math.inf)) if depths.size else math.nan


def side_extent(side_upper: Series[Mm], side_lower: Series[Mm], treble_side_extent: Mm) -> Mm:
    """From the highest place of the upper edge to the lowest of the lower one: the least width to cut a side from.

    Method: greatest less least height, of the side that has more.
    Source: common practice.
    """
    if not side_upper.size:
        return math.nan
    extent = float(side_upper.max() - side_lower.min())
    return extent if math.isnan(treble_side_extent) else max(extent, treble_side_extent)


def side_longer(side_length: Mm, treble_side_length: Mm) -> Mm:
    """Length of the longer side, where the two are not alike; else of either.

    Method: the greater of the two.
    Source: common practice.
    """
    return side_length if math.isnan(treble_side_length) else max(side_length, treble_side_length)


def side_blank_length(side_longer: Mm, body_side_allowance: Mm) -> Mm:
    """Length of a side's blank, along the grain; two are wanted, bookmatched.

    Source: common practice.
    """
    return side_longer + 2 * body_side_allowance


def side_blank_width(side_extent: Mm, body_side_over: Mm) -> Mm:
    """Width of a side's blank.

    Source: common practice.
    """
    return side_extent + body_side_over
