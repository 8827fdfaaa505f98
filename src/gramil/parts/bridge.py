"""The bridge: where it stands on the top, its outline, the strings' hold behind the saddle, and the pull on it.

Pins stand in one row or two: the second behind the first, toward the tail, with one string of each pair.
"""

import numpy as np
from numpy.typing import NDArray

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


def bridge_hold_row(
    bridge_hold: str, bridge_rows: str, bridge_front_row: str, strings_course: PerString[Ratio]
) -> PerString[Ratio]:
    """The row that each string's hole stands in: 1 nearest the saddle, 2 behind it; a tie block has one.

    Method: of each pair the string named goes in front, its fellow behind; a string by itself goes in front.
    Source: common practice.
    """
    step = np.diff(strings_course) == 0
    after, before = np.append(False, step), np.append(step, False)
    behind = after if bridge_front_row == "treble string" else before
    return np.where(behind & (bridge_hold == "pins") & (bridge_rows != "one"), 2.0, 1.0)


def bridge_hold_slant(bridge_hold_line: str, saddle_slant: Ratio, string_saddle_slant: Ratio) -> Ratio:
    """How far toward the tail the line of the strings' holes runs for each mm toward the treble.

    Formula: saddle_slant if bridge_hold_line == "along the saddle" else string_saddle_slant
    Source: common practice.
    """
    return saddle_slant if bridge_hold_line == "along the saddle" else string_saddle_slant


def bridge_hold_y(
    bridge_hold: str,
    bridge_rows: str,
    bridge_hold_spread: Mm,
    string_y_bridge: PerString[Mm],
    strings_course: PerString[Ratio],
) -> PerString[Mm]:
    """Each string's hole from the centreline, treble positive: spaced as the strings are, or staggered evenly.

    Method: as the strings over the saddle, in the proportion of the two spreads; staggered pins by equal steps from
    course to course, a pair's a quarter of that to either side: of pairs alone, every pin then stands as far from the
    next.
    Source: common practice.
    """
    if bridge_hold == "pins" and bridge_rows == "staggered":
        return bridge_hold_spread * _staggered(strings_course)
    return string_y_bridge * (bridge_hold_spread / (string_y_bridge[0] - string_y_bridge[-1]))


def _staggered(courses: PerString[Ratio]) -> PerString[Ratio]:
    """Places across, from a half at the treble side to minus a half, of pins that stand evenly by courses."""
    begins = np.append(True, np.diff(courses) != 0)
    course = np.cumsum(begins) - 1
    beside = np.where(begins, -0.25, 0.25) * (np.bincount(course)[course] == 2)
    at = course + beside
    return np.asarray(0.5 - (at - at[0]) / (at[-1] - at[0]))


def bridge_hold_x(
    saddle_position: Mm,
    bridge_hold_behind: Mm,
    bridge_hold_slant: Ratio,
    bridge_hold_y: PerString[Mm],
    bridge_hold_row: PerString[Ratio],
    bridge_rows_apart: Mm,
) -> PerString[Mm]:
    """Each string's hole along the centreline from the zero line.

    Formula: saddle_position + bridge_hold_behind + bridge_hold_slant * bridge_hold_y
        + (bridge_hold_row - 1) * bridge_rows_apart
    Source: common practice.
    """
    first = saddle_position + bridge_hold_behind + bridge_hold_slant * bridge_hold_y
    return first + (bridge_hold_row - 1) * bridge_rows_apart


def bridge_hold_second(bridge_hold_behind: Mm, bridge_rows_apart: Mm, bridge_hold_row: PerString[Ratio]) -> Mm:
    """Middle of the saddle's slot to the second row of pins, on the centreline; not known in one row.

    Formula: bridge_hold_behind + bridge_rows_apart if max(bridge_hold_row) > 1 else nan
    Source: common practice.
    """
    return bridge_hold_behind + bridge_rows_apart if bridge_hold_row.max() > 1 else float("nan")


def bridge_hold_back(
    bridge_front_edge: Mm,
    bridge_width: Mm,
    string_saddle_slant: Ratio,
    bridge_hold_x: PerString[Mm],
    bridge_hold_y: PerString[Mm],
    bridge_pin_diameter: Mm,
) -> PerString[Mm]:
    """Wood between each string's hole and the bridge's back edge, square to that; negative where it breaks out.

    Formula: (bridge_front_edge + bridge_width + string_saddle_slant * bridge_hold_y - bridge_hold_x)
        / sqrt(1 + string_saddle_slant**2) - bridge_pin_diameter / 2
    Source: common practice.
    """
    along = bridge_front_edge + bridge_width + string_saddle_slant * bridge_hold_y - bridge_hold_x
    return along / np.sqrt(1 + string_saddle_slant**2) - bridge_pin_diameter / 2


def bridge_hold_step(
    bridge_hold_x: PerString[Mm], bridge_hold_y: PerString[Mm], bridge_hold_row: PerString[Ratio]
) -> Mm:
    """From one string's hole to the next of its row, centre to centre, where they are nearest.

    Method: least distance between two holes of one row.
    Source: Pythagoras.
    """
    return _least_apart(bridge_hold_x, bridge_hold_y, bridge_hold_row[:, None] == bridge_hold_row)


