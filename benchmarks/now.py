"""What is open now, and the weeks ahead: ten instruments, a year of readings in the store."""

from datetime import UTC, datetime, timedelta
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np

from benchmarks.timing import milliseconds, seconds
from gramil.air.places import import_air, place
from gramil.now.hours import read_hours
from gramil.now.open_now import open_now
from gramil.now.plan import greedy_plan
from gramil.now.states import WorkedOut, bench_of_store
from gramil.now.tasks import weeks_of
from gramil.physics.arrays import floats
from gramil.sheets.handed_out import by_name, stale_in_store
from gramil.shop.instruments import Instrument, add_instrument, instrument
from gramil.shop.made_file import parse_made
from gramil.shop.operations_done import mark_done
from gramil.shop.shop_in_store import bring_in_shop
from gramil.store.opening import Store, create_store, open_store
from gramil.store.writing import Hand
from gramil.wood.air import AirHistory

NOW = datetime(2026, 1, 19, 9, tzinfo=UTC)
EXAMPLES = files("gramil") / "data" / "examples"
NAMES = ("tarn", "fell", "scree")
COUNT = 10


def run() -> None:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "shop.gramil"
        with create_store(path) as store:
            _fill(store)
        reading = seconds(lambda: _now(path), 5)
        print(f"now, {COUNT} instruments, from the store   {milliseconds(reading)}   limit 200 ms")
        with open_store(path, to_read=True) as store:
            bench = bench_of_store(store, NOW, WorkedOut(_stale))
        weeks = weeks_of(bench.instruments, bench.shop, read_hours(), 28)
        planning = seconds(lambda: greedy_plan(weeks), 3)
        print(f"four weeks of {COUNT}, {len(weeks.tasks)} tasks        {milliseconds(planning)}   limit 500 ms")


def _now(path: Path) -> None:
    """Opened, read, and told, as the command does it."""
    with open_store(path, to_read=True) as store:
        bench = bench_of_store(store, NOW, WorkedOut(_stale))
    open_now(bench.instruments, bench.shop)


def _stale(store: Store, owner: Instrument) -> dict[str, str]:
    return by_name(stale_in_store(store, owner))


def _fill(store: Store) -> None:
    """The bundled shop and instruments, over and over; a year of readings every ten minutes in each place."""
    bring_in_shop(store, (EXAMPLES / "shop.toml").read_text("utf-8"), "shop.toml", Hand(NOW))
    times = floats(np.arange(0, 365 * 86400, 600))
    for number, name in enumerate(("shop", "house", "cupboard")):
        humidity = floats(45 + 8 * np.sin(times / 86400 + number) - (times > times[-1] - 86400 * 20) * 12)
        history = AirHistory(NOW - timedelta(days=365), times, floats(np.full(times.size, 18.0)), humidity)
        import_air(store, place(store, name).id, history, Hand(NOW))
    for number in range(COUNT):
        name = NAMES[number % len(NAMES)]
        text = (EXAMPLES / f"{name}.toml").read_text("utf-8")
        own = text.replace(f'name = "{name.capitalize()}"', f'name = "{name.capitalize()} {number}"', 1)
        add_instrument(store, f"{name.capitalize()} {number}", own, Hand(NOW))
        owner = instrument(store, f"{name.capitalize()} {number}")
        for done in parse_made((EXAMPLES / f"{name}.made.toml").read_text("utf-8")).done:
            mark_done(store, owner.id, done.operation, Hand(datetime.fromisoformat(done.day).replace(tzinfo=UTC)))
