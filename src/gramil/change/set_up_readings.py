"""Readback of a strung instrument: relief, heights, then break points; what is at fault, and how stiff each string is.

Everything is worked out over the graph that gave the drawn figures: once with what was measured in its figure's place,
once with the heights as they should be; the difference between the two is what setting them will do to the pitch.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from gramil import names as n
from gramil.change.set_up_causes import Cause, likely_causes
from gramil.change.set_up_file import SetUpReadings, strings_read
from gramil.change.set_up_heights import Heights, NeckSet, heights_of, lift_by_relief, neck_set_for, off_ends
from gramil.change.set_up_moves import Moves, Room, Stiffness, moves_of, room_of, slot_line, stiffness_of
from gramil.graph import Figures, Pin
from gramil.physics.arrays import FloatArray
from gramil.quantities import Cents, Count, Mm


@dataclass(frozen=True)
class NoteReadback:
    """One note: cents as read, as expected once the heights are set, and left once the saddle alone has moved."""

    fret: Count
    measured: Cents
    with_heights: Cents
    left: Cents


@dataclass(frozen=True)
class StringReadback:
    """One string read back; `moves` and `stiffness` are None where no cents were read."""

    string: Count
    heights: Heights
    room: Room
    notes: tuple[NoteReadback, ...]
    moves: Moves | None
    stiffness: Stiffness | None
    per_cent: Mm


@dataclass(frozen=True)
class SetUpReadback:
    """The whole instrument: relief as read (not a number if it was not) and as wanted, and every string read.

    `rod` is the neck's truss rod ("none" keeps the relief as it is), `relief_most` the most that is usual; `neck` is
    what the neck's set has to do if no saddle can, or None. `causes` are what may cause the errors, likeliest first;
    `to_face` is how far inside a face of the saddle each string would break in the slot as it was measured, or None.
    """

    relief: Mm
    relief_wanted: Mm
    relief_most: Mm
    rod: str
    strings: tuple[StringReadback, ...]
    neck: NeckSet | None
    causes: tuple[Cause, ...]
    to_face: FloatArray | None


def read_back_set_up(figures: Figures, readings: SetUpReadings) -> SetUpReadback:
    """What readings of the strung instrument mean, relief and heights first."""
    now = pinned(figures, _as_read(figures, readings))
    then = pinned(figures, _ends_as_read(figures, readings) | _relief_that_stays(figures, readings))
    work = _Work(figures, now, then, readings, off_ends(figures, now, then, readings))
    strings = tuple(_string(work, number) for number in strings_read(readings))
    relief = np.nan if readings.relief is None else readings.relief
    wanted, most, rod = figures[n.heights_relief], figures[n.limit_relief_most], figures[n.neck_rod]
    neck = neck_set_for(figures, ((each.string, each.heights) for each in strings))
    causes = likely_causes(now, readings)
    return SetUpReadback(relief, wanted, most, rod, strings, neck, causes, _to_face(figures, readings))


def _to_face(figures: Figures, readings: SetUpReadings) -> FloatArray | None:
    """From each string's intended break point to the nearer face of a saddle in the slot as measured, if it was."""
    if readings.slot_treble is None or readings.slot_bass is None:
        return None
    middle, slant = slot_line(figures, readings)
    return pinned(figures, {n.saddle_position.address: middle, n.saddle_slant.address: slant})[n.saddle_to_face]


def _relief_that_stays(figures: Figures, readings: SetUpReadings) -> dict[str, float]:
    """The relief as measured, if no rod can set it."""
    set_by_rod = readings.relief is None or figures[n.neck_rod] != "none"
    return {} if set_by_rod else {n.heights_relief.address: float(readings.relief or 0.0)}


@dataclass(frozen=True)
class _Work:
    """The figures as drawn, as measured, and with the heights set, and what has to come off for that."""

    drawn: Figures
    now: Figures
    then: Figures
    readings: SetUpReadings
    off: FloatArray


def pinned(figures: Figures, values: Mapping[str, float]) -> Figures:
    """The figures with those at the addresses replaced by measured ones."""
    pins = {address: Pin(value, "as read") for address, value in values.items()}
    return replace(figures, pins={**figures.pins, **pins}, known={})


def _ends_as_read(figures: Figures, readings: SetUpReadings) -> dict[str, float]:
    """Where every break point stands: as measured or, if not measured, where it was to be filed by the drawn
    figures.
    """
    ends = ((n.saddle_set_back, readings.set_back), (n.intonation_nut_forward, readings.nut_forward))
    return {
        name[string].address: read.get(string, float(figures[name][string - 1]))
        for name, read in ends
        for string in range(1, figures[n.strings_count] + 1)
    }


def _as_read(figures: Figures, readings: SetUpReadings) -> dict[str, float]:
    """Every figure that was measured; heights that were not are as drawn."""
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
    room = room_of(work.drawn, work.readings, string)
    per_cent = float(work.drawn[n.intonation_octave_move][string - 1])
    if not frets:
        return StringReadback(string, heights, room, (), None, None, per_cent)
    measured = np.array([work.readings.cents[string, fret] for fret in frets])
    expected = measured + _change(work, string)[frets]
    moves, left = moves_of(work.then, string, frets, expected)
    notes = tuple(map(NoteReadback, frets, measured.tolist(), expected.tolist(), left.tolist()))
    stiffness = stiffness_of(work.now, string, frets, measured)
    return StringReadback(string, heights, room, notes, moves, stiffness, per_cent)


def _change(work: _Work, string: int) -> FloatArray:
    """What setting relief and heights does to each fret's cents, by the model."""
    change: FloatArray = (work.then[n.intonation_cents_after] - work.now[n.intonation_cents_after])[string - 1]
    return change
