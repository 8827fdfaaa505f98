"""Verdicts on the body: whether one is described, sides that bend, blocks, soundhole, and where the bridge stands."""

import math

from gramil import names as n
from gramil.findings.finding import Findings
from gramil.findings.threshold import at_least, at_most, judged, not_judged, saying
from gramil.parts.body_records import Bend, BodyBlock, Bout
from gramil.quantities import Mm, Ratio

OWNS = ("finding_",)

SAME_LENGTH = 0.5
"""In mm: two lengths of one body that differ by no more are the same."""
LEAST_SHARE = 0.7
"""Width of the body at the saddle, over its greatest, under which the bridge is not on the lower bout."""
LEAST_BEHIND = 15.0
"""In mm: what a foot needs behind its slots to hold the sides and be glued to the top; from memory."""
HEEL_PAST = 15.0
"""In mm: a heel that reaches further past the side has nothing behind it."""


def finding_body(body_perimeter: Mm) -> Findings:
    """Whether there is a body to judge."""
    if not math.isnan(body_perimeter):
        return ()
    remedy = "Give [body] an outline, and soundhole, braces and bridge plate as far as they are settled."
    return (not_judged("body", n.body_perimeter, "because no body is described", remedy),)


def finding_body_length(body_length: Mm, top_length: Mm) -> Findings:
    """Whether the length that the neck's set reckons with is the outline's."""
    if math.isnan(body_length):
        return ()
    found = judged(
        "length of the body",
        n.top_length,
        top_length,
        at_most(n.body_length, SAME_LENGTH, of=abs(top_length - body_length)),
        "The neck's set is worked out with another length of the top than the outline's.",
        "Leave top.length out: the outline gives it.",
    )
    return () if found.severity == "fine" else (found,)


def finding_bend(
    body_bouts: tuple[Bout, ...],
    bend_treble: tuple[Bend, ...],
    bend_bass: tuple[Bend, ...],
    body_bend_ratio: Ratio,
    limit_bend_ratio: Ratio,
    limit_bend_ratio_least: Ratio,
) -> Findings:
    """Whether sides of this thickness go round the tightest bend."""
    if not body_bouts:
        return ()
    bends = [(each.radius, each.name) for each in (*bend_treble, *bend_bass) if each.kind != "corner"]
    _, tightest = min((*((each.radius, each.name) for each in body_bouts), *bends), key=lambda each: each[0])
    return (
        judged(
            "bending the sides",
            n.body_bend_ratio,
            body_bend_ratio,
            at_least(n.limit_bend_ratio, limit_bend_ratio, stop=limit_bend_ratio_least),
            f"Radius over thickness at the tightest bend, the {tightest}.",
            "Thinner sides there, or an easier bend.",
        ),
    )


def finding_bridge_in_bout(body_width_share: Ratio, limit_bridge_width_share: Ratio) -> Findings:
    """Whether the bridge stands in the widest part of the lower bout."""
    if math.isnan(body_width_share):
        return ()
    return (
        judged(
            "bridge in the lower bout",
            n.body_width_share,
            body_width_share,
            at_least(n.limit_bridge_width_share, limit_bridge_width_share, stop=LEAST_SHARE),
            "Width of the body at the saddle over its greatest: far from the widest part the top gives less.",
            "A longer scale, a join nearer the nut, or a body whose lower bout lies further forward.",
        ),
    )


def finding_board_over_hole(soundhole_from_board: Mm) -> Findings:
    """Whether the board stops short of the soundhole."""
    if math.isnan(soundhole_from_board):
        return ()
    return (
        judged(
            "board and soundhole",
            n.soundhole_from_board,
            soundhole_from_board,
            saying(at_least(None, 0.0, "note"), "The board runs over the hole."),
            "The board ends ahead of the soundhole.",
            "Round its end to the hole, give it fewer frets, or move the hole.",
        ),
    )


def finding_heel(
    neck_heel_depth: Mm, body_depth_neck: Mm, graduated_edge: Mm, body_blocks: tuple[BodyBlock, ...], foot_there: bool
) -> Findings:
    """Whether the heel ends on the side, with neck block behind it all the way; not judged where the sides are let into
    it.
    """
    if not body_blocks or foot_there:
        return ()
    over = neck_heel_depth - graduated_edge - body_depth_neck
    return (
        judged(
            "heel and neck block",
            n.neck_heel_depth,
            neck_heel_depth,
            saying(
                at_most(n.body_depth_neck, 0.0, stop=HEEL_PAST, of=over),
                "The heel reaches past the side and its block.",
            ),
            "The heel's depth against the side and its block at the neck.",
            "A shallower heel, or deeper sides at the neck.",
        ),
    )


def finding_foot_heel(
    foot_there: bool, foot_heel_over: Mm, body_blocks: tuple[BodyBlock, ...], limit_tolerance_outline: Mm
) -> Findings:
    """Whether a heel that the body is built on reaches down to the sides' lower edge, which its slots are to hold."""
    if not foot_there or not body_blocks:
        return ()
    return (
        judged(
            "heel and sides",
            n.foot_heel_over,
            foot_heel_over,
            saying(
                at_least(n.limit_tolerance_outline, -limit_tolerance_outline),
                "The sides stand past the heel: its slots do not hold their lower edge.",
            ),
            "How far the heel reaches past the sides' lower edge at the neck.",
            "A deeper heel, from the board's underside, or shallower sides at the neck.",
        ),
    )


def finding_foot_slots(
    foot_there: bool,
    foot_slot_depth: Mm,
    foot_slot_depth_at_cap: Mm,
    foot_behind_slots: Mm,
    foot_slot_width: Mm,
) -> Findings:
    """Whether the heel's slots run down to its cap, and leave wood behind them that holds the sides in."""
    if not foot_there:
        return ()
    return (
        judged(
            "slots at the board",
            n.foot_slot_depth,
            foot_slot_depth,
            saying(
                at_least(n.foot_slot_width, foot_slot_width, "stop"),
                "The wood between the slots is as wide as the neck: they hold no side.",
            ),
            "How deep the slots for the sides are at the board.",
            "Less wood between the slots.",
        ),
        judged(
            "slots at the heel's cap",
            n.foot_slot_depth_at_cap,
            foot_slot_depth_at_cap,
            saying(
                at_least(n.foot_slot_width, foot_slot_width),
                "At its cap the carved heel hardly covers the sides' ends.",
            ),
            "How deep the slots still are at the heel's cap, once it is carved.",
            "A wider cap on the heel, or less wood between the slots.",
        ),
        judged(
            "foot behind the slots",
            n.foot_behind_slots,
            foot_behind_slots,
            saying(at_least(None, LEAST_BEHIND, stop=0.0), "Little wood of the foot is left behind the slots."),
            "Wood of the foot behind the slots, toward the tail.",
            "A longer foot under the top.",
        ),
    )


def finding_foot_toe(foot_there: bool, foot_toe_room: Mm, carve_foot_toe: Mm) -> Findings:
    """Whether the foot's toe ends short of the first brace on the back."""
    if not foot_there or carve_foot_toe == 0 or math.isnan(foot_toe_room):
        return ()
    return (
        judged(
            "toe and back brace",
            n.foot_toe_room,
            foot_toe_room,
            saying(at_least(None, 0.0), "The foot's toe lies where a brace of the back does."),
            "Room between the foot's toe and the nearest brace on the back.",
            "A shorter toe, or that brace nearer to the tail.",
        ),
    )
