"""Set-ups for the body: the mould, bending the sides, sawing out the braces, gluing them to top and back."""

import math
from typing import Any

from gramil import names as n
from gramil.parts.body_records import Bend, Billet, Bout, Brace, Crossing, PlateShape, SideStation, Stick
from gramil.quantities import Count, Mm, Ratio
from gramil.reference import EACH, Ref, Text, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped
from gramil.setups.treble_lines import mould_halves, mould_proof, treble_bending, treble_sizes, treble_stations

OWNS = ("setup_",)

NO_BODY = "no body is described"
_EACH = n.brace_list[EACH]
_NOTCH = n.brace_crossings[EACH]
FEET = (("long", _EACH.length), ("full by", _EACH.sagitta), ("high", _EACH.height), ("wide", _EACH.width))
ENDS = (
    ("first end, from the neck", _EACH.start_x),
    ("across, treble positive", _EACH.start_y),
    ("second end, from the neck", _EACH.stop_x),
    ("across, treble positive", _EACH.stop_y),
)
NOTCHES = (
    ("lower, at", _NOTCH.along_under),
    ("from above", _NOTCH.depth_under),
    ("upper, at", _NOTCH.along_over),
    ("from its foot", _NOTCH.depth_over),
)
STICKS = (
    ("long", n.stick_list[EACH].length),
    ("wide", n.stick_list[EACH].width),
    ("high", n.stick_list[EACH].height),
    ("of", n.stick_list[EACH].wood),
)


def setup_mould(body_bouts: tuple[Bout, ...], bend_treble: tuple[Bend, ...]) -> Setup:
    """Saw the mould, two halves and a joint down the centreline.

    Method: the outline at full size, and a wall outside it.
    Source: common practice.
    """
    if not body_bouts:
        return skipped("mould", "Make the mould", 500, NO_BODY)
    return Setup(
        "mould",
        "Make the mould",
        500,
        (
            BigFigure(n.body_length, "Body, neck end to tail", says("± {}", n.limit_tolerance_outline), "rule"),
            BigFigure(n.body_width, "Widest", says("± {}", n.limit_tolerance_outline), "rule"),
            BigFigure(n.body_mould_length, "Blank for the mould, long", "or more", "rule"),
            BigFigure(n.body_mould_half_width, "Each half, wide", "or more", "rule"),
            BigFigure(n.body_mould_thickness, "Thick, so that the sides stand out of it", "about", "rule"),
        ),
        (
            "Stick the printed mould to the first half, true to its straight edge, and saw outside the line.",
            "Work down to the line, square to the face; a curve felt with the thumb tells more than the eye.",
            *mould_halves(bend_treble),
        ),
        mould_proof(bend_treble),
        ("band saw", "files", "trimmer", "hand drill"),
        ("saw, rasp, trimmer with a following cutter, square, drill",),
        n.drawing_mould,
        (n.body_length, n.body_width),
        on=stuff("plywood"),
    )


def setup_sides(
    side_stations: tuple[SideStation, ...],
    treble_side_stations: tuple[SideStation, ...],
    bend_treble: tuple[Bend, ...],
    bend_thin_to: Mm,
    body_wall: Mm,
    foot_there: bool,
) -> Setup:
    """Thickness, mark and bend the sides.

    Method: stations along the unrolled side are where waist and bouts come in the bend.
    Source: common practice.
    """
    if not side_stations:
        return skipped("sides", "Bend the sides", 510, NO_BODY)
    marks = tuple(
        says(
            "Strike {}: {} from the neck, {} deep.",
            n.side_stations[each.name].name,
            n.side_stations[each.name].along,
            n.side_stations[each.name].depth,
        )
        for each in side_stations
    )
    along = "The bass side, neck to tail" if treble_side_stations else "Neck to tail along the side"
    return Setup(
        "sides",
        "Bend the sides",
        510,
        (
            BigFigure(n.side_blank_length, "Each side, long", "or more", "rule"),
            BigFigure(n.side_blank_width, "Wide", "or more", "rule"),
            BigFigure(n.body_wall, "Thick", says("± {}", n.limit_tolerance_height), "calipers, all along"),
            BigFigure(n.side_length, along, says("± {}", n.limit_tolerance_outline), "template"),
            BigFigure(n.side_length_middle, "The same in the middle of its thickness", "", "worked out"),
            *treble_sizes(treble_side_stations),
            BigFigure(n.body_tightest_bend, "Tightest bend, radius", "", "template"),
        ),
        (
            "Book-match the two sides; mark the face, the edge toward the back, and the neck end on both.",
            "Lay on the template, and saw the back's edge to its curve, leaving the line.",
            *marks,
            *treble_bending(bend_treble, body_wall > bend_thin_to),
            "Try an offcut at the tightest bend first. Bend the waist first, then the lower bout, then the upper.",
            _ends_last(foot_there),
        ),
        "Each station's mark meets its place in the mould: the waist at the waist. A side bent end for end shows here.",
        ("bending iron", "band saw", "edge tools", "drum sander"),
        (says("sides of {}; mould, hot iron or bending form, template", n.body_side_wood),),
        n.drawing_setup_side,
        (n.body_wall, n.side_length, *((n.treble_side_length,) if treble_side_stations else ())),
        treble_stations(treble_side_stations),
        on=stuff("sides", "linings"),
    )


