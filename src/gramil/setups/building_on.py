"""Set-ups for a body that is built on its neck: the heel's slots for the sides, and neck, top and sides in one line."""

import math

from gramil import names as n
from gramil.parts.body_records import Bout
from gramil.quantities import Mm
from gramil.reference import Text, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, skipped

OWNS = ("setup_",)

NO_BODY = "no body is described"
JOINED = "the neck is joined to a closed body"


def setup_heel_slots(
    foot_there: bool, carve_foot_toe: Mm, foot_slot_depth_at_cap: Mm, foot_slot_bow: Mm, limit_tolerance_height: Mm
) -> Setup:
    """Saw the heel's slots for the sides, and work the foot behind them.

    Method: slots where the sides' faces come, square to the top's rim, down to the wood left between them.
    Source: common practice.
    """
    title = "Saw the heel's slots for the sides"
    if not foot_there:
        return skipped("heel-slots", title, 301, JOINED)
    outline, height = says("± {}", n.limit_tolerance_outline), says("± {}", n.limit_tolerance_height)
    return Setup(
        "heel-slots",
        title,
        301,
        (
            BigFigure(n.foot_slot_place, "Zero line to the slots' front at the heel's cheeks", outline, "rule"),
            BigFigure(n.foot_slot_width, "Wide", "the side slides in by hand", "an offcut of the side"),
            BigFigure(n.foot_slot_depth, "Deep at the board, in from the cheek", height, "depth gauge"),
            BigFigure(n.carve_slots_apart, "Wood left between them, all down", height, "calipers"),
            BigFigure(n.foot_step, "Face let down behind the body's edge, for the top", height, "depth gauge"),
            BigFigure(n.foot_length, "Foot under the top, from the body's edge", outline, "rule"),
        ),
        (
            "Before the heel is carved: strike the body's edge square round the neck from its face, then both slots.",
            "The slots' front is where the sides' faces come; saw on the tail's side of that line.",
            says(
                "Saw both with a guide clamped at two angles: on the face {} off square to the centreline, and down "
                "the heel {} off square to the neck's face, so that the sides stand square to the top's rim.",
                n.foot_slot_angle,
                n.neck_angle_face,
            ),
            *_at_cap(foot_slot_depth_at_cap),
            *_eased(foot_slot_bow > limit_tolerance_height),
            says("Let the face down by {} from the body's edge to the foot's end: the top comes flush.", n.foot_step),
            says("Saw the foot {} wide and {} high between top and back.", n.body_neck_block_width, n.foot_height),
            *_toe(carve_foot_toe),
        ),
        says(
            "An offcut of each side in its slot: a square on the let-down face stands along it all the way down, and "
            "the two are {} apart at their ends, at the board and at the cap.",
            n.carve_slots_apart,
        ),
        ("hand saw", "edge tools"),
        (
            says("saw, or two cuts and a chisel, for a slot of {}; two guides, depth stop, bevel", n.foot_slot_width),
            says("sides {} thick, {} of room", n.body_wall, n.carve_slot_room),
        ),
        n.drawing_heel_slots,
        on=stuff("neck", "sides"),
    )


def _at_cap(depth: float) -> tuple[Text, ...]:
    """How deep a slot is at the heel's cap; nothing where the carved cap is too narrow to hold it."""
    if depth <= 0:
        return ()
    return (
        says("Their floors run straight down: carved, the heel's cap has {} of their depth.", n.foot_slot_depth_at_cap),
    )


def _eased(curved: bool) -> tuple[Text, ...]:
    if not curved:
        return ()
    return (says("The sides' curve lies off a straight slot by up to {}: ease its mouth that much.", n.foot_slot_bow),)


def _toe(toe: float) -> tuple[Text, ...]:
    if toe == 0:
        return ()
    return (
        says(
            "Leave the toe along the back: {} past the foot, {} high; hollow out what is above it.",
            n.carve_foot_toe,
            n.carve_foot_toe_height,
        ),
    )


