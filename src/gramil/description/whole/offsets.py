"""Offsets off a plan: half-widths at stations, and which of them stands out against the smooth curve of the others."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from gramil.description.plan.tables import FEWEST
from gramil.measure import LengthUnit, show
from gramil.quantities import Mm
from gramil.shapes.outline_through import through_half_widths

Array = NDArray[np.float64]
Offset = tuple[Mm, Mm]
STANDS_OUT: Mm = 2.0
"""A half-width that lies farther from the curve through the others is asked about: more than a pencil's line, and less
than a slip of a digit."""
CALMER = 0.35
"""How much closer the others must lie without it: the sum of squares without it as a share of that with it."""


def standing_out(offsets: Sequence[Offset]) -> tuple[tuple[int, Mm], ...]:
    """Rows (from 0) of which a half-width stands out, with what the curve through the others has there, worst first.

    It is that station without which all others lie nearest to the curves through their own neighbours: a slip pulls
    those curves too. The ends, and the stations beside them, are not judged: nothing lies beyond them.
    """
    left, found = list(range(len(offsets))), list[tuple[int, Mm]]()
    while len(left) > FEWEST and len(found) < len(offsets) // 5:
        rough = _roughness(offsets, left)
        row = min(left[2:-2], key=lambda each: _roughness(offsets, [other for other in left if other != each]))
        rest = [each for each in left if each != row]
        there = _through(offsets, rest, offsets[row][0])
        if abs(there - offsets[row][1]) < STANDS_OUT or _roughness(offsets, rest) > CALMER * rough:
            break
        found.append((row, there))
        left = rest
    return tuple(found)


def _roughness(offsets: Sequence[Offset], rows: Sequence[int]) -> float:
    """How far stations lie from the cubics' curve through their two neighbours on either side: a sum of squares."""
    places = np.array([offsets[row] for row in rows])
    five = np.stack([places[first : len(places) - 4 + first] for first in range(5)], axis=1)
    chords = np.hypot(*np.moveaxis(np.diff(five, axis=1), 2, 0))
    along = np.concatenate((np.zeros((len(chords), 1)), np.cumsum(chords, axis=1)), axis=1)
    beside = [0, 1, 3, 4]
    spots = _cubics(along[:, beside], five[:, beside], along[:, 2])
    return float((((spots - five[:, 2]) ** 2).sum(axis=1) / (along[:, 3] - along[:, 1]) ** 2).sum())


def _cubics(along: Array, places: Array, at: Array) -> Array:
    """The place at each length along (n), on the cubic through its four places (n, 4, 2) at lengths (n, 4) (J. L.
    Lagrange's form).
    """
    found = np.zeros((len(at), 2))
    for i in range(4):
        others = [k for k in range(4) if k != i]
        share = np.prod((at[:, None] - along[:, others]) / (along[:, i : i + 1] - along[:, others]), axis=1)
        found += share[:, None] * places[:, i]
    return found


def _through(offsets: Sequence[Offset], rows: Sequence[int], station: Mm) -> Mm:
    """The half-width at a station, on the curve through others."""
    curve = through_half_widths([offsets[row][0] for row in rows], [offsets[row][1] for row in rows])
    return float(curve.half_width(station))


def question_about_offset(offset: Offset, there: Mm, unit: LengthUnit) -> str:
    """What is said of a half-width that stands out, with what the others make of it."""
    at, typed, others = (show(each, unit) for each in (*offset, there))
    return f"At station {at} the half-width {typed} stands out: the curve through the others has {others}"
