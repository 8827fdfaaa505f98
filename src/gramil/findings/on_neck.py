"""Verdicts on the neck: its angle and heel, the board's tongue, the wood left in it, relief, strings over the nut."""

import math

from gramil import names as n
from gramil.findings.finding import Finding, Findings, Severity, at_least, within
from gramil.quantities import Mm, PerFret, PerString, Radians, Ratio
from gramil.reference import says

OWNS = ("finding_",)


def finding_neck_angle(
    neck_angle_target: Radians, limit_neck_angle_least: Radians, limit_neck_angle_most: Radians
) -> Findings:
    """Whether the neck angle that heights, bridge and top ask for can be made."""
    low = neck_angle_target < limit_neck_angle_least
    inside = limit_neck_angle_least <= neck_angle_target <= limit_neck_angle_most
    return (
        Finding(
            "neck angle",
            "fine" if inside else "stop",
            n.neck_angle_target,
            neck_angle_target,
            n.limit_neck_angle_least if low else n.limit_neck_angle_most,
            "The angle, head back, that brings action, saddle, bridge and top together."
            if inside
            else "No neck is set at this angle: heights, board, bridge and top do not go together.",
            ""
            if inside
            else "Change the bridge's thickness, the board's, or what shows of the saddle; see that units are right.",
        ),
    )


def finding_neck_reset(
    neck_straightedge: Mm, neck_set_straightedge: Mm, heel_wedge_to_take: Mm, limit_heel_wedge: Mm
) -> Findings:
    """Whether a neck that is set already is set well enough, and what is to come off its heel if not."""
    if math.isnan(neck_straightedge):
        return ()
    over = neck_straightedge > neck_set_straightedge
    return (
        Finding(
            "neck as it is set",
            within(abs(heel_wedge_to_take), limit_heel_wedge, math.inf),
            n.heel_wedge_to_take,
            heel_wedge_to_take,
            n.limit_heel_wedge,
            "What would come off the heel at its cap to bring the neck to its target; negative is off at the board.",
            ("Take the wedge off at the board's end of the heel" if over else "Take the wedge off at the heel's cap")
            + says(", or live with a saddle that shows by {}.", n.neck_set_exposed)
            if abs(heel_wedge_to_take) > limit_heel_wedge
            else "",
        ),
    )


def finding_tongue(neck_set_tongue_gap: Mm, limit_tongue_gap: Mm) -> Findings:
    """Whether the board's tongue meets the top, or needs wood under it, or wood taken from under it."""
    off = abs(neck_set_tongue_gap) > limit_tongue_gap
    air = neck_set_tongue_gap > 0
    return (
        Finding(
            "tongue over the top",
            "note" if off else "fine",
            n.neck_set_tongue_gap,
            neck_set_tongue_gap,
            n.limit_tongue_gap,
            "Air under the board's tail end, neck set; negative is wood in the way.",
            ("Glue a wedge under the tongue." if air else "Plane the tongue's underside to fall away.") if off else "",
        ),
    )


def finding_under_channel(
    neck_section_under_channel: PerFret[Mm], scale_join: Ratio, neck_section_channel_depth: Mm, limit_under_rod: Mm
) -> Findings:
    """Whether rod and bars leave enough of the neck's wood under them."""
    if neck_section_channel_depth == 0:
        return ()
    along = neck_section_under_channel[: int(scale_join) + 1]
    fret = int(along.argmin())
    least = float(along[fret])
    return (
        Finding(
            "wood under rod and bars",
            at_least(least, limit_under_rod, 0.0),
            n.neck_section_under_channel[fret],
            least,
            n.limit_under_rod,
            "The least wood left under the deepest channel, on the centreline.",
            "A shallower rod or bar, or a deeper neck." if least < limit_under_rod else "",
        ),
    )


