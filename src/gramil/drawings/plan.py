"""The board in plan, piece by piece: right-handed, seen from the face, as marks that several drawings share."""

import numpy as np

from gramil import names as n
from gramil.drawings.marks import Circle, Label, Line, Mark, Marks, Polyline, Span, Words
from gramil.drawings.pen import midway
from gramil.quantities import Count, Mm, PerFret, PerStringFret, Ratio
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("piece_",)

NUMBER_ROOM = 4.5
"""Fret numbers nearer to one another than this, in mm, would run together."""


def piece_outline(board_outline: Quadrilateral, core_outline: Quadrilateral, core_inset: Mm) -> Marks:
    """The finished outline, which hides what is under it, the core inside its binding, and the nut's face."""
    nut = Line(
        (board_outline.start_lower_x, board_outline.start_lower_y),
        (board_outline.start_upper_x, board_outline.start_upper_y),
        "nut",
    )
    outline = Polyline(board_outline.corners, "outline", closed=True, hatch="left clear")
    core = (Polyline(core_outline.corners, "core", closed=True),) if core_inset > 0 else ()
    return (outline, *core, nut)


def piece_slots(
    slot_first: Count,
    core_x_bass: PerFret[Mm],
    core_y_bass: PerFret[Mm],
    core_x_treble: PerFret[Mm],
    core_y_treble: PerFret[Mm],
) -> Marks:
    """One line a slot, in order from the nut, each from the core's bass edge to its treble edge."""
    ends = zip(core_x_bass, core_y_bass, core_x_treble, core_y_treble, strict=True)
    lines = [Line((float(xb), float(yb)), (float(xt), float(yt)), "slots") for xb, yb, xt, yt in ends]
    return tuple(lines[slot_first:])


def piece_zero_line(
    board_nut_position: Mm,
    edge_x_bass: PerFret[Mm],
    edge_y_bass: PerFret[Mm],
    edge_x_treble: PerFret[Mm],
    edge_y_treble: PerFret[Mm],
) -> Marks:
    """The zero line across the board, where it is not the nut's face (set forward, or behind a zero fret)."""
    if board_nut_position == 0:
        return ()
    bass, treble = (float(edge_x_bass[0]), float(edge_y_bass[0])), (float(edge_x_treble[0]), float(edge_y_treble[0]))
    return (Line(bass, treble, "centreline"),)


def piece_strings(string_x: PerStringFret[Mm], string_y: PerStringFret[Mm]) -> Marks:
    """Each string's centre over the board, treble first, from the zero line to the last fret."""
    return tuple(
        Line((float(x[0]), float(y[0])), (float(x[-1]), float(y[-1])), "strings")
        for x, y in zip(string_x, string_y, strict=True)
    )


def piece_markers(
    markers_frets: tuple[int, ...],
    markers_double: tuple[int, ...],
    markers_diameter: Mm,
    marker_position: PerFret[Mm],
    marker_slant: PerFret[Ratio],
    marker_offset: PerFret[Mm],
    markers_face: bool,
) -> Marks:
    """Markers on the face, nut end first; the bass one of a pair before its twin. None where only the edge has dots."""
    marks = []
    for fret in sorted({*markers_frets, *markers_double}) if markers_face else ():
        off = float(marker_offset[fret])
        for y in (-off, off) if fret in markers_double else (0.0,):
            centre = (float(marker_position[fret] + marker_slant[fret] * y), y)
            marks.append(Circle(centre, markers_diameter / 2, "markers"))
    return tuple(marks)


def piece_side_dots(
    markers_frets: tuple[int, ...],
    markers_double: tuple[int, ...],
    markers_side_diameter: Mm,
    edge_x_bass: PerFret[Mm],
    edge_y_bass: PerFret[Mm],
) -> Marks:
    """A tick out from the bass edge for each side dot, half way between its frets; two, a dot apart, for a pair."""
    marks = []
    for fret in sorted({*markers_frets, *markers_double}):
        behind, ahead = ((float(edge_x_bass[row]), float(edge_y_bass[row])) for row in (fret - 1, fret))
        x, y = midway(behind, ahead)
        for along in (-markers_side_diameter, markers_side_diameter) if fret in markers_double else (0.0,):
            marks.append(Line((x + along, y), (x + along, y - markers_side_diameter), "markers"))
    return tuple(marks)


