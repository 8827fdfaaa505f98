"""Chromium as the tests drive it: started once in a process, with one page of a desk's size and one of a phone's, which
serve the tests in turn. To start it, and to open a page, takes it as long as to show a dozen pages.
"""

import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

import pytest

Page = Any
Browser = Any
PROGRAMS = ("chromium-headless-shell", "chromium", "chromium-browser")
"""By what names Chromium is found. Without a window of its own, as the first is, it takes half of the processor's
time for the same pages.
"""
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
SIZES = {"phone": {"width": 360, "height": 740}, "wide": {"width": 1600, "height": 1000}}
HANDS: dict[str, dict[str, bool]] = {"phone": {"has_touch": True, "is_mobile": True}, "wide": {}}
LIGHT = {"media": "screen", "color_scheme": "light", "forced_colors": "none"}
MOTION = {"phone": "no-preference", "wide": "reduce"}
MOST = 25000
"""Milliseconds that are waited for anything at most."""


@contextmanager
def chromium_started() -> Iterator[Browser]:
    """Chromium, for as long as it is wanted; a test that wants it is skipped where there is none."""
    playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed: no browser is driven")
    found = next(filter(None, map(shutil.which, PROGRAMS)), None)
    if found is None:
        pytest.skip("Chromium is not installed: nothing is looked at in a browser")
    playwright.expect.set_options(timeout=MOST)
    with playwright.sync_playwright() as driver:
        started = driver.chromium.launch(executable_path=found, args=FLAGS)
        yield started
        started.close()


def watched(page: Page) -> Page:
    """A page whose errors, and whatever its policy blocks, are kept in `wrong`."""
    page.wrong = []
    page.on("pageerror", lambda error: page.wrong.append(str(error)))
    page.on("console", lambda said: page.wrong.append(said.text) if "Content Security Policy" in said.text else None)
    page.set_default_timeout(MOST)
    return page


def pages_of(browser: Browser) -> Callable[[str, str], Page]:
    """A function from a kind of page and a bench's address to the one page of that kind, as if it were new."""
    open_: dict[str, Page] = {}

    def page_at(kind: str, address: str) -> Page:
        if kind not in open_ or open_[kind].is_closed():
            open_[kind] = _opened(browser, kind)
        page = open_[kind]
        page.set_viewport_size(SIZES[kind])
        page.emulate_media(**LIGHT, reduced_motion=MOTION[kind])
        page.address, page.wrong = address.rstrip("/"), []
        return page

    return page_at


def _opened(browser: Browser, kind: str) -> Page:
    page = watched(browser.new_context(viewport=SIZES[kind], **HANDS[kind]).new_page())
    goto = page.goto
    page.goto = lambda path: goto(page.address + path if path.startswith("/") else path)
    return page


def left_behind(page: Page) -> None:
    """A page left as it was found: nothing of the test stays with it, nor with what is kept for its bench's address.

    It is left on a text of the bench, in which nothing runs: for an empty page, and for the next test's bench after it,
    Chromium would start a process of its own.
    """
    page.unroute_all(behavior="ignoreErrors")
    page.context.set_offline(False)
    on_a_bench = page.url.startswith("http")
    if on_a_bench:
        page.evaluate("localStorage.clear(), sessionStorage.clear()")
    page.goto("/static/LICENCE-htmx.txt" if on_a_bench else "about:blank")
    page.context.clear_cookies()
