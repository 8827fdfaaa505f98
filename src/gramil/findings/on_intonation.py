"""Verdicts on intonation: what is left as filed, what the nut would gain, and what the strings' figures leave open."""

import math

import numpy as np

from gramil import names as n
from gramil.findings.finding import Finding, Findings
from gramil.findings.threshold import at_most, judged, not_judged
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
        judged(
            "intonation, string by string",
            n.intonation_rms_after[string + 1],
            float(intonation_rms_after[string]),
            at_most(n.limit_cents_rms, limit_cents_rms, stop=10 * limit_cents_rms),
            "Root mean square over the frets that count of the string that is furthest out.",
            remedy,
        ),
        judged(
            "intonation, worst note",
            n.intonation_cents_after[row + 1, fret],
            float(intonation_cents_after[row, fret]),
            at_most(n.limit_cents_worst, limit_cents_worst, stop=10 * limit_cents_worst, of=float(counted[row, fret])),
            "The note that is furthest out; sharp is positive.",
            remedy,
        ),
    )


def _not_judged(name: str) -> Finding:
    return not_judged(
        name,
        n.intonation_rms_all_after,
        "because some string is too slack for the model of a stopped string",
        "Give gauges and tuning that go together.",
    )


def finding_nut(intonation_rms_best: Cents, intonation_rms_all_after: Cents, limit_nut_gain: Cents) -> Findings:
    """Whether the nut stands so far from its best place that moving it is worth while."""
    gain = intonation_rms_all_after - intonation_rms_best
    if math.isnan(gain):
        return (_not_judged("place of the nut"),)
    return (
        judged(
            "place of the nut",
            n.intonation_rms_all_after,
            intonation_rms_all_after,
            at_most(n.limit_nut_gain, limit_nut_gain, "note", of=gain) + at_most(None, math.inf),
            says("What is left over all strings; with the nut at its best it would be {}.", n.intonation_rms_best),
            says("Set the nut forward to {}.", n.intonation_nut_best),
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
        judged(
            "intonation over the strings' range",
            (n.intonation_rms_stiffest if stiff else n.intonation_rms_softest)[string + 1],
            float(worst[string]),
            at_most(n.limit_cents_rms, limit_cents_rms, "note"),
            "What the same places leave if the strings are as soft or as stiff as published figures go.",
            "Measure the strings' own stretch, or read the instrument back once it is strung.",
        ),
    )
