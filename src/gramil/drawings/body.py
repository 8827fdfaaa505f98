"""The body drawn: the face with its braces, each plate from the inside, the unrolled side, the mould, brace cards.

Plans are in body coordinates: x from the body's edge at the neck, treble up as seen from the face. Pictures of a part
that is not there have no marks.
"""

import numpy as np

from gramil.drawings.marks import Circle, Drawing, Label, Line, Mark, Marks, Point, Polyline, Span, Words, mirrored
from gramil.drawings.pen import handed
from gramil.parts.body_records import BodyBlock, Bout, Brace, Crossing, PlateShape, Ring, SideStation
from gramil.quantities import Mm, Series
from gramil.shapes.outline import Outline

OWNS = ("drawing_", "piece_")

FINENESS = 0.05
"""In mm: an outline is drawn in chords that lie this close to it."""
CARD_GAP = 14.0


def piece_body_outline(body_outlines: tuple[Outline, ...]) -> Marks:
    """The outline and the centreline through it, a little beyond either end."""
    return tuple(mark for outline in body_outlines for mark in _outline(outline))


def _outline(outline: Outline) -> Marks:
    ring = tuple((float(x), float(y)) for x, y in outline.polyline(FINENESS))
    middle = Line((-12.0, 0.0), (outline.length + 12.0, 0.0), "centreline")
    return (Polyline(ring, "outline", closed=True), middle)


def piece_soundhole(
    body_outlines: tuple[Outline, ...],
    soundhole_centre: Mm,
    soundhole_diameter: Mm,
    rosette_rings: tuple[Ring, ...],
) -> Marks:
    """The soundhole with a cross at its centre, and both edges of each ring."""
    if not body_outlines or np.isnan(soundhole_diameter):
        return ()
    x, centre = soundhole_centre, (soundhole_centre, 0.0)
    rings = [Circle(centre, width / 2, "markers") for ring in rosette_rings for width in (ring.inner, ring.outer)]
    return (Circle(centre, soundhole_diameter / 2, "cut"), Line((x, -6.0), (x, 6.0), "centreline"), *rings)


def piece_bridge_on_body(
    body_outlines: tuple[Outline, ...],
    brace_bridge: tuple[Point, ...],
    brace_pins: tuple[Point, ...],
    bridge_pin_diameter: Mm,
    body_saddle: Mm,
    bridge_spread: Mm,
) -> Marks:
    """The bridge's footprint, its pins, and the saddle's line."""
    if not body_outlines:
        return ()
    pins = [Circle(pin, bridge_pin_diameter / 2, "pins") for pin in brace_pins]
    half = bridge_spread / 2
    return (
        Polyline(brace_bridge, "nut", closed=True),
        *pins,
        Line((body_saddle, -half), (body_saddle, half), "strings"),
    )


def piece_braces_hidden(brace_list: tuple[Brace, ...], plate_shapes: tuple[PlateShape, ...]) -> Marks:
    """The top's braces and the bridge plate as they lie under the top: dashed."""
    plates = [Polyline(each.corners, "hidden", closed=True) for each in plate_shapes]
    return (*plates, *(_strip(each, "hidden") for each in _of(brace_list, "top")))


def _of(braces: tuple[Brace, ...], plate: str) -> tuple[Brace, ...]:
    return tuple(each for each in braces if each.plate == plate and each.length > 0)


def _strip(brace: Brace, layer: str) -> Polyline:
    return Polyline(brace.strip.corners, layer, closed=True)


def piece_body_blocks(body_blocks: tuple[BodyBlock, ...]) -> Marks:
    """Neck and tail block."""
    return tuple(Polyline(each.corners, "hidden", closed=True) for each in body_blocks)


def piece_body_sizes(body_bouts: tuple[Bout, ...], body_length: Mm, body_width: Mm) -> Marks:
    """Length under the plan, and the widths at bouts and waist at their places."""
    if np.isnan(body_length):
        return ()
    low = -body_width / 2
    widths: list[Mark] = []
    for bout in body_bouts:
        half = bout.width / 2
        address = f'body_bouts["{bout.name}"].width'
        widths.append(Line((bout.x, -half), (bout.x, half), "dimensions"))
        widths.append(Label((bout.x + 2.0, -half + 8.0), address, f"{bout.name} ", height=3.0))
    return (Span((0.0, low), (body_length, low), -20.0, "body_length"), *widths)


