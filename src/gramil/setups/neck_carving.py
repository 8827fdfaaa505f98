"""Set-ups for making the neck: its pieces, the scarf and heel, the rod's channel, the head, and carving the back."""

from typing import Any

from gramil import names as n
from gramil.parts.records import CarveStation, NeckPiece, NeckYield
from gramil.quantities import Count, Mm
from gramil.reference import EACH, Ref, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)

ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh")
"""Lines on one side of a neck planed to fifteen flats, the most that there are."""


def setup_neck_blank(plank_choice: NeckYield, plank_pieces: tuple[NeckPiece, ...]) -> Setup:
    """Choose the stock for the neck and saw out its pieces.

    Method: the piece in stock that is used best, or what to look for.
    Source: common practice.
    """
    piece = (
        says(
            "Take {}: it gives necks to the number of {}, and is over by {} in thickness.",
            n.plank_choice.name,
            n.plank_choice.necks,
            n.plank_choice.thickness_over,
        )
        if plank_choice.necks
        else says("No piece of {} in the shop's list gives this neck: find one by the cutting plan.", n.carve_wood)
    )
    blocks = (
        ("Saw the heel's blocks from the same piece, so that grain and colour run on.",) if plank_pieces[1:] else ()
    )
    return Setup(
        "neck-blank",
        "Saw out the neck",
        200,
        (
            BigFigure(n.plank_length, "Neck and head, along the grain", "or more", "rule"),
            BigFigure(n.plank_width, "Width", "or more", "rule"),
            BigFigure(n.plank_thickness, "Plane it to", says("± {}", n.limit_tolerance_height), "calipers"),
        ),
        (
            piece,
            "Grain straight along the plank, seen from the face and from the edge; quartersawn if there is a choice.",
            says("Saw the pieces by the cutting plan, {} for each cut.", n.limit_rip_kerf),
            *blocks,
            "Plane one face and one edge square; strike the centreline on face and back.",
        ),
        says(
            "Calipers at both ends and in the middle: {} everywhere, and the faces out of wind. "
            "A rule along it reads {} before anything is sawn at an angle.",
            n.plank_thickness,
            n.plank_length,
        ),
        ("band saw", "edge tools"),
        ("saw, plane, calipers, rule, square",),
        n.drawing_setup_neck_blank,
        (n.plank_length, n.plank_width, n.plank_thickness),
        on=stuff("neck"),
    )


def setup_neck_scarf(
    plank_scarfed: bool,
    carve_scarf: str,
    carve_heel: str,
    plank_heel_blocks: tuple[NeckPiece, ...],
    plank_toe: tuple[Mm, ...],
) -> Setup:
    """Saw and glue the scarf, and stack the heel.

    Method: one cut at the head's angle; the piece cut off is turned over.
    Source: common practice.
    """
    title = "Scarf and heel"
    if not plank_scarfed and not plank_heel_blocks:
        return skipped("neck-scarf", title, 210, "head, neck and heel are sawn from one piece")
    scarf = (
        BigFigure(
            n.head_angle, "Saw at this angle to the face", says("± {}", n.limit_tolerance_angle), "bevel, protractor"
        ),
        BigFigure(
            n.head_scarf_length, "The scarf's face, along the slope", says("± {}", n.limit_tolerance_outline), "rule"
        ),
        BigFigure(n.plank_shaft, "Neck's end to the cut, on its face", "or more", "rule"),
    )
    heel = (BigFigure(n.neck_heel_depth, "Heel, from the joint with the board to its cap", "or more", "rule"),)
    place = (
        "Lay the piece turned over under the neck, the slopes in one plane, and plane both slopes together."
        if carve_scarf == "on the head"
        else "Lay the piece turned over on the neck's slope; its own slope comes flush with the neck's face."
    )
    steps = (
        "Mark the cut on both edges from the face, and saw from the face to the back. It runs out to a feather edge: "
        "leave "
        "that thick, and keep fingers off it until it is glued.",
        place,
        "Glue it with blocks against sliding at both ends; keep the edges in one line.",
    )
    stack = (
        "Glue the heel's blocks under the neck's end one at a time, their end grain flush with it.",
        *((says("The lowest reach {} past it: the toe of the foot.", n.carve_foot_toe),) if any(plank_toe) else ()),
    )
    return Setup(
        "neck-scarf",
        title,
        210,
        (scarf if plank_scarfed else ()) + (heel if plank_heel_blocks else ()),
        (steps if plank_scarfed else ()) + (stack if plank_heel_blocks else ()),
        says(
            "Measure the sawn slope: {} on a plank {} thick. A wrong bevel shows here at once.",
            n.head_scarf_length,
            n.head_blank,
        )
        if plank_scarfed
        else says("Rule from the face to the last block: {} or more.", n.neck_heel_depth),
        ("band saw", "edge tools", "glue", "clamps"),
        ("saw, bevel, plane, clamps with stops; " + ("blocks as thick as the plank" if carve_heel != "solid" else ""),),
        n.drawing_setup_neck_scarf,
        (n.head_scarf_length,) if plank_scarfed else (n.neck_heel_depth,),
        on=stuff("neck"),
    )


