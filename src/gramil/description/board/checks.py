"""What no board can be: frets that cross, a station beside it, an arch tighter than it is wide, no wood left."""

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from gramil.description.board.scala_scale import ScalaScale
from gramil.description.board.tables import Binding, Board, Markers, Nut, Scale
from gramil.description.problems import Problem
from gramil.description.strings.tables import Bridge, Strings

NARROWEST_GAP = 2.0
"""Frets nearer than this, in mm, leave no room for any wire: crowns are about 2 mm wide."""

SQUARE_AT = 7.0
"""The fret that stays square on a fanned board when none is given: common practice."""


def lengths_of(scale: Scale) -> tuple[float, float]:
    """Bass and treble scale lengths in mm; equal for a single scale."""
    if scale.length is not None:
        return scale.length, scale.length
    return scale.bass or 0.0, scale.treble or 0.0


def square_at(scale: Scale) -> float:
    """The fret that is square to the centreline: 0 on a single scale; 7 (common practice) on a fanned one."""
    if scale.square_at is not None:
        return scale.square_at
    return min(SQUARE_AT, float(scale.frets)) if scale.fanned else 0.0


def share_at(fret: float, tuning: ScalaScale) -> float:
    """The share of the scale length from the zero line to a fret, interpolated in cents between frets."""
    below = math.floor(fret)
    cents = tuning.at(below)
    cents += (fret - below) * (tuning.at(below + 1) - cents)
    return float(1.0 - 2.0 ** (-cents / 1200.0))


def _middle(scale: Scale, fret: float, tuning: ScalaScale) -> float:
    """About where a fret crosses the centreline; exact for a single scale."""
    return sum(lengths_of(scale)) / 2 * share_at(fret, tuning)


def _end(scale: Scale, board: Board, tuning: ScalaScale) -> float:
    return _middle(scale, scale.frets, tuning) + board.beyond_last_fret


def _station(scale: Scale, board: Board, tuning: ScalaScale) -> float:
    return _middle(scale, board.width_at.fret, tuning) + board.width_at.beyond


def _width_at(x: float, scale: Scale, nut: Nut, board: Board, tuning: ScalaScale) -> float:
    return nut.width + (board.width - nut.width) * x / _station(scale, board, tuning)


def _station_is_on_board(scale: Scale, board: Board, tuning: ScalaScale) -> bool:
    return board.width_at.fret <= scale.frets and 1.0 <= _station(scale, board, tuning) <= _end(scale, board, tuning)


def frets_in_order(scale: Scale) -> Iterator[Problem]:
    """The join and the square fret lie on the board."""
    for key, value in (("join", scale.join), ("square_at", scale.square_at)):
        if value is not None and value > scale.frets:
            yield Problem(("scale", key), f"read {value:g}", f"at most the last fret, {scale.frets}")


def scales_alike(scale: Scale) -> Iterator[Problem]:
    """Outer scales may differ, but one more than half as long again as the other is a slip of the pen."""
    bass, treble = lengths_of(scale)
    if not 2 / 3 <= treble / bass <= 1.5:
        what = f"read {treble:g} mm, with bass {bass:g} mm"
        yield Problem(("scale", "treble"), what, "the two are within half again of each other")


def frets_apart(scale: Scale, tuning: ScalaScale) -> Iterator[Problem]:
    """There is room between frets for the wire."""
    shortest = min(lengths_of(scale))
    for fret in range(scale.frets):
        gap = shortest * (share_at(fret + 1, tuning) - share_at(fret, tuning))
        if gap < NARROWEST_GAP:
            what = f"frets {fret} and {fret + 1} would stand {gap:.2f} mm apart"
            yield Problem(("scale", "frets"), what, "fewer frets, or a longer scale: wire needs some 2 mm")
            return


def fan_fits(scale: Scale, nut: Nut, board: Board, bridge: Bridge, tuning: ScalaScale) -> Iterator[Problem]:
    """Fanned frets keep their order out to the edges; the tail end runs alongside the last one."""
    if not scale.fanned or not _station_is_on_board(scale, board, tuning):
        return
    lines = [_ends(scale, nut, board, bridge, tuning, fret) for fret in range(scale.frets + 1)]
    for fret, (one, other) in enumerate(pairwise(lines)):
        if min(other[0] - one[0], other[1] - one[1]) <= 0:
            yield Problem(("scale", "treble"), f"frets {fret} and {fret + 1} would cross on the board", "a smaller fan")
            return


