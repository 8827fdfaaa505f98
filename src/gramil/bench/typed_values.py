"""Values as they are typed on a page: by their unit, a bare number in the unit that the page shows."""

import math

from gramil.bare_numbers import reader_of
from gramil.bench.measuring import bare
from gramil.formatter import Formatter
from gramil.measure import MeasureError


def read_as(text: str, unit: str | None, formatter: Formatter) -> float:
    """What was typed in a figure's unit, a bare number in the unit shown; raises MakersFault."""
    if unit == "1/mm":
        return 0.0 if text.strip().lower() == "flat" else 1 / (read_as(text, "mm", formatter) or math.inf)
    read = reader_of(unit, formatter.first) if unit in ("mm", "rad") else None
    return read(bare(text)) if read else _number(text)


def _number(text: str) -> float:
    try:
        return float(text.replace(",", ".").split()[0])
    except (ValueError, IndexError):
        raise MeasureError.of(f'"{text}" is no number', "", "write a number, such as 3.8") from None
