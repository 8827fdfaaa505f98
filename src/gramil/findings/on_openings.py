"""Verdicts on openings: holes in the top and ports in the sides, each clear of what lies round it, and cut by what the
shop has.
"""

import math

from gramil import names as n
from gramil.findings.finding import Finding, Findings
from gramil.findings.gaps import kept_clear
from gramil.findings.threshold import at_least, judged, not_judged, saying
from gramil.parts.body_records import Ring
from gramil.parts.opening_records import Opening, OpeningGap
from gramil.quantities import Mm

OWNS = ("finding_",)


def finding_opening_braces(opening_to_braces: tuple[OpeningGap, ...], limit_brace_to_hole: Mm) -> Findings:
    """Whether a further hole cuts into a brace of the top."""
    limit = (n.limit_brace_to_hole, limit_brace_to_hole)
    says = "From the edge of the {} to the {} brace, its nearest; negative is a brace cut through."
    return kept_clear(opening_to_braces, n.opening_to_braces, limit, says, "Move the brace or the hole.")


def finding_opening_linings(opening_to_linings: tuple[OpeningGap, ...], limit_opening_room: Mm) -> Findings:
    """Whether each hole in the top keeps off the linings."""
    limit = (n.limit_opening_room, limit_opening_room)
    says = "From the edge of the {} to the {}; negative is a hole cut into them."
    remedy = "Move the hole toward the centreline, or make it smaller."
    return kept_clear(opening_to_linings, n.opening_to_linings, limit, says, remedy)


def finding_opening_blocks(opening_to_blocks: tuple[OpeningGap, ...], limit_opening_room: Mm) -> Findings:
    """Whether each hole in the top keeps off neck and tail block."""
    limit = (n.limit_opening_room, limit_opening_room)
    says = "From the edge of the {} to the {}; negative is a hole that lies over it."
    return kept_clear(opening_to_blocks, n.opening_to_blocks, limit, says, "Move the hole, or make the block smaller.")


def finding_opening_board(opening_to_board: tuple[OpeningGap, ...], limit_opening_room: Mm) -> Findings:
    """Whether a hole keeps off the board's tongue, which is glued to the top."""
    limit = (n.limit_opening_room, limit_opening_room)
    says = "From the edge of the {} to the {}'s footprint on the top; negative is a hole that it covers."
    return kept_clear(
        opening_to_board, n.opening_to_board, limit, says, "Move the hole aside, or end the board sooner.", None
    )


def finding_opening_plate(opening_to_plate: tuple[OpeningGap, ...], limit_opening_room: Mm) -> Findings:
    """Whether each hole keeps off the bridge plate."""
    limit = (n.limit_opening_room, limit_opening_room)
    says = "From the edge of the {} to the {}; negative is a plate cut into."
    remedy = "Move the hole toward the neck or aside, or make the plate smaller."
    return kept_clear(opening_to_plate, n.opening_to_plate, limit, says, remedy)


def finding_openings_apart(opening_to_others: tuple[OpeningGap, ...], limit_opening_room: Mm) -> Findings:
    """Whether holes, with the rings round them, keep apart."""
    limit = (n.limit_opening_room, limit_opening_room)
    says = "From the {} to the {}, between their outermost rings; negative where they overlap."
    return kept_clear(opening_to_others, n.opening_to_others, limit, says, "Move one, or leave its outer ring out.")


def finding_ring_edge(opening_to_edge: tuple[OpeningGap, ...], limit_opening_room: Mm) -> Findings:
    """Whether the rings round each hole stay inside the body's edge."""
    limit = (n.limit_opening_room, limit_opening_room)
    says = "From the outermost ring round the {} to the body's {}; negative is a ring that runs out over it."
    return kept_clear(opening_to_edge, n.opening_to_edge, limit, says, "Move the hole, or leave its outer ring out.")


