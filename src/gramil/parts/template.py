"""The index template: a rail with a notch for each fret, run on a pin beside the blade, the blank stuck to it."""

import numpy as np
from numpy.typing import NDArray

from gramil.description.records import IndexTemplate
from gramil.parts.records import TemplateMatch
from gramil.quantities import Mm, PerFret

OWNS = ("template_",)


def template_notch(fret_position: PerFret[Mm], shop_pin_offset: Mm) -> PerFret[Mm]:
    """Centre of each fret's notch, from the zero line: the fret's place and the way from blade to pin.

    Source: common practice.
    """
    return fret_position + shop_pin_offset


def template_nut_notch(board_nut_position: Mm, saw_kerf: Mm, shop_pin_offset: Mm) -> Mm:
    """Centre of the notch for cutting the board's nut end: the saw's near side, not its middle, makes the nut's face.

    The board is kept on the side toward the tail.
    Source: common practice.
    """
    return board_nut_position - saw_kerf / 2 + shop_pin_offset


def template_notch_width(shop_template_pin: Mm, shop_pin_clearance: Mm) -> Mm:
    """Width of each notch: the pin's diameter and a little play.

    Source: common practice.
    """
    return shop_template_pin + shop_pin_clearance


def template_pin_reach(shop_template_pin: Mm) -> Mm:
    """Waste wanted past each end for a locating pin: its centre 1.5 diameters out, a diameter of wood beyond it.

    Source: common practice.
    """
    return 2.5 * shop_template_pin


def template_pin_first(board_nut_position: Mm, shop_template_pin: Mm) -> Mm:
    """Where the first locating-pin hole lies on the centreline, in the blank's waste ahead of the nut end.

    Source: common practice.
    """
    return board_nut_position - 1.5 * shop_template_pin


def template_pin_last(board_tail_position: Mm, shop_template_pin: Mm) -> Mm:
    """Where the second locating-pin hole lies on the centreline, in the blank's waste past the tail end.

    Source: common practice.
    """
    return board_tail_position + 1.5 * shop_template_pin


def template_matches(
    shop_templates: tuple[IndexTemplate, ...],
    fret_position: PerFret[Mm],
    shop_template_pin: Mm,
    limit_slot_position: Mm,
) -> tuple[TemplateMatch, ...]:
    """The index templates on hand, held against this scale: the most that any notch would be out.

    Method: notch n of a template for scale S lies at S (1 - 2^(-n/12)); it serves when no notch is out by more than
    the limit, it has enough frets, and it runs on the shop's pin.
    Source: equal_temperament
    """
    return tuple(_match(each, fret_position, shop_template_pin, limit_slot_position) for each in shop_templates)


def _match(template: IndexTemplate, positions: NDArray[np.float64], pin: float, limit: float) -> TemplateMatch:
    frets = np.arange(min(len(positions), template.frets + 1))
    worst = float(np.abs(template.scale * (1 - 2 ** (-frets / 12)) - positions[frets]).max())
    enough = template.frets >= len(positions) - 1
    return TemplateMatch(template.name, template.frets, worst, enough and worst <= limit and template.pin == pin)
