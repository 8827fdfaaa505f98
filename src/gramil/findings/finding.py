"""What a finding is: a word of severity, the figure that it is about, the limit, and what would mend it."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

from gramil.faults import closed
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
    """A finding with every figure in its words written out, and addresses for what it is about and its limit."""

    name: str
    severity: Severity
    address: str
    value: float
    limit: str
    says: str
    remedy: str


def in_words(finding: Finding, filled: Callable[[Text], str]) -> InWords:
    """The finding with every figure put into its words by `filled`, as a formatter does it; what it says is closed."""
    limit = "" if finding.limit is None else finding.limit.address
    what = finding.name, finding.severity, finding.figure.address, finding.value, limit
    return InWords(*what, closed(filled(finding.says)), filled(finding.remedy))
