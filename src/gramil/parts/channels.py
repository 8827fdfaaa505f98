"""The channels for the body's bindings: what they leave of side, linings and plates, how a cutter that rides on a dome
leans, and which cutter and bearing cut them.

An edge without a binding is not among them; without a body there are none.
"""

from collections.abc import Iterator, Mapping
from math import nan, tan

import numpy as np
from numpy.typing import NDArray

from gramil.description.records import Cutter
from gramil.parts.edge_records import Channel, Cut, Edge, EdgeLines, Tilt, best_ledge, edge_of, ledges
from gramil.parts.records import LedgeChoice
from gramil.quantities import Mm
from gramil.shapes.offset import moved_in
from gramil.shapes.outline import Outline
from gramil.shapes.unrolled import UnrolledSide

OWNS = ("channel_",)

Array = NDArray[np.float64]

FINENESS = 1.0
"""In mm along the side: the plates' slope is looked at so closely."""


def channel_edge_top(
    top_binding_thickness: Mm,
    top_binding_height: Mm,
    top_binding_purfling: Mm,
    top_binding_purfling_depth: Mm,
    top_binding_wood: str,
    top_binding_material: str,
    graduated_edge: Mm,
) -> Edge:
    """The top's edge with its binding.

    Method: the binding as described; the plate is the top.
    Source: common practice.
    """
    sizes = top_binding_thickness, top_binding_height, top_binding_purfling, top_binding_purfling_depth
    return edge_of("top", sizes, top_binding_wood, graduated_edge, top_binding_material)


def channel_edge_back(
    back_binding_thickness: Mm,
    back_binding_height: Mm,
    back_binding_purfling: Mm,
    back_binding_purfling_depth: Mm,
    back_binding_wood: str,
    back_binding_material: str,
    body_back_thickness: Mm,
) -> Edge:
    """The back's edge with its binding.

    Method: the binding as described; the plate is the back.
    Source: common practice.
    """
    sizes = back_binding_thickness, back_binding_height, back_binding_purfling, back_binding_purfling_depth
    return edge_of("back", sizes, back_binding_wood, body_back_thickness, back_binding_material)


def channel_edges(
    body_sides: tuple[UnrolledSide, ...], channel_edge_top: Edge, channel_edge_back: Edge
) -> tuple[Edge, ...]:
    """The edges that are bound; none without a body.

    Method: those whose binding is more than 0 thick.
    Source: common practice.
    """
    return tuple(edge for _ in body_sides for edge in (channel_edge_top, channel_edge_back) if edge.thickness > 0)


def channel_lines(channel_edges: tuple[Edge, ...], body_outlines: tuple[Outline, ...]) -> tuple[EdgeLines, ...]:
    """Where each bound edge's binding and purfling end, seen on the plate.

    Method: the outline moved in square to itself.
    Source: common practice.
    """
    return tuple(_lines(edge, outline) for outline in body_outlines for edge in channel_edges)


def _lines(edge: Edge, outline: Outline) -> EdgeLines:
    where = f"{edge.name}_binding"
    bound = moved_in(outline, edge.thickness, where)
    return EdgeLines(edge.name, bound, moved_in(outline, edge.reach, where) if edge.purfling else bound)


def channel_list(
    channel_edges: tuple[Edge, ...], body_wall: Mm, body_linings: Mm, body_linings_height: Mm
) -> tuple[Channel, ...]:
    """What each edge's channels leave of side, linings and plate.

    Method: the binding's channel is as wide as the binding from the side's face and reaches below the plate by its
    height less the plate's thickness; linings are triangles, widest at the plate, so that behind the channel's foot
    they are narrower in proportion. A purfling's channel as deep as the plate takes glued width too.
    Source: common practice.
    """
    return tuple(_channel(edge, body_wall, body_linings, body_linings_height) for edge in channel_edges)


def _channel(edge: Edge, wall: Mm, linings: Mm, linings_height: Mm) -> Channel:
    below = max(0.0, edge.cover)
    left = max(0.0, 1 - below / linings_height) if linings_height else 0.0
    under = edge.plate - edge.purfling_depth if edge.purfling else nan
    taken = edge.reach if under <= 0 else edge.thickness
    return Channel(
        edge.name,
        wall + linings * left - edge.thickness,
        linings_height * left if edge.thickness > wall else linings_height,
        wall + linings - taken,
        edge.reach - wall - linings,
        under,
        edge.cover,
    )


