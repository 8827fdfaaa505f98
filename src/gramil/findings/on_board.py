"""Verdicts on the board's edges, ledge, blocks and blank."""

import math

from gramil import names as n
from gramil.description.records import Blank, Block, Cutter, KeptPiece, not_measured, stock_for
from gramil.findings.finding import Finding, Findings
from gramil.findings.ledge import no_cutters, no_pair, standing_proud
from gramil.findings.threshold import MEASURE_PIECE, at_most, judged, not_judged
from gramil.parts.edge_records import NO_PAIR
from gramil.parts.records import BlankChoice, BlockChoice, LedgeChoice, TemplateMatch
from gramil.quantities import Mm, PerFret, Radians

OWNS = ("finding_",)


def finding_edge_uneven(thickness_edge_spread: Mm, core_inset: Mm, limit_edge_uneven: Mm) -> Findings:
    """Whether the edge's thickness differs along the board enough to show, most of all beside a binding."""
    return (
        judged(
            "thickness of the edge",
            n.thickness_edge_spread,
            thickness_edge_spread,
            at_most(n.limit_edge_uneven, limit_edge_uneven, "caution" if core_inset > 0 else "note"),
            "The edge's thickness differs by this much along the board.",
            "Level the underside, or let the radius grow in proportion to the board's width.",
        ),
    )


def finding_ledge(
    shop_cutters: tuple[Cutter, ...],
    ledge_choice: LedgeChoice,
    core_inset: Mm,
    limit_binding_proud_least: Mm,
    limit_binding_proud_most: Mm,
) -> Findings:
    """Whether a cutter and bearing on hand make the binding's ledge."""
    if core_inset == 0:
        return ()
    if not shop_cutters:
        return (no_cutters("binding ledge", n.core_inset, core_inset),)
    if ledge_choice == NO_PAIR:
        return (no_pair("binding ledge", n.core_inset, core_inset),)
    return (
        standing_proud(
            "binding ledge",
            n.ledge_choice.proud,
            ledge_choice.proud,
            ledge_choice.name,
            limit_binding_proud_least,
            limit_binding_proud_most,
        ),
    )


def finding_blank(
    shop_blanks: tuple[Blank, ...],
    shop_kept: tuple[KeptPiece, ...],
    board_wood: str,
    blank_choice: BlankChoice,
    blank_width: Mm,
) -> Findings:
    """Whether a piece in stock yields the board; not judged if one is kept for it whose sizes are not all known."""
    if math.isnan(blank_choice.waste) and (piece := not_measured("board", board_wood, shop_kept)):
        because = f"because {piece} is kept for it, and not all of its sizes are noted"
        return (not_judged("blank", n.blank_width, because, MEASURE_PIECE, blank_width),)
    if not stock_for("board", shop_blanks, shop_kept):
        remedy = "List the pieces in stock, or buy one of the size given under blank."
        return (not_judged("blank", n.blank_width, "because the shop lists no blanks", remedy, blank_width),)
    none = math.isnan(blank_choice.waste)
    return (
        Finding(
            "blank",
            "stop" if none else "fine",
            n.blank_width,
            blank_width,
            None,
            "No piece of this wood in stock is large enough." if none else f"Cut it from {blank_choice.name}.",
            "Buy a blank of the size given under blank, or choose another wood." if none else "",
        ),
    )


def finding_blocks(
    shop_blocks: tuple[Block, ...],
    block_at_nut: BlockChoice,
    block_at_middle: BlockChoice,
    block_at_end: BlockChoice,
    limit_block_misfit: Mm,
) -> Findings:
    """Whether sanding blocks on hand fit the arch at nut, middle and end."""
    stations = (
        ("nut", n.block_at_nut, block_at_nut),
        ("middle", n.block_at_middle, block_at_middle),
        ("end", n.block_at_end, block_at_end),
    )
    if not shop_blocks:
        remedy = "List the blocks with their radius, or arch to the gauge cards."
        because = "because the shop lists no sanding block"
        return (not_judged("sanding blocks", n.block_at_nut.misfit, because, remedy),)
    return tuple(
        judged(
            f"sanding block, {station}",
            figure.misfit,
            block.misfit,
            at_most(n.limit_block_misfit, limit_block_misfit, "note", of=abs(block.misfit)),
            f"The nearest block here is {block.name}; this is its gap at the edge.",
            "Work this station with a straight beam along the string lines, to the gauge card.",
        )
        for station, figure, block in stations
    )


def finding_index_template(template_matches: tuple[TemplateMatch, ...], fret_angle: PerFret[Radians]) -> Findings:
    """Whether an index template on hand serves, and whether notches can make these slots at all."""
    fanned = float(abs(fret_angle).max())
    if fanned > 1e-6:
        return (
            Finding(
                "index template",
                "note",
                n.fret_angle[int(abs(fret_angle).argmax())],
                fanned,
                None,
                "A notched template only makes square slots, and these are fanned.",
                "Cut to drawn lines against a fence set to each slot, or with a machine.",
            ),
        )
    serving = next((match for match in template_matches if match.serves), None)
    if serving is not None:
        address, worst, says = n.template_matches[serving.name].worst, serving.worst, "One on hand serves."
    else:
        address, worst, says = n.card_proof_octave, math.nan, "None on hand serves this scale, frets and index pin."
    return (
        Finding(
            "index template",
            "fine" if serving else "note",
            address,
            worst,
            n.limit_slot_position if serving else None,
            says,
            "" if serving else "Make the one in the pack, and prove it before the first cut.",
        ),
    )


def finding_levelling(thickness_wedge_angle: Radians, board_level_underside: bool) -> Findings:
    """What levelling the underside does to the neck set."""
    if not board_level_underside:
        return ()
    return (
        Finding(
            "wedge under the board",
            "note",
            n.thickness_wedge_angle,
            float(thickness_wedge_angle),
            None,
            "Levelling leaves this angle between crest and underside: it belongs in the neck set.",
        ),
    )


def finding_shop(shop_is_default: bool, shop_name: str) -> Findings:
    """Whether the maker's own shop was given."""
    if not shop_is_default:
        return ()
    return (
        Finding(
            "shop",
            "note",
            n.shop_name,
            math.nan,
            None,
            "No shop was given: saws, cutters, blocks and wires are common practice, not yours.",
            "Describe your own shop, with kerfs and wires as measured.",
        ),
    )
