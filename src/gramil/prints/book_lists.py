"""What the pages of the build book list: facts, strings, heights, cut lists, records, woods and drawings, by
reference.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from gramil import names as n
from gramil.drawings.marks import Drawing
from gramil.reference import EACH, Ref

FACTS = (
    ("Scale", n.scale_bass),
    ("Frets", n.scale_frets),
    ("Body at fret", n.scale_join),
    ("Hand", n.instrument_handed),
    ("Board", n.board_wood),
    ("Neck angle", n.neck_angle_target),
    ("All strings pull", n.string_pull_said),
)
BODY = (
    ("Its top without braces weighs about", n.graduated_weight),
    ("Body deepest inside, on its centreline", n.body_deepest),
    ("Its air sounds at least at", n.body_air_least),
    ("and at most at", n.body_air_most),
)
"""What is said of a body that is described: the last two to look for the main air resonance between."""
FANNED = (("Scale, bass", n.scale_bass), ("Scale, treble", n.scale_treble))
"""What a fanned board says of its scale."""
STRINGS = (
    ("thick", n.strings_gauges),
    ("sounds", n.strings_frequency),
    ("weighs", n.string_weight),
    ("pulls", n.string_pull),
    ("stress", n.string_stress),
    ("strength left", n.string_reserve),
    ("saddle back", n.saddle_set_back),
    ("nut slot over board", n.nut_slot_over_board),
)
TUNERS = (
    ("from the nut", n.head_posts_x),
    ("from the middle", n.head_posts_y),
    ("bends sideways", n.head_sideways_bend),
)
HEIGHTS = (
    ("Action at fret 12, each string", n.action_wanted),
    ("The same, the saddle as drawn and the neck as made", n.neck_set_action),
    ("Relief", n.heights_relief),
    ("String over the crest plane at the saddle", n.height_at_saddle),
    ("Neck angle", n.neck_angle_target),
    ("Straightedge over the bridge", n.neck_set_straightedge),
    ("Saddle showing", n.saddle_exposed),
)
SET_ON, BUILT_ON = (
    ("Wedge at the heel", n.heel_wedge),
    ("Neck's face at the nut, below the rim's plane", n.neck_set_drop),
)
"""What is said of a neck that is joined to a body, and of one that the body is built on."""
HEIGHTS_TALL = 120.0
"""How tall the drawing of the heights may be, in mm."""
CUT_LISTS = (
    ("Board: pieces in stock that yield it, and what each has over", n.blank_options),
    ("Neck", n.plank_pieces),
    ("Braces and other sticks", n.stick_list),
)
"""Words, and the dimension that lists the pieces as records."""
Columns = tuple[tuple[str, Ref[Any]], ...]
_BRACE = n.brace_list[EACH]
ENDS = (
    ("first end, along", _BRACE.start_x),
    ("across", _BRACE.start_y),
    ("second end, along", _BRACE.stop_x),
    ("across", _BRACE.stop_y),
)
LISTS: Sequence[tuple[str, Sequence[tuple[str, Ref[Any], Columns]]]] = (
    (
        "Board and neck",
        (
            (
                "Four ways of cutting the slots",
                n.cutting_options,
                (
                    ("set to", n.cutting_options[EACH].setting),
                    ("measured from", n.cutting_options[EACH].measured_from),
                    ("cut at its ends", n.cutting_options[EACH].pilot_at_end),
                    ("and then", n.cutting_options[EACH].then),
                    ("left at the crest", n.cutting_options[EACH].left_at_crest),
                    ("left at its ends", n.cutting_options[EACH].left_at_end),
                    ("kept of the stiffness", n.cutting_options[EACH].stiffness_kept),
                    ("the same with the neck", n.cutting_options[EACH].stiffness_kept_with_neck),
                ),
            ),
            (
                "The neck's back",
                n.carve_stations,
                (
                    ("from the zero line", n.carve_stations[EACH].position),
                    ("wide", n.carve_stations[EACH].width),
                    ("deep with the board", n.carve_stations[EACH].whole),
                    ("deep without it", n.carve_stations[EACH].depth),
                ),
            ),
            (
                "The edges between its flats",
                n.carve_lines,
                (("from the centre", n.carve_lines[EACH].centre), ("below the joint", n.carve_lines[EACH].joint)),
            ),
        ),
    ),
    (
        "Body and braces",
        (
            (
                "Bouts and waist",
                n.body_bouts,
                (
                    ("from the neck", n.body_bouts[EACH].x),
                    ("wide", n.body_bouts[EACH].width),
                    ("round the outline", n.body_bouts[EACH].along),
                    ("bend's radius", n.body_bouts[EACH].radius),
                ),
            ),
            (
                "The side, flat",
                n.side_stations,
                (("from the neck", n.side_stations[EACH].along), ("deep", n.side_stations[EACH].depth)),
            ),
            (
                "The treble side, flat",
                n.treble_side_stations,
                (("from the neck", n.treble_side_stations[EACH].along), ("deep", n.treble_side_stations[EACH].depth)),
            ),
            (
                "How the treble side bends",
                n.bend_treble,
                (
                    ("along the side", n.bend_treble[EACH].along),
                    ("bend's radius", n.bend_treble[EACH].radius),
                    ("turns through", n.bend_treble[EACH].turn),
                ),
            ),
            (
                "Strips for the bindings",
                n.strip_list,
                (
                    ("how many", n.strip_list[EACH].count),
                    ("long", n.strip_list[EACH].length),
                    ("high", n.strip_list[EACH].height),
                    ("thick", n.strip_list[EACH].thickness),
                    ("of", n.strip_list[EACH].wood),
                ),
            ),
            (
                "Rosette",
                n.rosette_rings,
                (
                    ("inner", n.rosette_rings[EACH].inner),
                    ("outer", n.rosette_rings[EACH].outer),
                    ("deep", n.rosette_rings[EACH].depth),
                ),
            ),
            (
                "Openings in the top",
                n.opening_list,
                (
                    ("along from the body's edge", n.opening_list[EACH].x),
                    ("aside, treble positive", n.opening_list[EACH].y),
                    ("long", n.opening_list[EACH].along),
                    ("wide", n.opening_list[EACH].across),
                    ("area", n.opening_list[EACH].area),
                ),
            ),
            (
                "Ports in the sides",
                n.port_list,
                (
                    ("side", n.port_list[EACH].side),
                    ("along from the neck", n.port_list[EACH].centre),
                    ("below the top's edge", n.port_list[EACH].below),
                    ("long", n.port_list[EACH].along),
                    ("high", n.port_list[EACH].across),
                    ("area", n.port_list[EACH].area),
                ),
            ),
            (
                "Braces",
                n.brace_list,
                (
                    ("glued to", n.brace_list[EACH].plate),
                    ("held to", n.brace_list[EACH].held_to),
                    ("long", n.brace_list[EACH].length),
                    ("wide", n.brace_list[EACH].width),
                    ("high", n.brace_list[EACH].height),
                    ("ends", n.brace_list[EACH].ends),
                    ("foot's sagitta", n.brace_list[EACH].sagitta),
                ),
            ),
            ("Braces' ends: along from the body's edge, across to the treble positive", n.brace_list, ENDS),
            (
                "Notches: their middles from each brace's first end",
                n.brace_crossings,
                (
                    ("lower, at", n.brace_crossings[EACH].along_under),
                    ("wide", n.brace_crossings[EACH].width_under),
                    ("from above", n.brace_crossings[EACH].depth_under),
                    ("upper, at", n.brace_crossings[EACH].along_over),
                    ("wide", n.brace_crossings[EACH].width_over),
                    ("from its foot", n.brace_crossings[EACH].depth_over),
                ),
            ),
        ),
    ),
)
"""Pages of lists: words, the dimension that holds the records, and its columns by field."""
WOOD_UNITS = {"density": "kg/m³", "modulus": "MPa", "strength_across": "MPa"} | dict.fromkeys(
    ("shrinkage_radial", "shrinkage_tangential", "shrinkage_volumetric"), "%"
)
"""Units of a wood's figures; the rest are plain ratios, movement a part of the size for each % of moisture."""


