"""What a bevel takes of the rim: the block in the lining's place, the binding's run, the braces that end in the block.

The figures are those of the block at the bevel's middle, where it takes most.
"""

from math import ceil, inf

import numpy as np

from gramil.parts.bevel_records import BevelAsked, BevelBinding, BevelBlock, BevelBrace, BevelLaid
from gramil.parts.body_records import Brace
from gramil.parts.edge_records import Edge
from gramil.parts.opening_records import Opening, OpeningGap, Port, nearest_gap
from gramil.quantities import Mm, Mm3
from gramil.shapes.edge_bevel import EdgeBevel
from gramil.shapes.planar import Point
from gramil.shapes.room_between import room_between
from gramil.shapes.within import first_met

OWNS = ("bevelled_",)

ALMOST = 0.999
"""A brace's edges are looked at by lines so far out of its middle: within it, not along it."""


def bevelled_blocks(
    bevel_laid: tuple[BevelLaid, ...],
    channel_edges: tuple[Edge, ...],
    body_wall: Mm,
    body_linings: Mm,
    body_linings_height: Mm,
    limit_strip_over: Mm,
) -> tuple[BevelBlock, ...]:
    """The block behind each bevel.

    Method: under the plate the bevel cuts width x (1 - plate / drop) in from the side's face, and against the side's
    inside drop x (1 - wall / width) less the plate down. The block is wider and higher than the lining by what is cut
    of it, and by a binding that is led round on the plate, so that plate and side stay glued as broad as beside it;
    or as wide and as high as described. A lining there was triangular; the block is square.
    Source: common practice.
    """
    sizes = body_wall, body_linings, body_linings_height
    edges = {each.name: each for each in channel_edges}
    return tuple(_block(each, edges.get(each.asked.plate), sizes, limit_strip_over) for each in bevel_laid)


def _block(laid: BevelLaid, edge: Edge | None, sizes: tuple[Mm, Mm, Mm], over: Mm) -> BevelBlock:
    (wall, linings, high), asked, shape = sizes, laid.asked, laid.shape
    bound = edge.reach if edge is not None and asked.on_plate else 0.0
    inward = max(0.0, _cut_under_plate(shape) + bound - wall)
    down = _cut_at_wall(shape, wall)
    width = asked.block_width or linings + inward
    height = asked.block_height or high + down
    return BevelBlock(
        asked.name,
        asked.block,
        width,
        height,
        shape.length + 2 * over,
        ceil(width / asked.layer - 1e-9) if asked.block == "laminated" else 1,
        asked.layer if asked.block == "laminated" else width,
        wall + width - _cut_under_plate(shape) - bound,
        height - down,
    )


def _cut_under_plate(shape: EdgeBevel) -> Mm:
    """How far in from the side's face the bevel cuts just under the plate, at its middle; 0 if it stays in the
    plate."""
    return max(0.0, shape.width * (1 - shape.over / shape.drop))


def _cut_at_wall(shape: EdgeBevel, wall: Mm) -> Mm:
    """How far down from the plate the bevel cuts at the side's inside, at its middle; 0 if it does not reach there."""
    return max(0.0, shape.drop * (1 - wall / shape.width) - shape.over)


def bevelled_more(
    bevel_laid: tuple[BevelLaid, ...],
    bevelled_blocks: tuple[BevelBlock, ...],
    body_linings: Mm,
    body_linings_height: Mm,
) -> Mm3:
    """What the blocks behind bevels take of the body's air, more than the linings in whose place they lie.

    Method: along the bevel, as wide in the mean as lining and block are together by half, and as high as the block;
    less the lining's triangle. What the bevel cuts off is outside the air, whether or not it is cut.
    Source: plane geometry.
    """
    lining = body_linings * body_linings_height / 2
    return float(
        sum(
            laid.shape.length * ((body_linings + block.width) / 2 * block.height - lining)
            for laid, block in zip(bevel_laid, bevelled_blocks, strict=True)
        )
    )


def bevelled_bindings(
    bevel_laid: tuple[BevelLaid, ...], channel_edges: tuple[Edge, ...], limit_strip_over: Mm
) -> tuple[BevelBinding, ...]:
    """What becomes of a bound edge's binding at a bevel: the pieces of the bass side's strip, and those led round.

    Method: from the neck's middle to the bevel, and from it to the tail's, with something over at neck and tail; a
    strip led round is as long as its line, with something over at each end.
    Source: common practice.
    """
    bound = {each.name for each in channel_edges}
    return tuple(_binding(each.asked, each.shape, limit_strip_over) for each in bevel_laid if each.asked.plate in bound)


