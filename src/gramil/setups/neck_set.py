"""Set-ups for the strings' heights: setting the neck, filing the nut's slots, and adjusting the relief."""

import math

from gramil import names as n
from gramil.quantities import Count, Mm
from gramil.reference import Text, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)


def setup_neck_set(neck_straightedge: Mm, neck_set_straightedge: Mm, neck_rod: str, foot_there: bool) -> Setup:
    """Set the neck: where a straightedge passes, and the wedge at the heel.

    Method: not set yet, the heel is tapered to the target; set already, what is still to come off it is shown. A
    straightedge that would strike the bridge is held over the bare top: nothing can be measured over the bridge.
    Source: common practice.
    """
    if foot_there:
        return skipped(
            "neck-set", "Set the neck", 310, "the body is built on the neck, to the drop on that work's own sheet"
        )
    made, strikes = not math.isnan(neck_straightedge), neck_set_straightedge < 0
    return Setup(
        "neck-set",
        "Set the neck",
        310,
        (
            BigFigure(
                n.neck_set_straightedge,
                "Straightedge on the dressed frets: over the bridge's top at the saddle",
                says("± {}", n.limit_tolerance_height),
                "long straightedge, feelers",
            ),
            BigFigure(
                n.neck_set_straightedge_over_top,
                "The same with no bridge on: over the top",
                says("± {}", n.limit_tolerance_height),
                "long straightedge, gauge block",
            ),
            BigFigure(
                n.neck_set_straightedge_on_board,
                "Before fretting, straightedge on the board's crest: over the bridge (negative: it strikes it)",
                says("± {}", n.limit_tolerance_height),
                "long straightedge, feelers",
            ),
            _heel(made),
            BigFigure(
                n.neck_set_run_mean,
                "Join to saddle, along the strings",
                says("± {}", n.limit_tolerance_outline),
                "rule",
            ),
        ),
        (
            _slackened(neck_rod),
            _heel_step(made),
            "Keep the board on the centreline: a straightedge along each edge lands as far from the saddle's ends.",
            says(
                "Fit the tongue last: {} between it and the top at the tail end (negative: in the way).",
                n.neck_set_tongue_gap,
            ),
        ),
        _prove_set(strikes),
        ("knife", "edge tools", "glue", "clamps"),
        (
            says("neck angle {}, head back; the neck's own face at {}", n.neck_angle_target, n.neck_angle_face),
            says("bridge {} thick at the saddle, {} of saddle to show", n.bridge_thickness, n.saddle_exposed),
            says("the pull will add {} to the action: a setting, not a measurement", n.heights_body_rise),
        ),
        n.drawing_neck_set,
        (*(() if strikes else (n.neck_set_straightedge,)), n.neck_set_straightedge_over_top),
        on=stuff("neck", "top", "blocks"),
    )


def _slackened(rod: str) -> Text:
    first = "Strings off" if rod == "none" else "Slacken the truss rod, strings off"
    return f"{first}, neck straight: prove it with the straightedge between the frets."


def _prove_set(strikes: bool) -> Text:
    if strikes:
        return says(
            "Straightedge on the frets, held over the saddle's place with the bridge off: {} over the bare top; "
            "with the bridge on, it would strike it. A neck set to the strung height fails here.",
            n.neck_set_straightedge_over_top,
        )
    return says(
        "Straightedge on the frets, held over the saddle's place: {} over the bridge, "
        "{} over the bare top. A neck set to the strung height fails here.",
        n.neck_set_straightedge,
        n.neck_set_straightedge_over_top,
    )


def _heel(made: bool) -> BigFigure:
    if made:
        what: Text = "Still to come off the heel at its cap (negative: off at the board)"
        return BigFigure(n.heel_wedge_to_take, what, says("± {}", n.limit_tolerance_height), "pencil line, calipers")
    what = says("Heel's cap off square, nothing at the board, {} deep", n.neck_heel_depth)
    return BigFigure(n.heel_wedge, what, says("± {}", n.limit_tolerance_height), "square, feelers")


def _heel_step(made: bool) -> Text:
    if made:
        return says(
            "As set, a straightedge passes {} over the bridge: the saddle would show "
            "{}. Pencil the wedge on both cheeks of the heel; score the lines, and pare to just short of them.",
            n.neck_straightedge,
            n.neck_set_exposed_mean,
        )
    return (
        "Pencil the wedge on both cheeks of the heel from the board to the cap; score the lines, since paring runs "
        "toward the show face, and pare to just short of them."
    )


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
                n.nut_slot_blank, "Nut over the neck's face, before its top is shaped", "or a little more", "calipers"
            ),
            BigFigure(
                n.string_spread_along_nut,
                "Outer strings along the nut, centre to centre",
                says("± {}", n.limit_tolerance_outline),
                "rule from the pack",
            ),
            BigFigure(n.board_nut_length, "The nut, long: from edge to edge of the board", "", "rule"),
            *_over_first(scale_zero_fret, strings_count),
        ),
        (
            "Mark the strings from the printed rule; start each on its mark with a file's edge.",
            "File each slot down to feelers laid on the board: stop a little before the figure. Too low is a new "
            "nut: one stroke, then measure.",
            "Slope the slot's bottom back toward its tuner, so that the string leaves from the nut's face.",
            *(
                ()
                if scale_zero_fret
                else ("String up, tune, and take the last strokes by the height over the first fret.",)
            ),
            "Take the nut's top down until each string lies in it by the depth given.",
        ),
        _prove(scale_zero_fret),
        ("files", "strings"),
        (
            says("crowns {} after dressing; spacing: {}", n.crown_height, n.nut_spacing),
            says("slots {} wider than their strings", n.limit_nut_slot_room),
        ),
        n.drawing_setup_nut,
        (n.nut_slot_over_first[1], n.nut_slot_over_first[strings_count]),
        (
            Table(
                "The slots, treble first",
                (
                    ("bottom over the board", n.nut_slot_over_board),
                    ("string over the first fret", n.nut_slot_over_first),
                    ("deep", n.nut_slot_depth),
                    ("wide", n.nut_slot_width),
                ),
                tuple(range(1, strings_count + 1)),
                "string",
            ),
        ),
        box_near=says("± {}", n.limit_slot_position),
        on=stuff("bone"),
    )


