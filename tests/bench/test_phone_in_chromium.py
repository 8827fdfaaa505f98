"""At 360 px: the head of a draft leaves the drawing in sight with *Keep* and *Drop* in reach, and no number is cut."""

import pytest

from .test_in_chromium import lay_out_demo

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed: no browser can be driven")
pytestmark = pytest.mark.slow
HEAD = 240
"""Px from the top of the page to the drawing in a draft, at most: a third of a phone."""
CUT = """() => {
  const found = [];
  for (const scroll of document.querySelectorAll('.scroll')) {
    const frame = scroll.getBoundingClientRect();
    if (getComputedStyle(scroll).maskImage !== 'none') continue;
    const words = document.createTreeWalker(scroll, NodeFilter.SHOW_TEXT);
    while (words.nextNode()) {
      const range = document.createRange(), holder = words.currentNode.parentElement;
      range.selectNodeContents(words.currentNode);
      if (holder.closest('.unseen') || !holder.checkVisibility()) continue;
      const across = (box, edge) => box.left < edge - 1 && box.right > edge + 1;
      if ([...range.getClientRects()].some((box) => across(box, frame.left) || across(box, frame.right)))
        found.push(holder.textContent);
    }
  }
  return found; }"""
"""What is written across an edge of what scrolls sideways, where that edge does not fade."""

BROAD = """() => [...document.querySelectorAll('.scroll:has(table)')]
  .filter((each) => each.scrollWidth > each.clientWidth + 1).map((each) => each.ariaLabel)"""
"""Tables that are wider than the phone."""
PAGES = ("/instrument/1/cents", "/air", "/instrument/1/revisions", "/instrument/1/moved?set=scale.length%3D650")


def test_a_draft_on_a_phone_shows_the_drawing_with_keep_and_drop_in_reach(phone) -> None:
    """However far the page is scrolled; the drawing ends above them."""
    lay_out_demo(phone)
    phone.goto("/instrument/1?fret=12&set=scale.length%3D650")
    phone.locator(".plan.head-up").wait_for()
    phone.evaluate("scrollTo(0, 0)")
    plan, bar = (phone.locator(each).bounding_box() for each in ("#plan", ".keepbar"))
    assert plan["y"] < HEAD
    assert plan["y"] + plan["height"] <= bar["y"] + 1
    for far in (0, 1500, 6000):
        phone.evaluate(f"scrollTo(0, {far})")
        for name in ("Keep", "Drop"):
            box = phone.locator(".keepbar").get_by_text(name, exact=True).bounding_box()
            assert 0 <= box["y"] <= 740 - box["height"], f"{name} at {far}"
    link = phone.get_by_role("link", name="Every figure of this instrument")
    link.focus()
    below = link.bounding_box()
    assert below["y"] + below["height"] <= bar["y"] + 1, "what the keys come to is not behind them"
    assert phone.wrong == []


def test_no_number_is_cut_so_that_it_reads_as_another(phone) -> None:
    """What is written across an edge fades there, and a table with few columns has none that is."""
    lay_out_demo(phone)
    wrong = {}
    for path in PAGES:
        phone.goto(path)
        phone.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
        phone.wait_for_timeout(60)
        if found := [*phone.evaluate(CUT), *phone.evaluate(BROAD)]:
            wrong[path] = found
    assert wrong == {}
    assert phone.wrong == []
