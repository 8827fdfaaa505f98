"""The plate under the bridge: it is held to the saddle, and placed from the body's edge."""

import math

from gramil.parts.body_records import PlateShape, Shell
from gramil.quantities import Mm
from gramil.shapes.outline import Outline
from gramil.shapes.within import inside_ring, ring_of

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


def plate_shapes(
    body_outlines: tuple[Outline, ...],
    plate_front: Mm,
    plate_back: Mm,
    bridge_plate_length_front: Mm,
    bridge_plate_length_back: Mm,
    bridge_plate_thickness: Mm,
) -> tuple[PlateShape, ...]:
    """The plate in its place on the top, or none.

    Method: square to the centreline, its ends straight from front to back.
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
        )
        for _ in body_outlines
    )


def plate_outside(plate_shapes: tuple[PlateShape, ...], body_shells: tuple[Shell, ...]) -> tuple[str, ...]:
    """The plate's name if a corner of it lies outside the linings.

    Method: each corner held against the line inside sides and linings.
    Source: plane geometry.
    """
    rings = [ring_of(shell.lined) for shell in body_shells]
    return tuple(
        plate.name
        for ring in rings
        for plate in plate_shapes
        if not all(inside_ring(ring, corner) for corner in plate.corners)
    )


def plate_width(plate_front: Mm, plate_back: Mm) -> Mm:
    """The plate from front to back; its grain lies across the top's.

    Source: common practice.
    """
    return plate_back - plate_front
