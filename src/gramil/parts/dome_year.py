"""What the top's dome becomes through its owner's year: in dry air the top shrinks on its braces and the dome sinks.

One strip across the grain, as wide as the braces are apart, bends with its brace. A whole plate bends 0.65 to 1.25
times as much, worked out for plates free all round. Creep and the frame around take some of it back: so there is a
most, an upper bound, and a least, by what creep is likely to leave. Where no braces across the grain hold the top near
its widest part, the rule does not stand, and nothing is told. The dome is told as a straightedge and a feeler gauge
find it: the rise across the top, a hollow negative.
"""

import math

from gramil.description.wood.air_values import PerPercent
from gramil.parts.body_records import Holder
from gramil.quantities import Mm, Mm2, MPa, Percent, PerMm, Ratio
from gramil.shapes.arc import sagitta
from gramil.wood.restraint import STRIP, StripLayer, strip_curvature

OWNS = ("dome_",)
USUAL_WIDTH = 380.0
"""Of a lower bout, in mm: common practice."""


def dome_brace_width(across_holders: tuple[Holder, ...], across_unheld: str, top_brace_width: Mm) -> Mm:
    """Width of the brace in the strip: the mean of the described braces that hold it, else as given for the top.

    Method: the mean by length and by how much of each counts.
    Source: common practice.
    """
    if across_unheld or not across_holders:
        return math.nan if across_unheld else top_brace_width
    return sum(each.counts for each in across_holders) / sum(each.share * each.length for each in across_holders)


def dome_brace_height(across_height: Mm, across_unheld: str, top_brace_height: Mm) -> Mm:
    """Height of the brace in the strip: that of the described braces that hold it, else as given for the top.

    Method: their cubic mean.
    Source: a beam's second moment.
    """
    if across_unheld:
        return math.nan
    return top_brace_height if math.isnan(across_height) else across_height


def dome_brace_spacing(
    across_holders: tuple[Holder, ...], across_unheld: str, across_area: Mm2, top_brace_spacing: Mm
) -> Mm:
    """How wide a strip of the top each brace holds: from the described braces that hold it, else as given.

    Method: the strip's area over the length of its braces, each by how much of it counts.
    Source: common practice.
    """
    if across_unheld or not across_holders:
        return math.nan if across_unheld else top_brace_spacing
    return across_area / sum(each.share * each.length for each in across_holders)


def dome_curl(
    dome_brace_width: Mm,
    dome_brace_height: Mm,
    dome_brace_spacing: Mm,
    top_thickness: Mm,
    top_modulus_across: MPa,
    top_brace_modulus: MPa,
) -> PerMm:
    """Curvature that the dome gains when the top wants to be longer by its own length: 1/mm for each unit of strain.

    Method: a glued strip of two layers, the brace below and the top above; only the top wants another length.
    Source: timoshenko_1925
    """
    brace = StripLayer(dome_brace_width, dome_brace_height, top_brace_modulus, 0.0)
    return -strip_curvature([brace, StripLayer(dome_brace_spacing, top_thickness, top_modulus_across, 1.0)])


def dome_curvature_dry(
    top_radius: Mm,
    dome_curl: PerMm,
    top_movement_radial: PerPercent,
    swell_moisture_dry: Percent,
    swell_moisture_made: Percent,
) -> PerMm:
    """1/R of the top's dome in the driest air of its owner's year, at most sunk: 0 is flat, negative is below flat.

    Method: the change of the strip, and a quarter more, as whole plates solved may change by.
    Source: timoshenko_1925
    """
    return 1 / top_radius + STRIP[1] * dome_curl * top_movement_radial * (swell_moisture_dry - swell_moisture_made)


def dome_curvature_dry_least(dome_curvature_dry: PerMm, top_radius: Mm, limit_dome_change_kept_least: Ratio) -> PerMm:
    """1/R of the dome in the driest air if creep takes out as much of the change as is likely: the least it sinks.

    Method: 0.65 of the strip's change, the least of whole plates solved, and of that what creep leaves.
    Source: timoshenko_1925
    """
    return _least(dome_curvature_dry, top_radius, limit_dome_change_kept_least)


def _least(most: float, radius: float, kept: float) -> float:
    """The least of a changed curvature from the most of it."""
    return 1 / radius + kept * STRIP[0] / STRIP[1] * (most - 1 / radius)


def dome_curvature_wet(
    top_radius: Mm,
    dome_curl: PerMm,
    top_movement_radial: PerPercent,
    swell_moisture_wet: Percent,
    swell_moisture_made: Percent,
) -> PerMm:
    """1/R of the top's dome in the dampest air of its owner's year, at most risen.

    Method: the change of the strip, and a quarter more, as whole plates solved may change by.
    Source: timoshenko_1925
    """
    return 1 / top_radius + STRIP[1] * dome_curl * top_movement_radial * (swell_moisture_wet - swell_moisture_made)


def dome_curvature_wet_least(dome_curvature_wet: PerMm, top_radius: Mm, limit_dome_change_kept_least: Ratio) -> PerMm:
    """1/R of the dome in the dampest air if creep takes out as much of the change as is likely: the least it rises.

    Method: 0.65 of the strip's change, the least of whole plates solved, and of that what creep leaves.
    Source: timoshenko_1925
    """
    return _least(dome_curvature_wet, top_radius, limit_dome_change_kept_least)


def dome_across(body_width: Mm) -> Mm:
    """How far across the top its dome is told: the body's greatest width; 380 mm where no body is described.

    Method: the body's own width where there is one.
    Source: common practice.
    """
    return USUAL_WIDTH if math.isnan(body_width) else body_width


def dome_rise_dry(dome_curvature_dry: PerMm, dome_across: Mm) -> Mm:
    """Rise of the top's dome under a straightedge across it in the driest air, at most sunk: negative is a hollow.

    Method: R - sqrt(R^2 - (across / 2)^2), R one over the curvature.
    Source: plane geometry.
    """
    return float(sagitta(dome_curvature_dry, dome_across / 2))


def dome_rise_made(top_radius: Mm, dome_across: Mm) -> Mm:
    """Rise of the top's dome under a straightedge across it in the air that it was glued for.

    Method: R - sqrt(R^2 - (across / 2)^2).
    Source: plane geometry.
    """
    return float(sagitta(1 / top_radius, dome_across / 2))


def dome_rise_wet(dome_curvature_wet: PerMm, dome_across: Mm) -> Mm:
    """Rise of the top's dome under a straightedge across it in the dampest air, at most risen.

    Method: R - sqrt(R^2 - (across / 2)^2), R one over the curvature.
    Source: plane geometry.
    """
    return float(sagitta(dome_curvature_wet, dome_across / 2))


def dome_rise_dry_least(dome_curvature_dry_least: PerMm, dome_across: Mm) -> Mm:
    """Rise of the top's dome under a straightedge across it in the driest air, at the least that it sinks.

    Method: R - sqrt(R^2 - (across / 2)^2), R one over the curvature.
    Source: plane geometry.
    """
    return float(sagitta(dome_curvature_dry_least, dome_across / 2))


def dome_rise_wet_least(dome_curvature_wet_least: PerMm, dome_across: Mm) -> Mm:
    """Rise of the top's dome under a straightedge across it in the dampest air, at the least that it rises.

    Method: R - sqrt(R^2 - (across / 2)^2), R one over the curvature.
    Source: plane geometry.
    """
    return float(sagitta(dome_curvature_wet_least, dome_across / 2))
