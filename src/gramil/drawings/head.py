"""The head from its face at true scale: its edge, the tuners' holes, and the strings' way from the nut to the posts.

It lies flat on the paper, as a template does: along it from the nut's face, which is at x = 0, head to the left.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.drawings.kerf import Machine, as_cut, cut_by
from gramil.drawings.marks import Circle, Drawing, Label, Line, Marks, Polyline, Span, Words
from gramil.drawings.pen import handed
from gramil.parts.records import Run
from gramil.quantities import Mm, PerFret, PerString, Ratio
from gramil.reference import Ref
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("drawing_", "piece_")

SIGNS = "plus: treble side, minus: bass side"
LIST_TOP, LIST_ROW = 32.0, 5.5
"""Where the list beside the head begins, and from one of its rows to the next, in mm: words may grow by half."""
NUMBER = 2.4
"""Height of a string's number beside its roller, in mm: on the side away from the middle, where no string runs by."""


def piece_head_edge(
    head_outline: Run,
    head_reach: Mm,
    head_width: Mm,
    nut_width: Mm,
    head_nut_thickness: Mm,
    fret_slant: PerFret[Ratio],
) -> Marks:
    """The head's edge as described, or a dashed box where none is; the nut's place, slanted as the zero line is."""
    half, lead = nut_width / 2, float(fret_slant[0]) * nut_width / 2
    face, back = ((-lead, -half), (lead, half)), -head_nut_thickness
    nut = Polyline((*face, *((x + back, y) for x, y in reversed(face))), "nut", closed=True)
    if head_outline.points:
        edge = Polyline(tuple((-along, across) for along, across in head_outline.points), "outline", closed=True)
        return (edge, nut)
    wide = head_width / 2
    box = Polyline(
        ((lead, half), (-20.0, wide), (-head_reach, wide), (-head_reach, -wide), (-20.0, -wide), (-lead, -half)),
        "hidden",
    )
    return (box, nut, Words((-head_reach + 4.0, wide - 5.0), "no outline described: the room reckoned", 2.4))


BESIDE = 96.0
"""Where a second column of the list begins, in mm: in inches each place has its 64ths."""
CROWDED = 8
"""With more strings than this, they run by on the inside of every post: the bass posts' numbers stand outside."""


def piece_tuners(
    head_posts_x: PerString[Mm],
    head_posts_y: PerString[Mm],
    head_hole: Mm,
    head_slots: tuple[Quadrilateral, ...],
    head_width: Mm,
    head_outline: Run,
) -> Marks:
    """The tuners' holes, with their centres and their strings' numbers; or slots with their rollers, holes dashed."""
    if head_slots:
        edge = np.array(head_outline.points or ((0.0, head_width / 2), (0.0, -head_width / 2)))
        return _rollers(head_posts_x, head_posts_y, head_hole, head_slots, edge)
    marks: Marks = ()
    for row, (along, across) in enumerate(zip(map(float, head_posts_x), map(float, head_posts_y), strict=True), 1):
        x, reach = -along, head_hole / 2 + 2.0
        outside = across < 0 and len(head_posts_x) > CROWDED
        marks += (
            Circle((x, across), head_hole / 2, "pins"),
            Line((x - reach, across), (x + reach, across), "centreline"),
            Line((x, across - reach), (x, across + reach), "centreline"),
            Words((x - reach - 1.0, across + (-1.5 - NUMBER if outside else 1.5)), str(row), NUMBER, anchor="right"),
        )
    return marks


def _rollers(
    along: PerString[Mm],
    across: PerString[Mm],
    hole: Mm,
    slots: tuple[Quadrilateral, ...],
    edge: NDArray[np.float64],
) -> Marks:
    marks: Marks = tuple(Polyline(tuple((-x, y) for x, y in slot.corners), "cut", closed=True) for slot in slots)
    for row, (x, y) in enumerate(zip(map(float, along), map(float, across), strict=True), 1):
        side, half = (1.0 if y > 0 else -1.0), hole / 2
        outer = max((abs(place) for slot in slots for _, place in slot.corners if place * side > 0), default=0.0)
        for place in (x - half, x + half):
            marks += (Line((-place, side * outer), (-place, side * _half_width(edge, place, side)), "hidden"),)
        marks += (
            Line((-x, 0.0), (-x, side * (_half_width(edge, x, side) + 4.0)), "centreline"),
            Words((-x - half - 1.0, y + 1.5 if y > 0 else y - 1.5 - NUMBER), str(row), NUMBER, anchor="right"),
        )
    return marks


def _half_width(edge: NDArray[np.float64], along: float, side: float) -> float:
    """From the centreline to the head's edge on one side, at a distance along."""
    points = edge[edge[:, 1] * side > 0]
    points = points[np.argsort(points[:, 0])]
    return float(np.interp(along, points[:, 0], abs(points[:, 1])))


def piece_head_strings(
    string_y_nut: PerString[Mm], head_posts_x: PerString[Mm], head_posts_y: PerString[Mm], fret_slant: PerFret[Ratio]
) -> Marks:
    """Each string from the nut to its post."""
    slant = float(fret_slant[0])
    ends = zip(map(float, string_y_nut), map(float, head_posts_x), map(float, head_posts_y), strict=True)
    return tuple(Line((slant * nut, nut), (-along, across), "strings") for nut, along, across in ends)


