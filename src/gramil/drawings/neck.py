"""The neck from the side at true scale: board, shaft, heel and head; and the nut's spacing rule and its front.

The heel's curve and the head's length are the carved neck's own.
"""

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from gramil import names as n
from gramil.drawings.kerf import Machine, cut_by
from gramil.drawings.marks import Circle, Drawing, Label, Line, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import RUN_STEPS, Side, View, box_points, figure_lines, upright
from gramil.quantities import Mm, PerFret, PerString, Radians, Ratio
from gramil.reference import Ref
from gramil.shapes.crown import Crown

OWNS = ("drawing_", "piece_")

TRUE = View((0.0, 0.0))
RULE_TALL = 16.0
"""Height of the nut's spacing rule, in mm."""
NUT_SCALE = 2.0
"""How many times as large as life the nut's front is drawn."""
NUT_FIGURE_WIDE = 15.0
"""Room for a figure with its unit over it, in mm."""
NUT_VIEW = View((0.0, 0.0), NUT_SCALE, NUT_SCALE)
BOARD_SHOWN = 3.0
"""How much of the board is drawn under its edge at the nut, in mm."""


def piece_side_board(
    board_nut_position: Mm, board_tail_position: Mm, board_thickness: Mm, thickness_wedge: Mm
) -> Marks:
    """The board from the side, crest up at height 0."""
    nut, tail = board_nut_position, board_tail_position
    corners = ((nut, 0.0), (tail, 0.0), (tail, -board_thickness), (nut, thickness_wedge - board_thickness))
    return (Polyline(corners, "outline", closed=True, hatch="along the grain"),)


def piece_side_shaft(
    fret_position: PerFret[Mm], section_neck_depth: PerFret[Mm], thickness_at_crest: PerFret[Mm], carve_heel_start: Mm
) -> Marks:
    """The shaft's back from the zero line to where the heel's curve begins."""
    depth = section_neck_depth + thickness_at_crest
    frets = zip(fret_position, depth, strict=True)
    points = [(float(x), -float(d)) for x, d in frets if x < carve_heel_start or x == 0]
    points.append((carve_heel_start, -float(np.interp(carve_heel_start, fret_position, depth))))
    return (Polyline(tuple(points), "outline"),)


def piece_side_heel(
    piece_side_shaft: Marks,
    back_bow_length: Mm,
    neck_set_board_at_join: Mm,
    neck_heel_depth: Mm,
    heel_wedge: Mm,
    carve_heel_cap: Mm,
) -> Marks:
    """The heel: its face at the set's angle from square, its cap, and its curve to the shaft."""
    (shaft,) = piece_side_shaft
    assert isinstance(shaft, Polyline)
    top = (back_bow_length, -neck_set_board_at_join)
    cap = (back_bow_length - heel_wedge, top[1] - neck_heel_depth)
    front = (back_bow_length - carve_heel_cap, cap[1])
    square = Line(top, (top[0], cap[1]), "centreline")
    curve = _curve(shaft.points[-1], front)
    return (Line(top, cap, "outline"), Line(cap, front, "outline"), square, Polyline(curve, "outline"))


def piece_side_foot(piece_foot_side: tuple[Point, ...], body_edge: Mm, neck_set_board_at_join: Mm) -> Marks:
    """The foot of a neck that the body is built on, inside the body: dashed; nothing without one."""
    if not piece_foot_side:
        return ()
    return (Polyline(tuple((body_edge + x, z - neck_set_board_at_join) for x, z in piece_foot_side[1:]), "hidden"),)


def _curve(start: Point, end: Point, pieces: int = 16) -> tuple[Point, ...]:
    """A quarter turn from level at `start` to upright at `end`."""
    (x0, y0), (x1, y1) = start, end
    turns = [math.pi / 2 * step / pieces for step in range(pieces + 1)]
    return (start, *((x0 + (x1 - x0) * math.sin(turn), y1 + (y0 - y1) * math.cos(turn)) for turn in turns[1:]))