def _ends(scale: Scale, nut: Nut, board: Board, bridge: Bridge, tuning: ScalaScale, fret: int) -> tuple[float, float]:
    """Where a fanned fret's line meets the bass and the treble edge, in mm along x from the zero line."""
    bass, treble = _along(scale, nut, bridge)
    share = share_at(fret, tuning)
    lean = (bass - treble) / 2 * (share - share_at(square_at(scale), tuning))
    spread = nut.spread + (bridge.spread - nut.spread) * share
    middle = (bass + treble) / 2 * share
    half, taper = _width_at(middle, scale, nut, board, tuning) / 2, _taper(scale, nut, board, tuning)
    slope = lean / (spread / 2)
    return middle + slope * _reach(half, taper * slope), middle - slope * _reach(half, -taper * slope)


def _along(scale: Scale, nut: Nut, bridge: Bridge) -> tuple[float, float]:
    """Bass and treble scale measured along the centreline: they are given along the strings, which spread."""
    squared = ((bridge.spread - nut.spread) / 2) ** 2
    bass, treble = lengths_of(scale)
    return math.sqrt(max(0.0, bass * bass - squared)), math.sqrt(max(0.0, treble * treble - squared))


def _taper(scale: Scale, nut: Nut, board: Board, tuning: ScalaScale) -> float:
    return (board.width - nut.width) / 2 / _station(scale, board, tuning)


def _reach(half: float, closing: float) -> float:
    """How far out a slanted line meets an edge that is `half` away and runs outward by `closing` for each mm across."""
    return half / (1.0 - closing) if closing < 1.0 else math.inf


def marker_frets(scale: Scale, markers: Markers) -> Iterator[Problem]:
    """Markers stand between frets that exist, and doubles are markers."""
    for key in ("frets", "double"):
        for row, fret in enumerate(getattr(markers, key) or ()):
            if not 1 <= fret <= scale.frets:
                yield Problem(("markers", key, row), f"read {fret}", f"a fret, 1 to {scale.frets}")
            elif key == "double" and markers.frets is not None and fret not in markers.frets:
                yield Problem(("markers", key, row), f"read {fret}", "one of the frets that carry a marker")
        frets = getattr(markers, key) or ()
        if len(set(frets)) < len(frets):
            yield Problem(("markers", key), "the same fret twice", "each fret once")


def strings_on_nut(nut: Nut) -> Iterator[Problem]:
    """The strings' spread is inside the board at the nut."""
    if nut.spread >= nut.width:
        allowed = f"less than the board's width there, {nut.width:g} mm"
        yield Problem(("nut", "spread"), f"read {nut.spread:g} mm", allowed)


def strings_have_room(nut: Nut, strings: Strings) -> Iterator[Problem]:
    """Side by side, the strings fit into their spread."""
    if sum(strings.gauges) - (strings.gauges[0] + strings.gauges[-1]) / 2 >= nut.spread:
        what = f"the strings are thicker together than their spread, {nut.spread:g} mm"
        yield Problem(("nut", "spread"), what, "a wider spread, fewer or thinner strings")


def station_on_board(scale: Scale, board: Board, tuning: ScalaScale) -> Iterator[Problem]:
    """The station where the width is given lies on the board, past the zero line."""
    if not _station_is_on_board(scale, board, tuning):
        end = _end(scale, board, tuning)
        what = f"its station is {_station(scale, board, tuning):.1f} mm from the zero line"
        if board.width_at.fret > scale.frets:
            what = f"there is no fret {board.width_at.fret:g}"
        allowed = f"a place on the board: 1 to {end:.1f} mm, frets up to {scale.frets}"
        yield Problem(("board", "width_at"), what, allowed)


def board_ends_before_saddle(scale: Scale, board: Board, tuning: ScalaScale) -> Iterator[Problem]:
    """The board ends before the saddle."""
    end, shortest = _end(scale, board, tuning), min(lengths_of(scale))
    if end >= shortest:
        what = f"the board would end {end:.1f} mm from the zero line"
        yield Problem(("board", "beyond_last_fret"), what, f"before the saddle, at {shortest:.1f} mm")


def board_widths(scale: Scale, nut: Nut, bridge: Bridge, board: Board, tuning: ScalaScale) -> Iterator[Problem]:
    """With its sides extended to the tail the board still has a width, and the strings stay on it."""
    if not _station_is_on_board(scale, board, tuning):
        return
    end = _end(scale, board, tuning)
    width = _width_at(end, scale, nut, board, tuning)
    if not 0 < width <= 300:
        yield Problem(("board", "width"), f"the sides would be {width:.1f} mm apart at the tail", "0 to 300 mm there")
        return
    last = _middle(scale, scale.frets, tuning)
    spread = nut.spread + (bridge.spread - nut.spread) * share_at(scale.frets, tuning)
    width = _width_at(last, scale, nut, board, tuning)
    if spread >= width and nut.spread < nut.width:
        what = f"at the last fret the strings would spread {spread:.2f} mm on a board {width:.2f} mm wide"
        yield Problem(("bridge", "spread"), what, "a narrower spread, or a wider board")


