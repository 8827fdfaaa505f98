"""What holds the top across its grain: the braces in a strip across its widest part, each by how square it stands.

The strip reaches half the body's width to either side of where the body is widest, or to the body's end. A brace at an
angle to the centreline counts only as far as it bends with the plate across its grain: by the sine of that angle to the
fourth power (twice for the strain that reaches it, twice for the moment that it gives back).
"""

import math

import numpy as np

from gramil.parts.body_records import Bout, Brace, Holder, Shell
from gramil.quantities import Mm, Mm2, Ratio

OWNS = ("across_",)

STEEPEST = 1.0
"""A brace that leans from square by this slope at most (45 degrees) holds the top across its grain."""
COVERED = 2 / 3
"""Share of the width over which such braces must lie near the widest part."""
LEAN = 0.4
"""How far those braces may lean to one side together, as a slope: more, and the plate twists instead of bending."""
UNLIKE = 4 / 3
"""How many times the braces near the widest part may be as tall as those of the whole strip, or these as those."""
PIECES = 200
"""Pieces in which a width and a brace's height are summed up."""


def across_station(body_bouts: tuple[Bout, ...]) -> Mm:
    """Where the body is widest, from its edge at the neck; not a number without a body.

    Method: the widest of the places listed.
    Source: plane geometry.
    """
    return max(body_bouts, key=lambda each: each.width).x if body_bouts else math.nan


def across_area(body_shells: tuple[Shell, ...], across_station: Mm, body_width: Mm) -> Mm2:
    """Area of the strip across the top's widest part.

    Method: the outline's width summed up over the strip.
    Source: plane geometry.
    """
    outlines = [each.side.outline for each in body_shells]
    if not outlines or math.isnan(across_station):
        return math.nan
    (low, high), outline = _strip(across_station, body_width), outlines[0]
    start, stop = max(low, outline.start), min(high, outline.end)
    return float(2 * outline.half_width(_middles(start, stop)).mean() * (stop - start))


def _strip(station: Mm, long: Mm) -> tuple[Mm, Mm]:
    return station - long / 2, station + long / 2


def _middles(start: Mm, stop: Mm) -> np.ndarray:
    """The middles of equal pieces between two places."""
    return start + (np.arange(PIECES) + 0.5) / PIECES * (stop - start)


def across_holders(brace_list: tuple[Brace, ...], across_station: Mm, body_width: Mm) -> tuple[Holder, ...]:
    """The top's braces in that strip: how much of each counts, its length there, and its height by the cubic mean.

    Method: sine of the angle to the fourth power; cube root of the mean of the height's cubes, worked ends included.
    Source: plane geometry; a beam's second moment.
    """
    return _holders(brace_list, _strip(across_station, body_width))


def across_near(brace_list: tuple[Brace, ...], across_station: Mm, body_width: Mm) -> tuple[Holder, ...]:
    """The top's braces near the widest part, within a quarter of the width to either side: how much of each counts.

    Method: as over the whole width, on a strip half as long.
    Source: plane geometry; a beam's second moment.
    """
    return _holders(brace_list, _strip(across_station, body_width / 2))


def _holders(braces: tuple[Brace, ...], strip: tuple[Mm, Mm]) -> tuple[Holder, ...]:
    found = [_holder(each, *_within(each, strip)) for each in braces if each.plate == "top"]
    return tuple(each for each in found if each.length > 0)


def _holder(brace: Brace, start: Mm, stop: Mm) -> Holder:
    """A brace from `start` to `stop` along."""
    rises, runs = brace.stop_y - brace.start_y, brace.stop_x - brace.start_x
    height = float(np.mean(brace.bar.over_plate(_middles(start, stop)) ** 3) ** (1 / 3))
    low, high = sorted(brace.start_y + end / brace.length * rises for end in (start, stop))
    lean = runs / rises if rises else math.inf
    return Holder(brace.name, math.sin(brace.angle) ** 4, lean, stop - start, brace.width, height, low, high)


def _within(brace: Brace, strip: tuple[Mm, Mm]) -> tuple[Mm, Mm]:
    """From where to where along a brace it lies in a strip across the body; both 0 where it does not."""
    runs = brace.stop_x - brace.start_x
    if abs(runs) < 1e-9 * brace.length:
        return (0.0, brace.length) if strip[0] <= brace.start_x <= strip[1] else (0.0, 0.0)
    low, high = sorted((end - brace.start_x) / runs * brace.length for end in strip)
    start, stop = max(0.0, low), min(brace.length, high)
    return (start, stop) if stop > start else (0.0, 0.0)


def across_height(across_holders: tuple[Holder, ...]) -> Mm:
    """Height of the braces that hold the strip: the cubic mean, ends included; not a number without one.

    Method: cube root of the mean of cubes, by length, width and how much of each counts.
    Source: a beam's second moment.
    """
    return _cubic_mean(across_holders)


def across_height_near(across_near: tuple[Holder, ...]) -> Mm:
    """Height of the braces that hold the top near its widest part: the cubic mean, as of the whole strip.

    Method: cube root of the mean of cubes, by length, width and how much of each counts.
    Source: a beam's second moment.
    """
    return _cubic_mean(across_near)


def _cubic_mean(holders: tuple[Holder, ...]) -> Mm:
    counts = sum(each.counts for each in holders)
    return float((sum(each.counts * each.height**3 for each in holders) / counts) ** (1 / 3)) if counts else math.nan


def across_lean(across_holders: tuple[Holder, ...]) -> Ratio:
    """How far the braces that hold the strip lean to one side together, as a slope: 0 for twins.

    Method: the mean of their slopes from square, by length, width and how much of each counts.
    Source: plane geometry.
    """
    counts = sum(each.counts for each in across_holders)
    return abs(sum(each.counts * each.lean for each in across_holders if each.counts)) / counts if counts else 0.0


def across_covered(across_near: tuple[Holder, ...]) -> Mm:
    """Width over which braces at 45 degrees or more to the centreline hold the top near its widest part.

    Method: what they cover across, what two of them cover counted once.
    Source: plane geometry.
    """
    covered, reached = 0.0, -math.inf
    for low, high in sorted((each.low, each.high) for each in across_near if abs(each.lean) <= STEEPEST):
        covered += max(0.0, high - max(low, reached))
        reached = max(reached, high)
    return covered


def across_unheld(
    brace_list: tuple[Brace, ...],
    across_covered: Mm,
    across_lean: Ratio,
    across_height: Mm,
    across_height_near: Mm,
    body_width: Mm,
) -> str:
    """Why the rule for the top's dome, a strip held by braces across it, does not hold; empty where it does.

    A top whose braces are not described is taken to be held as its own table says.
    Method: braces cover two thirds of the width near the widest part, lean to one side together by 0.4 at most, and are
    as tall there as in the whole strip, within a third.
    Source: held against tops solved as plates.
    """
    if not any(each.plate == "top" for each in brace_list):
        return ""
    if across_covered < COVERED * body_width:
        return "no braces across the grain hold the top near its widest part, and a fan does not"
    if across_lean > LEAN:
        return "the braces across the grain lean one way, and the top twists"
    if not 1 / UNLIKE <= across_height_near / across_height <= UNLIKE:
        return "the braces near the widest part are much lower or taller than those about them"
    return ""
