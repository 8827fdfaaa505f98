"""The neck and board cut across anywhere along them: what stands in the cut, and the cut as a drawing.

The cut lies along the frets: square to the centreline on a square board, slanted as the frets beside it on a fanned
one, so that at a fret it runs through the slot. Between frets every figure is read straight from one to the next.
"""

from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from gramil import names as n
from gramil.address import parse_address
from gramil.drawings.marks import Anchor, Circle, Drawing, Label, Line, Mark, Marks, Point, Polyline, Span
from gramil.drawings.pen import RUN_STEPS, Hatch, Side, leaning
from gramil.graph import Figures
from gramil.quantities import Mm, PerFret, Ratio, axes_of
from gramil.reference import Ref, Rows
from gramil.shapes.crown import Crown
from gramil.shapes.profile import Profile

BETWEEN = "@"
"""Ends an address that is read where the cut is, between frets: `thickness_at_crest@`, `string_y[2]@`."""
ON_FRET = 0.005
"""A cut nearer to a fret than this, in mm, runs along it."""
ROUND_STEPS = 48
BAR_APART = 5.0
"""Wood between a bar and the rod or the next bar, as drawn, in mm."""
FIGURE, TICK = 2.0, 0.5
"""Height of a figure on this drawing, and half an oblique tick, in mm."""
WIDTH_OVER, EDGE_OUT = 5.0, 2.0
"""How far over the strings the width stands, and how far out the edges' thickness, in mm."""
CREST_AT, SLOT_AT = 0.62, 0.2
"""Where crest and slot are measured, as parts of half the width."""


@dataclass(frozen=True)
class Cut:
    """Where the cut crosses the centreline, how it slants, and the fret that it runs along (None between frets)."""

    x: Mm
    slant: Ratio
    fret: int | None

    def of(self, figure: Rows, string: int | None = None) -> Ref[Any]:
        """A per-fret figure (of a string, where one is named) at this cut."""
        if self.fret is not None:
            return figure[self.fret] if string is None else figure[string, self.fret]
        return Ref(f"{figure if string is None else figure[string]}{BETWEEN}")


def cut_at(figures: Figures, x: Mm) -> Cut:
    """The cut through x on the centreline, in mm from the zero line; at that line if the place is not known."""
    if np.isnan(x):
        return Cut(0.0, 0.0, 0)
    position = figures[n.fret_position]
    nearest = int(np.abs(position - x).argmin())
    if abs(position[nearest] - x) <= ON_FRET:
        return Cut(float(position[nearest]), float(figures[n.fret_slant][nearest]), nearest)
    return Cut(x, straight(position, figures[n.fret_slant], x), None)


def straight(position: PerFret[Mm], values: PerFret[float], x: Mm) -> float:
    """A per-fret figure at x: on the straight line between the frets beside it, or past the ends drawn on.

    What is alike at both frets, such as a flat board's infinite radius, is the same between them.
    """
    row = int(np.clip(np.searchsorted(position, x) - 1, 0, len(position) - 2))
    if values[row] == values[row + 1]:
        return float(values[row])
    share = (x - position[row]) / (position[row + 1] - position[row])
    return float(values[row] + share * (values[row + 1] - values[row]))


def value_at(figures: Figures, figure: Ref[Any] | str, cut: Cut) -> float:
    """One figure; one whose address ends in `@` is read at the cut. Raises KeyError if there is none."""
    address = str(figure)
    if not address.endswith(BETWEEN):
        return float(figures.at(address))
    plain = address.removesuffix(BETWEEN)
    name, steps = parse_address(plain)
    axes = axes_of(figures.graph.annotation(name))
    if axes not in (("fret",), ("string", "fret")) or len(steps) != len(axes) - 1:
        raise KeyError(address)
    values = figures[name][int(str(steps[0])) - 1] if steps else figures[name]
    return straight(figures[n.fret_position], values, cut.x)


def over_board(figures: Figures, cut: Cut) -> bool:
    """Whether there is board at the cut, on the centreline."""
    return bool(figures[n.board_nut_position] <= cut.x <= figures[n.board_tail_position])


