"""How much of the board's stiffness a slot leaves, for either bottom: of the board alone, and of board with neck.

Each second moment of area is about its own section's centroid. The board is taken as its core at the fret's crossing
of the centreline, the neck below it as it is carved.
"""

import numpy as np

from gramil.quantities import Mm, MPa, PerFret, Ratio
from gramil.shapes.arc import sagitta
from gramil.shapes.crown import Crown
from gramil.shapes.strip_section import Moments, across, hanging, standing
from gramil.shapes.tapered_bar import TaperedBar

OWNS = ("section_",)


def section_board(
    arch_surface: Crown, fret_position: PerFret[Mm], core_width_at_fret: PerFret[Mm], thickness_at_crest: PerFret[Mm]
) -> Moments:
    """The board's section at each fret as if it had no slot.

    Method: the height over the underside, crest thickness less the arch's fall, integrated across the core.
    Source: common practice.
    """
    half = core_width_at_fret / 2
    return standing(half, thickness_at_crest[:, None] - _falls(arch_surface, fret_position, half))


def section_slotted_straight(
    core_width_at_fret: PerFret[Mm], thickness_at_crest: PerFret[Mm], slot_need: Mm, slot_fall_greatest: Mm
) -> Moments:
    """The board's section at each slot with a straight bottom: what is left is a rectangle.

    Method: height = crest thickness - (need + greatest fall), from edge to edge of the core.
    Source: common practice.
    """
    half = core_width_at_fret / 2
    left = thickness_at_crest - slot_need - slot_fall_greatest
    return standing(half, np.broadcast_to(left[:, None], across(half).shape))


def section_slotted_following(
    arch_surface: Crown,
    fret_position: PerFret[Mm],
    core_width_at_fret: PerFret[Mm],
    thickness_at_crest: PerFret[Mm],
    slot_need: Mm,
) -> Moments:
    """The board's section at each slot whose bottom follows the arch.

    Method: height = crest thickness - need - the arch's fall, integrated across the core.
    Source: common practice.
    """
    half = core_width_at_fret / 2
    return standing(half, (thickness_at_crest - slot_need)[:, None] - _falls(arch_surface, fret_position, half))


def _falls(surface: Crown, x: PerFret[Mm], half: PerFret[Mm]) -> PerFret[Mm]:
    return sagitta(surface.curvature(x)[:, None], across(half))


def section_neck_depth(
    neck_depth_first: Mm, neck_depth_tenth: Mm, fret_position: PerFret[Mm], thickness_at_crest: PerFret[Mm]
) -> PerFret[Mm]:
    """Depth of the neck's wood below the board at each fret, straight between frets 1 and 10 and level outside them.

    Formula: interp(fret_position, fret_position[[1, minimum(10, len(fret_position) - 1)]],
        array([neck_depth_first, neck_depth_tenth])) - thickness_at_crest
    Source: common practice.
    """
    ends = fret_position[[1, min(10, len(fret_position) - 1)]]
    return np.interp(fret_position, ends, np.array([neck_depth_first, neck_depth_tenth])) - thickness_at_crest


def section_neck(carve_form: TaperedBar) -> Moments:
    """The neck's section below the board at each fret, as it is carved.

    Method: depth, its square and its cube integrated across the profile; pi a b / 2, 2 a b^2 / 3, pi a b^3 / 8 where
        it is a half ellipse.
    Source: superellipse, a formula of plane geometry.
    """
    return hanging(carve_form.profiles)


def section_kept_straight(section_slotted_straight: Moments, section_board: Moments) -> PerFret[Ratio]:
    """The part of the board's own stiffness that a slot with a straight bottom keeps.

    Source: gere_goodno
    """
    return section_slotted_straight.about_centroid / section_board.about_centroid


def section_kept_following(section_slotted_following: Moments, section_board: Moments) -> PerFret[Ratio]:
    """The part of the board's own stiffness that a slot following the arch keeps.

    Source: gere_goodno
    """
    return section_slotted_following.about_centroid / section_board.about_centroid


def section_kept_straight_with_neck(
    section_slotted_straight: Moments,
    section_board: Moments,
    section_neck: Moments,
    board_modulus: MPa,
    neck_modulus: MPa,
) -> PerFret[Ratio]:
    """The part of the stiffness of board and neck together that a slot with a straight bottom keeps.

    Method: both sections weighted by their moduli, each sum about its own centroid.
    Source: gere_goodno
    """
    return _kept(section_slotted_straight, section_board, section_neck, board_modulus, neck_modulus)


def section_kept_following_with_neck(
    section_slotted_following: Moments,
    section_board: Moments,
    section_neck: Moments,
    board_modulus: MPa,
    neck_modulus: MPa,
) -> PerFret[Ratio]:
    """The part of the stiffness of board and neck together that a slot following the arch keeps.

    Method: both sections weighted by their moduli, each sum about its own centroid.
    Source: gere_goodno
    """
    return _kept(section_slotted_following, section_board, section_neck, board_modulus, neck_modulus)


def _kept(slotted: Moments, whole: Moments, neck: Moments, board_modulus: float, neck_modulus: float) -> PerFret[Ratio]:
    below = neck.times(neck_modulus)
    return (
        slotted.times(board_modulus).plus(below).about_centroid / whole.times(board_modulus).plus(below).about_centroid
    )