def piece_body_places(body_outlines: tuple[Outline, ...], soundhole_centre: Mm, body_saddle: Mm) -> Marks:
    """How far hole and saddle lie from the body's edge, over the plan."""
    marks: list[Mark] = []
    for outline in body_outlines:
        top = outline.width / 2
        marks.append(Span((0.0, top), (body_saddle, top), 22.0, "body_saddle"))
        if not np.isnan(soundhole_centre):
            marks.append(Span((0.0, top), (soundhole_centre, top), 10.0, "soundhole_centre"))
    return tuple(marks)


def piece_face_words(instrument_name: str, body_width: Mm) -> Marks:
    """Whose face it is, over the plan, and what the dashes are."""
    if np.isnan(body_width):
        return ()
    high = body_width / 2
    return (
        Words((0.0, high + 42.0), f"{instrument_name}: the face", 6.0),
        Words((0.0, high + 34.0), "Dashed: braces, plate and blocks under the top.", 3.0),
    )


def piece_face_plan(
    piece_body_outline: Marks,
    piece_soundhole: Marks,
    piece_bridge_on_body: Marks,
    piece_braces_hidden: Marks,
    piece_body_blocks: Marks,
) -> Marks:
    """The lines of the face and of what lies under it."""
    return (
        *piece_body_outline,
        *piece_body_blocks,
        *piece_braces_hidden,
        *piece_soundhole,
        *piece_bridge_on_body,
    )


def drawing_face_plan(
    piece_face_plan: Marks,
    piece_body_sizes: Marks,
    piece_body_places: Marks,
    piece_face_words: Marks,
    instrument_name: str,
    instrument_handed: str,
) -> Drawing:
    """The face with soundhole, bridge and braces, head to the left, treble up; turned over for the left hand."""
    marks = (*piece_face_plan, *piece_body_sizes, *piece_body_places, *piece_face_words)
    return handed(Drawing("face-plan", f"{instrument_name}, the face", "the face", marks), instrument_handed)


def piece_braces_top(brace_list: tuple[Brace, ...], plate_shapes: tuple[PlateShape, ...]) -> Marks:
    """The top's braces and plate, named."""
    plates = [Polyline(each.corners, "core", closed=True, hatch="across the grain") for each in plate_shapes]
    return (*plates, *_named(brace_list, "top"))


def piece_braces_back(brace_list: tuple[Brace, ...]) -> Marks:
    """The back's braces, named."""
    return _named(brace_list, "back")


def _named(braces: tuple[Brace, ...], plate: str) -> Marks:
    """Strips with their middle lines, each with its length and name along it."""
    marks: list[Mark] = []
    for brace in _of(braces, plate):
        marks += [_strip(brace, "outline"), Line(brace.start, brace.stop, "centreline"), _brace_label(brace)]
    return tuple(marks)


def _brace_label(brace: Brace) -> Label:
    """Beside the brace a quarter of the way along, reading left to right or upward."""
    (x0, y0), (x1, y1) = sorted((brace.start, brace.stop))
    angle = float(np.arctan2(y1 - y0, x1 - x0))
    share = 0.12 if brace.length > 150 else 0.02
    off = brace.width / 2 + 1.2
    at = (x0 + share * (x1 - x0) - off * np.sin(angle), y0 + share * (y1 - y0) + off * np.cos(angle))
    return Label((float(at[0]), float(at[1])), f'brace_list["{brace.name}"].length', f"{brace.name}, ", angle=angle)


def drawing_top_inside(
    piece_body_outline: Marks,
    piece_soundhole: Marks,
    piece_braces_top: Marks,
    piece_body_blocks: Marks,
    instrument_name: str,
    instrument_handed: str,
) -> Drawing:
    """The top from the inside, as it lies for gluing: head to the left, treble down; turned over for the left hand."""
    lines = (*piece_body_outline, *piece_body_blocks, *piece_soundhole, *piece_braces_top) if piece_body_outline else ()
    plan = Drawing("top-inside", f"{instrument_name}, the top from the inside", "the inside", lines)
    return handed(mirrored(plan), instrument_handed)


