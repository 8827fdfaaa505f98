"""The plate under the bridge: it is held to the saddle, and placed from the body's edge."""

import math

from gramil.parts.body_records import PlateShape, Shell
from gramil.quantities import Mm, Radians, Ratio
from gramil.shapes.outline import Outline
from gramil.shapes.within import inside_ring

OWNS = ("plate_",)


def plate_front(body_saddle: Mm, bridge_plate_ahead: Mm) -> Mm:
    """The plate's front edge from the body's edge, on the centreline.

    Source: common practice.
    """
    return body_saddle - bridge_plate_ahead


def plate_back(body_saddle: Mm, bridge_plate_behind: Mm) -> Mm:
    """The plate's back edge from the body's edge, on the centreline.

    Source: common practice.
    """
    return body_saddle + bridge_plate_behind


def plate_slant(plate_front: Mm, bridge_plate_lean: Radians, string_saddle_slant: Ratio) -> Ratio:
    """How far toward the tail the plate's edges run for each mm toward the treble: as the bridge, or as asked.

    Formula: plate_front if isnan(plate_front) else string_saddle_slant if isnan(bridge_plate_lean)
        else tan(bridge_plate_lean)
    Source: common practice.
    """
    if math.isnan(plate_front):
        return math.nan
    return string_saddle_slant if math.isnan(bridge_plate_lean) else math.tan(bridge_plate_lean)


def plate_lean(plate_slant: Ratio) -> Radians:
    """The plate's angle to a square line, treble end toward the tail positive.

    Formula: arctan(plate_slant)
    Source: a right triangle.
    """
    return math.atan(plate_slant)


def plate_shapes(
    body_outlines: tuple[Outline, ...],
    plate_front: Mm,
    plate_back: Mm,
    bridge_plate_length_front: Mm,
    bridge_plate_length_back: Mm,
    bridge_plate_thickness: Mm,
    plate_slant: Ratio,
) -> tuple[PlateShape, ...]:
    """The plate in its place on the top, or none.

    Method: its edges slant together, its ends run straight from front to back.
    Source: common practice.
    """
    if math.isnan(plate_front):
        return ()
    return tuple(
        PlateShape(
            "bridge plate",
            plate_front,
            plate_back,
            bridge_plate_length_front / 2,
            bridge_plate_length_back / 2,
            bridge_plate_thickness,
            plate_slant,
        )
        for _ in body_outlines
    )


def plate_outside(plate_shapes: tuple[PlateShape, ...], body_shells: tuple[Shell, ...]) -> tuple[str, ...]:
    """The plate's name if a corner of it lies outside the linings.

    Method: each corner held against the line inside sides and linings.
    Source: plane geometry.
    """
    rings = [shell.lined.ring for shell in body_shells]
    return tuple(
        plate.name
        for ring in rings
        for plate in plate_shapes
        if not all(inside_ring(ring, corner) for corner in plate.corners)
    )


def plate_width(plate_front: Mm, plate_back: Mm, plate_slant: Ratio) -> Mm:
    """The plate from front to back, square to its edges; its grain lies across the top's.

    Formula: (plate_back - plate_front) / sqrt(1 + plate_slant**2)
    Source: Pythagoras.
    """
    return (plate_back - plate_front) / math.sqrt(1 + plate_slant**2)


def plate_length(bridge_plate_length_front: Mm, bridge_plate_length_back: Mm, plate_slant: Ratio) -> Mm:
    """The plate along its longer edge: the piece that it is cut from.

    Formula: maximum(bridge_plate_length_front, bridge_plate_length_back) * sqrt(1 + plate_slant**2)
    Source: Pythagoras.
    """
    return max(bridge_plate_length_front, bridge_plate_length_back) * math.sqrt(1 + plate_slant**2)
