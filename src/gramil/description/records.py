"""The records that base values are made of: what the shop owns, and stations along the board.

They are what the parts read; what the maker writes is checked by the models in `instrument.py` and `shop/tables.py`.
"""

import math
from dataclasses import dataclass, fields
from typing import Any

from gramil.quantities import Count, Mm, PerMm, Ratio
from gramil.wood.wood_words import serves_as


@dataclass(frozen=True)
class Station:
    """A place along the board: `beyond` mm past fret number `fret` (which may be fractional; 0 is the zero line)."""

    fret: Ratio
    beyond: Mm


@dataclass(frozen=True)
class Wire:
    """Fret wire as measured. `bead_thickness` is over the small beads on the tang; `on_hand` a length."""

    name: str
    crown_width: Mm
    crown_height: Mm
    tang_thickness: Mm
    bead_thickness: Mm
    tang_depth: Mm
    on_hand: Mm


@dataclass(frozen=True)
class Saw:
    """A saw for slots. `cuts` is "from above" or "face down"; `rides_arch`: its stop follows an arched face."""

    name: str
    kerf: Mm
    cuts: str
    rides_arch: bool
    what: str


@dataclass(frozen=True)
class Cutter:
    """A bearing-guided router cutter and the bearings that fit it, by diameter."""

    name: str
    diameter: Mm
    bearings: tuple[Mm, ...]


@dataclass(frozen=True)
class Block:
    """A sanding block: hollowed to `curvature` (1/R; 0 is flat)."""

    name: str
    curvature: PerMm


@dataclass(frozen=True)
class IndexTemplate:
    """An index template on hand: made for a scale, with notches 0 to `frets` for a pin."""

    name: str
    scale: Mm
    frets: Count
    pin: Mm


@dataclass(frozen=True)
class Jig:
    """A jig with its constant. `purpose` is "taper", "slots" or another operation; `checked` an ISO date or empty."""

    name: str
    purpose: str
    constant: Mm
    checked: str


@dataclass(frozen=True)
class PieceOfWood:
    """What every piece of wood is: what is written on it, its kind, and its sizes, `length` along the grain."""

    name: str
    wood: str
    length: Mm
    width: Mm
    thickness: Mm


SIZES = ("length", "width", "thickness")
"""The sizes of a piece of wood."""


def piece_of_wood(row: object) -> dict[str, Any]:
    """The fields of `PieceOfWood` in a row or a record that has them; a size that is not noted is not a number."""
    found = {field.name: getattr(row, field.name) for field in fields(PieceOfWood)}
    return {name: math.nan if value is None else value for name, value in found.items()}


@dataclass(frozen=True)
class Blank(PieceOfWood):
    """A piece of wood in stock, `count` of them alike."""

    count: Count


@dataclass(frozen=True)
class KeptPiece(PieceOfWood):
    """A piece of wood that is no blank, and no other instrument's: the part it is to become ("other" for any), and
    whether it is kept for this instrument. A size that is not noted is not a number.
    """

    part: str
    kept: bool

    @property
    def whole(self) -> bool:
        """Whether all of its sizes are noted."""
        return not any(math.isnan(getattr(self, size)) for size in SIZES)

    def may_become(self, part: str) -> bool:
        """Whether it may be used for a part."""
        return self.part in ("other", part)


def stock_for(part: str, blanks: tuple[Blank, ...], kept: tuple[KeptPiece, ...]) -> tuple[Blank, ...]:
    """Every piece on hand that may become a part, of those with all sizes noted."""
    sized = (each for each in kept if each.whole and each.may_become(part))
    return (*blanks, *(Blank(each.name, each.wood, each.length, each.width, each.thickness, 1) for each in sized))


def not_measured(part: str, wood: str, kept: tuple[KeptPiece, ...]) -> str:
    """The name of a piece of a wood that is kept for this very part without all of its sizes; empty if there is
    none.
    """
    own = (each for each in kept if each.kept and each.part == part and serves_as(each.wood, wood))
    return next((each.name for each in own if not each.whole), "")


@dataclass(frozen=True)
class Stuff:
    """What a part is made of, by the part's name; empty if there is no such part.

    `dust` is what its dust does, `permit` the line to print if it is protected or may be, `standing` the state of its
    trade ("listed", "ask", "not known", "not listed", "not said", or what it is if not wood), and `doubt` why
    it is assumed to be that material.
    """

    name: str
    wood: str
    dust: str
    permit: str
    standing: str
    doubt: str
