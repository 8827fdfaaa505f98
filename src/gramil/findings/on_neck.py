"""Verdicts on the neck: its angle and heel, the board's tongue, the wood left in it, relief, strings over the nut."""

import math

from gramil import names as n
from gramil.findings.finding import Finding, Findings
from gramil.findings.threshold import at_least, at_most, judged, not_judged, saying
from gramil.quantities import Mm, MPa, Newton, PerFret, PerString, Radians, Ratio
from gramil.reference import says

OWNS = ("finding_",)
NO_JOIN, SAY_JOIN = "because the fret at the body is not known", "Count it, and write scale.join."


def finding_neck_angle(
    neck_angle_target: Radians, limit_neck_angle_least: Radians, limit_neck_angle_most: Radians
) -> Findings:
    """Whether the neck angle that heights, bridge and top ask for can be made."""
    none = "No neck is set at this angle: heights, board, bridge and top do not go together."
    return (
        judged(
            "neck angle",
            n.neck_angle_target,
            neck_angle_target,
            saying(at_least(n.limit_neck_angle_least, limit_neck_angle_least, "stop"), none)
            + saying(at_most(n.limit_neck_angle_most, limit_neck_angle_most, "stop"), none),
            "The angle, head back, that brings action, saddle, bridge and top together.",
            "Change the bridge's thickness, the board's, or what shows of the saddle; see that units are right.",
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
        judged(
            "neck as it is set",
            n.heel_wedge_to_take,
            heel_wedge_to_take,
            at_most(n.limit_heel_wedge, limit_heel_wedge, of=abs(heel_wedge_to_take)),
            "What would come off the heel at its cap to bring the neck to its target; negative is off at the board.",
            ("Take the wedge off at the board's end of the heel" if over else "Take the wedge off at the heel's cap")
            + says(", or live with a saddle that shows by {}.", n.neck_set_exposed),
        ),
    )


def finding_tongue(neck_set_tongue_gap: Mm, limit_tongue_gap: Mm) -> Findings:
    """Whether the board's tongue meets the top, or needs wood under it, or wood taken from under it."""
    air = neck_set_tongue_gap > 0
    return (
        judged(
            "tongue over the top",
            n.neck_set_tongue_gap,
            neck_set_tongue_gap,
            at_most(n.limit_tongue_gap, limit_tongue_gap, "note", of=abs(neck_set_tongue_gap)),
            "Air under the board's tail end, neck set; negative is wood in the way.",
            "Glue a wedge under the tongue." if air else "Plane the tongue's underside to fall away.",
        ),
    )


def finding_under_channel(
    neck_section_under_channel: PerFret[Mm],
    scale_join: Ratio,
    neck_section_channel_depth: Mm,
    limit_under_rod: Mm,
    neck_rod: str,
) -> Findings:
    """Whether rod and bars leave enough of the neck's wood under them."""
    if neck_section_channel_depth == 0:
        return ()
    if math.isnan(scale_join):
        return (not_judged("wood under the rod's channel", n.neck_section_under_channel[1], NO_JOIN, SAY_JOIN),)
    along = neck_section_under_channel[: int(scale_join) + 1]
    fret = int(along.argmin())
    least = float(along[fret])
    return (
        judged(
            f"wood under {'the bars' if neck_rod == 'none' else 'rod and bars'}",
            n.neck_section_under_channel[fret],
            least,
            at_least(n.limit_under_rod, limit_under_rod, stop=0.0),
            "The least wood left under the deepest channel, on the centreline.",
            f"A shallower {'bar' if neck_rod == 'none' else 'rod or bar'}, or a deeper neck.",
        ),
    )


def finding_wood_stiffness(
    board_modulus: MPa, board_modulus_known: bool, neck_modulus: MPa, neck_modulus_known: bool
) -> Findings:
    """Whether it is known how stiff the woods of board and neck are; where it is not, what is reckoned with."""
    asked = (
        ("board", n.board_modulus, board_modulus, board_modulus_known, n.board_wood),
        ("neck", n.neck_modulus, neck_modulus, neck_modulus_known, n.carve_wood),
    )
    return tuple(
        Finding(
            f"stiffness of the {part}'s wood",
            "note",
            figure,
            value,
            None,
            says("No source gives how stiff {} is: relief and back-bow are worked out with {}.", wood, figure),
            f"Name its kind as the list of woods has it, or measure it and write {part}.modulus.",
        )
        for part, figure, value, known, wood in asked
        if not known
    )


def finding_relief_too_much(
    relief_for_rod_least: Mm,
    relief_for_rod_most: Mm,
    neck_rod: str,
    limit_rod_reach: Mm,
    limit_relief_most: Mm,
    string_pull_total: Newton,
) -> Findings:
    """Whether the rod, if there is one, can bring the neck back to the relief asked for: judged over the range."""
    name = "relief, at its most"
    stiffer = "a stiffer wood, or a truss rod" if neck_rod != "none" else "or a stiffer wood"
    remedy = f"Stiffen the neck: bars, a deeper section, {stiffer}."
    if math.isnan(relief_for_rod_least):
        return (_relief_not_judged("too much", string_pull_total),)
    reach = (n.limit_rod_reach, limit_rod_reach) if neck_rod != "none" else (n.limit_relief_most, limit_relief_most)
    if math.isinf(relief_for_rod_most):
        return (_folds(name, relief_for_rod_least, reach[1], string_pull_total, remedy),)
    return (
        judged(
            name,
            n.relief_for_rod_most,
            relief_for_rod_most,
            at_most(*reach, "stop", of=relief_for_rod_least) + at_most(*reach),
            says(
                "At most it lies this far over the relief asked for; at the least {}. An estimate with a range.",
                n.relief_for_rod_least,
            ),
            remedy,
        ),
    )


def _folds(name: str, least: Mm, reach: Mm, pull: Newton, remedy: str) -> Finding:
    """A neck that would fold up has no relief, so the pull is the figure instead; it is a stop if folding is
    certain.
    """
    if math.isinf(least):
        sure = "Such a pull folds the neck up, however stiff its wood: its relief has no end."
        return Finding(name, "stop", n.string_pull_total, pull, None, sure, remedy)
    perhaps = says(
        "Such a pull may fold the neck up, if its wood is as soft as it may be; at the least {}.",
        n.relief_for_rod_least,
    )
    bounds = at_most(None, reach, "stop", of=least) + at_most(None, 0.0)
    return judged(name, n.string_pull_total, pull, bounds, perhaps, remedy)


def finding_relief_too_little(
    relief_predicted_least: Mm,
    relief_predicted_most: Mm,
    neck_rod: str,
    limit_rod_reach: Mm,
    limit_relief_least: Mm,
    string_pull_total: Newton,
) -> Findings:
    """Whether the strings can pull the neck into relief against its frets, or a rod can push it there."""
    if math.isnan(relief_predicted_least):
        return (_relief_not_judged("too little", string_pull_total),)
    push = limit_rod_reach if neck_rod == "two way" else 0.0
    sure = at_least(n.limit_relief_least, limit_relief_least, "stop", of=relief_predicted_most + push)
    if math.isinf(relief_predicted_most):
        sure = ()  # a neck that may fold up is not certain to be too straight
    return (
        judged(
            "relief, at its least",
            n.relief_predicted_least,
            relief_predicted_least,
            sure + at_least(n.limit_relief_least, limit_relief_least, of=relief_predicted_least + push),
            f"The least to expect{' with a slack rod' if neck_rod != 'none' else ''}"
            + says(", frets pushing back most; at the most {}.", n.relief_predicted_most),
            "Looser tangs, or relief planed into the board before fretting"
            + (", or a rod that works both ways." if neck_rod != "none" else "."),
        ),
    )


def _relief_not_judged(way: str, pull: Newton) -> Finding:
    reason = "because no saw in the shop makes these slots, and so the frets' back-bow is not known"
    remedy = "List a saw that can make this cut."
    if math.isnan(pull):
        reason = "because the strings' pitches are not given, and so their pull is not known"
        remedy = "Give strings.tuning, a pitch for each string."
    return not_judged(f"relief, {way}", n.relief_predicted_least, reason, remedy)


def finding_break_at_nut(
    head_break_angle: PerString[Radians], limit_break_angle_least: Radians, limit_break_angle_most: Radians
) -> Findings:
    """Whether every string bears on the nut, and none breaks over it too sharply."""
    low, high = int(head_break_angle.argmin()), int(head_break_angle.argmax())
    flat, sharp = float(head_break_angle[low]), float(head_break_angle[high])
    return (
        judged(
            "break over the nut, least",
            n.head_break_angle[low + 1],
            flat,
            at_least(n.limit_break_angle_least, limit_break_angle_least, stop=0.0),
            "The string that bends least downward over the nut.",
            "More head angle, the tuner lower (its post or roller), or a tree that holds the string down.",
        ),
        judged(
            "break over the nut, most",
            n.head_break_angle[high + 1],
            sharp,
            at_most(n.limit_break_angle_most, limit_break_angle_most),
            "The string that bends most downward over the nut: it binds, and wears its slot.",
            "Less head angle, or a higher post (or roller).",
        ),
    )


def finding_sideways_at_nut(head_sideways_bend: PerString[Radians], limit_sideways_bend: Radians) -> Findings:
    """Whether every string runs straight enough over the nut to its post."""
    worst = int(abs(head_sideways_bend).argmax())
    bend = float(head_sideways_bend[worst])
    return (
        judged(
            "sideways bend at the nut",
            n.head_sideways_bend[worst + 1],
            bend,
            at_most(n.limit_sideways_bend, limit_sideways_bend, of=abs(bend)),
            "The string that bends most sideways over the nut; toward the treble is positive.",
            says("Move its post nearer to {} from the centreline, treble positive.", n.head_straight_y[worst + 1]),
        ),
    )
