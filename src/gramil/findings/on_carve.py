"""Verdicts on the carved neck: wood about the rod's channel, plank and scarf, stock, gauges, the head's holes."""

import math
from typing import Any

import numpy as np

from gramil import names as n
from gramil.description.records import KeptPiece, not_measured
from gramil.findings.finding import Finding, Findings
from gramil.findings.threshold import MEASURE_PIECE, at_least, at_most, judged, not_judged, saying
from gramil.parts.records import NeckYield
from gramil.quantities import Count, Mm, PerFret, PerString, Ratio
from gramil.reference import Ref, says

OWNS = ("finding_",)

SOME_HEEL = 1e-6
"""In mm: a heel that is deeper than the neck by no more than this does not count as one."""


def _least(name: str, figure: Ref[Any], value: float, limit: tuple[Ref[Any], float], says: str, remedy: str) -> Finding:
    """A verdict on wood of which there should be at least the limit, and must be some: less is a caution, none a
    stop.
    """
    return judged(name, figure, value, at_least(*limit, stop=0.0), says, remedy)


def finding_rod_over(rod_over: PerFret[Mm], limit_over_rod: Mm) -> Findings:
    """Whether slots leave enough of the board over the truss rod's channel."""
    if np.isnan(rod_over).all():
        return ()
    fret = int(np.nanargmin(rod_over))
    return (
        _least(
            "board over the rod",
            n.rod_over[fret],
            float(rod_over[fret]),
            (n.limit_over_rod, limit_over_rod),
            "The least board between a slot and the channel under it, on the centreline.",
            "A thicker board, shallower slots, or the channel deeper with a strip glued over the rod.",
        ),
    )


def finding_rod_corner(rod_corner: PerFret[Mm], scale_join: Ratio, limit_beside_rod: Mm) -> Findings:
    """Whether the carved back leaves enough wood about the channel's bottom corners."""
    if np.isnan(rod_corner).all() or np.isnan(scale_join):
        return ()
    along = rod_corner[: int(scale_join) + 1]
    fret = int(along.argmin())
    return (
        _least(
            "wood about the rod",
            n.rod_corner[fret],
            float(along[fret]),
            (n.limit_beside_rod, limit_beside_rod),
            "The least wood between a bottom corner of the channel and the carved back, the shortest way.",
            "A squarer back, a deeper neck, or a narrower or shallower rod.",
        ),
    )


def finding_rod_under_head(rod_under_head: Mm, limit_beside_rod: Mm) -> Findings:
    """Whether the rod's pocket leaves enough of the head behind the nut, where necks break."""
    if math.isnan(rod_under_head):
        return ()
    return (
        _least(
            "wood under the rod's pocket",
            n.rod_under_head,
            rod_under_head,
            (n.limit_beside_rod, limit_beside_rod),
            "Wood left under the pocket where the head begins, with no thickening there.",
            "A thicker head, a thickening behind the nut, a shallower rod, or access at the soundhole.",
        ),
    )


def finding_rod_blind_end(rod_blind_left: Mm, limit_rod_blind: Mm, carve_rod_access: str, foot_there: bool) -> Findings:
    """Whether solid wood is left past the channel's blind end."""
    if math.isnan(rod_blind_left):
        return ()
    return (
        _least(
            "the rod's blind end",
            n.rod_blind_left,
            rod_blind_left,
            (n.limit_rod_blind, limit_rod_blind),
            "Solid wood past the channel's blind end.",
            _more_past_the_rod(carve_rod_access, foot_there),
        ),
    )


def _more_past_the_rod(access: str, foot: bool) -> str:
    """What leaves more wood past the blind end: at the neck's own end, or none at the nut but a shorter rod."""
    if access != "head":
        return "A shorter rod."
    return "A shorter rod, or a longer foot inside the body." if foot else "A shorter rod, or a longer tenon."


def finding_rod_reach(rod_unreached: Mm, limit_rod_short: Mm) -> Findings:
    """Whether the rod reaches far enough to straighten the neck."""
    if math.isnan(rod_unreached):
        return ()
    return (
        judged(
            "the rod's reach",
            n.rod_unreached,
            rod_unreached,
            at_most(n.limit_rod_short, limit_rod_short),
            "Neck past the rod's blind end, which it does not straighten; negative: it reaches past.",
            "A longer rod.",
        ),
    )


def finding_scarf(plank_scarfed: bool, head_scarf_length: Mm, plank_head_along: Mm, carve_scarf: str) -> Findings:
    """Whether the scarf's face fits the head that it lies on."""
    if not plank_scarfed or carve_scarf != "on the head":
        return ()
    return (
        judged(
            "scarf on the head",
            n.head_scarf_length,
            head_scarf_length,
            at_most(None, plank_head_along),
            says("The scarf's face, from behind the nut along the head, which is {} long.", n.plank_head_along),
            "The head is shorter: a thinner blank, a steeper head, or the scarf under the board.",
        ),
    )


