"""The head: the scarf's length, and how each string bends over the nut on its way to its post.

Posts are given along the head's face from the nut's face, and from the centreline. The head's face starts behind the
nut, a veneer over the neck's face, and leans back by the head's angle.
"""

import numpy as np

from gramil.quantities import Mm, PerFret, PerString, Radians, Ratio

OWNS = ("head_",)


def head_scarf_length(head_blank: Mm, head_angle: Radians) -> Mm:
    """Length of the scarf's face on a blank of this thickness; without end for a head that does not lean.

    Formula: head_blank / sin(head_angle)
    Source: a right triangle.
    """
    with np.errstate(divide="ignore"):
        return float(np.float64(head_blank) / np.sin(head_angle))


def head_slot_over_face(nut_slot_over_crest: PerString[Mm], thickness_at_crest: PerFret[Mm]) -> PerString[Mm]:
    """Bottom of each nut slot over the neck's own face.

    Formula: nut_slot_over_crest + thickness_at_crest[0]
    Source: common practice.
    """
    return nut_slot_over_crest + thickness_at_crest[0]


def head_run(
    head_posts_x: PerString[Mm], head_nut_thickness: Mm, head_angle: Radians, head_post_height: Mm
) -> PerString[Mm]:
    """From the nut's face back to where each string meets its post, level with the board.

    Source: turning the head's face by its angle.
    """
    return (
        head_nut_thickness
        + (head_posts_x - head_nut_thickness) * np.cos(head_angle)
        + head_post_height * np.sin(head_angle)
    )


def head_drop(
    head_slot_over_face: PerString[Mm],
    head_posts_x: PerString[Mm],
    head_nut_thickness: Mm,
    head_angle: Radians,
    head_post_height: Mm,
    head_veneer: Mm,
) -> PerString[Mm]:
    """How far each string falls from its nut slot to its post, square to the board.

    Source: turning the head's face by its angle.
    """
    return (
        head_slot_over_face
        - head_veneer
        + (head_posts_x - head_nut_thickness) * np.sin(head_angle)
        - head_post_height * np.cos(head_angle)
    )


def head_break_angle(
    head_drop: PerString[Mm],
    head_run: PerString[Mm],
    head_posts_y: PerString[Mm],
    string_y_nut: PerString[Mm],
    height_slope: PerString[Ratio],
) -> PerString[Radians]:
    """How far each string bends down over the nut, from its line over the board.

    Formula: arctan(head_drop / hypot(head_run, head_posts_y - string_y_nut)) - arctan(height_slope)
    Source: common practice.
    """
    return np.arctan(head_drop / np.hypot(head_run, head_posts_y - string_y_nut)) - np.arctan(height_slope)


def head_sideways_bend(
    head_posts_y: PerString[Mm],
    string_y_nut: PerString[Mm],
    head_run: PerString[Mm],
    string_y_bridge: PerString[Mm],
    height_run: PerString[Mm],
) -> PerString[Radians]:
    """How far each string bends sideways at the nut from its line over the board, toward the treble positive.

    Formula: arctan((head_posts_y - string_y_nut) / head_run) - arctan((string_y_nut - string_y_bridge) / height_run)
    Source: common practice.
    """
    onward = (string_y_nut - string_y_bridge) / height_run
    return np.arctan((head_posts_y - string_y_nut) / head_run) - np.arctan(onward)


def head_straight_y(
    string_y_nut: PerString[Mm], string_y_bridge: PerString[Mm], height_run: PerString[Mm], head_run: PerString[Mm]
) -> PerString[Mm]:
    """Where each post would stand from the centreline for its string to run straight over the nut.

    Source: common practice.
    """
    return string_y_nut + (string_y_nut - string_y_bridge) / height_run * head_run
