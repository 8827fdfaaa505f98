"""Long work on the bench: how far it is, stopped half way, one at a time; the pack made so."""

import io
import re
import time
import zipfile
from collections.abc import Iterator
from threading import Event

import httpx
import pytest

from gramil.bench.long_work import KEPT, LongWorks
from gramil.faults import MakersFault

from .conftest import post

MOST = 60.0
"""Seconds that are waited for anything at most."""


def waited(wanted: object) -> None:
    """Wait until a function says yes."""
    ends = time.monotonic() + MOST
    while not wanted():
        assert time.monotonic() < ends
        time.sleep(0.01)


def together(content: dict[str, bytes]) -> bytes:
    return b" ".join(content.values())


class Gate:
    """Three files, the second of which is waited for."""

    def __init__(self) -> None:
        self.reached, self.open, self.last = Event(), Event(), Event()

    def files(self) -> Iterator[tuple[str, bytes]]:
        yield "a", b"one"
        self.reached.set()
        assert self.open.wait(MOST)
        yield "b", b"two"
        self.last.set()
        yield "c", b"three"


def test_it_says_how_far_it_is_and_then_what_came_of_it() -> None:
    gate, works = Gate(), LongWorks()
    work = works.begin(3, gate.files(), together)
    assert gate.reached.wait(MOST)
    assert (work.done, work.count, work.goes_on) == (1, 3, True)
    gate.open.set()
    waited(lambda: not work.goes_on)
    assert (work.done, work.made) == (3, b"one two three")
    assert works.found(work.key) is work


def test_stopped_half_way_nothing_more_is_made_and_nothing_kept() -> None:
    gate, works = Gate(), LongWorks()
    work = works.begin(3, gate.files(), together)
    assert gate.reached.wait(MOST)
    work.stop.set()
    assert not work.goes_on
    gate.open.set()
    after = works.begin(1, iter([("d", b"next")]), together)
    waited(lambda: after.made is not None)
    assert not gate.last.is_set()
    assert work.made is None


def test_one_at_a_time_and_the_oldest_is_forgotten() -> None:
    gate, works = Gate(), LongWorks()
    first = works.begin(3, gate.files(), together)
    assert gate.reached.wait(MOST)
    others = [works.begin(1, iter([("d", b"next")]), together) for _ in range(KEPT)]
    assert not any(each.begun for each in others)
    assert first.stop.is_set()
    assert works.found(first.key) is None
    gate.open.set()
    waited(lambda: all(each.made == b"next" for each in others))


@pytest.mark.parametrize(("wrong", "said"), [(MakersFault.of("no board"), "no board"), (KeyError("x"), "its own")])
@pytest.mark.filterwarnings("ignore::pytest.PytestUnhandledThreadExceptionWarning")
def test_what_goes_wrong_is_said(wrong: Exception, said: str) -> None:
    def files() -> Iterator[tuple[str, bytes]]:
        yield "a", b"one"
        raise wrong

    work = LongWorks().begin(2, files(), together)
    waited(lambda: not work.goes_on)
    assert said in work.fault
    assert work.made is None


def making(page: httpx.Response) -> str:
    return re.search(r"making=(\w+)", str(page.url))[1]


def test_the_pack_is_made_while_one_looks_on(demo: httpx.Client, numbers: dict[str, int]) -> None:
    """Its page says how many of how many, asks again by itself, and gives the file, on the paper that was chosen."""
    pack = f"/instrument/{numbers['Scree']}/pack"
    page = post(demo, pack, paper="a3")
    assert page.url.path == pack
    assert 'data-hx-trigger="every 1s"' in page.text
    assert re.search(r'<b class="number">\d+</b> of \d+ files made', page.text)
    assert ">Stop it</button>" in page.text
    address = f"{pack}?making={making(page)}"
    waited(lambda: "Save it" in demo.get(address, headers={"hx-request": "true"}).text)
    count = int(re.search(r"All (\d+) files are made", demo.get(address).text)[1])
    file = demo.get(f"{pack}.zip?making={making(page)}")
    with zipfile.ZipFile(io.BytesIO(file.content)) as archive:
        names = archive.namelist()
    assert len(names) == count
    assert "print/templates-a3.pdf" in names


def test_a_pack_is_stopped_and_made_anew(demo: httpx.Client) -> None:
    key = making(post(demo, "/instrument/2/pack"))
    page = post(demo, "/instrument/2/pack/stop", making=key)
    assert "Stopped." in page.text
    assert ">Make it anew</button>" in page.text
    assert demo.get("/instrument/2/pack?making=0123").status_code == 404
    assert "Make it" in demo.get("/instrument/2/pack").text
