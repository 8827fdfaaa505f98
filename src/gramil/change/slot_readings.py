"""Readback of cut slots: how far each is out, in mm and cents, what caused it, and what setting the nut would do.

The nut's own place is settled first: a nut end planed too far puts every slot out by the same amount, and none needs
to be cut again for it. So is the scale that the slots are really cut to, for which nut and saddle can be placed.
"""

from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.change.questioned import Reading
from gramil.change.slot_causes import Cause, likely_cause
from gramil.csv_text import named_rows
from gramil.faults import Fault, MakersFault
from gramil.graph import Figures
from gramil.measure import LengthUnit, read_length
from gramil.physics.arrays import FloatArray, floats
from gramil.physics.compensation import CENTS_PER_UNIT
from gramil.quantities import Cents, Count, Mm

READING = 0.01
"""How finely a caliper reads, in mm."""
SLOTTED = "slotted"
"""The operation that such readings judge."""
Verdict = Literal["good", "look again", "recut"]


@dataclass(frozen=True)
class SlotReading:
    """One slot: where it should be and was found, the error (mm, positive toward the bridge) and what it sounds like.

    `cents` is positive for sharp; `against_before` is the error of the step from the slot before it in the readings.
    `left` and `left_cents` are the errors that remain with nut and saddle placed for the slots as they are: the verdict
    is based on these. `explained` is how far the likely cause puts it out.
    """

    fret: Count
    wanted: Mm
    measured: Mm
    error: Mm
    cents: Cents
    against_before: Cents
    explained: Mm
    left: Mm
    left_cents: Cents
    verdict: Verdict


@dataclass(frozen=True)
class SlotsReadback:
    """All slots read back, and the likely cause.

    `nut_move` is how far the nut goes, positive toward the bridge; `saddle_move` how far the saddle goes, positive
    toward the tail; `scale_cut` is the scale that the slots are cut to, `scale` the one drawn; all are as drawn unless
    the cause calls for others. `before` and `after` are root mean squares of cents over all slots, before and after.
    """

    slots: tuple[SlotReading, ...]
    cause: Cause
    nut_move: Mm
    saddle_move: Mm
    scale: Mm
    scale_cut: Mm
    before: Cents
    after: Cents


def read_back(figures: Figures, frets: FloatArray, measured: FloatArray) -> SlotsReadback:
    """What caliper readings of slots mean; `frets` are numbers and `measured` mm from the zero line, of equal
    length.
    """
    rows = frets.astype(int)
    wanted, error = figures[n.fret_position][rows], measured - figures[n.fret_position][rows]
    slope, scale = figures[n.fret_cents_per_mm][rows], float(figures[n.scale_run])
    counted = (frets > 0) | bool(figures[n.scale_zero_fret])
    cause = _cause(frets, wanted, error, counted, scale)
    cents, longer = error * slope, 1 + cause.stretch
    nut, saddle = cause.offset, cause.stretch * scale
    left = error - (nut + cause.stretch * wanted) * counted
    sounds = left * slope / longer
    if cause.by_rule_of_18:
        nut, saddle, sounds = _nut_and_saddle(cents, wanted, scale)
        left = sounds / slope
    slots = _slots(
        figures,
        frets,
        wanted=wanted,
        measured=measured,
        error=error,
        cents=cents,
        against_before=np.diff(cents, prepend=0.0),
        explained=cause.explained,
        left=left,
        left_cents=sounds,
    )
    return SlotsReadback(slots, cause, nut, saddle, scale, scale * longer, _rms(cents), _rms(sounds))


def _slots(figures: Figures, frets: FloatArray, **columns: FloatArray) -> tuple[SlotReading, ...]:
    """Columns, one for each figure, turned into rows, one for each slot."""
    return tuple(
        SlotReading(
            fret=int(fret),
            verdict=_verdict(figures, float(columns["left"][row]), float(columns["left_cents"][row])),
            **{name: float(values[row]) for name, values in columns.items()},
        )
        for row, fret in enumerate(frets)
    )


def as_readings(found: SlotsReadback) -> list[Reading]:
    """Caliper readings of slots as readings to be questioned."""
    return [Reading(n.fret_position[each.fret].address, each.measured, of=SLOTTED) for each in found.slots]


def _cause(frets: FloatArray, wanted: FloatArray, error: FloatArray, counted: NDArray[np.bool_], scale: Mm) -> Cause:
    """The likely cause; a reading of 0 at the zero line, without a fret, is only where the caliper was set."""
    twelve = np.allclose(wanted, scale * (1 - 2 ** (-frets / 12)), atol=READING)
    found = likely_cause(frets[counted], wanted[counted], error[counted], scale if twelve else np.nan)
    explained = np.zeros_like(error)
    explained[counted] = found.explained
    return replace(found, explained=explained)


def _nut_and_saddle(cents: FloatArray, wanted: FloatArray, scale: Mm) -> tuple[Mm, Mm, FloatArray]:
    """Where nut (toward the bridge) and saddle (toward the tail) leave the least error, and the cents that they leave.

    The nut moves all frets alike, the saddle each in proportion to how far it sounds above the open string.
    """
    columns = CENTS_PER_UNIT / scale * np.stack([np.ones_like(wanted), wanted / (scale - wanted)], axis=1)
    moves = np.linalg.lstsq(columns, cents, rcond=None)[0]
    return float(moves[0]), float(moves[1]), floats(cents - columns @ moves)


def _verdict(figures: Figures, error: float, cents: float) -> Verdict:
    if abs(cents) > figures[n.limit_slot_error_cents]:
        return "recut"
    return "look again" if abs(error) > figures[n.limit_slot_position] + READING / 2 else "good"


def _rms(values: FloatArray) -> float:
    return float(np.sqrt((values**2).mean()))


def parse_slot_readings(text: str, file: str, unit: LengthUnit, last_fret: int) -> tuple[FloatArray, FloatArray]:
    """Fret numbers and positions (mm) from CSV text with columns `fret` and `position`, sorted by fret.

    Raises MakersFault with every fault: no such column, a fret that the board does not have or that comes twice, a
    position that cannot be read.
    """
    faults: list[Fault] = []
    found: dict[int, float] = {}
    for line, row in named_rows(text, file, ("fret", "position")):
        try:
            fret = _fret(row["fret"].strip(), last_fret, found)
            found[fret] = read_length(row["position"].strip(), unit)
        except ValueError as error:
            faults.append(Fault(line, "reading", str(error), "", "", file))
    if not faults and len(found) < 2:
        faults.append(Fault(None, "readings", "fewer than two slots were read", "", "Measure at least two slots", file))
    if faults:
        raise MakersFault(faults)
    frets = np.array(sorted(found), dtype=np.float64)
    return frets, np.array([found[int(fret)] for fret in frets])


def _fret(text: str, last_fret: int, found: dict[int, float]) -> int:
    if not text.isdecimal() or not 0 <= int(text) <= last_fret:
        raise ValueError(f"fret {text!r} is not one of 0 to {last_fret}")
    if int(text) in found:
        raise ValueError(f"fret {text} comes twice")
    return int(text)
