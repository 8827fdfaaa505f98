"""A piece of wood for the moisture model: its kind, its thickness, which faces are open, and how fast it follows the
air.

The speed is known only as a range: published diffusion coefficients differ, those of dense hardwoods are derived from
others, and moving air carries off moisture faster than still air. So each answer is worked out at three paces.
"""

import math
from dataclasses import dataclass
from typing import Literal

from gramil.decimals import signed
from gramil.physics.diffusion import SEALED, Layer, Sheet
from gramil.wood.species import PublishedRange, Species, Transport, transport_of

Pace = Literal["slow", "likely", "fast"]
PACES: tuple[Pace, Pace, Pace] = ("slow", "likely", "fast")
Face = Literal["open", "sealed"]


@dataclass(frozen=True)
class Piece:
    """A piece: thickness mm, its two faces, its length along the grain (mm) if the end grain is open.

    speed and offset were learnt from weighing: a factor on how fast it follows the air, and the percent of moisture
    that it comes to above the tables' value. spread is the factor, up and down, within which speed is then known.
    Raises ValueError for a thickness, length or speed that is not above 0.
    """

    species: Species
    thickness: float
    faces: tuple[Face, Face] = ("open", "open")
    open_length: float | None = None
    speed: float = 1.0
    offset: float = 0.0
    spread: float | None = None

    def __post_init__(self) -> None:
        if min(self.thickness, self.speed, self.open_length or 1.0) <= 0:
            raise ValueError("a piece has a thickness, a length and a speed above 0")

    @property
    def path(self) -> float:
        """The effective thickness (mm) for moisture: doubled if one face is sealed."""
        return self.thickness * (2.0 if "sealed" in self.faces else 1.0)


def sheet_of(piece: Piece, pace: Pace) -> Sheet:
    """The piece as a sheet of one layer, at a pace: mm2/s and mm/s."""
    transport = transport_of(piece.species.group)
    across = _at(transport.diffusion, pace, piece) * _end_grain(piece, transport, pace)
    surface = _at(transport.surface, pace, piece)
    first, last = (SEALED if face == "sealed" else surface for face in piece.faces)
    return Sheet((Layer(piece.thickness, across),), first, last)


def end_grain_factor(path: float, length: float, along: float) -> float:
    """How many times faster a piece with open ends settles than by its faces alone.

    path is the thickness between open faces and length that between open ends (mm); along is how many times faster
    moisture runs along the grain. Formula: 1 + along (path/length)2: the slowest modes of the two directions, whose
    rates add, since the solution for a block is the product of those for its directions (Newman 1931, from memory).
    """
    return 1.0 + along * (path / length) ** 2


def assumptions_of(piece: Piece) -> tuple[str, ...]:
    """The assumptions about how fast the piece follows the air, in words."""
    transport = transport_of(piece.species.group)
    diffusion = transport.diffusion
    words = [
        f"diffusion {diffusion.slow.value / 1e6:.2g} to {diffusion.fast.value / 1e6:.2g} m2/s for {piece.species.group}"
        f" ({diffusion.slow.flag}, {diffusion.fast.flag})",
        f"surface {transport.surface.slow.value / 1e3:.2g} to {transport.surface.fast.value / 1e3:.2g} m/s"
        f" ({transport.surface.slow.flag})",
    ]
    if piece.open_length:
        words.append(f"open ends {piece.open_length:g} mm apart")
    if piece.spread is not None:
        words.append(f"weighed: {piece.speed:.2g} times the likely speed, {signed(piece.offset, 1)} % moisture")
    return tuple(words)


def _at(known: PublishedRange, pace: Pace, piece: Piece) -> float:
    """A figure at a pace; once weighed, the likely one times the piece's speed, up and down by its spread."""
    likely = math.sqrt(known.slow.value * known.fast.value)
    if piece.spread is not None:
        step = {"slow": 1.0 / piece.spread, "likely": 1.0, "fast": piece.spread}[pace]
        return likely * piece.speed * step
    return piece.speed * {"slow": known.slow.value, "likely": likely, "fast": known.fast.value}[pace]


def _end_grain(piece: Piece, transport: Transport, pace: Pace) -> float:
    if piece.open_length is None or piece.faces == ("sealed", "sealed"):
        return 1.0
    slow, fast = transport.along.slow.value, transport.along.fast.value
    along = {"slow": slow, "likely": math.sqrt(slow * fast), "fast": fast}[pace]
    return end_grain_factor(piece.path, piece.open_length, along)
