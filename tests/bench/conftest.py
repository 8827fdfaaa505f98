"""A bench served for the tests, each over its own record: over plain HTTP, and in Chromium where that is installed."""

import re
import shutil
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch
from weakref import WeakKeyDictionary

import httpx
import pytest
import uvicorn
from tests.in_a_browser import Page, left_behind

from gramil.bench.application import application
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.serving import Bench, configured, ready
from gramil.bench.sessions import Sessions
from gramil.bench.shop_record import record_at
from gramil.prints.solved import with_top
from gramil.shop.instruments import instruments
from gramil.store.opening import open_store
from gramil.store.writing import Hand, writing

DAY = datetime(2026, 11, 25, 9, 0, tzinfo=UTC)
TOKEN = re.compile(r'name="token" value="([^"]+)"')


TOKENS: WeakKeyDictionary[httpx.Client, str] = WeakKeyDictionary()
"""What each client proves by that a page of the bench was read: it stays the same as long as the session."""


@dataclass
class Hands:
    """A clock that the test moves."""

    now: datetime = field(default=DAY)

    def __call__(self) -> datetime:
        return self.now

    def later(self, **by: float) -> None:
        self.now += timedelta(**by)
        TOKENS.clear()  # pages are read again after hours


@dataclass
class Served:
    """A bench that answers, its address, its sessions and its clock."""

    address: str
    sessions: Sessions
    clock: Hands
    store: Path

    def client(self, **headers: str) -> httpx.Client:
        """A client of plain HTTP: reading the certificates of all the world, a fiftieth of a second, is left out."""
        return httpx.Client(base_url=self.address, follow_redirects=True, headers=headers, timeout=60, verify=False)


def token_of(page: httpx.Response) -> str:
    found = TOKEN.search(page.text)
    assert found is not None, page.text[:400]
    return found[1]


def post(client: httpx.Client, path: str, **fields: str | list[str]) -> httpx.Response:
    """A change, as a form on a page sends it; the token is read once, from the page that is quickest to make."""
    if client not in TOKENS:
        TOKENS[client] = token_of(client.get("/new"))
    data = {"token": TOKENS[client], **fields}
    return client.post(path, data=data, headers={"origin": str(client.base_url).rstrip("/")})


def running(bench: Bench) -> uvicorn.Server:
    server = uvicorn.Server(configured(bench))
    server.install_signal_handlers = lambda: None  # type: ignore[attr-defined]  # the tests keep theirs
    serving = threading.Thread(target=server.run, kwargs={"sockets": list(bench.sockets)}, daemon=True)
    serving.start()
    while not server.started:
        assert serving.is_alive(), "the bench ended before it served"
        time.sleep(0.01)
    return server


@cache
def empty_record() -> bytes:
    """A record in which nothing is noted, as the bench makes one: made once, since each step of its form is written."""
    with TemporaryDirectory() as folder:
        record_at(Path(folder) / "shop.gramil")
        return whole_record(Path(folder) / "shop.gramil").read_bytes()


@contextmanager
def serving(folder: Path) -> Iterator[Served]:
    """A bench over a record in a folder, an empty one if there is none, for as long as it is wanted."""
    if not (folder / "shop.gramil").exists():
        (folder / "shop.gramil").write_bytes(empty_record())
    clock = Hands()
    bench = ready(folder / "shop.gramil", 0, False, clock)
    server = running(bench)
    yield Served(bench.address, bench.sessions, clock, folder / "shop.gramil")
    server.should_exit = True


@pytest.fixture(scope="session", autouse=True)
def _figures_of_all_benches() -> Iterator[None]:
    """Benches share the figures that they hold: these go by all that figures depend on, whosever record it is in."""
    shared = OpenInstruments()
    with patch(
        "gramil.bench.application.OpenInstruments",
        lambda: OpenInstruments(kept=shared.kept, solved=shared.solved, lock=shared.lock),
    ):
        yield


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    with serving(tmp_path) as bench:
        yield bench


@pytest.fixture(scope="session")
def laid_out(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A record in which the demonstration shop is laid out, as the button does it: to be copied, never changed."""
    folder = tmp_path_factory.mktemp("laid-out")
    with serving(folder) as bench, bench.client() as client:
        assert post(client, "/demo").status_code == 200
    return whole_record(folder / "shop.gramil")


@pytest.fixture(scope="session")
def nothing_done(laid_out: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The same with nothing done yet on any instrument."""
    path = tmp_path_factory.mktemp("nothing-done") / "shop.gramil"
    shutil.copyfile(laid_out, path)
    with open_store(path) as store, writing(store, "for the tests", Hand(DAY)):
        store.rows("DELETE FROM measurement")
        store.rows("DELETE FROM done")
    return whole_record(path)


def whole_record(path: Path) -> Path:
    """A record that is one file: the last to close it has put what was written into it."""
    assert sorted(each.name for each in path.parent.glob("shop.gramil-*")) == []
    return path


@pytest.fixture
def demo(served: Served, nothing_done: Path) -> httpx.Client:
    """A client at a bench where the demonstration shop is laid out, with nothing done yet on any instrument."""
    shutil.copyfile(nothing_done, served.store)
    return served.client()


@pytest.fixture(scope="session")
def numbers(nothing_done: Path) -> dict[str, int]:
    """The instruments' numbers by their names; the first page, on which they stand, takes long to make."""
    with open_store(nothing_done) as store:
        return {each.name: each.id for each in instruments(store)}


@pytest.fixture
def tarn(demo: httpx.Client, numbers: dict[str, int]) -> str:
    """The address of *Tarn*."""
    return f"/instrument/{numbers['Tarn']}"


@pytest.fixture(scope="module")
def coarse_tops() -> Iterator[None]:
    """Tops are solved on triangles twice as wide, for tests that look at pages and not at figures: a tenth of the work.

    What is solved so is not shared with tests that do look at figures.
    """
    sizes = {"QUICK": 28.0, "FINAL": 22.0}
    with ExitStack() as patched:
        for name, size in sizes.items():
            for module in ("gramil.top.model", "gramil.top.back"):
                patched.enter_context(patch(f"{module}.{name}", size))
        patched.enter_context(patch("gramil.prints.solved.with_top", with_top))
        yield


@pytest.fixture
def phone(page_at: Callable[[str, str], Page], served: Served, laid_out: Path) -> Iterator[Page]:
    """A page on a phone at a bench with an empty record."""
    yield from _at_bench(page_at("phone", served.address), served, laid_out)


@pytest.fixture
def wide(page_at: Callable[[str, str], Page], served: Served, laid_out: Path) -> Iterator[Page]:
    """A page on a wide screen at a bench with an empty record."""
    yield from _at_bench(page_at("wide", served.address), served, laid_out)


def _at_bench(page: Page, served: Served, laid_out: Path) -> Iterator[Page]:
    page.lay_out = lambda: shutil.copyfile(laid_out, served.store)
    yield page
    left_behind(page)


def phone_app(tmp_path: Path, clock: Hands) -> tuple[object, Sessions]:
    """A bench that lets phones in, and its sessions, to be asked from any address."""
    sessions = Sessions(clock)
    keeping = record_at(tmp_path / "shop.gramil")
    return application(
        keeping, sessions, clock, ["192.0.2.7:8418", "127.0.0.1:8418"], "http://192.0.2.7:8418"
    ), sessions
