"""Measures as makers write and read them: text with a unit in, exact figures inside, rounded text out.

One parser and a table of units for each quantity. Numbers are exact fractions until the end, so that `5/64 in` is
exactly the double nearest to 1.984375 mm. Text with two possible meanings is refused, saying what to write.
Factors are exact by definition: the inch is 25.4 mm and the pound 453.59237 g (international yard and pound
agreement, 1959), the ounce a sixteenth of a pound.
"""

import math
import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from typing import Literal

from gramil.decimals import exact, fixed_exactly, signed
from gramil.faults import MakersFault
from gramil.inches import in_64ths, in_inches
from gramil.quantities import Celsius, Gram, GramPerM, Mm, Percent, Radians

LengthUnit = Literal["mm", "in"]
InchStyle = Literal["decimal", "64ths"]
TemperatureUnit = Literal["C", "F"]


class MeasureError(MakersFault, ValueError):
    """A measure that cannot be read for certain; carries one fault: what was read, why it is refused, what to write."""


def read_length(written: str | int | float, unit: LengthUnit) -> Mm:
    """Millimetres; a bare number is in `unit`. Raises MeasureError.

    Reads `655.3 mm`, `1.2 cm`, `6 m`, `25 1/2 in`, `1-7/8"`, `2½"`, `.031"`, `12 thou`, `3'`, `2' 3 1/2"`, and a 64th
    with its remainder as `show` gives it. Refuses decimal commas, `mil`, and ambiguous fractions.
    """
    return _read(written, unit, _LENGTH)


def read_angle(written: str | int | float, unit: Literal["deg", "rad"] = "deg") -> Radians:
    """Radians from degrees (`14 deg`, `14°`) or radians (`0.2 rad`). Raises MeasureError."""
    return _read(written, unit, _ANGLE)


def read_mass(written: str | int | float, unit: Literal["g", "kg", "oz"] = "g") -> Gram:
    """Grams from g, kg, oz (avoirdupois) or lb. Raises MeasureError."""
    return _read(written, unit, _MASS)


def read_mass_per_length(written: str | int | float, unit: Literal["g/m", "mg/mm", "lb/in"] = "g/m") -> GramPerM:
    """Grams a metre from g/m, mg/mm or lb/in. Raises MeasureError."""
    return _read(written, unit, _MASS_PER_LENGTH)


def read_temperature(written: str | int | float, unit: TemperatureUnit = "C") -> Celsius:
    """Degrees Celsius from C or F, with or without the degree sign. Raises MeasureError."""
    return _read(written, unit, _TEMPERATURE)


def read_percent(written: str | int | float) -> Percent:
    """Per cent, the sign optional: `45 %` and `45` are both 45. Raises MeasureError."""
    return _read(written, "%", _PERCENT)


def show(value_mm: Mm, unit: LengthUnit, inch_style: InchStyle = "decimal") -> str:
    """A finite length in mm as text: mm to 0.01, inches to 0.001 or the nearest 64th with the remainder."""
    if unit == "mm":
        return f"{fixed_exactly(value_mm, 2)} mm"
    return in_64ths(value_mm) if inch_style == "64ths" else in_inches(value_mm, 3)


def show_change(change_mm: Mm, unit: LengthUnit) -> str:
    """By how much a finite length changes, with its sign: mm to 0.001, inches to 0.0001; nothing has no sign."""
    return f"{signed(change_mm, 3)} mm" if unit == "mm" else f"{signed(change_mm / 25.4, 4)} in"


def show_temperature(celsius: Celsius, unit: TemperatureUnit, places: int = 1) -> str:
    """A finite temperature as text in the unit that the shop reads: `21.0 °C`, `69.8 °F`."""
    return f"{fixed_exactly(in_degrees(celsius, unit), places)} °{unit}"


def in_degrees(celsius: Celsius, unit: TemperatureUnit) -> float:
    """The number of degrees of a temperature in a unit."""
    return celsius if unit == "C" else celsius * 1.8 + 32.0


def show_angle(value: Radians) -> str:
    """An angle in radians as degrees to 0.01: `14.00°`."""
    return f"{fixed_exactly(math.degrees(value), 2)}°"


