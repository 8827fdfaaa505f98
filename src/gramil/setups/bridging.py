"""Set-ups for the strings' far end: placing the bridge, its slot, the saddle, stringing up, and setting in tune."""

from gramil import names as n
from gramil.quantities import Count, PerString, Ratio
from gramil.reference import Says, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table

OWNS = ("setup_",)


def setup_bridge(station_fanned: bool, foot_there: bool) -> Setup:
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
                n.bridge_front_from_octave,
                says("From the crown of fret {} to the front edge", n.action_fret),
                says("± {}", n.limit_tolerance_bridge),
                "rule",
            ),
            BigFigure(n.bridge_front_from_nut, "From the nut's face to the front edge", "for checking", "long rule"),
            BigFigure(n.bridge_front_from_join, "From the join to the front edge", "for checking", "rule"),
            BigFigure(
                n.saddle_position,
                "Zero line to the middle of the saddle's slot",
                says("± {}", n.limit_tolerance_bridge),
                "rule",
            ),
            BigFigure(
                n.bridge_spread,
                "Outer strings at the saddle, centre to centre",
                says("± {}", n.limit_tolerance_outline),
                "rule",
            ),
        ),
        (
            _as_it_stands(foot_there),
            "Stretch two threads along the outer strings' lines: they pass as far inside both edges of the board.",
            square
            if station_fanned
            else "Square the front edge to the centreline: both its ends as far from the fret.",
            "Fit the foot to the top, scribe round it, and scrape the finish away inside the line.",
            "Dry run with clamps and a caul inside before any glue is opened: nothing that reaches through the "
            "soundhole may bear on a brace or mark the top.",
        ),
        "From the crown of the octave's fret to the middle of the slot, at the treble string and at the bass string: "
        "half the string's own scale and its set-back. A bridge placed by the plan of another scale fails here.",
        ("knife", "scraper", "glue", "clamps"),
        (
            says("bridge {} by {}, {} thick at the saddle", n.bridge_length, n.bridge_width_square, n.bridge_thickness),
            says("the strings will turn it with {}; their pull together: {}", n.bridge_torque, n.string_pull_said),
        ),
        n.drawing_setup_bridge,
        (n.bridge_front_from_octave, n.saddle_position),
        on=stuff("bridge", "top"),
    )


PINNED = says(
    "Bore each pin's hole: {} behind the slot's middle on the centreline, {} apart.",
    n.bridge_hold_behind,
    n.bridge_hold_step,
)
PINNED_IN_ROWS = says(
    "Bore each pin's hole: the front row {} behind the slot's middle on the centreline, the second row {}; in a row "
    "{} apart, from row to row {}. Mark them through the drawing: each pair has a hole in either row.",
    n.bridge_hold_behind,
    n.bridge_hold_second,
    n.bridge_hold_step,
    n.bridge_hold_across,
)
TIED = says(
    "Cut the tie block's face {} behind the slot's middle on the centreline. Bore the strings' holes "
    "through the block from its back, along the strings, {} apart; in its face they come out "
    "{} under the bridge's top.",
    n.bridge_hold_behind,
    n.bridge_hold_step,
    n.bridge_hold_below,
)
"""How the bridge is worked for what holds the strings."""


def _as_it_stands(built_on: bool) -> str:
    first = "The board glued on and its frets dressed first" if built_on else "Set the neck first"
    return f"{first}: what is measured here is the instrument as it stands, not the plan."


def _bored(hold: str, row: PerString[Ratio]) -> Says:
    """How the bridge is bored: pins in one row or two, or a tie block."""
    if hold != "pins":
        return TIED
    return PINNED_IN_ROWS if row.max() > 1 else PINNED


def setup_saddle_slot(bridge_hold: str, bridge_hold_row: PerString[Ratio]) -> Setup:
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
                n.saddle_end_treble,
                "Zero line to the slot's middle, at its treble end",
                says("± {}", n.limit_tolerance_height),
                "rule",
            ),
            BigFigure(n.saddle_end_bass, "The same at its bass end", says("± {}", n.limit_tolerance_height), "rule"),
            BigFigure(n.saddle_thickness, "Wide, for a saddle that pushes in by hand", "a scrap of it", "the saddle"),
            BigFigure(n.saddle_length, "Long, with round ends", says("± {}", n.limit_tolerance_outline), "rule"),
            BigFigure(
                n.saddle_slot_depth,
                "Deep, under the bridge's top",
                says("± {}", n.limit_tolerance_height),
                "depth gauge",
            ),
            BigFigure(
                n.bridge_under_slot, "Left under it", says("{} or more", n.limit_under_saddle_slot), "worked out"
            ),
        ),
        (
            "Scribe the slot's middle through both ends; the bridge's drawing in the pack lays it over at true scale.",
            "Rout in passes between stops, the slot's floor flat and square to its walls.",
            _bored(bridge_hold, bridge_hold_row),
        ),
        "Push a scrap of the saddle in: it stands upright by itself and lifts out by hand. Lay the pack's "
        "drawing over the bridge: every break point falls on the saddle.",
        ("router", "hand drill"),
        (says("saddle's angle to a square line {}; holes {}", n.saddle_angle, n.bridge_pin_diameter),),
        n.drawing_setup_bridge,
        (n.saddle_thickness, n.saddle_slot_depth),
        on=stuff("bridge"),
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
            BigFigure(n.saddle_blank_height, "Blank, tall", "or a little more", "calipers"),
            BigFigure(n.saddle_length, "Blank, long", says("± {}", n.limit_tolerance_outline), "calipers"),
            BigFigure(n.saddle_thickness, "Blank, thick", "pushes in by hand", "calipers"),
        ),
        (
            "Flatten the foot first: a saddle that rocks in its slot gives no true height.",
            "Take the top to the card's curve, then string by string to the heights in the table.",
            "File each break point to its place off the middle; a line of pencil along the middle shows it.",
            "Slope the top back from each break point, so that the string leaves it there and nowhere else.",
        ),
        "Calipers over foot and top at the outer strings against the table; then the card slides over the whole top "
        "without light. A saddle turned end for end shows here.",
        ("files", "sanding"),
        (
            says("bridge's slot {} deep", n.saddle_slot_depth),
            says("break points are filed to {}", n.intonation_file_to),
        ),
        n.drawing_setup_saddle,
        (n.saddle_blank_height,),
        (
            Table(
                "String by string, treble first",
                (
                    ("over the slot's floor", n.saddle_tall),
                    ("over the bridge", n.neck_set_exposed),
                    ("set-back", n.saddle_set_back),
                    ("off the middle, tail positive", n.saddle_off_line),
                    ("down behind it", n.bridge_break_angle),
                ),
                tuple(range(1, strings_count + 1)),
                "string",
            ),
        ),
        on=stuff("bone"),
    )


