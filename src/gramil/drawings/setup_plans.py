"""Small drawings for the sheets, in plan: blank, lay-out, taper, markers. Sketches: long boards are drawn short.

Lengths are squeezed to the sheet's width and widths to its height; every figure on them is an address.
"""

from dataclasses import replace

from gramil import names as n
from gramil.description.records import Jig
from gramil.drawings.marks import Circle, Drawing, Label, Line, Marks, Point, Polyline, Span, Words, mirrored
from gramil.drawings.pen import FIGURE, View, arrow, handed, lines_of_words, midway, upright
from gramil.quantities import Count, Mm, PerFret
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("drawing_", "piece_")

ROOM = (84.0, 24.0)
"""Width and height, in mm, that a board is drawn in."""
FIGURE_WIDE = 18.0
"""Room for a figure with its unit, in mm: nearer neighbours stand at two heights."""
PIN = 0.9
"""Radius of a pin's hole on a sketch, in mm."""


def piece_squeezed(blank_length: Mm, blank_width: Mm) -> View:
    """How a board is squeezed onto a sheet: as long as the room is wide, as wide as it is high."""
    return View((0.0, 0.0), ROOM[0] / blank_length, ROOM[1] / blank_width)


def piece_blank(piece_squeezed: View, blank_length: Mm, blank_width: Mm, board_outline: Quadrilateral) -> Polyline:
    """The blank as a box about the board's outline, the same over at both ends."""
    xs = [x for x, _ in board_outline.corners]
    middle = (min(xs) + max(xs)) / 2
    low, high = (middle - blank_length / 2, -blank_width / 2), (middle + blank_length / 2, blank_width / 2)
    return piece_squeezed.box(low, high, "outline")


def piece_board_on_blank(piece_squeezed: View, board_outline: Quadrilateral, piece_blank: Polyline) -> Marks:
    """The finished outline and the centreline on the blank."""
    (left, _), _, (right, _), _ = piece_blank.points
    return (
        piece_squeezed.shape(board_outline.corners, "hidden"),
        Line((left, piece_squeezed.origin[1]), (right, piece_squeezed.origin[1]), "centreline"),
    )


def drawing_setup_blank(
    instrument_name: str,
    piece_squeezed: View,
    piece_blank: Polyline,
    piece_board_on_blank: Marks,
    template_pin_first: Mm,
    template_pin_last: Mm,
) -> Drawing:
    """The blank: length along the grain, width, thickness, one jointed edge, room for the locating pins."""
    low, corner, high, _ = piece_blank.points
    wood = Polyline(piece_blank.points, "outline", closed=True, hatch="along the grain")
    edge = (low[0], low[1] - 0.7), (corner[0], low[1] - 0.7)
    marks: Marks = (
        wood,
        *piece_board_on_blank,
        *(Circle(piece_squeezed.at(x, 0.0), PIN, "pins") for x in (template_pin_first, template_pin_last)),
        Line(*edge, "nut"),
        Words((low[0], low[1] - 5.0), "jointed edge", 2.2),
        Words((low[0], low[1] - 16.0), "grain along; finished outline within", 2.2),
        Span(low, corner, -10.0, n.blank_length, FIGURE),
        # a dimension's own words would stand upright, and with 64ths reach far over so narrow a piece
        Label((low[0], high[1] + 2.0), n.blank_width, "wide ", height=FIGURE),
        Label((high[0], high[1] + 2.0), n.blank_thickness, "thick ", height=FIGURE, anchor="right"),
    )
    return _sketch("setup-blank", f"{instrument_name}, the blank", marks, piece_squeezed)


def drawing_setup_layout(
    instrument_name: str,
    instrument_handed: str,
    piece_squeezed: View,
    piece_blank: Polyline,
    piece_layout_lines: Marks,
    piece_layout_sizes: Marks,
) -> Drawing:
    """What is drawn on the blank: centreline, zero line, widths at three stations, everything from the zero line."""
    blank = Polyline(piece_blank.points, "old", closed=True)
    marks = (blank, *piece_layout_lines, *piece_layout_sizes)
    sketch = _sketch("setup-layout", f"{instrument_name}, lay-out on the blank", marks, piece_squeezed)
    return handed(sketch, instrument_handed)


def piece_layout_lines(
    piece_squeezed: View, board_outline: Quadrilateral, piece_blank: Polyline, piece_slots: Marks
) -> Marks:
    """Outline, centreline and slots on the sketch."""
    (left, _), _, (right, _), _ = piece_blank.points
    slots = (line for line in piece_slots if isinstance(line, Line))
    return (
        piece_squeezed.shape(board_outline.corners, "outline"),
        Line((left, 0.0), (right, 0.0), "centreline"),
        *(piece_squeezed.line(slot.start, slot.end, "old") for slot in slots),
    )


