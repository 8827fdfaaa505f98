"""The faults that are tried against a strung instrument's readings, and what an amount of each does to its strings."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from gramil import names as n
from gramil.change.set_up_file import SetUpReadings
from gramil.graph import Figures
from gramil.physics.arrays import FloatArray
from gramil.physics.stopped_string import StringPaths, StringStiffness, deviation, moved

Kind = Literal["bridge", "slant", "nut place", "nut height", "relief", "action", "fret", "stretch", "break point"]
USUAL: dict[Kind, float] = {
    "bridge": 2.0, "slant": 1.0, "nut place": 0.7, "nut height": 0.6, "relief": 0.3, "action": 1.0, "fret": 0.7,
    "stretch": 0.4, "break point": 1.5,
}  # fmt: skip
"""How far such a fault goes, in mm (of a stretch in its logarithm), a standard deviation: common practice, a setting.

A nut 2 mm out of its place is rarer than a bridge: where readings do not part the two, this does. A nut whose slots are
not filed yet stands up to a millimetre and more too high.
"""
SMALL = 0.01
"""A small amount for slopes, in mm; in the logarithm of a stretch as well."""
FOLLOWING = 8
"""Turns in which nut and saddle come to rest where both heights were read: little is left of each by the next."""
SOONER_READ = 3.0
"""Held against heights that nobody read, four to one: they are read before a saddle is blamed."""
SLANT_STRINGS = 3
"""Strings from which a slant shows beside a place."""


@dataclass(frozen=True)
class Strung:
    """The model of all strings as they stand."""

    paths: StringPaths
    strings: StringStiffness


def cents_of(each: Sequence[Strung]) -> FloatArray:
    """Cents sharp of the intended pitch in several states of the same strings: by state, string and stop."""
    strings, stops = each[0].paths.stop_x.shape
    paths = {name: np.concatenate([getattr(one.paths, name) for one in each]) for name in vars(each[0].paths)}
    stiff = {name: np.concatenate([getattr(one.strings, name) for one in each]) for name in vars(each[0].strings)}
    return deviation(StringPaths(**paths), StringStiffness(**stiff)).total.reshape(len(each), strings, stops)


@dataclass(frozen=True, eq=False)
class Suspect:
    """One fault, and what an amount of it does to the strings.

    `place` is the fret or string, 0 for none; `among` is how many faults like it there are, since picking one of them
    must be paid for too; `against` is how unlikely it is beforehand, as twice the log of the odds. An amount is what is
    there less what was thought, in mm: toward the tail for break points and frets (of a slant at the treble string), up
    for heights, toward the head for a nut; of a stretch the logarithm of the ratio.
    """

    kind: Kind
    place: int
    among: int
    done: Callable[[Strung, float], Strung]
    against: float = 0.0

    @property
    def group(self) -> tuple[str, int]:
        """The thing at fault: a string, whatever about it is wrong, or what the kind says."""
        return ("string" if self.kind in ("stretch", "break point") else self.kind), self.place


def suspects_of(now: Figures, readings: SetUpReadings) -> Iterator[Suspect]:
    """Every fault that the readings could show and that was not itself measured, the commonest first."""
    strings, frets = sorted({string for string, _ in readings.cents}), sorted({fret for _, fret in readings.cents})
    placed = all(string in readings.set_back for string in strings)
    if not placed:
        yield Suspect("bridge", 0, 1, _saddle(np.ones(now[n.strings_count])))
    if not placed and len(strings) >= SLANT_STRINGS:
        yield Suspect("slant", 0, 1, _saddle(now[n.string_y_bridge] / now[n.string_y_bridge][0]))
    yield from _of_the_nut(now, readings, strings)
    yield from _of_the_neck(now, readings)
    for fret in frets:
        yield Suspect("fret", fret, len(now[n.fret_position]) - 1, _fret(fret))
    yield from _of_strings(now, readings, strings)


def _of_the_nut(now: Figures, readings: SetUpReadings, strings: list[int]) -> Iterator[Suspect]:
    if now[n.scale_zero_fret]:
        return
    if not all(string in readings.nut_forward for string in strings):
        yield Suspect("nut place", 0, 1, _nut_back)
    if not readings.nut:
        yield Suspect("nut height", 0, 1, _lifted(now, readings, nut=1.0), against=SOONER_READ)


def _of_the_neck(now: Figures, readings: SetUpReadings) -> Iterator[Suspect]:
    if readings.relief is None:
        yield Suspect("relief", 0, 1, _lifted(now, readings, relief=1.0), against=SOONER_READ)
    if not readings.action:
        yield Suspect("action", 0, 1, _lifted(now, readings, action=1.0), against=SOONER_READ)


def _of_strings(now: Figures, readings: SetUpReadings, strings: list[int]) -> Iterator[Suspect]:
    count = now[n.strings_count]
    for string in strings:
        yield Suspect("stretch", string, count, _stretch(string))
        if string not in readings.set_back:
            yield Suspect("break point", string, count, _saddle(_alone(string, count)))


def _alone(string: int, count: int) -> FloatArray:
    share: FloatArray = (np.arange(1, count + 1) == string).astype(np.float64)
    return share


def _saddle(shares: FloatArray) -> Callable[[Strung, float], Strung]:
    return lambda strung, amount: replace(strung, paths=moved(strung.paths, 0.0, amount * shares))


def _nut_back(strung: Strung, amount: float) -> Strung:
    return replace(strung, paths=moved(strung.paths, amount, 0.0))


def _lifted(
    now: Figures, readings: SetUpReadings, nut: float = 0.0, action: float = 0.0, relief: float = 0.0
) -> Callable[[Strung, float], Strung]:
    """Strings higher at the nut or over fret 12, or the neck bent, in mm for each mm of the amount.

    A bent neck takes its nut with it, by the arc of `relief_rise`. Heights that were measured stay as measured:
    the other end follows.
    """
    octave, start = now[n.action_fret], now[n.string_x][:, :1]
    share = (now[n.string_x] - start) / (now[n.height_saddle_x][:, None] - start)
    rise = relief * 4 / now[n.back_bow_span] ** 2 * np.maximum(0.0, now[n.back_bow_length] - now[n.string_x]) ** 2
    nut_up, saddle_up = rise[:, 0] + nut, action / share[:, octave]
    for _ in range(FOLLOWING):
        if readings.nut:
            nut_up = (rise[:, 1] - share[:, 1] * saddle_up) / (1 - share[:, 1])
        if readings.action:
            saddle_up = (rise[:, octave] - (1 - share[:, octave]) * nut_up) / share[:, octave]

    def done(strung: Strung, amount: float) -> Strung:
        paths = strung.paths
        ends = {"nut_height": nut_up, "saddle_height": saddle_up, "stop_height": rise[:, 1:]}
        return replace(
            strung, paths=replace(paths, **{name: getattr(paths, name) + amount * up for name, up in ends.items()})
        )

    return done


def _fret(fret: int) -> Callable[[Strung, float], Strung]:
    def done(strung: Strung, amount: float) -> Strung:
        stops = strung.paths.stop_x.copy()
        stops[:, fret - 1] += amount
        return replace(strung, paths=replace(strung.paths, stop_x=stops))

    return done


def _stretch(string: int) -> Callable[[Strung, float], Strung]:
    def done(strung: Strung, amount: float) -> Strung:
        stretch = strung.strings.stretch.copy()
        stretch[string - 1] *= np.exp(amount)
        return replace(strung, strings=replace(strung.strings, stretch=stretch))

    return done
