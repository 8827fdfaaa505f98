"""Verdicts on the heights of the strings: action, nut, relief asked for, crowns left, saddle, height over the top."""

from typing import Any

from gramil import names as n
from gramil.findings.finding import Finding, Findings, Severity, at_least, within
from gramil.quantities import Count, Mm, PerString, PerStringFret
from gramil.reference import Ref

OWNS = ("finding_",)

ROUNDING = 1e-9
"""What is on a limit is inside it, in mm."""
TO_MEND_SADDLE = "Change the neck's angle or the bridge's thickness; the wedge for the heel says how much."


Given = tuple[Ref[Any], float]
"""A figure and its value."""


def finding_action_bass(heights_action_bass: Mm, limit_action_bass_least: Mm, limit_action_bass_most: Mm) -> Findings:
    """Whether the bass string's action is in common use."""
    return (
        _action(
            "bass",
            (n.heights_action_bass, heights_action_bass),
            (n.limit_action_bass_least, limit_action_bass_least),
            (n.limit_action_bass_most, limit_action_bass_most),
        ),
    )


def finding_action_treble(
    heights_action_treble: Mm, limit_action_treble_least: Mm, limit_action_treble_most: Mm
) -> Findings:
    """Whether the treble string's action is in common use."""
    return (
        _action(
            "treble",
            (n.heights_action_treble, heights_action_treble),
            (n.limit_action_treble_least, limit_action_treble_least),
            (n.limit_action_treble_most, limit_action_treble_most),
        ),
    )


def _action(side: str, action: Given, least: Given, most: Given) -> Finding:
    return _in_band(
        f"action, {side}",
        *action,
        least,
        most,
        "The action asked for at fret 12, against what is usual for such strings.",
        "Choose an action inside the band, or keep it if the player asks for it.",
    )


def _in_band(
    name: str,
    address: Ref[Any],
    value: float,
    least: Given,
    most: Given,
    says: str,
    remedy: str,
    outside: Severity = "note",
) -> Finding:
    """A verdict on a figure that should lie between two limits, each given as its name and value."""
    low, high = value < least[1] - ROUNDING, value > most[1] + ROUNDING
    limit = least[0] if low else most[0]
    return Finding(name, outside if low or high else "fine", address, value, limit, says, remedy if low or high else "")


