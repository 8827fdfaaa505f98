"""The places that a shop's description names, with their readings: typed in, or from a logger's file beside it."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from gramil.air.outlooks import KeptOutlook
from gramil.description.reading import ShopDescription
from gramil.description.wood.tables import PlaceTable
from gramil.faults import Fault, MakersFault
from gramil.plain_file import opened
from gramil.wood.air import Air, AirHistory, mean_air, typed_in
from gramil.written_file import Imprint, put_text

if TYPE_CHECKING:
    from gramil.wood.air_log import LogAnswers, LogReport

LARGEST_LOG = 60_000_000
"""Bytes; ten years of ten-minute readings."""
STALE = timedelta(hours=12)
"""Readings older than this do not tell the air of now, unless the place's own habit does."""
LONGEST_TRUST = timedelta(days=10)
"""However steady a place is, it is read again after so long."""
STEADY = 3.0
"""Per cent of humidity: a place is trusted for as long as its air seldom changed by more in that time."""
HABIT_DAYS, HABIT_SHARE = 60.0, 0.8
"""Days of its record that show its habit; and in which share of cases it must have kept within that."""


@dataclass(frozen=True)
class PlaceAir:
    """A place and its readings: room in m3 and changes of air an hour where known; the air expected in it.

    `machines` are grams of water an hour: what a humidifier puts into its air, and what a dryer takes out. `kept` are
    the outlooks that were given of it, the latest last.
    """

    name: str
    history: AirHistory
    room: float | None
    air_changes: tuple[float, float] | None
    air_from: str | None
    outlook: Air | None
    machines: tuple[float, float] = (0.0, 0.0)
    kept: tuple[KeptOutlook, ...] = ()

    @property
    def last(self) -> datetime:
        """When it was last read."""
        return self.history.moment(self.history.times[-1])


@dataclass(frozen=True)
class Places:
    """Every place with readings, by name; what is wrong with the others; and where gluing is done (empty: nowhere).

    `finishing` is where finishing is done; empty: where gluing is.
    """

    known: Mapping[str, PlaceAir]
    faults: tuple[Fault, ...]
    gluing: str
    outlook_days: float
    finishing: str = ""

    @property
    def last(self) -> datetime | None:
        """The latest reading of any place."""
        return max((place.last for place in self.known.values()), default=None)


def places_of(description: ShopDescription) -> Places:
    """The shop's places; a file that cannot be read becomes a fault, and the other places remain."""
    known: dict[str, PlaceAir] = {}
    faults: list[Fault] = []
    for row in description.shop.place:
        try:
            known[row.name] = _place(row, description.folder)
        except MakersFault as fault:
            faults += [replace(each, where=each.where or f"place {row.name}") for each in fault.faults]
    air = description.shop.air
    return Places(known, tuple(faults), description.shop.glued_in, air.outlook_days, air.finishing_place or "")


def load_air(path: Path, answers: "LogAnswers | None" = None) -> "tuple[AirHistory, LogReport]":
    """Readings from a logger's file, and how it was read. Raises MakersFault, which says what to mend or which question
    to answer.
    """
    try:
        with opened(path, LARGEST_LOG) as log:
            from gramil.wood.air_log import read_air_log  # not needed where there is no log, and slow to load

            return read_air_log(log, path.name, answers)
    except OSError as error:
        why = "there is no such file" if isinstance(error, FileNotFoundError) else (error.strerror or "")
        raise MakersFault([Fault(what="the readings cannot be read", why=why, file=path.name)]) from None


def own_air(path: Path) -> AirHistory:
    """Readings of a place's own file, which go by the shop's clock. Raises MakersFault with what to mend."""
    history, _ = load_air(path)
    if history.origin.tzinfo is not None:
        what, why = "its times are in a zone", "the shop goes by its own clock"
        remedy = "give it another name, and read it with `gramil air log`, which asks how far that is off"
        raise MakersFault([Fault(what=what, why=why, remedy=remedy, file=path.name)])
    return history


