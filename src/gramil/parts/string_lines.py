"""Where the strings run over the board in plan, and what that asks of frets and edges."""

import numpy as np

from gramil.quantities import Cents, Mm, PerFret, PerString, PerStringFret, Ratio

OWNS = ("string_",)


def string_pair_nut(
    strings_gauges: PerString[Mm], strings_course: PerString[Ratio], nut_pair: Mm, nut_pair_by: str
) -> PerString[Mm]:
    """How far each string stands from the next one of its own course at the nut, centre to centre; the last, nothing.

    Method: as given, or the gap that is given with half of either string.
    Source: common practice.
    """
    return _within(strings_gauges, strings_course, nut_pair, nut_pair_by)


def string_pair_bridge(
    strings_gauges: PerString[Mm], strings_course: PerString[Ratio], bridge_pair: Mm, bridge_pair_by: str
) -> PerString[Mm]:
    """How far each string stands from the next of its own course at the saddle, centre to centre; the last, nothing.

    Method: as given, or the gap that is given with half of either string.
    Source: common practice.
    """
    return _within(strings_gauges, strings_course, bridge_pair, bridge_pair_by)


def _within(gauges: PerString[Mm], course: PerString[Ratio], pair: Mm, pair_by: str) -> PerString[Mm]:
    steps = pair + (_halves(gauges) if pair_by == "gap" else 0.0 * gauges[1:])
    return np.append(np.where(np.diff(course) == 0, steps, 0.0), 0.0)


def _halves(gauges: PerString[Mm]) -> PerString[Mm]:
    """Half of each string but the last, with half of the next."""
    return (gauges[:-1] + gauges[1:]) / 2


def string_y_nut(
    strings_gauges: PerString[Mm],
    strings_course: PerString[Ratio],
    string_pair_nut: PerString[Mm],
    nut_spread: Mm,
    nut_spacing: str,
) -> PerString[Mm]:
    """Each string's distance from the centreline at the zero line, treble positive.

    Equal centres divide the spread evenly; equal gaps leave the same air between neighbouring courses.
    Method: outer strings stand half the spread from the centreline, those of a course as far apart as they are set;
        the steps between courses are filled in the chosen way.
    Source: common practice.
    """
    return _across(strings_gauges, strings_course, string_pair_nut, nut_spread, nut_spacing)


def _across(
    gauges: PerString[Mm], course: PerString[Ratio], pair: PerString[Mm], spread: Mm, spacing: str
) -> PerString[Mm]:
    """Where the strings lie across, treble positive, for the steps within their courses."""
    first = np.append(True, np.diff(course) > 0)
    if spacing == "equal centres":
        wide = np.add.reduceat(pair, np.flatnonzero(first))
        middles = np.linspace((spread - wide[0]) / 2, (wide[-1] - spread) / 2, len(wide))
        inward = np.concatenate([[0.0], pair[:-1]]) * ~first
        return np.repeat(middles + wide / 2, np.diff(np.append(np.flatnonzero(first), len(gauges)))) - inward
    halves = _halves(gauges)
    gap = (spread - pair.sum() - halves[first[1:]].sum()) / max(first[1:].sum(), 1)
    return spread / 2 - np.concatenate([[0.0], np.cumsum(np.where(first[1:], halves + gap, pair[:-1]))])


def string_gap_nut(string_y_nut: PerString[Mm], strings_gauges: PerString[Mm]) -> PerString[Mm]:
    """The air between each string and the next one toward the bass at the nut; the last string has none (0).

    Formula: append(-diff(string_y_nut) - (strings_gauges[:-1] + strings_gauges[1:]) / 2, 0)
    Source: common practice.
    """
    return np.append(-np.diff(string_y_nut) - (strings_gauges[:-1] + strings_gauges[1:]) / 2, 0.0)


def string_y_bridge(
    strings_gauges: PerString[Mm],
    strings_course: PerString[Ratio],
    string_pair_bridge: PerString[Mm],
    bridge_spread: Mm,
    bridge_spacing: str,
) -> PerString[Mm]:
    """Each string's distance from the centreline at the saddle, treble positive.

    Method: outer strings stand half the spread from the centreline, those of a course as far apart as they are set;
        the steps between courses have equal centres, or leave equal gaps.
    Source: common practice.
    """
    return _across(strings_gauges, strings_course, string_pair_bridge, bridge_spread, bridge_spacing)


def string_along_nut(string_y_nut: PerString[Mm], fret_slant: PerFret[Ratio]) -> PerString[Mm]:
    """Each string's place along the nut, from where that crosses the centreline, treble positive.

    Formula: string_y_nut * hypot(1, fret_slant[0])
    Source: Pythagoras.
    """
    return string_y_nut * np.hypot(1, fret_slant[0])


def string_spread_along_nut(string_along_nut: PerString[Mm]) -> Mm:
    """From the outer string to the outer string along the nut, centre to centre: what a rule on it reads.

    Formula: string_along_nut[0] - string_along_nut[-1]
    Source: common practice.
    """
    return string_along_nut[0] - string_along_nut[-1]


