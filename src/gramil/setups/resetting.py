"""Sheets for a guitar that came in: the neck set anew, the bridge glued again, and the guitar as it goes back."""

import math

from gramil import names as n
from gramil.quantities import Count, Mm
from gramil.reference import Text, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)
BUILT = "it is being built: no guitar came in"


def setup_reset(repair_described: bool, repair_reset: bool, strings_count: Count, reset_tongue: Mm) -> Setup:
    """Set the neck anew: the wedge, the tongue, and where a straightedge passes over the bridge after.

    Method: the wedge by the old crowns that the straightedge lay on and the new ones that the strings will lie over.
    Source: common practice.
    """
    if not (repair_described and repair_reset):
        return skipped("reset", "Set the neck anew", 704, "the neck stays" if repair_described else BUILT)
    return Setup(
        "reset",
        "Set the neck anew",
        704,
        (
            BigFigure(
                n.reset_wedge,
                "Off the heel at its cap, nothing at the board (negative: off at the board)",
                says("± {}", n.limit_tolerance_height),
                "pencil line, calipers",
            ),
            BigFigure(
                n.neck_set_straightedge,
                "After: straightedge on the new, dressed crowns, over the bridge's top",
                says("± {}", n.limit_tolerance_height),
                "long straightedge, feelers",
            ),
            BigFigure(n.reset_tongue, _tongue(reset_tongue), says("± {}", n.limit_tolerance_height), "calipers"),
            BigFigure(
                n.reset_tongue_left, "Left of the tongue there", says("{} or more", n.limit_under_slot), "calipers"
            ),
        ),
        (
            "Fret over the joint drawn, its slot drilled through into the joint's gap; steam in short pushes, heat "
            "under the "
            "tongue from a shielded iron, a thin warm knife along the grain. The finish round it scored first.",
            "Let the neck and the block dry a week in the air of gluing: what steam swelled is not pared.",
            "Pencil the wedge on both cheeks of the heel, score the lines, pare to just short of them; then chalk, "
            "and the "
            "straightedge along both edges to the saddle's ends.",
            _under(reset_tongue),
        ),
        says(
            "Dry, clamped lightly: the straightedge on the crowns passes {} over the bridge. If the frets are not "
            "new yet "
            "it lies lower by what they will stand higher.",
            n.neck_set_straightedge,
        ),
        ("steam", "hot knife", "knife", "edge tools", "glue", "clamps", "old finish"),
        (
            says("neck angle {}, head back: {} more than before", n.neck_angle_target, n.reset_angle),
            says("bridge {} thick at the saddle, {} of saddle to show", n.bridge_thickness, n.saddle_exposed),
        ),
        None,
        (n.neck_set_straightedge,),
        (
            Table(
                "After the reset",
                (("saddle over the bridge", n.reset_exposed), ("action at fret 12", n.action_wanted)),
                tuple(range(1, strings_count + 1)),
                "string",
            ),
        ),
        on=stuff("neck", "top", "blocks"),
    )


def _tongue(lift: Mm) -> Text:
    if lift < 0:
        return "Wood to take from under the tongue at the tail end (negative)"
    return "The tongue lifts at the tail end: a wedge this thick, to nothing at the body's edge"


def _under(lift: Mm) -> Text:
    if lift < 0:
        return "Take the wood from under the tongue, falling away to its end, never from the top."
    return (
        "Glue a wedge of the board's own wood under the tongue, to nothing at the body's edge: unsupported it falls "
        "away."
    )


def setup_bridge_again(
    repair_described: bool, repair_bridge: str, moved_slots_overlap: Mm, found_saddle_treble: Mm, found_saddle_bass: Mm
) -> Setup:
    """Glue the bridge again where it was, or where the frets want it; what becomes of its old slot.

    Source: common practice.
    """
    name, title, order = "bridge-again", "Glue the bridge again", 705
    if not repair_described or repair_bridge == "stays":
        return skipped(name, title, order, "the bridge stays" if repair_described else BUILT)
    read = not math.isnan(found_saddle_treble + found_saddle_bass)
    return Setup(
        name,
        title,
        order,
        (
            BigFigure(
                n.moved_wanted_treble,
                "Nut's face to the saddle, treble string",
                says("± {}", n.limit_saddle_place),
                "rule",
            ),
            BigFigure(
                n.moved_wanted_bass, "Nut's face to the saddle, bass string", says("± {}", n.limit_saddle_place), "rule"
            ),
            *_moves(read),
        ),
        (
            "Strings off and pins out a day before. Warm the bridge, not the top: a shielded iron or lamp, the "
            "finish round it "
            "scored and masked; a thin knife from the ends in, along the top's grain, never levered.",
            "Old glue off both faces to bare wood, the top's torn fibres glued back; lay a sheet of abrasive on the "
            "top's dome "
            "and fit the bridge's foot to it.",
            *_slot(repair_bridge, moved_slots_overlap),
            "Caul inside that clears the braces, cauls on the wings; three clamps, the middle last.",
        ),
        "Dry, on two pins in their old holes or pinned in the new place: measure both lengths from the nut's face "
        "again.",
        ("hot knife", "knife", "scraper", "edge tools", "sanding", "glue", "clamps", "old finish"),
        on=stuff("bridge", "top"),
    )


def _moves(read: bool) -> tuple[BigFigure, ...]:
    if not read:
        return ()
    near = says("± {}", n.limit_saddle_place)
    return (
        BigFigure(n.moved_treble, "How far the line goes, treble end, toward the tail positive", near, "rule"),
        BigFigure(n.moved_bass, "The same at the bass end", near, "rule"),
    )


def _slot(bridge: str, overlap: Mm) -> tuple[Text, ...]:
    plug = (
        "Plug the saddle's old slot with the bridge's own wood, grain along, level it, and cut the new one in one pass."
    )
    if bridge == "moved":
        return (plug, "Old pin holes in the top and plate plugged and bored anew in line with the bridge's.")
    if overlap > 0:
        return (says("Old and new slot run into each other by {}. ", n.moved_slots_overlap) + plug,)
    return ()


def setup_handed_back(repair_described: bool) -> Setup:
    """What is read of the guitar as it goes back, strung, against what was wanted of the work.

    Source: common practice.
    """
    if not repair_described:
        return skipped("handed-back", "The guitar as it goes back, after the work", 706, BUILT)
    near = says("± {}", n.limit_tolerance_height)
    relief = says("{} to {}", n.limit_relief_least, n.limit_relief_most)
    return Setup(
        "handed-back",
        "The guitar as it goes back, after the work",
        706,
        (
            BigFigure(n.heights_relief, "Relief", relief, "straightedge, feelers"),
            BigFigure(n.heights_action_bass, "Bass string over fret 12", near, "rule, feelers"),
            BigFigure(n.heights_action_treble, "Treble string over fret 12", near, "rule, feelers"),
            BigFigure(n.heights_nut_bass, "Bass string at the nut", near, "feelers"),
            BigFigure(n.heights_nut_treble, "Treble string at the nut", near, "feelers"),
        ),
        ("A night at pitch before it is read; relief first.",),
        "",
        ("strings",),
        (),
        None,
        (n.heights_relief, n.heights_action_bass, n.heights_action_treble, n.heights_nut_bass, n.heights_nut_treble),
    )