def finding_shaped_edge(
    opening_list: tuple[Opening, ...], opening_shaped: tuple[str, ...], opening_cutter_radius: Mm
) -> Findings:
    """Whether the shop's thinnest cutter goes round the tightest place of a hole that is not round."""
    return tuple(_gone_round(each, opening_cutter_radius) for each in opening_list if each.name in opening_shaped)


def _gone_round(hole: Opening, radius: Mm) -> Finding:
    name, figure = f"cutting the {hole.name}", n.opening_list[hole.name].tightest
    if math.isnan(radius):
        because = "because the shop lists no cutter with a bearing that follows a template"
        return not_judged(
            name, figure, because, "List one under [[cutter]], or saw and file it by hand.", hole.tightest
        )
    return judged(
        name,
        figure,
        hole.tightest,
        saying(
            at_least(n.opening_cutter_radius, radius),
            "No cutter of the shop goes into its tightest place: it would leave the corner rounder.",
            "Cut the corner with chisel and file, or give it a larger radius.",
        ),
        "The tightest bend of its edge, against half the thinnest cutter that follows a template.",
    )


def finding_ring_channel(
    rosette_rings: tuple[Ring, ...], opening_shaped: tuple[str, ...], opening_cutter: Mm
) -> Findings:
    """Whether a cutter of the shop fits the channel of a ring round a hole that is not round."""
    return tuple(
        _channel(row, each, opening_cutter) for row, each in enumerate(rosette_rings, 1) if each.round in opening_shaped
    )


def _channel(row: int, ring: Ring, cutter: Mm) -> Finding:
    name, figure = f"channel of the {ring.name}", n.rosette_rings[row].width
    if math.isnan(cutter):
        because = "because the shop lists no cutter with a bearing that follows a template"
        return not_judged(name, figure, because, "List one under [[cutter]], or cut the channel with knife and chisel.")
    return judged(
        name,
        figure,
        ring.width,
        saying(
            at_least(n.opening_cutter, cutter),
            "The ring is narrower than every cutter that follows a template.",
            "A thinner cutter with its bearing, a wider ring, or knife and chisel.",
        ),
        "The ring's width, against the thinnest cutter that follows a template.",
    )


def finding_port_linings(port_to_linings: tuple[OpeningGap, ...], limit_port_room: Mm) -> Findings:
    """Whether a port keeps off the linings over and under it."""
    limit = (n.limit_port_room, limit_port_room)
    says = "From the edge of the {} to the {}, the nearer ones; negative is a lining cut through."
    return kept_clear(port_to_linings, n.port_to_linings, limit, says, "Make it lower, or move it up or down the side.")


def finding_port_blocks(port_to_blocks: tuple[OpeningGap, ...], limit_port_room: Mm) -> Findings:
    """Whether a port keeps off the blocks at neck and tail."""
    limit = (n.limit_port_room, limit_port_room)
    says = "Along the side from the edge of the {} to the {}; negative is a block cut into."
    return kept_clear(port_to_blocks, n.port_to_blocks, limit, says, "Move it along the side.")


def finding_ports_apart(port_to_others: tuple[OpeningGap, ...], limit_port_room: Mm) -> Findings:
    """Whether ports of one side keep apart."""
    limit = (n.limit_port_room, limit_port_room)
    says = "On the flat side from the edge of the {} to the {}; negative where they overlap."
    return kept_clear(port_to_others, n.port_to_others, limit, says, "Move one along the side.")


def finding_port_bend(port_bends: tuple[OpeningGap, ...], limit_port_bend: Mm) -> Findings:
    """Whether the side is gently enough bent where a port is cut."""
    return tuple(
        judged(
            f"bend of the side at the {each.name}",
            n.port_bends[each.name].room,
            each.room,
            saying(
                at_least(n.limit_port_bend, limit_port_bend),
                "The side is bent so tightly there that a port's edges stand out of it, and its patch will not lie.",
            ),
            "The tightest bend of the side where the port and its patch are.",
            "Move it to where the side runs flatter.",
        )
        for each in port_bends
        if math.isfinite(each.room)
    )
