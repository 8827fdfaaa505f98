"""The bench of an inch shop that reads Fahrenheit: every kind of page that links lead to, without a millimetre."""

import io
import re
from collections import Counter
from collections.abc import Iterator
from datetime import timedelta
from html import unescape
from pathlib import Path
from urllib.parse import urlsplit

import httpx
import pikepdf
import pytest
from PIL import Image
from tests.bench.conftest import DAY, Served, post, serving, token_of
from tests.cli.test_inch_commands import METRIC, inch_shop

from gramil.acts.bringing_in import bring_in
from gramil.store.opening import create_store, open_store
from gramil.store.writing import Hand

UNSEEN = re.compile(r"<(textarea|script|style|nav|header)\b.*?</\1>", re.DOTALL)
"""What is not said by the program: files as the maker wrote them, and the head with the switch between the units."""
NAMES = ("fret cents per mm",)
"""The name of a figure, which says how it is reckoned."""
FILES = re.compile(r"\.[a-z]{2,7}$|/static/")
EACH = 2
"""So many pages of a kind are looked at."""
PAGES = 150


@pytest.fixture(scope="module")
def inch_bench(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    folder = tmp_path_factory.mktemp("bench")
    inch_shop(folder)
    shop = folder / "shop.toml"
    shop.write_text(shop.read_text(encoding="utf-8").replace('paper = "a4"', 'paper = "legal"'), encoding="utf-8")
    with create_store(folder / "shop.gramil") as store:
        bring_in(store, [folder / "shop.toml", folder / "fell.toml"], Hand(DAY - timedelta(days=3)))
    with serving(folder) as served:
        yield served


def test_before_the_first_instrument_an_inch_shop_is_asked_in_inches(tmp_path: Path) -> None:
    """The usual scale is 25 1/2 in, and a bare 25.4 is so many inches on the first page as on the form's own."""
    inch_shop(tmp_path)
    with create_store(tmp_path / "shop.gramil") as store:
        bring_in(store, [tmp_path / "shop.toml"], Hand(DAY - timedelta(days=3)))
    with serving(tmp_path) as served:
        client = served.client()
        for address in ("/", "/new"):
            assert 'placeholder="25 1/2 in"' in client.get(address).text
        refused = post(client, "/new", **{"instrument.name": "Moss", "scale.length": "25.4", "nut.width": "wide"})
        assert refused.status_code == 422
        assert "1 answer cannot be read" in refused.text
        assert post(client, "/new", **{"instrument.name": "Moss", "scale.length": "25.4"}).status_code == 200


def kind_of(address: str) -> str:
    """The page without its numbers and names: pages of one kind are alike."""
    parts = urlsplit(address)
    path = re.sub(r"/(operation|sheet|drawing|anew)/[^/]+", r"/\1/-", re.sub(r"\d+", "0", parts.path))
    return f"{path}?{','.join(sorted(each.partition('=')[0] for each in parts.query.split('&')))}"


def pages(client: httpx.Client) -> Iterator[tuple[str, str]]:
    """Pages by their address, found by links from the first, EACH of a kind."""
    waiting, met, kinds = ["/"], {"/"}, Counter[str]()
    while waiting and kinds.total() < PAGES:
        address = waiting.pop(0)
        if FILES.search(urlsplit(address).path) or kinds[kind_of(address)] == EACH:
            continue
        kinds[kind_of(address)] += 1
        answer = client.get(address)
        if "html" not in answer.headers.get("content-type", ""):
            continue
        yield address, answer.text
        found = [unescape(each) for each in re.findall(r'href="((?:/|\?)[^"#]*)', answer.text)]
        for each in found:
            whole = f"{urlsplit(address).path}{each}" if each.startswith("?") else each
            if whole not in met:
                met.add(whole)
                waiting.append(whole)


def words_on(page: str) -> str:
    """What a page says, and what its empty fields suggest."""
    bare = UNSEEN.sub(lambda unseen: "".join(re.findall(r'^<textarea[^>]*?placeholder="[^"]*"[^>]*>', unseen[0])), page)
    hinted = re.sub(r'<[^>]*?placeholder="([^"]*)"[^>]*>', r" \1 ", bare)
    words = re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", hinted)))
    for name in NAMES:
        words = words.replace(name, "")
    return words


def test_no_page_says_a_millimetre_or_a_degree_celsius(inch_bench: Served) -> None:
    seen = 0
    for address, page in pages(inch_bench.client()):
        words, seen = words_on(page), seen + 1
        said = [words[max(0, each.start() - 50) : each.end() + 30] for each in METRIC.finditer(words)]
        assert said == [], address
    assert seen > 40


def test_a_picture_of_a_plan_is_asked_about_in_inches(inch_bench: Served) -> None:
    """What the bar measures, how large the frame is, and lengths known on the plan; no link leads there."""
    blank, client = io.BytesIO(), inch_bench.client()
    Image.new("RGB", (640, 480), "white").save(blank, "png")
    files = [("picture", ("plan.png", blank.getvalue(), "image/png"))]
    page = client.post("/picture", data={"token": token_of(client.get("/picture"))}, files=files).text
    assert 'placeholder="28 x 20 in"' in page
    assert METRIC.findall(words_on(page)) == []


def test_a_guitar_that_came_in_is_asked_about_in_inches(inch_bench: Served) -> None:
    """Where a width is: "16 in", "fret 12 + 3/16 in"."""
    client = inch_bench.client()
    page = post(client, "/new/came-in", **{"instrument.name": "Worn", "scale.frets": "19"}).text
    assert "fret 12 + 3/16 in" in words_on(page)
    assert METRIC.findall(words_on(page)) == []


def test_a_bare_temperature_is_read_in_fahrenheit(inch_bench: Served) -> None:
    """68 F is 20 C, whatever the page shows it in."""
    client = inch_bench.client()
    for written in ("68", "68 F", "20 C"):
        inch_bench.clock.later(minutes=5)
        post(client, "/air/reading", place="shop", humidity="44", temperature=written, back="/air")
        with open_store(inch_bench.store) as store:
            (celsius,) = store.row("SELECT temperature FROM air_reading ORDER BY instant DESC LIMIT 1") or (None,)
        assert celsius == pytest.approx(20.0)
    assert "68.0" in client.get("/air").text
    assert "44 %, 68.0 °F" in client.get("/air/readings?place=shop").text


def test_a_print_is_proved_by_four_inches(inch_bench: Served) -> None:
    client = inch_bench.client()
    address = "/instrument/1/print"
    assert "A 4 in bar measures" in client.get(address).text
    assert client.get(f"{address}?x=3.99&y=4.01").status_code == 200
    refused = client.get(f"{address}?x=99.8&y=4")
    assert refused.status_code == 422
    assert "4 in bar" in refused.text


@pytest.mark.parametrize("address", ["/stock/labels.pdf", "/weeks.pdf", "/instrument/1/quote.pdf?rate=40"])
def test_what_is_printed_beside_the_sheets_is_on_their_paper(inch_bench: Served, address: str) -> None:
    """8 1/2 by 14 inches: labels, weeks and quotes had come out on A4 whatever lay in the printer."""
    with pikepdf.open(io.BytesIO(inch_bench.client().get(address).content)) as document:
        sizes = {tuple(sorted(round(float(each) / 72, 2) for each in page.mediabox[2:])) for page in document.pages}
    assert sizes == {(8.5, 14.0)}
