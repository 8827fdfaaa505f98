"""The neck's set: the angle that brings strings, saddle, bridge and top together, and what an angle already made gives.

Side view, before stringing, neck straight. The rim plane holds the top's edge at the neck's joint and at the tail; the
vertex is at the join, where the board's underside meets the top's edge. The angle lies between crest plane and rim
plane, positive with the head back, so that the crest plane, drawn on over the body, climbs toward the bridge.
"""

import math

import numpy as np

from gramil.quantities import Mm, PerFret, PerString, Radians, Ratio
from gramil.shapes.arc import sagitta
from gramil.shapes.turned import turned_to

OWNS = ("heel_", "neck_angle_", "neck_set_")


def neck_set_run(height_saddle_x: PerString[Mm], back_bow_length: Mm) -> PerString[Mm]:
    """From the join to the saddle under each string, along the centreline.

    Source: common practice.
    """
    return height_saddle_x - back_bow_length


def neck_set_run_mean(neck_set_run: PerString[Mm]) -> Mm:
    """From the join to the saddle, the mean under the strings.

    Formula: mean(neck_set_run)
    Source: common practice.
    """
    return float(neck_set_run.mean())


def neck_set_height_mean(height_at_saddle_unloaded: PerString[Mm]) -> Mm:
    """The strings' mean height over the crest plane at the saddle before stringing.

    Formula: mean(height_at_saddle_unloaded)
    Source: common practice.
    """
    return float(height_at_saddle_unloaded.mean())


def neck_set_board_at_join(scale_join: Ratio, thickness_at_crest: PerFret[Mm]) -> Mm:
    """Thickness of the board at its crest where the neck meets the body.

    Formula: interp(scale_join, arange(len(thickness_at_crest)), thickness_at_crest)
    Source: common practice.
    """
    return float(np.interp(scale_join, np.arange(len(thickness_at_crest)), thickness_at_crest))


def neck_set_dome_rise(top_rise: Mm, top_radius: Mm, top_length: Mm, neck_set_run_mean: Mm) -> Mm:
    """How far the top stands over the rim plane at the saddle: as measured, or from the dome's radius.

    Method: measured, it is taken as it is; else the arc over its chord, joint to tail, at the saddle's distance.
    Source: sagitta
    """
    return _arc_over_chord(top_radius, top_length, neck_set_run_mean) if np.isnan(top_rise) else top_rise


def _arc_over_chord(radius: float, chord: float, along: float) -> float:
    half = chord / 2
    return float(sagitta(1 / radius, half) - sagitta(1 / radius, along - half))


def neck_set_bridge_top(neck_set_dome_rise: Mm, bridge_thickness: Mm) -> Mm:
    """Top of the bridge at the saddle over the rim plane.

    Source: common practice.
    """
    return neck_set_dome_rise + bridge_thickness


def neck_angle_target(
    neck_set_bridge_top: Mm,
    saddle_exposed: Mm,
    neck_set_board_at_join: Mm,
    neck_set_run_mean: Mm,
    neck_set_height_mean: Mm,
) -> Radians:
    """The neck angle at which the strings' mean height at the saddle is bridge and exposed saddle over the top.

    It solves board + run sin(angle) + height cos(angle) = bridge's top + exposed saddle.
    Formula: arcsin((neck_set_bridge_top + saddle_exposed - neck_set_board_at_join)
        / hypot(neck_set_run_mean, neck_set_height_mean)) - arctan2(neck_set_height_mean, neck_set_run_mean)
    Source: a right triangle from join to saddle.
    """
    rise = neck_set_bridge_top + saddle_exposed - neck_set_board_at_join
    return turned_to(rise, neck_set_run_mean, neck_set_height_mean)


def neck_set_crown_read(found_crown_at_saddle: Mm, crown_height: Mm) -> Mm:
    """How high over the crest plane that straightedge passes at the saddle: on old crowns as found, else on new ones.

    Formula: crown_height if isnan(found_crown_at_saddle) else found_crown_at_saddle
    Source: similar triangles.
    """
    return crown_height if math.isnan(found_crown_at_saddle) else found_crown_at_saddle


def neck_angle_made(
    neck_straightedge: Mm,
    repair_reset: bool,
    neck_set_bridge_top: Mm,
    neck_set_board_at_join: Mm,
    neck_set_run_mean: Mm,
    neck_set_crown_read: Mm,
    neck_angle_target: Radians,
) -> Radians:
    """The angle of a neck that is set, from where a straightedge on its frets passes; the target before that, and of
    one that is taken off and set anew.

    Formula: neck_angle_target if repair_reset or isnan(neck_straightedge)
        else arcsin((neck_set_bridge_top + neck_straightedge - neck_set_board_at_join)
        / hypot(neck_set_run_mean, neck_set_crown_read)) - arctan2(neck_set_crown_read, neck_set_run_mean)
    Source: a right triangle from join to saddle.
    """
    if repair_reset or np.isnan(neck_straightedge):
        return neck_angle_target
    rise = neck_set_bridge_top + neck_straightedge - neck_set_board_at_join
    return turned_to(rise, neck_set_run_mean, neck_set_crown_read)


