"""Two side views with heights drawn too tall: the neck's set before stringing, and the outer strings over their frets.

Lengths are drawn smaller than life so that a view fits a sheet; heights are stretched so that tenths can be seen.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from gramil import names as n
from gramil.drawings.marks import Drawing, Label, Marks, Point, Words
from gramil.drawings.pen import View, lines_of_words, upright
from gramil.quantities import Count, Mm, PerFret, PerString, PerStringFret, Radians, Ratio

OWNS = ("drawing_", "piece_")

SCALE, SET_TALL = 0.2, 15.0
"""Drawn size over true size, and how many times too tall heights are drawn in the set."""
STRUNG_TALL: Mapping[float, str] = {40.0: "forty", 25.0: "twenty-five"}
"""How many times too tall heights are drawn over the frets, and in words: the second where saddles are high."""
SAID = 2.5
"""Height of the letters in which a picture of the strings is explained, in mm: small ones make all of it large."""
SET_VIEW = View((0.0, 0.0), SCALE, SCALE * SET_TALL)
BRIDGE_BEFORE, BRIDGE_BEHIND, SADDLE_HALF = 8.0, 20.0, 1.5
"""The bridge's front and back edge from the saddle, and half a saddle's thickness, as drawn, in mm."""
TALLEST = 44.0
"""A bass string's saddle is drawn no taller, in mm on the paper, if heights can be drawn less tall instead."""
ROOM_BETWEEN = 18.0
"""Least between the treble string's plane and the top of the bass string's saddle, in mm on the paper."""
LEAST_DROP = 46.0
"""How far below the treble string's plane the bass string's lies at least, in mm on the paper."""


@dataclass(frozen=True)
class Turned:
    """The neck as it is set: `along` and `over` its crest plane, turned about the join, over the rim plane."""

    join: Mm
    board: Mm
    angle: Radians

    def at(self, along: float, over: float) -> Point:
        """The point `along` mm from the zero line and `over` the crest plane, as (x, height over the rim plane)."""
        run, cos, sin = along - self.join, math.cos(self.angle), math.sin(self.angle)
        return (self.join + run * cos - over * sin, self.board + run * sin + over * cos)


def piece_turned(back_bow_length: Mm, neck_set_board_at_join: Mm, neck_angle_target: Radians) -> Turned:
    """How the neck is turned on the body; not at all where no angle will do."""
    angle = 0.0 if math.isnan(neck_angle_target) else neck_angle_target
    return Turned(back_bow_length, neck_set_board_at_join, angle)


def piece_set_board(
    piece_turned: Turned,
    board_nut_position: Mm,
    board_tail_position: Mm,
    board_thickness: Mm,
    thickness_wedge: Mm,
) -> Marks:
    """The board from the side, along its crest."""
    nut, tail = board_nut_position, board_tail_position
    corners = ((nut, 0.0), (tail, 0.0), (tail, -board_thickness), (nut, thickness_wedge - board_thickness))
    return (SET_VIEW.shape((piece_turned.at(*corner) for corner in corners), "outline", "along the grain"),)


def piece_set_frets(piece_turned: Turned, fret_position: PerFret[Mm], crown_height: Mm, slot_first: Count) -> Marks:
    """A short upright for each fret's crown."""
    return tuple(
        SET_VIEW.line(piece_turned.at(float(x), 0.0), piece_turned.at(float(x), crown_height), "slots")
        for x in fret_position[slot_first:]
    )


def piece_set_body(back_bow_length: Mm, neck_set_run_mean: Mm, neck_set_dome_rise: Mm, top_length: Mm) -> Marks:
    """The rim plane, and the top as an even curve through its edges and its height at the saddle."""
    chord = max(top_length, neck_set_run_mean + 60.0)
    along = np.linspace(0.0, min(chord, neck_set_run_mean + 90.0), 60)
    steep = neck_set_dome_rise / (neck_set_run_mean * (chord - neck_set_run_mean))
    dome = tuple((back_bow_length + float(t), float(steep * t * (chord - t))) for t in along)
    rim = SET_VIEW.line((back_bow_length, 0.0), (dome[-1][0], 0.0), "centreline")
    return (rim, SET_VIEW.run(dome, "outline"))


