"""What the neck is made out of: the plank with its scarf, the heel's blocks, ears, and the stock that yields them.

The plank is sawn once at the head's angle; the piece cut off is turned over and glued on, its face the head's. Both
ways of gluing it need the same plank: on the head the ramp lies behind the nut, under the board it ends there.
"""

from math import ceil, isnan

import numpy as np

from gramil.description.records import Blank, KeptPiece, stock_for
from gramil.parts.records import NeckPiece, NeckYield, PieceOnStock, Run
from gramil.quantities import Mm, Radians
from gramil.shapes.cutting import Box, packed, sets_out_of, strips_across
from gramil.shapes.tapered_bar import TaperedBar
from gramil.wood.wood_words import serves_as

OWNS = ("plank_",)

PLANK, BLOCK, EAR = "neck and head", "heel block", "ear"
"""What the pieces are called."""


def plank_scarfed(carve_scarf: str, head_angle: Radians) -> bool:
    """Whether the head is scarfed on: it leans back, and is not sawn from one piece with the neck.

    Source: common practice.
    """
    return carve_scarf != "one piece" and head_angle > 0


def plank_head_start(board_nut_position: Mm, head_nut_thickness: Mm) -> Mm:
    """Where the head's face begins, behind the nut, from the zero line; toward the head is negative.

    Source: common practice.
    """
    return board_nut_position - head_nut_thickness


def plank_tail(back_bow_length: Mm, carve_tenon: Mm, foot_there: bool, foot_reach: Mm) -> Mm:
    """Where the neck's wood ends, from the zero line: tenon and all, or with the foot that the body is built on.

    Formula: foot_reach if foot_there else back_bow_length + carve_tenon
    Source: common practice.
    """
    return foot_reach if foot_there else back_bow_length + carve_tenon


def plank_shaft(plank_tail: Mm, plank_head_start: Mm) -> Mm:
    """The neck's own length: from behind the nut to the end of its tenon or its foot.

    Source: common practice.
    """
    return plank_tail - plank_head_start


def plank_head_along(head_reach: Mm, head_nut_thickness: Mm) -> Mm:
    """The head's own length along its face, from behind the nut.

    Source: common practice.
    """
    return head_reach - head_nut_thickness


def plank_scarf_run(plank_scarfed: bool, head_blank: Mm, head_angle: Radians) -> Mm:
    """How far the scarf runs along the plank from one face to the other; nothing without one.

    Formula: head_blank / tan(head_angle) if plank_scarfed else 0.0
    Source: a right triangle.
    """
    return float(head_blank / np.tan(head_angle)) if plank_scarfed else 0.0


def plank_saw_run(plank_scarfed: bool, limit_rip_kerf: Mm, head_angle: Radians) -> Mm:
    """What the scarf's saw cut takes of the plank's length; nothing without one.

    Formula: limit_rip_kerf / sin(head_angle) if plank_scarfed else 0.0
    Source: a right triangle.
    """
    return float(limit_rip_kerf / np.sin(head_angle)) if plank_scarfed else 0.0


def plank_head_rest(plank_scarfed: bool, plank_head_along: Mm, head_scarf_length: Mm, head_angle: Radians) -> Mm:
    """Plank for the head past the scarf: its face less the ramp; from one piece, its run level with the board.

    Formula: maximum(plank_head_along - head_scarf_length, 0) if plank_scarfed else plank_head_along * cos(head_angle)
    Source: a right triangle.
    """
    if plank_scarfed:
        return max(plank_head_along - head_scarf_length, 0.0)
    return float(plank_head_along * np.cos(head_angle))


def plank_length(
    plank_shaft: Mm, plank_scarf_run: Mm, plank_saw_run: Mm, plank_head_rest: Mm, shop_allowance_length: Mm
) -> Mm:
    """Length of the plank: neck, scarf, saw cut, the head past it, and the shop's allowance.

    Source: common practice.
    """
    return plank_shaft + plank_scarf_run + plank_saw_run + plank_head_rest + shop_allowance_length


