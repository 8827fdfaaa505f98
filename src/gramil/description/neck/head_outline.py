"""The head's outline from what the maker gave: points of one half, points all the way round, or a drawing."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property, lru_cache
from pathlib import Path as FilePath

from gramil.decimals import fixed
from gramil.description.drawing_beside import drawing_beside
from gramil.description.neck.tables import Head
from gramil.description.problems import Problem
from gramil.faults import Fault, MakersFault
from gramil.shapes.curve import Curve
from gramil.shapes.curve_through import through_apart
from gramil.shapes.outline import Outline
from gramil.shapes.polyline import crossings
from gramil.shapes.traced_outline import Reading, read_outline

CHECKED_TO = 0.05
"""In mm: crossings are looked for on chords that lie this close to the curve."""
Point = tuple[float, float]


@dataclass(frozen=True)
class HeadCurve:
    """The head's edge through `points` [along from the nut's face, across, treble positive], mm; rows of `corners`.

    From the nut's treble end round to its bass end; along the nut it is closed by a straight line. Empty: none given.
    """

    points: tuple[Point, ...] = ()
    corners: tuple[int, ...] = ()

    @cached_property
    def curve(self) -> Curve:
        """The edge as a curve, of a head that has points."""
        return through_apart(self.points, self.corners)


NO_CURVE = HeadCurve()


def read_head(head: Head | None, folder: FilePath | None) -> tuple[HeadCurve, list[Problem]]:
    """The head's edge, or none, and what is wrong; `folder` is where a drawing may lie."""
    key = next((key for key in ("outline", "file") if head is not None and getattr(head, key)), None)
    if head is None or key is None:
        return NO_CURVE, []
    try:
        curve = _drawn(head, folder) if key == "file" else _given(head)
        _check(curve)
    except MakersFault as error:
        return NO_CURVE, list(_problems(error.faults, key))
    return curve, []


def _given(head: Head) -> HeadCurve:
    points = head.outline or ()
    rows = [corner - 1 for corner in head.corners]
    if any(not 0 <= row < len(points) for row in rows):
        raise MakersFault.of(f"a corner that is none of the {len(points)} points", remedy="count them from 1")
    curve = HeadCurve(points, tuple(sorted(set(rows))))
    return _both_halves(curve) if all(across >= 0 for _, across in points) else curve


def _both_halves(half: HeadCurve) -> HeadCurve:
    """One half with its mirror image; a last point on the centreline is not doubled."""
    shared = int(half.points[-1][1] == 0)
    last = 2 * len(half.points) - 1 - shared
    mirrored = tuple((along, -across) for along, across in reversed(half.points[: len(half.points) - shared]))
    rows = {*half.corners, *(last - row for row in half.corners)}
    return HeadCurve((*half.points, *mirrored), tuple(sorted(rows)))


def _drawn(head: Head, folder: FilePath | None) -> HeadCurve:
    file = head.file or ""
    text = drawing_beside(file, folder)
    outline = read_outline(text, file, Reading(head.length, head.layer, file=file)).outline
    return _both_halves(HeadCurve(*nut_first(outline)))


def nut_first(outline: Outline) -> tuple[tuple[Point, ...], tuple[int, ...]]:
    """Half of a drawn head from the nut's treble end, and the rows of its corners: the nut's own line is left out."""
    along = tuple((x - outline.start, y) for x, y in outline.points)
    return along[1:], tuple(row - 1 for row in outline.corners if row > 0)


@lru_cache(maxsize=16)
def _check(head: HeadCurve) -> None:
    """The edge starts at the nut, does not cross itself, and does not repeat a point."""
    if any(one == other for one, other in zip(head.points, head.points[1:], strict=False)):
        raise MakersFault.of("a point comes twice running", remedy="keep one")
    if head.points[0][1] <= 0 or head.points[-1][1] >= 0:
        raise MakersFault.of(
            "the outline does not run from the treble side of the nut to its bass side",
            remedy="give one half, or all of it, starting at the nut on the treble side",
        )
    line = head.curve.polyline(CHECKED_TO)
    found = crossings(line, closed=True)
    if found:
        _, _, x, y = found[0]
        raise MakersFault.of(
            f"the outline crosses itself {fixed(x, 1)} mm along, {fixed(y, 1)} mm across", remedy="look there"
        )


def _problems(faults: Iterable[Fault], key: str) -> Iterable[Problem]:
    for each in faults:
        what = f"in {each.file}, {each.what}" if each.file else each.what
        yield Problem(("head", key), what, each.why, each.remedy)
