"""Base values of the body that need more than their key: the outline, braces as records, optional values.

Without a body there is no outline (an empty tuple) and no brace; optional sizes that are missing are nan.
"""

import math
from collections.abc import Iterator

from gramil import names as n
from gramil.decimals import fixed
from gramil.description.body.openings import OPENING_ROWS, opening_values
from gramil.description.body.records import BraceAsked, Point
from gramil.description.body.tables import Body, BraceTable, BridgePlate
from gramil.description.instrument import Instrument
from gramil.description.normal_row import Normal, Values, known
from gramil.quantities import Mm, Radians
from gramil.shapes.outline import Outline

ACROSS = 100.0
"""Half the length, in mm, of the line through the station of a brace across the body; it runs on to the linings."""
OTHER_SIDE = {"treble": "bass", "bass": "treble"}
TOP_LENGTH = 490.0
"""Length of a body that is not described, in mm: common practice."""

_MEASURES = ("depth", "horn", "radius", "heel")
_OUTLINE = ("body.outline", "body.points", "body.file")
_TREBLE = ("body.treble_points", "body.treble_corners", "body.centreline", *(f"cutaway.{key}" for key in _MEASURES))

BODY_ROWS: tuple[Normal, ...] = (
    Normal(
        n.body_outlines,
        tuple[Outline, ...],
        "the body's outline, its neck end at 0",
        (*_OUTLINE, "body.traced_within", *_TREBLE),
        "no body",
    ),
    Normal(
        n.top_length,
        Mm,
        "length of the body on the centreline, from the neck's joint to the tail",
        ("top.length", *_OUTLINE),
        "common practice: 490 mm",
    ),
    Normal(n.body_back_radius, Mm, "radius of the back's dome; flat is without end", ("body.back_radius",), "15 ft"),
    Normal(
        n.cutaway_depth, Mm, "the body's edge at the neck to the hollow's deepest place", ("cutaway.depth",), "none"
    ),
    Normal(n.cutaway_horn, Mm, "the horn's width, across from there to the outline", ("cutaway.horn",), "none"),
    *OPENING_ROWS,
    Normal(n.braces_asked, tuple[BraceAsked, ...], "braces as described", ("brace",), "none"),
    Normal(n.bridge_plate_ahead, Mm, "saddle to the plate's front edge, toward the neck", ("bridge_plate.ahead",)),
    Normal(n.bridge_plate_behind, Mm, "saddle to the plate's back edge, toward the tail", ("bridge_plate.behind",)),
    Normal(n.bridge_plate_length_front, Mm, "the plate's front edge, across", ("bridge_plate.length_front",)),
    Normal(n.bridge_plate_length_back, Mm, "the plate's back edge, across", ("bridge_plate.length_back",)),
    Normal(n.bridge_plate_lean, Radians, "the plate's angle from square", ("bridge_plate.lean",), "as the bridge lies"),
)
"""Every base value of the body that is not simply one key."""


def traced_note(body: Body, name: str) -> str:
    """What is said of where the outline comes from, where it was traced; empty for every other base value."""
    if name != n.body_outlines.address or body.traced_within is None:
        return ""
    return f"from a photograph or a scan, within {fixed(body.traced_within, 2)} mm"


def body_values(instrument: Instrument, outlines: tuple[Outline, ...]) -> Values:
    """The values of `BODY_ROWS`."""
    return {
        n.body_outlines: outlines,
        n.top_length: _top_length(instrument.top.length, outlines),
        n.body_back_radius: instrument.body.back_radius,
        n.cutaway_depth: known(instrument.cutaway.depth),
        n.cutaway_horn: known(instrument.cutaway.horn),
        **opening_values(instrument),
        n.braces_asked: tuple(each for row in instrument.brace for each in _braces(row)),
        **_plate(instrument.bridge_plate),
    }


def _top_length(given: float | None, outlines: tuple[Outline, ...]) -> float:
    own = next((outline.length for outline in outlines), TOP_LENGTH)
    return own if given is None else given


def _plate(plate: BridgePlate) -> Values:
    back = plate.length_front if plate.length_back is None else plate.length_back
    return {
        n.bridge_plate_ahead: known(plate.ahead),
        n.bridge_plate_behind: known(plate.behind),
        n.bridge_plate_length_front: known(plate.length_front),
        n.bridge_plate_length_back: known(back),
        n.bridge_plate_lean: known(plate.lean),
    }


def line_of(row: BraceTable) -> tuple[Point, Point]:
    """Two points on a brace's middle line, along from what it is held to; one across runs from bass to treble."""
    if row.line is not None:
        return row.line
    station = row.station or 0.0
    over, up = ACROSS * math.sin(row.lean), ACROSS * math.cos(row.lean)
    return (station - over, -up), (station + over, up)


def names_of(row: BraceTable) -> tuple[str, ...]:
    """A brace's name, or those of it and its twin, by the side on which their second ends lie."""
    if not row.twin:
        return (row.name,)
    sides = ("treble", "bass") if line_of(row)[1][1] >= 0 else ("bass", "treble")
    return tuple(f"{row.name} {side}" for side in sides)


def mirrored_name(name: str) -> str:
    """The name on the other side: "X treble" for "X bass"; a name with no side stays as it is."""
    base, _, side = name.rpartition(" ")
    return f"{base} {OTHER_SIDE[side]}" if side in OTHER_SIDE else name


def _braces(row: BraceTable) -> Iterator[BraceAsked]:
    names, (start, stop) = names_of(row), line_of(row)
    for name, side in zip(names, (1.0, -1.0), strict=False):
        yield BraceAsked(
            name,
            row.plate,
            row.held_to,
            (start[0], side * start[1]),
            (stop[0], side * stop[1]),
            row.start if side > 0 else mirrored_name(row.start),
            row.stop if side > 0 else mirrored_name(row.stop),
            row.width,
            row.height,
            row.ends,
            row.end_height,
            row.end_length,
            row.wood,
            row.crosses,
            next((each for each in names if each != name), ""),
        )
