"""The heel that a body is built on, at true scale: its slots on the neck's face, and heel and foot from the side.

x is from the body's edge toward the tail. On the face y is across; from the side height is over the neck's own face,
and the body is turned by the neck's set. The board that neck and body lie on is drawn with its heights too tall.
"""

from math import cos, sin

from gramil import names as n
from gramil.drawings.kerf import FINISHED
from gramil.drawings.marks import Drawing, Label, Line, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import FIGURE, View, level, lines_of_words, upright
from gramil.parts.records import Run
from gramil.quantities import Mm, Radians
from gramil.shapes.tapered_bar import TaperedBar

OWNS = ("drawing_", "piece_")

NECK_SHOWN = 35.0
"""How much of the neck is drawn before the body's edge on its face, in mm."""
BETWEEN = 40.0
"""Room on the paper, in mm, between the end of the toe on the face and the neck's end from the side."""
BOARD_SCALE, BOARD_TALL = 0.2, 15.0
"""Drawn size of the board to build on over true size, and how many times too tall its heights are drawn."""
BOARD_VIEW = View((0.0, 0.0), BOARD_SCALE, BOARD_SCALE * BOARD_TALL)


def piece_foot_side(
    foot_there: bool,
    foot_step: Mm,
    foot_height: Mm,
    foot_length: Mm,
    carve_foot_toe: Mm,
    carve_foot_toe_height: Mm,
    neck_heel_depth: Mm,
    neck_angle_face: Radians,
) -> tuple[Point, ...]:
    """Foot and heel's end from the side, from the heel's cap round to the neck's face; nothing without a foot.

    Points from the body's edge along, and over the neck's own face.
    """
    if not foot_there:
        return ()
    low, toe = -foot_step - foot_height, foot_length + carve_foot_toe
    heel = min(-neck_heel_depth, low)
    round_it: tuple[Point, ...] = ((0.0, heel), (0.0, low), (toe, low), (toe, low + carve_foot_toe_height))
    round_it += ((foot_length, low + carve_foot_toe_height), (foot_length, -foot_step), (0.0, -foot_step), (0.0, 0.0))
    return tuple(_turned(point, neck_angle_face) for point in dict.fromkeys(round_it))


def _turned(point: Point, angle: float) -> Point:
    """A point of the body, given along and over its edge at the neck, as it lies relative to the neck's face."""
    x, z = point
    return (x * cos(angle) + z * sin(angle), -x * sin(angle) + z * cos(angle))


def piece_slots_on_face(
    foot_there: bool,
    foot_cheek: Mm,
    foot_slot_bottom: Mm,
    foot_slot_inner: Mm,
    foot_slot_outer: Mm,
    foot_slot_width: Mm,
    foot_slot_angle: Radians,
) -> Marks:
    """Both slots as they are sawn through the neck's face, treble and bass alike."""
    if not foot_there:
        return ()
    along = foot_slot_width / cos(foot_slot_angle)
    front = ((foot_slot_outer, foot_cheek), (foot_slot_inner, foot_slot_bottom))
    back = tuple((x + along, y) for x, y in reversed(front))
    ring = (*front, *back)
    return tuple(
        Polyline(tuple((x, side * y) for x, y in ring), "slots", closed=True, hatch="void") for side in (1.0, -1.0)
    )


def piece_foot_on_face(
    foot_there: bool,
    carve_form: TaperedBar,
    body_edge: Mm,
    foot_cheek: Mm,
    foot_length: Mm,
    body_neck_block_width: Mm,
    carve_foot_toe: Mm,
) -> Marks:
    """The neck's end on its face: its edges to the body's edge, the foot behind it, the toe below it dashed."""
    if not foot_there:
        return ()
    start, half = float(carve_form.at(body_edge - NECK_SHOWN).half_width), body_neck_block_width / 2
    edges = (Line((-NECK_SHOWN, side * start), (0.0, side * foot_cheek), "outline") for side in (1.0, -1.0))
    foot = ((0.0, foot_cheek), (0.0, half), (foot_length, half))
    ring = (*foot, *((x, -y) for x, y in reversed(foot)))
    toe = View((0.0, 0.0)).box((foot_length, -half), (foot_length + carve_foot_toe, half), "hidden")
    return (
        *edges,
        Polyline(ring, "outline"),
        *((toe,) if carve_foot_toe else ()),
        Line((-NECK_SHOWN, 0.0), (foot_length + carve_foot_toe, 0.0), "centreline"),
        Line((0.0, -foot_cheek), (0.0, foot_cheek), "centreline"),
    )


