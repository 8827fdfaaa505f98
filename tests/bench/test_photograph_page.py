"""The page of a plan's pictures over HTTP: sent, solved, followed, its doubts told, its outline taken into a draft."""

import io
import re
import shutil
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from html import unescape
from pathlib import Path

import httpx
import numpy as np
import pytest
from PIL import Image

from gramil.bench.guard import LARGEST_BODY
from gramil.bench.held_plans import KEPT

from ..photographs.rendered import Scene, body, strips_round
from .conftest import Served, serving, token_of

pytestmark = pytest.mark.slow
SCENE = Scene(strips_round(), ((body(), 0.5),), size=(1600, 1200), focal=1440.0, distance=1150.0)
EXPECTED_LONG, EXPECTED_WIDE = np.ptp(body(), axis=0)


@cache
def photograph(beside: bool = False) -> bytes:
    """The plan as a photograph; with another line inside its outline, along a part of it."""
    if not beside:
        return SCENE.jpeg()
    ring = body()
    run = np.roll(ring, -1, axis=0) - np.roll(ring, 1, axis=0)
    inner = ring - 3.0 * np.column_stack((run[:, 1], -run[:, 0])) / np.hypot(*run.T)[:, None]
    return replace(SCENE, lines=(*SCENE.lines, (inner[500:1100], 0.5))).jpeg()


def laid(count: int = 24) -> str:
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in SCENE.seen(body(count)).tolist())


def sent(client: httpx.Client, *contents: bytes) -> httpx.Response:
    files = [("picture", (f"plan {number}.jpg", each, "image/jpeg")) for number, each in enumerate(contents, start=1)]
    return client.post("/picture", data={"token": token_of(client.get("/picture"))}, files=files)


