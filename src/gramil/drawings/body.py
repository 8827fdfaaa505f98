"""The body drawn: the face with what lies under it, the mould.

Plans are in body coordinates: x from the body's edge at the neck, treble up as seen from the face. Pictures of a part
that is not there have no marks.
"""

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.drawings.kerf import Machine, cut_by
from gramil.drawings.marks import Circle, Drawing, Label, Line, Mark, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import handed
from gramil.parts.bevel_records import BevelLaid
from gramil.parts.body_records import BodyBlock, Bout, Brace, PlateShape, Spot
from gramil.parts.edge_records import EdgeLines
from gramil.quantities import Mm
from gramil.shapes.edge_bevel import EdgeBevel
from gramil.shapes.half_outline import HalfOutline
from gramil.shapes.outline import Outline
from gramil.shapes.polyline import cut_between, thinned
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("drawing_", "piece_")

FINENESS = 0.05
"""In mm: an outline is drawn in chords that lie this close to it."""
CUT_FINENESS = 0.01
"""The same of a line that a machine follows."""
INSIDE = 12.0
"""From the mould's edge to its dimensions, in its wood, in mm: they stand on the pages that it is cut by."""
HALVES_APART = 8.0
"""From the centreline to either half of the mould as drawn, in mm, so that each is cut out by itself."""


def piece_body_outline(body_outlines: tuple[Outline, ...]) -> Marks:
    """The outline and the centreline through it, a little beyond either end."""
    return tuple(mark for outline in body_outlines for mark in _outline(outline))


def _outline(outline: Outline) -> Marks:
    ring = tuple((float(x), float(y)) for x, y in outline.polyline(FINENESS))
    middle = Line((-12.0, 0.0), (outline.length + 12.0, 0.0), "centreline")
    return (Polyline(ring, "outline", closed=True), middle)


def piece_binding_lines(channel_lines: tuple[EdgeLines, ...], bevel_laid: tuple[BevelLaid, ...]) -> Marks:
    """The insides of binding and purfling round the top, as they show on its face.

    At a bevel they stop; the innermost steps out to its ends and goes along its line, up to which the top's wood is
    seen.
    """
    rings = [ring for each in channel_lines if each.name == "top" for ring in dict.fromkeys((each.bound, each.purfled))]
    bevel = next((each.shape for each in bevel_laid if each.asked.plate == "top"), None)
    if bevel is None:
        return tuple(Polyline(_inner_ring(ring), "markers", closed=True) for ring in rings)
    line = tuple((float(x), float(y)) for x, y in bevel.face_line[:, :2])
    outer = (Polyline(_stopped(ring, bevel, ()), "markers") for ring in rings[:-1])
    wood = (Polyline(_stopped(ring, bevel, line), "markers", closed=True) for ring in rings[-1:])
    return (*outer, *wood)


def _inner_ring(ring: Outline) -> tuple[Point, ...]:
    """A line inside the outline, in chords: the points that it goes through are many more than a drawing needs."""
    half, below = _halves(ring)
    return (*half, *((x, -y) for x, y in below[-2:0:-1]))


def _halves(ring: Outline) -> tuple[list[Point], list[Point]]:
    """Both halves of a line inside the outline from neck to tail, each drawn above the axis; the bass one second."""
    half = _pairs(thinned(np.array(ring.points), FINENESS / 2))
    return half, half if ring.alike else _pairs(thinned(np.array(ring.bass), FINENESS / 2))


def _pairs(points: NDArray[np.float64]) -> list[Point]:
    return [(float(x), float(y)) for x, y in points]


def _stopped(ring: Outline, bevel: EdgeBevel, between: tuple[Point, ...]) -> tuple[Point, ...]:
    """Such a line from the bevel's neck end round by the treble side to its tail end; then what lies `between` them,
    from the neck end on and above the axis.
    """
    half, below = _halves(ring)
    before, after = cut_between(np.array(below), bevel.edge_line[0, :2], bevel.edge_line[-1, :2])
    bass = [*reversed(_pairs(after[:-1])), *reversed(between)]
    return (*((x, -y) for x, y in reversed(_pairs(before[1:]))), *half, *((x, -y) for x, y in bass))


def piece_bridge_on_body(
    body_outlines: tuple[Outline, ...],
    brace_bridge: tuple[Quadrilateral, ...],
    brace_pins: tuple[Spot, ...],
    bridge_pin_diameter: Mm,
    piece_saddle_on_body: Marks,
) -> Marks:
    """The bridge's footprint, its pins, and the saddle's line."""
    if not body_outlines:
        return ()
    pins = [Circle(pin.point, bridge_pin_diameter / 2, "pins") for pin in brace_pins]
    return (
        *(Polyline(each.corners, "nut", closed=True, hatch="left clear") for each in brace_bridge),
        *pins,
        *piece_saddle_on_body,
    )


def piece_saddle_on_body(saddle_end_treble: Mm, saddle_end_bass: Mm, saddle_reach: Mm, body_edge: Mm) -> Marks:
    """The middle line of the saddle's slot, as it slants, end to end."""
    treble, bass = saddle_end_treble - body_edge, saddle_end_bass - body_edge
    return (Line((bass, -saddle_reach), (treble, saddle_reach), "strings"),)


def piece_braces_hidden(brace_list: tuple[Brace, ...], plate_shapes: tuple[PlateShape, ...]) -> Marks:
    """The top's braces and the bridge plate as they lie under the top: dashed."""
    plates = [Polyline(each.corners, "hidden", closed=True) for each in plate_shapes]
    return (*plates, *(_strip(each, "hidden") for each in _of(brace_list, "top")))


