"""An outline moved in or out by a fixed distance, square to itself everywhere.

Each point moves along its own normal, so the result is exact where the outline is smooth. At corners, and where a
bend is tighter than the distance, the moved line crosses itself, and the loops are cut off.
"""

from functools import lru_cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from gramil.faults import MakersFault
from gramil.quantities import Mm
from gramil.shapes.curve import Curve, begun_at
from gramil.shapes.nearest import any_within
from gramil.shapes.outline import Outline
from gramil.shapes.polyline import without_loops

Array = NDArray[np.float64]
FINE, LONGEST, NEAR = 0.002, 1.5, 0.02
"""In mm: chords of the sampling, how close and how long at most; and by how much a moved point may come too near."""
CORNER = 0.2
"""In radians: a turn between neighbouring chords that is a corner and no longer a bend."""
SLIGHT = 0.005
"""In radians: of a line once round, on which a slight corner is come to from either side, this is one already."""


@lru_cache(maxsize=16)
def moved_in(outline: Outline, distance: Mm, where: str = "outline") -> Outline:
    """The outline `distance` mm inside (outside where negative); corners moved out become round.

    `where` names the outline in faults. Raises MakersFault when nothing, or more than one part, is left.
    """
    if distance == 0:
        return outline
    if not outline.alike:
        return _moved_round(outline, distance, where)
    run = _moved_run(outline.half, distance)
    if _may_loop(outline, distance):
        run = without_loops(run)
    run = _within_half(run, where, distance)
    _check_nearness(outline, run, distance, where)
    return Outline(tuple(map(tuple, run.tolist())), _corners(run))


def _moved_round(outline: Outline, distance: Mm, where: str) -> Outline:
    """An outline that is not alike, moved once round: it need not meet the axis square. Cut at the axis afterwards."""
    run = without_loops(_moved_run(begun_at(outline.whole, _widest_break(outline)), distance, SLIGHT)[:-1])
    treble, bass = _cut_at_axis(run, where, distance)
    for half in (treble, bass * (1.0, -1.0)):
        _check_nearness(outline, half, distance, where)
    of_treble, of_bass = (tuple(map(tuple, half.tolist())) for half in (treble, bass))
    return Outline(of_treble, _corners(treble), of_bass, _corners(bass))


def _widest_break(outline: Outline) -> int:
    """The piece of the whole outline that begins nearest to where the lower half is widest: no loop lies there."""
    return int(np.argmin(outline.whole.place(outline.whole.breaks[:-1])[:, 1]))


def _cut_at_axis(run: Array, where: str, distance: Mm) -> tuple[Array, Array]:
    """Upper and lower half of a run once round that begins below the axis, both drawn above it from the first end.

    The run's first point is not repeated at its end.
    """
    above = run[:, 1] > 0
    turns = np.nonzero(above[1:] != above[:-1])[0]
    if len(turns) != 2:
        raise _nothing_left(where, distance)
    (first, start), (last, end) = ((int(row), _on_axis(run[row], run[row + 1])) for row in turns)
    lower = np.vstack((end, run[last + 1 :], run[: first + 1], start))[::-1] * (1.0, -1.0)
    halves = np.vstack((start, run[first + 1 : last + 1], end)), lower
    apart = ([True, *(np.hypot(*np.diff(half, axis=0).T) > 1e-7)] for half in halves)
    treble, bass = (half[np.array(kept)] for half, kept in zip(halves, apart, strict=True))
    treble[[0, -1]], bass[[0, -1]] = (start, end), (start, end)
    return treble, bass


def _may_loop(outline: Outline, distance: Mm) -> bool:
    """Whether the moved line can cross itself: at corners, at bends as tight as the distance, in doubled runs."""
    half = outline.half
    tight = (1 + distance * half.turning(half.sample(FINE, LONGEST))).min() <= 0
    return bool(outline.corners) or bool(tight) or len(half.spans(0)) > 1