def plank_head_fall(plank_head_along: Mm, head_angle: Radians, head_thickness: Mm, head_veneer: Mm) -> Mm:
    """How far the head's end hangs below the joint of board and neck.

    Source: turning the head by its angle.
    """
    return float(plank_head_along * np.sin(head_angle) + (head_thickness - head_veneer) * np.cos(head_angle))


def plank_thickness(
    head_blank: Mm, carve_heel: str, neck_heel_depth: Mm, plank_scarfed: bool, plank_head_fall: Mm
) -> Mm:
    """Thickness of the plank: the blank's; for a heel from solid its depth, for a head from solid its fall.

    Formula: maximum(maximum(head_blank, neck_heel_depth * (carve_heel == "solid")),
        plank_head_fall * (not plank_scarfed))
    Source: common practice.
    """
    return max(head_blank, neck_heel_depth * (carve_heel == "solid"), plank_head_fall * (not plank_scarfed))


def plank_over(head_blank: Mm, carve_deepest: Mm) -> Mm:
    """How much thicker the plank is than the neck's own wood at its deepest.

    Source: common practice.
    """
    return head_blank - carve_deepest


def plank_width(
    carve_form: TaperedBar,
    plank_tail: Mm,
    carve_ears: bool,
    head_width: Mm,
    shop_allowance_side: Mm,
    foot_there: bool,
    body_neck_block_width: Mm,
) -> Mm:
    """Width of the plank: the neck's at the body, or the head's where that is wider and no ears are glued on.

    Method: the widest, a foot inside the body too, and the shop's allowance on each side.
    Source: common practice.
    """
    neck = 2 * float(carve_form.at(plank_tail).half_width)
    return max(neck, head_width * (not carve_ears), body_neck_block_width * foot_there) + 2 * shop_allowance_side


def plank_toe(
    carve_heel: str,
    neck_heel_depth: Mm,
    head_blank: Mm,
    foot_there: bool,
    carve_foot_toe: Mm,
    carve_foot_toe_height: Mm,
) -> tuple[Mm, ...]:
    """For each block of a stacked heel, the uppermost first, how far it runs on past the neck's end as a foot's toe.

    Method: as many blocks as the heel is deeper than the plank; those that the toe's height reaches up into.
    Source: common practice.
    """
    if carve_heel == "solid":
        return ()
    blocks = (neck_heel_depth - head_blank) / head_blank
    count = 1 if isnan(blocks) else max(0, ceil(blocks - 1e-9))
    sole = neck_heel_depth - carve_foot_toe_height
    return tuple(carve_foot_toe * (foot_there and head_blank * (row + 2) > sole) for row in range(count))


def plank_heel_blocks(
    plank_toe: tuple[Mm, ...],
    neck_heel_depth: Mm,
    head_blank: Mm,
    carve_heel_curve: Run,
    plank_tail: Mm,
    shop_allowance_length: Mm,
) -> tuple[NeckPiece, ...]:
    """The blocks of a stacked heel below the plank, the uppermost first: as thick as that, as long as the heel there.

    Method: each from where the heel's curve lies at its upper face, to the neck's end, or to the toe's end of a foot.
    Source: common practice.
    """
    along, depths = (np.array(each) for each in zip(*((x, -z) for x, z in carve_heel_curve.points), strict=True))
    tops = [head_blank * (row + 1) for row in range(len(plank_toe))]
    return tuple(
        NeckPiece(
            f"{BLOCK} {row}",
            plank_tail + toe - float(np.interp(top, depths, along)) + shop_allowance_length,
            0.0,
            min(head_blank, neck_heel_depth - top),
        )
        for row, (top, toe) in enumerate(zip(tops, plank_toe, strict=True), 1)
    )


def plank_ear(carve_ears: bool, head_width: Mm, plank_width: Mm) -> Mm:
    """Width of the ear to be glued to each side of the head; nothing without ears.

    Formula: maximum(head_width - plank_width, 0) / 2 * carve_ears
    Source: common practice.
    """
    return max(head_width - plank_width, 0.0) / 2 * carve_ears


