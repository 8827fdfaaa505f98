"""Verdicts on a guitar that came in: its old slots with the wire that is chosen, its crowns, saddle and action as
found, and the neck, tongue and bridge after the work.
"""

import math

from gramil import names as n
from gramil.findings.finding import Findings
from gramil.findings.threshold import at_least, at_most, judged, saying
from gramil.parts.records import BowOfOld, FitInOld
from gramil.quantities import Mm, PerString
from gramil.reference import says

OWNS = ("finding_",)


def finding_old_slots(
    refret_chosen: FitInOld, repair_refret: bool, limit_fit_loosest: Mm, limit_fit_tightest: Mm
) -> Findings:
    """How the chosen wire's tang fits the old slots, the narrowest and the widest."""
    if not repair_refret:
        return ()
    return (
        judged(
            "wire in the narrowest old slot",
            n.refret_chosen.narrowest,
            refret_chosen.narrowest,
            at_least(n.limit_fit_tightest, limit_fit_tightest, "caution"),
            "Slot less tang. Where the tang is thicker it wedges the slot open, and the row of them bows the neck "
            "back.",
            "A wire with a thinner tang, or the slots cleaned out with a saw of its kerf.",
        ),
        judged(
            "wire in the widest old slot",
            n.refret_chosen.widest,
            refret_chosen.widest,
            at_most(n.limit_fit_loosest, limit_fit_loosest),
            "Slot less tang: old slots are wider where frets were drawn before.",
            "A wire with a thicker tang; the tang crimped; or the slot lined with a strip of the board's wood.",
        ),
    )


def finding_old_bite(
    refret_chosen: FitInOld, repair_refret: bool, limit_bead_bite_caution: Mm, limit_bead_bite_stop: Mm
) -> Findings:
    """Whether the beads of the chosen wire hold in the widest old slot."""
    if not repair_refret:
        return ()
    return (
        judged(
            "bite in the widest old slot",
            n.refret_chosen.bite,
            refret_chosen.bite,
            at_least(n.limit_bead_bite_caution, limit_bead_bite_caution, stop=limit_bead_bite_stop),
            "What each bead bites into the slot's wall.",
            "A wire with wider beads, or frets glued and clamped.",
        ),
    )


def finding_old_room(refret_chosen: FitInOld, repair_refret: bool, limit_clearance_least: Mm) -> Findings:
    """Whether the tang of the chosen wire bottoms in the shallowest old slot."""
    if not repair_refret:
        return ()
    return (
        judged(
            "room in the shallowest old slot",
            n.refret_chosen.room,
            refret_chosen.room,
            at_least(n.limit_clearance_least, limit_clearance_least, stop=0.0),
            "Depth of the slot less that of the tang.",
            "Deepen the slots with a hand saw whose stop rides on the board, or a wire with a shorter tang.",
        ),
    )


def finding_old_left(found_left_least: Mm, limit_under_slot: Mm, limit_under_slot_least: Mm) -> Findings:
    """Whether enough wood is left under the old slots."""
    return (
        judged(
            "wood under the old slots",
            n.found_left_least,
            found_left_least,
            at_least(n.limit_under_slot, limit_under_slot, stop=limit_under_slot_least),
            "The least that is left where thickness and depth were both read.",
            "Deepen none; fill and cut anew where they are too deep.",
        ),
    )


def finding_old_bow(refret_chosen_bow: BowOfOld, repair_refret: bool, limit_back_bow: Mm) -> Findings:
    """What the new row of frets does to the neck: a range."""
    if not repair_refret:
        return ()
    return (
        judged(
            "back-bow from the new frets",
            n.refret_chosen_bow.most,
            refret_chosen_bow.most,
            at_most(n.limit_back_bow, limit_back_bow, "stop", of=refret_chosen_bow.least)
            + at_most(n.limit_back_bow, limit_back_bow),
            says(
                "At most; at the least {}. What the wood keeps of the wedging is not known.", n.refret_chosen_bow.least
            ),
            "A thinner tang, or wider slots; or plane the bow into the board before it is fretted.",
        ),
    )


def finding_old_crowns(found_crown_least: Mm, repair_refret: bool, limit_crown_least: Mm) -> Findings:
    """Whether the old crowns are high enough to stay."""
    if repair_refret:
        return ()
    return (
        judged(
            "old crowns",
            n.found_crown_least,
            found_crown_least,
            at_least(n.limit_crown_least, limit_crown_least, stop=0.0),
            "The lowest that was read: levelling takes all of them down to it.",
            "Refret it, or replace the worn ones and level to the rest.",
        ),
    )


