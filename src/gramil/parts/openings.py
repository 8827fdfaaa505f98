"""Holes in the top in their places, and the room that each keeps to braces, linings, blocks, board and other holes.

The soundhole is the first of them; its place and sizes are figures of their own, which measurements may replace.
"""

import math
from collections.abc import Callable, Iterable
from dataclasses import replace

from gramil.description.body.opening_tables import SOUNDHOLE
from gramil.description.body.records import OpeningAsked
from gramil.description.records import Cutter
from gramil.parts.body_records import BodyBlock, Brace, PlateShape, Ring, Shell, Zeros
from gramil.parts.opening_records import Opening, OpeningGap, nearest_gap
from gramil.physics.air_resonance import effective_depth
from gramil.quantities import Mm
from gramil.shapes.hole import Hole
from gramil.shapes.outline import Outline
from gramil.shapes.quadrilateral import Quadrilateral
from gramil.shapes.room_between import room_between, room_within

OWNS = ("opening_",)

RIM = 0.05
"""In mm: the body's edge is taken in chords that lie this close to it."""


def opening_main(
    openings_asked: tuple[OpeningAsked, ...],
    soundhole_centre: Mm,
    soundhole_wide: Mm,
    soundhole_long: Mm,
    top_thickness: Mm,
) -> tuple[Opening, ...]:
    """The soundhole in its place; an empty list without one.

    Method: its centre and sizes as they are figures, its shape as described.
    Source: the maker's own choice.
    """
    return tuple(
        _placed(each, soundhole_centre, replace(each.hole, along=soundhole_long, across=soundhole_wide), top_thickness)
        for each in openings_asked
        if each.name == SOUNDHOLE
    )


def opening_further(
    openings_asked: tuple[OpeningAsked, ...], body_zeros: Zeros, top_thickness: Mm
) -> tuple[Opening, ...]:
    """The holes in the top besides the soundhole, in their places.

    Method: each its own distance from what it is held to.
    Source: the maker's own choice.
    """
    return tuple(
        _placed(each, each.centre + body_zeros.of(each.held_to), each.hole, top_thickness)
        for each in openings_asked
        if each.name != SOUNDHOLE
    )


def _placed(asked: OpeningAsked, x: Mm, hole: Hole, thickness: Mm) -> Opening:
    return Opening(
        asked.name,
        asked.held_to,
        hole.shape,
        x,
        asked.aside,
        hole.diameter,
        hole.along,
        hole.across,
        0.0 if hole.is_round else asked.lean,
        hole.area,
        hole.edge,
        hole.tightest,
        hole.hydraulic_radius,
        effective_depth(thickness, hole.hydraulic_radius),
        hole,
    )


def opening_list(opening_main: tuple[Opening, ...], opening_further: tuple[Opening, ...]) -> tuple[Opening, ...]:
    """Every hole in the top, the soundhole first.

    Source: the maker's own choice.
    """
    return (*opening_main, *opening_further)


def opening_shaped(opening_list: tuple[Opening, ...]) -> tuple[str, ...]:
    """Names of the holes that no circle cutter cuts: those that are not round.

    Method: by their shape.
    Source: common practice.
    """
    return tuple(each.name for each in opening_list if not each.hole.is_round)


def opening_to_braces(opening_further: tuple[Opening, ...], brace_list: tuple[Brace, ...]) -> tuple[OpeningGap, ...]:
    """From each further hole's edge to the nearest brace of the top; negative where one would be cut through.

    Method: to each brace's footprint; the least.
    Source: plane geometry.
    """
    top = [each for each in brace_list if each.plate == "top" and each.length > 0]
    return _gaps(opening_further, lambda hole: ((each.name, hole.room_to(each.footprint)) for each in top))


def opening_to_linings(opening_list: tuple[Opening, ...], body_shells: tuple[Shell, ...]) -> tuple[OpeningGap, ...]:
    """From each hole's edge to the linings; negative where it runs into them.

    Method: from places along the hole's edge to the line inside the linings; the least.
    Source: plane geometry.
    """
    rings = [shell.lined.ring[:-1] for shell in body_shells]
    return _gaps(opening_list, lambda hole: (("linings", room_within(hole.outline, ring)) for ring in rings))


