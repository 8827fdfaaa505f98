"""What the top's dome becomes through its owner's year: in dry air the top shrinks on its braces and the dome sinks.

One strip across the grain, as wide as the braces are apart, bends with its brace. It is the elastic answer: creep and
the frame around take some of it back, so this is the most that the dome can change. It is told as a straightedge and a
feeler gauge find it: the rise across the top, a hollow negative.
"""

import math

from gramil.description.air_values import PerPercent
from gramil.parts.body_records import Brace
from gramil.quantities import Mm, Mm2, MPa, Percent, PerMm, Ratio
from gramil.shapes.arc import sagitta
from gramil.wood.restraint import StripLayer, strip_curvature

OWNS = ("dome_",)
ACROSS = math.radians(45)
"""A brace that runs at this angle to the centreline, or more, holds the top across its grain."""
USUAL_WIDTH = 380.0
"""Of a lower bout, in mm: common practice."""


def _main(braces: tuple[Brace, ...]) -> tuple[Brace, ...]:
    """The braces of the top that run across its grain more than along it."""
    return tuple(each for each in braces if each.plate == "top" and each.angle >= ACROSS)


def dome_brace_width(brace_list: tuple[Brace, ...], top_brace_width: Mm) -> Mm:
    """Width of the brace in the strip: the mean of the described braces that run across, else as given for the top.

    Method: the mean of the top's braces at 45 degrees to the centreline or more.
    Source: common practice.
    """
    main = _main(brace_list)
    return sum(each.width for each in main) / len(main) if main else top_brace_width


def dome_brace_height(brace_list: tuple[Brace, ...], top_brace_height: Mm) -> Mm:
    """Height of the brace in the strip: the mean of the described braces that run across, else as given for the top.

    Method: the mean full height of the top's braces at 45 degrees to the centreline or more, their ends not counted.
    Source: common practice.
    """
    main = _main(brace_list)
    return sum(each.height for each in main) / len(main) if main else top_brace_height


def dome_brace_spacing(brace_list: tuple[Brace, ...], body_area: Mm2, top_brace_spacing: Mm) -> Mm:
    """How wide a strip of the top each brace holds: from the described braces that run across, else as given.

    Method: the top's area over the length of its braces at 45 degrees to the centreline or more.
    Source: common practice.
    """
    length = sum(each.length for each in _main(brace_list))
    return body_area / length if length else top_brace_spacing


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
    """1/R of the top's dome in the driest air of its owner's year: 0 is flat, negative is sunk below flat.

    Source: timoshenko_1925
    """
    return 1 / top_radius + dome_curl * top_movement_radial * (swell_moisture_dry - swell_moisture_made)


def dome_curvature_dry_least(dome_curvature_dry: PerMm, top_radius: Mm, limit_dome_change_kept_least: Ratio) -> PerMm:
    """1/R of the dome in that air if creep takes out as much of the change as is likely: the least that it sinks.

    Source: timoshenko_1925
    """
    return 1 / top_radius + limit_dome_change_kept_least * (dome_curvature_dry - 1 / top_radius)


def dome_curvature_wet(
    top_radius: Mm,
    dome_curl: PerMm,
    top_movement_radial: PerPercent,
    swell_moisture_wet: Percent,
    swell_moisture_made: Percent,
) -> PerMm:
    """1/R of the top's dome in the dampest air of its owner's year.

    Source: timoshenko_1925
    """
    return 1 / top_radius + dome_curl * top_movement_radial * (swell_moisture_wet - swell_moisture_made)


def dome_across(body_width: Mm) -> Mm:
    """How far across the top its dome is told: the body's greatest width; 380 mm where no body is described.

    Method: the body's own width where there is one.
    Source: common practice.
    """
    return USUAL_WIDTH if math.isnan(body_width) else body_width


def dome_rise_dry(dome_curvature_dry: PerMm, dome_across: Mm) -> Mm:
    """Rise of the top's dome under a straightedge across it in the driest air: negative is a hollow.

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
    """Rise of the top's dome under a straightedge across it in the dampest air.

    Method: R - sqrt(R^2 - (across / 2)^2), R one over the curvature.
    Source: plane geometry.
    """
    return float(sagitta(dome_curvature_wet, dome_across / 2))
