"""Holes in the top as drawn: on the plans, and as templates to cut by those that are not round.

Plans are in body coordinates: x from the body's edge at the neck, treble up as seen from the face.
"""

from collections.abc import Iterator
from dataclasses import replace

from gramil import names as n
from gramil.description.body.opening_tables import SOUNDHOLE
from gramil.drawings.kerf import Machine, cut_by
from gramil.drawings.marks import Circle, Drawing, Label, Line, Mark, Marks, Polyline, shifted
from gramil.drawings.opening_templates import APART, templates
from gramil.drawings.pen import handed
from gramil.parts.body_records import Ring
from gramil.parts.opening_records import Opening, OpeningGap
from gramil.quantities import Mm

OWNS = ("drawing_", "piece_")

CROSS = 6.0
"""Half the length of the cross at a hole's middle, in mm."""
ROOMY = 60.0
"""In mm: a hole of this size or more has its sizes inside it."""
ROW = 4.5
"""From one line of its sizes to the next, in mm."""


def piece_openings(piece_soundhole: Marks, piece_further_holes: Marks) -> Marks:
    """Every hole in the top with its rings."""
    return (*piece_soundhole, *piece_further_holes)


def piece_soundhole(opening_main: tuple[Opening, ...], rosette_rings: tuple[Ring, ...]) -> Marks:
    """The soundhole with a cross at its centre, and both edges of each ring; the top's grain ends at the widest."""
    return tuple(mark for each in opening_main for mark in _hole(each, rosette_rings))


def piece_further_holes(opening_further: tuple[Opening, ...], rosette_rings: tuple[Ring, ...]) -> Marks:
    """The holes in the top besides the soundhole, each with a cross and its rings, and how far it lies aside."""
    return tuple(mark for each in opening_further for mark in _hole(each, rosette_rings))


def _hole(hole: Opening, rings: tuple[Ring, ...]) -> Iterator[Mark]:
    edge = _line(hole, 0.0, "outline")
    own = [ring for ring in rings if ring.round == hole.name]
    round_it = [_line(hole, (width - hole.across) / 2, "markers") for ring in own for width in (ring.inner, ring.outer)]
    widest = max([0, *range(1, len(own) + 1)], key=lambda row: own[row - 1].outer if row else 0.0) * 2
    for row, mark in enumerate((edge, *round_it)):
        yield replace(mark, hatch="left clear") if row == widest else mark
    x, y = hole.centre
    yield Line((x, y - CROSS), (x, y + CROSS), "centreline")
    if y:
        yield Line((x - CROSS, y), (x + CROSS, y), "centreline")


def _line(hole: Opening, outward: Mm, layer: str) -> Circle | Polyline:
    """The hole's edge, or a line round it at the same distance everywhere."""
    if hole.hole.is_round:
        return Circle(hole.centre, hole.along / 2 + outward, layer)
    return Polyline(hole.parallel(outward), layer, closed=True)


def piece_openings_sizes(opening_list: tuple[Opening, ...], opening_reach: tuple[OpeningGap, ...]) -> Marks:
    """The sizes of holes that are not round or lie off the centreline, in them or, where they are small, over them."""
    reach = {each.name: each.room for each in opening_reach}
    return tuple(mark for each in opening_list for mark in _sizes(each, reach.get(each.name, 0.0)))


def _sizes(hole: Opening, reach: Mm) -> Iterator[Mark]:
    at = n.opening_list[hole.name]
    told = [] if hole.hole.is_round and not (hole.y and hole.name != SOUNDHOLE) else [("long ", at.along)]
    told += [] if hole.hole.is_round else [("wide ", at.across)]
    told += [("aside ", at.y)] if hole.y else []
    inside = min(hole.along, hole.across) >= ROOMY
    first = CROSS + 4.0 + ROW * (len(told) - 1) if inside else max(y for _, y in hole.parallel(reach)) - hole.y + 3.0
    for row, (before, figure) in enumerate(told):
        down = row if inside else row - len(told) + 1
        yield Label((hole.x, hole.y + first - ROW * down), figure, before, height=2.6, anchor="middle")


def drawing_openings(
    instrument_name: str,
    instrument_handed: str,
    opening_list: tuple[Opening, ...],
    opening_shaped: tuple[str, ...],
    rosette_rings: tuple[Ring, ...],
    piece_router: Machine,
) -> Drawing:
    """Templates for the holes that are not round: a window for each hole and for each channel's outer edge, and the
    piece that stands in that for its inner edge; no marks where every hole is round.

    Used at: rosette_let_in, openings_cut.
    """
    title = f"{instrument_name}, templates for the openings"
    marks: list[Mark] = []
    left = 0.0
    for hole in opening_list:
        if hole.name in opening_shaped:
            own = [ring for ring in rosette_rings if ring.round == hole.name]
            for piece, wide in templates(instrument_name, hole, own):
                marks += [shifted(mark, left + wide / 2, 0.0) for mark in piece]
                left += wide + APART
    drawing = Drawing("openings", title, "the face", tuple(marks), pieces_apart=True)
    return cut_by(piece_router, handed(drawing, instrument_handed))
