"""Long straight parts in a drawing, one each: a line, two edges side by side, or a narrow closed shape."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm
from gramil.shapes.chains import Trace
from gramil.shapes.planar import polygon_figures

Array = NDArray[np.float64]
BENT = 0.02
"""A line leaves its chord by no more than this share of it, and is straight; by no more than `BENT_MOST` at all."""
BENT_MOST: Mm = 2.0
NARROWEST, WIDEST = 2.0, 40.0
"""Of a closed shape, in mm."""
SLENDER = 2.5
"""Times as long as it is wide, at the least."""
APART_LEAST, APART_MOST = 3.0, 20.0
"""How far apart the two edges of one piece run, in mm."""
ALONGSIDE = 0.8
"""Over how much of the shorter of them."""
LEAN = np.radians(1.5)
"""How much the one may lean to the other."""


@dataclass(frozen=True)
class Straight:
    """A straight piece: the ends of its middle line in mm, its width if drawn, and the rows that it is made of."""

    start: tuple[Mm, Mm]
    stop: tuple[Mm, Mm]
    width: Mm | None
    rows: tuple[int, ...]


def straight_pieces(traces: Sequence[Trace]) -> tuple[tuple[Straight, ...], tuple[tuple[int, str], ...]]:
    """The straight pieces among traces in mm, and the rows of all others with what speaks against each."""
    found, lines, left = list[Straight](), list[Straight](), list[tuple[int, str]]()
    for row, trace in enumerate(traces):
        closed = trace.is_closed(0.1)
        made = _of_ring(trace.points, row) if closed else _of_line(trace.points, row)
        if isinstance(made, str):
            left.append((row, made))
        else:
            (found if closed else lines).append(made)
    return (*found, *_paired(lines)), tuple(left)


def _of_line(points: Array, row: int) -> Straight | str:
    run = points[-1] - points[0]
    length = float(np.hypot(*run))
    if length < WIDEST:
        return f"only {length:.0f} mm long"
    off = np.abs((points - points[0]) @ np.array([-run[1], run[0]])) / length
    if off.max() > min(BENT * length, BENT_MOST):
        return f"it is bent by {off.max():.0f} mm"
    return Straight(_place(points[0]), _place(points[-1]), None, (row,))


def _of_ring(ring: Array, row: int) -> Straight | str:
    """A closed shape's middle line, along its longest way."""
    area, middle = abs(polygon_figures(ring[:-1]).area), np.array(polygon_figures(ring[:-1]).centroid)
    if area <= 0:
        return "it encloses nothing"
    close = _close(ring)
    way = np.linalg.svd(close - close.mean(axis=0), full_matrices=False)[2][0]
    along = (ring - middle) @ way
    length = float(np.ptp(along))
    width = area / length
    if not NARROWEST <= width <= WIDEST or length < SLENDER * width:
        return f"{length:.0f} by {width:.0f} mm is not a straight piece"
    ends = [middle + each * way for each in (along.min(), along.max())]
    return Straight(_place(ends[0]), _place(ends[1]), width, (row,))


def _close(ring: Array) -> Array:
    """Points evenly apart on a ring, so that a side with more corners does not weigh more."""
    at = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(ring, axis=0).T))))
    return np.column_stack([np.interp(np.linspace(0, at[-1], 400), at, column) for column in ring.T])


def _paired(lines: Sequence[Straight]) -> list[Straight]:
    """Lines that run side by side made one piece with a width, the nearest first; the others as they are."""
    pairs = sorted(
        (apart, one, other)
        for one in range(len(lines))
        for other in range(one)
        if (apart := _apart(lines[one], lines[other])) is not None
    )
    used, found = set[int](), list[Straight]()
    for apart, one, other in pairs:
        if not used & {one, other}:
            used |= {one, other}
            found.append(_between(lines[one], lines[other], apart))
    return [*found, *(each for row, each in enumerate(lines) if row not in used)]


def _apart(one: Straight, other: Straight) -> Mm | None:
    """How far apart two lines run alongside each other; None if they do not."""
    start, stop = np.array(one.start), np.array(one.stop)
    length = float(np.hypot(*(stop - start)))
    way = (stop - start) / length
    ends = np.array([other.start, other.stop]) - start
    along, across = ends @ way, ends @ np.array([-way[1], way[0]])
    shared = min(length, along.max()) - max(0.0, along.min())
    leans = abs(np.arctan2(across[1] - across[0], abs(along[1] - along[0])))
    if leans > LEAN or shared < ALONGSIDE * min(length, float(np.ptp(along))) or across[0] * across[1] <= 0:
        return None
    apart = float(abs(across.mean()))
    return apart if APART_LEAST <= apart <= APART_MOST else None


def _between(one: Straight, other: Straight, apart: Mm) -> Straight:
    """The middle line of two that run side by side."""
    ends = np.array([one.start, one.stop])
    others = np.array([other.start, other.stop])
    if np.dot(ends[1] - ends[0], others[1] - others[0]) < 0:
        others = others[::-1]
    start, stop = (ends + others) / 2
    return Straight(_place(start), _place(stop), apart, (*one.rows, *other.rows))


def _place(point: Array) -> tuple[Mm, Mm]:
    return float(point[0]), float(point[1])
