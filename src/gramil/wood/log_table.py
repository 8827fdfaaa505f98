"""Finding the table in a data logger's text: where it begins, what separates its columns, and which column is which.

Nothing is guessed: two columns that could both be the temperature are a question to the maker.
"""

import csv
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain, islice

from gramil.faults import Fault, MakersFault

_SEARCHED = 60  # lines in which the names of the columns must be found
_LONGEST_HEADING = 4_000  # letters; a longer line does not name columns
_LONGEST_CELL = 64  # letters; a longer cell is neither a time nor a figure
_SHOWN = 8  # candidate columns to list one by one
_PARTERS = (";", "\t", ",", "|")
_WHAT = ("time", "temperature", "humidity")
_TIME = re.compile(r"time|date|datum|zeit|fecha|hora|heure|horodat")
_NO_TIME = re.compile(r"elapsed|zone|alarm|duration")
_TEMPERATURE = re.compile(r"temp|^t$|^t[ _(\[]|^°?[cf]$")
_HUMIDITY = re.compile(r"humid|feucht|humed|(^|[^a-z])(r\.?h\.?|hum)([^a-z]|$)")
_NO_AIR = re.compile(r"dew|tau|rosée|roc[ií]o|abs|g/m|min|max|high|low|alarm|avg|mean|heat|batt|probe err")

Cells = tuple[str, str, str]
"""Time, temperature and humidity of one reading, as written."""


@dataclass(frozen=True)
class LogTable:
    """A log's columns by what they hold, under the names that the file gives them, and its rows.

    `rows` can be iterated only once: the number of each line, and its cells, or None where it has too few columns.
    """

    names: Mapping[str, str]
    rows: Iterator[tuple[int, Cells | None]]


def find_table(lines: Iterator[str], chosen: Mapping[str, str], file: str | None) -> LogTable:
    """The columns of time, temperature and humidity in a logger's lines, whatever their order.

    chosen names columns for "time", "temperature" or "humidity" if the file leaves a choice.
    Raises MakersFault if no line names all three, or if more than one column could be meant.
    """
    first = list(islice(lines, _SEARCHED))
    number, parter, names = _header(first, chosen, file)
    places = _places(names, chosen, number, file)
    named = {what: " + ".join(names[place] for place in where) for what, where in places.items()}
    below = chain(first[number:], lines)
    return LogTable(named, _rows(below, parter, number, places, file))


def _rows(
    lines: Iterable[str], parter: str, header: int, places: Mapping[str, tuple[int, ...]], file: str | None
) -> Iterator[tuple[int, Cells | None]]:
    reader = csv.reader(lines, delimiter=parter)
    time, temperature, humidity = (places[what] for what in _WHAT)
    furthest = max(*time, *temperature, *humidity)
    try:
        for row in reader:
            if any(map(str.strip, row)):
                whole = len(row) > furthest
                cells = (_cell(row, time), _cell(row, temperature), _cell(row, humidity)) if whole else None
                yield header + reader.line_num, cells
    except csv.Error as error:
        raise MakersFault([Fault(header + reader.line_num, "", f"is not CSV: {error}", file=file)]) from None


def _cell(row: list[str], places: tuple[int, ...]) -> str:
    """The text of a column, or of a date's and a time's together; empty if it is too long to be either."""
    cell = row[places[0]].strip() if len(places) == 1 else " ".join(row[place].strip() for place in places)
    return cell if len(cell) <= _LONGEST_CELL else ""


def _header(lines: list[str], chosen: Mapping[str, str], file: str | None) -> tuple[int, str, list[str]]:
    """Number of the line that names the columns (from 1), what separates them, and the names."""
    for number, line in enumerate(lines, start=1):
        for parter in _PARTERS if len(line) <= _LONGEST_HEADING else ():
            names = [name.strip() for name in next(csv.reader([line], delimiter=parter), [])]
            if len(names) >= 3 and all(_candidates(names, what, chosen) for what in _WHAT):
                return number, parter, names
    what = "no line names columns of time, temperature and relative humidity"
    seen = f'the first line is "{lines[0].strip()[:80]}"' if lines else "the file is empty"
    raise MakersFault([Fault(1, "", what, seen, 'name the columns, as in "time, temperature C, humidity %"', file)])


def _candidates(names: list[str], what: str, chosen: Mapping[str, str]) -> list[int]:
    """Places of the columns that could be what is asked for."""
    if what in chosen:
        return [place for place, name in enumerate(names) if name.lower() == chosen[what].strip().lower()]
    wanted, never = {
        "time": (_TIME, _NO_TIME),
        "temperature": (_TEMPERATURE, _NO_AIR),
        "humidity": (_HUMIDITY, _NO_AIR),
    }[what]
    return [place for place, name in enumerate(names) if wanted.search(name.lower()) and not never.search(name.lower())]


def _places(names: list[str], chosen: Mapping[str, str], line: int, file: str | None) -> dict[str, tuple[int, ...]]:
    """Which columns hold what; a date and a time of day in two columns are taken together, in that order."""
    places = {what: _candidates(names, what, chosen) for what in _WHAT}
    if len(places["time"]) == 2:
        places["time"] = _date_and_time(names, places["time"])
    elif len(whole := [place for place in places["time"] if _is_whole(names[place])]) == 1:
        places["time"] = whole
    faults = [
        Fault(line, what, f"{len(found)} columns could be the {what}: {_named(names, found)}", "",
              "say which one is meant", file)
        for what, found in places.items()
        if len(found) > (2 if what == "time" else 1)
    ]  # fmt: skip
    if faults:
        raise MakersFault(faults)
    return {what: tuple(found) for what, found in places.items()}


def _named(names: list[str], found: list[int]) -> str:
    shown = ", ".join(names[place] for place in found[:_SHOWN])
    return shown if len(found) <= _SHOWN else f"{shown}, and {len(found) - _SHOWN} more"


def _is_whole(name: str) -> bool:
    return bool(re.search(r"timestamp|date.*time|time.*date|horodat", name.lower()))


def _date_and_time(names: list[str], two: list[int]) -> list[int]:
    """Of two columns of time: the one that is whole by itself, or the date and then the time of day."""
    if len(whole := [place for place in two if _is_whole(names[place])]) == 1:
        return whole
    return sorted(two, key=lambda place: not re.search(r"date|datum|fecha", names[place].lower()))
