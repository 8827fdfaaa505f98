"""Verdicts on the strings over the board: room at the edges and between strings, and the board's hump under them."""

import numpy as np

from gramil import names as n
from gramil.findings.finding import Findings
from gramil.findings.threshold import ROUNDING, at_least, at_most, judged, saying
from gramil.quantities import Cents, Count, Mm, PerFret, PerString, PerStringFret, Ratio

OWNS = ("finding_",)

SOME_AIR = 2 * ROUNDING
"""In mm: strings with no more between them touch."""


def finding_edge_margin(
    string_margin_treble: PerFret[Mm], string_margin_bass: PerFret[Mm], limit_edge_margin: Mm
) -> Findings:
    """Whether the outer strings keep far enough from the board's edges, where the fret ends are bevelled."""
    sides = (
        ("treble", n.string_margin_treble, string_margin_treble),
        ("bass", n.string_margin_bass, string_margin_bass),
    )
    return tuple(
        judged(
            f"edge margin, {side}",
            figure[int(margin.argmin())],
            float(margin.min()),
            at_least(n.limit_edge_margin, limit_edge_margin, stop=0.0),
            f"The outer string on the {side} side comes closest to the finished edge here.",
            "Narrow the spread at nut or saddle, or widen the board.",
        )
        for side, figure, margin in sides
    )


def finding_courses(
    strings_count: Count, strings_course: PerString[Ratio], strings_single: bool, limit_single_strings: Ratio
) -> Findings:
    """Whether a large number of strings has no courses given, in which case they are laid out as single strings."""
    found = judged(
        "strings in courses",
        n.strings_count,
        strings_count,
        at_most(n.limit_single_strings, limit_single_strings, "stop"),
        "This many strings stand in pairs, and here each stands by itself: nut, saddle, pins and posts "
        "are laid out wrongly for pairs.",
        "Write a [[course]] for each pair, or single = true under [strings] if each string does stand by itself.",
    )
    paired = bool(strings_course[-1] < strings_count)
    return () if strings_single or paired or found.severity == "fine" else (found,)


def finding_pairs(
    string_pair_nut: PerString[Mm], string_pair_bridge: PerString[Mm], limit_pair_least: Mm, limit_pair_most: Mm
) -> Findings:
    """Whether the strings of a pair stand near enough for one finger to stop both, and do not clash."""
    ends = (("nut", n.string_pair_nut, string_pair_nut), ("saddle", n.string_pair_bridge, string_pair_bridge))
    return tuple(
        judged(
            f"strings of a pair, {end}",
            figure[worst + 1],
            float(apart[worst]),
            saying(at_least(n.limit_pair_least, limit_pair_least), remedy=WIDER)
            + saying(at_most(n.limit_pair_most, limit_pair_most), remedy=NEARER),
            f"Centre to centre at the {end}, of the pair that is furthest from what is usual.",
        )
        for end, figure, apart in ends
        if (apart > 0).any()
        for worst in (_worst(apart, limit_pair_least, limit_pair_most),)
    )


WIDER = "Set pair wider there: two strings that swing toward each other touch."
NEARER = "Set pair narrower there: a finger meets one string before the other."


def _worst(apart: PerString[Mm], least: Mm, most: Mm) -> int:
    """The row of the pair that stands furthest from the middle of what is usual."""
    away = np.where(apart > 0, abs(apart - (least + most) / 2), -1.0)
    return int(away.argmax())


def finding_string_gap(string_gap_nut: PerString[Mm]) -> Findings:
    """Whether there is air between all neighbouring strings at the nut."""
    gaps = string_gap_nut[:-1]
    least = int(gaps.argmin())
    return (
        judged(
            "air between strings",
            n.string_gap_nut[least + 1],
            float(gaps[least]),
            at_least(None, SOME_AIR, "stop"),
            "The two strings nearest each other at the nut.",
            "Widen the spread at the nut, or use fewer or thinner strings.",
        ),
    )


def finding_hump(arch_hump: PerString[Mm], limit_string_hump: Mm) -> Findings:
    """Whether the arch makes the board stand up under an outer string enough to compete with the relief."""
    worst = int(arch_hump.argmax())
    return (
        judged(
            "hump under a string",
            n.arch_hump[worst + 1],
            float(arch_hump[worst]),
            at_most(n.limit_string_hump, limit_string_hump, stop=10 * limit_string_hump),
            "The board stands this far above the string's straight path, and takes that much from the relief.",
            "Let the radius grow along the board in proportion to the spread of the strings, or level the frets so.",
        ),
    )


def finding_inner_strings(string_error: PerStringFret[Cents], limit_string_error_cents: Cents) -> Findings:
    """Whether straight frets on a fanned board put an inner string out of tune."""
    from_true = abs(string_error)
    string, fret = divmod(int(from_true.argmax()), string_error.shape[1])
    return (
        judged(
            "inner strings on straight frets",
            n.string_error[string + 1, fret],
            float(string_error[string, fret]),
            at_most(
                n.limit_string_error_cents,
                limit_string_error_cents,
                stop=10 * limit_string_error_cents,
                of=float(from_true[string, fret]),
            ),
            "A straight fret is this far from the string's own layout at the worst place.",
            "Space the strings at nut and saddle in the same proportions.",
        ),
    )
