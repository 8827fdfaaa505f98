"""Counts the published values that tests check this program against: `make published`.

Reads `tests/published/values/` alone, and runs nothing of the program. A source is a file; a value counts once, by what
it is of, what was given and which of the table's columns it is. Values that were worked out elsewhere, and not printed
by a source, are none of these.
"""

import sys
import tomllib
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).parent.parent / "tests" / "published" / "values"
FLAGS = ("read", "transcribed", "memory")
"""How a value was seen: in the source, in a transcription of it, or from memory and confirmed otherwise."""


@dataclass(frozen=True)
class Value:
    """One published value: its source (author, title, year), the table, what was given, and which column it is."""

    source: tuple[str, str, str]
    where: str
    given: tuple[str, ...]
    column: str
    flag: str


def published(folder: Path = FOLDER) -> Iterator[Value]:
    """Every value of every file. Raises KeyError or ValueError for a row that is not whole."""
    for file in sorted(folder.glob("*.toml")):
        source = tomllib.loads(file.read_text(encoding="utf-8"))
        named = (source["author"], source["title"], str(source["year"]))
        for table in source["table"]:
            yield from _of_table(named, table)


def _of_table(source: tuple[str, str, str], table: dict[str, Any]) -> Iterator[Value]:
    given, columns = table["given"], table["values"]
    if table["flag"] not in FLAGS:
        raise ValueError(f"{table['name']}: {table['flag']} is no flag")
    for row in table["rows"]:
        if len(row) != len(given) + len(columns):
            raise ValueError(f"{table['name']}: {row} has not a figure a column")
        known = tuple(map(str, row[: len(given)]))
        yield from (Value(source, table["where"], known, column, table["flag"]) for column in columns)


def counted(values: Sequence[Value]) -> tuple[int, int]:
    """How many sources and how many values, each once."""
    once = {(each.source, each.where, each.given, each.column) for each in values}
    return len({each.source for each in values}), len(once)


def main() -> int:
    """Prints the sources with their values, then the two numbers."""
    found = list(published())
    for source, number in Counter(each.source for each in found).items():
        print(f"{number:5}  {source[0]}, {source[1]}, {source[2]}")
    flags = Counter(each.flag for each in found)
    print(", ".join(f"{flags[flag]} {flag}" for flag in FLAGS))
    sources, values = counted(found)
    print(f"{sources} sources, {values} values")
    return 0


if __name__ == "__main__":
    sys.exit(main())
