"""A cutaway out of one half of an outline that is alike left and right, from a few measures: rounded or pointed.

From the neck's end the line runs level, as far out as the heel needs, then round a hollow that is a quarter of a circle
and more, and over the horn (an arc again, or a point) back onto the outline as it was. The hollow's deepest place is
given along, the horn's width across from there to the outline: its radius follows.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil.faults import MakersFault
from gramil.quantities import Mm
from gramil.shapes.curve import Curve
from gramil.shapes.outline import Outline, Point

Array = NDArray[np.float64]
FINE, LONGEST = 0.002, 1.5
"""In mm: how close chords of what is left of the outline lie to it, and how long they are at most."""
ANGLE = 0.02
"""In radians: the farthest that places on an arc lie apart."""


@dataclass(frozen=True)
class Cutaway:
    """`depth`: along, from the neck's end to the hollow's deepest place. `horn`: across from there to the outline.

    `radius`: of the horn's end, 0 for a point. `heel`: from the centreline to where the cutaway begins. All in mm.
    """

    depth: Mm
    horn: Mm
    radius: Mm
    heel: Mm


@dataclass(frozen=True)
class _Circle:
    middle: Point
    radius: Mm

    def at(self, angle: float) -> Point:
        return (self.middle[0] + self.radius * math.cos(angle), self.middle[1] + self.radius * math.sin(angle))

    def arc(self, start: float, end: float) -> Array:
        """Points from one angle to the other, ends included."""
        angles = np.linspace(start, end, 1 + max(4, math.ceil(abs(end - start) / ANGLE)))
        return np.array([self.at(each) for each in angles.tolist()])


def cut_away(outline: Outline, cutaway: Cutaway, where: str = "cutaway") -> Outline:
    """The outline with its upper half cut away, the lower one as it was. Raises MakersFault."""
    half, hollow = outline.half, _hollow(outline, cutaway, where)
    begin = _begin(half, hollow, cutaway, where)
    end = _end(half, hollow, cutaway.radius, where)
    level = np.array([half.place(np.asarray(begin)), (hollow.middle[0], cutaway.heel)])
    runs = [
        _kept(half, float(half.breaks[0]), begin),
        level,
        *_arcs(half, hollow, cutaway.radius, end, where),
        _kept(half, end, float(half.breaks[-1])),
    ]
    joints = np.cumsum([len(each) - 1 for each in runs]).tolist()
    points = np.vstack([runs[0], *(each[1:] for each in runs[1:])])
    points[[0, -1], 1] = 0.0
    first, last = 0 in outline.corners, len(outline.points) - 1 in outline.corners
    corners = (*([0] if first else ()), *joints[:-1], *([joints[-1]] if last else ()))
    return Outline(tuple((x, y) for x, y in points.tolist()), corners, outline.points, outline.corners)


def _hollow(outline: Outline, cutaway: Cutaway, where: str) -> _Circle:
    """The circle that touches the level line from the heel and the line across at the deepest place."""
    room = float(outline.half_width(cutaway.depth))
    radius = room - cutaway.horn - cutaway.heel
    if radius <= 0:
        raise MakersFault.of(
            f"a horn {cutaway.horn:g} mm wide leaves no room for the hollow",
            f"{cutaway.depth:g} mm from the neck's end the outline lies {room:.1f} mm from the centreline, and the "
            f"heel takes {cutaway.heel:g} mm",
            "Give a narrower horn",
            where=where,
        )
    return _Circle((cutaway.depth - radius, cutaway.heel + radius), radius)


def _begin(half: Curve, hollow: _Circle, cutaway: Cutaway, where: str) -> float:
    """The parameter at which the outline comes as far out as the heel, ahead of the hollow."""
    met = half.meets((0.0, cutaway.heel), (1.0, 0.0))
    if not len(met) or float(half.place(met[0])[0]) > hollow.middle[0] - 0.01:
        raise MakersFault.of(
            f"the hollow comes to a radius of {hollow.radius:.1f} mm, and does not fit in behind the neck's end",
            f"its middle would lie {hollow.middle[0]:.1f} mm along",
            "Give a deeper cutaway, or a wider horn",
            where=where,
        )
    return float(met[0])


def _end(half: Curve, hollow: _Circle, radius: Mm, where: str) -> float:
    """The parameter from which on the outline is as it was: where the horn's arc touches it, or the point lies."""
    middle, reach = np.array(hollow.middle), hollow.radius + radius

    def beyond(parameter: Array) -> Array:
        return np.asarray(np.hypot(*(_inside(half, parameter, radius) - middle).T) - reach)

    fine = half.sample(FINE, LONGEST)
    out = beyond(fine)
    leaves = np.flatnonzero((out[:-1] <= 0) & (out[1:] > 0))
    if not len(leaves):
        raise _no_horn(radius, where)
    return _zero(lambda at: float(beyond(np.array([at]))[0]), float(fine[leaves[-1]]), float(fine[leaves[-1] + 1]))


def _inside(half: Curve, parameters: Array, distance: Mm) -> Array:
    """Points at a distance inside the half, square to it."""
    velocity = half.velocity(parameters)
    normal = np.stack((velocity[:, 1], -velocity[:, 0]), axis=-1) / np.hypot(*velocity.T)[:, None]
    return np.asarray(half.place(parameters) + distance * normal)


def _zero(value: Callable[[float], float], low: float, high: float) -> float:
    """Where a value that rises through 0 between two places does so, by halving."""
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if value(middle) <= 0 else (low, middle)
    return (low + high) / 2


def _arcs(half: Curve, hollow: _Circle, radius: Mm, end: float, where: str) -> list[Array]:
    """The hollow, from where the level line touches it, and the horn's end where that is round."""
    place = half.place(np.asarray(end))
    (middle,) = _inside(half, np.array([end]), radius)
    turned = math.atan2(middle[1] - hollow.middle[1], middle[0] - hollow.middle[0])
    if turned <= 0 or turned > math.pi:
        raise _no_horn(radius, where)
    runs = [hollow.arc(-math.pi / 2, turned)]
    if radius:
        horn = _Circle((float(middle[0]), float(middle[1])), radius)
        start = turned + math.pi
        outward = math.atan2(place[1] - middle[1], place[0] - middle[0])
        runs.append(horn.arc(start, start - (start - outward) % (2 * math.pi)))
    return runs


def _no_horn(radius: Mm, where: str) -> MakersFault:
    return MakersFault.of(
        "the hollow does not reach its depth before it runs out to the outline",
        f"a horn's end of {radius:g} mm radius finds no place beyond it" if radius else "no point is left beyond it",
        "Give a wider horn, a smaller radius, or less depth",
        where=where,
    )


def _kept(half: Curve, start: float, end: float) -> Array:
    """Points of the outline as it was, between two parameters, ends included."""
    fine = half.sample(FINE, LONGEST)
    inner = fine[(fine > start + 1e-6) & (fine < end - 1e-6)]
    return half.place(np.concatenate(([start], inner, [end])))
