"""The soundhole and the rings round it: where they lie on the top, and the air that moves in the hole."""

import math

from gramil.description.body.records import RingAsked
from gramil.parts.body_records import Ring, Zeros
from gramil.physics.air_resonance import effective_depth
from gramil.quantities import Mm, Mm2

OWNS = ("soundhole_", "rosette_")


def soundhole_centre(soundhole_given: Mm, soundhole_held_to: str, body_zeros: Zeros) -> Mm:
    """The soundhole's centre from the body's edge, on the centreline.

    Method: its own distance, counted from what it is held to.
    Source: the maker's own choice.
    """
    return soundhole_given + body_zeros.of(soundhole_held_to)


def soundhole_from_zero(soundhole_centre: Mm, body_edge: Mm) -> Mm:
    """The soundhole's centre from the zero line.

    Source: common practice.
    """
    return soundhole_centre + body_edge


def soundhole_edge_neck(soundhole_centre: Mm, soundhole_diameter: Mm) -> Mm:
    """The soundhole's edge on the neck's side, from the body's edge.

    Source: common practice.
    """
    return soundhole_centre - soundhole_diameter / 2


def soundhole_area(soundhole_diameter: Mm) -> Mm2:
    """Area of the hole.

    Formula: pi * soundhole_diameter**2 / 4
    Source: a circle.
    """
    return math.pi * soundhole_diameter**2 / 4


def soundhole_plug(top_thickness: Mm, soundhole_diameter: Mm) -> Mm:
    """Length of the plug of air that moves in the hole.

    Formula: top_thickness + 1.7 * soundhole_diameter / 2
    Source: kinsler_helmholtz
    """
    return effective_depth(top_thickness, soundhole_diameter / 2)


def soundhole_from_board(soundhole_edge_neck: Mm, body_edge: Mm, board_tail_position: Mm) -> Mm:
    """From the board's tail end to the soundhole, on the centreline; negative where the board runs over it.

    Source: common practice.
    """
    return soundhole_edge_neck + body_edge - board_tail_position


def rosette_rings(rosette_asked: tuple[RingAsked, ...]) -> tuple[Ring, ...]:
    """The rings, by their diameters.

    Method: outer diameter = inner + twice the width.
    Source: the maker's own choice.
    """
    return tuple(Ring(each.name, each.inner, each.inner + 2 * each.width, each.depth) for each in rosette_asked)
