"""Keys that change no figure, no verdict and no paper of *Tarn*, each with the description it is of and its reason.

The walk fails where a row is no longer needed, and where a key that changes nothing has none.
"""

NYLON = "of nylon strings or a tied bridge; Tarn has steel strings and pins"
READINGS = "readings lie in files beside a shop, and by them the air is worked out; the walk's shop has none beside it"
SOLVED = "of the solved top, which is worked out only when it is asked for"
OTHER_END = "the other end of what is judged here: the verdict says the limit that is nearer"


def _each(of: str, why: str, *keys: str) -> dict[str, tuple[str, str]]:
    return dict.fromkeys(keys, (of, why))


IDLE: dict[str, tuple[str, str]] = {
    **_each("instrument", "the head is solid: its tuners stand upright, in no slots", "head.slot_width"),
    **_each("instrument", "the neck has a rod, and no bars", "neck.bar_width", "neck.bar_depth", "neck.bar_modulus"),
    **_each(
        "instrument",
        "Tarn's neck is joined to its body: its heel has no slots for the sides, and no foot",
        "carve.slots_apart",
        "carve.slot_room",
        "carve.foot_toe",
        "carve.foot_toe_height",
    ),
    **_each("instrument", "Tarn's top is as thick all over", "top.edge_run"),
    **_each("instrument", "Tarn's frets are parallel: there is none to be named that is square", "scale.square_at"),
    **_each("instrument", "Tarn has no zero fret, and its nut stands at the zero line", "nut.behind"),
    **_each("instrument", "Tarn's pins stand in one row", "bridge.rows_apart"),
    **_each("instrument", "Tarn has six strings; it is asked of ten and more", "strings.single"),
    **_each(
        "instrument",
        "Tarn's strings stand by themselves: there is no pair",
        "nut.pair",
        "nut.pair_by",
        "bridge.pair",
        "bridge.pair_by",
        "bridge.front_row",
        "intonation.pair",
    ),
    **_each(
        "instrument",
        "stand in for braces that are not described, and Tarn's are",
        "top.brace_width",
        "top.brace_height",
        "top.brace_spacing",
    ),
    **_each(
        "instrument",
        "the list of work goes by it, and no figure does",
        "work.wood",
        "work.neck_set",
        "work.heel_cap",
        "work.head_mark",
        "work.back_strip",
        "work.side_strips",
        "work.linings",
        "work.finish",
        "work.end_pin",
    ),
    **_each(
        "instrument", "Tarn's body is given by stations: there is no drawing whose halves may differ", "body.alike"
    ),
    **_each(
        "instrument",
        "Tarn is not cut away: without depth and horn there is no cutaway",
        "cutaway.radius",
        "cutaway.heel",
    ),
    **_each(
        "instrument",
        "Tarn has no bevel: without width, drop and length there is none, and each alone is refused",
        *(
            f"{table}.{key}"
            for table in ("arm_bevel", "rib_bevel")
            for key in ("place", "block", "block_width", "block_height", "layer", "veneer", "binding")
        ),
    ),
    **_each(
        "shop",
        "Tarn has no bevel",
        "limits.side_under_bevel",
        "limits.veneer_over",
        "limits.bevel_steepest",
    ),
    **_each("instrument", "Tarn's soundhole is round", "soundhole.corner", "soundhole.lean"),
    **_each("shop", "Tarn has no port in a side", "limits.port_room", "limits.port_bend"),
    **_each("shop", "of sides that are not alike, and Tarn's are", "limits.bend_radius"),
    **_each("shop", "of the old saddle of a guitar that came in; Tarn is being built", "limits.saddle_place"),
    **_each("instrument", "the wire is the shop's, by its name, and so is the length on hand", "wire.on_hand"),
    **_each("shop", "Tarn's pins stand in one row", "limits.string_to_pin"),
    **_each(
        "shop", "Tarn's strings stand by themselves", "limits.pair_least", "limits.pair_most", "limits.torque_of_second"
    ),
    **_each(
        "shop",
        NYLON,
        "limits.action_bass_least_nylon",
        "limits.action_bass_most_nylon",
        "limits.action_treble_least_nylon",
        "limits.action_treble_most_nylon",
        "limits.body_rise_least_nylon",
        "limits.body_rise_most_nylon",
        "limits.break_angle_most_slotted",
        "limits.core_least_nylon",
        "limits.core_share_nylon",
        "limits.exposed_least_tied",
        "limits.exposed_most_tied",
        "limits.exposed_stop_least_tied",
        "limits.neck_angle_least_nylon",
        "limits.nut_first_least_nylon",
        "limits.nut_first_most_nylon",
        "limits.over_top_least_nylon",
        "limits.over_top_most_nylon",
        "limits.relief_least_nylon",
        "limits.relief_most_nylon",
        "limits.torque_least_nylon",
        "limits.torque_most_nylon",
    ),
    **_each(
        "shop",
        READINGS,
        "air.outlook_days",
        "limits.gluing_humidity_least",
        "limits.gluing_humidity_most",
        "piece",
        "piece.balance",
        "piece.dry_mass",
        "piece.lay",
        "piece.length",
        "piece.moisture",
        "piece.sawn",
        "piece.sealed",
        "piece.thickness",
        "piece.weighings",
        "piece.weighings.mass",
        "piece.width",
        "place.air_changes",
        "place.dehumidifier",
        "place.humidifier",
        "place.room",
    ),
    **_each("shop", "which domes a dish serves: the list of work goes by it", "jig.radius"),
    **_each(
        "shop",
        SOLVED,
        "limits.top_creep_least",
        "limits.top_creep_most",
        "limits.top_strain_most",
        "limits.top_turn_least",
        "limits.top_turn_most",
    ),
    **_each("shop", "no pilot kerf is cut: the slots' bottoms are straight", "limits.pilot_least"),
    **_each("shop", "asked of so many strings and more; Tarn has six", "limits.single_strings"),
    **_each(
        "shop", "closed lines are moved by it when a file to cut by is written, not on the drawing", "shop.laser_kerf"
    ),
    **_each("shop", "no kerf of a router is given, for which anybody would allow", "shop.router_kerf_in"),
    **_each(
        "shop", "temperatures are shown by it on the bench and by commands, and on none of these", "shop.temperature"
    ),
    **_each("shop", "one of a kind is enough, and there is one of each", "blank.count"),
    **_each("shop", "Tarn's head has an outline, by which it is measured", "limits.head_beside", "limits.head_beyond"),
    **_each("shop", "asked of strings in the slots of a head; Tarn's head is solid", "limits.slot_room"),
    **_each("shop", "Tarn has no zero fret", "limits.zero_fret_drop"),
    **_each("shop", "at its loosest the wire has room in the slot, and wedges nothing", "limits.wedge_kept_least"),
    **_each("shop", OTHER_END, "limits.bend_ratio_least", "limits.break_angle_saddle_least", "limits.over_top_least"),
    **_each("shop", "judged once the neck is set, and Tarn's is not measured", "limits.heel_wedge"),
    **_each("shop", "so little is to be gained at Tarn's nut that no limit is named", "limits.nut_gain"),
    **_each("shop", "slots that are read back are judged by it, and nothing drawn is", "limits.slot_error_cents"),
    **_each(
        "shop",
        "the sheets that drawings and pages are laid out on when they are written",
        "shop.paper",
        "shop.sheet_paper",
    ),
    **_each("shop", "a template fits by its pin, and Tarn's scale has no template on hand", "template.pin"),
}
"""By key, rows left out: the description that it is of, and why it changes nothing."""
BY_CORRIE = frozenset(
    (
        *("bridge.front_row", "bridge.pair", "bridge.pair_by", "bridge.rows_apart"),
        *(
            "intonation.pair",
            "nut.pair",
            "nut.pair_by",
            "limits.pair_least",
            "limits.pair_most",
            "limits.torque_of_second",
            "limits.string_to_pin",
        ),
        *("cutaway.heel", "cutaway.radius", "limits.bend_radius", "limits.bend_ratio_least"),
        *("soundhole.lean", "limits.port_bend", "limits.port_room"),
        *("limits.bevel_steepest", "limits.side_under_bevel", "limits.veneer_over"),
        *(
            f"{table}.{key}"
            for table in ("arm_bevel", "rib_bevel")
            for key in ("binding", "block", "block_height", "block_width", "layer", "place", "veneer")
        ),
    )
)
"""What an example with pairs of strings, a cutaway, an oval hole, a port and a bevel has a use for."""
MOVES_ELSEWHERE = frozenset(
    key
    for key, (_, why) in IDLE.items()
    if key
    in (
        "head.slot_width",
        "limits.head_beside",
        "limits.head_beyond",
        "limits.slot_room",
        "scale.square_at",
        "top.brace_width",
        "top.brace_height",
        "top.brace_spacing",
    )
    or (why == NYLON and key != "limits.over_top_least_nylon")
    or key in BY_CORRIE
)
"""Those of them that another example has a use for: nylon, another head, fanned frets, no braces, what Corrie has."""
EVERYWHERE = frozenset(IDLE) - MOVES_ELSEWHERE
"""Those that change nothing on any of the examples."""
