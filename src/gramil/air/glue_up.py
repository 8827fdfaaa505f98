"""A glue-up as the maker asks about it: which wood on which, and its size; usual values stand in for what is not
said.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from gramil.air.air_of_places import Places
from gramil.air.if_glued import Case, Sized, bound_board, braced_plate, bridge, neck_and_board
from gramil.air.pieces_now import PieceNow
from gramil.air.readiness import readiness, when
from gramil.quantities import Mm, Percent
from gramil.wood.air import Air
from gramil.wood.restraint import Plate
from gramil.wood.species import Species

What = Literal["top", "board", "bridge", "neck"]
WHAT: tuple[What, ...] = ("top", "board", "bridge", "neck")
"""A braced top, a board bound or not, a bridge on its top, a board to its neck."""


@dataclass(frozen=True)
class Usual:
    """Values used where nothing is given: woods (empty: must be given) and sizes in mm. Common practice."""

    wood: str
    other: str
    length: Mm
    width: Mm
    thickness: Mm


USUAL: Mapping[str, Usual] = {
    "top": Usual("Sitka spruce", "Sitka spruce", 500.0, 400.0, 2.8),
    "board": Usual("", "", 430.0, 56.0, 6.3),
    "bridge": Usual("Sitka spruce", "", 500.0, 400.0, 2.8),
    "neck": Usual("", "African mahogany", 430.0, 56.0, 6.3),
}
"""By what is glued; `other` is what it is glued to."""
OTHER_SIZES: Mapping[str, tuple[Mm, Mm, Mm]] = {"bridge": (150.0, 30.0, 9.0), "neck": (350.0, 50.0, 16.0)}
"""Length, width and thickness of what it is glued to: common practice."""
BRACE: tuple[Mm, Mm] = (8.0, 14.0)
SPACING, DOME = 90.0, 7620.0
"""Usual braces (width, height), from brace to brace, and radius of the dome (25 ft), mm: common practice."""


@dataclass(frozen=True)
class GlueUp:
    """Wood of a moisture (%) glued to other wood (None for a board alone); sizes mm, `dome` 0 is flat.

    `across` is whether a top's braces hold it across its grain near its widest part.
    """

    what: What
    wood: Species
    moisture: Percent
    other: Species | None = None
    other_moisture: Percent | None = None
    flatsawn: bool = False
    width: Mm | None = None
    thickness: Mm | None = None
    binding: Mm = 0.0
    brace: tuple[Mm, Mm] = BRACE
    spacing: Mm = SPACING
    dome: Mm = DOME
    across: bool = True


def case_of(up: GlueUp, airs: Sequence[Air]) -> Case:
    """What becomes of a glue-up in each of the airs that it meets later."""
    usual = USUAL[up.what]
    width, thickness = up.width or usual.width, up.thickness or usual.thickness
    board = Sized(up.wood, "tangential" if up.flatsawn else "radial", up.moisture, usual.length, width, thickness)
    if up.what == "board" or up.other is None:
        return bound_board(board, up.binding, airs)
    if up.what == "top":
        plate = Plate(up.wood, board.direction, thickness, up.other, *up.brace, up.spacing, up.dome)
        return braced_plate(plate, up.moisture, airs, up.across)
    moisture = up.moisture if up.other_moisture is None else up.other_moisture
    other = Sized(up.other, "radial", moisture, *OTHER_SIZES[up.what])
    return bridge(board, other, airs) if up.what == "bridge" else neck_and_board(board, other, airs)


def what_first(piece: PieceNow | None, places: Places, now: datetime, band: tuple[float, float]) -> str:
    """What brings the wood to a moisture at which it may be glued, and when, in a sentence; `band` in % of moisture."""
    if piece is None:
        said = f"{band[0]:.1f} to {band[1]:.1f} %"
        return f"Settle it in the air for gluing until it weighs the same for days: {said} of moisture."
    found = readiness(piece, places, now, band)
    if found.best is None:
        return "No place of the shop brings it there: change the air of one."
    if found.best.place == piece.place:
        return f"Left in the {found.best.place}: ready {when(found.best.ready, now)}."
    return f"Laid in the {found.best.place} now: ready {when(found.best.ready, now)}."
