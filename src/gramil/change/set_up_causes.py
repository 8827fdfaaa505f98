"""What causes a strung instrument's errors in cents: each likely fault is tried against the readings, the simplest
first.

A fault has one amount: how much too near the nut the bridge is, how wrongly a saddle is slanted, how far back a nut or
how high its slots, how far one fret is out of its place, how different the relief, the action, a string's stretch or
its break point is from what was thought. The model of the stopped strings says what each does to every reading; least
squares give the amount that fits best. Whatever was measured is not suspected: its reading is in the model already.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.change.set_up_file import SetUpReadings
from gramil.change.set_up_suspects import SMALL, USUAL, Kind, Strung, Suspect, cents_of, suspects_of
from gramil.graph import Figures
from gramil.physics.arrays import FloatArray
from gramil.physics.least_squares import fitted

READING = 1.0
"""Standard error of one reading in cents: a steady hand and a good tuner."""
WORTH_NAMING = 0.05
"""A cause less likely than this is not told beside the first."""
A_FAULT = 5.0
"""What every fault supposed costs, in twice the log of the odds: twelve to one against it before anything was read."""
A_SECOND = 3.0
"""What two at once cost besides, likewise: four to one."""
STEPS, SETTLED = 10, 1e-3
"""How many of Newton's steps over the exact model are taken at most, until one is smaller than this, in mm or ln of a
stretch.
"""
FARTHEST = 5.0
"""The most that one of those goes, in mm or in the logarithm of a stretch, so that none runs away."""
SECONDS = 6
"""How many of the best single faults are tried with a second one beside them."""
LEAST_SPARE = 6
"""Readings over and above all that could be fitted, from which their own scatter is known."""
LEAST_STRINGS = 2
"""Strings that must have been read for what is common to all to show."""


@dataclass(frozen=True)
class Amount:
    """A fault with the amount that fits the readings, and its standard error; of a stretch, both in its logarithm."""

    kind: Kind
    place: int
    value: float
    uncertainty: float


@dataclass(frozen=True)
class Cause:
    """What explains the readings: one fault, two at once, one for each string, or none at all.

    `instead` is another fault of the same string that explains them as well; `explained` the share of the cents'
    squares that it takes away, `left` the root mean square that it leaves, in cents, and `likely` its share of the
    likelihood among all those tried.
    """

    amounts: tuple[Amount, ...]
    instead: tuple[Amount, ...]
    explained: float
    left: float
    likely: float


@dataclass(frozen=True)
class _Read:
    """The readings: rows and stops of the model, how many cents each is off the model, and their scatter in cents."""

    rows: NDArray[np.intp]
    stops: NDArray[np.intp]
    off: FloatArray
    noise: float = READING


@dataclass(frozen=True)
class _Fit:
    """Faults supposed together (possibly none), the amount of each that fits best, and the cents left."""

    together: tuple[Suspect, ...]
    values: FloatArray
    slopes: FloatArray
    left: FloatArray

    @property
    def group(self) -> frozenset[tuple[str, int]]:
        """The things at fault."""
        return frozenset(each.group for each in self.together)


def likely_causes(now: Figures, readings: SetUpReadings) -> tuple[Cause, ...]:
    """The causes worth telling, likeliest first; none where too few strings were read. `now` is as read."""
    if len({string for string, _ in readings.cents}) < LEAST_STRINGS:
        return ()
    strung = Strung(now[n.intonation_paths_made], now[n.intonation_strings])
    read = _read(strung, readings)
    suspects = tuple(suspects_of(now, readings))
    every = _slopes([(strung, each) for each in suspects], read)
    read = replace(read, noise=_noise(read.off, every))
    supposed = [(), *((each,) for each in suspects), *_every_string(suspects)]
    fits = _fits(strung, supposed, read)
    fits += _with_a_second(fits, dict(zip(suspects, every.T, strict=True)), read)
    told = sorted((each for each in _grouped(fits, read) if each[1] >= WORTH_NAMING), key=lambda each: -each[1])
    return tuple(_cause(strung, read, group, share) for group, share in told)


def _read(strung: Strung, readings: SetUpReadings) -> _Read:
    keys = sorted(readings.cents)
    rows, stops = np.array([string - 1 for string, _ in keys]), np.array([fret - 1 for _, fret in keys])
    cents = np.array([readings.cents[key] for key in keys])
    return _Read(rows, stops, cents - cents_of([strung])[0, rows, stops])


def _slopes(each: Sequence[tuple[Strung, Suspect]], read: _Read) -> FloatArray:
    """How the readings change with the amount of a fault of the strings as they stand: a column for each of these."""
    if not each:
        return np.zeros((len(read.off), 0))
    more, less = (cents_of([suspect.done(here, way * SMALL) for here, suspect in each]) for way in (1, -1))
    slopes: FloatArray = (more - less)[:, read.rows, read.stops].T / (2 * SMALL)
    return slopes


def _noise(off: FloatArray, every: FloatArray) -> float:
    """The scatter of a reading in cents: what all faults together leave, if that can be told, else a good tuner's."""
    found, _, rank, _ = np.linalg.lstsq(every, off, rcond=1e-6)
    spare = len(off) - int(rank)
    if spare < LEAST_SPARE:
        return READING
    return max(READING, float(np.sqrt(((off - every @ found) ** 2).sum() / spare)))


