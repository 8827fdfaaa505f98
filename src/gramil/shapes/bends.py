"""How one half of an outline bends: the tightest place of each run that bends one way, and its corners."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm, Radians
from gramil.shapes.curve import Curve

Array = NDArray[np.float64]
FINE, LONGEST = 0.002, 1.5
"""In mm: the curve is looked at in chords that lie so close to it and are so long at most."""
CORNER = 0.2
"""In radians: a turn at one place that is a corner and no longer a bend."""
LEAST_TURN = 0.2
"""In radians: a run that turns by less is not a bend that is looked for on the iron."""


ALIKE = 0.999
"""Bends that differ by no more than this share are alike."""


@dataclass(frozen=True)
class Turn:
    """A place where the half bends: `radius` is 0 at a corner; `turn` is what the run, or the corner, turns through."""

    kind: Literal["bulge", "hollow", "corner"]
    along: Mm
    x: Mm
    y: Mm
    radius: Mm
    turn: Radians


def turns_of(half: Curve) -> tuple[Turn, ...]:
    """The bends and corners of a half, from its first end, in mm along it; ends on the axis are no corners."""
    corners = _corners(half)
    edges = (half.breaks[0], *corners, half.breaks[-1])
    found = [turn for start, end in pairwise(edges) for turn in _bends(half, float(start), float(end))]
    found += [_corner(half, each) for each in corners]
    return tuple(sorted(found, key=lambda each: each.along))


def _corners(half: Curve) -> list[float]:
    inner = half.breaks[1:-1]
    return [float(at) for at, turn in zip(inner, _turned(half, inner), strict=True) if abs(turn) > CORNER]


def _turned(half: Curve, at: Array) -> Array:
    """How far the half turns at breaks, positive to the left."""
    before, after = half.velocity(np.nextafter(at, -np.inf)), half.velocity(at)
    cross = before[..., 0] * after[..., 1] - before[..., 1] * after[..., 0]
    return np.asarray(np.arctan2(cross, (before * after).sum(axis=-1)))


def _corner(half: Curve, at: float) -> Turn:
    x, y = half.place(np.asarray(at)).tolist()
    return Turn("corner", float(half.along(at)), x, y, 0.0, float(_turned(half, np.asarray(at))))


def _bends(half: Curve, start: float, end: float) -> Iterator[Turn]:
    """The tightest place of each run between two corners on which the half bends one way."""
    fine = half.sample(FINE, LONGEST)
    inner = fine[(fine > start) & (fine < end)]
    if len(inner) < 2:
        return
    middles = (inner[1:] + inner[:-1]) / 2
    bend, step = half.turning(middles), np.diff(half.along(inner))
    edges = np.flatnonzero(np.diff(np.sign(bend))) + 1
    for rows in np.split(np.arange(len(middles)), edges):
        through = float((bend[rows] * step[rows]).sum())
        if abs(through) >= LEAST_TURN:
            yield _bend(half, middles[rows], bend[rows], through)


def _bend(half: Curve, at: Array, bend: Array, through: float) -> Turn:
    """A bend, in the middle of what is as tight as its tightest place: all of an arc."""
    tight = np.abs(bend)
    rows = np.flatnonzero(tight > 0.98 * tight.max())
    first = rows[rows <= int(tight.argmax())]
    middle = float((at[first[0]] + at[rows[-1]]) / 2)
    x, y = half.place(np.asarray(middle)).tolist()
    kind: Literal["bulge", "hollow"] = "hollow" if through > 0 else "bulge"
    return Turn(kind, float(half.along(middle)), x, y, _radius(tight), through)


def _radius(tight: Array) -> Mm:
    """The radius at the tightest place, from all that bends as tightly to a thousandth: a curve through an arc winds
    about it by that much.
    """
    return float(1 / tight[tight > ALIKE * tight.max()].mean())
