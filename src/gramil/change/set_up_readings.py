"""Readback of a strung instrument: relief, heights, then break points; and how stiff each string really is.

Everything goes over the graph that gave the drawn figures: what was measured takes its figure's place, what the heights
should be takes it again, and the difference between the two is what setting them will do to the pitch.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.change.set_up_file import SetUpReadings, strings_read
from gramil.change.set_up_heights import Heights, NeckSet, heights_of, lift_by_relief, neck_set_for, off_ends
from gramil.faults import MakersFault
from gramil.graph import Figures, Pin
from gramil.physics.arrays import FloatArray
from gramil.physics.compensation import cents_per_mm
from gramil.physics.stopped_string import StringPaths, StringStiffness, deviation, moved
from gramil.physics.stretch_fit import StretchFit, fit_stretch
from gramil.quantities import Cents, Count, Mm, Ratio

READING = 1.0
"""Standard error of one reading in cents: a steady hand and a good tuner."""
STEPS = 4
"""Newton's steps toward the best moves: each leaves a small part of what the one before left."""
BEFORE_SADDLE = 3
"""Readings of one string from which its saddle's error can be sought beside its stiffness."""


@dataclass(frozen=True)
class NoteReadback:
    """One note: cents as read, as expected once the heights are set, and left once the saddle alone has moved."""

    fret: Count
    measured: Cents
    with_heights: Cents
    left: Cents


@dataclass(frozen=True)
class Moves:
    """Further moves of break points that leave the readings least out, heights set.

    `saddle_alone` is toward the tail; `nut` is toward fret 1, with `saddle_with_nut`; not a number for fewer than two
    frets. The root mean squares are over this string's readings: now, with the saddle alone, with both.
    """

    saddle_alone: Mm
    nut: Mm
    saddle_with_nut: Mm
    now: Cents
    left_alone: Cents
    left_both: Cents


@dataclass(frozen=True)
class Stiffness:
    """Stretch stiffness as drawn, and as the readings have it with its standard error; not a number if none does.

    `saddle_error` is how much farther back than given the saddle's break point acts, where that could be sought.
    """

    drawn: Ratio
    fitted: Ratio
    uncertainty: Ratio
    saddle_error: Mm
    saddle_uncertainty: Mm


@dataclass(frozen=True)
class StringReadback:
    """One string read back; `moves` and `stiffness` are None where no cents were read."""

    string: Count
    heights: Heights
    notes: tuple[NoteReadback, ...]
    moves: Moves | None
    stiffness: Stiffness | None
    per_cent: Mm


@dataclass(frozen=True)
class SetUpReadback:
    """The whole instrument: relief as read (not a number if it was not) and as wanted, and every string read.

    `rod` is the neck's truss rod ("none" keeps the relief as it is), `relief_most` the most that is usual; `neck` is
    what the neck's set has to bring where no saddle can, or None.
    """

    relief: Mm
    relief_wanted: Mm
    relief_most: Mm
    rod: str
    strings: tuple[StringReadback, ...]
    neck: NeckSet | None


def read_back_set_up(figures: Figures, readings: SetUpReadings) -> SetUpReadback:
    """What readings of the strung instrument mean, relief and heights first."""
    now = pinned(figures, _as_read(figures, readings))
    then = pinned(figures, _ends_as_read(figures, readings) | _relief_that_stays(figures, readings))
    work = _Work(figures, now, then, readings, off_ends(figures, now, then, readings))
    strings = tuple(_string(work, number) for number in strings_read(readings))
    relief = np.nan if readings.relief is None else readings.relief
    wanted, most, rod = figures["heights_relief"], figures["limit_relief_most"], figures["neck_rod"]
    neck = neck_set_for(figures, ((each.string, each.heights) for each in strings))
    return SetUpReadback(relief, wanted, most, rod, strings, neck)


def _relief_that_stays(figures: Figures, readings: SetUpReadings) -> dict[str, float]:
    """The relief as read where no rod can set it."""
    set_by_rod = readings.relief is None or figures["neck_rod"] != "none"
    return {} if set_by_rod else {"heights_relief": float(readings.relief or 0.0)}


@dataclass(frozen=True)
class _Work:
    """Drawn figures, those of the instrument as read, those with its heights set, and what has to come off for that."""

    drawn: Figures
    now: Figures
    then: Figures
    readings: SetUpReadings
    off: FloatArray


