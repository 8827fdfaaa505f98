"""Verdicts on the body: whether one is described, sides that bend, blocks, soundhole, and where the bridge stands."""

import math

from gramil import names as n
from gramil.findings.finding import Finding, Findings, at_least, within
from gramil.parts.body_records import BodyBlock, Bout
from gramil.quantities import Mm, Ratio

OWNS = ("finding_",)


def finding_body(body_perimeter: Mm) -> Findings:
    """Whether there is a body to judge."""
    if not math.isnan(body_perimeter):
        return ()
    return (
        Finding(
            "body",
            "not judged",
            n.body_perimeter,
            math.nan,
            None,
            "because no body is described",
            "Give [body] an outline, and soundhole, braces and bridge plate as far as they are settled.",
        ),
    )


def finding_body_length(body_length: Mm, top_length: Mm) -> Findings:
    """Whether the length that the neck's set reckons with is the outline's."""
    if math.isnan(body_length) or abs(top_length - body_length) <= 0.5:
        return ()
    return (
        Finding(
            "length of the body",
            "caution",
            n.top_length,
            top_length,
            n.body_length,
            "The neck's set reckons with a length of the top that is not the outline's.",
            "Leave top.length out: the outline gives it.",
        ),
    )


def finding_bend(
    body_bouts: tuple[Bout, ...], body_bend_ratio: Ratio, limit_bend_ratio: Ratio, limit_bend_ratio_least: Ratio
) -> Findings:
    """Whether sides of this thickness go round the tightest bend."""
    if not body_bouts:
        return ()
    tightest = min(body_bouts, key=lambda bout: bout.radius)
    return (
        Finding(
            "bending the sides",
            at_least(body_bend_ratio, limit_bend_ratio, limit_bend_ratio_least),
            n.body_bend_ratio,
            body_bend_ratio,
            n.limit_bend_ratio,
            f"Radius over thickness at the tightest bend, the {tightest.name}.",
            "Thinner sides there, or an easier bend.",
        ),
    )


def finding_bridge_in_bout(body_width_share: Ratio, limit_bridge_width_share: Ratio) -> Findings:
    """Whether the bridge stands in the widest part of the lower bout."""
    if math.isnan(body_width_share):
        return ()
    return (
        Finding(
            "bridge in the lower bout",
            at_least(body_width_share, limit_bridge_width_share, 0.7),
            n.body_width_share,
            body_width_share,
            n.limit_bridge_width_share,
            "Width of the body at the saddle over its greatest: far from the widest part the top gives less.",
            "A longer scale, a join nearer the nut, or a body whose lower bout lies further forward.",
        ),
    )


def finding_board_over_hole(soundhole_from_board: Mm) -> Findings:
    """Whether the board stops short of the soundhole."""
    if math.isnan(soundhole_from_board):
        return ()
    return (
        Finding(
            "board and soundhole",
            "fine" if soundhole_from_board >= 0 else "note",
            n.soundhole_from_board,
            soundhole_from_board,
            None,
            "The board ends ahead of the soundhole." if soundhole_from_board >= 0 else "The board runs over the hole.",
            "" if soundhole_from_board >= 0 else "Round its end to the hole, give it fewer frets, or move the hole.",
        ),
    )


def finding_heel(
    neck_heel_depth: Mm, body_depth_neck: Mm, top_thickness: Mm, body_blocks: tuple[BodyBlock, ...]
) -> Findings:
    """Whether the heel ends on the side, with neck block behind it all the way."""
    if not body_blocks:
        return ()
    over = neck_heel_depth - top_thickness - body_depth_neck
    return (
        Finding(
            "heel and neck block",
            within(over, 0.0, 15.0),
            n.neck_heel_depth,
            neck_heel_depth,
            n.body_depth_neck,
            "The heel's depth against the side and its block at the neck."
            if over <= 0
            else "The heel reaches past the side and its block.",
            "" if over <= 0 else "A shallower heel, or deeper sides at the neck.",
        ),
    )
