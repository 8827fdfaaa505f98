"""The board's outline: finished edges, the core inside the binding, and the angle of the taper."""

import numpy as np

from gramil.description.records import Station
from gramil.quantities import Mm, PerFret, Radians, Ratio
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("board_", "edge_", "core_")


def board_width_position(board_width_station: Station, fret_position: PerFret[Mm]) -> Mm:
    """How far from the zero line the board's second width is given.

    Formula: interp(board_width_station.fret, arange(len(fret_position)), fret_position) + board_width_station.beyond
    Source: common practice.
    """
    frets = np.arange(len(fret_position))
    return np.interp(board_width_station.fret, frets, fret_position) + board_width_station.beyond


def board_growth(nut_width: Mm, board_width: Mm, board_width_position: Mm) -> Ratio:
    """How much wider the finished board grows for each mm along the centreline; its sides are straight.

    Source: common practice.
    """
    return (board_width - nut_width) / board_width_position


def board_half_taper_angle(board_growth: Ratio) -> Radians:
    """The angle between the centreline and either finished edge. Both edges taper.

    Source: common practice.
    """
    return np.arctan(board_growth / 2)


def board_taper_angle(board_half_taper_angle: Radians) -> Radians:
    """The angle between the two finished edges: what a sled set from the opposite finished edge needs.

    Source: common practice.
    """
    return 2 * board_half_taper_angle


def board_nut_position(nut_set_forward: Mm, nut_behind: Mm, scale_zero_fret: bool) -> Mm:
    """Where the nut's face meets the board's end, from the zero line; toward the head is negative.

    Set-forward moves the face toward fret 1. With a zero fret the nut only spaces the strings, and stands behind it.
    Formula: -nut_behind if scale_zero_fret else nut_set_forward
    Source: common practice.
    """
    return -nut_behind if scale_zero_fret else nut_set_forward


def board_tail_position(fret_position: PerFret[Mm], board_beyond_last_fret: Mm) -> Mm:
    """Where the board's tail end crosses the centreline; it runs alongside the last fret.

    Source: common practice.
    """
    return fret_position[-1] + board_beyond_last_fret


def board_length(board_tail_position: Mm, board_nut_position: Mm) -> Mm:
    """The finished board's length on the centreline.

    Source: common practice.
    """
    return board_tail_position - board_nut_position


def board_width_at_fret(nut_width: Mm, board_growth: Ratio, fret_position: PerFret[Mm]) -> PerFret[Mm]:
    """Finished width, square to the centreline, where each fret crosses it.

    Source: common practice.
    """
    return nut_width + board_growth * fret_position


def board_width_at_tail(nut_width: Mm, board_growth: Ratio, board_tail_position: Mm) -> Mm:
    """Finished width, square to the centreline, where the tail end crosses it.

    Source: common practice.
    """
    return nut_width + board_growth * board_tail_position


def edge_y_treble(board_width_at_fret: PerFret[Mm], board_growth: Ratio, fret_slant: PerFret[Ratio]) -> PerFret[Mm]:
    """Where each fret's line meets the finished treble edge, from the centreline.

    Source: the meeting of two straight lines.
    """
    return board_width_at_fret / 2 / (1 - board_growth / 2 * fret_slant)


def edge_y_bass(board_width_at_fret: PerFret[Mm], board_growth: Ratio, fret_slant: PerFret[Ratio]) -> PerFret[Mm]:
    """Where each fret's line meets the finished bass edge, from the centreline (negative).

    Source: the meeting of two straight lines.
    """
    return -board_width_at_fret / 2 / (1 + board_growth / 2 * fret_slant)


def board_nut_reach_treble(edge_y_treble: PerFret[Mm], fret_slant: PerFret[Ratio]) -> Mm:
    """Along the nut from where it crosses the centreline to the board's treble edge: longer than square across.

    Formula: edge_y_treble[0] * hypot(1, fret_slant[0])
    Source: Pythagoras.
    """
    return edge_y_treble[0] * np.hypot(1, fret_slant[0])


def board_nut_reach_bass(edge_y_bass: PerFret[Mm], fret_slant: PerFret[Ratio]) -> Mm:
    """Along the nut from where it crosses the centreline to the board's bass edge.

    Formula: -edge_y_bass[0] * hypot(1, fret_slant[0])
    Source: Pythagoras.
    """
    return -edge_y_bass[0] * np.hypot(1, fret_slant[0])


def board_nut_length(board_nut_reach_treble: Mm, board_nut_reach_bass: Mm) -> Mm:
    """Length of the nut from edge to edge of the board, along it; on a square board the board's width there.

    Formula: board_nut_reach_treble + board_nut_reach_bass
    Source: common practice.
    """
    return board_nut_reach_treble + board_nut_reach_bass


