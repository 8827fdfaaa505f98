"""How stiff a string really is, from measured cents at its stops.

A string's handbook modulus is a poor guide once it is wound, drawn or crept; two or three readings are a better one.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray, floats
from gramil.physics.stopped_string import StringPaths, StringStiffness, deviation, moved

_HALF_STEP = 1e-3  # of ln kappa, and mm of the saddle: large beside rounding
_SETTLED = 1e-6
_MOST_STEPS = 60
_FARTHEST = float(np.log(100.0))  # of ln kappa: no string is a hundred times softer or stiffer than thought


@dataclass(frozen=True)
class StretchFit:
    """Fitted stretch stiffness kappa with its standard error, and the saddle's place where that was fitted too.

    One figure a string. `saddle_error` is how much farther out (mm) the saddle's break point acts than given, zero
    where it was not sought; `rms` the cents that the fit leaves.
    """

    stretch: FloatArray
    uncertainty: FloatArray
    saddle_error: FloatArray
    saddle_uncertainty: FloatArray
    rms: FloatArray


def fit_stretch(
    paths: StringPaths,
    first_guess: StringStiffness,
    cents: ArrayLike,
    reading_error: float = 1.0,
    seek_saddle: bool = False,
) -> StretchFit:
    """Kappa of each string from cents measured at its stops against the open string; nan is a stop not read.

    `paths` are the geometry as measured, `reading_error` the standard error of one reading in cents. With
    `seek_saddle` the place of the saddle's break point is sought as well, which needs stops far apart and widens
    the uncertainty. Least squares over ln kappa; the errors come from the readings' error, widened where they
    scatter more than that. Raises MakersFault for a string with too few readings, or readings that no kappa explains.
    """
    measured = np.broadcast_to(floats(cents), paths.stop_x.shape)
    read = np.isfinite(measured)
    unknowns = 2 if seek_saddle else 1
    _refuse_too_few(read, unknowns)
    found = _settle(paths, first_guess, np.where(read, measured, 0.0), read, unknowns)
    left, slopes = _model(paths, first_guess, np.where(read, measured, 0.0), read, found)
    return _with_errors(found, left, slopes, read, reading_error)


def _refuse_too_few(read: FloatArray, unknowns: int) -> None:
    short = np.flatnonzero(read.sum(axis=1) < unknowns)
    if short.size:
        raise MakersFault.of(
            f"string {short[0] + 1} has {read[short[0]].sum()} readings",
            f"its stretch needs {unknowns} at least",
            "measure it at more stops, far apart",
        )


def _settle(
    paths: StringPaths, guess: StringStiffness, measured: FloatArray, read: FloatArray, unknowns: int
) -> FloatArray:
    """Columns ln kappa and, where sought, saddle error: Gauss-Newton, with steps in ln kappa of at most one."""
    found = np.zeros((measured.shape[0], unknowns))
    found[:, 0] = np.log(guess.stretch)
    for _ in range(_MOST_STEPS):
        left, slopes = _model(paths, guess, measured, read, found)
        step = _solve(slopes, left)
        found = found + np.clip(step, -1.0, 1.0)
        if np.max(np.abs(step)) < _SETTLED and np.all(np.abs(found[:, 0] - np.log(guess.stretch)) < _FARTHEST):
            return found
    raise MakersFault.of(
        "no stretch stiffness explains these readings",
        remedy="check their signs (sharp is positive), the set-backs and the heights of the string",
    )


def _model(
    paths: StringPaths, guess: StringStiffness, measured: FloatArray, read: FloatArray, found: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """What the readings leave, and the slopes of the model: (strings, stops) and (strings, stops, unknowns)."""

    def cents(at: FloatArray) -> FloatArray:
        strings = replace(guess, stretch=np.exp(at[:, 0]))
        placed = moved(paths, 0.0, at[:, 1]) if at.shape[1] > 1 else paths
        return np.where(read, deviation(placed, strings).total, 0.0)

    steps = _HALF_STEP * np.eye(found.shape[1])
    slopes = [(cents(found + step) - cents(found - step)) / (2.0 * _HALF_STEP) for step in steps]
    return measured - cents(found), np.stack(slopes, axis=2)


def _solve(slopes: FloatArray, left: FloatArray) -> FloatArray:
    return floats(np.linalg.pinv(slopes) @ left[:, :, None])[:, :, 0]


def _with_errors(
    found: FloatArray, left: FloatArray, slopes: FloatArray, read: FloatArray, reading_error: float
) -> StretchFit:
    count, unknowns = read.sum(axis=1), found.shape[1]
    squares = (left**2).sum(axis=1)
    spare = np.maximum(count - unknowns, 1)
    scatter = np.sqrt(np.maximum(squares / spare, reading_error**2))
    errors = scatter[:, None] * np.sqrt(np.diagonal(_covariance(slopes), axis1=1, axis2=2))
    kappa, none = np.exp(found[:, 0]), np.zeros(found.shape[0])
    saddle, saddle_error = (found[:, 1], errors[:, 1]) if unknowns > 1 else (none, none)
    return StretchFit(kappa, kappa * errors[:, 0], saddle, saddle_error, np.sqrt(squares / count))


def _covariance(slopes: FloatArray) -> FloatArray:
    return floats(np.linalg.pinv(np.swapaxes(slopes, 1, 2) @ slopes))
