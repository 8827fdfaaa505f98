"""The solved top as an answer: what the pull does, the modes, what a shaving does, and what was carried out."""

from collections.abc import Iterator
from dataclasses import dataclass

from gramil import names as n
from gramil.answers.answer import Plain, plain
from gramil.answers.verdicts import FindingAnswer, findings_answer
from gramil.findings.finding import Finding
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures
from gramil.prints.top_rows import NOT_SAID, PULLED, WITH_AIR, TopRow, picture_words, shaving_rows, woods_in_words
from gramil.top.advice import Advice
from gramil.top.pull import RIGID
from gramil.top.pushing import PushCompared
from gramil.top.shaving import Shaving


@dataclass(frozen=True)
class TopFigure:
    """One figure of the top: its address, its value in `unit` (lengths in mm, angles in rad), and how it is shown;
    `within` is how far off mesh and model may be, `least` and `most` its range, `null` where there is none.
    """

    what: str
    address: str
    value: Plain
    unit: str
    shown: str
    within: Plain
    least: Plain
    most: Plain


@dataclass(frozen=True)
class ModeAnswer:
    """One of the top's modes, Hz, with nothing but the plate moving; `words` says which parts of it move how, and
    `lines` are those along which it stays at rest: runs of (along, across) in mm.
    """

    name: str
    hertz: float
    within: float
    least: float
    most: float
    words: str
    lines: tuple[tuple[tuple[float, float], ...], ...]


@dataclass(frozen=True)
class AdviceAnswer:
    """How much to take `off` these braces (less than 0: add; mm), found by solving again: what was `wanted` and what is
    `found` (radians or Hz), and whether that was reached; `by_first_order` is what the derivatives alone would have
    said, `room` what the braces have.
    """

    braces: tuple[str, ...]
    off: float
    by_first_order: float
    room: float
    wanted: float
    found: float
    reached: bool
    warnings: tuple[str, ...]
    modes_before: tuple[float, ...]
    modes_after: tuple[float, ...]


@dataclass(frozen=True)
class TopOf:
    """One instrument's top: `said` is what all of it is, `told` what was taken for what, and `not_judged` what is not
    in it. `shavings` are for each mm off a brace's height, `pushes` those on the strung guitar, beside the same solved.
    """

    instrument: str
    said: str
    figures: tuple[TopFigure, ...]
    modes: tuple[ModeAnswer, ...]
    shavings: tuple[Shaving, ...]
    pushes: tuple[PushCompared, ...]
    findings: tuple[FindingAnswer, ...]
    told: tuple[str, ...]
    not_judged: tuple[str, ...]


@dataclass(frozen=True)
class TopAnswer:
    """The top under the strings, and beside it that of another instrument, if one was named; `advice` is what was asked
    for and carried out in the model, or `null`."""

    tops: tuple[TopOf, ...]
    advice: AdviceAnswer | None


def top_of(figures: Figures, findings: tuple[Finding, ...]) -> TopOf:
    """One instrument's top."""
    formatter = formatter_of(figures)
    return TopOf(
        str(figures[n.instrument_name]),
        RIGID,
        tuple(_figure(row, formatter) for row in (*PULLED, *WITH_AIR)),
        tuple(_modes(figures, formatter)),
        tuple(shaving_rows(figures)),
        figures[n.push_list],
        findings_answer(findings, formatter),
        woods_in_words(figures),
        NOT_SAID,
    )


def _figure(row: TopRow, formatter: Formatter) -> TopFigure:
    within, least, most = (
        None if each is None else plain(formatter.figures.at(each)) for each in (row.within, row.least, row.most)
    )
    value, unit = plain(formatter.figures.at(row.figure)), formatter.figures.unit_at(row.figure) or ""
    return TopFigure(row.what, row.figure.address, value, unit, formatter.text(row.figure), within, least, most)


def _modes(figures: Figures, formatter: Formatter) -> Iterator[ModeAnswer]:
    for mode, picture in zip(figures[n.mode_list], figures[n.mode_pictures], strict=True):
        lines = tuple(tuple((float(x), float(y)) for x, y in line) for line in picture.lines)
        words = picture_words(picture, formatter)
        yield ModeAnswer(mode.name, mode.hertz, mode.within, mode.least, mode.most, words, lines)


def advice_answer(advice: Advice) -> AdviceAnswer:
    """What was asked for and carried out."""
    return AdviceAnswer(
        advice.braces,
        advice.off,
        advice.by_first_order,
        advice.room,
        advice.wanted,
        advice.found,
        advice.reached,
        advice.warnings,
        tuple(each.before for each in advice.modes),
        tuple(each.after for each in advice.modes),
    )