def piece_set_bridge(
    piece_turned: Turned,
    neck_set_run_mean: Mm,
    neck_set_height_mean: Mm,
    neck_set_dome_rise: Mm,
    neck_set_bridge_top: Mm,
) -> Marks:
    """The bridge at the saddle, and the saddle up to the strings."""
    x, top = piece_turned.at(piece_turned.join + neck_set_run_mean, neck_set_height_mean)
    foot = (x - BRIDGE_BEFORE, neck_set_dome_rise)
    return (
        SET_VIEW.box(foot, (x + BRIDGE_BEHIND, neck_set_bridge_top), "outline", "across the grain"),
        SET_VIEW.box((x - SADDLE_HALF, neck_set_bridge_top), (x + SADDLE_HALF, top), "outline", "bone"),
    )


def piece_set_lines(
    piece_turned: Turned,
    crown_height: Mm,
    neck_set_run_mean: Mm,
    neck_set_height_mean: Mm,
    nut_slot_over_crest: PerString[Mm],
) -> Marks:
    """The mean string before stringing, and a straightedge on the frets."""
    saddle = piece_turned.join + neck_set_run_mean
    string = (piece_turned.at(0.0, float(nut_slot_over_crest.mean())), piece_turned.at(saddle, neck_set_height_mean))
    edge = (piece_turned.at(0.0, crown_height), piece_turned.at(saddle + BRIDGE_BEHIND, crown_height))
    return (SET_VIEW.line(*string, "strings"), SET_VIEW.line(*edge, "hidden"))


def _dome(x: Mm, rise: Mm) -> Marks:
    """How high the top's dome is; a flat top has none."""
    if not rise:
        return ()
    low, high = SET_VIEW.at(x, 0.0), SET_VIEW.at(x, rise)
    return upright(low, high, n.neck_set_dome_rise, "dome ", middle=low[1] - 3.0)


def piece_set_figures(
    piece_turned: Turned,
    crown_height: Mm,
    neck_set_run_mean: Mm,
    neck_set_bridge_top: Mm,
    neck_set_dome_rise: Mm,
    neck_set_height_mean: Mm,
) -> Marks:
    """The figures: straightedge over the bridge, saddle, bridge, dome, board at the join, angle and wedge."""
    turned, saddle = piece_turned, piece_turned.join + neck_set_run_mean
    x, top = turned.at(saddle, neck_set_height_mean)
    edge = turned.at(saddle, crown_height)[1]
    behind = x + BRIDGE_BEHIND + 6.0
    join = SET_VIEW.at(turned.join, 0.0)
    bridge = SET_VIEW.at(behind, (neck_set_bridge_top + neck_set_dome_rise) / 2)[1]
    over, shown = SET_VIEW.at(behind, edge)[1] + 3.0, SET_VIEW.at(x, top)[1] + 2.0
    return (
        *upright(
            SET_VIEW.at(behind, neck_set_bridge_top),
            SET_VIEW.at(behind, edge),
            n.neck_set_straightedge,
            "straightedge over the bridge ",
            middle=over,
        ),
        *upright(
            SET_VIEW.at(behind, neck_set_dome_rise),
            SET_VIEW.at(behind, neck_set_bridge_top),
            n.bridge_thickness,
            "bridge ",
            middle=bridge,
        ),
        *_dome(behind, neck_set_dome_rise),
        Label((SET_VIEW.at(x - 6.0, 0.0)[0], shown), n.saddle_exposed, "saddle shows ", height=2.5, anchor="right"),
        *upright(
            join,
            SET_VIEW.at(turned.join, turned.board),
            n.neck_set_board_at_join,
            "board at the join ",
            middle=join[1] - 4.0,
        ),
        Label((join[0] + 1.8, join[1] - 10.2), n.neck_angle_target, "neck angle ", height=2.5),
        Label((join[0] + 1.8, join[1] - 15.2), n.heel_wedge, "wedge at the heel's cap ", height=2.5),
        *lines_of_words(
            (join[0] + 1.8, join[1] - 21.0),
            "Before stringing, neck straight; heights drawn fifteen times too tall.",
            "Dashed: a straightedge on the dressed frets.",
            "Thin: the mean of the strings' places. Chain: the plane of the top's rim.",
        ),
    )