def edge_x_treble(fret_position: PerFret[Mm], fret_slant: PerFret[Ratio], edge_y_treble: PerFret[Mm]) -> PerFret[Mm]:
    """Where each fret's line meets the finished treble edge, along the centreline.

    Source: the meeting of two straight lines.
    """
    return fret_position + fret_slant * edge_y_treble


def edge_x_bass(fret_position: PerFret[Mm], fret_slant: PerFret[Ratio], edge_y_bass: PerFret[Mm]) -> PerFret[Mm]:
    """Where each fret's line meets the finished bass edge, along the centreline.

    Source: the meeting of two straight lines.
    """
    return fret_position + fret_slant * edge_y_bass


def core_inset(binding_thickness: Mm, binding_purfling: Mm) -> Mm:
    """Binding and purfling together: from the finished edge in to the core, square to the tapered edge.

    Source: common practice.
    """
    return binding_thickness + binding_purfling


def core_inset_across(core_inset: Mm, board_half_taper_angle: Radians) -> Mm:
    """Binding and purfling together measured square to the centreline, as a width is.

    Source: common practice.
    """
    return core_inset / np.cos(board_half_taper_angle)


def core_width_at_fret(board_width_at_fret: PerFret[Mm], core_inset_across: Mm) -> PerFret[Mm]:
    """Width of the core inside the binding, square to the centreline, where each fret crosses it.

    Source: common practice.
    """
    return board_width_at_fret - 2 * core_inset_across


def core_y_treble(core_width_at_fret: PerFret[Mm], board_growth: Ratio, fret_slant: PerFret[Ratio]) -> PerFret[Mm]:
    """Where each fret's line meets the core's treble edge, from the centreline.

    Source: the meeting of two straight lines.
    """
    return core_width_at_fret / 2 / (1 - board_growth / 2 * fret_slant)


def core_y_bass(core_width_at_fret: PerFret[Mm], board_growth: Ratio, fret_slant: PerFret[Ratio]) -> PerFret[Mm]:
    """Where each fret's line meets the core's bass edge, from the centreline (negative).

    Source: the meeting of two straight lines.
    """
    return -core_width_at_fret / 2 / (1 + board_growth / 2 * fret_slant)


def core_x_treble(fret_position: PerFret[Mm], fret_slant: PerFret[Ratio], core_y_treble: PerFret[Mm]) -> PerFret[Mm]:
    """Where each fret's line meets the core's treble edge, along the centreline.

    Source: the meeting of two straight lines.
    """
    return fret_position + fret_slant * core_y_treble


def core_x_bass(fret_position: PerFret[Mm], fret_slant: PerFret[Ratio], core_y_bass: PerFret[Mm]) -> PerFret[Mm]:
    """Where each fret's line meets the core's bass edge, along the centreline.

    Source: the meeting of two straight lines.
    """
    return fret_position + fret_slant * core_y_bass


def core_tail_position(board_tail_position: Mm, core_inset: Mm, binding_tail: bool, fret_slant: PerFret[Ratio]) -> Mm:
    """Where the core's tail end crosses the centreline: moved in square to the end if that is bound too.

    Source: common practice.
    """
    return board_tail_position - binding_tail * core_inset * np.sqrt(1 + fret_slant[-1] ** 2)


def board_outline(
    nut_width: Mm,
    board_growth: Ratio,
    board_nut_position: Mm,
    board_tail_position: Mm,
    fret_slant: PerFret[Ratio],
) -> Quadrilateral:
    """The finished outline's four corners.

    Method: the ends run alongside the zero line and the last fret, and meet the straight edges at the corners.
    Source: the meeting of two straight lines.
    """
    return Quadrilateral.tapered(
        nut_width, board_growth, (board_nut_position, fret_slant[0]), (board_tail_position, fret_slant[-1])
    )


def core_outline(
    nut_width: Mm,
    core_inset_across: Mm,
    board_growth: Ratio,
    board_nut_position: Mm,
    core_tail_position: Mm,
    fret_slant: PerFret[Ratio],
) -> Quadrilateral:
    """The core's four corners: the finished outline moved in by binding and purfling.

    Method: as for the finished outline, from the core's own width.
    Source: the meeting of two straight lines.
    """
    return Quadrilateral.tapered(
        nut_width - 2 * core_inset_across,
        board_growth,
        (board_nut_position, fret_slant[0]),
        (core_tail_position, fret_slant[-1]),
    )
