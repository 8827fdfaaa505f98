"""Set-ups for the strings' heights: setting the neck, filing the nut's slots, and adjusting the relief."""

import math

from gramil.quantities import Count, Mm
from gramil.setups.lines import BY_HAND
from gramil.setups.setup import BigFigure, Setup, Table

OWNS = ("setup_",)

STRINGS_PULL = "Strings under tension store energy: eyes away from them, and slacken before anything is cut. "


def setup_neck_set(neck_straightedge: Mm) -> Setup:
    """Set the neck: where a straightedge passes, and the wedge at the heel.

    Method: not set yet, the heel is tapered to the target; set already, what is still to come off it is shown.
    Source: common practice.
    """
    made = not math.isnan(neck_straightedge)
    return Setup(
        "neck-set",
        "Set the neck",
        310,
        (
            BigFigure(
                "neck_set_straightedge",
                "Straightedge on the dressed frets: over the bridge's top at the saddle",
                "± {limit_tolerance_height}",
                "long straightedge, feelers",
            ),
            BigFigure(
                "neck_set_straightedge_over_top",
                "The same with no bridge on: over the top",
                "± {limit_tolerance_height}",
                "long straightedge, gauge block",
            ),
            BigFigure(
                "neck_set_straightedge_on_board",
                "Before fretting, straightedge on the board's crest: over the bridge (negative: it strikes it)",
                "± {limit_tolerance_height}",
                "long straightedge, feelers",
            ),
            _heel(made),
            BigFigure("neck_set_run_mean", "Join to saddle, along the strings", "± {limit_tolerance_outline}", "rule"),
        ),
        (
            "Slacken the truss rod, strings off, neck straight: prove it with the straightedge between the frets.",
            _heel_step(made),
            "Keep the board on the centreline: a straightedge along each edge lands as far from the saddle's ends.",
            "Fit the tongue last: {neck_set_tongue_gap} between it and the top at the tail end (negative: in the way).",
        ),
        "Straightedge on the frets, held over the saddle's place: {neck_set_straightedge} over the bridge, "
        "{neck_set_straightedge_over_top} over the bare top. A neck set to the strung height fails here.",
        ("Paring runs toward the show face: score the line first, and stop short of it. " + BY_HAND,),
        (
            "neck angle {neck_angle_target}, head back; the neck's own face at {neck_angle_face}",
            "bridge {bridge_thickness} thick at the saddle, {saddle_exposed} of saddle to show",
            "the pull will add {heights_body_rise} to the action: a setting, not a measurement",
        ),
        "neck-set",
        ("neck_set_straightedge", "neck_set_straightedge_over_top"),
    )


def _heel(made: bool) -> BigFigure:
    if made:
        what = "Still to come off the heel at its cap (negative: off at the board)"
        return BigFigure("heel_wedge_to_take", what, "± {limit_tolerance_height}", "pencil line, calipers")
    what = "Heel's cap off square, nothing at the board, {neck_heel_depth} deep"
    return BigFigure("heel_wedge", what, "± {limit_tolerance_height}", "square, feelers")


def _heel_step(made: bool) -> str:
    if made:
        return (
            "As set, a straightedge passes {neck_straightedge} over the bridge: the saddle would show "
            "{neck_set_exposed_mean}. Pencil the wedge on both cheeks of the heel, and pare to the lines."
        )
    return "Pencil the wedge on both cheeks of the heel from the board to the cap, and pare to the lines."


def setup_nut_slots(scale_zero_fret: bool, strings_count: Count) -> Setup:
    """File the nut's slots: to feelers on the board first, then to the strings' height over fret 1.

    Method: with a zero fret the slots only guide, below its crown.
    Source: common practice.
    """
    return Setup(
        "nut-slots",
        "File the nut's slots",
        320,
        (
            BigFigure(
                "nut_slot_blank", "Nut over the neck's face, before its top is shaped", "or a little more", "calipers"
            ),
            BigFigure(
                "nut_spread", "Outer strings, centre to centre", "± {limit_tolerance_outline}", "rule from the pack"
            ),
            *_over_first(scale_zero_fret, strings_count),
        ),
        (
            "Mark the strings from the printed rule; saw a start for each on its mark.",
            "File each slot down to feelers laid on the board: stop a little before the figure.",
            "Slope the slot's bottom back toward its post, so that the string leaves from the nut's face.",
            *(
                ()
                if scale_zero_fret
                else ("String up, tune, and take the last strokes by the height over the first fret.",)
            ),
            "Take the nut's top down until each string lies in it by the depth given.",
        ),
        _prove(scale_zero_fret),
        ("A slot filed too low is a new nut: one stroke, then measure. " + STRINGS_PULL,),
        (
            "crowns {crown_height} after dressing; spacing: {nut_spacing}",
            "slots {limit_nut_slot_room} wider than their strings",
        ),
        "setup-nut",
        ("nut_slot_over_first[1]", f"nut_slot_over_first[{strings_count}]"),
        (
            Table(
                "The slots, treble first",
                (
                    ("bottom over the board", "nut_slot_over_board"),
                    ("string over the first fret", "nut_slot_over_first"),
                    ("deep", "nut_slot_depth"),
                    ("wide", "nut_slot_width"),
                ),
                tuple(range(1, strings_count + 1)),
                "string",
            ),
        ),
    )