def finding_string_on_crown(height_over_crown: PerStringFret[Mm]) -> Findings:
    """Whether every open string clears every crown, relief in."""
    over = height_over_crown[:, 1:]
    string, fret = divmod(int(over.argmin()), over.shape[1])
    least = float(over[string, fret])
    return (
        Finding(
            "open strings over the crowns",
            "fine" if least > 0 else "stop",
            n.height_over_crown[string + 1, fret + 1],
            least,
            None,
            "The open string nearest to a crown, relief in.",
            "Raise the action or the nut, or ask for less relief." if least <= 0 else "",
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
        Finding(
            slots + "lowest",
            at_least(least + ROUNDING, limit_nut_first_least, 0.0),
            n.nut_slot_over_first[low + 1],
            least,
            n.limit_nut_first_least,
            "The open string that lies lowest over the crown of fret 1.",
            remedy if least < limit_nut_first_least - ROUNDING else "",
        ),
        Finding(
            slots + "highest",
            within(most - ROUNDING, limit_nut_first_most, 3 * limit_nut_first_most),
            n.nut_slot_over_first[high + 1],
            most,
            n.limit_nut_first_most,
            "The open string that lies highest over the crown of fret 1.",
            remedy if most > limit_nut_first_most + ROUNDING else "",
        ),
    )


def finding_relief_wanted(heights_relief: Mm, limit_relief_least: Mm, limit_relief_most: Mm) -> Findings:
    """Whether the relief asked for is in common use."""
    return (
        _in_band(
            "relief asked for",
            n.heights_relief,
            heights_relief,
            (n.limit_relief_least, limit_relief_least),
            (n.limit_relief_most, limit_relief_most),
            "The relief asked for, against what is usual for such strings.",
            "Less buzzes low on the neck, more is hard to play half way up.",
        ),
    )


def finding_body_rise(heights_body_rise: Mm, limit_body_rise_least: Mm, limit_body_rise_most: Mm) -> Findings:
    """Whether what the body is reckoned to give under the pull is in common experience."""
    return (
        _in_band(
            "what the body gives",
            n.heights_body_rise,
            heights_body_rise,
            (n.limit_body_rise_least, limit_body_rise_least),
            (n.limit_body_rise_most, limit_body_rise_most),
            "The neck is set so much lower because the action grows when the strings pull; it is a setting.",
            "Measure the action of a like instrument strung and slack, and put in half of what is not the neck's own.",
        ),
    )


def finding_crown_left(crown_height: Mm, limit_crown_least: Mm) -> Findings:
    """Whether dressing leaves the frets high enough."""
    return (
        Finding(
            "crowns after dressing",
            at_least(crown_height + ROUNDING, limit_crown_least, 0.0),
            n.crown_height,
            crown_height,
            n.limit_crown_least,
            "What levelling and dressing leave of the wire's crown.",
            "A higher wire, or a flatter board before fretting." if crown_height < limit_crown_least else "",
        ),
    )


def finding_saddle_exposed(neck_set_exposed_mean: Mm, limit_exposed_least: Mm, limit_exposed_most: Mm) -> Findings:
    """Whether the saddle shows as much as it should for the wanted action, the neck as it is made."""
    return (
        _in_band(
            "saddle over the bridge",
            n.neck_set_exposed_mean,
            neck_set_exposed_mean,
            (n.limit_exposed_least, limit_exposed_least),
            (n.limit_exposed_most, limit_exposed_most),
            "The mean of what will show under the strings for the wanted action, the neck as it is made.",
            TO_MEND_SADDLE,
            "caution",
        ),
    )


def finding_saddle_low(neck_set_exposed: PerString[Mm], limit_exposed_stop_least: Mm) -> Findings:
    """Whether every string still breaks over the saddle."""
    string = int(neck_set_exposed.argmin())
    least = float(neck_set_exposed[string])
    return (
        Finding(
            "saddle, lowest string",
            at_least(least + ROUNDING, limit_exposed_stop_least, limit_exposed_stop_least),
            n.neck_set_exposed[string + 1],
            least,
            n.limit_exposed_stop_least,
            "What will show of the saddle under the string where it is lowest.",
            TO_MEND_SADDLE if least < limit_exposed_stop_least else "",
        ),
    )


def finding_saddle_high(neck_set_exposed: PerString[Mm], limit_exposed_stop_most: Mm) -> Findings:
    """Whether the saddle stays so low that it does not tip in its slot."""
    string = int(neck_set_exposed.argmax())
    most = float(neck_set_exposed[string])
    return (
        Finding(
            "saddle, highest string",
            within(most - ROUNDING, limit_exposed_stop_most, limit_exposed_stop_most),
            n.neck_set_exposed[string + 1],
            most,
            n.limit_exposed_stop_most,
            "What will show of the saddle under the string where it is highest.",
            TO_MEND_SADDLE if most > limit_exposed_stop_most else "",
        ),
    )


def finding_over_top(neck_set_over_top_mean: Mm, limit_over_top_least: Mm, limit_over_top_most: Mm) -> Findings:
    """Whether the strings stand over the top as they usually do at the saddle."""
    return (
        _in_band(
            "strings over the top",
            n.neck_set_over_top_mean,
            neck_set_over_top_mean,
            (n.limit_over_top_least, limit_over_top_least),
            (n.limit_over_top_most, limit_over_top_most),
            "The strings' mean height over the top at the saddle, against what is usual for such strings.",
            "It is the lever on the top: a thinner or thicker bridge, and the neck's angle with it.",
        ),
    )