def drawing_back_inside(
    piece_body_outline: Marks,
    piece_braces_back: Marks,
    piece_body_blocks: Marks,
    instrument_name: str,
    instrument_handed: str,
) -> Drawing:
    """The back from the inside: head to the left, treble up; turned over for the left hand."""
    lines = (*piece_body_outline, *piece_body_blocks, *piece_braces_back) if piece_body_outline else ()
    return handed(
        Drawing("back-inside", f"{instrument_name}, the back from the inside", "the inside", lines), instrument_handed
    )


def drawing_side(
    instrument_name: str,
    side_along: Series[Mm],
    side_upper: Series[Mm],
    side_lower: Series[Mm],
    side_stations: tuple[SideStation, ...],
    side_length: Mm,
) -> Drawing:
    """One side unrolled, at true size, its outside up: top's edge above; the other side is its mirror image."""
    if not side_along.size:
        return Drawing("side", f"{instrument_name}, a side unrolled", "the side", ())
    upper = [(float(x), float(y)) for x, y in zip(side_along, side_upper, strict=True)]
    lower = [(float(x), float(y)) for x, y in zip(side_along, side_lower, strict=True)]
    marks: list[Mark] = [Polyline((*upper, *reversed(lower)), "cut", closed=True)]
    for station in side_stations:
        marks += _station(station, side_along, side_upper, side_lower)
    foot = float(side_lower.min())
    marks += [
        Span((0.0, foot), (side_length, foot), -22.0, "side_length"),
        Words((6.0, 14.0), f"{instrument_name}: one side, outside up, top's edge above", 4.0),
        Words((6.0, 8.0), "Two are wanted, one turned over. Lengths are on the outside of the side.", 2.6),
        Words((side_length / 3, -8.0), "top's edge", 2.6),
        Words((side_length / 3, foot + 12.0), "back's edge", 2.6),
    ]
    return Drawing("side", f"{instrument_name}, a side unrolled", "the side", tuple(marks))


def _station(station: SideStation, along: Series[Mm], upper: Series[Mm], lower: Series[Mm]) -> Marks:
    """A line across the side with its depth, and the bend's place from the neck."""
    x, address = station.along, f'side_stations["{station.name}"]'
    high, low = float(np.interp(x, along, upper)), float(np.interp(x, along, lower))
    turn = np.pi / 2
    last = station.name == "tail end"
    side = x - 2.0 if last or x > 0 else x + 4.0
    marks: list[Mark] = [
        Line((x, low), (x, high), "dimensions"),
        Label((side, low + 8.0), f"{address}.depth", f"{station.name}, deep ", height=2.6, angle=turn),
    ]
    if not np.isnan(station.radius):
        marks += [
            Label((x + 4.0, low + 8.0), f"{address}.along", "from the neck ", height=2.6, angle=turn),
            Label((x + 8.4, low + 8.0), f"{address}.radius", "bend's radius ", height=2.6, angle=turn),
        ]
    return tuple(marks)


def drawing_mould(
    instrument_name: str,
    body_outlines: tuple[Outline, ...],
    body_mould_length: Mm,
    body_mould_half_width: Mm,
    body_mould_wall: Mm,
) -> Drawing:
    """The outside mould: both halves, parted on the centreline, with holes for the bolts that hold them."""
    title = f"{instrument_name}, mould"
    marks: list[Mark] = []
    for outline in body_outlines:
        low, high = -body_mould_wall, outline.length + body_mould_wall
        half = body_mould_half_width
        ring = tuple((float(x), float(y)) for x, y in outline.polyline(FINENESS))
        box: tuple[Point, ...] = ((low, -half), (high, -half), (high, half), (low, half))
        marks += [
            Polyline(ring, "cut", closed=True),
            Polyline(box, "outline", closed=True),
            Line((low, 0.0), (0.0, 0.0), "cut"),
            Line((outline.length, 0.0), (high, 0.0), "cut"),
            Span((low, -half), (high, -half), -12.0, "body_mould_length"),
            Span((high, 0.0), (high, half), -12.0, "body_mould_half_width"),
            Label((low, half + 8.0), "body_mould_thickness", f"{instrument_name}: mould, thick ", height=5.0),
            Words((low, half + 2.0), "The inside is the outside of the sides.", 3.0),
        ]
    return Drawing("mould", title, "the face", tuple(marks))


