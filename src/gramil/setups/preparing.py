"""Set-ups before the first slot: the blank, the layout, and the index template with its proof."""

from gramil.description.records import Jig
from gramil.parts.records import BlankChoice, TemplateMatch
from gramil.quantities import Count, Mm
from gramil.setups.lines import BY_HAND, jig_line
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)


def setup_blank(blank_choice: BlankChoice) -> Setup:
    """Choose the blank, plane it, joint one edge.

    Method: the piece of the stock that yields the board with least waste, or what to look for.
    Source: common practice.
    """
    found = blank_choice.name != "none"
    piece = (
        "Take {blank_choice.name}. It is over by {blank_choice.length_over} in length, {blank_choice.width_over} in "
        "width and {blank_choice.thickness_over} in thickness."
        if found
        else "No piece in the shop's list yields this board: find {board_wood} of at least these sizes."
    )
    return Setup(
        "blank",
        "Choose and check the blank",
        1,
        (
            BigFigure("blank_thickness", "Plane it to", "± {tolerance_height}", "calipers"),
            BigFigure("blank_width", "Width, one edge jointed", "or more", "rule"),
            BigFigure("blank_length", "Length along the grain", "or more", "rule"),
        ),
        (
            piece,
            "Look for run-out, checks and knots; the grain runs along the length.",
            "Let it lie where it will be worked until two weighings, days apart, agree.",
            "Plane both faces, joint one edge straight and square. Mark the face, and which end is the nut's.",
            "Strike the centreline on both faces from the jointed edge.",
        ),
        "Calipers at the four corners and in the middle: each {blank_thickness} within {tolerance_height}, and no wind "
        "under a straightedge laid corner to corner.",
        (BY_HAND, "{care_papers}"),
        ("plane or thickness sander, calipers, straightedge, square",),
        "setup-blank",
        ("blank_thickness", "blank_width", "blank_length"),
    )


def setup_layout(station_middle_fret: Count, scale_frets: Count, station_fanned: bool, board_nut_position: Mm) -> Setup:
    """Mark the zero line, the ends and the finished edges; on a fanned board, both ends of every slot.

    Method: everything from the zero line; fret-to-fret distances only check.
    Source: common practice.
    """
    middle = f"fret_position[{station_middle_fret}]"
    figures = (
        BigFigure(middle, "Zero line to fret {station_middle_fret}", "± {limit_slot_position}", "calipers or rule"),
        BigFigure(f"fret_position[{scale_frets}]", "Zero line to the last fret", "± {limit_slot_position}", "rule"),
        BigFigure("nut_width", "Finished width at the zero line", "± {tolerance_width}", "calipers"),
        BigFigure("board_width_at_tail", "Finished width at the tail end", "± {tolerance_width}", "calipers"),
        BigFigure("board_length", "Nut's face to tail end", "± {tolerance_outline}", "rule"),
    )
    moved = (BigFigure("board_nut_position", "Zero line to the nut's face", "± {limit_slot_position}", "calipers"),)
    return Setup(
        "layout",
        "Lay out",
        2,
        figures + (moved if board_nut_position else ()),
        (
            "Knife the centreline on the face. Square the zero line to it.",
            "Mark each fret from the zero line, never from the fret before it.",
            "Mark half of each width to either side of the centreline and join the marks: the finished edges.",
            *_nut_step(board_nut_position),
            *_fanned_step(station_fanned),
        ),
        f"Measure zero line to fret {{station_middle_fret}} again with another tool: {{{middle}}}. A wrong scale or a "
        "rule hooked over the wrong line shows here.",
        (BY_HAND,),
        ("marking knife, square, rule, calipers",),
        "setup-layout",
        (middle, "nut_width", "board_width_at_tail"),
        _ends_table(scale_frets) if station_fanned else (),
    )


def _nut_step(position: float) -> tuple[str, ...]:
    if not position:
        return ()
    side = "toward the first fret" if position > 0 else "toward the head"
    return (f"The nut's face stands {{board_nut_position}} from the zero line, {side}; the frets do not move with it.",)


def _fanned_step(fanned: bool) -> tuple[str, ...]:
    if not fanned:
        return ()
    return ("The frets fan: mark both ends of each from the table, and knife the line between them.",)


def _ends_table(frets: int) -> tuple[Table, ...]:
    columns = (
        ("treble end, along", "edge_x_treble"),
        ("treble end, across", "edge_y_treble"),
        ("bass end, along", "edge_x_bass"),
        ("bass end, across", "edge_y_bass"),
    )
    title = (
        "Ends of each fret on the finished edges: along the centreline from the zero line, across from the centreline"
    )
    return (Table(title, columns, tuple(range(frets + 1))),)


def setup_template(
    station_fanned: bool, template_matches: tuple[TemplateMatch, ...], station_middle_fret: Count, jig_slots: Jig
) -> Setup:
    """Make or choose the index template, prove it, and fix the blank to it.

    Method: two measurements prove it: notch to notch, and locating pin to notch. A fanned board has none.
    Source: common practice.
    """
    title = "Index template and its proof"
    if station_fanned:
        return skipped("template", title, 3, "a notched template makes square slots only, and these frets fan")
    return Setup(
        "template",
        title,
        3,
        (
            BigFigure(
                "template_proof_octave",
                "The zero line's notch to fret {station_middle_fret}'s, same sides",
                "± {limit_slot_position}",
                "calipers",
            ),
            BigFigure(
                "template_proof_pin", "First locating pin to the zero line's notch", "± {tolerance_height}", "calipers"
            ),
            BigFigure(
                "shop_pin_offset",
                "Pin less blade along the board, toward the tail positive",
                "± {limit_slot_position}",
                "a test cut",
            ),
            BigFigure(
                "template_notch_width",
                "Width of a notch",
                "pin {shop_template_pin} slides without shake",
                "the pin itself",
            ),
            BigFigure(
                "template_nut_notch",
                "Notch that cuts the nut end, from the zero line",
                "± {limit_slot_position}",
                "calipers",
            ),
        ),
        (
            _template_step(template_matches),
            "Drill the blank's waste for the locating pins, on the centreline, at {template_pin_first} and "
            "{template_pin_last} from the zero line; toward the head is negative.",
            "Pin the blank to the template by its back, centreline over centreline, nut over nut; stick it down.",
            "For the nut end keep the board on the tail's side of the blade: the saw's near side makes the nut's face.",
        ),
        "Before the first cut: zero line's notch to fret {station_middle_fret}'s is {template_proof_octave}, and "
        "locating pin to the zero line's notch is {template_proof_pin}. Either one wrong is another scale's template, "
        "or one laid end for end.",
        ("A template turned end for end changes the sign of pin less blade: write NUT on it. " + BY_HAND,),
        (
            jig_line("jig_slots", jig_slots)
            if jig_slots.purpose
            else "no jig for slots is listed: the usual pin distance stands in, measure yours",
            "index pin {shop_template_pin}; a laser or router kerf of {shop_laser_kerf} is allowed for in the file",
        ),
        "index-template",
        ("template_proof_octave", "template_proof_pin", "shop_pin_offset"),
    )


def _template_step(matches: tuple[TemplateMatch, ...]) -> str:
    serving = next((number for number, match in enumerate(matches, 1) if match.serves), 0)
    if not serving:
        return "No template on hand serves this scale: cut one from the template's drawing, and write its scale on it."
    match = f"template_matches[{serving}]"
    return f"Take {{{match}.name}}: no notch of it is out by more than {{{match}.worst}}."
