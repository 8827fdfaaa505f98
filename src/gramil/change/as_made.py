"""What a measurement means: how far it is from what was wanted, what that costs, and which later figures follow."""

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

import numpy as np

from gramil import names as n
from gramil.address import parse_address
from gramil.change.made import Judged, judge
from gramil.change.settled import readings, settled
from gramil.change.shift import Move, moved
from gramil.change.whose_reading import later_in, owners
from gramil.decimals import signed
from gramil.faults import MakersFault
from gramil.findings.finding import Finding
from gramil.formatter import shown
from gramil.graph import Figures, Pin
from gramil.measure import LengthUnit
from gramil.prints.whole import dimensions_of, findings_of
from gramil.quantities import axes_of
from gramil.shop.operations_file import usual_work

HEARD = 0.1
"""Cents; less than this folds away."""


@dataclass(frozen=True)
class Off:
    """A measured figure and the wanted one, in the unit of its symbol; `cents` if it moves a fret, else None."""

    address: str
    wanted: float
    measured: float
    unit: str
    cents: float | None

    @property
    def difference(self) -> float:
        """Measured less wanted."""
        return self.measured - self.wanted


def difference_text(off: Off, first: LengthUnit) -> str:
    """How far a reading is off and, if it costs anything in tune, how much: `+0.12 mm, +0.41 cent`."""
    sign = "+" if off.difference > 0 else ""
    cents = "" if off.cents is None else f", {signed(off.cents, 2)} cent"
    return f"{sign}{shown(off.difference, off.unit, first)}{cents}"


@dataclass(frozen=True)
class AsMade:
    """What measurements change: how far each is off, the dimensions that follow, verdicts that came and went.

    `folded` counts the moves that are too small to mention.
    """

    off: tuple[Off, ...]
    moves: tuple[Move, ...]
    folded: int
    came: tuple[Finding, ...]
    went: tuple[Finding, ...]
    judged: tuple[Judged, ...]


def as_made(
    figures: Figures,
    new: Mapping[str, Pin],
    operation: str = "",
    done: Sequence[str] = (),
    wanted: Figures | None = None,
    tolerance: float = 0.005,
) -> AsMade:
    """What new measurements change in `figures`, which may carry earlier ones.

    `operation` is what was just done, `done` what was done before: those whose figures were measured are judged.
    `wanted` are the figures on its sheet, from which the errors are measured (None: as drawn). Raises MakersFault for a
    measurement with which an instrument cannot be worked out at all.
    """
    with _workable(new):
        return _as_made(figures, new, operation, done, figures.with_pins({}) if wanted is None else wanted, tolerance)


def refuse_impossible(figures: Figures, new: Mapping[str, Pin]) -> None:
    """Raises MakersFault for measurements with which an instrument cannot be worked out at all."""
    with _workable(new):
        made = with_readings(figures, new)
        touched = figures.graph.hung_from(parse_address(address)[0] for address in new)
        for name in figures.graph.order:
            if name in touched and name in figures.graph.dimensions:
                made[name]


@contextmanager
def _workable(new: Mapping[str, Pin]) -> Iterator[None]:
    """The figures with new measurements; if they cannot be worked out, the measurements are reported as at fault."""
    try:
        with np.errstate(all="ignore"):
            yield
    except (ArithmeticError, ValueError) as error:
        if isinstance(error, MakersFault):
            raise
        what, remedy = "with this the instrument cannot be worked out", "read it again, or change the description"
        why = "" if isinstance(error, ArithmeticError) else str(error)
        raise MakersFault.of(what, why, remedy, where=", ".join(new)) from error


def _as_made(
    figures: Figures, new: Mapping[str, Pin], operation: str, done: Sequence[str], wanted: Figures, tolerance: float
) -> AsMade:
    made = with_readings(figures, new)
    differ = (address for address, pin in made.pins.items() if figures.pins.get(address) != pin)
    pinned = {parse_address(address)[0] for address in differ}
    touched = set().union(*(figures.graph.below(name) for name in pinned))
    names = [name for name in dimensions_of(figures) if name in touched and name not in pinned]
    moves, folded = moved(names, figures, made, tolerance)
    heard = tuple(move for move in moves if _matters(move))
    before, after = findings_of(figures), findings_of(made)
    return AsMade(
        tuple(off_at(address, pin, wanted) for address, pin in new.items()),
        heard,
        folded + len(moves) - len(heard),
        _not_among(after, before),
        _not_among(before, after),
        _judged(made, new, operation, done),
    )


def with_readings(figures: Figures, new: Mapping[str, Pin]) -> Figures:
    """The figures with more measurements, each later than any measured before, and with the inputs that they settle."""
    earlier = readings(figures.pins)
    noted = {address: pin.after(earlier.get(address)) for address, pin in new.items()}
    return settled(figures.with_pins({**earlier, **noted}))


def _judged(made: Figures, new: Mapping[str, Pin], operation: str, done: Sequence[str]) -> tuple[Judged, ...]:
    """Verdicts on the operation just done, and on earlier ones whose figures were measured now."""
    known = tuple(dict.fromkeys((*done, operation)))
    touched = {operation, *owners(new, known, later_in(usual_work(), made)).values()}
    return tuple(each for each in judge(dict.fromkeys(known, made), made) if each.operation in touched)


def _matters(move: Move) -> bool:
    """Whether a move is large enough to mention: in cents if it may be heard; a thousandth for anything that is not a
    length.
    """
    if move.unit == "cent":
        return not abs(move.difference) < HEARD
    if move.unit in ("mm", "rad", None) or not isinstance(move.old, float):
        return True
    return not abs(move.difference) < 0.001 * abs(move.old)


def off_at(address: str, pin: Pin, wanted: Figures) -> Off:
    """A measurement compared with the figure that is wanted."""
    value, unit = float(wanted.at(address)), wanted.unit_at(address) or ""
    return Off(address, value, float(pin.value), unit, _cents(address, float(pin.value) - value, wanted))


def _cents(address: str, error: float, wanted: Figures) -> float | None:
    """What a fret out of its place costs: positive is sharp, toward the bridge."""
    name, steps = parse_address(address)
    if name != n.fret_position.address or not steps or axes_of(wanted.graph.annotation(name)) != ("fret",):
        return None
    per_mm = float(wanted.at(address.replace(name, n.fret_cents_per_mm.address)))
    return error * per_mm


def _not_among(these: tuple[Finding, ...], those: tuple[Finding, ...]) -> tuple[Finding, ...]:
    known = {(each.name, each.severity) for each in those}
    return tuple(each for each in these if each.severity != "fine" and (each.name, each.severity) not in known)
