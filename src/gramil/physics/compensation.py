"""Where the two break points of each string go so that its stops sound as near as possible to the intended pitches.

`best_set_backs` makes the weighted mean square of the cents least over the exact model of a stopped string. Each
end is either free for every string, or bound: fixed, moved as one piece, or moved as one straight piece that may
slant. Set-backs are in mm outward; a nut moved towards the stops is negative.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.stopped_string import StringPaths, StringStiffness, deviation, moved

CENTS_PER_UNIT = 1200.0 / math.log(2.0)
"""Cents of a small relative change of frequency."""

_STEP = 1e-2  # mm each way for slopes: large beside rounding, small beside the shortest length
_SETTLED = 1e-6  # mm; the steps shrink so fast that what is left is far less
_MOST_STEPS = 50


@dataclass(frozen=True)
class Freedom:
    """How an end may move: set-back = `shape @ amounts`, with one row for each string and one column for each amount to
    be found.
    """

    shape: FloatArray


def in_groups(groups: ArrayLike) -> Freedom:
    """Strings of one group by one amount; `groups` has a number for each string."""
    numbers = floats(groups)
    return Freedom((numbers[:, None] == np.unique(numbers)).astype(np.float64))


def held(count: int) -> Freedom:
    """Not at all."""
    return Freedom(np.zeros((count, 0)))


def as_one(count: int) -> Freedom:
    """All strings by one amount."""
    return Freedom(np.ones((count, 1)))


def straight(across: ArrayLike) -> Freedom:
    """As a straight line that may slant: an amount in the middle and one per mm across; `across` has one a string."""
    place = floats(across)
    return Freedom(np.column_stack([np.ones_like(place), place - place.mean()]))


@dataclass(frozen=True)
class SetBacks:
    """Set-backs of both ends in mm, one for each string, the cents left at each stop and their weighted RMS for each
    string.
    """

    nut: FloatArray
    saddle: FloatArray
    cents: FloatArray
    rms: FloatArray
    rms_of_all: float


def best_set_backs(
    paths: StringPaths,
    strings: StringStiffness,
    nut: Freedom,
    saddle: Freedom,
    weights: ArrayLike = 1.0,
) -> SetBacks:
    """The moves of both ends from where `paths` has them that make the weighted RMS of cents least.

    `weights` are zero or more, one for each stop, or for each string and stop; a stop of weight zero does not count.
    Newton's steps on the linearised model (Gauss-Newton), so the first is the closed form of the linear model.
    Raises ValueError if the weights leave fewer stops than unknowns, ArithmeticError if it does not converge.
    """
    weight = np.broadcast_to(floats(weights), paths.stop_x.shape)
    columns = nut.shape.shape[1]
    if np.any(weight < 0.0) or not np.any(weight > 0.0):
        raise ValueError("weights are zero or more, and some stop has to count")
    amounts = np.zeros(columns + saddle.shape.shape[1])
    for _ in range(_MOST_STEPS):
        here = moved(paths, nut.shape @ amounts[:columns], saddle.shape @ amounts[columns:])
        step = _step(here, strings, nut, saddle, weight)
        amounts = amounts + step
        if np.max(np.abs(step), initial=0.0) < _SETTLED:
            break
    else:
        raise ArithmeticError("the set-backs do not settle: these are not the figures of strings")
    return set_backs(paths, strings, nut.shape @ amounts[:columns], saddle.shape @ amounts[columns:], weights)


def set_backs(
    paths: StringPaths, strings: StringStiffness, nut: ArrayLike, saddle: ArrayLike, weights: ArrayLike = 1.0
) -> SetBacks:
    """The errors left by given set-backs (rounded, filed or measured), in the same form as for the best ones."""
    rows = paths.nut_x.shape
    nut_move, saddle_move = np.broadcast_to(floats(nut), rows), np.broadcast_to(floats(saddle), rows)
    cents = deviation(moved(paths, nut_move, saddle_move), strings).total
    weight = np.broadcast_to(floats(weights), cents.shape)
    return SetBacks(nut_move, saddle_move, cents, weighted_rms(cents, weight), _rms_of_all(cents, weight))


def cents_per_mm(paths: StringPaths, strings: StringStiffness) -> tuple[FloatArray, FloatArray]:
    """How the cents at each string and stop follow a set-back: of the nut, and of the saddle, cents/mm."""
    return _by(paths, strings, _STEP, 0.0), _by(paths, strings, 0.0, _STEP)


def _by(paths: StringPaths, strings: StringStiffness, nut: float, saddle: float) -> FloatArray:
    """How the cents follow a set-back of one end, by a step of it to either side."""
    further, back = _cents_at(paths, strings, [(nut, saddle), (-nut, -saddle)])
    return floats((further - back) / (2.0 * (nut + saddle)))


def _cents_at(paths: StringPaths, strings: StringStiffness, ends: Sequence[tuple[float, float]]) -> FloatArray:
    """The cents with the nut and the saddle of every string set back by each of some pairs, a table for each pair.

    All strings stand under one another once for each pair, so that the model is worked out once: on so few figures a
    call costs more than what it works out.
    """
    rows, times = paths.nut_x.shape, len(ends)
    many = StringPaths(*(np.concatenate([getattr(paths, each.name)] * times) for each in fields(paths)))
    of_each = (np.broadcast_to(getattr(strings, each.name), rows) for each in fields(strings))
    nut, saddle = np.repeat(floats(ends), rows[0], axis=0).T
    total = deviation(moved(many, nut, saddle), StringStiffness(*(np.tile(each, times) for each in of_each))).total
    return total.reshape(times, *paths.stop_x.shape)


def _step(
    paths: StringPaths, strings: StringStiffness, nut: Freedom, saddle: Freedom, weight: FloatArray
) -> FloatArray:
    ends = [(nut.shape, (_STEP, 0.0)), (saddle.shape, (0.0, _STEP))]
    freed = [(shape, step) for shape, step in ends if shape.shape[1]]  # a held end is not tried
    tried = [(way * x, way * y) for _, (x, y) in freed for way in (1.0, -1.0)]
    here, *moved_by = _cents_at(paths, strings, [(0.0, 0.0), *tried])
    by = [(further - back) / (2.0 * _STEP) for further, back in zip(moved_by[::2], moved_by[1::2], strict=True)]
    slopes = np.concatenate(
        [each[:, :, None] * shape[:, None, :] for each, (shape, _) in zip(by, freed, strict=True)], axis=2
    )
    root = np.sqrt(weight)
    rows = (slopes * root[:, :, None]).reshape(-1, slopes.shape[2])
    wanted = -(here * root).ravel()
    if not (np.isfinite(rows).all() and np.isfinite(wanted).all()):
        raise ArithmeticError("the set-backs cannot be found: the strings' pull is not known")
    found, _, rank, _ = np.linalg.lstsq(rows, wanted, rcond=None)
    if rank < rows.shape[1]:
        raise ValueError("too few stops count on some string to place both its ends: two at least")
    return floats(found)


def weighted_rms(cents: ArrayLike, weights: ArrayLike) -> FloatArray:
    """Root of the weighted mean square along the last axis; nan if no weight is left."""
    values = floats(cents)
    weight = np.broadcast_to(floats(weights), values.shape)
    whole = weight.sum(axis=-1)
    mean_square = (weight * values**2).sum(axis=-1) / np.where(whole > 0.0, whole, np.nan)
    return floats(np.sqrt(mean_square))


def _rms_of_all(cents: FloatArray, weight: FloatArray) -> float:
    return float(weighted_rms(cents.ravel(), weight.ravel()))
