"""How every figure is shown: the one place that turns a value and its unit into words.

A millimetre shop reads lengths in mm, with inches beside them. An inch shop reads decimals, with 64ths beside them
wherever a rule is the tool, and feet where it is a dish (`measured_by.py`). Angles are in degrees; an infinite radius
is "flat", an unknown value says so. The command line, drawings, sheets and pages all read figures through a
`Formatter`.
"""

import math
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, fields, is_dataclass, replace
from functools import cache
from typing import Any, get_type_hints

import numpy as np

from gramil import names as n
from gramil.decimals import coarse, fixed, plus_zero
from gramil.graph import Figures
from gramil.in_shop_units import POUND_FORCE, in_shop_units
from gramil.inches import as_a_limit, in_64ths, in_inches, inch_places
from gramil.measure import (
    LengthUnit,
    TemperatureUnit,
    show,
    show_angle,
    show_temperature,
)
from gramil.measured_by import Way, beside_inches, digits_worth, is_flat_dish, way_of
from gramil.quantities import unit_of
from gramil.reference import Ref, Text, filled, name_of

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
IN_INCH_SHOPS = {
    "N": (1 / POUND_FORCE, 1, "lbf"),
    "N mm": (1 / (POUND_FORCE * 25.4), 1, "in-lb"),
    "N m": (1000 / (POUND_FORCE * 25.4), 1, "in-lb"),
    "N mm2": (1 / (POUND_FORCE * 25.4**2), 1, "lbf in²"),
    "MPa": (25.4**2 / POUND_FORCE, 0, "psi"),
    "cent/mm": (25.4, 1, "cent/in"),
    "g/m": (0.0254 / 453.59237, 8, "lb/in"),
}
"""Of the same, what an inch shop reads in other units: the factor, decimals and the written form."""
POWERS = {"mm2": 2, "mm3": 3, "mm4": 4}
RAISED = {2: "²", 3: "³", 4: "⁴"}
ALIKE = 1e-9
"""In mm: lengths that differ by less are the same; figures that follow from one another agree to within this."""
MOST = 8
"""The most decimals by which figures are told apart."""
POINTS_READ = 6
"""The most points of a line that are written out one by one."""
MANY = 1e4
"""From this many square or cubic millimetres on, areas and volumes are shown in centimetres."""


