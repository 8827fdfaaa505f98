"""What a finding is: a word of severity, the figure that it is about, the limit, and what would mend it."""

from dataclasses import dataclass
from typing import Any, Literal

from gramil.faults import closed
from gramil.formatter import Formatter
from gramil.in_shop_units import phrases_in_shop_units
from gramil.reference import Ref, Text

Severity = Literal["stop", "caution", "note", "fine", "not judged"]
SEVERITIES: tuple[Severity, ...] = ("stop", "caution", "not judged", "note", "fine")
"""Gravest first: the order in which findings are listed."""


@dataclass(frozen=True)
class Finding:
    """One verdict. It holds no coordinates and no wording of numbers.

    `figure` is what is judged and `value` what it was; `limit` is the limit's figure (its value and origin are looked
    up where it is shown), if any; `says` is one sentence (for *not judged*: "because ..."); `remedy` is what would
    mend it. Figures in either are written out where they are shown.
    """

    name: str
    severity: Severity
    figure: Ref[Any]
    value: float
    limit: Ref[Any] | None
    says: Text
    remedy: Text = ""


Findings = tuple[Finding, ...]


@dataclass(frozen=True)
class InWords:
    """A finding with every figure in its words written out, and addresses for what it is about and its limit.

    `shown` is what is judged as text, empty for what is not judged; `limit_shown` and `limit_from` are the limit and
    where it comes from (a file and line, or what the practice is), empty without one.
    """

    name: str
    severity: Severity
    address: str
    value: float
    limit: str
    says: str
    remedy: str
    shown: str
    limit_shown: str
    limit_from: str


def in_words(finding: Finding, formatter: Formatter) -> InWords:
    """The finding with its figures as a formatter shows them; what it says is closed.

    A figure that would show as its limit and yet is past it is told in more decimals, and so is the limit.
    """
    limit = "" if finding.limit is None else finding.limit.address
    if finding.limit is not None and finding.severity != "fine":
        formatter = formatter.apart(finding.figure, finding.limit)
    return InWords(
        name=finding.name,
        severity=finding.severity,
        address=finding.figure.address,
        value=finding.value,
        limit=limit,
        says=closed(phrases_in_shop_units(formatter.filled(finding.says), formatter.first)),
        remedy=formatter.filled(finding.remedy),
        shown="" if finding.severity == "not judged" else formatter.text(finding.figure),
        limit_shown=formatter.text(limit) if limit else "",
        limit_from=formatter.origin(limit) if limit else "",
    )
