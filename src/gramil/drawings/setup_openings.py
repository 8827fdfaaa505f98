"""The templates for holes that no circle cutter cuts, small and by name, for the sheet of the openings."""

from collections.abc import Iterator, Sequence

from gramil import names as n
from gramil.drawings.marks import Drawing, Label, Mark, Marks, Polyline, Words, shifted
from gramil.drawings.opening_templates import APART, templates
from gramil.drawings.pen import handed
from gramil.parts.body_records import Ring
from gramil.parts.opening_records import Opening
from gramil.reference import Ref

OWNS = ("drawing_",)

ROW, HIGH = 13.0, 7.5
"""From one line under a template to the next, and the height of its letters, in mm: it is shown small."""


def drawing_setup_openings(
    instrument_name: str,
    instrument_handed: str,
    opening_list: tuple[Opening, ...],
    opening_shaped: tuple[str, ...],
    rosette_rings: tuple[Ring, ...],
) -> Drawing:
    """Each window and island with its name and its size under it; no marks where every hole is round."""
    marks: list[Mark] = []
    left = 0.0
    for hole in opening_list:
        if hole.name in opening_shaped:
            rings = [(row, ring) for row, ring in enumerate(rosette_rings, 1) if ring.round == hole.name]
            drawn = templates(instrument_name, hole, [ring for _, ring in rings])
            for (piece, wide), under in zip(drawn, _under(hole, rings), strict=True):
                named = (*_bare(piece), *_below(piece, under))
                marks += [shifted(mark, left + wide / 2, 0.0) for mark in named]
                left += wide + APART
    title = f"{instrument_name}, templates for the openings"
    return handed(Drawing("setup-openings", title, "the face", tuple(marks)), instrument_handed)


Under = tuple[str, tuple[Label, ...]]
"""A template's name, and its sizes."""


def _under(hole: Opening, rings: Sequence[tuple[int, Ring]]) -> Iterator[Under]:
    at = n.opening_list[hole.name]
    yield f"window of the {hole.name}", (_size(at.along, "long "), _size(at.across, "wide "))
    for row, ring in rings:
        yield f"window of the {ring.name}", (_size(n.rosette_rings[row].outer, "across "),)
        yield f"island of the {ring.name}", (_size(n.rosette_rings[row].inner, "across "),)


def _size(figure: Ref[float], before: str) -> Label:
    return Label((0.0, 0.0), figure, before, height=HIGH, anchor="middle")


def _bare(piece: Sequence[Mark]) -> Marks:
    """A template without what is written beside it at its true size."""
    return tuple(mark for mark in piece if not isinstance(mark, Words))


def _below(piece: Sequence[Mark], under: Under) -> Marks:
    name, sizes = under
    low = min(mark.box[1] for mark in piece if isinstance(mark, Polyline)) - ROW
    lines: Marks = (Words((0.0, 0.0), name, HIGH, anchor="middle"), *sizes)
    return tuple(shifted(line, 0.0, low - ROW * row) for row, line in enumerate(lines))
