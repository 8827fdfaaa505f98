"""A symmetric outline out of a closed line as it was traced: its axis found, the halves made alike, few points kept."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import minimize_scalar

from gramil.quantities import Mm
from gramil.shapes.chains import Drawing, Trace
from gramil.shapes.few_points import few_points
from gramil.shapes.polyline import nearest_on_ring
from gramil.shapes.traced_outline import Reading, Traced, traced_outline

Array = NDArray[np.float64]
LEANS_MOST = 0.35
"""In radians: how far the axis may lie from the longest way of the line's points."""
LET_PASS: Mm = 5.0
"""How much the halves may differ and still be made alike: the maker is told, and decides."""


@dataclass(frozen=True)
class FoundOutline:
    """Points of one half (mm, from the neck end, across), by which the outline is written, and how far the two halves
    differed at most; `unsure` is two standard deviations of a place.
    """

    points: tuple[tuple[Mm, Mm], ...]
    corners: tuple[int, ...]
    length: Mm
    widest: Mm
    asymmetry: Mm
    unsure: Mm
    laying: "Laying"


@dataclass(frozen=True, eq=False)
class Laying:
    """How the line was laid for its outline: what was subtracted from its places, by how much they were turned, and how
    the outline was then found.
    """

    middle: Array
    angle: float
    found: Traced

    def laid(self, places: Array) -> Array:
        """Other places beside the line, (n, 2): along from the outline's start, across from its axis."""
        return self.found.laid(_turned(places - self.middle, self.angle))


def outline_of(ring: Array, unsure: Mm, narrow_end_first: bool = True) -> FoundOutline:
    """The symmetric outline of a closed line (n, 2), in mm, however it lies. Raises MakersFault for a line that crosses
    itself, or whose halves are not alike.
    """
    middle = ring.mean(axis=0)
    angle = _angle(ring - middle)
    laid = _turned(ring - middle, angle)
    closed = np.vstack((laid, laid[:1]))
    trace = Trace(closed, np.zeros(len(laid), dtype=bool), (), "the line that was traced")
    reading = Reading(asymmetry=LET_PASS, narrow_end_first=narrow_end_first)
    found = traced_outline(Drawing((trace,), 1.0), reading)
    points, corners = few_points(found.outline)
    widest = 2 * max(across for _, across in found.outline.points)
    return FoundOutline(
        points, corners, found.outline.length, widest, found.asymmetry, unsure, Laying(middle, angle, found)
    )


def _angle(about: Array) -> float:
    """By how much a line is turned so that its halves, on either side of the x axis, are as much alike as can be."""
    way = np.linalg.svd(about, full_matrices=False)[2][0]
    first = float(np.arctan2(way[1], way[0]))
    step = max(len(about) // 250, 1)

    def unlike(angle: float) -> float:
        turned = _turned(about, -angle)
        turned = turned - (0, (turned[:, 1].max() + turned[:, 1].min()) / 2)
        mirrored = turned[::step] * (1, -1)
        return float((np.hypot(*(nearest_on_ring(turned, mirrored, by_tree=True) - mirrored).T) ** 2).sum())

    angles = first + np.linspace(-LEANS_MOST, LEANS_MOST, 15)
    near = float(angles[int(np.argmin([unlike(each) for each in angles]))])
    half = LEANS_MOST / 7
    best = minimize_scalar(unlike, bounds=(near - half, near + half), method="bounded", options={"xatol": 1e-6})
    return -float(best.x)


def _turned(points: Array, angle: float) -> Array:
    """Points turned about zero, anticlockwise."""
    cosine, sine = np.cos(angle), np.sin(angle)
    return np.asarray(points @ np.array([(cosine, sine), (-sine, cosine)]))
