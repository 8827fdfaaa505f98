"""Who is let in, and what is refused at the door."""

import asyncio
from collections.abc import Coroutine
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import httpx
import pytest

from gramil.bench.serving import HERE, ready

from .conftest import Hands, Served, phone_app, post, token_of


def test_it_listens_on_this_machine_alone(tmp_path: Path) -> None:
    bench = ready(tmp_path / "shop.gramil", 0, False, Hands())
    try:
        assert [each.getsockname()[0] for each in bench.sockets] == [HERE]
        assert bench.lan == ""
    finally:
        for each in bench.sockets:
            each.close()


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1", "127.0.0.1:1", "localhost.evil.example"])
def test_another_host_is_not_answered(served: Served, host: str) -> None:
    assert served.client().get("/", headers={"host": host}).status_code == 421


def test_the_same_machine_by_name_is_answered(served: Served) -> None:
    port = served.address.rstrip("/").rsplit(":", 1)[1]
    assert served.client().get("/", headers={"host": f"localhost:{port}"}).status_code == 200


def test_a_change_asked_for_by_another_site_is_refused(served: Served) -> None:
    client = served.client()
    token = token_of(client.get("/"))
    for headers in ({"origin": "http://evil.example"}, {"sec-fetch-site": "cross-site"}, {"origin": "null"}):
        answer = client.post("/demo", data={"token": token}, headers=headers)
        assert answer.status_code == 403
    assert "The bench is empty" in client.get("/").text


def test_a_change_without_the_sessions_own_token_is_refused(served: Served) -> None:
    client, other = served.client(), served.client()
    client.get("/")
    stranger = token_of(other.get("/"))
    assert client.post("/demo", data={"token": stranger}).status_code == 403
    assert client.post("/demo").status_code == 403


def test_parts_of_a_page_are_not_given_to_other_sites(served: Served) -> None:
    headers = {"sec-fetch-site": "cross-site", "sec-fetch-mode": "no-cors"}
    assert served.client().get("/static/bench.css", headers=headers).status_code == 403


def test_the_cookie_is_not_for_scripts_nor_for_other_sites_and_ends(served: Served) -> None:
    cookie = served.client().get("/").headers["set-cookie"]
    assert {"HttpOnly", "SameSite=Strict"} <= set(cookie.split("; "))
    assert "Max-Age=43200" in cookie


def test_a_session_ends_after_a_day_without_use(served: Served) -> None:
    client = served.client()
    token = token_of(client.get("/"))
    served.clock.later(hours=13)
    assert client.post("/demo", data={"token": token}).status_code == 403


def test_pages_load_nothing_from_within_themselves_or_elsewhere(served: Served) -> None:
    answer = served.client().get("/")
    policy = dict(each.split(" ", 1) for each in answer.headers["content-security-policy"].split("; "))
    assert policy["default-src"] == "'none'"
    assert policy["script-src"] == policy["style-src"] == "'self'"
    assert "unsafe" not in answer.headers["content-security-policy"]
    assert "style=" not in answer.text
    assert "<style" not in answer.text


def test_a_body_too_large_is_refused_whatever_it_says_of_itself(served: Served) -> None:
    client = served.client()
    token = token_of(client.get("/"))
    assert client.post("/new", content=b"x" * 2_100_000).status_code == 413

    def pieces() -> object:
        yield f"token={token}&why=".encode()
        for _ in range(30):
            yield b"x" * 100_000

    headers = {"content-type": "application/x-www-form-urlencoded"}
    assert client.post("/new", content=pieces(), headers=headers).status_code == 413  # type: ignore[arg-type]


def test_a_page_that_is_not_there_says_so(served: Served) -> None:
    answer = served.client().get("/nowhere")
    assert answer.status_code == 404
    assert "Traceback" not in answer.text


def asked(question: Coroutine[Any, Any, httpx.Response]) -> httpx.Response:
    """What comes of a question, asked in a thread of its own: in this one a browser's loop may run."""
    with ThreadPoolExecutor(1) as one:
        return one.submit(asyncio.run, question).result()


async def request(
    app: object, path: str, client: str, cookie: str = "", form: dict[str, str] | None = None
) -> httpx.Response:
    transport = httpx.ASGITransport(app=app, client=(client, 50000))  # type: ignore[arg-type]
    headers = {"cookie": cookie} if cookie else {}
    async with httpx.AsyncClient(transport=transport, base_url="http://192.0.2.7:8418", headers=headers) as caller:
        return await (caller.get(path) if form is None else caller.post(path, data=form))


def test_a_phone_gets_nothing_but_the_pairing_page(tmp_path: Path) -> None:
    app, _ = phone_app(tmp_path, Hands())
    for path in ("/instrument/1", "/static/bench.js", "/stock", "/static/fonts/B612-Regular.ttf"):
        assert asked(request(app, path, "192.0.2.50")).status_code == 403
    assert asked(request(app, "/", "192.0.2.50")).headers["location"] == "/pair"
    page = asked(request(app, "/pair", "192.0.2.50"))
    assert page.status_code == 200
    assert "set-cookie" not in page.headers


def test_a_code_lets_one_phone_in_once(tmp_path: Path) -> None:
    app, sessions = phone_app(tmp_path, Hands())
    code = sessions.new_code()
    first = asked(request(app, "/pair", "192.0.2.50", form={"code": code}))
    assert first.status_code == 303
    cookie = first.headers["set-cookie"].split(";")[0]
    assert asked(request(app, "/", "192.0.2.50", cookie)).status_code == 200
    assert asked(request(app, "/pair", "192.0.2.51", form={"code": code})).status_code == 403