def set_forward_before_fret_1(scale: Scale, nut: Nut, tuning: ScalaScale) -> Iterator[Problem]:
    """The nut stays behind the first fret; with a zero fret there is nothing for it to correct."""
    first = min(lengths_of(scale)) * share_at(1, tuning)
    if nut.set_forward >= first:
        yield Problem(("nut", "set_forward"), f"read {nut.set_forward:g} mm", f"less than to fret 1, {first:.2f} mm")
    elif nut.set_forward and scale.zero_fret:
        what = f"read {nut.set_forward:g} mm, with a zero fret"
        yield Problem(("nut", "set_forward"), what, "0: with a zero fret the nut only spaces the strings")


def arch_of_one_kind(board: Board) -> Iterator[Problem]:
    """Both ends are flat, or neither: a radius that grows to infinity cannot change in a straight line."""
    if math.isinf(board.arch.nut) != math.isinf(board.arch.end):
        yield Problem(("board", "arch"), "one end is flat and the other is not", "both flat, or a radius at each end")


def edges_of_the_board(board: Board) -> Iterator[Problem]:
    """A board of uneven thickness has its middle at the tail end from `thickness`, and so one edge there."""
    if board.edge_tail_treble is not None and board.edge_tail_bass is not None:
        what = "both edges of the tail end, beside the thickness of its middle"
        yield Problem(("board", "edge_tail_bass"), what, "one of them: the other follows from `thickness`")
    edges = (board.edge_nut_treble, board.edge_nut_bass, board.edge_tail_treble, board.edge_tail_bass)
    if board.level_underside and any(each is not None for each in edges):
        what = "a levelled underside makes all edges equally thick"
        yield Problem(("board", "level_underside"), what, "false, or no thickness of an edge")


def arch_holds_nut(nut: Nut, board: Board) -> Iterator[Problem]:
    """The radius at the nut spans the board's width there and leaves an edge."""
    yield from _arch(board.arch.nut, nut.width, board, "nut")


def arch_holds_end(scale: Scale, nut: Nut, board: Board, tuning: ScalaScale) -> Iterator[Problem]:
    """The radius at the tail spans the board's width there and leaves an edge."""
    if _station_is_on_board(scale, board, tuning):
        width = _width_at(_end(scale, board, tuning), scale, nut, board, tuning)
        if width > 0:
            yield from _arch(board.arch.end, width, board, "end")


def _arch(radius: float, width: float, board: Board, key: str) -> Iterator[Problem]:
    half = width / 2
    if radius <= half:
        what = f"read a radius of {radius:g} mm"
        yield Problem(("board", "arch", key), what, f"more than half the board's width there, {half:.2f} mm")
    elif math.isfinite(radius) and radius - math.sqrt(radius * radius - half * half) >= board.thickness:
        fall = radius - math.sqrt(radius * radius - half * half)
        what = f"the arch falls {fall:.2f} mm at the edge of a board {board.thickness:g} mm thick"
        yield Problem(("board", "arch", key), what, "a larger radius, or a thicker board")


def binding_leaves_core(nut: Nut, board: Board, binding: Binding) -> Iterator[Problem]:
    """Two bindings and their lines leave wood between them."""
    both = 2 * (binding.thickness + binding.purfling)
    narrowest = min(nut.width, board.width)
    if both >= narrowest:
        what = f"both sides together take {both:g} mm"
        yield Problem(("binding", "thickness"), what, f"less than the board's width, {narrowest:g} mm")


def binding_leaves_tail(board: Board, binding: Binding) -> Iterator[Problem]:
    """A bound tail ends past the last fret."""
    depth = binding.thickness + binding.purfling
    if binding.tail and depth >= board.beyond_last_fret:
        what = f"binding across the tail takes {depth:g} mm"
        yield Problem(("binding", "tail"), what, f"less than beyond_last_fret, {board.beyond_last_fret:g} mm")


BOARD_CHECKS: Sequence[Callable[..., Iterator[Problem]]] = (
    frets_in_order,
    scales_alike,
    frets_apart,
    fan_fits,
    marker_frets,
    strings_on_nut,
    strings_have_room,
    station_on_board,
    board_ends_before_saddle,
    board_widths,
    set_forward_before_fret_1,
    arch_of_one_kind,
    edges_of_the_board,
    arch_holds_nut,
    arch_holds_end,
    binding_leaves_core,
    binding_leaves_tail,
)