def finding_relief_too_much(
    relief_for_rod_least: Mm, relief_for_rod_most: Mm, neck_rod: str, limit_rod_reach: Mm, limit_relief_most: Mm
) -> Findings:
    """Whether the rod, if there is one, can bring the neck back to the relief asked for: judged over the range."""
    if math.isnan(relief_for_rod_least):
        return (_relief_not_judged("too much"),)
    reach = limit_rod_reach if neck_rod != "none" else limit_relief_most
    severity: Severity = "fine"
    if relief_for_rod_least > reach:
        severity = "stop"
    elif relief_for_rod_most > reach:
        severity = "caution"
    return (
        Finding(
            "relief, at its most",
            severity,
            n.relief_for_rod_most,
            relief_for_rod_most,
            n.limit_rod_reach if neck_rod != "none" else n.limit_relief_most,
            says(
                "At most so much over the relief asked for; at the least {}. An estimate with a range.",
                n.relief_for_rod_least,
            )
            + (" There is no truss rod." if neck_rod == "none" else ""),
            "Stiffen the neck: bars, a deeper section, a stiffer wood, or a truss rod." if severity != "fine" else "",
        ),
    )


def finding_relief_too_little(
    relief_predicted_least: Mm, relief_predicted_most: Mm, neck_rod: str, limit_rod_reach: Mm, limit_relief_least: Mm
) -> Findings:
    """Whether the strings can pull the neck into relief against its frets, or a rod can push it there."""
    if math.isnan(relief_predicted_least):
        return (_relief_not_judged("too little"),)
    push = limit_rod_reach if neck_rod == "two way" else 0.0
    severity: Severity = "fine"
    if relief_predicted_most + push < limit_relief_least:
        severity = "stop"
    elif relief_predicted_least + push < limit_relief_least:
        severity = "caution"
    return (
        Finding(
            "relief, at its least",
            severity,
            n.relief_predicted_least,
            relief_predicted_least,
            n.limit_relief_least,
            (
                "The least to expect with a slack rod"
                if neck_rod != "none"
                else "The least to expect without a truss rod"
            )
            + says(", frets pushing back most; at the most {}.", n.relief_predicted_most),
            "Looser tangs, relief planed into the board before fretting, or a rod that works both ways."
            if severity != "fine"
            else "",
        ),
    )


def _relief_not_judged(way: str) -> Finding:
    return Finding(
        f"relief, {way}",
        "not judged",
        n.relief_predicted_least,
        math.nan,
        None,
        "because no saw in the shop makes these slots, and so the frets' back-bow is not known",
        "List a saw that can make this cut.",
    )


def finding_break_at_nut(
    head_break_angle: PerString[Radians], limit_break_angle_least: Radians, limit_break_angle_most: Radians
) -> Findings:
    """Whether every string bears on the nut, and none breaks over it too sharply."""
    low, high = int(head_break_angle.argmin()), int(head_break_angle.argmax())
    flat, sharp = float(head_break_angle[low]), float(head_break_angle[high])
    return (
        Finding(
            "break over the nut, least",
            at_least(flat, limit_break_angle_least, 0.0),
            n.head_break_angle[low + 1],
            flat,
            n.limit_break_angle_least,
            "The string that bends least downward over the nut.",
            "More head angle, a lower post, or a tree that holds the string down."
            if flat < limit_break_angle_least
            else "",
        ),
        Finding(
            "break over the nut, most",
            within(sharp, limit_break_angle_most, math.inf),
            n.head_break_angle[high + 1],
            sharp,
            n.limit_break_angle_most,
            "The string that bends most downward over the nut: it binds, and wears its slot.",
            "Less head angle, or a higher post (or roller)." if sharp > limit_break_angle_most else "",
        ),
    )


def finding_sideways_at_nut(head_sideways_bend: PerString[Radians], limit_sideways_bend: Radians) -> Findings:
    """Whether every string runs straight enough over the nut to its post."""
    worst = int(abs(head_sideways_bend).argmax())
    bend = float(head_sideways_bend[worst])
    return (
        Finding(
            "sideways bend at the nut",
            within(abs(bend), limit_sideways_bend, math.inf),
            n.head_sideways_bend[worst + 1],
            bend,
            n.limit_sideways_bend,
            "The string that bends most sideways over the nut; toward the treble is positive.",
            says("Move its post nearer to {} from the centreline, treble positive.", n.head_straight_y[worst + 1])
            if abs(bend) > limit_sideways_bend
            else "",
        ),
    )