def drawing_neck_set(
    instrument_name: str,
    piece_set_board: Marks,
    piece_set_frets: Marks,
    piece_set_body: Marks,
    piece_set_bridge: Marks,
    piece_set_lines: Marks,
    piece_set_figures: Marks,
) -> Drawing:
    """The neck's set before stringing, from the side: rim plane level, head to the left.

    Used at: neck_fitted, neck_set, body_built_on.
    """
    marks = (*piece_set_body, *piece_set_board, *piece_set_frets, *piece_set_bridge, *piece_set_lines)
    title = f"{instrument_name}, neck set"
    return Drawing("neck-set", title, "the side", (*marks, *piece_set_figures), SET_TALL, SCALE)


@dataclass(frozen=True)
class Strung:
    """One outer string over its frets: places along the board, tops of crowns, and the string from nut to saddle."""

    name: str
    number: int
    fret_x: tuple[Mm, ...]
    tops: tuple[Mm, ...]
    nut: Point
    saddle: Point


def piece_strung(
    string_x: PerStringFret[Mm],
    crown_top: PerStringFret[Mm],
    height_at_zero: PerString[Mm],
    height_saddle_x: PerString[Mm],
    height_at_saddle: PerString[Mm],
) -> tuple[Strung, Strung]:
    """The two outer strings, treble first."""

    def one(name: str, row: int) -> Strung:
        x = tuple(float(each) for each in string_x[row])
        number = row % len(string_x) + 1
        nut, saddle = float(height_at_zero[row]), float(height_at_saddle[row])
        return Strung(
            name, number, x, tuple(map(float, crown_top[row])), (x[0], nut), (float(height_saddle_x[row]), saddle)
        )

    return one("treble", 0), one("bass", -1)


def piece_strung_tall(piece_strung: tuple[Strung, Strung]) -> float:
    """How many times too tall the strings' heights are drawn: as tall as leaves the bass string's picture its room."""
    room = TALLEST / (SCALE * piece_strung[1].saddle[1])
    return next((tall for tall in STRUNG_TALL if tall <= room), min(STRUNG_TALL))


def piece_strung_lines(
    piece_strung: tuple[Strung, Strung],
    piece_strung_drop: Mm,
    piece_strung_tall: float,
    crown_height: Mm,
    slot_first: Count,
    scale_join: Ratio,
) -> Marks:
    """For each outer string its crowns, the board under it, the string, and the crowns' chord from nut to join."""
    marks: Marks = ()
    for row, strung in enumerate(piece_strung):
        view = _panel(row, piece_strung_drop, piece_strung_tall)
        face = tuple((x, top - crown_height) for x, top in zip(strung.fret_x, strung.tops, strict=True))
        crowns = tuple(view.line((x, z), (x, z + crown_height), "slots") for x, z in face[slot_first:])
        chord = (strung.fret_x[0], strung.tops[0]), _chord_end(strung, scale_join)
        saddle = view.line((strung.saddle[0], 0.0), strung.saddle, "outline")
        plane = view.line((strung.fret_x[0], 0.0), (strung.saddle[0], 0.0), "centreline")
        marks += (plane, view.run(face, "outline"), *crowns, view.line(*chord, "hidden"))
        marks += (view.line(strung.nut, strung.saddle, "strings"), saddle)
    return marks


