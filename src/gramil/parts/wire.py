"""Fret wire: how long, how far nipped back, how bent, and how it fits each saw's kerf."""

import numpy as np

from gramil.description.records import Saw
from gramil.parts.records import WireFit
from gramil.quantities import Count, Mm, PerFret, Ratio

OWNS = ("wire_",)


def wire_line(
    edge_x_treble: PerFret[Mm], edge_y_treble: PerFret[Mm], edge_x_bass: PerFret[Mm], edge_y_bass: PerFret[Mm]
) -> PerFret[Mm]:
    """Length of each fret from finished edge to finished edge, along the fret.

    Formula: hypot(edge_x_treble - edge_x_bass, edge_y_treble - edge_y_bass)
    Source: common practice.
    """
    return np.hypot(edge_x_treble - edge_x_bass, edge_y_treble - edge_y_bass)


def wire_cut(wire_line: PerFret[Mm], limit_wire_extra: Mm) -> PerFret[Mm]:
    """What to cut for each fret: the fret, and some over at each end.

    Source: common practice.
    """
    return wire_line + 2 * limit_wire_extra


def wire_total(wire_cut: PerFret[Mm], slot_first: Count, limit_wire_spare: Ratio) -> Mm:
    """Wire for the whole board, with spare.

    Formula: sum(wire_cut[slot_first:]) * limit_wire_spare
    Source: common practice.
    """
    return float(wire_cut[slot_first:].sum() * limit_wire_spare)


def wire_nip_back(core_inset: Mm, limit_nip_back: Mm) -> Mm:
    """How far the tang is nipped back at each end so that the crown runs over the binding; 0 on an unbound board.

    Formula: core_inset + limit_nip_back if core_inset > 0 else 0
    Source: common practice.
    """
    return core_inset + limit_nip_back if core_inset > 0 else 0.0


def wire_bend_radius(arch_radius_at_fret: PerFret[Mm], limit_wire_bend_ratio: Ratio) -> PerFret[Mm]:
    """Radius to bend the wire to, a little tighter than the board, so that its ends go home first.

    Source: common practice.
    """
    return limit_wire_bend_ratio * arch_radius_at_fret


def wire_fits(
    shop_saws: tuple[Saw, ...],
    wire_tang_thickness: Mm,
    wire_bead_thickness: Mm,
    limit_bead_share_most: Ratio,
) -> tuple[WireFit, ...]:
    """How the wire fits each saw's kerf: the gap beside the tang, the bite of the beads, and the wedge each slot makes.

    Method: gap = kerf - tang; bite a side = (beads - kerf) / 2; the wedge is between max(0, tang - kerf) and that
    plus a part (at most `limit_bead_share_most`) of beads - kerf.
    Source: common practice.
    """
    return tuple(_fit(saw, wire_tang_thickness, wire_bead_thickness, limit_bead_share_most) for saw in shop_saws)


def _fit(saw: Saw, tang: float, beads: float, bead_share: float) -> WireFit:
    wedge = max(0.0, tang - saw.kerf)
    over = max(0.0, beads - saw.kerf)
    return WireFit(saw.name, saw.kerf - tang, (beads - saw.kerf) / 2, wedge, wedge + bead_share * over)
