"""How far each stopped string is out of tune, and where nut and saddle would make it least.

Targets (where the break points are to stand) hang on what was found best only where the maker asked for the best;
what comes of the targets is a prediction, and nothing is cut by it.
"""

import math
from dataclasses import replace

import numpy as np

from gramil.physics.arrays import FloatArray
from gramil.physics.compensation import Freedom, SetBacks, as_one, best_set_backs, held, in_groups, straight
from gramil.physics.stopped_string import StringPaths, StringStiffness, deviation, moved, string_paths
from gramil.quantities import (
    Cents,
    Count,
    Mm,
    PerFret,
    PerString,
    PerStringFret,
    Ratio,
)

OWNS = ("intonation_",)


def intonation_paths(
    string_length: PerString[Mm],
    string_fraction: PerStringFret[Ratio],
    height_at_zero: PerString[Mm],
    height_at_scale_end: PerString[Mm],
    crown_top: PerStringFret[Mm],
    intonation_ratio: PerFret[Ratio],
    intonation_finger: PerStringFret[Mm],
) -> StringPaths:
    """Where each string runs, open and stopped: along the string from the zero line, heights over the crest plane.

    Method: the real heights of every crown and of the string's line at both ends, relief in; nut on the zero line, no
        set-back. Break points move along that line, so that the action stays.
    Source: anderson_beausoleil_2024
    """
    stops = string_fraction[:, 1:] * string_length[:, None]
    paths = string_paths(
        (np.zeros_like(string_length), height_at_zero),
        (string_length, height_at_scale_end),
        (stops, crown_top[:, 1:]),
        intonation_ratio[1:],
        intonation_finger[:, 1:],
    )
    return replace(paths, end_slope=(height_at_scale_end - height_at_zero) / string_length)


def intonation_ratio(scale_cents: PerFret[Cents]) -> PerFret[Ratio]:
    """What each fret is meant to sound over the open string.

    Source: equal_temperament
    """
    return 2 ** (scale_cents / 1200)


def intonation_finger(
    string_fraction: PerStringFret[Ratio], string_length: PerString[Mm], intonation_finger_offset: Mm
) -> PerStringFret[Mm]:
    """How far behind each fret the finger presses: as set, or half way to the fret before where that is nearer.

    Formula: minimum(intonation_finger_offset,
        diff(string_fraction, axis=1, prepend=string_fraction[:, :1]) * string_length[:, None] / 2)
    Source: common practice.
    """
    gaps = np.diff(string_fraction, axis=1, prepend=string_fraction[:, :1]) * string_length[:, None]
    return np.minimum(intonation_finger_offset, gaps / 2)


def intonation_strings(
    string_stretch: PerString[Ratio], string_bending_radius: PerString[Mm], string_stretch_length: PerString[Mm]
) -> StringStiffness:
    """How the strings answer to stretching and bending.

    Method: stretch stiffness and bending radius of each string, together, and the length over which they hold.
    Source: anderson_beausoleil_2024
    """
    return StringStiffness(string_stretch, string_bending_radius, string_stretch_length)


def intonation_weights(
    fret_position: PerFret[Mm], intonation_from_fret: Count, intonation_to_fret: Count
) -> PerFret[Ratio]:
    """Which frets count: 1 from the first to the last that is asked for, else 0.

    Formula: (arange(len(fret_position)) >= intonation_from_fret) * (arange(len(fret_position)) <= intonation_to_fret)
    Source: common practice.
    """
    frets = np.arange(len(fret_position))
    return ((frets >= intonation_from_fret) & (frets <= intonation_to_fret)).astype(np.float64)


def intonation_cents_before(intonation_paths: StringPaths, intonation_strings: StringStiffness) -> PerStringFret[Cents]:
    """How sharp each fret would sound with the nut on the zero line and the saddle at the scale's end.

    Method: by length, weight, pull and stiffness of the stopped string against the open one; the exact form.
    Source: anderson_beausoleil_2024
    """
    return _with_open(deviation(intonation_paths, intonation_strings).total)


def _with_open(cents: FloatArray) -> FloatArray:
    """The open string, which is right by definition, put before the frets."""
    return np.hstack([np.zeros((len(cents), 1)), cents])


