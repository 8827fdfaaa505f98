"""Sheets for a guitar that came in: what is read of it first, its old slots, the wire for them, and the refret.

The first two show what was there and ask for it; the others show what is to be. No sheet mixes the two.
"""

from math import isnan

from gramil import names as n
from gramil.description.records import Wire
from gramil.quantities import Count, Mm, PerMm2
from gramil.reference import EACH, Ref, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)
BUILT = "it is being built: no guitar came in"
NEW_FRETS = "the frets stay"


def setup_as_found(repair_described: bool, scale_frets: Count) -> Setup:
    """What is read of a guitar as it came in, strung and then with its strings off, before anything is changed.

    Source: common practice.
    """
    if not repair_described:
        return skipped("as-found", "The guitar as found, before the work", 700, BUILT)
    crowns = tuple(n.found_crown[fret] for fret in _three(scale_frets))
    return Setup(
        "as-found",
        "The guitar as found, before the work",
        700,
        (),
        (
            "In the air that it lives in, at the pitch that it is played at: tune it first, and touch nothing.",
            "Relief first, then action over fret 12 and over fret 1, bass and treble string.",
            "Strings off, neck straight: a straightedge on the crown of fret 1 and on the last before the body, "
            "held out "
            "over the saddle: how far it passes over the bridge's top, negative where it strikes.",
            "Crowns where they are worn most: feelers under a short straightedge across the two beside it, or a "
            "depth gauge.",
            "Nut's face to saddle along both outer strings; saddle, its slot and the pins last.",
        ),
        "Read the relief again when all is written: it differs by no more than a feeler, or the neck has moved "
        "meanwhile.",
        ("strings",),
        (),
        None,
        (
            n.found_relief,
            n.found_action_bass,
            n.found_action_treble,
            n.found_nut_bass,
            n.found_nut_treble,
            n.found_straightedge,
            *crowns,
            n.found_exposed_bass,
            n.found_exposed_treble,
            n.found_saddle_bass,
            n.found_saddle_treble,
            n.found_saddle_slot_width,
            n.found_saddle_slot_depth,
            n.found_pin,
        ),
    )


def _three(frets: Count) -> tuple[int, ...]:
    """Three frets to read at: the first, one in the middle, one near the body."""
    return tuple(sorted({min(each, frets) for each in (1, 7, 12)}))


def setup_old_slots(repair_described: bool, repair_refret: bool, scale_frets: Count) -> Setup:
    """What is read of the old slots and the bare board, its frets drawn.

    Source: common practice.
    """
    if not (repair_described and repair_refret):
        return skipped("old-slots", "The old slots as found", 701, NEW_FRETS if repair_described else BUILT)
    at = _three(scale_frets)
    boxes: list[Ref[float]] = []
    for figures in (n.found_slot_width, n.found_slot_depth, n.found_board_thickness, n.found_arch_radius):
        boxes += [figures[fret] for fret in at]
    return Setup(
        "old-slots",
        "The old slots as found",
        701,
        (),
        (
            "Old glue out of each slot with a knife and a saw of no more than its kerf; vacuum it, never blow.",
            "Widths by feelers or a strip of known thickness that just goes in; the widest place of each.",
            "Depth at its shallowest place; the board's thickness at the same frets, and its radius by cards.",
            "Places from the nut's end with the long calipers: gramil readback slots reads scale and rule from them.",
        ),
        "Push an offcut of the chosen wire into the narrowest slot by hand: it stands on its beads and goes no "
        "further.",
        ("knife", "hand saw"),
        (),
        None,
        tuple(boxes),
        on=stuff("board"),
    )


