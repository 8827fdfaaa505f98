"""Drawn lines joined end to end: what is closed, what stays open, and where the gaps are."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import dist
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm

Array = NDArray[np.float64]
Place = tuple[float, float]
Side = Literal[0, -1]
End = tuple[int, Side]
"""An end of a trace: its row among the traces, and which of its points."""
STUMBLES = (ArithmeticError, AssertionError, AttributeError, LookupError, RecursionError, TypeError, ValueError)
"""What a library's reader may raise over a broken file, besides its own errors: assertions of its own among them."""


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
    """What a file holds: its lines, how many mm one of its units is (None if it does not say), which way y runs."""

    traces: tuple[Trace, ...]
    unit: Mm | None
    y_down: bool = False


@dataclass(frozen=True)
class Gap:
    """Two ends that do not meet, and how far apart they are, in the drawing's own units."""

    start: Place
    end: Place
    width: float


def joined_traces(traces: Sequence[Trace], gap: float) -> tuple[Trace, ...]:
    """Traces whose ends lie within `gap` of each other joined into one, each reversed as needed; no three ends may
    meet.
    """
    partner = _partners(traces, gap)
    waiting = [True] * len(traces)
    done = []
    for row in range(len(traces)):
        if waiting[row]:
            chain = _as_one(_grown(row, traces, partner, waiting))
            done.append(_closed_up(chain) if chain.is_closed(gap) else chain)
    return tuple(done)


def _partners(traces: Sequence[Trace], gap: float) -> dict[End, End]:
    """For each end, of an open trace, the one end that it meets."""
    rows = [row for row, trace in enumerate(traces) if not trace.is_closed(gap)]
    sides: tuple[Side, Side] = (0, -1)
    ends: list[End] = [(row, side) for row in rows for side in sides]
    if not ends:
        return {}
    tree = _tree(np.array([traces[row].points[side] for row, side in ends]))
    found: dict[End, End] = {}
    for one, other in sorted(tree.query_pairs(gap)):
        found[ends[one]], found[ends[other]] = ends[other], ends[one]
    return found


def _grown(row: int, traces: Sequence[Trace], partner: Mapping[End, End], waiting: list[bool]) -> list[Trace]:
    """The chain that a trace belongs to, its pieces taken out of those that wait: first what goes on from its end."""
    waiting[row] = False
    ahead = _followed((row, -1), traces, partner, waiting)
    behind = _followed((row, 0), traces, partner, waiting)
    return [*(_turned(each) for each in reversed(behind)), traces[row], *ahead]


def _followed(end: End, traces: Sequence[Trace], partner: Mapping[End, End], waiting: list[bool]) -> list[Trace]:
    """What goes on from an end, each turned to run on from the one before."""
    run = []
    while (met := partner.get(end)) is not None and waiting[met[0]]:
        row, side = met
        waiting[row] = False
        run.append(traces[row] if side == 0 else _turned(traces[row]))
        end = (row, -1 if side == 0 else 0)
    return run


def _as_one(run: Sequence[Trace]) -> Trace:
    """The run as one trace, with ends that meet moved half-way to each other."""
    points = [run[0].points]
    for trace in run[1:]:
        middle = (points[-1][-1] + trace.points[0]) / 2
        points[-1] = np.vstack((points[-1][:-1], [middle]))
        points.append(trace.points[1:])
    straight = np.concatenate([trace.straight for trace in run])
    name = run[0].name if len(run) == 1 else f"{run[0].name} and {len(run) - 1} more"
    return Trace(np.vstack(points), straight, run[0].layers, name)


def branches(traces: Sequence[Trace], gap: float, most: int) -> tuple[Place, ...]:
    """Places where three or more ends meet, so that it is unclear which line continues; at most `most` of them."""
    rows = [trace for trace in traces if not trace.is_closed(gap)]
    ends = np.array([end for trace in rows for end in (trace.points[0], trace.points[-1])]).reshape(-1, 2)
    if not len(ends):
        return ()
    places, row_of, times = np.unique(ends, axis=0, return_inverse=True, return_counts=True)
    _, near = _tree(places).query(places, k=3, distance_upper_bound=np.nextafter(gap, np.inf))
    met = np.append(times, 0)[near].sum(axis=1)
    found: list[Place] = []
    for x, y in ends[(met > 2)[row_of.reshape(-1)]].tolist():
        if all(dist((x, y), other) > gap for other in found):
            found.append((x, y))
        if len(found) == most:
            break
    return tuple(found)


def gaps(chains: Sequence[Trace]) -> tuple[Gap, ...]:
    """For open chains, from each end the way to the nearest other end; each pair once, the narrowest first."""
    ends = np.array([end for chain in chains for end in (chain.points[0], chain.points[-1])])
    places, times = np.unique(ends, axis=0, return_counts=True)
    found = {Gap((x, y), (x, y), 0.0) for x, y in places[times > 1].tolist()}
    alone = places[times == 1]
    if len(places) > 1 and len(alone):
        widths, near = map(np.asarray, _tree(places).query(alone, k=2))
        for one, other, width in zip(alone.tolist(), places[near[:, 1]].tolist(), widths[:, 1], strict=True):
            start, end = sorted(((one[0], one[1]), (other[0], other[1])))
            found.add(Gap(start, end, float(width)))
    return tuple(sorted(found, key=lambda each: (each.width, each.start)))


def _turned(trace: Trace) -> Trace:
    return Trace(trace.points[::-1], trace.straight[::-1], trace.layers, trace.name)


def _closed_up(chain: Trace) -> Trace:
    """Its first and last point made one, half-way between."""
    points = chain.points.copy()
    points[0] = points[-1] = (points[0] + points[-1]) / 2
    return Trace(points, chain.straight, chain.layers, chain.name)


def _tree(places: Array) -> Any:
    """Places sorted so that near ones are found; (places, 2)."""
    from scipy.spatial import cKDTree  # loaded where it is used

    return cKDTree(places)
