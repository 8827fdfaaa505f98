"""Numbers as text with a given number of decimals, never minus zero: a sign on zero would mislead."""

import re
from decimal import Decimal
from fractions import Fraction
from math import isfinite

DIGITS = 12
"""Significant digits of a number that is written for programs."""


_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


def plus_zero(text: str) -> str:
    """A number's text, without the minus sign if it is rounded to zero."""
    return text[1:] if text.startswith("-") and not text.strip("-0.") else text


def fixed(value: float, places: int) -> str:
    """Rounded to this many decimals: `1.20`, `-0.35`, `0.00`."""
    return plus_zero(f"{value:.{places}f}")


def signed(value: float, places: int) -> str:
    """The same with its sign, if it has one: `+1.20`, `-0.35`, `0.00`."""
    text = fixed(value, places)
    return f"+{text}" if value > 0 and text.strip("0.") else text


def twelve_digits(value: float) -> float:
    """To twelve digits, far beyond what anybody measures: the last of the sixteen differ between versions of Python,
    which add up floats in different ways, and what is written is to be the same on all.
    """
    return float(f"{value:.{DIGITS}g}") if isfinite(value) else value


def coarse(text: str, digits: int) -> str:
    """A text with each number in it to this many digits that count: `1720 g` of `1722.4 g` to three, `26 g` to two."""
    return _NUMBER.sub(lambda found: _to_digits(found[0], digits), text)


def _to_digits(number: str, digits: int) -> str:
    """Rounded, half to even, and never closer than it stood there."""
    rounded = Decimal(f"{Decimal(number):.{digits}g}")
    return min(f"{rounded:f}", number, key=len)


def exact(value: float) -> Fraction:
    """The decimal that a double's shortest text shows, exactly: 0.1 is a tenth. Raises ValueError if not finite."""
    return Fraction(repr(float(value)))


def fixed_exactly(value: float | Fraction, places: int) -> str:
    """Rounded to this many decimals, half to even, never minus zero. Raises ValueError if not finite."""
    if isinstance(value, float) and (text := clearly(value, places)):
        return text
    scaled = round((exact(value) if isinstance(value, float) else value) * 10**places)
    whole, decimals = divmod(abs(scaled), 10**places)
    return f"{'-' if scaled < 0 else ''}{whole}.{decimals:0{places}d}"


def clearly(value: float, places: int) -> str:
    """The same by plain formatting, if the number is not near a tie that needs the exact decimal; else empty."""
    scaled = abs(value) * 10**places
    if not scaled < 1e9 or abs(scaled % 1 - 0.5) < 1e-6:
        return ""
    text = f"{value:.{places}f}"
    return text[1:] if text.startswith("-") and not text.strip("-0.") else text
