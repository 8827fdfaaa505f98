"""Sheets of the solved top: the page *The top under the strings*, and the sheet by which its braces are shaved."""

from gramil import names as n
from gramil.reference import EACH, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped
from gramil.top.mode import Mode
from gramil.top.shaving import Shaving

OWNS = ("setup_",)
UNDER, VOICE = "top-under-strings", "voice-top"
NO_BODY = "No body is described: its top cannot be solved."


def setup_top_under_strings(mode_list: tuple[Mode, ...]) -> Setup:
    """The top under the strings: what the pull does, and how the top swings."""
    title = "The top under the strings"
    if not mode_list:
        return skipped(UNDER, title, 544, NO_BODY)
    modes = Table(
        "Its modes, nothing but the top moving; least and most by what the woods may be",
        (
            ("Hz", n.mode_list[EACH].hertz),
            ("± by mesh and model", n.mode_list[EACH].within),
            ("least", n.mode_list[EACH].least),
            ("most", n.mode_list[EACH].most),
            ("parts that move as one", n.mode_list[EACH].parts),
        ),
        tuple(each.name for each in mode_list),
        "mode",
    )
    return Setup(
        UNDER,
        title,
        544,
        (
            BigFigure(
                n.pulled_turn,
                "The bridge turns toward the neck",
                says("± {}: mesh and model", n.pulled_turn_within),
                "straightedge on the bridge, feelers",
            ),
            BigFigure(n.pulled_sink, "The top sinks ahead of it", says("± {}", n.pulled_sink_within), "dial gauge"),
            BigFigure(n.pulled_rise, "and rises behind it", says("± {}", n.pulled_rise_within), "dial gauge"),
            BigFigure(n.pulled_action, "That adds to the action at fret 12", "the top's own part", "feelers"),
            BigFigure(n.mode_air_lower, "Top and the box's air, the lower", "sides and back held", "a tap, a tuner"),
            BigFigure(n.mode_air_upper, "Top and the box's air, the upper", "sides and back held", "a tap, a tuner"),
        ),
        (
            says("All of it is {}: what creeps, and what rim and neck give, comes on top.", n.pulled_said),
            says(
                "The turn by what the woods may be: {} to {}; if the rim does not clamp: {}.",
                n.pulled_turn_least,
                n.pulled_turn_most,
                n.pulled_turn_supported,
            ),
            says(
                "In the driest air {}, in the dampest {}; after years, by a range of practice, {} to {}.",
                n.pulled_turn_dry,
                n.pulled_turn_damp,
                n.pulled_turn_crept_least,
                n.pulled_turn_crept_most,
            ),
            says(
                "It sinks most {} and rises most {} from the body's edge; strained most: the top by {}, {} by {}.",
                n.pulled_sink_x,
                n.pulled_rise_x,
                n.pulled_strain_top,
                n.pulled_strained_brace,
                n.pulled_strain_brace,
            ),
            says("Held to be: top {}, braces {}.", n.top_wood, n.top_brace_wood),
        ),
        "",
        (),
        boxes=(n.pulled_turn, n.pulled_rise, n.mode_list["mode 1"].hertz),
        box_near="by the band below",
        drawing=n.drawing_top_modes,
        tables=(modes,),
        notes=("Not judged: what the rim and the glue give, run-out, and what a player would hear.",),
    )


def setup_voice_top(shaving_list: tuple[Shaving, ...]) -> Setup:
    """Shave the top's braces: what a millimetre off each does, how much each still has, and where it tells most."""
    title = "Voice the top"
    if not shaving_list:
        return skipped(VOICE, title, 545, NO_BODY)
    each = n.shaving_list[EACH]
    table = Table(
        says("For {} off a brace's height, twins alike: read a tenth of it for a tenth", n.shaving_step),
        (
            ("bridge turns more, hundredths of a degree", each.turn_in_hundredths),
            ("sinks more", each.sink),
            ("rises more", each.rise),
            ("first mode, Hz", each.first),
            ("second", each.second),
            ("third", each.third),
            ("it still has", each.room),
        ),
        tuple(row.name for row in shaving_list),
        "brace",
    )
    placing = Table(
        says(
            "Before they are glued: for {} more width, and {} square to itself toward the tail",
            n.shaving_step,
            n.shaving_step,
        ),
        (
            ("wider: bridge turns more, hundredths of a degree", each.wider_turn_in_hundredths),
            ("first mode, Hz", each.wider_first),
            ("moved: bridge turns more", each.aside_turn_in_hundredths),
            ("first mode, Hz", each.aside_first),
        ),
        tuple(row.name for row in shaving_list),
        "brace",
    )
    return Setup(
        VOICE,
        title,
        545,
        (
            BigFigure(n.pulled_turn, "The bridge will turn, as the braces are", says("± {}", n.pulled_turn_within)),
            BigFigure(n.mode_list["mode 1"].hertz, "First mode", says("± {}", n.mode_list["mode 1"].within), "a tap"),
        ),
        (
            says("All of it is {}.", n.pulled_said),
            "Take shavings in turn from both sides; weigh, flex and tap after each.",
            "Rings on the drawing: where a shaving there alone turns the bridge most.",
            "Small amounts add up; after large ones ask again with the braces as they are.",
        ),
        "",
        ("edge tools", "sanding"),
        drawing=n.drawing_setup_voice,
        tables=(table, placing),
        on=stuff("braces"),
    )
