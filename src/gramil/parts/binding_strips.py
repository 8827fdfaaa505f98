"""The strips for the body's bindings and purflings: how many, how long, and how tightly they bend."""

import math

from gramil.parts.edge_records import Edge, Strip
from gramil.quantities import Mm
from gramil.shapes.unrolled import UnrolledSide
from gramil.shapes.walled import inner_length

OWNS = ("strip_",)


def strip_length(side_longer: Mm, limit_strip_over: Mm, channel_edges: tuple[Edge, ...]) -> Mm:
    """Length of a binding's strip: the longer half round the outline's outside, and what is left over at both ends.

    Formula: side_longer + 2 * limit_strip_over if channel_edges else nan
    Source: common practice.
    """
    return side_longer + 2 * limit_strip_over if channel_edges else math.nan


def strip_list(
    channel_edges: tuple[Edge, ...],
    body_sides: tuple[UnrolledSide, ...],
    body_tightest_bend: Mm,
    limit_strip_over: Mm,
) -> tuple[Strip, ...]:
    """Strips for each bound edge, one for either half of the body, bindings and purflings.

    Method: a binding's length is half the outline's perimeter and a purfling's half of the line inside the binding,
    the longer half where they differ, both with something over at each end; the bend is the tightest of the sides'.
    Source: steiner_inset
    """
    return tuple(
        strip
        for side in body_sides
        for edge in channel_edges
        for strip in _strips(edge, side, body_tightest_bend, limit_strip_over)
    )


def _strips(edge: Edge, side: UnrolledSide, tightest: Mm, over: Mm) -> tuple[Strip, ...]:
    binding = Strip(
        f"{edge.name} binding",
        2,
        max(side.length, side.other.length) + 2 * over,
        edge.height,
        edge.thickness,
        edge.wood,
        tightest / edge.thickness,
        edge.material,
    )
    if not edge.purfling:
        return (binding,)
    inside = max(inner_length(each, edge.thickness) for each in (side, side.other)) + 2 * over
    purfling = Strip(
        f"{edge.name} purfling", 2, inside, edge.purfling_depth, edge.purfling, "purfling", math.nan, "not said"
    )
    return (binding, purfling)
