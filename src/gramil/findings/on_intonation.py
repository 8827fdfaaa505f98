"""Verdicts on intonation: what is left as filed, what the nut would gain, and what the strings' figures leave open."""

import math

import numpy as np

from gramil import names as n
from gramil.findings.finding import Finding, Findings, within
from gramil.quantities import Cents, PerFret, PerString, PerStringFret, Ratio
from gramil.reference import says

OWNS = ("finding_",)


def finding_intonation(
    intonation_rms_after: PerString[Cents],
    intonation_cents_after: PerStringFret[Cents],
    intonation_weights: PerFret[Ratio],
    limit_cents_rms: Cents,
    limit_cents_worst: Cents,
) -> Findings:
    """Whether every string plays near enough in tune with nut and saddle as they are to be filed."""
    if np.isnan(intonation_rms_after).any():
        return (_not_judged("intonation, string by string"),)
    string = int(intonation_rms_after.argmax())
    counted = abs(intonation_cents_after) * intonation_weights
    row, fret = divmod(int(counted.argmax()), counted.shape[1])
    remedy = says(
        "Move the nut toward {} forward of the zero line and the saddle toward a set-back of {}, or lower the action.",
        n.intonation_nut_best,
        n.intonation_saddle_best,
    )
    return (
        Finding(
            "intonation, string by string",
            within(float(intonation_rms_after[string]), limit_cents_rms, 10 * limit_cents_rms),
            n.intonation_rms_after[string + 1],
            float(intonation_rms_after[string]),
            n.limit_cents_rms,
            "Root mean square over the frets that count of the string that is furthest out.",
            remedy,
        ),
        Finding(
            "intonation, worst note",
            within(float(counted[row, fret]), limit_cents_worst, 10 * limit_cents_worst),
            n.intonation_cents_after[row + 1, fret],
            float(intonation_cents_after[row, fret]),
            n.limit_cents_worst,
            "The note that is furthest out; sharp is positive.",
            remedy,
        ),
    )


def _not_judged(name: str) -> Finding:
    return Finding(
        name,
        "not judged",
        n.intonation_rms_all_after,
        math.nan,
        None,
        "because some string is too slack for the model of a stopped string",
        "Give gauges and tuning that go together.",
    )


def finding_nut(intonation_rms_best: Cents, intonation_rms_all_after: Cents, limit_nut_gain: Cents) -> Findings:
    """Whether the nut stands so far from its best place that moving it is worth while."""
    gain = intonation_rms_all_after - intonation_rms_best
    if math.isnan(gain):
        return (_not_judged("place of the nut"),)
    return (
        Finding(
            "place of the nut",
            "note" if gain > limit_nut_gain else "fine",
            n.intonation_rms_all_after,
            intonation_rms_all_after,
            n.limit_nut_gain if gain > limit_nut_gain else None,
            says("What is left over all strings; with the nut at its best it would be {}.", n.intonation_rms_best),
            says("Set the nut forward to {}.", n.intonation_nut_best) if gain > limit_nut_gain else "",
        ),
    )


def finding_stiffness_range(
    intonation_rms_softest: PerString[Cents], intonation_rms_stiffest: PerString[Cents], limit_cents_rms: Cents
) -> Findings:
    """Whether the verdict stands over the whole range of published stiffness of the strings' material."""
    worst = np.maximum(intonation_rms_softest, intonation_rms_stiffest)
    if np.isnan(worst).any():
        return (_not_judged("intonation over the strings' range"),)
    string = int(worst.argmax())
    stiff = intonation_rms_stiffest[string] >= intonation_rms_softest[string]
    return (
        Finding(
            "intonation over the strings' range",
            "note" if worst[string] > limit_cents_rms else "fine",
            (n.intonation_rms_stiffest if stiff else n.intonation_rms_softest)[string + 1],
            float(worst[string]),
            n.limit_cents_rms,
            "What the same places leave if the strings are as soft or as stiff as published figures go.",
            "Measure the strings' own stretch, or read the instrument back once it is strung."
            if worst[string] > limit_cents_rms
            else "",
        ),
    )
