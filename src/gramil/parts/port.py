"""Ports in the sides: where each lies on its flat side, the patch inside it, and how near it comes to what is there.

Places are on the outside of the side laid flat: along from its middle at the neck, heights from the straight line
between the ends of the top's edge, as on the side's template.
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from gramil.description.body.records import PortAsked
from gramil.parts.bevel_records import BevelBlock, BevelLaid
from gramil.parts.body_records import BodyBlock
from gramil.parts.opening_records import OpeningGap, Port, nearest_gap
from gramil.physics.air_resonance import effective_depth
from gramil.quantities import Mm
from gramil.shapes.room_between import room_between
from gramil.shapes.unrolled import UnrolledSide

OWNS = ("port_",)

Array = NDArray[np.float64]
PLACES = 2048
"""Into how many steps a side is parted to see where it leaves a block."""
STEPS = 64
"""Places along a port's patch at which the side's bend is looked at."""


def port_list(
    ports_asked: tuple[PortAsked, ...],
    body_sides: tuple[UnrolledSide, ...],
    body_wall: Mm,
    body_linings_height: Mm,
    bevel_laid: tuple[BevelLaid, ...],
    bevelled_blocks: tuple[BevelBlock, ...],
) -> tuple[Port, ...]:
    """Every port on its flat side; none without a body.

    Method: below the top's edge as given, or half way between both edges; its patch reaches past it all round, up to
    the linings, and up to a bevel's block beside or over it; the air's plug is side and patch thick, and 1.7 times the
    hydraulic radius longer.
    Source: kinsler_helmholtz
    """
    blocks = tuple(zip(bevel_laid, bevelled_blocks, strict=True))
    return tuple(
        _kept_off(_placed(each, wall, body_wall, body_linings_height), wall, blocks if each.side == "bass" else ())
        for side in body_sides
        for each in ports_asked
        for wall in (_wall(side, each.side),)
    )


def _wall(side: UnrolledSide, of: str) -> UnrolledSide:
    """The side that a port is in; if both are alike, one stands for the other."""
    return side if side.of == of else side.other


def _placed(asked: PortAsked, side: UnrolledSide, wall: Mm, linings: Mm) -> Port:
    upper, lower = (float(edge(asked.centre)) for edge in (side.upper_edge, side.lower_edge))
    height = (upper + lower) / 2 if math.isnan(asked.below) else upper - asked.below
    hole, reach = asked.hole, asked.patch_reach
    between = 2 * min(upper - linings - height, height - lower - linings)
    return Port(
        asked.name,
        asked.side,
        hole.shape,
        asked.centre,
        upper - height,
        height,
        hole.diameter,
        hole.along,
        hole.across,
        hole.area,
        hole.edge,
        hole.hydraulic_radius,
        effective_depth(wall + asked.patch, hole.hydraulic_radius),
        asked.patch,
        hole.along + 2 * reach,
        max(hole.across, min(hole.across + 2 * reach, between)),
        hole,
    )


def _kept_off(port: Port, side: UnrolledSide, blocks: Iterable[tuple[BevelLaid, BevelBlock]]) -> Port:
    """A port whose patch ends at the blocks behind bevels: shorter or lower, whichever leaves more of it."""
    for laid, block in blocks:
        shape, hole = laid.shape, port.hole
        edge = side.upper_edge if shape.upper else side.lower_edge
        beside = 2 * max(shape.start - port.centre, port.centre - shape.stop, 0.0)
        under = 2 * (abs(float(edge(port.centre)) - port.height) - block.height)
        if beside >= port.patch_along or under >= port.patch_across:
            continue
        lower = replace(port, patch_across=max(hole.across, under))
        shorter = replace(port, patch_along=max(hole.along, beside))
        # one that the hole itself does not leave room for would lie over the block all the same
        fitting = ((lower, under >= hole.across), (shorter, beside >= hole.along))
        port = max(fitting, key=lambda each: (each[1], each[0].patch_along * each[0].patch_across))[0]
    return port


def port_bass(port_list: tuple[Port, ...]) -> tuple[Port, ...]:
    """The ports of the bass side.

    Method: by their side.
    Source: the maker's own choice.
    """
    return tuple(each for each in port_list if each.side == "bass")


def port_treble(port_list: tuple[Port, ...]) -> tuple[Port, ...]:
    """The ports of the treble side.

    Method: by their side.
    Source: the maker's own choice.
    """
    return tuple(each for each in port_list if each.side == "treble")


def port_to_linings(
    port_list: tuple[Port, ...], body_sides: tuple[UnrolledSide, ...], body_linings_height: Mm
) -> tuple[OpeningGap, ...]:
    """From each port's edge to the linings over and under it, whichever is nearer; negative where it cuts into them.

    Method: at places along its edge, the height to the top's edge and to the back's, less the linings' height.
    Source: plane geometry.
    """
    return tuple(
        gap
        for whole in body_sides
        for each in port_list
        for gap in nearest_gap(each.name, _to_linings(each, _wall(whole, each.side), body_linings_height))
    )


def _to_linings(port: Port, side: UnrolledSide, linings: Mm) -> Iterator[tuple[str, Mm]]:
    along, height = np.array(port.outline).T
    on = np.clip(along, 0.0, side.length)
    yield "top's linings", float((side.upper_edge(on) - height).min()) - linings
    yield "back's linings", float((height - side.lower_edge(on)).min()) - linings


def port_to_blocks(
    port_list: tuple[Port, ...], body_sides: tuple[UnrolledSide, ...], body_blocks: tuple[BodyBlock, ...]
) -> tuple[OpeningGap, ...]:
    """From each port's edge to the nearer of the blocks; negative where it is cut into one, or over the side's end.

    Method: along the side, to where it leaves the block's width.
    Source: plane geometry.
    """
    return tuple(
        gap
        for whole in body_sides
        for each in port_list
        for gap in nearest_gap(each.name, _to_blocks(each, _wall(whole, each.side), body_blocks))
    )


def _to_blocks(port: Port, side: UnrolledSide, blocks: tuple[BodyBlock, ...]) -> Iterator[tuple[str, Mm]]:
    along = np.linspace(0.0, side.length, PLACES + 1)
    across = side.half.point(along)[:, 1]
    low, high = port.centre - port.along / 2, port.centre + port.along / 2
    for block in blocks:
        half = block.treble if side.of == "treble" else block.half_width
        if block.start_x == 0:
            yield block.name, low - _left_at(along, across, half)
        else:
            yield block.name, side.length - _left_at(side.length - along[::-1], across[::-1], half) - high


def _left_at(along: Array, across: Array, half: Mm) -> Mm:
    """How far along its own length the side first comes out past a block's half-width."""
    first = int((across > half).argmax())
    if first == 0:
        return 0.0
    return float(np.interp(half, across[first - 1 : first + 1], along[first - 1 : first + 1]))


