"""What must still hold after a change: room between braces, soundhole, bridge, pins, blocks, each as a distance.

A distance with nothing to measure is nan, and counts as not there.
"""

import math
from itertools import combinations

from gramil.description.body.records import BraceAsked
from gramil.parts.body_records import BodyBlock, Brace, Crossing, PlateShape, Shell, Spot
from gramil.parts.opening_records import SAME, Opening
from gramil.quantities import Mm
from gramil.shapes.planar import Point, boxes_apart, least_apart, nearest_on_segment, polygon_contains, polygons_apart
from gramil.shapes.quadrilateral import Quadrilateral
from gramil.shapes.within import Array, inside_ring

OWNS = ("room_",)


def room_bridge_to_legs(
    brace_list: tuple[Brace, ...], brace_legs: tuple[str, ...], brace_bridge: tuple[Quadrilateral, ...]
) -> Mm:
    """The farthest that the bridge's footprint is from a leg of the X: 0 where both its wings land.

    Method: the least distance between the footprint and each leg's footprint; the greatest of these.
    Source: plane geometry.
    """
    return max(
        (
            polygons_apart(bridge.corners, leg.footprint)
            for bridge in brace_bridge
            for leg in _legs(brace_list, brace_legs)
        ),
        default=math.nan,
    )


def _legs(braces: tuple[Brace, ...], names: tuple[str, ...]) -> tuple[Brace, ...]:
    return tuple(each for each in braces if each.name in names)


def room_plate_to_legs(
    brace_list: tuple[Brace, ...], brace_legs: tuple[str, ...], plate_shapes: tuple[PlateShape, ...]
) -> Mm:
    """The farthest that the bridge plate is from a leg of the X: 0 where it reaches both.

    Method: the least distance between the plate and each leg's footprint; the greatest of these.
    Source: plane geometry.
    """
    return max(
        (
            polygons_apart(plate.corners, leg.footprint)
            for plate in plate_shapes
            for leg in _legs(brace_list, brace_legs)
        ),
        default=math.nan,
    )


def room_plate_to_braces(
    brace_list: tuple[Brace, ...],
    brace_legs: tuple[str, ...],
    plate_shapes: tuple[PlateShape, ...],
    braces_asked: tuple[BraceAsked, ...],
) -> Mm:
    """From the bridge plate to the nearest brace of the top that is no leg of the X: 0 where they lie over each other.

    Method: the least distance between the plate and each such brace's footprint, those left out that cross it.
    Source: plane geometry.
    """
    over = {each.name for each in braces_asked for plate in plate_shapes if plate.name in each.crosses}
    others = [
        each for each in brace_list if each.plate == "top" and each.name not in brace_legs and each.name not in over
    ]
    return least_apart((plate.corners, each.footprint) for plate in plate_shapes for each in others)


def room_pins_in_plate(
    brace_pins: tuple[Spot, ...], plate_shapes: tuple[PlateShape, ...], bridge_pin_diameter: Mm
) -> Mm:
    """How far the bridge plate reaches past the pin's hole that is nearest its edge; negative where it does not.

    Method: from each hole's centre to the plate's edge, less the hole's radius; the least.
    Source: plane geometry.
    """
    return min(
        (_depth(plate.corners, pin.point) - bridge_pin_diameter / 2 for plate in plate_shapes for pin in brace_pins),
        default=math.nan,
    )


def _depth(corners: tuple[Point, ...], point: Point) -> float:
    """Distance to a polygon's edge, positive inside."""
    edges = zip(corners, (*corners[1:], corners[0]), strict=True)
    away = min(math.dist(point, nearest_on_segment(point, *edge)) for edge in edges)
    return away if polygon_contains(corners, point) else -away


def room_crossing_to_hole(
    brace_list: tuple[Brace, ...], brace_legs: tuple[str, ...], opening_main: tuple[Opening, ...]
) -> Mm:
    """From the soundhole's edge to the nearest leg of the X.

    Method: from the hole's edge to each leg's footprint; the least.
    Source: plane geometry.
    """
    return _to_hole(_legs(brace_list, brace_legs), opening_main)


