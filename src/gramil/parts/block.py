"""Sanding blocks against the arch: which one serves at the nut, at the 12th fret and at the end."""

import math

from gramil.description.records import Block
from gramil.parts.records import BlockChoice
from gramil.quantities import Mm
from gramil.shapes.arc import sagitta
from gramil.shapes.crown import Crown

OWNS = ("block_",)


def block_at_nut(shop_blocks: tuple[Block, ...], arch_surface: Crown, nut_width: Mm) -> BlockChoice:
    """The block nearest the arch at the zero line, judged by the gap that it leaves at the board's edge.

    Method: misfit = fall of the board's arch less fall of the block's, at the edge.
    Source: sagitta
    """
    return _nearest(shop_blocks, float(arch_surface.curvature(0.0)), nut_width / 2)


def block_at_end(
    shop_blocks: tuple[Block, ...], arch_surface: Crown, board_tail_position: Mm, board_width_at_tail: Mm
) -> BlockChoice:
    """The block nearest the arch at the tail end, judged by the gap that it leaves at the board's edge.

    Method: misfit = fall of the board's arch less fall of the block's, at the edge.
    Source: sagitta
    """
    return _nearest(shop_blocks, float(arch_surface.curvature(board_tail_position)), board_width_at_tail / 2)


def block_at_middle(
    shop_blocks: tuple[Block, ...], arch_surface: Crown, board_width_position: Mm, board_width: Mm
) -> BlockChoice:
    """The block nearest the arch where the board's second width is given, by the gap at the board's edge.

    Method: misfit = fall of the board's arch less fall of the block's, at the edge.
    Source: sagitta
    """
    return _nearest(shop_blocks, float(arch_surface.curvature(board_width_position)), board_width / 2)


def _nearest(blocks: tuple[Block, ...], curvature: float, half_width: float) -> BlockChoice:
    options = [
        BlockChoice(
            block.name,
            1 / block.curvature if block.curvature else math.inf,
            float(sagitta(curvature, half_width) - sagitta(block.curvature, half_width)),
        )
        for block in blocks
    ]
    return min(options, key=lambda option: abs(option.misfit), default=BlockChoice("none", math.nan, math.nan))
