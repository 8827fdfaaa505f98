"""A body's half from what a ruler gives: how long it is, its two bouts and its waist, joined by one smooth curve.

From end to end it bends outward round each bout and inward at the waist, and nowhere else: its curvature changes sign
twice. Beyond the widest places it is a fuller ellipse, `b sqrt(1 - u^2) (1 + c u^2)`; between them, on either side of
the waist, the quintic that takes over place, slope and bend (the second derivative) at both its ends.
"""

from dataclasses import dataclass
from math import isfinite

import numpy as np
from numpy.typing import NDArray

from gramil.faults import Fault, MakersFault
from gramil.quantities import Mm

Array = NDArray[np.float64]
FULLNESS = np.linspace(0.0, 0.36, 13)
"""How full an end may be: 0 is an ellipse; toward 0.5 it is flat at its widest place."""
LIKED = 0.14
"""How full an end is if nothing speaks against it."""
SHARES = np.linspace(0.40, 0.64, 13)
"""Where the upper bout may be widest, as a share of the way to the waist."""
USUAL = 0.52
PLAIN = 6.0
"""Bend at an end of a plain cubic that is level at both ends, over its rise and the square of its length."""
STEPS = np.linspace(0.0, 1.0, 33)
WITHIN = (3 * np.arange(1, 7) / 7 + 1 - np.cos(np.pi * np.arange(1, 7) / 7)) / 5
"""Where stations lie between two named places, 10 to 25 mm apart and closer by the places themselves."""
ROUND = np.sin(np.radians([7, 17, 29, 41, 53, 64, 74, 82.5]))
"""Where stations lie round an end, as a share of its length: closer as it turns across."""


@dataclass(frozen=True)
class Ruled:
    """What a ruler gives: whole widths, and distances from the neck end along the middle. `flat` is the whole width of
    the straight piece at the neck.
    """

    length: Mm
    upper: Mm
    waist: Mm
    waist_at: Mm
    lower: Mm
    lower_at: Mm
    flat: Mm = 76.0


@dataclass(frozen=True)
class _Ways:
    """Ways to draw it, a row each: where the upper bout is widest, how full the ends are, the three bends in 1/mm."""

    upper_at: Array
    reach: Array
    upper_full: Array
    lower_full: Array
    upper_bend: Array
    waist_bend: Array
    lower_bend: Array


def half_through(ruled: Ruled) -> tuple[tuple[Mm, Mm], ...]:
    """Stations (along, half-width) of one half, from the neck end to the tail, close enough for a smooth curve.

    Raises MakersFault for measures that contradict each other, or that no curve without wiggles goes through.
    """
    _refuse(ruled)
    ways = _ways(ruled)
    strain = _strain(ruled, ways)
    best = int(np.argmin(strain))
    if not np.isfinite(strain[best]):
        raise MakersFault.of(
            "no smooth curve without wiggles goes through these widths",
            "the waist lies too near a bout for how much narrower it is",
            "measure once more where waist and lower bout are: from the neck end, along the middle",
        )
    return _stations(ruled, _Ways(**{name: each[best : best + 1] for name, each in vars(ways).items()}))


def _refuse(ruled: Ruled) -> None:
    """Raise MakersFault, with a fault for each contradiction."""
    if not all(isfinite(each) and each > 0 for each in vars(ruled).values()):
        raise MakersFault.of("a measure of the body is not a length over 0", remedy="measure it once more")
    wrong = [
        ("body.waist_at", "the waist is not between neck end and lower bout", ruled.waist_at >= ruled.lower_at),
        ("body.lower_at", "the lower bout is not between waist and tail", ruled.lower_at >= ruled.length),
        ("body.waist", "the waist is not narrower than the upper bout", ruled.waist >= ruled.upper),
        ("body.waist", "the waist is not narrower than the lower bout", ruled.waist >= ruled.lower),
        ("body.upper", "the upper bout is not wider than the flat at the neck", ruled.flat >= 0.97 * ruled.upper),
    ]
    why = "widths are whole widths; distances run from the neck end along the middle"
    faults = [Fault(where=key, what=what, why=why, remedy="measure it once more") for key, what, bad in wrong if bad]
    if faults:
        raise MakersFault(faults)


