"""Verdicts on the bevels for arm and ribs: the wood behind them, the side under them, the braces in their blocks."""

from gramil import names as n
from gramil.findings.finding import Finding, Findings
from gramil.findings.gaps import kept_clear
from gramil.findings.threshold import at_least, at_most, judged, saying
from gramil.parts.bevel_records import Bevel, BevelBlock, BevelBrace
from gramil.parts.opening_records import OpeningGap
from gramil.quantities import Mm, Radians
from gramil.reference import says

OWNS = ("finding_",)

NONE = 0.01
"""In mm: what comes no farther down the side does not come onto it."""
OPENS = "The bevel cuts through the block behind it, and opens the body."


def finding_bevel_glued(
    bevelled_blocks: tuple[BevelBlock, ...], limit_plate_glued: Mm, limit_plate_glued_least: Mm
) -> Findings:
    """Whether enough of the rim is left inside a bevel to hold the plate."""
    return tuple(
        judged(
            f"plate inside the {each.name} bevel",
            n.bevelled_blocks[each.name].glued,
            each.glued,
            saying(at_least(n.limit_plate_glued_least, 0.0, "stop"), OPENS)
            + at_least(n.limit_plate_glued, limit_plate_glued, stop=limit_plate_glued_least),
            "Width of the rim that still holds the plate where the bevel is widest.",
            "A wider block behind it, or a narrower bevel.",
        )
        for each in bevelled_blocks
    )


def finding_bevel_under(bevelled_blocks: tuple[BevelBlock, ...], limit_lining_under: Mm) -> Findings:
    """Whether the block reaches on below the bevel."""
    return tuple(
        judged(
            f"block under the {each.name} bevel",
            n.bevelled_blocks[each.name].under,
            each.under,
            saying(at_least(n.limit_lining_under, 0.0, "stop"), OPENS)
            + at_least(n.limit_lining_under, limit_lining_under),
            "Height of the block against the side that the bevel leaves: it holds the side there.",
            "A higher block behind it, or a bevel that comes down less.",
        )
        for each in bevelled_blocks
    )


def finding_side_under_bevel(bevel_list: tuple[Bevel, ...], limit_side_under_bevel: Mm) -> Findings:
    """Whether side is left under a bevel, to a binding or a bevel at the other edge."""
    return tuple(
        judged(
            f"side under the {each.name} bevel",
            n.bevel_list[each.name].left,
            each.left,
            saying(at_least(n.limit_side_under_bevel, 0.0, "stop"), "Nothing is left of the side there.")
            + at_least(n.limit_side_under_bevel, limit_side_under_bevel),
            "Side left under the bevel, where that is least.",
            "A bevel that comes down less, or one farther from the other.",
        )
        for each in bevel_list
    )


def finding_bevel_slope(bevel_list: tuple[Bevel, ...], limit_bevel_steepest: Radians) -> Findings:
    """Whether a bevel is more than an edge a little eased, or reaches the side at all."""
    return tuple(_slope(each, limit_bevel_steepest) for each in bevel_list)


def _slope(bevel: Bevel, most: Radians) -> Finding:
    at = n.bevel_list[bevel.name]
    in_plate = "It lies in the plate's own edge, and never comes down onto the side: it is no more than a round-over."
    return judged(
        f"slope of the {bevel.name} bevel",
        at.slope,
        bevel.slope,
        saying(at_least(None, NONE, "note", of=bevel.below), in_plate, "A greater drop.")
        + at_most(n.limit_bevel_steepest, most, "note"),
        "How steeply the bevel lies from the plate, the same all along.",
        "A wider bevel, or one that comes down less.",
    )


def finding_braces_at_bevel(bevelled_braces: tuple[BevelBrace, ...]) -> Findings:
    """Whether braces end in a bevel's block, where the linings would have left them room."""
    return tuple(
        judged(
            f"{each.name} at the {each.bevel} bevel",
            n.bevelled_braces[each.name].inside,
            each.inside,
            at_most(None, 0.0),
            "How much of the brace lies where the bevel's block is, past the linings that it is measured to.",
            says(
                "Cut its end shorter by {}, or notch the block that far for it, under the plate, before the block is "
                "glued in.",
                n.bevelled_braces[each.name].inside,
            ),
        )
        for each in bevelled_braces
    )


def finding_hole_at_bevel(bevelled_holes: tuple[OpeningGap, ...], limit_opening_room: Mm) -> Findings:
    """Whether a hole in the top keeps off the block behind a bevel."""
    limit = (n.limit_opening_room, limit_opening_room)
    words = "From the edge of the {} to the {}; negative is a hole cut into it."
    remedy = "Move the hole, or make the bevel narrower there."
    return kept_clear(bevelled_holes, n.bevelled_holes, limit, words, remedy)


def finding_port_at_bevel(bevelled_ports: tuple[OpeningGap, ...], limit_port_room: Mm) -> Findings:
    """Whether a port in the bass side keeps off the block behind a bevel."""
    limit = (n.limit_port_room, limit_port_room)
    words = "On the flat side from the edge of the {} to the {}; negative is a port cut into it."
    remedy = "Move the port along or down the side, or the bevel along it."
    return kept_clear(bevelled_ports, n.bevelled_ports, limit, words, remedy)
