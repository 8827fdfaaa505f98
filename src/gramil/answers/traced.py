"""What was traced from pictures, as answers."""

from dataclasses import dataclass

from gramil.measure import LengthUnit
from gramil.photographs.keys import about_pictures, body_keys
from gramil.photographs.plan import Grounds, TracedPlan


@dataclass(frozen=True)
class OutlineTold:
    """An outline: half of it as points along and across (mm) with corners counted from 1, its length and width (mm), by
    how much its halves differed, two standard deviations of a place, and the lines of a description.
    """

    points: tuple[tuple[float, float], ...]
    corners: tuple[int, ...]
    length: float
    widest: float
    asymmetry: float
    unsure: float
    keys: str


@dataclass(frozen=True)
class Trace:
    """What pictures of a plan say: sentences about them, and the outline, `null` where no points were given."""

    says: tuple[str, ...]
    outline: OutlineTold | None


def trace_told(ground: Grounds, found: TracedPlan | None, unit: LengthUnit) -> Trace:
    """What was traced; the description's lines in `unit`."""
    says = tuple(about_pictures(ground))
    if found is None:
        return Trace(says, None)
    line = found.outline
    keys = "\n".join(body_keys(line, unit)) + "\n"
    told = OutlineTold(line.points, line.corners, line.length, line.widest, line.asymmetry, line.unsure, keys)
    return Trace((*says, *(f"{each}." for each in found.told)), told)