def pinned(figures: Figures, values: Mapping[str, float]) -> Figures:
    """The figures with measured ones in the place of those at the addresses."""
    pins = {address: Pin(value, "as read") for address, value in values.items()}
    return replace(figures, pins={**figures.pins, **pins}, known={})


def _ends_as_read(figures: Figures, readings: SetUpReadings) -> dict[str, float]:
    """Where every break point stands: read or, unread, where it was to be filed by the drawn figures."""
    ends = ((n.saddle_set_back, readings.set_back), (n.intonation_nut_forward, readings.nut_forward))
    return {
        name[string].address: read.get(string, float(figures[name][string - 1]))
        for name, read in ends
        for string in range(1, figures[n.strings_count] + 1)
    }


def _as_read(figures: Figures, readings: SetUpReadings) -> dict[str, float]:
    """Every figure that was read; heights that were not are as drawn."""
    found = _ends_as_read(figures, readings)
    found |= {n.action_wanted[string].address: value for string, value in readings.action.items()}
    if readings.relief is not None:
        found[n.heights_relief.address] = readings.relief
    if readings.nut and not figures[n.scale_zero_fret]:
        over_first = figures[n.nut_slot_over_first]
        found[n.action_nut_fret.address] = 1
        found |= {
            n.action_nut[string].address: readings.nut.get(string, float(over_first[string - 1]))
            for string in range(1, figures[n.strings_count] + 1)
        }
    return found


def _string(work: _Work, string: int) -> StringReadback:
    frets = sorted(fret for number, fret in work.readings.cents if number == string)
    row, lift = string - 1, lift_by_relief(work.now, work.then)
    heights = heights_of(work.then, work.readings, string, work.off[row], lift[row], _change(work, string))
    per_cent = float(work.drawn["intonation_octave_move"][string - 1])
    if not frets:
        return StringReadback(string, heights, (), None, None, per_cent)
    measured = np.array([work.readings.cents[string, fret] for fret in frets])
    expected = measured + _change(work, string)[frets]
    moves, left = _moves(work, string, frets, expected)
    notes = tuple(map(NoteReadback, frets, measured.tolist(), expected.tolist(), left.tolist()))
    return StringReadback(string, heights, notes, moves, _stiffness(work, string, frets, measured), per_cent)


def _change(work: _Work, string: int) -> FloatArray:
    """What setting relief and heights does to each fret's cents, by the model."""
    change: FloatArray = (work.then[n.intonation_cents_after] - work.now[n.intonation_cents_after])[string - 1]
    return change


def _moves(work: _Work, string: int, frets: list[int], cents: FloatArray) -> tuple[Moves, FloatArray]:
    """The moves of one string's ends, and what the saddle alone leaves at each fret that was read."""
    paths, strings = _one(work.then, string)
    stops = np.array(frets) - 1
    (_, alone), left = _settled(paths, strings, stops, cents, SADDLE)
    forward = with_nut = left_both = np.nan
    if len(frets) > 1:
        (forward, with_nut), rest = _settled(paths, strings, stops, cents, NUT_AND_SADDLE)
        left_both = _rms(rest)
    return Moves(float(alone), float(forward), float(with_nut), _rms(cents), _rms(left), left_both), left


SADDLE, NUT_AND_SADDLE = [1], [0, 1]
"""Which of the two ends may move: columns of (nut, saddle)."""


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


def _stiffness(work: _Work, string: int, frets: list[int], measured: FloatArray) -> Stiffness:
    """The stretch stiffness that the readings ask for, in the geometry as read."""
    drawn = float(work.drawn[n.string_stretch][string - 1])
    plain = _fit(work.now, string, frets, measured, seek_saddle=False)
    sought = _fit(work.now, string, frets, measured, seek_saddle=True) if len(frets) >= BEFORE_SADDLE else None
    fitted = (float(plain.stretch[0]), float(plain.uncertainty[0])) if plain else (np.nan, np.nan)
    saddle = (float(sought.saddle_error[0]), float(sought.saddle_uncertainty[0])) if sought else (np.nan, np.nan)
    return Stiffness(drawn, *fitted, *saddle)


def _fit(now: Figures, string: int, frets: list[int], measured: FloatArray, seek_saddle: bool) -> StretchFit | None:
    """The fit, or None where no stiffness explains the readings."""
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
