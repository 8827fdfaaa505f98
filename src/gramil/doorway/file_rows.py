"""Rows of files, CSV or TOML, each with the line on which it begins."""

import csv
import io
import tomllib
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from gramil.description.locate import locate
from gramil.description.problems import did_you_mean, nearest
from gramil.faults import Fault, MakersFault

FORM = 1
"""The number of the form of TOML file that holds a store, in its first line."""


@dataclass(frozen=True)
class FileRow:
    """A row of a file: its line, and its cells by column; `texts` is true for CSV, whose cells are texts that stand for
    values.
    """

    line: int | None
    cells: Mapping[str, Any]
    texts: bool = False


def csv_rows(text: str, file: str) -> Iterator[FileRow]:
    """The rows of a CSV text by the names in its first line, each with the line on which it begins."""
    reader = csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), strict=True)
    try:
        names = next(reader, [])
        if not names or len(set(names)) < len(names) or not all(names):
            raise MakersFault([Fault(1, "", "every column needs a name of its own in the first line", file=file)])
        line = reader.line_num + 1
        for row in reader:
            if row and len(row) != len(names):
                what = f"has {len(row)} cells, and the first line names {len(names)}"
                raise MakersFault([Fault(line, "", what, remedy="put texts with commas in quotes", file=file)])
            if row:
                yield FileRow(line, dict(zip(names, row, strict=True)), True)
            line = reader.line_num + 1
    except csv.Error as error:
        raise MakersFault([Fault(reader.line_num, "", f"is not CSV: {error}", file=file)]) from None


def toml_tables(text: str, file: str, tables: Collection[str]) -> dict[str, list[FileRow]]:
    """The rows of a TOML text by table; raises MakersFault if the text does not have this form."""
    try:
        data = tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    except (ValueError, RecursionError) as error:
        raise MakersFault([Fault(what=f"is not TOML: {error}", file=file)]) from None
    lines = locate(text)
    faults = []
    if data.pop("gramil_store", None) != FORM:
        remedy = f"write gramil_store = {FORM} in its first line, if it is one"
        faults.append(
            Fault(1, "gramil_store", "is not a store's file of the form that this program reads", "", remedy, file)
        )
    for key, rows in data.items():
        if key not in tables or not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
            remedy = did_you_mean(nearest(key, tables)) or "allowed: " + ", ".join(f"[[{table}]]" for table in tables)
            faults.append(Fault(lines.get((key,)), key, "no such table", "", remedy, file))
    if faults:
        raise MakersFault(faults)
    return {key: [FileRow(lines.get((key, n)), row) for n, row in enumerate(rows)] for key, rows in data.items()}