def setup_which_wire(
    repair_described: bool,
    repair_refret: bool,
    shop_wires: tuple[Wire, ...],
    found_slot_width_least: Mm,
    found_slot_depth_least: Mm,
    found_crown_mean: Mm,
    back_bow_row: PerMm2,
) -> Setup:
    """Every wire of the shop against the old slots, as a table.

    Method: columns whose readings are not there are left out; back-bow needs the neck's section as well.
    Source: common practice.
    """
    if not (repair_described and repair_refret):
        return skipped("which-wire", "Which wire", 702, NEW_FRETS if repair_described else BUILT)
    rows = tuple(each.name for each in shop_wires)
    return Setup(
        "which-wire",
        "Which wire",
        702,
        (
            BigFigure(n.found_slot_width_least, "Narrowest old slot", "", "as found"),
            BigFigure(n.found_slot_width_most, "Widest old slot", "", "as found"),
            *_known(BigFigure(n.found_slot_depth_least, "Shallowest old slot", "", "as found"), found_slot_depth_least),
        ),
        (
            "Take the wire that fits; then the one whose crown the neighbours and the action can take.",
            "Where none fits the widest slots, crimp the tang there or line the slot with a strip of the board's wood.",
        ),
        "One scrap pressed into the narrowest slot and one into the widest: both seat, and both need a firm pull to "
        "draw.",
        (),
        tables=(
            Table("Each of the shop's wires in the old slots", _columns(found_slot_depth_least), rows, "wire"),
            *_crowns(rows, found_crown_mean),
            *_bows(rows, back_bow_row),
        ),
    )


def _known(figure: BigFigure, value: float) -> tuple[BigFigure, ...]:
    return () if isnan(value) else (figure,)


def _columns(depth: Mm) -> tuple[tuple[str, Ref[float]], ...]:
    each = n.refret_fits[EACH]
    room = () if isnan(depth) else (("room under the tang", each.room),)
    return (
        ("gap, narrowest slot", each.narrowest),
        ("gap, widest slot", each.widest),
        ("each bead bites, widest", each.bite),
        *room,
        ("verdict", n.refret_verdicts[EACH].words),
    )


def _crowns(rows: tuple[str, ...], mean: Mm) -> tuple[Table, ...]:
    each = n.refret_crowns[EACH]
    columns = (
        ("crown, width", each.width),
        ("height", each.height),
        ("over the highest old crown", each.over_old),
        ("higher at fret 12: action less by", each.higher),
    )
    return () if isnan(mean) else (Table("Their crowns against the old ones", columns, rows, "wire"),)


def _bows(rows: tuple[str, ...], row: PerMm2) -> tuple[Table, ...]:
    each = n.refret_bows[EACH]
    columns = (("back-bow, at the least", each.least), ("at the most", each.most))
    return () if isnan(row) else (Table("What the whole row does to the neck", columns, rows, "wire"),)


def setup_refret(repair_described: bool, repair_refret: bool, refret_room: Mm) -> Setup:
    """Press the new frets into the old slots.

    Source: common practice.
    """
    if not (repair_described and repair_refret):
        return skipped("refret", "Press the new frets", 703, NEW_FRETS if repair_described else BUILT)
    return Setup(
        "refret",
        "Press the new frets",
        703,
        (
            BigFigure(n.wire_tang_thickness, "Tang", says("± {}", n.limit_tolerance_fit), "micrometer"),
            BigFigure(n.refret_chosen.narrowest, "Narrowest slot less tang", says("{} or more", n.limit_fit_tightest)),
            BigFigure(n.refret_chosen.widest, "Widest slot less tang", says("{} or less", n.limit_fit_loosest)),
            *_known(
                BigFigure(
                    n.refret_room, "Room under the tang, shallowest", says("{} or more", n.limit_clearance_least)
                ),
                refret_room,
            ),
            BigFigure(
                n.crown_height, "Crowns when they are dressed", says("± {}", n.limit_tolerance_height), "calipers"
            ),
        ),
        (
            "Slots clean, their edges eased with one stroke of a three-cornered file: the next refret lifts no chips.",
            "Chips glued back and scraped level before the first fret goes in.",
            "Bend the wire a little tighter than the board; press from the ends in. The neck backed right under "
            "each fret.",
            "Ends trimmed, then bevelled; the old finish along the edges taped, since it chips.",
        ),
        "After the first five: the straightedge on the board between them. Bowing back already means the tang is "
        "too thick.",
        ("nippers", "fret press", "fret files", "cyanoacrylate"),
        (says("wire {}", n.wire_name),),
        None,
        (n.wire_tang_thickness,),
        on=stuff("board", "board binding"),
    )
