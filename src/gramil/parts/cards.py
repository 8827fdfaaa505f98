"""Gauge cards and the rail of the index template: sheet to be cut, in the shapes that prove an arch, a depth, a notch.

All are finished sizes; what the machine that cuts them takes is allowed for in the drawing, or by the machine.
"""

import math
from dataclasses import dataclass

import numpy as np

from gramil.quantities import Count, Mm, PerFret, Radians, Ratio
from gramil.shapes.arc import sagitta
from gramil.shapes.crown import Crown

OWNS = ("card_",)

OVERHANG = 4.0
"""How far an arch card reaches past the board's edge, in mm: common practice."""
THINNEST_WALL = 0.25
"""Least wall between two notches, in pin diameters, that does not break out: common practice."""


@dataclass(frozen=True)
class ArchCard:
    """A card cut along the arch at one station. The arc reaches `half_angle` either side of its top, to `reach`.

    `half_width` is half the finished board there, `fall` the arch's fall at its edge.
    """

    name: str
    position: Mm
    radius: Mm
    half_width: Mm
    fall: Mm
    reach: Mm
    half_angle: Radians


@dataclass(frozen=True)
class DepthCard:
    """A card with a tongue that stands `depth` past its shoulders, to be dropped into a slot."""

    name: str
    depth: Mm


@dataclass(frozen=True)
class GapCard:
    """A card with a gap to be slipped over an edge."""

    name: str
    thickness: Mm


def card_arches(
    arch_surface: Crown,
    nut_width: Mm,
    fret_position: PerFret[Mm],
    board_width_at_fret: PerFret[Mm],
    board_tail_position: Mm,
    board_width_at_tail: Mm,
) -> tuple[ArchCard, ...]:
    """Cards for the arch at the zero line, at fret 12 (the last, on a shorter board) and at the tail end.

    Method: half angle = arcsine of reach over radius; fall = sagitta of the radius there over the board's half-width.
    Source: sagitta
    """
    middle = min(12, len(fret_position) - 1)
    stations = (
        ("nut", 0.0, nut_width),
        (f"fret {middle}", float(fret_position[middle]), float(board_width_at_fret[middle])),
        ("end", board_tail_position, board_width_at_tail),
    )
    return tuple(_arch_card(name, x, width / 2, float(arch_surface.curvature(x))) for name, x, width in stations)


def _arch_card(name: str, x: float, half_width: float, curvature: float) -> ArchCard:
    radius = 1 / curvature if curvature else math.inf
    reach = min(half_width + OVERHANG, radius)
    fall = float(sagitta(curvature, half_width))
    return ArchCard(name, float(x), radius, half_width, fall, reach, math.asin(reach * curvature))


def card_depths(slot_depth_setting: Mm, slot_depth_at_crest: Mm, slot_need: Mm) -> tuple[DepthCard, ...]:
    """Cards for the depth of a slot: as sawn, finished at the crest, finished at its ends; each depth once.

    Method: the setting of the main kerf, the finished depth at the crest, and tang depth with clearance.
    Source: common practice.
    """
    wanted = (
        ("slot as sawn", slot_depth_setting),
        ("slot done, crest", slot_depth_at_crest),
        ("slot done, ends", slot_need),
    )
    return tuple(DepthCard(name, depth) for name, depth in _once(wanted))


def card_gaps(
    blank_thickness: Mm,
    board_thickness: Mm,
    thickness_at_edge_treble: PerFret[Mm],
    thickness_at_edge_bass: PerFret[Mm],
) -> tuple[GapCard, ...]:
    """Cards for thickness: the blank, the crest at the tail end, and both edges at the zero line and the last fret.

    Method: each thickness once.
    Source: common practice.
    """
    wanted = (
        ("blank", blank_thickness),
        ("crest, end", board_thickness),
        ("treble edge, nut", float(thickness_at_edge_treble[0])),
        ("bass edge, nut", float(thickness_at_edge_bass[0])),
        ("treble edge, end", float(thickness_at_edge_treble[-1])),
        ("bass edge, end", float(thickness_at_edge_bass[-1])),
    )
    return tuple(GapCard(name, thickness) for name, thickness in _once(wanted))


def _once(wanted: tuple[tuple[str, float], ...]) -> list[tuple[str, float]]:
    """Each size with its first name only: two cards alike would be mixed up."""
    kept: list[tuple[str, float]] = []
    for name, size in wanted:
        if all(abs(size - other) > 0.005 for _, other in kept):  # half the last digit of the size that stands on a card
            kept.append((name, size))
    return kept


