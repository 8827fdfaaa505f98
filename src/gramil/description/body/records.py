"""The records that a body's base values are made of: braces and rings as asked for, before anything is placed."""

from dataclasses import dataclass

from gramil.quantities import Mm

Point = tuple[float, float]


@dataclass(frozen=True)
class BraceAsked:
    """A brace as described. `start` and `stop` are [along from what it is held to, across, treble positive], in mm.

    `start_at` and `stop_at`: "linings" runs on along the line, "point" ends there, the
    name of a brace is what the line ends against. `twin` names its mirror image, or
    is empty. `ends` is "tapered", "scalloped", "square" or "tucked"; `crosses` names braces it is notched into.
    """

    name: str
    plate: str
    held_to: str
    start: Point
    stop: Point
    start_at: str
    stop_at: str
    width: Mm
    height: Mm
    ends: str
    end_height: Mm
    end_length: Mm
    wood: str
    crosses: tuple[str, ...]
    twin: str


@dataclass(frozen=True)
class RingAsked:
    """A ring round the soundhole: inner diameter, width, and the depth of its channel."""

    name: str
    inner: Mm
    width: Mm
    depth: Mm