@dataclass(frozen=True)
class _Board:
    """The board in the cut, crest at z = 0: edges and core from bass (negative y) to treble.

    Its face rises by `slope` a mm toward the treble, where it is not equally thick.
    """

    edges: tuple[Mm, Mm]
    core: tuple[Mm, Mm]
    crest: Mm
    surface: Crown
    cut: Cut
    slope: Ratio

    def face(self, low: Mm, high: Mm) -> tuple[Point, ...]:
        """The face from y = low to high as points (y, z)."""
        across = np.linspace(low, high, RUN_STEPS + 1)
        fall = self.surface.fall(self.cut.x + self.cut.slant * across, across)
        return leaning(((float(y), -float(z)) for y, z in zip(across, fall, strict=True)), self.slope)


def _board(figures: Figures, cut: Cut) -> _Board:
    def at(figure: Rows) -> float:
        return value_at(figures, cut.of(figure), cut)

    return _Board(
        (at(n.edge_y_bass), at(n.edge_y_treble)),
        (at(n.core_y_bass), at(n.core_y_treble)),
        at(n.thickness_at_crest),
        figures[n.arch_surface],
        cut,
        at(n.lean_at_edge_treble) / at(n.edge_y_treble),
    )


def section_marks(figures: Figures, cut: Cut) -> Marks:
    """What is cut through, without a figure on it: board, slot, binding, neck, rod, strings; treble at +y."""
    marks: Marks = strings_over(figures, cut)
    if not over_board(figures, cut):
        return marks
    board = _board(figures, cut)
    return (*_neck(figures, board), *_wood(figures, board), *marks)


def _wood(figures: Figures, board: _Board) -> Marks:
    slotted = board.cut.fret is not None and board.cut.fret >= figures[n.slot_first]
    top = _slot_bottom(figures, board) if slotted else board.face(*board.core)
    low = -board.crest
    wood = (*top, (board.core[1], low), (board.core[0], low))
    marks: Marks = (Polyline(wood, "outline", closed=True, hatch="across the grain"),)
    for inner, outer in zip(board.core, board.edges, strict=True):
        if abs(outer - inner) > ON_FRET:
            shape = (*board.face(inner, outer), (outer, low), (inner, low))
            marks += (Polyline(shape, "outline", closed=True, hatch="bone"),)
    return (*marks, *_wire(figures, board, top)) if slotted else marks


def _slot_bottom(figures: Figures, board: _Board) -> tuple[Point, ...]:
    depth = float(figures[n.slot_kerf_at_crest])
    if figures[n.slots_bottom] == "straight":
        return leaning(((board.core[0], -depth), (board.core[1], -depth)), board.slope)
    return tuple((y, z - depth) for y, z in board.face(*board.core))


def _wire(figures: Figures, board: _Board, bottom: tuple[Point, ...]) -> Marks:
    """The slot's ends, the face over it, and the wire's crown over all."""
    face, whole = board.face(*board.core), board.face(*board.edges)
    crown = (*whole, *((y, z + float(figures[n.crown_height])) for y, z in reversed(whole)))
    ends = (Line(face[0], bottom[0], "slots"), Line(face[-1], bottom[-1], "slots"))
    return (*ends, Polyline(face, "slots"), Polyline(crown, "hidden", closed=True))


def _neck(figures: Figures, board: _Board) -> Marks:
    """The carved neck with the rod's channel and the bars in it; none over the body."""
    if board.cut.x > figures[n.back_bow_length]:
        return ()
    back = _heel(figures, board) if board.cut.x > figures[n.carve_heel_start] else _carved(figures, board)
    return (*back, *_bars(figures, board), *_channel(figures, board))


