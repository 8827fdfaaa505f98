"""The blank: what to cut the board from, and which piece in stock yields it."""

import math

from gramil.description.records import Blank, KeptPiece, stock_for
from gramil.parts.records import BlankChoice
from gramil.quantities import Mm
from gramil.shapes.quadrilateral import Quadrilateral
from gramil.wood.wood_words import serves_as

OWNS = ("blank_",)


def blank_length(board_outline: Quadrilateral, shop_allowance_length: Mm, template_pin_reach: Mm) -> Mm:
    """Least length of the blank, along the grain: corner to corner, with the allowance or room for locating pins.

    Formula: board_outline.length + maximum(shop_allowance_length, 2 * template_pin_reach)
    Source: common practice.
    """
    return board_outline.length + max(shop_allowance_length, 2 * template_pin_reach)


def blank_width(board_outline: Quadrilateral, shop_allowance_side: Mm) -> Mm:
    """Least width of the blank: the tail's, with the allowance on each side. One edge is jointed straight.

    Source: common practice.
    """
    return board_outline.width + 2 * shop_allowance_side


def blank_thickness(thickness_before_levelling: Mm, slots_crest_loss: Mm, lean_over_middle: Mm) -> Mm:
    """Thickness to plane the blank to before slotting: arching and levelling still take wood off the crest.

    Source: common practice.
    """
    return thickness_before_levelling + slots_crest_loss + lean_over_middle


def blank_options(
    shop_blanks: tuple[Blank, ...],
    shop_kept: tuple[KeptPiece, ...],
    board_wood: str,
    blank_length: Mm,
    blank_width: Mm,
    blank_thickness: Mm,
) -> tuple[BlankChoice, ...]:
    """Pieces in stock, of the board's wood and large enough, least waste first.

    Method: waste = length x width of the piece less that of the blank.
    Source: common practice.
    """
    able = [
        BlankChoice(
            piece.name,
            piece.wood,
            piece.length - blank_length,
            piece.width - blank_width,
            piece.thickness - blank_thickness,
            piece.length * piece.width - blank_length * blank_width,
        )
        for piece in stock_for("board", shop_blanks, shop_kept)
        if serves_as(piece.wood, board_wood) and piece.count > 0
    ]
    fitting = [each for each in able if min(each.length_over, each.width_over, each.thickness_over) >= 0]
    return tuple(sorted(fitting, key=lambda each: (each.waste, each.thickness_over)))


def blank_choice(blank_options: tuple[BlankChoice, ...]) -> BlankChoice:
    """The piece that yields the board with least waste, or none.

    Method: the first of the options.
    Source: common practice.
    """
    none = BlankChoice("none", "", math.nan, math.nan, math.nan, math.nan)
    return next(iter(blank_options), none)
