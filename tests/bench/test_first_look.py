"""The demonstration shop at any hour, the weeks as a picture, tools as lists, and no inner name on any page."""

import html
import re
from datetime import UTC, date, datetime, timedelta

import httpx
import pytest

from gramil.bench.load_picture import letters_of, load_picture, taken
from gramil.bench.pages.demonstration import brought_up
from gramil.now.blocks import Block
from gramil.shop.operations import Operation

from .conftest import Served, post

HOURS = [datetime(2026, 11, 25, hour, minute, tzinfo=UTC) for hour, minute in ((0, 20), (7, 59), (9, 0), (21, 45))]


@pytest.mark.parametrize("now", HOURS, ids=lambda now: f"{now:%H-%M}")
def test_the_demo_s_air_is_read_this_hour_and_its_jigs_are_checked_in_the_past(now: datetime) -> None:
    """The file's last reading is of 08:00; its jigs are checked later that year, which would lie ahead."""
    plain = now.replace(tzinfo=None)
    last = brought_up("2026-01-19 08:00,15.8,26.1", now)
    read = datetime.fromisoformat(last.split(",")[0])
    assert timedelta(0) < plain - read <= timedelta(hours=1, minutes=1)
    for written in ("checked = 2026-10-14", "checked = 2026-11-02", "date = 2026-01-18", "at = 2026-01-18T18:00:00"):
        moved = brought_up(written, now).split(" = ")[1]
        assert datetime.fromisoformat(moved) <= plain
    assert re.fullmatch(r"at = \d{4}-\d\d-\d\dT\d\d:00:00", brought_up("at = 2026-01-18T18:00:00", now))


def test_the_demo_s_air_can_be_glued_by_and_gluing_be_planned(served: Served) -> None:
    served.clock.now = datetime(2026, 11, 25, 20, 40, 17, tzinfo=UTC)
    client = served.client()
    post(client, "/demo")
    assert "not to be glued by" not in client.get("/").text
    page = client.get("/weeks").text
    assert "too old" not in page
    as_if = re.search(r'href="(/weeks\?[^"]*outlook=[^"]*)"', page)
    assert as_if is not None
    planned = client.get(html.unescape(as_if[1])).text
    assert len(re.findall(r"[Gg]lue ", planned)) > len(re.findall(r"[Gg]lue ", page))


def test_the_weeks_start_on_the_minute(served: Served) -> None:
    """The hands begin at 08:30; looked at 17 seconds after a minute it had said 08:29."""
    served.clock.now = datetime(2026, 11, 25, 7, 10, 17, tzinfo=UTC)
    client = served.client()
    post(client, "/demo")
    page = client.get("/weeks").text
    starts = re.findall(r'class="number">(\d\d:\d\d) to', page)
    assert starts[0] == "08:30"


def block(whose: str, day: int, begins: int, hours: float, cures: float = 0.0) -> Block:
    start = datetime(2026, 11, day, begins, 0)
    ends = start + timedelta(hours=hours)
    operation = Operation("bent", "Bend the sides", "rim", 60)
    return Block(whose, operation, start, ends, ends + timedelta(hours=cures) if cures else None, (1, 1))


def test_the_load_of_each_day_is_drawn_as_the_list_has_it() -> None:
    """Two days: 2 and 1.5 of 8 hours, and 3 hours."""
    found = [block("Tarn", 25, 8, 2.0, cures=3.0), block("Fell", 25, 10, 1.5), block("Tide", 26, 9, 3.0)]
    assert letters_of(found) == {"Fell": "F", "Tarn": "Ta", "Tide": "Ti"}
    assert taken(found, date(2026, 11, 25)) == pytest.approx(3.5)
    picture = load_picture(found, {date(2026, 11, 25): 8.0, date(2026, 11, 26): 8.0})
    assert picture.count("<rect") == 3
    assert picture.count('class="cures"') == 1
    assert "3.5 of 8 h" in picture
    widths = [float(each) for each in re.findall(r'<rect x="[\d.]+" y="[\d.]+" width="([\d.]+)"', picture)]
    assert widths[0] / widths[2] == pytest.approx(2 / 3, rel=1e-6)
    assert load_picture([], {}) == ""


def test_the_weeks_page_has_the_picture_beside_the_list(demo: httpx.Client) -> None:
    page = demo.get("/weeks").text
    assert page.count('class="block of-') == page.count('<th scope="row" class="number">')


def test_a_tool_s_figures_are_a_list(demo: httpx.Client) -> None:
    page = demo.get("/tools").text
    sled = page[page.index("taper sled") :]
    assert re.search(r"<dt>constant</dt><dd><b class=\"number\">62\.40?</b>", sled)


PAGES = (
    "/",
    "/weeks",
    "/stock",
    "/tools",
    "/air",
    "/find?find=bridge",
    *("/plan", "/drawing", "/picture", "/shop/new", "/new", "/new/came-in", "/stock/form", "/tools/form?kind=piece"),
    *("/if-glued", "/instrument/1/top", "/instrument/1/cost", "/instrument/1/print", "/record"),
    "/instrument/1",
    "/instrument/1?x=500&set=scale.length%3D650",
    "/instrument/1/moved?set=scale.length%3D650",
    "/instrument/1/figure?at=bridge_front_from_octave",
    "/instrument/1/figure?at=slot_depth_at_crest",
    "/instrument/1/part?name=bridge",
    "/instrument/1/figures",
    "/instrument/1/sheets",
    "/instrument/1/sheet/slot",
    "/instrument/1/heights",
    "/instrument/1/cents",
    "/instrument/1/turn?at=thickness_edge_spread&wanted=0.1&turn=nut.width",
    "/instrument/1/compare?old=1&new=1",
)


def test_no_inner_name_stands_on_a_page(demo: httpx.Client) -> None:
    """Words with a line under them between letters are the program's own, in what is read and in what is read out."""
    told = {}
    for path in PAGES:
        page = re.sub(r"<(script|style)\b.*?</\1>", "", demo.get(path).text, flags=re.DOTALL)
        read_out = re.findall(r'(?:aria-label|title|alt|placeholder)="([^"]*)"', page)
        shown = html.unescape(" ".join((re.sub(r"<[^>]*>", " ", page), *read_out)))
        if found := set(re.findall(r"\b[a-z]+(?:_[a-z]+)+\b", shown)):
            told[path] = found
    assert told == {}


@pytest.mark.parametrize("page", ["", "/sheets", "/sheet/slot", "/figures", "/part?name=board", "/cost", "/heights"])
def test_an_inch_instrument_and_the_head_of_its_pages_agree_on_the_unit(
    demo: httpx.Client, numbers: dict[str, int], page: str
) -> None:
    """*Fell* is described in inches; nobody has swapped the unit."""
    head = demo.get(f"/instrument/{numbers['Fell']}{page}").text
    assert re.search(r'name="unit" value="in" aria-pressed="true"', head)
