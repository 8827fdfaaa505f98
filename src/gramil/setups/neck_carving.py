"""Set-ups for making the neck: its pieces, the scarf and heel, the rod's channel, the head, and carving the back."""

from gramil.parts.records import CarveStation, NeckPiece, NeckYield
from gramil.quantities import Count
from gramil.setups.lines import BY_HAND, POWERED
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)

ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh")
"""Lines on one side of a neck planed to fifteen flats, the most that there are."""
NECK_DUST = "Dust of {carve_wood}: fine dust of any wood harms. Extraction at the tool and a respirator."


def setup_neck_blank(plank_choice: NeckYield, plank_pieces: tuple[NeckPiece, ...]) -> Setup:
    """Choose the stock for the neck and saw out its pieces.

    Method: the piece in stock that is used best, or what to look for.
    Source: common practice.
    """
    piece = (
        "Take {plank_choice.name}: it gives necks to the number of {plank_choice.necks}, and is over by "
        "{plank_choice.thickness_over} in thickness."
        if plank_choice.necks
        else "No piece of {carve_wood} in the shop's list gives this neck: find one by the cutting plan."
    )
    blocks = (
        ("Saw the heel's blocks from the same piece, so that grain and colour run on.",) if plank_pieces[1:] else ()
    )
    return Setup(
        "neck-blank",
        "Saw out the neck",
        200,
        (
            BigFigure("plank_length", "Neck and head, along the grain", "or more", "rule"),
            BigFigure("plank_width", "Width", "or more", "rule"),
            BigFigure("plank_thickness", "Plane it to", "± {limit_tolerance_height}", "calipers"),
        ),
        (
            piece,
            "Grain straight along the plank, seen from the face and from the edge; quartersawn if there is a choice.",
            "Saw the pieces by the cutting plan, {limit_rip_kerf} for each cut.",
            *blocks,
            "Plane one face and one edge square; strike the centreline on face and back.",
        ),
        "Calipers at both ends and in the middle: {plank_thickness} everywhere, and the faces out of wind. "
        "A rule along it reads {plank_length} before anything is sawn at an angle.",
        (POWERED, NECK_DUST),
        ("saw, plane, calipers, rule, square",),
        "setup-neck-blank",
        ("plank_length", "plank_width", "plank_thickness"),
    )


def setup_neck_scarf(
    plank_scarfed: bool, carve_scarf: str, carve_heel: str, plank_heel_blocks: tuple[NeckPiece, ...]
) -> Setup:
    """Saw and glue the scarf, and stack the heel.

    Method: one cut at the head's angle; the piece cut off is turned over.
    Source: common practice.
    """
    title = "Scarf and heel"
    if not plank_scarfed and not plank_heel_blocks:
        return skipped("neck-scarf", title, 210, "head, neck and heel are sawn from one piece")
    scarf = (
        BigFigure("head_angle", "Saw at this angle to the face", "", "bevel, protractor"),
        BigFigure("head_scarf_length", "The scarf's face, along the slope", "± {limit_tolerance_outline}", "rule"),
        BigFigure("plank_shaft", "Neck's end to the cut, on its face", "or more", "rule"),
    )
    heel = (BigFigure("neck_heel_depth", "Heel, from the joint with the board to its cap", "or more", "rule"),)
    place = (
        "Lay the piece turned over under the neck, the slopes in one plane, and plane both slopes together."
        if carve_scarf == "on the head"
        else "Lay the piece turned over on the neck's slope; its own slope comes flush with the neck's face."
    )
    steps = (
        "Mark the cut on both edges from the face, and saw from the face to the back.",
        place,
        "Glue it with blocks against sliding at both ends; keep the edges in one line.",
    )
    stack = ("Glue the heel's blocks under the neck's end one at a time, their end grain flush with it.",)
    return Setup(
        "neck-scarf",
        title,
        210,
        (scarf if plank_scarfed else ()) + (heel if plank_heel_blocks else ()),
        (steps if plank_scarfed else ()) + (stack if plank_heel_blocks else ()),
        "Measure the sawn slope: {head_scarf_length} on a plank {head_blank} thick. A wrong bevel shows here at once."
        if plank_scarfed
        else "Rule from the face to the last block: {neck_heel_depth} or more.",
        (POWERED, "The cut runs out to a feather edge: leave it thick, and keep fingers off it until it is glued."),
        (
            "saw, bevel, plane, clamps with stops; "
            + ("blocks as thick as the plank" if carve_heel == "stacked" else ""),
        ),
        "setup-neck-scarf",
        ("head_scarf_length",) if plank_scarfed else ("neck_heel_depth",),
    )


