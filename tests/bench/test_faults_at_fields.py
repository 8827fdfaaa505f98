"""Every form of the shop with rubbish in it: each fault at its field, in the field's words, all at once; over HTTP the
line that the page puts under the field, in Chromium the field itself."""

import re
import shutil
from collections.abc import Callable
from html import unescape
from pathlib import Path

import httpx
import pytest

from ..in_a_browser import Page, left_behind
from .conftest import Served, post, serving
from .test_in_chromium import faults, small_targets

LINE = re.compile(r'<li data-field="([^"]+)" data-said="([^"]+)"')


@pytest.fixture(scope="module")
def shop(laid_out: Path, tmp_path_factory: pytest.TempPathFactory):
    """A bench over the demonstration shop, which nothing here changes."""
    folder = tmp_path_factory.mktemp("faults")
    shutil.copyfile(laid_out, folder / "shop.gramil")
    with serving(folder) as bench:
        yield bench


def at_fields(answer: httpx.Response) -> dict[str, str]:
    assert answer.status_code == 422, answer.text[:300]
    return {unescape(key): unescape(said) for key, said in LINE.findall(answer.text)}


def item_of(client: httpx.Client, words: str) -> str:
    return re.search(rf'name="item" value="(\d+)"><label>{words}', client.get("/tools").text)[1]


POSTED = [
    ("/air/reading", {"place": "shop", "humidity": "x", "temperature": "y"}, ["humidity", "temperature"]),
    ("/air/reading", {"place": "shop", "humidity": "150", "temperature": "20"}, ["humidity"]),
    ("/air/reading", {"place": "shop", "humidity": "44", "temperature": "900"}, ["temperature"]),
    ("/air/place", {"name": ""}, ["name"]),
    ("/air/log", {"place": "shop", "log": "a,b\n1,2"}, ["log"]),
    ("/air/weigh", {"piece": "neck blank", "mass": "x"}, ["mass"]),
    ("/tools/jig", {"item": "Constant", "constant": "x"}, ["constant"]),
    ("/tools/saw", {"item": "Test cuts", "widths": "x, 0.58"}, ["widths"]),
    ("/tools/saw", {"item": "Test cuts", "widths": ""}, ["widths"]),
    ("/tools/bring-in", {"text": "x ="}, ["text"]),
    ("/operations", {"text": "[[["}, ["text"]),
    ("/stock/cut", {"blank": "1", "parts": "bridge"}, ["parts"]),
    ("/stock/made", {"name": "", "kind": "rim", "figures": "long"}, ["figures", "name"]),
    (
        "/air/place/known",
        {"place": "shop", "room": "x", "least": "y", "humidifier": "z"},
        ["humidifier", "least", "room"],
    ),
    ("/new/file", {"file": "x ="}, ["file"]),
]


@pytest.mark.parametrize(("path", "fields", "wrong"), POSTED)
def test_each_fault_of_a_form_names_its_field(
    shop: Served, path: str, fields: dict[str, str], wrong: list[str]
) -> None:
    with shop.client() as client:
        known = {key: item_of(client, value) if key == "item" else value for key, value in fields.items()}
        found = at_fields(post(client, path, **known))
    assert sorted(found) == sorted(wrong)
    for key, said in found.items():
        assert not said.startswith(f"{key}:")
        assert "shop.gramil" not in said


ASKED = [
    ("/weeks?hours=x&days=y&outlook=z", ["hours", "days", "outlook"]),
    ("/instrument/1/print?x=5&y=z", ["x", "y"]),
    ("/instrument/1/cost?rate=x&materials=y", ["rate", "materials"]),
    ("/if-glued?what=top&moisture=x&thickness=z&wood=nowhere", ["moisture", "thickness", "wood"]),
    ("/instrument/1/set-up-measured?cents@12.6=x&relief=y", ["cents@12.6", "relief"]),
    ("/instrument/1/slots-measured?fret.7=x&fret.12=y", ["fret.7", "fret.12"]),
]


@pytest.mark.parametrize(("path", "wrong"), ASKED)
def test_each_fault_of_a_question_names_its_field_and_the_page_keeps_what_was_typed(
    shop: Served, path: str, wrong: list[str]
) -> None:
    with shop.client() as client:
        answer = client.get(path)
    assert sorted(at_fields(answer)) == sorted(wrong)
    for key in wrong:
        assert re.search(rf'name="{re.escape(key)}"', answer.text), key


def test_a_correction_names_both_of_its_fields(shop: Served) -> None:
    with shop.client() as client:
        instant = re.search(r"instant=(-?\d+)", client.get("/air/readings?place=shop").text)[1]
        page = client.get(f"/air/reading?place=shop&instant={instant}").text
        was = unescape(re.search(r'name="was" value="([^"]*)"', page)[1])
        sent = {"place": "shop", "instant": instant, "was": was, "do": "right", "humidity": "x", "temperature": "y"}
        assert sorted(at_fields(post(client, "/air/reading/correct", **sent))) == ["humidity", "temperature"]


def test_hours_that_cannot_be_read_are_told_with_the_measurements(shop: Served) -> None:
    with shop.client() as client:
        sent = {"measured.slot_depth_setting": "x", "hours": "-1", "do": "done"}
        answer = post(client, "/instrument/1/operation/bound", hours="x", do="done")
        assert answer.status_code == 422
        assert re.search(r'name="hours" value="x"[^>]*aria-invalid="true" aria-describedby="no-hours"', answer.text)
        both = post(client, "/instrument/1/operation/slotted", **sent).text
    assert "2 fields cannot be read" in both
    assert both.count('aria-invalid="true"') == 2


@pytest.mark.slow
def test_in_the_browser_each_stands_under_its_field_and_what_was_typed_stays(
    shop: Served, page_at: Callable[[str, str], Page]
) -> None:
    """On a phone: told all at once, the first in focus, marked for those who do not see it; mended, it is gone."""
    playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    page = page_at("phone", shop.address)
    page.goto("/air")
    page.get_by_label("Humidity now, %").first.fill("wet")
    page.get_by_label("Temperature, °C").first.fill("warm")
    page.get_by_role("button", name="Write it down").first.tap()
    page.get_by_text("2 things are to be mended").wait_for()
    assert page.locator("[aria-invalid=true]").count() == 2
    humidity = page.get_by_label("Humidity now, %").first
    playwright.expect(humidity).to_be_focused()
    assert humidity.input_value() == "wet"
    said = page.locator(f"#{humidity.get_attribute('aria-describedby')}")
    assert "no number" in said.inner_text()
    assert said.bounding_box()["width"] > 300, "in full width"
    assert said.bounding_box()["y"] > humidity.bounding_box()["y"]
    assert faults(page) + small_targets(page) == []
    humidity.fill("150")
    page.get_by_label("Temperature, °C").first.fill("20")
    page.get_by_role("button", name="Write it down").first.tap()
    page.get_by_text("One thing is to be mended").wait_for()
    assert page.locator("[aria-invalid=true]").count() == 1
    page.goto("/instrument/1/print?x=5&y=z")
    page.locator("[aria-invalid=true]").nth(1).wait_for()
    assert faults(page) + small_targets(page) == []
    assert page.wrong == []
    left_behind(page)