def opening_to_blocks(opening_list: tuple[Opening, ...], body_blocks: tuple[BodyBlock, ...]) -> tuple[OpeningGap, ...]:
    """From each hole's edge to the nearer of the blocks; negative where it lies over one.

    Method: to each block's footprint; the least.
    Source: plane geometry.
    """
    return _gaps(opening_list, lambda hole: ((each.name, hole.room_to(each.corners)) for each in body_blocks))


def opening_to_board(
    opening_list: tuple[Opening, ...], soundhole_from_board: Mm, board_outline: Quadrilateral, body_edge: Mm
) -> tuple[OpeningGap, ...]:
    """From a hole's edge to the board's tongue on the top; of a soundhole only where it lies beside the centreline.

    Method: to the board's footprint. A soundhole on the centreline has its distance from the board's end.
    Source: plane geometry.
    """
    board = tuple((x - body_edge, y) for x, y in board_outline.corners)
    told = not math.isnan(soundhole_from_board)
    holes = tuple(each for each in opening_list if not (told and each.name == SOUNDHOLE))
    return _gaps(holes, lambda hole: (("board", hole.room_to(board)),))


def opening_to_plate(opening_list: tuple[Opening, ...], plate_shapes: tuple[PlateShape, ...]) -> tuple[OpeningGap, ...]:
    """From each hole's edge to the bridge plate; negative where they run into each other.

    Method: to the plate's footprint.
    Source: plane geometry.
    """
    return _gaps(opening_list, lambda hole: ((each.name, hole.room_to(each.corners)) for each in plate_shapes))


def opening_reach(opening_list: tuple[Opening, ...], rosette_rings: tuple[Ring, ...]) -> tuple[OpeningGap, ...]:
    """How far each hole's outermost ring reaches past its edge; a hole without rings is left out.

    Method: half of what the ring's outer size is more than the hole's.
    Source: plane geometry.
    """
    sizes = ((each, [ring.outer for ring in rosette_rings if ring.round == each.name]) for each in opening_list)
    return tuple(OpeningGap(each.name, "ring", (max(outer) - each.across) / 2) for each, outer in sizes if outer)


def opening_to_others(
    opening_list: tuple[Opening, ...], opening_reach: tuple[OpeningGap, ...]
) -> tuple[OpeningGap, ...]:
    """From each hole's outermost ring, or its edge, to the nearest other hole's; negative where they overlap.

    Method: between the outermost lines of every two; each two are told once, at the later of them.
    Source: plane geometry.
    """
    reach = {each.name: each.room for each in opening_reach}
    lines = {each.name: each.parallel(reach.get(each.name, 0.0)) for each in opening_list}
    names = tuple(lines)
    return tuple(
        gap
        for row, name in enumerate(names)
        for gap in nearest_gap(name, ((other, room_between(lines[name], lines[other])) for other in names[:row]))
    )


def opening_to_edge(
    opening_list: tuple[Opening, ...], opening_reach: tuple[OpeningGap, ...], body_outlines: tuple[Outline, ...]
) -> tuple[OpeningGap, ...]:
    """From each hole's outermost ring to the body's edge; a hole without rings is left out.

    Method: from places along the ring's outer line to the outline in chords; the least.
    Source: plane geometry.
    """
    reach = {each.name: each.room for each in opening_reach}
    rims = [outline.polyline(RIM) for outline in body_outlines]
    ringed = tuple(each for each in opening_list if each.name in reach)
    return _gaps(ringed, lambda hole: (("edge", room_within(hole.parallel(reach[hole.name]), rim)) for rim in rims))


def _gaps(holes: tuple[Opening, ...], rooms: Callable[[Opening], Iterable[tuple[str, Mm]]]) -> tuple[OpeningGap, ...]:
    return tuple(gap for hole in holes for gap in nearest_gap(hole.name, rooms(hole)))


def opening_cutter(shop_cutters: tuple[Cutter, ...]) -> Mm:
    """Diameter of the thinnest cutter in the shop that follows a template by its bearing; not known without one.

    Method: the least of those listed with a bearing.
    Source: common practice.
    """
    return min((each.diameter for each in shop_cutters), default=math.nan)


def opening_cutter_radius(opening_cutter: Mm) -> Mm:
    """The tightest hollow corner that it leaves: half its diameter.

    Source: plane geometry.
    """
    return opening_cutter / 2
