"""The bench against what nobody would type, many at once, those who do not send, a full disk and a clock that jumps."""

import socket
import sqlite3
import threading
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from html.parser import HTMLParser
from urllib.parse import quote, urldefrag, urlsplit

import httpx
import pytest

from gramil.doorway.verify import verify

from .conftest import Served, post

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
PAGES_WITH_FORMS = (*PAGES, "/if-glued", "/instrument/1/files", "/instrument/1/turn", "/new/file", "/weeks")


@dataclass
class Form:
    """A form on a page: where it goes, how, and its fields with their kinds."""

    action: str
    method: str
    fields: dict[str, str] = field(default_factory=dict)


class Forms(HTMLParser):
    """Every form of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[Form] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {key: value or "" for key, value in attrs}
        if tag == "form":
            self.found.append(Form(given.get("action", ""), given.get("method", "get").lower()))
        elif tag in ("input", "textarea", "select") and self.found and given.get("name"):
            self.found[-1].fields[given["name"]] = given.get("type", "text")


def forms_on(client: httpx.Client, path: str) -> list[Form]:
    page = client.get(path)
    parser = Forms()
    parser.feed(page.text)
    for each in parser.found:
        each.action = urldefrag(each.action)[0] or path
    return parser.found


def sent(client: httpx.Client, form: Form, value: str, upload: bytes) -> httpx.Response:
    """A form filled with one value throughout, its files with one content."""
    texts = {name: value for name, kind in form.fields.items() if kind != "file" and name != "token"}
    if form.method == "get":
        return client.get(urlsplit(form.action).path, params=texts)
    files = {name: ("x.toml", upload) for name, kind in form.fields.items() if kind == "file"}
    if not files:
        return post(client, form.action, **texts)
    token = next(each for each in client.cookies.jar).value and _token(client)
    head = {"origin": str(client.base_url).rstrip("/")}
    return client.post(form.action, data={"token": token, **texts}, files=files, headers=head)


def _token(client: httpx.Client) -> str:
    from .conftest import token_of

    return token_of(client.get("/"))


def test_hostile_values_in_every_form(served: Served, demo: httpx.Client) -> None:
    """Every form with several values in turn: told or taken, never a mistake of the bench, and the record is sound."""
    seen: set[tuple[str, frozenset[str]]] = set()
    for page in PAGES_WITH_FORMS:
        for form in forms_on(demo, page):
            key = (urlsplit(form.action).path, frozenset(form.fields))
            if key in seen or form.action in ("/demo", "/record/put-back"):
                continue
            seen.add(key)
            for turn in range(2):
                number = (len(seen) + 3 * turn) % len(VALUES)
                answer = sent(demo, form, VALUES[number], UPLOADS[number % len(UPLOADS)])
                assert answer.status_code != 500, (form, VALUES[number], answer.text[:300])
    assert len(seen) > 12
    assert verify(served.store) == ()


@pytest.mark.parametrize(
    "path", ["/instrument/{}", "/instrument/1/figure?figure={}", "/instrument/1/sheet/{}", "/air?place={}"]
)
def test_hostile_addresses(demo: httpx.Client, path: str) -> None:
    for value in (*VALUES, "99999999999999999999", "-1", "%00", "..%2f..", "a" * 3000):
        answer = demo.get(path.format(quote(value, safe="%", errors="replace")))
        assert answer.status_code != 500, (path, value)


def test_two_hundred_at_once(demo: httpx.Client) -> None:
    with ThreadPoolExecutor(40) as many:
        answers = list(many.map(lambda row: demo.get(PAGES[row % len(PAGES)]).status_code, range(200)))
    assert set(answers) <= {200, 404}
    assert answers.count(200) > 150


def test_those_who_do_not_send_keep_nobody_waiting(served: Served, demo: httpx.Client) -> None:
    """Sixty that send nothing, half a head, or half a body, and one that sends letter by letter."""
    host, port = urlsplit(served.address).hostname, urlsplit(served.address).port
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
        assert demo.get("/").status_code == 200
        assert post(demo, "/unit").status_code == 200
        slow.join()
        assert waiting[0].recv(12).startswith(b"HTTP/1.1 200")
    finally:
        for each in waiting:
            each.close()


def _slowly(to: socket.socket, text: str) -> None:
    for letter in text.encode():
        to.sendall(bytes([letter]))


def test_a_full_disk_in_the_middle_of_saving(
    served: Served, demo: httpx.Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The record may grow by nothing more: it is told, nothing is half saved, and afterwards it is saved."""
    from gramil.shop import writing as module

    real = module.note

    def full(store: object, *words: object, **more: object) -> int:
        size = store.connection.execute("PRAGMA page_count").fetchone()[0]  # type: ignore[attr-defined]
        store.connection.execute(f"PRAGMA max_page_count = {size}")  # type: ignore[attr-defined]
        return real(store, *words, **more)  # type: ignore[arg-type]

    with sqlite3.connect(served.store) as look:
        before = look.execute("SELECT count(*) FROM change").fetchone()
    monkeypatch.setattr(module, "note", full)
    answer = post(demo, "/operations", text="[operation.x]\nwhat = '" + "線" * 60_000 + "'\npart = 'neck'\nhands = 1\n")
    assert "the disk is full" in answer.text.lower()
    monkeypatch.undo()
    with sqlite3.connect(served.store) as look:
        assert look.execute("SELECT count(*) FROM change").fetchone() == before
    assert verify(served.store) == ()


@pytest.mark.parametrize("days", [-300, -15_000, 3000, 60_000])
def test_a_clock_that_jumps(served: Served, demo: httpx.Client, days: int) -> None:
    served.clock.later(days=days)
    client = served.client()
    for page in PAGES:
        assert client.get(page).status_code != 500, page
    assert post(client, "/unit").status_code == 200