def _ends_last(let_in: bool) -> Text:
    if let_in:
        return says(
            "Leave them in the mould until cold and dry; trim the tail's ends. The neck's are cut as the sides are let "
            "into the heel: {} from the centreline.",
            n.foot_slot_bottom,
        )
    return "Leave them in the mould until cold and dry; trim to the template's ends last."


def setup_brace_stock(
    stick_list: tuple[Stick, ...],
    stick_billets: tuple[Billet, ...],
    stick_wanting: tuple[Stick, ...],
    brace_crossings: tuple[Crossing, ...],
) -> Setup:
    """Split and plane the braces' stock, by the cut list.

    Method: one line a piece of stock that yields some; one row a stick: what it is for, its length, width and height.
    Source: common practice.
    """
    if not stick_list:
        return skipped("brace-stock", "Saw out the braces", 520, "no brace is described")
    stock = tuple(
        says(
            "{} yields {} of the sticks, and {} of stick besides",
            n.stick_billets[each.name].name,
            n.stick_billets[each.name].sticks,
            n.stick_billets[each.name].left,
        )
        for each in stick_billets
    )
    short = ("The stock on hand does not yield every stick: see what was found.",) if stick_wanting else ()
    longest = stick_list[0].name
    return Setup(
        "brace-stock",
        "Saw out the braces",
        520,
        (
            BigFigure(n.stick_list[longest].length, "The longest", "or more", "rule"),
            BigFigure(n.stick_list[longest].height, "Its height", "or more", "calipers"),
        ),
        (
            "Split the billet along the grain, never saw first: run-out in a brace is half its strength.",
            "Growth rings upright, square to the plate. Plane two faces true; saw to width.",
            *short,
        ),
        "Split a shaving off the end: it runs straight along the edge. Where it runs out, keep it for short braces.",
        ("edge tools", "knife", "table saw"),
        ("froe or knife, plane, saw", *stock),
        n.drawing_setup_braces,
        (n.stick_list[longest].length,),
        (
            Table("Sticks", STICKS, tuple(each.name for each in stick_list), "for"),
            *_notches(brace_crossings),
        ),
        on=stuff("braces"),
    )


def _notches(crossings: tuple[Crossing, ...]) -> tuple[Table, ...]:
    """Where the notches lie from each brace's first end, and how deep they are; nothing if no braces cross."""
    names = tuple(each.name for each in crossings)
    return (Table("Notches, from each brace's first end", NOTCHES, names, "crossing"),) if names else ()


def setup_brace_top(brace_list: tuple[Brace, ...], brace_crossings: tuple[Crossing, ...]) -> Setup:
    """Arch the top braces' feet, cut the crossing, and glue them with the bridge plate.

    Method: each brace's foot is the dome's own arc along its line.
    Source: common practice.
    """
    braces = tuple(each for each in brace_list if each.plate == "top")
    if not braces:
        return skipped("brace-top", "Brace the top", 530, "no top brace is described")
    return _bracing("brace-top", "Brace the top", 530, braces, _halvings(braces, brace_crossings), n.drawing_top_inside)


def _halvings(braces: tuple[Brace, ...], crossings: tuple[Crossing, ...]) -> tuple[Text, ...]:
    """A line for each crossing of these braces; both of a crossing are glued to one plate."""
    names = {each.name for each in braces}
    on = "flat board" if _flat(braces) else "dish"
    return tuple(_halving(n.brace_crossings[each.name], on) for each in crossings if each.under in names)


def _flat(braces: tuple[Brace, ...]) -> bool:
    """Whether the plate of these braces is flat: it is then braced on a flat board."""
    return all(math.isinf(each.radius) for each in braces)


def _halving(at: "n.CrossingRef", on: str) -> Text:
    return says(
        "Halve {}, which cross at {}: {} from above, {} deep, {} from its foot, {} deep. "
        f"Dry first: both feet on the {on}.",
        at.name,
        at.angle,
        at.under,
        at.depth_under,
        at.over,
        at.depth_over,
    )


