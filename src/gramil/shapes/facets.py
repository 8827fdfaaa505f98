"""Straight flats that touch a rounded profile all round: what a plane leaves before the edges are rounded over."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, sin

from gramil.quantities import Mm, Radians
from gramil.shapes.planar import Point, lines_meet
from gramil.shapes.profile import Profile


@dataclass(frozen=True)
class Facet:
    """One flat: it touches the profile at `touch` and runs from `start` to `end` (y, depth), in mm.

    `angle`: of its outward normal, from +y towards the depth.
    """

    angle: Radians
    touch: Point
    start: Point
    end: Point

    @property
    def width(self) -> Mm:
        """From edge to edge."""
        return float(((self.end[0] - self.start[0]) ** 2 + (self.end[1] - self.start[1]) ** 2) ** 0.5)


def even_angles(count: int) -> tuple[Radians, ...]:
    """Normals of `count` flats, two or more, at even angles: 5 gives 0, 45, 90, 135 and 180 degrees."""
    return tuple(pi * step / (count - 1) for step in range(count))


def facets(profile: Profile, angles: Sequence[Radians]) -> tuple[Facet, ...]:
    """The flats with these normals (growing, within 0 to pi), each from where it meets the one before to the next.

    The first and last end at the flat face above (depth 0). Raises ValueError where angles do not grow or are out
    of range, where neighbours are closer than 1e-6 rad, and where the first or last is parallel to the face.
    """
    if not angles or angles[0] < 0 or angles[-1] > pi + 1e-12 or any(b - a < 1e-6 for a, b in pairwise(angles)):
        raise ValueError("angles grow from 0 to pi")
    touches = [profile.touch(angle) for angle in angles]
    lines = [(touch, (-sin(angle), cos(angle))) for touch, angle in zip(touches, angles, strict=True)]
    face = ((0.0, 0.0), (1.0, 0.0))
    corners = [_meet(one, other) for one, other in pairwise([face, *lines, face])]
    return tuple(
        Facet(angle, touch, start, end)
        for angle, touch, (start, end) in zip(angles, touches, pairwise(corners), strict=True)
    )


def vertices(flats: Sequence[Facet]) -> tuple[Point, ...]:
    """Corners of the polygon about the profile, from the face on the +y side round to the face on the other."""
    return (*(flat.start for flat in flats), flats[-1].end)


def _meet(one: tuple[Point, Point], other: tuple[Point, Point]) -> Point:
    place = lines_meet(*one, *other)
    if place is None:
        raise ValueError("a flat is parallel to the face or to its neighbour")
    return place
