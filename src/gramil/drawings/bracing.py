"""The bracing drawn: each plate from the inside with its braces numbered and listed, and a card for each brace.

Plans are in body coordinates: x from the body's edge at the neck, treble up as seen from the face.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

import numpy as np

from gramil import names as n
from gramil.drawings.kerf import FINISHED, Machine, cut_by
from gramil.drawings.marks import Drawing, Label, Line, Mark, Marks, Point, Polyline, Words, mirrored
from gramil.drawings.pen import fitted, handed
from gramil.parts.body_records import Brace, Crossing, PlateShape, notches_in
from gramil.quantities import Mm
from gramil.reference import EACH, Ref, in_row

OWNS = ("drawing_", "piece_")

LENGTHWISE = 0.9
"""Of a brace that runs along the body at least this share of its length does."""
CARD_GAP, SAG_STEP = 20.0, 5.0
"""Between two brace cards, in mm, and the steps in which room is left for an arched foot: a card stays in its place
when another one's foot is arched a little more."""


def piece_plan_top(
    piece_body_outline: Marks,
    piece_body_blocks: Marks,
    piece_openings: Marks,
    brace_list: tuple[Brace, ...],
    plate_shapes: tuple[PlateShape, ...],
    piece_bevels_on_face: Marks,
) -> Marks:
    """The top with its braces numbered, the bridge plate, soundhole and blocks, and the line of its bevel."""
    if not piece_body_outline:
        return ()
    plates = [Polyline(each.corners, "core", closed=True, hatch="across the grain") for each in plate_shapes]
    braces = _numbered(_of(brace_list, "top"))
    return (*piece_body_outline, *piece_body_blocks, *piece_openings, *plates, *braces, *piece_bevels_on_face)


def piece_plan_back(
    piece_body_outline: Marks, piece_body_blocks: Marks, brace_list: tuple[Brace, ...], piece_bevels_on_back: Marks
) -> Marks:
    """The back with its braces numbered, the blocks, and the line of its bevel."""
    if not piece_body_outline:
        return ()
    return (*piece_body_outline, *piece_body_blocks, *_numbered(_of(brace_list, "back")), *piece_bevels_on_back)


def _of(braces: tuple[Brace, ...], plate: str) -> tuple[Brace, ...]:
    return tuple(each for each in braces if each.plate == plate and each.length > 0)


def _numbered(braces: tuple[Brace, ...]) -> Marks:
    """Strips with their middle lines, each with its number beside its second end."""
    marks: list[Mark] = []
    for number, brace in enumerate(braces, 1):
        marks += [
            Polyline(brace.footprint, "outline", closed=True),
            Line(brace.start, brace.stop, "centreline"),
            _number(brace, number),
        ]
    return tuple(marks)


def _number(brace: Brace, number: int) -> Words:
    """A brace's number in the list, beside the brace a little before its second end.

    Of a brace that runs along the body it is the side away from the soundhole.
    """
    (x0, y0), (x1, y1) = brace.start, brace.stop
    along = ((x1 - x0) / brace.length, (y1 - y0) / brace.length)
    inward = abs(along[0]) > LENGTHWISE and (y0 + y1) * along[0] < 0.0
    back, aside = min(14.0, 0.3 * brace.length), (brace.width / 2 + 4.0) * (-1.0 if inward else 1.0)
    place = (x1 - back * along[0] - aside * along[1], y1 - back * along[1] + aside * along[0])
    return Words((place[0], place[1] - 2.0), str(number), 4.0, anchor="middle")


def piece_face_numbers(brace_list: tuple[Brace, ...]) -> Marks:
    """The numbers of the top's braces alone."""
    return tuple(_number(brace, number) for number, brace in enumerate(_of(brace_list, "top"), 1))


def piece_list_top(brace_list: tuple[Brace, ...], body_length: Mm, body_width: Mm) -> Marks:
    """The list of the top's braces, beside the plan."""
    return _list(brace_list, "top", body_length, body_width)


def piece_list_back(brace_list: tuple[Brace, ...], body_length: Mm, body_width: Mm) -> Marks:
    """The list of the back's braces, beside the plan."""
    return _list(brace_list, "back", body_length, body_width)


def _list(braces: tuple[Brace, ...], plate: str, length: Mm, width: Mm) -> Marks:
    """Numbers and names beside the tail, each with its length, and where its ends lie: along and across."""
    x, row = length + 24.0, 9.0
    marks: list[Mark] = [
        Words((x + column, width / 2 - 8.0 + 4.5 * up), head, 2.6, layer="list")
        for up, heads in enumerate((_HEADS, _ENDS))
        for column, head in zip(_PLACES, heads, strict=True)
        if head
    ]
    heads = len(marks)
    for number, brace in enumerate(_of(braces, plate), 1):
        y = width / 2 - 8.0 - row * number
        name = fitted((x, y), f"{number}  {brace.name}", _PLACES[0] - 4.0, 3.4)
        marks.append(replace(name, anchor="left", layer="list"))
        for column, figure in zip(_PLACES, _COLUMNS, strict=True):
            marks.append(Label((x + column, y), in_row(figure, brace.name), height=2.6, layer="list"))
    return tuple(marks) if len(marks) > heads else ()