def _moved_run(half: Curve, distance: Mm, corner: float = CORNER) -> Array:
    """Every sample moved along its normal; round each corner, of so many radians, an arc from normal to normal."""
    parameters = half.sample(FINE, LONGEST)
    before = np.concatenate((parameters[:1], np.nextafter(parameters[1:], -np.inf)))
    left, right = _inward(half, before), _inward(half, parameters)
    places = half.place(parameters)
    turns = np.arctan2(left[:, 0] * right[:, 1] - left[:, 1] * right[:, 0], (left * right).sum(axis=1))
    runs: list[Array] = []
    done = 0
    for row in np.nonzero(np.abs(turns) > corner)[0].tolist():
        runs += [
            places[done:row] + distance * right[done:row],
            places[row] + distance * _fan(left[row], turns[row], distance),
        ]
        done = row + 1
    run = np.vstack([*runs, places[done:] + distance * right[done:]])
    return np.asarray(run[np.concatenate(([True], np.hypot(*np.diff(run, axis=0).T) > 1e-7))])


def _inward(half: Curve, parameters: Array) -> Array:
    velocity = half.velocity(parameters)
    return np.stack((velocity[:, 1], -velocity[:, 0]), axis=-1) / np.hypot(*velocity.T)[:, None]


def _fan(normal: Array, turn: float, distance: Mm) -> Array:
    """Unit vectors from one normal through a turn, as fine as the sampling."""
    steps = max(2, int(np.ceil(abs(turn) / np.sqrt(8 * FINE / abs(distance)))))
    angles = np.arctan2(normal[1], normal[0]) + np.linspace(0.0, turn, steps + 1)
    return np.stack((np.cos(angles), np.sin(angles)), axis=-1)


def _within_half(run: Array, where: str, distance: Mm) -> Array:
    """The run cut where it comes from and goes below the axis, its ends set on the axis."""
    above = np.nonzero(run[:, 1] > 1e-7)[0]
    if len(above) < 3:
        raise _nothing_left(where, distance)
    first, last = max(above[0] - 1, 0), min(above[-1] + 1, len(run) - 1)
    kept = run[first : last + 1].copy()
    if (kept[1:-1, 1] <= 0).any():
        raise _nothing_left(where, distance)
    kept[0], kept[-1] = _on_axis(kept[0], kept[1]), _on_axis(kept[-1], kept[-2])
    return kept


def _on_axis(end: Array, next_to_it: Array) -> Array:
    if abs(end[1]) < 1e-7:
        return np.array([end[0], 0.0])
    share = end[1] / (end[1] - next_to_it[1])
    return np.array([end[0] + share * (next_to_it[0] - end[0]), 0.0])


def _check_nearness(outline: Outline, run: Array, distance: Mm, where: str) -> None:
    """What is left lies nowhere nearer to the outline than the distance, and on the side it was moved to."""
    edge = outline.polyline(FINE / 4)
    wrong_side = bool(outline.contains(run[len(run) // 2])) != (distance > 0)
    if wrong_side or any_within(abs(distance) - NEAR, run, edge):
        raise _nothing_left(where, distance)


def _nothing_left(where: str, distance: Mm) -> MakersFault:
    side = "inside" if distance > 0 else "outside"
    return MakersFault.of(
        f"an outline {abs(distance):g} mm {side} this one does not stay in one piece",
        why="its narrowest place, or a bend, leaves no room",
        remedy="Take a smaller distance, or ease the outline there",
        where=where,
    )


def _corners(run: Array) -> tuple[int, ...]:
    """Rows at which the run turns sharply, the ends among them where the run does not leave the axis square."""
    steps = np.diff(run, axis=0)
    angles = np.arctan2(steps[:, 1], steps[:, 0])
    turns = [abs((other - one + np.pi) % (2 * np.pi) - np.pi) for one, other in pairwise(angles)]
    rows = [row + 1 for row, turn in enumerate(turns) if turn > CORNER]
    start = [0] if abs(angles[0] - np.pi / 2) > CORNER else []
    return (*start, *rows, *([len(run) - 1] if abs(angles[-1] + np.pi / 2) > CORNER else []))
