"""Plans of the whole guitar at true scale: its face with what lies under it, its side, and its neck cut across.

x is from the zero line in all of them. In the side view height is over the joint of board and neck, which lies level;
the body is turned by the neck's set. What is not described is left out, or is a dashed line where it would be.
"""

from dataclasses import replace
from math import cos, sin

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.drawings.carve import NO_STATION
from gramil.drawings.marks import Arc, Circle, Drawing, Label, Line, Mark, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import FIGURE, View, face_run, handed, leaning
from gramil.parts.edge_records import Edge
from gramil.parts.records import CarveStation, Run
from gramil.quantities import Mm, PerFret, PerString, PerStringFret, Radians, Ratio
from gramil.shapes.crown import Crown
from gramil.shapes.outline import Outline
from gramil.shapes.unrolled import UnrolledSide

OWNS = ("drawing_", "piece_")

Array = NDArray[np.float64]
TRUE = View((0.0, 0.0))
STEPS = 160
"""Points along each edge of the body's side."""
ACROSS = 2.0
"""How many times as large as life the neck is drawn where it is cut across."""
CURVE = 64
"""Points on the neck's back in a cut."""


def _moved(mark: Mark, along: float) -> Mark:
    """A mark shifted along x."""
    match mark:
        case Line() | Span():
            return replace(mark, start=_along(mark.start, along), end=_along(mark.end, along))
        case Arc() | Circle():
            return replace(mark, centre=_along(mark.centre, along))
        case Polyline():
            return replace(mark, points=tuple(_along(point, along) for point in mark.points))
        case _:
            return replace(mark, at=_along(mark.at, along))


def _along(point: Point, along: float) -> Point:
    return (point[0] + along, point[1])


def piece_plan_body(piece_face_plan: Marks, body_edge: Mm, piece_whole_body: Marks, piece_whole_bridge: Marks) -> Marks:
    """The body in its place along the strings; where none is described, bridge, join and tail alone."""
    if not piece_face_plan:
        return (*piece_whole_body, *piece_whole_bridge)
    return tuple(_moved(mark, body_edge) for mark in piece_face_plan)


def piece_plan_head(head_outline: Run, piece_whole_head: Marks, board_nut_position: Mm, piece_tuners: Marks) -> Marks:
    """The head with its holes, laid flat before the nut; without an outline, the posts in a dashed box."""
    if not head_outline.points:
        return piece_whole_head
    edge = tuple((board_nut_position - along, across) for along, across in head_outline.points)
    holes = (
        _moved(replace(mark, layer="outline") if mark.layer == "cut" else mark, board_nut_position)
        for mark in piece_tuners
        if isinstance(mark, Circle | Polyline)
    )
    return (Polyline(edge, "outline", closed=True), *holes)


def piece_plan_sizes(
    scale_run: Mm, back_bow_length: Mm, bridge_front_edge: Mm, body_outlines: tuple[Outline, ...], body_edge: Mm
) -> Marks:
    """Lengths below the plan: scale, join, bridge; over it and at its tail the body's, where it is described."""
    low = -max((outline.bass_half.widest for outline in body_outlines), default=45.0)
    marks: Marks = (
        Line((0.0, -26.0), (0.0, 26.0), "centreline"),
        Span((0.0, low), (back_bow_length, low), -10.0, n.back_bow_length, before="to the join "),
        Span((0.0, low), (bridge_front_edge, low), -20.0, n.bridge_front_edge, before="to the bridge's front "),
        Span((0.0, low), (scale_run, low), -30.0, n.scale_run, before="scale "),
    )
    for outline in body_outlines:
        tail = body_edge + outline.length
        marks += (
            Span((body_edge, -low), (tail, -low), 10.0, n.body_length, before="body "),
            Span((tail, low), (tail, outline.treble_half.widest), -18.0, n.body_width, before="body "),
        )
    return marks


def piece_plan_face(
    piece_plan_body: Marks, piece_plan_head: Marks, piece_whole_board: Marks, piece_whole_strings: Marks
) -> Marks:
    """Every line of the face."""
    return (*piece_plan_body, *piece_plan_head, *piece_whole_board, *piece_whole_strings)


def drawing_plan_face(
    instrument_name: str, instrument_handed: str, piece_plan_face: Marks, piece_plan_sizes: Marks
) -> Drawing:
    """The whole guitar from its face, head to the left, treble up; turned over once for the left hand.

    Used at: bridge_placed.
    """
    marks = (*piece_plan_face, *piece_plan_sizes)
    return handed(Drawing("plan-face", f"{instrument_name}, plan of the face", "the face", marks), instrument_handed)


def piece_plan_turned(back_bow_length: Mm, neck_angle_face: Radians, body_beyond_join: Mm) -> tuple[Mm, Radians]:
    """Where the body's edge meets the joint of board and neck, and how far the body is turned there."""
    return (back_bow_length + body_beyond_join, neck_angle_face)