@dataclass(frozen=True)
class _Unit:
    """Figure inside = number * factor + offset; `mixed` if the trade writes whole numbers with a fraction."""

    factor: Fraction
    mixed: bool = False
    offset: Fraction = Fraction(0)

    @cached_property
    def as_it_is(self) -> bool:
        """Whether a number in this unit is used inside as it stands."""
        return self.factor == 1 and self.offset == 0


@dataclass(frozen=True)
class _Quantity:
    """The units of one quantity by every spelling (lower case), examples, and the size that is absurd.

    `doubtful` holds units with two meanings: why, and what to write instead, with the number put in.
    """

    name: str
    units: Mapping[str, _Unit]
    write: str
    least: Fraction
    most: Fraction
    bounds: str
    doubtful: Mapping[str, tuple[str, str]] = field(default_factory=dict)


INCH = _Unit(Fraction("25.4"), mixed=True)
FOOT = _Unit(12 * INCH.factor, mixed=True)
_MILLIMETRE = _Unit(Fraction(1))
_CENTIMETRE = _Unit(Fraction(10))
_METRE = _Unit(Fraction(1000))
_THOU = _Unit(INCH.factor / 1000)
_POUND = Fraction("453.59237")
_GRAM = _Unit(Fraction(1))
_MIL = ("A mil is a millimetre in some shops and a thousandth of an inch in others", 'Write "{0} mm" or "{0} thou"')
_DEGREE = _Unit(Fraction(math.pi) / 180)
_CELSIUS = _Unit(Fraction(1))
_FAHRENHEIT = _Unit(Fraction(5, 9), offset=Fraction(-160, 9))

_LENGTH = _Quantity(
    name="length",
    units={
        **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), _MILLIMETRE),
        "cm": _CENTIMETRE,
        "m": _METRE,
        **dict.fromkeys(("in", "in.", "inch", "inches", '"', "″", "”"), INCH),
        **dict.fromkeys(("ft", "ft.", "foot", "feet", "'", "′", "’"), FOOT),
        "thou": _THOU,
    },
    write='Write it like "18.3 mm", "25 1/2 in", "0.031 in" or "12 thou"',
    least=Fraction(-100_000),
    most=Fraction(100_000),
    bounds="between -100 m and 100 m",
    doubtful={"mil": _MIL, "mils": _MIL},
)
_ANGLE = _Quantity(
    name="angle",
    units={
        **dict.fromkeys(("deg", "degree", "degrees", "°"), _DEGREE),
        **dict.fromkeys(("rad", "radian", "radians"), _Unit(Fraction(1))),
    },
    write='Write it like "14.5 deg" or "0.25 rad"',
    least=-360 * _DEGREE.factor,
    most=360 * _DEGREE.factor,
    bounds="between -360 deg and 360 deg",
)
_MASS = _Quantity(
    name="mass",
    units={
        "g": _GRAM,
        "kg": _Unit(Fraction(1000)),
        "oz": _Unit(_POUND / 16, mixed=True),
        "lb": _Unit(_POUND, mixed=True),
    },
    write='Write it like "210 g", "1.9 kg" or "7 1/2 oz"',
    least=Fraction(0),
    most=Fraction(1_000_000),
    bounds="between 0 and 1000 kg",
)
_MASS_PER_LENGTH = _Quantity(
    name="mass per length",
    units={
        **dict.fromkeys(("g/m", "mg/mm"), _GRAM),
        "kg/m": _Unit(Fraction(1000)),
        "lb/in": _Unit(_POUND / (INCH.factor / 1000)),
    },
    write='Write it like "0.403 g/m", "0.403 mg/mm" or "0.0000226 lb/in"',
    least=Fraction(0),
    most=Fraction(1_000_000),
    bounds="between 0 and 1000 kg/m",
)
_TEMPERATURE = _Quantity(
    name="temperature",
    units={**dict.fromkeys(("c", "°c"), _CELSIUS), **dict.fromkeys(("f", "°f"), _FAHRENHEIT)},
    write='Write it like "21 C" or "70 F"',
    least=Fraction("-273.15"),
    most=Fraction(1000),
    bounds="between -273.15 C and 1000 C",
)
_PERCENT = _Quantity(
    name="percentage",
    units={"%": _Unit(Fraction(1))},
    write='Write it like "45 %"',
    least=Fraction(-1000),
    most=Fraction(1000),
    bounds="between -1000 % and 1000 %",
)

