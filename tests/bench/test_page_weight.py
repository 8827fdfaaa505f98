"""What a page weighs on its way to a phone: compressed, its faces of few letters, its files kept by the browser."""

import gzip
import re
from importlib.resources import files
from io import BytesIO

import httpx
import pytest
from fontTools import subset
from fontTools.ttLib import TTFont

from .conftest import Served

MOST = 150_000
"""Bytes of the instrument's page with all that it asks for, in a browser that was never there before."""
STATIC = files("gramil") / "bench" / "static"
FACE = re.compile(
    r'@font-face \{ font-family: "([^"]+)"; src: url\("([^"]+)"\); font-weight: (\d+);.*?unicode-range: ([^;]+);'
)


def sent(client: httpx.Client, address: str) -> int:
    """Bytes of an answer's body as they go over the wire."""
    with client.stream("GET", address, headers={"accept-encoding": "gzip"}) as answer:
        assert answer.status_code == 200, address
        return len(b"".join(answer.iter_raw()))


def faces() -> list[tuple[str, str, str, list[int]]]:
    """Each face of the style sheet: family, address, weight, letters."""
    found = FACE.findall((STATIC / "bench.css").read_text(encoding="utf-8"))
    return [
        (family, at, weight, subset.parse_unicodes(letters.replace(" ", ""))) for family, at, weight, letters in found
    ]


def test_the_instruments_page_with_all_that_it_asks_for_is_light(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1").text
    asked = re.findall(r'(?:href|src)="(/static/[^"]+)"', page)
    assert len(asked) == 6
    shown = [at for family, at, _, _ in faces() if family == "B612" and at.endswith(".woff")]
    assert len(shown) == 2
    assert sum(sent(demo, each) for each in ("/instrument/1", *asked, *shown)) < MOST


def test_a_page_is_compressed_for_whoever_can_read_it(demo: httpx.Client) -> None:
    with demo.stream("GET", "/tools", headers={"accept-encoding": "gzip"}) as answer:
        raw = b"".join(answer.iter_raw())
    assert answer.headers["content-encoding"] == "gzip"
    plain = demo.get("/tools", headers={"accept-encoding": "identity"})
    assert "content-encoding" not in plain.headers
    assert gzip.decompress(raw) == plain.content


def test_what_never_changes_is_asked_for_once(served: Served) -> None:
    client = served.client()
    page = client.get("/")
    assert page.headers["cache-control"] == "no-store"
    for each in re.findall(r'(?:href|src)="(/static/[^"]+)"', page.text):
        assert client.get(each).headers["cache-control"] == "max-age=31536000, immutable", each
    assert client.get("/static/bench.js").headers["cache-control"] == "no-cache", "named without its content"
    assert client.get("/static/B612-Bold.woff").headers["cache-control"] == "max-age=2592000"


def test_each_letter_has_one_face_and_those_of_our_pages_the_light_one() -> None:
    """All letters from the space to U+FFFF, but for 2028, 2029 and the like that no face need have."""
    for family, weight in {(family, weight) for family, _, weight, _ in faces()}:
        light, whole = (
            next(letters for f, at, w, letters in faces() if (f, w) == (family, weight) and at.endswith(end))
            for end in (".woff", ".ttf")
        )
        assert set(light).isdisjoint(whole)
        assert set(range(0x20, 0x10000)) == {*light, *whole}
        ours = "".join(
            each.read_text(encoding="utf-8")
            for folder in (STATIC, STATIC.parent / "templates")
            for each in folder.iterdir()
            if each.name.endswith((".html", ".css", ".js"))
        )
        assert {letter for letter in ours if letter > " "} <= set(map(chr, light))


@pytest.mark.parametrize("face", ["B612-Regular", "B612-Bold", "B612Mono-Regular", "B612Mono-Bold"])
def test_a_light_face_has_the_letters_of_the_whole_one_each_as_wide(face: str) -> None:
    """`make fonts` writes them; a figure set in either stands in the same column."""
    light = TTFont(BytesIO((STATIC / f"{face}.woff").read_bytes()))
    whole = TTFont(BytesIO((files("gramil") / "fonts" / f"{face}.ttf").read_bytes()))
    letters = next(letters for _, at, _, letters in faces() if at.endswith(f"/{face}.woff"))
    wanted = set(letters) & set(whole.getBestCmap())
    assert set(light.getBestCmap()) == wanted
    for letter in wanted:
        widths = [font["hmtx"][font.getBestCmap()[letter]][0] for font in (light, whole)]
        assert widths[0] == widths[1], hex(letter)
