"""Stops that come of measurements: findings that are stops as made and were none as drawn.

They are repeated until they are dealt with.
"""

from collections.abc import Iterator

from gramil.findings.finding import in_words
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.prints.whole import findings_of


def measured_stops(figures: Figures) -> tuple[str, ...]:
    """Each stop that comes of measurements, in words: what is judged, its limit, what it means, and what mends it."""
    return tuple(_in_words(figures)) if figures.pins else ()


def _in_words(figures: Figures) -> Iterator[str]:
    made = [each for each in findings_of(figures) if each.severity == "stop"]
    if not made:
        return
    drawn = {each.name for each in findings_of(figures.with_pins({})) if each.severity == "stop"}
    formatter = formatter_of(figures)
    for each in made:
        if each.name not in drawn:
            told = in_words(each, formatter)
            limit = f", limit {told.limit_shown}" if told.limit_shown else ""
            mend = f" Mend: {told.remedy}" if told.remedy else ""
            yield f"{told.name}, as measured: {told.shown}{limit}. {told.says}{mend}"
