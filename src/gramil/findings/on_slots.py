"""Verdicts on the slots: wood left under them, pilots, clearance, and whether the shop has the saw."""

import math

from gramil import names as n
from gramil.description.records import Saw
from gramil.findings.finding import Finding, Findings
from gramil.findings.threshold import at_least, at_most, judged, not_judged, saying
from gramil.parts.saw import NO_SAW
from gramil.quantities import Count, Mm, PerFret
from gramil.reference import says

OWNS = ("finding_",)


def finding_left_under_slot(
    slot_left_least: PerFret[Mm], slot_first: Count, limit_under_slot: Mm, limit_under_slot_least: Mm
) -> Findings:
    """Whether enough wood is left under the thinnest slot, levelling done."""
    worst = slot_first + int(slot_left_least[slot_first:].argmin())
    left = float(slot_left_least[worst])
    return (
        judged(
            "wood left under the slots",
            n.slot_left_least[worst],
            left,
            at_least(n.limit_under_slot, limit_under_slot, stop=limit_under_slot_least),
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
    return (
        judged(
            "depth of the slots",
            figure[worst],
            float(depth[worst]),
            at_least(n.wire_tang_depth, slot_need - limit_tolerance_height, stop=wire_tang_depth),
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
        judged(
            "pilot at the slot's end",
            n.slot_kerf_at_end[worst],
            left,
            at_least(n.limit_pilot_least, limit_pilot_least, stop=0.0),
            "This is all that arching leaves of the pilot kerf at its end.",
            "Cut the pilot deeper, or use a straight bottom.",
        ),
    )


def finding_clearance(slots_clearance: Mm, limit_clearance_least: Mm, limit_clearance_most: Mm) -> Findings:
    """Whether the room under the tang is usual: too little and the tang bottoms, too much and the board is weakened."""
    return (
        judged(
            "room under the tang",
            n.slots_clearance,
            slots_clearance,
            saying(at_least(n.limit_clearance_least, limit_clearance_least), remedy="Deepen the slots.")
            + saying(at_most(n.limit_clearance_most, limit_clearance_most), remedy="Make the slots shallower."),
            "Room between the bottom of the tang and the bottom of the slot.",
        ),
    )


def finding_crest_loss(
    slots_crest_loss: Mm, slots_cut: str, limit_crest_loss_least: Mm, limit_crest_loss_most: Mm
) -> Findings:
    """Whether a board slotted while flat allows for the crest that arching and levelling still take off."""
    if slots_cut != "before arching":
        return ()
    return (
        judged(
            "crest still to come off",
            n.slots_crest_loss,
            slots_crest_loss,
            saying(at_least(n.limit_crest_loss_least, limit_crest_loss_least), remedy="Without it the tang bottoms.")
            + saying(at_most(n.limit_crest_loss_most, limit_crest_loss_most), remedy="Arch with less to take off."),
            "Slots cut in the flat board are this much deeper, for wood that arching and levelling take off the crest.",
        ),
    )


def finding_saw(shop_saws: tuple[Saw, ...], saw_main: Saw, slots_saw: str, wire_tang_thickness: Mm) -> Findings:
    """Whether the shop has a saw that can cut these slots in the way that is asked, for this wire's tang."""
    name, address = "saw for the slots", n.saw_kerf
    if not shop_saws:
        remedy = "List the saws, each with its kerf as measured in a test cut."
        return (not_judged(name, address, "because the shop lists no saw", remedy),)
    if saw_main != NO_SAW:
        return (Finding(name, "fine", address, saw_main.kerf, None, f"The {saw_main.name} cuts the slots."),)
    told = f"No {slots_saw or 'saw'} here makes this cut, for a tang so thick."
    remedy = "After arching, a straight bottom wants a saw from above and an arched one a saw that rides the arch."
    return (Finding(name, "stop", n.wire_tang_thickness, wire_tang_thickness, None, told, remedy),)


def finding_deepening_saw(saw_deepening: Saw, slots_bottom: str, slots_cut: str, wire_tang_thickness: Mm) -> Findings:
    """Whether the shop has a hand saw whose stop rides on the arch, where pilots are to be deepened."""
    if slots_bottom != "follows the arch" or slots_cut != "before arching":
        return ()
    name = "saw riding the arch"
    if saw_deepening != NO_SAW:
        told = f"The {saw_deepening.name} deepens the ends."
        return (Finding(name, "fine", n.saw_deepening.kerf, saw_deepening.kerf, None, told),)
    told = "No saw in the shop rides the arch, to deepen the ends for a tang so thick."
    remedy = "A slotting hand saw with a stop that rides on the arched face, or a straight bottom."
    return (Finding(name, "stop", n.wire_tang_thickness, wire_tang_thickness, None, told, remedy),)


def finding_kerfs_agree(saw_kerf_over: Mm, limit_fit_loosest: Mm) -> Findings:
    """Whether the saw that deepens the ends leaves a kerf no wider than the main one may be."""
    if math.isnan(saw_kerf_over):
        return ()
    return (
        judged(
            "kerf of the deepening saw",
            n.saw_kerf_over,
            saw_kerf_over,
            at_most(n.limit_fit_loosest, limit_fit_loosest),
            "The deepening saw's kerf is this much wider than the main one: a wider one loosens the wire at its ends.",
            "A hand saw with less set.",
        ),
    )