def plank_pieces(
    plank_length: Mm,
    plank_width: Mm,
    plank_thickness: Mm,
    plank_heel_blocks: tuple[NeckPiece, ...],
    plank_ear: Mm,
    plank_head_along: Mm,
) -> tuple[NeckPiece, ...]:
    """Every piece that the neck is made of, rough: all are sawn from strips as wide as the plank.

    Method: the plank, the heel's blocks, the ears.
    Source: common practice.
    """
    blocks = (NeckPiece(each.name, each.length, plank_width, each.thickness) for each in plank_heel_blocks)
    ears = (NeckPiece(f"{EAR} {row}", plank_head_along, plank_ear, plank_thickness) for row in (1, 2) if plank_ear > 0)
    return (NeckPiece(PLANK, plank_length, plank_width, plank_thickness), *blocks, *ears)


def plank_strip_length(plank_pieces: tuple[NeckPiece, ...], limit_rip_kerf: Mm) -> Mm:
    """How long a piece of stock must be that gives every piece of the neck out of one strip, a saw cut between each.

    Method: the pieces' lengths, and a kerf for each but one; stock of more strips or layers may be shorter.
    Source: common practice.
    """
    return sum(each.length for each in plank_pieces) + limit_rip_kerf * (len(plank_pieces) - 1)


def plank_yields(
    shop_blanks: tuple[Blank, ...],
    shop_kept: tuple[KeptPiece, ...],
    carve_wood: str,
    plank_pieces: tuple[NeckPiece, ...],
    limit_rip_kerf: Mm,
) -> tuple[NeckYield, ...]:
    """Pieces in stock, of the neck's wood, that give one neck or more; the best used first.

    Method: strips as wide as the plank, in as many layers as the thickness gives; pieces by falling length.
    Source: common practice.
    """
    plank = plank_pieces[0]
    lengths, volume = [each.length for each in plank_pieces], sum(each.length for each in plank_pieces)
    found = []
    for stock in stock_for("neck", shop_blanks, shop_kept):
        sizes = Box(stock.length, stock.width, stock.thickness)
        necks = sets_out_of(sizes, lengths, (plank.width, plank.thickness), limit_rip_kerf)
        if serves_as(stock.wood, carve_wood) and stock.count > 0 and necks > 0:
            used = necks * volume * plank.width * plank.thickness / (stock.length * stock.width * stock.thickness)
            over = stock.thickness - plank.thickness
            found.append(NeckYield(stock.name, necks, stock.length, stock.width, stock.thickness, over, used))
    return tuple(sorted(found, key=lambda each: -each.used))


def plank_choice(plank_yields: tuple[NeckYield, ...]) -> NeckYield:
    """The piece in stock that is used best, or none.

    Method: the first of those that give a neck.
    Source: common practice.
    """
    nothing = float("nan")
    return next(iter(plank_yields), NeckYield("none", 0, nothing, nothing, nothing, nothing, nothing))


def plank_layout(
    plank_choice: NeckYield, plank_pieces: tuple[NeckPiece, ...], plank_strip_length: Mm, limit_rip_kerf: Mm
) -> tuple[PieceOnStock, ...]:
    """Where each piece of one neck lies on the stock chosen; without stock, on a strip as long as they need.

    Method: strips from one edge, each piece where it first fits, the longest first.
    Source: common practice.
    """
    plank, lengths = plank_pieces[0], [each.length for each in plank_pieces]
    length = plank_choice.length if plank_choice.necks else plank_strip_length
    layers = strips_across(plank_choice.thickness, plank.thickness, limit_rip_kerf) if plank_choice.necks else 1
    strips = strips_across(plank_choice.width, plank.width, limit_rip_kerf) if plank_choice.necks else 1
    cuts = packed(lengths, length, layers * strips, limit_rip_kerf) or ()
    return tuple(
        PieceOnStock(
            plank_pieces[cut.row].name,
            cut.start,
            (cut.strip % strips) * (plank.width + limit_rip_kerf),
            plank_pieces[cut.row].length,
            plank_pieces[cut.row].width,
        )
        for cut in cuts
    )
