"""What the top's dome becomes through its owner's year: in dry air the top shrinks on its braces and the dome sinks.

One strip across the grain, as wide as the braces are apart, bends with its brace. It is the elastic answer: creep and
the frame around take some of it back, so this is the most that the dome can change. A negative radius is a hollow.
"""

import math

from gramil.description.air_values import PerPercent
from gramil.parts.body_records import Brace
from gramil.quantities import Mm, Mm2, MPa, Percent, PerMm, Ratio
from gramil.wood.restraint import StripLayer, strip_curvature

OWNS = ("dome_",)
ACROSS = math.radians(45)
"""A brace that runs at this angle to the centreline, or more, holds the top across its grain."""


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


def dome_radius_dry(dome_curvature_dry: PerMm) -> Mm:
    """Radius of the top's dome in the driest air: without end when flat, negative when sunk below flat.

    Method: one over the curvature.
    Source: timoshenko_1925
    """
    return _radius(dome_curvature_dry)


def dome_radius_made(top_radius: Mm) -> Mm:
    """Radius of the top's dome in the air that it was glued for: as made.

    Source: the maker's own choice.
    """
    return top_radius


def dome_radius_wet(dome_curvature_wet: PerMm) -> Mm:
    """Radius of the top's dome in the dampest air: without end when flat.

    Method: one over the curvature.
    Source: timoshenko_1925
    """
    return _radius(dome_curvature_wet)


def _radius(curvature: PerMm) -> Mm:
    return 1 / curvature if curvature else math.inf
