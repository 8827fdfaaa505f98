"""Rows of a CSV text that the maker wrote, each with the line on which it begins."""

import csv
import io
import re
from collections.abc import Iterator, Sequence
from itertools import zip_longest

from gramil.faults import Fault, MakersFault

LONGEST = 60
"""Letters of a wrong first line, as far as a message repeats it."""


PARTERS = (",", ";", "\t")
"""What parts the cells: where a comma is the decimal mark, spreadsheets write semicolons."""
DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d)")
DECIMAL_POINT = re.compile(r"\d\.\d")


def rows_of(text: str, file: str, parter: str = ",") -> Iterator[tuple[int, list[str]]]:
    """Every row with anything in it, after the number of its line; raises MakersFault if the text is not CSV."""
    reader = csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), delimiter=parter)
    line = 1
    try:
        for row in reader:
            if any(cell.strip() for cell in row):
                yield line, row
            line = reader.line_num + 1
    except csv.Error as error:
        raise MakersFault([Fault(line, "", f"is not CSV: {error}", file=file)]) from None


def named_rows(text: str, file: str, columns: Sequence[str]) -> Iterator[tuple[int, dict[str, str]]]:
    """Every row below the heading, its cells by their columns' names in lower case; a missing cell is empty.

    Cells may be parted by semicolons or tabs; a comma within a number is then its decimal mark, unless a number of the
    file has a point. Raises MakersFault if the heading lacks one of the columns, or the text is not CSV.
    """
    parter = _parter(text, columns)
    rows = rows_of(text, file, parter)
    line, heading = next(rows, (1, []))
    names = [name.strip().lower() for name in heading]
    if not set(columns) <= set(names):
        what = f"the first line is {', '.join(heading)[:LONGEST] or 'empty'}"
        raise MakersFault([Fault(line, "heading", what, "", f"Write {','.join(columns)}", file)])
    commas = parter != "," and not DECIMAL_POINT.search(text)
    for line, row in rows:
        cells = [DECIMAL_COMMA.sub(".", cell) if commas else cell for cell in row[: len(names)]]
        yield line, dict(zip_longest(names, cells, fillvalue=""))


def _parter(text: str, columns: Sequence[str]) -> str:
    """What parts the names in the first line with anything in it; a comma if they are not all there."""
    heading = next((line for line in text.removeprefix("\ufeff").splitlines() if line.strip()), "")
    for parter in PARTERS:
        names = {name.strip().strip('"').lower() for name in heading.split(parter)}
        if set(columns) <= names:
            return parter
    return ","
