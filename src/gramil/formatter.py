"""How every figure is shown: the one place that turns a value and its unit into words.

Lengths are given in the maker's own unit first, with the other beside it; angles in degrees; an infinite radius is
"flat", an unknown value says so. The command line, drawings, sheets and pages all read figures through a `Formatter`.
"""

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from typing import Any, get_type_hints

import numpy as np

from gramil import names as n
from gramil.decimals import fixed, plus_zero
from gramil.graph import Figures
from gramil.measure import InchStyle, LengthUnit, show, show_angle
from gramil.quantities import unit_of
from gramil.reference import Ref, Text, filled

NOT_KNOWN = "not known"
PLACES = {
    "cent": (2, "cent"),
    "cent/mm": (2, "cent/mm"),
    "Hz": (2, "Hz"),
    "N": (1, "N"),
    "N mm": (0, "N mm"),
    "N m": (1, "N m"),
    "N mm2": (0, "N mm²"),
    "MPa": (0, "MPa"),
    "g/m": (3, "g/m"),
    "g": (1, "g"),
    "kg/m3": (0, "kg/m³"),
    "%": (1, "%"),
    "C": (1, "°C"),
}
"""Decimals and written form of each unit that is shown as it stands."""
POWERS = {"mm2": 2, "mm3": 3, "mm4": 4}
RAISED = {2: "²", 3: "³", 4: "⁴"}
MANY = 1e4
"""From so many square or cubic millimetres on, areas and volumes are shown in centimetres."""


@dataclass(frozen=True)
class Formatter:
    """Figures as text, the maker's unit first. Every method raises KeyError for an address that leads nowhere.

    A figure is asked for by its reference, or by the address that a maker wrote.
    """

    figures: Figures
    first: LengthUnit = "mm"
    inch_style: InchStyle = "decimal"

    @property
    def second(self) -> LengthUnit:
        """The other unit of length."""
        return "in" if self.first == "mm" else "mm"

    def text(self, figure: Ref[Any] | str) -> str:
        """The figure in the maker's unit: `45.50 mm`, `0.95°`, `flat`, `yes`, `3, 5 and 7`."""
        return shown(self.figures.at(figure), self.figures.unit_at(figure), self.first, self.inch_style)

    def other(self, figure: Ref[Any] | str) -> str:
        """The same in the other unit of length; empty for anything but a finite length."""
        return self._other(self.figures.at(figure), self.figures.unit_at(figure))

    def both(self, figure: Ref[Any] | str) -> tuple[str, str]:
        """The figure in the maker's unit and in the other one."""
        return self.both_of(self.figures.at(figure), self.figures.unit_at(figure))

    def both_of(self, value: Any, unit: str | None) -> tuple[str, str]:
        """The same for a given value with its unit's symbol."""
        return shown(value, unit, self.first, self.inch_style), self._other(value, unit)

    def _other(self, value: Any, unit: str | None) -> str:
        return shown(value, "mm", self.second, self.inch_style) if unit == "mm" and _finite(value) else ""

    def filled(self, text: Text) -> str:
        """A text with every figure in it written out."""
        return filled(text, self.text)


def formatter_of(figures: Figures) -> Formatter:
    """Figures as text, in the unit that the description asks for first."""
    return Formatter(figures, figures[n.instrument_units])


def shown(value: Any, unit: str | None, first: LengthUnit = "mm", inch_style: InchStyle = "decimal") -> str:
    """One value as text; `unit` is its unit's symbol (None for words, flags and records), lengths in mm."""
    if isinstance(value, bool | np.bool_):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    if isinstance(value, np.ndarray):
        return _run(value, lambda each: shown(float(each), unit, first, inch_style))
    if isinstance(value, tuple | list):
        return _listed([_member(each, unit, first, inch_style) for each in value])
    if is_dataclass(value) and not isinstance(value, type):
        return _record(value, first, inch_style)
    return _number(value, unit, first, inch_style)


def parted(text: str) -> tuple[str, str]:
    """A shown figure as its number and its unit, for setting them apart: `("45.50", "mm")`, `("flat", "")`."""
    found = re.fullmatch(r"([-−]?\d[\d.]*)(?:\s+|(?=°))(\S.*)", text)
    return (found[1], found[2]) if found and "/" not in text else (text, "")


def _number(value: Any, unit: str | None, first: LengthUnit, inch_style: InchStyle) -> str:
    if value is None or math.isnan(value):
        return NOT_KNOWN
    if math.isinf(value):
        return "flat" if unit == "mm" else "without end"
    return _finite_number(value, unit, first, inch_style)


def _finite_number(value: Any, unit: str | None, first: LengthUnit, inch_style: InchStyle) -> str:
    if unit == "mm":
        return show(value, first, inch_style)
    if unit == "rad":
        return show_angle(value)
    if unit == "1/mm":
        return "flat" if value == 0 else f"radius {show(1 / value, first, inch_style)}"
    if unit in POWERS:
        return _power(float(value), POWERS[unit], first)
    if unit in PLACES:
        places, written = PLACES[unit]
        return f"{fixed(value, places)} {written}"
    if isinstance(value, int | np.integer) or unit == "count":
        return str(int(value))
    return _plain(value)


def _power(value: float, power: int, first: LengthUnit) -> str:
    """An area, a volume or a second moment: in mm, or in cm if the number would be large, or in inches to four
    digits.
    """
    if first == "in":
        inches = value / 25.4**power
        places = max(0, 3 - math.floor(math.log10(abs(inches)))) if inches else 0
        return f"{plus_zero(f'{inches:.{min(places, 6)}f}')} in{RAISED[power]}"
    if power < 4 and abs(value) >= MANY:
        return f"{value / 10**power:.1f} cm{RAISED[power]}"
    return f"{plus_zero(f'{value:.{1 if power == 2 else 0}f}')} mm{RAISED[power]}"


def _plain(value: float) -> str:
    """A number without unit: four decimals at most, and no needless zeros."""
    return plus_zero(f"{value:.4f}".rstrip("0").rstrip("."))


def _finite(value: Any) -> bool:
    return bool(np.all(np.isfinite(value))) if isinstance(value, float | int | np.ndarray) else False


def _run(values: np.ndarray, each: Callable[[Any], str]) -> str:
    """An array as its least and its greatest (`0.00 to 419.76 mm`); a single value if all show the same."""
    known = values[~np.isnan(values)]
    if known.size == 0:
        return NOT_KNOWN
    least, most = each(known.min()), each(known.max())
    if least == most:
        return least
    (number, unit), (_, other) = parted(least), parted(most)
    return f"{number} to {most}" if unit and unit == other else f"{least} to {most}"


def _member(value: Any, unit: str | None, first: LengthUnit, inch_style: InchStyle) -> str:
    name = getattr(value, "name", None)
    return name if isinstance(name, str) else shown(value, unit, first, inch_style)


def _listed(words: list[str]) -> str:
    if not words:
        return "none"
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def _record(value: Any, first: LengthUnit, inch_style: InchStyle) -> str:
    """A record as its fields, one after another, each with its own unit."""
    kind: type = type(value)
    units = _units(kind)
    shown_fields = (
        (each.name.replace("_", " "), shown(getattr(value, each.name), units[each.name], first, inch_style))
        for each in fields(value)
    )
    return "; ".join(f"{name} {text}" for name, text in shown_fields)


@cache
def _units(record: type) -> dict[str, str | None]:
    found = {name: unit_of(hint) for name, hint in get_type_hints(record, include_extras=True).items()}
    return {name: unit.symbol if unit else None for name, unit in found.items()}
