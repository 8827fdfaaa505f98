"""In which unit a bare number is: one answer for what stands in a file, on a page or on the command line.

A bare length is in the unit of what it is written in: the file's, the instrument's, the shop's, or the page's. A
string's gauge is in inches wherever it is written. Whatever else is measured has one unit of its own.
"""

import re
from collections.abc import Callable, Mapping
from decimal import Decimal

from gramil.measure import (
    LengthUnit,
    read_angle,
    read_length,
    read_mass,
    read_mass_per_length,
    read_percent,
    read_temperature,
)

Written = str | int | float

UNSAID: LengthUnit = "mm"
"""The unit of bare lengths where nothing says another."""
GAUGES: LengthUnit = "in"
"""The unit of bare string gauges: strings are sold so."""
_NAMES_A_UNIT = re.compile(r"[^\W\d_]|['\"′″’”]")
"""A letter, or a mark of feet or inches."""
_READERS: Mapping[str, Callable[[Written], float]] = {
    "rad": read_angle,
    "g": read_mass,
    "g/m": read_mass_per_length,
    "C": read_temperature,
    "%": read_percent,
}


def length_unit(said: object, otherwise: LengthUnit = UNSAID) -> LengthUnit:
    """The unit of bare lengths by what is said of it, "mm" or "in"; `otherwise` where neither is said."""
    return "in" if said == "in" else "mm" if said == "mm" else otherwise


def reader_of(symbol: str | None, lengths: LengthUnit) -> Callable[[Written], float] | None:
    """What reads a figure of a unit, by its symbol, a bare length in `lengths`; None where a number has no other unit.

    Gives mm, radians, grams, g/m, C or per cent. What it gives raises MeasureError.
    """
    if symbol == "mm":
        return lambda written: read_length(written, lengths)
    return _READERS.get(symbol or "")


def with_unit(written: Written, symbol: str, lengths: LengthUnit) -> str:
    """What was written, so that it says the same anywhere: a bare length with the unit that it was read in."""
    text = f"{Decimal(repr(written)):f}" if isinstance(written, float) else str(written).strip()
    return f"{text} {lengths}" if symbol == "mm" and not _NAMES_A_UNIT.search(text) else text