def _every_string(suspects: Sequence[Suspect]) -> Iterator[tuple[Suspect, ...]]:
    """A fault of one kind on every string that was read."""
    for kind in ("stretch", "break point"):
        every = tuple(each for each in suspects if each.kind == kind)
        if len(every) > LEAST_STRINGS:
            yield every


def _with_a_second(fits: Sequence[_Fit], slopes: Mapping[Suspect, FloatArray], read: _Read) -> list[_Fit]:
    """The best of the single faults combined with each other one, linearised about the first."""
    singles = sorted((each for each in fits if len(each.together) == 1), key=lambda each: _score(each, read))
    pairs = [(first, suspect) for first in singles[:SECONDS] for suspect in slopes if suspect not in first.together]
    if not pairs:
        return []
    columns = np.stack([np.column_stack([first.slopes, slopes[suspect]]) for first, suspect in pairs])
    left = np.stack([first.left for first, _ in pairs])
    steps = fitted(columns, left)
    left = left - (columns @ steps[..., None])[..., 0]
    values = steps + [[*first.values.tolist(), 0.0] for first, _ in pairs]
    together = [(*first.together, suspect) for first, suspect in pairs]
    return [_Fit(*each) for each in zip(together, values, columns, left, strict=True)]


def _fits(strung: Strung, supposed: Sequence[tuple[Suspect, ...]], read: _Read) -> list[_Fit]:
    """How much there is of each fault of every group supposed, by Newton's steps over the exact model.

    All groups take a step at once, since one call of the model for all costs little more than one for one of them.
    """
    fits = {at: _none(together, read) for at, together in enumerate(supposed)}
    walking = [at for at, together in enumerate(supposed) if together]
    for _ in range(STEPS):
        if not walking:
            break
        gone = _stepped(strung, [fits[at] for at in walking], read)
        steps = [np.abs(there.values - fits[at].values).max() for at, there in zip(walking, gone, strict=True)]
        fits |= zip(walking, gone, strict=True)
        walking = [at for at, step in zip(walking, steps, strict=True) if not step < SETTLED]
    return list(fits.values())


def _none(together: tuple[Suspect, ...], read: _Read) -> _Fit:
    return _Fit(together, np.zeros(len(together)), np.zeros((len(read.off), len(together))), read.off)