def _of(braces: tuple[Brace, ...], plate: str) -> tuple[Brace, ...]:
    return tuple(each for each in braces if each.plate == plate and each.length > 0)


def _strip(brace: Brace, layer: str) -> Polyline:
    return Polyline(brace.footprint, layer, closed=True)


def piece_body_blocks(body_outlines: tuple[Outline, ...], body_blocks: tuple[BodyBlock, ...]) -> Marks:
    """Neck and tail block, shaped to the outline's ends."""
    return tuple(
        Polyline(_shaped(block, outline), "hidden", closed=True) for outline in body_outlines for block in body_blocks
    )


def _shaped(block: BodyBlock, outline: Outline) -> tuple[Point, ...]:
    """The block's straight inner edge, and the run of the outline between its sides."""
    at_neck, half = block.start_x == 0, block.half_width
    ring = [(float(x), float(y)) for x, y in outline.polyline(FINENESS)]
    end = sorted((y, x) for x, y in ring if -half < y < block.treble and (x < outline.length / 2) == at_neck)
    inner = block.end_x if at_neck else block.start_x
    outer = [end[0][1], end[-1][1]] if end else [block.start_x if at_neck else block.end_x] * 2
    return (
        (inner, -half),
        (outer[0], -half),
        *((x, y) for y, x in end),
        (outer[1], block.treble),
        (inner, block.treble),
    )


def piece_body_sizes(body_bouts: tuple[Bout, ...], body_length: Mm, body_reach_bass: Mm) -> Marks:
    """Length under the plan, and the widths at bouts and waist at their places."""
    if np.isnan(body_length):
        return ()
    low = -body_reach_bass
    widths: list[Mark] = []
    for bout in body_bouts:
        bass, treble = bout.edges
        address = n.body_bouts[bout.name].width
        widths.append(Line(bass, treble, "dimensions"))
        widths.append(Label((bout.x, bass[1] - 8.0), address, f"{bout.name} ", anchor="middle"))
    return (Span((0.0, low), (body_length, low), -20.0, n.body_length, before="body "), *widths)


def piece_face_plan(
    piece_body_outline: Marks,
    piece_binding_lines: Marks,
    piece_openings: Marks,
    piece_bridge_on_body: Marks,
    piece_braces_hidden: Marks,
    piece_body_blocks: Marks,
    piece_bevels_on_face: Marks,
) -> Marks:
    """The lines of the face and of what lies under it; the top's wood along the grain, inside its binding.

    A bound top's inner line goes along the bevel's, which is not drawn twice.
    """
    return (
        *_grained((*piece_body_outline, *piece_binding_lines)),
        *piece_body_blocks,
        *piece_braces_hidden,
        *piece_openings,
        *piece_bridge_on_body,
        *(() if piece_binding_lines else piece_bevels_on_face),
    )


def _grained(marks: Marks) -> Marks:
    """The rings round the top and what else is given, the innermost ring with its wood; it comes last of them."""
    rings = [mark for mark in marks if isinstance(mark, Polyline) and mark.closed]
    return tuple(
        replace(mark, hatch="along the grain") if isinstance(mark, Polyline) and mark is rings[-1] else mark
        for mark in marks
    )


def drawing_mould(
    instrument_name: str,
    instrument_handed: str,
    body_outlines: tuple[Outline, ...],
    body_mould_length: Mm,
    body_mould_half_width: Mm,
    body_mould_wall: Mm,
    piece_router: Machine,
) -> Drawing:
    """The outside mould: its two halves, drawn apart so that each is a ring of its own; they meet on the centreline.

    Where the halves are not alike each is named, and a left-handed mould is turned over as its face is.

    Used at: mould_made, blocks_made, sides_fitted, blocks_glued.
    """
    title = f"{instrument_name}, mould"
    marks: list[Mark] = []
    for outline in body_outlines:
        low, high, top = -body_mould_wall, outline.length + body_mould_wall, body_mould_half_width + HALVES_APART
        upper, lower = (_mould_half(each, low, high, body_mould_half_width) for each in outline.halves)
        marks += [
            Polyline(upper, "cut", closed=True),
            Polyline(tuple((x, -y) for x, y in lower), "cut", closed=True),
            Line((low, 0.0), (high, 0.0), "centreline"),
            Span((low, -top), (high, -top), INSIDE, n.body_mould_length, layer="list", before="mould long "),
            Span((high, HALVES_APART), (high, top), INSIDE, n.body_mould_half_width, layer="list", before="half wide "),
            Label((low, top + 8.0), n.body_mould_thickness, f"{instrument_name}: mould, thick ", height=5.0),
            Words((low, top + 2.0), "The inside is the outside of the sides; the halves meet on the centreline.", 3.0),
        ]
        if not outline.alike:
            at = (low + 10.0, top - HALVES_APART - 10.0)
            marks += [Words(at, "treble side", 5.0), Words((at[0], -at[1]), "bass side", 5.0)]
    drawing = Drawing("mould", title, "the face", tuple(marks))
    alike = all(each.alike for each in body_outlines)
    return cut_by(piece_router, drawing if alike else handed(drawing, instrument_handed))


def _mould_half(half: HalfOutline, low: Mm, high: Mm, wide: Mm) -> tuple[Point, ...]:
    """Once round the treble half, from its outer corner at the neck: its boards, and the outline's half in them."""
    inside = [(float(x), max(0.0, float(y))) for x, y in half.curve.polyline(CUT_FINENESS)]
    ring = ((low, wide), (low, 0.0), *inside, (high, 0.0), (high, wide))
    return tuple((x, y + HALVES_APART) for x, y in ring)
