"""The bench against what nobody would type, many at once, those who do not send, a full disk and a clock that jumps."""

import re
import socket
import sqlite3
import threading
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from urllib.parse import quote, urlsplit

import httpx
import pytest
from tests.walks import WHOLE, fewer, picked, these

from gramil.bench.application import POSTS
from gramil.bench.serving import configured, ready
from gramil.doorway.verify import verify
from gramil.shop.stock import blank_named
from gramil.store.opening import open_store

from ..description.plan import plans
from .conftest import DAY, Served, post, serving, token_of
from .crawling import Form, forms_of_the_bench, pattern, sent

VALUES = (
    "{}",
    "5e-324",
    "1e309",
    "-9223372036854775809",
    "線" * 200,
    "\0\ud7ff<script>'\"",
    "fret 99",
    "0001-01-01T00:00",
)
UPLOADS = (
    b"",
    b"\xff\xfe\0",
    b"gramil = 1\n[instrument]\nname = '{}'\n",
    b"<svg" * 999,
    b"time,temp\n1,2\n",
    b"[" * 9999,
)
PAGES = (
    "/",
    "/stock",
    "/stock/form",
    "/tools",
    "/tools/form",
    "/air",
    "/record",
    "/operations",
    "/new",
    "/instrument/1",
)
BEGINNING = (
    "/instrument/1?key=scale.length&value=655",
    "/instrument/1/sheet/slot",
    "/instrument/1/anew/board",
    "/instrument/1/return/1",
    "/instrument/1/measured/1",
    "/instrument/1/operation/wood_chosen/not-done",
    "/operations/remove?for=",
    "/shop/new",
    "/",
)
"""Pages to begin with: those that links lead to only from some sheets or some instruments, and the first."""
pytestmark = pytest.mark.usefixtures("coarse_tops")
OUT_OF_REACH = {
    "/demo",
    "/picture/{plan}",
    "/picture/{plan}/forget",
    "/drawing/{drawing}",
    "/plan/seen",
    "/instrument/{instrument}/pack/stop",
    "/instrument/{instrument}/top/stop",
}
"""What is only shown where nothing is kept yet, once a picture or a drawing was sent, or while a pack or a top is being
made; and what a page asks for by itself as one types."""


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """One bench for all of these, with the demonstration shop laid out: whatever it is sent, it goes on."""
    with serving(tmp_path_factory.mktemp("hostile")) as served:
        client = served.client()
        assert post(client, "/demo").status_code == 200
        lay_out_more(client, served.store)
        yield served


def lay_out_more(client: httpx.Client, store: Path) -> None:
    """What the demonstration shop has not: its own operations, a promise, a weighing, a copy of the record."""
    own = '[operation.x]\nwhat = "Try"\npart = "neck"\nhands = 1\n'
    assert post(client, "/operations", text=own).status_code == 200
    beam = {"name": "old beam", "wood": "persimmon", "length": "530", "width": "70", "thickness": "9", "count": "1"}
    for name in ("old beam", "another like it"):  # two that are alike can be counted together
        assert post(client, "/stock/form", **{**beam, "name": name}).status_code == 200
    assert post(client, "/stock/promise").status_code == 200
    assert post(client, "/air/weigh", piece="neck blank", mass="1412.5").status_code == 200
    store.with_name("copy.gramil").write_bytes(client.get("/record/copy").content)


@pytest.fixture
def client(bench: Served) -> httpx.Client:
    return bench.client()


@pytest.mark.slow
def test_hostile_values_in_every_form(bench: Served, client: httpx.Client) -> None:
    """Every form with two values: told or taken, never a mistake of the bench, and the record is sound.

    One is put only where the maker types, so that it comes further, the other in what a form hides, too. At the gate
    every form is sent, since each is read by code of its own: with the first, and one in three with the other; that
    which prints pages, dear when it is answered, with the other alone.
    """
    with open_store(bench.store) as store:
        alike = f"/stock/form?blank={blank_named(store, 'another like it').id}"
    forms, token = forms_of_the_bench(client, (alike, *BEGINNING)), token_of(client.get("/"))
    for number, form in enumerate(forms):
        for kept in ways(form):
            turn = number + 3 * kept
            value, upload = VALUES[turn % len(VALUES)], UPLOADS[turn % len(UPLOADS)]
            answer = sent(client, form, token, value, upload, kept)
            assert answer.status_code != 500, (form, value, answer.text[:300])
    tried = {pattern(form.action) for form in forms if form.method == "post"}
    assert {path for path, _ in POSTS} - tried == OUT_OF_REACH
    assert verify(bench.store) == ()


def ways(form: Form) -> tuple[bool, ...]:
    """Whether what a form hides is kept as it is: tried once, or both ways."""
    kind = pattern(form.action)
    if not form.hides:
        return (True,)
    if kind.endswith("/print-chosen"):
        return these((True, False), (False,))
    return (True, False) if picked(f"{form.method} {kind}", 3) else (True,)


@pytest.mark.parametrize(
    ("path", "half"),
    [
        ("/instrument/{}", 0),
        ("/instrument/1/figure?figure={}", 1),
        ("/instrument/1/sheet/{}", 0),
        ("/air?place={}", 1),
    ],
)
def test_hostile_addresses(client: httpx.Client, path: str, half: int) -> None:
    """Half of the values in each, the others in the next: what reads an address is the same for all."""
    for value in (*VALUES, "99999999999999999999", "-1", "%00", "..%2f..", "a" * 3000)[half::2]:
        answer = client.get(path.format(quote(value, safe="%", errors="replace")))
        assert answer.status_code != 500, (path, value)


