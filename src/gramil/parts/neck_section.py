"""How stiff the neck is at each fret: its wood, the board with its slots, bars and the truss rod's channel.

Every section is weighted by its materials' moduli and taken about its own neutral axis; heights are over the joint of
board and neck. Bars and rod lie directly under the board. The rod itself adds nothing: it is not glued in.
"""

import numpy as np

from gramil.physics.arrays import floats
from gramil.quantities import Count, Mm, MPa, NewtonMm2, PerFret, Ratio
from gramil.shapes.strip_section import Moments

OWNS = ("neck_section_",)


def neck_section_board_slotted(
    slots_bottom: str, section_slotted_straight: Moments, section_slotted_following: Moments
) -> Moments:
    """The board's section at each slot, as the slots are cut.

    Formula: section_slotted_straight if slots_bottom == "straight" else section_slotted_following
    Source: common practice.
    """
    return section_slotted_straight if slots_bottom == "straight" else section_slotted_following


def neck_section_bars(
    neck_bars: Count, neck_bar_width: Mm, neck_bar_depth: Mm, neck_bar_modulus: MPa, neck_modulus: MPa
) -> Moments:
    """What the bars add to the neck, weighted: their stiffness over that of the wood they take the place of.

    Method: rectangles hanging from the joint, each by the difference of the moduli.
    Source: gere_goodno
    """
    return _hanging(neck_bars * neck_bar_width, neck_bar_depth).times(neck_bar_modulus - neck_modulus)


def neck_section_bars_alone(neck_bars: Count, neck_bar_width: Mm, neck_bar_depth: Mm, neck_bar_modulus: MPa) -> Moments:
    """The bars by themselves, weighted: what does not differ from tree to tree.

    Method: rectangles hanging from the joint, times their modulus.
    Source: gere_goodno
    """
    return _hanging(neck_bars * neck_bar_width, neck_bar_depth).times(neck_bar_modulus)


def neck_section_channel(neck_rod: str, neck_rod_width: Mm, neck_rod_depth: Mm, neck_modulus: MPa) -> Moments:
    """What the truss rod's channel takes from the neck, weighted: a rectangle hanging from the joint, negative.

    Method: width x depth, none without a rod.
    Source: gere_goodno
    """
    return _hanging(neck_rod_width * (neck_rod != "none"), neck_rod_depth).times(-neck_modulus)


def _hanging(width: float, depth: float) -> Moments:
    """Moments about its top of a rectangle that hangs below the base."""
    area, first, second = width * depth, -width * depth**2 / 2, width * depth**3 / 3
    return Moments(floats(area), floats(first), floats(second))


def neck_section_below(
    section_neck: Moments, neck_modulus: MPa, neck_section_bars: Moments, neck_section_channel: Moments
) -> Moments:
    """Everything under the board at each fret, weighted by moduli, about the joint.

    Method: the neck's wood, the bars in place of wood, the channel taken out.
    Source: gere_goodno
    """
    return section_neck.times(neck_modulus).plus(neck_section_bars).plus(neck_section_channel)


def neck_section_whole(section_board: Moments, board_modulus: MPa, neck_section_below: Moments) -> Moments:
    """Neck and board at each fret as if there were no slots, weighted by moduli, about the joint.

    Method: both sections, each times its modulus.
    Source: gere_goodno
    """
    return section_board.times(board_modulus).plus(neck_section_below)


def neck_section_slotted(
    neck_section_board_slotted: Moments, board_modulus: MPa, neck_section_below: Moments
) -> Moments:
    """Neck and board at each slot, weighted by moduli, about the joint.

    Method: both sections, each times its modulus.
    Source: gere_goodno
    """
    return neck_section_board_slotted.times(board_modulus).plus(neck_section_below)


def neck_section_stiffness(neck_section_whole: Moments) -> PerFret[NewtonMm2]:
    """Bending stiffness EI of neck and board at each fret as if there were no slots: the most it can be.

    Source: gere_goodno
    """
    return neck_section_whole.about_centroid


def neck_section_stiffness_slotted(neck_section_slotted: Moments) -> PerFret[NewtonMm2]:
    """Bending stiffness EI of neck and board at each slot, as if it were slotted all along: the least it can be.

    Source: gere_goodno
    """
    return neck_section_slotted.about_centroid


def neck_section_stiffness_most(
    neck_section_whole: Moments, neck_section_bars_alone: Moments, limit_modulus_most: Ratio
) -> PerFret[NewtonMm2]:
    """Bending stiffness EI at each fret with woods at their stiffest and no slots; bars are as they are.

    Method: the whole times the woods' share, the bars put back to what they are.
    Source: gere_goodno
    """
    return _with_woods(neck_section_whole, neck_section_bars_alone, limit_modulus_most)


def neck_section_stiffness_least(
    neck_section_slotted: Moments, neck_section_bars_alone: Moments, limit_modulus_least: Ratio
) -> PerFret[NewtonMm2]:
    """Bending stiffness EI at each fret with woods at their softest, slotted all along; bars are as they are.

    Method: the whole times the woods' share, the bars put back to what they are.
    Source: gere_goodno
    """
    return _with_woods(neck_section_slotted, neck_section_bars_alone, limit_modulus_least)


def _with_woods(section: Moments, bars: Moments, share: float) -> PerFret[NewtonMm2]:
    """EI with the woods' moduli times a share, about its own neutral axis."""
    return section.times(share).plus(bars.times(1 - share)).about_centroid


def neck_section_slots_keep(
    neck_section_stiffness_slotted: PerFret[NewtonMm2], neck_section_stiffness: PerFret[NewtonMm2]
) -> PerFret[Ratio]:
    """The part of the neck's stiffness that the slots leave.

    Source: gere_goodno
    """
    return neck_section_stiffness_slotted / neck_section_stiffness


def neck_section_axis(neck_section_whole: Moments) -> PerFret[Mm]:
    """The neutral axis over the joint of board and neck; negative is in the neck.

    Source: gere_goodno
    """
    return neck_section_whole.first / neck_section_whole.area


def neck_section_channel_depth(neck_rod: str, neck_rod_depth: Mm, neck_bars: Count, neck_bar_depth: Mm) -> Mm:
    """How deep the deepest channel goes under the board: the rod's or the bars'; 0 for neither.

    Formula: maximum(neck_rod_depth * (neck_rod != "none"), neck_bar_depth * (neck_bars > 0))
    Source: common practice.
    """
    return max(neck_rod_depth * (neck_rod != "none"), neck_bar_depth * (neck_bars > 0))


def neck_section_under_channel(section_neck_depth: PerFret[Mm], neck_section_channel_depth: Mm) -> PerFret[Mm]:
    """Wood left under the deepest channel on the centreline at each fret; not known without a channel.

    Formula: section_neck_depth - neck_section_channel_depth if neck_section_channel_depth > 0
        else section_neck_depth * nan
    Source: common practice.
    """
    if neck_section_channel_depth == 0:
        return section_neck_depth * np.nan
    return section_neck_depth - neck_section_channel_depth