_PLACES = (56, 84, 112, 140, 168)
_ENDS = ("", "first end", "treble +", "second end", "treble +")
_HEADS = ("long", "along", "across", "along", "across")
_EACH = n.brace_list[EACH]
_COLUMNS = (_EACH.length, _EACH.start_x, _EACH.start_y, _EACH.stop_x, _EACH.stop_y)
"""What the list says of each brace."""


def drawing_top_inside(
    piece_plan_top: Marks, piece_list_top: Marks, instrument_name: str, instrument_handed: str
) -> Drawing:
    """The top from the inside, as it lies for gluing: head to the left, treble down; turned over for the left hand.

    Used at: top_sawn, top_braces_glued, bridge_plate_glued, top_let_in.
    """
    title = f"{instrument_name}, the top from the inside"
    return _beside(
        handed(mirrored(Drawing("top-inside", title, "the inside", piece_plan_top, kerf=FINISHED)), instrument_handed),
        piece_list_top,
    )


def drawing_back_inside(
    piece_plan_back: Marks, piece_list_back: Marks, instrument_name: str, instrument_handed: str
) -> Drawing:
    """The back from the inside: head to the left, treble up; turned over for the left hand.

    Used at: back_sawn, back_braces_glued, back_let_in.
    """
    title = f"{instrument_name}, the back from the inside"
    return _beside(
        handed(Drawing("back-inside", title, "the inside", piece_plan_back, kerf=FINISHED), instrument_handed),
        piece_list_back,
    )


def _beside(plan: Drawing, listed: Marks) -> Drawing:
    """The plan with its list, which is never turned over."""
    return replace(plan, marks=(*plan.marks, *listed))


def drawing_braces(
    instrument_name: str, piece_laser: Machine, brace_list: tuple[Brace, ...], brace_crossings: tuple[Crossing, ...]
) -> Drawing:
    """Each brace from its side, at true size, foot down, with its notches: cards to mark and to check by.

    Used at: top_braces_fitted, back_braces_fitted.
    """
    marks: list[Mark] = []
    y = 0.0
    for brace in (each for each in brace_list if each.length > 0):
        y -= brace.height
        marks += _card(brace, brace_crossings, y)
        y -= SAG_STEP * np.ceil(brace.sagitta / SAG_STEP) + CARD_GAP
    title = f"{instrument_name}, braces from the side"
    return cut_by(piece_laser, Drawing("braces", title, "the side", tuple(marks), pieces_apart=True))


def _card(brace: Brace, crossings: tuple[Crossing, ...], y: float) -> Marks:
    """A brace from its side, the chord of its foot level at the height y on the sheet; its words under it."""
    address = n.brace_list[brace.name]
    x, first = 2.0, y - brace.sagitta - 5.0
    return (
        Polyline(_on_sheet(brace, brace.bar.outline(notches_in(brace, crossings).values()), y), "cut", closed=True),
        *_depths(brace, crossings, y),
        Label((x, first), address.length, f"{brace.name} ({brace.plate}), long ", height=2.6),
        Label((x, first - 4.5), address.height, f"{brace.wood}, high ", height=2.6, layer="list"),
        Label((x, first - 9.0), address.width, f"{brace.ends}, wide ", height=2.6, layer="list"),
        Label((x + 62.0, first - 4.5), address.radius, "foot's radius ", height=2.6, layer="list"),
        Label((x + 62.0, first - 9.0), address.sagitta, "foot's sagitta ", height=2.6, layer="list"),
    )


def _on_sheet(brace: Brace, points: Iterable[Point], y: float) -> tuple[Point, ...]:
    return tuple((along, y + height) for along, height in brace.bar.laid(points))


def _depths(brace: Brace, crossings: tuple[Crossing, ...], y: float) -> Marks:
    """How deep each notch is, over it."""
    marks: list[Mark] = []
    for row, each in enumerate(crossings, 1):
        at = n.brace_crossings[row]
        if brace.name == each.under:
            marks.append(_depth(brace, each.along_under, y, at.depth_under))
        if brace.name == each.over:
            marks.append(_depth(brace, each.along_over, y, at.depth_over))
    return tuple(marks)


def _depth(brace: Brace, along: Mm, y: float, address: Ref[Any]) -> Label:
    ((x, high),) = _on_sheet(brace, ((along, float(brace.bar.edge(along))),), y)
    return Label((x, high + 2.0), address, "notch deep ", height=2.4, anchor="middle", layer="list")