@dataclass(frozen=True)
class Formatter:
    """Figures as text, the maker's unit first. Every method raises KeyError for an address that leads nowhere.

    A figure is asked for by its reference, or by the address that a maker wrote.
    """

    figures: Figures
    first: LengthUnit = "mm"
    places: Mapping[str, int] = field(default_factory=dict[str, int])
    """Decimals of figures that are given more closely than usual, by address."""

    def text(self, figure: Ref[Any] | str) -> str:
        """The figure in the maker's unit: `45.50 mm`, `0.95°`, `flat`, `yes`, `3, 5 and 7`."""
        return self.text_of(str(figure), self.figures.at(figure), self.figures.unit_at(figure))

    def said(self, figure: Ref[Any] | str) -> str:
        """The figure as it stands within words: in an inch shop with its 64ths or feet beside it in parentheses."""
        beside = self.other(figure) if self.first == "in" else ""
        return f"{self.text(figure)} ({_numbers(beside)})" if beside else self.text(figure)

    def other(self, figure: Ref[Any] | str) -> str:
        """What stands beside a finite length: inches, or in an inch shop its 64ths or feet; else empty."""
        return self._other(str(figure), self.figures.at(figure), self.figures.unit_at(figure))

    def in_64ths(self, figure: Ref[Any] | str) -> str:
        """A length as the nearest 64th of an inch, with what is left over; empty if it is not known or not a length."""
        value = self.figures.at(figure)
        return in_64ths(value) if self.figures.unit_at(figure) == "mm" and _finite(value) else ""

    def both(self, figure: Ref[Any] | str) -> tuple[str, str]:
        """The figure in the maker's unit, and what stands beside it."""
        return self.both_of(str(figure), self.figures.at(figure), self.figures.unit_at(figure))

    def both_lengths(self, length: float) -> tuple[str, str]:
        """A finite length in mm that is no figure of the graph, and what stands beside it: inches, or 64ths."""
        return _length(length, self.first), _thou(length) if self.first == "mm" else in_64ths(length)

    def both_of(self, address: str, value: Any, unit: str | None) -> tuple[str, str]:
        """The same for a given value of the figure at an address, with its unit's symbol."""
        return self.text_of(address, value, unit), self._other(address, value, unit)

    @property
    def degrees(self) -> TemperatureUnit:
        """The unit in which the shop reads temperatures."""
        return self.figures[n.shop_temperature]

    def text_of(self, address: str, value: Any, unit: str | None) -> str:
        """A given value of the figure at an address, in the first unit, as it is worth showing: an estimate in few
        digits, unless it was measured.
        """
        digits = None if unit is None or address in self.figures.pins else digits_worth(address)
        text = self._exact_text(address, value, unit)
        return text if digits is None else coarse(text, digits)

    def _exact_text(self, address: str, value: Any, unit: str | None) -> str:
        if unit == "C" and _finite(value):
            return show_temperature(value, self.degrees)
        if unit == "mm" and address in self.places:
            return f"{_to_places(value, self.first, self.places[address])} {self.first}"
        if unit == "mm" and _finite(value) and not isinstance(value, np.ndarray):
            if is_flat_dish(address, value):
                return f"{fixed(value, 0)} mm" if self.first == "mm" else in_inches(value, 1)
            if self.first == "in":
                return in_inches(value, 4 if self._way(address, value) == "micrometer" else inch_places(value))
        return shown(value, unit, self.first)

    def _other(self, address: str, value: Any, unit: str | None) -> str:
        if unit == "1/mm" and self.first == "in" and value:
            return beside_inches(1 / value, "dish")
        if unit != "mm" or not _finite(value):
            return ""
        if self.first == "in":
            return "" if isinstance(value, np.ndarray) else beside_inches(value, self._way(address, value))
        if isinstance(value, np.ndarray):
            return _run(value, _thou)
        return in_inches(value, 1) if is_flat_dish(address, value) else _thou(value)

    def _way(self, address: str, value: float) -> Way:
        return way_of(address, value, lambda limit: float(self.figures.at(f"limit_{limit}")))

    def apart(self, one: Ref[Any], other: Ref[Any]) -> "Formatter":
        """A formatter that tells two lengths apart: more decimals for both if they differ and show as the same."""
        pair = (one.address, other.address)
        values = [self.figures.at(each) for each in pair]
        if {self.figures.unit_at(each) for each in pair} != {"mm"} or not all(map(_single, values)):
            return self
        if math.isclose(*values, abs_tol=ALIKE) or self.text(pair[0]) != self.text(pair[1]):
            return self
        places = next(
            (count for count in range(2, MOST) if len({_to_places(each, self.first, count) for each in values}) > 1),
            MOST,
        )
        return replace(self, places={**self.places, **dict.fromkeys(pair, places)})

    def origin(self, figure: Ref[Any] | str) -> str:
        """Where a base value, or one figure of it, came from, its measures in the maker's unit; empty if derived."""
        name = name_of(figure if isinstance(figure, Ref) else Ref(figure))
        return in_shop_units(str(self.figures.origins.get(name, "")), self.first)

    def filled(self, text: Text) -> str:
        """A text with every figure in it written out."""
        return filled(text, self.said)

    def filled_near(self, text: Text) -> str:
        """The same of how near a figure must come: an inch shop reads small limits as a maker says them, `± 0.004 in`.

        What is 0.0001 in past such a limit shows as the limit itself in mm, and is near enough by its tolerance.
        """
        return filled(text, self._limit)

    def _limit(self, figure: Ref[Any]) -> str:
        if self.first == "in" and figure.address.startswith("limit_") and self.figures.unit_at(figure) == "mm":
            value = self.figures.at(figure)
            return as_a_limit(value) or self.said(figure)
        return self.said(figure)


def _single(value: Any) -> bool:
    return isinstance(value, float) and math.isfinite(value)


def _to_places(value: float, first: LengthUnit, places: int) -> str:
    return fixed(value if first == "mm" else value / 25.4, places)


def _thou(value: float) -> str:
    """A length in inches as it stands beside millimetres."""
    return show(value, "in")


def _numbers(beside: str) -> str:
    """64ths without their unit, since decimals with it stand before them: `17 25/32 + 0.004`; feet keep theirs."""
    return beside.replace(" in", "", 1)


def formatter_of(figures: Figures) -> Formatter:
    """Figures as text, in the unit that the description asks for first."""
    return Formatter(figures, figures[n.instrument_units])


def shown(value: Any, unit: str | None, first: LengthUnit = "mm") -> str:
    """One value as text; `unit` is its unit's symbol (None for words, flags and records), lengths in mm."""
    if isinstance(value, bool | np.bool_):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    if isinstance(value, np.ndarray):
        return _run(value, lambda each: shown(float(each), unit, first))
    if isinstance(value, tuple | list):
        if _is_line(value):
            return _line(value, first)
        return _listed([_member(each, unit, first) for each in value])
    if is_dataclass(value) and not isinstance(value, type):
        return _record(value, first)
    return _number(value, unit, first)


