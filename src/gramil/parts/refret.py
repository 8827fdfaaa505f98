"""New wire for old slots: each of the shop's wires against the slots as found, and what it does to neck and strings."""

import math
from collections.abc import Iterator

from gramil.description.records import Wire
from gramil.parts.records import BowOfOld, CrownOnOld, FitInOld, VerdictOnOld, WedgeInOld
from gramil.physics.layered_beam import sagitta
from gramil.quantities import Mm, PerMm2, Ratio

OWNS = ("refret_",)


def refret_fits(
    shop_wires: tuple[Wire, ...], found_slot_width_least: Mm, found_slot_width_most: Mm, found_slot_depth_least: Mm
) -> tuple[FitInOld, ...]:
    """How every wire of the shop fits the old slots: gaps, bite of its beads, room under its tang.

    Method: tang against the narrowest and the widest slot read, beads against the widest, tang's depth against the
    shallowest.
    Source: common practice.
    """
    return tuple(
        FitInOld(
            wire.name,
            found_slot_width_least - wire.tang_thickness,
            found_slot_width_most - wire.tang_thickness,
            (wire.bead_thickness - found_slot_width_most) / 2,
            found_slot_depth_least - wire.tang_depth,
        )
        for wire in shop_wires
    )


def refret_verdicts(
    refret_fits: tuple[FitInOld, ...],
    limit_fit_tightest: Mm,
    limit_fit_loosest: Mm,
    limit_bead_bite_caution: Mm,
    limit_bead_bite_stop: Mm,
    limit_clearance_least: Mm,
) -> tuple[VerdictOnOld, ...]:
    """What speaks against every wire of the shop in the old slots, in words.

    Method: gaps, bite and room against their limits, the gravest first; that it fits if nothing speaks against it.
    Source: common practice.
    """
    return tuple(
        VerdictOnOld(
            fit.name,
            _words(
                (fit.narrowest, limit_fit_tightest),
                (fit.widest, limit_fit_loosest),
                (fit.bite, limit_bead_bite_caution, limit_bead_bite_stop),
                (fit.room, limit_clearance_least),
            ),
        )
        for fit in refret_fits
    )


def _words(
    tight: tuple[float, float],
    loose: tuple[float, float],
    bite: tuple[float, float, float],
    room: tuple[float, float],
) -> str:
    """What speaks against a wire, the gravest first; that it fits if nothing does."""
    if math.isnan(tight[0]):
        return "not judged: no slot's width was read"
    return "; ".join((*_of_widths(tight, loose, bite), *_of_depth(*room))) or "fits"


def _of_widths(
    tight: tuple[float, float], loose: tuple[float, float], bite: tuple[float, float, float]
) -> Iterator[str]:
    if bite[0] < bite[2]:
        yield "holds nothing: beads too thin"
    elif bite[0] < bite[1]:
        yield "holds little: glue it in"
    if loose[0] > loose[1]:
        yield "loose in the widest slot"
    if tight[0] < tight[1]:
        yield "wedges the narrowest open"


def _of_depth(room: float, least: float) -> Iterator[str]:
    if math.isnan(room):
        yield "depth not read"
    elif room < 0:
        yield "tang bottoms: deepen the slots"
    elif room < least:
        yield "little room under the tang"


def refret_crowns(
    shop_wires: tuple[Wire, ...], found_crown_most: Mm, found_crown_at_twelve: Mm, heights_dressing_loss: Mm
) -> tuple[CrownOnOld, ...]:
    """The crown of every wire of the shop against the old crowns.

    Method: its height less that of the highest old one; and, dressed, less that of the old one at fret 12.
    Source: common practice.
    """
    return tuple(
        CrownOnOld(
            wire.name,
            wire.crown_width,
            wire.crown_height,
            wire.crown_height - found_crown_most,
            wire.crown_height - heights_dressing_loss - found_crown_at_twelve,
        )
        for wire in shop_wires
    )


def refret_wedges(
    shop_wires: tuple[Wire, ...], found_slot_width_mean: Mm, limit_bead_share_most: Ratio
) -> tuple[WedgeInOld, ...]:
    """How far every wire of the shop wedges the mean old slot open: by its tang, and with a share of its beads.

    Method: what tang and beads are thicker than the mean slot is wide; nothing where they are thinner.
    Source: common practice.
    """
    return tuple(
        WedgeInOld(
            wire.name,
            _over(wire.tang_thickness, found_slot_width_mean),
            _over(wire.tang_thickness, found_slot_width_mean)
            + limit_bead_share_most * _over(wire.bead_thickness, found_slot_width_mean),
        )
        for wire in shop_wires
    )


def _over(thickness: Mm, width: Mm) -> Mm:
    """How much thicker than a slot is wide, 0 if it is thinner; not known if the width is not."""
    return math.nan if math.isnan(width) else max(0.0, thickness - width)


def refret_bows(
    refret_wedges: tuple[WedgeInOld, ...],
    limit_wedge_kept_least: Ratio,
    limit_wedge_kept_most: Ratio,
    back_bow_row: PerMm2,
    back_bow_span: Mm,
) -> tuple[BowOfOld, ...]:
    """The back-bow that a whole row of every wire of the shop gives the neck, pressed into the old slots: a range.

    Method: the curvature of the row for what the wood keeps of the wedging, at the least and at the most; its arc over
    the span.
    Source: timoshenko_1925
    """
    return tuple(
        BowOfOld(
            each.name,
            _bow(limit_wedge_kept_least * each.least, back_bow_row, back_bow_span),
            _bow(limit_wedge_kept_most * each.most, back_bow_row, back_bow_span),
        )
        for each in refret_wedges
    )


def _bow(wedge: float, row: float, span: float) -> float:
    """Back-bow in mm; not known if slots or neck are not."""
    return math.nan if math.isnan(wedge + row + span) else float(sagitta(wedge * row, span))


def refret_chosen(refret_fits: tuple[FitInOld, ...], wire_name: str) -> FitInOld:
    """How the chosen wire fits the old slots.

    Method: the fit of the shop's wire of that name; not known if it is not one of the shop's.
    Source: common practice.
    """
    unknown = FitInOld("not chosen", math.nan, math.nan, math.nan, math.nan)
    return next((each for each in refret_fits if each.name == wire_name), unknown)


def refret_chosen_bow(refret_bows: tuple[BowOfOld, ...], wire_name: str) -> BowOfOld:
    """The back-bow that a whole row of the chosen wire gives the neck.

    Method: the bow of the shop's wire of that name; not known if it is not one of the shop's.
    Source: common practice.
    """
    unknown = BowOfOld("not chosen", math.nan, math.nan)
    return next((each for each in refret_bows if each.name == wire_name), unknown)


def refret_room(refret_chosen: FitInOld) -> Mm:
    """Room under the chosen wire's tang in the shallowest old slot.

    Formula: refret_chosen.room
    Source: common practice.
    """
    return refret_chosen.room
