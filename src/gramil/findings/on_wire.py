"""Verdicts on the fret wire: its fit in the kerf, what that does to the neck, and whether there is enough."""

import math

from gramil import names as n
from gramil.description.records import Saw
from gramil.findings.finding import Finding, Findings
from gramil.findings.threshold import at_least, at_most, judged, not_judged, saying
from gramil.parts.records import WireFit
from gramil.quantities import Mm
from gramil.reference import says

OWNS = ("finding_",)


def finding_wire_fit(
    wire_fits: tuple[WireFit, ...], saw_main: Saw, limit_fit_loosest: Mm, limit_fit_tightest: Mm
) -> Findings:
    """How the wire's tang fits the kerf of the saw in use."""
    fit = next((each for each in wire_fits if each.name == saw_main.name), None)
    if fit is None:
        return (_not_judged("wire in the kerf", "because no saw in the shop makes these slots"),)
    wedges = "The tang wedges the kerf open; the back-bow below says what that does."
    return (
        judged(
            "wire in the kerf",
            n.wire_fits[fit.name].gap,
            fit.gap,
            saying(at_least(n.limit_fit_tightest, limit_fit_tightest, "note"), wedges)
            + saying(at_most(n.limit_fit_loosest, limit_fit_loosest), "The tang is loose in this kerf."),
            "The tang sits snug in this kerf.",
            "Prove it on scrap of the same wood; then another saw or another wire.",
        ),
    )


def finding_bead_bite(
    wire_fits: tuple[WireFit, ...], saw_main: Saw, limit_bead_bite_caution: Mm, limit_bead_bite_stop: Mm
) -> Findings:
    """Whether the beads on the tang bite into the kerf's walls enough to hold."""
    fit = next((each for each in wire_fits if each.name == saw_main.name), None)
    if fit is None:
        return (_not_judged("bite of the beads", "because no saw in the shop makes these slots"),)
    return (
        judged(
            "bite of the beads",
            n.wire_fits[fit.name].bite,
            fit.bite,
            at_least(n.limit_bead_bite_caution, limit_bead_bite_caution, stop=limit_bead_bite_stop),
            "What each bead bites into the wall of the kerf.",
            "A narrower kerf, a wire with wider beads, or glue and clamped frets.",
        ),
    )


def _not_judged(name: str, why: str) -> Finding:
    return not_judged(name, n.saw_kerf, why, "List a saw that can make this cut.")


def finding_back_bow(back_bow_least: Mm, back_bow_most: Mm, limit_back_bow: Mm) -> Findings:
    """What the frets' wedging does to the neck: a range, because the share that the wood keeps is not known."""
    if math.isnan(back_bow_most):
        return (_not_judged("back-bow from the frets", "because no saw in the shop makes these slots"),)
    return (
        judged(
            "back-bow from the frets",
            n.back_bow_most,
            back_bow_most,
            at_most(n.limit_back_bow, limit_back_bow, "stop", of=back_bow_least)
            + at_most(n.limit_back_bow, limit_back_bow),
            says(
                "At most; at the least {}. The share of the wedging that the wood keeps is not known.", n.back_bow_least
            ),
            "A wider kerf or thinner tang; or plane the bow into the board before fretting.",
        ),
    )


def finding_wire_on_hand(wire_total: Mm, wire_on_hand: Mm) -> Findings:
    """Whether there is enough wire for the board."""
    if wire_on_hand == 0:
        because = "because the shop does not say how much wire is on hand"
        remedy = "Write with the wire in the shop's list how much of it is on hand."
        return (not_judged("wire on hand", n.wire_total, because, remedy, wire_total),)
    return (
        judged(
            "wire on hand",
            n.wire_total,
            wire_total,
            at_most(n.wire_on_hand, wire_on_hand),
            "Wire for the whole board with spare, against what is on hand.",
            "Buy wire of the same batch, or measure the new one.",
        ),
    )
