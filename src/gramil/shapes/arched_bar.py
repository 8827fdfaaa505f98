"""A bar that stands upright on a dome: its foot the dome's own arc, its upper edge straight, worked down at the ends.

It is seen from its side, foot down. Distances along are level, from its first end, as a plan shows them. Heights are
upright, square to the dome's plane, from the foot's first end and away from the dome: the middle of the foot hangs
below the straight line (the chord) between the foot's ends. A height over the plate is from the foot straight up.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property
from math import atan2, ceil, cos, pi, sin, sqrt

import numpy as np
from numpy.typing import ArrayLike, NDArray

from gramil.quantities import Mm, PerMm, Radians
from gramil.shapes.arc import sagitta
from gramil.shapes.piecewise import distinct

Array = NDArray[np.float64]
Point = tuple[float, float]
FINENESS = 0.002
"""In mm: the straight pieces in which a foot's arc and a hollow end are drawn keep this close to them."""


@dataclass(frozen=True)
class Notch:
    """A notch from `left` to `right` along; its floor level at the height `floor`, open upward or at the foot."""

    left: Mm
    right: Mm
    floor: Mm
    open_upward: bool


@dataclass(frozen=True)
class ArchedBar:
    """A bar `length` long, `height` over the plate where it is highest, `end_height` over it at its ends.

    `curvature` is the foot's (1/mm), `nearest` where along the bar the dome's apex is passed. The ends are worked down
    over `end_run` in a straight run, or in a hollow one if `scalloped`; an `end_run` of 0 leaves them square.
    """

    length: Mm
    height: Mm
    end_height: Mm
    end_run: Mm
    scalloped: bool
    curvature: PerMm
    nearest: Mm

    def foot(self, along: ArrayLike) -> Array:
        """Height of the foot: 0 at the first end."""
        along = np.asarray(along, dtype=np.float64)
        return sagitta(self.curvature, along - self.nearest) - sagitta(self.curvature, self.nearest)

    def edge(self, along: ArrayLike) -> Array:
        """Height of the upper edge: straight, level with the chord, so high that the middle is `height` over the plate.

        Where that would leave less than `end_height` over the plate (a low bar on a strong dome) it follows the plate.
        """
        chord, foot = self._chord(along), self.foot(along)
        return np.asarray(np.maximum(chord + self._over_chord(along), foot + self.end_height))

    def over_plate(self, along: ArrayLike) -> Array:
        """Height of the upper edge over the plate."""
        return self.edge(along) - self.foot(along)

    @cached_property
    def hang(self) -> Mm:
        """How far the foot hangs below its chord at most, measured upright."""
        return float(sagitta(self.curvature, self.length / cos(self.tilt) / 2)) / cos(self.tilt)

    @cached_property
    def tilt(self) -> Radians:
        """Angle of the chord with the level, positive where the second end is higher."""
        return atan2(float(self.foot(self.length)), self.length)

    @property
    def tallest(self) -> Mm:
        """The least height of a stick that it can be cut from, its upper edge along the stick's."""
        return max(self.height, self.end_height + self.hang)

    @property
    def follows_plate(self) -> bool:
        """Whether it is so low that a straight upper edge would come lower than at its ends."""
        return self.height - self.hang < self.end_height

    def edge_places(self) -> Array:
        """Where the upper edge is drawn through: its worked ends, and all along where it follows the plate."""
        rise = abs(self.height - self.hang - self.end_height)
        pieces = pi * sqrt(rise / (16 * FINENESS)) if self.scalloped else 1.0
        ends = np.linspace(0.0, self._run, max(1, ceil(pieces)) + 1)
        return distinct([*ends, *(self.length - ends), *(self._following() if self.follows_plate else ())])

    def outline(self, notches: Iterable[Notch] = ()) -> tuple[Point, ...]:
        """Once round, from the foot's first end: the foot, then back along the upper edge, with its notches cut.

        Notches of one side do not touch each other.
        """
        each = tuple(notches)
        foot = _run(self._foot_places(), self.foot, [notch for notch in each if not notch.open_upward])
        edge = _run(self.edge_places(), self.edge, [notch for notch in each if notch.open_upward])
        return (*foot, *reversed(edge))

    def laid(self, points: Iterable[Point]) -> tuple[Point, ...]:
        """Points turned about the foot's first end so that the chord lies level, as the bar lies on a sheet."""
        over, up = cos(self.tilt), sin(self.tilt)
        return tuple((along * over + height * up, height * over - along * up) for along, height in points)

    @cached_property
    def _run(self) -> Mm:
        return min(self.end_run, self.length / 2)

    def _foot_places(self) -> Array:
        """Where the foot is drawn through: an arc's chord of c leaves it by c^2 / 8 R."""
        pieces = self.length * sqrt(self.curvature / (8 * FINENESS))
        return np.linspace(0.0, self.length, max(1, ceil(pieces)) + 1)

    def _following(self) -> Array:
        """Where an edge that follows the plate is drawn through: as the foot, and where it leaves the straight."""
        along = np.linspace(0.0, self.length, 1001)  # half a mm on a brace: between two of them an edge is straight
        apart = self._chord(along) + self._over_chord(along) - self.foot(along) - self.end_height
        turns = np.flatnonzero(apart[:-1] * apart[1:] < 0)
        share = apart[turns] / (apart[turns] - apart[turns + 1])
        return np.concatenate((self._foot_places(), along[turns] + share * (along[1] - along[0])))

    def _chord(self, along: ArrayLike) -> Array:
        return np.asarray(np.asarray(along, dtype=np.float64) / self.length * self.foot(self.length))

    def _over_chord(self, along: ArrayLike) -> Array:
        """Height of the upper edge over the chord, if it is straight."""
        along, straight = np.asarray(along, dtype=np.float64), self.height - self.hang
        if self.end_run <= 0:
            return np.full_like(along, straight)
        share = np.clip(np.minimum(along, self.length - along) / self._run, 0.0, 1.0)
        part = (1 - np.cos(np.pi * share)) / 2 if self.scalloped else share
        return np.asarray(self.end_height + (straight - self.end_height) * part)


def _run(places: Array, height: Callable[[ArrayLike], Array], notches: list[Notch]) -> list[Point]:
    """A run through `places` at their heights, down one wall of each notch and up the other."""
    first, last = float(places[0]), float(places[-1])
    walls = [(wall, outer) for each in notches for wall, outer in ((each.left, 0), (each.right, 2))]
    outer = [(x, 0) for x in places.tolist() if not any(each.left <= x <= each.right for each in notches)]
    outer += [(wall, order) for wall, order in walls if first < wall < last]
    heights = height([x for x, _ in outer]).tolist()  # all at once: one by one they took six times as long
    points = [(x, order, z) for (x, order), z in zip(outer, heights, strict=True)]
    points += [(min(last, max(first, wall)), 1, each.floor) for each in notches for wall in (each.left, each.right)]
    return [(x, z) for x, _, z in sorted(points)]