def piece_side_place(foot_length: Mm, carve_foot_toe: Mm, neck_heel_depth: Mm, carve_heel_length: Mm) -> Point:
    """Where on the paper the body's edge at the neck's face lies, from the side: beside the face, as high."""
    return (foot_length + carve_foot_toe + BETWEEN + carve_heel_length - 15.0, neck_heel_depth / 2)


def piece_slots_from_side(
    piece_foot_side: tuple[Point, ...],
    carve_heel_curve: Run,
    body_edge: Mm,
    foot_slot_outer: Mm,
    foot_slot_width: Mm,
    foot_step: Mm,
    foot_height: Mm,
    neck_heel_depth: Mm,
    neck_angle_face: Radians,
    piece_side_place: Point,
) -> Marks:
    """Heel and foot from the side, with the slot that is seen in the heel's cheek, square to the top's rim."""
    if not piece_foot_side:
        return ()
    view = View(piece_side_place)
    curve = tuple((x - body_edge, z) for x, z in carve_heel_curve.points)
    start = curve[0][0] - 5.0
    outline = ((start, 0.0), (start, curve[0][1]), *curve, *piece_foot_side)
    low = -max(neck_heel_depth, foot_step + foot_height)
    ends = ((foot_slot_outer, 0.0), (foot_slot_outer, low))
    others = tuple((x + foot_slot_width, z) for x, z in reversed(ends))
    slot = tuple(_turned(point, neck_angle_face) for point in (*ends, *others))
    return (view.shape(outline, "outline"), view.shape(slot, "slots", "void"))


def piece_slot_figures(foot_there: bool, foot_cheek: Mm, foot_slot_bottom: Mm, foot_length: Mm) -> Marks:
    """The slots' figures on the neck's face."""
    if not foot_there:
        return ()
    top, inner = foot_cheek + 6.0, -14.0
    low, left = -top - 4.0, -4.0
    return (
        Span((0.0, top), (foot_length, top), 4.0, n.foot_length, before="foot "),
        Span((inner, -foot_slot_bottom), (inner, foot_slot_bottom), 0.0, n.carve_slots_apart),
        Label((-NECK_SHOWN, low), n.foot_slot_place, "slots' front, from the zero line ", height=FIGURE),
        Label((left, top + 5.0), n.foot_slot_width, "slots wide ", height=FIGURE, anchor="right"),
        Label((left, top), n.foot_slot_angle, "off square ", height=FIGURE, anchor="right"),
        Words((-NECK_SHOWN, low - 6.0), "The neck's own face, the toe dashed below it.", FIGURE),
    )


def piece_foot_figures(
    foot_there: bool,
    piece_side_place: Point,
    foot_length: Mm,
    foot_step: Mm,
    foot_height: Mm,
    carve_foot_toe: Mm,
    carve_foot_toe_height: Mm,
    neck_heel_depth: Mm,
    carve_heel_length: Mm,
) -> Marks:
    """The foot's figures from the side."""
    if not foot_there:
        return ()
    view = View(piece_side_place)
    right, low = foot_length + carve_foot_toe + 6.0, -foot_step - foot_height
    start = -carve_heel_length - 5.0
    under = view.at(start, -max(neck_heel_depth, -low) - 8.0)
    step = view.at(foot_length + 3.0, -foot_step), view.at(foot_length + 3.0, 0.0)
    toe = upright(
        view.at(foot_length + carve_foot_toe / 2, low),
        view.at(foot_length + carve_foot_toe / 2, low + carve_foot_toe_height),
        n.carve_foot_toe_height,
        middle=view.at(0.0, low + carve_foot_toe_height)[1] + 4.0,
    )
    return (
        *upright(*step, n.foot_step, "for the top ", middle=step[1][1] + 5.0),
        Span(view.at(right, low), view.at(right, -foot_step), -10.0, n.foot_height, before="sides "),
        Span(view.at(start + 8.0, -neck_heel_depth), view.at(start + 8.0, 0.0), 0.0, n.neck_heel_depth),
        *(toe if carve_foot_toe else ()),
        Label(under, n.neck_angle_face, "slots off square to the neck's face "),
    )


