"""The bridge on its sheets: lying across the page, the nut's side up, as it lies before whoever works on it.

The template has it along the board's own axes, where it stands upright and would be drawn small on a sheet.
"""

from dataclasses import replace
from math import hypot

from gramil import names as n
from gramil.drawings.bridge import AHEAD
from gramil.drawings.marks import Circle, Drawing, Label, Line, Mark, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import figure_lines, sides_changed
from gramil.quantities import Mm, PerString, Ratio
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("drawing_", "piece_")

ROOM = (112.0, 42.0)
"""Width and height, in mm, that the bridge and the strings ahead of it are drawn in."""
LETTER, ROW = 2.4, 4.2
"""Height of words and figures, and from a line of them to the next, in mm."""
FIGURE_WIDE = 14.0
"""Room for a figure with its unit, in mm."""


def piece_lying_share(bridge_outline: Quadrilateral) -> Ratio:
    """How large the bridge is drawn, as a share of what it is: a slanted one takes more of the page's height."""
    along, across = ([point[axis] for point in bridge_outline.corners] for axis in (0, 1))
    return min(ROOM[0] / (max(across) - min(across)), ROOM[1] / (max(along) - min(along) + AHEAD))


def piece_lying_lines(
    piece_bridge_lines: Marks, piece_bridge_run: Marks, bridge_outline: Quadrilateral, piece_lying_share: Ratio
) -> Marks:
    """The bridge's lines, the strings and where they break, a quarter turned: x goes down the page, treble right.

    The centreline ends close behind the bridge, where its figures begin.
    """
    behind = max(bridge_outline.end_lower_x, bridge_outline.end_upper_x) + 2.0
    marks = (_cut_off(mark, behind) for mark in (*piece_bridge_lines, *piece_bridge_run))
    return tuple(_lying(mark, piece_lying_share) for mark in marks)


def _cut_off(mark: Mark, at: Mm) -> Mark:
    """The centreline no further than a place along; any other mark as it is."""
    if isinstance(mark, Line) and mark.layer == "centreline" and mark.end[1] == mark.start[1] == 0.0:
        return replace(mark, end=(min(mark.end[0], at), 0.0))
    return mark


def _lying(mark: Mark, share: Ratio) -> Mark:
    match mark:
        case Line():
            return replace(mark, start=_quarter(mark.start, share), end=_quarter(mark.end, share))
        case Polyline():
            return replace(mark, points=tuple(_quarter(point, share) for point in mark.points))
        case Circle():
            return replace(mark, centre=_quarter(mark.centre, share), radius=share * mark.radius)
        case _:
            raise TypeError(f"no {type(mark).__name__} is turned here")


def _quarter(point: Point, share: Ratio) -> Point:
    return (share * point[1], -share * point[0])


def piece_lying_sizes(bridge_outline: Quadrilateral, piece_lying_share: Ratio, piece_lying_lines: Marks) -> Marks:
    """Length over the front edge, clear of the strings ahead of it; width beside the bass end."""
    box, share = bridge_outline, piece_lying_share
    bass = _quarter((box.start_lower_x, box.start_lower_y), share)
    treble = _quarter((box.start_upper_x, box.start_upper_y), share)
    tail = _quarter((box.end_lower_x, box.end_lower_y), share)
    ahead = 2.5 + _furthest(piece_lying_lines, bass, treble)
    return (Span(bass, treble, ahead, n.bridge_length, LETTER), Span(tail, bass, 5.0, n.bridge_width_square, LETTER))


def _furthest(marks: Marks, start: Point, end: Point) -> Mm:
    """How far the strings reach to the left of the line from one point to another."""
    along, up = end[0] - start[0], end[1] - start[1]
    ends = [mark.points[0] for mark in marks if isinstance(mark, Polyline) and mark.layer == "strings"]
    return max((along * (y - start[1]) - up * (x - start[0])) / hypot(along, up) for x, y in ends)


def piece_lying_words(bridge_outline: Quadrilateral, bridge_hold_y: PerString[Mm], piece_lying_share: Ratio) -> Marks:
    """Which end is which, and each string's set-back behind its hole."""
    box, share = bridge_outline, piece_lying_share
    places = [share * y for y in bridge_hold_y.tolist()]
    lines = figure_lines(places, FIGURE_WIDE)
    foot = -share * max(box.end_lower_x, box.end_upper_x) - LETTER - 3.0
    behind = tuple(
        Label(
            (place, foot - ROW * line), n.saddle_set_back[row], lines.before(row), height=0.8 * LETTER, anchor="middle"
        )
        for row, (place, line) in enumerate(zip(places, lines.rows, strict=True), 1)
    )
    told = (0.0, foot - ROW * (lines.count + 0.4))
    return (
        *behind,
        _end_word("bass", box, (box.start_lower_x, box.start_lower_y), (box.end_lower_x, box.end_lower_y), share),
        _end_word("treble", box, (box.start_upper_x, box.start_upper_y), (box.end_upper_x, box.end_upper_y), share),
        Words(told, "each string's set-back behind its scale's end", 0.8 * LETTER, anchor="middle"),
    )


def _end_word(word: str, box: Quadrilateral, front: Point, back: Point, share: Ratio) -> Words:
    """A word within an end of the bridge, a sixth of the way in."""
    middle = [sum(point[axis] for point in box.corners) / len(box.corners) for axis in (0, 1)]
    along, across = ((front[axis] + back[axis]) / 2 * 5 / 6 + middle[axis] / 6 for axis in (0, 1))
    x, y = _quarter((along, across), share)
    return Words((x, y - LETTER / 2), word, LETTER, anchor="middle")


def drawing_setup_bridge(
    instrument_name: str,
    instrument_handed: str,
    piece_lying_lines: Marks,
    piece_lying_sizes: Marks,
    piece_lying_words: Marks,
    piece_lying_share: Ratio,
) -> Drawing:
    """The bridge across the page, the nut's side up: saddle slot, break points, holes, set-backs."""
    marks = (*piece_lying_lines, *piece_lying_sizes, *piece_lying_words)
    if instrument_handed == "left":
        marks = sides_changed(marks)
    return Drawing("setup-bridge", f"{instrument_name}, bridge", "the face", marks, scale=piece_lying_share)
