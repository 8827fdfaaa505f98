"""Set-ups for the body's edge: plates trimmed flush, channels cut, bindings bent and glued on."""

import math

from gramil import names as n
from gramil.parts.bevel_records import BevelBinding
from gramil.parts.body_records import Bend, Bout, SideStation, Stretch
from gramil.parts.edge_records import Cut, Edge, Strip, Tilt
from gramil.quantities import Mm
from gramil.reference import EACH, Text, says
from gramil.setups.at_bevels import at_bevels, strips_at_bevels
from gramil.setups.body_work import NO_BODY
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped
from gramil.setups.treble_lines import at_corners, round_the_horn, treble_stations

OWNS = ("setup_",)

UNBOUND = "the body is not bound"
EDGES = stuff("top", "back", "sides", "top binding", "back binding")
"""What a trimmer, a scraper or sandpaper goes through at the body's edge."""
BEND = "Try an offcut round the tightest bend first. Waist first, then the lower bout, then the upper."
WARM = "Warm the strips until they go round by themselves, and let them cool in the mould's line."
AGAINST = (
    "Run against the cutter's turn all round, in light passes. On half of the runs that is uphill: where it tears, "
    "pare that stretch by hand, or take a last hair with the turn, the body clamped and the trimmer in a carriage or "
    "a sled."
)
"""How a cutter goes round a body."""


def setup_flush(body_bouts: tuple[Bout, ...], channel_flush_cutter: Mm, downhill_treble: tuple[Stretch, ...]) -> Setup:
    """Trim both plates flush with the sides.

    Method: a bearing as large as its cutter, on the side; downhill runs, so that the plates do not tear out.
    Source: common practice.
    """
    title = "Trim the plates flush with the sides"
    if not body_bouts:
        return skipped("flush", title, 550, NO_BODY)
    known = not math.isnan(channel_flush_cutter)
    cutter = BigFigure(n.channel_flush_cutter, "Cutter and its bearing, alike", "as measured", "calipers")
    by_hand = "No cutter is listed with a bearing as large as itself: trim with chisel, plane and file."
    return Setup(
        "flush",
        title,
        550,
        (
            *((cutter,) if known else ()),
            BigFigure(n.body_plate_allowance, "Plates stand over the sides by about", "", "rule"),
            BigFigure(n.top_thickness, "Top", says("± {}", n.limit_tolerance_height), "calipers at the soundhole"),
            BigFigure(
                n.body_back_thickness,
                "Back",
                says("± {}", n.limit_tolerance_height),
                "as written when it was thicknessed",
            ),
        ),
        (
            "Scrape off glue that was squeezed out under the plates: a bearing rides on it and leaves a step.",
            "Score both plates with a knife along the sides, all round: a tear stops there.",
            "Saw or knife off all but a little of what stands over.",
            AGAINST if known else by_hand,
            "Scrape the last of it by hand, square to the side.",
        ),
        "A straightedge down the side over the plate's edge shows no light and no step. A step here comes back in "
        "every channel: the bearing follows it.",
        ("knife", "hand saw", *(("trimmer",) if known else ("files",)), "edge tools", "scraper"),
        (
            "trimmer, cutter with its bearing, scraper, straightedge"
            if known
            else "knife, plane, scraper, straightedge",
        ),
        tables=round_the_horn(downhill_treble),
        on=stuff("top", "back", "sides"),
        instead=() if known else ("trimmer",),
    )


