"""Lines of a description, with lengths in the file's own unit and the comments in one column."""

from collections.abc import Iterable, Sequence

from gramil.decimals import fixed
from gramil.measure import LengthUnit
from gramil.quantities import Mm

COLUMN = 33
"""Where comments begin: that of the descriptions that are shipped."""
PLACES = {"mm": (1, 2), "in": (3, 4)}
"""Decimals of a length, and of a place on an outline."""
ON_A_LINE = 6


def number(length: Mm, unit: LengthUnit, fine: bool = False) -> str:
    """A bare number in the file's unit, without idle noughts."""
    text = fixed(length if unit == "mm" else length / 25.4, PLACES[unit][fine])
    return text.rstrip("0").rstrip(".") if "." in text else text


def row(key: str, value: str, says: str = "") -> str:
    """One key with what it is."""
    line = f"{key} = {value}"
    return f"{line.ljust(COLUMN - 1)} # {says}" if says else line


def place(each: Sequence[Mm], unit: LengthUnit, fine: bool = False) -> str:
    """A place as a list of two numbers."""
    return f"[{', '.join(number(value, unit, fine) for value in each)}]"


def places(key: str, points: Iterable[Sequence[Mm]], unit: LengthUnit, says: str, fine: bool = True) -> list[str]:
    """A list of places, a few to the line."""
    shown = [f"{place(each, unit, fine)}," for each in points]
    lines = [f"  {' '.join(shown[first : first + ON_A_LINE])}" for first in range(0, len(shown), ON_A_LINE)]
    return [row(key, "[", says), *lines, "]"]


def with_rows(text: str, table: str, rows: Iterable[str]) -> str:
    """The text with rows added at the end of a table that it has."""
    lines = text.split("\n")
    first = lines.index(f"[{table}]")
    last = next((at for at in range(first + 1, len(lines)) if not lines[at].strip()), len(lines))
    return "\n".join([*lines[:last], *rows, *lines[last:]])
