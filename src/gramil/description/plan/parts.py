"""What a plan gives, in mm as it is measured there: along from the body's neck end (a head's from the nut's face).

Across is from the centreline, treble positive. What a plan does not give is None, and stays as the description has it.
"""

from dataclasses import dataclass

from gramil.quantities import Mm

Point = tuple[Mm, Mm]
RUNS_ON = "linings"
"""An end of a brace that runs on along its line. `point` ends there; the name of a brace is what it ends against."""

NEXT: Mm = 1.0
"""Stations lie no nearer to each other."""


@dataclass(frozen=True)
class PlanOutline:
    """Half of a body's outline from its neck end, and which of its points (from 0) are corners; `within` is how near it
    comes to what was traced.
    """

    points: tuple[Point, ...]
    corners: tuple[int, ...] = ()
    within: Mm | None = None

    @property
    def by_stations(self) -> bool:
        """Whether each point lies beyond the one before, so that its half-widths stand at stations."""
        return all(one[0] < other[0] for one, other in zip(self.points, self.points[1:], strict=False))

    @property
    def stations(self) -> tuple[Point, ...]:
        """Its half-widths at stations, by which rules of bracing go: where it runs straight across, the widest."""
        found = [self.points[0]]
        for place in self.points[1:-1]:
            if place[0] - found[-1][0] >= NEXT:
                found.append(place)
            elif len(found) == 1 and place[1] > found[0][1]:
                found[0] = place
        return (*found, self.points[-1])


@dataclass(frozen=True)
class PlanBrace:
    """A brace: two points on its middle line, and what it is to be held to. A width or height that is not known is that
    of the description's brace of the same name.
    """

    name: str
    plate: str
    held_to: str
    line: tuple[Point, Point]
    start: str = RUNS_ON
    stop: str = RUNS_ON
    twin: bool = False
    width: Mm | None = None
    height: Mm | None = None


@dataclass(frozen=True)
class PlanHole:
    """A round hole on the centreline."""

    centre: Mm
    diameter: Mm


@dataclass(frozen=True)
class PlanBridge:
    """The bridge's length across, its width along the strings, and its front edge to the saddle's middle."""

    length: Mm
    width: Mm
    front: Mm | None = None


@dataclass(frozen=True)
class PlanHead:
    """Half of the head's outline from the nut's face, and which of its points (from 0) are corners."""

    points: tuple[Point, ...]
    corners: tuple[int, ...] = ()


@dataclass(frozen=True)
class PlanParts:
    """All that a plan gives."""

    outline: PlanOutline | None = None
    braces: tuple[PlanBrace, ...] = ()
    hole: PlanHole | None = None
    bridge: PlanBridge | None = None
    head: PlanHead | None = None

    @property
    def empty(self) -> bool:
        """Whether it gives nothing."""
        return self == PlanParts()