SPELLINGS = {each.name: tuple(each.units) for each in (_LENGTH, _ANGLE, _MASS, _TEMPERATURE, _PERCENT)}
"""How the units of each quantity may be written, in lower case."""


def _vulgar_fractions() -> dict[str, Fraction]:
    """Each character that is a fraction by itself (½, ⅞, ...) and its value, from the Unicode tables."""
    blocks = (*range(0xBC, 0xBF), *range(0x2150, 0x215F), 0x2189)
    return {chr(code): Fraction(unicodedata.normalize("NFKC", chr(code)).replace("⁄", "/")) for code in blocks}


_VULGAR = _vulgar_fractions()
_CHARACTERS = "".join(_VULGAR)
_MINUS = "\\-−"
_PART = re.compile(
    rf"""(?P<sign>[+{_MINUS}]?)\s*
    (?:(?:(?P<whole>[0-9]+)(?:\s+|-|(?=[{_CHARACTERS}])))?(?P<fraction>[0-9]+[/⁄][0-9]+|[{_CHARACTERS}])
      |(?P<decimal>[0-9]+(?:\.[0-9]+)?|\.[0-9]+))
    \s*(?P<unit>(?:[^0-9.+{_MINUS}{_CHARACTERS}]|\.(?![0-9]))*)""",
    re.VERBOSE,
)
_FEET_TO_INCHES = re.compile(r"(?<=['′’])-(?=[0-9])")
_SIGNS = {"": 1, "+": 1, "-": -1}
_LONGEST = 80
"""Characters of text that are read; no measure needs more."""


class _DoubtError(Exception):
    """Why a text cannot be read for certain, and what to write; becomes a MeasureError that quotes the whole text."""

    def __init__(self, why: str, remedy: str = "") -> None:
        super().__init__(why)
        self.why, self.remedy = why, remedy


@dataclass(frozen=True)
class _Part:
    """One number of a text, its unit (None where none is written) and its sign, if it has one."""

    number: Fraction
    unit: _Unit | None
    sign: str


def _read(written: str | int | float, unit: str, quantity: _Quantity) -> float:
    """The figure inside; a bare number is in `unit`."""
    default = quantity.units[unit.lower()]
    if type(written) is float and default.as_it_is and quantity.least <= written <= quantity.most:
        return written
    try:
        exact = _text(written.strip(), default, quantity) if isinstance(written, str) else _bare(written, default)
        if not quantity.least <= exact <= quantity.most:
            raise _DoubtError(f"It is not {quantity.bounds}")
    except _DoubtError as doubt:
        article = "an" if quantity.name.startswith("a") else "a"
        what = f"“{_quotable(written)}” cannot be read as {article} {quantity.name}"
        raise MeasureError.of(what, doubt.why, doubt.remedy or quantity.write) from None
    return float(exact)


def _quotable(written: object) -> str:
    """What was written, safe to print: cut short, and without control characters."""
    try:
        text = str(written).strip()
    except ValueError:  # Python refuses to print an integer with thousands of digits
        return "a number of thousands of digits"
    text = "".join(character if character.isprintable() else "�" for character in text)
    return text if len(text) <= _LONGEST else f"{text[:_LONGEST]}..."


def _bare(written: int | float, default: _Unit) -> Fraction:
    """A number without quotes in a file, taken as the decimal that its shortest text shows."""
    if isinstance(written, bool) or not isinstance(written, int | float):
        raise _DoubtError("It is not a number")
    try:
        return exact(written) * default.factor + default.offset
    except (ValueError, OverflowError):
        raise _DoubtError("It is not a finite number") from None


def _text(text: str, default: _Unit, quantity: _Quantity) -> Fraction:
    """The figure inside from text, which may hold one number, or two that belong together."""
    _refuse_at_sight(text)
    text = _FEET_TO_INCHES.sub(" ", text)
    matches = list(_PART.finditer(text))
    if "".join(match[0] for match in matches) != text:
        raise _DoubtError("It is not a number with a unit")
    return _total([_part(match, default, quantity) for match in matches], default)


