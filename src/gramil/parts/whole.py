"""What the finished instrument should weigh: its wood by volume and density, what is bought by its usual weight.

It is an estimate, within about an eighth: a wood's density differs by a tenth from piece to piece, and shapes are
taken in the rough. Without a described body it is not known.
"""

import math

import numpy as np

from gramil.description.wood.timbers import TimberKnown
from gramil.parts.body_records import BodyBlock, Brace
from gramil.physics.arrays import FloatArray
from gramil.quantities import Count, Gram, Mm, Mm3, PerFret, PerString
from gramil.shapes.outline import Outline
from gramil.shapes.strip_section import Moments

OWNS = ("whole_",)

LIGHT = 5.0e-4
"""Of linings and blocks, g/mm3: mahogany, basswood or cedar, common practice, from memory."""
BRACE_LEFT = 0.65
"""What carving leaves of a brace's box of length, width and greatest height, as a share: from memory."""
HEAD_FILLED = 0.7
"""How much of the box round it a head fills, its outline and its tuners' holes or slots taken off: from memory."""
BRIDGE_FILLED = 0.7
"""The same of a bridge, its wings and slot taken off: from memory."""
TUNER = {"upright": 33.0, "across": 30.0}
"""Of one tuner with its share of a plate, g, by how they stand: common practice, from memory."""
ROD, BAR = 100.0, 15.0
"""Of an adjustable rod, and of a bar of carbon, in the wood's place, g: common practice, from memory."""
SMALL = 120.0
"""Frets, strings, finish, glue, bindings, nut, saddle, pins and plate together, g: common practice, from memory."""


def whole_plates(
    graduated_weight: Gram, body_outlines: tuple[Outline, ...], body_back_thickness: Mm, timber_back: TimberKnown
) -> Gram:
    """Top and back without their braces; not known without a body.

    Method: the top as it is weighed by itself, the back's area by its thickness and density.
    Source: common practice.
    """
    area = sum(each.area for each in body_outlines) if body_outlines else math.nan
    return graduated_weight + float(area) * body_back_thickness * _density(timber_back)


def whole_rim(
    body_perimeter: Mm, body_depth_neck: Mm, body_depth_tail: Mm, body_wall: Mm, timber_back: TimberKnown
) -> Gram:
    """The sides alone, of the back's wood; not known without a body.

    Method: their length round the body by their mean depth, thickness and density.
    Source: common practice.
    """
    return body_perimeter * (body_depth_neck + body_depth_tail) / 2 * body_wall * _density(timber_back)


def whole_inside(
    brace_list: tuple[Brace, ...],
    timber_braces: TimberKnown,
    body_blocks: tuple[BodyBlock, ...],
    body_linings_volume: Mm3,
) -> Gram:
    """Braces, blocks and linings.

    Method: braces by their boxes and what carving leaves of them, blocks and linings by a light wood's density.
    Source: common practice.
    """
    braces = sum(each.length * each.width * each.height for each in brace_list) * BRACE_LEFT * _density(timber_braces)
    return braces + (sum(each.volume for each in body_blocks) + body_linings_volume) * LIGHT


def whole_shaft(
    section_neck: Moments, fret_position: PerFret[Mm], back_bow_length: Mm, timber_neck: TimberKnown
) -> Gram:
    """The neck under the board from the zero line to the join, as it is carved.

    Method: its sections' areas added up along it by the trapezium rule.
    Source: common practice.
    """
    along = np.linspace(0.0, back_bow_length, 65)
    return _under(np.interp(along, fret_position, section_neck.area), along) * _density(timber_neck)


def whole_head(head_reach: Mm, head_width: Mm, head_thickness: Mm, timber_neck: TimberKnown) -> Gram:
    """The head with its veneers, taken as of the neck's wood.

    Method: the box round it, and how much of that a head fills.
    Source: common practice.
    """
    return head_reach * head_width * head_thickness * HEAD_FILLED * _density(timber_neck)


def whole_heel(neck_heel_depth: Mm, carve_heel_width: Mm, carve_heel_length: Mm, timber_neck: TimberKnown) -> Gram:
    """The heel below the shaft.

    Method: half of the box of its depth, its cap's width and its length.
    Source: common practice.
    """
    return neck_heel_depth * carve_heel_width * carve_heel_length / 2 * _density(timber_neck)


def whole_board(
    section_board: Moments, fret_position: PerFret[Mm], board_length: Mm, timber_board: TimberKnown
) -> Gram:
    """The board without its frets.

    Method: the mean of its sections along the frets, by its length.
    Source: common practice.
    """
    mean = _under(section_board.area, fret_position) / float(fret_position[-1] - fret_position[0])
    return mean * board_length * _density(timber_board)


def whole_bridge(bridge_length: Mm, bridge_width_square: Mm, bridge_thickness: Mm, timber_bridge: TimberKnown) -> Gram:
    """The bridge without saddle and pins.

    Method: the box round it, and how much of that a bridge fills.
    Source: common practice.
    """
    return bridge_length * bridge_width_square * bridge_thickness * BRIDGE_FILLED * _density(timber_bridge)


def whole_bought(strings_gauges: PerString[Mm], head_tuners: str, neck_rod: str, neck_bars: Count) -> Gram:
    """What is bought or laid on: tuners, rod or bars, frets, strings, finish and what is small.

    Method: what each usually weighs.
    Source: common practice.
    """
    rod = ROD if neck_rod != "none" else 0.0
    return len(strings_gauges) * TUNER[head_tuners] + rod + neck_bars * BAR + SMALL


def whole_body(whole_plates: Gram, whole_rim: Gram, whole_inside: Gram, whole_bridge: Gram) -> Gram:
    """The body with its bridge, without neck and board.

    Source: common practice.
    """
    return whole_plates + whole_rim + whole_inside + whole_bridge


def whole_neck(whole_shaft: Gram, whole_head: Gram, whole_heel: Gram, whole_board: Gram) -> Gram:
    """The neck with its head, its heel and its board.

    Source: common practice.
    """
    return whole_shaft + whole_head + whole_heel + whole_board


def whole_weight(whole_body: Gram, whole_neck: Gram, whole_bought: Gram) -> Gram:
    """What the instrument should weigh, strung, out of its case; not known without a body.

    Source: common practice.
    """
    return whole_body + whole_neck + whole_bought


def _under(values: FloatArray, along: FloatArray) -> float:
    """What lies under a line of values, by the trapezium rule."""
    return float(((values[1:] + values[:-1]) / 2 * np.diff(along)).sum())


def _density(timber: TimberKnown) -> float:
    """Of a wood, g/mm3."""
    return timber.timber.density * 1e-6
