"""A board that is not equally thick: how its face leans across over the neck's own face, at the nut and at the tail.

Its face is ruled by straight lines: along both edges, and straight across at each place but for the arch, which is left
out here. The neck's face is level across, and so are the top and the bridge: strings and saddle follow the lean.
"""

import math

from gramil.quantities import Mm, PerFret, PerStringFret, Ratio

OWNS = ("lean_",)


def lean_at_tail(
    board_edge_tail_treble: Mm,
    board_edge_tail_bass: Mm,
    board_edge_nut_treble: Mm,
    board_edge_nut_bass: Mm,
    board_thickness: Mm,
    arch_fall_at_tail_end: Mm,
    nut_width: Mm,
    board_width_at_tail: Mm,
) -> Mm:
    """How much thicker the board is at its treble edge than at its bass edge at the tail end; nothing on an even board.

    Method: from the edge that is given and the middle; with both edges of the nut alone, of a face that is one plane.
    Source: common practice.
    """
    if not math.isnan(board_edge_tail_treble):
        return 2 * (board_edge_tail_treble + arch_fall_at_tail_end - board_thickness)
    if not math.isnan(board_edge_tail_bass):
        return 2 * (board_thickness - board_edge_tail_bass - arch_fall_at_tail_end)
    both = board_edge_nut_treble - board_edge_nut_bass
    return 0.0 if math.isnan(both) else both * board_width_at_tail / nut_width


def lean_at_nut(
    board_edge_nut_treble: Mm, board_edge_nut_bass: Mm, lean_at_tail: Mm, nut_width: Mm, board_width_at_tail: Mm
) -> Mm:
    """How much thicker the board is at its treble edge than at its bass edge at the nut; nothing on an even board.

    Method: from both edges; with one of them, of a face that is one plane; with none the nut is level.
    Source: common practice.
    """
    given = [each for each in (board_edge_nut_treble, board_edge_nut_bass) if not math.isnan(each)]
    if len(given) == 2:
        return board_edge_nut_treble - board_edge_nut_bass
    return lean_at_tail * nut_width / board_width_at_tail if given else 0.0


def lean_wedge(
    board_edge_nut_treble: Mm,
    board_edge_nut_bass: Mm,
    lean_at_nut: Mm,
    board_thickness: Mm,
    arch_fall_at_nut_end: Mm,
) -> Mm:
    """How much thinner the board's middle is at the nut than at the tail end, by the edges given; 0 if none are given.

    Method: from the treble edge and half the lean, or else from the bass edge; the arch's fall to the edge added back.
    Source: common practice.
    """
    if not math.isnan(board_edge_nut_treble):
        return board_thickness - (board_edge_nut_treble + arch_fall_at_nut_end - lean_at_nut / 2)
    if not math.isnan(board_edge_nut_bass):
        return board_thickness - (board_edge_nut_bass + arch_fall_at_nut_end + lean_at_nut / 2)
    return 0.0


def lean_under_string(
    lean_at_nut: Mm,
    lean_at_tail: Mm,
    string_x: PerStringFret[Mm],
    string_y: PerStringFret[Mm],
    board_tail_position: Mm,
    nut_width: Mm,
    board_growth: Ratio,
) -> PerStringFret[Mm]:
    """How far the lean lifts the face under each string at each fret over the board's middle; negative lowers it.

    Formula: (lean_at_nut + (lean_at_tail - lean_at_nut) * string_x / board_tail_position)
        * string_y / (nut_width + board_growth * string_x)
    Source: similar triangles.
    """
    across = lean_at_nut + (lean_at_tail - lean_at_nut) * string_x / board_tail_position
    return across * string_y / (nut_width + board_growth * string_x)


def lean_at_edge_treble(
    lean_at_nut: Mm, lean_at_tail: Mm, edge_x_treble: PerFret[Mm], board_tail_position: Mm
) -> PerFret[Mm]:
    """How far the lean lifts the treble edge at each fret over the board's middle; negative lowers it.

    Formula: (lean_at_nut + (lean_at_tail - lean_at_nut) * edge_x_treble / board_tail_position) / 2
    Source: similar triangles.
    """
    return (lean_at_nut + (lean_at_tail - lean_at_nut) * edge_x_treble / board_tail_position) / 2


