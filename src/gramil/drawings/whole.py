"""The whole instrument, face and side, as marks that share one x axis: what the bench shows to find one's way.

x is along the centreline from the zero line. In the side view z is over the crest plane of the straight neck, which
lies level; the strings are drawn strung. Where nothing is described, nothing is drawn.
"""

import numpy as np

from gramil.drawings.marks import Circle, Line, Marks, Point, Polyline
from gramil.drawings.pen import box_points
from gramil.quantities import Count, Mm, PerFret, PerString
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("piece_",)

ROUND_POSTS = 12.0
"""Room round the posts that stands for a head whose outline is not described, in mm."""


def piece_whole_strings(
    string_y_nut: PerString[Mm],
    string_y_bridge: PerString[Mm],
    saddle_break_x: PerString[Mm],
    head_posts_x: PerString[Mm],
    head_posts_y: PerString[Mm],
    board_nut_position: Mm,
) -> Marks:
    """Each string in plan, thinnest first: from its post over the nut to the saddle."""
    runs = zip(head_posts_x, head_posts_y, string_y_nut, saddle_break_x, string_y_bridge, strict=True)
    return tuple(
        Polyline(((float(board_nut_position - px), float(py)), (0.0, float(y0)), (float(x1), float(y1))), "strings")
        for px, py, y0, x1, y1 in runs
    )


def piece_whole_head(head_posts_x: PerString[Mm], head_posts_y: PerString[Mm], board_nut_position: Mm) -> Marks:
    """The posts, and a box round them where the head will be."""
    x = [float(board_nut_position - each) for each in head_posts_x]
    y = [float(each) for each in head_posts_y]
    posts = tuple(Circle(post, 3.0, "pins") for post in zip(x, y, strict=True))
    low = (min(x) - ROUND_POSTS, min(y) - ROUND_POSTS)
    return (*posts, Polyline(box_points(low, (float(board_nut_position), max(y) + ROUND_POSTS)), "hidden", closed=True))


def piece_whole_bridge(
    bridge_outline: Quadrilateral,
    saddle_break_x: PerString[Mm],
    string_y_bridge: PerString[Mm],
    bridge_hold_x: PerString[Mm],
    bridge_hold_y: PerString[Mm],
    bridge_pin_diameter: Mm,
) -> Marks:
    """The bridge's footprint, the line on which the strings break, and their pins."""
    breaks = tuple((float(x), float(y)) for x, y in zip(saddle_break_x, string_y_bridge, strict=True))
    pins = zip(bridge_hold_x, bridge_hold_y, strict=True)
    return (
        Polyline(bridge_outline.corners, "outline", closed=True),
        Polyline(breaks, "slots"),
        *(Circle((float(x), float(y)), bridge_pin_diameter / 2, "pins") for x, y in pins),
    )


def piece_whole_body(back_bow_length: Mm, top_length: Mm, saddle_position: Mm) -> Marks:
    """Where the neck meets the body and where the body ends: the centreline between, and a short line across each."""
    tail = back_bow_length + top_length if top_length > 0 else saddle_position
    ends = tuple(Line((x, -40.0), (x, 40.0), "hidden") for x in (back_bow_length, tail))
    return (Line((back_bow_length, 0.0), (tail, 0.0), "centreline"), *ends)


def piece_whole_board(piece_outline: Marks, piece_slots: Marks, piece_markers: Marks) -> Marks:
    """The board in plan with its slots and markers."""
    return (*piece_outline, *piece_slots, *piece_markers)


def piece_whole_face(
    piece_whole_board: Marks,
    piece_whole_head: Marks,
    piece_whole_body: Marks,
    piece_whole_bridge: Marks,
    piece_whole_strings: Marks,
) -> Marks:
    """The face, right-handed, head to the left."""
    return (*piece_whole_body, *piece_whole_board, *piece_whole_head, *piece_whole_bridge, *piece_whole_strings)


