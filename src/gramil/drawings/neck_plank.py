"""The neck in its plank, from the side at true scale: scarf, heel blocks, truss rod; and the cutting plan."""

from dataclasses import dataclass
from math import cos, sin, tan

from gramil import names as n
from gramil.drawings.kerf import FINISHED
from gramil.drawings.marks import Drawing, Label, Line, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import FIGURE, View, upright
from gramil.parts.records import NeckPiece, NeckYield, PieceOnStock, Run
from gramil.quantities import Mm, Radians
from gramil.shapes.tapered_bar import TaperedBar

OWNS = ("drawing_", "piece_")

TRUE = View((0.0, 0.0))
STEPS = 12
"""Straight pieces in which the neck's back is drawn."""
STOCK = 96.0
"""Length, in mm, that the stock is drawn; across it is drawn twice as large."""


@dataclass(frozen=True)
class LeaningHead:
    """The head's axes from the side: its face begins at `start`, behind the nut, and falls away at `angle`.

    `wood` is the head's own thickness, veneer left out.
    """

    start: Point
    angle: Radians
    length: Mm
    wood: Mm

    def at(self, along: float, under: float) -> Point:
        """A point `along` the face and `under` it."""
        x, z = self.start
        c, s = cos(self.angle), sin(self.angle)
        return (x - along * c + under * s, z - along * s - under * c)


def piece_leaning_head(
    plank_head_start: Mm, head_angle: Radians, plank_head_along: Mm, head_thickness: Mm, head_veneer: Mm
) -> LeaningHead:
    """The head from the side, its neck's face level at height 0."""
    return LeaningHead((plank_head_start, 0.0), head_angle, plank_head_along, head_thickness - head_veneer)


def piece_neck_line(
    carve_form: TaperedBar,
    carve_heel_start: Mm,
    carve_heel_curve: Run,
    back_bow_length: Mm,
    neck_heel_depth: Mm,
    piece_foot_side: tuple[Point, ...],
    body_edge: Mm,
) -> tuple[Point, ...]:
    """The carved neck's outline from the zero line along its back and heel, up the heel's face to the joint.

    With a foot inside the body the line goes round that.
    """
    places = [carve_heel_start * step / STEPS for step in range(STEPS)]
    back = ((x, -carve_form.at(x).depth) for x in places)
    foot = tuple((body_edge + x, z) for x, z in piece_foot_side)
    end = foot or ((back_bow_length, -neck_heel_depth), (back_bow_length, 0.0))
    return (*back, *carve_heel_curve.points, *end)


def piece_carved(piece_neck_line: tuple[Point, ...], piece_leaning_head: LeaningHead) -> Marks:
    """Neck and head as they will be."""
    head, root = piece_leaning_head, piece_neck_line[0]
    tip = (head.at(head.length, 0.0), head.at(head.length, head.wood))
    along = (-root[1] - head.wood * cos(head.angle)) / sin(head.angle) if head.angle else 0.0
    meet = head.at(min(max(along, 0.0), head.length), head.wood)
    return (Polyline((piece_neck_line[-1], head.start, *tip, meet, *piece_neck_line), "outline"),)


def piece_plank(
    plank_scarfed: bool,
    carve_scarf: str,
    piece_leaning_head: LeaningHead,
    plank_tail: Mm,
    plank_thickness: Mm,
    head_blank: Mm,
) -> Marks:
    """The plank's pieces as they are glued, with the scarf's line between them."""
    head, tail = piece_leaning_head, plank_tail
    start, low = head.start[0], -plank_thickness
    if not plank_scarfed:
        end = head.at(head.length, 0.0)[0]
        return (TRUE.box((end, low), (tail, 0.0), "hidden"),)
    slope = head_blank / sin(head.angle)
    run = slope * cos(head.angle)
    under = carve_scarf == "under the board"
    top = start + slope * under
    foot = (top - run, -head_blank)
    neck = ((top, 0.0), (tail, 0.0), (tail, low), (top - run, low), foot)
    ends = (head.at(head.length, 0.0), head.at(head.length, head_blank))
    piece = (head.start, *ends, (top, 0.0)) if under else (foot, *ends, (foot[0] + slope, foot[1]))
    return (
        TRUE.shape(neck, "hidden"),
        TRUE.shape(piece, "hidden"),
        Line((top, 0.0) if under else foot, foot if under else (foot[0] + slope, foot[1]), "cut"),
    )


def piece_heel_blocks(
    plank_heel_blocks: tuple[NeckPiece, ...], plank_tail: Mm, head_blank: Mm, plank_toe: tuple[Mm, ...]
) -> Marks:
    """The heel's blocks under the plank, each from the neck's end, or the toe's, as long as it is cut."""
    marks: Marks = ()
    top = -head_blank
    for block, toe in zip(plank_heel_blocks, plank_toe, strict=True):
        end = plank_tail + toe
        marks += (TRUE.box((end - block.length, top - block.thickness), (end, top), "hidden"),)
        top -= block.thickness
    return marks


