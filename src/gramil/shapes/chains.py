"""Drawn lines joined end to end: what is closed, what stays open, and where the gaps are."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm

Array = NDArray[np.float64]
Place = tuple[float, float]
STUMBLES = (ArithmeticError, AttributeError, LookupError, RecursionError, TypeError, ValueError)
"""What a library's reader may raise over a broken file, besides its own errors."""


@dataclass(frozen=True, eq=False)
class Trace:
    """A drawn line as points on it, shape (n, 2) with n > 1, in the drawing's own units.

    `straight`: shape (n - 1,), whether each step was drawn straight. A closed one repeats its first point at its
    end. `layers` are the names by which it can be picked out (its layer; its
    own id and its groups'), `name` is what it is and where the file has it.
    """

    points: Array
    straight: NDArray[np.bool_]
    layers: tuple[str, ...]
    name: str

    def is_closed(self, gap: float) -> bool:
        """Whether its ends are no farther apart than `gap`, and it encloses something."""
        return len(self.points) > 3 and float(np.hypot(*(self.points[0] - self.points[-1]))) <= gap


@dataclass(frozen=True)
class Drawing:
    """What a file holds: its lines, and how many mm one of its units is (None where it does not say)."""

    traces: tuple[Trace, ...]
    unit: Mm | None


@dataclass(frozen=True)
class Gap:
    """Two ends that do not meet, and how far apart they are, in the drawing's own units."""

    start: Place
    end: Place
    width: float


def joined_traces(traces: Sequence[Trace], gap: float) -> tuple[Trace, ...]:
    """Traces whose ends lie within `gap` of each other as one, each turned as needed, the nearest ends first."""
    ends = np.array([(trace.points[0], trace.points[-1]) for trace in traces])
    waiting = np.ones(len(traces), dtype=bool)
    done = []
    while waiting.any():
        chain = _grown(int(np.argmax(waiting)), traces, ends, waiting, gap)
        done.append(_closed_up(chain) if chain.is_closed(gap) else chain)
    return tuple(done)


def _grown(row: int, traces: Sequence[Trace], ends: Array, waiting: NDArray[np.bool_], gap: float) -> Trace:
    """The chain that a trace belongs to, its pieces taken out of those that wait."""
    run, waiting[row] = [traces[row]], False
    while not _ring(run, gap) and waiting.any():
        tips = np.array([run[0].points[0], run[-1].points[-1]])
        away = np.hypot(*np.moveaxis(ends[:, :, None] - tips, -1, 0))  # trace, its start or end, the run's start or end
        away[~waiting] = np.inf
        found, end, tip = (int(each) for each in np.unravel_index(np.argmin(away), away.shape))
        if away[found, end, tip] > gap:
            break
        waiting[found] = False
        piece = _turned(traces[found]) if end == tip else traces[found]
        run = [*run, piece] if tip else [piece, *run]
    return _as_one(run)


def _ring(run: Sequence[Trace], gap: float) -> bool:
    """Whether a run of traces comes back to its start."""
    if len(run) == 1:
        return run[0].is_closed(gap)
    return (
        float(np.hypot(*(run[0].points[0] - run[-1].points[-1]))) <= gap and sum(len(each.straight) for each in run) > 2
    )


def _as_one(run: Sequence[Trace]) -> Trace:
    """The run as one trace, ends that meet put half-way between."""
    points = [run[0].points]
    for trace in run[1:]:
        middle = (points[-1][-1] + trace.points[0]) / 2
        points[-1] = np.vstack((points[-1][:-1], [middle]))
        points.append(trace.points[1:])
    straight = np.concatenate([trace.straight for trace in run])
    name = run[0].name if len(run) == 1 else f"{run[0].name} and {len(run) - 1} more"
    return Trace(np.vstack(points), straight, run[0].layers, name)


def branches(traces: Sequence[Trace], gap: float) -> tuple[Place, ...]:
    """Places where the ends of three lines or more meet, so that none can say which goes on."""
    ends = np.array(
        [end for trace in traces if not trace.is_closed(gap) for end in (trace.points[0], trace.points[-1])]
    )
    if not len(ends):
        return ()
    near = np.hypot(*np.moveaxis(ends[:, None] - ends[None], -1, 0)) <= gap
    firsts = [row for row in np.nonzero(near.sum(axis=1) > 2)[0] if not near[row, :row].any()]
    return tuple((float(x), float(y)) for x, y in ends[firsts])


def gaps(chains: Sequence[Trace]) -> tuple[Gap, ...]:
    """For open chains, from each end the way to the nearest other end; each pair once, the narrowest first."""
    ends = [(float(x), float(y)) for chain in chains for x, y in (chain.points[0], chain.points[-1])]
    found = set()
    for row, end in enumerate(ends):
        width, nearest = min((dist(end, other), other) for number, other in enumerate(ends) if number != row)
        found.add(Gap(min(end, nearest), max(end, nearest), width))
    return tuple(sorted(found, key=lambda each: (each.width, each.start)))


def _turned(trace: Trace) -> Trace:
    return Trace(trace.points[::-1], trace.straight[::-1], trace.layers, trace.name)


def _closed_up(chain: Trace) -> Trace:
    """Its first and last point made one, half-way between."""
    points = chain.points.copy()
    points[0] = points[-1] = (points[0] + points[-1]) / 2
    return Trace(points, chain.straight, chain.layers, chain.name)
