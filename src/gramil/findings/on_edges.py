"""Verdicts on the body's bindings: the wood that their channels leave, strips that bend, cutters that cut them."""

from math import isnan

from gramil import names as n
from gramil.description.records import Cutter
from gramil.findings.finding import Finding, Findings
from gramil.findings.ledge import no_cutters, no_pair, standing_proud
from gramil.findings.threshold import Bounds, at_least, at_most, judged, not_judged, saying
from gramil.parts.edge_records import NO_PAIR, Channel, Cut, Strip, Tilt
from gramil.quantities import Mm, Ratio
from gramil.reference import says

OWNS = ("finding_",)

OPENS = "The binding's channel goes through side and linings, and opens the body."
NOTHING = 1e-6
"""In mm: wood no thicker than this counts as none."""


def finding_behind_channel(channel_list: tuple[Channel, ...], limit_behind_channel: Mm) -> Findings:
    """Whether side and linings are left behind the foot of each binding's channel."""
    return tuple(
        judged(
            f"behind the channel, {each.name}",
            n.channel_list[each.name].behind,
            each.behind,
            saying(at_least(n.limit_behind_channel, 0.0, "stop"), OPENS)
            + at_least(n.limit_behind_channel, limit_behind_channel),
            "Side and linings left behind the foot of the binding's channel.",
            "A thinner or lower binding, or linings that are wider or reach farther down.",
        )
        for each in channel_list
    )


def finding_lining_under(channel_list: tuple[Channel, ...], limit_lining_under: Mm) -> Findings:
    """Whether the linings reach on below each binding's channel."""
    return tuple(
        judged(
            f"lining under the channel, {each.name}",
            n.channel_list[each.name].lining,
            each.lining,
            at_least(n.limit_lining_under, limit_lining_under, stop=0.0),
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
        judged(
            f"plate on its rim, {each.name}",
            n.channel_list[each.name].glued,
            each.glued,
            at_least(n.limit_plate_glued, limit_plate_glued, stop=limit_plate_glued_least),
            "Width of the rim that still holds the plate when the channels are cut.",
            "Wider linings, a thinner binding, or purfling that does not go through the plate.",
        )
        for each in channel_list
    )


def finding_under_purfling(channel_list: tuple[Channel, ...], limit_under_purfling: Mm) -> Findings:
    """Whether plate is left under the purfling; cut through, it may at most lie on the linings."""
    return tuple(
        judged(
            f"under the purfling, {each.name}",
            n.channel_list[each.name].under_purfling,
            each.under_purfling,
            _under_purfling(each, limit_under_purfling),
            "Plate left under the purfling, over the linings.",
            "A shallower purfling; a narrower one, or wider linings, where it lies past them.",
        )
        for each in channel_list
        if not isnan(each.under_purfling)
    )


def _under_purfling(channel: Channel, least: Mm) -> Bounds:
    """A thin or cut plate over the linings is a caution, and so is a thin one past them; cut through there it is a
    stop.
    """
    limit, past = n.limit_under_purfling, channel.past_linings > 0
    where = n.channel_list[channel.name].past_linings
    if past:
        opens = says(
            "The purfling's channel goes through the plate and past the linings by {}: it opens the body.", where
        )
        hangs = says("Plate left under the purfling, which lies past the linings by {}, where nothing bears it.", where)
        return saying(at_least(limit, NOTHING, "stop"), opens) + saying(
            at_most(None, 0.0, of=channel.past_linings), hangs
        )
    through = "The purfling's channel goes through the plate onto the linings, which alone hold it there."
    return saying(at_least(limit, NOTHING), through) + at_least(limit, least)


def finding_binding_cover(channel_list: tuple[Channel, ...], limit_binding_cover: Mm) -> Findings:
    """Whether each binding is high enough to cover the joint of plate and side."""
    return tuple(
        judged(
            f"binding over the joint, {each.name}",
            n.channel_list[each.name].cover,
            each.cover,
            at_least(n.limit_binding_cover, limit_binding_cover, stop=0.0),
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
        judged(
            "side between bindings",
            n.channel_side_left,
            channel_side_left,
            at_least(n.limit_side_between, limit_side_between, stop=0.0),
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
    name, address = f"bending the {strip.name}", n.strip_list[strip.name].bend
    if strip.plastic:
        unknown = ", which is not a known wood" if strip.material == "not known" else ""
        because = f"because the limit is wood's, and the binding is of {strip.wood}{unknown}"
        return not_judged(name, address, because, "Try a strip round the tightest bend.", strip.bend)
    return judged(
        name,
        address,
        strip.bend,
        at_least(n.limit_bend_ratio, least, stop=stop),
        "Body's tightest bend over the binding's thickness.",
        "A thinner binding, laid up of two, or an easier bend.",
    )


def finding_channel_lean(channel_tilts: tuple[Tilt, ...], limit_channel_lean: Mm) -> Findings:
    """Whether a cutter that rides on the domed plate would cut a channel that gapes."""
    return tuple(_lean(each, limit_channel_lean) for each in channel_tilts)


def _lean(tilt: Tilt, most: Mm) -> Finding:
    at = n.channel_tilts[tilt.name]
    return judged(
        f"cutter on the dome, {tilt.name}",
        at.lean,
        tilt.lean,
        at_most(n.limit_channel_lean, most, "note"),
        says(
            "With its base on the domed plate the cutter leans by up to {}: over the binding's height that puts the "
            "channel's wall out of square by the figure shown.",
            at.angle,
        ),
        "Guide the cutter square to the side, not by the plate: a carriage, or the body on its edge.",
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
        return (no_cutters("binding channels", n.channel_cuts[first.name].inset, first.inset),)
    return tuple(_channel(each, limit_binding_proud_least, limit_binding_proud_most) for each in channel_cuts)


def _channel(cut: Cut, least: Mm, most: Mm) -> Finding:
    name, at = f"channel, {cut.name}", n.channel_cuts[cut.name]
    if cut.choice == NO_PAIR.name:
        return no_pair(name, at.inset, cut.inset)
    return standing_proud(name, at.proud, cut.proud, cut.choice, least, most)