def channel_side_left(channel_edges: tuple[Edge, ...], side_shallowest: Mm) -> Mm:
    """Side left showing between the bindings where it is shallowest, or from the one to the bare edge.

    Method: the shallowest depth of the side less what each binding covers of it below its plate.
    Source: common practice.
    """
    return side_shallowest - sum(edge.cover for edge in channel_edges) if channel_edges else nan


def channel_tilts(channel_edges: tuple[Edge, ...], body_sides: tuple[UnrolledSide, ...]) -> tuple[Tilt, ...]:
    """How far a cutter leans whose base rides on the domed plate, where it leans most.

    Method: the plate's slope square to the outline at the edge, from the sphere's own and from the taper of the sides,
    looked at every millimetre of either; the base is taken to lie flat on the plate at its edge. Over the binding's
    height the wall leans by height x tan, over its thickness the floor by thickness x tan.
    Source: sagitta
    """
    return tuple(tilt for side in body_sides for tilt in _tilts(channel_edges, side))


def _tilts(edges: tuple[Edge, ...], side: UnrolledSide) -> Iterator[Tilt]:
    """For each edge, the tilt on one side if both are alike, else on the side on which the cutter leans more."""
    looked_at = [_slopes(each) for each in ((side,) if side.outline.alike else (side, side.other))] if edges else []
    for edge in edges:
        yield max((_tilt(edge, along, slopes[edge.name]) for along, slopes in looked_at), key=lambda tilt: tilt.angle)


def _slopes(side: UnrolledSide) -> tuple[Array, Mapping[str, Array]]:
    """The places along a side at which the plates' slopes are looked at, and the slope of each plate there."""
    along = np.linspace(0.0, side.length, 1 + int(side.length / FINENESS))
    top, back = side.slopes(along)
    return along, {"top": top, "back": back}


def _tilt(edge: Edge, along: Array, slopes: Array) -> Tilt:
    row = int(np.abs(slopes).argmax())
    angle = float(np.arctan(abs(slopes[row])))
    return Tilt(edge.name, angle, float(along[row]), edge.height * tan(angle), edge.thickness * tan(angle))


def channel_cuts(
    channel_edges: tuple[Edge, ...],
    shop_cutters: tuple[Cutter, ...],
    limit_binding_proud_least: Mm,
    limit_binding_proud_most: Mm,
    shop_units: str,
) -> tuple[Cut, ...]:
    """Each channel to cut, with the shop's cutter and bearing for it, purfling's before its binding's.

    Method: a bearing on the side leaves a ledge of (cutter - bearing) / 2; the pair that leaves binding, or binding and
    purfling, standing out of the side within the limits. Depth leaves the strip proud of the plate by the least.
    Source: common practice.
    """
    most, least = limit_binding_proud_most, limit_binding_proud_least
    return tuple(
        _cut(name, inset, depth - least, best_ledge(ledges(shop_cutters, inset, shop_units), most))
        for edge in channel_edges
        for name, inset, depth in _wanted(edge)
    )


def _wanted(edge: Edge) -> tuple[tuple[str, Mm, Mm], ...]:
    """An edge's channels: name, how far in from the side's face, and how deep the strip in it is."""
    binding = (f"{edge.name} binding", edge.thickness, edge.height)
    purfling = (f"{edge.name} purfling", edge.reach, edge.purfling_depth)
    return (purfling, binding) if edge.purfling else (binding,)


def _cut(name: str, inset: Mm, depth: Mm, pair: LedgeChoice) -> Cut:
    return Cut(name, inset, depth, 2 * inset, pair.name, pair.diameter, pair.bearing, pair.ledge, pair.proud)


def channel_flush_cutter(shop_cutters: tuple[Cutter, ...]) -> Mm:
    """Diameter of a cutter in the shop whose bearing is as large as itself: it trims the plates flush; else not known.

    Method: the smallest of them, which goes into the waist best.
    Source: common practice.
    """
    able = [cutter.diameter for cutter in shop_cutters if any(abs(b - cutter.diameter) < 1e-6 for b in cutter.bearings)]
    return min(able, default=nan)
