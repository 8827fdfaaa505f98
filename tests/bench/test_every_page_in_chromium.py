"""Every page of the bench in Chromium with an accessibility engine: at each width, enlarged, printed, dark, in forced
colours.

Each page is loaded once. Rules of contrast are tried in each of the colours, those of room at each of the widths, and
all the others twice: no width and no colour changes them. At the gate every second page is looked at, in the narrow
width and in turn in another or in other colours.
"""

import re
from urllib.parse import urlsplit
from zlib import crc32

import pytest
from tests.walks import sample, these

from gramil.bench.application import GETS
from gramil.doorway.backup import backup
from gramil.store.opening import open_store

from ..in_a_browser import LIGHT
from .conftest import Served
from .crawling import pattern
from .test_in_chromium import EVERY_RULE, answered, faults, lay_out_demo, press_for_demo, small_targets

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed: no browser can be driven")
pytestmark = pytest.mark.slow
CONTRAST = {"runOnly": ["color-contrast"], "resultTypes": ["violations"]}
ROOM = {"runOnly": ["target-size", "scrollable-region-focusable"], "resultTypes": ["violations"]}
ALL_BUT_CONTRAST = {**EVERY_RULE, "rules": {"color-contrast": {"enabled": False}}}
WIDTHS = {
    "1600 px": (1600, 1000, ALL_BUT_CONTRAST),
    "1600 px at 200 %": (800, 500, ROOM),
    "390 px": (390, 844, ROOM),
    "320 px": (320, 640, ROOM),
    "360 px": (360, 740, EVERY_RULE),
}
LOOKS = {
    "dark": {**LIGHT, "color_scheme": "dark"},
    "forced colours in the dark": {**LIGHT, "color_scheme": "dark", "forced_colors": "active"},
    "print": {**LIGHT, "media": "print"},
}

PAGES = (
    "/",
    "/new",
    "/weeks",
    "/stock",
    "/tools",
    "/air",
    "/nowhere",
    "/instrument/1?fret=5",
    "/instrument/1?x=500",
    "/instrument/1?x=633.1",
    "/instrument/1?fret=17",
    "/instrument/3?fret=9&view=closer",
    "/instrument/1?fret=12&set=scale.length%3D650",
    "/instrument/1?set=scale.length%3Dwide",
    "/instrument/1/moved?set=scale.length%3D650",
    "/instrument/1/slots-measured?fret.7=209.6&fret.12=315.1",
    "/instrument/1/set-up-measured?cents@12.6=6&relief=0.15",
    "/instrument/1/figure?at=slot_depth_at_crest",
    "/instrument/1/figure?at=string_pull%5B6%5D&x=520",
    "/instrument/1/figures?find=slot",
    "/instrument/1/turn?at=slot_left_least%5B19%5D&wanted=3.8&turn=board.thickness",
    "/instrument/1/turn?at=thickness_edge_spread&wanted=0.1&turn=nut.width",
    "/instrument/1/sheets",
    "/instrument/1/sheet/slot",
    "/instrument/2/operation/top_jointed",
    "/instrument/1/print",
    "/instrument/1/heights",
    "/instrument/1/cents",
    "/instrument/1/revisions",
    "/instrument/1/compare?old=1&new=1",
    "/instrument/1/return/1",
    "/instrument/1/top",
    "/instrument/1/anew/board",
    "/instrument/1/part?name=bridge",
    "/instrument/1/describe?table=cutaway",
    "/instrument/1/describe?table=port&row=1",
    "/instrument/1/found?n=1&n=2",
)
OF_THE_SHOP = (
    "/air/readings?place=cupboard",
    "/record",
    "/record?prove=1",
    "/record/put-back",
    "/record/put-back?copy=monday.gramil",
    "/air/weighings?piece=top%201",
    "/air/weighing?piece=top%201&number=0",
    "/find",
    "/find?find=rosette",
    "/keys",
    "/tools/form?kind=saw",
    "/tools/form?kind=piece",
    "/tools/form?item=1",
    "/tools/remove?item=1",
    "/if-glued",
    "/if-glued?what=top&rh=80&instrument=1",
    "/if-glued?what=board&rh=45",
    "/instrument/1/cost?rate=40&materials=tuners+85",
    "/instrument/1/files",
    "/instrument/1/pack",
    "/stock",
    "/stock/form",
    "/stock/form?blank=1",
    "/stock/remove?blank=1",
    "/new",
    "/new/came-in",
    "/shop/new",
    "/operations",
    "/operations?for=1",
    "/operations/remove?for=1",
    "/picture",
    "/plan",
    "/drawing",
)
NO_PAGES = re.compile(
    r"\.(pdf|zip|ics|toml|jpg|png)$|/print/|/print-chosen$|/record/(copy|files)$|/(cut|between|verdict)$"
)
"""Addresses of files, and of parts of a page that are asked for within it."""
BELOW = (
    "/air/reading",
    "/record/undo",
    "/today",
    "/instrument/{instrument}/measured/{measurement}",
    "/instrument/{instrument}/operation/{operation}/not-done",
    "/picture/{plan}",
    "/drawing/{drawing}",
)
"""Pages that there are only once something was noted, and the one that is saved: looked at below. That of a picture is
looked at where one is traced, that of a drawing where its lines are tapped.
"""