def _carved(figures: Figures, board: _Board) -> Marks:
    """The back as it is carved there, as wide as the board in the cut: a slanted cut is wider than a square one."""
    profile = figures[n.carve_form].at(board.cut.x)
    middle, half = sum(board.edges) / 2, (board.edges[1] - board.edges[0]) / 2
    wider, back = half / profile.half_width, profile.points(ROUND_STEPS + 1)
    return (Polyline(tuple((float(middle + wider * y), float(-board.crest - z)) for y, z in back), "outline"),)


def _heel(figures: Figures, board: _Board) -> Marks:
    """The heel, as deep as its line in side view. Its flanks are not described: they are drawn dashed, straight from
    the board's edges to the cap's width, and round into the back by the neck's own curve.
    """
    along, down = zip(*figures[n.carve_heel_curve].points, strict=True)
    depth, middle = -float(np.interp(board.cut.x, along, down)), sum(board.edges) / 2
    capped = board.cut.x >= figures[n.carve_heel_cap_start]
    half, cap, deepest = (
        middle - board.edges[0],
        float(figures[n.carve_heel_width]) / 2,
        float(figures[n.neck_heel_depth]),
    )
    rounded = replace(figures[n.carve_form].at(figures[n.carve_heel_start]), half_width=1.0, depth=1.0)
    share = np.linspace(0.0, 1.0, ROUND_STEPS + 1)
    flank = half + (cap - half) * share * depth / deepest
    across = flank if capped else flank * _half_width(rounded, share)
    side = tuple((float(y), -board.crest - float(part) * depth) for y, part in zip(across, share, strict=True))
    return (Polyline((*((middle - y, z) for y, z in side), *((middle + y, z) for y, z in reversed(side))), "core"),)


def _half_width(profile: Profile, share: np.ndarray) -> np.ndarray:
    """How wide a profile of half-width and depth 1 is at shares of its depth."""
    curve = profile.points(401)[200:]
    return np.asarray(np.interp(share, curve[::-1, 1], curve[::-1, 0]))


def _channel(figures: Figures, board: _Board) -> Marks:
    """The truss rod's channel, where it runs."""
    if figures[n.neck_rod] == "none" or not figures[n.rod_start] <= board.cut.x <= figures[n.rod_end]:
        return ()
    return (_slot_under(board, 0.0, float(figures[n.neck_rod_width]), float(figures[n.neck_rod_depth]), "outline"),)


def _bars(figures: Figures, board: _Board) -> Marks:
    """Stiff bars under the board. Their places are not described: they are drawn dashed, even beside the middle."""
    count, width = int(figures[n.neck_bars]), float(figures[n.neck_bar_width])
    rod = float(figures[n.neck_rod_width]) if figures[n.neck_rod] != "none" else 0.0
    marks: Marks = ()
    for number in range(count):
        pair, side = divmod(number, 2)
        aside = rod / 2 + BAR_APART + width / 2 + pair * (width + BAR_APART)
        y = 0.0 if count == 1 and not rod else aside if side else -aside
        marks += (_slot_under(board, y, width, float(figures[n.neck_bar_depth]), "core", "metal"),)
    return marks


def _slot_under(board: _Board, y: Mm, width: Mm, depth: Mm, layer: str, hatch: Hatch = "void") -> Polyline:
    """A box let into the neck from the joint down."""
    low, high, half = -board.crest - depth, -board.crest, width / 2
    return Polyline(
        ((y - half, low), (y + half, low), (y + half, high), (y - half, high)), layer, closed=True, hatch=hatch
    )


def strings_over(figures: Figures, cut: Cut) -> Marks:
    """The strings in the cut, each a circle as thick as it is, strung: over the crest there, or the crest plane.

    Behind the saddle they go down to what holds them, and are left out.
    """
    rows = zip(string_places(figures, cut), figures[n.strings_gauges], figures[n.saddle_break_x], strict=True)
    return tuple(
        Circle((y, z + float(d) / 2), float(d) / 2, "strings") for (y, z), d, end in rows if cut.x <= end + ON_FRET
    )


def string_places(figures: Figures, cut: Cut) -> tuple[Point, ...]:
    """Each string's underside in the cut, treble first: y across, z over the crest."""
    return tuple(_string_place(figures, cut, string) for string in range(1, int(figures[n.strings_count]) + 1))


