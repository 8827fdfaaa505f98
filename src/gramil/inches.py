"""Lengths as an inch shop says them: decimals, the nearest 64th with what is left over, feet.

An inch is 25.4 mm (international yard and pound agreement, 1959).
"""

from fractions import Fraction

from gramil.decimals import clearly, exact, fixed_exactly
from gramil.quantities import Mm

INCH = Fraction("25.4")
THOU = 0.0254
"""A thousandth of an inch, in mm."""
A_64TH = 25.4 / 64
"""The finest line of a rule, in mm."""
THIN = 0.254
"""Under ten thou, in mm, a length is measured with a feeler or a micrometer, and a thou is too coarse to tell it."""
ZERO = "0.000"
FORTY_TO_A_MM = 0.02
"""A limit of practice given in mm is a whole number of thou to an inch shop, or of tenths, where it is so near to one:
0.10 mm is four thou, at forty to a millimetre.
"""


def in_inches(value_mm: Mm, places: int) -> str:
    """A finite length in mm as inches with a number of decimals: `0.486 in`."""
    text = clearly(value_mm / 25.4, places) or fixed_exactly(exact(value_mm) / INCH, places)
    return f"{text} in"


def inch_places(value_mm: Mm) -> int:
    """Decimals that a length in inches is shown with: three, and a fourth where a thou is too coarse (THIN or less).

    A fourth decimal of 0 is left out, however thin: `0.002 in`.
    """
    return 4 if abs(value_mm) < THIN and round(10 * value_mm / THOU) % 10 else 3


def as_a_limit(value_mm: Mm) -> str:
    """A limit as a maker says it: `0.004 in` of 0.10 mm, which is 0.0039 in, and `0.4 in` of 10 mm; empty if it is not
    near a whole number of thou or, from a tenth of an inch on, of tenths.
    """
    if inch_places(value_mm) == 4:
        return _whole(value_mm, THOU, 3)
    return _whole(value_mm, 100 * THOU, 1) if value_mm >= 100 * THOU else ""


def _whole(value_mm: Mm, step: Mm, places: int) -> str:
    whole = round(value_mm / step) * step
    return in_inches(whole, places) if whole and abs(whole - value_mm) <= FORTY_TO_A_MM * abs(value_mm) else ""


def in_64ths(value_mm: Mm, remainder: bool = True) -> str:
    """A finite length in mm as the nearest 64th of an inch, reduced, as a rule is read: `17 25/32 in`.

    With `remainder`, the thousandths left over are added as written: `31/64 in + 0.002`.
    """
    inches = exact(value_mm) / INCH
    count = round(inches * 64)
    nearest = f"{_mixed(count)} in"
    left = fixed_exactly(inches - Fraction(count, 64), 3) if remainder else ZERO
    if left == ZERO:
        return nearest
    return f"{nearest} - {left[1:]}" if left.startswith("-") else f"{nearest} + {left}"


def in_feet(value_mm: Mm) -> str:
    """A finite length in mm as feet to a tenth, as the trade names dishes: `25 ft`, `24.6 ft`."""
    return f"{fixed_exactly(exact(value_mm) / (12 * INCH), 1).removesuffix('.0')} ft"


def _mixed(count: int) -> str:
    """A number of 64ths as a whole number and a reduced fraction: `-1 7/8`, `31/64`, `0`."""
    whole, numerator = divmod(abs(count), 64)
    fraction = str(Fraction(numerator, 64)) if numerator else ""
    sign = "-" if count < 0 else ""
    return f"{sign}{' '.join(filter(None, (str(whole) if whole else '', fraction))) or '0'}"