def drawing_heel_slots(
    instrument_name: str,
    piece_foot_on_face: Marks,
    piece_slots_on_face: Marks,
    piece_slots_from_side: Marks,
    piece_slot_figures: Marks,
    piece_foot_figures: Marks,
) -> Drawing:
    """The heel's slots for the sides and the foot behind them, to lay on the neck's face and against its cheek.

    Used at: heel_slotted, body_built_on.
    """
    shapes = (*piece_foot_on_face, *piece_slots_on_face, *piece_slots_from_side)
    return Drawing(
        "heel-slots",
        f"{instrument_name}, the heel's slots",
        "the face",
        (*shapes, *piece_slot_figures, *piece_foot_figures),
        kerf=FINISHED,
    )


def piece_build_board(
    foot_there: bool, board_nut_position: Mm, body_edge: Mm, neck_set_drop: Mm, body_saddle: Mm, neck_set_dome_rise: Mm
) -> Marks:
    """The board's face under neck and top, from the side, face up: the neck's place falling to the nut, the dish."""
    if not foot_there:
        return ()
    nut, end = board_nut_position - body_edge, 2 * body_saddle
    steep = neck_set_dome_rise / (body_saddle * (end - body_saddle))
    dish = tuple((end * step / 40, steep * (end * step / 40) * (end - end * step / 40)) for step in range(41))
    return (
        BOARD_VIEW.line((nut, 0.0), (end, 0.0), "centreline"),
        BOARD_VIEW.run(((nut, -neck_set_drop), *dish), "outline"),
    )


def _dome(saddle: Point, rise: Mm) -> Marks:
    """How deep the dish is at the saddle; for a flat top there is none."""
    high = saddle[0], BOARD_VIEW.at(0.0, rise)[1]
    return upright(saddle, high, n.neck_set_dome_rise, "dome ") if rise else ()


def piece_build_board_figures(
    foot_there: bool, board_nut_position: Mm, body_edge: Mm, neck_set_drop: Mm, body_saddle: Mm, neck_set_dome_rise: Mm
) -> Marks:
    """The board's figures: what the neck's face drops at the nut, the dome at the saddle, and where each is."""
    if not foot_there:
        return ()
    nut = BOARD_VIEW.at(board_nut_position - body_edge, 0.0)
    under = BOARD_VIEW.at(0.0, -neck_set_drop)[1] - 10.0
    saddle = BOARD_VIEW.at(body_saddle, 0.0)
    top = BOARD_VIEW.at(0.0, neck_set_dome_rise)[1] + 4.0
    return (
        *upright((nut[0], BOARD_VIEW.at(0.0, -neck_set_drop)[1]), nut, n.neck_set_drop, "drop ", "left"),
        *_dome(saddle, neck_set_dome_rise),
        *level((nut[0], under), (0.0, under), n.body_edge, "from the zero line "),
        Words((nut[0], top), "nut", 2.4, anchor="middle"),
        Words((0.0, top), "body's edge", 2.4, anchor="middle"),
        Words((saddle[0], top), "saddle", 2.4, anchor="middle"),
        *lines_of_words(
            (nut[0], under - 8.0),
            "Heights drawn fifteen times too tall. Chain: the plane of the top's rim.",
            "The board is the reverse of this line: neck and top lie on it face down.",
        ),
    )


def drawing_build_board(instrument_name: str, piece_build_board: Marks, piece_build_board_figures: Marks) -> Drawing:
    """Neck and top in one line from the side, as the board that they are built on has them.

    Used at: work_board_made, body_built_on.
    """
    marks = (*piece_build_board, *piece_build_board_figures)
    title = f"{instrument_name}, the line that it is built on"
    return Drawing("build-board", title, "the side", marks, BOARD_TALL, BOARD_SCALE)
