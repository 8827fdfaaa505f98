"""The bench in the dark, in forced colours and in print, and buttons that say that they were pressed: in Chromium."""

import re

import pytest

from ..in_a_browser import LIGHT
from .test_in_chromium import answered, faults, lay_out_demo

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed: no browser can be driven")
pytestmark = pytest.mark.slow
LOOKS = {
    "dark": {"color_scheme": "dark"},
    "forced colours in the dark": {"color_scheme": "dark", "forced_colors": "active"},
}
INK = """() => {
  const light = (text) => { const [r, g, b] = text.match(/[\\d.]+/g).map(Number); return (r + g + b) / 3; };
  const ground = light(getComputedStyle(document.body).backgroundColor);
  const all = [...document.querySelectorAll('.drawing [data-layer="outline"] polygon, .drawing text')];
  const ink = (each) => { const style = getComputedStyle(each);
    return light(each.tagName === 'text' ? style.fill : style.stroke); };
  return all.length ? Math.min(...all.map((each) => Math.abs(ink(each) - ground))) : 0; }"""


UNSEEN = """() => {
  const ground = getComputedStyle(document.body).backgroundColor;
  return [...document.querySelectorAll('main *')].filter((each) => {
    const style = getComputedStyle(each);
    const says = [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim());
    return says && each.checkVisibility() && style.color === ground && style.forcedColorAdjust !== 'none';
  }).map((each) => each.textContent.trim()); }"""
"""Words in the ground's colour; in forced colours the browser lays the ground under them as well."""


def test_the_drawing_follows_the_dark_and_forced_colours(wide) -> None:
    """Ink stands off the ground by far more than half the way from black to white, on drawings and their words."""
    page, wrong = wide, {}
    page.lay_out()
    for path in ("/instrument/1/sheet/slot", "/instrument/1?fret=7"):
        page.goto(path)
        page.wait_for_load_state("networkidle")
        for look, chosen in LOOKS.items():
            page.emulate_media(**{**LIGHT, **chosen})
            if (ink := page.evaluate(INK)) < 140:
                wrong[look, path] = ink
            if look == "dark" and (found := faults(page)):
                wrong[look, path] = found
    for look, chosen in LOOKS.items():
        page.emulate_media(**{**LIGHT, **chosen, "media": "print"})
        for kind in (".plan .sizes.main", ".plan .part-shape.under"):
            assert page.locator(kind).first.evaluate("it => getComputedStyle(it).display") != "none", kind
        page.emulate_media(media="screen")
        pressed, other = (page.locator(f"form.unit button[aria-pressed={state}]") for state in ("true", "false"))
        shades = [each.evaluate("each => getComputedStyle(each).backgroundColor") for each in (pressed, other)]
        assert shades[0] != shades[1], f"{look}: the pressed unit can be told"
    page.emulate_media(**{**LIGHT, **LOOKS["forced colours in the dark"]})
    page.goto("/instrument/1?fret=7&set=scale.length%3D650")
    assert page.evaluate(UNSEEN) == [], "on buttons and words that stand out"
    assert wrong == {}
    assert page.wrong == []


def test_a_pressed_button_says_so_and_is_not_pressed_twice(phone) -> None:
    page = phone
    lay_out_demo(page)
    page.goto("/instrument/1/sheet/slot")
    page.get_by_label(re.compile("Kerf")).fill("0.58")
    sent: list[object] = []
    page.route(  # what is sent is held back, and not the page that its answer leads to
        "**/operation/*",
        lambda each: sent.append(each) if each.request.method == "POST" else each.continue_(),
    )
    button = page.get_by_role("button", name="Note the measurements")
    button.tap()
    page.locator("button", has_text="Sending …").wait_for()
    page.locator("button", has_text="Sending …").tap(force=True)
    page.wait_for_timeout(100)
    assert len(sent) == 1
    with answered(page):
        sent[0].continue_()
    page.get_by_role("heading", name="Noted").wait_for()
    assert page.locator("button[aria-disabled=true]").count() == 0
    assert page.wrong == []


def test_the_figures_of_a_sheet_without_a_drawing_have_the_width(wide, phone) -> None:
    """Beside one another on a wide screen, under one another on a phone: half of the wide page had been empty."""
    for page, across in ((wide, 4), (phone, 1)):
        page.lay_out()
        page.goto("/instrument/1/sheet/flush")
        boxes = [each.bounding_box() for each in page.locator(".bigs li").all()]
        assert len(boxes) == 4
        assert sum(abs(box["y"] - boxes[0]["y"]) < 1 for box in boxes) == across


def test_a_wide_screen_leaves_no_gap_under_the_drawing_nor_half_of_heights_empty(wide) -> None:
    """However tall what stands beside it is: the figures follow the drawing, and the section begins at its top."""
    page = wide
    page.lay_out()
    for query in ("fret=7", "x=385&set=scale.length%3D640"):
        page.goto(f"/instrument/1?{query}")
        drawing, figures = (page.locator(each).bounding_box() for each in (".surface", ".parts .part >> nth=0"))
        assert figures["y"] - (drawing["y"] + drawing["height"]) < 30, query
        beside = page.locator(".desk > .strip, .desk > .card >> nth=0").first.bounding_box()
        assert beside["y"] - drawing["y"] < 30, query
    page.goto("/instrument/1/heights")
    first, table = page.locator("figure").first.bounding_box(), page.locator("table.numbers").bounding_box()
    assert first["y"] < table["y"] < first["y"] + first["height"]
    assert table["x"] > first["x"] + first["width"] / 2