def intonation_best(
    intonation_paths: StringPaths,
    intonation_strings: StringStiffness,
    intonation_weights: PerFret[Ratio],
    intonation_nut_freedom: Freedom,
    intonation_saddle_freedom: Freedom,
) -> SetBacks:
    """Nut and saddle together where the frets that count are least out, as far as either may move.

    Method: least weighted mean square of cents over the exact model, by Newton's steps on the linear one.
    Source: anderson_beausoleil_2024
    """
    return _found(
        intonation_paths, intonation_strings, intonation_weights, intonation_nut_freedom, intonation_saddle_freedom
    )


def intonation_best_saddle(
    intonation_paths: StringPaths,
    intonation_strings: StringStiffness,
    intonation_weights: PerFret[Ratio],
    intonation_nut_forward: PerString[Mm],
    intonation_saddle_freedom: Freedom,
) -> SetBacks:
    """The saddle where the frets that count are least out, the nut where it is to stand.

    Method: least weighted mean square of cents over the exact model, by Newton's steps on the linear one.
    Source: anderson_beausoleil_2024
    """
    placed = moved(intonation_paths, -intonation_nut_forward, 0.0)
    stays = held(len(intonation_nut_forward))
    return _found(placed, intonation_strings, intonation_weights, stays, intonation_saddle_freedom)


def _found(
    paths: StringPaths, strings: StringStiffness, weights: FloatArray, nut: Freedom, saddle: Freedom
) -> SetBacks:
    """The best, or not known for strings that are none: slack ones, whose model does not settle."""
    try:
        return best_set_backs(paths, strings, nut, saddle, weights[1:])
    except ArithmeticError:
        none = np.full(len(paths.nut_x), math.nan)
        return SetBacks(none, none, np.full(paths.stop_x.shape, math.nan), none, math.nan)


def intonation_break_point(strings_course: PerString[Ratio], intonation_pair: str) -> PerString[Ratio]:
    """The number of the break point that each string bears on, counted from the treble: one a string, or one a course.

    Formula: strings_course if intonation_pair == "one break point" else arange(1, len(strings_course) + 1)
    Source: common practice.
    """
    if intonation_pair == "one break point":
        return strings_course
    return np.arange(1.0, len(strings_course) + 1)


def intonation_nut_freedom(
    intonation_nut: str,
    scale_zero_fret: bool,
    intonation_weights: PerFret[Ratio],
    intonation_break_point: PerString[Ratio],
) -> Freedom:
    """How the nut may move: not at all, as one straight piece, or break point by break point; a zero fret stays.

    Method: held with a zero fret, or where a single fret counts.
    Source: common practice.
    """
    stays, count = scale_zero_fret or intonation_weights.sum() < 2, len(intonation_break_point)
    return held(count) if stays else _freedom(intonation_nut, np.zeros(count), intonation_break_point)


def intonation_saddle_freedom(
    intonation_saddle: str, string_y_bridge: PerString[Mm], intonation_break_point: PerString[Ratio]
) -> Freedom:
    """How the saddle's break points may move: as one square piece, along a slanted line, or each by itself.

    Method: one amount, two, or one a break point.
    Source: common practice.
    """
    return _freedom(intonation_saddle, string_y_bridge, intonation_break_point)


def _freedom(kind: str, across: FloatArray, points: FloatArray) -> Freedom:
    match kind:
        case "slanted":
            return straight(across)
        case "per string":
            return in_groups(points)
        case "straight":
            return as_one(len(across))
        case _:
            return held(len(across))


def intonation_nut_best(intonation_best: SetBacks) -> PerString[Mm]:
    """How far from the zero line toward fret 1 the nut would best stand, the saddle free to go with it.

    Formula: 0 - intonation_best.nut
    Source: anderson_beausoleil_2024
    """
    return 0 - intonation_best.nut


def intonation_saddle_best(intonation_best: SetBacks) -> PerString[Mm]:
    """The saddle's set-back that goes with the best nut.

    Source: anderson_beausoleil_2024
    """
    return intonation_best.saddle


def intonation_rms_best(intonation_best: SetBacks) -> Cents:
    """What nut and saddle at their best would leave: root mean square over strings and the frets that count.

    Formula: intonation_best.rms_of_all
    Source: anderson_beausoleil_2024
    """
    return intonation_best.rms_of_all


def intonation_nut_forward(
    intonation_nut_given: PerString[Mm], intonation_nut_best: PerString[Mm], intonation_file_to: Mm
) -> PerString[Mm]:
    """Where each string breaks at the nut, from the zero line toward fret 1: as set, or the best that can be filed.

    Formula: where(isnan(intonation_nut_given), round(intonation_nut_best / intonation_file_to) * intonation_file_to,
        intonation_nut_given)
    Source: common practice.
    """
    filed = np.round(intonation_nut_best / intonation_file_to) * intonation_file_to
    return np.where(np.isnan(intonation_nut_given), filed, intonation_nut_given)