def piece_head_lines(piece_head_edge: Marks, piece_tuners: Marks, piece_head_strings: Marks) -> Marks:
    """The head's edge and holes, and the strings' way over it."""
    return (*piece_head_edge, *piece_tuners, *piece_head_strings)


def piece_tuner_sizes(head_posts_x: PerString[Mm], head_width: Mm, head_reach: Mm) -> Marks:
    """Each post from the nut's face, below; the head's length, above."""
    low = -head_width / 2
    marks: Marks = (Line((4.0, 0.0), (-head_reach - 4.0, 0.0), "centreline"),)
    for step, along in enumerate(sorted({round(float(x), 6) for x in head_posts_x})):
        row = int(abs(head_posts_x - along).argmin()) + 1
        marks += (Span((-along, low), (0.0, low), -6.0 - 7.0 * step, n.head_posts_x[row], 2.6),)
    return (*marks, Span((-head_reach, -low), (0.0, -low), 6.0, n.head_reach, 2.6))


def piece_tuner_list(head_posts_y: PerString[Mm]) -> Marks:
    """Beside the head, string by string: its post from the centreline, then how far each string bends sideways, under a
    line that says which side is which.

    Of many strings the bends stand beside the places, on the same lines: a list of both would be taller than the head.
    """
    rows = range(1, len(head_posts_y) + 1)
    sizes = ((n.head_width, "head wide "), (n.head_hole, "holes, diameter "))
    places = tuple((n.head_posts_y[row], f"{row} from the middle ") for row in rows)
    bends = tuple((n.head_sideways_bend[row], f"{row} bends sideways ") for row in rows)
    signs = Words((10.0, LIST_TOP - LIST_ROW * len(sizes)), SIGNS, 2.4, layer="list")
    below = signs.at[1] - LIST_ROW
    if len(head_posts_y) <= CROWDED:
        return (*_listed(LIST_TOP, sizes), signs, *_listed(below, (*places, *bends)))
    return (*_listed(LIST_TOP, sizes), signs, *_listed(below, places), *_listed(below, bends, BESIDE))


def _list_rows(strings: int) -> int:
    """How many lines the list of the strings takes."""
    return 3 + (2 if strings <= CROWDED else 1) * strings


def _listed(top: float, lines: Iterable[tuple[Ref[Any], str]], left: float = 10.0) -> Marks:
    return tuple(
        Label((left, top - LIST_ROW * row), figure, say, height=2.4, layer="list")
        for row, (figure, say) in enumerate(lines)
    )


def piece_slot_sizes(head_slots: tuple[Quadrilateral, ...], head_posts_y: PerString[Mm]) -> Marks:
    """What the slots of a slotted head are cut by, in a list under that of the strings; nothing without them."""
    if not head_slots:
        return ()
    lines = (
        (n.head_slots[1].start_lower_x, "slots from the nut "),
        (n.head_slots[1].end_lower_x, "to "),
        (n.head_slot_width, "slots wide "),
        (n.head_slots_apart, "wood between them "),
        (n.head_roller_depth, "holes below the face "),
    )
    return _listed(LIST_TOP - LIST_ROW * _list_rows(len(head_posts_y)), lines)


def drawing_head(
    instrument_name: str,
    instrument_handed: str,
    piece_router: Machine,
    piece_head_lines: Marks,
    piece_tuner_sizes: Marks,
    piece_tuner_list: Marks,
    piece_slot_sizes: Marks,
) -> Drawing:
    """The head laid flat, treble up; turned over once for a left-handed instrument, but for the list beside it.

    Used at: head_drilled.
    """
    marks = (*as_cut(piece_head_lines), *piece_tuner_sizes)
    drawing = cut_by(piece_router, Drawing("head", f"{instrument_name}, head", "the face", marks))
    turned = handed(drawing, instrument_handed)
    return replace(turned, marks=(*turned.marks, *piece_tuner_list, *piece_slot_sizes))


def drawing_setup_neck_head(
    instrument_name: str, instrument_handed: str, piece_head_edge: Marks, piece_tuners: Marks, head_reach: Mm
) -> Drawing:
    """The head with its holes, small."""
    marks = tuple(_small(mark) for mark in (*piece_head_edge, *piece_tuners) if not isinstance(mark, Words))
    numbers = (
        Words((0.6 * w.at[0], 0.6 * w.at[1]), w.text, 2.4, anchor="right") for w in piece_tuners if isinstance(w, Words)
    )
    whole = (*marks, *numbers, Line((2.0, 0.0), (-0.6 * head_reach - 2.0, 0.0), "centreline"))
    return handed(
        Drawing("setup-neck-head", f"{instrument_name}, head", "the face", whole, scale=0.6), instrument_handed
    )


def _small(mark: Polyline | Circle | Line | object) -> Polyline | Circle | Line:
    match mark:
        case Polyline():
            return Polyline(tuple((0.6 * x, 0.6 * y) for x, y in mark.points), mark.layer, mark.closed, mark.hatch)
        case Circle():
            return Circle((0.6 * mark.centre[0], 0.6 * mark.centre[1]), 0.6 * mark.radius, mark.layer)
        case Line():
            (a, b), (c, d) = mark.start, mark.end
            return Line((0.6 * a, 0.6 * b), (0.6 * c, 0.6 * d), mark.layer)
    raise TypeError(mark)
