"""Dimensions as a table that a spreadsheet opens rightly; the same input gives the same bytes."""

import csv
import io
import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from gramil.decimals import twelve_digits
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.rows import Row, rows

MARK = "\ufeff"
"""What a table begins with, so that spreadsheets take it for UTF-8."""


@dataclass(frozen=True)
class Separated:
    """What parts the cells of a table, and what parts the whole of a number from its decimals."""

    cells: str
    decimals: str


SEPARATORS = {",": Separated(",", "."), ";": Separated(";", ","), "tab": Separated("\t", ".")}
"""A spreadsheet whose language writes a decimal comma parts cells by semicolons."""


def dimensions_csv(figures: Figures, formatter: Formatter, names: Iterable[str], separator: str = ",") -> str:
    """One row for each figure, sorted by part: part, address, number (lengths in mm) or words, unit, and the figure
    as it is shown with what stands beside it: the other unit, or an inch shop's 64ths and feet. `separator` is one of
    `SEPARATORS`.
    """
    by, text = SEPARATORS[separator], io.StringIO()
    writer = csv.writer(text, delimiter=by.cells, lineterminator="\n")
    writer.writerow(["part", "address", "number", "words", "unit", "shown", "other"])
    for row in sorted(rows(figures, names), key=_part):
        shown = formatter.both_of(row.address, row.value, row.unit)
        writer.writerow([row.part, row.address, *_number_or_words(row.value, by), row.unit or "", *shown])
    return MARK + text.getvalue()


def _part(row: Row) -> str:
    return row.part


def _number_or_words(value: Any, by: Separated) -> tuple[str, str]:
    """A value in the column of numbers or in that of words: nan and infinity are words."""
    if isinstance(value, bool):
        return "", "yes" if value else "no"
    if isinstance(value, float) and not math.isfinite(value):
        return "", "not known" if math.isnan(value) else "without end"
    if isinstance(value, int | float):
        return str(twelve_digits(value)).replace(".", by.decimals), ""
    return "", str(value)
