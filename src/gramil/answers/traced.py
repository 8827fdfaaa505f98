"""What was traced from pictures, as answers."""

from dataclasses import dataclass

import numpy as np

from gramil.measure import LengthUnit
from gramil.photographs.keys import about_pictures, body_keys
from gramil.photographs.plan import Grounds, TracedPlan
from gramil.photographs.slots import SlotsSeen


@dataclass(frozen=True)
class OutlineAnswer:
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
class SlotsAnswer:
    """A board's slots seen roughly: from the first on how far toward the bridge each lies from where it is drawn (mm,
    `null` where none is seen), by what share their scale is longer, and two standard deviations of both.
    """

    off: tuple[float | None, ...]
    longer: float
    within: float
    longer_within: float


@dataclass(frozen=True)
class Trace:
    """What pictures say: sentences about them, the outline of a plan and the slots of a board, `null` where they were
    not asked for.
    """

    says: tuple[str, ...]
    outline: OutlineAnswer | None
    slots: SlotsAnswer | None = None


def trace_answer(ground: Grounds, found: TracedPlan | None, unit: LengthUnit) -> Trace:
    """What was traced; the description's lines in `unit`."""
    says = tuple(about_pictures(ground))
    if found is None:
        return Trace(says, None)
    line = found.outline
    keys = "\n".join(body_keys(line, unit)) + "\n"
    told = OutlineAnswer(line.points, line.corners, line.length, line.widest, line.asymmetry, line.unsure, keys)
    return Trace((*says, *(f"{each}." for each in found.told)), told)


def slots_answer(ground: Grounds, found: SlotsSeen) -> Trace:
    """What a board's slots say."""
    off = tuple(None if np.isnan(each) else float(each) for each in found.off)
    told = SlotsAnswer(off, found.longer, found.within, found.longer_within)
    return Trace(tuple(about_pictures(ground)), None, told)
