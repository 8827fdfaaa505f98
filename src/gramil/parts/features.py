"""What on the body follows what: each feature with the thing that it is held to, and where that thing lies.

When the scale, the join or the body changes, a feature moves by exactly as much as what it is held to.
"""

import math

from gramil.description.body.records import BraceAsked
from gramil.parts.body_records import Feature, PlateShape, Zeros
from gramil.quantities import Mm

OWNS = ("feature_",)


def feature_list(
    braces_asked: tuple[BraceAsked, ...],
    brace_zeros: Zeros,
    soundhole_centre: Mm,
    soundhole_held_to: str,
    plate_shapes: tuple[PlateShape, ...],
) -> tuple[Feature, ...]:
    """Braces, soundhole, bridge and bridge plate, each with what it is held to and where that lies along the body.

    Method: distances are from the body's edge at the neck; a part that is not described is not in the list.
    Source: the maker's own choice, feature by feature.
    """
    found = [Feature(each.name, each.held_to, brace_zeros.of(each.held_to)) for each in braces_asked]
    if not math.isnan(soundhole_centre):
        found.append(Feature("soundhole", soundhole_held_to, brace_zeros.of(soundhole_held_to)))
    found += [Feature(each.name, "saddle", brace_zeros.saddle) for each in plate_shapes]
    return (*found, Feature("bridge", "saddle", brace_zeros.saddle))