def string_along_saddle(string_y_bridge: PerString[Mm], saddle_slant: Ratio) -> PerString[Mm]:
    """Each string's place along the saddle, from where that crosses the centreline, treble positive.

    Formula: string_y_bridge * hypot(1, saddle_slant)
    Source: Pythagoras.
    """
    return string_y_bridge * np.hypot(1, saddle_slant)


def string_saddle_slant(scale_run_bass: Mm, scale_run_treble: Mm, scale_lead: Mm, bridge_spread: Mm) -> Ratio:
    """How far toward the tail the line of the scale's far ends runs for each mm toward the treble.

    Source: common practice.
    """
    return (scale_run_treble - scale_run_bass + 2 * scale_lead) / bridge_spread


def string_scale_end_x(scale_run: Mm, string_saddle_slant: Ratio, string_y_bridge: PerString[Mm]) -> PerString[Mm]:
    """Where the line of the scale's far ends passes under each string, along the centreline; set-back left out.

    Source: common practice.
    """
    return scale_run + string_saddle_slant * string_y_bridge


def string_fraction(
    string_y_nut: PerString[Mm],
    string_y_bridge: PerString[Mm],
    fret_slant: PerFret[Ratio],
    fret_position: PerFret[Mm],
    string_saddle_slant: Ratio,
    scale_run: Mm,
) -> PerStringFret[Ratio]:
    """The part of each string that lies between the zero line and where it crosses each fret.

    Both are straight lines in plan. On a square board it is the fret's own fraction for every string.
    Formula: (fret_position + (fret_slant - fret_slant[0]) * string_y_nut[:, None]) / (scale_run
        + (string_saddle_slant * string_y_bridge - fret_slant[0] * string_y_nut)[:, None]
        - fret_slant * (string_y_bridge - string_y_nut)[:, None])
    Source: common practice.
    """
    nut, bridge = string_y_nut[:, None], string_y_bridge[:, None]
    ahead = fret_position + (fret_slant - fret_slant[0]) * nut
    run = scale_run + string_saddle_slant * bridge - fret_slant[0] * nut
    return ahead / (run - fret_slant * (bridge - nut))


def string_y(
    string_y_nut: PerString[Mm], string_y_bridge: PerString[Mm], string_fraction: PerStringFret[Ratio]
) -> PerStringFret[Mm]:
    """Each string's distance from the centreline where it crosses each fret, treble positive.

    Formula: string_y_nut[:, None] + string_fraction * (string_y_bridge - string_y_nut)[:, None]
    Source: common practice.
    """
    return string_y_nut[:, None] + string_fraction * (string_y_bridge - string_y_nut)[:, None]


def string_x(fret_position: PerFret[Mm], fret_slant: PerFret[Ratio], string_y: PerStringFret[Mm]) -> PerStringFret[Mm]:
    """Where each string crosses each fret, along the centreline.

    Source: common practice.
    """
    return fret_position + fret_slant * string_y


def string_splay(
    string_y_nut: PerString[Mm],
    string_y_bridge: PerString[Mm],
    string_scale_end_x: PerString[Mm],
    string_x: PerStringFret[Mm],
) -> PerString[Ratio]:
    """How far each string runs toward the bass side for each mm along the board, toward the saddle.

    Formula: (string_y_nut - string_y_bridge) / (string_scale_end_x - string_x[:, 0])
    Source: common practice.
    """
    return (string_y_nut - string_y_bridge) / (string_scale_end_x - string_x[:, 0])


def string_error(string_fraction: PerStringFret[Ratio], fret_fraction: PerFret[Ratio]) -> PerStringFret[Cents]:
    """How sharp the straight fret is for each string against that string's own layout.

    Nothing on a square board; small on a fanned one, where the inner strings do not divide nut and saddle alike.
    Source: common practice; the cent is 1200 log2 of a frequency ratio.
    """
    return 1200 * np.log2((1 - fret_fraction) / (1 - string_fraction))


def string_margin_treble(
    string_y: PerStringFret[Mm], strings_gauges: PerString[Mm], edge_y_treble: PerFret[Mm]
) -> PerFret[Mm]:
    """From the outer side of the first string to the board's finished treble edge at each fret.

    Measured along the fret's crossings, square to the centreline.
    Source: common practice.
    """
    return edge_y_treble - string_y[0] - strings_gauges[0] / 2


def string_margin_bass(
    string_y: PerStringFret[Mm], strings_gauges: PerString[Mm], edge_y_bass: PerFret[Mm]
) -> PerFret[Mm]:
    """From the outer side of the last string to the board's finished bass edge at each fret.

    Measured along the fret's crossings, square to the centreline.
    Source: common practice.
    """
    return string_y[-1] - strings_gauges[-1] / 2 - edge_y_bass