def piece_plan_rims(
    body_sides: tuple[UnrolledSide, ...], channel_edges: tuple[Edge, ...], piece_plan_turned: tuple[Mm, Radians]
) -> Marks:
    """The body's side, its two domes along the centreline dashed, how far down bindings cover it; turned with the
    neck's set."""
    marks: Marks = ()
    for side in body_sides:
        upper, lower = _edge_runs(side)
        ring = _turned((*upper, *reversed(lower)), piece_plan_turned)
        domes = (Polyline(_turned(run, piece_plan_turned), "hidden") for run in _crests(side))
        bound = (_covered(each, upper, lower) for each in channel_edges)
        marks += (Polyline(ring, "outline", closed=True), *domes)
        marks += tuple(Polyline(_turned(run, piece_plan_turned), "markers") for run in bound)
    return marks


def _edge_runs(side: UnrolledSide) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """The upper and the lower edge of the side, along the centreline."""
    x, *edges = side.edges(np.linspace(0.0, side.length, STEPS))
    upper, lower = (tuple(zip(x.tolist(), edge.tolist(), strict=True)) for edge in edges)
    return upper, lower


def _covered(edge: Edge, upper: tuple[Point, ...], lower: tuple[Point, ...]) -> tuple[Point, ...]:
    """The foot of a binding on the side."""
    run, way = (upper, -edge.cover) if edge.name == "top" else (lower, edge.cover)
    return tuple((x, z + way) for x, z in run)


def _crests(side: UnrolledSide) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Top and back along the centreline, over the line between the upper edge's ends."""
    start, end = (side.outline.start, 0.0), (side.outline.end, 0.0)
    x = np.linspace(start[0], end[0], STEPS)
    top = -side.upper.fall_from_chord(x, np.zeros(STEPS), start, end)
    depth = np.interp(x, (start[0], end[0]), (side.depth_start, side.depth_end))
    back = -depth + side.lower.fall_from_chord(x, np.zeros(STEPS), start, end)
    return tuple(zip(x, top, strict=True)), tuple(zip(x, back, strict=True))


def _turned(points: tuple[Point, ...], place: tuple[Mm, Radians]) -> tuple[Point, ...]:
    x, angle = place
    c, s = cos(angle), sin(angle)
    return tuple((float(x + u * c + w * s), float(-u * s + w * c)) for u, w in points)


def piece_plan_board(
    board_nut_position: Mm,
    board_tail_position: Mm,
    fret_position: PerFret[Mm],
    thickness_at_crest: PerFret[Mm],
    head_nut_thickness: Mm,
) -> Marks:
    """The board on the neck, crest above, and the nut behind it."""
    nut, tail = board_nut_position, board_tail_position
    high = np.interp([nut, tail], fret_position, thickness_at_crest)
    board = ((nut, 0.0), (tail, 0.0), (tail, float(high[1])), (nut, float(high[0])))
    box = TRUE.box((nut - head_nut_thickness, 0.0), (nut, float(high[0]) + 2.0), "nut")
    return (Polyline(board, "outline", closed=True), box)


def piece_plan_strings(
    height_at_zero: PerString[Mm],
    height_at_saddle: PerString[Mm],
    saddle_break_x: PerString[Mm],
    thickness_at_crest: PerFret[Mm],
) -> Marks:
    """The outer strings from the zero line to the saddle, strung, over the board."""
    board = float(thickness_at_crest[0])
    return tuple(
        Line(
            (0.0, board + float(height_at_zero[row])),
            (float(saddle_break_x[row]), board + float(height_at_saddle[row])),
            "strings",
        )
        for row in (0, len(height_at_zero) - 1)
    )


def piece_plan_bridge(
    bridge_front_edge: Mm,
    bridge_width: Mm,
    bridge_thickness: Mm,
    piece_plan_turned: tuple[Mm, Radians],
    neck_set_dome_rise: Mm,
) -> Marks:
    """The bridge on the top, where the dome carries it."""
    place, front = piece_plan_turned, bridge_front_edge - piece_plan_turned[0]
    low, high = neck_set_dome_rise, neck_set_dome_rise + bridge_thickness
    corners = ((front, low), (front + bridge_width, low), (front + bridge_width, high), (front, high))
    return (Polyline(_turned(corners, place), "nut", closed=True),)


def piece_plan_side_sizes(back_bow_length: Mm, neck_heel_depth: Mm, body_sides: tuple[UnrolledSide, ...]) -> Marks:
    """Neck's length, heel, angle; the body's depths where they are described."""
    x = back_bow_length
    marks: Marks = (
        Span((0.0, 0.0), (x, 0.0), 26.0, n.back_bow_length, before="to the join "),
        Span((x, -neck_heel_depth), (x, 0.0), 60.0, n.neck_heel_depth),
        Label((x - 150.0, 40.0), n.neck_angle_target, "neck angle "),
    )
    for side in body_sides:
        foot = -max(side.depth_start, side.depth_end) - 24.0
        marks += (
            Label((x + 10.0, foot), n.body_depth_neck, "sides at the neck "),
            Label((x + side.outline.length - 90.0, foot), n.body_depth_tail, "sides at the tail "),
            Words((x + 10.0, foot - 12.0), "Dashed: top and back along the centreline.", 2.6),
        )
    return marks


