"""The bridge: where it stands on the top, its outline, how the strings go down behind the saddle, and their pull."""

import numpy as np

from gramil.quantities import Count, Mm, Newton, NewtonM, PerFret, PerString, Radians, Ratio
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("bridge_",)


def bridge_front_edge(saddle_position: Mm, bridge_front: Mm) -> Mm:
    """Where the bridge's front edge crosses the centreline, from the zero line.

    Source: common practice.
    """
    return saddle_position - bridge_front


def bridge_front_from_nut(bridge_front_edge: Mm, board_nut_position: Mm) -> Mm:
    """Nut's face to the bridge's front edge, on the centreline.

    Source: common practice.
    """
    return bridge_front_edge - board_nut_position


def bridge_front_from_join(bridge_front_edge: Mm, back_bow_length: Mm) -> Mm:
    """From where the neck meets the body to the bridge's front edge, on the centreline.

    Source: common practice.
    """
    return bridge_front_edge - back_bow_length


def bridge_front_from_octave(bridge_front_edge: Mm, fret_position: PerFret[Mm], action_fret: Count) -> Mm:
    """From fret 12 (the last, on a shorter board) to the bridge's front edge: how it is placed on a made instrument.

    Formula: bridge_front_edge - fret_position[action_fret]
    Source: common practice.
    """
    return float(bridge_front_edge - fret_position[action_fret])


def bridge_outline(
    bridge_front_edge: Mm, string_saddle_slant: Ratio, bridge_length: Mm, bridge_width: Mm
) -> Quadrilateral:
    """The bridge's footprint as a box alongside the ends of the scales; on a square board, square to the centreline.

    Method: its long edges run along the scales' ends, its short ones square to those.
    Source: common practice.
    """
    long = np.sqrt(1 + string_saddle_slant**2)
    half = bridge_length / 2
    over, up = string_saddle_slant / long * half, half / long
    back_x, back_y = bridge_width / long**2, -string_saddle_slant * bridge_width / long**2
    low, high = (bridge_front_edge - over, -up), (bridge_front_edge + over, up)
    return Quadrilateral(
        *map(float, (*low, *high, high[0] + back_x, high[1] + back_y, low[0] + back_x, low[1] + back_y))
    )


def bridge_width_square(bridge_width: Mm, string_saddle_slant: Ratio) -> Mm:
    """Width of the bridge square to its long edges, as its blank is planed; less than along the strings on a fan.

    Formula: bridge_width / sqrt(1 + string_saddle_slant**2)
    Source: common practice.
    """
    return float(bridge_width / np.sqrt(1 + string_saddle_slant**2))


def bridge_break_run(
    bridge_hold_x: PerString[Mm],
    bridge_hold_y: PerString[Mm],
    saddle_break_x: PerString[Mm],
    string_y_bridge: PerString[Mm],
    bridge_pin_diameter: Mm,
) -> PerString[Mm]:
    """From where each string breaks over the saddle to where its hold behind it begins, in plan.

    Formula: hypot(bridge_hold_x - bridge_pin_diameter / 2 - saddle_break_x, bridge_hold_y - string_y_bridge)
    Source: Pythagoras.
    """
    return np.hypot(bridge_hold_x - bridge_pin_diameter / 2 - saddle_break_x, bridge_hold_y - string_y_bridge)


def bridge_break_angle(
    neck_set_exposed: PerString[Mm], bridge_hold_below: Mm, bridge_break_run: PerString[Mm]
) -> PerString[Radians]:
    """How steeply each string goes down behind the saddle, against the bridge's top.

    Formula: arctan2(neck_set_exposed + bridge_hold_below, bridge_break_run)
    Source: common practice.
    """
    return np.arctan2(neck_set_exposed + bridge_hold_below, bridge_break_run)


def bridge_under_slot(bridge_thickness: Mm, saddle_slot_depth: Mm) -> Mm:
    """Wood left in the bridge under the saddle's slot.

    Source: common practice.
    """
    return bridge_thickness - saddle_slot_depth


def bridge_lever(neck_set_over_top: PerString[Mm], top_thickness: Mm) -> PerString[Mm]:
    """Each string at the saddle over the middle of the top's thickness.

    Source: common practice.
    """
    return neck_set_over_top + top_thickness / 2


def bridge_torque(string_pull: PerString[Newton], bridge_lever: PerString[Mm]) -> NewtonM:
    """What turns the bridge toward the neck: each string's pull times its height over the top's middle.

    Formula: sum(string_pull * bridge_lever) / 1000
    Source: common practice; statics.
    """
    return float((string_pull * bridge_lever).sum() / 1000)
