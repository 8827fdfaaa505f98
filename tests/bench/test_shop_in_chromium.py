"""The shop's pages in a real browser: what hands do there."""

import pytest

from .conftest import Served
from .test_in_chromium import answered, faults, lay_out_demo, small_targets

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed: no browser can be driven")
pytestmark = pytest.mark.slow


def test_a_slip_is_put_right_by_touch_and_taken_back(phone, served: Served) -> None:
    """A reading of 4.5 for 45: found on the air's page, written anew, and the change taken back by undo."""
    page = phone
    lay_out_demo(page)
    page.goto("/air")
    page.get_by_label("Humidity now, %").first.fill("4.5")
    page.get_by_label("Temperature, °C").first.fill("20")
    with answered(page):
        page.get_by_role("button", name="Write it down").first.tap()
    for link in ("Readings of the shop", "2026-11-25 09:00"):
        with answered(page):
            page.get_by_role("link", name=link).tap()
    page.get_by_label("Humidity, %").fill("45")
    with answered(page):
        page.get_by_role("button", name="This is right").tap()
    page.get_by_role("heading", name="Struck").wait_for()
    for link in ("Record, undo, copies", "Take back the last"):
        with answered(page):
            page.get_by_role("link", name=link).tap()
    with answered(page):
        page.get_by_role("button", name="Take it back").tap()
    page.get_by_text("taken back", exact=True).wait_for()
    page.goto("/air/readings?place=shop")
    page.get_by_text("4.5 %, 20.0 °C").wait_for()
    assert page.wrong == []


def test_a_tool_by_keyboard_with_its_faults_beside_the_fields(wide) -> None:
    page = wide
    lay_out_demo(page)
    page.goto("/tools")
    page.get_by_role("link", name="Sanding blocks").focus()
    with answered(page):
        page.keyboard.press("Enter")
    page.get_by_role("heading", name="A sanding block").wait_for()
    page.get_by_label("What it is called here").focus()
    page.keyboard.type("20 inch")
    page.keyboard.press("Tab")
    page.keyboard.type("twenty")
    with answered(page):
        page.keyboard.press("Enter")
    page.get_by_text("Nothing was saved").wait_for()
    assert faults(page) + small_targets(page) == []
    radius = page.get_by_label("Radius of its hollow")
    assert radius.get_attribute("aria-invalid") == "true"
    assert page.get_by_label("What it is called here").input_value() == "20 inch"
    radius.focus()
    page.keyboard.press("Control+A")
    page.keyboard.type("20 in")
    with answered(page):
        page.keyboard.press("Enter")
    page.get_by_role("heading", name="20 inch is written down").wait_for()
    assert page.wrong == []