@dataclass(frozen=True)
class Leaning:
    """The head from the side: where its face starts behind the nut, its angle, length and thickness."""

    start: Point
    angle: Radians
    length: Mm
    thickness: Mm

    def at(self, along: float, over: float) -> Point:
        """A point `along` the head's face from its start, and `over` it."""
        cos, sin = math.cos(self.angle), math.sin(self.angle)
        return (self.start[0] - along * cos - over * sin, self.start[1] - along * sin + over * cos)

    def meets(self, level: float) -> Point:
        """Where the head's back comes out of a shaft whose back lies at this height; a head without lean is stepped."""
        sin, back = math.sin(self.angle), self.start[1] - self.thickness * math.cos(self.angle)
        along = (back - level) / sin if sin > 0 else 0.0
        return self.at(min(max(along, -self.length), self.length), -self.thickness)

    def back_at(self, x: float) -> Point:
        """The point of the head's back at a distance from the zero line."""
        sin, cos = math.sin(self.angle), math.cos(self.angle)
        return self.at((self.start[0] + self.thickness * sin - x) / cos, -self.thickness)


def piece_leaning(
    board_nut_position: Mm,
    thickness_at_crest: PerFret[Mm],
    head_angle: Radians,
    head_reach: Mm,
    head_nut_thickness: Mm,
    head_thickness: Mm,
    head_veneer: Mm,
) -> Leaning:
    """The head's place and size from the side."""
    length = head_reach - head_nut_thickness
    start = (board_nut_position - head_nut_thickness, head_veneer - float(thickness_at_crest[0]))
    return Leaning(start, head_angle, length, head_thickness)


def piece_side_head(piece_leaning: Leaning, piece_side_shaft: Marks) -> Marks:
    """The head from the side, leaning back from behind the nut, its back running into the shaft's.

    A head so thick that its back lies below the shaft's at the zero line ends there in a step, which is carved away.
    """
    head, (shaft,) = piece_leaning, piece_side_shaft
    assert isinstance(shaft, Polyline)
    root = shaft.points[0]
    out = head.meets(root[1])
    if out[0] > root[0]:
        out = head.back_at(root[0])
    outline = (head.start, head.at(head.length, 0.0), head.at(head.length, -head.thickness), out, root)
    level = Line(head.start, (head.start[0] - head.length, head.start[1]), "centreline")
    return (Polyline(outline, "outline"), level)


def piece_side_strings(
    board_nut_position: Mm,
    thickness_at_crest: PerFret[Mm],
    nut_slot_over_crest: PerString[Mm],
    nut_slot_blank: Mm,
    head_nut_thickness: Mm,
    head_run: PerString[Mm],
    head_drop: PerString[Mm],
) -> Marks:
    """The nut, and each string from its slot down to its post."""
    x, low = board_nut_position, -float(thickness_at_crest[0])
    nut = TRUE.box((x - head_nut_thickness, low), (x, low + nut_slot_blank), "nut", "bone")
    paths = dict.fromkeys(
        ((x, float(z)), (x - float(run), float(z - drop)))
        for z, run, drop in zip(nut_slot_over_crest, head_run, head_drop, strict=True)
    )
    return (nut, *(Line(start, end, "strings") for start, end in paths))


def piece_side_figures(
    fret_position: PerFret[Mm],
    neck_depth_first: Mm,
    neck_depth_tenth: Mm,
    neck_heel_depth: Mm,
    back_bow_length: Mm,
    neck_set_board_at_join: Mm,
) -> Marks:
    """Depths at frets 1 and 10, the heel, and the angles."""
    tenth = min(10, len(fret_position) - 1)
    underside = -neck_set_board_at_join
    heel = back_bow_length + 16.0
    foot = underside - neck_heel_depth
    return (
        *_depth(float(fret_position[1]), neck_depth_first, n.neck_depth_first, "first fret ", "right"),
        *_depth(float(fret_position[tenth]), neck_depth_tenth, n.neck_depth_tenth, "tenth fret ", "left"),
        Span((heel, foot), (heel, underside), -6.0, n.neck_heel_depth),
        Label((back_bow_length - 4.0, foot - 7.0), n.heel_wedge, "off square at the cap ", anchor="right"),
        Label((back_bow_length - 4.0, foot - 13.0), n.neck_angle_face, "face set at ", anchor="right"),
        Span((0.0, 14.0), (back_bow_length, 14.0), 4.0, n.back_bow_length),
    )