def piece_layout_sizes(
    piece_squeezed: View,
    board_tail_position: Mm,
    board_width_position: Mm,
    fret_position: PerFret[Mm],
    station_middle_fret: Count,
    piece_blank: Polyline,
) -> Marks:
    """Lengths below, from the zero line; widths above, where they are taken."""
    low, top = piece_blank.points[0][1], piece_blank.points[2][1]
    zero, tail = piece_squeezed.at(0.0, 0.0)[0], piece_squeezed.at(board_tail_position, 0.0)[0]
    station = piece_squeezed.at(board_width_position, 0.0)[0]
    middle = piece_squeezed.at(float(fret_position[station_middle_fret]), 0.0)[0]
    raised = 4.2 if min(station - zero, tail - station) < FIGURE_WIDE else 0.0
    return (
        Span((zero, low), (middle, low), -5.0, n.fret_position[station_middle_fret], FIGURE),
        Span((zero, low), (tail, low), -12.0, n.board_tail_position, FIGURE),
        *(Line((x, top + 0.8), (x, top + 4.0), "dimensions") for x in (zero, station, tail)),
        Label((zero, top + 4.8), n.nut_width, height=FIGURE, anchor="middle"),
        Label((station, top + 4.8 + raised), n.board_width, height=FIGURE, anchor="middle"),
        Label((tail, top + 4.8), n.board_width_at_tail, height=FIGURE, anchor="middle"),
        Words((zero, top + 9.5 + raised), "widths, square to the centreline", 2.2),
    )


def piece_taper_corners(board_outline: Quadrilateral, instrument_handed: str) -> tuple[Point, Point, Point, Point]:
    """The outline's corners with the first edge to be cut upward: the bass edge, or a left-handed board's treble edge.

    Head end first: lower, upper; then tail end: upper, lower.
    """
    low_head, up_head, up_tail, low_tail = board_outline.corners
    if instrument_handed == "left":
        return (low_head, up_head, up_tail, low_tail)
    turned = [(x, -y) for x, y in (up_head, low_head, low_tail, up_tail)]
    return (turned[0], turned[1], turned[2], turned[3])


def piece_taper_board(
    piece_squeezed: View, piece_taper_corners: tuple[Point, Point, Point, Point], piece_blank: Polyline
) -> Marks:
    """Blank, finished outline and centreline; the cut is along the upper edge, fed from the wide end."""
    view, (_, up_head, up_tail, _) = piece_squeezed, piece_taper_corners
    head, tail = view.at(*up_head), view.at(*up_tail)
    (left, _), _, (right, top), _ = piece_blank.points
    return (
        Polyline(piece_blank.points, "old", closed=True),
        view.shape(piece_taper_corners, "outline"),
        Line((left, 0.0), (right, 0.0), "centreline"),
        *arrow((tail[0], tail[1] + 5.0), (head[0], head[1] + 5.0), "cut"),
        Words((head[0], top + 4.5), "cut along this edge, wide end first", 2.2),
        Label((head[0] + 1.0, 2.2), n.board_half_taper_angle, "half taper ", height=FIGURE),
    )


def piece_taper_carriage(
    piece_squeezed: View,
    piece_taper_corners: tuple[Point, Point, Point, Point],
    jig_taper: Jig,
    piece_blank: Polyline,
) -> Marks:
    """The carriage's reference face, alongside the cut at the jig's constant, and the way from it to the centreline."""
    view, (_, up_head, up_tail, _) = piece_squeezed, piece_taper_corners
    foot = piece_blank.points[0][1] - 6.0
    if jig_taper.constant != jig_taper.constant:
        return lines_of_words(
            (view.at(*up_head)[0], foot), "no carriage in the shop: saw outside the line and plane to it"
        )
    (x0, y0), (x1, y1) = (view.at(x, y - jig_taper.constant) for x, y in (up_head, up_tail))
    return (
        Line((x0 - 3.0, y0), (x1 + 3.0, y1), "nut"),
        Words((x0, min(y0, y1) - 5.0), "reference face, alongside the cut", 2.2),
        *upright((x0 - 3.0, y0), (x0 - 3.0, 0.0), n.taper_centre_nut, side="left"),
        *upright((x1 + 3.0, y1), (x1 + 3.0, 0.0), n.taper_centre_tail),
        *upright(
            midway((x0, y0), (x1, y1)), midway(view.at(*up_head), view.at(*up_tail)), n.jig_taper.constant, middle=-4.0
        ),
    )