def drawing_braces(
    instrument_name: str, brace_list: tuple[Brace, ...], brace_crossings: tuple[Crossing, ...]
) -> Drawing:
    """Each brace from its side, at true size, foot down, with its notches: cards to mark and to check by."""
    marks: list[Mark] = []
    y = 0.0
    for brace in (each for each in brace_list if each.length > 0):
        marks += _card(brace, brace_crossings, y)
        y -= brace.height + brace.sagitta + CARD_GAP
    if marks:
        marks.append(Words((0.0, max(each.height for each in brace_list) + 12.0), f"{instrument_name}: braces", 5.0))
    return Drawing("braces", f"{instrument_name}, braces from the side", "the side", tuple(marks))


def _card(brace: Brace, crossings: tuple[Crossing, ...], y: float) -> Marks:
    address = f'brace_list["{brace.name}"]'
    foot = [(x, y + z) for x, z in _foot(brace)]
    top = [(x, y + z) for x, z in _top(brace)]
    after = (brace.length + 4.0, y)
    return (
        Polyline((*foot, *reversed(top)), "cut", closed=True),
        *_notches(brace, crossings, y),
        Label((after[0], y + 6.5), f"{address}.length", f"{brace.name} ({brace.plate}), long ", height=2.6),
        Label((after[0], y + 2.0), f"{address}.height", f"{brace.wood}, high ", height=2.6),
        Label((after[0], y - 2.5), f"{address}.width", f"{brace.ends}, wide ", height=2.6),
        Label((after[0] + 62.0, y + 2.0), f"{address}.radius", "foot's radius ", height=2.6),
        Label((after[0] + 62.0, y - 2.5), f"{address}.sagitta", "foot's sagitta ", height=2.6),
    )


def _rise(brace: Brace, x: float) -> float:
    """How high the foot's arch stands over its chord at x from the first end: dome side down, so it hangs below."""
    if np.isinf(brace.radius):
        return 0.0
    half = brace.length / 2
    return float(np.sqrt(brace.radius**2 - (x - half) ** 2) - np.sqrt(brace.radius**2 - half**2))


def _foot(brace: Brace) -> list[Point]:
    """The foot, hanging below its chord: the plate is glued under it, domed outward."""
    return [(float(x), -_rise(brace, float(x))) for x in np.linspace(0.0, brace.length, 49)]


def _top(brace: Brace) -> list[Point]:
    """The upper edge: level, worked down at the ends in a straight run or, scalloped, in a hollow one."""
    run = min(brace.end_length, brace.length / 2)
    if brace.ends == "square":
        return [(0.0, brace.height), (brace.length, brace.height)]
    low, high = brace.end_height, brace.height
    steps = np.linspace(0.0, 1.0, 17)
    shares = (1 - np.cos(np.pi * steps)) / 2 if brace.ends == "scalloped" else steps
    near = [(float(run * step), float(low + (high - low) * share)) for step, share in zip(steps, shares, strict=True)]
    return [*near, *((brace.length - x, z) for x, z in reversed(near))]


def _notches(brace: Brace, crossings: tuple[Crossing, ...], y: float) -> Marks:
    """The notch of each crossing: open upward in the brace that lies under, downward in the one that lies over."""
    marks: list[Mark] = []
    for row, each in enumerate(crossings, 1):
        if brace.name == each.under:
            marks += _notch(each.along_under, each.width_under, y + brace.height - each.depth_under, y + brace.height)
            marks.append(_depth(each.along_under, y + brace.height + 2.0, f"brace_crossings[{row}].depth_under"))
        if brace.name == each.over:
            bottom = y - _rise(brace, each.along_over)
            marks += _notch(each.along_over, each.width_over, bottom, bottom + each.depth_over)
            marks.append(_depth(each.along_over, y + brace.height + 2.0, f"brace_crossings[{row}].depth_over"))
    return tuple(marks)


def _notch(along: Mm, width: Mm, low: float, high: float) -> Marks:
    left, right = along - width / 2, along + width / 2
    return (Polyline(((left, low), (right, low), (right, high), (left, high)), "slots", closed=True),)


def _depth(along: Mm, y: float, address: str) -> Label:
    return Label((along, y), address, "notch deep ", height=2.4, anchor="middle")
