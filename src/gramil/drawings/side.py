"""The sides unrolled at true size: one template for both, or one for each where they are not alike."""

from typing import Any

import numpy as np

from gramil import names as n
from gramil.drawings.kerf import Machine, cut_by
from gramil.drawings.marks import Circle, Drawing, Label, Line, Mark, Marks, Polyline, Span, Words
from gramil.parts.bevel_records import Bevel
from gramil.parts.body_records import SideStation
from gramil.quantities import Mm, Series
from gramil.reference import Ref

OWNS = ("drawing_", "piece_")

Box = tuple[Mm, Mm, Mm, Mm]
"""Left, low, right and high."""
AWAY = tuple(3.0 * step for step in range(36))
"""How far further from its line a station's words are tried, in mm, where a port is in their way."""
LONG = 62.0
"""In mm, as long as the longest of such words: a bout's name with its depth."""


def drawing_side(
    instrument_name: str,
    side_along: Series[Mm],
    side_upper: Series[Mm],
    side_lower: Series[Mm],
    side_stations: tuple[SideStation, ...],
    piece_router: Machine,
    piece_unrolled_words: Marks,
    piece_bass_turned: bool,
    piece_side_called: str,
    piece_bevels_on_side: Marks,
    piece_ports_on_side: Marks,
) -> Drawing:
    """One side unrolled, at true size, its outside up: top's edge above; the other side is its mirror image, or has a
    template of its own.

    Used at: sides_bent, linings_glued_back, ports_cut.
    """
    title = f"{instrument_name}, {piece_side_called} unrolled"
    if not side_along.size:
        return Drawing("side", title, "the side", ())
    marks = _template(
        (side_along, side_upper, side_lower), side_stations, n.side_stations, piece_bass_turned, piece_ports_on_side
    )
    return cut_by(
        piece_router,
        Drawing(
            "side", title, "the side", (*marks, *piece_bevels_on_side, *piece_ports_on_side, *piece_unrolled_words)
        ),
    )


def drawing_treble_side(
    instrument_name: str,
    treble_side_along: Series[Mm],
    treble_side_upper: Series[Mm],
    treble_side_lower: Series[Mm],
    treble_side_stations: tuple[SideStation, ...],
    piece_router: Machine,
    piece_treble_words: Marks,
    piece_treble_turned: bool,
    piece_ports_on_treble: Marks,
) -> Drawing:
    """The treble side unrolled, at true size, its outside up, where the sides are not alike.

    Used at: sides_bent, linings_glued_back, ports_cut.
    """
    title = f"{instrument_name}, the treble side unrolled"
    if not treble_side_along.size:
        return Drawing("treble-side", title, "the side", ())
    edges = (treble_side_along, treble_side_upper, treble_side_lower)
    marks = _template(edges, treble_side_stations, n.treble_side_stations, piece_treble_turned, piece_ports_on_treble)
    return cut_by(
        piece_router, Drawing("treble-side", title, "the side", (*marks, *piece_ports_on_treble, *piece_treble_words))
    )


def piece_bass_turned(instrument_handed: str, treble_side_along: Series[Mm]) -> bool:
    """Whether the neck lies to the right on the bass side's template: a left-handed guitar's, where it has its own.

    Outside up with the top above, the neck is to the left on the side nearest to whoever looks at the face with the
    head to the left.
    """
    return bool(treble_side_along.size) and instrument_handed == "left"


def piece_side_called(treble_side_along: Series[Mm]) -> str:
    """What the template that every body has shows: a side, or the bass side where the treble side has a template of its
    own.
    """
    return "the bass side" if treble_side_along.size else "a side"


def piece_treble_turned(instrument_handed: str) -> bool:
    """Whether the neck lies to the right on the treble side's template: on a right-handed guitar's."""
    return instrument_handed != "left"


def piece_unrolled_words(
    instrument_name: str,
    instrument_handed: str,
    side_along: Series[Mm],
    side_upper: Series[Mm],
    side_lower: Series[Mm],
    side_stations: tuple[SideStation, ...],
    treble_side_along: Series[Mm],
    piece_bass_turned: bool,
    bevel_list: tuple[Bevel, ...],
) -> Marks:
    """Which side it is and which when turned over, which edges and ends, and how long.

    Seen from outside with the top above and the neck to the left is the side nearest to whoever looks at the face with
    the head to the left: the bass side of a right-handed guitar, the treble side of a left-handed one.
    """
    if not side_lower.size:
        return ()
    as_drawn, over = ("treble", "bass") if instrument_handed == "left" else ("bass", "treble")
    told = f"{instrument_name}: outside up, the {as_drawn} side; turned over, the {over} side"
    wanted = "One of each is wanted. Lengths are on the outside of the side."
    before = "half round the body "
    struck: tuple[Mm, ...] = ()
    if treble_side_along.size:
        told, wanted = _own(instrument_name, "bass", piece_bass_turned)
        before, struck = "round the bass side ", tuple(each.along for each in side_stations)
    edges = (side_along, side_upper, side_lower)
    clear = tuple(max((each.below for each in bevel_list if each.plate == of), default=0.0) for of in ("top", "back"))
    return _words(edges, n.side_length, (before, told, wanted), (piece_bass_turned, struck), (clear[0], clear[1]))


def piece_treble_words(
    instrument_name: str,
    treble_side_along: Series[Mm],
    treble_side_upper: Series[Mm],
    treble_side_lower: Series[Mm],
    treble_side_stations: tuple[SideStation, ...],
    piece_treble_turned: bool,
) -> Marks:
    """Which side it is, which edges and ends, and how long."""
    if not treble_side_along.size:
        return ()
    edges = (treble_side_along, treble_side_upper, treble_side_lower)
    words = ("round the treble side ", *_own(instrument_name, "treble", piece_treble_turned))
    struck = tuple(each.along for each in treble_side_stations)
    return _words(edges, n.treble_side_length, words, (piece_treble_turned, struck))


