"""The saddle: where each string breaks over it, the line that its slot follows, and its blank.

x is along the centreline from the zero line, y across, treble positive, as on the board.
"""

import numpy as np

from gramil.physics.compensation import SetBacks
from gramil.quantities import Mm, PerString, Radians, Ratio

OWNS = ("saddle_",)

TO_SHAPE = 1.0
"""What a saddle's blank stands over its tallest place, to be shaped away, in mm: common practice."""


def saddle_set_back_best(intonation_best_saddle: SetBacks) -> PerString[Mm]:
    """The set-back that leaves each string's counted frets least out, the nut where it is to stand.

    Formula: intonation_best_saddle.saddle
    Source: anderson_beausoleil_2024
    """
    return intonation_best_saddle.saddle


def saddle_set_back(
    saddle_set_back_given: PerString[Mm],
    saddle_set_back_best: PerString[Mm],
    string_y_bridge: PerString[Mm],
    intonation_saddle: str,
    intonation_file_to: Mm,
) -> PerString[Mm]:
    """How far behind the end of its scale each string is to break: as set, or the best that can be filed.

    Method: the best, rounded; a straight saddle's at the two outer strings, and straight between them.
    Source: common practice.
    """
    filed = np.round(saddle_set_back_best / intonation_file_to) * intonation_file_to
    if intonation_saddle != "per string":
        across = (string_y_bridge[0] - string_y_bridge) / (string_y_bridge[0] - string_y_bridge[-1])
        filed = filed[0] + (filed[-1] - filed[0]) * across
    return np.where(np.isnan(saddle_set_back_given), filed, saddle_set_back_given)


def saddle_break_x(string_scale_end_x: PerString[Mm], saddle_set_back: PerString[Mm]) -> PerString[Mm]:
    """Where each string breaks over the saddle, along the centreline from the zero line.

    Source: common practice.
    """
    return string_scale_end_x + saddle_set_back


def saddle_slant(saddle_break_x: PerString[Mm], string_y_bridge: PerString[Mm]) -> Ratio:
    """How far toward the tail the saddle runs for each mm toward the treble: the line nearest all break points.

    Formula: sum((string_y_bridge - mean(string_y_bridge)) * saddle_break_x)
        / sum((string_y_bridge - mean(string_y_bridge)) ** 2)
    Source: least squares.
    """
    across = string_y_bridge - string_y_bridge.mean()
    return float((across * saddle_break_x).sum() / (across**2).sum())


def saddle_position(saddle_break_x: PerString[Mm], string_y_bridge: PerString[Mm], saddle_slant: Ratio) -> Mm:
    """Where the middle of the saddle's slot crosses the centreline, from the zero line.

    Formula: mean(saddle_break_x) - saddle_slant * mean(string_y_bridge)
    Source: least squares.
    """
    return float(saddle_break_x.mean() - saddle_slant * string_y_bridge.mean())


def saddle_off_line(
    saddle_break_x: PerString[Mm], string_y_bridge: PerString[Mm], saddle_slant: Ratio, saddle_position: Mm
) -> PerString[Mm]:
    """How far behind the middle of the saddle each string breaks, square to it: what is filed at its top.

    Source: least squares.
    """
    return (saddle_break_x - saddle_position - saddle_slant * string_y_bridge) / np.sqrt(1 + saddle_slant**2)


def saddle_to_face(saddle_off_line: PerString[Mm], saddle_thickness: Mm) -> PerString[Mm]:
    """From where each string breaks to the nearer face of the saddle; negative: there is no saddle there.

    Source: common practice.
    """
    return saddle_thickness / 2 - abs(saddle_off_line)


def saddle_angle(saddle_slant: Ratio) -> Radians:
    """The saddle's angle to a square line, treble end toward the tail positive.

    Source: common practice.
    """
    return np.arctan(saddle_slant)


def saddle_reach(bridge_spread: Mm, saddle_beyond: Mm) -> Mm:
    """Centreline to either end of the saddle, square to the centreline.

    Source: common practice.
    """
    return bridge_spread / 2 + saddle_beyond


def saddle_end_treble(saddle_position: Mm, saddle_slant: Ratio, saddle_reach: Mm) -> Mm:
    """Where the slot's middle line ends on the treble side, along the centreline from the zero line.

    Source: common practice.
    """
    return saddle_position + saddle_slant * saddle_reach


def saddle_end_bass(saddle_position: Mm, saddle_slant: Ratio, saddle_reach: Mm) -> Mm:
    """Where the slot's middle line ends on the bass side, along the centreline from the zero line.

    Source: common practice.
    """
    return saddle_position - saddle_slant * saddle_reach


def saddle_length(saddle_reach: Mm, saddle_slant: Ratio) -> Mm:
    """Length of the saddle's slot and blank, along it.

    Source: Pythagoras.
    """
    return 2 * saddle_reach * np.sqrt(1 + saddle_slant**2)


def saddle_tall(saddle_slot_depth: Mm, neck_set_exposed: PerString[Mm]) -> PerString[Mm]:
    """Height of the saddle from the bottom of its slot to each string, for the wanted action, neck as it is made.

    Source: common practice.
    """
    return saddle_slot_depth + neck_set_exposed


def saddle_showing(neck_set_exposed: PerString[Mm], saddle_slot_depth: Mm) -> Ratio:
    """The most of the saddle that shows over the bridge, for each mm that stands in its slot.

    Formula: max(neck_set_exposed) / saddle_slot_depth
    Source: common practice.
    """
    return float(neck_set_exposed.max() / saddle_slot_depth)


def saddle_blank_height(saddle_tall: PerString[Mm]) -> Mm:
    """Height of the saddle's blank: its tallest place, and something to shape away.

    Formula: max(saddle_tall) + 1
    Source: common practice.
    """
    return float(saddle_tall.max() + TO_SHAPE)