def drawing_setup_taper(
    instrument_name: str, piece_squeezed: View, piece_taper_board: Marks, piece_taper_carriage: Marks
) -> Drawing:
    """The first edge in the carriage, face up: cut, reference face, the centreline's distance from it at both ends.

    The cut lies along the lower edge whatever the hand: the tail leads, and the machine does not change hands.
    """
    marks = (*piece_taper_board, *piece_taper_carriage)
    return mirrored(_sketch("setup-taper", f"{instrument_name}, taper", marks, piece_squeezed))


def piece_marked_fret(markers_frets: tuple[int, ...], markers_double: tuple[int, ...]) -> int:
    """The fret whose marker is drawn: the first with two, otherwise the first; 0 on a board without markers."""
    return next(iter((*markers_double, *markers_frets)), 0)


def drawing_setup_markers(
    instrument_name: str,
    instrument_handed: str,
    piece_marked_fret: int,
    piece_markers_between: Marks,
    piece_markers_edge: Marks,
    markers_face: bool,
) -> Drawing:
    """A marker half way between two frets, on the face and on the bass edge."""
    if piece_marked_fret == 0 or not markers_face:
        words = lines_of_words(
            (0.0, 0.0), "No markers on this board." if markers_face else "No markers on this board's face."
        )
        return Drawing("setup-markers", f"{instrument_name}, markers", "the face", words, scale=0.0)
    face = Drawing("setup-markers", f"{instrument_name}, markers", "the face", piece_markers_between, scale=0.0)
    turned = handed(face, instrument_handed)
    return replace(turned, marks=(*turned.marks, *piece_markers_edge))


SMALL = 0.75
"""How large the face is drawn about a marker."""
EDGE = 3.0
"""How many times as large as life the edge is drawn about a side dot."""


def piece_markers_between(
    piece_marked_fret: int,
    piece_slots: Marks,
    piece_markers: Marks,
    slot_first: Count,
    marker_position: PerFret[Mm],
    edge_y_treble: PerFret[Mm],
) -> Marks:
    """The face between the two frets beside the marker, their numbers and the marker's figures."""
    fret = piece_marked_fret
    if fret == 0:
        return ()
    middle, half = float(marker_position[fret]), float(edge_y_treble[fret])
    view = View((-SMALL * middle, 0.0), SMALL, SMALL)
    frets = [piece_slots[row - slot_first] for row in (fret - 1, fret) if row >= slot_first]
    lines = [view.line(line.start, line.end, "slots") for line in frets if isinstance(line, Line)]
    dots = [m for m in piece_markers if isinstance(m, Circle) and abs(m.centre[0] - middle) < m.radius]
    top, x = view.at(0.0, half)[1], view.at(middle, 0.0)[0]
    marks: Marks = (
        *lines,
        *(Circle(view.at(*dot.centre), SMALL * dot.radius, "markers") for dot in dots),
        Line((x - 14.0, 0.0), (x + 14.0, 0.0), "centreline"),
        *(
            Words((line.end[0], top + 1.5), str(row), 2.2, anchor="middle")
            for row, line in zip((fret - 1, fret)[-len(lines) :], lines, strict=True)
        ),
        Label((x + 14.0, -top - 5.0), n.marker_position[fret], "from the zero line ", height=FIGURE, anchor="middle"),
        Label((x + 14.0, -top - 9.5), n.markers_diameter, "diameter ", height=FIGURE, anchor="middle"),
    )
    if len(dots) > 1:
        centre = view.at(*dots[-1].centre)
        marks += upright((centre[0] + 11.0, 0.0), (centre[0] + 11.0, centre[1]), n.marker_offset[fret])
    return marks


def piece_markers_edge(
    piece_marked_fret: int,
    marker_side_depth: PerFret[Mm],
    markers_side_diameter: Mm,
    thickness_at_edge_bass: PerFret[Mm],
) -> Marks:
    """The bass edge beside it, enlarged: a side dot and how far it lies below the face."""
    fret = piece_marked_fret
    if fret == 0:
        return ()
    thick, deep = float(thickness_at_edge_bass[fret]), float(marker_side_depth[fret])
    view = View((40.0, 6.0), EDGE, EDGE)
    dot = view.at(2.0, -deep)
    return (
        view.box((-1.0, -thick), (5.0, 0.0), "outline", "along the grain"),
        Circle(dot, EDGE * markers_side_diameter / 2, "markers"),
        *upright((view.at(6.0, 0.0)[0], dot[1]), view.at(6.0, 0.0), n.marker_side_depth[fret]),
        Label((view.at(6.0, 0.0)[0], view.at(0.0, -thick)[1] - 5.0), n.markers_side_diameter, "dot ", height=FIGURE),
        Words((view.at(-1.0, 0.0)[0], 9.0), "bass edge, face above", 2.2),
    )


def _sketch(name: str, title: str, marks: Marks, view: View) -> Drawing:
    return Drawing(name, title, "the face", marks, stretch=round(view.up / view.across, 1), scale=0.0)
