"""The plan of the face as it hangs on the wall: every place from the body's edge, widths, braces listed, a title block.

It is in body coordinates, as the pieces that it is put together from: x from the body's edge at the neck, treble up.
"""

from dataclasses import replace
from typing import Any

import numpy as np

from gramil import names as n
from gramil.drawings.marks import Drawing, Label, Line, Mark, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import box_points, handed
from gramil.parts.body_records import Bout
from gramil.parts.opening_records import Opening
from gramil.quantities import Mm
from gramil.reference import Ref
from gramil.shapes.outline import Outline

OWNS = ("drawing_", "piece_")

TIER, FIRST = 9.0, 10.0
"""From one dimension over the plan to the next, and from the plan to the first, in mm."""
BLOCK, HEAD, ROW = (204.0, 62.0), 18.0, 10.5
"""Width and height of the title block, height of its head, and from one of its lines to the next, in mm."""


def piece_body_places(
    body_outlines: tuple[Outline, ...],
    body_bouts: tuple[Bout, ...],
    soundhole_centre: Mm,
    body_saddle: Mm,
    body_reach_treble: Mm,
    opening_further: tuple[Opening, ...],
) -> Marks:
    """How far bouts, waist, hole and saddle lie from the body's edge, over the plan, the nearest place lowest."""
    wanted: list[tuple[Mm, str, Ref[Any]]] = [
        (bout.x, f"to the {bout.name} ", n.body_bouts[bout.name].x) for bout in body_bouts
    ]
    wanted += [
        (soundhole_centre, "to the soundhole ", n.soundhole_centre),
        (body_saddle, "to the saddle ", n.body_saddle),
    ]
    wanted += [(each.x, f"to the {each.name} ", n.opening_list[each.name].x) for each in opening_further]
    known = sorted((each for each in wanted if not np.isnan(each[0])), key=lambda each: each[0])
    return tuple(
        Span((0.0, body_reach_treble), (place, body_reach_treble), FIRST + TIER * row, figure, before=before)
        for _ in body_outlines
        for row, (place, before, figure) in enumerate(known)
    )


def piece_face_words(
    body_reach_treble: Mm, body_bouts: tuple[Bout, ...], opening_further: tuple[Opening, ...]
) -> Marks:
    """What the dashes are, over the plan's dimensions."""
    if np.isnan(body_reach_treble):
        return ()
    top = body_reach_treble + FIRST + TIER * (len(body_bouts) + 2 + len(opening_further)) + 2.0
    return (Words((0.0, top), "Dashed: braces, plate and blocks under the top.", 3.0),)


def piece_title_block(
    instrument_name: str, instrument_handed: str, body_length: Mm, body_reach: Mm, opening_main: tuple[Opening, ...]
) -> Marks:
    """Name, hand and scale, and the sizes that are not at their places on the plan, in a box beside its tail."""
    if np.isnan(body_length):
        return ()
    left, high = _block_corner(body_length, body_reach)
    right, low = left + BLOCK[0], high - BLOCK[1]
    side = "down" if instrument_handed == "left" else "up"
    marks: list[Mark] = [
        Polyline(box_points((left, low), (right, high)), "list", closed=True),
        Line((left, high - HEAD), (right, high - HEAD), "list"),
        Line((left, low + ROW), (right, low + ROW), "list"),
        Words((left + 4.0, high - 8.5), instrument_name, 5.5),
        Words((left + 4.0, high - 14.5), f"plan of the face, {instrument_handed}-handed, treble {side}; 1 : 1", 2.6),
    ]
    lines = (
        ("body ", n.body_length),
        ("scale ", n.scale_run),
        *_hole_sizes(opening_main),
        ("bridge long ", n.bridge_length),
        ("bridge wide ", n.bridge_width_square),
        ("saddle's angle ", n.saddle_angle),
    )
    for row, (before, figure) in enumerate(lines):
        column, down = row % 2, row // 2
        at = (left + 4.0 + column * BLOCK[0] / 2, high - HEAD - 7.0 - ROW * down)
        marks.append(Label(at, figure, before, height=2.6))
    return tuple(marks)


def _hole_sizes(holes: tuple[Opening, ...]) -> tuple[tuple[str, Ref[Any]], ...]:
    """The soundhole's diameter; if it is not round its width, since its length stands on the plan."""
    if not holes:
        return ()
    if holes[0].hole.is_round:
        return (("soundhole, diameter ", n.soundhole_diameter),)
    return (("soundhole across ", n.soundhole_across),)


def _block_corner(body_length: Mm, body_reach: Mm) -> Point:
    """The title block's upper left."""
    return (body_length + 24.0, BLOCK[1] - body_reach)


def piece_face_told(body_length: Mm, body_reach: Mm) -> tuple[Point, ...]:
    """Where a page of the plan says how large it is and which revision: in the foot of the title block."""
    if np.isnan(body_length):
        return ()
    left, high = _block_corner(body_length, body_reach)
    return ((left + 4.0, high - BLOCK[1] + 4.0),)


def drawing_face_plan(
    piece_face_lines: Marks,
    piece_face_beside: Marks,
    piece_face_told: tuple[Point, ...],
    instrument_name: str,
    instrument_handed: str,
) -> Drawing:
    """The face with soundhole, bridge and braces, head to the left, treble up; turned over for the left hand.

    Used at: rosette_let_in, soundhole_cut, openings_cut, bridge_placed.
    """
    title = f"{instrument_name}, the face"
    plan = handed(Drawing("face-plan", title, "the face", piece_face_lines), instrument_handed)
    return replace(plan, marks=(*plan.marks, *piece_face_beside), told_at=next(iter(piece_face_told), None))


def piece_face_lines(piece_face_plan: Marks, piece_face_sizes: Marks, piece_face_numbers: Marks) -> Marks:
    """The plan with its dimensions and the numbers of its braces."""
    return (*piece_face_plan, *piece_face_sizes, *piece_face_numbers)


def piece_face_sizes(
    piece_body_sizes: Marks, piece_body_places: Marks, piece_face_words: Marks, piece_openings_sizes: Marks
) -> Marks:
    """All dimensions round the plan, and how far holes lie from the centreline."""
    return (*piece_body_sizes, *piece_body_places, *piece_face_words, *piece_openings_sizes)


def piece_face_beside(piece_list_top: Marks, piece_title_block: Marks) -> Marks:
    """What stands beside the plan and is never turned over: the braces' ends, and the title block."""
    return (*piece_list_top, *piece_title_block)
