"""Cards for the ends of the strings: the saddle's profile, the nut's with its slots, and both spacings.

Distances run along the nut and along the saddle, which lean on a fanned board.
Cards are seen from the bridge toward the nut at true scale, treble to the right; to the left for the left hand.
"""

from typing import Any

from gramil import names as n
from gramil.drawings.kerf import Machine, cut_by
from gramil.drawings.marks import Drawing, Label, Line, Mark, Marks, Point, Polyline, Words
from gramil.drawings.pen import figure_lines, sides_changed
from gramil.quantities import Mm, PerFret, PerString
from gramil.reference import Ref

OWNS = ("drawing_", "piece_")

ROW = 34.0
"""From one card to the next below it, in mm."""
TIER, FIGURE_WIDE = 3.8, 13.0
"""From one row of figures to the next over it, and the width of a figure with its unit, in mm."""
STRIP, NOTCH = 14.0, 6.0
"""Height of a spacing strip, and how far its marks run in from its edge, in mm."""


def piece_saddle_card(saddle_tall: PerString[Mm], string_along_saddle: PerString[Mm], saddle_length: Mm) -> Marks:
    """The saddle from in front, its top through every string's height over the bottom of the slot, straight between."""
    points = list(zip(string_along_saddle.tolist(), saddle_tall.tolist(), strict=True))
    half = saddle_length / 2
    card = ((half, points[0][1]), *points, (-half, points[-1][1]), (-half, 0.0), (half, 0.0))
    return (
        Polyline(card, "cut", closed=True),
        *_string_ticks(points),
        *_heights(points, n.saddle_tall),
        Words((0.0, -5.0), "saddle, from behind: heights over the bottom of its slot", 2.4, anchor="middle"),
    )


def _string_ticks(points: list[Point]) -> Marks:
    return tuple(Line((y, z - 1.0), (y, z - 3.0), "text") for y, z in points)


def _heights(points: list[Point], figures: Ref[Any]) -> Marks:
    """Each string's height, over its place, on as many heights as keep neighbouring figures apart."""
    top = max(z for _, z in points) + 2.5
    lines = figure_lines([y for y, _ in points], FIGURE_WIDE)
    return tuple(
        Label((y, top + TIER * line), figures[row], lines.before(row), height=2.0, anchor="middle")
        for row, ((y, _), line) in enumerate(zip(points, lines.rows, strict=True), 1)
    )


def piece_nut_card(
    nut_slot_over_crest: PerString[Mm],
    nut_slot_top: PerString[Mm],
    string_along_nut: PerString[Mm],
    board_nut_reach_treble: Mm,
    board_nut_reach_bass: Mm,
    thickness_at_crest: PerFret[Mm],
) -> Marks:
    """The nut from in front, standing on the neck: its top, and the bottom of each slot over the crest of the board."""
    foot = -float(thickness_at_crest[0])
    ys = string_along_nut.tolist()
    tops = list(zip(ys, nut_slot_top.tolist(), strict=True))
    treble, bass = board_nut_reach_treble, -board_nut_reach_bass
    outline = ((treble, foot), (treble, tops[0][1]), *tops, (bass, tops[-1][1]), (bass, foot))
    bottoms = list(zip(ys, nut_slot_over_crest.tolist(), strict=True))
    low = [(y, z - ROW) for y, z in outline]
    return (
        Polyline(tuple(low), "cut", closed=True),
        Line((bass, -ROW), (treble, -ROW), "hidden"),
        *(Line((y - 1.2, z - ROW), (y + 1.2, z - ROW), "nut") for y, z in bottoms),
        *_heights([(y, z - ROW) for y, z in tops], n.nut_slot_over_crest),
        Words((0.0, foot - ROW - 5.0), "nut, from in front: bottoms of its slots over the crest", 2.4, anchor="middle"),
    )


def piece_spacing_cards(
    string_along_nut: PerString[Mm],
    string_along_saddle: PerString[Mm],
    board_nut_reach_treble: Mm,
    board_nut_reach_bass: Mm,
    saddle_length: Mm,
    thickness_at_crest: PerFret[Mm],
) -> Marks:
    """Two strips whose marks lie under the strings' centres: at the nut, and at the saddle."""
    top = -1.3 * ROW - max(0.3 * ROW, float(thickness_at_crest[0]))
    saddle = saddle_length / 2
    nut_ends, saddle_ends = (-board_nut_reach_bass, board_nut_reach_treble), (-saddle, saddle)
    nut = _strip("nut", string_along_nut.tolist(), nut_ends, top)
    saddle_strip = _strip("saddle", string_along_saddle.tolist(), saddle_ends, top - STRIP - 4.7)
    return (*nut, *saddle_strip)


def _strip(name: str, across: list[float], ends: Point, top: float) -> Marks:
    low, high = ends
    box = ((low, top), (high, top), (high, top - STRIP), (low, top - STRIP))
    marks: list[Mark] = [Polyline(box, "cut", closed=True)]
    marks += [Line((y, top), (y, top - NOTCH), "slots") for y in across]
    marks += [Words((0.0, top - STRIP + 2.0), f"strings at the {name}, centres", 2.2, anchor="middle")]
    return tuple(marks)


def piece_string_words(
    instrument_name: str, saddle_length: Mm, saddle_tall: PerString[Mm], string_along_saddle: PerString[Mm]
) -> Marks:
    """The cards' name over the saddle's figures."""
    figures = TIER * figure_lines(string_along_saddle.tolist(), FIGURE_WIDE).count
    foot = max(22.5, float(saddle_tall.max()) + 4.0 + figures)
    return (
        Words((-saddle_length / 2, foot + 4.5), f"{instrument_name}, strings' ends", 3.5),
        Words((-saddle_length / 2, foot), "seen from the bridge toward the nut", 2.0),
    )


def piece_string_sides(saddle_length: Mm) -> Marks:
    """Which side is which."""
    treble, bass = (saddle_length / 2 + 4.0, 3.0), (-saddle_length / 2 - 4.0, 3.0)
    return (Words(treble, "treble", 2.4), Words(bass, "bass", 2.4, anchor="right"))


def drawing_string_gauges(
    instrument_name: str,
    instrument_handed: str,
    piece_laser: Machine,
    piece_string_card_marks: Marks,
    piece_string_words: Marks,
) -> Drawing:
    """Cards of saddle and nut on one sheet.

    Used at: nut_slots_filed, saddle_made.
    """
    cards = sides_changed(piece_string_card_marks) if instrument_handed == "left" else piece_string_card_marks
    title = f"{instrument_name}, cards for saddle and nut"
    return cut_by(piece_laser, Drawing("string-gauges", title, "the end", (*piece_string_words, *cards)))


def piece_string_card_marks(
    piece_saddle_card: Marks, piece_nut_card: Marks, piece_spacing_cards: Marks, piece_string_sides: Marks
) -> Marks:
    """The cards one below another, for the right hand."""
    return (*piece_string_sides, *piece_saddle_card, *piece_nut_card, *piece_spacing_cards)
