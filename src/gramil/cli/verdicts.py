"""Findings in lines: gravest first, each with its limit and what would mend it."""

from collections.abc import Iterable, Iterator

import click

from gramil.findings.finding import SEVERITIES, Finding, InWords, in_words
from gramil.formatter import Formatter


def verdicts(findings: Iterable[Finding], formatter: Formatter, fine: bool) -> Iterator[str]:
    """The lines of the list, and a last line that counts them."""
    found = tuple(findings)
    for each in found:
        if fine or each.severity != "fine":
            yield from verdict(each, formatter)
    counted = ((severity, sum(each.severity == severity for each in found)) for severity in SEVERITIES)
    yield ", ".join(f"{number} {severity}" for severity, number in counted if number)


def verdict(finding: Finding, formatter: Formatter) -> Iterator[str]:
    """One finding's lines: the figure with its limit, what it means, what mends it."""
    head = click.style(f"{finding.severity.upper():<10}", bold=finding.severity in ("stop", "caution"))
    told = in_words(finding, formatter)
    if told.severity == "not judged":
        yield f"{head} {told.name}: not judged, {told.says}"
    else:
        yield f"{head} {told.name}: {told.shown}{_limit(told)}   [{told.address}]"
        yield f"           {told.says}"
    if told.remedy and told.severity not in ("fine",):
        yield f"           Mend: {told.remedy}"


def _limit(told: InWords) -> str:
    """The limit, and where it comes from: nothing is said of one that is worked out."""
    origin = f" ({told.limit_from})" if told.limit_from else ""
    return f", limit {told.limit_shown}{origin}" if told.limit else ""