def setup_neck_rod(neck_rod: str, carve_rod_access: str) -> Setup:
    """Cut the truss rod's channel before the board is glued and before the back is carved.

    Method: on the centreline, its ends measured from the zero line.
    Source: common practice.
    """
    title = "Truss rod's channel"
    if neck_rod == "none":
        return skipped("neck-rod", title, 220, "this neck has no truss rod")
    head = carve_rod_access == "head"
    under = (BigFigure("rod_under_head", "Wood left under it where the head begins", "", "calipers"),) if head else ()
    return Setup(
        "neck-rod",
        title,
        220,
        (
            BigFigure(
                "neck_rod_depth",
                "Deep, from the face that the board lies on",
                "± {limit_tolerance_height}",
                "depth gauge",
            ),
            BigFigure("neck_rod_width", "Wide", "the rod slides in by hand", "the rod itself"),
            BigFigure("rod_start", "From the zero line to its end at the head (negative: behind the nut)", "", "rule"),
            BigFigure("rod_end", "From the zero line to its end at the body", "", "rule"),
            BigFigure("neck_section_under_channel[1]", "Wood left under it at the first fret", "", "calipers"),
            *under,
        ),
        (
            "Measure the rod that is in the hand, its nut and its ends, before setting anything.",
            "Mark both ends from the zero line, on the face. Rout on the centreline in passes, a fence on both sides.",
            "Open the pocket behind the nut, {carve_rod_pocket_width} wide, so that the key turns."
            if head
            else "Run it out at the neck's end, where the key comes in through the soundhole.",
            "Try the rod dry, turn it both ways, and see that nothing rattles.",
        ),
        "A trial channel in an offcut: the rod lies flush, and the depth gauge reads {neck_rod_depth}. The carved back "
        "comes within {rod_corner[1]} of the channel's corner at the first fret: deeper shows on the back.",
        ("Router: no climb cut by hand, work clamped, hands off the line of cut. " + POWERED, NECK_DUST),
        ("router with two fences, cutter {neck_rod_width} or smaller, depth gauge",),
        "setup-neck-rod",
        ("neck_rod_depth", "neck_rod_width", "rod_end"),
    )


ACROSS = (
    "Mark each roller's line across through the template, and measure it from the nut.",
    "Mark both slots from the template, {head_slot_width} wide, {head_slots_apart} of wood between them; bore the ends "
    "and saw or rout them out.",
    "Square the rollers' lines over to the head's sides.",
    "Bore from each side, square to it, the hole's middle {head_roller_depth} below the face: that is where the "
    "strings meet the rollers.",
)
"""How a slotted head is worked: its tuners' rollers lie across."""
UPRIGHT = (
    "Prick every post through the template, and measure each from the nut and from the centreline.",
    "Bore from the face, square to it, with waste clamped behind.",
)


def setup_neck_head(head_tuners: str) -> Setup:
    """Saw the head's outline and bore for the tuners.

    Method: posts from the nut's face and the centreline, along the head's own face.
    Source: common practice.
    """
    slotted = head_tuners == "across"
    post, mark = ("roller", "place on its roller") if slotted else ("post", "prick")
    return Setup(
        "neck-head",
        "Head and tuners' holes",
        230,
        (
            BigFigure("head_thickness", "Head with its veneer, planed to", "± {limit_tolerance_height}", "calipers"),
            BigFigure("head_hole", "Holes, diameter", "the tuner's bushing, tried in scrap", "calipers"),
            BigFigure("head_posts_x[1]", f"Nut's face to the first string's {post}, along the head", "", "rule"),
            BigFigure("head_roller_depth", "Holes' middle below the face", "", "rule")
            if slotted
            else BigFigure("head_posts_y[1]", "That post from the centreline", "", "rule"),
            BigFigure("head_reach", "Nut's face to the head's end", "± {limit_tolerance_outline}", "rule"),
        ),
        (
            "Lay the head's template on the face: centreline on centreline, its nut on the nut's place.",
            *(ACROSS if slotted else UPRIGHT),
            "Saw outside the outline, and pare or sand to it.",
        ),
        f"Before boring, stretch a thread from each nut slot's place to its {mark}: none bends sideways more than "
        "{limit_sideways_bend}. A template turned over shows here.",
        ("Drill press, work clamped and backed: a brad point breaks out. " + POWERED, NECK_DUST),
        ("drill press, brad-point drill, template of the head, calipers",),
        "setup-neck-head",
        ("head_thickness", "head_hole", "head_posts_x[1]"),
    )


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
            _at(each) + ".whole", f"Depth with the board at {_place(each)}", "± {limit_tolerance_height}", "calipers"
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
            "Plane each flat down to its two lines: the one on the back is {carve_flat_back} wide at "
            f"{_place(carve_stations[0])}. Then plane off each edge by half, and again.",
            "Round with scraper and long strips of abrasive, trying the cards; run out into heel and head last.",
            "Leave the heel's cap {carve_heel_width} wide at the body and {carve_heel_cap} long.",
        ),
        "At each station hold its card against the back, square to the centreline: a hair of light at most, its "
        "shoulders on the joint. Calipers read the depths before the card is believed.",
        (BY_HAND, NECK_DUST),
        ("spokeshave, rasp, scraper, calipers, gauge cards for the neck",),
        "setup-neck-carve",
        tuple(_at(each) + ".whole" for each in ends),
        (_stations(carve_stations, carve_facets // 2),),
    )


def _stations(stations: tuple[CarveStation, ...], last: int) -> Table:
    """Every station: its place and size, and its lines; the first stands on the side, the last on the back."""
    station, columns = 'carve_stations["<row>"]', []
    for number in range(1, last + 1):
        line = f'carve_lines["<row>, line {number}"]'
        columns += [(f"{ORDINALS[number - 1]} line, below the joint", f"{line}.joint")] if number < last else []
        columns += [(f"{ORDINALS[number - 1]} line, from the centre", f"{line}.centre")] if number > 1 else []
    return Table(
        "At each station, alike on both sides",
        (
            ("from the zero line", f"{station}.position"),
            ("wide", f"{station}.width"),
            ("deep with the board", f"{station}.whole"),
            ("deep without it", f"{station}.depth"),
            *columns,
        ),
        tuple(each.name for each in stations),
        "station",
    )


def _at(station: CarveStation) -> str:
    return f'carve_stations["{station.name}"]'


def _place(station: CarveStation) -> str:
    return "{" + _at(station) + ".name}"