def _own(name: str, side: str, turned: bool) -> tuple[str, str]:
    """What is written on the template of a side that has one of its own: which side it is, and that it is not turned
    over.
    """
    neck = "right" if turned else "left"
    other = "treble" if side == "bass" else "bass"
    return (
        f"{name}: the {side} side, outside up, the neck to the {neck}",
        f"Only this side: the {other} side has a template of its own. Lengths are on the outside of the side.",
    )


def _words(
    edges: tuple[Series[Mm], Series[Mm], Series[Mm]],
    address: Ref[Mm],
    words: tuple[str, str, str],
    laid: tuple[bool, tuple[Mm, ...]],
    clear: tuple[Mm, Mm] = (0.0, 0.0),
) -> Marks:
    """The words of a side's template: its length, which side it is, what it takes, and its two edges.

    `laid`: whether the neck lies to the right, and at which distances along lines are struck that words keep off.
    `clear`: how far bevels come down from the top's edge and the back's.
    """
    (along, upper, lower), (before, told, wanted), (turned, struck) = edges, words, laid
    length, foot, high = float(along[-1]), float(lower.min()), float(upper.max())
    lines = [length - each if turned else each for each in struck]
    shares = (length / 3, 0.4 * length, 0.47 * length, 0.26 * length)
    third = next((x for x in shares if all(not -5.0 < line - x < 25.0 for line in lines)), length / 3)
    at_third = [float(np.interp(length - third if turned else third, along, edge)) for edge in (upper, lower)]
    return (
        Span((0.0, foot), (length, foot), -22.0, address, before=before),
        Words((6.0, high + 14.0), told, 4.0),
        Words((6.0, high + 8.0), wanted, 2.6),
        Words((third, at_third[0] - 6.0 - clear[0]), "top's edge", 2.6),
        Words((third, at_third[1] + 4.0 + clear[1]), "back's edge", 2.6),
    )


def _template(
    edges: tuple[Series[Mm], Series[Mm], Series[Mm]],
    stations: tuple[SideStation, ...],
    addresses: Any,
    turned: bool,
    ports: Marks,
) -> Marks:
    """A side's shape and its stations, their words clear of `ports`; `turned`: with the neck to the right."""
    along, upper, lower = edges
    end = float(along[-1])
    places = end - along if turned else along
    over = [(float(x), float(y)) for x, y in zip(places, upper, strict=True)]
    under = [(float(x), float(y)) for x, y in zip(places, lower, strict=True)]
    marks: list[Mark] = [Polyline((*over, *reversed(under)), "cut", closed=True)]
    taken = tuple(_round(mark) for mark in ports)
    for station in stations:
        heights = [float(np.interp(station.along, along, edge)) for edge in (lower, upper)]
        at = end - station.along if turned else station.along
        marks += _station(station, at, (heights[0], heights[1]), addresses[station.name], taken)
    return tuple(marks)


def _station(station: SideStation, x: Mm, heights: tuple[Mm, Mm], address: Any, taken: tuple[Box, ...]) -> Marks:
    """A line across the side with its depth, the bend's place from the neck, clear of what is `taken` by ports."""
    low, high = heights
    told = [(address.depth, f"{station.name}, deep ")]
    if station.is_corner or not np.isnan(station.radius):
        told.append((address.along, "from the neck "))
    if not np.isnan(station.radius):
        told.append((address.radius, "bend's radius "))
    foot = low + 8.0
    columns = _columns(x, foot, len(told), taken)
    words = (
        Label((at, foot), figure, before, height=2.6, angle=np.pi / 2)
        for at, (figure, before) in zip(columns, told, strict=True)
    )
    return (Line((x, low), (x, high), "dimensions"), *words)


def _columns(x: Mm, foot: Mm, count: int, taken: tuple[Box, ...]) -> tuple[Mm, ...]:
    """Where the lines of a station's words stand, each a column: the first before the station's line and the others
    after it, or all on one side as near to it as a port leaves them.
    """
    usual = ((x + 4.0, x + 8.4, x + 12.8) if x <= 0 else (x - 2.0, x + 4.0, x + 8.4))[:count]
    after = [tuple(x + 4.0 + step + 4.4 * row for row in range(count)) for step in AWAY]
    before = [tuple(x - 2.0 - step - 4.4 * (count - 1 - row) for row in range(count)) for step in AWAY]
    tried = (usual, *(each for pair in zip(before, after, strict=True) for each in pair))
    return next((each for each in tried if not any(_meet(each, foot, box) for box in taken)), usual)


def _meet(columns: tuple[Mm, ...], foot: Mm, box: Box) -> bool:
    """Whether any of the words reaches into a box."""
    left, low, right, high = box
    return any(left < at + 0.6 and at - 2.6 < right for at in columns) and low < foot + LONG and foot < high


def _round(mark: Mark) -> Box:
    """The box round a port's mark; for words, as long as such words are."""
    match mark:
        case Polyline():
            xs, ys = zip(*mark.points, strict=True)
        case Line():
            xs, ys = zip(mark.start, mark.end, strict=True)
        case Circle():
            (x, y), r = mark.centre, mark.radius
            xs, ys = (x - r, x + r), (y - r, y + r)
        case Words() | Label():
            (x, y), half = mark.at, LONG / 2 if mark.anchor == "middle" else 0.0
            xs, ys = (x - half, x + LONG - half), (y, y + mark.height)
        case _:
            raise TypeError(mark)
    return (min(xs), min(ys), max(xs), max(ys))