def _string_place(figures: Figures, cut: Cut, string: int) -> Point:
    def at(figure: Rows) -> float:
        return value_at(figures, cut.of(figure, string), cut)

    face = at(n.lean_under_string) - at(n.arch_fall_under_string)
    return at(n.string_y), at(n.height_over_crown) + float(figures[n.crown_height]) + face


def section_drawing(figures: Figures, cut: Cut) -> Drawing:
    """The cut as a drawing, seen from the tail: treble to the right, to the left on a left-handed instrument.

    Labels hold references; those that end in `@` are read with `value_at`.
    """
    where = f"at fret {cut.fret}" if cut.fret is not None else "between frets"
    title = f"{figures[n.instrument_name]}, cut across {where}"
    left = figures[n.instrument_handed] == "left"
    marks = turned_over(section_marks(figures, cut)) if left else section_marks(figures, cut)
    sizes = _sizes(figures, cut, left) if over_board(figures, cut) else ()
    return Drawing("section-at", title, "the end", (*marks, *sizes))


def turned_over(marks: Marks) -> Marks:
    """The same with left for right, as a section of a left-handed instrument is."""
    return tuple(_turned_over(mark) for mark in marks)


def _turned_over(mark: Mark) -> Mark:
    match mark:
        case Line():
            return replace(mark, start=_across(mark.start), end=_across(mark.end))
        case Polyline():
            return replace(mark, points=tuple(map(_across, mark.points)))
        case Circle():
            return replace(mark, centre=_across(mark.centre))
        case _:
            raise TypeError(f"a section has no {type(mark).__name__}")


def _across(point: Point) -> Point:
    return (-point[0], point[1])


def _sizes(figures: Figures, cut: Cut, left: bool) -> Marks:
    """Width over all, edges, crest, and at a slot its depth and what is left under it."""
    board = _board(figures, cut)
    bass, treble = ((-y if left else y) for y in board.edges)
    low, width = -board.crest, cut.of(n.board_width_at_fret)
    top = max(z for _, z in string_places(figures, cut)) + WIDTH_OVER
    ends = (min(bass, treble), max(bass, treble))
    marks: Marks = (Span((ends[0], top), (ends[1], top), 0.0, width, FIGURE),)
    for end, figure, y in ((0, n.thickness_at_edge_bass, bass), (-1, n.thickness_at_edge_treble, treble)):
        face = board.face(*board.edges)[end][1]
        side, out = _side(y)
        marks += measured_up((y + out, low), (y + out, face), cut.of(figure), side)
    marks += measured_up((ends[0] * CREST_AT, low), (ends[0] * CREST_AT, 0.0), cut.of(n.thickness_at_crest), "right")
    if cut.fret is not None and cut.fret >= figures[n.slot_first]:
        depth, y = float(figures[n.slot_kerf_at_crest]), ends[1] * SLOT_AT
        marks += measured_up((y, -depth), (y, 0.0), n.slot_kerf_at_crest, "right")
        marks += measured_up((y, low), (y, -depth), cut.of(n.slot_left_at_crest), "right")
    return marks


def _side(y: Mm) -> tuple[Side, Mm]:
    return ("right", EDGE_OUT) if y > 0 else ("left", -EDGE_OUT)


def measured_up(low: Point, high: Point, address: Ref[Any], side: Side, figure: Mm = FIGURE) -> Marks:
    """A dimension up and down with its figure level beside it, in the small hand of this drawing."""
    out, tick = (1.0 if side == "right" else -1.0), TICK * figure / FIGURE
    ticks = tuple(Line((x - tick, y - tick), (x + tick, y + tick), "dimensions") for x, y in (low, high))
    at = (low[0] + 0.6 * figure * out, (low[1] + high[1]) / 2 - figure / 2)
    anchor: Anchor = "left" if side == "right" else "right"
    return (Line(low, high, "dimensions"), *ticks, Label(at, address, height=figure, anchor=anchor))
