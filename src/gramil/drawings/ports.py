"""Ports on the flat sides: cut on the sides' templates, and small on the sheet that shows a side with its stations."""

from collections.abc import Iterator
from math import dist, inf

from gramil import names as n
from gramil.drawings.marks import Circle, Label, Line, Mark, Marks, Point, Polyline, Words
from gramil.drawings.pen import View
from gramil.drawings.setup_side import UNDER
from gramil.parts.body_records import SideStation
from gramil.parts.opening_records import Port
from gramil.quantities import Mm, Ratio, Series

OWNS = ("piece_",)

CROSS = 6.0
"""Half the length of the cross at a port's middle, in mm."""
CUT_POINTS = 720
"""Points once round a line that a machine follows."""
ROOMY = (59.5, 37.5)
"""In mm: a port of this size or more, along and across, has its words inside it."""
CORNER = 6.0
"""How far a patch's corner is drawn along its edges, in mm."""
BESIDE = 3.0
"""From a port's patch to its words, in mm."""
WORDS_LONG = 62.0
"""In mm, as long as a port's words beside it come with 64ths in them."""
CLEAR = 1.0
"""In mm: how far such words keep from what is struck or written across the side."""
UPRIGHT = (4.6, 9.0)
"""In mm, how far a station's own words reach before its line and after it."""
STEPS = tuple(3.0 * step for step in range(60))
"""How far further from the patch they are tried, in mm."""


def piece_ports_on_side(
    port_list: tuple[Port, ...],
    port_bass: tuple[Port, ...],
    treble_side_along: Series[Mm],
    side_along: Series[Mm],
    side_stations: tuple[SideStation, ...],
    piece_bass_turned: bool,
) -> Marks:
    """The ports on the template that every body has: those of both sides where it serves for both, else the bass ones.

    Each says which side it is in.
    """
    own = port_bass if treble_side_along.size else port_list
    return _ports(own, side_along, side_stations, piece_bass_turned)


def piece_ports_on_treble(
    port_treble: tuple[Port, ...],
    treble_side_along: Series[Mm],
    treble_side_stations: tuple[SideStation, ...],
    piece_treble_turned: bool,
) -> Marks:
    """The treble side's ports on its own template."""
    if not treble_side_along.size:
        return ()
    return _ports(port_treble, treble_side_along, treble_side_stations, piece_treble_turned)


def _ports(
    ports: tuple[Port, ...], along: Series[Mm], stations: tuple[SideStation, ...], turned: bool
) -> tuple[Mark, ...]:
    end = float(along[-1]) if along.size else 0.0
    middles = [end - each.centre if turned else each.centre for each in ports]
    lines = [end - each.along if turned else each.along for each in stations]
    struck = [(each - UPRIGHT[0], each + UPRIGHT[1]) for each in lines]
    struck += [(x - _reach(each), x + _reach(each)) for each, x in zip(ports, middles, strict=True)]
    return tuple(
        mark
        for each, x in zip(ports, middles, strict=True)
        for mark in _port(each, x, _beside(x, _reach(each) + BESIDE, end, struck))
    )


def _reach(port: Port) -> Mm:
    """From a port's middle to where its patch ends along the side, or its own edge."""
    return max(port.patch_along, port.along) / 2


def _beside(x: Mm, off: Mm, end: Mm, struck: list[tuple[Mm, Mm]]) -> Mm:
    """Where the words of a port at x begin, at least `off` from it: toward the end or the start, as near as what is
    struck across the side leaves room for them; right beside it where there is none on the side.
    """

    def room(left: Mm) -> bool:
        inside = left >= 0 and left + WORDS_LONG <= end
        return inside and all(high + CLEAR < left or left + WORDS_LONG < low - CLEAR for low, high in struck)

    tried = [place for step in STEPS for place in (x + off + step, x - off - step - WORDS_LONG)]
    found = min((each for each in tried if room(each)), key=lambda each: _away(each, x), default=inf)
    return found if found < inf else x + off


def _away(left: Mm, x: Mm) -> Mm:
    """How far words that begin at `left` are from a port at x."""
    return left - x if left > x else x - left - WORDS_LONG


def _port(port: Port, x: Mm, beside: Mm) -> Iterator[Mark]:
    """A port with its middle at x: its edge to cut, a cross, its patch's corners, and its words in it, or from `beside`
    on.
    """
    y, at = port.height, n.port_list[port.name]
    if port.hole.is_round:
        yield Circle((x, y), port.along / 2, "cut")
    else:
        yield Polyline(port.hole.placed(x, y, count=CUT_POINTS), "cut", closed=True)
    yield Line((x, y - CROSS), (x, y + CROSS), "centreline")
    yield Line((x - CROSS, y), (x + CROSS, y), "centreline")
    if port.patch > 0:
        yield from _corners(_patch(port, x))
    told = f"{port.name}: the {port.side} side only"
    if port.along >= ROOMY[0] and port.across >= ROOMY[1]:
        yield Words((x, y + CROSS + 2.0), told, 2.4, anchor="middle")
        yield Label((x, y - CROSS - 3.2), at.centre, "from the neck ", height=2.1, anchor="middle")
        yield Label((x, y - CROSS - 7.0), at.below, "below the edge ", height=2.1, anchor="middle")
        return
    yield Words((beside, y + 5.0), told, 2.6)
    yield Label((beside, y), at.centre, "from the neck ", height=2.6)
    yield Label((beside, y - 5.0), at.below, "below the edge ", height=2.6)


def _corners(ring: tuple[Point, ...]) -> Iterator[Line]:
    """The patch by its corners alone: whole lines would run through the stations' words."""
    for row, corner in enumerate(ring):
        for other in (ring[row - 1], ring[(row + 1) % 4]):
            share = CORNER / dist(corner, other)
            end = (corner[0] + share * (other[0] - corner[0]), corner[1] + share * (other[1] - corner[1]))
            yield Line(corner, end, "hidden")


def _patch(port: Port, x: Mm) -> tuple[tuple[Mm, Mm], ...]:
    return tuple((x - port.centre + along, height) for along, height in port.patch_corners)


def piece_small_ports(
    port_list: tuple[Port, ...], treble_side_along: Series[Mm], piece_small_side_share: Ratio
) -> Marks:
    """The ports small on their sides, the neck to the left: with those that they are on."""
    own_treble = bool(treble_side_along.size)
    marks: list[Mark] = []
    for port in port_list:
        view = View(
            (0.0, -UNDER if own_treble and port.side == "treble" else 0.0),
            piece_small_side_share,
            piece_small_side_share,
        )
        marks.append(view.shape(port.outline, "cut"))
    return tuple(marks)
