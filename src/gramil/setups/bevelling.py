"""Set-ups for the bevels of arm and ribs: the block behind, the cut, the veneer."""

from collections.abc import Mapping

from gramil import names as n
from gramil.parts.bevel_records import Bevel, BevelBinding, BevelBlock, BevelBrace, BevelMark, BevelVeneer
from gramil.quantities import Mm
from gramil.reference import EACH, Ref, Text, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)

NO_BEVEL = "the body has no bevel"
_BLOCK = n.bevelled_blocks[EACH]
BLOCKS = (
    ("wide", _BLOCK.width),
    ("high", _BLOCK.height),
    ("long", _BLOCK.length),
    ("layers", _BLOCK.layers),
    ("each thick", _BLOCK.layer),
)
_MARK = n.bevel_marks[EACH]
MARKS = (("from the neck", _MARK.along), ("in on the plate", _MARK.width), ("down from its face", _MARK.drop))
_BINDING = n.bevelled_bindings[EACH]
BINDINGS = (
    ("neck to bevel", _BINDING.before),
    ("bevel to tail", _BINDING.after),
    ("along the plate", _BINDING.on_plate),
    ("along the side", _BINDING.on_side),
)
_VENEER = n.bevel_veneers[EACH]
_BLANK: Mapping[str, tuple[Ref[Mm], Ref[Mm]]] = {
    "arm": (n.bevel_veneer_length_arm, n.bevel_veneer_width_arm),
    "rib": (n.bevel_veneer_length_rib, n.bevel_veneer_width_rib),
}
_MEASURED: Mapping[str, tuple[Ref[Mm], Ref[Mm]]] = {
    "arm": (n.arm_bevel_width, n.arm_bevel_drop),
    "rib": (n.rib_bevel_width, n.rib_bevel_drop),
}
"""As described, and as made what was measured: the veneer goes by that."""
VENEERS = (("long", _VENEER.length), ("wide", _VENEER.width), ("thick", _VENEER.thickness))


def setup_bevel_block(
    bevelled_blocks: tuple[BevelBlock, ...], bevelled_braces: tuple[BevelBrace, ...], bevel_list: tuple[Bevel, ...]
) -> Setup:
    """Glue the block behind a bevel into the rim, in the lining's place.

    Method: as much wider and higher than the lining as the bevel cuts off it, running out into the lining at both ends.
    Source: common practice.
    """
    title = "Glue the bevels' blocks into the rim"
    if not bevelled_blocks:
        return skipped("bevel-block", title, 516, NO_BEVEL)
    return Setup(
        "bevel-block",
        title,
        516,
        tuple(
            figure
            for each in bevelled_blocks
            for figure in (
                BigFigure(
                    n.bevelled_blocks[each.name].width,
                    f"Block of the {each.name} bevel, wide",
                    says("± {}", n.limit_tolerance_outline),
                    "calipers",
                ),
                BigFigure(
                    n.bevelled_blocks[each.name].height, "High", says("± {}", n.limit_tolerance_outline), "calipers"
                ),
                BigFigure(n.bevel_list[each.name].middle, "Its middle, from the neck round the bass side", "", "rule"),
            )
        ),
        (
            *(_ends(each) for each in bevel_list),
            *(_made(each) for each in bevelled_blocks),
            "Work the outer face to the side's inside until no light shows, and run the inner face out to the lining's "
            "own width at both ends.",
            "Glue it against the side, a little over the edge, to be levelled with the rim; the linings butt "
            "against it.",
            *(_let_in(each) for each in bevelled_braces),
        ),
        says(
            "Dry first, the side's template held inside: the block's middle stands at {} from the neck on "
            "the bass side. A block glued to the other side shows here.",
            n.bevel_list[bevel_list[0].name].middle,
        ),
        ("band saw", "edge tools", *_bending(bevelled_blocks), "glue", "clamps"),
        ("the side's template, square, clamps and a caul to its curve",),
        n.drawing_setup_bevels,
        boxes=tuple(n.bevelled_blocks[each.name].width for each in bevelled_blocks),
        tables=(Table("Blocks", BLOCKS, tuple(each.name for each in bevelled_blocks), "bevel"),),
        on=stuff("linings", "sides"),
    )


