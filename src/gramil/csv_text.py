"""Rows of a CSV text that the maker wrote, each with the line on which it begins."""

import csv
import io
from collections.abc import Iterator, Sequence
from itertools import zip_longest

from gramil.faults import Fault, MakersFault

LONGEST = 60
"""Letters of a wrong first line, as far as a message repeats it."""


def rows_of(text: str, file: str) -> Iterator[tuple[int, list[str]]]:
    """Every row with anything in it, after the number of its line; raises MakersFault if the text is not CSV."""
    reader = csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""))
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

    Raises MakersFault if the heading lacks one of the columns, or the text is not CSV.
    """
    rows = rows_of(text, file)
    line, heading = next(rows, (1, []))
    names = [name.strip().lower() for name in heading]
    if not set(columns) <= set(names):
        what = f"the first line is {', '.join(heading)[:LONGEST] or 'empty'}"
        raise MakersFault([Fault(line, "heading", what, "", f"Write {','.join(columns)}", file)])
    for line, row in rows:
        yield line, dict(zip_longest(names, row[: len(names)], fillvalue=""))
