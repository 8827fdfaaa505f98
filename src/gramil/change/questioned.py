"""Readings are questioned before they are believed: they are compared with what is wanted, and the likely slip is
named.

A reading is questioned if it is about 25.4 times or 1/25.4 of what is wanted (inches taken for millimetres, or the
other way), if it is off by over ten times its tolerance, or by over a fifth if practice has no tolerance.
The question says what the reading would mean if true, by the same verdicts as for any finished part.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import isnan
from typing import Literal

import numpy as np

from gramil.change.made import Judged, judge
from gramil.change.made_rows import operations
from gramil.change.sheet_figures import figures_for_operation, read_at
from gramil.description.shop.limits import limit_ref
from gramil.description.shop.tolerances import tolerance_of
from gramil.faults import Fault, MakersFault
from gramil.formatter import shown
from gramil.graph import Figures, Pin
from gramil.measure import LengthUnit
from gramil.measured_by import figure_of
from gramil.shop.operations import Work
from gramil.shop.operations_file import usual_work

TIMES = 10.0
"""A reading that is off by more than this many of its tolerances is asked about."""
SHARE = 0.2
"""Where practice has no tolerance, one that is off by more than this part of what is wanted."""
INCH = 25.4
NEAR = 0.1
"""How near to such a ratio counts as a slip of the unit: a part of it."""
HAIR = 0.05
"""In mm: less than this is no slip, whatever the ratio; the size wanted is as small itself."""
LIKELY = 0.5
"""How near to it a reading that is far off anyway counts as that slip: an action is not yet what is wanted."""
LISTED = 6
"""How many questions of one kind are asked one by one; beyond that they are counted."""

Slip = Literal["millimetres", "inches", "point", "far"]
"""What is likely wrong: the unit that was meant, the decimal point, or something else."""


@dataclass(frozen=True)
class Reading:
    """One reading: the address of its figure, its value, the text as it was written, and its line in the file.

    `of` is the operation whose work it is a reading of, where that is known.
    """

    address: str
    value: float
    written: str = ""
    line: int | None = None
    of: str = ""


@dataclass(frozen=True)
class Question:
    """A reading to be questioned: what was wanted (in the unit of the symbol), the likely slip, and what it would mean.

    `so_far`: there is no wanted value, and the reading is compared with what was last measured. `together` is what
    all of the readings mean if one cause puts them out: then they are one question.
    """

    reading: Reading
    wanted: float
    unit: str
    slip: Slip
    stands: tuple[Judged, ...] = ()
    so_far: bool = False
    together: str = ""


def questions(
    figures: Figures, readings: Iterable[Reading], operation: str = "", work: Work | None = None
) -> tuple[Question, ...]:
    """The readings of an instrument's figures that are to be questioned, each compared with what its sheet says.

    That is the sheet of `operation`, the work at which they were read (else of the work that the figure belongs to),
    with all earlier readings. `work` is the list of operations, the usual one where none is given.
    """
    drawn = replace(figures, pins={}, known={}) if figures.pins else figures
    asked = tuple(_asked(figures, readings, operation, work or usual_work()))
    alike: dict[tuple[str, str], list[Reading]] = {}
    for each in asked:
        alike.setdefault(_read_at(each.reading, operation), []).append(each.reading)
    stands = {key: _stands(figures, drawn, readings, *key) for key, readings in alike.items()}
    return tuple(replace(each, stands=stands[_read_at(each.reading, operation)]) for each in asked)


def _read_at(reading: Reading, operation: str) -> tuple[str, str]:
    """The figure of a reading, and the operation at which it was read, if that is known."""
    return figure_of(reading.address), operation or reading.of


def _asked(figures: Figures, readings: Iterable[Reading], operation: str, work: Work) -> Iterator[Question]:
    """The questions, without what they would mean."""
    sheets: dict[str, Figures] = {}
    for each in readings:
        at = read_at(each.address, operation or each.of, figures, work) if figures.pins else ""
        if at not in sheets:
            sheets[at] = figures_for_operation(at, figures, work)
        asked = question(
            each,
            float(sheets[at].at(each.address)),
            figures.unit_at(each.address) or "",
            tolerance_of(each.address).near(lambda name: float(figures[limit_ref(name)])),
        )
        if asked is not None:
            yield asked


def question(reading: Reading, wanted: float, unit: str, near: float | None) -> Question | None:
    """The question that a reading raises if this much is wanted, within `near` (None: practice has no tolerance)."""
    slip = slip_of(reading.value, wanted, unit, near)
    return None if slip is None else Question(reading, wanted, unit, slip)


def slip_of(read: float, wanted: float, unit: str, near: float | None) -> Slip | None:
    """What is likely wrong with a reading; None if it is believed, or if the wanted value is not known."""
    off = abs(read - wanted)
    if isnan(wanted) or read == wanted or (unit == "mm" and off <= HAIR):
        return None
    times = read / wanted if wanted else 0.0
    if not _slip_of_unit(times, unit, NEAR) and off <= (SHARE * abs(wanted) if near is None else TIMES * near):
        return None
    if named := _slip_of_unit(times, unit, LIKELY):
        return named
    return "point" if _about(times, 10, NEAR) or _about(times, 0.1, NEAR) else "far"


def _slip_of_unit(times: float, unit: str, within: float) -> Slip | None:
    if unit != "mm":
        return None
    if _about(times, INCH, within):
        return "millimetres"
    return "inches" if _about(times, 1 / INCH, within) else None


def _about(times: float, ratio: float, within: float) -> bool:
    return abs(times / ratio - 1) <= within


def _stands(
    figures: Figures, drawn: Figures, readings: Sequence[Reading], figure: str, operation: str
) -> tuple[Judged, ...]:
    """What would no longer be right if readings of one figure are all true: at their operation, else at the first of
    those that fix it.
    """
    made = replace(figures, pins={**figures.pins, **{each.address: Pin(each.value, "") for each in readings}}, known={})
    for name in _of(figure, operation):
        try:
            with np.errstate(all="ignore"):
                judged = judge({name: made}, drawn)
        except (ArithmeticError, ValueError):  # for example a board that takes no wire, or a side of no thickness
            return ()
        if found := [each for each in judged if each.standing != "still right"]:
            return tuple([each for each in found if figure_of(each.address) == figure][:1] or found[:1])
    return ()


def _of(figure: str, operation: str) -> tuple[str, ...]:
    known = operations()
    if operation in known:
        return (operation,)
    return tuple(name for name, each in known.items() if any(one.figure == figure for one in each.fixes))


def sentence(asked: Question, unit: LengthUnit) -> str:
    """What was read, what was wanted, and the likely slip, in one sentence; lengths in the maker's unit."""
    wanted, off = _shown(asked.wanted, asked, unit), asked.reading.value - asked.wanted
    stood = f"it was {wanted} so far" if asked.so_far else f"{wanted} is wanted"
    return f"{_read(asked, unit)} was read where {stood}, {_likely(asked, off, unit)}?"


