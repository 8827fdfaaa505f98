"""The bridge in plan at true scale, on the board's own axes: x from the zero line, treble up, seen from the face."""

from dataclasses import replace
from math import hypot

import numpy as np

from gramil import names as n
from gramil.drawings.kerf import Machine, as_cut, cut_by
from gramil.drawings.marks import Circle, Drawing, Label, Line, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import handed
from gramil.quantities import Mm, PerString, Ratio
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("drawing_", "piece_")

AHEAD = 14.0
"""How far ahead of the bridge strings and centreline are drawn, in mm."""
CROSS = 1.5
"""Half of the cross that marks a break point, in mm."""


def piece_bridge(bridge_outline: Quadrilateral, bridge_front_edge: Mm, bridge_width: Mm) -> Marks:
    """The footprint, and the centreline through it."""
    ends = (bridge_front_edge - AHEAD, 0.0), (bridge_front_edge + bridge_width + AHEAD, 0.0)
    return (Polyline(bridge_outline.corners, "outline", closed=True), Line(*ends, "centreline"))


def piece_saddle_slot(saddle_position: Mm, saddle_slant: Ratio, saddle_reach: Mm, saddle_thickness: Mm) -> Marks:
    """The saddle's slot as a box along its line, and the line itself."""
    long = hypot(1.0, saddle_slant)
    across = (saddle_thickness / 2 / long, -saddle_slant * saddle_thickness / 2 / long)
    low = (saddle_position - saddle_slant * saddle_reach, -saddle_reach)
    high = (saddle_position + saddle_slant * saddle_reach, saddle_reach)
    box = (_by(low, across, -1), _by(high, across, -1), _by(high, across, 1), _by(low, across, 1))
    return (Polyline(box, "cut", closed=True), Line(low, high, "centreline"))


def _by(point: Point, step: Point, times: float) -> Point:
    return (point[0] + times * step[0], point[1] + times * step[1])


def piece_break_points(saddle_break_x: PerString[Mm], string_y_bridge: PerString[Mm]) -> Marks:
    """A cross where each string breaks over the saddle, treble first."""
    marks: list[Line] = []
    for x, y in zip(saddle_break_x.tolist(), string_y_bridge.tolist(), strict=True):
        marks += [Line((x - CROSS, y), (x + CROSS, y), "nut"), Line((x, y - CROSS), (x, y + CROSS), "nut")]
    return tuple(marks)


def piece_scale_ends(string_scale_end_x: PerString[Mm], string_y_bridge: PerString[Mm]) -> Marks:
    """The line of the scales' ends, before any set-back."""
    ends = zip(string_scale_end_x[[-1, 0]].tolist(), string_y_bridge[[-1, 0]].tolist(), strict=True)
    start, end = ends
    return (Line(start, end, "hidden"),)


def piece_hold(
    bridge_hold: str,
    bridge_hold_x: PerString[Mm],
    bridge_hold_y: PerString[Mm],
    bridge_pin_diameter: Mm,
    bridge_outline: Quadrilateral,
) -> Marks:
    """The pins' holes behind the saddle; of a tie block its face, and its holes along the strings, dashed."""
    places = list(zip(bridge_hold_x.tolist(), bridge_hold_y.tolist(), strict=True))
    if bridge_hold == "pins":
        return tuple(Circle(place, bridge_pin_diameter / 2, "pins") for place in places)
    back = (
        (bridge_outline.end_lower_x, bridge_outline.end_lower_y),
        (bridge_outline.end_upper_x, bridge_outline.end_upper_y),
    )
    slope = (back[1][0] - back[0][0]) / (back[1][1] - back[0][1])
    walls = [(x, y + side * bridge_pin_diameter / 2) for x, y in places for side in (-1, 1)]
    holes = (Line((x, y), (back[0][0] + slope * (y - back[0][1]), y), "hidden") for x, y in walls)
    return (Line(places[-1], places[0], "core"), *holes)


def piece_bridge_strings(
    bridge_outline: Quadrilateral,
    saddle_break_x: PerString[Mm],
    string_y_bridge: PerString[Mm],
    bridge_hold_x: PerString[Mm],
    bridge_hold_y: PerString[Mm],
) -> Marks:
    """Each string from ahead of the bridge, on a line along its front edge, over its break point to its hole."""
    box = bridge_outline
    edge = (box.start_lower_y, box.start_upper_y), (box.start_lower_x, box.start_upper_x)
    runs = zip(saddle_break_x, string_y_bridge, bridge_hold_x, bridge_hold_y, strict=True)
    return tuple(
        Polyline(
            ((float(np.interp(y, *edge)) - AHEAD, float(y)), (float(x), float(y)), (float(to_x), float(to_y))),
            "strings",
        )
        for x, y, to_x, to_y in runs
    )


