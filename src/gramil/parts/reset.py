"""A neck taken off and set anew: the wedge by old and new crowns, the tongue, and what the saddle shows after.

Before, a straightedge lay on the old crowns; after, the strings lie over the new ones. The angle as found comes from
the crowns that were there, the angle wanted from those that will be.
"""

import math

import numpy as np

from gramil.quantities import Mm, PerString, Radians
from gramil.shapes.turned import turned_to

OWNS = ("reset_",)


def reset_angle_found(
    found_straightedge: Mm,
    found_crown_at_saddle: Mm,
    neck_set_bridge_top: Mm,
    neck_set_board_at_join: Mm,
    neck_set_run_mean: Mm,
) -> Radians:
    """The angle of the neck as found, from where a straightedge on its old crowns passed over the bridge.

    Formula: arcsin((neck_set_bridge_top + found_straightedge - neck_set_board_at_join)
        / hypot(neck_set_run_mean, found_crown_at_saddle)) - arctan2(found_crown_at_saddle, neck_set_run_mean)
    Source: a right triangle from join to saddle.
    """
    rise = neck_set_bridge_top + found_straightedge - neck_set_board_at_join
    return turned_to(rise, neck_set_run_mean, found_crown_at_saddle)


def reset_angle(neck_angle_target: Radians, reset_angle_found: Radians) -> Radians:
    """How far the neck is to be turned back, head back positive.

    Source: common practice.
    """
    return neck_angle_target - reset_angle_found


def reset_wedge(reset_angle: Radians, neck_heel_depth: Mm) -> Mm:
    """What comes off the heel at its cap, nothing at the board; negative: off at the board, nothing at the cap.

    Source: common practice.
    """
    return np.tan(reset_angle) * neck_heel_depth


def reset_tongue(reset_angle: Radians, board_tail_position: Mm, back_bow_length: Mm) -> Mm:
    """How far the board's tail end lifts from where it lay on the top: a wedge goes under it; negative: wood to take
    off.

    Formula: (board_tail_position - back_bow_length) * tan(reset_angle)
    Source: a right triangle.
    """
    return (board_tail_position - back_bow_length) * float(np.tan(reset_angle))


def reset_tongue_left(reset_tongue: Mm, board_thickness: Mm) -> Mm:
    """What is left of the tongue's thickness at the tail end, once wood in the way is taken from under it.

    Formula: board_thickness + minimum(0, reset_tongue)
    Source: common practice.
    """
    return board_thickness + min(0.0, reset_tongue) if not math.isnan(reset_tongue) else math.nan


def reset_exposed(
    neck_set_board_at_join: Mm,
    neck_set_run: PerString[Mm],
    neck_angle_target: Radians,
    height_at_saddle_unloaded: PerString[Mm],
    neck_set_bridge_top: Mm,
) -> PerString[Mm]:
    """Saddle that shows over the bridge under each string after the reset, for the wanted action.

    Source: a right triangle from join to saddle.
    """
    return (
        neck_set_board_at_join
        + neck_set_run * np.sin(neck_angle_target)
        + height_at_saddle_unloaded * np.cos(neck_angle_target)
        - neck_set_bridge_top
    )
