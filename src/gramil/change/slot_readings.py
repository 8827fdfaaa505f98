"""Readback of cut slots: how far each is out, in mm and cents, what caused it, and what moving the nut end would do.

The likely systematic causes are fitted and named: the readings' zero off the nut line, a stretched or shrunk scale,
one slip of the index after which every slot is out by the same. The simplest that explains the readings is taken.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.change.questioned import Reading
from gramil.csv_text import named_rows
from gramil.faults import Fault, MakersFault
from gramil.graph import Figures
from gramil.measure import LengthUnit, read_length
from gramil.quantities import Cents, Count, Mm, Ratio

READING = 0.01
"""How finely a caliper reads, in mm: causes smaller than this are not told apart."""
Verdict = Literal["good", "look again", "recut"]
Array = NDArray[np.float64]


@dataclass(frozen=True)
class SlotReading:
    """One slot: where it should be and was found, the error (mm, positive toward the bridge) and what it sounds like.

    `cents` is positive for sharp; `against_before` is the error of the step from the slot before it in the readings.
    """

    fret: Count
    wanted: Mm
    measured: Mm
    error: Mm
    cents: Cents
    against_before: Cents
    verdict: Verdict


@dataclass(frozen=True)
class Cause:
    """What explains the errors: `offset` of the zero, `stretch` as a part of the length, `slip` from `slip_fret` on.

    `left` is the root mean square, in mm, of what it does not explain.
    """

    name: str
    offset: Mm
    stretch: Ratio
    slip: Mm
    slip_fret: Count
    left: Mm


@dataclass(frozen=True)
class SlotsReadback:
    """All slots read back, the likely cause, and the move of the nut end that leaves the least error in cents.

    `nut_move` is positive toward the bridge; `before` and `after` are root mean squares of cents over all slots.
    """

    slots: tuple[SlotReading, ...]
    cause: Cause
    nut_move: Mm
    before: Cents
    after: Cents


def read_back(figures: Figures, frets: Array, measured: Array) -> SlotsReadback:
    """What caliper readings of slots mean; `frets` are numbers and `measured` mm from the zero line, alike long."""
    wanted = figures[n.fret_position][frets.astype(int)]
    slope = figures[n.fret_cents_per_mm][frets.astype(int)]
    error = measured - wanted
    cents = error * slope
    move = float((slope**2 * error).sum() / (slope**2).sum())
    limits = figures[n.limit_slot_position], figures[n.limit_slot_error_cents]
    steps = np.diff(cents, prepend=0.0)
    slots = tuple(
        SlotReading(
            int(frets[row]),
            float(wanted[row]),
            float(measured[row]),
            float(error[row]),
            float(cents[row]),
            float(steps[row]),
            _verdict(error[row], cents[row], *limits),
        )
        for row in range(len(frets))
    )
    return SlotsReadback(slots, likely_cause(frets, wanted, error), move, _rms(cents), _rms((error - move) * slope))


def as_readings(frets: Array, measured: Array) -> list[Reading]:
    """Caliper readings as such, to be questioned: the columns that `read_back` takes."""
    places = zip(frets.astype(int), measured.tolist(), strict=True)
    return [Reading(n.fret_position[fret].address, place) for fret, place in places]


def _verdict(error: float, cents: float, limit: float, limit_cents: float) -> Verdict:
    if abs(cents) > limit_cents:
        return "recut"
    return "look again" if abs(error) > limit + READING / 2 else "good"


def likely_cause(frets: Array, wanted: Array, error: Array) -> Cause:
    """The simplest cause that explains the errors, by the Bayesian information criterion.

    Each is a least-squares fit; a cause with more to choose must explain that much more. Source: G. Schwarz,
    "Estimating the dimension of a model", Annals of Statistics 6 (1978).
    """
    candidates = _candidates(frets, wanted)
    return min((_fitted(each, error) for each in candidates), key=lambda scored: scored[0])[1]


@dataclass(frozen=True)
class _Candidate:
    name: str
    columns: Array
    freedoms: int
    roles: tuple[str, ...]
    slip_fret: int = 0


def _candidates(frets: Array, wanted: Array) -> list[_Candidate]:
    one = np.ones_like(wanted)
    found = [
        _Candidate("nothing systematic", np.zeros((len(wanted), 0)), 0, ()),
        _Candidate("the zero is off the nut line", one[:, None], 1, ("offset",)),
        _Candidate("the scale is stretched or shrunk", wanted[:, None], 1, ("stretch",)),
        _Candidate(
            "the zero is off, and the scale is stretched or shrunk",
            np.stack([one, wanted], axis=1),
            2,
            ("offset", "stretch"),
        ),
    ]
    for row in range(1, len(frets)):
        step = (np.arange(len(frets)) >= row).astype(float)
        fret = int(frets[row])
        found.append(_Candidate("the index slipped once", step[:, None], 2, ("slip",), fret))
        found.append(
            _Candidate(
                "the zero is off, and the index slipped once",
                np.stack([one, step], axis=1),
                3,
                ("offset", "slip"),
                fret,
            )
        )
    return [each for each in found if each.freedoms < len(frets) - 1]


def _fitted(candidate: _Candidate, error: Array) -> tuple[float, Cause]:
    solution = np.linalg.lstsq(candidate.columns, error, rcond=None)[0]
    rest = error - candidate.columns @ solution
    count = len(error)
    score = count * np.log((rest**2).mean() + READING**2) + candidate.freedoms * np.log(count)
    parts = dict(zip(candidate.roles, map(float, solution), strict=True))
    cause = Cause(
        candidate.name,
        parts.get("offset", 0.0),
        parts.get("stretch", 0.0),
        parts.get("slip", 0.0),
        candidate.slip_fret,
        _rms(rest),
    )
    return float(score), cause


def _rms(values: Array) -> float:
    return float(np.sqrt((values**2).mean()))


def parse_slot_readings(text: str, file: str, unit: LengthUnit, last_fret: int) -> tuple[Array, Array]:
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
