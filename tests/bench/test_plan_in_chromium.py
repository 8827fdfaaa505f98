"""A plan typed cell by cell in the browser, and a drawing's lines tapped: the picture follows, no fault of the page."""

import pytest

from ..description.plan import plans
from .test_every_page_in_chromium import looked_over
from .test_in_chromium import EVERY_RULE, faults, lay_out_demo, small_targets
from .test_plan_page import BRACES, SLIPPED

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed: no browser can be driven")
pytestmark = pytest.mark.slow


def test_a_plan_is_typed_by_keys_alone_and_its_slip_put_right(wide) -> None:
    page = wide
    lay_out_demo(page)
    page.goto("/plan")
    page.locator(".grid input").first.focus()
    for number, row in enumerate(SLIPPED.splitlines()):
        write = page.keyboard.insert_text if number > 1 else page.keyboard.type  # a letter at a time in two rows
        station, half = row.split(", ")
        write(station)
        page.keyboard.press("Tab")
        write(half)
        page.keyboard.press("Enter")
    page.get_by_text("At station 285.00 mm the half-width 156.00 mm stands out").wait_for()
    playwright.expect(page.locator(".plan-seen .spot")).to_have_count(len(SLIPPED.splitlines()))
    assert faults(page, EVERY_RULE) + small_targets(page) == []
    page.get_by_role("button", name="It is 165").click()
    page.locator(".asked").wait_for(state="detached")
    page.get_by_text("Braces: two points each").click()
    cells = page.locator(".grid").nth(1).locator("input")
    for number, cell in enumerate(BRACES.splitlines()[0].split(", ")):
        cells.nth(number).fill(cell)
    page.locator(".plan-seen .stick").wait_for(state="attached")
    page.get_by_role("button", name="See what it moves on Tarn").click()
    page.get_by_role("heading", name="What was brought in").wait_for()
    assert page.wrong == []


def test_a_line_is_tapped_and_let_go_and_the_table_follows(wide) -> None:
    page = wide
    lay_out_demo(page)
    page.goto("/drawing")
    drawing = {"name": "plan.dxf", "mimeType": "text/plain", "buffer": plans.dxf().encode()}
    page.locator("input[type=file]").set_input_files(drawing)
    page.get_by_role("button", name="Send").click()
    page.get_by_role("heading", name="Which line is what").wait_for()
    assert looked_over(page) == []
    lines = page.locator("#lines .bridge")
    assert lines.count() == 1
    page.get_by_role("radio", name="bridge").check()
    lines.locator(".reach").dispatch_event("click")
    playwright.expect(lines).to_have_count(0)
    page.get_by_role("button", name="Go on with it").click()
    page.get_by_role("heading", name="What was taken, and what was left").wait_for()
    page.get_by_text("Left: 1 line on BRIDGE").wait_for()
    assert page.locator(".grid").nth(0).locator("input").first.input_value() == "0.00"
    assert faults(page, EVERY_RULE) + small_targets(page) == []
    assert page.wrong == []
