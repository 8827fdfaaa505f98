"""What is written correctly about a bevel but impossible: it runs past the body's ends, or its line turns back."""

from collections.abc import Callable, Iterator, Sequence

from gramil.decimals import fixed
from gramil.description.body.bevel_table import BevelTable
from gramil.description.body.tables import Body
from gramil.description.neck.tables import Top
from gramil.description.problems import Problem
from gramil.shapes.dome import Dome
from gramil.shapes.edge_bevel import EdgeBevel
from gramil.shapes.outline import Outline
from gramil.shapes.unrolled import UnrolledSide

Outlines = tuple[Outline, ...]
MOST_BENT = 0.9
"""The outline's bend over the width of a bevel: at 1 the line on the plate turns back on itself."""


def bevels_have_a_body(
    outlines: Outlines, body: Body, arm_bevel: BevelTable, rib_bevel: BevelTable
) -> Iterator[Problem]:
    """There is an edge to bevel."""
    if outlines or body.described:
        return
    for table, bevel in _both(arm_bevel, rib_bevel):
        if bevel.described:
            yield Problem((table,), "there is no body to bevel", "a body: give [body] an outline, points or a file")


def bevels_follow_the_outline(
    outlines: Outlines, body: Body, top: Top, arm_bevel: BevelTable, rib_bevel: BevelTable
) -> Iterator[Problem]:
    """A bevel lies between neck and tail, leaves side under it, and its line on the plate does not turn back."""
    for outline in outlines:
        for table, bevel in _both(arm_bevel, rib_bevel):
            if bevel.described:
                yield from _misplaced(table, bevel, flat_bevel(outline, bevel))
                yield from _too_deep(table, bevel, body, top)


def flat_bevel(outline: Outline, bevel: BevelTable) -> EdgeBevel:
    """The bevel on the outline, as if both plates were flat."""
    side = UnrolledSide(outline, 1.0, 1.0, Dome(0.0, 0.0), Dome(0.0, 0.0), "bass")
    return EdgeBevel(
        side, True, 0.0, bevel.width, bevel.drop, bevel.length, outline.bass_half.widest_along + bevel.place
    )


def _misplaced(table: str, bevel: BevelTable, laid: EdgeBevel) -> Iterator[Problem]:
    length = laid.side.length
    if laid.start < 0 or laid.stop > length:
        past, end = ("neck", -laid.start) if laid.start < 0 else ("tail", laid.stop - length)
        allowed = f"between neck and tail: a shorter bevel, or another place; the side is {fixed(length, 1)} mm long"
        yield Problem((table, "length"), f"it would run {fixed(end, 1)} mm past the middle of the {past}", allowed)
    elif laid.tightest > MOST_BENT:
        yield Problem(
            (table, "width"),
            f"read {bevel.width:g} mm",
            f"less than {fixed(MOST_BENT * bevel.width / laid.tightest, 1)} mm: the outline bends too tightly for more",
        )


def _too_deep(table: str, bevel: BevelTable, body: Body, top: Top) -> Iterator[Problem]:
    plate = top.thickness if table == "arm_bevel" else body.back_thickness
    most = plate + min(body.depth_neck, body.depth_tail)
    if bevel.drop >= most:
        yield Problem((table, "drop"), f"read {bevel.drop:g} mm", f"less than side and plate, {most:g} mm")


def _both(arm: BevelTable, rib: BevelTable) -> tuple[tuple[str, BevelTable], tuple[str, BevelTable]]:
    return (("arm_bevel", arm), ("rib_bevel", rib))


BEVEL_CHECKS: Sequence[Callable[..., Iterator[Problem]]] = (bevels_have_a_body, bevels_follow_the_outline)