def piece_rod(rod_start: Mm, rod_end: Mm, neck_rod_depth: Mm, neck_rod: str, piece_leaning_head: LeaningHead) -> Marks:
    """The rod's channel, its pocket open to the head's face, with its ends measured from the zero line."""
    if neck_rod == "none":
        return ()
    low, (edge, _) = -neck_rod_depth, piece_leaning_head.start
    top = min(0.0, -(edge - rod_start) * tan(piece_leaning_head.angle))
    side = ((rod_start, top), (edge, 0.0)) if rod_start < edge else ((rod_start, 0.0),)
    return (
        Polyline((*side, (rod_end, 0.0), (rod_end, low), (rod_start, low)), "slots", closed=True),
        Span((0.0, 0.0), (rod_end, 0.0), 14.0, n.rod_end, before="rod to "),
        Span(
            (min(rod_start, 0.0), 0.0),
            (max(rod_start, 0.0), 0.0),
            14.0 if rod_start < 0.0 else 5.0,
            n.rod_start_away,
            before="rod from ",
        ),
        Words((rod_end / 2, low / 2 - 1.2), "truss rod's channel", 2.4, anchor="middle"),
    )


def piece_plank_sizes(
    plank_head_start: Mm,
    plank_tail: Mm,
    back_bow_length: Mm,
    neck_heel_depth: Mm,
    piece_leaning_head: LeaningHead,
    foot_there: bool,
    carve_foot_toe: Mm,
) -> Marks:
    """Lengths above, depths at the end, the scarf's figures beside the head."""
    head, x = piece_leaning_head, piece_leaning_head.at(piece_leaning_head.length, 0.0)[0]
    right = plank_tail + 6.0 + carve_foot_toe * foot_there
    end = "foot" if foot_there else "tenon"
    return (
        Line((0.0, 2.0), (0.0, -4.0), "nut"),
        Span((plank_head_start, 0.0), (plank_tail, 0.0), 32.0, n.plank_shaft, before=f"neck, {end} and all "),
        Span((0.0, 0.0), (back_bow_length, 0.0), 23.0, n.back_bow_length, before="zero line to the body "),
        Span((right, -neck_heel_depth), (right, 0.0), 0.0, n.neck_heel_depth, before="heel "),
        Label((x, 30.0), n.head_scarf_length, "scarf's face "),
        Label((x, 24.0), n.head_blank, "blank "),
        Label((x, 18.0), n.head_angle, "head leans "),
        Label((x, 12.0), n.plank_head_along, "head, from behind the nut "),
        Words((head.start[0] + 60.0, -neck_heel_depth - 4.0), "dashed: the wood as it is glued up", 2.4),
    )


def drawing_neck_plank(
    instrument_name: str,
    piece_plank: Marks,
    piece_heel_blocks: Marks,
    piece_carved: Marks,
    piece_rod: Marks,
    piece_plank_sizes: Marks,
) -> Drawing:
    """The neck in the wood that it is carved from, head to the left; the joint with the board is at height 0.

    Used at: neck_sawn.
    """
    marks = (*piece_plank, *piece_heel_blocks, *piece_carved, *piece_rod, *piece_plank_sizes)
    return Drawing("neck-plank", f"{instrument_name}, neck in its plank", "the side", marks, kerf=FINISHED)