def room_braces_to_hole(brace_list: tuple[Brace, ...], opening_main: tuple[Opening, ...]) -> Mm:
    """From the soundhole's edge to the nearest brace of the top; negative where one would be cut through.

    Method: from the hole's edge to each brace's footprint; the least.
    Source: plane geometry.
    """
    return _to_hole(tuple(each for each in brace_list if each.plate == "top"), opening_main)


def _to_hole(braces: tuple[Brace, ...], holes: tuple[Opening, ...]) -> float:
    return min((hole.room_to(each.footprint) for each in braces for hole in holes), default=math.nan)


def room_pins_to_braces(brace_list: tuple[Brace, ...], brace_pins: tuple[Spot, ...], bridge_pin_diameter: Mm) -> Mm:
    """From a pin's hole to the nearest brace of the top; negative where a hole would be drilled into one.

    Method: from each hole's centre to each brace's footprint, less the hole's radius; the least.
    Source: plane geometry.
    """
    top = [each for each in brace_list if each.plate == "top"]
    return min(
        (-_depth(each.footprint, pin.point) - bridge_pin_diameter / 2 for each in top for pin in brace_pins),
        default=math.nan,
    )


def room_nearest_braces(
    brace_list: tuple[Brace, ...], braces_asked: tuple[BraceAsked, ...], brace_crossings: tuple[Crossing, ...]
) -> tuple[str, ...]:
    """The two braces of one plate that come nearest each other without being joined; none where none do.

    Method: every pair of one plate that is neither notched nor fitted together, by their footprints' distance; of pairs
    as near as each other to a millionth of a millimetre the first in order.
    Source: plane geometry.
    """
    pairs = _strangers(brace_list, braces_asked, brace_crossings)
    nearest: tuple[Brace, ...] = ()
    least = math.inf
    for pair in pairs:
        if boxes_apart(*(each.footprint for each in pair)) < least and (apart := _apart(*pair)) < least - SAME:
            nearest, least = pair, apart
    return tuple(each.name for each in nearest)


def room_between_braces(brace_list: tuple[Brace, ...], room_nearest_braces: tuple[str, ...]) -> Mm:
    """How near those two come: 0 where they touch or lie over each other.

    Method: the least distance between their footprints.
    Source: plane geometry.
    """
    chosen = [each for each in brace_list if each.name in room_nearest_braces]
    return _apart(*chosen) if len(chosen) == 2 else math.nan


def _strangers(
    braces: tuple[Brace, ...], asked: tuple[BraceAsked, ...], crossings: tuple[Crossing, ...]
) -> list[tuple[Brace, Brace]]:
    joined = {frozenset((each.over, each.under)) for each in crossings}
    joined |= {frozenset((each.name, end)) for each in asked for end in (each.start_at, each.stop_at)}
    return [
        (one, other)
        for one, other in combinations(braces, 2)
        if one.plate == other.plate and frozenset((one.name, other.name)) not in joined
    ]


def _apart(one: Brace, other: Brace) -> float:
    if math.isnan(one.length) or math.isnan(other.length):
        return math.nan
    return polygons_apart(one.footprint, other.footprint)


def room_braces_to_blocks(brace_list: tuple[Brace, ...], body_blocks: tuple[BodyBlock, ...]) -> Mm:
    """From neck or tail block to the nearest brace: 0 where one lies over a block.

    Method: the least distance between a brace's footprint and a block's footprint.
    Source: plane geometry.
    """
    return least_apart((each.footprint, block.corners) for each in brace_list for block in body_blocks)


def room_outside(brace_list: tuple[Brace, ...], body_shells: tuple[Shell, ...]) -> tuple[str, ...]:
    """Names of braces that do not lie inside the linings (the sides, for tucked ends) from end to end.

    Method: both ends inside, and a length that is one.
    Source: plane geometry.
    """
    rings = [(shell.lined.ring, shell.bare.ring) for shell in body_shells]
    return tuple(each.name for lined, bare in rings for each in brace_list if not _inside(each, lined, bare))


def _inside(brace: Brace, lined: Array, bare: Array) -> bool:
    if not brace.length > 0:
        return False
    ring = bare if brace.ends == "tucked" else lined
    return inside_ring(ring, brace.start) and inside_ring(ring, brace.stop)
