"""What a taper carriage is set to, from its own constant, and which way the board is fed.

The carriage holds the board between its reference face and the cutter. The finished edge ends up on the cut, which
runs alongside the reference face at the jig's constant from it. A point on the centreline where the board is w wide
then lies (w / 2) cos(half taper) inside the cut; a corner of the opposite finished edge lies w cos(half taper) inside.
"""

import numpy as np

from gramil.description.records import Jig
from gramil.quantities import Mm, Radians, Ratio
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("taper_", "feed_")


def taper_half_width_nut(station_width_at_nut_end: Mm) -> Mm:
    """Centreline to either finished edge at the board's nut end, square to the centreline: mark it both ways.

    Source: common practice.
    """
    return station_width_at_nut_end / 2


def taper_half_width_tail(board_width_at_tail: Mm) -> Mm:
    """Centreline to either finished edge at the tail end, square to the centreline: mark it both ways.

    Source: common practice.
    """
    return board_width_at_tail / 2


def taper_centre_nut(jig_taper: Jig, taper_half_width_nut: Mm, board_half_taper_angle: Radians) -> Mm:
    """Carriage's reference face to the centreline at the board's nut end, square to the face.

    Source: common practice.
    """
    return jig_taper.constant - taper_half_width_nut * np.cos(board_half_taper_angle)


def taper_centre_tail(jig_taper: Jig, taper_half_width_tail: Mm, board_half_taper_angle: Radians) -> Mm:
    """Carriage's reference face to the centreline at the tail end, square to the face.

    Source: common practice.
    """
    return jig_taper.constant - taper_half_width_tail * np.cos(board_half_taper_angle)


def taper_corner_nut(board_outline: Quadrilateral, feed_other_edge: str) -> Mm:
    """Nut-end corner of the edge that is cut first, along the centreline from the zero line.

    Formula: board_outline.start_lower_x if feed_other_edge == "bass" else board_outline.start_upper_x
    Source: common practice.
    """
    return board_outline.start_lower_x if feed_other_edge == "bass" else board_outline.start_upper_x


def taper_corner_tail(board_outline: Quadrilateral, feed_other_edge: str) -> Mm:
    """Tail-end corner of the edge that is cut first, along the centreline from the zero line.

    Formula: board_outline.end_lower_x if feed_other_edge == "bass" else board_outline.end_upper_x
    Source: common practice.
    """
    return board_outline.end_lower_x if feed_other_edge == "bass" else board_outline.end_upper_x


def taper_edge_nut(
    jig_taper: Jig, nut_width: Mm, board_growth: Ratio, taper_corner_nut: Mm, board_half_taper_angle: Radians
) -> Mm:
    """Carriage's reference face to the nut-end corner of the first finished edge, when the second is cut.

    Source: common practice.
    """
    return jig_taper.constant - (nut_width + board_growth * taper_corner_nut) * np.cos(board_half_taper_angle)


def taper_edge_tail(
    jig_taper: Jig, nut_width: Mm, board_growth: Ratio, taper_corner_tail: Mm, board_half_taper_angle: Radians
) -> Mm:
    """Carriage's reference face to the tail-end corner of the first finished edge, when the second is cut.

    Source: common practice.
    """
    return jig_taper.constant - (nut_width + board_growth * taper_corner_tail) * np.cos(board_half_taper_angle)


def feed_agreeing_edge(instrument_handed: str) -> str:
    """The edge on which a router turning on the face's side is fed against its turn *and* down the taper.

    Seen from its motor a router turns clockwise, and is led anticlockwise round the work. Head to the left and seen
    from the face, that is from tail to nut along the upper edge: the treble edge of a right-handed board.
    Formula: "treble" if instrument_handed == "right" else "bass"
    Source: common practice.
    """
    return "treble" if instrument_handed == "right" else "bass"


def feed_other_edge(feed_agreeing_edge: str) -> str:
    """The edge on which the two rules disagree until the board is turned over.

    Face up over a cutter that turns from below, as in a router table, it is the edge on which they agree: the first
    to be cut in a carriage.

    Formula: "bass" if feed_agreeing_edge == "treble" else "treble"
    Source: common practice.
    """
    return "bass" if feed_agreeing_edge == "treble" else "treble"
