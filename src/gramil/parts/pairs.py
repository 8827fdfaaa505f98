"""How far the strings of a pair are out of tune on one break point of the saddle for both, and on two.

Both ways are worked out whichever the maker chose, each at its best place, before that is rounded to what can be
filed.
"""

import math

import numpy as np

from gramil.physics.arrays import FloatArray
from gramil.physics.compensation import best_set_backs, held, in_groups
from gramil.physics.stopped_string import StringPaths, StringStiffness, moved
from gramil.quantities import Cents, Mm, PerFret, PerString, Ratio

OWNS = ("pair_",)


def pair_paths(intonation_paths: StringPaths, intonation_nut_forward: PerString[Mm]) -> StringPaths:
    """Where each string runs with the nut where it is to stand, and no set-back at the saddle.

    Method: the end at the nut moved along the string.
    Source: anderson_beausoleil_2024
    """
    return moved(intonation_paths, -intonation_nut_forward, 0.0)


def pair_rms_on_one(
    pair_paths: StringPaths,
    intonation_strings: StringStiffness,
    intonation_weights: PerFret[Ratio],
    strings_course: PerString[Ratio],
) -> PerString[Cents]:
    """How far each string's counted frets would be out, root mean square, if a pair broke at one best place for both.

    Method: least weighted mean square of cents over both strings of each course, over the exact model.
    Source: anderson_beausoleil_2024
    """
    return _left(pair_paths, intonation_strings, intonation_weights, strings_course)


def pair_rms_on_two(
    pair_paths: StringPaths, intonation_strings: StringStiffness, intonation_weights: PerFret[Ratio]
) -> PerString[Cents]:
    """How far each string's counted frets would be out, root mean square, if each broke at its own best place.

    Method: least weighted mean square of cents for each string, over the exact model.
    Source: anderson_beausoleil_2024
    """
    return _left(pair_paths, intonation_strings, intonation_weights, np.arange(1.0, len(pair_paths.nut_x) + 1))


def _left(paths: StringPaths, strings: StringStiffness, weights: FloatArray, groups: FloatArray) -> FloatArray:
    """What is left where strings of one group share a break point; not known for slack strings."""
    count = len(groups)
    try:
        return best_set_backs(paths, strings, held(count), in_groups(groups), weights[1:]).rms
    except ArithmeticError:
        return np.full(count, math.nan)


def pair_rms_all_on_one(pair_rms_on_one: PerString[Cents]) -> Cents:
    """Root mean square over all strings, if a pair broke at one best place for both.

    Formula: sqrt(mean(pair_rms_on_one ** 2))
    Source: common practice.
    """
    return float(np.sqrt((pair_rms_on_one**2).mean()))


def pair_rms_all_on_two(pair_rms_on_two: PerString[Cents]) -> Cents:
    """Root mean square over all strings, if each broke at its own best place.

    Formula: sqrt(mean(pair_rms_on_two ** 2))
    Source: common practice.
    """
    return float(np.sqrt((pair_rms_on_two**2).mean()))
