"""Set-ups for the body's openings: holes that no circle cutter cuts, their rings, ports in the sides."""

import math
from typing import Any

from gramil import names as n
from gramil.description.body.opening_tables import SOUNDHOLE
from gramil.parts.body_records import Ring
from gramil.parts.opening_records import Opening, Port
from gramil.quantities import Mm
from gramil.reference import EACH, Ref, Text, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)

_HOLE, _PORT = n.opening_list[EACH], n.port_list[EACH]
HOLES = (
    ("middle, from the body's edge", _HOLE.x),
    ("aside, treble positive", _HOLE.y),
    ("long", _HOLE.along),
    ("wide", _HOLE.across),
    ("turned", _HOLE.lean),
)
PORTS = (
    ("side", _PORT.side),
    ("middle, from the neck", _PORT.centre),
    ("below the top's edge", _PORT.below),
    ("long", _PORT.along),
    ("high", _PORT.across),
)
PATCHES = (("patch long", _PORT.patch_along), ("patch high", _PORT.patch_across), ("patch thick", _PORT.patch))


def setup_openings(
    opening_main: tuple[Opening, ...],
    opening_further: tuple[Opening, ...],
    opening_shaped: tuple[str, ...],
    rosette_rings: tuple[Ring, ...],
    opening_cutter: Mm,
) -> Setup:
    """Cut the holes in the top that are not round, and further ones, with the channels of their rings.

    Method: windows and islands at the lines themselves, followed by a bearing as large as its cutter.
    Source: common practice.
    """
    title = "Cut the openings in the top"
    here = (*(each for each in opening_main if each.name in opening_shaped), *opening_further)
    if not here:
        return skipped("openings", title, 522, "the soundhole alone is open in the top, and round, or there is none")
    ringed = tuple(row for row, each in enumerate(rosette_rings, 1) if each.round in opening_shaped)
    cutter = BigFigure(n.opening_cutter, "Cutter, its bearing as large as itself", "as measured", "calipers")
    return Setup(
        "openings",
        title,
        522,
        (
            *((cutter,) if opening_shaped and not math.isnan(opening_cutter) else ()),
            *(figure for each in here for figure in _sizes(each)),
        ),
        (
            *((_TEMPLATES,) if opening_shaped else ()),
            *(_struck(each) for each in here),
            *_ring_steps(ringed),
            *((_WINDOW,) if opening_shaped else ()),
            *(_round(each) for each in here if each.name not in opening_shaped),
            "Ease the edge by hand; a tight corner that no cutter reaches is cut with chisel and file.",
        ),
        _proof(here[0]),
        ("router", "knife", "edge tools", "sanding"),
        ("template stuck down with tape, bearing-guided cutter, knife",),
        n.drawing_setup_openings if opening_shaped else None,
        tuple(figure for each in here for figure in _measured(each)),
        _holes((*opening_main, *opening_further)),
        on=stuff("top"),
    )


_TEMPLATES = "Make the templates true to their lines, from the drawing, and strike both lines of each cross on them."
_WINDOW = (
    "Cut each hole last, after its rings are let in and the top is thicknessed: the window stuck on over the cross, "
    "the top on scrap, down in shallow passes, always with the cutter turning against the feed."
)


def _holes(holes: tuple[Opening, ...]) -> tuple[Table, ...]:
    """Where every hole lies, if there are several."""
    return (Table("Holes in the top", HOLES, tuple(each.name for each in holes), "hole"),) if len(holes) > 1 else ()


def _measured(hole: Opening) -> tuple[Ref[Any], ...]:
    """A hole's sizes along and across, or its diameter; the soundhole's are figures of their own."""
    if hole.name == SOUNDHOLE:
        return n.soundhole_along, n.soundhole_across
    at = n.opening_list[hole.name]
    return (at.diameter,) if hole.hole.is_round else (at.along, at.across)


def _sizes(hole: Opening) -> tuple[BigFigure, ...]:
    sizes, near = _measured(hole), says("± {}", n.limit_tolerance_outline)
    called = ("long", "wide") if len(sizes) > 1 else ("its diameter",)
    rows = zip(sizes, called, strict=True)
    return tuple(BigFigure(figure, f"The {hole.name}, {what}", near, "rule") for figure, what in rows)


def _round(hole: Opening) -> Text:
    at = n.opening_list[hole.name]
    return says("The {} is round, {} wide: swing it with the circle cutter about its cross.", at.name, at.diameter)


