"""A measured value as the maker writes it, read in the unit of the figure that it was measured for."""

import math
from collections.abc import Callable
from typing import Any

from gramil.bare_numbers import Written, reader_of
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.measure import LengthUnit


def unit_of_figure(figures: Figures, address: str) -> str:
    """The unit's symbol of the figure at an address, empty for a plain number.

    Raises MakersFault if the address leads nowhere, or to something that is not a single number.
    """
    try:
        value, unit = figures.at(address), figures.unit_at(address)
    except KeyError:
        raise MakersFault.of("there is no such figure", remedy="look the address up with why", where=address) from None
    if not _is_number(value):
        raise MakersFault.of(
            "this is not one number", "a measurement is of one figure", "name a row, such as [7]", where=address
        )
    return unit or ""


def unit_to_measure(figures: Figures, address: str) -> str:
    """The same for a figure that can be measured on the instrument; raises MakersFault for a count, too."""
    unit = unit_of_figure(figures, address)
    if unit == "count":
        remedy = "change it in the description, if it is another"
        raise MakersFault.of("this is counted, not measured", remedy=remedy, where=address)
    return unit


def _is_number(value: Any) -> bool:
    """Whether it is a single number; infinity (a flat radius) counts as one."""
    if isinstance(value, str | bool):
        return False
    try:
        float(value)
    except (TypeError, ValueError):
        return False
    return True


def read_measured(written: Written, symbol: str, unit: LengthUnit, address: str) -> float:
    """A measured value as the graph holds it (mm, radians, grams ...); a bare number of a length is in `unit`.

    `symbol` is the unit of the figure. A figure that is no length, angle, mass, temperature or per cent is a bare
    number or carries exactly that symbol. Raises MakersFault, with the address, for what cannot be read for certain.
    """
    try:
        value = (reader_of(symbol, unit) or _plain_in(symbol))(written)
    except MakersFault as fault:
        first = fault.faults[0]
        raise MakersFault.of(first.what, first.why, first.remedy, where=address) from None
    return float(value)


def _plain_in(symbol: str) -> Callable[[Written], float]:
    """A reader of bare numbers that may carry the symbol."""

    def read(written: Written) -> float:
        text = str(written).strip()
        number = text.removesuffix(symbol).strip() if symbol else text
        try:
            value = math.nan if isinstance(written, bool) else float(number)
        except ValueError:
            value = math.nan
        if not math.isfinite(value):
            write = f"a number, alone or with {symbol}" if symbol else "a plain number"
            raise MakersFault.of(f'"{text[:60]}" cannot be read', remedy=f"write {write}")
        return value

    return read