def setup_bridge_plate(
    plate_shapes: tuple[PlateShape, ...], brace_legs: tuple[str, ...], plate_slant: Ratio, top_radius: Mm
) -> Setup:
    """Cut the bridge plate, fit it between the legs of the X if there is one, and glue it.

    Method: held to the saddle, its edges from the body's edge.
    Source: common practice.
    """
    if not plate_shapes:
        return skipped("bridge-plate", "Bridge plate", 535, "no bridge plate is described")
    way = says("leaning as the bridge, {} from square", n.plate_lean) if plate_slant else "square to the centreline"
    on = "on a flat board" if math.isinf(top_radius) else "in the dish"
    fitted = ("Bevel its ends to the legs of the X until no light shows, plate on its lines.",) if brace_legs else ()
    return Setup(
        "bridge-plate",
        "Bridge plate",
        535,
        (
            BigFigure(n.bridge_plate_thickness, "Thick", says("± {}", n.limit_tolerance_height), "calipers"),
            BigFigure(n.plate_length, "The piece for it, long", "or more", "rule"),
            BigFigure(n.plate_width, "Front to back", says("± {}", n.limit_tolerance_outline), "rule"),
            BigFigure(
                n.bridge_plate_length_front, "Front edge, across", says("± {}", n.limit_tolerance_outline), "rule"
            ),
            BigFigure(n.bridge_plate_length_back, "Back edge, across", says("± {}", n.limit_tolerance_outline), "rule"),
            BigFigure(
                n.plate_front, "From the body's edge to its front", says("± {}", n.limit_tolerance_outline), "rule"
            ),
        ),
        (
            says(
                "Saw it from {}, the grain across the top's, or leaning a little: it must not split under "
                "the strings' pull.",
                n.bridge_plate_wood,
            ),
            "Strike its front line on the inside of the top, " + way + ".",
            *fitted,
            f"Dry first, {on}. Glue, and clamp from the middle out.",
        ),
        says(
            "Before glue: prick through at the saddle's line, {} from the body's edge: inside the plate.", n.body_saddle
        ),
        ("hand saw", "edge tools", "glue", "clamps"),
        (f"saw, plane, {'flat board' if math.isinf(top_radius) else 'dish'}, clamps that reach",),
        n.drawing_top_inside,
        (n.plate_front, n.bridge_plate_thickness),
        on=stuff("bridge plate", "top"),
    )


def setup_brace_back(brace_list: tuple[Brace, ...], brace_crossings: tuple[Crossing, ...]) -> Setup:
    """Arch the back braces' feet, cut their crossings, and glue them.

    Method: each brace's foot is the dome's own arc along its line.
    Source: common practice.
    """
    braces = tuple(each for each in brace_list if each.plate == "back")
    if not braces:
        return skipped("brace-back", "Brace the back", 540, "no back brace is described")
    return _bracing(
        "brace-back", "Brace the back", 540, braces, _halvings(braces, brace_crossings), n.drawing_back_inside
    )


def _bracing(
    name: str, title: str, order: Count, braces: tuple[Brace, ...], more: tuple[Text, ...], drawing: Ref[Any]
) -> Setup:
    longest = max(braces, key=lambda each: each.length).name
    at, names, flat = n.brace_list[longest], tuple(each.name for each in braces), _flat(braces)
    radius = BigFigure(at.radius, "Radius of the feet, the longest brace", "as the dish", "brace card or dish")
    return Setup(
        name,
        title,
        order,
        (
            *(() if flat else (radius,)),
            BigFigure(
                at.sagitta,
                "Its foot is straight: full by" if flat else "Its foot is full by",
                says("± {}", n.limit_tolerance_height),
                "straightedge: no light" if flat else "straightedge: light at both ends",
            ),
            BigFigure(n.limit_gluing_humidity, "Air for gluing, relative humidity", "", "hygrometer"),
        ),
        (
            "Wood settled in the air for gluing first: see whether it is ready.",
            "Strike every line on the inside of the plate from the centreline, by the drawing.",
            "Plane each foot straight, and as high as the table says."
            if flat
            else "Arch each foot as the table says: full in the middle by that much, and that high there.",
            *more,
            f"Glue {'on a flat board' if flat else 'in the dish'}, longest first; ends tapered or let in as described; "
            "carve when dry.",
        ),
        "Each foot stands on the flat board without light under it, before glue. A full foot bends the plate."
        if flat
        else "Each foot stands on the dish without light under it, before glue. A flat foot pulls the dome out.",
        ("edge tools", *(("hand saw",) if more else ()), "sanding", "glue", "clamps"),
        ("flat board, go-bars or clamps, plane" if flat else "dish or brace cards, go-bars or clamps, plane",),
        drawing,
        (at.sagitta,),
        (
            Table("Braces, as they are numbered on the drawing", FEET, names, "brace", numbered=True),
            Table("Where their ends lie, by the drawing", ENDS, names, "brace", numbered=True),
        ),
        on=stuff(braces[0].plate, "braces", "linings"),
    )