def piece_plan_neck_side(
    piece_carved: Marks, piece_plan_board: Marks, piece_plan_strings: Marks, heel_wedge: Mm
) -> Marks:
    """Neck, head, board, nut and strings; the heel's face is cut to the set, so that it meets the body."""
    (carved,) = piece_carved
    assert isinstance(carved, Polyline)
    *most, cap, top = carved.points
    set_back = Polyline((*most, (cap[0] - heel_wedge, cap[1]), top), carved.layer)
    return (set_back, *piece_plan_board, *piece_plan_strings)


def drawing_plan_side(
    instrument_name: str,
    piece_plan_neck_side: Marks,
    piece_plan_rims: Marks,
    piece_plan_bridge: Marks,
    piece_plan_side_sizes: Marks,
) -> Drawing:
    """The whole guitar from its side, head to the left, the neck level.

    Used at: neck_fitted, body_built_on.
    """
    marks = (*piece_plan_rims, *piece_plan_bridge, *piece_plan_neck_side, *piece_plan_side_sizes)
    return Drawing("plan-side", f"{instrument_name}, plan of the side", "the side", marks)


def piece_cuts(
    carve_stations: tuple[CarveStation, ...],
    arch_surface: Crown,
    neck_rod: str,
    neck_rod_width: Mm,
    neck_rod_depth: Mm,
    lean_at_edge_treble: PerFret[Mm],
    edge_y_treble: PerFret[Mm],
    instrument_handed: str,
) -> Marks:
    """Neck and board cut across at each station, nut first, one below the other."""
    slopes = lean_at_edge_treble / edge_y_treble * (-1.0 if instrument_handed == "left" else 1.0)
    half, low = neck_rod_width / 2, -neck_rod_depth
    channel = ((half, 0.0), (half, low), (-half, low), (-half, 0.0)) if neck_rod != "none" else ()
    marks: Marks = ()
    top = 0.0
    for station in carve_stations:
        slope = float(np.interp(station.fret, np.arange(len(slopes)), slopes))
        marks += _cut(station, arch_surface, View((0.0, top), ACROSS, ACROSS), channel, slope)
        top -= ACROSS * station.whole + 34.0
    return marks


def _cut(station: CarveStation, surface: Crown, view: View, channel: tuple[Point, ...], slope: Ratio) -> Marks:
    half, board = station.width / 2, station.whole - station.depth
    face = tuple((y, z + board) for y, z in leaning(face_run(surface, station.position, -half, half), slope))
    back = (*((float(y), -float(z)) for y, z in station.profile.points(CURVE)), *channel)
    at, left = n.carve_stations[station.name], view.at(-half, 0.0)
    return (
        view.shape((*face, (half, 0.0), (-half, 0.0)), "outline", "across the grain"),
        view.shape(back, "outline", "across the grain"),
        Label((left[0] - 6.0, left[1] + 4.0), at.name, height=3.5, anchor="right"),
        Span(view.at(-half, -station.depth), view.at(half, -station.depth), -8.0, at.width, FIGURE),
        Span(view.at(half, -station.depth), view.at(half, board), -8.0, at.whole, FIGURE),
        Label((left[0] - 6.0, left[1] - 3.0), at.depth, "neck ", height=FIGURE, anchor="right"),
    )


def piece_cut_strings(
    carve_stations: tuple[CarveStation, ...],
    string_y: PerStringFret[Mm],
    height_at_zero: PerString[Mm],
    height_slope: PerString[Ratio],
    strings_gauges: PerString[Mm],
    instrument_handed: str,
) -> Marks:
    """The strings over each cut, strung, as seen from the tail: treble to the right, or to the left if left-handed."""
    marks: Marks = ()
    top, frets = 0.0, np.arange(string_y.shape[1])
    side = -1.0 if instrument_handed == "left" else 1.0
    for station in carve_stations:
        view, board = View((0.0, top), ACROSS, ACROSS), station.whole - station.depth
        for row, gauge in enumerate(map(float, strings_gauges)):
            y = side * float(np.interp(station.fret, frets, string_y[row]))
            z = board + float(height_at_zero[row] + height_slope[row] * station.position) + gauge / 2
            marks += (Circle(view.at(y, z), ACROSS * gauge / 2, "strings"),)
        top -= ACROSS * station.whole + 34.0
    return marks


def drawing_plan_sections(instrument_name: str, piece_cuts: Marks, piece_cut_strings: Marks) -> Drawing:
    """Neck, board and strings cut across at the stations, twice as large as life, seen from the tail.

    Used at: neck_profiled.
    """
    title = f"{instrument_name}, neck and board cut across"
    nothing = (Words((0.0, 0.0), NO_STATION, 2.4),)
    return Drawing("plan-sections", title, "the end", (*piece_cuts, *piece_cut_strings) or nothing, scale=ACROSS)
