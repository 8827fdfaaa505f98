"""Values as they are typed on a page, and as they are written in a description: by their unit, a bare number in the
unit that the page shows.
"""

import math

from gramil.bare_numbers import reader_of
from gramil.bench.measuring import bare
from gramil.formatter import Formatter
from gramil.measure import MeasureError


def written(value: float, unit: str | None) -> str:
    """A value as written in a description, to 0.00001 mm or degree."""
    match unit:
        case "mm":
            return f"{value:.5f} mm"
        case "1/mm":
            return "flat" if value == 0 else f"{1 / value:.5f} mm"
        case "rad":
            return f"{math.degrees(value):.5f}"
        case "MPa":
            return f"{value:.5f} MPa"
        case _:
            return f"{value:.7g}"


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