def piece_bridge_lines(
    piece_bridge: Marks, piece_saddle_slot: Marks, piece_scale_ends: Marks, piece_hold: Marks
) -> Marks:
    """The lines of the bridge itself."""
    return (*piece_bridge, *piece_saddle_slot, *piece_scale_ends, *piece_hold)


def piece_bridge_sizes(bridge_outline: Quadrilateral) -> Marks:
    """Dimension lines of length and width, and which end is which."""
    box = bridge_outline
    front = (box.start_lower_x, box.start_lower_y), (box.start_upper_x, box.start_upper_y)
    side = (box.start_lower_x, box.start_lower_y), (box.end_lower_x, box.end_lower_y)
    middles = [
        (low + high) / 2 for low, high in ((box.start_lower_x, box.end_lower_x), (box.start_upper_x, box.end_upper_x))
    ]
    return (
        Span(*front, 26.0, n.bridge_length),
        Span(*side, -8.0, n.bridge_width_square),
        Words((middles[0], box.start_lower_y + 12.0), "bass", 2.5, anchor="middle"),
        Words((middles[1], box.start_upper_y - 14.0), "treble", 2.5, anchor="middle"),
    )


def piece_bridge_words(
    bridge_outline: Quadrilateral, instrument_name: str, bridge_hold: str, bridge_hold_row: PerString[Ratio]
) -> Marks:
    """What places the bridge and cuts its slot, in a column beside it that is not turned over with it."""
    x = max(bridge_outline.end_lower_x, bridge_outline.end_upper_x) + 46.0
    tied = bridge_hold != "pins"
    lines = (
        ("nut's face to front edge ", n.bridge_front_from_nut),
        ("octave's fret to front edge ", n.bridge_front_from_octave),
        ("join to front edge ", n.bridge_front_from_join),
        ("front edge to saddle's middle ", n.bridge_front),
        ("saddle's middle to tie block " if tied else "saddle's middle to holes ", n.bridge_hold_behind),
        *((("saddle's middle to second row ", n.bridge_hold_second),) if bridge_hold_row.max() > 1 else ()),
        ("zero line to saddle's middle ", n.saddle_position),
        ("saddle's angle ", n.saddle_angle),
        ("its slot wide ", n.saddle_thickness),
        ("long ", n.saddle_length),
        ("deep ", n.saddle_slot_depth),
        ("strings' spread ", n.bridge_spread),
        ("holes' spread ", n.bridge_hold_spread),
        ("holes ", n.bridge_pin_diameter),
        *((("their mouths under the bridge's top ", n.bridge_hold_below),) if tied else ()),
    )
    labels = (Label((x, 30.0 - 5.0 * row), address, before, height=2.4) for row, (before, address) in enumerate(lines))
    return (Words((x, 38.0), instrument_name, 4.0), *labels)


def piece_set_backs(bridge_outline: Quadrilateral, bridge_hold_y: PerString[Mm]) -> Marks:
    """Each string's set-back, behind the bridge."""
    x = max(bridge_outline.end_lower_x, bridge_outline.end_upper_x) + 3.0
    return tuple(
        Label((x, float(y) - 1.1), n.saddle_set_back[row], "back ", height=2.2)
        for row, y in enumerate(bridge_hold_y, 1)
    )


def drawing_bridge(
    instrument_name: str,
    instrument_handed: str,
    piece_router: Machine,
    piece_bridge_lines: Marks,
    piece_bridge_run: Marks,
    piece_bridge_figures: Marks,
    piece_bridge_words: Marks,
) -> Drawing:
    """The bridge with saddle slot, break points and holes, where it lies from the zero line.

    Used at: bridge_made, bridge_placed, pins_fitted.
    """
    marks = (*as_cut(piece_bridge_lines), *piece_bridge_run, *piece_bridge_figures)
    drawing = cut_by(piece_router, Drawing("bridge", f"{instrument_name}, bridge", "the face", marks))
    turned = handed(drawing, instrument_handed)
    return replace(turned, marks=(*turned.marks, *piece_bridge_words))


def piece_bridge_run(piece_bridge_strings: Marks, piece_break_points: Marks) -> Marks:
    """The strings over the bridge, and where they break."""
    return (*piece_bridge_strings, *piece_break_points)


def piece_bridge_figures(piece_bridge_sizes: Marks, piece_set_backs: Marks) -> Marks:
    """What is written on the bridge itself."""
    return (*piece_bridge_sizes, *piece_set_backs)
