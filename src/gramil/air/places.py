"""Places of the shop and the air in them: readings brought in file by file or one by one, and read back as a
history.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, timezone
from itertools import islice
from typing import Any

import numpy as np

from gramil.description.problems import did_you_mean, nearest
from gramil.faults import MakersFault
from gramil.measure import in_degrees
from gramil.physics.arrays import floats
from gramil.store.items import figures_text, shop_degrees
from gramil.store.moments import moment_text
from gramil.store.opening import Store
from gramil.store.rows import delete, insert, update
from gramil.store.writing import Hand, writing
from gramil.wood.air import AirHistory

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_WITH_READINGS = (
    "SELECT id FROM place WHERE EXISTS (SELECT 1 FROM air_reading AS r WHERE r.place = place.id) ORDER BY id"
)
_LONG_AGO = -(2**62)
_BATCH = 20_000
"""Readings that are brought in at once."""
_ROW = np.dtype([("instant", "i8"), ("offset", "i4"), ("temperature", "f8"), ("humidity", "f8")])
_MICROSECOND = timedelta(microseconds=1)


@dataclass(frozen=True)
class Place:
    """Where things lie and glue cures: a bench, a shelf, a drying box.

    `figures` are the other keys of a place in the shop's description, as written.
    """

    name: str
    figures: Mapping[str, Any]
    id: int = 0
    version: int = 0


@dataclass(frozen=True)
class Reading:
    """One reading of air: moment with its offset, temperature C, relative humidity %."""

    at: datetime
    temperature: float
    humidity: float


@dataclass(frozen=True)
class Imported:
    """What an import brought: readings added, and readings that were there already."""

    added: int
    there_already: int


def add_place(store: Store, new: Place, hand: Hand) -> Place:
    """Add a place; raises MakersFault if the name is taken."""
    with writing(store, f"add place {new.name}", hand):
        put_place(store, new)
    return place(store, new.name)


def put_place(store: Store, new: Place) -> int:
    """Add a place within the change under way; gives its number."""
    return insert(store, "place", {"version": None, "name": new.name, "figures": figures_text(new.figures)})


def places(store: Store) -> list[Place]:
    """Every place, in the order in which they were added."""
    return _places(store, "ORDER BY id")


def place(store: Store, name: str) -> Place:
    """The place of that name; raises MakersFault if there is none."""
    found = _places(store, "WHERE name = ?", name)
    if not found:
        names = [each.name for each in places(store)]
        has = f"the store has {', '.join(names)}" if names else "the store has none yet"
        what = f"there is no place called {name}" if name else "there is no place"
        raise MakersFault.of(what, has, did_you_mean(nearest(name, names)))
    return found[0]


def update_place(store: Store, changed: Place, hand: Hand) -> Place:
    """Write a place's name and figures; raises Conflict if the store holds another version."""
    with writing(store, f"change place {changed.name}", hand):
        row = {"name": changed.name, "figures": figures_text(changed.figures)}
        update(store, "place", changed.id, changed.version, row)
    return place(store, changed.name)


def _places(store: Store, rest: str, *values: str) -> list[Place]:
    rows = store.rows(f"SELECT name, figures, id, version FROM place {rest}", values)
    return [Place(name, json.loads(figures), number, version) for name, figures, number, version in rows]


def remove_place(store: Store, gone: Place, hand: Hand) -> None:
    """Remove a place where nothing lies and no air was ever read; raises MakersFault otherwise."""
    with writing(store, f"remove place {gone.name}", hand):
        delete(store, "place", gone.id, gone.version)


def add_reading(store: Store, place_id: int, reading: Reading, hand: Hand) -> Imported:
    """One reading written down by hand."""
    moment_text(reading.at)
    history = AirHistory(reading.at, floats([0.0]), floats([reading.temperature]), floats([reading.humidity]))
    row = store.row("SELECT name FROM place WHERE id = ?", (place_id,))
    unit = shop_degrees(store)
    said = f"{reading.humidity:g} % {in_degrees(reading.temperature, unit):g} {unit}"
    with writing(store, f"air of the {row[0] if row else 'place that is not there'}: {said}", hand):
        return put_air(store, place_id, history, hand.now)


def import_air(store: Store, place_id: int, history: AirHistory, hand: Hand, *, file: str = "") -> Imported:
    """Bring a place's readings in, all or none.

    A history by a clock without a zone is taken to be in the zone of `now`. Bringing in the same reading twice does no
    harm. Raises MakersFault for a different reading of the same moment, and for air that no room could have.
    """
    with writing(store, f"bring in air {file}".rstrip(), hand):
        return put_air(store, place_id, history, hand.now, file)


def put_air(store: Store, place_id: int, history: AirHistory, now: datetime, file: str = "") -> Imported:
    """Bring readings in within the change under way."""
    owner = insert(store, "air_import", {"place": place_id, "at": moment_text(now), "file": file})
    return put_readings(store, place_id, reading_rows(place_id, history, now, owner))


AirRow = tuple[int, int, int, float, float, int]
"""A reading as it is kept: place, instant (microseconds), offset (minutes), temperature, humidity, import."""


def reading_rows(place_id: int, history: AirHistory, now: datetime, owner: int) -> Iterator[AirRow]:
    """A history as rows; a clock without a zone is taken to be in the zone of `now`."""
    origin = history.origin if history.origin.tzinfo else history.origin.replace(tzinfo=now.tzinfo)
    start, offset = instant_of(origin), offset_of(origin)
    instants = start + np.rint(history.times * 1e6).astype(np.int64)
    for row, instant in enumerate(instants):
        yield place_id, int(instant), offset, float(history.temperature[row]), float(history.humidity[row]), owner


