"""The saddle on its sheet: from behind with each string's height, and from above with where each string breaks.

Treble lies to the right, as on the cards; to the left for the left hand.
"""

from typing import Any

from gramil import names as n
from gramil.drawings.marks import Drawing, Label, Marks, Point, Words
from gramil.drawings.pen import FIGURE, FigureLines, View, figure_lines, sides_changed
from gramil.quantities import Mm, PerString, Ratio
from gramil.reference import Ref

OWNS = ("drawing_", "piece_")

ROOM = 104.0
"""How wide the saddle is drawn, in mm."""
FIGURE_WIDE = 20.0
"""Room for a figure with its unit, in mm."""
ROW = 4.4
"""From one line of figures to the next, in mm."""


def piece_saddle_share(saddle_length: Mm) -> Ratio:
    """How large the saddle is drawn, as a multiple of what it is."""
    return ROOM / saddle_length


def piece_saddle_behind(
    saddle_tall: PerString[Mm],
    string_along_saddle: PerString[Mm],
    saddle_length: Mm,
    saddle_slot_depth: Mm,
    piece_saddle_share: Ratio,
) -> Marks:
    """From behind: its top from string to string, the bridge's top as a dashed line, a tick and a height a string."""
    view = View((0.0, 0.0), piece_saddle_share, piece_saddle_share)
    tops = list(zip(string_along_saddle.tolist(), saddle_tall.tolist(), strict=True))
    reach, high = saddle_length / 2, max(z for _, z in tops)
    shape = ((reach, tops[0][1]), *tops, (-reach, tops[-1][1]), (-reach, 0.0), (reach, 0.0))
    return (
        view.shape(shape, "outline", "bone"),
        view.line((-reach - 3.0, saddle_slot_depth), (reach + 3.0, saddle_slot_depth), "hidden"),
        *(view.line((y, z), (y, z - 1.2), "strings") for y, z in tops),
        *_figures([view.at(y, high) for y, _ in tops], 2.5, ROW, n.saddle_tall),
        Words(view.at(0.0, 0.8), "from behind, on its foot; dashed: the bridge's top", 2.2, anchor="middle"),
    )


def piece_saddle_above(
    saddle_off_line: PerString[Mm],
    saddle_thickness: Mm,
    string_along_saddle: PerString[Mm],
    saddle_length: Mm,
    piece_saddle_share: Ratio,
) -> Marks:
    """From above, nut's side up: both faces, the middle line, and each string's break with how far behind it lies."""
    view = View((0.0, -4.0 * ROW), piece_saddle_share, piece_saddle_share)
    half, reach = saddle_thickness / 2, saddle_length / 2
    breaks = list(zip(string_along_saddle.tolist(), (-saddle_off_line).tolist(), strict=True))
    feet = [view.at(y, -half) for y, _ in breaks]
    told = feet[0][1] - 2.0 - ROW * (_lines(feet).count + 0.6)
    return (
        view.box((-reach, -half), (reach, half), "outline"),
        view.line((-reach - 3.0, 0.0), (reach + 3.0, 0.0), "centreline"),
        *(view.line((y - 1.6, z), (y + 1.6, z), "cut") for y, z in breaks),
        *(view.line((y, -half), (y, half), "strings") for y, _ in breaks),
        *_figures(feet, -2.0 - FIGURE, -ROW, n.saddle_off_line),
        Words(
            (0.0, told),
            "from above, nut's side up: breaks behind the middle (negative: ahead of it)",
            2.2,
            anchor="middle",
        ),
    )


def _lines(places: list[Point]) -> FigureLines:
    return figure_lines([x for x, _ in places], FIGURE_WIDE)


def _figures(places: list[Point], clear: float, step: float, figures: Ref[Any]) -> Marks:
    """A figure a string, clear of the picture, on as many lines as keep neighbours apart."""
    lines = _lines(places)
    return tuple(
        Label((x, y + clear + step * line), figures[row], lines.before(row), height=FIGURE, anchor="middle")
        for row, ((x, y), line) in enumerate(zip(places, lines.rows, strict=True), 1)
    )


def piece_saddle_sides(saddle_length: Mm, piece_saddle_share: Ratio) -> Marks:
    """Which end is which."""
    edge = saddle_length / 2 * piece_saddle_share
    return (Words((edge + 2.0, 1.0), "treble", FIGURE), Words((-edge - 2.0, 1.0), "bass", FIGURE, anchor="right"))


def drawing_setup_saddle(
    instrument_name: str,
    instrument_handed: str,
    piece_saddle_behind: Marks,
    piece_saddle_above: Marks,
    piece_saddle_sides: Marks,
    piece_saddle_share: Ratio,
) -> Drawing:
    """The saddle from behind and from above, larger than life, with a figure a string for each."""
    marks = (*piece_saddle_behind, *piece_saddle_above, *piece_saddle_sides)
    if instrument_handed == "left":
        marks = sides_changed(marks)
    return Drawing("setup-saddle", f"{instrument_name}, saddle", "the end", marks, scale=piece_saddle_share)
