"""What a balance tells about a piece's moisture, and about how fast it follows the air.

A weight and the dry mass give the true mean moisture, whatever any table says. Several weighings while the piece dries
or takes up water show how fast it is and where it is heading; both are then used for this piece.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime

import numpy as np

from gramil.faults import Fault, MakersFault
from gramil.physics.arrays import FloatArray, floats
from gramil.physics.diffusion import course, modes_of
from gramil.wood.piece import Piece, sheet_of
from gramil.wood.stays import Kept, Stay, common_times, drawn_to

SPEEDS = 2.0 ** (np.arange(-12, 13) / 4.0)
"""Speeds that are tried: an eighth to eight times the likely one."""
LIKELY_OFFSET = 1.0
"""Percent of moisture by which a piece may well differ from the tables: kinds of wood, and whether it dries or wets."""
LIKELY_SPEED = 3.0
"""Factor by which its speed may well differ from the likely one. Both are assumptions, and weigh little beside three
weighings over a good part of a change."""


@dataclass(frozen=True)
class Weighing:
    """The mass (g) of a piece at a moment."""

    moment: datetime
    mass: float


def dry_mass_from(mass: float, moisture: float) -> float:
    """Oven-dry mass (g) of a piece that weighs `mass` at a known moisture content (%)."""
    return mass / (1.0 + moisture / 100.0)


def moisture_by_weight(mass: float, dry_mass: float) -> float:
    """Moisture content (%): 100 (mass - dry mass) / dry mass. Wood Handbook, FPL-GTR-282, 2021, equation 4-2.

    Raises MakersFault for a piece lighter than when dry, or more than a third water: a wrong weight, or not seasoned.
    """
    moisture = 100.0 * (mass - dry_mass) / dry_mass if dry_mass > 0 else math.nan
    if not -0.5 <= moisture <= 35.0:  # half a per cent for the balance, and what is over a third is green wood
        what = f"{mass:g} g with a dry mass of {dry_mass:g} g is {moisture:.1f} % moisture"
        raise MakersFault.of(what, "seasoned wood holds 4 to 20 %", "check both weights, and their units")
    return moisture


def calibrated(piece: Piece, kept: Kept, weighings: Sequence[Weighing], dry_mass: float, balance: float) -> Piece:
    """The piece with the speed and offset that fit its weighings best.

    kept: where it lay, from the first weighing or earlier. balance: how finely it was weighed (g). It is taken to be
    even through its thickness at the first weighing. The best speed and offset are those that miss the weighings
    least, in units of the balance, with a mild preference for the tables (LIKELY_OFFSET, LIKELY_SPEED).
    Raises MakersFault for fewer than two weighings, or if it is not known where the piece lay at one of them.
    """
    ordered = sorted(weighings, key=lambda weighing: weighing.moment)
    _check(ordered, kept)
    moistures = [moisture_by_weight(weighing.mass, dry_mass) for weighing in ordered]
    plain, shift = _responses(replace(piece, speed=1.0, offset=0.0, spread=None), kept, ordered, moistures[0])
    missing = floats(moistures[1:])[:, None] - plain
    fineness = max(100.0 * balance / dry_mass, 0.02)
    offsets, costs = _best_offsets(missing, shift, fineness)
    best, spread = _best_speed(costs)
    near = int(np.argmin(np.abs(np.log(SPEEDS / best))))
    return replace(piece, speed=best, offset=float(offsets[near]), spread=spread)


def _check(ordered: Sequence[Weighing], kept: Kept) -> None:
    faults = []
    if len(ordered) < 2:
        faults.append(Fault(what="one weighing shows no speed", remedy="weigh again after some hours or days"))
    for weighing in ordered:
        if not kept.begins <= weighing.moment <= kept.stays[-1].ends:
            where = f"{weighing.moment:%Y-%m-%d %H:%M}"
            faults.append(Fault(where=where, what="weighed when it is not known where the piece lay"))
    if faults:
        raise MakersFault(faults)


def _responses(piece: Piece, kept: Kept, ordered: Sequence[Weighing], start: float) -> tuple[FloatArray, FloatArray]:
    """Mean moisture at each later weighing (rows) at each speed (columns), and what 1 % of offset adds to it."""
    begins = ordered[0].moment
    clipped = Kept(tuple(_from(stay, begins) for stay in kept.stays if stay.ends > begins), start)
    when, drawn = drawn_to(clipped, begins)
    weighed = floats([(weighing.moment - begins).total_seconds() for weighing in ordered])
    times = np.union1d(common_times([(when, drawn)], float(weighed[-1])), weighed)
    sheets = [modes_of(sheet_of(replace(piece, speed=speed), "likely")) for speed in SPEEDS.tolist()]
    pulls = np.repeat(np.column_stack([np.interp(times, when, drawn), np.ones(times.size)]), SPEEDS.size, axis=1)
    starts = [start] * SPEEDS.size + [0.0] * SPEEDS.size
    run = course(sheets * 2, starts, times, pulls)
    at = run.mean[np.searchsorted(times, weighed[1:])]
    return at[:, : SPEEDS.size], at[:, SPEEDS.size :]


def _from(stay: Stay, begins: datetime) -> Stay:
    return replace(stay, begins=max(stay.begins, begins))


def _best_offsets(missing: FloatArray, shift: FloatArray, fineness: float) -> tuple[FloatArray, FloatArray]:
    """For each speed the offset that fits best, and its cost."""
    weight = 1.0 / fineness**2
    offsets = weight * (shift * missing).sum(axis=0) / (weight * (shift**2).sum(axis=0) + 1.0 / LIKELY_OFFSET**2)
    left = weight * ((missing - shift * offsets) ** 2).sum(axis=0) + (offsets / LIKELY_OFFSET) ** 2
    return offsets, left + (np.log(SPEEDS) / math.log(LIKELY_SPEED)) ** 2


def _best_speed(costs: FloatArray) -> tuple[float, float]:
    """The speed of least cost and the factor within which it is known, by a parabola through the three lowest."""
    middle = int(np.clip(np.argmin(costs), 1, costs.size - 2))
    step = math.log(SPEEDS[1] / SPEEDS[0])
    before, here, after = costs[middle - 1 : middle + 2]
    bend = before - 2.0 * here + after
    aside = float(np.clip(0.5 * (before - after) / bend, -1.0, 1.0)) if bend > 0 else 0.0
    spread = math.exp(min(step * math.sqrt(2.0 / bend), math.log(LIKELY_SPEED))) if bend > 0 else LIKELY_SPEED
    return float(SPEEDS[middle]) * math.exp(step * aside), max(spread, 1.05)
