"""A body whose treble half is given for itself, by points of its own."""

from functools import lru_cache

from gramil.decimals import fixed
from gramil.description.body.tables import Body
from gramil.faults import MakersFault
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import crossing_faults, through_half_widths, through_points

MEET = 0.5
"""In mm: how far apart the ends of the two halves on the centreline may be given."""
AHEAD = 3.0
"""In mm: how far a half may reach past its ends on the centreline."""
Rows = tuple[tuple[float, float], ...]


def one_half(by_width: bool, given: Rows, corners: tuple[int, ...]) -> Outline:
    """The outline whose halves both go through stations, or points; `corners` count from 0."""
    if any(not 0 <= corner < len(given) for corner in corners):
        raise MakersFault.of(f"a corner that is none of the {len(given)} points", remedy="count them from 1")
    if by_width:
        stations, half_widths = [x for x, _ in given], [half for _, half in given]
        return through_half_widths(stations, half_widths, corners)
    return through_points(given, corners)


def with_treble_half(outline: Outline, body: Body) -> Outline:
    """The outline with the treble half that is given for itself, its neck's end at x = 0; as it was where none is.

    Raises MakersFault.
    """
    if not body.treble_points:
        return outline
    corners = tuple(corner - 1 for corner in body.treble_corners)
    treble = one_half(False, tuple((x, y) for x, y in body.treble_points), corners)
    return put_together(outline, treble)


@lru_cache(maxsize=16)
def put_together(bass: Outline, treble: Outline) -> Outline:
    """The outline with the lower half of the one and the upper half of the other; raises MakersFault.

    The line runs on smoothly where both ends lie on the centreline and neither is a corner.
    """
    for end, row in (("neck", 0), ("tail", -1)):
        if abs(bass.points[row][0] - treble.points[row][0]) > MEET:
            raise MakersFault.of(
                f"the halves end {abs(bass.points[row][0] - treble.points[row][0]):.2f} mm apart at the {end}",
                "They meet on the centreline at both ends",
                "Give both the same first and last distance along",
            )
    ends = ((bass.points[0][0], 0.0), (bass.points[-1][0], 0.0))
    both = Outline((ends[0], *treble.points[1:-1], ends[1]), treble.corners, bass.points, bass.corners, smooth=True)
    faults = [fault for half in (treble, bass) for fault in crossing_faults(half)]
    if faults:
        raise MakersFault(faults)
    return both


def check_reach(outline: Outline) -> None:
    """Nothing of the body lies well ahead of its neck's end on the centreline, or past its tail's; raises MakersFault.

    A body whose halves are alike is not checked.
    """
    neck, tail = outline.points[0][0], outline.points[-1][0]
    for end, past in (("ahead of the neck's", neck - outline.start), ("past the tail's", outline.end - tail)):
        if past > AHEAD and not outline.alike:
            raise MakersFault.of(
                f"a half reaches {fixed(past, 1)} mm {end} end on the centreline",
                f"Lengths are counted between those ends; {AHEAD:g} mm are let pass",
                "Draw it so that the body begins and ends on the centreline, or nearly",
            )
