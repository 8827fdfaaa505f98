"""Base values of scale, board, wire and markers that need more than their key."""

import math

import numpy as np

from gramil import names as n
from gramil.description.board.checks import lengths_of, square_at
from gramil.description.board.scala_scale import ScalaScale
from gramil.description.instrument import Instrument
from gramil.description.normal_row import Normal, Values
from gramil.description.records import Station, Wire
from gramil.quantities import Cents, Mm, PerFret, PerMm, Ratio

MARKED = (3, 5, 7, 9, 12, 15, 17, 19)
"""The frets that usually carry a marker: common practice."""
_SCALE = ("scale.length", "scale.bass", "scale.treble")

BOARD_ROWS: tuple[Normal, ...] = (
    Normal(n.scale_bass, Mm, "scale length of the outer bass string", ("scale.bass", "scale.length")),
    Normal(n.scale_treble, Mm, "scale length of the outer treble string", ("scale.treble", "scale.length")),
    Normal(
        n.scale_sideways,
        Mm,
        "how far sideways the lines run along which the scale is measured, from nut to saddle: 0 along the centreline",
        (*_SCALE, "nut.spread", "bridge.spread"),
    ),
    Normal(
        n.scale_square_at,
        Ratio,
        "fret that is square to the centreline, may be fractional",
        ("scale.square_at",),
        "0 on a single scale; 7 on a fanned board, common practice",
    ),
    Normal(
        n.scale_cents,
        PerFret[Cents],
        "pitch of each fret above the open string",
        ("scale.temperament", "scale.degrees", "scale.frets"),
        "12-equal, the usual one",
    ),
    Normal(
        n.scale_square_at_cents,
        Cents,
        "pitch of the square fret above the open string",
        ("scale.square_at", "scale.temperament", "scale.degrees"),
        "0 on a single scale; 7 on a fanned board, common practice",
    ),
    Normal(n.board_width_station, Station, "where the board's width is given", ("board.width_at",)),
    Normal(n.board_curvature_nut, PerMm, "1/R of the playing surface at the zero line; flat is 0", ("board.arch",)),
    Normal(n.board_curvature_end, PerMm, "1/R of the playing surface at the tail end; flat is 0", ("board.arch",)),
    Normal(
        n.board_edge_nut_treble,
        Mm,
        "thickness wanted at the nut end's treble edge; not a number where none is given",
        ("board.edge_nut_treble",),
        "as the middle",
    ),
    Normal(
        n.board_edge_nut_bass,
        Mm,
        "thickness wanted at the nut end's bass edge; not a number where none is given",
        ("board.edge_nut_bass",),
        "as the middle",
    ),
    Normal(
        n.board_edge_tail_treble,
        Mm,
        "thickness wanted at the tail end's treble edge; not a number where none is given",
        ("board.edge_tail_treble",),
        "as the middle",
    ),
    Normal(
        n.board_edge_tail_bass,
        Mm,
        "thickness wanted at the tail end's bass edge; not a number where none is given",
        ("board.edge_tail_bass",),
        "as the middle",
    ),
    Normal(n.wire_name, str, "the fret wire that is used", ("wire.use", "wire.name")),
    Normal(n.wire_crown_width, Mm, "width of the wire's crown", ("wire.use", "wire.crown_width")),
    Normal(n.wire_crown_height, Mm, "height of the wire's crown over the board", ("wire.use", "wire.crown_height")),
    Normal(n.wire_tang_thickness, Mm, "thickness of the wire's tang", ("wire.use", "wire.tang_thickness")),
    Normal(n.wire_bead_thickness, Mm, "thickness over the beads of the tang", ("wire.use", "wire.bead_thickness")),
    Normal(n.wire_tang_depth, Mm, "depth of the wire's tang under its crown", ("wire.use", "wire.tang_depth")),
    Normal(n.wire_on_hand, Mm, "length of the wire on hand", ("wire.use", "wire.on_hand")),
)
"""Every base value of scale, board and wire that is not simply one key."""
MARKER_ROWS: tuple[Normal, ...] = (
    Normal(
        n.markers_frets,
        tuple[int, ...],
        "frets that carry a marker",
        ("markers.frets",),
        "3, 5, 7, 9, 12, 15, 17, 19: common practice",
    ),
    Normal(
        n.markers_double,
        tuple[int, ...],
        "frets that carry two markers",
        ("markers.double",),
        "12: common practice",
    ),
)
"""The same of the markers."""


def board_values(instrument: Instrument, tuning: ScalaScale, wire: Wire) -> Values:
    """The values of `BOARD_ROWS` and `MARKER_ROWS`; the wire is the one that is used, measured here or the shop's."""
    return {
        **_scale_values(instrument, tuning),
        **_arch_values(instrument),
        **_wire_values(wire),
        **_marker_values(instrument),
    }


def curvature(radius: float) -> float:
    """1/R in 1/mm of a radius in mm; 0 for an infinite one, which is flat."""
    return 0.0 if math.isinf(radius) else 1.0 / radius


def _wire_values(wire: Wire) -> Values:
    return {
        n.wire_name: wire.name,
        n.wire_crown_width: wire.crown_width,
        n.wire_crown_height: wire.crown_height,
        n.wire_tang_thickness: wire.tang_thickness,
        n.wire_bead_thickness: wire.bead_thickness,
        n.wire_tang_depth: wire.tang_depth,
        n.wire_on_hand: wire.on_hand,
    }


def _scale_values(instrument: Instrument, tuning: ScalaScale) -> Values:
    scale = instrument.scale
    bass, treble = lengths_of(scale)
    square = square_at(scale)
    cents = np.array([tuning.at(fret) for fret in range(scale.frets + 2)])
    sideways = (instrument.bridge.spread - instrument.nut.spread) / 2 if scale.fanned else 0.0
    return {
        n.scale_bass: bass,
        n.scale_treble: treble,
        n.scale_sideways: sideways,
        n.scale_square_at: square,
        n.scale_cents: cents[:-1],
        n.scale_square_at_cents: float(np.interp(square, np.arange(len(cents)), cents)),
    }


def _arch_values(instrument: Instrument) -> Values:
    arch = instrument.board.arch
    return {
        n.board_width_station: instrument.board.width_at,
        n.board_curvature_nut: curvature(arch.nut),
        n.board_curvature_end: curvature(arch.end),
        **_edge_values(instrument),
    }


def _edge_values(instrument: Instrument) -> Values:
    board = instrument.board
    given = {
        n.board_edge_nut_treble: board.edge_nut_treble,
        n.board_edge_nut_bass: board.edge_nut_bass,
        n.board_edge_tail_treble: board.edge_tail_treble,
        n.board_edge_tail_bass: board.edge_tail_bass,
    }
    return {name: math.nan if each is None else each for name, each in given.items()}


def _marker_values(instrument: Instrument) -> Values:
    markers, last = instrument.markers, instrument.scale.frets
    frets = tuple(fret for fret in MARKED if fret <= last) if markers.frets is None else markers.frets
    double = tuple(fret for fret in (12,) if fret in frets) if markers.double is None else markers.double
    return {n.markers_frets: tuple(sorted(frets)), n.markers_double: tuple(sorted(double))}
