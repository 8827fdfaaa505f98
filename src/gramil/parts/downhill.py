"""Which way to cut round the treble side of a body that is not alike left and right, so that the grain runs out
downhill: stretch by stretch, round hollow and horn.

The plates' grain runs along the centreline. Distances are on the outside of the side, from its middle at the neck.
"""

from collections.abc import Iterator
from itertools import groupby, pairwise

import numpy as np

from gramil.parts.body_records import Bend, Stretch
from gramil.quantities import Mm
from gramil.shapes.curve import Curve
from gramil.shapes.outline import Outline

OWNS = ("downhill_",)

SHORTEST = 5.0
"""In mm: a stretch that is shorter is gone over with its neighbour."""
AT_TAIL = 40.0
"""In mm along: a body that leans turns back so near its tail's end at the most."""
AT = 1.0
"""In mm along: a place so near a corner is that corner."""


def downhill_treble(
    body_outlines: tuple[Outline, ...], bend_treble: tuple[Bend, ...], instrument_handed: str
) -> tuple[Stretch, ...]:
    """The stretches of the treble side, each in the direction in which the fibres run out of the work.

    Method: fibres run out where the line, going on, closes in across the grain on the wood beside it: outward runs
    toward the neck, and inward ones toward the tail, are cut from their far end. A router seen from its motor turns
    clockwise and is led anticlockwise round the work: on one of the two plates each stretch agrees with that.
    Source: common practice.
    """
    return tuple(
        stretch
        for outline in body_outlines
        if not outline.alike
        for stretch in _stretches(outline.half, bend_treble, instrument_handed)
    )


def _stretches(half: Curve, bends: tuple[Bend, ...], handed: str) -> Iterator[Stretch]:
    corners = {each.along: each.name for each in bends if each.kind == "corner"}
    heel = next((each.along for each in bends if each.name == "hollow"), 0.0)
    edges = _places(half, tuple(corners))
    onward = [_is_onward(half, start, end) for start, end in pairwise(edges)]
    for forth, run in groupby(range(len(onward)), key=lambda row: onward[row]):
        rows = list(run)
        start, end = edges[rows[0]], edges[rows[-1] + 1]
        if end - start < SHORTEST or forth is None:
            continue
        first, last = (start, end) if forth else (end, start)
        names = [_name(half, corners, each, heel) for each in (first, last)]
        if names == ["heel corner", "neck"]:
            continue
        plate = "back" if forth == (handed != "left") else "top"
        yield Stretch(f"{names[0]} to {names[1]}", first, last, plate)


def _places(half: Curve, corners: tuple[Mm, ...]) -> list[Mm]:
    """Distances along at which the half turns back along or across, its corners and its ends."""
    turns = {each for axis in (0, 1) for span in half.spans(axis) for each in (span.start, span.end)}
    found = sorted({0.0, half.length, *corners, *half.along(sorted(turns)).tolist()})
    # a corner is found along and across, a rounding apart
    return [each for row, each in enumerate(found) if row == 0 or each - found[row - 1] > 1e-3]


def _is_onward(half: Curve, start: Mm, end: Mm) -> bool | None:
    """Whether a stretch is cut from its neck end to its tail end; None where it runs along the grain."""
    tangent = half.tangent((start + end) / 2)
    if abs(tangent[1]) < 0.01:  # not six tenths of a degree from the grain
        return None
    return bool(tangent[0] * tangent[1] < 0)


def _name(half: Curve, corners: dict[Mm, str], along: Mm, heel: Mm) -> str:
    """What a place is called; `heel` is how far along a cutaway's line belongs to the heel."""
    if along < AT:
        return "neck"
    if along > half.length - AT_TAIL:
        return "tail"
    near = min(corners, key=lambda each: abs(each - along), default=None)
    if near is not None and abs(near - along) < AT:
        return corners[near]
    before, at, after = half.point(np.array([along - AT, along, along + AT]))
    ahead, aside = np.sign(2 * at - before - after) * (np.abs(2 * at - before - after) > 1e-6)
    if abs(half.tangent(along)[0]) < 0.1:
        return "hollow" if ahead > 0 else "horn's tip"
    if along < heel:
        return "heel"
    share = at[0] / float(half.place(half.breaks[-1:])[0, 0])
    if aside < 0:
        return "waist"
    return "lower bout" if share > 0.5 else "upper bout"