def save_air(path: Path, history: AirHistory, seen: Imprint | None) -> None:
    """Readings into a place's own file, whole or not at all; `seen` is what was read there (None: no file).

    Raises MakersFault where something else stands there now, where the folder refuses, and for more readings than a
    file can have.
    """
    from gramil.wood.air_merge import air_lines

    put_text(path, _that_can_be_read(air_lines(history), path.name), seen)


def _that_can_be_read(lines: Iterable[str], file: str) -> Iterator[str]:
    """The lines of a file to be written. Raises MakersFault once they are more than the next command would read."""
    size = 0
    for line in lines:
        size += len(line)
        if size > LARGEST_LOG:
            what, why = f"would be larger than {LARGEST_LOG / 1e6:g} MB", "nothing was written"
            remedy = "give the file with the earlier readings another name, and begin a new one"
            raise MakersFault([Fault(what=what, why=why, remedy=remedy, file=file)])
        yield line


def _place(row: PlaceTable, folder: Path | None) -> PlaceAir:
    changes = (row.air_changes[0], row.air_changes[1]) if row.air_changes else None
    outlook = Air(row.outlook.temperature, row.outlook.humidity) if row.outlook else None
    return PlaceAir(
        row.name, _history(row, folder), row.room, changes, row.air_from, outlook, (row.humidifier, row.dehumidifier)
    )


def _history(row: PlaceTable, folder: Path | None) -> AirHistory:
    if row.readings:
        return typed_in((each.at, each.temperature, each.humidity) for each in row.readings)
    if not row.log:
        raise MakersFault.of("has no readings", remedy="give log = a logger's file, or type readings in")
    if folder is None:
        raise MakersFault.of(f"{row.log} has no folder to lie in")
    return own_air(folder / row.log)


def drift(place: PlaceAir, age: timedelta) -> float | None:
    """The change of humidity (%) that its own record seldom exceeds in such a time; None if that is too short."""
    history, lag = place.history, age.total_seconds()
    since = max(history.times[0], history.times[-1] - HABIT_DAYS * 86400.0)
    marks = np.arange(since, history.times[-1] - lag, 6 * 3600.0)
    # fewer than five days, or three times that age, tell no habit
    if marks.size < 20 or history.times[-1] - since < 3 * lag:
        return None
    before = np.interp(marks, history.times, history.humidity)
    after = np.interp(marks + lag, history.times, history.humidity)
    return float(np.quantile(np.abs(after - before), HABIT_SHARE))


def is_old(place: PlaceAir, now: datetime) -> bool:
    """Whether a place was read too long ago to say what its air is now: by its own habit, if its record shows one."""
    age = now - place.last
    if age <= STALE:
        return False
    change = drift(place, age) if age <= LONGEST_TRUST else None
    return change is None or change > STEADY


def air_at(place: PlaceAir, now: datetime) -> Air:
    """The air at a moment: interpolated between readings; before the first and after the last, that reading itself."""
    seconds, history = place.history.seconds(now), place.history
    temperature = np.interp(seconds, history.times, history.temperature)
    return Air(float(temperature), float(np.interp(seconds, history.times, history.humidity)))


def last_days(place: PlaceAir, now: datetime, days: float) -> AirHistory:
    """The readings of the days before a moment; if there are none, the last one before it."""
    history, until = place.history, place.history.seconds(now)
    inside = (history.times > until - days * 86400.0) & (history.times <= until)
    if not inside.any():
        inside[max(0, int(np.searchsorted(history.times, until, "right")) - 1)] = True
    return AirHistory(history.origin, history.times[inside], history.temperature[inside], history.humidity[inside])


def air_ahead(place: PlaceAir, now: datetime, days: float) -> Air:
    """The air that a place is taken to have from now on: its outlook, or the mean of its last days."""
    if place.outlook is not None:
        return place.outlook
    return mean_air(last_days(place, now, days))
