"""What lies over the whole length of an instrument, seen from its face: strings, posts, board, join, bridge.

x is along the centreline from the zero line. Where nothing is described, nothing is drawn.
"""

from gramil.drawings.marks import Circle, Line, Marks, Polyline
from gramil.drawings.pen import box_points
from gramil.quantities import Mm, PerString, PerStringFret
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("piece_",)

ROUND_POSTS = 12.0
"""Room round the posts that stands for a head whose outline is not described, in mm."""


def piece_whole_strings(
    string_x: PerStringFret[Mm],
    string_y_nut: PerString[Mm],
    string_y_bridge: PerString[Mm],
    saddle_break_x: PerString[Mm],
    head_posts_x: PerString[Mm],
    head_posts_y: PerString[Mm],
    board_nut_position: Mm,
) -> Marks:
    """Each string in plan, treble first: from its post over the nut to the saddle."""
    posts = zip(board_nut_position - head_posts_x, head_posts_y, strict=True)
    nut, breaks = zip(string_x[:, 0], string_y_nut, strict=True), zip(saddle_break_x, string_y_bridge, strict=True)
    runs = zip(posts, nut, breaks, strict=True)
    return tuple(Polyline(tuple((float(x), float(y)) for x, y in run), "strings") for run in runs)


def piece_whole_head(
    head_posts_x: PerString[Mm],
    head_posts_y: PerString[Mm],
    head_tuners: str,
    head_slot_width: Mm,
    board_nut_position: Mm,
) -> Marks:
    """The posts (or the rollers across their slots), and a box round them where the head will be."""
    x = [float(board_nut_position - each) for each in head_posts_x]
    y = [float(each) for each in head_posts_y]
    places, half = list(zip(x, y, strict=True)), head_slot_width / 2
    posts: Marks = tuple(Circle(post, 3.0, "pins") for post in places)
    if head_tuners == "across":
        posts = tuple(Line((along, across - half), (along, across + half), "pins") for along, across in places)
    low = (min(x) - ROUND_POSTS, min(y) - ROUND_POSTS)
    return (*posts, Polyline(box_points(low, (float(board_nut_position), max(y) + ROUND_POSTS)), "hidden", closed=True))


def piece_whole_bridge(
    bridge_outline: Quadrilateral,
    saddle_break_x: PerString[Mm],
    string_y_bridge: PerString[Mm],
    piece_hold: Marks,
) -> Marks:
    """The bridge's footprint, the line on which the strings break, and what holds them."""
    breaks = tuple((float(x), float(y)) for x, y in zip(saddle_break_x, string_y_bridge, strict=True))
    return (Polyline(bridge_outline.corners, "outline", closed=True), Polyline(breaks, "slots"), *piece_hold)


def piece_whole_body(back_bow_length: Mm, top_length: Mm, saddle_position: Mm) -> Marks:
    """Where the neck meets the body and where the body ends: the centreline between, and a short line across each."""
    tail = back_bow_length + top_length if top_length > 0 else saddle_position
    ends = tuple(Line((x, -40.0), (x, 40.0), "hidden") for x in (back_bow_length, tail))
    return (Line((back_bow_length, 0.0), (tail, 0.0), "centreline"), *ends)


def piece_whole_board(piece_outline: Marks, piece_slots: Marks, piece_markers: Marks) -> Marks:
    """The board in plan with its slots and markers."""
    return (*piece_outline, *piece_slots, *piece_markers)