def _struck(hole: Opening) -> Text:
    at = n.opening_list[hole.name]
    if not hole.y and not hole.lean:
        return says("Strike the {}'s cross on the joint: {} from the neck's end.", at.name, at.x)
    place = says("Strike the {}'s cross: {} from the neck's end", at.name, at.x)
    aside: Text = says(", {} from the joint, treble positive", at.y) if hole.y else ", on the joint"
    turned: Text = says(", turned by {} with its treble end toward the tail", at.lean) if hole.lean else ""
    return place + aside + turned + "."


def _ring_steps(rows: tuple[int, ...]) -> tuple[Text, ...]:
    """Steps for the rings round holes that are not round, by their rows in the list of rings."""
    if not rows:
        return ()
    rings = n.rosette_rings
    return (
        "The rings first. Score both edges of each channel with a knife, along its window and round its island: across "
        "the grain it tears out first.",
        "Rout the channel between window and island, both stuck on over the cross; a bearing runs on either.",
        *(_channel(rings[row]) for row in rows),
        "Bend the ring's strips round the island before glue, warm where it is tightest; join them under the board.",
    )


def _channel(ring: "n.RingRef") -> Text:
    return says(
        "The {}: {} across inside and {} outside, {} deep; it stands a little proud.",
        ring.name,
        ring.inner,
        ring.outer,
        ring.depth,
    )


def _proof(hole: Opening) -> Text:
    at = n.opening_list[hole.name]
    return says(
        "Before anything is cut the window of the {} measures {} along and {} across, and its "
        "cross lies on the one struck. A template turned over, or the window of another ring, shows here.",
        at.name,
        at.along,
        at.across,
    )


def setup_ports(port_list: tuple[Port, ...]) -> Setup:
    """Cut the ports in the sides, a patch glued in behind each first.

    Method: struck from the side's own template; the patch's grain across the side's.
    Source: common practice, from memory.
    """
    title = "Cut the ports in the sides"
    if not port_list:
        return skipped("ports", title, 548, "no port is described")
    names = tuple(each.name for each in port_list)
    patched = tuple(each.name for each in port_list if each.patch > 0)
    return Setup(
        "ports",
        title,
        548,
        tuple(figure for each in port_list for figure in _port_sizes(each)),
        (
            *(_port_struck(each) for each in port_list),
            *((_PATCH,) if patched else ()),
            "Drill a small hole in its middle from outside, and look whether it comes through the patch's middle.",
            "Saw inside the line, and file to it, square to the side; score round it first where the wood splits.",
            "Ease both edges, and seal the end grain with the first coat of finish.",
        ),
        _port_proof(port_list[0]),
        ("hand drill", "knife", "files", "sanding", *(("glue", "clamps") if patched else ())),
        ("the side's template, drill, coping saw, half-round file", *(("caul bent as the side",) if patched else ())),
        n.drawing_setup_side,
        tuple(n.port_list[name].centre for name in names),
        (
            Table("Ports, on the outside of their sides", PORTS, names, "port"),
            *((Table("Patches", PATCHES, patched, "port"),) if patched else ()),
        ),
        on=stuff("sides", "linings"),
    )


_PATCH = (
    "Bend the patch to the side where the port will be, its grain across the side's, and glue it inside between the "
    "linings; leave it under a caul of the same bend until dry."
)


def _port_sizes(port: Port) -> tuple[BigFigure, ...]:
    at, near = n.port_list[port.name], says("± {}", n.limit_tolerance_outline)
    middle = BigFigure(at.centre, f"The {port.name}, from the neck along the {port.side} side", near, "template")
    return (middle, BigFigure(at.below, "Its middle below the top's edge", near, "rule"))


def _port_struck(port: Port) -> Text:
    at = n.port_list[port.name]
    return says(
        f"Lay the template on the outside of the {port.side} side, the neck end at its end, and strike the {{}} "
        "through it: {} along, {} below the top's edge.",
        at.name,
        at.centre,
        at.below,
    )


def _port_proof(port: Port) -> Text:
    at = n.port_list[port.name]
    return says(
        f"Before it is cut: the {{}}'s middle is {{}} from the middle of the neck's end, round the outside "
        f"of the {port.side} side, its line clear of linings and blocks. One struck on the other side shows here.",
        at.name,
        at.centre,
    )