def piece_strung_drop(piece_strung: tuple[Strung, Strung], piece_strung_tall: float) -> Mm:
    """How far below the treble string's picture the bass string's lies: clear of it, however high its saddle is."""
    return max(LEAST_DROP, SCALE * piece_strung_tall * piece_strung[1].saddle[1] + ROOM_BETWEEN)


def _panel(row: int, drop: Mm, tall: float) -> View:
    return View((0.0, -row * drop), SCALE, SCALE * tall)


def _chord_end(strung: Strung, join: float) -> Point:
    """Where the line through the crowns at nut and join passes under the saddle."""
    frets: Sequence[int] = range(len(strung.fret_x))
    x, z = (float(np.interp(join, frets, each)) for each in (strung.fret_x, strung.tops))
    slope = (z - strung.tops[0]) / (x - strung.fret_x[0])
    return (strung.saddle[0], strung.tops[0] + slope * (strung.saddle[0] - strung.fret_x[0]))


def piece_strung_figures(
    piece_strung: tuple[Strung, Strung],
    piece_strung_drop: Mm,
    piece_strung_tall: float,
    action_fret: Count,
    scale_join: Ratio,
) -> Marks:
    """Heights over fret 1, fret 12 and at the saddle, for each outer string."""
    marks: Marks = ()
    for row, strung in enumerate(piece_strung):
        view = _panel(row, piece_strung_drop, piece_strung_tall)
        marks += _strung_figures(strung, view, action_fret, _chord_end(strung, scale_join))
    return marks


def _strung_figures(strung: Strung, view: View, action_fret: int, chord: Point) -> Marks:
    def over(fret: int) -> tuple[Point, Point]:
        x, (x0, z0), (x1, z1) = strung.fret_x[fret], strung.nut, strung.saddle
        return view.at(x, strung.tops[fret]), view.at(x, z0 + (z1 - z0) * (x - x0) / (x1 - x0))

    string = strung.number
    first, twelfth = over(1), over(action_fret)
    beyond, low = view.at(strung.saddle[0] + 6.0, strung.saddle[1]), view.at(strung.saddle[0] + 6.0, 0.0)
    on_chord = view.at(*chord)
    return (
        Words((view.at(0.0, 0.0)[0], twelfth[1][1] + 11.0), f"{strung.name} string", 3.0),
        *upright(*first, n.height_over_crown[string, 1], "first fret ", middle=view.at(0.0, 0.0)[1] - 9.0),
        *upright(*twelfth, n.height_over_crown[string, action_fret], "action ", "left", middle=twelfth[1][1] + 5.0),
        *upright(low, beyond, n.height_at_saddle[string], "over the crest plane "),
        *upright(on_chord, view.at(*strung.saddle), n.height_over_chord[string], "over its crowns ", "left"),
    )


def drawing_heights(
    instrument_name: str,
    piece_strung: tuple[Strung, Strung],
    piece_strung_lines: Marks,
    piece_strung_figures: Marks,
    piece_strung_drop: Mm,
    piece_strung_tall: float,
) -> Drawing:
    """The outer strings over their frets, strung, with the relief in.

    Used at: neck_set, relief_set, action_set, neck_glued_again, relief_set_again, action_set_again.
    """
    x, foot = 0.0, -piece_strung_drop - 18.0
    beside = SCALE * max(strung.saddle[0] for strung in piece_strung) + 7.8
    words = (
        *lines_of_words(
            (x, foot),
            f"Strung, relief in; heights drawn {STRUNG_TALL[piece_strung_tall]} times too tall.",
            "Dashed: the line through each string's own crowns at nut and join.",
            "Chain: the crest plane over the body.",
            height=SAID,
        ),
        Label((beside, foot), n.heights_relief, "relief ", height=SAID),
        Label((beside, foot - 6.0), n.crown_height, "crowns ", height=SAID),
    )
    marks = (*piece_strung_lines, *piece_strung_figures, *words)
    return Drawing(
        "heights", f"{instrument_name}, heights of the outer strings", "the side", marks, piece_strung_tall, SCALE
    )
