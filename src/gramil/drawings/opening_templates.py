"""The templates by which a router cuts a hole that is not round and the channel of its ring, each about its middle."""

from collections.abc import Iterator, Sequence

from gramil.drawings.marks import Line, Mark, Point, Polyline, Words
from gramil.drawings.pen import box_points
from gramil.parts.body_records import Ring
from gramil.parts.opening_records import Opening
from gramil.quantities import Mm

CUT_POINTS = 720
"""Points once round a line that a machine follows: on a curve of 60 mm radius its chords lie within 0.001 mm of it."""
BOARD = 35.0
"""Wood of a template outside its window, for a router to stand on, in mm."""
APART = 24.0
"""From one template to the next, in mm."""


def templates(name: str, hole: Opening, rings: Sequence[Ring]) -> Iterator[tuple[list[Mark], Mm]]:
    """Each template about its hole's middle, with its width."""
    yield _window(hole, 0.0, f"{name}: window of the {hole.name}")
    for ring in rings:
        out, inside = ((width - hole.across) / 2 for width in (ring.outer, ring.inner))
        yield _window(hole, out, f"{name}: outside of the {ring.name}")
        yield _island(hole, inside, f"{name}: inside of the {ring.name}")


def _window(hole: Opening, outward: Mm, told: str) -> tuple[list[Mark], Mm]:
    ring = _about_middle(hole, outward)
    half, high = (max(abs(point[axis]) for point in ring) + BOARD for axis in (0, 1))
    board = box_points((-half, -high), (half, high))
    return [
        Polyline(board, "cut", closed=True),
        Polyline(ring, "cut", closed=True),
        *_axes(half, high, gap=(half - BOARD, high - BOARD)),
        *_caption(told, -half, high, "the centreline's way; the neck to the left"),
    ], 2 * half


def _island(hole: Opening, outward: Mm, told: str) -> tuple[list[Mark], Mm]:
    ring = _about_middle(hole, outward)
    half, high = (max(abs(point[axis]) for point in ring) for axis in (0, 1))
    return [
        Polyline(ring, "cut", closed=True),
        *_axes(half, high),
        *_caption(told, -half, high + BOARD, "stands on the cross; the neck to the left"),
    ], 2 * half


def _about_middle(hole: Opening, outward: Mm) -> tuple[Point, ...]:
    return hole.hole.placed(0.0, 0.0, hole.lean, outward, CUT_POINTS)


def _axes(half: Mm, high: Mm, gap: tuple[Mm, Mm] = (0.0, 0.0)) -> Iterator[Line]:
    """The cross through the middle, left out within `gap` of it along and across."""
    along, across = gap
    if not along:
        yield Line((-half, 0.0), (half, 0.0), "centreline")
        yield Line((0.0, -high), (0.0, high), "centreline")
        return
    for way in (-1.0, 1.0):
        yield Line((way * half, 0.0), (way * along, 0.0), "centreline")
        yield Line((0.0, way * high), (0.0, way * across), "centreline")


def _caption(told: str, left: Mm, high: Mm, how: str) -> Iterator[Words]:
    yield Words((left, high + 9.0), told, 3.0)
    yield Words((left, high + 3.5), how, 2.6)