def piece_stock(
    plank_layout: tuple[PieceOnStock, ...], plank_choice: NeckYield, plank_pieces: tuple[NeckPiece, ...]
) -> Marks:
    """The stock with each piece of one neck on it, numbered; its grain along. Nothing where no size is known."""
    if not plank_layout:
        return ()
    length = plank_choice.length if plank_choice.necks else max(each.along + each.length for each in plank_layout)
    width = plank_choice.width if plank_choice.necks else max(each.across + each.width for each in plank_layout)
    view = View((0.0, 0.0), STOCK / length, 2 * STOCK / length)
    names = [piece.name for piece in plank_pieces]
    marks: Marks = (view.box((0.0, 0.0), (length, width), "old"),)
    for piece in plank_layout:
        low, high = (piece.along, piece.across), (piece.along + piece.length, piece.across + piece.width)
        x, y = view.at((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
        marks += (
            view.box(low, high, "cut"),
            Words((x, y - 1.3), str(names.index(piece.name) + 1), 2.6, anchor="middle"),
        )
    return (*marks, Words((0.0, view.at(0.0, width)[1] + 2.0), _stock_words(plank_choice), 2.2))


def _stock_words(choice: NeckYield) -> str:
    return f"on {choice.name}, grain along" if choice.necks else "no stock found: in one line, grain along"


def piece_cut_list(plank_pieces: tuple[NeckPiece, ...]) -> Marks:
    """Each piece by its number, with its length and thickness, below the stock."""
    marks: Marks = (Words((0.0, -5.0), "all as wide as the plank", 2.2),)
    for row, piece in enumerate(plank_pieces):
        y, at = -9.5 - 4.4 * row, n.plank_pieces[piece.name]
        marks += (
            Words((0.0, y), f"{row + 1}  {piece.name}", 2.2),
            Label((36.0, y), at.length, "long ", height=2.4),
            Label((68.0, y), at.thickness, "thick ", height=2.4),
        )
    return marks


def drawing_setup_neck_blank(instrument_name: str, piece_stock: Marks, piece_cut_list: Marks) -> Drawing:
    """The cutting plan: the neck's pieces on the stock that gives them with least waste."""
    title = f"{instrument_name}, cutting plan of the neck"
    return Drawing("setup-neck-blank", title, "the face", (*piece_stock, *piece_cut_list), stretch=2.0, scale=0.0)


def drawing_setup_neck_scarf(
    instrument_name: str, plank_scarfed: bool, head_blank: Mm, plank_scarf_run: Mm, plank_shaft: Mm
) -> Drawing:
    """The saw cut through the plank, seen from its edge; the piece cut off is turned over and glued on."""
    name, title = "setup-neck-scarf", f"{instrument_name}, scarf"
    if not plank_scarfed:
        return Drawing(name, title, "the side", (Words((0.0, 0.0), "no scarf on this neck", 2.4),), scale=0.0)
    run, low, side = plank_scarf_run * 0.5, -head_blank * 0.5, 27.0
    neck = ((0.0, 0.0), (side, 0.0), (side, low), (-run, low))
    head = ((-2.5, 0.0), (-run - side, 0.0), (-run - side, low), (-run - 2.5, low))
    marks: Marks = (
        Polyline(neck, "outline", closed=True, hatch="along the grain"),
        Polyline(head, "outline", closed=True, hatch="along the grain"),
        Words((side - 2.0, low / 2 - 1.0), "neck", 2.4, anchor="right"),
        Words((-run - side + 2.0, low / 2 - 1.0), "head, to be turned", 2.2),
        Span((-run, low), (0.0, low), -7.0, n.plank_scarf_run, FIGURE),
        Label((-run - side, 3.0), n.head_scarf_length, "scarf's face ", height=FIGURE),
        *upright((side + 2.0, low), (side + 2.0, 0.0), n.head_blank),
        Label((0.0, 3.0), n.head_angle, "sawn at ", height=FIGURE),
        Label((0.0, 3.0 + 5.0), n.plank_shaft, "neck, on this face ", height=FIGURE),
    )
    return Drawing(name, title, "the side", marks, scale=0.5)


def drawing_setup_neck_rod(
    instrument_name: str,
    neck_rod: str,
    carve_rod_access: str,
    neck_rod_depth: Mm,
    neck_rod_width: Mm,
    carve_form: TaperedBar,
) -> Drawing:
    """The neck cut across at the zero line, half again as large as life, with its channel; the board dashed."""
    name, title = "setup-neck-rod", f"{instrument_name}, truss rod's channel"
    if neck_rod == "none":
        return Drawing(name, title, "the end", (Words((0.0, 0.0), "no truss rod in this neck", 2.4),), scale=0.0)
    view, section, half = View((0.0, 0.0), 1.5, 1.5), carve_form.at(0.0), neck_rod_width / 2
    curve = tuple((float(y), -float(z)) for y, z in section.points(64))
    slot = ((half, 0.0), (half, -neck_rod_depth), (-half, -neck_rod_depth), (-half, 0.0))
    beside = view.at(section.half_width, -section.depth)
    marks: Marks = (
        view.shape((*slot[::-1], *curve[::-1]), "outline", "across the grain"),
        view.box((-section.half_width, 0.0), (section.half_width, 6.0), "hidden"),
        Words((0.0, 11.0), f"board; rod turned at the {carve_rod_access}", 2.2, anchor="middle"),
        Span(view.at(-half, 0.0), view.at(half, 0.0), 5.0, n.neck_rod_width, FIGURE),
        *upright(
            view.at(section.half_width + 3.0, -neck_rod_depth), view.at(section.half_width + 3.0, 0.0), n.neck_rod_depth
        ),
        *upright(
            view.at(-section.half_width - 3.0, -section.depth),
            view.at(-section.half_width - 3.0, -neck_rod_depth),
            n.neck_section_under_channel[0],
            "left ",
            "left",
        ),
        Line((beside[0] - 0.8, beside[1] + 1.1), view.at(half, -neck_rod_depth), "dimensions"),
        Label(beside, n.rod_corner[0], "corner ", height=2.2),
    )
    return Drawing(name, title, "the end", marks, scale=1.5)
