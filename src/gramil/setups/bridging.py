"""Set-ups for the strings' far end: placing the bridge, its slot, the saddle, stringing up, and setting in tune."""

from gramil.quantities import Count
from gramil.setups.lines import BY_HAND, POWERED
from gramil.setups.setup import BigFigure, Setup, Table

OWNS = ("setup_",)

STRUNG = "Strings under tension store energy: eyes away from them, and slacken before anything is cut. "


def setup_bridge(station_fanned: bool) -> Setup:
    """Place the bridge, measured from the frets as they are, once the neck is set.

    Method: front edge from the octave's fret; the saddle's line, not the bridge's, decides.
    Source: common practice.
    """
    square = "The frets fan, and the bridge leans with the scales' ends: measure along both outer strings."
    return Setup(
        "bridge",
        "Place the bridge",
        400,
        (
            BigFigure(
                "bridge_front_from_octave",
                "From the crown of fret {action_fret} to the front edge",
                "± {limit_tolerance_bridge}",
                "rule",
            ),
            BigFigure("bridge_front_from_nut", "From the nut's face to the front edge", "for checking", "long rule"),
            BigFigure("bridge_front_from_join", "From the join to the front edge", "for checking", "rule"),
            BigFigure(
                "saddle_position", "Zero line to the middle of the saddle's slot", "± {limit_tolerance_bridge}", "rule"
            ),
            BigFigure(
                "bridge_spread", "Outer strings at the saddle, centre to centre", "± {limit_tolerance_outline}", "rule"
            ),
        ),
        (
            "Set the neck first: what is measured here is the instrument as it stands, not the plan.",
            "Stretch two threads along the outer strings' lines: they pass as far inside both edges of the board.",
            square
            if station_fanned
            else "Square the front edge to the centreline: both its ends as far from the fret.",
            "Fit the foot to the dome, scribe round it, and scrape the finish away inside the line.",
            "Dry run with clamps and a caul inside before any glue is opened.",
        ),
        "From the crown of the octave's fret to the middle of the slot, at the treble string and at the bass string: "
        "half the string's own scale and its set-back. A bridge placed by the plan of another scale fails here.",
        ("Clamps through the soundhole: nothing may bear on a brace or mark the top. " + BY_HAND,),
        (
            "bridge {bridge_length} by {bridge_width}, {bridge_thickness} thick at the saddle",
            "the strings will turn it with {bridge_torque}, pulling {string_pull_total} together",
        ),
        "setup-bridge",
        ("bridge_front_from_octave", "saddle_position"),
    )


PINNED = (
    "Bore each pin's hole: {bridge_hold_behind} behind the slot's middle on the centreline, {bridge_hold_step} apart."
)
TIED = (
    "Cut the tie block's face {bridge_hold_behind} behind the slot's middle on the centreline. Bore the strings' holes "
    "through the block from its back, along the strings, {bridge_hold_step} apart; in its face they come out "
    "{bridge_hold_below} under the bridge's top."
)
"""How the bridge is worked for what holds the strings."""


def setup_saddle_slot(bridge_hold: str) -> Setup:
    """Rout the slot for the saddle, and bore for the strings.

    Method: the slot follows the line nearest to all break points.
    Source: common practice.
    """
    return Setup(
        "saddle-slot",
        "Cut the saddle's slot",
        410,
        (
            BigFigure(
                "saddle_end_treble",
                "Zero line to the slot's middle, at its treble end",
                "± {limit_tolerance_height}",
                "rule",
            ),
            BigFigure("saddle_end_bass", "The same at its bass end", "± {limit_tolerance_height}", "rule"),
            BigFigure("saddle_thickness", "Wide, for a saddle that pushes in by hand", "a scrap of it", "the saddle"),
            BigFigure("saddle_length", "Long, with round ends", "± {limit_tolerance_outline}", "rule"),
            BigFigure("saddle_slot_depth", "Deep, under the bridge's top", "± {limit_tolerance_height}", "depth gauge"),
            BigFigure("bridge_under_slot", "Left under it", "{limit_under_saddle_slot} or more", "worked out"),
        ),
        (
            "Scribe the slot's middle through both ends; the bridge's drawing in the pack lays it over at true scale.",
            "Rout in passes between stops, the slot's floor flat and square to its walls.",
            PINNED if bridge_hold == "pins" else TIED,
        ),
        "Push a scrap of the saddle in: it stands upright by itself and lifts out by hand. Lay the pack's "
        "drawing over the bridge: every break point falls on the saddle.",
        ("A small cutter in hard wood: light passes, the bridge clamped. " + POWERED,),
        ("saddle's angle to a square line {saddle_angle}; holes {bridge_pin_diameter}",),
        "setup-bridge",
        ("saddle_thickness", "saddle_slot_depth"),
    )