def intonation_paths_made(
    intonation_paths: StringPaths, intonation_nut_forward: PerString[Mm], saddle_set_back: PerString[Mm]
) -> StringPaths:
    """Where each string runs with the break points where they are to be filed.

    Method: the ends moved along the string.
    Source: anderson_beausoleil_2024
    """
    return moved(intonation_paths, -intonation_nut_forward, saddle_set_back)


def intonation_cents_after(
    intonation_paths_made: StringPaths, intonation_strings: StringStiffness
) -> PerStringFret[Cents]:
    """How sharp each fret will sound with nut and saddle as they are to be filed.

    Method: by length, weight, pull and stiffness of the stopped string against the open one; the exact form.
    Source: anderson_beausoleil_2024
    """
    return _with_open(deviation(intonation_paths_made, intonation_strings).total)


def intonation_rms_before(
    intonation_cents_before: PerStringFret[Cents], intonation_weights: PerFret[Ratio]
) -> PerString[Cents]:
    """Root mean square of each string's cents over the frets that count, before any set-back.

    Formula: sqrt(sum(intonation_weights * intonation_cents_before ** 2, axis=1) / sum(intonation_weights))
    Source: common practice.
    """
    return _rms(intonation_cents_before, intonation_weights)


def intonation_rms_after(
    intonation_cents_after: PerStringFret[Cents], intonation_weights: PerFret[Ratio]
) -> PerString[Cents]:
    """Root mean square of each string's cents over the frets that count, as filed.

    Formula: sqrt(sum(intonation_weights * intonation_cents_after ** 2, axis=1) / sum(intonation_weights))
    Source: common practice.
    """
    return _rms(intonation_cents_after, intonation_weights)


def _rms(cents: FloatArray, weights: FloatArray) -> FloatArray:
    return np.sqrt((weights * cents**2).sum(axis=1) / weights.sum())


def intonation_rms_all_before(intonation_rms_before: PerString[Cents]) -> Cents:
    """Root mean square of the cents over all strings together, before any set-back.

    Formula: sqrt(mean(intonation_rms_before ** 2))
    Source: common practice.
    """
    return float(np.sqrt((intonation_rms_before**2).mean()))


def intonation_rms_all_after(intonation_rms_after: PerString[Cents]) -> Cents:
    """Root mean square of the cents over all strings together, as filed.

    Formula: sqrt(mean(intonation_rms_after ** 2))
    Source: common practice.
    """
    return float(np.sqrt((intonation_rms_after**2).mean()))


def intonation_rms_softest(
    intonation_paths_made: StringPaths,
    string_stretch_least: PerString[Ratio],
    string_bending_radius: PerString[Mm],
    string_stretch_length: PerString[Mm],
    intonation_weights: PerFret[Ratio],
) -> PerString[Cents]:
    """What the filed places leave if the strings' material is as soft as published figures have it.

    Method: the same model, with the least modulus where no stretch was measured.
    Source: anderson_beausoleil_2024
    """
    strings = StringStiffness(string_stretch_least, string_bending_radius, string_stretch_length)
    return _rms(_with_open(deviation(intonation_paths_made, strings).total), intonation_weights)


def intonation_rms_stiffest(
    intonation_paths_made: StringPaths,
    string_stretch_most: PerString[Ratio],
    string_bending_radius: PerString[Mm],
    string_stretch_length: PerString[Mm],
    intonation_weights: PerFret[Ratio],
) -> PerString[Cents]:
    """What the filed places leave if the strings' material is as stiff as published figures have it.

    Method: the same model, with the greatest modulus where no stretch was measured.
    Source: anderson_beausoleil_2024
    """
    strings = StringStiffness(string_stretch_most, string_bending_radius, string_stretch_length)
    return _rms(_with_open(deviation(intonation_paths_made, strings).total), intonation_weights)


def intonation_octave_move(string_length: PerString[Mm]) -> PerString[Mm]:
    """How far the saddle's break point goes back for each cent that fret 12 is sharp, the open string retuned.

    Formula: string_length * log(2) / 1200
    Source: common practice; the cent is 1200 log2 of a frequency ratio.
    """
    return string_length * math.log(2) / 1200
