"""Verdicts on the body's bindings: the wood that their channels leave, strips that bend, cutters that cut them."""

from math import isnan

from gramil import names as n
from gramil.description.records import Cutter
from gramil.findings.finding import Finding, Findings, Severity, at_least
from gramil.findings.ledge import standing_proud
from gramil.parts.edge_records import Channel, Cut, Strip, Tilt
from gramil.quantities import Mm, Ratio
from gramil.reference import Text, says

OWNS = ("finding_",)


def finding_behind_channel(channel_list: tuple[Channel, ...], limit_behind_channel: Mm) -> Findings:
    """Whether side and linings are left behind the foot of each binding's channel."""
    return tuple(
        Finding(
            f"behind the channel, {each.name}",
            at_least(each.behind, limit_behind_channel, 0.0),
            n.channel_list[each.name].behind,
            each.behind,
            n.limit_behind_channel,
            "Side and linings left behind the foot of the binding's channel."
            if each.behind >= 0
            else "The binding's channel goes through side and linings, and opens the body.",
            "A thinner or lower binding, or linings that are wider or reach farther down.",
        )
        for each in channel_list
    )


def finding_lining_under(channel_list: tuple[Channel, ...], limit_lining_under: Mm) -> Findings:
    """Whether the linings reach on below each binding's channel."""
    return tuple(
        Finding(
            f"lining under the channel, {each.name}",
            at_least(each.lining, limit_lining_under, 0.0),
            n.channel_list[each.name].lining,
            each.lining,
            n.limit_lining_under,
            "Height of the linings that the channel leaves whole under it: it holds the side there.",
            "A lower binding, or higher linings.",
        )
        for each in channel_list
    )


def finding_plate_glued(
    channel_list: tuple[Channel, ...], limit_plate_glued: Mm, limit_plate_glued_least: Mm
) -> Findings:
    """Whether enough of the rim is left inside each channel to hold the plate."""
    return tuple(
        Finding(
            f"plate on its rim, {each.name}",
            at_least(each.glued, limit_plate_glued, limit_plate_glued_least),
            n.channel_list[each.name].glued,
            each.glued,
            n.limit_plate_glued,
            "Width of the rim that still holds the plate when the channels are cut.",
            "Wider linings, a thinner binding, or purfling that does not go through the plate.",
        )
        for each in channel_list
    )


def finding_under_purfling(channel_list: tuple[Channel, ...], limit_under_purfling: Mm) -> Findings:
    """Whether plate is left under the purfling; cut through, it may at most lie on the linings."""
    return tuple(
        Finding(
            f"under the purfling, {each.name}",
            _through(each, limit_under_purfling),
            n.channel_list[each.name].under_purfling,
            each.under_purfling,
            n.limit_under_purfling,
            _purfling_words(each),
            "A shallower purfling; a narrower one, or wider linings, where it lies past them.",
        )
        for each in channel_list
        if not isnan(each.under_purfling)
    )


def _through(channel: Channel, least: Mm) -> Severity:
    """A thin or cut plate over the linings is a caution; cut through past them it is a stop."""
    if channel.under_purfling <= 0 and channel.past_linings > 0:
        return "stop"
    return "caution" if channel.under_purfling < least or channel.past_linings > 0 else "fine"


def _purfling_words(channel: Channel) -> Text:
    past = n.channel_list[channel.name].past_linings
    if channel.under_purfling <= 0 and channel.past_linings > 0:
        return says(
            "The purfling's channel goes through the plate and past the linings by {}: it opens the body.", past
        )
    if channel.past_linings > 0:
        return says("Plate left under the purfling, which lies past the linings by {}, where nothing bears it.", past)
    if channel.under_purfling <= 0:
        return "The purfling's channel goes through the plate onto the linings, which alone hold it there."
    return "Plate left under the purfling, over the linings."


def finding_binding_cover(channel_list: tuple[Channel, ...], limit_binding_cover: Mm) -> Findings:
    """Whether each binding is high enough to cover the joint of plate and side."""
    return tuple(
        Finding(
            f"binding over the joint, {each.name}",
            at_least(each.cover, limit_binding_cover, 0.0),
            n.channel_list[each.name].cover,
            each.cover,
            n.limit_binding_cover,
            "How far the binding reaches down the side below the joint of side and plate.",
            "A higher binding.",
        )
        for each in channel_list
    )


def finding_side_between(channel_list: tuple[Channel, ...], channel_side_left: Mm, limit_side_between: Mm) -> Findings:
    """Whether side is left between the bindings at its shallowest."""
    if not channel_list:
        return ()
    return (
        Finding(
            "side between bindings",
            at_least(channel_side_left, limit_side_between, 0.0),
            n.channel_side_left,
            channel_side_left,
            n.limit_side_between,
            "Side left to show below the binding, or between the two, where it is shallowest.",
            "Lower bindings, or deeper sides.",
        ),
    )


def finding_binding_bend(
    strip_list: tuple[Strip, ...], limit_bend_ratio: Ratio, limit_bend_ratio_least: Ratio
) -> Findings:
    """Whether a wooden binding of this thickness goes round the tightest bend; plastic goes by its maker's sheet."""
    return tuple(
        _bend(each, limit_bend_ratio, limit_bend_ratio_least) for each in strip_list if each.name.endswith("binding")
    )


def _bend(strip: Strip, least: Ratio, stop: Ratio) -> Finding:
    address, plastic = n.strip_list[strip.name].bend, strip.plastic
    return Finding(
        f"bending the {strip.name}",
        "not judged" if plastic else at_least(strip.bend, least, stop),
        address,
        strip.bend,
        None if plastic else n.limit_bend_ratio,
        f"because the limit is wood's, and the binding is of {strip.wood}"
        if plastic
        else "Body's tightest bend over the binding's thickness.",
        "Try a strip round the tightest bend." if plastic else "A thinner binding, laid up of two, or an easier bend.",
    )


def finding_channel_lean(channel_tilts: tuple[Tilt, ...], limit_channel_lean: Mm) -> Findings:
    """Whether a cutter that rides on the domed plate would cut a channel that gapes."""
    return tuple(_lean(each, limit_channel_lean) for each in channel_tilts)


def _lean(tilt: Tilt, most: Mm) -> Finding:
    fine, at = tilt.lean <= most, n.channel_tilts[tilt.name]
    return Finding(
        f"cutter on the dome, {tilt.name}",
        "fine" if fine else "note",
        at.lean,
        tilt.lean,
        n.limit_channel_lean,
        says(
            "With its base on the domed plate the cutter leans by up to {}: so much the channel's "
            "wall is out over the binding's height.",
            at.angle,
        ),
        "" if fine else "Guide the cutter square to the side, not by the plate: a carriage, or the body on its edge.",
    )


def finding_channel_cutters(
    channel_cuts: tuple[Cut, ...],
    shop_cutters: tuple[Cutter, ...],
    limit_binding_proud_least: Mm,
    limit_binding_proud_most: Mm,
) -> Findings:
    """Whether cutters and bearings on hand make the body's channels."""
    if channel_cuts and not shop_cutters:
        first = channel_cuts[0]
        return (
            Finding(
                "binding channels",
                "not judged",
                n.channel_cuts[first.name].inset,
                first.inset,
                None,
                "because the shop lists no bearing-guided cutter",
                "List the cutters with their bearings.",
            ),
        )
    return tuple(
        standing_proud(
            (f"channel, {each.name}", n.channel_cuts[each.name].proud, each.choice),
            each.proud,
            limit_binding_proud_least,
            limit_binding_proud_most,
        )
        for each in channel_cuts
    )