def _depth(x: float, depth: float, address: Ref[Any], before: str, side: Side) -> Marks:
    return upright((x, -depth), (x, 0.0), address, before, side, middle=-depth - 6.0)


def piece_head_figures(board_nut_position: Mm, head_reach: Mm, head_posts_x: PerString[Mm]) -> Marks:
    """The head's angle, its scarf, and the break over the nut, beside the head."""
    x = board_nut_position - head_reach
    return (
        Label((x, 36.0), n.head_angle, "head angle "),
        Label((x, 30.0), n.head_scarf_length, "scarf's face "),
        Label((x, 24.0), n.head_blank, "on a blank "),
        Label((x, 18.0), n.head_break_angle[1], "over the nut, treble "),
        Label((x, 12.0), n.head_break_angle[len(head_posts_x)], "over the nut, bass "),
    )


def drawing_neck(
    instrument_name: str,
    piece_side_board: Marks,
    piece_side_shaft: Marks,
    piece_side_heel: Marks,
    piece_side_foot: Marks,
    piece_side_head: Marks,
    piece_side_strings: Marks,
    piece_neck_figures: Marks,
) -> Drawing:
    """The neck from the side at true scale, head to the left.

    Used at: neck_sawn, neck_joint_cut.
    """
    shapes = (
        *piece_side_board,
        *piece_side_shaft,
        *piece_side_heel,
        *piece_side_foot,
        *piece_side_head,
        *piece_side_strings,
    )
    return Drawing("neck", f"{instrument_name}, neck", "the side", (*shapes, *piece_neck_figures))


def piece_neck_figures(piece_side_figures: Marks, piece_head_figures: Marks) -> Marks:
    """Every figure of the neck's side view."""
    return (*piece_side_figures, *piece_head_figures)


def piece_nut_places(string_along_nut: PerString[Mm], instrument_handed: str) -> tuple[float, ...]:
    """Each string's place along the nut as seen from the tail: treble to the right, or to the left if left-handed."""
    side = -1.0 if instrument_handed == "left" else 1.0
    return tuple(side * float(y) for y in string_along_nut)


def piece_nut_ends(board_nut_reach_treble: Mm, board_nut_reach_bass: Mm, instrument_handed: str) -> Point:
    """The nut's two ends at the board's edges, left and right as seen from the tail, from the centreline."""
    bass, treble = float(board_nut_reach_bass), float(board_nut_reach_treble)
    return (-treble, bass) if instrument_handed == "left" else (-bass, treble)


def piece_nut_rule(piece_nut_places: tuple[float, ...], piece_nut_ends: Point, instrument_name: str) -> Marks:
    """A rule to mark the nut by: its ends are the board's edges, its ticks the strings' centres."""
    ticks = (Line((y, 0.0), (y, -9.0), "slots") for y in piece_nut_places)
    box = Polyline(box_points((piece_nut_ends[0], -RULE_TALL), (piece_nut_ends[1], 0.0)), "cut", closed=True)
    name = Words((0.0, -RULE_TALL + 2.0), instrument_name, 2.2, anchor="middle")
    return (box, *ticks, Line((0.0, 0.0), (0.0, -5.0), "centreline"), name)