def _refuse_at_sight(text: str) -> None:
    """Refuse what need not be read at all: empty or overlong text, no number, or a comma."""
    if not text:
        raise _DoubtError("Nothing is written")
    if len(text) > _LONGEST:
        raise _DoubtError(f"It is longer than {_LONGEST} characters")
    if not any(character in _CHARACTERS or character in "0123456789" for character in text):
        raise _DoubtError("There is no number in it")
    if "," in text:
        _refuse_comma(text)


def _refuse_comma(text: str) -> None:
    """A comma is a decimal point to some and a thousands separator to others: offer the possible meanings."""
    text = _quotable(text)
    offers = []
    if text.count(",") == 1:
        offers.append(f'"{text.replace(",", ".")}" if the comma is a decimal point')
    if re.search(r"[0-9],[0-9]{3}(?![0-9])", text):
        offers.append(f'"{text.replace(",", "")}" if it marks thousands')
    why = "A comma may be a decimal point or mark thousands"
    raise _DoubtError(why, f"Write {', '.join(offers)}" if offers else "")


def _part(match: re.Match[str], default: _Unit, quantity: _Quantity) -> _Part:
    """One number and its unit; an improper fraction or an unknown unit is refused."""
    number = Fraction(match["decimal"]) if match["decimal"] else _with_fraction(match)
    word = match["unit"].strip()
    unit = _unit(word, number, quantity)
    if match["fraction"] and not (unit or default).mixed:
        _refuse_slip(match, number, word, quantity)
    return _Part(number, unit, match["sign"].replace("−", "-"))


def _with_fraction(match: re.Match[str]) -> Fraction:
    """The value of `7/8`, `1 7/8`, `1-7/8` or `1⅞`; the fraction must be less than one."""
    whole, written = int(match["whole"] or 0), match["fraction"]
    if written in _VULGAR:
        return whole + _VULGAR[written]
    upper, lower = map(int, re.split("[/⁄]", written))
    if lower == 0:
        raise _DoubtError("Nothing can be divided by 0")
    if upper >= lower:
        why = f"{written} is not less than one: a space may be missing"
        raise _DoubtError(why, 'Write a whole number and a fraction, like "1 7/8 in"')
    return whole + Fraction(upper, lower)


def _unit(word: str, number: Fraction, quantity: _Quantity) -> _Unit | None:
    """The unit as written, in any case; None if there is none."""
    if word.lower() in quantity.doubtful:
        why, remedy = quantity.doubtful[word.lower()]
        raise _DoubtError(why, remedy.format(f"{float(number):g}"))
    if word and word.lower() not in quantity.units:
        raise _DoubtError(f"“{_quotable(word)}” is not a unit of {quantity.name}")
    return quantity.units.get(word.lower())


def _refuse_slip(match: re.Match[str], number: Fraction, word: str, quantity: _Quantity) -> None:
    """Outside inches and feet a fraction needs its unit, and a whole number with a fraction is likely a slip."""
    if not word:
        raise _DoubtError("A fraction without a unit could be inches", f"Give the unit. {quantity.write}")
    if match["whole"]:
        why = f"A whole number with a fraction is how inches are written, not {word}"
        raise _DoubtError(why, f'Write "{float(number):g} {word}", or the unit that is meant')


def _total(parts: list[_Part], default: _Unit) -> Fraction:
    """One number; or feet and inches, the sign over both; or inches and a signed remainder of less than a 64th."""
    sign = _SIGNS[parts[0].sign]
    match parts:
        case [one]:
            unit = one.unit or default
            return sign * one.number * unit.factor + unit.offset
        case [_Part(unit=first) as feet, _Part(unit=second, sign="") as inches] if first is FOOT and second is INCH:
            if feet.number.denominator != 1 or inches.number >= 12:
                raise _DoubtError("Feet with inches are whole, and the inches fewer than 12")
            return sign * (feet.number * FOOT.factor + inches.number * INCH.factor)
        case [_Part(unit=first) as inches, _Part(unit=None, sign="+" | "-") as rest] if first is INCH:
            if rest.number >= Fraction(1, 64):
                raise _DoubtError("What is added to a fraction of an inch must be less than a 64th")
            return (sign * inches.number + _SIGNS[rest.sign] * rest.number) * INCH.factor
        case _:
            raise _DoubtError("There is more than one number in it, and they could belong together in several ways")