def test_hostile_values_of_what_is_seldom_shown(client: httpx.Client) -> None:
    sent = client.post(
        "/drawing", data={"token": token_of(client.get("/"))}, files={"drawing": ("plan.dxf", plans.dxf().encode())}
    )
    assert sent.url.path != "/drawing"
    for value in VALUES:
        for do in in_turn(value, ("read", "go")):
            for key in in_turn(value, ("pointed", "length", "alike", "layer", "inside")):
                fields = {key: value, "do": do}
                assert post(client, sent.url.path, **fields).status_code != 500, (key, value)
        for key in in_turn(value, ("outline", "braces", "head", "hole_centre", "within", "front_at", "meant")):
            assert post(client, "/plan/seen", **{key: value}).status_code != 500, (key, value)
        for work in ("pack", "top"):
            assert post(client, f"/instrument/1/{work}/stop", making=value).status_code != 500, value
        assert post(client, f"/picture/{quote(value, safe='', errors='replace')}/forget").status_code != 500, value


def in_turn(value: str, keys: tuple[str, ...]) -> tuple[str, ...]:
    """The keys that a value is put into: at the gate one of them, so that the values between them meet them all."""
    return keys if WHOLE else (keys[VALUES.index(value) % len(keys)],)


def test_many_at_once(client: httpx.Client) -> None:
    """Pages that are soon made, and one in twenty of all kinds."""
    soon = ("/stock/form", "/record", "/new", "/tools", "/operations")
    count = fewer(200, 100)
    asked = [PAGES[row // 20 % len(PAGES)] if row % 20 == 0 else soon[row % len(soon)] for row in range(count)]
    with ThreadPoolExecutor(40) as many:
        answers = list(many.map(lambda path: client.get(path).status_code, asked))
    assert set(answers) <= {200, 404, 422}  # what was taken away before may be missed by an instrument
    assert answers.count(200) > 0.75 * count


def test_the_bench_gives_up_no_connection_that_a_client_still_counts_on(bench: Served) -> None:
    """A client drops what has lain idle for so long; were the bench as soon, what is asked just then would be lost."""
    patient = httpx.Client()._transport._pool._keepalive_expiry  # type: ignore[attr-defined]
    served = ready(bench.store.with_name("other.gramil"), 0, False, bench.clock)
    try:
        assert configured(served).timeout_keep_alive > 10 * patient
    finally:
        served.sockets[0].close()


def test_those_who_do_not_send_keep_nobody_waiting(bench: Served, client: httpx.Client) -> None:
    """Sixty that send nothing, half a head, or half a body, and one that sends letter by letter."""
    host, port = urlsplit(bench.address).hostname, urlsplit(bench.address).port
    halves = (
        b"",
        b"GET / HTTP/1.1\r\nHost: ",
        b"POST /unit HTTP/1.1\r\nHost: %s\r\nContent-Length: 999\r\n\r\nto" % f"{host}:{port}".encode(),
    )
    waiting = [socket.create_connection((host, port)) for _ in range(60)]
    try:
        for row, each in enumerate(waiting):
            each.sendall(halves[row % 3])
        slow = threading.Thread(target=_slowly, args=(waiting[0], f"GET / HTTP/1.1\r\nHost: {host}:{port}\r\n\r\n"))
        slow.start()
        assert client.get("/").status_code == 200
        assert post(client, "/unit").status_code == 200
        slow.join()
        assert waiting[0].recv(12).startswith(b"HTTP/1.1 200")
    finally:
        for each in waiting:
            each.close()


def _slowly(to: socket.socket, text: str) -> None:
    for letter in text.encode():
        to.sendall(bytes([letter]))


def test_a_full_disk_in_the_middle_of_saving(
    bench: Served, client: httpx.Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The record may grow by nothing more: it is told, nothing is half saved, and afterwards it is saved."""
    from gramil.store import writing as module

    real = module.note

    def full(store: object, *words: object, **more: object) -> int:
        size = store.connection.execute("PRAGMA page_count").fetchone()[0]  # type: ignore[attr-defined]
        store.connection.execute(f"PRAGMA max_page_count = {size}")  # type: ignore[attr-defined]
        return real(store, *words, **more)  # type: ignore[arg-type]

    with sqlite3.connect(bench.store) as look:
        before = look.execute("SELECT count(*) FROM change").fetchone()
    monkeypatch.setattr(module, "note", full)
    seen = re.search(r'name="version" value="([^"]*)"', client.get("/operations").text)
    assert seen is not None
    text = "[operation.x]\nwhat = '" + "線" * 60_000 + "'\npart = 'neck'\nhands = 1\n"
    answer = post(client, "/operations", text=text, version=seen[1])
    assert "the disk is full" in answer.text.lower()
    monkeypatch.undo()
    with sqlite3.connect(bench.store) as look:
        assert look.execute("SELECT count(*) FROM change").fetchone() == before
    assert verify(bench.store) == ()


@pytest.mark.parametrize("days", [-300, -15_000, 3000, 60_000])
def test_a_clock_that_jumps(bench: Served, days: int) -> None:
    bench.clock.later(days=days)
    try:
        client = bench.client()
        for page in ("/", "/air", "/record", "/instrument/1"):
            assert client.get(page).status_code != 500, page
        assert post(client, "/unit").status_code == 200
    finally:
        bench.clock.now = DAY