def _over_first(zero_fret: bool, strings: int) -> tuple[BigFigure, ...]:
    if zero_fret:
        drop = "Slots below the zero fret's crown, or a little more"
        return (BigFigure("limit_zero_fret_drop", drop, "", "feelers"),)
    near = "± {limit_slot_position}"
    return (
        BigFigure("nut_slot_over_first[1]", "Treble string over the crown of the first fret", near, "feelers"),
        BigFigure(f"nut_slot_over_first[{strings}]", "Bass string over the crown of the first fret", near, "feelers"),
    )


def _prove(zero_fret: bool) -> str:
    if zero_fret:
        return "Pluck each string behind the nut and over the board: it must ring from the zero fret, not from the nut."
    return (
        "Press each string between the second and third frets: thin paper must still pass under it at the first. "
        "Where it does not, the slot is already too low."
    )


def setup_relief(neck_rod: str, action_fret: Count, strings_count: Count, relief_predicted_least: Mm) -> Setup:
    """Adjust the relief, strung and in tune, and check the action after it.

    Method: what to expect with the rod slack is a range; the rod does the rest, if there is one.
    Source: common practice.
    """
    return Setup(
        "relief",
        "Check the relief" if neck_rod == "none" else "Adjust the relief",
        330,
        (
            BigFigure(
                "heights_relief",
                "Gap half way under a straightedge on the first fret and the fret at the body",
                "{limit_relief_least} to {limit_relief_most}",
                "straightedge, feelers",
            ),
            *_expected(neck_rod, relief_predicted_least),
            BigFigure(
                f"height_over_crown[1, {action_fret}]",
                "Treble string over the crown of fret {action_fret}",
                "± {limit_tolerance_height}",
                "rule or feelers",
            ),
            BigFigure(
                f"height_over_crown[{strings_count}, {action_fret}]",
                "Bass string over the crown of fret {action_fret}",
                "± {limit_tolerance_height}",
                "rule or feelers",
            ),
        ),
        (
            "Tune to pitch and leave it an hour: the neck settles.",
            _rod_step(neck_rod),
            "Then the action: the saddle moves {height_saddle_share[1]} times what fret {action_fret} is to move.",
            "Look again after some weeks: wood goes on giving.",
        ),
        "Straightedge on the first fret and the fret at the body: the gap is largest half way. "
        "Largest elsewhere means a high fret or a kink, which no rod takes out.",
        (STRINGS_PULL + _rod_caution(neck_rod),),
        (
            "reckoned with a pull of {string_pull_total}",
            "and with {limit_modulus_least} to {limit_modulus_most} times the woods' stiffness as written",
            *_back_bow(relief_predicted_least),
            *_rod_moment(neck_rod, relief_predicted_least),
        ),
        "heights",
        (
            "heights_relief",
            f"height_over_crown[1, {action_fret}]",
            f"height_over_crown[{strings_count}, {action_fret}]",
        ),
    )


def _expected(rod: str, least: float) -> tuple[BigFigure, ...]:
    """What to expect without the help of a rod; nothing where no saw makes the slots, and so nobody knows."""
    if math.isnan(least):
        return ()
    when = "without a rod" if rod == "none" else "with the rod slack"
    return (
        BigFigure("relief_predicted_least", f"Expected {when}, at least (negative: bowed back)", "", "feelers"),
        BigFigure("relief_predicted_most", f"Expected {when}, at most", "", "feelers"),
    )


def _back_bow(least: float) -> tuple[str, ...]:
    return () if math.isnan(least) else ("the frets push back by {back_bow_least} to {back_bow_most}",)


def _rod_moment(rod: str, least: float) -> tuple[str, ...]:
    if rod == "none" or math.isnan(least):
        return ()
    return (
        "the rod bends the neck back with a moment between {relief_rod_moment_least} and {relief_rod_moment_most} "
        "(negative: forward, which a one-way rod cannot)",
    )


def _rod_step(rod: str) -> str:
    if rod == "none":
        return "There is no truss rod: what the straightedge shows stays, unless the board is planed or refretted."
    if rod == "one way":
        return "Turn the rod by eighths of a turn: tighter for less relief. It cannot put any in."
    return "Turn the rod by eighths of a turn: tighter for less relief, the other way for more."


def _rod_caution(rod: str) -> str:
    return "" if rod == "none" else "A rod that turns hard is at its end: slacken the strings before it is forced."