def setup_binding_bend(
    strip_list: tuple[Strip, ...],
    side_stations: tuple[SideStation, ...],
    treble_side_stations: tuple[SideStation, ...],
    bend_treble: tuple[Bend, ...],
) -> Setup:
    """Make and bend the strips for bindings and purflings.

    Method: two strips an edge, with something over at either end; the sides' stations are theirs.
    Source: common practice.
    """
    title = "Bend the body's bindings and purflings"
    bindings = tuple(each for each in strip_list if each.is_binding)
    if not bindings:
        return skipped("binding-bend", title, 555, UNBOUND)
    of_wood, of_plastic = (tuple(each for each in bindings if each.plastic == plastic) for plastic in (False, True))
    places = tuple(
        says(
            "Mark {}: {} from the neck end, past the {} that is left over there.",
            n.side_stations[each.name].name,
            n.side_stations[each.name].along,
            n.limit_strip_over,
        )
        for each in side_stations
        if not math.isnan(each.radius)
    )
    return Setup(
        "binding-bend",
        title,
        555,
        (
            BigFigure(n.strip_length, "Each binding, long", "or more", "rule"),
            *(_thick(each) for each in bindings),
            BigFigure(n.body_tightest_bend, "Tightest bend, radius", "", "template"),
        ),
        (
            "Two strips make an edge, mirrored: mark the neck end and the outside on each.",
            *places,
            *at_corners(bend_treble, "the strip ends, and the next one begins, mitred."),
            *_for(of_wood, bindings, BEND),
            *_for(of_plastic, bindings, WARM),
            "Tie them round the mould, or into the sides' own form, until cold and dry; they spring back a little, and "
            "the channel takes that up.",
            "Purflings go round with the bindings; laid up of several lines they are bent before they are glued up.",
        ),
        "Laid round the body dry each strip reaches from the neck's middle to the tail's with some left over at both "
        "ends, and its waist comes to the waist.",
        ("scraper", *(("bending iron",) if of_wood else ()), *(("warm plastic",) if of_plastic else ())),
        tuple(says("{} of {}", n.strip_list[each.name].name, n.strip_list[each.name].wood) for each in bindings),
        None,
        tuple(n.strip_list[each.name].thickness for each in bindings),
        (
            Table("Strips", _SIZES, tuple(each.name for each in strip_list), "strip"),
            *treble_stations(treble_side_stations),
        ),
        on=stuff("top binding", "back binding"),
        instead=() if of_wood else ("bending iron",),
        notes=_purfled(strip_list),
    )


def _for(strips: tuple[Strip, ...], bindings: tuple[Strip, ...], step: str) -> tuple[str, ...]:
    """A step for some of the bindings, which are named if the others are done differently; none if there are none."""
    if not strips:
        return ()
    return (step,) if len(strips) == len(bindings) else (f"The {strips[0].name}: {step[0].lower()}{step[1:]}",)


def _purfled(strips: tuple[Strip, ...]) -> tuple[str, ...]:
    if all(each.is_binding for each in strips):
        return ()
    return ("What a purfling's lines are made of is not described: no iron on them but where they are known as wood.",)


_STRIP = n.strip_list[EACH]
_SIZES = (
    ("how many", _STRIP.count),
    ("long", _STRIP.length),
    ("high", _STRIP.height),
    ("thick", _STRIP.thickness),
)


def _thick(strip: Strip) -> BigFigure:
    return BigFigure(
        n.strip_list[strip.name].thickness,
        f"The {strip.name}, thick",
        says("± {}", n.limit_tolerance_height),
        "calipers",
    )


def setup_channels(
    channel_edges: tuple[Edge, ...],
    channel_cuts: tuple[Cut, ...],
    channel_tilts: tuple[Tilt, ...],
    downhill_treble: tuple[Stretch, ...],
    bevelled_bindings: tuple[BevelBinding, ...],
) -> Setup:
    """Cut the channels for binding and purfling.

    Method: a bearing on the side steps each channel in by half of cutter less bearing; depth from the plate; the
    cutter square to the side, not to the domed plate.
    Source: common practice.
    """
    title = "Cut the channels for the body's bindings"
    if not channel_edges:
        return skipped("channels", title, 560, UNBOUND)
    has_cutter = not math.isnan(channel_cuts[0].ledge)
    return Setup(
        "channels",
        title,
        560,
        tuple(_deep(each) for each in channel_cuts),
        (
            "Try every setting on an offcut of side wood with a scrap of plate on it, and lay the strips in.",
            "Score every wall first with a knife in a gauge, and take most of the wood off in shallow passes.",
            *_purfling_steps(tuple(each for each in channel_edges if each.purfling)),
            "Depth is from the plate's face at its very edge. Hold the cutter square to the side: a carriage that "
            "stands upright, or the body on its edge against a fence.",
            *(_leaning(each) for each in channel_tilts if each.angle),
            AGAINST,
            *at_bevels(bevelled_bindings),
            "Stop short of the neck's place and of the tail graft. Finish there, and in corners that no bearing "
            "reaches, with knife and chisel.",
        ),
        _proof(next(each.name for each in channel_cuts if each.name.endswith("binding")), has_cutter),
        ("knife", "trimmer", "edge tools"),
        tuple(_pair(each, has_cutter) for each in channel_cuts),
        n.drawing_setup_channels,
        tuple(n.channel_cuts[each.name].depth for each in channel_cuts),
        round_the_horn(downhill_treble),
        on=stuff("top", "back", "sides"),
    )


