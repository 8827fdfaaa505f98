"""The arch as a hand checks it: radius and fall at nut end, middle and tail end, for blocks and gauge cards."""

import numpy as np

from gramil.quantities import Count, Mm, PerFret
from gramil.shapes.crown import Crown

OWNS = ("arching_",)


def arching_radius_nut(arch_surface: Crown) -> Mm:
    """Radius of the arch at the zero line; a flat board's is without end.

    Formula: 1 / arch_surface.curvature(0)
    Source: common practice.
    """
    return _radius(arch_surface, 0.0)


def arching_radius_middle(arch_radius_at_fret: PerFret[Mm], station_middle_fret: Count) -> Mm:
    """Radius of the arch at the fret half way along.

    Source: common practice.
    """
    return arch_radius_at_fret[station_middle_fret]


def arching_radius_end(arch_surface: Crown, board_tail_position: Mm) -> Mm:
    """Radius of the arch at the tail end; a flat board's is without end.

    Formula: 1 / arch_surface.curvature(board_tail_position)
    Source: common practice.
    """
    return _radius(arch_surface, board_tail_position)


def arching_fall_middle(
    arch_fall_at_edge_treble: PerFret[Mm], arch_fall_at_edge_bass: PerFret[Mm], station_middle_fret: Count
) -> Mm:
    """How far the surface has fallen at the finished edge at the fret half way along, the mean of both edges.

    Source: sagitta
    """
    return (arch_fall_at_edge_treble[station_middle_fret] + arch_fall_at_edge_bass[station_middle_fret]) / 2


def _radius(surface: Crown, x: float) -> float:
    with np.errstate(divide="ignore"):
        return float(1 / surface.curvature(x))


def arching_edge_middle(thickness_before_levelling: Mm, arching_fall_middle: Mm) -> Mm:
    """Thickness of the edge at the fret half way along, once arched and before any levelling of the underside.

    Source: common practice.
    """
    return thickness_before_levelling - arching_fall_middle
