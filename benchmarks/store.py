"""The shop's store: readings brought in against the bare database, opening, saving, and files out and in."""

import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import UTC, datetime, timedelta
from importlib.resources import files
from pathlib import Path
from time import perf_counter

import numpy as np

from benchmarks.timing import milliseconds, seconds
from gramil.air.places import Place, add_place, air_history, import_air, latest_reading
from gramil.doorway.backup import backup
from gramil.doorway.bringing_in import import_files
from gramil.doorway.export import export_files
from gramil.doorway.verify import verify
from gramil.physics.arrays import floats
from gramil.shop.instruments import add_instrument, save_revision
from gramil.shop.shop_in_store import bring_in_shop, shop_description
from gramil.shop.stock import Blank, add_blank
from gramil.store.opening import Store, create_store, open_store
from gramil.store.undo import last_change, undo
from gramil.store.writing import Hand
from gramil.wood.air import AirHistory

READINGS = 100_000
NOW = datetime(2026, 11, 2, 9, 30, tzinfo=UTC)
SHOP = (files("gramil") / "data" / "examples" / "shop.toml").read_text(encoding="utf-8")


def run() -> None:
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        print(f"a new store                       {milliseconds(seconds(lambda: _made(place), 3))}")
        with create_store(place / "shop.gramil") as store:
            bring_in_shop(store, SHOP, "shop.toml", Hand(NOW))
            _air(store, place)
            _changes(store)
            _whole(store, place)
        print(f"opening it                        {milliseconds(seconds(lambda: open_store(store.path).close()))}")


def _made(place: Path) -> None:
    path = place / "new.gramil"
    path.unlink(missing_ok=True)
    create_store(path).close()


def _history(start: datetime) -> AirHistory:
    """Ten-minute readings of a slow swing."""
    row = np.arange(READINGS)
    warm, damp = 18.0 + 3.0 * np.sin(row / 70.0), 45.0 + 10.0 * np.cos(row / 900.0)
    return AirHistory(start, floats(600.0 * row), floats(warm), floats(damp))


def _air(store: Store, place: Path) -> None:
    history = _history(NOW - timedelta(days=700))
    bare = min(_bare(place, history) for _ in range(3))
    print(f"100,000 readings, bare database   {milliseconds(bare)}")
    times: list[float] = []
    for number in range(3):
        bench = add_place(store, Place(f"place {number}", {}), Hand(NOW)).id
        with _timed(times):
            import_air(store, bench, history, Hand(NOW))
    print(f"100,000 readings brought in       {milliseconds(min(times))}   {min(times) / bare:.2f} times")
    again = seconds(lambda: import_air(store, bench, history, Hand(NOW)), 2)
    print(f"the same again, all there already {milliseconds(again)}")
    year = NOW - timedelta(days=365)
    print(f"a year of them read               {milliseconds(seconds(lambda: air_history(store, bench, year)))}")
    print(f"the latest one                    {milliseconds(seconds(lambda: latest_reading(store, bench)))}")


def _bare(place: Path, history: AirHistory) -> float:
    """Seconds for the same rows by one prepared statement into a plain table, on the disk at the end."""
    path = place / "bare.db"
    path.unlink(missing_ok=True)
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("CREATE TABLE reading (place, instant, celsius, percent, PRIMARY KEY (place, instant))")
        start = perf_counter()
        figures = zip(history.times.tolist(), history.temperature.tolist(), history.humidity.tolist(), strict=True)
        connection.executemany("INSERT INTO reading VALUES (1, ?, ?, ?)", figures)
        connection.commit()
        return perf_counter() - start


def _changes(store: Store) -> None:
    number = iter(range(1_000_000))

    def add() -> None:
        add_blank(store, Blank(f"blank {next(number)}", "spruce", 560.0, 220.0, 4.2), Hand(NOW))

    def undone() -> None:
        add()
        last = last_change(store)
        assert last is not None
        undo(store, last.id, Hand(NOW))

    tarn = [add_instrument(store, "Tarn", "", Hand(NOW))]

    def save() -> None:
        tarn[0] = save_revision(store, tarn[0], f"{next(number)}" + " " * 5000, Hand(NOW))

    one = seconds(add, 20)
    print(f"a blank added, on the disk        {milliseconds(one)}")
    print(f"a blank added and undone          {milliseconds(seconds(undone, 20))}")
    print(f"a revision saved                  {milliseconds(seconds(save, 20))}")
    print(f"the shop's description from it    {milliseconds(seconds(lambda: shop_description(store)))}")


def _whole(store: Store, place: Path) -> None:
    times: list[float] = []
    with _timed(times):
        out = export_files(store)
    size = sum(map(len, out.values())) / 1e6
    print(f"{size:.1f} MB of files out (300,000 readings) {milliseconds(times.pop())}")
    with create_store(place / "other.gramil") as other, _timed(times):
        import_files(other, out, Hand(NOW))
    print(f"the same in                       {milliseconds(times.pop())}")
    with _timed(times):
        backup(store, place / "copy.gramil")
    print(f"backup, with its proof            {milliseconds(times.pop())}")
    with _timed(times):
        verify(store.path)
    print(f"verify                            {milliseconds(times.pop())}")


@contextmanager
def _timed(into: list[float]) -> Iterator[None]:
    start = perf_counter()
    yield
    into.append(perf_counter() - start)
