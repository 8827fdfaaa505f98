"""A closed convex curve to cut an opening by: a circle, an oval, or the shape of a D, with what follows from it.

Places are about its own middle, x along and y across. An oval is an ellipse. A D has a straight side toward negative
x, a quarter circle at either corner, and half an ellipse for the rest, so that it is as long and as wide as it says.
"""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from gramil.quantities import Mm, Mm2, Radians

Array = NDArray[np.float64]
Shape = Literal["round", "oval", "D"]

POINTS = 240
"""Points once round: on a circle of 50 mm their chords lie within 0.005 mm of it."""
FINE = 4096
"""Points once round an ellipse by which its length is summed: exact to rounding, as sums over a whole period are."""


@dataclass(frozen=True)
class Hole:
    """A curve by its two sizes in mm, along and across; `corner` is the radius at a D's corners."""

    shape: Shape
    along: Mm
    across: Mm
    corner: Mm = 0.0

    @property
    def is_round(self) -> bool:
        """Whether it is a circle."""
        return self.shape == "round"

    @property
    def diameter(self) -> Mm:
        """A circle's; of any other shape not a number."""
        return self.along if self.is_round else math.nan

    @cached_property
    def area(self) -> Mm2:
        """The area that it encloses."""
        long, half = self._axes
        if self.shape != "D":
            return math.pi * long * half
        return math.pi * long * half / 2 + 2 * half * self.corner - (2 - math.pi / 2) * self.corner**2

    @cached_property
    def edge(self) -> Mm:
        """Length once round."""
        long, half = self._axes
        if self.is_round:
            return 2 * math.pi * long
        if self.shape == "oval":
            return ellipse_round(long, half)
        return ellipse_round(long, half) / 2 + 2 * (half - self.corner) + math.pi * self.corner

    @property
    def hydraulic_radius(self) -> Mm:
        """Twice the area over the length round: a circle's own radius."""
        return 2 * self.area / self.edge

    @property
    def tightest(self) -> Mm:
        """The least radius that its line bends to; 0 at a sharp corner."""
        long, half = self._axes
        ends = (half**2 / long, long**2 / half)
        return min(*ends, self.corner) if self.shape == "D" else min(ends)

    @property
    def _axes(self) -> tuple[Mm, Mm]:
        """The ellipse's half axes, along and across."""
        if self.shape == "D":
            return self.along - self.corner, self.across / 2
        return self.along / 2, self.across / 2

    def ring(self, outward: Mm = 0.0, count: int = POINTS) -> Array:
        """Points once round, shape (n, 2), from its tail end: on the curve or on a parallel outside it."""
        if self.shape != "D":
            return self._ellipse(np.linspace(0.0, 2 * math.pi, count + 1)[:-1], outward)
        half_turn = np.linspace(-math.pi / 2, math.pi / 2, count // 2 + 1)
        round_side = self._ellipse(half_turn, outward) + np.array([self.corner - self.along / 2, 0.0])
        bend = np.linspace(math.pi / 2, math.pi, count // 8 + 1)[1:]
        away = self.corner + outward
        middle = np.array([self.corner - self.along / 2, self.across / 2 - self.corner])
        upper = middle + away * np.stack([np.cos(bend), np.sin(bend)], axis=1)
        lower = upper[::-1] * (1.0, -1.0)
        return np.concatenate((round_side, upper, lower))

    def _ellipse(self, turn: Array, outward: Mm) -> Array:
        long, half = self._axes
        normal = np.stack([half * np.cos(turn), long * np.sin(turn)], axis=1)
        normal /= np.hypot(*normal.T)[:, np.newaxis]
        return np.stack([long * np.cos(turn), half * np.sin(turn)], axis=1) + outward * normal

    def placed(
        self, x: Mm, y: Mm, lean: Radians = 0.0, outward: Mm = 0.0, count: int = POINTS
    ) -> tuple[tuple[Mm, Mm], ...]:
        """The points once round with its middle at (x, y), turned: its end at positive y toward positive x."""
        ring, (sine, cosine) = self.ring(outward, count), (math.sin(lean), math.cos(lean))
        along = x + ring[:, 0] * cosine + ring[:, 1] * sine
        across = y - ring[:, 0] * sine + ring[:, 1] * cosine
        return tuple(zip(along.tolist(), across.tolist(), strict=True))


def hole_of(shape: Shape, diameter: Mm, along: Mm, across: Mm, corner: Mm = 0.0) -> Hole:
    """A circle by its diameter, any other shape by its sizes."""
    return Hole(shape, diameter, diameter) if shape == "round" else Hole(shape, along, across, corner)


def ellipse_round(long: Mm, half: Mm) -> Mm:
    """Length once round an ellipse of these half axes: 4 a E(e), summed over a whole period."""
    turn = np.linspace(0.0, 2 * math.pi, FINE + 1)[:-1]
    return float(np.hypot(long * np.sin(turn), half * np.cos(turn)).mean() * 2 * math.pi)


def largest_corner(along: Mm, across: Mm) -> Mm:
    """The most that a D's corners can be rounded: half its width, and short of its length."""
    return min(across / 2, along / 2)
