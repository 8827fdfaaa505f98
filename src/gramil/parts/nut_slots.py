"""How deep, how wide and where the nut's slots are cut, and how tall the nut is.

Across the board they lie at `string_y_nut`, spaced by gaps or by centres as the maker chose.
"""

import numpy as np

from gramil.quantities import Mm, PerFret, PerString, PerStringFret, Ratio

OWNS = ("nut_slot_",)


def nut_slot_over_board(
    crown_height: Mm,
    height_over_crown: PerStringFret[Mm],
    height_slope: PerString[Ratio],
    nut_set_forward: Mm,
    scale_zero_fret: bool,
    limit_zero_fret_drop: Mm,
) -> PerString[Mm]:
    """Bottom of each slot over the board under its string, at the nut's face: the feelers to file down to.

    With a zero fret the slots lie below its crown, so that the strings bear on the fret.
    Formula: crown_height - limit_zero_fret_drop + 0 * height_slope if scale_zero_fret
        else crown_height + height_over_crown[:, 0] + height_slope * nut_set_forward
    Source: common practice.
    """
    if scale_zero_fret:
        return crown_height - limit_zero_fret_drop + 0 * height_slope
    return crown_height + height_over_crown[:, 0] + height_slope * nut_set_forward


def nut_slot_over_crest(
    nut_slot_over_board: PerString[Mm],
    arch_fall_under_string: PerStringFret[Mm],
    lean_under_string: PerStringFret[Mm],
) -> PerString[Mm]:
    """Bottom of each slot over the crest of the board at the nut: the row follows the arch.

    Formula: nut_slot_over_board - arch_fall_under_string[:, 0] + lean_under_string[:, 0]
    Source: common practice.
    """
    return nut_slot_over_board - arch_fall_under_string[:, 0] + lean_under_string[:, 0]


def nut_slot_over_first(height_over_crown: PerStringFret[Mm]) -> PerString[Mm]:
    """Each open string over the crown of fret 1: what a shop measures with feelers, strung.

    Formula: height_over_crown[:, 1]
    Source: common practice.
    """
    return height_over_crown[:, 1]


def nut_slot_depth(
    strings_gauges: PerString[Mm], strings_course: PerString[Ratio], limit_nut_slot_share: Ratio
) -> PerString[Mm]:
    """Depth of each slot under the nut's top: so much of the string lies in it; of a pair, so much of the thicker.

    The nut's top is one line over a pair, whose strings stand too near for a step between them.
    Method: a share of the thickest string of each course.
    Source: common practice.
    """
    thickest = [strings_gauges[strings_course == course].max() for course in strings_course]
    return np.array(thickest) * limit_nut_slot_share


def nut_slot_width(strings_gauges: PerString[Mm], limit_nut_slot_room: Mm) -> PerString[Mm]:
    """Width of each slot: the string, and room to slide when it is tuned.

    Source: common practice.
    """
    return strings_gauges + limit_nut_slot_room


def nut_slot_top(nut_slot_over_crest: PerString[Mm], nut_slot_depth: PerString[Mm]) -> PerString[Mm]:
    """The nut's top at each string over the crest of the board.

    Source: common practice.
    """
    return nut_slot_over_crest + nut_slot_depth


def nut_slot_blank(nut_slot_top: PerString[Mm], thickness_at_crest: PerFret[Mm]) -> Mm:
    """Height of a nut that stands on the neck's face at the board's end, before its top is shaped.

    Formula: max(nut_slot_top) + thickness_at_crest[0]
    Source: common practice.
    """
    return float(nut_slot_top.max() + thickness_at_crest[0])
