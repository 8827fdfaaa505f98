"""An outline read from a drawing that the maker traced, alike left and right or as drawn, its faults named.

Every place in a fault is given in the drawing's own coordinates, so that it can be found there; sizes are in mm.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import PurePath

import numpy as np
from numpy.typing import NDArray

from gramil.decimals import fixed
from gramil.faults import Fault, MakersFault
from gramil.quantities import Mm
from gramil.shapes.as_drawn import halves_as_drawn
from gramil.shapes.chains import Drawing, Gap, Trace, branches, gaps, joined_traces
from gramil.shapes.curve import Curve
from gramil.shapes.curve_through import closed_through
from gramil.shapes.drawn_limits import MOST_ON_A_LINE, MOST_POINTS, hold_number, hold_places
from gramil.shapes.half_drawn import mirrored, opened
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_points
from gramil.shapes.pins import Pins, pins_of
from gramil.shapes.polyline import crossings
from gramil.shapes.symmetry import Half, Halved, half_between, halved

Array = NDArray[np.float64]
THINNEST = 1e-3
"""Width over length below which a closed line is a stroke there and back."""
SMALLEST = 1e-6
"""In the drawing's units: what is drawn smaller is a slip."""
MOST_NAMED = 8
"""Faults of one kind that are named; more would not help."""


MIRRORS = (
    ". One half drawn alone, to its middle line, is mirrored. If the drawing is only nearly alike, write alike = and "
    "how far its halves may differ: the outline is then laid half-way between them"
)


@dataclass(frozen=True)
class Reading:
    """How a drawing is to be read.

    `length`: the outline's real length along its axis, in mm; None takes the drawing's own units. `layer`: the one
    layer (DXF), or the id of a shape or group (SVG), to look at; empty for all. `gap`, `asymmetry`: what is let
    pass, in mm. `centreline`: the halves differ on purpose; the drawing's own y of the line between them, which runs
    along x, the neck to the left (in mm, or in units if it does not say what they are). `mirrors`: whether one half,
    drawn to the middle line, is mirrored. `least`, `most`: what its longer side may be, in mm; beyond them the units
    are others than meant. `where`, `file`: named in faults.
    """

    length: Mm | None = None
    layer: str = ""
    gap: Mm = 0.1
    asymmetry: Mm = 0.5
    centreline: Mm | None = None
    narrow_end_first: bool = True
    mirrors: bool = False
    least: Mm = 20.0
    most: Mm = 3000.0
    where: str = "outline"
    file: str | None = None


@dataclass(frozen=True)
class Traced:
    """What was read: the outline from x = 0; mm a drawing unit; how far the halves differed; open lines left out; and
    how it was laid.
    """

    outline: Outline
    scale: float
    asymmetry: Mm
    left_out: tuple[str, ...]
    laying: Halved | None = None
    start: Mm = 0.0

    def laid(self, points: Array) -> Array:
        """Other places of the drawing, (n, 2), in mm where they lie beside the outline, its start at x = 0.

        Raises ValueError for an outline that stays as it is drawn.
        """
        if self.laying is None:
            raise ValueError("an outline that stays as it is drawn was not laid about an axis")
        return self.laying.laid(points) * self.scale - (self.start, 0.0)


def read_outline(text: str, name: str, reading: Reading) -> Traced:
    """The outline in the text of a file whose `name` ends in .dxf or .svg. Raises MakersFault."""
    return traced_outline(read_drawing(text, name, reading), reading)


def read_drawing(text: str, name: str, reading: Reading) -> Drawing:
    """All lines in the text of a file whose `name` ends in .dxf or .svg. Raises MakersFault."""
    kind = PurePath(name).suffix.lower()
    if kind == ".dxf":
        from gramil.shapes.traced_dxf import read_dxf

        return read_dxf(text, reading.file)
    if kind == ".svg":
        from gramil.shapes.traced_svg import read_svg

        return read_svg(text, reading.file)
    raise _fault(reading, f"{name} is neither a .dxf nor an .svg file", "", "Save the drawing as one of them")


