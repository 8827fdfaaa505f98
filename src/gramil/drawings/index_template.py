"""The index template, to be cut from sheet: a rail with a notch a fret, drawn as it lies in the machine.

The rail is stuck to the blank's back. With the saw cutting face down the maker looks down on the back, so the board
is seen from its underside; with a saw from above the rail lies below, and is seen through the board from its face.
The head is to the left and the notched edge toward the maker whatever hand the instrument is for: the machine and
its pin do not change hands. Which of the board's edges lies there is written on it.
"""

from dataclasses import dataclass
from math import isnan

from gramil import names as n
from gramil.description.records import Saw
from gramil.drawings.kerf import FINISHED, Machine, cut_by
from gramil.drawings.marks import Circle, Drawing, Label, Line, Mark, Marks, Point, Polyline, SeenFrom, Span, Words
from gramil.drawings.pen import handed
from gramil.quantities import Count, Mm, PerFret
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("drawing_", "piece_")


@dataclass(frozen=True)
class Rail:
    """The rail's sides: head and tail along the board, `front` (notched) and `back` from the centreline."""

    head: Mm
    tail: Mm
    front: Mm
    back: Mm


@dataclass(frozen=True)
class Notches:
    """Notches: their centres in order, the nut end's first if it has one."""

    centres: tuple[Mm, ...]
    width: Mm
    depth: Mm


def piece_rail(card_rail_head: Mm, card_rail_tail: Mm, card_rail_front: Mm, card_rail_back: Mm) -> Rail:
    """The rail's four sides."""
    return Rail(card_rail_head, card_rail_tail, card_rail_front, card_rail_back)


def piece_notches(
    template_notch: PerFret[Mm],
    slot_first: Count,
    template_nut_notch: Mm,
    card_nut_notch_stands: bool,
    template_notch_width: Mm,
    card_notch_depth: Mm,
) -> Notches:
    """Every notch that is cut: the nut end's where it has room, then one a slot."""
    nut = (template_nut_notch,) if card_nut_notch_stands else ()
    frets = (float(each) for each in template_notch[slot_first:])
    return Notches((*nut, *frets), template_notch_width, card_notch_depth)


def piece_rail_cut(piece_rail: Rail, piece_notches: Notches) -> Marks:
    """The rail's cut edge, once round with its notches along the bottom; each notch's centre as a tick above it."""
    points: list[Point] = [(piece_rail.head, piece_rail.back), (piece_rail.head, -piece_rail.front)]
    low, high = -piece_rail.front, piece_notches.depth - piece_rail.front
    ticks = []
    for centre in piece_notches.centres:
        left, right = centre - piece_notches.width / 2, centre + piece_notches.width / 2
        points += [(left, low), (left, high), (right, high), (right, low)]
        ticks.append(Line((centre, high + 0.6), (centre, high + 2.0), "text"))
    points += [(piece_rail.tail, -piece_rail.front), (piece_rail.tail, piece_rail.back)]
    return (Polyline(tuple(points), "cut", closed=True), *ticks)


def piece_rail_holes(template_pin_first: Mm, template_pin_last: Mm, shop_template_pin: Mm, piece_rail: Rail) -> Marks:
    """Holes for the locating pins, and the centreline through them."""
    holes = (Circle((x, 0.0), shop_template_pin / 2, "pins") for x in (template_pin_first, template_pin_last))
    return (Line((piece_rail.head, 0.0), (piece_rail.tail, 0.0), "centreline"), *holes)


def piece_rail_board(
    board_outline: Quadrilateral, nut_width: Mm, template_nut_notch: Mm, card_nut_notch_stands: bool, piece_rail: Rail
) -> Marks:
    """What is scribed on the rail: the outline, the zero line, and the nut end where no notch has room."""
    half = nut_width / 2
    marks: list[Mark] = [
        Polyline(board_outline.corners, "outline", closed=True),
        Line((0.0, -half), (0.0, half), "nut"),
        Words((1.5, half - 4.0), "zero line", 2.5),
    ]
    foot = -piece_rail.front
    if isnan(template_nut_notch):
        marks += [Words((piece_rail.head + 1.5, foot + 8.5), "nut end: no notch, for no saw makes this cut", 2.2)]
    elif not card_nut_notch_stands:
        marks += [
            Line((template_nut_notch, foot), (template_nut_notch, foot + 12.0), "hidden"),
            Words((template_nut_notch - 1.0, foot + 8.5), "nut end: no room for a notch", 2.2, anchor="right"),
        ]
    return tuple(marks)


