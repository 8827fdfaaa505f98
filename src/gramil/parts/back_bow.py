"""Frets push the neck: every pressed tang is a wedge, and the row of them bows the neck back.

An estimate with a range, never a single figure: the share of the wedging that the wood keeps is not known.
"""

import math

import numpy as np

from gramil.description.records import Saw
from gramil.parts.records import WireFit
from gramil.physics.layered_beam import Layers, free_strain_curvature, sagitta
from gramil.quantities import Count, Mm, MPa, PerFret, PerMm, PerMm2, Ratio
from gramil.shapes.strip_section import Moments

OWNS = ("back_bow_",)


def back_bow_length(scale_join: Ratio, fret_position: PerFret[Mm]) -> Mm:
    """The neck's free length that the frets bow: zero line to the fret at the body.

    Formula: interp(scale_join, arange(len(fret_position)), fret_position)
    Source: common practice.
    """
    return float(np.interp(scale_join, np.arange(len(fret_position)), fret_position))


def back_bow_frets(scale_join: Ratio, slot_first: Count) -> Ratio:
    """How many frets are pressed along that length.

    Formula: floor(scale_join) + 1 - slot_first
    Source: common practice.
    """
    return scale_join // 1 + 1 - slot_first


def back_bow_span(scale_join: Ratio, fret_position: PerFret[Mm]) -> Mm:
    """The straightedge's span when relief is measured: fret 1 to the fret at the body.

    Formula: interp(scale_join, arange(len(fret_position)), fret_position) - fret_position[1]
    Source: common practice.
    """
    return float(np.interp(scale_join, np.arange(len(fret_position)), fret_position) - fret_position[1])


def back_bow_layers(
    board_width_at_fret: PerFret[Mm],
    thickness_at_crest: PerFret[Mm],
    wire_tang_depth: Mm,
    section_neck: Moments,
    board_modulus: MPa,
    neck_modulus: MPa,
) -> Layers:
    """Neck, the board below the tangs, and the layer as deep as the tangs, at each fret; heights over the neck joint.

    Method: the board's two layers are rectangles as wide as the board, the neck as carved below them.
    Source: timoshenko_1925
    """
    below = thickness_at_crest - wire_tang_depth
    neck_centroid = section_neck.first / section_neck.area
    tang = np.full_like(below, wire_tang_depth)
    area = np.stack([section_neck.area, board_width_at_fret * below, board_width_at_fret * tang], axis=-1)
    centroid = np.stack([neck_centroid, below / 2, below + tang / 2], axis=-1)
    own = np.stack(
        [section_neck.about_centroid, board_width_at_fret * below**3 / 12, board_width_at_fret * tang**3 / 12], axis=-1
    )
    modulus = np.broadcast_to([neck_modulus, board_modulus, board_modulus], area.shape)
    return Layers(modulus, area, centroid, own)


def back_bow_curvature(back_bow_layers: Layers, scale_join: Ratio) -> PerMm:
    """Curvature of the neck half way to the body for each unit of strain in the tangs' layer.

    Method: equilibrium of a layered beam whose top layer wants to be longer by the strain, its sign turned.
    Source: timoshenko_1925
    """
    if math.isnan(scale_join):
        return math.nan
    per_fret = free_strain_curvature(back_bow_layers, np.array([0.0, 0.0, 1.0]))
    return float(abs(per_fret[int(scale_join) // 2]))


def back_bow_least(
    wire_fits: tuple[WireFit, ...],
    saw_main: Saw,
    back_bow_row: PerMm2,
    back_bow_span: Mm,
    limit_wedge_kept_least: Ratio,
) -> Mm:
    """Back-bow at the middle of the straightedge's span, if the wood keeps least of the wedging.

    Method: strain = kept share x frets x wedge / length; curvature by the layered beam; bow = its sagitta.
    Source: timoshenko_1925
    """
    wedge = _wedges(wire_fits, saw_main)[0]
    return float(sagitta(limit_wedge_kept_least * wedge * back_bow_row, back_bow_span))


def back_bow_most(
    wire_fits: tuple[WireFit, ...],
    saw_main: Saw,
    back_bow_row: PerMm2,
    back_bow_span: Mm,
    limit_wedge_kept_most: Ratio,
) -> Mm:
    """Back-bow at the middle of the straightedge's span, if the wood keeps most of the wedging and the beads add to it.

    Method: strain = kept share x frets x wedge / length; curvature by the layered beam; bow = its sagitta.
    Source: timoshenko_1925
    """
    wedge = _wedges(wire_fits, saw_main)[1]
    return float(sagitta(limit_wedge_kept_most * wedge * back_bow_row, back_bow_span))


def back_bow_row(back_bow_frets: Ratio, back_bow_length: Mm, back_bow_curvature: PerMm) -> PerMm2:
    """Curvature (1/mm) that the whole row of frets gives the neck for each mm of wedge in every slot.

    Source: timoshenko_1925
    """
    return back_bow_frets / back_bow_length * back_bow_curvature


def _wedges(fits: tuple[WireFit, ...], saw: Saw) -> tuple[float, float]:
    fit = next((each for each in fits if each.name == saw.name), None)
    return (fit.wedge_least, fit.wedge_most) if fit else (math.nan, math.nan)