@dataclass(frozen=True)
class SinglePiece:
    """A piece that is cut by itself: its words, its sizes, of what wood if the description says, and how many."""

    words: str
    length: Ref[Any]
    width: Ref[Any]
    thickness: Ref[Any]
    wood: Ref[str] | None
    pieces: int = 1


SINGLE = (
    SinglePiece("Board's blank", n.blank_length, n.blank_width, n.blank_thickness, n.board_wood),
    SinglePiece("Sides, bookmatched", n.side_blank_length, n.side_blank_width, n.body_wall, n.body_side_wood, 2),
    SinglePiece("Top, joined", n.body_plate_length, n.body_plate_width, n.top_thickness, n.top_wood),
    SinglePiece("Back, joined", n.body_plate_length, n.body_plate_width, n.body_back_thickness, n.body_side_wood),
    SinglePiece("Bridge", n.bridge_length, n.bridge_width, n.bridge_thickness, None),
    SinglePiece("Bridge plate", n.plate_length, n.plate_width, n.bridge_plate_thickness, n.bridge_plate_wood),
)
"""Pieces that are cut one at a time, of which an instrument has those whose sizes are known."""
WOODS = (n.board_wood, n.carve_wood)
"""Where the woods stand that every instrument has."""
PLANS: Sequence[tuple[str, tuple[Ref[Drawing], ...], float]] = (
    ("Top and back from the inside", (n.drawing_top_inside, n.drawing_back_inside), 116),
    ("Neck and head", (n.drawing_neck_plank, n.drawing_head), 116),
    ("Neck and board cut across", (n.drawing_plan_sections,), 225),
    ("Flats of the neck's back", (n.drawing_neck_facets,), 225),
)
"""Pages of drawings: words, the drawings on it, and how tall each may be, in mm. Where nothing is drawn, no page."""
TITLE: Sequence[tuple[Ref[Drawing], float]] = (
    (n.drawing_plan_face, 108),
    (n.drawing_plan_side, 108),
    (n.drawing_board, 108),
)
"""What the title page shows: plan and side, or the board where there is no plan."""
SHOWN: Sequence[tuple[Ref[Drawing], float]] = (
    (n.drawing_heights, HEIGHTS_TALL),
    *TITLE,
    *((name, tall) for _, names, tall in PLANS for name in names),
)
"""Every drawing that the book shows besides those of its sheets, and how tall it may be, in mm."""
