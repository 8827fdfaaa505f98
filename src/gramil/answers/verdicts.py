"""Verdicts as answers: findings, and finished work that is no longer right."""

from collections.abc import Iterable
from dataclasses import dataclass

from gramil.answers.answer import Plain, plain
from gramil.change.made import Judged, Standing
from gramil.change.made_words import spoilt, values_in_words, verdict_line
from gramil.findings.finding import SEVERITIES, Finding, Severity, in_words
from gramil.formatter import Formatter
from gramil.measure import LengthUnit


@dataclass(frozen=True)
class FindingAnswer:
    """One finding. `address` is the figure that is judged, with its `value` and how it is `shown`; `limit` is how the
    limit is shown, `limit_address` its figure and `limit_from` where it comes from: all empty if there is none.
    """

    name: str
    severity: Severity
    address: str
    value: Plain
    unit: str
    shown: str
    limit: str
    limit_address: str
    limit_from: str
    says: str
    remedy: str


@dataclass(frozen=True)
class MadeAnswer:
    """Finished work: what was made by which operation, how it stands, what it is and what it should be, in words and as
    values in `unit`.
    """

    operation: str
    what: str
    standing: Standing
    address: str
    is_now: Plain
    should_be: Plain
    unit: str
    shown: str
    wanted: str
    says: str
    remedy: str


@dataclass(frozen=True)
class Check:
    """Whether it can be made: how many findings there are of each severity, every finding, gravest first, and finished
    work that is no longer right. `stops` says whether anything stops it.
    """

    stops: bool
    counted: dict[str, int]
    findings: tuple[FindingAnswer, ...]
    made: tuple[MadeAnswer, ...]


@dataclass(frozen=True)
class Checks:
    """Several instruments checked, in the order in which they stand in `instruments`; `stops` says whether anything
    stops any of them.
    """

    stops: bool
    each: tuple[Check, ...]


def check_answer(findings: Iterable[Finding], formatter: Formatter, judged: Iterable[Judged] = ()) -> Check:
    """Every finding, the fine ones too, and the finished work that is spoilt."""
    told = findings_answer(findings, formatter)
    made = made_answer(judged, formatter.first)
    counted: dict[str, int] = {each: sum(one.severity == each for one in told) for each in SEVERITIES}
    stops = counted["stop"] > 0 or any(each.standing == "lost" for each in made)
    return Check(stops, counted, told, made)


def findings_answer(findings: Iterable[Finding], formatter: Formatter) -> tuple[FindingAnswer, ...]:
    """Findings in words, with their values."""
    return tuple(_finding(each, formatter) for each in findings)


def _finding(finding: Finding, formatter: Formatter) -> FindingAnswer:
    each = in_words(finding, formatter)
    return FindingAnswer(
        each.name,
        each.severity,
        each.address,
        plain(each.value),
        formatter.figures.unit_at(each.address) or "",
        each.shown,
        each.limit_shown,
        each.limit,
        each.limit_from,
        each.says,
        each.remedy,
    )


def made_answer(judged: Iterable[Judged], first: LengthUnit) -> tuple[MadeAnswer, ...]:
    """Finished work that is no longer right, what is lost first."""
    return tuple(_made(each, first) for each in spoilt(judged))


def _made(judged: Judged, first: LengthUnit) -> MadeAnswer:
    is_now, should_be = values_in_words(judged, first)
    return MadeAnswer(
        judged.operation,
        judged.what,
        judged.standing,
        judged.address,
        plain(judged.is_now),
        plain(judged.should_be),
        judged.unit or "",
        is_now,
        should_be,
        verdict_line(judged, first),
        judged.remedy,
    )
