"""Finding the table in a data logger's text: where it begins, what parts its columns, and which column is which.

Nothing is guessed: two columns that could both be the temperature are a question to the maker.
"""

import csv
import re
from collections.abc import Mapping
from dataclasses import dataclass

from gramil.faults import Fault, MakersFault

_SEARCHED = 60  # lines in which the names of the columns must be found
_PARTERS = (";", "\t", ",", "|")
_TIME = re.compile(r"time|date|datum|zeit|fecha|hora|heure|horodat")
_NO_TIME = re.compile(r"elapsed|zone|alarm|duration")
_TEMPERATURE = re.compile(r"temp|^t$|^t[ _(\[]|^°?[cf]$")
_HUMIDITY = re.compile(r"humid|feucht|humed|(^|[^a-z])r\.?h\.?([^a-z]|$)")
_NO_AIR = re.compile(r"dew|tau|rosée|roc[ií]o|abs|g/m|min|max|high|low|alarm|avg|mean|heat|batt|probe err")


@dataclass(frozen=True)
class LogTable:
    """Cells of a log by what they are, one row a reading; names are those of the columns in the file."""

    names: Mapping[str, str]
    lines: tuple[int, ...]
    times: tuple[str, ...]
    temperatures: tuple[str, ...]
    humidities: tuple[str, ...]
    short: tuple[int, ...]
    """Lines that have too few columns."""


def find_table(text: str, chosen: Mapping[str, str], file: str | None) -> LogTable:
    """The columns of time, temperature and humidity in a logger's text, whatever their order.

    chosen names columns for "time", "temperature" or "humidity" where the file leaves a choice.
    Raises MakersFault where no line names all three, or where more than one column could be meant.
    """
    lines = text.lstrip("\ufeff").splitlines()
    number, parter, names = _header(lines, chosen, file)
    places = _places(names, chosen, number, file)
    rows = list(csv.reader(lines[number:], delimiter=parter))
    counted = [(line, row) for line, row in enumerate(rows, start=number + 1) if any(cell.strip() for cell in row)]
    furthest = max(max(columns) for columns in places.values())
    whole = [(line, row) for line, row in counted if len(row) > furthest]
    columns = {what: tuple(_joined(row, where) for _, row in whole) for what, where in places.items()}
    named = {what: " + ".join(names[place] for place in where) for what, where in places.items()}
    short = tuple(line for line, row in counted if len(row) <= furthest)
    kept = tuple(line for line, _ in whole)
    return LogTable(named, kept, columns["time"], columns["temperature"], columns["humidity"], short)


def _joined(row: list[str], places: tuple[int, ...]) -> str:
    return row[places[0]].strip() if len(places) == 1 else " ".join(row[place].strip() for place in places)


def _header(lines: list[str], chosen: Mapping[str, str], file: str | None) -> tuple[int, str, list[str]]:
    """Number of the line that names the columns (from 1), what parts them, and the names."""
    for number, line in enumerate(lines[:_SEARCHED], start=1):
        for parter in _PARTERS:
            names = [name.strip() for name in next(csv.reader([line], delimiter=parter), [])]
            if len(names) >= 3 and all(
                _candidates(names, what, chosen) for what in ("time", "temperature", "humidity")
            ):
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
    places = {what: _candidates(names, what, chosen) for what in ("time", "temperature", "humidity")}
    if len(places["time"]) == 2:
        places["time"] = _date_and_time(names, places["time"])
    elif len(whole := [place for place in places["time"] if _is_whole(names[place])]) == 1:
        places["time"] = whole
    faults = [
        Fault(line, what, f"{len(found)} columns could be the {what}: {', '.join(names[place] for place in found)}", "",
              "say which one is meant", file)
        for what, found in places.items()
        if len(found) > (2 if what == "time" else 1)
    ]  # fmt: skip
    if faults:
        raise MakersFault(faults)
    return {what: tuple(found) for what, found in places.items()}


def _is_whole(name: str) -> bool:
    return bool(re.search(r"timestamp|date.*time|time.*date|horodat", name.lower()))


def _date_and_time(names: list[str], two: list[int]) -> list[int]:
    """Of two columns of time: the one that is whole by itself, or the date and then the time of day."""
    if len(whole := [place for place in two if _is_whole(names[place])]) == 1:
        return whole
    return sorted(two, key=lambda place: not re.search(r"date|datum|fecha", names[place].lower()))
