"""The bevels for arm and ribs: their lines on plate and side, and their surface laid flat for the veneer.

Distances along are on the outside of the bass side, from its middle at the neck. Both bevels lie on the bass side,
where the playing arm does; the arm's at the top's edge, the ribs' at the back's. Without a bevel all the lists are
empty.
"""

from math import atan2, hypot, nan

import numpy as np

from gramil.parts.bevel_records import (
    Bevel,
    BevelAsked,
    BevelLaid,
    BevelMark,
    BevelPattern,
    BevelVeneer,
    no_bevel,
)
from gramil.parts.edge_records import Edge
from gramil.quantities import Mm
from gramil.shapes.edge_bevel import EdgeBevel
from gramil.shapes.unrolled import UnrolledSide

OWNS = ("bevel_",)

MARKS = 8
"""Into how many parts a bevel is marked off."""


def bevel_arm(
    arm_bevel_width: Mm,
    arm_bevel_drop: Mm,
    arm_bevel_length: Mm,
    arm_bevel_place: Mm,
    arm_bevel_block: str,
    arm_bevel_block_width: Mm,
    arm_bevel_block_height: Mm,
    arm_bevel_layer: Mm,
    arm_bevel_veneer: Mm,
    arm_bevel_binding: str,
) -> BevelAsked:
    """The bevel for the arm, as described.

    Method: its keys together; 0 wide where there is none.
    Source: the maker's own choice.
    """
    if not arm_bevel_width:
        return no_bevel("arm")
    return BevelAsked(
        "arm",
        arm_bevel_width,
        arm_bevel_drop,
        arm_bevel_length,
        arm_bevel_place,
        arm_bevel_block,
        arm_bevel_block_width,
        arm_bevel_block_height,
        arm_bevel_layer,
        arm_bevel_veneer,
        arm_bevel_binding,
    )


def bevel_rib(
    rib_bevel_width: Mm,
    rib_bevel_drop: Mm,
    rib_bevel_length: Mm,
    rib_bevel_place: Mm,
    rib_bevel_block: str,
    rib_bevel_block_width: Mm,
    rib_bevel_block_height: Mm,
    rib_bevel_layer: Mm,
    rib_bevel_veneer: Mm,
    rib_bevel_binding: str,
) -> BevelAsked:
    """The bevel for the ribs, as described.

    Method: its keys together; 0 wide where there is none.
    Source: the maker's own choice.
    """
    if not rib_bevel_width:
        return no_bevel("rib")
    return BevelAsked(
        "rib",
        rib_bevel_width,
        rib_bevel_drop,
        rib_bevel_length,
        rib_bevel_place,
        rib_bevel_block,
        rib_bevel_block_width,
        rib_bevel_block_height,
        rib_bevel_layer,
        rib_bevel_veneer,
        rib_bevel_binding,
    )


def bevel_laid(
    bevel_arm: BevelAsked,
    bevel_rib: BevelAsked,
    body_sides: tuple[UnrolledSide, ...],
    graduated_edge: Mm,
    body_back_thickness: Mm,
) -> tuple[BevelLaid, ...]:
    """Each bevel that there is, on the bass side's edge.

    Method: its lines swell from the edge as (1 + cos) / 2 over one turn, in on the plate square to the outline and down
    from the plate's face; straight lines join the two. Its middle lies `place` past where the bass side is widest.
    Source: common practice.
    """
    return tuple(
        BevelLaid(asked, _shape(asked, side, over))
        for side in body_sides
        for asked, over in ((bevel_arm, graduated_edge), (bevel_rib, body_back_thickness))
        if asked.width > 0
    )


def _shape(asked: BevelAsked, side: UnrolledSide, over: Mm) -> EdgeBevel:
    bass = side if side.of == "bass" else side.other
    middle = bass.outline.bass_half.widest_along + asked.place
    return EdgeBevel(bass, asked.plate == "top", over, asked.width, asked.drop, asked.length, middle)


def bevel_list(bevel_laid: tuple[BevelLaid, ...], channel_edge_top: Edge, channel_edge_back: Edge) -> tuple[Bevel, ...]:
    """Each bevel's place, its lines and its face.

    Method: lengths along the lines and area of the face in 256 steps; the side left beneath is the least of its depth
    less what the bevel, and a binding or a bevel at the other edge, take of it.
    Source: common practice.
    """
    covers = {"arm": channel_edge_back.cover, "rib": channel_edge_top.cover}
    return tuple(_bevel(each, bevel_laid, covers[each.asked.name]) for each in bevel_laid)


