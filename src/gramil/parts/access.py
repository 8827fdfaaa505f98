"""How far up the neck the hand gets: past the body's edge, or as far as a cutaway's hollow, and what lies beside the
board there.
"""

import math

import numpy as np

from gramil.parts.body_records import Bend
from gramil.quantities import Count, Mm, PerFret, Ratio
from gramil.shapes.outline import Outline

OWNS = ("access_",)

STEPS = 60
"""Places along the board's edge that are looked at."""


def access_depth(body_outlines: tuple[Outline, ...], bend_treble: tuple[Bend, ...]) -> Mm:
    """How deep the cutaway is: along, from the body's edge at the neck to its hollow's deepest place.

    Method: where the line on the treble side first turns back toward the neck; where it does not turn back, its
    hollow's tightest place.
    Source: common practice.
    """
    hollow = next((each.x for each in bend_treble if each.name == "hollow"), math.nan)
    if math.isnan(hollow):
        return math.nan
    (half,) = (each.half for each in body_outlines)
    out, *back = half.spans(0)
    turned = float(half.place(np.asarray(out.end))[0])
    return turned if back and turned < hollow + STEPS else hollow


def access_fret(edge_x_treble: PerFret[Mm], body_edge: Mm, access_depth: Mm) -> Count:
    """The highest fret that the hand reaches beside the body: ahead of its edge, or of the cutaway's deepest place.

    Method: frets at the board's treble edge, counted as far as there.
    Source: common practice.
    """
    clear = body_edge + (0.0 if math.isnan(access_depth) else access_depth)
    return int((edge_x_treble[1:] <= clear).sum())


def access_beside_board(
    body_outlines: tuple[Outline, ...],
    access_depth: Mm,
    body_edge: Mm,
    nut_width: Mm,
    board_growth: Ratio,
    board_tail_position: Mm,
) -> Mm:
    """Top that shows between the board's treble edge and a cutaway, at the narrowest place; negative where the board
    hangs over.

    Method: from the board's edge to the innermost line of the treble side, square to the centreline, from 2 mm
    past the body's edge to the hollow's deepest place, or to the board's end.
    Source: plane geometry.
    """
    if math.isnan(access_depth):
        return math.nan
    (outline,) = body_outlines
    along = np.linspace(2.0, min(access_depth, board_tail_position - body_edge), STEPS)
    inner = np.nanmin(_heights(outline, along), axis=0)
    return float((inner - (nut_width + board_growth * (body_edge + along)) / 2).min())


def _heights(outline: Outline, along: np.ndarray) -> np.ndarray:
    """Heights of the treble side's line at places along it, past the neck's end, which rises at once."""
    heights = outline.treble_half.heights(along)
    return np.where(heights > 1.0, heights, np.nan)
