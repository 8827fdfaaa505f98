"""The soundhole and the rings round it: where they lie on the top, and the air that moves in the hole."""

import math

from gramil.description.body.records import RingAsked
from gramil.parts.body_records import Ring, Zeros
from gramil.parts.opening_records import Opening
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


def soundhole_wide(soundhole_diameter: Mm, soundhole_across: Mm) -> Mm:
    """The soundhole's size across: its diameter, where it is round.

    Formula: where(isnan(soundhole_diameter), soundhole_across, soundhole_diameter)
    Source: the maker's own choice.
    """
    return soundhole_across if math.isnan(soundhole_diameter) else soundhole_diameter


def soundhole_long(soundhole_diameter: Mm, soundhole_along: Mm) -> Mm:
    """The soundhole's size along: its diameter, where it is round.

    Formula: where(isnan(soundhole_diameter), soundhole_along, soundhole_diameter)
    Source: the maker's own choice.
    """
    return soundhole_along if math.isnan(soundhole_diameter) else soundhole_diameter


def soundhole_edge_neck(soundhole_centre: Mm, soundhole_long: Mm, opening_main: tuple[Opening, ...]) -> Mm:
    """The soundhole's edge on the neck's side, from the body's edge.

    Method: its centre less half its length; of one that is turned, the place on its edge that is nearest the neck.
    Source: common practice.
    """
    turned = [min(x for x, _ in each.outline) for each in opening_main if each.lean]
    return turned[0] if turned else soundhole_centre - soundhole_long / 2


def soundhole_area(opening_main: tuple[Opening, ...]) -> Mm2:
    """Area of the soundhole.

    Method: pi a b of an ellipse, a circle with both alike; of a D half of one and the straight part with its corners.
    Source: plane geometry.
    """
    return next((each.area for each in opening_main), math.nan)


def soundhole_from_board(
    soundhole_edge_neck: Mm, body_edge: Mm, board_tail_position: Mm, opening_main: tuple[Opening, ...]
) -> Mm:
    """From the board's tail end to the soundhole, on the centreline; negative where the board runs over it.

    Method: between the two along the body; not of a hole that lies wholly on one side of the centreline.
    Source: common practice.
    """
    beside = any(abs(each.y) > each.across / 2 for each in opening_main)
    return math.nan if beside else soundhole_edge_neck + body_edge - board_tail_position


def rosette_rings(rosette_asked: tuple[RingAsked, ...], opening_list: tuple[Opening, ...]) -> tuple[Ring, ...]:
    """The rings, by their diameters, or across where the hole is not round.

    Method: outer = inner + twice the width; a ring lies at the same distance from the hole's edge all round.
    Source: the maker's own choice.
    """
    holes = {each.name: each for each in opening_list}
    return tuple(_ring(each, holes[each.round]) for each in rosette_asked if each.round in holes)


def _ring(asked: RingAsked, hole: Opening) -> Ring:
    inner = hole.across + 2 * asked.gap if math.isnan(asked.inner) else asked.inner
    return Ring(asked.name, inner, inner + 2 * asked.width, asked.depth, asked.round)
