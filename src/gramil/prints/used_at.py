"""At which operations each drawing is used: by reference to the drawing, by name of the operations."""

from collections.abc import Mapping

from gramil import names as n
from gramil.drawings.marks import Drawing
from gramil.reference import Ref, name_of
from gramil.shop.operations import Operation, Work

USED_AT: Mapping[Ref[Drawing], tuple[str, ...]] = {
    n.drawing_board: ("board_laid_out", "nut_end_cut", "tail_end_cut", "tapered"),
    n.drawing_index_template: ("index_template_made", "slotted"),
    n.drawing_gauges: ("slotted", "arched", "fretted"),
    n.drawing_section: ("slotted", "slots_deepened", "levelled"),
    n.drawing_neck_plank: ("neck_sawn",),
    n.drawing_neck: ("neck_sawn", "neck_joint_cut"),
    n.drawing_heel_slots: ("heel_slotted", "body_built_on"),
    n.drawing_build_board: ("work_board_made", "body_built_on"),
    n.drawing_head: ("head_drilled",),
    n.drawing_neck_gauges: ("neck_profiled",),
    n.drawing_plan_sections: ("neck_profiled",),
    n.drawing_neck_facets: ("neck_profiled",),
    n.drawing_mould: ("mould_made", "blocks_made", "sides_fitted", "blocks_glued"),
    n.drawing_side: ("sides_bent", "linings_glued_back", "ports_cut"),
    n.drawing_treble_side: ("sides_bent", "linings_glued_back", "ports_cut"),
    n.drawing_bevel_arm: ("bevel_blocks_glued", "bevels_cut", "bevels_veneered"),
    n.drawing_bevel_rib: ("bevel_blocks_glued", "bevels_cut", "bevels_veneered"),
    n.drawing_braces: ("top_braces_fitted", "back_braces_fitted"),
    n.drawing_top_inside: ("top_sawn", "top_braces_glued", "bridge_plate_glued", "top_let_in"),
    n.drawing_back_inside: ("back_sawn", "back_braces_glued", "back_let_in"),
    n.drawing_face_plan: ("rosette_let_in", "soundhole_cut", "openings_cut", "bridge_placed"),
    n.drawing_openings: ("rosette_let_in", "openings_cut"),
    n.drawing_plan_face: ("bridge_placed",),
    n.drawing_plan_side: ("neck_fitted", "body_built_on"),
    n.drawing_neck_set: ("neck_fitted", "neck_set", "body_built_on"),
    n.drawing_bridge: ("bridge_made", "bridge_placed", "pins_fitted"),
    n.drawing_string_gauges: ("nut_slots_filed", "saddle_made"),
    n.drawing_nut: ("nut_made",),
    n.drawing_heights: (
        "neck_set",
        "relief_set",
        "action_set",
        "neck_glued_again",
        "relief_set_again",
        "action_set_again",
    ),
}
"""For each drawing outside the sheets the operations of the usual work at which it is taken up; common practice."""


def used_at(drawing: Drawing, work: Work) -> tuple[Operation, ...]:
    """The operations of an instrument's work at which a drawing is used, in the order of the work."""
    wanted = next((names for each, names in USED_AT.items() if file_stem(each) == drawing.name), ())
    return tuple(each for name, each in work.operations.items() if name in wanted)


def file_stem(drawing: Ref[Drawing]) -> str:
    """The name under which a drawing is written to a file."""
    return name_of(drawing).removeprefix("drawing_").replace("_", "-")