def piece_rail_numbers(
    template_notch: PerFret[Mm], piece_notches: Notches, slot_first: Count, piece_rail: Rail
) -> Marks:
    """Which fret each notch cuts, above it; "nut" above the nut end's."""
    y = piece_notches.depth - piece_rail.front + 2.8
    fret_count = len(template_notch) - slot_first
    names = ["nut"] * (len(piece_notches.centres) - fret_count)
    names += [str(fret) for fret in range(slot_first, len(template_notch))]
    return tuple(
        Words((x, y), name, 2.2, anchor="middle") for x, name in zip(piece_notches.centres, names, strict=True)
    )


def piece_rail_proof(
    card_proof_notch: Mm, template_pin_first: Mm, template_notch: PerFret[Mm], piece_rail: Rail
) -> Marks:
    """The two measurements that prove the template, below its notched edge."""
    octave = min(12, len(template_notch) - 1)
    foot, twelfth, to_octave = -piece_rail.front, float(template_notch[octave]), f"notch to fret {octave} "
    return (
        Span((card_proof_notch, foot), (twelfth, foot), -9.0, n.card_proof_octave, before=to_octave),
        Span((template_pin_first, foot), (card_proof_notch, foot), -18.0, n.card_proof_pin, before="pin to notch "),
    )


def piece_rail_words(
    instrument_name: str, saw_main: Saw, instrument_handed: str, piece_rail: Rail, nut_width: Mm
) -> Marks:
    """What the template is for, which way it lies, and the figures of the machine that it was drawn for."""
    underside = saw_main.cuts == "face down"
    near = "treble" if underside == (instrument_handed != "left") else "bass"
    lies = "stuck to the blank's back, saw below" if underside else "under the blank, saw above"
    lies = lies if saw_main.cuts else "drawn for a saw from above, though the shop has none"
    x = 48.0
    return (
        Words((x, 9.5), instrument_name, 4.5),
        Label((x, 3.0), n.scale_bass, "scale ", height=3.2),
        Label((x + 85.0, 3.0), n.scale_frets, "frets ", height=3.2),
        Label((x + 150.0, 3.0), n.shop_template_pin, "pin ", height=3.2),
        Words((x, -6.0), f"this side up, head to the left: {lies}; {near} edge at the notches", 2.5),
        Label((x, -12.0), n.shop_pin_offset, "pin less blade, toward the tail ", height=3.2),
    )


def piece_template(
    piece_rail_cut: Marks, piece_rail_holes: Marks, piece_rail_board: Marks, piece_rail_numbers: Marks
) -> Marks:
    """The template's lines and the numbers of its notches."""
    return (*piece_rail_cut, *piece_rail_holes, *piece_rail_board, *piece_rail_numbers)


def piece_lines_instead(
    piece_outline: Marks, piece_slots: Marks, piece_pins: Marks, piece_fret_numbers: Marks, piece_head_words: Marks
) -> Marks:
    """The slots as lines to be laid on the blank, for a board that no notches can serve."""
    return (*piece_outline, *piece_slots, *piece_pins, *piece_fret_numbers, *piece_head_words)


def drawing_index_template(
    instrument_name: str,
    card_notches_serve: bool,
    saw_main: Saw,
    piece_laser: Machine,
    piece_template: Marks,
    piece_rail_words: Marks,
    piece_rail_proof: Marks,
    piece_lines_instead: Marks,
    instrument_handed: str,
) -> Drawing:
    """The rail with its notches; for a fanned board, or frets closer than a pin, the slots as lines and why.

    Used at: index_template_made, slotted.
    """
    if card_notches_serve:
        view: SeenFrom = "the underside" if saw_main.cuts == "face down" else "the face"
        marks = (*piece_template, *piece_rail_words, *piece_rail_proof)
        return cut_by(piece_laser, Drawing("index-template", f"{instrument_name}, index template", view, marks))
    title = f"{instrument_name}, slots to saw to the line: notches make square slots only"
    lines = Drawing("index-template", title, "the face", piece_lines_instead, kerf=FINISHED)
    return handed(lines, instrument_handed)