def finding_old_saddle(
    found_exposed_bass: Mm, found_exposed_treble: Mm, repair_reset: bool, limit_exposed_stop_least: Mm
) -> Findings:
    """Whether the old saddle shows enough for the action to come down as it is."""
    if repair_reset:
        return ()
    least = min(found_exposed_bass, found_exposed_treble)
    figure = n.found_exposed_bass if found_exposed_bass <= found_exposed_treble else n.found_exposed_treble
    return (
        judged(
            "saddle as found",
            figure,
            math.nan if math.isnan(found_exposed_bass + found_exposed_treble) else least,
            at_least(n.limit_exposed_stop_least, limit_exposed_stop_least),
            "What the old saddle shows where it is lowest: there is no more than that to take down.",
            "Reset the neck: write repair.reset = true.",
        ),
    )


def finding_old_action(found_action_bass: Mm, found_action_treble: Mm, heights_action_bass: Mm) -> Findings:
    """How the action as found compares with what is wanted."""
    return (
        judged(
            "action as found, bass",
            n.found_action_bass,
            found_action_bass,
            saying(
                at_most(n.heights_action_bass, heights_action_bass, "note"),
                says("Over what is wanted; the treble string stood at {}.", n.found_action_treble)
                if not math.isnan(found_action_treble)
                else "Over what is wanted.",
            ),
            "As found it is not over what is wanted.",
            "The saddle comes down by twice the excess, if it shows that much.",
        ),
    )


def finding_reset_wedge(reset_wedge: Mm, repair_reset: bool, limit_heel_wedge: Mm) -> Findings:
    """Whether the neck needs a reset at all, or the saddle can take up what is missing."""
    small = says("The saddle can take up a wedge as small as this: {} or less at the heel.", n.limit_heel_wedge)
    if math.isnan(reset_wedge) and not repair_reset:
        return ()
    bounds = at_most(n.limit_heel_wedge, limit_heel_wedge, "note" if repair_reset else "caution", of=abs(reset_wedge))
    return (
        judged(
            "wedge of the reset",
            n.reset_wedge,
            reset_wedge,
            saying(
                bounds,
                "What comes off the heel at its cap, by the old crowns and the new; negative is off at the board.",
            ),
            small,
            "" if repair_reset else "Reset the neck: write repair.reset = true.",
        ),
    )


def finding_reset_tongue(reset_tongue_left: Mm, repair_reset: bool, limit_under_slot: Mm) -> Findings:
    """What the reset leaves of the board over the body."""
    if not repair_reset:
        return ()
    return (
        judged(
            "tongue after the reset",
            n.reset_tongue_left,
            reset_tongue_left,
            at_least(n.limit_under_slot, limit_under_slot),
            "Thickness of the board's tongue at its tail end, once what is in the way is taken from under it.",
            "Take the wood from the top's side of the joint, or lift the tongue on a wedge of its full length.",
        ),
    )


def finding_reset_saddle(
    reset_exposed: PerString[Mm], repair_reset: bool, limit_exposed_stop_least: Mm, limit_exposed_stop_most: Mm
) -> Findings:
    """Whether the saddle shows as it should under every string after the reset."""
    if not repair_reset:
        return ()
    low = 0 if math.isnan(reset_exposed.sum()) else int(reset_exposed.argmin())
    return (
        judged(
            "saddle after the reset",
            n.reset_exposed[low + 1],
            float(reset_exposed[low]),
            at_least(n.limit_exposed_stop_least, limit_exposed_stop_least, "stop")
            + at_most(n.limit_exposed_stop_most, limit_exposed_stop_most, "stop", of=float(reset_exposed.max())),
            "What shows under the string where it is lowest.",
            "Another saddle.exposed, or another thickness of the bridge.",
        ),
    )


def finding_moved(moved_treble: Mm, moved_bass: Mm, repair_bridge: str, limit_saddle_place: Mm) -> Findings:
    """Whether the old saddle's line lies where the strings want it."""
    if math.isnan(moved_treble + moved_bass) and repair_bridge != "moved":
        return ()
    far = moved_treble if abs(moved_treble) >= abs(moved_bass) else moved_bass
    figure = n.moved_treble if abs(moved_treble) >= abs(moved_bass) else n.moved_bass
    return (
        judged(
            "old saddle's line",
            figure,
            far,
            at_most(
                n.limit_saddle_place,
                limit_saddle_place,
                "note" if repair_bridge == "moved" else "caution",
                of=max(abs(moved_treble), abs(moved_bass)),
            ),
            "How far its worse end is to go, toward the tail positive, for the frets as they are.",
            "Plug the old slot and cut it anew, or move the bridge: write repair.bridge.",
        ),
    )