def piece_whole_side_board(
    fret_position: PerFret[Mm],
    board_nut_position: Mm,
    board_tail_position: Mm,
    thickness_at_crest: PerFret[Mm],
) -> Marks:
    """The board from its side: crest level, underside as it is planed."""
    under = np.interp([board_nut_position, board_tail_position], fret_position, -thickness_at_crest)
    points = (
        (board_nut_position, 0.0),
        (board_tail_position, 0.0),
        (board_tail_position, float(under[1])),
        (board_nut_position, float(under[0])),
    )
    return (Polyline(points, "outline", closed=True),)


def piece_whole_side_neck(
    fret_position: PerFret[Mm],
    thickness_at_crest: PerFret[Mm],
    section_neck_depth: PerFret[Mm],
    back_bow_length: Mm,
    neck_heel_depth: Mm,
) -> Marks:
    """The neck's back from nut to body, and the heel down from the board's underside."""
    whole = thickness_at_crest + section_neck_depth
    along = [float(x) for x in fret_position if x < back_bow_length]
    back = [(x, -float(np.interp(x, fret_position, whole))) for x in along]
    join = float(np.interp(back_bow_length, fret_position, thickness_at_crest))
    heel: tuple[Point, ...] = ((back_bow_length, -join - neck_heel_depth), (back_bow_length, -join))
    return (Polyline((*back, *heel), "outline"),)


def piece_whole_side_head(
    head_posts_x: PerString[Mm],
    head_run: PerString[Mm],
    head_drop: PerString[Mm],
    nut_slot_over_crest: PerString[Mm],
    head_thickness: Mm,
) -> Marks:
    """The head leaning back: the line that the strings' posts stand on, as far as the farthest post."""
    far = int(np.argmax(head_posts_x))
    x, z = -float(head_run[far]), float(nut_slot_over_crest[far] - head_drop[far])
    return (Polyline(((0.0, 0.0), (x, z), (x, z - head_thickness), (0.0, -head_thickness)), "hidden"),)


def piece_whole_side_strings(
    height_at_zero: PerString[Mm],
    height_at_saddle: PerString[Mm],
    saddle_break_x: PerString[Mm],
    strings_count: Count,
) -> Marks:
    """The outer strings from the side, strung, over the crest plane."""
    return tuple(
        Line((0.0, float(height_at_zero[row])), (float(saddle_break_x[row]), float(height_at_saddle[row])), "strings")
        for row in (0, strings_count - 1)
    )


def piece_whole_side_top(
    back_bow_length: Mm,
    neck_set_board_at_join: Mm,
    height_at_saddle: PerString[Mm],
    neck_set_over_top: PerString[Mm],
    saddle_position: Mm,
) -> Marks:
    """The top from the join to the saddle, straight between the two, and the saddle up to the highest string."""
    top = float((height_at_saddle - neck_set_over_top).mean())
    join = (back_bow_length, -neck_set_board_at_join)
    saddle = Line((saddle_position, top), (saddle_position, float(height_at_saddle.max())), "slots")
    return (Line(join, (saddle_position, top), "outline"), saddle)


def piece_whole_side_bridge(
    height_at_saddle: PerString[Mm],
    neck_set_over_top: PerString[Mm],
    bridge_front_edge: Mm,
    bridge_width: Mm,
    bridge_thickness: Mm,
) -> Marks:
    """The bridge on the top."""
    top = float((height_at_saddle - neck_set_over_top).mean())
    low, high = (bridge_front_edge, top), (bridge_front_edge + bridge_width, top + bridge_thickness)
    return (Polyline(box_points(low, high), "outline", closed=True),)


def piece_whole_side_body(piece_whole_side_top: Marks, piece_whole_side_bridge: Marks) -> Marks:
    """What is known of the body from the side."""
    return (*piece_whole_side_top, *piece_whole_side_bridge)


def piece_whole_side(
    piece_whole_side_board: Marks,
    piece_whole_side_neck: Marks,
    piece_whole_side_head: Marks,
    piece_whole_side_strings: Marks,
    piece_whole_side_body: Marks,
) -> Marks:
    """The side, head to the left."""
    return (
        *piece_whole_side_board,
        *piece_whole_side_neck,
        *piece_whole_side_head,
        *piece_whole_side_strings,
        *piece_whole_side_body,
    )
