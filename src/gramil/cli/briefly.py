"""Sheets, drawings and verdicts in a few words: what `why` shows for something that is a whole record, not a figure."""

from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Any

from gramil.cli.verdicts import verdict
from gramil.drawings.marks import Arc, Circle, Drawing, Label, Line, Mark, Polyline, Span, Words, figures_in
from gramil.findings.finding import Finding
from gramil.formatter import Formatter
from gramil.setups.setup import BigFigure, Setup

LONGEST = 160
"""Letters of a value in one line; a longer one is cut off."""
MOST_FIGURES = 12
"""How many of a drawing's figures are named; the rest are counted."""
MARKS = (Line, Arc, Circle, Polyline, Words, Label, Span)


def briefly(formatter: Formatter, address: str) -> str:
    """The value at an address, in one line. Raises KeyError if there is none."""
    value = formatter.figures.at(address)
    if isinstance(value, Setup):
        return f"the sheet {value.name}: {value.title}" + (", not needed" if value.closed else "")
    if isinstance(value, Drawing):
        return f"the drawing {value.name}: {value.title}, seen from {value.seen_from}; {_counted(value.marks)}"
    if marks := _marks(value):
        return _counted(marks)
    if findings := _findings(value):
        return ", ".join(dict.fromkeys(each.severity for each in findings))
    return _cut(formatter.text(address))


def more_of(formatter: Formatter, address: str) -> Iterator[str]:
    """What a sheet, a drawing or a verdict says, line by line; nothing for any other value."""
    value = formatter.figures.at(address)
    if isinstance(value, Setup):
        yield from (_figure(formatter, each) for each in value.figures)
        yield from filter(
            None, (f"prove it: {formatter.filled(value.prove)}" if value.prove else "", _why_not(formatter, value))
        )
    elif isinstance(value, Drawing):
        yield from _figures_on(value)
    else:
        for finding in _findings(value):
            yield from verdict(finding, formatter)


def _figure(formatter: Formatter, each: BigFigure) -> str:
    near = f", {formatter.filled_near(each.tolerance)}" if each.tolerance else ""
    return f"{formatter.filled(each.what)}: {formatter.text(each.figure)}{near}   [{each.figure}]"


def _why_not(formatter: Formatter, setup: Setup) -> str:
    return f"not needed: {formatter.filled(setup.closed)}" if setup.closed else ""


def _figures_on(drawing: Drawing) -> Iterator[str]:
    """The addresses of the figures that a drawing shows."""
    found = tuple(each.address for each in figures_in(drawing.marks))
    rest = f" and {len(found) - MOST_FIGURES} more" if len(found) > MOST_FIGURES else ""
    if found:
        yield f"figures on it: {', '.join(found[:MOST_FIGURES])}{rest}"


def _counted(marks: Iterable[Mark]) -> str:
    """How many lines and figures there are among marks."""
    kinds = Counter("figure" if isinstance(each, Label | Span) else "text" if isinstance(each, Words) else "line"
                    for each in marks)  # fmt: skip
    return ", ".join(f"{number} {kind}{'s' if number > 1 else ''}" for kind, number in sorted(kinds.items()))


def _marks(value: Any) -> tuple[Mark, ...]:
    """The marks of a piece of a drawing; empty for anything else."""
    several = value if isinstance(value, tuple) else (value,)
    return several if several and all(isinstance(each, MARKS) for each in several) else ()


def _findings(value: Any) -> tuple[Finding, ...]:
    several = value if isinstance(value, tuple) else (value,)
    return several if several and all(isinstance(each, Finding) for each in several) else ()


def _cut(text: str) -> str:
    if len(text) <= LONGEST:
        return text
    kept = text[:LONGEST]
    return kept[: max(kept.rfind(mark) for mark in ("; ", ", ", " "))] + " ..."