def _binding(asked: BevelAsked, shape: EdgeBevel, over: Mm) -> BevelBinding:
    return BevelBinding(
        asked.name,
        shape.start + over,
        shape.side.length - shape.stop + over,
        shape.face_length + 2 * over if asked.on_plate else 0.0,
        shape.wall_length + 2 * over if asked.on_side else 0.0,
    )


def bevelled_braces(
    bevel_laid: tuple[BevelLaid, ...],
    bevelled_blocks: tuple[BevelBlock, ...],
    brace_list: tuple[Brace, ...],
    body_wall: Mm,
    body_linings: Mm,
) -> tuple[BevelBrace, ...]:
    """Each brace that ends in a bevel's block, and how much of it lies there.

    Method: the block's inside runs from the lining's own out to the block's width, and back, as the bevel swells; from
    a brace's middle along its line and both its edges to where they meet it, the longest of what is left to the end.
    Source: plane geometry.
    """
    return tuple(
        BevelBrace(brace.name, laid.asked.name, inside)
        for laid, block in zip(bevel_laid, bevelled_blocks, strict=True)
        for ring in (_plan(laid.shape, body_wall + body_linings, block.width - body_linings),)
        for brace in brace_list
        if brace.plate == laid.asked.plate and (inside := _inside(brace, ring)) > 0
    )


def bevelled_holes(
    bevel_laid: tuple[BevelLaid, ...],
    bevelled_blocks: tuple[BevelBlock, ...],
    opening_list: tuple[Opening, ...],
    body_wall: Mm,
    body_linings: Mm,
) -> tuple[OpeningGap, ...]:
    """From each hole in the top to the block behind the arm's bevel; negative where it is cut into that.

    Method: between the hole's edge and the block's, seen from the face.
    Source: plane geometry.
    """
    rings = [
        (f"{laid.asked.name} bevel's block", _plan(laid.shape, body_wall + body_linings, block.width - body_linings))
        for laid, block in zip(bevel_laid, bevelled_blocks, strict=True)
        if laid.shape.upper
    ]
    return tuple(
        gap
        for each in opening_list
        for gap in nearest_gap(each.name, ((to, each.room_to(ring[:-1])) for to, ring in rings))
    )


def bevelled_ports(
    bevel_laid: tuple[BevelLaid, ...], bevelled_blocks: tuple[BevelBlock, ...], port_bass: tuple[Port, ...]
) -> tuple[OpeningGap, ...]:
    """From each port of the bass side to the block behind a bevel, the nearer one; negative where it is cut into that.

    Method: between the port's edge and the block's, on the side laid flat.
    Source: plane geometry.
    """
    rings = [
        (f"{laid.asked.name} bevel's block", _on_side(laid.shape, block.height))
        for laid, block in zip(bevel_laid, bevelled_blocks, strict=True)
    ]
    return tuple(
        gap
        for each in port_bass
        for gap in nearest_gap(each.name, ((to, room_between(each.outline, ring)) for to, ring in rings))
    )


def _on_side(shape: EdgeBevel, high: Mm) -> np.ndarray:
    """The block on the flat side, once round: from the plate's edge as far as it is high."""
    edge, way = (shape.side.upper_edge, -1.0) if shape.upper else (shape.side.lower_edge, 1.0)
    heights = edge(shape.along)
    ends = np.column_stack((shape.along, heights)), np.column_stack((shape.along, heights + way * high))
    return np.vstack((ends[0], ends[1][::-1]))


def _plan(shape: EdgeBevel, lined: Mm, more: Mm) -> np.ndarray:
    """The block in plan, past the linings: once round, in body coordinates, treble positive."""
    along = shape.along
    inner = shape.inset(along, lined + max(0.0, more) * shape.share(along))
    outer = shape.inset(along, np.zeros_like(along))
    return np.vstack((inner, outer[::-1], inner[:1])) * (1.0, -1.0)


def _inside(brace: Brace, ring: np.ndarray) -> Mm:
    if not brace.length > 0:
        return 0.0
    (x0, y0), (x1, y1) = brace.start, brace.stop
    unit = ((x1 - x0) / brace.length, (y1 - y0) / brace.length)
    middle, strip = ((x0 + x1) / 2, (y0 + y1) / 2), np.array((*brace.footprint, brace.footprint[0]))
    beside = (0.0, ALMOST * brace.width / 2, -ALMOST * brace.width / 2)
    lines = [(middle[0] - unit[1] * each, middle[1] + unit[0] * each) for each in beside]
    return max(_past(ring, strip, point, (unit[0] * way, unit[1] * way)) for point in lines for way in (1.0, -1.0))


def _past(ring: np.ndarray, strip: np.ndarray, point: Point, way: Point) -> Mm:
    """How much of a brace lies past where a line along it comes to the block; its ends may be slanted."""
    met = first_met(ring, point, way)
    return 0.0 if met == inf else max(0.0, first_met(strip, point, way) - met)
