"""Base values of strings, saddle and bridge that need more than their key: one row for each string, nothing missing.

A list that was not given becomes zeros (by the model); a set-back that is to be the best one becomes nan.
"""

import math

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.description.instrument import Instrument
from gramil.description.normal_row import Normal, Values
from gramil.description.strings.tables import Course, Strings
from gramil.physics.pitch import read_pitch
from gramil.quantities import Count, GramPerM, Hertz, Mm, PerString, Ratio

USUAL_TUNING = ("E4", "B3", "G3", "D3", "A2", "E2")
"""Six strings, treble to bass: common practice."""
WOUND_OVER = 0.508
"""Steel strings thicker than this, in mm (0.020 in), are wound: common practice."""
STEEL, NYLON = "music wire", "nylon"
LAST_FRET = 12
"""The last fret that counts for intonation when none is given: common practice."""

STRING_ROWS: tuple[Normal, ...] = (
    Normal(n.strings_gauges, PerString[Mm], "diameters of the strings, treble to bass", ("strings.gauges",)),
    Normal(n.strings_count, Count, "how many strings", ("strings.gauges",)),
    Normal(
        n.strings_course,
        PerString[Ratio],
        "the course that each string belongs to, counted from the treble side",
        ("course",),
        "each string is a course by itself",
    ),
    Normal(
        n.strings_frequency,
        PerString[Hertz],
        "what each open string sounds; not a number where no tuning is given, and none is usual",
        ("strings.tuning", "strings.a4"),
        "E4, B3, G3, D3, A2, E2 for six strings",
    ),
    Normal(
        n.strings_wound,
        PerString[Ratio],
        "whether each string is wound: 1 or 0",
        ("strings.wound", "strings.gauges"),
        "over 0.020 in: common practice",
    ),
    Normal(n.strings_core, str, "what the cores of wound strings are made of", ("strings.core",), "as the plain ones"),
    Normal(n.strings_wrap, str, "what wound strings are wound with", ("strings.wrap",), "common practice"),
    Normal(
        n.strings_cores,
        PerString[Mm],
        "diameters of the cores of wound strings; 0 where they are to be estimated",
        ("strings.cores",),
        "estimated from the gauge",
    ),
    Normal(
        n.strings_weights,
        PerString[GramPerM],
        "weights of the strings off the packet; 0 where they follow from gauge and material",
        ("strings.weights",),
        "from gauges and materials",
    ),
    Normal(
        n.strings_stretch,
        PerString[Ratio],
        "measured stretch stiffness of the strings; 0 where it follows from the modulus",
        ("strings.stretch",),
        "from the material's modulus",
    ),
    Normal(
        n.strings_bending,
        PerString[Mm],
        "diameters that resist bending; 0 where the model knows",
        ("strings.bending",),
        "a plain string's own, a wound one's core",
    ),
    Normal(
        n.intonation_nut_given,
        PerString[Mm],
        "how far each break point at the nut stands toward fret 1; not a number for the best",
        ("intonation.nut_forward", "nut.set_forward"),
        "nut.set_forward for every string",
    ),
    Normal(n.intonation_to_fret, Count, "last fret that counts", ("intonation.to_fret",), "12: common practice"),
    Normal(
        n.saddle_set_back_given,
        PerString[Mm],
        "how far each break point at the saddle stands behind the scale's end; not a number for the best",
        ("saddle.set_back",),
        "best: as found best, to what can be filed",
    ),
    Normal(
        n.bridge_hold_spread,
        Mm,
        "outer pins (or holes), centre to centre",
        ("bridge.hold_spread", "bridge.spread"),
        "as the strings at the saddle",
    ),
)
"""Every base value of strings, intonation, saddle and bridge that is not simply one key."""


def string_values(instrument: Instrument) -> Values:
    """The values of `STRING_ROWS`."""
    strings, count = instrument.strings, len(instrument.strings.gauges)
    intonation, frets = instrument.intonation, instrument.scale.frets
    pitches = strings.tuning or usual_tuning(count)
    core = strings.core or strings.plain
    forward = (instrument.nut.set_forward,) if intonation.nut_forward is None else intonation.nut_forward
    return {
        n.strings_gauges: np.array(strings.gauges),
        n.strings_count: count,
        n.strings_course: _courses(instrument.course, count),
        n.strings_frequency: np.array([read_pitch(each, strings.a4) for each in pitches] or [np.nan] * count),
        n.strings_wound: wound(strings),
        n.strings_core: core,
        n.strings_wrap: strings.wrap or ("silver plated copper" if core == NYLON else "phosphor bronze"),
        n.strings_cores: _listed(strings.cores, count),
        n.strings_weights: _listed(strings.weights, count),
        n.strings_stretch: _listed(strings.stretch, count),
        n.strings_bending: _listed(strings.bending, count),
        n.intonation_nut_given: _moves(forward, count),
        n.intonation_to_fret: min(LAST_FRET, frets) if intonation.to_fret is None else intonation.to_fret,
        n.saddle_set_back_given: _moves(instrument.saddle.set_back, count),
        n.bridge_hold_spread: instrument.bridge.hold_spread or instrument.bridge.spread,
    }


PER_STRING = ("cores", "weights", "stretch", "bending")
"""Lists of [strings] that hold one figure a string, 0 for one that is not known."""


def usual_tuning(count: int) -> tuple[str, ...]:
    """The tuning for this many strings if none is given; empty if there is no usual one."""
    return USUAL_TUNING if count == len(USUAL_TUNING) else ()


def wound(strings: Strings) -> NDArray[np.float64]:
    """1 for each string that is wound, else 0."""
    if strings.wound is None:
        return np.array([float(gauge > WOUND_OVER) for gauge in strings.gauges])
    return np.array([float(number in strings.wound) for number in range(1, len(strings.gauges) + 1)])


def _courses(courses: tuple[Course, ...], count: int) -> NDArray[np.float64]:
    """The number of each string's course."""
    strings = [len(each.strings) for each in courses] or [1] * count
    return np.repeat(np.arange(1.0, len(strings) + 1), strings)


def _listed(values: tuple[float, ...] | None, count: int) -> NDArray[np.float64]:
    return np.zeros(count) if values is None else np.array(values)


def _moves(values: tuple[float, ...], count: int) -> NDArray[np.float64]:
    """One move for all strings or one for each; nan if none is given: the best is to be found."""
    return np.array(np.broadcast_to(values or math.nan, count))
