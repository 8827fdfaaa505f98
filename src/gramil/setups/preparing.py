"""Set-ups before the first slot: the blank, the layout, and the index template with its proof."""

import math

from gramil import names as n
from gramil.description.records import Jig
from gramil.parts.records import BlankChoice, TemplateMatch
from gramil.quantities import Count, Mm
from gramil.reference import Text, says
from gramil.setups.lines import jig_line, stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)


UNEVEN = says(
    "The board is not to stay equally thick: on the neck its face is planed straight from corner to corner, to {} at "
    "the nut's treble edge, {} at its bass edge, {} at the tail's treble edge and {} at its bass edge.",
    n.lean_corner_nut_treble,
    n.lean_corner_nut_bass,
    n.lean_corner_tail_treble,
    n.lean_corner_tail_bass,
)
"""What an uneven board is planed to, once it is glued."""


def setup_blank(blank_choice: BlankChoice, lean_corner_tail_treble: Mm) -> Setup:
    """Choose the blank, plane it, joint one edge.

    Method: the piece of the stock that yields the board with least waste, or what to look for.
    Source: common practice.
    """
    found = blank_choice.name != "none"
    piece = (
        says(
            "Take {}. It is over by {} in length, {} in width and {} in thickness.",
            n.blank_choice.name,
            n.blank_choice.length_over,
            n.blank_choice.width_over,
            n.blank_choice.thickness_over,
        )
        if found
        else says("No piece in the shop's list yields this board: find {} of at least these sizes.", n.board_wood)
    )
    return Setup(
        "blank",
        "Choose and check the blank",
        1,
        (
            BigFigure(n.blank_thickness, "Plane it to", says("± {}", n.limit_tolerance_height), "calipers"),
            BigFigure(n.blank_width, "Width, one edge jointed", "or more", "rule"),
            BigFigure(n.blank_length, "Length along the grain", "or more", "rule"),
        ),
        (
            piece,
            "Look for run-out, checks and knots; the grain runs along the length.",
            "Let it lie where it will be worked until two weighings, days apart, agree.",
            "Plane both faces, joint one edge straight and square. Mark the face, and which end is the nut's.",
            "Strike the centreline on both faces from the jointed edge.",
            *(() if math.isnan(lean_corner_tail_treble) else (UNEVEN,)),
        ),
        says(
            "Calipers at the four corners and in the middle: each {} within {}, and "
            "no wind under a straightedge laid corner to corner.",
            n.blank_thickness,
            n.limit_tolerance_height,
        ),
        ("edge tools", "drum sander"),
        ("plane or thickness sander, calipers, straightedge, square",),
        n.drawing_setup_blank,
        (n.blank_thickness, n.blank_width, n.blank_length),
        on=stuff("board"),
    )


def setup_layout(station_middle_fret: Count, scale_frets: Count, station_fanned: bool, board_nut_position: Mm) -> Setup:
    """Mark the zero line, the ends and the finished edges; on a fanned board, both ends of every slot.

    Method: everything from the zero line; fret-to-fret distances only check.
    Source: common practice.
    """
    middle = n.fret_position[station_middle_fret]
    figures = (
        BigFigure(
            middle,
            says("Zero line to fret {}", n.station_middle_fret),
            says("± {}", n.limit_slot_position),
            "calipers or rule",
        ),
        BigFigure(
            n.fret_position[scale_frets], "Zero line to the last fret", says("± {}", n.limit_slot_position), "rule"
        ),
        BigFigure(n.nut_width, "Finished width at the zero line", says("± {}", n.limit_tolerance_width), "calipers"),
        BigFigure(
            n.board_width_at_tail, "Finished width at the tail end", says("± {}", n.limit_tolerance_width), "calipers"
        ),
        BigFigure(n.board_length, "Nut's face to tail end", says("± {}", n.limit_tolerance_outline), "rule"),
    )
    moved = (
        BigFigure(n.board_nut_position, "Zero line to the nut's face", says("± {}", n.limit_slot_position), "calipers"),
    )
    return Setup(
        "layout",
        "Lay out",
        2,
        figures + (moved if board_nut_position else ()),
        (
            _zero_line_step(station_fanned),
            "Mark each fret from the zero line, never from the fret before it.",
            "Mark half of each width to either side of the centreline and join the marks: the finished edges.",
            *_nut_step(board_nut_position),
            *_fanned_step(station_fanned),
        ),
        says(
            "Measure zero line to fret {} again with another tool: {}. A wrong scale or a rule "
            "hooked over the wrong line shows here.",
            n.station_middle_fret,
            middle,
        ),
        ("knife",),
        ("marking knife, square, rule, calipers",),
        n.drawing_setup_layout,
        (middle, n.nut_width, n.board_width_at_tail),
        _ends_table(scale_frets) if station_fanned else (),
        on=stuff("board"),
    )