@pytest.fixture(scope="module")
def demo(nothing_done: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[httpx.Client]:
    """A client at one bench with the demonstration shop for all that changes nothing there."""
    folder = tmp_path_factory.mktemp("pictures")
    shutil.copyfile(nothing_done, folder / "shop.gramil")
    with serving(folder) as bench, bench.client() as client:
        yield client


@pytest.fixture(scope="module")
def plan(demo: httpx.Client) -> httpx.Response:
    """The page of the plan's photograph, which is found and solved once."""
    return sent(demo, photograph())


def test_a_plan_is_traced_and_its_outline_tried_on_an_instrument(demo: httpx.Client, plan: httpx.Response) -> None:
    page = plan
    assert page.status_code == 200, page.text
    path = page.url.path
    assert "tags 1, 2, 3, 4, 5, 6, 7, 8" in page.text
    assert "The bar was not measured" in page.text
    shown = demo.get(f"{path}/shown-1.jpg")
    assert shown.headers["content-type"] == "image/jpeg"
    assert Image.open(io.BytesIO(shown.content)).size == SCENE.size
    followed = demo.get(path, params={"points": laid(), "bar": "220 mm", "waving": "0"})
    assert followed.status_code == 200
    told = re.search(r"<p>([\d.]+) mm long, ([\d.]+) mm wide", followed.text)
    assert told is not None
    assert abs(float(told[1]) - EXPECTED_LONG) < 0.3
    assert abs(float(told[2]) - EXPECTED_WIDE) < 0.3
    path_drawn = re.search(r'class="followed" points="([^"]+)"', followed.text)
    assert path_drawn is not None
    drawn = np.array([each.split(",") for each in path_drawn[1].split()], dtype=float)
    truth = SCENE.seen(body())
    assert max(np.hypot(*(truth - each).T).min() for each in drawn[::40]) < 1.0
    form = re.search(
        r'action="(/instrument/\d+/files)".*?name="text" hidden>(.*?)</textarea>', followed.text, re.DOTALL
    )
    assert form is not None
    text, version = unescape(form[2]), re.search(r'name="version" value="(\d+)"', followed.text)
    assert version is not None
    data = {"token": token_of(followed), "version": version[1], "text": text, "do": "try"}
    assert "What was brought in" in demo.post(form[1], data=data).text
    assert demo.get(f"{path}/straightened.png", params={"points": laid()}).content[:4] == b"\x89PNG"


def test_a_second_line_is_a_choice_that_can_be_taken(demo: httpx.Client) -> None:
    path = sent(demo, photograph(beside=True)).url.path
    asked = {"points": laid(), "bar": "220", "waving": "0"}
    page = demo.get(path, params=asked)
    choice = re.search(r'name="take" value="(\d)">Take the line (\d\.\d) mm beside it', page.text)
    assert choice is not None
    assert abs(float(choice[2]) - 3.0) < 0.3
    taken = demo.get(path, params={**asked, "take": choice[1]})
    assert taken.url.params["points"] != asked["points"]
    drawn = re.search(r'class="followed" points="([^"]+)"', taken.text)
    assert drawn is not None
    line = SCENE.back(np.array([each.split(",") for each in drawn[1].split()], dtype=float))
    amid = body()[800]
    assert abs(np.hypot(*(line - amid).T).min() - 3.0) < 0.4
    assert demo.get(path, params={**asked, "take": "9"}).status_code == 422


def test_what_is_wrong_stands_at_its_field(demo: httpx.Client, plan: httpx.Response) -> None:
    path = plan.url.path
    for asked, field, said in (
        ({"bar": "wide"}, "bar", "wide"),
        ({"bar": "180"}, "bar", "another bar"),
        ({"waving": "-1"}, "waving", "no such height"),
        ({"laid": "frame", "frame": "7 x 5"}, "frame", "not the size of a frame"),
        ({"along": "1,1", "along_length": "50"}, "along", "1 ends are laid"),
        ({"points": "1 2 3"}, "points", "not a pair of pixels"),
        ({"points": "nan,inf " * 9}, "points", "not a pair of pixels"),
        ({"points": "5,5,7 " * 9}, "points", "picture 7"),
        ({"points": "5,5 6,6"}, "points", "2 points"),
    ):
        page = demo.get(path, params=asked)
        assert page.status_code == 422, asked
        assert f'data-field="{field}"' in page.text, asked
        assert said in page.text, asked
    assert "a scan needs two known lengths" in demo.get(path, params={"laid": "nothing", "points": laid()}).text


def test_what_is_no_picture_is_told_and_nothing_is_held(served: Served) -> None:
    demo = served.client()
    cut, blank = photograph()[:3000], io.BytesIO()
    Image.new("L", (400, 400), 200).save(blank, "PNG")
    for content, said in ((b"<svg>", "not a kind of picture"), (cut, "cut short"), (b"", "no picture was chosen")):
        page = sent(demo, content)
        assert page.status_code == 422
        assert said in page.text
        assert 'data-field="picture"' in page.text
    assert "Sent already" not in demo.get("/picture").text
    page = sent(demo, blank.getvalue())
    assert "no printed tag is found" in page.text


def test_pictures_are_bounded_and_only_the_last_are_held(served: Served) -> None:
    demo, small = served.client(), replace(SCENE, lines=(), size=(1200, 900), focal=1080.0).jpeg()
    paths = [sent(demo, small).url.path for _ in range(KEPT + 1)]
    assert demo.get(paths[0]).status_code == 404
    assert demo.get(paths[-1]).status_code == 200
    token = token_of(demo.get("/picture"))
    assert "Sent already" in demo.get("/picture").text
    for path in paths[1:]:
        assert demo.post(f"{path}/forget", data={"token": token}).status_code == 200
        assert demo.get(path).status_code == 404
    assert sorted(each.name for each in served.store.parent.iterdir() if each.suffix in (".jpg", ".png")) == []
    body_of = b"x" * (LARGEST_BODY + 1)
    assert demo.post("/new", content=body_of).status_code == 413
    assert demo.post("/picture", content=body_of).status_code == 403  # that much is taken, but no token is in it
