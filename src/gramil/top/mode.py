"""A mode of a solved plate, as it is told."""

from dataclasses import dataclass

from gramil.quantities import Hertz


@dataclass(frozen=True)
class Mode:
    """One of a plate's modes: its frequency, how far off mesh and model may be, between which it lies by the wood's
    spread, and how many parts of it move as one (0: not counted).
    """

    name: str
    hertz: Hertz
    within: Hertz
    least: Hertz
    most: Hertz
    parts: int = 0