NARROW = "360 px"
"""The width at which every rule is tried on every page."""


def in_turn(path: str) -> tuple[list[str], list[str]]:
    """The widths and the colours in which a page is looked at: at the gate one of them all beside the narrow one."""
    wide, looks = [name for name in WIDTHS if name != NARROW], [*LOOKS]
    every = [*wide, *looks]
    one = every[crc32(path.encode()) % len(every)]
    return [*these(wide, [name for name in wide if name == one]), NARROW], [
        *these(looks, [each for each in looks if each == one])
    ]


def looked_over(page) -> list[str]:
    """What is wrong with the page that is open, at any width and in any colours."""
    wrong = []
    widths, looks = in_turn(page.url.partition("//")[2].partition("/")[2])
    for name in widths:
        width, height, rules = WIDTHS[name]
        page.set_viewport_size({"width": width, "height": height})
        wrong += [f"{name}: {line}" for line in faults(page, rules) + small_targets(page)]
    for name in looks:
        page.emulate_media(**LOOKS[name])
        wrong += [f"{name}: {line}" for line in faults(page, CONTRAST)]
    page.emulate_media(**LIGHT)
    page.set_viewport_size({"width": 1600, "height": 1000})
    return wrong


def all_of(page, paths) -> dict[str, list[str]]:
    found = {}
    for path in sample(paths, 2):
        page.goto(path)
        found[path] = looked_over(page)
    return {path: lines for path, lines in found.items() if lines}


def saved_today(page) -> dict[str, list[str]]:
    """Today on one page, as it is opened where it was saved."""
    page.goto("about:blank")
    page.set_content(page.request.get(f"{page.address}/today").text())
    lines = looked_over(page)
    return {"/today": lines} if lines else {}


def test_no_page_is_left_out() -> None:
    """Every address that gives a page is looked at here."""
    looked = {pattern(urlsplit(path).path) for path in (*PAGES, *OF_THE_SHOP)} | set(BELOW)
    assert {path for path, _ in GETS if not NO_PAGES.search(path)} - looked == set()


def test_each_page_of_an_instrument_can_be_used_by_everybody(wide) -> None:
    wide.goto("/")
    wrong = {"empty /": lines} if (lines := looked_over(wide)) else {}
    press_for_demo(wide)
    assert wrong | all_of(wide, PAGES) == {}
    assert wide.wrong == []


def with_entries(page) -> list[str]:
    """Pages that there are only once something was noted: a reading, a measurement, an operation done."""
    page.goto("/instrument/1/operation/bound")
    page.locator(".box input").first.fill("45.5")
    with answered(page):
        page.get_by_role("button", name="Done").click()
    page.get_by_role("heading", name="Noted").wait_for()
    page.get_by_text("Something written wrongly?").click()
    found = [page.locator("a[href*='/measured/']").first.get_attribute("href")]
    found.append(page.get_by_role("link", name="Not done after all?").get_attribute("href"))
    page.goto("/air/readings?place=shop")
    found.append(page.locator("a[href*='/air/reading?']").first.get_attribute("href"))
    page.goto("/record")
    found.append(page.get_by_role("link", name="Take back the last").get_attribute("href"))
    return found


def test_each_page_of_the_shop_can_be_used_by_everybody(wide, served: Served) -> None:
    lay_out_demo(wide)
    with open_store(served.store) as store:
        backup(store, served.store.with_name("monday.gramil"))
    served.store.with_name("notes.gramil").write_text("no store")
    assert all_of(wide, (*with_entries(wide), *OF_THE_SHOP)) | saved_today(wide) == {}
    assert wide.wrong == []