def traced_outline(drawing: Drawing, reading: Reading) -> Traced:
    """The one closed outline in a drawing, made symmetric or as it is; one half, drawn to the middle, is mirrored.

    Raises MakersFault: nothing drawn, no units, gaps, lines that branch, several outlines, crossings, no symmetry.
    """
    traces = _chosen(drawing, reading)
    _check_numbers(traces, reading)
    scale = _first_scale(drawing, traces, reading)
    ring, left_out = _one_ring(traces, scale, reading)
    _check_size(ring, scale, reading)
    _check_crossings(ring, reading)
    if reading.centreline is not None:
        return Traced(_as_drawn(ring, drawing, scale, reading), scale, 0.0, left_out)
    pins, close, laying = _laid(ring, reading)
    beyond = laying.asymmetry * scale > reading.asymmetry
    if beyond and reading.mirrors and (whole := _mirror_of(ring, reading.gap / scale)):
        pins, close, laying = _laid(whole, reading)
    length = float(np.ptp(laying.laid(close)[:, 0]))
    scale = reading.length / length if reading.length is not None else scale
    _check_symmetry(laying, scale, reading)
    half = _half(Pins(laying.laid(pins.points) * scale, pins.corners), laying.laid(close) * scale, reading)
    outline = through_points(half.points, half.corners, reading.where)
    return Traced(outline, scale, laying.asymmetry * scale, left_out, laying, half.start)


def _as_drawn(ring: Trace, drawing: Drawing, scale: float, reading: Reading) -> Outline:
    """Both halves about the drawing's own centreline; a stated length is from the one end on it to the other."""
    drawn = pins_of(ring)
    centre = np.array([0.0, (reading.centreline or 0.0) / (drawing.unit or 1.0)])
    pins = Pins((drawn.points - centre) * (1.0, -1.0 if drawing.y_down else 1.0), drawn.corners).clockwise()
    _close_ring(pins, reading)
    halves = halves_as_drawn(_curve(pins))
    if halves is None:
        raise _fault(
            reading,
            "the outline does not meet its centreline in two places",
            f"Its halves differ on purpose, and the centreline runs along x at y = {reading.centreline:g} mm",
            "Say where it lies in the drawing, or turn the drawing so that the neck is to the left",
        )
    if reading.length is not None:
        scale = reading.length / (halves[0].points[-1][0] - halves[0].points[0][0])
    treble, bass = (
        through_points([(x * scale, y * scale) for x, y in each.points], each.corners, reading.where) for each in halves
    )
    return Outline(treble.points, treble.corners, bass.points, bass.corners, smooth=True)


def _laid(ring: Trace, reading: Reading) -> tuple[Pins, Array, Halved]:
    """The pins of a closed line, points close together on it, and how it lies about its middle line."""
    pins = pins_of(ring)
    close = _close_ring(pins, reading)
    return pins, close, halved(close, reading.narrow_end_first)


def _mirror_of(ring: Trace, slack: float) -> Trace | None:
    """The whole outline, if the closed line is a half with its middle line drawn."""
    half = opened(ring, slack)
    return None if half is None else mirrored((half,), slack)


def _chosen(drawing: Drawing, reading: Reading) -> tuple[Trace, ...]:
    traces = tuple(each for each in drawing.traces if not reading.layer or reading.layer in each.layers)
    if traces:
        return traces
    names = ", ".join(sorted({name for each in drawing.traces for name in each.layers})) or "none with a name"
    if reading.layer:
        raise _fault(reading, f"nothing is drawn on {reading.layer}", f"The drawing has: {names}", "Name one of these")
    raise _fault(
        reading, "the drawing has no lines, arcs or curves", "", "Draw the outline, and save the drawing again"
    )


def _first_scale(drawing: Drawing, traces: Sequence[Trace], reading: Reading) -> float:
    """mm for each unit, as the drawing says, or roughly by the stated length if only the outline is drawn."""
    if reading.length is not None:
        extent = float(np.ptp(np.vstack([each.points for each in traces]), axis=0).max())
        return reading.length / extent
    if drawing.unit is None:
        raise _fault(
            reading,
            "the drawing does not say its units",
            "A unit could be a millimetre, an inch or a dot",
            "State the outline's length, or set the drawing's units and save it again",
        )
    return drawing.unit


def _one_ring(traces: Sequence[Trace], scale: float, reading: Reading) -> tuple[Trace, tuple[str, ...]]:
    gap = reading.gap / scale
    if places := branches(traces, gap, MOST_NAMED):
        raise MakersFault([_branch(place, reading) for place in places])
    chains = joined_traces(traces, gap)
    rings = [each for each in chains if each.is_closed(gap)]
    if not rings and reading.mirrors and (whole := mirrored(chains, gap)):
        return whole, tuple(each.name for each in chains if each.name != whole.name)
    if not rings:
        raise MakersFault(_open(chains, scale, reading))
    if len(rings) > 1:
        raise MakersFault([_several(rings, scale, reading)])
    hold_number(len(rings[0].points), MOST_ON_A_LINE, "points on its outline", reading.file)
    return rings[0], tuple(each.name for each in chains if each is not rings[0])


def _check_numbers(traces: Sequence[Trace], reading: Reading) -> None:
    for each in traces:
        hold_places(each.points, each.name, reading.file)


