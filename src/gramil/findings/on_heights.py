"""Verdicts on the heights of the strings: action, nut, relief asked for, crowns left, saddle, height over the top."""

from gramil import names as n
from gramil.findings.finding import Findings
from gramil.findings.threshold import ROUNDING, at_least, at_most, between, judged
from gramil.quantities import Count, Mm, PerString, PerStringFret

OWNS = ("finding_",)

CLEAR = 2 * ROUNDING
"""In mm: a string that stands no higher over a crown lies on it."""

ASKED = "The action asked for at fret 12, against what is usual for such strings."
OUT_OF_USE = "Choose an action inside the band, or keep it if the player asks for it."
TO_MEND_SADDLE = "Change the neck's angle or the bridge's thickness; the wedge for the heel says how much."


def finding_action_bass(heights_action_bass: Mm, limit_action_bass_least: Mm, limit_action_bass_most: Mm) -> Findings:
    """Whether the bass string's action is in common use."""
    band = between(
        (n.limit_action_bass_least, limit_action_bass_least), (n.limit_action_bass_most, limit_action_bass_most), "note"
    )
    return (judged("action, bass", n.heights_action_bass, heights_action_bass, band, ASKED, OUT_OF_USE),)


def finding_action_treble(
    heights_action_treble: Mm, limit_action_treble_least: Mm, limit_action_treble_most: Mm
) -> Findings:
    """Whether the treble string's action is in common use."""
    band = between(
        (n.limit_action_treble_least, limit_action_treble_least),
        (n.limit_action_treble_most, limit_action_treble_most),
        "note",
    )
    return (judged("action, treble", n.heights_action_treble, heights_action_treble, band, ASKED, OUT_OF_USE),)


def finding_string_on_crown(height_over_crown: PerStringFret[Mm]) -> Findings:
    """Whether every open string clears every crown, relief in."""
    over = height_over_crown[:, 1:]
    string, fret = divmod(int(over.argmin()), over.shape[1])
    least = float(over[string, fret])
    return (
        judged(
            "open strings over the crowns",
            n.height_over_crown[string + 1, fret + 1],
            least,
            at_least(None, CLEAR, "stop"),
            "The open string nearest to a crown, relief in.",
            "Raise the action or the nut, or ask for less relief.",
        ),
    )


def finding_nut_slots(
    nut_slot_over_first: PerString[Mm],
    limit_nut_first_least: Mm,
    limit_nut_first_most: Mm,
    action_nut_fret: Count,
    scale_zero_fret: bool,
) -> Findings:
    """Whether the nut's slots leave the open strings at a good height over fret 1."""
    if scale_zero_fret:
        return ()
    low, high = int(nut_slot_over_first.argmin()), int(nut_slot_over_first.argmax())
    least, most = float(nut_slot_over_first[low]), float(nut_slot_over_first[high])
    remedy = "Give other heights at the nut."
    if action_nut_fret == 0:
        remedy += " They are given over the zero line here; over fret 1 the strings stand higher."
    slots = "nut slots, "
    return (
        judged(
            slots + "lowest",
            n.nut_slot_over_first[low + 1],
            least,
            at_least(n.limit_nut_first_least, limit_nut_first_least, stop=0.0),
            "The open string that lies lowest over the crown of fret 1.",
            remedy,
        ),
        judged(
            slots + "highest",
            n.nut_slot_over_first[high + 1],
            most,
            at_most(n.limit_nut_first_most, limit_nut_first_most, stop=3 * limit_nut_first_most),
            "The open string that lies highest over the crown of fret 1.",
            remedy,
        ),
    )


def finding_relief_wanted(heights_relief: Mm, limit_relief_least: Mm, limit_relief_most: Mm) -> Findings:
    """Whether the relief asked for is in common use."""
    return (
        judged(
            "relief asked for",
            n.heights_relief,
            heights_relief,
            between(
                (n.limit_relief_least, limit_relief_least),
                (n.limit_relief_most, limit_relief_most),
                "note",
            ),
            "The relief asked for, against what is usual for such strings.",
            "Less buzzes low on the neck, more is hard to play half way up.",
        ),
    )


def finding_body_rise(heights_body_rise: Mm, limit_body_rise_least: Mm, limit_body_rise_most: Mm) -> Findings:
    """Whether what the body is reckoned to give under the pull is in common experience."""
    return (
        judged(
            "what the body gives",
            n.heights_body_rise,
            heights_body_rise,
            between(
                (n.limit_body_rise_least, limit_body_rise_least),
                (n.limit_body_rise_most, limit_body_rise_most),
                "note",
            ),
            "The neck is set this much lower because the action grows when the strings pull; it is a setting.",
            "Measure the action of a like instrument strung and slack, and put in half of what is not the neck's own.",
        ),
    )


def finding_crown_left(crown_height: Mm, limit_crown_least: Mm) -> Findings:
    """Whether dressing leaves the frets high enough."""
    return (
        judged(
            "crowns after dressing",
            n.crown_height,
            crown_height,
            at_least(n.limit_crown_least, limit_crown_least, stop=0.0),
            "What levelling and dressing leave of the wire's crown.",
            "A higher wire, or a flatter board before fretting.",
        ),
    )


def finding_saddle_exposed(neck_set_exposed_mean: Mm, limit_exposed_least: Mm, limit_exposed_most: Mm) -> Findings:
    """Whether the saddle shows as much as it should for the wanted action, the neck as it is made."""
    return (
        judged(
            "saddle over the bridge",
            n.neck_set_exposed_mean,
            neck_set_exposed_mean,
            between(
                (n.limit_exposed_least, limit_exposed_least),
                (n.limit_exposed_most, limit_exposed_most),
                "caution",
            ),
            "The mean of what will show under the strings for the wanted action, the neck as it is made.",
            TO_MEND_SADDLE,
        ),
    )


def finding_saddle_low(neck_set_exposed: PerString[Mm], limit_exposed_stop_least: Mm) -> Findings:
    """Whether every string still breaks over the saddle."""
    string = int(neck_set_exposed.argmin())
    least = float(neck_set_exposed[string])
    return (
        judged(
            "saddle, lowest string",
            n.neck_set_exposed[string + 1],
            least,
            at_least(n.limit_exposed_stop_least, limit_exposed_stop_least, "stop"),
            "What will show of the saddle under the string where it is lowest.",
            TO_MEND_SADDLE,
        ),
    )


def finding_saddle_high(neck_set_exposed: PerString[Mm], limit_exposed_stop_most: Mm) -> Findings:
    """Whether the saddle stays so low that it does not tip in its slot."""
    string = int(neck_set_exposed.argmax())
    most = float(neck_set_exposed[string])
    return (
        judged(
            "saddle, highest string",
            n.neck_set_exposed[string + 1],
            most,
            at_most(n.limit_exposed_stop_most, limit_exposed_stop_most, "stop"),
            "What will show of the saddle under the string where it is highest.",
            TO_MEND_SADDLE,
        ),
    )


def finding_over_top(neck_set_over_top_mean: Mm, limit_over_top_least: Mm, limit_over_top_most: Mm) -> Findings:
    """Whether the strings stand over the top as they usually do at the saddle."""
    return (
        judged(
            "strings over the top",
            n.neck_set_over_top_mean,
            neck_set_over_top_mean,
            between(
                (n.limit_over_top_least, limit_over_top_least),
                (n.limit_over_top_most, limit_over_top_most),
                "note",
            ),
            "The strings' mean height over the top at the saddle, against what is usual for such strings.",
            "It is the lever on the top: a thinner or thicker bridge, and the neck's angle with it.",
        ),
    )
