"""Position markers on the face and dots on the bass edge, half way between two frets."""

import numpy as np

from gramil.quantities import Mm, PerFret, Ratio

OWNS = ("marker_",)


def marker_position(fret_position: PerFret[Mm]) -> PerFret[Mm]:
    """Half way between each fret and the one before it, on the centreline (row 0 is the zero line itself).

    Formula: (fret_position + concatenate([fret_position[:1], fret_position[:-1]])) / 2
    Source: common practice.
    """
    return (fret_position + np.concatenate([fret_position[:1], fret_position[:-1]])) / 2


def marker_slant(fret_slant: PerFret[Ratio]) -> PerFret[Ratio]:
    """How a row of two markers runs, half way between the slants of the frets on either side.

    Formula: (fret_slant + concatenate([fret_slant[:1], fret_slant[:-1]])) / 2
    Source: common practice.
    """
    return (fret_slant + np.concatenate([fret_slant[:1], fret_slant[:-1]])) / 2


def marker_offset(board_width_at_fret: PerFret[Mm]) -> PerFret[Mm]:
    """Centreline to each of two markers: a quarter of the board's width.

    Source: common practice.
    """
    return board_width_at_fret / 4


def marker_side_depth(thickness_at_edge_bass: PerFret[Mm], markers_side_diameter: Mm) -> PerFret[Mm]:
    """From the edge of the face down to a side dot's centre: half the edge, at least one dot's width of wood over it.

    Formula: maximum(thickness_at_edge_bass / 2, 1.5 * markers_side_diameter)
    Source: common practice.
    """
    return np.maximum(thickness_at_edge_bass / 2, 1.5 * markers_side_diameter)