def put_readings(store: Store, place_id: int, rows: Iterable[AirRow]) -> Imported:
    """Add readings of a place within the change under way; those that are there already, equal, or were struck, are
    left out. Raises MakersFault if the place has a different reading of the same moment.
    """
    sql = "SELECT instant, temperature, humidity FROM air_struck WHERE place = ?"
    struck = set(store.rows(sql, (place_id,)))
    waiting, added, given, others = iter(rows), 0, 0, _Others()
    while batch := list(islice(waiting, _BATCH)):
        given += len(batch)
        wanted = [row for row in batch if (row[1], row[3], row[4]) not in struck] if struck else batch
        new = _add(store, wanted)
        added += new
        if new < len(wanted):
            others.look(store, place_id, wanted)
    others.refuse()
    return Imported(added, given - added)


def _add(store: Store, rows: list[AirRow]) -> int:
    before = store.connection.total_changes
    sql = "INSERT INTO air_reading VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (place, instant) DO NOTHING"
    store.connection.executemany(sql, rows)
    return store.connection.total_changes - before


@dataclass
class _Others:
    """Readings that the place has for the same moments as those brought in, and that differ from them."""

    count: int = 0
    first: str = ""

    def look(self, store: Store, place_id: int, rows: list[AirRow]) -> None:
        """Counts those among rows that have just been brought in."""
        instants = [row[1] for row in rows]
        sql = "SELECT instant, temperature, humidity FROM air_reading WHERE place = ? AND instant BETWEEN ? AND ?"
        there = {row[0]: row[1:] for row in store.rows(sql, (place_id, min(instants), max(instants)))}
        others = [row for row in rows if there[row[1]] != (row[3], row[4])]
        if others and not self.count:
            self.first = moment_of(others[0][1], others[0][2]).isoformat(sep=" ")
        self.count += len(others)

    def refuse(self) -> None:
        """Raises MakersFault when there are any."""
        if self.count:
            what = (
                f"{self.count} readings differ from what the place has for the same moment, the first at {self.first}"
            )
            raise MakersFault.of(what, "nothing was brought in", "see whether the file is of another place")


def air_history(
    store: Store, place_id: int, since: datetime | None = None, *, by_clock: bool = False
) -> AirHistory | None:
    """A place's readings in their order, all or those since a moment; None where there are none.

    `by_clock` drops the zone: the origin is then a moment of the shop's own clock, as in a description.
    """
    sql = (
        "SELECT instant, offset_minutes, temperature, humidity FROM air_reading "
        "WHERE place = ? AND instant >= ? ORDER BY instant"
    )
    found = np.fromiter(store.each(sql, (place_id, instant_of(since) if since else _LONG_AGO)), _ROW)
    if not found.size:
        return None
    origin = moment_of(int(found["instant"][0]), int(found["offset"][0]))
    return AirHistory(
        origin.replace(tzinfo=None) if by_clock else origin,
        floats((found["instant"] - found["instant"][0]) / 1e6),
        floats(found["temperature"]),
        floats(found["humidity"]),
    )


def latest_reading(store: Store, place_id: int) -> Reading | None:
    """The latest reading of a place, or None."""
    sql = (
        "SELECT instant, offset_minutes, temperature, humidity FROM air_reading "
        "WHERE place = ? ORDER BY instant DESC LIMIT 1"
    )
    row = store.row(sql, (place_id,))
    return Reading(moment_of(row[0], row[1]), row[2], row[3]) if row else None


def last_read(store: Store) -> Mapping[int, datetime]:
    """When each place that has readings was last read, by the number of the place."""
    found = {each.id: latest_reading(store, each.id) for each in places(store)}
    return {number: reading.at for number, reading in found.items() if reading is not None}


def place_logs(store: Store) -> Mapping[int, str]:
    """The names of the files that places' readings are exported to, by the number of the place."""
    numbers = (number for (number,) in store.rows(_WITH_READINGS))
    return {number: f"air-{number}.csv" for number in numbers}


def air_csv(store: Store, place_id: int) -> str:
    """A place's readings as a logger writes them: time by the shop's clock, temperature C, relative humidity %.

    The offset of the first reading is kept throughout, so that summer time does not make the clock jump.
    """
    sql = "SELECT instant, offset_minutes, temperature, humidity FROM air_reading WHERE place = ? ORDER BY instant"
    rows = store.rows(sql, (place_id,))
    lines = [
        f"{moment_of(instant, rows[0][1]).replace(tzinfo=None).isoformat()},{temperature!r},{humidity!r}\r\n"
        for instant, _, temperature, humidity in rows
    ]
    return "".join(["time,temperature C,relative humidity %\r\n", *lines])


def instant_of(moment: datetime) -> int:
    """Microseconds since 1970 in UTC, exact."""
    return (moment - _EPOCH) // _MICROSECOND


def offset_of(moment: datetime) -> int:
    """Minutes that the clock on the wall is ahead of UTC."""
    offset = moment.utcoffset()
    assert offset is not None
    return offset // timedelta(minutes=1)


def moment_of(instant: int, offset_minutes: int) -> datetime:
    """The moment that an instant and an offset from UTC stand for."""
    return (_EPOCH + instant * _MICROSECOND).astimezone(timezone(timedelta(minutes=offset_minutes)))
