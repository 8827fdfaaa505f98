"""Verdicts on the solved top, against settings that are practice and have no source: stout, lively, too weak."""

from gramil import names as n
from gramil.findings.finding import Finding, Findings
from gramil.findings.threshold import at_most, between, judged, not_judged
from gramil.quantities import Mm, Radians, Ratio
from gramil.reference import says
from gramil.top.braced import Attempt
from gramil.top.modes import NearPair
from gramil.top.tapped import TriedWood

OWNS = ("finding_",)


def finding_top_solved(braced_coarse: tuple[Attempt, ...], braced_fine: tuple[Attempt, ...]) -> Findings:
    """Whether the top could be solved: a brace in the air, a plate that nothing holds, no mesh that passes."""
    faults = {str(each.fault): each.fault for each in (*braced_coarse, *braced_fine) if each.fault is not None}
    return tuple(
        not_judged("the top under the strings", n.pulled_turn, f"because {each.what}", each.remedy)
        for each in faults.values()
    )


def finding_top_turn(pulled_turn: Radians, limit_top_turn_least: Radians, limit_top_turn_most: Radians) -> Findings:
    """Whether the bridge turns as far as tops usually do: elastic, at once, on a rigid rim."""
    band = between((n.limit_top_turn_least, limit_top_turn_least), (n.limit_top_turn_most, limit_top_turn_most))
    says_so = says(
        "The bridge turns this far at once, on a rigid rim: {} to {} by what the woods may be.",
        n.pulled_turn_least,
        n.pulled_turn_most,
    )
    remedy = "`gramil top` says what a shaving of each brace does, and how much to take or add."
    return (judged("turn of the bridge", n.pulled_turn, pulled_turn, band, says_so, remedy),)


def finding_top_strain(pulled_strain_top: Ratio, pulled_strain_brace: Ratio, limit_top_strain_most: Ratio) -> Findings:
    """Whether top and braces are strained no more than wood bears for years."""
    top = "The largest strain along the top's grain, at once, on a rigid rim."
    brace = says("The largest strain along a brace, in {}, at once, on a rigid rim.", n.pulled_strained_brace)
    remedy = "A thicker top or higher braces where the strain is."
    bound = at_most(n.limit_top_strain_most, limit_top_strain_most)
    return (
        judged("strain in the top", n.pulled_strain_top, pulled_strain_top, bound, top, remedy),
        judged("strain in the braces", n.pulled_strain_brace, pulled_strain_brace, bound, brace, remedy),
    )


def finding_top_action(pulled_action: Mm, heights_body_rise: Mm) -> Findings:
    """What the top's own part is of the rise that the neck is set for: the rest is the rim's and the neck's."""
    because = says(
        "because how far rim, neck block and glue give is not known: of the {} that the neck is set for, the top alone "
        "gives {}",
        n.heights_body_rise,
        n.pulled_action,
    )
    share = pulled_action / heights_body_rise if heights_body_rise else 0.0
    remedy = "Measure the action of a like instrument strung and slack, and put that in for what the body gives."
    return (not_judged("action that the top adds", n.pulled_action, because, remedy, share),)


def finding_top_modes(mode_near: tuple[NearPair, ...]) -> Findings:
    """Whether two modes nearly coincide, so that advice on either alone says little."""
    return tuple(
        Finding(
            f"modes that nearly coincide, {each.name}",
            "note",
            n.mode_list[each.one].hertz,
            each.hertz,
            None,
            "These two modes nearly coincide: a shaving may mix them, and what is said of either may be the other's.",
            "Solve again after each shaving, and look at the lines at rest.",
        )
        for each in mode_near
    )


def finding_tried_wood(fitted_pieces: tuple[TriedWood, ...]) -> Findings:
    """Whether pieces that were tapped or pushed gave their stiffness; notes that fit no plate are reported, not
    swapped.
    """
    return tuple(
        Finding(
            f"{each.name}, tapped or pushed",
            "note" if each.known.measured else "caution",
            n.fitted_pieces[each.name].carried,
            each.carried,
            None,
            f"{fault.what}{f': {fault.why}' if fault.why else ''}"
            + ("." if each.known.measured else "; a handbook's figures are used instead."),
            fault.remedy,
        )
        for each in fitted_pieces
        for fault in each.faults
    )