SETTLES = "Leave it a day at pitch: top, neck and strings settle, and the action grows."
CREEPS = "Tune it up again for some days: nylon goes on stretching while top and neck settle, and the action grows."
"""How long the strings are left before anything is measured."""


def setup_strings(strings_count: Count, strings_course: PerString[Ratio], strings_plain: str) -> Setup:
    """String up: what each string is, what it sounds and pulls.

    Method: pulls at pitch; stretched over the speaking length only.
    Source: common practice.
    """
    courses = (("course", n.strings_course),) if strings_course[-1] < strings_count else ()
    return Setup(
        "strings",
        "String up",
        430,
        (
            BigFigure(n.string_pull_said, "All strings together pull", "", "worked out"),
            BigFigure(n.bridge_torque, "They turn the bridge with", says("to {}", n.bridge_torque_most), "worked out"),
            BigFigure(n.strings_a4, "Tuned with this A", "", "tuner"),
        ),
        (
            "Bring all strings up together, a little at a time, outer ones first.",
            CREEPS if strings_plain == "nylon" else SETTLES,
            "Then measure action, relief and pitch, and read them back.",
        ),
        "Each string's pitch against the table, twice round: strings still settling are not measured. A set in another "
        "tuning shows here.",
        ("strings",),
        (says("the strings are {}, wound ones {} over {}", n.strings_plain, n.strings_wrap, n.strings_core),),
        None,
        (n.string_pull_total,),
        (
            Table(
                "String by string, treble first",
                (
                    *courses,
                    ("thick", n.strings_gauges),
                    ("sounds", n.strings_frequency),
                    ("weighs", n.string_weight),
                    ("pulls", n.string_pull),
                    ("share of strength left", n.string_reserve),
                    ("drawn by", n.string_elongation),
                ),
                tuple(range(1, strings_count + 1)),
                "string",
            ),
        ),
        box_near="by the packets",
    )


def _of_pairs(paired: bool) -> tuple[BigFigure, ...]:
    """What either way of breaking a pair leaves, where there are pairs."""
    if not paired:
        return ()
    return (
        BigFigure(n.pair_rms_all_on_one, "Out if each pair broke at one place for both", "at its best", "worked out"),
        BigFigure(n.pair_rms_all_on_two, "Out if each string broke at its own", "at its best", "worked out"),
    )


def setup_in_tune(strings_count: Count, strings_course: PerString[Ratio], action_fret: Count) -> Setup:
    """Set in tune: what should be heard, and how far to file for what is.

    Method: read at the octave's fret and another, against the open string; each string retuned after each stroke.
    Source: anderson_beausoleil_2024
    """
    paired = bool(strings_course[-1] < strings_count)
    ways = (("a pair on one break point", n.pair_rms_on_one), ("on two", n.pair_rms_on_two)) if paired else ()
    return Setup(
        "in-tune",
        "Set in tune",
        440,
        (
            BigFigure(n.intonation_rms_all_before, "Out without any set-back, root mean square", "", "worked out"),
            BigFigure(n.intonation_rms_all_after, "Out as filed, root mean square", "", "worked out"),
            BigFigure(n.intonation_rms_best, "Out with nut and saddle at their best", "", "worked out"),
            *_of_pairs(paired),
            BigFigure(
                n.intonation_nut_best[1], "Where the nut would best stand, toward the first fret", "", "worked out"
            ),
        ),
        (
            "Set action and relief first: both change the pitch of every fret.",
            says("Tune the open string, press fret {} as it is played, and write down how sharp it is.", n.action_fret),
            "Slacken the string, and move its break point toward the tail by the table's figure for each cent sharp; "
            "flat, toward the nut.",
            "Retune, and read again: the open string has moved as well.",
        ),
        "The harmonic at the octave against the open string: nothing. A tuner or a string that fails this is not to "
        "be trusted with cents.",
        ("strings", "files"),
        (says("counted from fret {} to fret {}; sharp is positive", n.intonation_from_fret, n.intonation_to_fret),),
        None,
        tuple(n.intonation_cents_after[row, action_fret] for row in range(1, strings_count + 1)),
        (
            Table(
                "String by string, treble first",
                (
                    ("move for each cent at the octave", n.intonation_octave_move),
                    ("nut stands forward", n.intonation_nut_forward),
                    ("saddle set back", n.saddle_set_back),
                    ("best place of it", n.saddle_set_back_best),
                    ("out before", n.intonation_rms_before),
                    ("out as filed", n.intonation_rms_after),
                    *ways,
                ),
                tuple(range(1, strings_count + 1)),
                "string",
            ),
        ),
        box_near=says("± {}", n.limit_cents_worst),
        on=stuff("bone"),
    )