def card_notch_depth(shop_template_pin: Mm) -> Mm:
    """How deep each notch is: one and a half pins, so that the pin bears on straight sides.

    Source: common practice.
    """
    return 1.5 * shop_template_pin


def card_notch_wall(template_notch: PerFret[Mm], slot_first: Count, template_notch_width: Mm) -> Mm:
    """Least wall left between two neighbouring notches.

    Formula: min(diff(template_notch[slot_first:])) - template_notch_width
    Source: common practice.
    """
    return float(np.diff(template_notch[slot_first:]).min(initial=math.inf) - template_notch_width)


def card_nut_notch_wall(
    template_notch: PerFret[Mm], slot_first: Count, template_nut_notch: Mm, template_notch_width: Mm
) -> Mm:
    """Wall left between the notch for the nut end and the first fret's.

    Formula: template_notch[slot_first] - template_nut_notch - template_notch_width
    Source: common practice.
    """
    return float(template_notch[slot_first] - template_nut_notch - template_notch_width)


def card_nut_notch_stands(card_nut_notch_wall: Mm, shop_template_pin: Mm) -> bool:
    """Whether the nut end can have a notch of its own; beside a zero fret's there may be no room for it.

    Method: the wall to the next notch is at least a quarter of the pin's diameter.
    Source: common practice.
    """
    return bool(card_nut_notch_wall >= THINNEST_WALL * shop_template_pin)


def card_notches_serve(fret_slant: PerFret[Ratio], card_notch_wall: Mm, shop_template_pin: Mm) -> bool:
    """Whether an index template can cut this board: it makes square slots only, and its walls must not break out.

    Method: every fret's slant is nothing, and the least wall is at least a quarter of the pin's diameter.
    Source: common practice.
    """
    return bool(not np.any(fret_slant) and card_notch_wall >= THINNEST_WALL * shop_template_pin)


def card_proof_notch(
    template_notch: PerFret[Mm], template_nut_notch: Mm, card_nut_notch_stands: bool, slot_first: Count
) -> Mm:
    """Centre of the first notch, from which a template is proved: the nut end's; a zero fret's where that has no room.

    Formula: template_nut_notch if card_nut_notch_stands else template_notch[slot_first]
    Source: common practice.
    """
    return template_nut_notch if card_nut_notch_stands else float(template_notch[slot_first])


def card_proof_octave(template_notch: PerFret[Mm], card_proof_notch: Mm) -> Mm:
    """First notch to notch 12 (or to the last, on a shorter board), centre to centre, as the calipers find them.

    The nut end's notch is half a kerf short of the zero line's place, so this is half a kerf more than fret 12's.
    Formula: template_notch[minimum(12, len(template_notch) - 1)] - card_proof_notch
    Source: common practice.
    """
    return float(template_notch[min(12, len(template_notch) - 1)] - card_proof_notch)


def card_proof_pin(card_proof_notch: Mm, template_pin_first: Mm) -> Mm:
    """First locating pin to the first notch, centre to centre along the board.

    Source: common practice.
    """
    return card_proof_notch - template_pin_first


def card_rail_head(
    template_notch: PerFret[Mm],
    template_nut_notch: Mm,
    template_pin_first: Mm,
    template_pin_reach: Mm,
) -> Mm:
    """Head end of the template's rail, from the zero line: clear of pin hole and notches.

    Formula: fmin(template_pin_first, fmin(template_nut_notch, template_notch[0])) - template_pin_reach
    Source: common practice.
    """
    first = min(template_pin_first, template_nut_notch, float(template_notch[0]))
    return first - template_pin_reach


def card_rail_tail(template_notch: PerFret[Mm], template_pin_last: Mm, template_pin_reach: Mm) -> Mm:
    """Tail end of the template's rail, from the zero line: clear of pin hole and notches.

    Formula: maximum(template_pin_last, template_notch[-1]) + template_pin_reach
    Source: common practice.
    """
    return max(template_pin_last, float(template_notch[-1])) + template_pin_reach


def card_rail_back(blank_width: Mm) -> Mm:
    """Centreline to the rail's plain edge: it lies over the blank's.

    Source: common practice.
    """
    return blank_width / 2


def card_rail_front(blank_width: Mm, card_notch_depth: Mm, shop_template_pin: Mm) -> Mm:
    """Centreline to the rail's notched edge: past the blank by the notches and one pin's clearance.

    Source: common practice.
    """
    return blank_width / 2 + card_notch_depth + shop_template_pin