def _check_size(ring: Trace, scale: float, reading: Reading) -> None:
    """It encloses something (or crosses itself, which is told later), and is no longer or shorter than can be meant."""
    drawn = float(np.ptp(ring.points, axis=0).max())
    if drawn < SMALLEST:
        raise _fault(
            reading, f"the outline ({ring.name}) is {drawn:.3g} of the drawing's units long", "", "Draw it larger"
        )
    if float(np.ptp(ring.points, axis=0).min()) < THINNEST * drawn:
        raise _fault(reading, f"the outline ({ring.name}) encloses nothing", "", "Draw it round the shape")
    extent = drawn * scale
    if reading.length is None and not reading.least <= extent <= reading.most:
        raise _fault(
            reading,
            f"the outline is {extent:.6g} mm long",
            "So it is by the drawing's own units",
            "State the outline's length, or set the drawing's units and save it again",
        )


def _check_crossings(ring: Trace, reading: Reading) -> None:
    found = crossings(ring.points[:-1], closed=True, most=MOST_NAMED)
    if found:
        raise MakersFault(
            [
                _fault_at(reading, f"the outline crosses itself at {_place((x, y))}", "", "Trim the lines there")
                for _, _, x, y in found
            ]
        )


def _check_symmetry(laying: Halved, scale: float, reading: Reading) -> None:
    if laying.asymmetry * scale > reading.asymmetry:
        raise _fault(
            reading,
            f"the halves differ by {laying.asymmetry * scale:.2f} mm at {_place(laying.place)}",
            f"The sides of a middle line along x or along y are to be alike to {reading.asymmetry:g} mm",
            "Turn the drawing straight, or trace one half and mirror it" + (MIRRORS if reading.mirrors else ""),
        )


def _close_ring(pins: Pins, reading: Reading) -> Array:
    """Points once round, close together on straight parts too, the first not repeated."""
    extent = float(np.ptp(pins.points, axis=0).max())
    curve = _curve(pins)
    # counted first: a curve of endless turns would fill the memory
    hold_number(curve.sampled(1e-5 * extent, extent / 200), MOST_POINTS, "bends and turns on its outline", reading.file)
    return curve.place(curve.sample(1e-5 * extent, extent / 200))[:-1]


def _curve(pins: Pins) -> Curve:
    return closed_through(pins.points, pins.corners)


def _half(pins: Pins, close: Array, reading: Reading) -> Half:
    """One half, from pins in mm about the x axis."""
    half = half_between(_curve(pins.clockwise()), close)
    if half is None:
        raise _fault(reading, "the outline meets its middle line in more places than two", "", "Look at both its ends")
    return half


def _branch(place: tuple[float, float], reading: Reading) -> Fault:
    return _fault_at(
        reading,
        f"three lines or more end at {_place(place)}",
        "Which of them is the outline cannot be told",
        "Put the outline on a layer of its own and name it, or take the other line away",
    )


def _open(chains: Sequence[Trace], scale: float, reading: Reading) -> list[Fault]:
    return [_gap(gap, scale, reading) for gap in gaps(chains)[:MOST_NAMED]]


def _gap(gap: Gap, scale: float, reading: Reading) -> Fault:
    if not gap.width:
        there = f"what is drawn from {_place(gap.start)} goes to and fro over the same line, and encloses nothing"
        return _fault_at(reading, there, "", "Draw the outline once round the shape")
    return _fault_at(
        reading,
        f"the outline is not closed: a gap of {gap.width * scale:.2f} mm from {_place(gap.start)} to {_place(gap.end)}",
        f"Gaps to {reading.gap:g} mm are let pass",
        "Join the lines there",
    )


def _several(rings: Sequence[Trace], scale: float, reading: Reading) -> Fault:
    sizes = [np.ptp(each.points, axis=0) * scale for each in rings]
    named = [f"{w:.1f} x {h:.1f} mm ({each.name})" for (w, h), each in zip(sizes, rings, strict=True)]
    more = [f"{len(named) - MOST_NAMED} more"] if len(named) > MOST_NAMED else []
    return _fault_at(
        reading,
        f"the drawing has {len(rings)} closed outlines: " + "; ".join([*named[:MOST_NAMED], *more]),
        "",
        "Name the layer or the shape that holds the one, or keep only that one",
    )


def _place(place: tuple[float, float]) -> str:
    return f"({fixed(place[0], 3)}, {fixed(place[1], 3)})"


def _fault_at(reading: Reading, what: str, why: str, remedy: str) -> Fault:
    return Fault(where=reading.where, what=what, why=why, remedy=remedy, file=reading.file)


def _fault(reading: Reading, what: str, why: str, remedy: str) -> MakersFault:
    return MakersFault([_fault_at(reading, what, why, remedy)])