def _bevel(laid: BevelLaid, every: tuple[BevelLaid, ...], cover: Mm) -> Bevel:
    asked, shape = laid.asked, laid.shape
    others = [each.shape for each in every if each is not laid]
    return Bevel(
        asked.name,
        asked.plate,
        asked.width,
        asked.drop,
        max(0.0, asked.drop - shape.over),
        asked.length,
        shape.start,
        shape.middle,
        shape.stop,
        atan2(asked.drop, asked.width),
        hypot(asked.width, asked.drop),
        shape.face_length,
        shape.wall_length,
        shape.area,
        _left(shape, others, cover),
    )


def _left(shape: EdgeBevel, others: list[EdgeBevel], cover: Mm) -> Mm:
    """The least depth of side left beneath a bevel; `cover` is what a binding takes at the other edge."""
    along = shape.along
    taken = np.maximum([_taken(each, along) for each in others] or [np.zeros_like(along)], max(0.0, cover))
    return float((shape.side.depth(along) - _taken(shape, along) - taken.max(axis=0)).min())


def _taken(shape: EdgeBevel, along: np.ndarray) -> np.ndarray:
    return np.maximum(0.0, shape.drop * shape.share(along) - shape.over)


def bevel_marks(bevel_laid: tuple[BevelLaid, ...]) -> tuple[BevelMark, ...]:
    """Each bevel marked off in eight parts: where, how far in on the plate, how far down from its face.

    Method: width and drop, each times (1 + cos) / 2 of how far the place lies from the middle.
    Source: common practice.
    """
    return tuple(mark for each in bevel_laid for mark in _marks(each))


def _marks(laid: BevelLaid) -> list[BevelMark]:
    shape = laid.shape
    along = np.linspace(shape.start, shape.stop, MARKS + 1)
    rows = zip(along.tolist(), shape.share(along).tolist(), strict=True)
    return [
        BevelMark(f"{laid.asked.name} {row}", at, shape.width * share, shape.drop * share)
        for row, (at, share) in enumerate(rows)
    ]


def bevel_patterns(bevel_laid: tuple[BevelLaid, ...]) -> tuple[BevelPattern, ...]:
    """Each bevel's surface laid flat.

    Method: in triangles, whose sides keep their lengths, from the middle to both ends; the surface is twisted so little
    that its area is the same to a millionth or so.
    Source: plane geometry.
    """
    return tuple(_pattern(each) for each in bevel_laid)


def _pattern(laid: BevelLaid) -> BevelPattern:
    upper, lower = (tuple((float(x), float(y)) for x, y in line) for line in laid.shape.pattern)
    return BevelPattern(laid.asked.name, upper, lower)


def bevel_veneers(
    bevel_patterns: tuple[BevelPattern, ...],
    bevel_list: tuple[Bevel, ...],
    bevel_laid: tuple[BevelLaid, ...],
    limit_veneer_over: Mm,
) -> tuple[BevelVeneer, ...]:
    """The veneer of each bevel that has one: the size of its blank.

    Method: the flat pattern's length and width, its lower edge's ends level, with something over on every side.
    Source: common practice.
    """
    rows = zip(bevel_patterns, bevel_list, bevel_laid, strict=True)
    return tuple(
        _veneer(pattern, bevel.area, laid.asked.veneer, limit_veneer_over)
        for pattern, bevel, laid in rows
        if laid.asked.veneer > 0
    )


def _veneer(pattern: BevelPattern, area: float, thickness: Mm, over: Mm) -> BevelVeneer:
    spans = np.ptp(np.array((*pattern.upper, *pattern.lower)), axis=0)
    return BevelVeneer(pattern.name, float(spans[0]) + 2 * over, float(spans[1]) + 2 * over, thickness, area)


def bevel_veneer_length_arm(bevel_veneers: tuple[BevelVeneer, ...]) -> Mm:
    """Length of the veneer to buy or saw for the arm's bevel.

    Method: its blank's; not known where there is none.
    Source: common practice.
    """
    return next((each.length for each in bevel_veneers if each.name == "arm"), nan)


def bevel_veneer_width_arm(bevel_veneers: tuple[BevelVeneer, ...]) -> Mm:
    """Width of the veneer to buy or saw for the arm's bevel.

    Method: its blank's; not known where there is none.
    Source: common practice.
    """
    return next((each.width for each in bevel_veneers if each.name == "arm"), nan)


def bevel_veneer_length_rib(bevel_veneers: tuple[BevelVeneer, ...]) -> Mm:
    """Length of the veneer to buy or saw for the ribs' bevel.

    Method: its blank's; not known where there is none.
    Source: common practice.
    """
    return next((each.length for each in bevel_veneers if each.name == "rib"), nan)


def bevel_veneer_width_rib(bevel_veneers: tuple[BevelVeneer, ...]) -> Mm:
    """Width of the veneer to buy or saw for the ribs' bevel.

    Method: its blank's; not known where there is none.
    Source: common practice.
    """
    return next((each.width for each in bevel_veneers if each.name == "rib"), nan)
