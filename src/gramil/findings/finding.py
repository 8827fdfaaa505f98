"""What a finding is: a word of severity, the figure that it is about, the limit, and what would mend it."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

from gramil.faults import closed

Severity = Literal["stop", "caution", "note", "fine", "not judged"]
SEVERITIES: tuple[Severity, ...] = ("stop", "caution", "not judged", "note", "fine")
"""Gravest first: the order in which findings are listed."""


@dataclass(frozen=True)
class Finding:
    """One verdict. It holds no coordinates and no wording of numbers.

    `address` is the figure judged and `value` what it was; `limit` is the graph's name of the limit (its value and
    origin are looked up where it is shown), or empty; `says` is one sentence (for *not judged*: "because ...");
    `remedy` is what would mend it. A figure in either stands as its address in braces, put in where it is shown.
    """

    name: str
    severity: Severity
    address: str
    value: float
    limit: str
    says: str
    remedy: str = ""


Findings = tuple[Finding, ...]


def in_words(finding: Finding, filled: Callable[[str], str]) -> Finding:
    """The finding with every figure put into its words by `filled`, as a shower does it; what it says is closed."""
    return replace(finding, says=closed(filled(finding.says)), remedy=filled(finding.remedy))


def within(value: float, caution: float, stop: float) -> Severity:
    """Severity of a value that should not exceed `caution`, and must not exceed `stop`; not a number is not judged."""
    if value != value:
        return "not judged"
    if value > stop:
        return "stop"
    return "caution" if value > caution else "fine"


def at_least(value: float, caution: float, stop: float) -> Severity:
    """Severity of a value that should be `caution` or more, and must be `stop` or more."""
    return within(-value, -caution, -stop)