def lean_at_edge_bass(
    lean_at_nut: Mm, lean_at_tail: Mm, edge_x_bass: PerFret[Mm], board_tail_position: Mm
) -> PerFret[Mm]:
    """How far the lean lifts the bass edge at each fret over the board's middle; negative lowers it.

    Formula: -(lean_at_nut + (lean_at_tail - lean_at_nut) * edge_x_bass / board_tail_position) / 2
    Source: similar triangles.
    """
    return -(lean_at_nut + (lean_at_tail - lean_at_nut) * edge_x_bass / board_tail_position) / 2


def lean_at_slot_treble(
    lean_at_edge_treble: PerFret[Mm], core_y_treble: PerFret[Mm], edge_y_treble: PerFret[Mm]
) -> PerFret[Mm]:
    """How far the lean lifts each slot's treble end, inside a binding, over the board's middle; negative lowers it.

    Formula: lean_at_edge_treble * core_y_treble / edge_y_treble
    Source: similar triangles.
    """
    return lean_at_edge_treble * core_y_treble / edge_y_treble


def lean_at_slot_bass(
    lean_at_edge_bass: PerFret[Mm], core_y_bass: PerFret[Mm], edge_y_bass: PerFret[Mm]
) -> PerFret[Mm]:
    """How far the lean lifts each slot's bass end, inside a binding, over the board's middle; negative lowers it.

    Formula: lean_at_edge_bass * core_y_bass / edge_y_bass
    Source: similar triangles.
    """
    return lean_at_edge_bass * core_y_bass / edge_y_bass


def lean_over_middle(lean_at_nut: Mm, lean_at_tail: Mm, lean_wedge: Mm) -> Mm:
    """How much thicker the board's thickest corner is than its middle anywhere, the arch aside: part of the blank.

    Formula: maximum(abs(lean_at_tail) / 2, abs(lean_at_nut) / 2 - lean_wedge) - maximum(0, -lean_wedge)
    Source: common practice.
    """
    return max(abs(lean_at_tail) / 2, abs(lean_at_nut) / 2 - lean_wedge) - max(0.0, -lean_wedge)


def lean_corner_nut_treble(
    lean_at_nut: Mm,
    lean_at_tail: Mm,
    lean_wedge: Mm,
    board_thickness: Mm,
    arch_fall_at_nut_end: Mm,
) -> Mm:
    """Thickness that the board is planed to at the nut end's treble corner; not known for an even board.

    An even board is made by its crest alone.
    Method: the crest's thickness less the wedge and the arch's fall there, and half the lean.
    Source: common practice.
    """
    if lean_at_nut == lean_at_tail == lean_wedge == 0:
        return math.nan
    return board_thickness - lean_wedge - arch_fall_at_nut_end + lean_at_nut / 2


def lean_corner_nut_bass(
    lean_at_nut: Mm,
    lean_at_tail: Mm,
    lean_wedge: Mm,
    board_thickness: Mm,
    arch_fall_at_nut_end: Mm,
) -> Mm:
    """Thickness that the board is planed to at the nut end's bass corner; not known for an even board.

    An even board is made by its crest alone.
    Method: the crest's thickness less the wedge and the arch's fall there, and less half the lean.
    Source: common practice.
    """
    if lean_at_nut == lean_at_tail == lean_wedge == 0:
        return math.nan
    return board_thickness - lean_wedge - arch_fall_at_nut_end - lean_at_nut / 2


def lean_corner_tail_treble(
    lean_at_nut: Mm,
    lean_at_tail: Mm,
    lean_wedge: Mm,
    board_thickness: Mm,
    arch_fall_at_tail_end: Mm,
) -> Mm:
    """Thickness that the board is planed to at the tail end's treble corner; not known for an even board.

    An even board is made by its crest alone.
    Method: the crest's thickness less the arch's fall there, and half the lean.
    Source: common practice.
    """
    if lean_at_nut == lean_at_tail == lean_wedge == 0:
        return math.nan
    return board_thickness - arch_fall_at_tail_end + lean_at_tail / 2


def lean_corner_tail_bass(
    lean_at_nut: Mm,
    lean_at_tail: Mm,
    lean_wedge: Mm,
    board_thickness: Mm,
    arch_fall_at_tail_end: Mm,
) -> Mm:
    """Thickness that the board is planed to at the tail end's bass corner; not known for an even board.

    An even board is made by its crest alone.
    Method: the crest's thickness less the arch's fall there, and less half the lean.
    Source: common practice.
    """
    if lean_at_nut == lean_at_tail == lean_wedge == 0:
        return math.nan
    return board_thickness - arch_fall_at_tail_end - lean_at_tail / 2