def drawing_nut(
    instrument_name: str,
    piece_laser: Machine,
    piece_nut_rule: Marks,
    piece_nut_places: tuple[float, ...],
    piece_nut_ends: Point,
    nut_spacing: str,
) -> Drawing:
    """A spacing rule for the nut, seen from the tail.

    Used at: nut_made.
    """
    treble = piece_nut_places[0]
    side, out, (low, high) = ("left" if treble < 0 else "right"), abs(treble), piece_nut_ends
    marks = (
        *piece_nut_rule,
        Span((-out, 0.0), (out, 0.0), 5.0, n.string_spread_along_nut),
        Span((low, -RULE_TALL), (high, -RULE_TALL), -6.0, n.board_nut_length),
        Words((0.0, 13.0), f"{nut_spacing}, treble to the {side}", 2.4, anchor="middle"),
    )
    return cut_by(piece_laser, Drawing("nut", f"{instrument_name}, nut: the strings' places", "the end", marks))


def piece_nut_face(
    arch_surface: Crown,
    fret_slant: PerFret[Ratio],
    piece_nut_ends: Point,
    instrument_handed: str,
    lean_at_nut: Mm,
    nut_width: Mm,
) -> tuple[Point, ...]:
    """The board's face under the nut, along it: points (along, z), z from the crest."""
    side = -1.0 if instrument_handed == "left" else 1.0
    slant, along = float(fret_slant[0]), np.linspace(*piece_nut_ends, RUN_STEPS + 1)
    across = side * along / np.hypot(1, slant)
    falls = arch_surface.fall(slant * across, across) - lean_at_nut / nut_width * across
    return tuple((float(place), -float(fall)) for place, fall in zip(along, falls, strict=True))


def piece_nut_front(
    piece_nut_places: tuple[float, ...],
    piece_nut_ends: Point,
    piece_nut_face: tuple[Point, ...],
    nut_slot_over_crest: PerString[Mm],
    nut_slot_top: PerString[Mm],
    strings_gauges: PerString[Mm],
) -> Marks:
    """The board's arch at the nut, the strings lying in their slots, and the nut's top between them."""
    (low, high), face = piece_nut_ends, piece_nut_face
    tops = tuple(zip(piece_nut_places, map(float, nut_slot_top), strict=True))
    crest, highest = face[len(face) // 2][1], max(z for _, z in tops)
    ends = ((low, highest + face[0][1] - crest), (high, highest + face[-1][1] - crest))
    top = NUT_VIEW.run((ends[0], *sorted(tops), ends[1]), "nut")
    strings = (
        Circle(NUT_VIEW.at(y, float(z) + gauge / 2), NUT_SCALE * gauge / 2, "strings")
        for y, z, gauge in zip(piece_nut_places, nut_slot_over_crest, map(float, strings_gauges), strict=True)
    )
    under = ((high, face[-1][1] - BOARD_SHOWN), (low, face[0][1] - BOARD_SHOWN))
    return (NUT_VIEW.shape((*face, *under), "outline", "across the grain"), top, *strings)


def drawing_setup_nut(
    instrument_name: str, piece_nut_front: Marks, piece_nut_places: tuple[float, ...], nut_slot_top: PerString[Mm]
) -> Drawing:
    """The nut from the tail, twice life size: each slot's bottom over the board under it."""
    above = NUT_VIEW.at(0.0, float(nut_slot_top.max()))[1] + 4.0
    places = [NUT_VIEW.at(y, 0.0)[0] for y in piece_nut_places]
    lines = figure_lines(places, NUT_FIGURE_WIDE)
    rows = lines.rows if lines.numbered else [row % 2 for row in range(len(places))]
    figures = tuple(
        Label((x, above + 4.5 * line), n.nut_slot_over_board[row], lines.before(row), height=2.5, anchor="middle")
        for row, (x, line) in enumerate(zip(places, rows, strict=True), 1)
    )
    title = f"{instrument_name}, nut slots over the board"
    return Drawing("setup-nut", title, "the end", (*piece_nut_front, *figures), scale=NUT_SCALE)