def _likely(asked: Question, off: float, unit: LengthUnit) -> str:
    if asked.slip == "millimetres":
        return f"about {asked.reading.value / asked.wanted:.3g} times as much: were millimetres meant"
    if asked.slip == "inches":
        return f"about {asked.wanted / asked.reading.value:.3g} times less: were inches meant"
    by = f"{_shown(abs(off), asked, unit)} {'more' if off > 0 else 'less'}"
    return f"{by}: " + (
        "is the decimal point in its place" if asked.slip == "point" else "was it this that was measured"
    )


def meaning(asked: Question, *, many: bool = False) -> str:
    """What a reading (or `many` of one figure) means if it is true, if an operation fixes the figure or one cause
    explains all; else empty.
    """
    if asked.together:
        return f"If they stand: {asked.together}"
    said = (f"{each.what}: {each.standing}. {each.remedy}".strip() for each in asked.stands)
    return "".join(f"If {'they stand' if many else 'it stands'}, {each}" for each in said)


def _shown(value: float, asked: Question, unit: LengthUnit) -> str:
    return shown(value, asked.unit or None, unit)


def _read(asked: Question, unit: LengthUnit) -> str:
    return asked.reading.written or _shown(asked.reading.value, asked, unit)


def faults(found: Sequence[Question], unit: LengthUnit, answer: str, file: str | None = None) -> MakersFault:
    """The questions as the maker sees them, all slips of the unit as one, and all of one cause; `answer` says what to
    do.
    """
    told = [fault for slip in dict.fromkeys(each.slip for each in found) for fault in _of_slip(found, slip, unit)]
    last = replace(told[-1], remedy=answer)
    return MakersFault(replace(each, file=file) for each in (*told[:-1], last))


def _of_slip(found: Sequence[Question], slip: Slip, unit: LengthUnit) -> Iterator[Fault]:
    group = [each for each in found if each.slip == slip]
    first = group[0]
    if (first.together or slip in ("millimetres", "inches")) and len(group) > 1:
        what = f"{len(group)} readings are off in one way, such as {first.reading.address}: {sentence(first, unit)}"
        yield Fault(first.reading.line, "", what, meaning(first, many=True))
        return
    for each in group[:LISTED]:
        yield Fault(each.reading.line, each.reading.address, sentence(each, unit), meaning(each))
    if len(group) > LISTED:
        yield Fault(what=f"{len(group) - LISTED} more readings are as far off")