def neck_angle_face(neck_angle_target: Radians, thickness_wedge_angle: Radians) -> Radians:
    """The angle to set the neck's own face at: a board levelled on its underside is a wedge, and brings part of it.

    Source: common practice.
    """
    return neck_angle_target - thickness_wedge_angle


def neck_set_straightedge(
    neck_set_board_at_join: Mm,
    neck_set_run_mean: Mm,
    neck_angle_target: Radians,
    crown_height: Mm,
    neck_set_bridge_top: Mm,
) -> Mm:
    """How far a straightedge on the dressed frets should pass over the bridge's top at the saddle, unstrung.

    Source: common practice.
    """
    return (
        neck_set_board_at_join
        + neck_set_run_mean * np.sin(neck_angle_target)
        + crown_height * np.cos(neck_angle_target)
        - neck_set_bridge_top
    )


def neck_set_straightedge_on_board(neck_set_straightedge: Mm, crown_height: Mm, neck_angle_target: Radians) -> Mm:
    """How far a straightedge on the bare crest of the board should pass over the bridge's top, before fretting.

    Source: common practice.
    """
    return neck_set_straightedge - crown_height * np.cos(neck_angle_target)


def neck_set_straightedge_over_top(neck_set_straightedge: Mm, bridge_thickness: Mm) -> Mm:
    """How far a straightedge on the frets should pass over the top itself at the saddle: no bridge is on yet.

    Source: common practice.
    """
    return neck_set_straightedge + bridge_thickness


def heel_wedge(neck_angle_face: Radians, neck_heel_depth: Mm) -> Mm:
    """What the heel's cap end stands back from square: taper it so, from nothing at the board to this at the cap.

    Source: common practice.
    """
    return np.tan(neck_angle_face) * neck_heel_depth


def heel_wedge_to_take(neck_angle_target: Radians, neck_angle_made: Radians, neck_heel_depth: Mm) -> Mm:
    """What is still to come off the heel at its cap to bring a set neck to the target; negative: off at the board.

    Source: common practice.
    """
    return np.tan(neck_angle_target - neck_angle_made) * neck_heel_depth


def neck_set_exposed(
    neck_set_board_at_join: Mm,
    neck_set_run: PerString[Mm],
    neck_angle_made: Radians,
    height_at_saddle_unloaded: PerString[Mm],
    neck_set_bridge_top: Mm,
) -> PerString[Mm]:
    """Saddle that will show over the bridge under each string for the wanted action, with the neck as it is made.

    Source: common practice.
    """
    return (
        neck_set_board_at_join
        + neck_set_run * np.sin(neck_angle_made)
        + height_at_saddle_unloaded * np.cos(neck_angle_made)
        - neck_set_bridge_top
    )


def neck_set_exposed_mean(neck_set_exposed: PerString[Mm]) -> Mm:
    """Saddle that will show over the bridge, the mean under the strings, with the neck as it is made.

    Formula: mean(neck_set_exposed)
    Source: common practice.
    """
    return float(neck_set_exposed.mean())


def neck_set_over_top(neck_set_exposed: PerString[Mm], bridge_thickness: Mm) -> PerString[Mm]:
    """Each string over the top at the saddle, with the neck as it is made.

    Source: common practice.
    """
    return neck_set_exposed + bridge_thickness


def neck_set_over_top_mean(neck_set_exposed_mean: Mm, bridge_thickness: Mm) -> Mm:
    """The strings' mean height over the top at the saddle, with the neck as it is made.

    Source: common practice.
    """
    return neck_set_exposed_mean + bridge_thickness


def neck_set_action(
    action_wanted: PerString[Mm],
    neck_set_exposed_mean: Mm,
    saddle_exposed: Mm,
    height_saddle_share: PerString[Ratio],
) -> PerString[Mm]:
    """The action that would come of the saddle as drawn (its mean showing as wanted) on the neck as it is made.

    Source: similar triangles.
    """
    return action_wanted - (neck_set_exposed_mean - saddle_exposed) / height_saddle_share


def neck_set_tongue_gap(
    board_tail_position: Mm, back_bow_length: Mm, neck_angle_face: Radians, top_radius: Mm, top_length: Mm
) -> Mm:
    """The board's underside over the top at the tail end, neck set to target: air, or if negative wood in the way.

    Method: the underside runs from the top's edge at the join at the face's angle; the dome is an arc over its chord.
    Source: sagitta
    """
    along = board_tail_position - back_bow_length
    return float(along * np.sin(neck_angle_face) - _arc_over_chord(top_radius, top_length, along))


def neck_set_drop(
    neck_angle_face: Radians, scale_join: Ratio, fret_position: PerFret[Mm], board_nut_position: Mm
) -> Mm:
    """How far the neck's own face lies below the plane of the body's edge at the nut; negative: above it.

    A guitar that is built on its neck has this from the board that it is built on: the neck's place slopes so.
    Formula: (interp(scale_join, arange(len(fret_position)), fret_position) - board_nut_position)
        * tan(neck_angle_face)
    Source: a right triangle.
    """
    join = float(np.interp(scale_join, np.arange(len(fret_position)), fret_position))
    return (join - board_nut_position) * float(np.tan(neck_angle_face))