def bridge_hold_across(
    bridge_hold_x: PerString[Mm], bridge_hold_y: PerString[Mm], bridge_hold_row: PerString[Ratio]
) -> Mm:
    """From a hole of one row to one of the other, centre to centre, where they are nearest; not known in one row.

    Method: least distance between two holes of different rows.
    Source: Pythagoras.
    """
    return _least_apart(bridge_hold_x, bridge_hold_y, bridge_hold_row[:, None] != bridge_hold_row)


def _least_apart(x: PerString[Mm], y: PerString[Mm], which: NDArray[np.bool_]) -> float:
    """The least distance between two holes, of the pairs that are `which` (strings, strings); nan if there is none."""
    asked = which & ~np.eye(len(x), dtype=bool)
    away = np.hypot(x[:, None] - x, y[:, None] - y)[asked]
    return float(away.min()) if away.size else float("nan")


def bridge_hold_spacing(bridge_hold_step: Mm, bridge_pin_diameter: Mm) -> Ratio:
    """From one string's hole to the next of its row, in diameters of a hole.

    Source: common practice.
    """
    return bridge_hold_step / bridge_pin_diameter


def bridge_hold_between(bridge_hold_across: Mm, bridge_pin_diameter: Mm) -> Ratio:
    """From a hole of one row to one of the other, in diameters of a hole; not known in one row.

    Source: common practice.
    """
    return bridge_hold_across / bridge_pin_diameter


def bridge_hold_wood(bridge_hold_step: Mm, bridge_pin_diameter: Mm) -> Mm:
    """Wood between one string's hole and the next of its row; negative where they run into each other.

    Source: common practice.
    """
    return bridge_hold_step - bridge_pin_diameter


def bridge_hold_wood_across(bridge_hold_across: Mm, bridge_pin_diameter: Mm) -> Mm:
    """Wood between a hole of one row and the nearest of the other; not known in one row.

    Source: common practice.
    """
    return bridge_hold_across - bridge_pin_diameter


def bridge_hold_clear(
    bridge_hold_x: PerString[Mm],
    bridge_hold_y: PerString[Mm],
    saddle_break_x: PerString[Mm],
    string_y_bridge: PerString[Mm],
    bridge_pin_diameter: Mm,
    strings_gauges: PerString[Mm],
) -> PerString[Mm]:
    """Room between each string on its way behind the saddle and the nearest hole of another; negative over a hole.

    Method: from each other hole's middle to the straight way from break point to own hole, less half hole and string.
    Source: plane geometry.
    """
    start = np.stack((saddle_break_x, string_y_bridge), axis=-1)
    holes = np.stack((bridge_hold_x, bridge_hold_y), axis=-1)
    way, to = holes - start, holes - start[:, None]
    share = np.clip((to * way[:, None]).sum(-1) / (way**2).sum(-1)[:, None], 0.0, 1.0)
    away = np.hypot(*np.moveaxis(to - share[..., None] * way[:, None], -1, 0))
    np.fill_diagonal(away, np.inf)
    return away.min(axis=1) - bridge_pin_diameter / 2 - strings_gauges / 2


def bridge_hold_wall(
    bridge_hold_behind_slot: PerString[Mm], saddle_thickness: Mm, bridge_pin_diameter: Mm
) -> PerString[Mm]:
    """Wood between the saddle's slot and each string's hole.

    Source: common practice.
    """
    return bridge_hold_behind_slot - saddle_thickness / 2 - bridge_pin_diameter / 2


def bridge_hold_behind_slot(
    bridge_hold_x: PerString[Mm], bridge_hold_y: PerString[Mm], saddle_position: Mm, saddle_slant: Ratio
) -> PerString[Mm]:
    """Middle of the saddle's slot to each string's hole, square to the saddle.

    Source: common practice.
    """
    return (bridge_hold_x - saddle_position - saddle_slant * bridge_hold_y) / np.sqrt(1 + saddle_slant**2)


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


def bridge_torque_least(
    limit_torque_least: NewtonM, limit_torque_of_second: Ratio, strings_course: PerString[Ratio]
) -> NewtonM:
    """Least torque that drives the top well, of strings of which some stand in pairs.

    Method: a six-string's limit, times 1 + the share of a second string x pairs / courses.
    Source: common practice, from memory.
    """
    return limit_torque_least * _with_seconds(limit_torque_of_second, strings_course)


def bridge_torque_most(
    limit_torque_most: NewtonM, limit_torque_of_second: Ratio, strings_course: PerString[Ratio]
) -> NewtonM:
    """Most torque that the top is built for, of strings of which some stand in pairs.

    Method: a six-string's limit, times 1 + the share of a second string x pairs / courses.
    Source: common practice, from memory.
    """
    return limit_torque_most * _with_seconds(limit_torque_of_second, strings_course)


def _with_seconds(share: Ratio, courses: PerString[Ratio]) -> Ratio:
    many = len(set(courses.tolist()))
    return 1 + share * (len(courses) - many) / many
