"""Scale tables in the open Scala `.scl` format: a description line, a count, then one pitch a line.

A pitch with a point in it is cents; any other is a ratio or a whole number. Lines that begin with `!` are comments.
The last pitch is the period at which the table repeats. Source: the format's published description, "Scala scale
file format".
"""

import math
import re
from dataclasses import dataclass
from fractions import Fraction

_PITCH = re.compile(r"\s*(?P<cents>-?\d*\.\d*)|\s*(?P<ratio>\d+\s*/\s*\d+|\d+)")
MOST_NOTES = 1000


@dataclass(frozen=True)
class ScalaScale:
    """A scale table: `cents` of each degree after the first, the last of them the period."""

    description: str
    cents: tuple[float, ...]

    def at(self, degree: int) -> float:
        """Cents of a degree counted from the open string, repeating by the period."""
        periods, rest = divmod(degree, len(self.cents))
        return periods * self.cents[-1] + (self.cents[rest - 1] if rest else 0.0)


def equal_division(count: int) -> ScalaScale:
    """`count` equal steps to the octave."""
    return ScalaScale(f"{count}-equal", tuple(1200.0 * n / count for n in range(1, count + 1)))


def parse_scl(text: str) -> ScalaScale:
    """Read a `.scl` text; raises ValueError with `line N:` and what is wrong."""
    rows = [(number, row) for number, row in enumerate(text.splitlines(), 1) if not row.startswith("!")]
    if len(rows) < 2:
        raise ValueError("line 1: a scale table has a description line, a count, and pitches")
    count = _count(*rows[1])
    pitches = [(number, row) for number, row in rows[2:] if row.strip()][:count]
    if len(pitches) < count:
        raise ValueError(f"line {rows[1][0]}: {count} pitches are announced, and {len(pitches)} are there")
    cents = tuple(_cents(number, row) for number, row in pitches)
    _check_rising(cents, [number for number, _ in pitches])
    return ScalaScale(rows[0][1].strip(), cents)


def _count(number: int, row: str) -> int:
    word = row.split()[0] if row.split() else ""
    if not re.fullmatch(r"\d{1,4}", word, re.ASCII) or not 1 <= int(word) <= MOST_NOTES:
        raise ValueError(f"line {number}: it says how many pitches follow, 1 to {MOST_NOTES}; read {row.strip()!r}")
    return int(word)


def _cents(number: int, row: str) -> float:
    match = _PITCH.match(row[:200])
    try:
        if match and match["cents"]:
            return float(match["cents"])
        if match and match["ratio"]:
            ratio = Fraction(match["ratio"].replace(" ", ""))
            return 1200.0 * math.log2(ratio)
    except (ValueError, ZeroDivisionError, OverflowError):
        pass
    raise ValueError(f"line {number}: a pitch is cents with a point (701.955) or a ratio (3/2); read {row.strip()!r}")


def _check_rising(cents: tuple[float, ...], numbers: list[int]) -> None:
    before = 0.0
    for number, value in zip(numbers, cents, strict=True):
        if value <= before:
            said = f"{value:g} cents is not above {before:g}"
            raise ValueError(f"line {number}: pitches must rise from fret to fret; {said}")
        before = value