def _deep(cut: Cut) -> BigFigure:
    what = f"The {cut.name}'s channel, deep from the plate's face"
    return BigFigure(
        n.channel_cuts[cut.name].depth, what, says("± {}", n.limit_tolerance_height), "depth gauge, offcut"
    )


def _leaning(tilt: Tilt) -> Text:
    at = n.channel_tilts[tilt.name]
    return says(
        f"The {tilt.name} slopes by {{}} at its steepest, {{}} round from the neck. Riding on it, the "
        "cutter leans as much: its wall is {} out over the binding's height, its floor {}.",
        at.angle,
        at.along,
        at.lean,
        at.floor,
    )


def _purfling_steps(purfled: tuple[Edge, ...]) -> tuple[Text, ...]:
    if not purfled:
        return ()
    return (
        *(_score(each) for each in purfled),
        "The purfling's channel first: its bearing rides on what the binding's channel takes away.",
    )


def _score(edge: Edge) -> Text:
    cut = n.channel_cuts[f"{edge.name} purfling"]
    return says(
        f"Score the {edge.name} {{}} in from the side: across the grain, at neck and tail, it tears out first.",
        cut.inset,
    )


def _proof(first: str, has_cutter: bool) -> Text:
    cut = n.channel_cuts[first]
    if not has_cutter:
        return says("Calipers from the side's face read {} in, and from the plate's {} down.", cut.inset, cut.depth)
    return says(
        f"In the offcut the {first} stands {{}} out of the side and {{}} over the plate. A wrong bearing shows here.",
        cut.proud,
        n.limit_binding_proud_least,
    )


def _pair(cut: Cut, has_cutter: bool) -> Text:
    """What a channel is cut with, and what that leaves."""
    at = n.channel_cuts[cut.name]
    if not has_cutter:
        return says("{}, {} in: no cutter listed; cutter less bearing would be {}", at.name, at.inset, at.step)
    return says(
        "{}, {} in: {}, cutter {}, leaves {}, strips {} proud",
        at.name,
        at.inset,
        at.choice,
        at.diameter,
        at.ledge,
        at.proud,
    )


def setup_body_binding(
    channel_edges: tuple[Edge, ...],
    strip_list: tuple[Strip, ...],
    bend_treble: tuple[Bend, ...],
    bevelled_bindings: tuple[BevelBinding, ...],
) -> Setup:
    """Glue bindings and purflings into their channels.

    Method: dry first, then from the waist to both ends, drawn in square to the channel's corner.
    Source: common practice.
    """
    title = "Glue the body's bindings"
    if not channel_edges:
        return skipped("body-binding", title, 565, UNBOUND)
    plastic, wood = (any(each.plastic == of for each in strip_list if each.is_binding) for of in (True, False))
    return Setup(
        "body-binding",
        title,
        565,
        (
            *(
                BigFigure(n.channel_list[each.name].cover, f"Binding below the {each.name}", "about", "rule")
                for each in channel_edges
            ),
            BigFigure(
                n.limit_binding_proud_least, "Proud of plate and side, all round, at least", "", "finger and feeler"
            ),
            BigFigure(n.channel_side_left, "Side left to show, where it is shallowest", "about", "rule"),
            BigFigure(n.limit_gluing_humidity, "Air for gluing, relative humidity", "", "hygrometer"),
        ),
        (
            "Whole length dry first, tape every hand's breadth; where it will not close, warm the strip again, never "
            "force it.",
            "Trim both strips at the tail to a butt, or a mitre for the purfling, on the centreline; at the neck they "
            "run under the heel or stop at it.",
            *at_corners(bend_treble, "mitre the strips before glue, the corner's wood cut square with a chisel."),
            *strips_at_bevels(bevelled_bindings),
            "Glue in the purfling and the binding together, a stretch at a time: the waist first, then to either end. "
            "Press down to the floor and in to the wall; tape or a cord draws both ways at once.",
            "Leave it as long as its glue asks for before it is scraped. Scrape to the wood, never file across.",
        ),
        "Dry, no light shows between strip and channel on the plate or on the side, at the waist least of all.",
        (
            *("glue", "clamps", "scraper"),
            *(("bending iron",) if wood else ()),
            *(("warm plastic", "plastic cement") if plastic else ()),
        ),
        ("tape or binding cord, scraper, feeler",),
        n.drawing_setup_channels,
        (n.channel_side_left,),
        on=EDGES,
    )