def setup_build_board(foot_there: bool, neck_set_drop: Mm, top_radius: Mm, body_bouts: tuple[Bout, ...]) -> Setup:
    """Make the board that neck and body are built on, face down: the neck's slope, the top's dish.

    Method: the reverse of the line in which neck's face and top lie.
    Source: common practice.
    """
    title = "Make the board to build on"
    if not foot_there or not body_bouts:
        return skipped("build-board", title, 505, NO_BODY if foot_there else JOINED)
    height, outline = says("± {}", n.limit_tolerance_height), says("± {}", n.limit_tolerance_outline)
    domed, over = math.isfinite(top_radius), neck_set_drop < 0
    dish = (
        BigFigure(n.top_radius, "Radius of the dish for the top", "", "dish card"),
        BigFigure(n.neck_set_dome_rise, "Dish deep at the saddle, from the rim's plane", height, "straightedge"),
    )
    return Setup(
        "build-board",
        title,
        505,
        (
            BigFigure(n.neck_set_drop, _drop(over), height, "straightedge, feelers"),
            BigFigure(n.body_edge, "Zero line to the body's edge, where the slope begins", outline, "rule"),
            *(dish if domed else ()),
            BigFigure(n.body_length, "Body, from its edge to the tail", outline, "rule"),
            BigFigure(n.body_width, "Widest", outline, "rule"),
        ),
        (
            "A flat board, long enough for neck and body; strike the centreline, and the body's edge across it.",
            "Draw the body's outline on it from the mould's template"
            + (", and hollow the dish inside the line." if domed else "; the top lies flat on it."),
            "Neck and top lie on it face down: from the body's edge to the nut "
            + ("plane the board away to the slope." if over else "glue a packing on it that grows to the drop."),
            "Cut it clear for the head, and set blocks round the outline to hold the sides.",
        ),
        "Straightedge on the board over the body's edge and along the rim's line, feelers at the nut: the drop, "
        + ("under the straightedge." if over else "by which the packing lifts it there.")
        + " A slope turned over shows here.",
        ("band saw", "edge tools", "scraper", "sanding"),
        ("saw, plane, scraper, straightedge, feelers, blocks",),
        n.drawing_build_board,
        on=stuff("plywood"),
    )


def _drop(over: bool) -> str:
    side = "over it, and so negative" if over else "below it"
    return f"Neck's face at the nut, off the plane of the top's rim: {side}"


def setup_built_on(foot_there: bool, neck_set_drop: Mm, body_bouts: tuple[Bout, ...]) -> Setup:
    """Glue the neck's foot to the top in line, and let the sides into the heel.

    Method: on the board that neck and body are built on; its slope is the neck's set.
    Source: common practice.
    """
    title = "Build the body on the neck"
    if not foot_there or not body_bouts:
        return skipped("built-on", title, 515, NO_BODY if foot_there else JOINED)
    height, outline = says("± {}", n.limit_tolerance_height), says("± {}", n.limit_tolerance_outline)
    bridge = says("± {}", n.limit_tolerance_bridge)
    return Setup(
        "built-on",
        title,
        515,
        (
            BigFigure(n.neck_set_drop, _drop(neck_set_drop < 0), height, "straightedge, feelers"),
            BigFigure(n.body_edge, "Zero line to the top's edge on the foot", outline, "rule"),
            BigFigure(n.body_saddle, "Top's edge to the saddle's middle, on the centreline", bridge, "rule"),
            BigFigure(n.foot_slot_bottom, "Centreline to each side's end, in its slot", height, "calipers"),
            BigFigure(n.foot_height, "Sides deep in their slots", height, "calipers"),
            BigFigure(n.limit_gluing_humidity, "Air for gluing, relative humidity", "", "hygrometer"),
        ),
        (
            "Dry first. Top and neck face down on the board, the foot's let-down face on the top, the head clear.",
            "Clamp the neck to its slope: no light between its face and the board from the nut to the body's edge.",
            "Glue the foot to the top; leave it until it is hard before anything pulls on it.",
            says(
                "Saw both sides to length: each ends {} from the centreline. Slide them down their slots, the back's "
                "edge uppermost, until the top's edge lies on the top all round.",
                n.foot_slot_bottom,
            ),
            "Glue them in their slots, with a wedge behind each if there is room; then the tail, then the linings to "
            "the top, from the neck on.",
        ),
        "Dry, on the board: a thread from the nut's middle to the tail lies on the top's joint all along, and a square "
        "on the board stands along each side at the heel. A slope turned over shows as light at the nut.",
        ("hand saw", "edge tools", "glue", "clamps"),
        (
            says("the board to build on; neck angle {}", n.neck_angle_target),
            says("the pull will add {} to the action: a setting, not a measurement", n.heights_body_rise),
        ),
        n.drawing_build_board,
        on=stuff("neck", "sides", "top", "linings"),
    )
