"""The playing surface: how far it falls from its crest toward the edges and under each string."""

import numpy as np

from gramil.quantities import Mm, PerFret, PerMm, PerString, PerStringFret
from gramil.shapes.crown import Crown
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("arch_",)


def arch_surface(board_curvature_nut: PerMm, board_curvature_end: PerMm, board_tail_position: Mm) -> Crown:
    """The whole surface: flat, a cylinder or a cone, its radius straight from the zero line to the tail end.

    Method: at x along the board of length L the radius is R = R_nut + (R_end - R_nut) x / L.
    Source: common practice.
    """
    return Crown(board_curvature_nut, board_curvature_end, board_tail_position)


def arch_radius_at_fret(arch_surface: Crown, fret_position: PerFret[Mm]) -> PerFret[Mm]:
    """Radius of the arch where each fret crosses the centreline; a flat board's is without end.

    Formula: 1 / arch_surface.curvature(fret_position)
    Source: common practice.
    """
    with np.errstate(divide="ignore"):
        return 1 / arch_surface.curvature(fret_position)


def arch_fall_at_edge_treble(
    arch_surface: Crown, edge_x_treble: PerFret[Mm], edge_y_treble: PerFret[Mm]
) -> PerFret[Mm]:
    """How far the surface has fallen from the crest at each fret's end on the finished treble edge.

    Source: sagitta
    """
    return arch_surface.fall(edge_x_treble, edge_y_treble)


def arch_fall_at_edge_bass(arch_surface: Crown, edge_x_bass: PerFret[Mm], edge_y_bass: PerFret[Mm]) -> PerFret[Mm]:
    """How far the surface has fallen from the crest at each fret's end on the finished bass edge.

    Source: sagitta
    """
    return arch_surface.fall(edge_x_bass, edge_y_bass)


def arch_fall_at_core_treble(
    arch_surface: Crown, core_x_treble: PerFret[Mm], core_y_treble: PerFret[Mm]
) -> PerFret[Mm]:
    """How far the surface has fallen from the crest at each slot's treble end, on the core's edge.

    Source: sagitta
    """
    return arch_surface.fall(core_x_treble, core_y_treble)


def arch_fall_at_core_bass(arch_surface: Crown, core_x_bass: PerFret[Mm], core_y_bass: PerFret[Mm]) -> PerFret[Mm]:
    """How far the surface has fallen from the crest at each slot's bass end, on the core's edge.

    Source: sagitta
    """
    return arch_surface.fall(core_x_bass, core_y_bass)


def arch_fall_at_nut_end(arch_surface: Crown, board_outline: Quadrilateral) -> Mm:
    """The surface's fall at the corners of the nut end, the mean of the two.

    Method: the fall at each of the two corners, from the radius there.
    Source: sagitta
    """
    corners = board_outline
    return (
        float(
            arch_surface.fall(corners.start_lower_x, corners.start_lower_y)
            + arch_surface.fall(corners.start_upper_x, corners.start_upper_y)
        )
        / 2
    )


def arch_fall_at_tail_end(arch_surface: Crown, board_outline: Quadrilateral) -> Mm:
    """The surface's fall at the corners of the tail end, the mean of the two.

    Method: the fall at each of the two corners, from the radius there.
    Source: sagitta
    """
    corners = board_outline
    return (
        float(
            arch_surface.fall(corners.end_lower_x, corners.end_lower_y)
            + arch_surface.fall(corners.end_upper_x, corners.end_upper_y)
        )
        / 2
    )


def arch_fall_under_string(
    arch_surface: Crown, string_x: PerStringFret[Mm], string_y: PerStringFret[Mm]
) -> PerStringFret[Mm]:
    """How far the surface lies below the crest where each string crosses each fret.

    Source: sagitta
    """
    return arch_surface.fall(string_x, string_y)


def arch_over_chord(arch_fall_under_string: PerStringFret[Mm], string_x: PerStringFret[Mm]) -> PerStringFret[Mm]:
    """How far the board under each string stands above the straight line from its zero line to its last fret.

    Formula: arch_fall_under_string[:, :1] + (arch_fall_under_string[:, -1:] - arch_fall_under_string[:, :1])
        * (string_x - string_x[:, :1]) / (string_x[:, -1:] - string_x[:, :1]) - arch_fall_under_string
    Source: common practice.
    """
    first, last = arch_fall_under_string[:, :1], arch_fall_under_string[:, -1:]
    along = (string_x - string_x[:, :1]) / (string_x[:, -1:] - string_x[:, :1])
    return first + (last - first) * along - arch_fall_under_string


def arch_hump(arch_over_chord: PerStringFret[Mm]) -> PerString[Mm]:
    """The most that the board stands up under each string's straight path: it competes with the relief.

    Formula: max(arch_over_chord, axis=1)
    Source: common practice.
    """
    return arch_over_chord.max(axis=1)
