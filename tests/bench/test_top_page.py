"""The page of the solved top: solved when it is asked for, a mode over the braces, a brace tapped and shaved."""

import re
import time

import httpx
import pytest

from .conftest import post

pytestmark = pytest.mark.usefixtures("coarse_tops")

PATIENT = 600.0
"""Seconds that a solved top is waited for: a machine that does other work at once is slow."""


def test_nothing_is_solved_until_it_is_asked_for(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1/top")
    assert page.status_code == 200
    assert "Solve it" in page.text
    assert "over the braces" not in page.text


def solved(client: httpx.Client, path: str, **asked: str) -> str:
    """The page once the top is solved; what comes before it says how far that is."""
    page, ends = client.get(path, params=asked), time.monotonic() + PATIENT
    while 'id="making"' in page.text and time.monotonic() < ends:
        assert re.search(r'<b class="number">\d+</b> of \d+ steps solved', page.text)
        time.sleep(0.05)
        page = client.get(str(page.url))
    return page.text


def test_a_top_is_solved_beside_the_page_and_can_be_stopped(demo: httpx.Client) -> None:
    """Its page asks again by itself; reloaded it waits for the same work; stopped, nothing of it is kept."""
    page = demo.get("/instrument/2/top", params={"solve": "1", "mode": "3"})
    assert 'data-hx-trigger="every 1s"' in page.text
    assert ">Stop it</button>" in page.text
    assert demo.get(str(page.url)).url == page.url
    made = page.url.params["making"]
    stopped = post(demo, "/instrument/2/top/stop", making=made)
    assert "Stopped." in stopped.text
    assert ">Solve it anew</a>" in stopped.text
    assert "over the braces" not in demo.get(str(page.url)).text
    assert post(demo, "/instrument/2/top/stop", making="0123").status_code == 404


def test_what_has_no_body_says_so_at_once(demo: httpx.Client, numbers: dict[str, int]) -> None:
    assert "No body is described" in solved(demo, f"/instrument/{numbers['Scree']}/top", solve="1")


def test_a_mode_over_the_braces_and_a_brace_shaved(demo: httpx.Client) -> None:
    """*Tarn* in the shop's record; a tenth of a millimetre of what the table says comes true, sign and all."""
    asked = {"solve": "1", "mode": "2", "brace": "X", "off": "0.5"}
    page = solved(demo, "/instrument/1/top", **asked)
    assert "elastic, at once, on a rigid rim" in page
    assert "Mode 2 over the braces" in page
    assert len(re.findall(r'aria-label="Shave [^"]+"', page)) == 9  # the top's braces, as described
    assert "0.50 mm off X, solved again" in page
    before, after = re.search(r"the bridge turns</th><td>([\d.]+)°</td><td>([\d.]+)°", page).groups()  # type: ignore[union-attr]
    assert float(after) > float(before)
    for wrong, told in (("99", "no more can come off"), ("-1", "no more can come off"), ("thin", "thin")):
        assert told in demo.get("/instrument/1/top", params={**asked, "off": wrong}).text
    assert demo.get("/instrument/1/top", params={"solve": "1", "mode": "77", "brace": "no such"}).status_code == 200
    whither = demo.get("/instrument/1/top", params={**asked, "making": "1"}, headers={"hx-request": "true"})
    assert whither.headers["hx-redirect"] == "/instrument/1/top?solve=1&mode=2&brace=X&off=0.5"


def test_a_piece_is_tapped_by_form(demo: httpx.Client) -> None:
    page = demo.get("/tools/form", params={"kind": "tapped"})
    assert page.status_code == 200
    assert "Note, Hz, with a cross at rest" in page.text