def _stepped(strung: Strung, fits: Sequence[_Fit], read: _Read) -> list[_Fit]:
    """Each of them one of Newton's steps farther."""
    here = [_with(strung, fit.together, fit.values) for fit in fits]
    each = [(at, suspect) for at, fit in zip(here, fits, strict=True) for suspect in fit.together]
    ends = np.cumsum([len(fit.together) for fit in fits])[:-1]
    slopes = np.split(_slopes(each, read), ends, axis=1)
    values = [fit.values + _step(columns, fit.left) for columns, fit in zip(slopes, fits, strict=True)]
    there = cents_of([strung, *(_with(strung, fit.together, to) for fit, to in zip(fits, values, strict=True))])
    left = read.off - (there[1:] - there[0])[:, read.rows, read.stops]
    return [_Fit(fit.together, *now) for fit, *now in zip(fits, values, slopes, left, strict=True)]


def _step(columns: FloatArray, left: FloatArray) -> FloatArray:
    if columns.shape[1] > 1:
        return np.clip(np.linalg.lstsq(columns, left, rcond=None)[0], -FARTHEST, FARTHEST)
    along = columns[:, 0]
    square = along @ along
    return np.clip([along @ left / square if square else 0.0], -FARTHEST, FARTHEST)


def _with(strung: Strung, together: tuple[Suspect, ...], values: FloatArray) -> Strung:
    for suspect, value in zip(together, values.tolist(), strict=True):
        strung = suspect.done(strung, value)
    return strung


def _score(fit: _Fit, read: _Read) -> float:
    """The remainder measured by the scatter, plus a penalty for each amount, its size, and the number of like faults.

    Less is better.

    Source: G. Schwarz, "Estimating the dimension of a model", Annals of Statistics 6 (1978).
    """
    count = len(fit.together)
    kin = sum(2 * np.log(each.among) + each.against for each in fit.together) if count <= 2 else 0.0
    far = sum((value / USUAL[each.kind]) ** 2 for each, value in zip(fit.together, fit.values, strict=True))
    left = float((fit.left**2).sum()) if np.isfinite(fit.left).all() else np.inf
    return left / read.noise**2 + (np.log(len(fit.left)) + A_FAULT) * count + kin + far + A_SECOND * (count == 2)


def _grouped(fits: Sequence[_Fit], read: _Read) -> list[tuple[tuple[_Fit, ...], float]]:
    """The possibilities with the same things at fault, best first, and their share of the likelihood together.

    A different stretch and a different break point of one string count as one cause: readings hardly tell them apart.
    """
    scored = sorted(((_score(each, read), each) for each in fits), key=lambda pair: pair[0])
    least = scored[0][0]
    whole = sum(np.exp((least - score) / 2) for score, _ in scored)
    groups: dict[frozenset[tuple[str, int]], list[tuple[float, _Fit]]] = {}
    for score, each in scored:
        groups.setdefault(each.group, []).append((float(np.exp((least - score) / 2)) / whole, each))
    return [(tuple(fit for _, fit in each), sum(share for share, _ in each)) for each in groups.values()]


def _cause(strung: Strung, read: _Read, group: tuple[_Fit, ...], share: float) -> Cause:
    """A group represented by its best, with the next best single fault if it explains the readings nearly as well."""
    (best,) = _fits(strung, [group[0].together], read)
    single = [each for each in group[1:] if len(each.together) == len(best.together) == 1]
    near = single and float((single[0].left ** 2).sum() - (best.left**2).sum()) < A_FAULT * read.noise**2
    before, after = float((read.off**2).sum()), float((best.left**2).sum())
    return Cause(
        _amounts(best, read),
        _amounts(single[0], read) if near else (),
        1 - after / before if before else 0.0,
        float(np.sqrt((best.left**2).mean())),
        share,
    )


def _amounts(fit: _Fit, read: _Read) -> tuple[Amount, ...]:
    errors = read.noise * np.sqrt(np.diag(np.linalg.pinv(fit.slopes.T @ fit.slopes)))
    each = zip(fit.together, fit.values.tolist(), errors.tolist(), strict=True)
    return tuple(Amount(suspect.kind, suspect.place, value, error) for suspect, value, error in each)