def _ways(ruled: Ruled) -> _Ways:
    """Every way to be weighed."""
    share, upper_full, lower_full = (each.ravel() for each in np.meshgrid(SHARES, FULLNESS, FULLNESS))
    upper_at = share * ruled.waist_at
    reach = upper_at / _met_at(ruled.flat / ruled.upper, upper_full)
    rises = _mean_bend(ruled, upper_at)
    return _Ways(
        upper_at,
        reach,
        upper_full,
        lower_full,
        ruled.upper / 2 * (1 - 2 * upper_full) / reach**2,
        PLAIN * np.sqrt(rises[0] * rises[1]),
        ruled.lower / 2 * (1 - 2 * lower_full) / (ruled.length - ruled.lower_at) ** 2,
    )


def _met_at(share: float, full: Array) -> Array:
    """How far round an end of length 1 its half-width has fallen to a share of the widest."""
    rest = np.zeros_like(full)
    for _ in range(60):
        rest = (share / (1 + full - full * rest)) ** 2
    return np.sqrt(1 - rest)


def _mean_bend(ruled: Ruled, upper_at: Array) -> tuple[Array, Array]:
    """Rise over length squared, 1/mm, before the waist and behind it."""
    behind = (ruled.lower - ruled.waist) / 2 / (ruled.lower_at - ruled.waist_at) ** 2
    return (ruled.upper - ruled.waist) / 2 / (ruled.waist_at - upper_at) ** 2, np.full_like(upper_at, behind)


def _strain(ruled: Ruled, ways: _Ways) -> Array:
    """How far each way is from plain cubics and from what is usual; infinite where it has a wiggle."""
    strain = ((ways.upper_at / ruled.waist_at - USUAL) * 8) ** 2
    strain += ((ways.upper_full - LIKED) * 5) ** 2 + ((ways.lower_full - LIKED) * 5) ** 2
    bouts = (ways.upper_bend, ways.lower_bend)
    for bout, rise in zip(bouts, _mean_bend(ruled, ways.upper_at), strict=True):
        inner, outer = ways.waist_bend / rise, bout / rise
        strain += np.log(inner / PLAIN) ** 2 + np.log(outer / PLAIN) ** 2
        bends = _bend(inner[:, None], outer[:, None], STEPS)
        strain[(np.diff(np.sign(bends), axis=1) != 0).sum(axis=1) != 1] = np.inf
    return strain


def _bend(inner: Array, outer: Array, t: Array) -> Array:
    """The second derivative of `_rising`."""
    plain = 60 * t - 180 * t**2 + 120 * t**3
    return plain + inner * (1 - 9 * t + 18 * t**2 - 10 * t**3) - outer * (3 * t - 12 * t**2 + 10 * t**3)


def _rising(inner: Array, outer: Array, t: Array) -> Array:
    """The quintic from 0 to 1, level at both ends, that bends upward by `inner` first and downward by `outer` last."""
    plain = 10 * t**3 - 15 * t**4 + 6 * t**5
    return plain + inner * (t**2 - 3 * t**3 + 3 * t**4 - t**5) / 2 - outer * (t**3 - 2 * t**4 + t**5) / 2


def _stations(ruled: Ruled, way: _Ways) -> tuple[tuple[Mm, Mm], ...]:
    upper_at, reach = float(way.upper_at[0]), float(way.reach[0])
    rises = _mean_bend(ruled, way.upper_at)
    round_neck = ROUND[ROUND * reach < upper_at * 0.97][::-1]
    neck = _end(ruled.upper / 2, way.upper_full, round_neck)
    tail = _end(ruled.lower / 2, way.lower_full, ROUND)
    sides = [
        ruled.waist / 2 + (bout - ruled.waist) / 2 * _rising(way.waist_bend / rise, bend / rise, WITHIN)
        for bout, bend, rise in zip((ruled.upper, ruled.lower), (way.upper_bend, way.lower_bend), rises, strict=True)
    ]
    back, on = ruled.waist_at - upper_at, ruled.lower_at - ruled.waist_at
    along = [
        *(0.0, *(upper_at - reach * round_neck), upper_at),
        *(*(ruled.waist_at - back * WITHIN)[::-1], ruled.waist_at, *(ruled.waist_at + on * WITHIN)),
        *(ruled.lower_at, *(ruled.lower_at + (ruled.length - ruled.lower_at) * ROUND), ruled.length),
    ]
    half = [
        *(ruled.flat / 2, *neck, ruled.upper / 2),
        *(*sides[0][::-1], ruled.waist / 2, *sides[1]),
        *(ruled.lower / 2, *tail, 0.0),
    ]
    return tuple((float(x), float(y)) for x, y in zip(along, half, strict=True))


def _end(half: Mm, full: Array, share: Array) -> Array:
    """Half-widths round an end, at distances from its widest place toward where it meets the middle."""
    return half * np.sqrt(1 - share**2) * (1 + full * share**2)
