"""The woods of the solved top: as its own pieces were tapped or pushed, else a handbook's."""

from gramil.description.wood.timbers import TimberKnown, Tried
from gramil.quantities import Percent
from gramil.top.tapped import TriedWood, fitted

OWNS = ("fitted_",)


def fitted_pieces(timber_tried: tuple[Tried, ...], swell_moisture_made: Percent) -> tuple[TriedWood, ...]:
    """Pieces for this instrument that were tapped or pushed, as what they come to, in the air that gluing aims for.

    Method: a board by a fit of the plate itself to its notes, a bar by its note or its deflection, shear and all.
    Source: McIntyre and Woodhouse's quick formulas to begin with; then the plate model.
    """
    return tuple(fitted(each, swell_moisture_made) for each in timber_tried)


def fitted_top(
    timber_top: TimberKnown, timber_tried: tuple[Tried, ...], fitted_pieces: tuple[TriedWood, ...]
) -> TimberKnown:
    """The top's wood: as the last piece for it was tapped, else as its kind in a handbook.

    Method: the last of the pieces that told anything.
    Source: the piece itself.
    """
    return _last(timber_top, "top", timber_tried, fitted_pieces)


def fitted_braces(
    timber_braces: TimberKnown, timber_tried: tuple[Tried, ...], fitted_pieces: tuple[TriedWood, ...]
) -> TimberKnown:
    """The braces' wood: as the last piece for them was tapped or pushed, else as its kind in a handbook.

    Method: the last of the pieces that told anything.
    Source: the piece itself.
    """
    return _last(timber_braces, "brace", timber_tried, fitted_pieces)


def _last(usual: TimberKnown, part: str, tried: tuple[Tried, ...], pieces: tuple[TriedWood, ...]) -> TimberKnown:
    found = [each.known for row, each in zip(tried, pieces, strict=True) if row.part == part and each.known.measured]
    return found[-1] if found else usual