def port_to_others(port_list: tuple[Port, ...]) -> tuple[OpeningGap, ...]:
    """From each port's edge to the nearest other one's in the same side; negative where they overlap.

    Method: between the edges of every two; each two are told once, at the later of them.
    Source: plane geometry.
    """
    return tuple(
        gap
        for row, each in enumerate(port_list)
        for gap in nearest_gap(
            each.name,
            (
                (other.name, room_between(each.outline, other.outline))
                for other in port_list[:row]
                if other.side == each.side
            ),
        )
    )


def port_bends(port_list: tuple[Port, ...], body_sides: tuple[UnrolledSide, ...]) -> tuple[OpeningGap, ...]:
    """The least radius to which the side is bent where a port is with its patch; without end on a straight.

    Method: the outline's own curvature at places along the patch; nothing at a corner.
    Source: plane geometry.
    """
    return tuple(
        OpeningGap(each.name, "bend", _bend(each, _wall(whole, each.side)))
        for whole in body_sides
        for each in port_list
    )


def _bend(port: Port, side: UnrolledSide) -> Mm:
    low, high = port.centre - port.patch_along / 2, port.centre + port.patch_along / 2
    along = np.clip(np.linspace(low, high, STEPS + 1), 0.0, side.length)
    tangent = side.half.tangent(along)
    if (np.abs(np.diff(np.unwrap(np.arctan2(tangent[:, 1], tangent[:, 0])))) > math.pi / 8).any():
        return 0.0
    most = float(np.abs(side.half.curvature(along)).max())
    return 1 / most if most > 0 else math.inf
