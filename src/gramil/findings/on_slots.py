"""Verdicts on the slots: wood left under them, pilots, clearance, and whether the shop has the saw."""

import math

from gramil import names as n
from gramil.description.records import Saw
from gramil.findings.finding import Finding, Findings, at_least
from gramil.parts.saw import NO_SAW
from gramil.quantities import Count, Mm, PerFret
from gramil.reference import says

OWNS = ("finding_",)
ROUNDING = 1e-9
"""mm; what lengths worked out in two ways may differ by."""


def finding_left_under_slot(
    slot_left_least: PerFret[Mm], slot_first: Count, limit_under_slot: Mm, limit_under_slot_least: Mm
) -> Findings:
    """Whether enough wood is left under the thinnest slot, levelling done."""
    worst = slot_first + int(slot_left_least[slot_first:].argmin())
    left = float(slot_left_least[worst])
    return (
        Finding(
            "wood left under the slots",
            at_least(left, limit_under_slot, limit_under_slot_least),
            n.slot_left_least[worst],
            left,
            n.limit_under_slot,
            "This is the least wood left under any slot once the board is finished.",
            "A thicker board, a slot that follows the arch, a shallower tang, or a flatter arch.",
        ),
    )


def finding_slot_depth(
    slot_kerf_at_end: PerFret[Mm],
    slot_depth_at_end: PerFret[Mm],
    slot_first: Count,
    slots_bottom: str,
    slots_cut: str,
    slot_need: Mm,
    wire_tang_depth: Mm,
    limit_tolerance_height: Mm,
) -> Findings:
    """Whether the slots, as they are cut, take the wire's tang all along; a pilot is judged as it is deepened."""
    deepened = slots_bottom == "follows the arch" and slots_cut == "before arching"
    depth, figure = (slot_depth_at_end, n.slot_depth_at_end) if deepened else (slot_kerf_at_end, n.slot_kerf_at_end)
    worst = slot_first + int(depth[slot_first:].argmin())
    least = float(depth[worst])
    return (
        Finding(
            "depth of the slots",
            at_least(least, slot_need - limit_tolerance_height - ROUNDING, wire_tang_depth - ROUNDING),
            figure[worst],
            least,
            n.wire_tang_depth,
            says(
                "This is the least depth of any slot, at its end: the tang takes {}, and room under it.",
                n.wire_tang_depth,
            ),
            "Deepen the slots.",
        ),
    )


def finding_pilot(
    slot_kerf_at_end: PerFret[Mm], slot_first: Count, slots_bottom: str, slots_cut: str, limit_pilot_least: Mm
) -> Findings:
    """Whether a pilot kerf is still there at its ends after arching, for the hand saw to follow."""
    if slots_bottom != "follows the arch" or slots_cut != "before arching":
        return ()
    worst = slot_first + int(slot_kerf_at_end[slot_first:].argmin())
    left = float(slot_kerf_at_end[worst])
    return (
        Finding(
            "pilot at the slot's end",
            at_least(left, limit_pilot_least, 0.0),
            n.slot_kerf_at_end[worst],
            left,
            n.limit_pilot_least,
            "This is all that arching leaves of the pilot kerf at its end.",
            "Cut the pilot deeper, or use a straight bottom.",
        ),
    )


def finding_clearance(slots_clearance: Mm, limit_clearance_least: Mm, limit_clearance_most: Mm) -> Findings:
    """Whether the room under the tang is usual: too little and the tang bottoms, too much and the board is weakened."""
    short = slots_clearance < limit_clearance_least
    return (
        Finding(
            "room under the tang",
            "fine" if limit_clearance_least <= slots_clearance <= limit_clearance_most else "caution",
            n.slots_clearance,
            slots_clearance,
            n.limit_clearance_least if short else n.limit_clearance_most,
            "Room between the bottom of the tang and the bottom of the slot.",
            "Deepen the slots." if short else "Make the slots shallower.",
        ),
    )


def finding_crest_loss(
    slots_crest_loss: Mm, slots_cut: str, limit_crest_loss_least: Mm, limit_crest_loss_most: Mm
) -> Findings:
    """Whether a board slotted while flat allows for the crest that arching and levelling still take off."""
    if slots_cut != "before arching":
        return ()
    short = slots_crest_loss < limit_crest_loss_least
    return (
        Finding(
            "crest still to come off",
            "fine" if limit_crest_loss_least <= slots_crest_loss <= limit_crest_loss_most else "caution",
            n.slots_crest_loss,
            slots_crest_loss,
            n.limit_crest_loss_least if short else n.limit_crest_loss_most,
            "Slots cut in the flat board are this much deeper, for wood that arching and levelling take off the crest.",
            "Without it the tang bottoms." if short else "Arch with less to take off.",
        ),
    )


def finding_saw(shop_saws: tuple[Saw, ...], saw_main: Saw, slots_saw: str) -> Findings:
    """Whether the shop has a saw that can cut these slots in the way that is asked."""
    if not shop_saws:
        return (
            Finding(
                "saw for the slots",
                "not judged",
                n.saw_kerf,
                math.nan,
                None,
                "because the shop lists no saw",
                "List the saws, each with its kerf as measured in a test cut.",
            ),
        )
    return (
        Finding(
            "saw for the slots",
            "stop" if saw_main == NO_SAW else "fine",
            n.saw_kerf,
            saw_main.kerf,
            None,
            f"The {saw_main.name} cuts the slots."
            if saw_main != NO_SAW
            else f"No {slots_saw or 'saw'} here makes this cut.",
            "After arching, a straight bottom wants a saw from above and an arched one a saw that rides the arch.",
        ),
    )


def finding_deepening_saw(saw_deepening: Saw, slots_bottom: str, slots_cut: str) -> Findings:
    """Whether the shop has a hand saw whose stop rides on the arch, where pilots are to be deepened."""
    if slots_bottom != "follows the arch" or slots_cut != "before arching":
        return ()
    missing = saw_deepening == NO_SAW
    return (
        Finding(
            "saw riding the arch",
            "stop" if missing else "fine",
            n.saw_deepening.kerf,
            saw_deepening.kerf,
            None,
            "No saw in the shop rides the arch." if missing else f"The {saw_deepening.name} deepens the ends.",
            "A slotting hand saw with a stop that rides on the arched face, or a straight bottom.",
        ),
    )


def finding_kerfs_agree(saw_kerf_over: Mm, limit_fit_loosest: Mm) -> Findings:
    """Whether the saw that deepens the ends leaves a kerf no wider than the main one may be."""
    if math.isnan(saw_kerf_over):
        return ()
    return (
        Finding(
            "kerf of the deepening saw",
            "fine" if saw_kerf_over <= limit_fit_loosest else "caution",
            n.saw_kerf_over,
            saw_kerf_over,
            n.limit_fit_loosest,
            "The deepening saw's kerf is this much wider than the main one: a wider one loosens the wire at its ends.",
            "A hand saw with less set.",
        ),
    )
