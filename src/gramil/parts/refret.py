"""New wire for old slots: each of the shop's wires against the slots as found, and what it does to neck and strings."""

import math

from gramil.description.records import Wire
from gramil.parts.records import WireInOld
from gramil.physics.layered_beam import sagitta
from gramil.quantities import Mm, PerMm2, Ratio

OWNS = ("refret_",)
_UNKNOWN = math.nan
NOT_READ = WireInOld(
    "not chosen", _UNKNOWN, _UNKNOWN, _UNKNOWN, _UNKNOWN, _UNKNOWN, _UNKNOWN, _UNKNOWN, _UNKNOWN, _UNKNOWN, _UNKNOWN,
    "not judged: no wire is chosen",
)  # fmt: skip
"""In the place of a wire that is not chosen, or is not the shop's."""


def refret_wires(
    shop_wires: tuple[Wire, ...],
    found_slot_width_least: Mm,
    found_slot_width_most: Mm,
    found_slot_width_mean: Mm,
    found_slot_depth_least: Mm,
    found_crown_most: Mm,
    found_crown_at_twelve: Mm,
    heights_dressing_loss: Mm,
    limit_fit_loosest: Mm,
    limit_fit_tightest: Mm,
    limit_bead_bite_caution: Mm,
    limit_bead_bite_stop: Mm,
    limit_clearance_least: Mm,
    limit_bead_share_most: Ratio,
    limit_wedge_kept_least: Ratio,
    limit_wedge_kept_most: Ratio,
    back_bow_row: PerMm2,
    back_bow_span: Mm,
) -> tuple[WireInOld, ...]:
    """Every wire of the shop against the old slots: gaps, bite, room, crowns, action, back-bow, and a verdict in words.

    Method: tang against the narrowest and the widest slot read, beads against the widest, tang's depth against the
    shallowest; its crown against the old ones; back-bow from the mean slot. Limits are common practice.
    Source: timoshenko_1925
    """
    narrow, wide, mean = found_slot_width_least, found_slot_width_most, found_slot_width_mean

    def one(wire: Wire) -> WireInOld:
        wedge = max(0.0, wire.tang_thickness - mean)
        most = wedge + limit_bead_share_most * max(0.0, wire.bead_thickness - mean)
        bite, room = (wire.bead_thickness - wide) / 2, found_slot_depth_least - wire.tang_depth
        crown = wire.crown_height - heights_dressing_loss
        words = _words(
            (narrow - wire.tang_thickness, limit_fit_tightest),
            (wide - wire.tang_thickness, limit_fit_loosest),
            (bite, limit_bead_bite_caution, limit_bead_bite_stop),
            (room, limit_clearance_least),
        )
        return WireInOld(
            wire.name,
            wire.crown_width,
            wire.crown_height,
            narrow - wire.tang_thickness,
            wide - wire.tang_thickness,
            bite,
            room,
            wire.crown_height - found_crown_most,
            crown - found_crown_at_twelve,
            _bow(limit_wedge_kept_least * wedge, mean, back_bow_row, back_bow_span),
            _bow(limit_wedge_kept_most * most, mean, back_bow_row, back_bow_span),
            words,
        )

    return tuple(map(one, shop_wires))


def _bow(wedge: float, mean: float, row: float, span: float) -> float:
    """Back-bow in mm; not known if slots or neck are not."""
    return math.nan if math.isnan(mean + row + span) else float(sagitta(wedge * row, span))


def _words(
    tight: tuple[float, float],
    loose: tuple[float, float],
    bite: tuple[float, float, float],
    room: tuple[float, float],
) -> str:
    """What speaks against a wire, the gravest first; that it fits if nothing does."""
    if math.isnan(tight[0]):
        return "not judged: no slot's width was read"
    found = []
    if bite[0] < bite[2]:
        found.append("holds nothing: beads too thin")
    elif bite[0] < bite[1]:
        found.append("holds little: glue it in")
    if loose[0] > loose[1]:
        found.append("loose in the widest slot")
    if tight[0] < tight[1]:
        found.append("wedges the narrowest open")
    if room[0] < 0:
        found.append("tang bottoms: deepen the slots")
    elif room[0] < room[1]:
        found.append("little room under the tang")
    if math.isnan(room[0]):
        found.append("depth not read")
    return "; ".join(found) or "fits"


def refret_chosen(refret_wires: tuple[WireInOld, ...], wire_name: str) -> WireInOld:
    """The wire that is chosen, against the old slots.

    Method: that of the shop's wires by its name; none is known where it is not one of them.
    Source: common practice.
    """
    return next((each for each in refret_wires if each.name == wire_name), NOT_READ)


def refret_room(refret_chosen: WireInOld) -> Mm:
    """Room under the chosen wire's tang in the shallowest old slot.

    Formula: refret_chosen.room
    Source: common practice.
    """
    return refret_chosen.room