def setup_neck_rod(neck_rod: str, carve_rod_access: str) -> Setup:
    """Cut the truss rod's channel before the board is glued and before the back is carved.

    Method: on the centreline, its ends measured from the zero line.
    Source: common practice.
    """
    title = "Truss rod's channel"
    if neck_rod == "none":
        return skipped("neck-rod", "Channel in the neck", 220, "nothing is let into this neck")
    head = carve_rod_access == "head"
    under = (
        (
            BigFigure(
                n.rod_under_head,
                "Wood left under it where the head begins",
                says("± {}", n.limit_tolerance_height),
                "calipers",
            ),
        )
        if head
        else ()
    )
    return Setup(
        "neck-rod",
        title,
        220,
        (
            BigFigure(
                n.neck_rod_depth,
                "Deep, from the face that the board lies on",
                says("± {}", n.limit_tolerance_height),
                "depth gauge",
            ),
            BigFigure(n.neck_rod_width, "Wide", "the rod slides in by hand", "the rod itself"),
            BigFigure(
                n.rod_start,
                "From the zero line to its end at the head (negative: behind the nut)",
                says("± {}", n.limit_tolerance_outline),
                "rule",
            ),
            BigFigure(
                n.rod_end, "From the zero line to its end at the body", says("± {}", n.limit_tolerance_outline), "rule"
            ),
            BigFigure(
                n.neck_section_under_channel[1],
                "Wood left under it at the first fret",
                says("± {}", n.limit_tolerance_height),
                "calipers",
            ),
            *under,
        ),
        (
            "Measure the rod that is in the hand, its nut and its ends, before setting anything.",
            "Mark both ends from the zero line, on the face. Rout on the centreline in passes, a fence on both sides.",
            says("Open the pocket behind the nut, {} wide, so that the key turns.", n.carve_rod_pocket_width)
            if head
            else "Run it out at the neck's end, where the key comes in through the soundhole.",
            "Try the rod dry, turn it each way that it goes until it only just resists, and see that nothing rattles.",
        ),
        says(
            "A trial channel in an offcut: the rod lies flush, and the depth gauge reads {}. The carved back "
            "comes within {} of the channel's corner at the first fret: deeper shows on the back.",
            n.neck_rod_depth,
            n.rod_corner[1],
        ),
        ("router", "rod"),
        (says("router with two fences, cutter {} or smaller, depth gauge", n.neck_rod_width),),
        n.drawing_setup_neck_rod,
        (n.neck_rod_depth, n.neck_rod_width, n.rod_end),
        on=stuff("neck"),
    )


ACROSS = (
    "Mark each roller's line across through the template, and measure it from the nut.",
    says(
        "Mark both slots from the template, {} wide, {} of wood between them; bore the ends and saw or rout them out.",
        n.head_slot_width,
        n.head_slots_apart,
    ),
    "Square the rollers' lines over to the head's sides.",
    says(
        "Bore from each side, square to it, the hole's middle {} below the face: that is where the "
        "strings meet the rollers.",
        n.head_roller_depth,
    ),
)
"""How a slotted head is worked: its tuners' rollers lie across."""
UPRIGHT = (
    "Prick every post through the template, and measure each from the nut and from the centreline.",
    "Bore from the face, square to it, with waste clamped behind.",
)