def piece_pins(template_pin_first: Mm, template_pin_last: Mm, template_pin_reach: Mm, shop_template_pin: Mm) -> Marks:
    """Holes for the locating pins in the blank's waste, and the centreline from end to end of it."""
    run = Line(
        (template_pin_first - template_pin_reach, 0.0), (template_pin_last + template_pin_reach, 0.0), "centreline"
    )
    holes = (Circle((x, 0.0), shop_template_pin / 2, "pins") for x in (template_pin_first, template_pin_last))
    return (run, *holes)


def piece_fret_numbers(slot_first: Count, edge_x_treble: PerFret[Mm], edge_y_treble: PerFret[Mm]) -> Marks:
    """The number of each fret beside its treble end, as many as can be read."""
    marks, last = [], -np.inf
    for fret in range(slot_first, len(edge_x_treble)):
        x, y = float(edge_x_treble[fret]), float(edge_y_treble[fret])
        if x - last >= NUMBER_ROOM:
            marks.append(Words((x, y + 1.8), str(fret), 2.2, anchor="middle"))
            last = x
    return tuple(marks)


def piece_sizes(
    board_outline: Quadrilateral,
    board_nut_position: Mm,
    board_tail_position: Mm,
    fret_position: PerFret[Mm],
    nut_width: Mm,
) -> Marks:
    """Dimension lines: width at the nut, length, and zero line to fret 12 (the last, on a shorter board)."""
    corners, middle = board_outline, min(12, len(fret_position) - 1)
    to_fret = f"zero line to fret {middle} "
    low = min(corners.start_lower_y, corners.end_lower_y)
    head = min(corners.start_lower_x, corners.start_upper_x)
    return (
        Span((head, -nut_width / 2), (head, nut_width / 2), 20.0, n.nut_width, before="nut "),
        Span((0.0, low), (float(fret_position[middle]), low), -9.0, n.fret_position[middle], before=to_fret),
        Span((board_nut_position, low), (board_tail_position, low), -18.0, n.board_length, before="board long "),
    )


def piece_tail_size(board_outline: Quadrilateral, board_width_at_tail: Mm, piece_pins: Marks) -> Marks:
    """The width at the tail end, past the end of the centreline through the pins."""
    tail, half = max(board_outline.end_upper_x, board_outline.end_lower_x), board_width_at_tail / 2
    past = max(mark.end[0] for mark in piece_pins if isinstance(mark, Line)) + 6.0 - tail
    return (Span((tail, -half), (tail, half), -max(18.0, past), n.board_width_at_tail, before="wide "),)


def piece_head_words(
    instrument_name: str,
    scale_bass: Mm,
    scale_treble: Mm,
    scale_zero_fret: bool,
    board_outline: Quadrilateral,
) -> Marks:
    """Name, scale and join, over the board's treble edge."""
    top = max(board_outline.end_upper_y, board_outline.start_upper_y)
    scale: tuple[Mark, ...] = (Label((0.0, top + 9.0), n.scale_bass, "scale ", height=3.5),)
    if scale_bass != scale_treble:
        scale = (
            Label((0.0, top + 9.0), n.scale_bass, "scale, bass ", height=3.5),
            Label((80.0, top + 9.0), n.scale_treble, "treble ", height=3.5),
        )
    zero = (Words((230.0, top + 9.0), "with a zero fret", 3.5),) if scale_zero_fret else ()
    join = Label((150.0, top + 9.0), n.scale_join, "body at fret ", height=3.5)
    return (Words((0.0, top + 16.0), instrument_name, 5.0), *scale, join, *zero)


def piece_side_words(edge_x_bass: PerFret[Mm], board_outline: Quadrilateral) -> Marks:
    """Which edge is which, beside the tail end; head and tail."""
    x = max(board_outline.end_lower_x, board_outline.end_upper_x) + 4.0
    return (
        Words((x, board_outline.end_upper_y - 3.0), "treble", 2.5),
        Words((x, board_outline.end_lower_y + 1.0), "bass", 2.5),
    )
