"""Drawn lines joined end to end: what is closed, what stays open, and where the gaps are."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm

Array = NDArray[np.float64]
Place = tuple[float, float]


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
    waiting, done = list(traces), []
    while waiting:
        chain = waiting.pop(0)
        while not chain.is_closed(gap) and (found := _nearest(chain, waiting, gap)) is not None:
            chain = _linked(chain, waiting.pop(found))
        done.append(_closed_up(chain) if chain.is_closed(gap) else chain)
    return tuple(done)


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


def _nearest(chain: Trace, others: Sequence[Trace], gap: float) -> int | None:
    """Number of the trace that has an end nearest to either end of the chain, within the gap."""
    reach = [min(distance for distance, _, _ in _ways(chain, other)) for other in others]
    if not reach or min(reach) > gap:
        return None
    return int(np.argmin(reach))


def _ways(chain: Trace, other: Trace) -> list[tuple[float, bool, bool]]:
    """The four ways to join two: distance, whether to turn the chain, whether to turn the other."""
    return [
        (float(np.hypot(*(chain.points[0 if turn else -1] - other.points[-1 if turn_other else 0]))), turn, turn_other)
        for turn in (False, True)
        for turn_other in (False, True)
    ]


def _linked(chain: Trace, other: Trace) -> Trace:
    _, turn, turn_other = min(_ways(chain, other))
    first, second = _turned(chain) if turn else chain, _turned(other) if turn_other else other
    middle = (first.points[-1] + second.points[0]) / 2
    points = np.vstack((first.points[:-1], [middle], second.points[1:]))
    return Trace(
        points, np.concatenate((first.straight, second.straight)), chain.layers, f"{first.name}, {second.name}"
    )


def _turned(trace: Trace) -> Trace:
    return Trace(trace.points[::-1], trace.straight[::-1], trace.layers, trace.name)


def _closed_up(chain: Trace) -> Trace:
    """Its first and last point made one, half-way between."""
    points = chain.points.copy()
    points[0] = points[-1] = (points[0] + points[-1]) / 2
    return Trace(points, chain.straight, chain.layers, chain.name)