def setup_neck_head(head_tuners: str, strings_count: Count, station_fanned: bool) -> Setup:
    """Saw the head's outline and bore for the tuners.

    Method: posts from the nut's face and the centreline, along the head's own face.
    Source: common practice.
    """
    slotted = head_tuners == "across"
    post, mark = ("roller", "place on its roller") if slotted else ("post", "prick")
    # A slanted nut's face has no one distance from a post: the drawing's are from where it crosses the centreline.
    nut = "Nut's face, on the centreline," if station_fanned else "Nut's face"
    return Setup(
        "neck-head",
        "Head and tuners' holes",
        230,
        (
            BigFigure(
                n.head_thickness, "Head with its veneer, planed to", says("± {}", n.limit_tolerance_height), "calipers"
            ),
            BigFigure(n.head_hole, "Holes, diameter", "the tuner's bushing, tried in scrap", "calipers"),
            BigFigure(
                n.head_posts_x[1],
                f"{nut} to the first string's {post}, along the head",
                says("± {}", n.limit_tolerance_outline),
                "rule",
            ),
            BigFigure(
                n.head_roller_depth, "Holes' middle below the face", says("± {}", n.limit_tolerance_outline), "rule"
            )
            if slotted
            else BigFigure(
                n.head_posts_y[1], "That post from the centreline", says("± {}", n.limit_tolerance_outline), "rule"
            ),
            BigFigure(n.head_reach, f"{nut} to the head's end", says("± {}", n.limit_tolerance_outline), "rule"),
        ),
        (
            "Lay the head's template on the face: centreline on centreline, its nut on the nut's place.",
            *(ACROSS if slotted else UPRIGHT),
            "Saw outside the outline, and pare or sand to it.",
        ),
        says(
            f"Before boring, stretch a thread from each nut slot's place to its {mark}: none bends "
            "sideways more than {}. A template turned over shows here.",
            n.limit_sideways_bend,
        ),
        ("band saw", "drill press", *(("router",) if slotted else ()), "edge tools", "sanding"),
        ("drill press, brad-point drill, template of the head, calipers",),
        n.drawing_setup_neck_head,
        (n.head_thickness, n.head_hole, n.head_posts_x[1]),
        (_in_the_slots(strings_count),) if slotted else (),
        on=stuff("neck", "head veneer"),
    )


def _in_the_slots(strings: int) -> Table:
    columns = (("room beside it", n.head_slot_room), ("slot's end toward the nut ramped down", n.head_slot_ramp))
    return Table("Each string in its slot, treble first", columns, tuple(range(1, strings + 1)), "string")


def setup_neck_carve(carve_stations: tuple[CarveStation, ...], carve_facets: Count) -> Setup:
    """Carve the neck's back: flats to lines at the stations, then round, proved with gauge cards.

    Method: flats that touch the back's curve, halved, then rounded to the cards.
    Source: common practice.
    """
    title = "Carve the neck"
    if not carve_stations:
        return skipped("neck-carve", title, 240, "no station lies short of the heel: give stations under [carve]")
    ends = (carve_stations[0], carve_stations[-1]) if len(carve_stations) > 1 else carve_stations
    depths = tuple(
        BigFigure(
            _at(each).whole,
            says("Depth with the board at {}", _at(each).name),
            says("± {}", n.limit_tolerance_height),
            "calipers",
        )
        for each in ends
    )
    return Setup(
        "neck-carve",
        title,
        240,
        depths,
        (
            "Bring the back flat and straight to the depths at the stations; leave the heel and behind the nut thick.",
            "Draw the lines on sides and back at every station, from the table, and join them station to station.",
            says(
                "Plane each flat down to its two lines: the one on the back is {} wide at {}. Then plane off each edge "
                "by half, and again.",
                n.carve_flat_back,
                _at(carve_stations[0]).name,
            ),
            "Round with scraper and long strips of abrasive, trying the cards; run out into heel and head last.",
            says("Leave the heel's cap {} wide at the body and {} long.", n.carve_heel_width, n.carve_heel_cap),
        ),
        "At each station hold its card against the back, square to the centreline: a hair of light at most, its "
        "shoulders on the joint. Calipers read the depths before the card is believed.",
        ("edge tools", "files", "scraper", "sanding"),
        ("spokeshave, rasp, scraper, calipers, gauge cards for the neck",),
        n.drawing_setup_neck_carve,
        tuple(_at(each).whole for each in ends),
        (_stations(carve_stations, carve_facets // 2),),
        on=stuff("neck", "board"),
    )


def _stations(stations: tuple[CarveStation, ...], last: int) -> Table:
    """Every station: its place and size, and its lines; the first stands on the side, the last on the back."""
    station = n.carve_stations[EACH]
    columns: list[tuple[str, Ref[Any]]] = []
    for number in range(1, last + 1):
        line = n.carve_lines[f"{EACH}, line {number}"]
        columns += [(f"{ORDINALS[number - 1]} line, below the joint", line.joint)] if number < last else []
        columns += [(f"{ORDINALS[number - 1]} line, from the centre", line.centre)] if number > 1 else []
    return Table(
        "At each station, alike on both sides",
        (
            ("from the zero line", station.position),
            ("wide", station.width),
            ("deep with the board", station.whole),
            ("deep without it", station.depth),
            *columns,
        ),
        tuple(each.name for each in stations),
        "station",
    )


def _at(station: CarveStation) -> "n.CarveStationRef":
    return n.carve_stations[station.name]