def _over_first(zero_fret: bool, strings: int) -> tuple[BigFigure, ...]:
    if zero_fret:
        drop = "Slots below the zero fret's crown, or a little more"
        return (BigFigure(n.limit_zero_fret_drop, drop, "", "feelers"),)
    near = says("± {}", n.limit_slot_position)
    return (
        BigFigure(n.nut_slot_over_first[1], "Treble string over the crown of the first fret", near, "feelers"),
        BigFigure(n.nut_slot_over_first[strings], "Bass string over the crown of the first fret", near, "feelers"),
    )


def _prove(zero_fret: bool) -> str:
    if zero_fret:
        return "Pluck each string behind the nut and over the board: it must ring from the zero fret, not from the nut."
    return (
        "Press each string between the second and third frets: thin paper must still pass under it at the first. "
        "Where it does not, the slot is already too low."
    )


def setup_relief(
    neck_rod: str,
    action_fret: Count,
    strings_count: Count,
    relief_predicted_least: Mm,
    board_modulus_known: bool,
    neck_modulus_known: bool,
) -> Setup:
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
                n.heights_relief,
                "Gap half way under a straightedge on the first fret and the fret at the body",
                says("{} to {}", n.limit_relief_least, n.limit_relief_most),
                "straightedge, feelers",
            ),
            *_expected(neck_rod, relief_predicted_least),
            BigFigure(
                n.height_over_crown[1, action_fret],
                says("Treble string over the crown of fret {}", n.action_fret),
                says("± {}", n.limit_tolerance_height),
                "rule or feelers",
            ),
            BigFigure(
                n.height_over_crown[strings_count, action_fret],
                says("Bass string over the crown of fret {}", n.action_fret),
                says("± {}", n.limit_tolerance_height),
                "rule or feelers",
            ),
        ),
        (
            "Tune to pitch and leave it an hour: the neck settles.",
            _rod_step(neck_rod),
            says(
                "Then the action: the saddle moves {} times what fret {} is to move.",
                n.height_saddle_share[1],
                n.action_fret,
            ),
            "Look again after some weeks: wood goes on giving.",
        ),
        "Straightedge on the first fret and the fret at the body: the gap is largest half way. "
        + (
            "Largest elsewhere means a high fret or a kink"
            + ("." if neck_rod == "none" else ", which no rod takes out.")
        ),
        ("strings",) if neck_rod == "none" else ("strings", "rod"),
        (
            says("the strings' pull: {}", n.string_pull_said),
            *_stiffness(board_modulus_known and neck_modulus_known),
            *_back_bow(relief_predicted_least),
            *_rod_moment(neck_rod, relief_predicted_least),
        ),
        n.drawing_heights,
        (
            n.heights_relief,
            n.height_over_crown[1, action_fret],
            n.height_over_crown[strings_count, action_fret],
        ),
        instead=("rod",) if neck_rod == "none" else (),
    )


def _expected(rod: str, least: float) -> tuple[BigFigure, ...]:
    """What to expect without the help of a rod; nothing if no saw makes the slots, since then nobody knows."""
    if math.isnan(least):
        return ()
    when = "" if rod == "none" else " with the rod slack"
    return (
        BigFigure(n.relief_predicted_least, f"Expected{when}, at least (negative: bowed back)", "", "feelers"),
        BigFigure(n.relief_predicted_most, f"Expected{when}, at most", "", "feelers"),
    )


def _stiffness(known: bool) -> tuple[Text, ...]:
    """How stiff the woods are taken to be, and that it is a guess if no source says."""
    woods = says("and with {} and {} along the grain (board, neck)", n.board_modulus, n.neck_modulus)
    spread = says(", {} to {} times that", n.limit_modulus_least, n.limit_modulus_most)
    return (woods + spread + ("" if known else ": not known of the wood that is named, what is usual is taken"),)


def _back_bow(least: float) -> tuple[Text, ...]:
    return () if math.isnan(least) else (says("the frets push back by {} to {}", n.back_bow_least, n.back_bow_most),)


def _rod_moment(rod: str, least: float) -> tuple[Text, ...]:
    if rod == "none" or math.isnan(least):
        return ()
    return (
        says(
            "the rod bends the neck back with a moment between {} and {} "
            "(negative: forward, which a one-way rod cannot)",
            n.relief_rod_moment_least,
            n.relief_rod_moment_most,
        ),
    )


def _rod_step(rod: str) -> str:
    if rod == "none":
        return "What the straightedge shows stays, unless the board is planed or refretted."
    if rod == "one way":
        return "Turn the rod by eighths of a turn: tighter for less relief. It cannot put any in."
    return "Turn the rod by eighths of a turn: tighter for less relief, the other way for more."
