"""How thick the board is at crest and edge, and the wedge that levelling the underside takes away.

Levelled, the board rests on its two edges with the crown hanging free, and its underside is planed to one plane
through the edges' ends; the crest then thins toward the end where the arch falls less.
"""

import numpy as np

from gramil.quantities import Mm, PerFret, Radians

OWNS = ("thickness_",)


def thickness_wedge(
    board_level_underside: bool, arch_fall_at_tail_end: Mm, arch_fall_at_nut_end: Mm, lean_wedge: Mm
) -> Mm:
    """How much thinner the crest is at the nut end than at the tail end: levelled, or by edges of its own; else 0.

    Source: common practice.
    """
    return board_level_underside * (arch_fall_at_tail_end - arch_fall_at_nut_end) + lean_wedge


def thickness_wedge_angle(thickness_wedge: Mm, board_length: Mm) -> Radians:
    """The angle between crest and levelled underside: it belongs in the neck set.

    Source: common practice.
    """
    return np.arctan(thickness_wedge / board_length)


def thickness_at_crest(
    board_thickness: Mm, thickness_wedge: Mm, board_tail_position: Mm, fret_position: PerFret[Mm], board_length: Mm
) -> PerFret[Mm]:
    """Finished thickness on the centreline at each fret.

    Source: common practice.
    """
    return board_thickness - thickness_wedge * (board_tail_position - fret_position) / board_length


def thickness_crest_at_slot_treble(
    board_thickness: Mm,
    thickness_wedge: Mm,
    board_tail_position: Mm,
    core_x_treble: PerFret[Mm],
    board_length: Mm,
    lean_at_slot_treble: PerFret[Mm],
) -> PerFret[Mm]:
    """Finished thickness level with each slot's treble end, the arch aside: on the centreline if the board is even.

    It differs from the thickness where the fret crosses the centreline only on a levelled board with fanned frets.
    Source: common practice.
    """
    return (
        board_thickness - thickness_wedge * (board_tail_position - core_x_treble) / board_length + lean_at_slot_treble
    )


def thickness_crest_at_slot_bass(
    board_thickness: Mm,
    thickness_wedge: Mm,
    board_tail_position: Mm,
    core_x_bass: PerFret[Mm],
    board_length: Mm,
    lean_at_slot_bass: PerFret[Mm],
) -> PerFret[Mm]:
    """Finished thickness level with each slot's bass end, the arch aside: on the centreline if the board is even.

    Source: common practice.
    """
    return board_thickness - thickness_wedge * (board_tail_position - core_x_bass) / board_length + lean_at_slot_bass


def thickness_at_edge_treble(
    board_thickness: Mm,
    thickness_wedge: Mm,
    board_tail_position: Mm,
    edge_x_treble: PerFret[Mm],
    board_length: Mm,
    arch_fall_at_edge_treble: PerFret[Mm],
    lean_at_edge_treble: PerFret[Mm],
) -> PerFret[Mm]:
    """Finished thickness at the treble edge, at the end of each fret.

    Formula: board_thickness - thickness_wedge * (board_tail_position - edge_x_treble) / board_length
        - arch_fall_at_edge_treble + lean_at_edge_treble
    Source: common practice.
    """
    crest = board_thickness - thickness_wedge * (board_tail_position - edge_x_treble) / board_length
    return crest - arch_fall_at_edge_treble + lean_at_edge_treble


def thickness_at_edge_bass(
    board_thickness: Mm,
    thickness_wedge: Mm,
    board_tail_position: Mm,
    edge_x_bass: PerFret[Mm],
    board_length: Mm,
    arch_fall_at_edge_bass: PerFret[Mm],
    lean_at_edge_bass: PerFret[Mm],
) -> PerFret[Mm]:
    """Finished thickness at the bass edge, at the end of each fret.

    Formula: board_thickness - thickness_wedge * (board_tail_position - edge_x_bass) / board_length
        - arch_fall_at_edge_bass + lean_at_edge_bass
    Source: common practice.
    """
    crest = board_thickness - thickness_wedge * (board_tail_position - edge_x_bass) / board_length
    return crest - arch_fall_at_edge_bass + lean_at_edge_bass


def thickness_edge_spread(thickness_at_edge_treble: PerFret[Mm], thickness_at_edge_bass: PerFret[Mm]) -> Mm:
    """The most that the edge's thickness differs along the board: it shows along a bound edge.

    Formula: max(concatenate([thickness_at_edge_treble, thickness_at_edge_bass]))
        - min(concatenate([thickness_at_edge_treble, thickness_at_edge_bass]))
    Source: common practice.
    """
    edges = np.concatenate([thickness_at_edge_treble, thickness_at_edge_bass])
    return float(edges.max() - edges.min())


def thickness_before_levelling(board_thickness: Mm, thickness_wedge: Mm) -> Mm:
    """Even thickness at the crest, arch finished, before the wedge is planed off the underside.

    Formula: board_thickness + maximum(0, -thickness_wedge)
    Source: common practice.
    """
    return board_thickness + max(0.0, -thickness_wedge)


def thickness_to_plane(thickness_before_levelling: Mm, thickness_at_crest: PerFret[Mm]) -> PerFret[Mm]:
    """What to plane off the underside at each fret; nothing where the board is not levelled.

    Source: common practice.
    """
    return thickness_before_levelling - thickness_at_crest
