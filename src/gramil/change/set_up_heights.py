"""The heights of a strung instrument read back: what comes off the nut and off the saddle, and whether that is
possible.

A neck without a truss rod keeps the relief that it has; the other heights are set for it. If a saddle would be too low
for its string, or so high that it tips, the neck must be set anew instead, by the limits that `check` uses.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from gramil import names as n
from gramil.change.set_up_file import SetUpReadings
from gramil.findings.on_heights import finding_saddle_high, finding_saddle_low
from gramil.graph import Figures
from gramil.physics.arrays import FloatArray
from gramil.quantities import Cents, Count, Mm


@dataclass(frozen=True)
class Heights:
    """What one string's heights need, relief set first; not a number if nothing was measured.

    `off_nut` is how much deeper its slot is filed, `off_saddle` what is taken off under it (negative: build up);
    `saddle_left` is what would show, and `saddle_stops` is true if a string cannot be left like that. `octave_change`
    is what setting relief and heights does to fret 12's cents.
    """

    action: Mm
    action_with_relief: Mm
    action_wanted: Mm
    nut: Mm
    nut_with_relief: Mm
    nut_wanted: Mm
    off_nut: Mm
    off_saddle: Mm
    saddle_left: Mm
    saddle_stops: bool
    first_change: Cents
    octave_change: Cents


@dataclass(frozen=True)
class NeckSet:
    """What the neck has to do if the saddle cannot: raise the strings by `rise` at the saddle, over the bridge.

    `wedge` comes off the heel at its cap for this (negative: at the board's end); `strings` are those that need it.
    """

    strings: tuple[Count, ...]
    rise: Mm
    wedge: Mm


def off_ends(drawn: Figures, now: Figures, then: Figures, readings: SetUpReadings) -> FloatArray:
    """What to take off nut and saddle under each string: rows of (nut, saddle), mm, relief set first.

    A string is a straight line between its ends: taking n off the nut and s off the saddle lowers it by (1 - a) n + a s
    at the fraction a of its run. Two heights give both; one gives its own end.
    """
    share = _share(now)
    octave = drawn[n.action_fret]
    relief = lift_by_relief(now, then)
    found = np.zeros((len(share), 2))
    for row, (first, last) in enumerate(share[:, [1, octave]]):
        over_nut = _over(readings.nut, row, then[n.nut_slot_over_first]) + relief[row, 1]
        over_action = _over(readings.action, row, then[n.action_wanted]) + relief[row, octave]
        if np.isnan(over_nut):
            found[row, 1] = 0.0 if np.isnan(over_action) else over_action / last
        elif np.isnan(over_action):
            found[row, 0] = over_nut / (1 - first)
        else:
            found[row] = np.linalg.solve([[1 - first, first], [1 - last, last]], [over_nut, over_action])
    return found


def _share(figures: Figures) -> FloatArray:
    """The fraction of each string's run from zero line to saddle that lies before each fret."""
    start = figures[n.string_x][:, :1]
    share: FloatArray = (figures[n.string_x] - start) / (figures[n.height_saddle_x][:, None] - start)
    return share


def _over(read: Mapping[int, float], row: int, wanted: FloatArray) -> float:
    """How far a height is above what is wanted; not a number if it was not measured."""
    return read.get(row + 1, np.nan) - float(wanted[row])


def lift_by_relief(now: Figures, then: Figures) -> FloatArray:
    """How much higher each string lies over each crown once the relief is set, its ends unchanged.

    The nut goes with the neck's end and the saddle stays: the string turns about it, and each fret goes with the neck.
    """
    rise = then[n.relief_rise] - now[n.relief_rise]
    lift: FloatArray = rise[:, :1] * (1 - _share(now)) - rise
    return lift


def heights_of(
    then: Figures, readings: SetUpReadings, string: int, off: FloatArray, lift: FloatArray, change: FloatArray
) -> Heights:
    """One string's heights: `off` its nut and saddle, `lift` by the relief at each fret, `change` of its cents."""
    row, octave = string - 1, then[n.action_fret]
    action, nut = readings.action.get(string, np.nan), readings.nut.get(string, np.nan)
    left = readings.saddle_height.get(string, np.nan) - float(off[1])
    return Heights(
        action,
        action + float(lift[octave]),
        float(then[n.action_wanted][row]),
        nut,
        nut + float(lift[1]),
        float(then[n.nut_slot_over_first][row]),
        float(off[0]),
        float(off[1]),
        left,
        _stops(then, left),
        float(change[1]),
        float(change[octave]),
    )


def _stops(figures: Figures, left: float) -> bool:
    """Whether `check` would give a stop for a saddle that shows this much under its string."""
    low = finding_saddle_low(np.array([left]), figures[n.limit_exposed_stop_least])
    high = finding_saddle_high(np.array([left]), figures[n.limit_exposed_stop_most])
    return any(each.severity == "stop" for each in (*low, *high))


def neck_set_for(figures: Figures, heights: Iterable[tuple[Count, Heights]]) -> NeckSet | None:
    """What the neck has to do for saddles with a stop, so that those measured show as much as drawn, on average."""
    read = {string: each for string, each in heights if not math.isnan(each.saddle_left)}
    strings = tuple(string for string, each in read.items() if each.saddle_stops)
    if not strings:
        return None
    rise = figures[n.saddle_exposed] - float(np.mean([each.saddle_left for each in read.values()]))
    return NeckSet(strings, rise, rise / figures[n.neck_set_run_mean] * figures[n.neck_heel_depth])
