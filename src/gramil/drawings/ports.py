"""Ports on the flat sides: cut on the sides' templates, and small on the sheet that shows a side with its stations."""

from collections.abc import Iterator
from math import dist

from gramil import names as n
from gramil.drawings.marks import Circle, Label, Line, Mark, Marks, Point, Polyline, Words
from gramil.drawings.pen import View
from gramil.drawings.setup_side import UNDER
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


def piece_ports_on_side(
    port_list: tuple[Port, ...],
    port_bass: tuple[Port, ...],
    treble_side_along: Series[Mm],
    side_along: Series[Mm],
    piece_bass_turned: bool,
) -> Marks:
    """The ports on the template that every body has: those of both sides where it serves for both, else the bass ones.

    Each says which side it is in.
    """
    own = port_bass if treble_side_along.size else port_list
    return _ports(own, side_along, piece_bass_turned)


def piece_ports_on_treble(
    port_treble: tuple[Port, ...], treble_side_along: Series[Mm], piece_treble_turned: bool
) -> Marks:
    """The treble side's ports on its own template."""
    return _ports(port_treble, treble_side_along, piece_treble_turned) if treble_side_along.size else ()


def _ports(ports: tuple[Port, ...], along: Series[Mm], turned: bool) -> Marks:
    end = float(along[-1]) if along.size else 0.0
    return tuple(mark for each in ports for mark in _port(each, end - each.centre if turned else each.centre))


def _port(port: Port, x: Mm) -> Iterator[Mark]:
    """A port with its middle at x: its edge to cut, a cross, its patch's corners, and its words in it or beside it."""
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
    beside = x + port.patch_along / 2 + BESIDE
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