def parted(text: str) -> tuple[str, str]:
    """A shown figure as its number and its unit, for setting them apart: `("45.50", "mm")`, `("flat", "")`.

    One in 64ths stays whole.
    """
    found = re.fullmatch(r"([-−]?\d[\d.]*)(?:\s+|(?=°))(\D.*)", text)
    return (found[1], found[2]) if found else (text, "")


def _number(value: Any, unit: str | None, first: LengthUnit) -> str:
    if value is None or math.isnan(value):
        return NOT_KNOWN
    if math.isinf(value):
        return "flat" if unit == "mm" else "without end"
    return _finite_number(value, unit, first)


def _finite_number(value: Any, unit: str | None, first: LengthUnit) -> str:
    if unit == "mm":
        return _length(value, first)
    if unit == "rad":
        return show_angle(value)
    if unit == "1/mm":
        return "flat" if value == 0 else f"radius {_length(1 / value, first)}"
    if unit in POWERS:
        return _power(float(value), POWERS[unit], first)
    if first == "in" and unit in IN_INCH_SHOPS:
        factor, places, written = IN_INCH_SHOPS[unit]
        number = _three_digits(value * factor) if written == "psi" else fixed(value * factor, places)
        return f"{number} {written}"
    if unit in PLACES:
        places, written = PLACES[unit]
        return f"{fixed(value, places)} {written}"
    if isinstance(value, int | np.integer) or unit == "count":
        return str(int(value))
    return _plain(value)


def _three_digits(value: float) -> str:
    """Stiffness and stress in psi, to three digits: what is written as 12000 MPa is not known to a pound."""
    return fixed(float(f"{value:.3g}"), 0)


def _length(value: float, first: LengthUnit) -> str:
    return show(value, "mm") if first == "mm" else in_inches(value, inch_places(value))


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
    if isinstance(value, float | int):
        return math.isfinite(value)
    return isinstance(value, np.ndarray) and bool(np.all(np.isfinite(value)))


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


def _member(value: Any, unit: str | None, first: LengthUnit) -> str:
    name = getattr(value, "name", None)
    return name if isinstance(name, str) else shown(value, unit, first)


def _listed(words: list[str]) -> str:
    if not words:
        return "none"
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def _is_line(value: Sequence[Any]) -> bool:
    """Whether a list is the points of a line, by places along and across, too many to be read one by one."""
    return len(value) > POINTS_READ and all(
        isinstance(each, tuple) and len(each) == 2 and all(isinstance(one, float | int) for one in each)
        for each in value
    )


def _line(points: Sequence[tuple[float, float]], first: LengthUnit) -> str:
    """What a maker can use of a line of points in mm: how many, from where to where, how long it is, and where it is
    farthest off the axis and, between two wider places, nearest to it.
    """
    along, across = np.array(points, dtype=float).T
    if not (np.isfinite(along).all() and np.isfinite(across).all()):
        return f"{len(points)} points, not all known"
    wide, span = np.abs(across), _run(along, lambda each: _length(each, first))
    long = _length(float(np.hypot(np.diff(along), np.diff(across)).sum()), first)
    most = _off_at(wide, along, wide.argmax(), first)
    told = f"{len(points)} points from {span}, {long} long, off the axis at most {most}"
    waists = [
        each for each in range(1, len(wide) - 1) if ALIKE < wide[each] < wide[each - 1] and wide[each] <= wide[each + 1]
    ]
    waist = min(waists, key=lambda each: wide[each], default=None)
    return told if waist is None else f"{told}, between {_off_at(wide, along, waist, first)}"


def _off_at(wide: np.ndarray, along: np.ndarray, row: int | np.intp, first: LengthUnit) -> str:
    return f"{_length(float(wide[row]), first)} at {_length(float(along[row]), first)}"


def _record(value: Any, first: LengthUnit) -> str:
    """A record as its fields, one after another, each with its own unit."""
    kind: type = type(value)
    units = _units(kind)
    shown_fields = (
        (each.name.replace("_", " "), shown(getattr(value, each.name), units[each.name], first))
        for each in fields(value)
    )
    return "; ".join(f"{name} {text}" for name, text in shown_fields)


@cache
def _units(record: type) -> dict[str, str | None]:
    found = {name: unit_of(hint) for name, hint in get_type_hints(record, include_extras=True).items()}
    return {name: unit.symbol if unit else None for name, unit in found.items()}
