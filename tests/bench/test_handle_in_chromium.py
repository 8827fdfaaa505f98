"""The handle of the section's line on a phone: it lies beside the drawing's words, and over none of them."""

import pytest

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed: no browser can be driven")
pytestmark = pytest.mark.slow
UNDER_IT = """() => {
  const handle = document.getElementById("slider"), own = handle.getBoundingClientRect();
  const ink = getComputedStyle(handle, "::before"), wide = parseFloat(ink.width), tall = parseFloat(ink.height);
  const left = own.right - parseFloat(ink.right) - wide, top = own.top + parseFloat(ink.top);
  const meets = (box) => box.left < left + wide && left < box.right && box.top < top + tall && top < box.bottom;
  return [...document.querySelectorAll("#plan svg text")].filter((each) => {
    const style = getComputedStyle(each), box = each.getBoundingClientRect();
    return style.display !== "none" && style.visibility !== "hidden" && box.width > 0 && meets(box);
  }).map((each) => each.textContent.trim()); }"""


def test_the_handle_lies_over_no_dimension(phone) -> None:
    """Wherever the line is, from the head to the tail, the drawing whole as it comes."""
    page = phone
    page.lay_out()
    over = {}
    for at in (
        "fret=0",
        "fret=1",
        "fret=5",
        "fret=12",
        "fret=14",
        "x=410",
        "x=480",
        "x=560",
        "x=630",
        "x=700",
        "x=800",
    ):
        page.goto(f"/instrument/1?{at}")
        page.wait_for_load_state("networkidle")
        page.locator("#slider").wait_for()
        if found := page.evaluate(UNDER_IT):
            over[at] = found
    assert over == {}
    assert page.wrong == []