def setup_saddle(strings_count: Count) -> Setup:
    """Shape the saddle: its heights string by string, and where each string breaks over it.

    Method: heights for the wanted action with the neck as it is made; break points from their set-backs.
    Source: common practice.
    """
    return Setup(
        "saddle",
        "Shape the saddle",
        420,
        (
            BigFigure("saddle_blank_height", "Blank, tall", "or a little more", "calipers"),
            BigFigure("saddle_length", "Blank, long", "± {limit_tolerance_outline}", "calipers"),
            BigFigure("saddle_thickness", "Blank, thick", "pushes in by hand", "calipers"),
        ),
        (
            "Flatten the foot first: a saddle that rocks in its slot gives no true height.",
            "Take the top to the card's curve, then string by string to the heights in the table.",
            "File each break point to its place off the middle; a line of pencil along the middle shows it.",
            "Slope the top back from each break point, so that the string leaves it there and nowhere else.",
        ),
        "Calipers over foot and top at the outer strings against the table; then the card slides over the whole top "
        "without light. A saddle turned end for end shows here.",
        ("Bone dust: wet the work or wear a mask. " + BY_HAND,),
        ("bridge's slot {saddle_slot_depth} deep", "break points are filed to {intonation_file_to}"),
        "setup-saddle",
        ("saddle_blank_height",),
        (
            Table(
                "String by string, treble first",
                (
                    ("over the slot's floor", "saddle_tall"),
                    ("over the bridge", "neck_set_exposed"),
                    ("set-back", "saddle_set_back"),
                    ("off the middle, tail positive", "saddle_off_line"),
                    ("down behind it", "bridge_break_angle"),
                ),
                tuple(range(1, strings_count + 1)),
                "string",
            ),
        ),
    )


SETTLES = "Leave it a day at pitch: top, neck and strings settle, and the action grows."
CREEPS = "Tune it up again for some days: nylon goes on stretching while top and neck settle, and the action grows."
"""How long the strings are left before anything is measured."""


def setup_strings(strings_count: Count, strings_plain: str) -> Setup:
    """String up: what each string is, what it sounds and pulls.

    Method: pulls at pitch; stretched over the speaking length only.
    Source: common practice.
    """
    return Setup(
        "strings",
        "String up",
        430,
        (
            BigFigure("string_pull_total", "All strings together pull", "", "worked out"),
            BigFigure("bridge_torque", "They turn the bridge with", "to {limit_torque_most}", "worked out"),
            BigFigure("strings_a4", "Tuned with this A", "", "tuner"),
        ),
        (
            "Bring all strings up together, a little at a time, outer ones first.",
            CREEPS if strings_plain == "nylon" else SETTLES,
            "Then measure action, relief and pitch, and read them back.",
        ),
        "Each string's pitch against the table, twice round: strings still settling are not measured. A set in another "
        "tuning shows here.",
        (STRUNG + BY_HAND,),
        ("the strings are {strings_plain}, wound ones {strings_wrap} over {strings_core}",),
        "",
        ("string_pull_total",),
        (
            Table(
                "String by string, treble first",
                (
                    ("thick", "strings_gauges"),
                    ("sounds", "strings_frequency"),
                    ("weighs", "string_weight"),
                    ("pulls", "string_pull"),
                    ("share of strength left", "string_reserve"),
                    ("drawn by", "string_elongation"),
                ),
                tuple(range(1, strings_count + 1)),
                "string",
            ),
        ),
    )


def setup_in_tune(strings_count: Count, action_fret: Count) -> Setup:
    """Set in tune: what should be heard, and how far to file for what is.

    Method: read at the octave's fret and another, against the open string; each string retuned after each stroke.
    Source: anderson_beausoleil_2024
    """
    return Setup(
        "in-tune",
        "Set in tune",
        440,
        (
            BigFigure("intonation_rms_all_before", "Out without any set-back, root mean square", "", "worked out"),
            BigFigure("intonation_rms_all_after", "Out as filed, root mean square", "", "worked out"),
            BigFigure("intonation_rms_best", "Out with nut and saddle at their best", "", "worked out"),
            BigFigure(
                "intonation_nut_best[1]", "Where the nut would best stand, toward the first fret", "", "worked out"
            ),
        ),
        (
            "Set action and relief first: both change the pitch of every fret.",
            "Tune the open string, press fret {action_fret} as it is played, and write down how sharp it is.",
            "Move the break point toward the tail by the table's figure for each cent sharp; flat, toward the nut.",
            "Retune, and read again: the open string has moved as well.",
        ),
        "The harmonic at the octave against the open string: nothing. A tuner or a string that fails this is not to "
        "be trusted with cents.",
        ("Slacken a string before its saddle is filed. " + STRUNG + BY_HAND,),
        ("counted from fret {intonation_from_fret} to fret {intonation_to_fret}; sharp is positive",),
        "",
        tuple(f"intonation_cents_after[{row}, {action_fret}]" for row in range(1, strings_count + 1)),
        (
            Table(
                "String by string, treble first",
                (
                    ("move for each cent at the octave", "intonation_octave_move"),
                    ("nut stands forward", "intonation_nut_forward"),
                    ("saddle set back", "saddle_set_back"),
                    ("best place of it", "saddle_set_back_best"),
                    ("out before", "intonation_rms_before"),
                    ("out as filed", "intonation_rms_after"),
                ),
                tuple(range(1, strings_count + 1)),
                "string",
            ),
        ),
    )