def _nut_step(position: float) -> tuple[Text, ...]:
    if not position:
        return ()
    side = "toward the first fret" if position > 0 else "toward the head"
    return (
        says(
            f"The nut's face stands {{}} from the zero line, {side}; the frets do not move with it.",
            n.board_nut_position,
        ),
    )


def _zero_line_step(fanned: bool) -> str:
    if fanned:
        return (
            "Knife the centreline on the face. Square a pencil line to it where the zero line crosses it: all along is "
            "measured from there. The zero line itself slants: its ends are the table's first row."
        )
    return "Knife the centreline on the face. Square the zero line to it."


def _fanned_step(fanned: bool) -> tuple[str, ...]:
    if not fanned:
        return ()
    return ("The frets fan; distances lie on the centreline. Mark their ends from the table, knife the line between.",)


def _ends_table(frets: int) -> tuple[Table, ...]:
    columns = (
        ("treble end, along", n.edge_x_treble),
        ("treble end, across", n.edge_y_treble),
        ("bass end, along", n.edge_x_bass),
        ("bass end, across", n.edge_y_bass),
    )
    title = (
        "Ends of each fret on the finished edges: along the centreline from the zero line, across from the centreline"
    )
    return (Table(title, columns, tuple(range(frets + 1))),)


def setup_template(
    station_fanned: bool,
    card_notches_serve: bool,
    card_nut_notch_stands: bool,
    template_matches: tuple[TemplateMatch, ...],
    station_middle_fret: Count,
    jig_slots: Jig,
) -> Setup:
    """Make or choose the index template, prove it, and fix the blank to it.

    Method: two measurements prove it: first notch to the notch half way along, and locating pin to first notch.
    Source: common practice.
    """
    title = "Index template and its proof"
    if station_fanned:
        return skipped("template", title, 3, "a notched template makes square slots only, and these frets fan")
    if not card_notches_serve:
        return skipped("template", title, 3, "the notches of the last frets would break into one another")
    first = "nut end's notch" if card_nut_notch_stands else "first notch"
    return Setup(
        "template",
        title,
        3,
        _template_figures(first),
        (
            _template_step(template_matches),
            says(
                "Drill the blank's waste for the locating pins, on the centreline, at {} and "
                "{} from the zero line; toward the head is negative.",
                n.template_pin_first,
                n.template_pin_last,
            ),
            "Write NUT on the template: end for end, pin less blade changes its sign. Pin the blank to it by its "
            "back, centreline over centreline, nut over nut; stick it down.",
            _nut_end_step(card_nut_notch_stands),
        ),
        says(
            f"Before the first cut, centre to centre: {first} to fret {{}}'s is {{}}, and locating pin to "
            f"{first} is {{}}. Either one wrong: another scale's template, or one laid end for end.",
            n.station_middle_fret,
            n.card_proof_octave,
            n.card_proof_pin,
        ),
        ("laser", "hand drill", "files"),
        (
            jig_line(n.jig_slots, jig_slots) + ": pin less blade, toward the tail positive"
            if jig_slots.purpose
            else says(
                "no jig for slots is listed: the usual pin less blade, {}, stands in; measure yours", n.shop_pin_offset
            ),
            says(
                "index pin {}; kerf of the machine that cuts templates {}, allowed for in {}",
                n.shop_template_pin,
                n.shop_laser_kerf,
                n.shop_laser_kerf_in,
            ),
        ),
        n.drawing_index_template,
        (n.card_proof_octave, n.card_proof_pin, n.shop_pin_offset),
        on=stuff("plywood", "board"),
    )


def _template_figures(first: str) -> tuple[BigFigure, ...]:
    opening = first[:1].upper() + first[1:]
    near = says("± {}", n.limit_slot_position)
    return (
        BigFigure(
            n.card_proof_octave, says(f"{opening} to fret {{}}'s, centres", n.station_middle_fret), near, "calipers"
        ),
        BigFigure(
            n.card_proof_pin,
            f"First locating pin to {first}, along",
            says("± {}", n.limit_tolerance_height),
            "calipers",
        ),
        BigFigure(n.shop_pin_offset, "Pin less blade, along the board", near, "a test cut"),
        BigFigure(
            n.template_notch_width, "Width of a notch", "pin slides without shake", says("pin {}", n.shop_template_pin)
        ),
    )


def _nut_end_step(stands: bool) -> str:
    if stands:
        return (
            "At the nut end's notch keep the board on the tail's side of the blade: the saw's near side makes the "
            "nut's face, and this notch allows for half a kerf."
        )
    return "There is no room for a notch for the nut end: saw it to a knife line."


def _template_step(matches: tuple[TemplateMatch, ...]) -> Text:
    serving = next((number for number, match in enumerate(matches, 1) if match.serves), 0)
    if not serving:
        return "No template on hand serves this scale: cut one from the template's drawing, and write its scale on it."
    match = n.template_matches[serving]
    return says("Take {}: no notch of it is out by more than {}.", match.name, match.worst)
