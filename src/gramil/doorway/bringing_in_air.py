"""Readings of air from CSV: place, import, moment, temperature and humidity, all of them or none."""

from collections.abc import Iterable
from datetime import datetime

from gramil.air.places import AirRow, instant_of, offset_of, put_readings
from gramil.description.problems import quoted
from gramil.doorway.export import AIR, AIR_COLUMNS
from gramil.doorway.file_rows import FileRow
from gramil.doorway.importing import Import
from gramil.store.moments import moment_text, read_moment
from gramil.store.opening import Value
from gramil.store.rows import insert

_NEEDED = tuple(name for name in AIR_COLUMNS if name != "import")


def put_air_rows(work: Import, rows: Iterable[FileRow], now: datetime) -> None:
    """Add readings within the change under way; raises MakersFault with the faults of all rows."""
    found = [reading for row in rows if (reading := _reading(work, row, now)) is not None]
    work.settle()
    for place in sorted({reading[0] for reading in found}):
        put_readings(work.store, place, [reading for reading in found if reading[0] == place])


def _reading(work: Import, row: FileRow, now: datetime) -> AirRow | None:
    """One reading, or None with its faults noted."""
    before = len(work.faults)
    cells = row.cells
    if missing := [name for name in _NEEDED if not cells.get(name)]:
        work.fault(row, AIR, " and ".join(missing) + (" is missing" if len(missing) == 1 else " are missing"))
        return None
    place = work.number("place", cells["place"])
    if place is None:
        work.fault(row, AIR, f"there is no place called {quoted(cells['place'])}")
    temperature, humidity = _bounded(work, row, "temperature", -40.0, 60.0), _bounded(work, row, "humidity", 0.0, 100.0)
    moment = read_moment(cells["at"])
    if moment is None:
        work.fault(row, AIR, f"at: read {quoted(cells['at'])}: a moment is written 2026-11-02T09:30:00+01:00")
    if len(work.faults) > before or place is None or moment is None:
        return None
    owner = _owner(work, place, cells.get("import", ""), now)
    return place, instant_of(moment), offset_of(moment), temperature, humidity, owner


def _owner(work: Import, place: int, called: str, now: datetime) -> int:
    """The import that a reading came with, as numbered in the files; a new one if the files have none of that
    number.
    """
    given = work.number("air_import", called)
    key = f"{called} of {place}"
    if given is None and work.number("air_import", key) is None:
        row: dict[str, Value] = {"place": place, "at": moment_text(now), "file": work.file}
        work.call("air_import", key, insert(work.store, "air_import", row))
    return work.numbers["air_import"][key] if given is None else given


def _bounded(work: Import, row: FileRow, name: str, least: float, most: float) -> float:
    try:
        value = float(row.cells[name])
    except ValueError:
        value = float("nan")
    if not least <= value <= most:
        work.fault(row, AIR, f"{name}: read {quoted(str(row.cells[name]))}, allowed: {least:g} to {most:g}")
    return value