def finding_neck_plank(plank_over: Mm, limit_plank_over: Mm) -> Findings:
    """Whether the plank is thick enough for the neck that is carved out of it."""
    return (
        _least(
            "plank for the neck",
            n.plank_over,
            plank_over,
            (n.limit_plank_over, limit_plank_over),
            "How much thicker the plank is than the neck's own wood at its deepest.",
            "A thicker blank, or a shallower neck.",
        ),
    )


def finding_neck_stock(plank_choice: NeckYield, carve_wood: str, shop_kept: tuple[KeptPiece, ...]) -> Findings:
    """Whether a piece in stock gives the neck; not judged if one is kept for it of which not every size is known."""
    if not plank_choice.necks and (piece := not_measured("neck", carve_wood, shop_kept)):
        because = f"because {piece} is kept for it, and not all of its sizes are noted"
        return (not_judged("stock for the neck", n.plank_choice.necks, because, MEASURE_PIECE),)
    none = f"No piece of {carve_wood} in the shop's list gives the neck, heel and all."
    return (
        judged(
            "stock for the neck",
            n.plank_choice.necks,
            plank_choice.necks,
            saying(at_least(None, 1, "note"), none),
            f"A piece of {carve_wood} in stock gives the neck, heel and all: {plank_choice.name}.",
            "Look for one by the cut list, or give the neck's wood as the stock names it.",
        ),
    )


def finding_carve_gauged(carve_gauged: Count, limit_carve_stations: Ratio) -> Findings:
    """Whether the neck's back is gauged at enough places short of the heel."""
    return (
        judged(
            "places gauged",
            n.carve_gauged,
            carve_gauged,
            at_least(n.limit_carve_stations, limit_carve_stations, "note"),
            "Places at which the back is gauged, between the nut and where the heel begins.",
            "Give more stations, nearer to the nut than the heel.",
        ),
    )


def finding_heel_carved(neck_heel_depth: Mm, carve_deepest: Mm) -> Findings:
    """Whether the heel is deeper than the neck that runs into it."""
    return (
        judged(
            "heel",
            n.neck_heel_depth,
            neck_heel_depth,
            at_least(None, carve_deepest + SOME_HEEL, "stop"),
            says(
                "The heel, from the board's underside to its cap; the neck's own wood at its deepest is {}.",
                n.carve_deepest,
            ),
            "A deeper heel: it is measured from the board's underside.",
        ),
    )


def finding_tuner_edge(head_hole_to_edge: PerString[Mm], limit_hole_edge: Mm) -> Findings:
    """Whether every tuner's hole lies well inside the head's outline."""
    if np.isnan(head_hole_to_edge).all():
        because = "because no outline of the head is described"
        return (not_judged("tuners in the head", n.head_hole_to_edge, because, "Give outline or file under [head]."),)
    string = int(head_hole_to_edge.argmin())
    return (
        _least(
            "tuners in the head",
            n.head_hole_to_edge[string + 1],
            float(head_hole_to_edge[string]),
            (n.limit_hole_edge, limit_hole_edge),
            "The least wood between a tuner's hole and the head's edge, or its nearer face if tuners lie across.",
            "Move that post inward, or widen the head there; where tuners lie across, give their strings another "
            "height.",
        ),
    )


def finding_tuners_apart(head_holes_apart: Mm, limit_holes_apart: Mm) -> Findings:
    """Whether the tuners' holes leave wood between them."""
    return (
        _least(
            "tuners apart",
            n.head_holes_apart,
            head_holes_apart,
            (n.limit_holes_apart, limit_holes_apart),
            "The least wood between two tuners' holes.",
            "Set the posts further apart.",
        ),
    )


def finding_strings_in_slots(head_slot_room: PerString[Mm], limit_slot_room: Mm, head_tuners: str) -> Findings:
    """Whether every string of a slotted head runs to its roller clear of the wood between the slots and beside them."""
    if head_tuners != "across" or np.isnan(head_slot_room).all():
        return ()
    string = int(head_slot_room.argmin())
    return (
        judged(
            "strings in the head's slots",
            n.head_slot_room[string + 1],
            float(head_slot_room[string]),
            at_least(n.limit_slot_room, limit_slot_room),
            "The least room between a string and the nearer wall of its slot; negative: it cuts into the wood.",
            says(
                "Move its place on the roller, now {} from the centreline, away from that wall; or the slots nearer to "
                "the middle or further out, or wider, now {}.",
                n.head_posts_y[string + 1],
                n.head_slot_width,
            ),
        ),
    )


def finding_strings_past_posts(head_post_clear: PerString[Mm], limit_string_to_post: Mm, head_tuners: str) -> Findings:
    """Whether every string runs to its post clear of the others'."""
    if head_tuners == "across":
        return ()
    string = int(head_post_clear.argmin())
    return (
        judged(
            "strings past other posts",
            n.head_post_clear[string + 1],
            float(head_post_clear[string]),
            at_least(n.limit_string_to_post, limit_string_to_post, stop=0.75 * limit_string_to_post),
            "From the middle of a string to the middle of the nearest other post that it passes on its way to its own.",
            says(
                "Move its own post inward, now {} from the centreline, or the other one outward.",
                n.head_posts_y[string + 1],
            ),
        ),
    )