def _ends(bevel: Bevel) -> Text:
    at = n.bevel_list[bevel.name]
    return says(
        f"Mark on the inside of the bass side where the {bevel.name} bevel begins, {{}} from the neck's middle, "
        f"and ends, {{}}, at the edge of the {bevel.plate}.",
        at.start,
        at.stop,
    )


def _made(block: BevelBlock) -> Text:
    at = n.bevelled_blocks[block.name]
    if block.kind == "solid":
        return says(
            f"Saw the {block.name} bevel's block {{}} wide and {{}} high to the side's curve.", at.width, at.height
        )
    return says(
        f"Bend {{}} strips, {{}} thick and {{}} high, for the {block.name} bevel, and glue them up against the "
        f"side's form.",
        at.layers,
        at.layer,
        at.height,
    )


def _bending(blocks: tuple[BevelBlock, ...]) -> tuple[str, ...]:
    return ("bending iron",) if any(each.kind == "laminated" for each in blocks) else ()


def _let_in(brace: BevelBrace) -> Text:
    at = n.bevelled_braces[brace.name]
    return says("{}: its end reaches {} into the block. Cut it shorter, or notch the block for it.", at.name, at.inside)


def setup_bevel(
    bevel_list: tuple[Bevel, ...],
    bevel_marks: tuple[BevelMark, ...],
    bevelled_bindings: tuple[BevelBinding, ...],
    bevel_veneers: tuple[BevelVeneer, ...],
) -> Setup:
    """Cut the bevels, between their lines on plate and side.

    Method: rasp and file from line to line, straight across; the same slope all along.
    Source: common practice.
    """
    title = "Cut the bevels for arm and ribs"
    if not bevel_list:
        return skipped("bevel", title, 552, NO_BEVEL)
    return Setup(
        "bevel",
        title,
        552,
        tuple(
            figure
            for each in bevel_list
            for figure in (
                BigFigure(
                    _MEASURED[each.name][0],
                    f"The {each.name} bevel's line on the {each.plate}, in at its middle",
                    says("± {}", n.limit_tolerance_outline),
                    "template, then a rule",
                ),
                BigFigure(
                    _MEASURED[each.name][1],
                    f"Its line on the side, down from the {each.plate}'s face",
                    says("± {}", n.limit_tolerance_outline),
                    "template, then a rule",
                ),
                BigFigure(n.bevel_list[each.name].slope, "Its slope from the plate", "all along", "bevel gauge"),
                BigFigure(n.bevel_list[each.name].across, "Across its face at the middle", "about", "rule"),
            )
        ),
        (
            *(_laid_off(each) for each in bevel_list),
            "Lay the template's middle on that mark, draw both lines with a fine pencil, and cut the plate's "
            "with a knife: fibres tear back to a cut, not past it.",
            "Rasp the edge away in flats, each straight from side to plate and running out at both ends, then down "
            "to the lines; last a file across, the gauge set to the slope.",
            *_deeper(bevel_veneers),
            *(_bound(each) for each in bevelled_bindings),
        ),
        "A short straightedge laid across shows no light at any of the stations, and meets both lines at once. A line "
        "drawn from the wrong end, or on the treble side, shows before the rasp: say aloud which arm will lie there.",
        ("knife", "files", "edge tools", "sanding"),
        ("templates, pencil, knife, rasp, file, bevel gauge, short straightedge",),
        n.drawing_setup_bevels,
        boxes=tuple(box for each in bevel_list for box in _MEASURED[each.name]),
        tables=(
            Table("The lines, marked off in eight", MARKS, tuple(each.name for each in bevel_marks), "station"),
            *_runs(bevelled_bindings),
        ),
        on=stuff("top", "back", "sides", "linings"),
    )


