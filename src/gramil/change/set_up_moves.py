"""How far one string's break points must move to play in tune, whether its saddle has room for that, and how stiff it
is.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.change.set_up_file import SetUpReadings
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.physics.arrays import FloatArray
from gramil.physics.compensation import cents_per_mm
from gramil.physics.stopped_string import StringPaths, StringStiffness, deviation, moved
from gramil.physics.stretch_fit import StretchFit, fit_stretch
from gramil.quantities import Cents, Mm, Ratio

READING = 1.0
"""Standard error of one reading in cents: a steady hand and a good tuner."""
STEPS = 4
"""Newton's steps toward the best moves: each leaves a small part of what the one before left."""
BEFORE_SADDLE = 3
"""Readings of one string from which its saddle's error can be sought beside its stiffness."""
SADDLE, NUT_AND_SADDLE = [1], [0, 1]
"""Which of the two ends may move: columns of (nut, saddle)."""


@dataclass(frozen=True)
class Moves:
    """The further moves of break points that leave the least error in the readings, heights set.

    `saddle_alone` is toward the tail; `nut` is toward fret 1, with `saddle_with_nut`; not a number for fewer than two
    frets, or with a zero fret. The root mean squares are over this string's readings: now, with the saddle alone, with
    both.
    """

    saddle_alone: Mm
    nut: Mm
    saddle_with_nut: Mm
    now: Cents
    left_alone: Cents
    left_both: Cents


@dataclass(frozen=True)
class Room:
    """How far a string's break point can go on the saddle as it stands in its slot, in mm; negative: it is off it."""

    toward_tail: Mm
    toward_nut: Mm

    def takes(self, move: Mm) -> bool:
        """Whether a move, toward the tail positive, ends on the saddle."""
        return -self.toward_nut <= move <= self.toward_tail


@dataclass(frozen=True)
class Stiffness:
    """Stretch stiffness as drawn, and as fitted to the readings with its standard error; not a number if none fits.

    `saddle_error` is how much farther back than given the saddle's break point acts, if that could be fitted.
    """

    drawn: Ratio
    fitted: Ratio
    uncertainty: Ratio
    saddle_error: Mm
    saddle_uncertainty: Mm


def room_of(drawn: Figures, readings: SetUpReadings, string: int) -> Room:
    """The room that the saddle leaves a string's break point: up to its faces, less the margin that `check` wants.

    The slot lies where it was measured, or else as drawn; the break point as measured or filed.
    """
    middle, slant = slot_line(drawn, readings)
    row, y = string - 1, float(drawn[n.string_y_bridge][string - 1])
    set_back = readings.set_back.get(string, float(drawn[n.saddle_set_back][row]))
    breaks = float(drawn[n.string_scale_end_x][row]) + set_back
    behind = (breaks - middle - slant * y) / np.hypot(1, slant)
    half = drawn[n.saddle_thickness] / 2 - drawn[n.limit_saddle_edge]
    return Room(float(half - behind), float(half + behind))


def slot_line(drawn: Figures, readings: SetUpReadings) -> tuple[float, float]:
    """Where the saddle's slot crosses the centreline, and its slant: as measured at both ends, or as drawn."""
    treble, bass = readings.slot_treble, readings.slot_bass
    if treble is None or bass is None:
        return drawn[n.saddle_position], drawn[n.saddle_slant]
    return (treble + bass) / 2, (treble - bass) / (2 * drawn[n.saddle_reach])


def moves_of(then: Figures, string: int, frets: list[int], cents: FloatArray) -> tuple[Moves, FloatArray]:
    """The moves of one string's ends, heights set, and what the saddle alone leaves at each fret that was measured."""
    paths, strings = _one(then, string)
    stops = np.array(frets) - 1
    (_, alone), left = _settled(paths, strings, stops, cents, SADDLE)
    forward = with_nut = left_both = np.nan
    if len(frets) > 1 and not then[n.scale_zero_fret]:
        (forward, with_nut), rest = _settled(paths, strings, stops, cents, NUT_AND_SADDLE)
        left_both = _rms(rest)
    return Moves(float(alone), float(forward), float(with_nut), _rms(cents), _rms(left), left_both), left


def _settled(
    paths: StringPaths, strings: StringStiffness, stops: NDArray[np.intp], cents: FloatArray, ends: list[int]
) -> tuple[FloatArray, FloatArray]:
    """Moves (nut toward fret 1, saddle toward the tail) of the ends that may move, and the cents left at the stops.

    Newton's steps over the exact model, so that moves of several millimetres come out right as well.
    """
    at_rest, moves = deviation(paths, strings).total[0, stops], np.zeros(2)
    for _ in range(STEPS):
        here = moved(paths, -moves[0], moves[1])
        left = cents + deviation(here, strings).total[0, stops] - at_rest
        nut, saddle = (each[0, stops] for each in cents_per_mm(here, strings))
        slopes = np.column_stack([-nut, saddle])[:, ends]
        moves[ends] += np.linalg.lstsq(slopes, -left, rcond=None)[0]
    here = moved(paths, -moves[0], moves[1])
    return moves, cents + deviation(here, strings).total[0, stops] - at_rest


def _rms(values: FloatArray) -> float:
    return float(np.sqrt((values**2).mean()))


def stiffness_of(now: Figures, string: int, frets: list[int], measured: FloatArray) -> Stiffness:
    """The stretch stiffness that fits the readings, in the geometry as measured."""
    drawn = float(now[n.string_stretch][string - 1])
    plain = _fit(now, string, frets, measured, seek_saddle=False)
    sought = _fit(now, string, frets, measured, seek_saddle=True) if len(frets) >= BEFORE_SADDLE else None
    fitted = (float(plain.stretch[0]), float(plain.uncertainty[0])) if plain else (np.nan, np.nan)
    saddle = (float(sought.saddle_error[0]), float(sought.saddle_uncertainty[0])) if sought else (np.nan, np.nan)
    return Stiffness(drawn, *fitted, *saddle)


def _fit(now: Figures, string: int, frets: list[int], measured: FloatArray, seek_saddle: bool) -> StretchFit | None:
    """The fit, or None if no stiffness explains the readings."""
    paths, strings = _one(now, string)
    cents = np.full(paths.stop_x.shape, np.nan)
    cents[0, np.array(frets) - 1] = measured
    try:
        return fit_stretch(paths, strings, cents, READING, seek_saddle)
    except MakersFault:
        return None


def _one(figures: Figures, string: int) -> tuple[StringPaths, StringStiffness]:
    """One string by itself, its break points where they stand."""
    paths, strings = figures[n.intonation_paths_made], figures[n.intonation_strings]
    row = slice(string - 1, string)
    own = replace(paths, **{name: value[row] for name, value in vars(paths).items()})
    return own, replace(strings, **{name: value[row] for name, value in vars(strings).items()})
