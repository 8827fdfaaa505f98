"""The top's thickness from the middle to its edge: even, or thinner (or thicker) at the rim, and what it weighs.

Given an edge of its own, the top is as thick as in its middle up to a stated distance from its outline, and from there
falls straight to its edge, all round. Of an even top the edge's figures are not known, and not listed.
"""

import math

import numpy as np

from gramil.description.wood.timbers import TimberKnown
from gramil.parts.opening_records import Opening
from gramil.quantities import Gram, Mm, Ratio
from gramil.shapes.outline import Outline

OWNS = ("graduated_",)


def graduated_edge(top_edge_thickness: Mm, top_thickness: Mm) -> Mm:
    """The top's thickness at its rim; that of its middle where no other is given.

    Formula: where(isnan(top_edge_thickness), top_thickness, top_edge_thickness)
    Source: common practice.
    """
    return top_thickness if math.isnan(top_edge_thickness) else top_edge_thickness


def graduated_run(top_edge_thickness: Mm, top_edge_run: Mm) -> Mm:
    """How far in from its outline the top is worked thinner to its rim; not known for an even one.

    Formula: where(isnan(top_edge_thickness), nan, top_edge_run)
    Source: common practice.
    """
    return math.nan if math.isnan(top_edge_thickness) else top_edge_run


def graduated_band(graduated_run: Mm, body_outlines: tuple[Outline, ...]) -> Ratio:
    """How much the rim's thickness counts in the mean over the whole top; not known for an even one.

    Method: strips along the outline, each as long as that of its distance in, weighed by how far it is thinned; a
    strip moved in by d is shorter by its turning, 2 pi d. A run that would reach the middle is taken to end there.
    Source: steiner_inset
    """
    for outline in body_outlines:
        run = min(graduated_run, outline.perimeter / (2 * math.pi))
        return (outline.perimeter * run / 2 - math.pi * run**2 / 3) / outline.area
    return math.nan


def graduated_mean(top_thickness: Mm, graduated_edge: Mm, graduated_band: Ratio) -> Mm:
    """The top's mean thickness over its whole outline; an even one's thickness.

    Formula: where(isnan(graduated_band), top_thickness,
        top_thickness - (top_thickness - graduated_edge) * graduated_band)
    Source: common practice.
    """
    if math.isnan(graduated_band):
        return top_thickness
    return top_thickness - (top_thickness - graduated_edge) * graduated_band


def graduated_weight(
    timber_top: TimberKnown,
    graduated_mean: Mm,
    top_thickness: Mm,
    body_outlines: tuple[Outline, ...],
    opening_list: tuple[Opening, ...],
) -> Gram:
    """What the top weighs without its braces, trimmed to the outline, its holes cut; not known without a body.

    Method: its area by its mean thickness, less the holes that there are, by its wood's density.
    Source: common practice.
    """
    hole = sum(each.area for each in opening_list) * top_thickness
    for outline in body_outlines:
        return float(np.float64(outline.area * graduated_mean - hole) * timber_top.timber.density * 1e-6)
    return math.nan