def _laid_off(bevel: Bevel) -> Text:
    at = n.bevel_list[bevel.name]
    return says(
        f"The {bevel.name} bevel, at the {bevel.plate}'s edge of the bass side: from the neck's middle {{}} round "
        "to where it begins, {} to its middle, {} to where it ends.",
        at.start,
        at.middle,
        at.stop,
    )


def _deeper(veneers: tuple[BevelVeneer, ...]) -> tuple[Text, ...]:
    if not veneers:
        return ()
    return (
        "Cut to the lines: at both the veneer's edge then stands over plate and side by its thickness, and is "
        "scraped flush.",
    )


def _bound(binding: BevelBinding) -> Text:
    at = n.bevelled_bindings[binding.name]
    if binding.on_plate or binding.on_side:
        return f"The binding is led round the {binding.name} bevel: the channel there is cut by hand, afterwards."
    return says(
        f"The binding stops at the {binding.name} bevel: {{}} of strip from the neck, and {{}} from the tail.",
        at.before,
        at.after,
    )


def _runs(bindings: tuple[BevelBinding, ...]) -> tuple[Table, ...]:
    """The strips of a binding that is led round a bevel; where it stops there, its step tells them."""
    names = tuple(each.name for each in bindings if each.on_plate or each.on_side)
    return (
        (Table("The bass side's binding at a bevel, each strip with something over", BINDINGS, names, "bevel"),)
        if names
        else ()
    )


def setup_bevel_veneer(bevel_veneers: tuple[BevelVeneer, ...], bevel_list: tuple[Bevel, ...]) -> Setup:
    """Glue veneer on the bevels.

    Method: cut to the flat pattern with something over; the face is bent one way only, so that the sheet lies on it.
    Source: common practice.
    """
    title = "Veneer the bevels"
    if not bevel_veneers:
        return skipped("bevel-veneer", title, 553, "no bevel is veneered" if bevel_list else NO_BEVEL)
    return Setup(
        "bevel-veneer",
        title,
        553,
        tuple(
            figure
            for each in bevel_veneers
            for figure in (
                BigFigure(_BLANK[each.name][0], f"Veneer for the {each.name} bevel, long", "or more", "rule"),
                BigFigure(_BLANK[each.name][1], "Wide", "or more", "rule"),
                BigFigure(
                    n.bevel_veneers[each.name].thickness, "Thick", says("± {}", n.limit_tolerance_height), "calipers"
                ),
            )
        ),
        (
            "Draw round the flat pattern, its plate line toward the plate, and saw outside it by what is over. The "
            "grain runs along the pattern's chord.",
            "Wet it and warm it over the iron until it lies in the bevel by itself; let it dry there, taped.",
            "Glue with a caul cut to the bevel, padded, clamped from the middle outward. Thin glue comes through thin "
            "veneer: paper under the caul.",
            "Trim to both lines with a knife, from the middle to either end, and scrape flush with plate and side.",
        ),
        "Dry, it lies down on the whole bevel under a hand's pressure, and stands over both lines all along. A "
        "pattern laid face down curves the other way.",
        ("knife", "bending iron", "glue", "clamps", "scraper"),
        tuple(
            says(f"{each.name} bevel: veneer of {{}}", n.stuff_list[f"{each.name} bevel"].wood)
            for each in bevel_veneers
        ),
        n.drawing_setup_bevels,
        boxes=tuple(n.bevel_veneers[each.name].thickness for each in bevel_veneers),
        tables=(Table("Blanks", VENEERS, tuple(each.name for each in bevel_veneers), "bevel"),),
        on=stuff(*(f"{each.name} bevel" for each in bevel_veneers), "top", "back", "sides"),
    )
