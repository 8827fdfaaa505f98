"""The base values that need more than their key: what they are, which keys set them, and how.

After this no part has to handle missing values: there is always a bass and a treble scale, a curvature at each end
(flat is 0), a wire with its measures, and a list of markers.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.description.board.scala_scale import ScalaScale
from gramil.description.body.bindings import BINDING_ROWS, binding_values
from gramil.description.body.usual import BODY_ROWS, body_values
from gramil.description.checks import lengths_of, square_at
from gramil.description.instrument import Instrument
from gramil.description.neck.usual import CARVE_ROWS, carve_values
from gramil.description.normal_row import Normal, Values
from gramil.description.records import Blank, Block, Cutter, IndexTemplate, Jig, Saw, Station, Wire
from gramil.description.shop.tables import Shop
from gramil.description.strings.usual import STRING_ROWS, string_values
from gramil.description.wood.stuff import STUFF_ROWS, stuff_values
from gramil.quantities import Cents, Mm, PerFret, PerMm, PerString, Ratio
from gramil.shapes.outline import Outline

MARKED = (3, 5, 7, 9, 12, 15, 17, 19)
"""The frets that usually carry a marker: common practice."""
PIN_OFFSET = 60.0
"""Pin less blade along the board, in mm, for a shop that has no jig for slots: common practice."""


@dataclass(frozen=True)
class _Posts:
    """Posts of one kind, in mm: nut to the first, from one to the next along the head, how far the first stand outside
    the outer strings, and how far each row moves inward.
    """

    first: float
    step: float
    beside: float
    lean: float


USUAL_POSTS = {"upright": _Posts(42.0, 38.0, 3.0, 3.5), "across": _Posts(45.0, 35.0, 0.5, 3.0)}
"""By how the tuners lie; across, where the strings come up to their rollers in the slots: common practice."""

_SCALE = ("scale.length", "scale.bass", "scale.treble")
_WIRE = ("wire", "wire.use")

NORMALISED: tuple[Normal, ...] = (
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
    Normal(n.wire_name, str, "the fret wire that is used", ("wire.use", "wire.name")),
    Normal(n.wire_crown_width, Mm, "width of the wire's crown", ("wire.use", "wire.crown_width")),
    Normal(n.wire_crown_height, Mm, "height of the wire's crown over the board", ("wire.use", "wire.crown_height")),
    Normal(n.wire_tang_thickness, Mm, "thickness of the wire's tang", ("wire.use", "wire.tang_thickness")),
    Normal(n.wire_bead_thickness, Mm, "thickness over the beads of the tang", ("wire.use", "wire.bead_thickness")),
    Normal(n.wire_tang_depth, Mm, "depth of the wire's tang under its crown", ("wire.use", "wire.tang_depth")),
    Normal(n.wire_on_hand, Mm, "length of the wire on hand", ("wire.use", "wire.on_hand")),
    *STRING_ROWS,
    *BODY_ROWS,
    *BINDING_ROWS,
    *STUFF_ROWS,
    *CARVE_ROWS,
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
    Normal(
        n.top_radius,
        Mm,
        "radius of the top's dome along the centreline; flat is without end",
        ("top.radius",),
        "common practice: 25 ft",
    ),
    Normal(
        n.top_rise,
        Mm,
        "how far the top stands over its rim at the saddle, measured; else not known",
        ("top.rise",),
        "from the dome's radius",
    ),
    Normal(
        n.neck_straightedge,
        Mm,
        "how far a straightedge on the frets passes over the bridge, neck set; not known before",
        ("neck.straightedge",),
        "the neck is not set yet, or set as it should be",
    ),
    Normal(
        n.head_posts_x,
        PerString[Mm],
        "each string's post along the head from the nut",
        ("head.posts_x",),
        "half the posts a side: common practice",
    ),
    Normal(
        n.head_posts_y,
        PerString[Mm],
        "each string's post from the centreline, treble positive",
        ("head.posts_y",),
        "half the posts a side: common practice",
    ),
    Normal(n.shop_is_default, bool, "whether no shop was given and the usual one stands in", (), "set by the program"),
    Normal(n.shop_pin_offset, Mm, "index pin less saw blade along the board", ("jig",), "common practice: 60 mm"),
    Normal(n.shop_saws, tuple[Saw, ...], "saws for slots", ("saw",), "none"),
    Normal(n.shop_cutters, tuple[Cutter, ...], "bearing-guided cutters", ("cutter",), "none"),
    Normal(n.shop_blocks, tuple[Block, ...], "sanding blocks", ("block",), "none"),
    Normal(n.shop_templates, tuple[IndexTemplate, ...], "index templates on hand", ("template",), "none"),
    Normal(n.shop_jigs, tuple[Jig, ...], "jigs and their constants", ("jig",), "none"),
    Normal(n.shop_blanks, tuple[Blank, ...], "wood in stock", ("blank",), "none"),
    Normal(n.shop_wires, tuple[Wire, ...], "fret wires on hand", ("wire",), "none"),
)
"""Every base value that is not simply one key."""


def normalised(
    instrument: Instrument,
    tuning: ScalaScale,
    outlines: tuple[Outline, ...],
    shop: Shop,
    wire: Wire,
    shop_is_default: bool,
) -> Values:
    """The values of `NORMALISED`: mm, 1/mm, cents; arrays as their annotations say."""
    return {
        **_scale_values(instrument, tuning),
        **_board_values(instrument),
        **_wire_values(wire),
        **_marker_values(instrument),
        **_neck_values(instrument),
        **string_values(instrument),
        **body_values(instrument, outlines),
        **binding_values(instrument, shop),
        **stuff_values(instrument, shop),
        **carve_values(instrument),
        **_shop_values(shop),
        n.shop_is_default: shop_is_default,
    }


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


def curvature(radius: float) -> float:
    """1/R in 1/mm of a radius in mm; 0 for an infinite one, which is flat."""
    return 0.0 if math.isinf(radius) else 1.0 / radius


def _board_values(instrument: Instrument) -> Values:
    arch = instrument.board.arch
    return {
        n.board_width_station: instrument.board.width_at,
        n.board_curvature_nut: curvature(arch.nut),
        n.board_curvature_end: curvature(arch.end),
    }


def _marker_values(instrument: Instrument) -> Values:
    markers, last = instrument.markers, instrument.scale.frets
    frets = tuple(fret for fret in MARKED if fret <= last) if markers.frets is None else markers.frets
    double = tuple(fret for fret in (12,) if fret in frets) if markers.double is None else markers.double
    return {n.markers_frets: tuple(sorted(frets)), n.markers_double: tuple(sorted(double))}


def _neck_values(instrument: Instrument) -> Values:
    head, strings = instrument.head, len(instrument.strings.gauges)
    x, y = usual_posts(strings, instrument.nut.spread, head.tuners)
    return {
        n.top_radius: instrument.top.radius,
        n.top_rise: _measured(instrument.top.rise),
        n.neck_straightedge: _measured(instrument.neck.straightedge),
        n.head_posts_x: x if head.posts_x is None else np.array(head.posts_x),
        n.head_posts_y: y if head.posts_y is None else np.array(head.posts_y),
    }


def _measured(value: float | None) -> float:
    """A measurement, or nan if nothing was measured."""
    return math.nan if value is None else value


def usual_posts(
    strings: int, nut_spread: float, tuners: str = "upright"
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Posts (or places on rollers) with half of them a side, mm from the nut and from the centreline: common practice.

    The outer strings go to the nearest posts, and each row leans inward a little; an odd string goes treble-side.
    """
    usual = USUAL_POSTS[tuners]
    treble = np.arange(strings) < (strings + 1) // 2
    row = np.where(treble, np.arange(strings), strings - 1 - np.arange(strings))
    beside = nut_spread / 2 + usual.beside - usual.lean * row
    return usual.first + usual.step * row, np.where(treble, beside, -beside)


def _shop_values(shop: Shop) -> Values:
    offsets = [jig.constant for jig in shop.jig if jig.purpose == "slots"]
    return {
        n.shop_pin_offset: offsets[0] if offsets else PIN_OFFSET,
        n.shop_saws: tuple(Saw(**row.model_dump()) for row in shop.saw),
        n.shop_cutters: tuple(Cutter(**row.model_dump()) for row in shop.cutter),
        n.shop_blocks: tuple(Block(row.name, curvature(row.radius)) for row in shop.block),
        n.shop_templates: tuple(IndexTemplate(**row.model_dump()) for row in shop.template),
        n.shop_jigs: tuple(
            Jig(row.name, row.purpose, row.constant, row.checked.isoformat() if row.checked else "") for row in shop.jig
        ),
        n.shop_blanks: tuple(Blank(**row.model_dump()) for row in shop.blank),
        n.shop_wires: tuple(Wire(**row.model_dump()) for row in shop.wire),
    }
