"""Figures and their reasons as answers."""

from collections.abc import Iterable
from dataclasses import dataclass

from gramil.answers.answer import Plain, plain
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.reason import Reason, readable
from gramil.rows import Row, rows
from gramil.sources import cited


@dataclass(frozen=True)
class FigureAnswer:
    """One figure: the part that it belongs to, its address, its value in `unit` (lengths in mm, angles in rad;
    empty for a plain number or words), and how it is shown, in the maker's unit and in the other.
    """

    part: str
    address: str
    value: Plain
    unit: str
    shown: str
    other: str


@dataclass(frozen=True)
class Dims:
    """Every single figure, sorted by part."""

    dimensions: tuple[FigureAnswer, ...]


@dataclass(frozen=True)
class ReasonAnswer:
    """Why a figure is what it is. `formula` and `numbers` are the formula in words and with its numbers, `method`
    how it is found if no formula would do, `source` who published it, `origin` the file and line of what was
    written, `measured` when a measurement took its place and `drawn` what it was before that.

    `follows` are addresses of what it follows from, each told in the list.
    """

    address: str
    value: Plain
    unit: str
    shown: str
    what: str
    formula: str
    numbers: str
    method: str
    source: str
    origin: str
    measured: str
    drawn: Plain
    follows: tuple[str, ...]


@dataclass(frozen=True)
class Why:
    """A figure's reason first, then that of all that it follows from; or, asked the other way, what hangs on it."""

    address: str
    reasons: tuple[ReasonAnswer, ...]
    hangs_on_it: tuple[str, ...]


def _figure(row: Row, formatter: Formatter) -> FigureAnswer:
    beside = formatter.both_of(row.address, row.value, row.unit)
    return FigureAnswer(row.part, row.address, plain(row.value), row.unit or "", *beside)


def dims_answer(figures: Figures, formatter: Formatter, names: Iterable[str]) -> Dims:
    """The figures of the dimensions named, sorted by part as the listing is."""
    found = [_figure(row, formatter) for row in rows(figures, names)]
    return Dims(tuple(sorted(found, key=lambda each: each.part)))


def why_answer(reason: Reason, formatter: Formatter, steps: Iterable[Reason]) -> Why:
    """A reason and the steps that lead up to it, each once."""
    each = {step.address: step for step in (reason, *steps)}
    return Why(reason.address, tuple(_reason(step, formatter) for step in each.values()), ())


def hangs_answer(address: str, names: Iterable[str]) -> Why:
    """What hangs on a figure."""
    return Why(address, (), tuple(names))


def _reason(step: Reason, formatter: Formatter) -> ReasonAnswer:
    return ReasonAnswer(
        step.address,
        plain(step.value),
        formatter.figures.unit_at(step.address) or "",
        formatter.text(step.address),
        step.what,
        readable(step.formula),
        readable(step.numbers),
        step.method,
        "" if step.origin or not step.source else cited(step.source),
        str(step.origin or ""),
        step.pinned,
        plain(step.drawn),
        tuple(dict.fromkeys(each.address for each in step.follows)),
    )
