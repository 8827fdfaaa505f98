"""Verdicts on the strings' pull: near breaking, slack, uneven, and which weights are only estimates."""

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.findings.finding import Finding, Findings
from gramil.findings.threshold import at_least, at_most, judged, not_judged, saying
from gramil.quantities import GramPerM, Mm, Newton, NewtonM, PerString, Ratio

OWNS = ("finding_",)


def finding_breaking(
    string_reserve: PerString[Ratio], limit_breaking_reserve: Ratio, limit_breaking_reserve_least: Ratio
) -> Findings:
    """Whether every string keeps enough of its strength at its pitch."""
    known = np.flatnonzero(~np.isnan(string_reserve))
    judged: Findings = ()
    if known.size:
        judged = (_breaking(string_reserve, known, limit_breaking_reserve, limit_breaking_reserve_least),)
    if len(known) == len(string_reserve):
        return judged
    return (*judged, _strength_not_known(string_reserve))


def _breaking(reserve: PerString[Ratio], known: NDArray[np.intp], caution: float, stop: float) -> Finding:
    worst = int(known[reserve[known].argmin()])
    left = float(reserve[worst])
    return judged(
        "strings near breaking",
        n.string_reserve[worst + 1],
        left,
        at_least(n.limit_breaking_reserve_least, stop, "stop") + at_least(n.limit_breaking_reserve, caution),
        "The share of its strength that the most stretched string has left; a wound string's core bears it all.",
        "A shorter scale, a lower tuning, or a core of another thickness: a thinner plain string gains nothing.",
    )


def _strength_not_known(reserve: PerString[Ratio]) -> Finding:
    string = int(np.flatnonzero(np.isnan(reserve))[0])
    return not_judged(
        "strings near breaking, other materials",
        n.string_reserve[string + 1],
        "because no published strength is known for what some strings are made of",
        "Take the packet's word for the pitch and scale that they are made for.",
    )


def finding_slack(string_pull: PerString[Newton], limit_pull_least: Newton) -> Findings:
    """Whether every string is tight enough to speak clearly."""
    least = int(string_pull.argmin())
    pull = float(string_pull[least])
    return (
        judged(
            "slack strings",
            n.string_pull[least + 1],
            pull,
            at_least(n.limit_pull_least, limit_pull_least, stop=limit_pull_least / 2),
            "The string that pulls least.",
            "A thicker string, a longer scale or a higher tuning.",
        ),
    )


def finding_uneven(string_pull_ratio: Ratio, limit_pull_uneven: Ratio) -> Findings:
    """Whether the set is even enough under the hand."""
    return (
        judged(
            "uneven set",
            n.string_pull_ratio,
            string_pull_ratio,
            at_most(n.limit_pull_uneven, limit_pull_uneven, stop=2 * limit_pull_uneven),
            "The strongest string's pull over the weakest one's.",
            "Another gauge for one of the two.",
        ),
    )


def finding_estimates(
    string_weight: PerString[GramPerM],
    strings_wound: PerString[Ratio],
    strings_weights: PerString[GramPerM],
    strings_cores: PerString[Mm],
) -> Findings:
    """Which wound strings' weights and cores are estimates."""
    guessed = np.flatnonzero((strings_wound > 0) & ((strings_weights == 0) | (strings_cores == 0)))
    if not guessed.size:
        return ()
    first = int(guessed[0])
    return (
        Finding(
            "wound strings are estimates",
            "note",
            n.string_weight[first + 1],
            float(string_weight[first]),
            None,
            "Weight or core of this wound string, and perhaps of others, is estimated: its pull may be some hundredths "
            "out, its set-back some tenths of a millimetre.",
            "Give weights and cores off the packet, or measure the core with the winding cut back.",
        ),
    )


def finding_torque(bridge_torque: NewtonM, bridge_torque_least: NewtonM, bridge_torque_most: NewtonM) -> Findings:
    """Whether the strings turn the bridge as much as tops for such strings are built for, and no more."""
    lighter = "A lighter top, or strings that pull more."
    lower = "A lower bridge and saddle, lighter strings, or a stiffer top."
    return (
        judged(
            "torque on the bridge",
            n.bridge_torque,
            bridge_torque,
            saying(at_least(n.bridge_torque_least, bridge_torque_least, "note"), remedy=lighter)
            + saying(at_most(n.bridge_torque_most, bridge_torque_most), remedy=lower),
            "What the strings turn the bridge with, about the middle of the top.",
        ),
    )