def test_a_code_is_void_after_ten_minutes(tmp_path: Path) -> None:
    clock = Hands()
    app, sessions = phone_app(tmp_path, clock)
    old = sessions.new_code()
    clock.later(minutes=11)
    assert asked(request(app, "/pair", "192.0.2.50", form={"code": old})).status_code == 403


def test_strangers_guesses_shut_them_out_and_void_nobody_s_code(tmp_path: Path) -> None:
    """Five wrong ones from one device; the code goes on serving another, and the guesser again after ten minutes."""
    clock = Hands()
    app, sessions = phone_app(tmp_path, clock)
    code = sessions.new_code()
    for _ in range(5):
        asked(request(app, "/pair", "192.0.2.66", form={"code": "wrong"}))
    assert asked(request(app, "/pair", "192.0.2.66", form={"code": code})).status_code == 403
    assert asked(request(app, "/pair", "192.0.2.50", form={"code": code})).status_code == 303
    clock.later(minutes=11)
    assert asked(request(app, "/pair", "192.0.2.66", form={"code": sessions.new_code()})).status_code == 303


def test_a_page_opened_elsewhere_voids_no_code(tmp_path: Path) -> None:
    app, sessions = phone_app(tmp_path, Hands())
    code = sessions.new_code()
    for _ in range(3):
        assert code in asked(request(app, "/pair", "127.0.0.1")).text
    sessions.new_code()
    assert asked(request(app, "/pair", "192.0.2.50", form={"code": code})).status_code == 303


def test_phones_let_in_are_seen_and_put_out_one_by_one(tmp_path: Path) -> None:
    app, sessions = phone_app(tmp_path, Hands())
    cookies = []
    for last in (50, 51):
        answer = asked(request(app, "/pair", f"192.0.2.{last}", form={"code": sessions.new_code()}))
        cookies.append(answer.headers["set-cookie"].split(";")[0])
    here = sessions.start(local=True)
    own = f"gramil_bench={here.key}"
    page = asked(request(app, "/pair", "127.0.0.1", own)).text
    assert "192.0.2.50" in page
    assert "192.0.2.51" in page
    assert all(cookie.split("=")[1] not in page for cookie in cookies), "no key of a phone stands on a page"
    mark = next(each.mark for each in sessions.phones() if each.address == "192.0.2.50")
    assert asked(request(app, "/pair/out", "192.0.2.51", cookies[1], form={"phone": mark})).status_code == 403
    out = asked(request(app, "/pair/out", "127.0.0.1", own, form={"phone": mark, "token": here.token}))
    assert out.status_code == 303
    assert asked(request(app, "/instrument/1", "192.0.2.50", cookies[0])).status_code == 403
    assert asked(request(app, "/", "192.0.2.51", cookies[1])).status_code == 200


def test_over_https_the_cookie_is_sent_in_no_other_way_and_changes_come_from_there(tmp_path: Path) -> None:
    from starlette.datastructures import Headers

    from gramil.bench.guard import cookie_of, refused

    _, sessions = phone_app(tmp_path, Hands())
    session = sessions.start(local=True)
    assert "Secure" in cookie_of(session, "https").split("; ")
    assert "Secure" not in cookie_of(session, "http").split("; ")
    headers = Headers({"host": "192.0.2.7:8418", "origin": "https://192.0.2.7:8418", "sec-fetch-site": "same-origin"})
    assert refused(headers, "POST", frozenset({"192.0.2.7:8418"}), "https") is None
    assert refused(headers, "POST", frozenset({"192.0.2.7:8418"}), "http") is not None


def test_a_certificate_of_the_benchs_own_is_made_once_and_serves(tmp_path: Path) -> None:
    pytest.importorskip("cryptography", reason="the extra lan is not installed")
    import ssl

    clock = Hands()
    bench = ready(tmp_path / "shop.gramil", 0, False, clock, https=True)
    for each in bench.sockets:
        each.close()
    assert bench.address.startswith("https://")
    assert bench.certificate is not None
    first = bench.certificate.read_bytes()
    assert bench.certificate.stat().st_mode & 0o077 == 0, "the key is for nobody else to read"
    ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER).load_cert_chain(bench.certificate)
    for days, same in ((30, True), (400, False)):
        clock.later(days=days)
        again = ready(tmp_path / "shop.gramil", 0, False, clock, https=True)
        for each in again.sockets:
            each.close()
        assert again.certificate is not None
        assert (again.certificate.read_bytes() == first) is same


def test_without_the_library_https_says_what_to_install(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import sys

    from gramil.bench.certificate import certificate_for
    from gramil.faults import MakersFault

    monkeypatch.setitem(sys.modules, "cryptography", None)
    with pytest.raises(MakersFault, match="the library cryptography"):
        certificate_for(tmp_path / "shop.gramil", HERE, Hands().now)


def test_a_phone_never_sees_the_code(tmp_path: Path) -> None:
    app, sessions = phone_app(tmp_path, Hands())
    sessions.new_code()
    before = sessions.code
    page = asked(request(app, "/pair", "192.0.2.50"))
    assert sessions.code == before
    assert before not in page.text


def test_this_machines_screen_shows_the_code_to_scan(tmp_path: Path) -> None:
    app, sessions = phone_app(tmp_path, Hands())
    page = asked(request(app, "/pair", "127.0.0.1"))
    assert sessions.code in page.text
    assert "<svg" in page.text


def test_words_of_a_maker_are_never_markup(demo: httpx.Client) -> None:
    name = '<img src=x onerror="alert(1)">'
    answer = post(demo, "/new", **{"instrument.name": name})
    assert answer.status_code == 200
    assert "<img" not in answer.text
    assert "&lt;img" in answer.text
